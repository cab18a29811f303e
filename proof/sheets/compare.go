package sheets

import (
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/changes"
	"yokeline/lettering/garment"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

const compareTitle = "What changed"

// changedSection is the only one of a comparison.
const changedSection section = "what changed"

// comparison is an earlier and a later order side by side.
type comparison struct {
	*document // the later order
	was       Input
	cloth     [2]shirt.Cloth // before and after
	told      changes.Told
	from      []int // of each later player in the earlier order, -1 for none
	bands     []changeBand
	grid      parts.Grid
	sheet     page.Sheet
	scale     float64
	window    float64 // height of the drawings, mm
	plain     bool    // without the details that small shirts cannot show
}

// changeBand is one player before and after, or everyone shown on one.
type changeBand struct {
	kind  changes.Kind
	lines []changes.Line
	on    [2]*sizes.Player // before and after, nil where there is none
	side  garment.Side
	note  string // over the player: shown on
	drawn bool
}

// Compare draws what changed from one order to another: what the order asks for
// in words, and every player who changed, came or went, before and after, at one
// scale. The head is that of the later order. The error names the page and what
// could not be drawn.
func Compare(was, is Input, told changes.Told) (*page.Book, error) {
	return draw(is, func(d *document) ([]leaf, error) {
		c := &comparison{document: d, was: was, told: told, from: changes.Match(was.Sized, is.Sized)}
		before := was.Sized.Order
		c.cloth = [2]shirt.Cloth{shirt.NewCloth(before.Garment, before.Pieces), d.cloth}
		c.bands = c.changeBands()
		return c.plan(), nil
	})
}

// changeBands lists what is drawn: what changed for everyone on one player, then
// the players.
func (c *comparison) changeBands() []changeBand {
	out := c.everyone()
	for _, p := range c.told.Players {
		b := changeBand{kind: p.Kind, lines: p.Lines, side: c.sideOf(p.Lines), drawn: p.Kind != changes.Changed}
		if p.Before > 0 {
			b.on[0] = &c.was.Sized.Players[p.Before-1]
		}
		if p.After > 0 {
			b.on[1] = &c.in.Sized.Players[p.After-1]
		}
		for _, l := range p.Lines {
			b.drawn = b.drawn || l.About != "" || l.What != "full name" && l.What != "role"
		}
		out = append(out, b)
	}
	return out
}

// everyone shows what the whole order changed on one player, on the sides that
// it concerns; none when it is nothing that can be seen.
func (c *comparison) everyone() []changeBand {
	sides := map[garment.Side]bool{}
	for _, l := range c.told.Job {
		if l.About != "" {
			sides[c.sideOf([]changes.Line{l})] = true
		}
		if strings.HasPrefix(l.What, "garment") || l.What == "trim" {
			sides[garment.Back] = true
		}
	}
	was, is, ok := c.example()
	if !ok {
		return nil
	}
	var out []changeBand
	for _, side := range [...]garment.Side{garment.Back, garment.Front} {
		if sides[side] {
			out = append(out, changeBand{kind: changes.Job, on: [2]*sizes.Player{was, is}, side: side, drawn: true, note: "the whole order, shown on"})
		}
	}
	return out
}

// example is a player of both orders, best the one that page 1 shows of whom
// nothing else changed.
func (c *comparison) example() (was, is *sizes.Player, ok bool) {
	best, rank := -1, -1
	shown, _ := c.shown()
	for i := range c.in.Sized.Players {
		k := c.from[i]
		if k < 0 || c.in.Sized.Players[i].Garment == nil || c.was.Sized.Players[k].Garment == nil {
			continue
		}
		own := slices.ContainsFunc(c.told.Players, func(p changes.PlayerChange) bool { return p.After == i+1 })
		fits := c.verdictOf(c.in.Sized.Players[i]).mark != parts.Over
		size := c.in.Sized.Players[i].Size == c.was.Sized.Players[k].Size
		r := 4*count(size) + 3*count(fits) + 2*count(!own) + count(c.in.Sized.Players[i].Row == shown.Row)
		if r > rank {
			best, rank = i, r
		}
	}
	if best < 0 {
		return nil, nil, false
	}
	return &c.was.Sized.Players[c.from[best]], &c.in.Sized.Players[best], true
}

// sideOf is the side of the garment that lines are about: the back, unless all
// are about pieces on the front.
func (c *comparison) sideOf(lines []changes.Line) garment.Side {
	front := false
	for _, l := range lines {
		if l.About == "" {
			continue
		}
		if side, ok := c.pieceSide(garment.Place(l.About)); !ok || side == garment.Back {
			return garment.Back
		}
		front = true
	}
	if front {
		return garment.Front
	}
	return c.rosterSide()
}

// pieceSide is the side that pieces of a place lie on.
func (c *comparison) pieceSide(place garment.Place) (garment.Side, bool) {
	for _, s := range [...]*sizes.Sized{c.in.Sized, c.was.Sized} {
		for _, p := range s.Players {
			if piece, ok := p.Piece(place); ok {
				return piece.Side, true
			}
		}
	}
	return garment.Back, false
}

// sentence says the result.
func (c *comparison) sentence() string {
	if c.told.Empty() {
		return "Nothing that is made has changed: both proofs have the same fingerprint."
	}
	var n [3]int
	for _, p := range c.told.Players {
		switch p.Kind {
		case changes.Changed:
			n[0]++
		case changes.Added:
			n[1]++
		case changes.Removed:
			n[2]++
		}
	}
	var said []string
	for i, verb := range [...]string{"changed", "added", "taken off"} {
		if n[i] > 0 {
			who := fmt.Sprint(n[i])
			if len(said) == 0 {
				who = plural(n[i], "player")
			}
			said = append(said, who+" "+verb)
		}
	}
	same := len(c.in.Sized.Players) - n[0] - n[1]
	text := list(said)
	wide := slices.ContainsFunc(c.told.Job, func(l changes.Line) bool { return l.Players == 0 })
	switch {
	case wide && text == "":
		text = "The order changed for everyone"
	case wide:
		text = "The order changed for everyone, and " + text
	case text == "":
		text = "The players stand in another order"
	}
	if same > 0 && !wide && len(said) > 0 {
		text += "; " + stay(same)
	}
	text += "."
	if len(c.bands) > 0 {
		text += " Each is drawn before and after at one scale; what is new is set bold."
	}
	return sentenceCase(text)
}

// stay says how many players stay as they were.
func stay(n int) string {
	if n == 1 {
		return "1 stays as before"
	}
	return fmt.Sprintf("%d stay as before", n)
}

// plan plans the pages: the turn of the sheet that needs fewer pages, then the
// larger scale.
func (c *comparison) plan() []leaf {
	var best []leaf
	var bestScale float64
	for _, sheet := range [...]page.Sheet{c.in.Paper.sheet().Portrait(), c.in.Paper.sheet().Landscape()} {
		turned := *c
		turned.sheet, turned.grid = sheet, parts.NewGrid(sheet)
		turned.fit()
		leaves := turned.leaves()
		if best == nil || len(leaves) < len(best) || len(leaves) == len(best) && turned.scale > bestScale {
			best, bestScale = leaves, turned.scale
		}
	}
	return best
}

func (c *comparison) leaves() []leaf {
	pages := flow(c.strips(), c.grid.Bottom-c.grid.Top-footClear)
	var out []leaf
	for i, strips := range pages {
		l := leaf{section: changedSection, sheet: c.sheet, title: pageTitle(compareTitle, i, len(pages)), sentence: c.sentence()}
		if i > 0 {
			l.sentence = "At the same scale; what is new is set bold."
		}
		l.draw = func(f *frame) error {
			f.drawStrips(strips, f.Top)
			f.foot("Before and after stand at one scale, each on the player’s own size. The thin posts beside a name are the room on that size.", c.scale)
			return f.failed
		}
		out = append(out, l)
	}
	return out
}
