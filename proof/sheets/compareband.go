package sheets

import (
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/changes"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// The pages of a comparison, mm: words in the first four columns, before in the
// next four, after in the last.
const (
	compareColumns = 4
	beforeColumn   = 5
	afterColumn    = 9

	compareHead   = 11.0 // of the two columns, with their fingerprints
	compareRow    = 5.0  // of a line about the whole order
	compareRowY   = 4.4  // to its baseline
	compareAir    = 1.8  // under the last one
	compareStep   = 3.6  // to a further line of it
	bandAir       = 3.0  // over and under a band
	bandCaption   = 5.2  // under the drawings
	bandName      = 4.2  // to the first baseline
	bandNote      = 3.6
	changeLabel   = 4.6 // from what stands before to a label
	changeValue   = 3.6 // to its values
	emptyTileHigh = 12.0
)

// fit finds the scale at which the widest drawing fits its column, and the
// height of the drawings.
func (c *comparison) fit() {
	need, longest := rosterNeed{}, 0.0
	for _, b := range c.bands {
		for _, p := range b.on {
			if b.drawn && p != nil && p.Garment != nil {
				wide, deep := sideNeed(*p, b.side)
				need.wide, need.deep = math.Max(need.wide, wide), math.Max(need.deep, deep)
				longest = math.Max(longest, p.Garment.Bounds(b.side).Max.Y)
			}
		}
	}
	if need.wide == 0 {
		c.window = emptyTileHigh
		return
	}
	tile, room := c.grid.Span(compareColumns), c.grid.Bottom-c.grid.Top-footClear
	most := room - compareHead - 2*bandAir - bandCaption
	c.scale = 1 / scales()[len(scales())-1]
	for _, n := range scales() {
		if need.wide*chestMargin/n <= tile && need.deep/n <= most {
			c.scale = 1 / n
			break
		}
	}
	c.window = need.deep * c.scale
	c.plain = need.wide*c.scale < shirt.FineWidth
	const underHem = 10.0
	c.deepen((windowAbove+longest+underHem)*c.scale, room)
}

// deepen lets the drawings show as much of the garments, up to all, as leaves
// every band on its page.
func (c *comparison) deepen(whole, room float64) {
	const step = 1.0
	dealt := func() (out []int) {
		for _, on := range flow(c.strips(), room) {
			out = append(out, len(on))
		}
		return out
	}
	pages := dealt()
	for c.window+step <= whole {
		c.window += step
		if !slices.Equal(dealt(), pages) {
			c.window -= step
			return
		}
	}
}

// sideNeed is how wide a drawing of one side must be, as a chest, and how deep,
// mm of garment.
func sideNeed(p sizes.Player, side garment.Side) (wide, deep float64) {
	wide = p.Garment.Measures().ChestHalf
	low := 0.0
	for _, piece := range p.Pieces {
		if piece.Side != side {
			continue
		}
		wide = math.Max(wide, 2*(math.Abs(piece.At.X)+piece.InkWidth()/2)/chestMargin)
		low = math.Max(low, piece.At.Y+piece.Reach()+underBaseline(piece))
	}
	return wide, windowAbove + low + windowBelow
}

// strips are the rows of the whole order and the bands, under the two columns.
func (c *comparison) strips() []strip {
	head := &strip{high: compareHead, draw: c.drawColumns}
	var out []strip
	rows := slices.Clone(c.told.Job)
	if c.told.Moved {
		rows = append(rows, changes.Line{What: "the roster", Is: "the players stand in another order"})
	}
	for i, l := range rows {
		row := c.jobRow(l)
		if row.head = head; i == len(rows)-1 {
			row.high += compareAir
			row.keep = len(c.bands) > 0 && c.bands[0].kind == changes.Job
		}
		out = append(out, row)
	}
	for _, b := range c.bands {
		s := c.band(b)
		s.head = head
		out = append(out, s)
	}
	if len(out) == 0 {
		out = append(out, strip{high: compareRow, head: head})
	}
	return out
}

// drawColumns names the two columns and shows their fingerprints.
func (c *comparison) drawColumns(f *frame, y float64) {
	tile := c.grid.Span(compareColumns)
	for i, o := range [...]Input{c.was, c.in} {
		x := c.grid.X([...]int{beforeColumn, afterColumn}[i])
		w := f.say(x, y+4.2, parts.Heading(), [...]string{"Before", "After"}[i])
		if r := o.Sized.Order.Revision; r != "" {
			t := parts.Caption().In(parts.Slate)
			f.say(x+w+nameGap, y+4.2, t, parts.Shortened(f.Pen, t, tile-combWide-w-2*nameGap, "revision "+r))
		}
		f.say(x, y+8.6, parts.Value(), parts.Code(o.Fingerprint))
		parts.Comb(f.Pen, x+tile-combWide, y+2.6, parts.Code(o.Fingerprint))
	}
	f.Line(f.Left, y+compareHead, f.Right, y+compareHead, parts.Ink, page.Line{Weight: parts.Outline})
}

// combWide is what a comb takes at the right of a column, with its rule.
const combWide = 17.8

// jobRow is a line about the whole order, its values in their columns.
func (c *comparison) jobRow(l changes.Line) strip {
	tile := c.grid.Span(compareColumns)
	subject := sentenceCase(l.Subject())
	if l.Players > 0 {
		subject += fmt.Sprintf(" (%s)", plural(l.Players, "player"))
	}
	was, is := l.Was, l.Is
	if is == "" {
		is = "none"
	}
	cells := [3][]string{
		c.book.Wrap(parts.Caption().Style, tile-2, subject), c.book.Wrap(parts.Caption().Style, tile-2, was), c.book.Wrap(parts.Value().Style, tile-2, is),
	}
	most := max(len(cells[0]), len(cells[1]), len(cells[2]))
	return strip{high: compareRow + compareStep*float64(most-1), draw: func(f *frame, y float64) {
		for i, t := range [...]parts.Type{parts.Caption(), parts.Caption().In(parts.Slate), parts.Value()} {
			f.lines(c.grid.X([...]int{1, beforeColumn, afterColumn}[i]), y+compareRowY, compareStep, t, cells[i])
		}
	}}
}

// band is one player, or everyone shown on one, before and after.
func (c *comparison) band(b changeBand) strip {
	high := math.Max(c.drawWords(nil, b, 0), emptyTileHigh/2)
	if b.drawn {
		high = math.Max(high, c.window+bandCaption)
	}
	return strip{high: high + 2*bandAir, draw: func(f *frame, y float64) {
		f.rule(y)
		c.drawWords(f, b, y+bandAir)
		for i, p := range b.on {
			x := c.grid.X([...]int{beforeColumn, afterColumn}[i])
			if !b.drawn {
				f.say(x, y+bandAir+bandName, parts.Caption().In(parts.Slate), "drawn as before")
				break
			}
			if err := c.drawShirt(f, b, p, i, x, y+bandAir); err != nil && f.failed == nil {
				f.failed = err
			}
		}
	}}
}

// drawShirt draws a player before (0) or after (1), its top left corner at x, y.
func (c *comparison) drawShirt(f *frame, b changeBand, p *sizes.Player, at int, x, y float64) error {
	tile := c.grid.Span(compareColumns)
	if p == nil || p.Garment == nil {
		words := "size not known"
		if p == nil {
			words = [...]string{"not in the order yet", "no longer in the order"}[at]
		}
		f.StrokeRect(x, y, tile, c.window, parts.Rule, page.Line{Weight: parts.Hair, Dash: parts.DatumDash()})
		f.say(x+tile/2, y+c.window/2+1, parts.Sentence().In(parts.Slate).To(page.Middle), words)
		return nil
	}
	f.FillRect(x, y, tile, c.window, parts.Tile)
	verdict := f.verdictOn(*p, b.side)
	posts, frame, weight := shirt.ThinPosts, parts.Rule, parts.Hair
	if verdict.has && verdict.mark == parts.Over {
		posts, frame, weight = shirt.OverPosts, parts.Decide, parts.OverFrameRow
	}
	err := shirt.View{
		Garment: p.Garment, Side: b.side, Pieces: p.Pieces, Cloth: c.cloth[at], Posts: posts, Plain: c.plain,
		Scale: c.scale, X: x + tile/2, Y: y + windowAbove*c.scale,
		Window: geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + tile, Y: y + c.window}},
	}.Paint(f.Pen)
	f.StrokeRect(x, y, tile, c.window, frame, page.Line{Weight: weight})
	if verdict.has {
		parts.VerdictLine(f.Pen, x, y+c.window+captionVerdict, verdict.mark, verdict.rest)
	}
	f.say(x+tile, y+c.window+captionVerdict, parts.Caption().To(page.End), f.sizeLabel(p.Size))
	return err
}

