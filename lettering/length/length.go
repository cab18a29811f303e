// Package length holds lengths as someone wrote them: an exact whole number of
// nanometres together with the unit that was used. 8in and 203.2mm are equal,
// so a rule book's limit is compared without any rounding.
package length

import "math"

// Unit is the unit a length was written in.
type Unit uint8

// The units that an order may use.
const (
	Millimetre Unit = iota
	Centimetre
	Inch
	Point // 1/72 in, the typographic point of desktop publishing
)

// Nanometres per unit. 1 in = 25.4 mm exactly (international inch, 1959), so
// 1/64 in = 396,875 nm is whole too. A point is not a whole number of
// nanometres; Parse rounds it to the nearest one.
const (
	nmPerMM   = 1_000_000
	nmPerCM   = 10 * nmPerMM
	nmPerInch = 25_400_000
)

// String returns the unit's short form as orders write it.
func (u Unit) String() string {
	switch u {
	case Millimetre:
		return "mm"
	case Centimetre:
		return "cm"
	case Inch:
		return "in"
	case Point:
		return "pt"
	}
	return "?"
}

// Length is an exact length and the unit it was written in. The zero value is
// 0 mm.
type Length struct {
	nm   int64
	unit Unit
}

// FromMM returns the length nearest to mm millimetres, shown in unit.
func FromMM(mm float64, unit Unit) Length {
	return Length{int64(math.Round(mm * nmPerMM)), unit}
}

// Inches returns n/d inches; d must be a divisor of 25,400,000 for the result
// to be exact (every power of two up to 128 is).
func Inches(n, d int64) Length { return Length{n * nmPerInch / d, Inch} }

// MM returns the length in millimetres.
func (l Length) MM() float64 { return float64(l.nm) / nmPerMM }

// Nanometres returns the exact length.
func (l Length) Nanometres() int64 { return l.nm }

// Unit returns the unit the length was written in.
func (l Length) Unit() Unit { return l.unit }

// IsZero reports whether the length is zero, whatever its unit.
func (l Length) IsZero() bool { return l.nm == 0 }

// Compare returns -1, 0 or 1 as l is shorter than, equal to or longer than m.
func (l Length) Compare(m Length) int {
	switch {
	case l.nm < m.nm:
		return -1
	case l.nm > m.nm:
		return 1
	}
	return 0
}

// Add returns the sum, in l's unit.
func (l Length) Add(m Length) Length { return Length{l.nm + m.nm, l.unit} }
