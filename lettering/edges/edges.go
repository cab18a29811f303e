// Package edges draws a straight line of letters between two edges: a top
// edge in place of the cap line and a bottom edge in place of the baseline,
// each straight, arched or slanted. Bulge, pinch, taper, slant, the vertical
// arch and the rest of Forms all come from that one map.
//
// A letter at the middle of the line keeps its letter height; every edge runs
// through its flat height there and leaves it to both sides. Every point keeps
// its x, so stems stay upright and widths stay as they were. Points under the
// baseline and over the cap line follow in proportion. An oblique shear comes
// first: the letters lean as an oblique face leans, then they are drawn
// between the edges.
//
// Lengths are mm, y grows upward, the flat baseline is y = 0, the middle of
// the line is x = 0. Angles are radians.
package edges

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// Kind is the geometry of an edge.
type Kind uint8

// The kinds of edges. Straight lies level; an Arch is part of a circle whose
// crest, or lowest point, is at the middle; a Slant is a straight line that
// climbs or falls.
const (
	Straight Kind = iota
	Arch
	Slant
)

var kindNames = [...]string{"straight", "arched", "slanted"}

// String returns "straight", "arched" or "slanted".
func (k Kind) String() string {
	if int(k) < len(kindNames) {
		return kindNames[k]
	}
	return fmt.Sprintf("edge kind %d", uint8(k))
}

// Edge is one edge. At most one of its figures is not 0; with none the edge
// is straight whatever its kind.
type Edge struct {
	Kind Kind
	// Rise is, of an arch, the sagitta over the chord, mm, over 0 with the
	// crest up and under 0 with it down. Of a slant it is how much higher the
	// right end of the chord lies than the left.
	Rise float64
	// Radius is that of an arch, mm, over 0 with the crest up and under 0 with
	// it down.
	Radius float64
	// Angle is that of a slant, over 0 when it climbs to the right.
	Angle float64
}

// Shape is two edges and the lean of the letters between them. The zero Shape
// leaves letters as they are.
type Shape struct {
	Top, Bottom Edge
	// Shear is the angle by which letters lean to the right: x gains
	// y·tan(Shear). The middle of the edges moves along with the middle of the
	// leaning letters.
	Shear float64
}

// Steepest is the largest angle of a shear or a slant: 60 degrees. Beyond it
// letters can no longer be read; from memory, no source.
const Steepest = math.Pi / 3

// maxLength is the longest length in mm that is taken: a hundred metres, far
// beyond any garment, so that no arithmetic overflows.
const maxLength = 1e5

// String returns the name of the form, such as "bulge", or the two edges, such
// as "arched top over slanted foot".
func (s Shape) String() string {
	for f := range Form(len(forms)) {
		if forms[f].top == s.Top.direction() && forms[f].bottom == s.Bottom.direction() {
			return f.String()
		}
	}
	return s.Top.direction().kind.String() + " top over " + s.Bottom.direction().kind.String() + " foot"
}

// level reports an edge that is straight in fact.
func (e Edge) level() bool { return e.Rise == 0 && e.Radius == 0 && e.Angle == 0 }

// scaled returns the edge with k times its strength, k from 0 to 1.
func (e Edge) scaled(k float64) Edge {
	if k == 0 {
		return Edge{}
	}
	e.Rise *= k
	e.Radius /= k
	e.Angle = math.Atan(k * math.Tan(e.Angle))
	return e
}

func (s Shape) scaled(k float64) Shape {
	return Shape{s.Top.scaled(k), s.Bottom.scaled(k), s.Shear}
}

