package parts

import (
	"strings"

	"yokeline/proof/page"
)

// The comb, mm.
const (
	combPitch   = 1.15
	combWeight  = 0.42
	combRule    = 0.25
	combMargin  = 0.5 // of the rule beyond the outer teeth
	toothLeast  = 0.8
	toothRange  = 4.2
	combTeeth   = 16
	combDigits  = "0123456789abcdef"
	codeGroup   = 4
	highestHex  = 15
	codeMissing = "–"
)

// Comb draws the fingerprint as sixteen teeth that hang from a rule, the first
// at x: the length of a tooth is one hexadecimal digit of the code. Characters
// that are no digits are passed over.
func Comb(p *page.Pen, x, y float64, code string) {
	p.Line(x-combMargin, y, x+(combTeeth-1)*combPitch+combMargin, y, Ink, solid(combRule))
	for i, d := range hexDigits(code) {
		at := x + float64(i)*combPitch
		p.Line(at, y, at, y+toothLeast+toothRange*float64(d)/highestHex, Ink, solid(combWeight))
	}
}

// hexDigits returns the values of at most the first sixteen digits.
func hexDigits(code string) []int {
	var out []int
	for _, r := range strings.ToLower(code) {
		if d := strings.IndexRune(combDigits, r); d >= 0 && len(out) < combTeeth {
			out = append(out, d)
		}
	}
	return out
}

// Code returns the first sixteen digits of a fingerprint in four groups, as
// they are printed beside the comb.
func Code(fingerprint string) string {
	var b strings.Builder
	for i, d := range hexDigits(fingerprint) {
		if i > 0 && i%codeGroup == 0 {
			b.WriteByte(' ')
		}
		b.WriteByte(combDigits[d])
	}
	if b.Len() == 0 {
		return codeMissing
	}
	return b.String()
}
