package ticket

import (
	"math"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// column is one figure of the table of placements.
type column struct {
	head string
	of   func(p sizes.Player) (mm float64, ok bool)
}

// The table of placements, mm.
const (
	placeSize  = 13.0
	placeRow   = 5.0
	placeHead  = 10.0
	placeLeast = 13.0 // of a column
	keptRows   = 12   // of sizes stay on the page of their drawing
)

// placingStrips are the figures of every size: a table a side, beside each other
// where there is room.
func (d *document) placingStrips(sides []garment.Side) []strip {
	width := (d.grid.Live() - parts.Gutter*float64(len(sides)-1)) / float64(max(1, len(sides)))
	abreast := true
	for _, side := range sides {
		abreast = abreast && placeSize+placeLeast*float64(len(d.placeColumns(side))) <= width
	}
	if abreast {
		return d.placeTable(sides, width)
	}
	var out []strip
	for _, side := range sides {
		out = append(out, d.placeTable([]garment.Side{side}, d.grid.Live())...)
	}
	return out
}

// placeTable is a head and a row a size, for sides that stand beside each other.
func (d *document) placeTable(sides []garment.Side, width float64) []strip {
	columns := make([][]column, len(sides))
	for i, side := range sides {
		columns[i] = d.placeColumns(side)
	}
	x := func(i int) float64 { return d.grid.Left + float64(i)*(width+parts.Gutter) }
	head := strip{high: placeHead, keep: true, draw: func(f *frame, y float64) error {
		for i, side := range sides {
			f.say(x(i), y+7.4, parts.Value(), sentence(side.String()))
			each := (width - placeSize) / float64(len(columns[i]))
			for k, c := range columns[i] {
				t := parts.Label().To(page.End)
				lines := f.book.Wrap(t.Style, each-1, c.head)
				for n, line := range lines {
					f.say(x(i)+placeSize+each*float64(k+1), y+7.4-2.8*float64(len(lines)-1-n), t, line)
				}
			}
			f.Line(x(i), y+9, x(i)+width, y+9, parts.Ink, page.Line{Weight: parts.Outline})
		}
		return nil
	}}
	out := []strip{head}
	for _, b := range d.in.Count.Blanks {
		row := strip{high: placeRow, head: &head, keep: len(d.in.Count.Blanks) <= keptRows, draw: func(f *frame, y float64) error {
			for i := range sides {
				f.placeRow(x(i), y, width, b.Size, columns[i])
			}
			return nil
		}}
		out = append(out, row)
	}
	out[len(out)-1].keep = false
	return append(out, space(2.5))
}

func (f *frame) placeRow(x, y, width float64, size garment.Size, columns []column) {
	f.say(x, y+3.5, parts.Value(), f.sizeLabel(size))
	each := (width - placeSize) / float64(len(columns))
	for k, c := range columns {
		text := "–"
		if least, most, ok := f.spread(size, c); ok {
			text = f.span(least, most)
		}
		t, _ := parts.Shrunk(f.Pen, parts.Caption().To(page.End), parts.Label().Size, each-2, text)
		f.say(x+placeSize+each*float64(k+1), y+3.5, t, text)
	}
	f.Line(x, y+placeRow, x+width, y+placeRow, parts.Rule, page.Line{Weight: parts.Hair})
}

// spread returns the least and the most of a figure among the players of a size.
func (d *document) spread(size garment.Size, c column) (least, most float64, ok bool) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, p := range d.in.Sized.Players {
		if p.Garment == nil || p.Size != size {
			continue
		}
		if v, has := c.of(p); has {
			least, most, ok = math.Min(least, v), math.Max(most, v), true
		}
	}
	return least, most, ok
}

// placeColumns are the figures of one side: of each piece how far under the
// collar it begins and how high it is, of a piece under another the gap, and how
// far from the centre line it stands.
func (d *document) placeColumns(side garment.Side) []column {
	var out []column
	for _, place := range d.placesOf(side) {
		get := func(of func(q sizes.Piece, p sizes.Player) (float64, bool)) func(sizes.Player) (float64, bool) {
			return func(p sizes.Player) (float64, bool) {
				q, ok := p.Piece(place)
				if !ok {
					return 0, false
				}
				return of(q, p)
			}
		}
		word := thing(place)
		if d.turned(place) {
			word = string(place)
		} else {
			out = append(out, column{datum(d.order) + " to " + word, get(func(q sizes.Piece, _ sizes.Player) (float64, bool) { return q.BelowCollar, true })})
		}
		out = append(out, column{word + ", " + pieceWord(place), get(func(q sizes.Piece, _ sizes.Player) (float64, bool) { return q.Height(), true })})
		if d.hasAbove(side, place) {
			out = append(out, column{"gap over " + word, get(gapOver)})
		}
		if d.stands(place) {
			out = append(out, column{word + " off centre", get(func(q sizes.Piece, _ sizes.Player) (float64, bool) { return math.Abs(aside(q)), true })})
		}
	}
	return out
}

// gapOver is the gap between a piece and the one above it.
func gapOver(q sizes.Piece, p sizes.Player) (float64, bool) {
	at, ok := 0.0, false
	for _, o := range onSide(p, q.Side) {
		if foot := o.Top + o.Height(); o.Turn == 0 && foot <= q.Top && (!ok || foot > at) {
			at, ok = foot, true
		}
	}
	return q.Top - at, ok
}

// placesOf lists the places of a side from the top down, as most players have
// them.
func (d *document) placesOf(side garment.Side) []order.Place {
	p, _ := d.shown()
	var out []order.Place
	for _, q := range onSide(p, side) {
		out = append(out, q.Asked.Place)
	}
	for _, other := range d.in.Sized.Players {
		for _, q := range onSide(other, side) {
			out = with(out, q.Asked.Place)
		}
	}
	return out
}

func (d *document) any(place order.Place, has func(sizes.Piece, sizes.Player) bool) bool {
	for _, p := range d.in.Sized.Players {
		if q, ok := p.Piece(place); ok && has(q, p) {
			return true
		}
	}
	return false
}

func (d *document) turned(place order.Place) bool {
	return d.any(place, func(q sizes.Piece, _ sizes.Player) bool { return q.Turn != 0 })
}

func (d *document) stands(place order.Place) bool {
	return !d.turned(place) && d.any(place, func(q sizes.Piece, _ sizes.Player) bool { return aside(q) != 0 })
}

func (d *document) hasAbove(side garment.Side, place order.Place) bool {
	return !d.turned(place) && d.any(place, func(q sizes.Piece, p sizes.Player) bool {
		_, ok := gapOver(q, p)
		return ok && q.Side == side
	})
}
