package length

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Rounding says which way a printed figure goes. A figure held against a
// minimum rounds down and one held against a maximum rounds up, so that
// rounding never hides a fault.
type Rounding uint8

// The three ways to round.
const (
	Nearest Rounding = iota
	Down
	Up
)

// sixteenth is the finest division of an inch that is printed.
const sixteenth = 25.4 / 16

var vulgar = []struct {
	sixteenths  int
	sign, plain string
}{
	{2, "⅛", "1/8"}, {4, "¼", "1/4"}, {6, "⅜", "3/8"}, {8, "½", "1/2"},
	{10, "⅝", "5/8"}, {12, "¾", "3/4"}, {14, "⅞", "7/8"},
}

var (
	superior = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
	inferior = strings.NewReplacer("0", "₀", "1", "₁", "2", "₂", "3", "₃", "4", "₄", "5", "₅", "6", "₆", "7", "₇", "8", "₈", "9", "₉")
)

// Page prints mm millimetres for paper in the unit of the job: inches to the
// nearest sixteenth with built fractions and no-break spaces (11 ¹⁵⁄₁₆ in), or
// centimetres with one decimal (6.4 cm).
func Page(mm float64, unit Unit, r Rounding) string {
	return strings.ReplaceAll(format(mm, unit, r, pageFraction), " ", string(nbsp))
}

// Plain prints mm millimetres for a terminal or a file name: 11 15/16 in, 6.4 cm.
func Plain(mm float64, unit Unit, r Rounding) string { return format(mm, unit, r, plainFraction) }

// Exact prints mm millimetres with three decimals in the unit of the job, for
// a figure that would look equal to a limit that it misses.
func Exact(mm float64, unit Unit) string {
	if unit == Inch {
		return fmt.Sprintf("%.3f in", mm/25.4)
	}
	return fmt.Sprintf("%.3f cm", mm/10)
}

func format(mm float64, unit Unit, r Rounding, fraction func(int) string) string {
	sign := ""
	if mm < 0 {
		sign, mm = "-", -mm
	}
	if unit != Inch {
		return sign + strconv.FormatFloat(round(mm, r)/10, 'f', 1, 64) + " cm"
	}
	n := int(round(mm/sixteenth, r))
	whole, part := n/16, n%16
	switch {
	case part == 0:
		return fmt.Sprintf("%s%d in", sign, whole)
	case whole == 0:
		return sign + fraction(part) + " in"
	}
	return fmt.Sprintf("%s%d %s in", sign, whole, fraction(part))
}

// grain keeps a figure that is a whole number but for floating-point noise
// from being rounded one step away.
const grain = 1e-9

func round(v float64, r Rounding) float64 {
	switch r {
	case Down:
		return math.Floor(v + grain)
	case Up:
		return math.Ceil(v - grain)
	}
	return math.Round(v)
}

func pageFraction(sixteenths int) string {
	for _, f := range vulgar {
		if f.sixteenths == sixteenths {
			return f.sign
		}
	}
	return superior.Replace(strconv.Itoa(sixteenths)) + "\u2044" + inferior.Replace("16")
}

func plainFraction(sixteenths int) string {
	for _, f := range vulgar {
		if f.sixteenths == sixteenths {
			return f.plain
		}
	}
	return strconv.Itoa(sixteenths) + "/16"
}

// String prints the length in the unit it was written in, with a fraction for
// inches that are whole sixty-fourths: 2 1/2 in, 0.3 in, 64 mm.
func (l Length) String() string {
	const sixtyFourth = nmPerInch / 64
	switch l.unit {
	case Inch:
		if l.nm%sixtyFourth == 0 {
			return mixed(l.nm / sixtyFourth)
		}
		return decimal(float64(l.nm)/nmPerInch) + " in"
	case Centimetre:
		return decimal(float64(l.nm)/nmPerCM) + " cm"
	case Point:
		return decimal(float64(l.nm)*72/nmPerInch) + " pt"
	}
	return decimal(l.MM()) + " mm"
}

func mixed(sixtyFourths int64) string {
	whole, n, d := sixtyFourths/64, sixtyFourths%64, int64(64)
	for n != 0 && n%2 == 0 {
		n, d = n/2, d/2
	}
	switch {
	case n == 0:
		return fmt.Sprintf("%d in", whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d in", n, d)
	}
	return fmt.Sprintf("%d %d/%d in", whole, n, d)
}

func decimal(v float64) string { return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64) }
