package tail

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// Measure is a length that is given in mm, as a share of something that the
// field names, or as the sum of both.
type Measure struct {
	MM    float64 // mm
	Share float64 // of the reference length, 1 for the whole
}

// MM returns a measure of fixed length, mm.
func MM(length float64) Measure { return Measure{MM: length} }

// Share returns a measure that grows with its reference, 1 for all of it.
func Share(share float64) Measure { return Measure{Share: share} }

// of returns the measure in mm for a reference of the given length.
func (m Measure) of(reference float64) float64 { return m.MM + m.Share*reference }

// Params says how a tail looks. Begin with Default and change what differs;
// the zero value is refused.
type Params struct {
	// Length is how far the tail reaches back from the right end of the
	// script's ink, measured level; its share is of the script's width, so that
	// Share(1) ends under the left end of the first letter.
	Length Measure
	// Thickness of the tail where it is thickest; its share is of the letter
	// height. 2 % to 60 % of the letter height.
	Thickness Measure
	// Gap is the least distance between the tail on its way back and the
	// letters over it, descenders included; its share is of the letter height.
	// 2 % to 200 % of the letter height.
	Gap Measure
	// Curl is how much the far end hooks, -1 to 1: 0 runs out straight, 1 turns
	// by MostCurl. Over 0 the end hooks down, away from the letters; under 0 up.
	Curl float64
	// Taper is how thin the far end gets, 0 to 1: 0 keeps the thickness, 1 ends
	// in a point (rounded to a fiftieth of the thickness, so that it can be
	// cut).
	Taper float64
	// Slope of the tail against the baseline in degrees, -20 to 20; over 0 it
	// rises to the right, so the far end lies lower.
	Slope float64
	// Bow is how much the sweep bends along its length, in degrees, 0 to 40; it
	// arches up where the end hooks down, and sags where it hooks up.
	Bow float64
}

// MostCurl is the turn of the far end, in degrees, at a curl of 1.
const MostCurl = 200

// Default returns the tail drawn when nothing is said: common practice, no
// source; judged by eye on three scripts.
func Default() Params {
	return Params{
		Length:    Share(0.92),
		Thickness: Share(0.27),
		Gap:       Share(0.13),
		Curl:      0.3,
		Taper:     0.9,
		Bow:       14,
	}
}

// sized is Params in mm and radians, and what is known of the script.
type sized struct {
	height    float64 // letter height
	weight    float64 // mean thickness of the script's strokes
	right     float64 // x of the right end of the script
	reach     float64 // the asked length
	thickness float64
	gap       float64
	taper     float64
	hook      float64 // turn of the far end, anticlockwise
	bow       float64 // turn of the sweep, anticlockwise
	slope     float64
}

// pointed is the thickness of a tail that ends in a point, as a share of its
// thickness.
const pointed = 0.02

// end returns the thickness at the far end.
func (s sized) end() float64 { return s.thickness * max(pointed, 1-s.taper) }

// in resolves the parameters for a script.
func (p Params) in(height float64, ink geom.Region) (sized, error) {
	box := ink.Bounds()
	s := sized{
		height:    height,
		weight:    meanStroke(ink),
		right:     box.Max.X,
		reach:     p.Length.of(box.Width()),
		thickness: p.Thickness.of(height),
		gap:       p.Gap.of(height),
		taper:     p.Taper,
		hook:      radians(p.Curl * MostCurl),
		bow:       radians(math.Copysign(p.Bow, p.Curl)),
		slope:     radians(p.Slope),
	}
	return s, s.check(p)
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// The thickness and the gap that a tail may have, as shares of the letter
// height; and the least length. Beyond, it would not be told from a letter's
// stroke or would fall apart from the name.
const (
	thinnest, thickest = 0.02, 0.60
	closest, widest    = 0.02, 2.0
)

// check refuses figures that no tail can have; those that depend on the script
// are found while drawing.
func (s sized) check(p Params) error {
	h := s.height
	if !(h >= 0.1 && h <= 1e4) {
		return fmt.Errorf("letter height of a tail is %g mm; give 0.1 mm to 10 m", h)
	}
	for _, f := range []struct {
		name            string
		value, low, top float64
		unit            string
	}{
		{"length", s.reach, 0.01 * h, 1e5, " mm"},
		{"thickness", s.thickness, thinnest * h, thickest * h, " mm"},
		{"gap", s.gap, closest * h, widest * h, " mm"},
		{"curl", p.Curl, -1, 1, ""},
		{"taper", p.Taper, 0, 1, ""},
		{"slope", p.Slope, -20, 20, " degrees"},
		{"bow", p.Bow, 0, 40, " degrees"},
	} {
		const rounding = 1e-9
		if !(f.value >= f.low-rounding*h && f.value <= f.top+rounding*h) {
			return fmt.Errorf("tail %s is %.4g%s; give %.4g to %.4g%s", f.name, f.value, f.unit, f.low, f.top, f.unit)
		}
	}
	return nil
}
