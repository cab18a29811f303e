// Package numeral sets players' numbers: digits side by side, without the
// face's kerning, with one and the same gap between the ink of neighbours. A
// number is text: 0, 00, 7 and 07 all differ. Lengths are mm, y grows upward,
// digits stand on y = 0 and the ink box is centred on x = 0.
package numeral

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
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
}

// Number is a number as it comes out.
type Number struct {
	Text, FaceID string
	Height       float64 // number height, mm
	TallestDigit float64 // ink height of the tallest digit, mm

	InkWidth, InkHeight float64 // mm, outlines included
	BareInkWidth        float64 // mm, without outlines
	Gap                 float64 // mm; NaN for one digit
	GapRaised           bool    // the gap was too small for the outlines and the method
	// StrokeThin and StrokeMain are the smallest of the digits' strokes, mm, as
	// package stroke measures them; NaN when a digit's is not measurable.
	StrokeThin, StrokeMain float64

	Limit          float64 // mm; 0 for none
	Verdict        string  // Full or Over
	WouldFitHeight float64 // for Over: the number height that fits, mm; 0 when none does

	// Ink is the bare digits as curves. Contours may overlap.
	Ink geom.Path
}

// Settled returns the bare ink flattened within half of outline.Tolerance and
// merged.
func (n Number) Settled() (geom.Region, error) {
	return outline.Union(n.Ink.Flatten(outline.Tolerance / 2))
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
	}{{"height", r.Height}, {"smallest gap", r.SmallestGap}, {"limit", r.Limit}, {"gap", r.Gap}}
	for _, l := range lengths {
		bad := !(l.value >= 0 && l.value <= maxLength)
		if l.what == "gap" && math.IsNaN(l.value) {
			bad = false
		}
		if bad || l.what == "height" && l.value == 0 {
			return fmt.Errorf("%s of number %q is %g mm; give a length over 0", l.what, r.Text, l.value)
		}
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
