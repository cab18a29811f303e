package ticket

import (
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/order"
	"yokeline/lettering/tally"
	"yokeline/proof/parts"
)

// Columns of the pick list, mm from the left margin.
const (
	pickBox    = 5.6
	pickName   = 20.0
	pickSize   = 63.0
	pickPieces = 81.0
	pickGap    = 2.0
	pickHead   = 6.6
	pickBase   = 4.3 // a row's top to its first baseline
	pickLine   = 3.4
	pickSpot   = 3.0
	pickAir    = 2.4
	pickLeast  = 6.8  // pt, of a text before it breaks
	pickMost   = 38.0 // of a text's room while others need some
	everyFifth = 5
	// pickColumns is how many pieces stand beside each other; more go to a further
	// line.
	pickColumns = 4
)

// planPicks plans the pick list: a row a player.
func (d *document) planPicks() ([]leaf, error) {
	columns := d.pickColumnsOf(d.worn())
	head := d.pickHeads(columns)
	strips := []strip{head}
	strips[0].keep = true
	for i := range d.in.Count.Picks {
		s := d.pickStrip(i, columns)
		s.head = &head
		strips = append(strips, s)
	}
	text := fmt.Sprintf("%s, %s: %s, %s. Tick what goes in the bag.", plural(d.in.Count.Players, "player"), plural(d.in.Count.Pieces, "piece"), d.noun(), d.clothWords())
	if n := len(d.in.Count.ToAsk); n > 0 {
		text = fmt.Sprintf("%s, %s, %s to ask for. Tick what goes in the bag.", plural(d.in.Count.Players, "player"), plural(d.in.Count.Pieces, "piece"), plural(n, "size"))
	}
	return d.flowed(PickList, strips, text, "Names as the roster spells them; the lettering as it is cut. 0, 00, 7 and 07 are four numbers."), nil
}

// worn lists the places that somebody has a piece at.
func (d *document) worn() []order.Place {
	var out []order.Place
	for _, p := range d.order.Pieces {
		if slices.ContainsFunc(d.in.Count.Sizes, func(r tally.SizeRow) bool { return r.Place == p.Place }) {
			out = append(out, p.Place)
		}
	}
	return out
}

// pickColumn is where the pieces of a place stand, mm from the left margin.
type pickColumn struct {
	place   order.Place
	x, room float64 // room is that of the text, after its box
	line    int     // of the row, from 0
}

// pickColumnsOf gives every place as much room as its longest text asks for, as
// far as the page has it.
func (d *document) pickColumnsOf(places []order.Place) []pickColumn {
	var out []pickColumn
	for from := 0; from < len(places); from += pickColumns {
		row := places[from:min(len(places), from+pickColumns)]
		needs := make([]float64, len(row))
		sum := 0.0
		for i, p := range row {
			needs[i] = d.pickNeed(p)
			sum += needs[i]
		}
		spare := (d.grid.Live() - pickPieces - sum) / float64(len(row))
		x := pickPieces
		for i, p := range row {
			wide := needs[i] + spare
			if spare < 0 {
				wide = needs[i] * (d.grid.Live() - pickPieces) / sum
			}
			out = append(out, pickColumn{p, x, wide - pickBox - pickGap, from / pickColumns})
			x += wide
		}
	}
	return out
}

// pickNeed is the width that no text of a place is too wide for, but for very
// long ones, which break, mm.
func (d *document) pickNeed(place order.Place) float64 {
	most := d.book.Width(parts.Note().Style, string(place))
	for _, p := range d.in.Count.Picks {
		for _, q := range p.Pieces {
			if q.Place != place {
				continue
			}
			most = math.Max(most, d.book.Width(parts.Value().Sized(pickLeast).Style, inline(q.Text)))
			for _, s := range q.Spots {
				most = math.Max(most, d.book.Width(parts.Label().Style, s.String()))
			}
		}
	}
	return math.Min(most, pickMost) + pickBox + pickGap
}

func (d *document) pickHeads(columns []pickColumn) strip {
	lines := (len(columns) + pickColumns - 1) / pickColumns
	tall := pickHead + pickSpot*float64(max(0, lines-1))
	return strip{high: tall, draw: func(f *frame, y float64) error {
		t := parts.Note()
		for _, h := range [...]struct {
			x    float64
			text string
		}{{pickBox, "No."}, {pickName, "Name"}, {pickSize, sentence(d.noun())}} {
			f.say(f.Left+h.x, y+tall-3, t, h.text)
		}
		for _, c := range columns {
			f.fitted(f.Left+c.x+pickBox, y+tall-3-pickSpot*float64(lines-1-c.line), c.room, t, string(c.place))
		}
		f.rule(y+tall, parts.Ink, parts.Outline)
		return nil
	}}
}

