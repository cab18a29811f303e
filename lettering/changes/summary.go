package changes

import (
	"slices"
	"strings"
)

// Told is what changed as a coach would say it: what follows from something
// else that is said is left out.
type Told struct {
	Job     []Line // for the whole order, and what many players share
	Players []PlayerChange
	Moved   bool // the players stand in another order
}

// PlayerChange is what is said of one player.
type PlayerChange struct {
	Kind   Kind // Added, Removed or Changed
	Player string
	// Before and After are the player's place in the rosters, counted from 1; 0
	// where there is none.
	Before, After int
	Lines         []Line // none for one who was added or taken off
	about         string // number 7, adult M; of those
}

// Line is one thing that is said.
type Line struct {
	About   string // back name; empty for what the roster or the order says
	What    string // spelling, letters high; may be empty
	Was, Is string // one may be empty
	Players int    // how many share it; 0 for one player, or for the order
}

// Empty reports whether nothing changed.
func (t Told) Empty() bool { return len(t.Job) == 0 && len(t.Players) == 0 && !t.Moved }

// Text returns a line for people: spelling: Ng, now Vo.
func (l Line) Text() string {
	subject := l.Subject()
	if l.Players > 0 {
		subject = strings.TrimSpace(plural(l.Players, "player") + ", " + subject)
	}
	switch {
	case l.Was == "":
		return subject + ": " + l.Is
	case l.Is == "":
		return subject + ": " + l.Was + ", now none"
	}
	return subject + ": " + l.Was + ", now " + l.Is
}

// Subject says what a line is about: back name, letters high.
func (l Line) Subject() string {
	if l.About == "" || l.What == "" {
		return l.About + l.What
	}
	return l.About + ", " + l.What
}

// Text returns what is said of a player, a line for people each.
func (p PlayerChange) Text() []string {
	switch p.Kind {
	case Added:
		return []string{Change{Kind: Added, Player: p.Player, Is: p.about}.Text()}
	case Removed:
		return []string{Change{Kind: Removed, Player: p.Player, Was: p.about}.Text()}
	}
	var out []string
	for _, l := range p.Lines {
		out = append(out, p.Player+": "+l.Text())
	}
	return out
}

// Text returns everything that is told, a line for people each.
func (t Told) Text() []string {
	var out []string
	for _, l := range t.Job {
		if l.Players == 0 {
			out = append(out, "the order: "+l.Text())
			continue
		}
		out = append(out, l.Text())
	}
	for _, p := range t.Players {
		out = append(out, p.Text()...)
	}
	if t.Moved {
		out = append(out, Change{Kind: Moved}.Text())
	}
	return out
}

// Summary puts what Between found in a coach's words. Facts that only follow
// from another that is said (ink widths, limits), lengths that changed by less
// than a tenth of a millimetre and pieces that moved by less than half a one are left out; what most of the changed players
// share is said once. Only no changes at all give nothing to tell. say prints
// lengths; nil prints them as Change does.
func Summary(all []Change, say func(mm float64) string) Told {
	t := Told{}
	s := speaker{say: say}
	var groups [][]Change
	for _, c := range all {
		switch {
		case c.Kind == Job:
			s.job = append(s.job, c)
		case c.Kind == Moved:
			t.Moved = true
		case c.Kind == Changed && len(groups) > 0 && groups[len(groups)-1][0].After == c.After && groups[len(groups)-1][0].Kind == Changed:
			groups[len(groups)-1] = append(groups[len(groups)-1], c)
		default:
			groups = append(groups, []Change{c})
		}
	}
	t.Job = s.jobLines()
	for _, g := range groups {
		p := PlayerChange{Kind: g[0].Kind, Player: g[0].Player, Before: g[0].Before, After: g[0].After, about: g[0].Was + g[0].Is}
		if p.Kind == Changed {
			p.about, p.Lines = "", s.player(g)
		}
		t.Players = append(t.Players, p)
	}
	t.share()
	if t.Empty() && len(all) > 0 {
		t.Job = append(t.Job, Line{What: "details", Is: "differences too small to see"})
	}
	return t
}

// fewest players must share a line for it to be said once for all.
const fewest = 3

// share says once what most of the changed players have in common, and leaves
// out the players of whom nothing else is to be said.
func (t *Told) share() {
	count, changed := map[Line]int{}, 0
	for _, p := range t.Players {
		if p.Kind == Changed {
			changed++
		}
		for _, l := range p.Lines {
			count[l]++
		}
	}
	shared := func(l Line) bool { return l.About != "" && count[l] >= fewest && 2*count[l] > changed }
	said := map[Line]bool{}
	var left []PlayerChange
	for _, p := range t.Players {
		var own []Line
		for _, l := range p.Lines {
			if !shared(l) {
				own = append(own, l)
				continue
			}
			asked := l
			asked.What += asAsked
			if !said[l] && !slices.Contains(t.Job, asked) {
				said[l] = true
				once := l
				once.Players = count[l]
				t.Job = append(t.Job, once)
			}
		}
		if p.Lines = own; len(own) > 0 || p.Kind != Changed {
			left = append(left, p)
		}
	}
	t.Players = left
}

func plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return itoa(n) + " " + thing + "s"
}
