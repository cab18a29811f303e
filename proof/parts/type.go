package parts

import (
	"math"
	"sort"
	"strings"

	"yokeline/proof/page"
)

// Type is a way of setting text that has a name in the style guide: a style
// and the distance between its lines in points.
type Type struct {
	page.Style
	Leading float64
}

func set(size, leading float64, w page.Weight, c page.Colour) Type {
	return Type{page.Style{Size: size, Weight: w, Colour: c}, leading}
}

// PageTitle is the title of a page.
func PageTitle() Type {
	t := set(21, 25, page.SemiBold, Ink)
	t.Tracking = -0.08
	return t
}

// BigNumber is a player's number beside the choices.
func BigNumber() Type { return set(14, 17, page.SemiBold, Ink) }

// Heading is a player's number on a tile, the name of a view, a size.
func Heading() Type { return set(11, 14, page.SemiBold, Ink) }

// RowNumber is the number in the sign-off table and the name beside choices.
func RowNumber() Type { return set(10, 13, page.SemiBold, Ink) }

// RowName is the name in the sign-off table: wide, so that each letter is read.
func RowName() Type {
	t := set(9.5, 13, page.SemiBold, Ink)
	t.Tracking = 0.22
	return t
}

// Sentence is the line that says a page's result.
func Sentence() Type { return set(9, 12.4, page.Regular, Ink) }

// GroupTitle is the title of a group, a way out, or the name on a tile.
func GroupTitle() Type { return set(9, 12, page.SemiBold, Ink) }

// TableText is the text of the table of rules.
func TableText() Type { return set(8.5, 11, page.Regular, Ink) }

// Value is the value of a length or a field.
func Value() Type { return set(8, 10.8, page.SemiBold, Ink) }

// Caption is a caption, a term, a figure in the table of sizes.
func Caption() Type { return set(7.5, 10.2, page.Regular, Ink) }

// Note is a note or a column head.
func Note() Type { return set(7, 9.6, page.Regular, Slate) }

// Label is the label of a length or a field: nothing is smaller.
func Label() Type { return set(6.5, 8.6, page.Regular, Slate) }

// In returns the type in another colour.
func (t Type) In(c page.Colour) Type { t.Colour = c; return t }

// Bold returns the type in the heavier weight.
func (t Type) Bold() Type { t.Weight = page.SemiBold; return t }

// To returns the type aligned otherwise.
func (t Type) To(a page.Align) Type { t.Align = a; return t }

// Sized returns the type in another size, its leading in proportion.
func (t Type) Sized(size float64) Type {
	t.Leading *= size / t.Size
	t.Size = size
	return t
}

// Span returns a piece of a line set in the type.
func (t Type) Span(text string) page.Span { return page.Span{Style: t.Style, Text: text} }

// Shrunk returns the type in the largest size, of steps of 0.1 pt down to
// least, in which the text takes at most width mm; fits is false when even the
// smallest is too wide.
func Shrunk(p *page.Pen, t Type, least, width float64, text string) (shrunk Type, fits bool) {
	wide := p.Width(t.Style, text)
	if wide <= width {
		return t, true
	}
	// Width goes with the size, but for tracking: start from the size that
	// would fit without it.
	start := math.Ceil(10*t.Size*max(0, width)/wide) + 1
	for tenths := min(start, 10*t.Size-1); tenths >= least*10; tenths-- {
		s := t.Sized(math.Round(tenths) / 10)
		if p.Width(s.Style, text) <= width {
			return s, true
		}
	}
	return t.Sized(least), false
}

// Shortened returns the text cut to width mm with an ellipsis. It is for
// labels of a page; a player's name is never shortened.
func Shortened(p *page.Pen, t Type, width float64, text string) string {
	if p.Width(t.Style, text) <= width {
		return text
	}
	runes := []rune(text)
	cut := func(n int) string { return strings.TrimRight(string(runes[:n]), " ") + "…" }
	n := sort.Search(len(runes), func(n int) bool { return p.Width(t.Style, cut(n)) > width })
	return cut(max(0, n-1))
}
