// Package rulebook holds what the bodies that govern a sport print about
// numbers and names on a uniform: a data file a body and sport, in a format of
// our own (described in books/README.md), each figure in the unit it was
// printed in, with the rule, the source it was read in, and the seasons it
// holds for. A figure that is only remembered says so. A figure that is not
// there is not known; it never means that anything is allowed.
package rulebook

import (
	"cmp"
	"slices"
	"strings"

	"yokeline/lettering/length"
)

// How says how a figure was come by.
type How string

// A figure was seen in the source that it names, or is recalled and must be
// confirmed in the body's current book before anyone relies on it.
const (
	HowRead   How = "read"
	HowMemory How = "memory"
)

// Source is a publication that figures were taken from.
type Source struct {
	Key       string // the name the book's own facts call it by
	Title     string
	Publisher string
	Season    string // season, edition or date of the publication; "" when it is undated
	Kind      string // primary, reprint, secondary, or unseen for a book nobody here has opened
}

// String returns the source as a finding cites it: publisher, title, season.
func (s Source) String() string {
	text := s.Publisher + ", " + s.Title
	if s.Season != "" {
		text += " (" + s.Season + ")"
	}
	return text
}

// Figure is one fact of a book: a length, a count or a word, with everything
// needed to cite it and to know when it holds.
type Figure struct {
	About string // what it is about: numbers, names, contrast, book, or a place such as back number
	Name  string // which figure: height at least, zero, required
	Is    string // the value as the file has it

	Length  length.Length   // a length in the unit printed; of "exactly", the first
	Lengths []length.Length // every length that "exactly" allows
	Count   int             // a whole number
	Ratio   float64         // a plain figure such as a contrast ratio

	Rule   string // rule or article; "" when the source names none
	Source Source
	How    How
	Advice bool   // recommended or approximate: worth knowing, not a rule to break
	From   string // first season or date it holds for; "" from the beginning
	Until  string // last season or date it holds for; "" until further notice
	For    []string
	Note   string // our remark on how the figure is to be read

	from, until day // the same as days, open ends as the smallest and largest
	line        int
}

// Yes reports whether a yes-or-no fact is known and says yes.
func (f *Figure) Yes() bool { return f != nil && f.Is == "yes" }

// Says reports whether the fact is known and is one of the words.
func (f *Figure) Says(words ...string) bool { return f != nil && slices.Contains(words, f.Is) }

// None reports that the book was read and prints no figure here, which is
// another thing than a figure that is not known.
func (f *Figure) None() bool { return f != nil && f.Is == "none printed" }

// Text returns the figure for people, its length in the unit printed.
func (f *Figure) Text() string {
	if len(f.Lengths) == 0 {
		return f.Is
	}
	parts := make([]string, len(f.Lengths))
	for i, l := range f.Lengths {
		parts[i] = l.String()
	}
	return strings.Join(parts, " or ")
}

// Seasons returns when the figure holds: "from 2022", "until 2027-28", "".
func (f *Figure) Seasons() string {
	switch {
	case f.From != "" && f.Until != "":
		return f.From + " to " + f.Until
	case f.From != "":
		return "from " + f.From
	case f.Until != "":
		return "until " + f.Until
	}
	return ""
}

// Book is one rule book with the figures of all its seasons.
type Book struct {
	ID      string
	Also    []string // other ids it answers to
	Body    string
	Sport   string
	Level   string
	Edition string
	Played  string // autumn, winter, spring or all year: which part of a year a bare season means
	Sources []Source
	Figures []Figure // in the order of the file
}

// Count returns how many figures were read and how many are from memory.
// Remarks are not figures.
func (b *Book) Count() (read, memory int) {
	for _, f := range b.Figures {
		switch {
		case f.Name == "note":
		case f.How == HowMemory:
			memory++
		default:
			read++
		}
	}
	return read, memory
}

// Categories returns the groups that the book has figures of their own for,
// such as women or 12U, sorted.
func (b *Book) Categories() []string {
	var out []string
	for _, f := range b.Figures {
		out = append(out, f.For...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// Places returns the places that a book may speak of, in the order in which
// everything lists them.
func Places() []string { return slices.Clone(places) }

var places = []string{
	"back number", "front number", "sleeve number", "shorts number", "shoulder number", "cap number", "helmet number", "captain mark",
}

func placeOrder(a, b string) int {
	return cmp.Compare(slices.Index(places, a), slices.Index(places, b))
}
