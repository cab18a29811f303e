package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/spelling"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

const rosterTitle = "The roster"

// roster is what all pages of the roster share.
type roster struct {
	grid    rosterGrid
	side    garment.Side
	window  float64 // height of a window, mm on paper
	caption float64 // height of what stands under it
	tiles   []rosterTile
	names   bool // the order has names
	marks   bool // some tile has a verdict
	plain   bool // all shirts without the details that small ones cannot show
}

// planRoster plans the pages that show every player; an order without players
// has none.
func (d *document) planRoster() ([]leaf, error) {
	n := len(d.in.Sized.Players)
	if n == 0 {
		return nil, nil
	}
	r := d.newRoster()
	each := r.grid.columns * r.grid.rows
	var out []leaf
	for i := range r.grid.pages {
		from, to := i*each, min(n, (i+1)*each)
		l := leaf{section: rosterSection, sheet: r.grid.sheet, title: pageTitle(rosterTitle, i, r.grid.pages)}
		l.sentence = d.rosterSentence()
		if i > 0 {
			l.sentence = fmt.Sprintf("%s of %d, at the same scale. %s", playersFromTo(from+1, to), n, d.readAloud())
		}
		l.draw = func(f *frame) error { return f.drawRoster(r, from, to) }
		out = append(out, l)
	}
	return out, nil
}

// newRoster chooses the grid. Captions that need more room than usual ask for
// another one.
func (d *document) newRoster() *roster {
	r := &roster{side: d.rosterSide(), caption: tileCaption}
	for _, p := range d.in.Sized.Players {
		_, has := p.Piece(garment.BackName)
		r.names = r.names || has
	}
	need, longest := d.rosterNeeds()
	for {
		r.grid = chooseGrid(len(d.in.Sized.Players), d.in.Paper, need, r.caption)
		r.tiles = d.rosterTiles(r.grid.tile)
		high := r.caption
		for _, t := range r.tiles {
			high = max(high, t.high)
		}
		if high <= r.caption {
			break
		}
		r.caption = high
	}
	for _, t := range r.tiles {
		r.marks = r.marks || t.verdict.has
	}
	for _, p := range d.in.Sized.Players {
		r.plain = r.plain || p.Garment != nil && p.Garment.Bounds(r.side).Width()*r.grid.scale() < shirt.FineWidth
	}
	r.window = r.grid.window(need, longest, r.caption)
	return r
}

// rosterSide is the side that players are told apart by: the back, unless only
// the front carries something.
func (d *document) rosterSide() garment.Side {
	front := false
	for _, p := range d.in.Sized.Players {
		for _, piece := range p.Pieces {
			if piece.Side == garment.Back {
				return garment.Back
			}
			front = true
		}
	}
	if front {
		return garment.Front
	}
	return garment.Back
}

// pageTitle is a section's title, with the page where it has several.
func pageTitle(title string, i, pages int) string {
	if pages == 1 {
		return title
	}
	return fmt.Sprintf("%s, %d of %d", title, i+1, pages)
}

func playersFromTo(from, to int) string {
	if from == to {
		return fmt.Sprintf("Player %d", from)
	}
	return fmt.Sprintf("Players %d to %d", from, to)
}

// rosterSentence counts the players and their verdicts.
func (d *document) rosterSentence() string {
	if d.in.Onto > 0 {
		return d.addedSentence()
	}
	n := len(d.in.Sized.Players)
	players, side := fmt.Sprintf("%d players, every", n), d.rosterSide().String()
	if n == 1 {
		players = "1 player, the"
	}
	text := fmt.Sprintf("%s %s at one scale.", players, side)
	if n == 1 {
		text = fmt.Sprintf("%s %s.", players, side)
	}
	if counts := d.verdictCounts(); counts != "" {
		text += " " + counts + "."
	}
	return text + " " + d.readAloud()
}

// readAloud asks for the reading that finds most mistakes.
func (d *document) readAloud() string {
	if _, ok := d.asked(garment.BackName); ok {
		return "Please read every name out loud, letter by letter."
	}
	return "Please read every number out loud, digit by digit."
}

// verdictCounts says how many names came out in each way: 8 names at full
// height, 4 eased.
func (d *document) verdictCounts() string {
	var of [4]int
	names, unsized := 0, 0
	for _, p := range d.in.Sized.Players {
		if p.Garment == nil {
			unsized++
		}
		if piece, ok := p.Piece(garment.BackName); ok {
			of[piece.Name.Verdict]++
			names++
		}
	}
	var words []string
	for v, n := range of {
		switch {
		case n == 0:
		case v == int(fit.Full) && n == names && n > 1:
			words = append(words, "All names at full height")
		case len(words) == 0:
			words = append(words, plural(n, "name")+" "+verdictWords(fit.Verdict(v)))
		default:
			words = append(words, fmt.Sprintf("%d %s", n, verdictWords(fit.Verdict(v))))
		}
	}
	if unsized > 0 {
		words = append(words, plural(unsized, "player")+" without a size")
	}
	return strings.Join(words, ", ")
}

func verdictWords(v fit.Verdict) string {
	if v == fit.Full {
		return "at full height"
	}
	return v.String()
}

// plural counts things in figures: 1 name, 2 names.
func plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// asCut is a player's name as it will be cut, or as it was typed where none is
// put on the back.
func (d *document) asCut(p sizes.Player) string {
	if piece, ok := p.Piece(garment.BackName); ok {
		return spelling.OneLine(piece.Text())
	}
	if asked, ok := d.asked(garment.BackName); ok {
		return spelling.Apply(p.Name, asked.Case, asked.Lang)
	}
	return p.Name
}

func (f *frame) drawRoster(r *roster, from, to int) error {
	for i, t := range r.tiles[from:to] {
		x, y := r.grid.at(f.Grid, i, r.window+r.caption)
		if err := f.drawTile(r, t, x, y); err != nil {
			return fmt.Errorf("%s: %w", t.player.Label(), err)
		}
	}
	if r.marks {
		parts.VerdictKey(f.Pen, f.Left, f.Bottom-2.6)
	}
	f.foot(f.rosterNote(r), r.grid.scale())
	return nil
}

func (f *frame) rosterNote(r *roster) string {
	if r.names {
		return "The two thin posts beside a name are the room on that size. Names stand as they will be cut."
	}
	if _, ok := f.asked(order.Place(garment.BackNumber)); ok {
		return "Numbers stand as they will be cut."
	}
	return "Everything stands as it will be cut."
}
