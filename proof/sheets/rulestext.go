package sheets

import (
	"regexp"
	"strconv"
	"strings"

	"yokeline/lettering/length"
)

// plainLength matches a length as messages print it: 7 1/2 in, 3/16 in, 6.4 cm.
var plainLength = regexp.MustCompile(`(?:(\d+) )?\b(\d+)/(\d+) in\b|(\d) (in|cm|mm|pt)\b`)

// onPage sets the lengths of a message as the pages print them: with built
// fractions, and with spaces that do not break.
func onPage(text string) string {
	return plainLength.ReplaceAllStringFunc(text, func(found string) string {
		m := plainLength.FindStringSubmatch(found)
		if m[4] != "" {
			return m[4] + "\u00a0" + m[5]
		}
		n, _ := strconv.Atoi(m[2])
		of, _ := strconv.Atoi(m[3])
		out := builtFraction(n, of) + "\u00a0in"
		if m[1] != "" {
			out = m[1] + "\u00a0" + out
		}
		return out
	})
}

// colourScience matches the figures of a colour that only a laboratory reads, and
// those of the borders, which have no say where the body is what must stand out.
var colourScience = regexp.MustCompile(` \(L\* [^)]*\)|; border[ \d]* to garment.*$`)

// forCoach leaves out of a measure what a coach has no use for; check prints it.
func forCoach(text string) string { return colourScience.ReplaceAllString(text, "") }

// builtFraction sets n/of as one sign, or from superior and inferior figures.
func builtFraction(n, of int) string {
	if of > 0 && 16%of == 0 && n < of {
		return strings.TrimSuffix(length.Page(25.4*float64(n)/float64(of), length.Inch, length.Nearest), "\u00a0in")
	}
	return raised(n, '⁰') + "\u2044" + raised(of, '₀')
}

// raised writes a number in superior or inferior figures.
func raised(n int, zero rune) string {
	superior := map[rune]rune{'1': '¹', '2': '²', '3': '³'} // these three stand apart in Unicode
	var b strings.Builder
	for _, r := range strconv.Itoa(n) {
		if odd, ok := superior[r]; ok && zero == '⁰' {
			b.WriteRune(odd)
			continue
		}
		b.WriteRune(zero + r - '0')
	}
	return b.String()
}
