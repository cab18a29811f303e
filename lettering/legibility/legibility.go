// Package legibility says from how far away a number or a name can be read: it
// turns a measured height and stroke into the distance at which an eye of known
// acuity just makes the characters out. The result is information for the
// proof, never a verdict: no rule book asks for it.
package legibility

import (
	"fmt"
	"math"

	"yokeline/lettering/length"
)

// The angles, in minutes of arc, of the smallest character that a 20/20 eye
// reads. Source: American Academy of Ophthalmology, Snellen letters: the whole
// letter takes 5 minutes and its stroke 1 minute.
const (
	HeightMinutes = 5.0
	StrokeMinutes = 1.0
)

// StrainFreeMinutes is the least height of a character, in minutes of arc, for
// reading without strain rather than for just making it out. Source: ISO 9241-3
// as quoted by a workplace health page; that text prefers 20 to 22.
const StrainFreeMinutes = 16.0

// What decided a reading distance.
const (
	ByHeight = "height"
	ByStroke = "stroke"
)

// Contrast says in words what the angles leave out. Snellen's letters are black
// on white and still; how much less a given pair of colours allows depends on
// the light, so no figure is given for it (common practice, no source).
const Contrast = "The distances hold for dark on light or light on dark, standing still in good light. " +
	"Body and garment that are close in lightness, whatever their hues, are read from much nearer; " +
	"an outline of the other lightness helps."

// Reading is the distance from which a piece is read.
type Reading struct {
	Metres20 float64 // furthest distance for a 20/20 eye, in metres
	Metres40 float64 // the same for a 20/40 eye
	By       string  // ByHeight or ByStroke: the one that gives the smaller distance
	Text     string  // one sentence for the proof, distances rounded down
}

// Read returns the distance from which characters of the given measured height
// and stroke, both in millimetres and without outlines, are read. For a name in
// small letters the height is theirs, not the capital's. A stroke that could
// not be measured is NaN, as the stroke gauge has it: the height then decides
// alone and the sentence says so. noun is what the sentence calls the piece
// (number, name, front number). Inches as the unit give yards, or feet where
// yards are too coarse; every other unit gives metres.
//
// A height or a stroke that is not a length above zero is an error.
//
// The 20/40 distance is half the 20/20 one by the meaning of the fraction: that
// eye reads at 20 ft what a 20/20 eye reads at 40 ft.
func Read(height, stroke float64, noun string, unit length.Unit) (Reading, error) {
	if !positive(height) {
		return Reading{}, fmt.Errorf("reading distance of the %s: its height is %g mm; measure a piece that has ink", noun, height)
	}
	if !math.IsNaN(stroke) && !positive(stroke) {
		return Reading{}, fmt.Errorf("reading distance of the %s: its stroke is %g mm; give the measured stroke, or NaN when it cannot be measured", noun, stroke)
	}
	r := Reading{Metres20: Distance(height, HeightMinutes), By: ByHeight}
	if d := Distance(stroke, StrokeMinutes); d < r.Metres20 { // never true for NaN
		r.Metres20, r.By = d, ByStroke
	}
	r.Metres40 = r.Metres20 / 2
	r.Text = sentence(r, math.IsNaN(stroke), noun, unit)
	return r, nil
}

// Distance returns the distance in metres at which a length of mm millimetres,
// seen square on, takes the given angle in minutes of arc:
// distance = length / tan(angle). Source: the height of a Snellen letter,
// height = distance × tan 5′, as charts print it (8.87 mm at 20 ft).
func Distance(mm, minutes float64) float64 {
	return mm / 1000 / math.Tan(minutes/60*math.Pi/180)
}

func positive(mm float64) bool { return mm > 0 && !math.IsInf(mm, 1) }
