// Package changes says in words what is not the same in two sized orders: what
// the job asks for, who plays, and how each player's pieces came out. It looks
// at the facts that the fingerprint is taken of, so two orders with different
// fingerprints always differ in something that is said here.
package changes

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// Kind says what sort of change it is.
type Kind string

// The kinds of change.
const (
	Job     Kind = "job"     // something that the whole order asks for
	Added   Kind = "added"   // a player
	Removed Kind = "removed" // a player
	Moved   Kind = "moved"   // the players stand in another order, and nothing else
	Changed Kind = "changed" // something about one player
)

// Change is one thing that is not the same.
type Change struct {
	Kind   Kind
	Player string // how messages call the player; empty for the order as a whole
	// Before and After are the player's place in the rosters, counted from 1; 0
	// where there is none.
	Before, After int
	About         string // back name, size youth S; empty for the player or the order as such
	What          string // letter height
	Was, Is       string // in words; empty where there is none
	was, is       *sizes.Fact
}

// Text returns the change as a line for people.
func (c Change) Text() string {
	who := c.Player
	if who == "" {
		who = "the order"
	}
	switch c.Kind {
	case Added:
		return fmt.Sprintf("%s was added: %s", who, c.Is)
	case Removed:
		return fmt.Sprintf("%s was taken off: %s", who, c.Was)
	case Moved:
		return "the players stand in another order"
	}
	what := strings.TrimSpace(c.About + " " + c.What)
	if c.About != "" {
		what = c.About + ", " + c.What
	}
	switch {
	case c.Was == "":
		return fmt.Sprintf("%s: %s is now %s", who, what, c.Is)
	case c.Is == "":
		return fmt.Sprintf("%s: %s was %s and is gone", who, what, c.Was)
	}
	return fmt.Sprintf("%s: %s was %s and is %s", who, what, c.Was, c.Is)
}

// Between lists what is not the same in an earlier and a later order, the job
// first, then the players of the later order in roster order, then those who
// are gone. It is empty exactly when the fingerprints are equal. Lengths are
// printed in the unit of the later order.
func Between(was, is *sizes.Sized) []Change {
	before, after := parted(was), parted(is)
	d := differ{unit: is.Order.Units, was: was, is: is}
	d.compare(Change{Kind: Job}, before[-1], after[-1])
	from := Match(was, is)
	moved := false
	last := -1
	for i := range is.Players {
		k := from[i]
		if k < 0 {
			d.out = append(d.out, Change{Kind: Added, Player: is.Players[i].Label(), After: i + 1, Is: summary(is.Players[i])})
			continue
		}
		moved, last = moved || k < last, max(last, k)
		d.compare(Change{Kind: Changed, Player: is.Players[i].Label(), Before: k + 1, After: i + 1}, before[k], after[i])
	}
	for k := range was.Players {
		if !slices.Contains(from, k) {
			d.out = append(d.out, Change{Kind: Removed, Player: was.Players[k].Label(), Before: k + 1, Was: summary(was.Players[k])})
		}
	}
	if moved {
		d.out = append(d.out, Change{Kind: Moved})
	}
	return d.out
}

// summary says who a player is: number 7, adult M.
func summary(p sizes.Player) string {
	var out []string
	if p.Number != "" {
		out = append(out, "number "+p.Number)
	}
	if p.SizeKnown {
		out = append(out, p.Size.String())
	}
	return strings.Join(out, ", ")
}

// parted sorts the facts of an order by whom they are about; -1 is the order.
func parted(s *sizes.Sized) map[int][]sizes.Fact {
	out := map[int][]sizes.Fact{}
	for _, f := range s.Facts() {
		out[f.Player] = append(out[f.Player], f)
	}
	return out
}

// differ gathers changes.
type differ struct {
	unit    length.Unit
	was, is *sizes.Sized
	out     []Change
}

type key struct{ about, what string }

// compare lists the facts that are in only one of two sets or differ, in the
// order of the later set.
func (d *differ) compare(of Change, before, after []sizes.Fact) {
	old := map[key]sizes.Fact{}
	for _, f := range before {
		old[key{f.About, f.What}] = f
	}
	for _, f := range after {
		k := key{f.About, f.What}
		o, known := old[k]
		delete(old, k)
		if known && o.Value == f.Value && o.Kind == f.Kind {
			continue
		}
		c := of
		c.About, c.What, c.is = f.About, f.What, &f
		if known {
			c.was = &o
		}
		c.Was, c.Is = d.said(o, known), d.said(f, true)
		if known && c.Was == c.Is {
			c.Was, c.Is = exactly(o, d.unit), exactly(f, d.unit)
		}
		d.out = append(d.out, c)
	}
	for _, f := range before { // in a fixed order, unlike the map
		if _, gone := old[key{f.About, f.What}]; gone {
			c := of
			c.About, c.What, c.was, c.Was = f.About, f.What, &f, d.said(f, true)
			d.out = append(d.out, c)
		}
	}
}

// said prints a value for people.
func (d *differ) said(f sizes.Fact, known bool) string {
	switch {
	case !known:
		return ""
	case f.Value == "" || f.Value == "-":
		return "none"
	case f.Kind == sizes.Words:
		return strconv.Quote(f.Value)
	}
	if mm, ok := millimetres(f); ok {
		return length.Plain(mm, d.unit, length.Nearest)
	}
	v, _ := strconv.ParseFloat(f.Value, 64)
	return strconv.FormatFloat(v/1000, 'f', -1, 64)
}

// exactly prints two lengths that look alike so that they do not.
func exactly(f sizes.Fact, unit length.Unit) string {
	mm, ok := millimetres(f)
	if !ok {
		return f.Value
	}
	return length.Plain(mm, unit, length.Nearest) + " (" + strconv.FormatFloat(mm, 'f', -1, 64) + " mm)"
}

// millimetres returns the length that a fact holds.
func millimetres(f sizes.Fact) (float64, bool) {
	per := map[sizes.FactKind]float64{sizes.Nanometres: 1e6, sizes.Micrometres: 1e3}[f.Kind]
	v, err := strconv.ParseFloat(f.Value, 64)
	return v / per, per != 0 && err == nil
}
