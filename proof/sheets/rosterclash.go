package sheets

import (
	"slices"
	"strings"

	"yokeline/lettering/findings"
	"yokeline/lettering/sizes"
)

// What the checks call players who wear one number.
const (
	bothZeros   = "0 and 00 together"
	sameNumbers = "duplicate number"
)

// clash is a set of players whose numbers count as one.
type clash struct {
	what     string // bothZeros or sameNumbers
	players  []int  // indexes into the roster
	advice   bool   // the book lets it stand within limits
	finding  findings.Finding
	byNumber bool // all wear the same text
}

// clashes lists players who share a number, those with the lowest row first.
// Two players with the same number clash whatever the book says; 0 with 00, and
// 7 with 07, only where the book counts them as one.
func (d *document) clashes() []clash {
	var out []clash
	at := map[string]int{}
	for i, p := range d.in.Sized.Players {
		key := d.clashKey(p.Number)
		if key == "" {
			continue
		}
		k, known := at[key]
		if !known {
			k = len(out)
			at[key], out = k, append(out, clash{what: sameNumbers})
		}
		out[k].players = append(out[k].players, i)
	}
	out = slices.DeleteFunc(out, func(c clash) bool { return len(c.players) < 2 })
	if zeros, ok := d.zeros(); ok {
		out = append(out, zeros)
	}
	for i := range out {
		d.judge(&out[i])
	}
	slices.SortStableFunc(out, func(a, b clash) int { return a.players[0] - b.players[0] })
	return out
}

// clashKey is the number as the book tells numbers apart.
func (d *document) clashKey(number string) string {
	rules := d.in.Sized.Rules
	if rules == nil || !rules.Numbers.Same.Says("by value") {
		return number
	}
	if value := strings.TrimLeft(number, "0"); value != "" || rules.Numbers.ZeroAndDouble == nil {
		return "value " + value
	}
	return number
}

// zeros is the clash of 0 and 00, when the checks found one.
func (d *document) zeros() (c clash, found bool) {
	c.what = bothZeros
	found = slices.ContainsFunc(d.in.Results, func(r findings.Result) bool {
		return r.What == bothZeros && r.Player != ""
	})
	for i, p := range d.in.Sized.Players {
		if p.Number == "0" || p.Number == "00" {
			c.players = append(c.players, i)
		}
	}
	return c, found && len(c.players) > 1
}

// judge looks up what the checks said about a clash.
func (d *document) judge(c *clash) {
	first := d.in.Sized.Players[c.players[0]]
	c.byNumber = true
	for _, i := range c.players {
		c.byNumber = c.byNumber && d.in.Sized.Players[i].Number == first.Number
	}
	c.finding = findings.Finding{Severity: findings.Violation, What: c.what, Required: "no number twice"}
	for _, r := range d.in.Results {
		if r.What == c.what && r.Player == first.Label() && strings.HasPrefix(r.Measured, first.Number+",") {
			c.finding = r.Finding
		}
	}
	c.advice = c.finding.Severity != findings.Violation
}

// aboutClash reports whether a result is one of those that clashes stand for.
func aboutClash(r findings.Result) bool {
	taken := r.What == "number" && r.Source == "" && strings.Contains(r.Measured, " is taken by ")
	return taken || r.Player != "" && (r.What == bothZeros || r.What == sameNumbers)
}

// others lists the numbers, each once, that a player's number is the same as.
func (c clash) others(players []sizes.Player, of int) []string {
	var out []string
	for _, i := range c.players {
		if n := players[i].Number; i != of && n != players[of].Number && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}
