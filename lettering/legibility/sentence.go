package legibility

import (
	"math"
	"strconv"

	"yokeline/lettering/length"
)

// Metres in a foot and a yard, exact (international yard, 1959).
const (
	foot = 0.3048
	yard = 0.9144
)

// scale is a unit that distances are printed in.
type scale struct {
	metres float64
	sign   string
}

const (
	// leastYards is the distance below which a whole yard is too coarse a step.
	leastYards = 20.0
	// leastWhole is the figure below which one decimal is printed.
	leastWhole = 10.0
	// grain keeps a whole figure from dropping a step by floating-point noise.
	grain = 1e-9
)

// scaleFor chooses by the shorter distance, so that one sentence has one unit.
func scaleFor(shorter float64, unit length.Unit) scale {
	switch {
	case unit != length.Inch:
		return scale{1, "m"}
	case shorter/yard+grain < leastYards:
		return scale{foot, "ft"}
	}
	return scale{yard, "yd"}
}

// print rounds down, as the distance is the furthest at which reading works,
// and keeps figure and unit on one line.
func (s scale) print(metres float64) string {
	step, decimals := 1.0, 0
	if metres/s.metres+grain < leastWhole {
		step, decimals = 0.1, 1
	}
	figure := math.Floor(metres/s.metres/step+grain) * step
	if figure == 0 {
		return "under 0.1\u00a0" + s.sign
	}
	return strconv.FormatFloat(figure, 'f', decimals, 64) + "\u00a0" + s.sign
}

func sentence(r Reading, heightAlone bool, noun string, unit length.Unit) string {
	s := scaleFor(r.Metres40, unit)
	how := "worked out from the measured height and stroke, by Snellen's 5 and 1 minutes of arc"
	if heightAlone {
		how = "worked out from the measured height alone, by Snellen's 5 minutes of arc, as the stroke could not be measured"
	}
	return "A 20/20 eye reads the " + noun + " from " + s.print(r.Metres20) + ", a 20/40 eye from " + s.print(r.Metres40) +
		": " + how + "; glare, motion and colour make it less."
}
