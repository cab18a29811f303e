package findings

import (
	"fmt"
	"strings"

	"yokeline/lettering/rulebook"
)

// duplicates looks for players whose numbers the book counts as one.
func (c *checker) duplicates() {
	n := &c.rules.Numbers
	c.bothZeros(n.ZeroAndDouble)
	f := n.Duplicates
	if f == nil {
		c.unknown("", "duplicate numbers", "not known to us", "look up whether two players may share a number")
		return
	}
	c.alike(n)
	groups, order := c.sharing(n)
	shared := false
	for _, key := range order {
		holders := groups[key]
		if len(holders) < 2 {
			continue
		}
		shared = true
		severity, required := duplicateRule(f, len(holders))
		for i, w := range holders {
			other := holders[(i+1)%len(holders)]
			c.cited(f, Result{
				Finding: Finding{Severity: severity, Player: w.Player, What: "duplicate number", Measured: w.Number + ", as " + other.Player, Required: required},
				mend:    fmt.Sprintf("give %s or %s another number: %s and %s count as one", who, other.Player, w.Number, other.Number),
			})
		}
	}
	if !shared && len(order) > 0 {
		c.cited(f, Result{Of: len(order), Finding: Finding{Severity: InOrder, What: "duplicate numbers", Measured: "none", Required: "no number twice"}})
	}
}

func duplicateRule(f *rulebook.Figure, holders int) (Severity, string) {
	switch {
	case f.Says("not together"), f.Says("two but not together") && holders == 2:
		return Advice, "not in the game at the same time"
	case f.Says("two but not together"):
		return Violation, "at most two players a number"
	}
	return Violation, "no number twice"
}

// sharing groups the players by what the book counts as one number, in the
// order of the roster.
func (c *checker) sharing(n *rulebook.Numbers) (groups map[string][]Wearer, order []string) {
	groups = map[string][]Wearer{}
	for _, w := range c.subject.Players {
		key := w.Number
		if key == "" {
			continue
		}
		if n.Same.Says("by value") {
			key = strings.TrimLeft(key, "0")
			// 0 with 00 has a finding of its own where the book has the figure
			if key == "" && n.ZeroAndDouble.Says("illegal") {
				key = "zero " + w.Number
			}
		}
		if len(groups[key]) == 0 {
			order = append(order, key)
		}
		groups[key] = append(groups[key], w)
	}
	return groups, order
}

// bothZeros looks for 0 and 00 on one roster.
func (c *checker) bothZeros(f *rulebook.Figure) {
	var single, double []Wearer
	for _, w := range c.subject.Players {
		switch w.Number {
		case "0":
			single = append(single, w)
		case "00":
			double = append(double, w)
		}
	}
	if len(single) == 0 || len(double) == 0 {
		return
	}
	if f == nil {
		c.unknown("", "0 and 00 together", "not known to us", "look up whether this body allows 0 and 00 on one roster")
		return
	}
	if f.Says("legal") {
		c.cited(f, Result{Of: len(single) + len(double), Finding: Finding{Severity: InOrder, What: "0 and 00 together", Measured: "0 and 00", Required: "two different numbers"}})
		return
	}
	for _, pair := range [][2][]Wearer{{single, double}, {double, single}} {
		for _, w := range pair[0] {
			c.cited(f, Result{
				Finding: Finding{Severity: Violation, Player: w.Player, What: "0 and 00 together", Measured: w.Number + ", with " + pair[1][0].Number + " of " + pair[1][0].Player, Required: "0 or 00, not both"},
				mend:    fmt.Sprintf("give %s or %s another number: 0 and 00 cannot both be worn", who, pair[1][0].Player),
			})
		}
	}
}

// alike looks for numbers that differ only in a leading zero, such as 7 and
// 07, where the book does not say whether they are two. (0 and 00 have a
// figure of their own.)
func (c *checker) alike(n *rulebook.Numbers) {
	if n.Same != nil || n.LeadingZero.Says("illegal") {
		return
	}
	first := map[string]string{}
	for _, w := range c.subject.Players {
		value := strings.TrimLeft(w.Number, "0")
		if value == "" {
			continue
		}
		if other, ok := first[value]; ok && other != w.Number {
			c.unknown("", "leading zero", "not known to us", fmt.Sprintf("look up whether %s and %s are two numbers for this body", other, w.Number))
			return
		}
		first[value] = w.Number
	}
}
