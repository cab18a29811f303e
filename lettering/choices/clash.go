package choices

import (
	"slices"
	"strings"

	"yokeline/lettering/findings"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
)

// What the checks call players who wear one number.
const (
	BothZeros   = "0 and 00 together"
	SameNumbers = "duplicate number"
)

// Clash is a set of players whose numbers count as one.
type Clash struct {
	What    string // BothZeros or SameNumbers
	Players []int  // indexes into Sized.Players, in roster order
	Advice  bool   // the book lets it stand within limits
	Finding findings.Finding
	Alike   bool // all wear the same text
}

// Others lists the numbers, each once, that a player's number is the same as
// though it is written in another way.
func (c Clash) Others(players []sizes.Player, of int) []string {
	var out []string
	for _, i := range c.Players {
		if n := players[i].Number; i != of && n != players[of].Number && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// Clashes lists players who share a number, those with the lowest row first.
// Two players with the same number clash whatever the book says; 0 with 00, and
// 7 with 07, only where the book counts them as one.
func Clashes(s *sizes.Sized, results []findings.Result) []Clash {
	var out []Clash
	at := map[string]int{}
	for i, p := range s.Players {
		key := clashKey(s.Rules, p.Number)
		if key == "" {
			continue
		}
		k, known := at[key]
		if !known {
			k = len(out)
			at[key], out = k, append(out, Clash{What: SameNumbers})
		}
		out[k].Players = append(out[k].Players, i)
	}
	out = slices.DeleteFunc(out, func(c Clash) bool { return len(c.Players) < 2 })
	if zeros, ok := zeros(s, results); ok {
		out = append(out, zeros)
	}
	for i := range out {
		out[i].judge(s, results)
	}
	slices.SortStableFunc(out, func(a, b Clash) int { return a.Players[0] - b.Players[0] })
	return out
}

// clashKey is the number as the book tells numbers apart; empty for a player
// without one.
func clashKey(rules *rulebook.Rules, number string) string {
	if number == "" || rules == nil || !rules.Numbers.Same.Says("by value") {
		return number
	}
	if value := strings.TrimLeft(number, "0"); value != "" || rules.Numbers.ZeroAndDouble == nil {
		return "value " + value
	}
	return number
}

// zeros is the clash of 0 and 00, when the checks found one.
func zeros(s *sizes.Sized, results []findings.Result) (c Clash, found bool) {
	c.What = BothZeros
	found = slices.ContainsFunc(results, func(r findings.Result) bool {
		return r.What == BothZeros && r.Player != ""
	})
	for i, p := range s.Players {
		if p.Number == "0" || p.Number == "00" {
			c.Players = append(c.Players, i)
		}
	}
	return c, found && len(c.Players) > 1
}

// judge looks up what the checks said about a clash.
func (c *Clash) judge(s *sizes.Sized, results []findings.Result) {
	first := s.Players[c.Players[0]]
	c.Alike = true
	for _, i := range c.Players {
		c.Alike = c.Alike && s.Players[i].Number == first.Number
	}
	c.Finding = findings.Finding{Severity: findings.Violation, What: c.What, Required: "no number twice"}
	for _, r := range results {
		if r.What == c.What && r.Player == first.Label() && strings.HasPrefix(r.Measured, first.Number+",") {
			c.Finding = r.Finding
		}
	}
	c.Advice = c.Finding.Severity != findings.Violation
}

// AboutClash reports whether a result is one of those that clashes stand for.
func AboutClash(r findings.Result) bool {
	taken := r.What == "number" && r.Source == "" && strings.Contains(r.Measured, " is taken by ")
	return taken || r.Player != "" && (r.What == BothZeros || r.What == SameNumbers)
}
