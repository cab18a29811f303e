package findings

import (
	"fmt"
	"slices"

	"yokeline/lettering/rulebook"
)

// drawn are the places that an order can put a number on. The others (a cap,
// a captain's mark) a book may ask for, but the shop must look after them.
var drawn = []string{"back number", "front number", "sleeve number", "shorts number"}

// required looks for numbers that the book asks for and are not there.
func (c *checker) required() {
	known := false
	for _, p := range c.rules.Positions {
		if p.Required == nil || p.Required.None() || p.Required.Says("unstated") {
			continue
		}
		known = true
		switch {
		case p.Required.Says("no"):
		case p.Required.Says("forbidden"):
			c.forbidden(p)
		case !slices.Contains(drawn, p.Place):
			c.cited(p.Required, Result{
				Finding: Finding{Severity: Unknown, Place: p.Place, What: "required place", Measured: "not part of an order", Required: "a " + p.Place},
				mend:    "see to the " + p.Place + " yourself: it is not drawn or made here",
			})
		default:
			c.place(p)
		}
	}
	if !known {
		c.unknown("", "required places", "not known to us", "look up where this body wants numbers")
	}
	c.unnumbered()
}

// forbidden reports numbers at a place that must stay without.
func (c *checker) forbidden(p rulebook.Position) {
	for _, w := range c.subject.Players {
		if m, ok := w.piece(p.Place); ok {
			c.cited(p.Required, Result{
				Finding: Finding{Severity: Violation, Player: w.Player, Place: p.Place, What: "forbidden place", Measured: m.Text, Required: "no " + p.Place},
				mend:    fmt.Sprintf("leave the %s of %s away", p.Place, who),
			})
		}
	}
}

// place reports numbered players who lack the number at a place.
func (c *checker) place(p rulebook.Position) {
	instead := map[string]string{"or shorts": "shorts number", "or front": "front number"}[p.Required.Is]
	if instead == "front number" {
		return // said once, at the front number
	}
	severity, want, has, failed := Violation, "a "+p.Place, 0, 0
	if p.Required.Says("recommended") {
		severity = Advice
	}
	if instead != "" {
		want += " or a " + instead
	}
	for _, w := range c.subject.Players {
		if w.Number == "" || w.Unsized {
			continue // unnumbered says so, and the note about the size
		}
		_, here := w.piece(p.Place)
		_, there := w.piece(instead)
		if here || there {
			has++
			continue
		}
		failed++
		c.cited(p.Required, Result{
			Finding: Finding{Severity: severity, Player: w.Player, Place: p.Place, What: "required place", Measured: "missing", Required: want},
			mend:    fmt.Sprintf("add %s for %s: there is none", want, who),
		})
	}
	if has > 0 && failed == 0 {
		c.cited(p.Required, Result{Of: has, Finding: Finding{Severity: InOrder, Place: p.Place, What: "required place", Measured: "there", Required: want}})
	}
}

// unnumbered reports players without a number where any place requires one.
func (c *checker) unnumbered() {
	i := slices.IndexFunc(c.rules.Positions, func(p rulebook.Position) bool { return p.Required.Says("yes") })
	if i < 0 {
		return
	}
	f := c.rules.Positions[i].Required
	for _, w := range c.subject.Players {
		if w.Number != "" || w.isGoalkeeper() && c.rules.Numbers.GoalkeeperFree.Yes() {
			continue
		}
		c.cited(f, Result{
			Finding: Finding{Severity: Violation, Player: w.Player, What: "number", Measured: "none", Required: "a number"},
			mend:    "give " + who + " a number",
		})
	}
}