// verdictOn says how the name of a player came out, or whatever is over; of the
// side that carries no name only what is over.
func (d *document) verdictOn(p sizes.Player, side garment.Side) verdictText {
	if side == d.rosterSide() {
		return d.verdictOf(p)
	}
	for _, piece := range p.Pieces {
		if _, over := overBy(piece); over && piece.Side == side {
			return verdictText{parts.Over, fmt.Sprintf("%s, %s", d.overWords(piece), piece.Asked.Place), true}
		}
	}
	return verdictText{}
}

// drawWords says who it is and what changed, and returns the height it takes;
// with no frame it only measures.
func (c *comparison) drawWords(f *frame, b changeBand, y float64) float64 {
	top, width := y, c.grid.Span(compareColumns)-2
	w := changeWords{c, f, width}
	if b.note != "" {
		w.lines(0, y+2.6, parts.Note(), []string{sentenceCase(b.note)})
		y += bandNote
	}
	y = w.who(b, y)
	switch b.kind {
	case changes.Added:
		y = w.lines(0, y+changeLabel, parts.Value(), []string{"added"})
	case changes.Removed:
		y = w.lines(0, y+changeLabel, parts.Value(), []string{"taken off"})
	}
	for _, l := range b.lines {
		y = w.line(l, y)
	}
	return y + 1 - top
}
