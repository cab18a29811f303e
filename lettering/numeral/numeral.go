// Package numeral sets players' numbers: digits side by side, without the
// face's kerning, with one and the same gap between the ink of neighbours. A
// number is text: 0, 00, 7 and 07 all differ. Lengths are mm, y grows upward,
// digits stand on y = 0 and the ink box is centred on x = 0.
package numeral

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// MaxDigits is the longest number that is set. No rule book that the project
// knows allows more than two digits on a player; three leave room for events.
const MaxDigits = 3

// DefaultGap is the ink gap of a number that asks for none, as a share of the
// number height. Common practice, no source.
const DefaultGap = 0.06

// The verdicts of a number.
const (
	Full = "full" // within its limit, or there is none
	Over = "over" // wider than its limit at the height asked
)

// Request is one number to set.
type Request struct {
	Text        string // digits only
	Face        *typeface.Face
	Wdth, Wght  float64 // axis values; NaN for the face's default
	Height      float64 // number height, mm: the ink of the shortest digit present
	Gap         float64 // between neighbours' bare ink, mm; NaN for the default, 6 % of the height
	SmallestGap float64 // that the decoration method can make, mm; 0 for none
	Limit       float64 // mm; 0 for none
	Outlines    []outline.Layer
	Ones        Ones // how much room a 1 takes

	// Stroke chooses the weight of a face with a weight axis, in place of Wght:
	// the lightest whole value at which each of the ten digits, alone and at this
	// height, has a StrokeThin of at least Stroke, mm. The ten, and not those of
	// this number, so that a team's numbers are alike. 0 for none.
	Stroke float64
	// Embolden grows every digit outward by this many mm, corners mitred, on
	// digits of the height asked, and then brings them back to that height:
	// strokes grow by twice this less a little. Gaps are those of the
	// emboldened ink. 0 for none.
	Embolden float64
	// EmboldenTo solves for the smallest Embolden, in steps of a ten thousandth
	// of the height, that gives each of the ten digits a StrokeThin of at least
	// this, mm. 0 for none; not together with Embolden.
	EmboldenTo float64
}

// Number is a number as it comes out.
type Number struct {
	Text, FaceID string
	Height       float64 // number height, mm
	TallestDigit float64 // ink height of the tallest digit, mm
	// NarrowestDigit is the width of the narrowest digit's bare ink, mm.
	NarrowestDigit float64

	InkWidth, InkHeight float64 // mm, outlines included
	BareInkWidth        float64 // mm, without outlines
	Gap                 float64 // mm, at a 1 of full width to its room; NaN for one digit
	GapRaised           bool    // the gap was too small for the outlines and the method
	// StrokeThin and StrokeMain are the smallest of the digits' strokes, mm, as
	// package stroke measures them; NaN when a digit's is not measurable.
	StrokeThin, StrokeMain float64
	// StrokeShort is what StrokeThin lacks to the stroke asked for, mm, where
	// even the heaviest weight or the most emboldening is not enough; 0 when
	// none is missing, NaN when the stroke is not measurable.
	StrokeShort float64
	Wght        float64 // value of the weight axis; NaN on a face without one
	Embolden    float64 // mm that the digits were grown by before they were brought back to height

	Limit          float64 // mm; 0 for none
	Verdict        string  // Full or Over
	WouldFitHeight float64 // for Over: the number height that fits, mm; 0 when none does

	art drawing
}

// drawing is what a number's digits are drawn from when someone asks for them.
type drawing struct {
	cut   *weight.Cut
	scale float64            // mm per font unit
	at    [MaxDigits]float64 // origins, mm
}

func (d *drawing) place(i int) geom.Affine {
	return geom.Affine{A: d.scale, D: d.scale, E: d.at[i]}
}

// Ink returns the bare digits as curves, drawn anew at each call; the path is
// the caller's own. Contours may overlap. It is safe for concurrent use, and
// empty for a Number that no Sizer made.
func (n Number) Ink() geom.Path {
	if n.art.cut == nil {
		return nil
	}
	var path geom.Path
	for i, c := range n.Text {
		// The digits were drawn when they were measured, so neither step can fail.
		id, err := n.art.cut.Face().Digit(c)
		if err != nil {
			return nil
		}
		glyph, err := n.art.cut.Path(id)
		if err != nil {
			return nil
		}
		path = ink.DrawPath(path, glyph, ink.Warp{Map: n.art.place(i)}, outline.Tolerance)
	}
	return path
}

// Settled returns the bare ink flattened within half of outline.Tolerance and
// merged.
func (n Number) Settled() (geom.Region, error) {
	return outline.Union(n.Ink().Flatten(outline.Tolerance / 2))
}

// maxLength bounds every length of a request, mm.
const maxLength = 1e5

func (r *Request) check() error {
	if r.Face == nil {
		return fmt.Errorf("no face is given for number %q", r.Text)
	}
	if len(r.Text) < 1 || len(r.Text) > MaxDigits {
		return fmt.Errorf("number %q has %d characters; give 1 to %d digits", r.Text, len(r.Text), MaxDigits)
	}
	for _, d := range r.Text {
		if d < '0' || d > '9' {
			return fmt.Errorf("number %q contains %q (%U); use the digits 0 to 9 only", r.Text, d, d)
		}
	}
	lengths := []struct {
		what  string
		value float64
	}{{"height", r.Height}, {"smallest gap", r.SmallestGap}, {"limit", r.Limit}, {"gap", r.Gap}, {"emboldening", r.Embolden},
		{"stroke", r.Stroke}, {"stroke to embolden to", r.EmboldenTo}}
	for _, l := range lengths {
		bad := !(l.value >= 0 && l.value <= maxLength)
		if l.what == "gap" && math.IsNaN(l.value) {
			bad = false
		}
		if bad || l.what == "height" && l.value == 0 {
			return fmt.Errorf("%s of number %q is %g mm; give a length over 0", l.what, r.Text, l.value)
		}
	}
	if r.Embolden > 0 && r.EmboldenTo > 0 {
		return fmt.Errorf("number %q has both an emboldening and a stroke to embolden to; give one of them", r.Text)
	}
	for _, l := range r.Outlines {
		if !(l.Width >= 0 && l.Width <= maxLength) {
			return fmt.Errorf("outline of number %q is %g mm wide; it must not be below 0", r.Text, l.Width)
		}
	}
	return nil
}

// gap returns the gap at a number height and whether it had to be raised.
func (r *Request) gap(height float64) (gap float64, raised bool) {
	gap = r.Gap
	if math.IsNaN(gap) {
		gap = DefaultGap * height
	}
	if least := 2*outline.Reach(r.Outlines) + r.SmallestGap; gap < least {
		return least, true
	}
	return gap, false
}
