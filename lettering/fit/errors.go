package fit

import (
	"fmt"
	"math"
)

// TooTightError says that an arch is too tight for its name: a radial arch
// would turn past a half angle of 75 degrees, or a vertical arch is as wide as
// its circle.
type TooTightError struct {
	Text     string
	Shape    Shape
	Radius   float64 // that was to be used, mm
	Smallest float64 // radius that would do, mm
	Rise     float64 // largest rise that would do, mm; 0 when a radius was asked for
}

// Error names the radius or rise that would do, rounded to the safe side.
func (e *TooTightError) Error() string {
	const step = 0.1 // mm
	why := "turn by more than 75 degrees to a side"
	if e.Shape.vertical() {
		why = "be as wide as the circle"
	}
	use := fmt.Sprintf("use a radius of at least %.1f mm", math.Ceil(e.Smallest/step)*step)
	if e.Rise > 0 {
		use = fmt.Sprintf("use a rise of at most %.1f mm", math.Floor(e.Rise/step)*step)
	}
	return fmt.Sprintf("the %v of %q has radius %.1f mm and would %s; %s", e.Shape, e.Text, e.Radius, why, use)
}
