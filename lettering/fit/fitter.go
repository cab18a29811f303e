package fit

import (
	"fmt"

	"yokeline/lettering/ink"
	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// Fitter fits names. It keeps what it learned of faces (shaped lines, prepared
// glyphs), so one that is used again is much faster. It is NOT safe for
// concurrent use: take one per goroutine; they share nothing that changes.
type Fitter struct {
	cuts    map[cutKey]*cutInk
	shapers map[string]*typeface.Shaper // by digest of the font file
	known   map[lineKey]*line
	lights  map[lightKey]float64
	thins   map[thinKey]float64
	shaped  typeface.Line
	finder  ink.Finder
	placed  []set
	near    []neighbours
}

// cutKey is an instance of a face and what it is emboldened by, as a share of
// the cap height.
type cutKey struct {
	face *typeface.Face
	bold float64
}

type lineKey struct {
	cut        cutKey
	text, lang string
	raised     string
	optical    bool
}

// cutInk holds the prepared glyphs of one cut.
type cutInk struct {
	cut    *weight.Cut
	glyphs map[uint32]*ink.Glyph
	shaper *typeface.Shaper
}

// Bounds of the caches. A width axis makes many instances that are never
// asked for again; when a cache is full it is emptied.
const (
	maxCuts  = 96
	maxLines = 512
)

// NewFitter returns an empty fitter.
func NewFitter() *Fitter {
	return &Fitter{
		cuts:    map[cutKey]*cutInk{},
		shapers: map[string]*typeface.Shaper{},
		known:   map[lineKey]*line{},
		lights:  map[lightKey]float64{},
		thins:   map[thinKey]float64{},
	}
}

// flatness is how closely glyphs are flattened for distances, in ems.
const flatness = 3e-5

// cutOf makes the cut of a face that is emboldened by a share of its cap
// height.
func cutOf(face *typeface.Face, bold float64) (*weight.Cut, error) {
	return weight.Embolden(face, bold*face.CapHeight())
}

func (f *Fitter) inkOf(key cutKey) (*cutInk, error) {
	if k := f.cuts[key]; k != nil {
		return k, nil
	}
	cut, err := cutOf(key.face, key.bold)
	if err != nil {
		return nil, err
	}
	if len(f.cuts) >= maxCuts {
		clear(f.cuts)
		clear(f.known)
	}
	digest := key.face.Digest()
	k := &cutInk{cut: cut, glyphs: map[uint32]*ink.Glyph{}, shaper: f.shapers[digest]}
	if k.shaper == nil || k.shaper.Use(key.face) != nil { // another reading of the same file
		k.shaper = key.face.NewShaper()
		f.shapers[digest] = k.shaper
	}
	f.cuts[key] = k
	return k, nil
}

// glyph returns a prepared glyph.
func (k *cutInk) glyph(id uint32) (*ink.Glyph, error) {
	if g := k.glyphs[id]; g != nil {
		return g, nil
	}
	path, err := raisedPath(k.cut, id)
	if err != nil {
		return nil, err
	}
	g := ink.New(path, flatness*k.cut.Face().UnitsPerEm())
	k.glyphs[id] = g
	return g, nil
}

// line returns the request's text shaped in the face.
func (f *Fitter) line(r *Request, face *typeface.Face) (*line, error) {
	if upper, lower, two := r.split(); two {
		return f.stack(&upper, &lower, face)
	}
	key := lineKey{cutKey{face, r.bold()}, r.Text, r.Lang, raisedKey(r.Raised), r.Optical}
	if l := f.known[key]; l != nil {
		return l, nil
	}
	k, err := f.inkOf(key.cut)
	if err != nil {
		return nil, err
	}
	if err := k.shaper.Use(face); err != nil {
		return nil, err
	}
	if err := k.shaper.ShapeInto(&f.shaped, r.Text, r.Lang); err != nil {
		return nil, err
	}
	n := len(f.shaped.Glyphs)
	l := &line{cut: k.cut, cap: k.cut.CapHeight(), glyphs: make([]placed, 0, n), spots: make([]spot, 0, n)}
	if err := l.build(&f.shaped, 2*k.cut.Amount(), r.Raised, k.glyph); err != nil {
		return nil, err
	}
	if len(l.glyphs) == 0 {
		return nil, fmt.Errorf("%q has no letters to draw; leave the piece out or give it a text", r.Text)
	}
	if r.Optical {
		f.even(l)
	}
	if len(f.known) >= maxLines {
		clear(f.known)
	}
	f.known[key] = l
	return l, nil
}
