package findings

import (
	"fmt"
	"slices"
	"unicode"

	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// Letters counts the letters of a name as it is cut: spaces, hyphens and marks
// on a letter are none.
func Letters(text string) int {
	n := 0
	for _, r := range text {
		if unicode.IsLetter(r) {
			n++
		}
	}
	return n
}

// byLength holds names against heights that go by how many letters a name has.
// From which length a name is long may depend on who plays: without the category
// it is not known which of the heights holds.
func (c *checker) byLength(n *rulebook.Names) {
	if n.LongHeight == nil && n.ShortHeight == nil && n.LongStroke == nil && n.ShortStroke == nil {
		return
	}
	if n.LongFrom == nil {
		c.lengthUnknown(n)
		return
	}
	const what, state = "letter height for its length", "the letters of %s are %s high"
	of := func(long bool) func(Measured) (float64, float64, bool) {
		return func(m Measured) (float64, float64, bool) {
			// a height that is none of the book's is said once, as that
			return m.Height, m.Height, Letters(m.Text) >= n.LongFrom.Count == long && oneOf(n.HeightExact, m.Height)
		}
	}
	c.hold(bound{figure: n.LongHeight, what: what, object: "the letters", state: state, side: exactly, of: of(true)}, playerNames)
	c.hold(bound{figure: n.ShortHeight, what: what, object: "the letters", state: state, side: exactly, of: of(false)}, playerNames)
	c.nameStroke(n.LongStroke, fmt.Sprintf("names of %d letters and more", n.LongFrom.Count), func(m Measured) bool { return Letters(m.Text) >= n.LongFrom.Count })
	c.nameStroke(n.ShortStroke, fmt.Sprintf("names under %d letters", n.LongFrom.Count), func(m Measured) bool { return Letters(m.Text) < n.LongFrom.Count })
}

// oneOf reports whether a height is one that the book prints; every one is where
// it prints none.
func oneOf(f *rulebook.Figure, mm float64) bool {
	return !figureOf(f) || slices.ContainsFunc(f.Lengths, func(l length.Length) bool { return l.Nanometres() == nanometres(mm) })
}

// nameStroke says that the strokes of names are not measured here.
func (c *checker) nameStroke(f *rulebook.Figure, which string, concerns func(Measured) bool) {
	n := 0
	for _, w := range c.subject.Players {
		for _, m := range playerNames(w) {
			if concerns(m) {
				n++
			}
		}
	}
	if figureOf(f) && n > 0 {
		c.cited(f, Result{
			Of: n, Finding: Finding{Severity: Unknown, What: "stroke of the letters", Measured: "not measured", Required: "at least " + f.Text() + ", " + which},
			mend: "measure the strokes by hand on " + pieces(n),
		})
	}
}

func (c *checker) lengthUnknown(n *rulebook.Names) {
	names := c.howMany(KindName)
	for _, f := range []*rulebook.Figure{n.LongHeight, n.ShortHeight} {
		if !figureOf(f) || names == 0 {
			continue
		}
		which := "short"
		if f == n.LongHeight {
			which = "long"
		}
		c.cited(f, Result{
			Of: names, Finding: Finding{Severity: Unknown, What: "letter height for its length", Measured: "category not given", Required: "exactly " + f.Text() + " for a " + which + " name"},
			mend: "say in the job who plays (category: women, category: men): the book counts a name as long from another length for each",
		})
	}
}
