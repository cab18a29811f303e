// Package typeface reads typefaces, shapes names in them and hands out their
// outlines. Every font, embedded or brought by a user, comes in through one
// guarded door, Open. All values are font units: the shaper works at
// font-unit scale and its integer advances are taken as they are.
package typeface

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/go-text/typesetting/font"
	ot "github.com/go-text/typesetting/font/opentype"

	"yokeline/lettering/geom"
)

// Face is one typeface, or one instance of a variable typeface. It never
// changes to a caller's eyes and is safe for concurrent use; inside it caches
// outlines, each filled once and never altered.
type Face struct {
	source   *source
	coords   []font.VarCoord // normalised; nil at the default instance
	settings []float64       // one value an axis, as asked
	drawing  *font.Face      // for outlines alone, which only read it
	pages    []atomic.Pointer[page]
	habits   habits // how its own accents stand
	capTop   float64
	xTop     float64
}

// source is the font file behind a face and all its instances.
type source struct {
	id, name, digest string
	font             *font.Font
	upem             float64
	glyphs           int
	axes             []Axis
	zero             rune // letter that stands for 0 in numbers, or 0
	root             *Face
	instances        instanceCache
}

// Axis is one axis of a variable face, in the axis's own units.
type Axis struct {
	Tag               string
	Min, Default, Max float64
}

// page holds a run of outlines, so that an instance made to try a width pays
// only for the glyphs it draws.
type page [64]atomic.Pointer[drawn]

// drawn is one decoded outline. A glyph that could not be decoded keeps the
// reason, so that shaping can refuse it instead of leaving a hole in a name.
type drawn struct {
	path geom.Path
	box  geom.Rect
	err  error
}

// ID returns the identifier of an embedded face, or the name an opened file
// was given.
func (f *Face) ID() string { return f.source.id }

// Name returns the face's own name, such as "Oswald Bold".
func (f *Face) Name() string { return f.source.name }

// Digest returns the SHA-256 of the font file, hexadecimal. Instances of one
// file share it.
func (f *Face) Digest() string { return f.source.digest }

// UnitsPerEm returns the font units in one em.
func (f *Face) UnitsPerEm() float64 { return f.source.upem }

// CapHeight returns the top of the ink of H above the baseline, in font units,
// measured on the outline of this instance. The figure in the file's metrics
// is not used: it may be absent or differ from the drawing.
func (f *Face) CapHeight() float64 { return f.capTop }

// XHeight returns the top of the ink of x above the baseline, in font units; 0
// when the face has no x.
func (f *Face) XHeight() float64 { return f.xTop }

// Axes returns the variation axes in the file's order; empty for a static
// face. The slice is the caller's own.
func (f *Face) Axes() []Axis { return slices.Clone(f.source.axes) }

// Settings returns the value of every axis of this instance; empty for a
// static face.
func (f *Face) Settings() map[string]float64 {
	out := make(map[string]float64, len(f.settings))
	for i, v := range f.settings {
		out[f.source.axes[i].Tag] = v
	}
	return out
}

// Outline returns the outline of a glyph in font units, y up, as the font
// draws it (contours may overlap). It is cached and must not be changed. A
// glyph that the face does not have, or that cannot be decoded, is empty;
// Shape never returns such a glyph.
func (f *Face) Outline(id uint32) geom.Path { return f.glyph(id).path }

// Bounds returns the exact box of the ink of a glyph in font units; empty for
// a glyph without ink. It is cached with the outline.
func (f *Face) Bounds(id uint32) geom.Rect { return f.glyph(id).box }

// Digit returns the glyph that draws the digit d, '0' to '9', in a number. It
// is the digit's own glyph, except that a face whose 0 carries a dot or a
// slash may name a letter to stand for it.
func (f *Face) Digit(d rune) (uint32, error) {
	if d < '0' || d > '9' {
		return 0, fmt.Errorf("%q is not a digit; a number on a uniform is made of 0 to 9", d)
	}
	if d == '0' && f.source.zero != 0 {
		d = f.source.zero
	}
	id, ok := f.source.nominal(d)
	if !ok {
		return 0, missing(f, string(d), d)
	}
	return id, nil
}

