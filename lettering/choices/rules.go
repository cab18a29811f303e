package choices

import (
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/findings"
	"yokeline/lettering/sizes"
)

// Rule is a broken rule that the coach either wants put right or lets stand.
// All who break one figure of the book at one place share it, by whatever
// different measures.
type Rule struct {
	// Finding is what was found, of the first player. Its player is the one whom it
	// concerns alone, and empty where it concerns more or the order as a whole; its
	// remedy is empty where players differ in what would mend it.
	Finding  findings.Finding
	Players  []int    // indexes into Sized.Players, in roster order; empty for the order as a whole
	Measures []string // the different figures, the first found first
}

// ruleKey is what makes broken rules one question.
type ruleKey struct{ place, what, required, rule, source, how string }

// ofRules asks about each rule of a book that is broken by a player who is not
// signed yet, or by the order as a whole. What does not fit and numbers that clash
// have questions of their own.
func ofRules(s *sizes.Sized, results []findings.Result, clashes []Clash) []Question {
	open := openPlayers(s)
	if len(open) == 0 {
		return nil
	}
	clashing := map[string]bool{}
	for _, c := range clashes {
		for _, i := range c.Players {
			clashing[s.Players[i].Label()] = true
		}
	}
	var broken []findings.Result
	for _, r := range results {
		asked := r.Severity == findings.Violation && r.How != "" && !r.Bench
		if asked && (r.Player == "" || len(open[r.Player]) > 0) && !(AboutClash(r) && clashing[r.Player]) {
			broken = append(broken, r)
		}
	}
	var out []Question
	at, ids := map[ruleKey]int{}, map[string]int{}
	for _, g := range findings.Grouped(broken, len(s.Players)) {
		key := ruleKey{g.Place, g.What, g.Required, g.Rule, g.Source, g.How}
		i, known := at[key]
		if !known {
			i = len(out)
			at[key], out = i, append(out, Question{Player: -1, Rule: &Rule{Finding: g.Finding}})
		}
		out[i].Rule.add(g, open, known)
	}
	for i := range out {
		out[i] = out[i].aboutRule(ids)
	}
	return out
}

// openPlayers lists who is not signed, by what messages call them.
func openPlayers(s *sizes.Sized) map[string][]int {
	out := map[string][]int{}
	for i, p := range s.Players {
		if !p.Signed {
			out[p.Label()] = append(out[p.Label()], i)
		}
	}
	return out
}

func (r *Rule) add(g findings.Group, open map[string][]int, more bool) {
	for _, label := range g.Players {
		r.Players = append(r.Players, open[label]...)
	}
	slices.Sort(r.Players)
	r.Players = slices.Compact(r.Players)
	if !slices.Contains(r.Measures, g.Measured) {
		r.Measures = append(r.Measures, g.Measured)
	}
	if more {
		r.Finding.Player, r.Finding.Remedy = "", ""
	}
}

// aboutRule gives a question about a rule its ID and its ways. Two questions with
// the same first player and the same rule are told apart by counting.
func (q Question) aboutRule(ids map[string]int) Question {
	who := "order"
	if len(q.Rule.Players) > 0 {
		q.Player = q.Rule.Players[0]
		who = strconv.Itoa(q.Player + 1)
	}
	q.ID = strings.TrimSpace(who + " rule " + q.Rule.Finding.Rule)
	if ids[q.ID]++; ids[q.ID] > 1 {
		q.ID += ", " + strconv.Itoa(ids[q.ID])
	}
	q.Ways = []Way{{Kind: PutRight, Player: -1}, {Kind: LeaveIt, Player: -1}}
	return q.lettered()
}

// Words names the rule: rule 3-2-2, or a rule where the source gives no number.
func (r *Rule) Words() string {
	if r.Finding.Rule == "" {
		return "a rule"
	}
	return "rule " + r.Finding.Rule
}