// check refuses an edge that makes no sense over the chord; which is "top" or
// "foot".
func (e Edge) check(which string, chord float64) error {
	figures := 0
	for _, v := range [3]float64{e.Rise, e.Radius, e.Angle} {
		if v != 0 {
			figures++
		}
	}
	switch {
	case int(e.Kind) >= len(kindNames):
		return fmt.Errorf("%s edge is of unknown kind %d: use straight, arched or slanted", which, e.Kind)
	case figures > 1:
		return fmt.Errorf("%s edge has more than one of rise, radius and angle; give one of them", which)
	case e.Kind == Straight && figures > 0:
		return fmt.Errorf("%s edge is straight and has a rise, radius or angle; make it arched or slanted, or leave the figure out", which)
	case e.Kind == Arch && e.Angle != 0:
		return fmt.Errorf("%s edge is arched and has an angle; give a rise or a radius", which)
	case e.Kind == Slant && e.Radius != 0:
		return fmt.Errorf("%s edge is slanted and has a radius; give a rise or an angle", which)
	case !(math.Abs(e.Rise) <= maxLength) || math.IsNaN(e.Radius) || math.IsInf(e.Radius, 0):
		return fmt.Errorf("%s edge has rise %g mm and radius %g mm; give a length up to %g mm", which, e.Rise, e.Radius, maxLength)
	case !(math.Abs(e.Angle) <= Steepest):
		return fmt.Errorf("%s edge slants by %.4g degrees; use at most %.0f", which, degrees(e.Angle), degrees(Steepest))
	case e.Rise != 0 && chord == 0:
		return fmt.Errorf("rise of the %s edge is measured over the limit, and there is no limit; give one, or a radius or an angle", which)
	case e.Kind == Arch && math.Abs(e.Rise) > chord/2:
		return fmt.Errorf("rise of the %s edge is %.4g mm over a chord of %.4g mm; use at most half the chord, %.4g mm", which, math.Abs(e.Rise), chord, chord/2)
	case e.Kind == Slant && math.Abs(e.Rise) > chord*math.Tan(Steepest):
		return fmt.Errorf("rise of the %s edge is %.4g mm over a chord of %.4g mm; use at most %.4g mm", which, math.Abs(e.Rise), chord, chord*math.Tan(Steepest))
	}
	return nil
}

func (s Shape) check(height, chord float64) error {
	switch {
	case !(height > 0 && height <= maxLength):
		return fmt.Errorf("letter height between edges is %g mm; it must be over 0", height)
	case !(chord >= 0 && chord <= maxLength):
		return fmt.Errorf("chord of the edges is %g mm; it must be over 0, or 0 for none", chord)
	case !(math.Abs(s.Shear) <= Steepest):
		return fmt.Errorf("shear is %.4g degrees; use at most %.0f to either side", degrees(s.Shear), degrees(Steepest))
	}
	if err := s.Top.check("top", chord); err != nil {
		return err
	}
	return s.Bottom.check("foot", chord)
}

func degrees(angle float64) float64 { return angle * 180 / math.Pi }

// Oblique returns the shear alone. It is affine, so a fit can put it into the
// maps of its glyphs and keep its exact widths; the shape's Shear is then to
// be 0.
func (s Shape) Oblique() geom.Affine {
	return geom.Affine{A: 1, C: math.Tan(s.Shear), D: 1}
}

// Width returns the ends along x, mm, of a flat rectangle between the edges:
// exact for the rectangle, an outer bound for ink inside it. Only the shear
// moves x.
func (s Shape) Width(bare geom.Rect) (from, to float64) {
	if bare.Empty() {
		return 0, 0
	}
	low, high := bare.Min.Y*math.Tan(s.Shear), bare.Max.Y*math.Tan(s.Shear)
	return bare.Min.X + min(low, high), bare.Max.X + max(low, high)
}

// Extent returns the ends along x, mm, of the flat ink between the edges. It
// is exact, from the curves; 0, 0 for a path without points.
func (s Shape) Extent(ink geom.Path) (from, to float64) {
	if s.Shear != 0 {
		ink = ink.Transform(s.Oblique())
	}
	box := ink.Bounds()
	if box.Empty() {
		return 0, 0
	}
	return box.Min.X, box.Max.X
}