// Advance returns the advance width of a glyph in whole font units, rounded
// as the shaper does for variable instances, without kerning; 0 for a glyph
// that the face does not have or that is damaged. It is not cached.
func (f *Face) Advance(id uint32) (advance float64) {
	if int(id) >= f.source.glyphs {
		return 0
	}
	defer func() {
		if recover() != nil {
			advance = 0
		}
	}()
	return math.Round(float64(f.drawing.HorizontalAdvance(font.GID(id))))
}

// nominal returns the glyph that the file maps a character to.
func (s *source) nominal(r rune) (uint32, bool) {
	id, ok := s.font.NominalGlyph(r)
	return uint32(id), ok && id != 0
}

var noGlyph = drawn{box: geom.EmptyRect(), err: fmt.Errorf("there is no such glyph")}

func (f *Face) glyph(id uint32) *drawn {
	if int(id) >= f.source.glyphs {
		return &noGlyph
	}
	slot := &f.pages[id/64]
	p := slot.Load()
	if p == nil {
		slot.CompareAndSwap(nil, new(page))
		p = slot.Load()
	}
	d := p[id%64].Load()
	if d == nil {
		// Two goroutines may decode the same glyph at once; the first to
		// store wins, so all callers see one outline.
		p[id%64].CompareAndSwap(nil, f.decode(id))
		d = p[id%64].Load()
	}
	return d
}

// decode reads one outline. A damaged font may make the parser panic, which
// must not take the program down.
func (f *Face) decode(id uint32) (d *drawn) {
	defer func() {
		if r := recover(); r != nil {
			d = &drawn{box: geom.EmptyRect(), err: fmt.Errorf("its outline is damaged: %v", r)}
		}
	}()
	o, ok := f.drawing.GlyphDataOutline(uint16(id))
	if !ok {
		return &drawn{box: geom.EmptyRect(), err: fmt.Errorf("its outline is damaged or missing")}
	}
	path := outline(o.Segments)
	return &drawn{path: path, box: path.Bounds()}
}

// outline closes every contour and drops the straight edge back to the start
// that the parser draws itself, so that closing adds no edge of no length.
func outline(segments []font.Segment) geom.Path {
	if len(segments) == 0 {
		return nil
	}
	path := make(geom.Path, 0, len(segments)+4)
	var start geom.Point
	closeContour := func() {
		n := len(path)
		if n == 0 {
			return
		}
		if last := path[n-1]; last.Op == geom.Line && last.P[0] == start {
			path = path[:n-1]
		}
		path.Close()
	}
	for _, s := range segments {
		a, b, c := point(s.Args[0]), point(s.Args[1]), point(s.Args[2])
		switch s.Op {
		case ot.SegmentOpMoveTo:
			closeContour()
			start = a
			path.MoveTo(a)
		case ot.SegmentOpLineTo:
			path.LineTo(a)
		case ot.SegmentOpQuadTo:
			path.QuadTo(a, b)
		case ot.SegmentOpCubeTo:
			path.CubeTo(a, b, c)
		}
	}
	closeContour()
	return path
}

func point(p font.SegmentPoint) geom.Point {
	return geom.Point{X: float64(p.X), Y: float64(p.Y)}
}

// instanceCache keeps the newest instances of a variable face. Fitting by
// width asks for many settings that are never asked for again, so it is
// bounded; an instance that falls out stays valid for those who hold it.
type instanceCache struct {
	mu    sync.Mutex
	faces map[string]*Face
	order []string
}

const maxInstances = 256

func (c *instanceCache) get(key string) *Face {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.faces[key]
}

// put stores the face unless another goroutine was first, and returns the one
// that is kept.
func (c *instanceCache) put(key string, f *Face) *Face {
	c.mu.Lock()
	defer c.mu.Unlock()
	if kept := c.faces[key]; kept != nil {
		return kept
	}
	if c.faces == nil {
		c.faces = map[string]*Face{}
	}
	if len(c.order) == maxInstances {
		delete(c.faces, c.order[0])
		c.order = append(c.order[:0], c.order[1:]...)
	}
	c.faces[key] = f
	c.order = append(c.order, key)
	return f
}

// describe names the axes and their ranges, for errors.
func (s *source) describe() string {
	if len(s.axes) == 0 {
		return "none"
	}
	parts := make([]string, len(s.axes))
	for i, a := range s.axes {
		parts[i] = fmt.Sprintf("%s %g to %g", a.Tag, a.Min, a.Max)
	}
	return strings.Join(parts, ", ")
}
