// Package fit sets names: it lays a line of letters on its baseline, straight
// or arched, and finds the largest letters whose ink stays within a limit by
// the job's ladder (tracking, then width, then letter height). Widths are
// exact: they come from the face's curves, outlines included, and an eased or
// reduced name ends just under its limit. Lengths are mm, y grows upward, the
// baseline is at y = 0 and the ink box is centred on x = 0.
package fit

import (
	"fmt"
	"math"

	"yokeline/lettering/edges"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// Shape is the line that a name stands on.
type Shape uint8

// The shapes. On a radial arch every letter turns about the circle's centre;
// on a vertical arch the stems stay upright.
const (
	Straight Shape = iota
	RadialArch
	RadialArchDown
	VerticalArch
	VerticalArchDown
)

var shapeNames = [...]string{"straight", "radial arch", "radial arch down", "vertical arch", "vertical arch down"}

// String returns the shape's name, such as "radial arch down".
func (s Shape) String() string {
	if int(s) < len(shapeNames) {
		return shapeNames[s]
	}
	return fmt.Sprintf("shape %d", uint8(s))
}

func (s Shape) radial() bool   { return s == RadialArch || s == RadialArchDown }
func (s Shape) vertical() bool { return s == VerticalArch || s == VerticalArchDown }
func (s Shape) down() bool     { return s == RadialArchDown || s == VerticalArchDown }

// Spacing is the height in the letters at which a radial arch keeps the
// spacing of the straight line.
type Spacing uint8

// Baseline keeps the spacing at the letters' feet, so their heads spread on an
// arch up; Middle keeps it at half the letter height.
const (
	Baseline Spacing = iota
	Middle
)

// String returns "baseline" or "middle".
func (s Spacing) String() string {
	if s == Middle {
		return "middle"
	}
	return "baseline"
}

// Verdict says what it took to bring a name within its limit.
type Verdict uint8

// Full: at the height asked, untouched. Eased: tracking or width changed.
// Reduced: letter height changed. Over: it does not fit at the floors.
const (
	Full Verdict = iota
	Eased
	Reduced
	Over
)

var verdictNames = [...]string{"full", "eased", "reduced", "over"}

// String returns the verdict's word.
func (v Verdict) String() string {
	if int(v) < len(verdictNames) {
		return verdictNames[v]
	}
	return fmt.Sprintf("verdict %d", uint8(v))
}

// Ladder holds the floors that fitting may go down to, in the order in which
// it does.
type Ladder struct {
	Tracking float64 // share of the current letter height, 0 or below: -0.04; 0 switches the rung off
	Width    float64 // share of the asked width, up to 1: 0.80; 1 (or 0, not said) switches the rung off
	Height   float64 // mm; the asked height or more (or 0, not said) switches the rung off
}

// DefaultLadder returns the floors of a job that names none: tracking -4 %,
// width 80 %, letter height 60 % of the height asked (mm). Common practice, no
// source.
func DefaultLadder(asked float64) Ladder {
	return Ladder{Tracking: -0.04, Width: 0.80, Height: 0.60 * asked}
}

// Request is one name to fit.
type Request struct {
	Text        string // already in the case it is to be set in; a line break makes two lines
	Lang        string // BCP 47 tag, or empty
	Face        *typeface.Face
	Wdth, Wght  float64 // axis values; NaN for the face's default
	Height      float64 // asked letter height, mm
	Limit       float64 // mm; 0 for none
	Shape       Shape
	Radius      float64 // of an arch's baseline, mm, or 0
	Rise        float64 // sagitta over the limit as chord, mm, or 0; an arch needs one of the two
	Spacing     Spacing
	Outlines    []outline.Layer // from the inside outwards
	Ladder      Ladder
	Squash      bool    // lets a geometric scale follow a width axis at its end
	SmallestGap float64 // the decoration method's, mm; for the caller's findings, the fit does not use it

	// KeepGap is the distance, mm, that the bare ink of neighbouring letters
	// keeps on an arch, in the plane: tracking is raised as little as needed, on
	// every rung of the ladder, also over the tracking that the ladder would
	// take, and over 0. Outlines may then still touch; with KeepOutlines the gap
	// is that between finished outlines, as on a number. A name that only had to
	// be spread and fits its limit stays Full. A connected script is pulled
	// apart. 0 for none, which is the design's definition.
	KeepGap      float64
	KeepOutlines bool

	// Stroke chooses the weight of a face with a weight axis, in place of Wght:
	// the lightest whole value at which the strokes of every letter of the
	// alphabet (of the capitals alone for a text without small letters) are at
	// least this thick, mm, at the height asked. See Name.StrokeShort. 0 for none.
	Stroke float64
	// Embolden grows every letter outward by this many mm, corners mitred, at
	// the letter height asked, and then brings it back to that height: strokes
	// grow by twice this less a little. The white between letters stays as
	// designed. Letters that the ladder makes lower stay alike in shape. 0 for
	// none.
	Embolden float64
	// Raised are the indexes of the characters (of Text in NFC, from 0) that are
	// drawn small with their heads at the cap line, as in a prefix such as Mc.
	Raised []int
	// Optical evens the white between letters, see even.
	Optical bool

	// Edges draws the letters between two edges, or leaning, in place of an arch.
	// Rises are measured over the limit. The zero value leaves them straight.
	Edges edges.Shape

	Narrower  []*typeface.Face // faces to try for a way out, the first of equals wins
	NoWaysOut bool             // leaves Name.WouldFit empty, which costs several fits
}

// Name is a name as it comes out.
type Name struct {
	Text, FaceID string
	Shape        Shape
	Radius       float64 // mm; 0 when straight
	Asked        float64 // letter height asked, mm
	LetterHeight float64 // mm
	WidthScale   float64 // 1 as designed
	Wdth, Wght   float64 // axis values; NaN on a face without the axis
	Tracking     float64 // mm after each cluster but the last
	Leading      float64 // mm from the first baseline down to the second; 0 for one line

	InkWidth, InkHeight float64 // mm, outlines included
	BareInkWidth        float64 // mm, without outlines
	Limit               float64 // mm; 0 for none
	Verdict             Verdict
	OverBy              float64  // mm over the limit; 0 unless Over
	SmallestGap         float64  // mm between the bare ink of neighbouring letters; NaN for fewer than two
	WouldFit            []WayOut // for Reduced and Over, see WayOut

	// StrokeThin is the thinnest stroke (see package stroke) of the alphabet at
	// the size that came out, mm, and StrokeShort what it lacks to the stroke
	// asked for: over 0 where even the heaviest weight is too light, or where the
	// ladder made the letters lower or narrower. NaN and 0 when none was asked.
	StrokeThin, StrokeShort float64
	// Apex is the x at which an arch stands on y = 0; the circle's centre lies
	// Radius under it (over it for an arch down). It differs from 0 where the
	// ink is not symmetric about the middle of the line.
	Apex float64

	Edges edges.Shape // that the letters are drawn between, see Form
	art   *drawing    // what Ink draws from
}

// bold returns the emboldening as a share of the letter height.
func (r *Request) bold() float64 { return r.Embolden / r.Height }

// maxLength is the longest length in mm that a request may hold: a hundred
// metres, far beyond any garment, so that no arithmetic overflows.
const maxLength = 1e5

// check refuses what cannot be fitted.
func (r *Request) check() error {
	switch {
	case r.Face == nil:
		return fmt.Errorf("no face is given for %q", r.Text)
	case !(r.Height > 0 && r.Height <= maxLength):
		return fmt.Errorf("letter height of %q is %g mm; it must be over 0", r.Text, r.Height)
	case !(r.Limit >= 0 && r.Limit <= maxLength):
		return fmt.Errorf("limit of %q is %g mm; it must be over 0, or 0 for none", r.Text, r.Limit)
	case !(r.Ladder.Tracking <= 0 && r.Ladder.Tracking >= -1):
		return fmt.Errorf("tracking floor %g%% is outside -100%% to 0%%", 100*r.Ladder.Tracking)
	case !(r.Ladder.Width >= 0 && r.Ladder.Width <= 1):
		return fmt.Errorf("width floor %g%% is outside 0%% to 100%%", 100*r.Ladder.Width)
	case !(r.Ladder.Height >= 0):
		return fmt.Errorf("height floor %g mm is below 0", r.Ladder.Height)
	case !(r.KeepGap >= 0 && r.KeepGap <= maxLength):
		return fmt.Errorf("gap to keep of %q is %g mm; it must not be below 0", r.Text, r.KeepGap)
	case !(r.Stroke >= 0 && r.Stroke <= maxLength):
		return fmt.Errorf("stroke of %q is %g mm; it must not be below 0", r.Text, r.Stroke)
	case !(r.Embolden >= 0 && r.Embolden <= r.Height/4):
		return fmt.Errorf("emboldening of %q is %g mm; it must be 0 to a quarter of the letter height", r.Text, r.Embolden)
	case int(r.Shape) >= len(shapeNames):
		return fmt.Errorf("%v is unknown", r.Shape)
	}
	for _, l := range r.Outlines {
		if !(l.Width >= 0 && l.Width <= maxLength) {
			return fmt.Errorf("outline of %q is %g mm wide; it must not be below 0", r.Text, l.Width)
		}
	}
	if err := r.checkLines(); err != nil {
		return err
	}
	if err := r.checkEdges(); err != nil {
		return err
	}
	return r.checkArch()
}

func (r *Request) checkArch() error {
	if r.Shape == Straight {
		return nil
	}
	switch {
	case !(r.Radius >= 0 && r.Radius < math.Inf(1)) || !(r.Rise >= 0 && r.Rise <= maxLength):
		return fmt.Errorf("the %v of %q has radius %g mm and rise %g mm; neither may be below 0", r.Shape, r.Text, r.Radius, r.Rise)
	case r.Radius > 0 && r.Rise > 0:
		return fmt.Errorf("the %v of %q has both a radius and a rise; give one of them", r.Shape, r.Text)
	case r.Radius == 0 && r.Rise == 0:
		return fmt.Errorf("the %v of %q has neither radius nor rise; give one of them", r.Shape, r.Text)
	case r.Rise > 0 && r.Limit == 0:
		return fmt.Errorf("the rise of %q is measured over the limit, and there is no limit; give one, or a radius", r.Text)
	}
	return nil
}
