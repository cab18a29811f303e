// Package makeable finds the smallest details of a finished piece: the
// thinnest stroke, the smallest gap between separate shapes and the smallest
// counter, and holds them against what a decoration method can make.
//
// A stroke is as wide as the largest disc that touches two walls on opposite
// sides of the ink; a counter, which is a hole or a bay, is measured the same
// way outside the ink. Places where walls run together into a corner, such as
// the foot of a V or the crotch of an N, have no opposite walls and are passed
// over. Measured are necks, where the line across stands square on both sides,
// and straight walls that close in on each other by no more than 20 degrees
// and to more than a half; of these the narrowest place that a disc fits
// into. What narrows further is a corner, cut off or not. A hole or a shape without opposite walls, such
// as the triangle in an A, counts with the largest disc in it. Gaps are plain
// distances between shapes.
package makeable

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// Letter is the ink of one letter of the piece, for saying where a place is.
type Letter struct {
	Text  string      // as a person would name it
	Index int         // its cluster in the text
	Ink   geom.Region // mm, where it stands in the piece, without outlines
	// Rest marks ink that holds the letters and more, such as a script joined to
	// its tail: a place is named by it only where no letter is as near.
	Rest bool
}

// Options says what is known about a layer. The zero value is ready.
type Options struct {
	// Letters name the places; nil leaves them without names.
	Letters []Letter
	// Bare is the settled ink inside the layer's outline. With it, counters
	// that the outline has closed are listed. Nil for the ink itself.
	Bare geom.Region
	// LetterHeight, mm, is passed on to the report; 0 is not checked.
	LetterHeight float64
	// UpTo, mm, ends the search: strokes, gaps and counters wider than this
	// need not be found. 0 finds the smallest however wide.
	UpTo float64
}

// Spot is one measured place.
type Spot struct {
	Width    float64    // mm; NaN if the layer has no such place
	From, To geom.Point // its two walls, the width apart
	// Letter and Index name the letter at From, Other and OtherIndex the one
	// at To. Without letters the names are empty and the indices -1.
	Letter, Other     string
	Index, OtherIndex int
}

// Found reports whether the layer has such a place.
func (s Spot) Found() bool { return !math.IsNaN(s.Width) }

// Report holds the smallest details of one layer, mm.
type Report struct {
	Stroke  Spot // thinnest ink
	Gap     Spot // smallest distance between separate shapes
	Counter Spot // narrowest hole or bay
	// Closed lists the holes of the bare ink that the outline has filled;
	// Width is 0 and From the middle of the hole's largest disc.
	Closed       []Spot
	LetterHeight float64 // as given
}

// Measure finds the smallest details of a settled layer (outer rings
// anticlockwise, holes clockwise, no crossings; mm). Edges of flattened curves
// are measured as they are, so a place on a curve is off by up to twice the
// tolerance of flattening. An empty layer, or one with a coordinate that is
// not a number, is an error.
func Measure(layer geom.Region, o Options) (Report, error) {
	box := layer.Bounds()
	if size := box.Width() + box.Height(); !(size > 0) || math.IsInf(size, 0) || math.IsNaN(layer.Area()) {
		return Report{}, fmt.Errorf("there is no ink to measure; give the settled region of the layer")
	}
	shapes := shapesOf(layer)
	ink := newSearch(layer, shapes, false, o.UpTo)
	ink.run()
	ink.discs(func(s ring) bool { return !s.hole })
	field := newSearch(layer, shapes, true, o.UpTo)
	field.run()
	field.discs(func(s ring) bool { return s.hole })
	r := Report{
		Stroke: ink.opposed.spot(), Gap: field.apart.spot(), Counter: field.opposed.spot(),
		LetterHeight: o.LetterHeight,
	}
	if o.Bare != nil {
		r.Closed = closed(o.Bare, layer)
	}
	name(&r, o.Letters)
	return r, nil
}

// Limits are the least measures that a decoration method can make, mm; 0 sets
// no limit.
type Limits struct{ Stroke, Gap, Counter, Letter float64 }

// What says which detail falls short.
type What uint8

// The details that are checked.
const (
	Stroke What = iota
	Gap
	Counter
	ClosedCounter
	LetterHeight
)

// String returns the detail in plain words.
func (w What) String() string {
	names := [...]string{"stroke", "gap", "counter", "closed counter", "letter height"}
	if int(w) < len(names) {
		return names[w]
	}
	return fmt.Sprintf("detail %d", uint8(w))
}

// Shortfall is one detail that is smaller than the method can make.
type Shortfall struct {
	What               What
	Measured, Required float64 // mm
	Spot               Spot    // where; without a place for the letter height
}

// hair is how far, mm, a detail may fall short unsaid: the rounding of an
// outline's grid.
const hair = 1e-3

// Check lists what falls short of the limits, in the order of What. A closed
// counter falls short of any counter limit, and is said once for each.
func Check(r Report, l Limits) []Shortfall {
	var out []Shortfall
	hold := func(what What, s Spot, required float64) {
		if required > 0 && s.Width < required-hair {
			out = append(out, Shortfall{what, s.Width, required, s})
		}
	}
	hold(Stroke, r.Stroke, l.Stroke)
	hold(Gap, r.Gap, l.Gap)
	hold(Counter, r.Counter, l.Counter)
	for _, s := range r.Closed {
		hold(ClosedCounter, s, l.Counter)
	}
	if r.LetterHeight > 0 {
		hold(LetterHeight, Spot{Width: r.LetterHeight, Index: -1, OtherIndex: -1}, l.Letter)
	}
	return out
}
