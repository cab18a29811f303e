package findings

import (
	"fmt"
	"math"

	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// levelWithin is how far the feet of the first and the last letter may differ
// and still count as level, in mm: no book prints a figure (common practice,
// no source; 1/16 in).
const levelWithin = 25.4 / 16

func playerNames(w Wearer) []Measured {
	var out []Measured
	for _, m := range w.Pieces {
		if m.Kind == KindName {
			out = append(out, m)
		}
	}
	return out
}

// names holds the players' names against the book.
func (c *checker) names() {
	n := &c.rules.Names
	c.namesWanted(n)
	letter := func(m Measured) (float64, float64, bool) { return m.Height, m.Height, true }
	width := func(m Measured) (float64, float64, bool) { return m.Width, m.Width, true }
	gap := func(m Measured) (float64, float64, bool) {
		return m.NumberGap, m.NumberGap, !math.IsInf(m.NumberGap, 1)
	}
	const high, wide = "the letters of %s are %s high", "%s is %s wide"
	for _, l := range []bound{
		{figure: n.HeightMin, what: "letter height", object: "the letters", state: high, side: atLeast, of: letter},
		{figure: n.HeightMax, what: "letter height", object: "the letters", state: high, side: atMost, of: letter},
		{figure: n.HeightExact, what: "letter height", object: "the letters", state: high, side: exactly, of: letter},
		{figure: n.WidthMin, what: "name width", object: "it", state: wide, side: atLeast, of: width},
		{figure: n.WidthMax, what: "name width", object: "it", state: wide, side: atMost, of: width},
		{figure: n.GapMin, what: "gap between name and number", object: "the gap to the number", state: "that of %s is %s", side: atLeast, basis: " between finished edges", of: gap},
	} {
		c.hold(l, playerNames)
	}
	c.byLength(n)
	c.count(n.ColoursMax, "", "colours of the name", playerNames, Measured.colours)
	c.nameIs(n.Side, "side of the number", c.sideOf(n.Side))
	if n.Straight.Yes() {
		c.nameIs(n.Straight, "shape of the name", func(m Measured) (string, string, verdict) {
			return m.Shape, "straight", is(m.Shape, "straight")
		})
	}
	if n.EndsLevel.Yes() {
		c.nameIs(n.EndsLevel, "level of first and last letter", endsLevel)
	}
	if n.EndsClear.Yes() {
		c.nameIs(n.EndsClear, "end letters beside the number", c.endsClear)
	}
}

func endsLevel(m Measured) (got, want string, v verdict) {
	tilt := math.Abs(m.Tilt)
	switch {
	case math.IsNaN(tilt):
		return "", "level", unmeasured
	case tilt <= levelWithin:
		return "level", "level", kept
	}
	return "not level", "level", broken
}

// endsClear holds the level on which the end letters stand against the top of a
// number under them, or the foot of one over them.
func (c *checker) endsClear(m Measured) (got, want string, v verdict) {
	edge := "top"
	if m.Side == "below" {
		edge = "foot"
	}
	want = "clear of the " + edge + " of the number"
	switch clear := m.EndsClear; {
	case math.IsNaN(clear):
		return "", want, unmeasured
	case math.IsInf(clear, 1):
		return "no number on that side", want, kept
	case nanometres(clear) >= 0:
		return "clear", want, kept
	default:
		return length.Plain(-clear, c.subject.Units, length.Up) + " past the " + edge + " of the number", want, broken
	}
}

func is(got, want string) verdict {
	switch got {
	case "":
		return unmeasured
	case want:
		return kept
	}
	return broken
}

func (c *checker) sideOf(f *rulebook.Figure) func(Measured) (string, string, verdict) {
	return func(m Measured) (string, string, verdict) {
		if f.Says("either") {
			return m.Side, "above or below the number", kept
		}
		if m.Side == "" && math.IsInf(m.NumberGap, 1) {
			return "no number on that side", f.Is + " the number", kept
		}
		return m.Side, f.Is + " the number", is(m.Side, f.Is)
	}
}

// nameIs holds every name against a figure that is a word.
func (c *checker) nameIs(f *rulebook.Figure, what string, judge func(Measured) (got, want string, v verdict)) {
	if f == nil || f.None() {
		return
	}
	ok, lost, failed, required := 0, 0, 0, ""
	for _, w := range c.subject.Players {
		for _, m := range playerNames(w) {
			got, want, v := judge(m)
			required = want
			switch v {
			case kept:
				ok++
			case unmeasured:
				lost++
			default:
				failed++
				c.cited(f, Result{
					Finding: Finding{Severity: Violation, Player: w.Player, Place: m.Place, What: what, Measured: got, Required: want},
					mend:    fmt.Sprintf("make it %s: the %s of %s is %s", want, m.Place, who, got),
				})
			}
		}
	}
	if ok > 0 && failed+lost == 0 {
		c.cited(f, Result{Of: ok, Finding: Finding{Severity: InOrder, What: what, Measured: "as required", Required: required}})
	}
	if lost > 0 {
		c.cited(f, Result{Of: lost, Finding: Finding{Severity: Unknown, What: what, Measured: "not measured", Required: required}})
	}
}

// namesWanted looks at who has a name and who has none.
func (c *checker) namesWanted(n *rulebook.Names) {
	with, without := []Wearer{}, []Wearer{}
	for _, w := range c.subject.Players {
		if len(playerNames(w)) > 0 {
			with = append(with, w)
		} else {
			without = append(without, w)
		}
	}
	switch {
	case n.Allowed.Says("no"):
		c.each(n.Allowed, with, "a name", "no name", "take the name of "+who+" off")
	case n.Required.Yes():
		c.each(n.Required, without, "no name", "a name", "add the name of "+who)
	case n.Required.Says("all or none") && len(with) > 0:
		c.each(n.Required, without, "no name", "names for all or for none", "add the name of "+who+", or leave every name off")
	}
}

func (c *checker) each(f *rulebook.Figure, wearers []Wearer, measured, required, mend string) {
	for _, w := range wearers {
		c.cited(f, Result{
			Finding: Finding{Severity: Violation, Player: w.Player, What: "name", Measured: measured, Required: required},
			mend:    mend,
		})
	}
	if len(wearers) == 0 && len(c.subject.Players) > 0 {
		c.cited(f, Result{Of: len(c.subject.Players), Finding: Finding{Severity: InOrder, What: "names", Measured: required, Required: required}})
	}
}
