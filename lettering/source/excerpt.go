package source

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
)

// room is how many columns of the line an excerpt shows, so that a fault fits
// a terminal of 80 with the gutter; tab is the distance of tab stops.
const (
	room = 72
	tab  = 4
)

// Text prints the fault for a terminal: place and message, the line with a
// caret under the characters meant, and the hint. Characters that would not
// show, or would turn the line round, are shown as <U+202E>.
func (f Fault) Text() string {
	var b strings.Builder
	if at := f.Place.String(); at != "" {
		b.WriteString(at + ": ")
	}
	b.WriteString(printable(f.Message))
	if strings.TrimSpace(f.Excerpt) != "" {
		line, caret := f.excerpt()
		gutter := ""
		if f.Place.Line > 0 {
			gutter = strconv.Itoa(f.Place.Line)
		}
		pad := strings.Repeat(" ", len(gutter))
		fmt.Fprintf(&b, "\n  %s | %s\n  %s | %s", gutter, line, pad, caret)
	}
	if f.Hint != "" {
		b.WriteString("\n  " + printable(f.Hint))
	}
	return b.String()
}

// piece is one character of an excerpt as it is shown.
type piece struct {
	text  string
	width int
}

// excerpt returns the line as shown and the carets below it. The two agree by
// display width, not by bytes or characters.
func (f Fault) excerpt() (line, caret string) {
	text, cut, more := near(f.Excerpt, max(f.Place.Column-1, 0))
	pieces := show(text)
	from := min(max(f.Place.Column-1-cut, 0), len(pieces))
	to := min(from+max(f.Width, 1), len(pieces))
	if f.Place.Cell != "" && f.Width == 0 {
		to = len(pieces)
	}
	lo, hi := window(pieces, from, to)
	var b strings.Builder
	before := 0
	if lo > 0 || cut > 0 {
		b.WriteString("…")
		before = 1
	}
	before += span(pieces[lo:from])
	for _, p := range pieces[lo:hi] {
		b.WriteString(p.text)
	}
	if hi < len(pieces) || more {
		b.WriteString("…")
	}
	carets := max(span(pieces[from:min(to, hi)]), 1)
	return b.String(), strings.Repeat(" ", before) + strings.Repeat("^", carets)
}

// reach is how many characters round a place are looked at in a line that may
// be as long as a file.
const reach = 4 * room

// near returns the stretch of a line round a place, how many characters were
// cut off before it, and whether any were after it.
func near(line string, at int) (text string, cut int, more bool) {
	if len(line) <= 4*reach {
		return line, 0, false
	}
	start, n := 0, 0
	for i := range line {
		switch n {
		case at - reach:
			start, cut = i, n
		case at + reach:
			return line[start:i], cut, true
		}
		n++
	}
	if at-reach >= n { // the place is far past the end
		return "", n, false
	}
	return line[start:], cut, false
}

// window chooses the characters lo to hi to show: the whole line if it fits,
// else a stretch of room columns with from to to in it, never cut between a
// letter and its accent.
func window(pieces []piece, from, to int) (lo, hi int) {
	if span(pieces) <= room {
		return 0, len(pieces)
	}
	lo, hi = from, from
	used := 0
	for hi < to && used+pieces[hi].width <= room {
		used += pieces[hi].width
		hi++
	}
	for grown := true; grown; {
		grown = false
		if lo > 0 && used+pieces[lo-1].width <= room {
			lo--
			used += pieces[lo].width
			grown = true
		}
		if hi < len(pieces) && used+pieces[hi].width <= room {
			used += pieces[hi].width
			hi++
			grown = true
		}
	}
	for lo < from && pieces[lo].width == 0 {
		lo++
	}
	for hi < len(pieces) && pieces[hi].width == 0 {
		hi++
	}
	return lo, hi
}

func span(pieces []piece) int {
	n := 0
	for _, p := range pieces {
		n += p.width
	}
	return n
}

// show turns a line into what a terminal draws, one piece a character.
func show(line string) []piece {
	var out []piece
	column, last := 0, rune(0)
	for _, r := range line {
		p := piece{string(r), runeWidth(last, r)}
		switch {
		case r == '\t':
			n := tab - column%tab
			p = piece{strings.Repeat(" ", n), n}
		case hidden(r):
			s := fmt.Sprintf("<U+%04X>", r)
			p = piece{s, len(s)}
		case p.width == 0 && len(out) == 0:
			p = piece{"◌" + string(r), 1} // a mark with nothing to sit on
		}
		out = append(out, p)
		column += p.width
		last = r
	}
	return out
}

// hidden reports whether r would not show or would change what is around it.
func hidden(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Co) ||
		unicode.Is(unicode.Zs, r) && r != ' ' && r != '\u3000'
}

// runeWidth is the columns r takes after last: none for marks, variation
// selectors, skin tones and joined jamo, two for wide East Asian characters
// and emoji (Unicode Standard Annex 11), else one.
func runeWidth(last, r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me), r >= 0x1160 && r <= 0x11FF:
		return 0
	case r >= 0x1F3FB && r <= 0x1F3FF && runeWidth(0, last) == 2:
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// printable shows hidden characters of a message, which may quote a name.
func printable(s string) string {
	if utf8.ValidString(s) && !strings.ContainsFunc(s, hidden) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if hidden(r) && r != '\u00a0' {
			fmt.Fprintf(&b, "<U+%04X>", r)
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}
