package fit

import (
	"fmt"
	"math"

	"yokeline/lettering/ink"
	"yokeline/lettering/typeface"
)

// line is a shaped text in one instance of a face, in font units, ready to be
// measured at any size.
type line struct {
	face   *typeface.Face
	cap    float64 // cap height of the instance
	glyphs []placed

	gaps        int     // places where tracking is added
	reach       float64 // farthest that ink lies from its letter's middle, along x
	top, bottom float64 // of the ink
	// pace is the smallest advance of letter middles per place of tracking; the
	// letters keep their order while it is over -tracking.
	pace float64
}

// placed is a glyph with ink in the line.
type placed struct {
	ink      *ink.Glyph
	x, y     float64 // origin; tracking not included
	mid      float64 // middle of the advance; a mark has its base's
	before   float64 // clusters before it, that is places of tracking
	from, to float64 // ink along x
	mark     bool
}

// build fills the line from what the shaper returned.
func (l *line) build(shaped *typeface.Line, glyph func(uint32) *ink.Glyph) {
	l.reach, l.top, l.bottom, l.pace = 0, math.Inf(-1), math.Inf(1), math.Inf(1)
	pen, mid, clusters := 0.0, 0.0, 0
	for i, g := range shaped.Glyphs {
		if i > 0 && g.Cluster != shaped.Glyphs[i-1].Cluster {
			clusters++
		}
		if !g.Mark {
			mid = pen + g.Advance/2
		}
		pen += g.Advance
		k := glyph(g.ID)
		if k.Empty() {
			continue
		}
		l.add(placed{
			ink: k, x: g.X, y: g.Y, mid: mid, before: float64(clusters),
			from: g.X + k.Box.Min.X, to: g.X + k.Box.Max.X, mark: g.Mark,
		})
	}
	l.gaps = clusters
}

func (l *line) add(p placed) {
	if n := len(l.glyphs); n > 0 {
		last := l.glyphs[n-1]
		switch step := p.mid - last.mid; {
		case p.before > last.before:
			l.pace = min(l.pace, step/(p.before-last.before))
		case step < 0:
			l.pace = math.Inf(-1)
		}
	}
	l.reach = max(l.reach, math.Abs(p.from-p.mid), math.Abs(p.to-p.mid))
	l.top = max(l.top, p.y+p.ink.Box.Max.Y)
	l.bottom = min(l.bottom, p.y+p.ink.Box.Min.Y)
	l.glyphs = append(l.glyphs, p)
}

// bare returns the ends of the ink of the straight line, mm, without outlines.
func (l *line) bare(s state) (from, to float64) {
	sx := s.height / l.cap * s.scale
	from, to = math.Inf(1), math.Inf(-1)
	for i := range l.glyphs {
		g := &l.glyphs[i]
		add := s.tracking * g.before
		from = min(from, sx*g.from+add)
		to = max(to, sx*g.to+add)
	}
	return from, to
}

// Fitter fits names. It keeps what it learned of faces (shaped lines, prepared
// glyphs), so one that is used again is much faster. It is NOT safe for
// concurrent use: take one per goroutine; they share nothing that changes.
type Fitter struct {
	faces   map[*typeface.Face]*faceInk
	shapers map[string]*typeface.Shaper // by digest of the font file
	lines   map[lineKey]*line
	shaped  typeface.Line
	finder  ink.Finder
	placed  []set
}

type lineKey struct {
	face       *typeface.Face
	text, lang string
}

// faceInk holds the prepared glyphs of one instance.
type faceInk struct {
	glyphs map[uint32]*ink.Glyph
	shaper *typeface.Shaper
}

// Bounds of the caches. A width axis makes many instances that are never
// asked for again; when a cache is full it is emptied.
const (
	maxFaces = 96
	maxLines = 512
)

// NewFitter returns an empty fitter.
func NewFitter() *Fitter {
	return &Fitter{
		faces:   map[*typeface.Face]*faceInk{},
		shapers: map[string]*typeface.Shaper{},
		lines:   map[lineKey]*line{},
	}
}

// flatness is how closely glyphs are flattened for distances, in ems.
const flatness = 3e-5

func (f *Fitter) inkOf(face *typeface.Face) *faceInk {
	if k := f.faces[face]; k != nil {
		return k
	}
	if len(f.faces) >= maxFaces {
		clear(f.faces)
		clear(f.lines)
	}
	k := &faceInk{glyphs: map[uint32]*ink.Glyph{}, shaper: f.shapers[face.Digest()]}
	if k.shaper == nil || k.shaper.Use(face) != nil { // another reading of the same file
		k.shaper = face.NewShaper()
		f.shapers[face.Digest()] = k.shaper
	}
	f.faces[face] = k
	return k
}

// line returns the text shaped in the face.
func (f *Fitter) line(face *typeface.Face, text, lang string) (*line, error) {
	key := lineKey{face, text, lang}
	if l := f.lines[key]; l != nil {
		return l, nil
	}
	k := f.inkOf(face)
	if err := k.shaper.Use(face); err != nil {
		return nil, err
	}
	if err := k.shaper.ShapeInto(&f.shaped, text, lang); err != nil {
		return nil, err
	}
	l := &line{face: face, cap: face.CapHeight(), glyphs: make([]placed, 0, len(f.shaped.Glyphs))}
	l.build(&f.shaped, func(id uint32) *ink.Glyph {
		g := k.glyphs[id]
		if g == nil {
			g = ink.New(face.Outline(id), flatness*face.UnitsPerEm())
			k.glyphs[id] = g
		}
		return g
	})
	if len(l.glyphs) == 0 {
		return nil, fmt.Errorf("%q has no letters to draw; leave the piece out or give it a text", text)
	}
	if len(f.lines) >= maxLines {
		clear(f.lines)
	}
	f.lines[key] = l
	return l, nil
}
