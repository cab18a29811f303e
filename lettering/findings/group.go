package findings

import (
	"fmt"
	"strings"
)

// Group is a set of results with one cause: the same thing measured the same
// way against the same rule, for one player or for many.
type Group struct {
	Result
	Players []string // in the order of the results; empty for a row about the whole order
	Who     string   // all 15 players; Quill and Adair; Quill, Adair and 3 more
}

// Grouped puts results with the same cause together for people to read, in the
// order in which each cause first comes. The remedy then speaks of all of
// them. Players is how many the order has.
func Grouped(results []Result, players int) []Group {
	var out []Group
	at := map[Finding]int{}
	for _, r := range results {
		key := r.Finding
		key.Player, key.Remedy = "", r.mend
		i, known := at[key]
		if !known || r.Player == "" {
			at[key] = len(out)
			out = append(out, Group{Result: r})
			i = len(out) - 1
		}
		if r.Player != "" {
			out[i].Players = append(out[i].Players, r.Player)
		}
	}
	for i := range out {
		g := &out[i]
		if len(g.Players) == 0 {
			continue
		}
		g.Who = people(g.Players, players)
		g.Of = len(g.Players)
		if len(g.Players) > 1 {
			g.Player = ""
			g.Remedy = strings.ReplaceAll(g.mend, who, g.Who)
		}
	}
	return out
}

// shownNames is how many players a row names before it counts the rest.
const shownNames = 3

func people(names []string, all int) string {
	n := len(names)
	switch {
	case n == 1:
		return names[0]
	case n == all:
		return fmt.Sprintf("all %d players", n)
	case n <= shownNames:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:shownNames-1], ", "), n-shownNames+1)
}
