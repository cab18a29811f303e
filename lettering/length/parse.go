package length

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
)

// longest is the largest length an order may name: 100 m. Anything longer is
// a slip of the pen and would only overflow later arithmetic.
const longest = 100_000 * nmPerMM

// nbsp separates figures and units in printed lengths; pasted text brings it in.
const nbsp = '\u00a0'

var unitNames = []struct {
	name string
	unit Unit
}{
	{"inches", Inch}, {"inch", Inch}, {"in", Inch}, {"\"", Inch}, {"″", Inch}, {"”", Inch},
	{"mm", Millimetre}, {"cm", Centimetre}, {"pt", Point},
}

// Parse reads a length such as 2.5in, 2 1/2in, 2-1/2", 2½ in, 64mm, 6.4cm or
// 18pt. It returns an error for a missing unit, an unknown unit, a negative
// figure, a zero divisor, or a figure over 100 m.
func Parse(s string) (Length, error) {
	text := strings.TrimSpace(strings.ToLower(strings.ReplaceAll(s, string(nbsp), " ")))
	if text == "" {
		return Length{}, fmt.Errorf("a length is missing: write a figure and a unit, such as 2 1/2in or 64mm")
	}
	figure, unit, err := splitUnit(text)
	if err != nil {
		return Length{}, err
	}
	value, err := parseFigure(figure)
	if err != nil {
		return Length{}, fmt.Errorf("%q is not a length: %w", s, err)
	}
	nm, err := toNanometres(value, unit)
	if err != nil {
		return Length{}, fmt.Errorf("%q: %w", s, err)
	}
	return Length{nm, unit}, nil
}

func splitUnit(text string) (figure string, unit Unit, err error) {
	for _, u := range unitNames {
		if rest, ok := strings.CutSuffix(text, u.name); ok {
			return strings.TrimSpace(rest), u.unit, nil
		}
	}
	if last := text[len(text)-1]; last >= '0' && last <= '9' {
		return "", 0, fmt.Errorf("%q has no unit: write %sin, %smm or %scm", text, text, text, text)
	}
	return "", 0, fmt.Errorf("%q is not a length: use in, mm, cm or pt, such as 2 1/2in or 64mm", text)
}

// parseFigure reads a decimal, a fraction, or a whole number and a fraction
// parted by a space or a hyphen.
func parseFigure(s string) (*big.Rat, error) {
	s = spellFractions(s)
	whole, fraction, mixed := cutAny(s, " -")
	if !mixed {
		return parsePart(s)
	}
	w, err := parsePart(whole)
	if err != nil || !w.IsInt() {
		return nil, fmt.Errorf("the part before the fraction must be a whole number")
	}
	if !strings.Contains(fraction, "/") {
		return nil, fmt.Errorf("two figures without a fraction")
	}
	f, err := parsePart(strings.TrimSpace(fraction))
	if err != nil {
		return nil, err
	}
	if f.Cmp(big.NewRat(1, 1)) >= 0 {
		return nil, fmt.Errorf("the fraction must be less than one")
	}
	return w.Add(w, f), nil
}

func cutAny(s, chars string) (before, after string, found bool) {
	if i := strings.IndexAny(s, chars); i > 0 {
		return s[:i], s[i+1:], true
	}
	return s, "", false
}

func parsePart(s string) (*big.Rat, error) {
	if s == "" || len(s) > 20 {
		return nil, fmt.Errorf("a figure is missing or too long")
	}
	for _, r := range s {
		if !unicode.IsDigit(r) && r != '.' && r != '/' || r > unicode.MaxASCII {
			return nil, fmt.Errorf("unexpected %q", r)
		}
	}
	if n, d, ok := strings.Cut(s, "/"); ok && (strings.Contains(s, ".") || n == "" || strings.Trim(d, "0") == "") {
		return nil, fmt.Errorf("%q is not a fraction", s)
	}
	v, ok := new(big.Rat).SetString(s)
	if !ok {
		return nil, fmt.Errorf("%q is not a figure", s)
	}
	return v, nil
}

// spellFractions writes ½ as 1/2, with a space after a whole number.
func spellFractions(s string) string {
	for _, f := range vulgar {
		if whole, rest, ok := strings.Cut(s, f.sign); ok {
			whole = strings.TrimSpace(whole)
			if whole != "" {
				whole += " "
			}
			return whole + f.plain + rest
		}
	}
	return s
}

func toNanometres(v *big.Rat, u Unit) (int64, error) {
	per := big.NewRat(nmPerMM, 1)
	switch u {
	case Centimetre:
		per = big.NewRat(nmPerCM, 1)
	case Inch:
		per = big.NewRat(nmPerInch, 1)
	case Point:
		per = big.NewRat(nmPerInch, 72)
	}
	nm := new(big.Rat).Mul(v, per)
	if nm.Cmp(big.NewRat(longest, 1)) > 0 {
		return 0, fmt.Errorf("more than 100 m")
	}
	return roundRat(nm), nil
}

// roundRat rounds to the nearest whole number, halves up; v is not negative.
func roundRat(v *big.Rat) int64 {
	twice := new(big.Int).Mul(v.Num(), big.NewInt(2))
	twice.Add(twice, v.Denom())
	return twice.Div(twice, new(big.Int).Mul(v.Denom(), big.NewInt(2))).Int64()
}
