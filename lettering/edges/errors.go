package edges

import (
	"fmt"
	"math"
)

// Kept is the share of the letter height that the shape named by a VanishError
// leaves at its smallest letter. Common practice, no source.
const Kept = 0.25

// step is what the figures in errors are rounded to, to the safe side: mm or
// degrees.
const step = 0.1

// WideError says that letters are as wide as the circle of an arched edge.
type WideError struct {
	Shape    Shape
	Edge     string  // "top" or "foot"
	Radius   float64 // that was to be used, mm
	Smallest float64 // radius that would do, mm
	Rise     float64 // largest rise that would do, mm; 0 when a radius was asked for
}

// Error names the radius or the rise that would do.
func (e *WideError) Error() string {
	use := fmt.Sprintf("a radius of at least %.1f mm", up(e.Smallest))
	if e.Rise > 0 {
		use = fmt.Sprintf("a rise of at most %.1f mm", down(e.Rise))
	}
	return fmt.Sprintf("%s edge of the %v has radius %.1f mm and the letters are as wide as its circle; use %s", e.Edge, e.Shape, e.Radius, use)
}

// VanishError says that the edges touch or cross within the width of the
// letters, so that some would have no height.
type VanishError struct {
	Shape  Shape
	Height float64 // letter height, mm
	X      float64 // where the letters would be smallest, mm
	Left   float64 // their height there, mm; 0 or under
	Use    Shape   // the strongest edges in the same proportion that leave Kept of the letter height
}

// Error names the figures that would do.
func (e *VanishError) Error() string {
	return fmt.Sprintf("edges of the %v meet at %.1f mm from the middle and letters of %.1f mm would vanish there; use %s",
		e.Shape, math.Abs(e.X), e.Height, e.remedy())
}

func (e *VanishError) remedy() string {
	top, bottom := e.Use.Top, e.Use.Bottom
	switch {
	case bottom.level() || top.strength() == bottom.strength():
		return top.atMost("")
	case top.level():
		return bottom.atMost("")
	}
	return top.atMost("top ") + " and " + bottom.atMost("foot ")
}

// strength is the edge without its direction.
func (e Edge) strength() Edge {
	return Edge{e.Kind, math.Abs(e.Rise), math.Abs(e.Radius), math.Abs(e.Angle)}
}

// atMost says which figure the edge may have.
func (e Edge) atMost(which string) string {
	switch {
	case e.Radius != 0:
		return fmt.Sprintf("a %sradius of at least %.1f mm", which, up(math.Abs(e.Radius)))
	case e.Angle != 0:
		return fmt.Sprintf("an %sangle of at most %.1f degrees", which, down(degrees(math.Abs(e.Angle))))
	}
	return fmt.Sprintf("a %srise of at most %.1f mm", which, down(math.Abs(e.Rise)))
}

func up(v float64) float64   { return math.Ceil(v/step) * step }
func down(v float64) float64 { return math.Floor(v/step) * step }
