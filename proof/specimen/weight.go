package specimen

import (
	"math"

	"yokeline/lettering/typeface"
)

// nan asks for a face's own default on an axis.
var nan = math.NaN()

// showWeight is the weight that a face with a weight axis is shown at: heavy
// enough to be cut, as the faces' own notes recommend for numbers.
const showWeight = 800.0

func weightOf(face *typeface.Face) float64 {
	for _, a := range face.Axes() {
		if a.Tag == "wght" {
			return math.Min(a.Max, showWeight)
		}
	}
	return nan
}
