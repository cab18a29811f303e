package sheets

import (
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// decideTile is one way out, or the thing as it stands, drawn on the player's
// own garment.
type decideTile struct {
	letter    string // empty: it cannot be ticked
	title     string
	mark      *parts.Verdict
	figure    string
	more      string        // what follows from it
	player    *sizes.Player // nil: only words
	place     garment.Place // of the piece that the tile is about
	limit     float64       // between the posts, mm; 0 for none
	over      float64       // mm over the limit
	blank     bool          // the answer is written on a line
	forbidden bool          // it cannot be made
}

func (t decideTile) drawn() bool { return t.player != nil }

// piece is what the tile is about.
func (t decideTile) piece() sizes.Piece {
	p, _ := t.player.Piece(t.place)
	return p
}

// drawDecideRow draws the question and its tiles.
func (f *frame) drawDecideRow(r decideRow, y, high float64) {
	if y > f.Top+rounding && r.first {
		f.rule(y + bandRule)
	}
	y += bandTop
	if r.first {
		f.drawQuestion(r, f.Left, y)
	}
	window := high - bandTop - captionsHigh
	for i, t := range r.tiles {
		x := f.X(tileFirst + tileColumns*i)
		if !t.drawn() {
			f.drawPlainTile(t, x, y)
			continue
		}
		f.drawWindow(t, x, y, window)
		f.drawTileWords(t, x, y+window+captionTitleY)
	}
	if r.last != "" {
		x := f.X(tileFirst + tileColumns*len(r.tiles))
		f.paragraph(x, y+3.2, f.Span(tileColumns), parts.Caption().In(parts.Slate), r.last)
	}
}

// drawWindow draws the garment around the piece.
func (f *frame) drawWindow(t decideTile, x, y, high float64) {
	wide := f.Span(tileColumns)
	f.FillRect(x, y, wide, high, parts.Tile)
	v := f.tileView(t, x, y, wide, high)
	if err := v.Paint(f.Pen); err != nil && f.failed == nil {
		f.failed = err
	}
	if t.forbidden {
		f.StrokeRect(x, y, wide, high, parts.Decide, page.Line{Weight: parts.OverFrameRow})
		return
	}
	f.StrokeRect(x, y, wide, high, parts.Rule, page.Line{Weight: parts.Hair})
}

// tileView places the garment so that the piece is seen with what surrounds it.
func (f *frame) tileView(t decideTile, x, y, wide, high float64) shirt.View {
	const under, centred = 50.0, 0.25 // mm of garment shown under a piece; share of the tile it may stand off the middle
	p, g, k := t.piece(), t.player.Garment, f.scale
	up := tileLettersUp + max(0, -g.Bounds(p.Side).Min.Y)
	v := shirt.View{
		Garment: g, Side: p.Side, Pieces: t.player.Pieces, Cloth: f.cloth, Scale: k, X: x + wide/2, Y: y + up*k, Plain: true,
		Window: geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + wide, Y: y + high}},
	}
	low := p.At.Y + under/2
	if p.Name != nil {
		low = p.At.Y + p.Name.Leading + under
	}
	v.Y -= max(0, v.Y+low*k-y-high)
	if off := p.At.X * k; p.Turn != 0 || off > centred*wide || off < -centred*wide {
		v.X -= off
	}
	if t.limit > 0 && p.Turn == 0 {
		v.Under = func(pen *page.Pen) { f.drawPosts(pen, v, t) }
	}
	return v
}

// drawPosts draws the room of a piece and hatches what hangs over it.
func (f *frame) drawPosts(pen *page.Pen, v shirt.View, t decideTile) {
	const above, below = 22.0, 40.0
	p := t.piece()
	top, foot := p.At.Y-p.Height()-above, p.At.Y+below
	if p.Name != nil {
		top, foot = p.Top-above, p.Top+p.Name.Asked+below
	}
	m := v.Map()
	weight := parts.Hair
	if t.over > 0 {
		weight = parts.OverPost
	}
	for _, side := range [2]float64{-1, 1} {
		a, b := m.Apply(geom.Point{X: p.RoomCentre() + side*t.limit/2, Y: top}), m.Apply(geom.Point{X: p.RoomCentre() + side*t.limit/2, Y: foot})
		if t.over > 0 {
			end := m.Apply(geom.Point{X: p.RoomCentre() + side*(t.limit+t.over)/2, Y: top})
			parts.Hatch(pen, page.RectPath(min(a.X, end.X), a.Y, max(a.X, end.X)-min(a.X, end.X), b.Y-a.Y), v.Cloth.On.Line, parts.OverHatch, parts.OverHatchStep)
		}
		v.Cloth.Line(pen, a.X, a.Y, b.X, b.Y, page.Line{Weight: weight})
	}
}

// drawTileWords prints what a tile shows.
func (f *frame) drawTileWords(t decideTile, x, y float64) {
	wide := f.Span(tileColumns)
	end := x + wide
	if t.letter != "" {
		parts.OpenBox(f.Pen, x, y-3, parts.BoxSize)
		x += choiceText
	}
	f.tileTitle(t, x, y, end)
	y += captionFigure
	if t.mark != nil {
		parts.VerdictLine(f.Pen, x, y, *t.mark, t.figure)
	} else {
		small, _ := parts.Shrunk(f.Pen, parts.Caption(), parts.Label().Size, end-x, t.figure)
		y = f.lines(x, y, captionMore, small, f.Book().Wrap(small.Style, end-x, t.figure)) - captionMore
	}
	for _, line := range f.Book().Wrap(parts.Note().Style, end-x, t.more) {
		y += captionMore
		f.say(x, y, parts.Note(), line)
	}
}

// tileTitle prints the letter and the title, with a line to write on where the
// answer is written.
func (f *frame) tileTitle(t decideTile, x, y, end float64) {
	words := strings.TrimSpace(t.letter + "  " + t.title)
	if t.letter == "" {
		words = t.title
	}
	room := end - x
	if t.blank {
		room -= 8
	}
	style, _ := parts.Shrunk(f.Pen, parts.GroupTitle(), parts.Label().Size, room, words)
	x += f.say(x, y, style, words)
	if t.blank {
		f.hair(x+blankBefore, y+0.6, end, y+0.6)
	}
}

// drawPlainTile is an answer in words alone.
func (f *frame) drawPlainTile(t decideTile, x, y float64) {
	wide := f.Span(tileColumns)
	parts.OpenBox(f.Pen, x, y, parts.BoxSize)
	lines := f.Book().Wrap(parts.GroupTitle().Style, wide-choiceText, strings.TrimSpace(t.letter+"\u00a0\u00a0"+t.title))
	at := f.lines(x+choiceText, y+3, plainTitleStep, parts.GroupTitle(), lines)
	if t.blank {
		f.hair(x+choiceText, at+2, x+wide, at+2)
		at += 4
	}
	f.paragraph(x+choiceText, at+0.2, wide-choiceText, parts.Note(), t.more)
}

const plainTitleStep = 4.2

// plainTileHigh is the height of an answer in words alone.
func (d *document) plainTileHigh(t decideTile) float64 {
	wide := parts.NewGrid(d.in.Paper.sheet().Landscape()).Span(tileColumns) - choiceText
	high := 3 + plainTitleStep*float64(len(d.book.Wrap(parts.GroupTitle().Style, wide, strings.TrimSpace(t.letter+"\u00a0\u00a0"+t.title))))
	if t.blank {
		high += 4
	}
	if t.more != "" {
		high += parts.Note().Leading * page.MMPerPoint * float64(len(d.book.Wrap(parts.Note().Style, wide, t.more)))
	}
	return high
}