// pickCell is one piece in its row.
type pickCell struct {
	x     float64
	lines []string // of the text
	spots []string
	t     parts.Type
}

func (c pickCell) high() float64 {
	return pickLine*float64(len(c.lines)) + pickSpot*float64(len(c.spots))
}

// pickCells sets the pieces of a player, in lines of pickColumns.
func (d *document) pickCells(p tally.Pick, columns []pickColumn) [][]pickCell {
	var out [][]pickCell
	for _, c := range columns {
		if c.line == len(out) {
			out = append(out, nil)
		}
		k := slices.IndexFunc(p.Pieces, func(q tally.PickPiece) bool { return q.Place == c.place })
		if k >= 0 {
			out[c.line] = append(out[c.line], d.pickCell(p.Pieces[k], c.x, c.room))
		}
	}
	return out
}

func (d *document) pickCell(q tally.PickPiece, x, room float64) pickCell {
	t := parts.Value()
	text := inline(q.Text)
	if small, fits := d.shrunk(t, pickLeast, room, text); fits {
		t = small
	}
	c := pickCell{x: x, t: t, lines: d.book.Wrap(t.Style, room, text)}
	if len(q.Spots) == 0 {
		c.spots = []string{d.length(q.Height)}
	}
	for _, s := range q.Spots {
		c.spots = append(c.spots, d.book.Wrap(parts.Label().Style, room, s.String())...)
	}
	return c
}

// pickStrip is the row of a player.
func (d *document) pickStrip(i int, columns []pickColumn) strip {
	p := d.in.Count.Picks[i]
	name := parts.RowName()
	text := p.Name
	if text == "" {
		text, name = "no name", parts.Sentence().In(parts.Slate)
	}
	names := d.book.Wrap(name.Style, pickSize-pickName-pickGap, text)
	var full []string
	if p.Label != p.Name && p.Name != "" {
		full = d.book.Wrap(parts.Label().Style, pickSize-pickName-pickGap, p.Label)
	}
	cells := d.pickCells(p, columns)
	tall := pickLine*float64(len(names)) + pickSpot*float64(len(full))
	sum := 0.0
	for _, row := range cells {
		sum += rowHigh(row)
	}
	tall = max(tall, sum, pickLine+pickSpot) + pickAir
	return strip{high: tall, draw: func(f *frame, y float64) error {
		base := y + pickBase
		parts.OpenBox(f.Pen, f.Left, base-2.9, parts.BoxSize)
		f.pickNumber(p, base)
		for k, line := range names {
			f.say(f.Left+pickName, base+pickLine*float64(k), name, line)
		}
		for k, line := range full {
			f.say(f.Left+pickName, base+pickLine*float64(len(names)-1)+pickSpot*float64(k+1), parts.Label(), line)
		}
		f.pickGarment(p, base)
		for _, row := range cells {
			for _, c := range row {
				f.pickPiece(c, base)
			}
			base += rowHigh(row)
		}
		colour := parts.Rule
		if (i+1)%everyFifth == 0 {
			colour = parts.Ink
		}
		f.rule(y+tall, colour, parts.Hair)
		return nil
	}}
}

func rowHigh(row []pickCell) float64 {
	if len(row) == 0 {
		return 0
	}
	tall := pickLine + pickSpot
	for _, c := range row {
		tall = math.Max(tall, c.high())
	}
	return tall
}

func (f *frame) pickNumber(p tally.Pick, base float64) {
	number, t := p.Number, parts.RowNumber()
	if number == "" {
		number, t = "no no.", parts.Caption().In(parts.Slate)
	}
	f.fitted(f.Left+pickBox, base, pickName-pickBox-1, t, number)
}

func (f *frame) pickGarment(p tally.Pick, base float64) {
	if !p.Known {
		f.say(f.Left+pickSize, base, parts.Value().In(parts.Decide), "size?")
		f.say(f.Left+pickSize, base+pickSpot, parts.Label(), "not known: ask")
		return
	}
	parts.OpenBox(f.Pen, f.Left+pickSize, base-2.9, parts.BoxSize)
	f.say(f.Left+pickSize+pickBox, base, parts.RowNumber(), f.sizeLabel(p.Size))
}

func (f *frame) pickPiece(c pickCell, base float64) {
	parts.OpenBox(f.Pen, f.Left+c.x, base-2.9, parts.BoxSize)
	for k, line := range c.lines {
		f.say(f.Left+c.x+pickBox, base+pickLine*float64(k), c.t, line)
	}
	for k, line := range c.spots {
		f.say(f.Left+c.x+pickBox, base+pickLine*float64(len(c.lines)-1)+pickSpot*float64(k+1), parts.Label(), line)
	}
}
