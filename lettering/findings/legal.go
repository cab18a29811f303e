package findings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/rulebook"
)

// numbers holds every number against the set that the book allows.
func (c *checker) numbers() {
	n := &c.rules.Numbers
	if n.Min == nil && n.Max == nil && n.Only == nil && n.Digits == nil && n.DigitsMax == nil && n.Not == nil {
		c.unknown("", "legal numbers", "not known to us", "look up which numbers this body allows")
	}
	ok, failed := 0, false
	open := map[string]int{}
	for _, w := range c.subject.Players {
		if w.Number == "" {
			continue
		}
		f, why := illegal(n, w.Number)
		switch {
		case f != nil:
			failed = true
			c.cited(f, Result{
				Finding: Finding{Severity: Violation, Player: w.Player, What: "legal number", Measured: w.Number, Required: why},
				mend:    fmt.Sprintf("give %s another number than %s: %s", who, w.Number, why),
			})
		case why != "":
			open[why]++
		default:
			ok++
		}
		c.reserved(w)
	}
	for _, what := range []string{"zero", "double zero", "leading zero"} {
		if open[what] > 0 {
			c.unknown("", what, "not known to us", fmt.Sprintf("look up whether this body allows a %s (%d in this order)", what, open[what]))
		}
	}
	if f := firstOf(n.Only, n.Max, n.Digits, n.DigitsMax, n.Min); f != nil && ok > 0 && !failed {
		c.cited(f, Result{Of: ok, Finding: Finding{Severity: InOrder, What: "legal numbers", Measured: fmt.Sprintf("%d numbers", ok), Required: legalSet(n)}})
	}
}

func firstOf(figures ...*rulebook.Figure) *rulebook.Figure {
	for _, f := range figures {
		if f != nil {
			return f
		}
	}
	return nil
}

// illegal returns the figure that a number breaks and what the book wants; or
// no figure and the name of the missing one that would be needed to tell.
func illegal(n *rulebook.Numbers, text string) (*rulebook.Figure, string) {
	digitsOnly := text != "" && strings.Trim(text, "0123456789") == ""
	switch {
	case n.Only != nil:
		if !slices.Contains(strings.Fields(n.Only.Is), text) {
			return n.Only, "only " + n.Only.Is
		}
		return nil, ""
	case n.Not != nil && slices.Contains(strings.Fields(n.Not.Is), text):
		return n.Not, "not " + n.Not.Is
	case n.Digits != nil && strings.ContainsFunc(text, func(r rune) bool { return r < rune(n.Digits.Is[0]) || r > rune(n.Digits.Is[2]) }):
		return n.Digits, "digits " + n.Digits.Is + " only"
	case n.DigitsMax != nil && len(text) > n.DigitsMax.Count:
		return n.DigitsMax, fmt.Sprintf("at most %d digits", n.DigitsMax.Count)
	case !digitsOnly:
		if f := firstOf(n.Max, n.Min); f != nil {
			return f, "whole numbers"
		}
		return nil, ""
	case text == "0":
		return zero(n, n.Zero, "zero", text)
	case text == "00" && (n.DoubleZero != nil || n.LeadingZero == nil):
		return zero(n, n.DoubleZero, "double zero", text)
	case text[0] == '0':
		return zero(n, n.LeadingZero, "leading zero", text)
	}
	return outside(n, text)
}

// zero judges a number that begins with 0 by the figure for its kind. Without
// one, a range that starts above it still rules it out.
func zero(n *rulebook.Numbers, f *rulebook.Figure, what, text string) (*rulebook.Figure, string) {
	if f.Says("illegal") {
		return f, "no " + what
	}
	if f.Says("legal") && strings.Trim(text, "0") == "" {
		return nil, "" // named as legal, whatever the range starts with
	}
	if broken, why := outside(n, text); broken != nil {
		return broken, why
	}
	if f == nil && (what != "zero" || n.Min == nil) {
		return nil, what
	}
	return nil, ""
}

// outside holds the value against the range.
func outside(n *rulebook.Numbers, text string) (*rulebook.Figure, string) {
	value, err := strconv.Atoi(text)
	switch {
	case n.Max != nil && (err != nil || value > n.Max.Count):
		return n.Max, fmt.Sprintf("at most %d", n.Max.Count)
	case n.Min != nil && err == nil && value < n.Min.Count:
		return n.Min, fmt.Sprintf("at least %d", n.Min.Count)
	}
	return nil, ""
}

// legalSet says in words which numbers the book allows.
func legalSet(n *rulebook.Numbers) string {
	if n.Only != nil {
		return "only " + n.Only.Is
	}
	var parts []string
	switch {
	case n.Min != nil && n.Max != nil:
		parts = append(parts, fmt.Sprintf("%d to %d", n.Min.Count, n.Max.Count))
	case n.Max != nil:
		parts = append(parts, fmt.Sprintf("at most %d", n.Max.Count))
	case n.Min != nil:
		parts = append(parts, fmt.Sprintf("at least %d", n.Min.Count))
	}
	if n.Digits != nil && n.Digits.Is != "0-9" {
		parts = append(parts, "digits "+n.Digits.Is)
	}
	if n.DigitsMax != nil && n.Max == nil {
		parts = append(parts, fmt.Sprintf("at most %d digits", n.DigitsMax.Count))
	}
	if n.Not != nil {
		parts = append(parts, "not "+n.Not.Is)
	}
	if len(parts) == 0 {
		return "digits " + n.Digits.Is
	}
	return strings.Join(parts, ", ")
}

// reserved looks at numbers that are kept for goalkeepers. Most rosters do not
// say who keeps goal, so without a role it is advice.
func (c *checker) reserved(w Wearer) {
	f := c.rules.Numbers.GoalkeepersOnly
	if f == nil || w.isGoalkeeper() || !slices.Contains(strings.Fields(f.Is), w.Number) {
		return
	}
	severity, mend := Violation, "give "+who+" another number: "+w.Number+" is a goalkeeper's"
	if w.Role == "" {
		severity, mend = Advice, "say in the roster whether "+who+" keeps goal: "+w.Number+" is a goalkeeper's"
	}
	c.cited(f, Result{
		Finding: Finding{Severity: severity, Player: w.Player, What: "reserved number", Measured: w.Number, Required: "a goalkeeper"},
		mend:    mend,
	})
}
