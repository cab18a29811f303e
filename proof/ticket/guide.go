package ticket

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// The drawn guide, mm.
const (
	guideHigh   = 74.0 // of the views
	guideWide   = 62.0
	guideTop    = 7.0 // of a view under the title
	guideFoot   = 4.0
	guideChain  = 5.0 // from the garment to the chain of heights
	centreAbove = 3.0
)

// guideScales are the scales that a guide may have, the largest first.
func guideScales() []float64 { return []float64{6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24} }

// guideStrips draw where everything goes, with the figures of every size below;
// scale is that of the drawing.
func (d *document) guideStrips() (out []strip, scale float64, err error) {
	p, ok := d.shown()
	if !ok {
		return nil, 0, nil
	}
	sides := d.sides()
	scale = guideScale(p.Garment, sides)
	title := d.titleStrip("Where it goes", fmt.Sprintf("%s is drawn; measure on the garment, from the %s down the centre line", an(sizeWords(p.Size)), datum(d.order)))
	tall := 0.0
	for _, side := range sides {
		tall = max(tall, p.Garment.Bounds(side).Height()*scale)
	}
	drawn := strip{high: guideTop + tall + guideFoot, keep: true, draw: func(f *frame, y float64) error {
		for i, side := range sides {
			width := f.Live() / float64(len(sides))
			if err := f.guideView(p, side, f.Left+width*(float64(i)+0.5), y+guideTop, scale, i == 0); err != nil {
				return err
			}
		}
		return nil
	}}
	return append(append(out, title, drawn), append(d.placingStrips(sides), space(4))...), scale, nil
}

// shown is the player that the guide is drawn on: of the size that most wear, the
// one with the most pieces.
func (d *document) shown() (sizes.Player, bool) {
	var most garment.Size
	count := 0
	for _, b := range d.in.Count.Blanks {
		if b.Count >= count {
			most, count = b.Size, b.Count
		}
	}
	var out sizes.Player
	for _, p := range d.in.Sized.Players {
		if p.Garment != nil && p.Size == most && (out.Garment == nil || len(p.Pieces) > len(out.Pieces)) {
			out = p
		}
	}
	return out, out.Garment != nil
}

// sides lists the sides that have pieces, the back first.
func (d *document) sides() []garment.Side {
	var out []garment.Side
	for _, side := range []garment.Side{garment.Back, garment.Front} {
		if slices.ContainsFunc(d.in.Sized.Players, func(p sizes.Player) bool {
			return slices.ContainsFunc(p.Pieces, func(q sizes.Piece) bool { return q.Side == side })
		}) {
			out = append(out, side)
		}
	}
	return out
}

func guideScale(g *garment.Garment, sides []garment.Side) float64 {
	for _, s := range guideScales() {
		fits := true
		for _, side := range sides {
			b := g.Bounds(side)
			fits = fits && b.Width()/s <= guideWide && b.Height()/s <= guideHigh
		}
		if fits {
			return 1 / s
		}
	}
	return 1.0 / 24
}

// guideView draws one side about x, its high point of shoulder at y, with the
// chain of heights beside it.
func (f *frame) guideView(p sizes.Player, side garment.Side, x, y, scale float64, left bool) error {
	line := shirt.Cloth{Body: page.White, Trim: page.White, On: parts.WhiteOrInk(page.White)}
	if left {
		x += 9 // room for the chain
	} else {
		x -= 9
	}
	top := p.Garment.Bounds(side).Min.Y * scale
	v := shirt.View{Garment: p.Garment, Side: side, Cloth: line, Scale: scale, X: x, Y: y - top}
	if err := v.Paint(f.Pen); err != nil {
		return err
	}
	box := v.Bounds()
	name := parts.Heading()
	if left {
		f.say(f.Left, y-1, name, sentence(side.String()))
	} else {
		f.say(f.Right, y-1, name.To(page.End), sentence(side.String()))
	}
	f.Line(x, box.Min.Y-centreAbove, x, box.Max.Y+centreAbove, parts.Ink, page.Line{Weight: parts.Hair, Dash: parts.DatumDash()})
	pieces := onSide(p, side)
	for _, piece := range pieces {
		if err := f.guidePiece(v, piece); err != nil {
			return err
		}
	}
	f.guideChain(v, p, pieces, left)
	for _, piece := range pieces {
		f.guideAside(v, piece)
	}
	return nil
}

// onSide lists the pieces of a side from the top down, those on sleeves last.
func onSide(p sizes.Player, side garment.Side) []sizes.Piece {
	var out []sizes.Piece
	for _, q := range p.Pieces {
		if q.Side == side {
			out = append(out, q)
		}
	}
	slices.SortStableFunc(out, func(a, b sizes.Piece) int {
		if (a.Turn != 0) != (b.Turn != 0) {
			return cmp.Compare(math.Abs(a.Turn), math.Abs(b.Turn))
		}
		return cmp.Compare(a.Top, b.Top)
	})
	return out
}

// guidePiece fills the lettering with a plain grey and frames it with its
// outermost edge.
func (f *frame) guidePiece(v shirt.View, p sizes.Piece) error {
	m := v.PieceMap(p)
	layers, err := p.Outlines()
	if err != nil {
		return err
	}
	hair := page.Line{Weight: parts.Hair, Join: page.RoundJoin}
	if len(layers) > 0 {
		outer := layers[len(layers)-1].Path()
		f.FillPath(outer, m, page.White)
		f.StrokePath(outer, m, parts.Slate, hair)
	}
	f.FillPath(p.Ink(), m, parts.Rule)
	if len(layers) == 0 {
		f.StrokePath(p.Ink(), m, parts.Slate, hair)
	}
	return nil
}

// guideChain measures down from the collar: each piece that lies below the one
// before it, and the gaps between them.
func (f *frame) guideChain(v shirt.View, p sizes.Player, pieces []sizes.Piece, left bool) {
	at, box := p.Garment.Collar(v.Side), v.Bounds()
	x := box.Max.X + guideChain
	if left {
		x = box.Min.X - guideChain
	}
	c := ladder{x: x, left: left, levels: []float64{v.Y + at*v.Scale}}
	f.guideReach(geom.Point{X: v.X, Y: c.levels[0]}, x)
	for _, q := range pieces {
		if q.Turn != 0 || q.Top < at {
			continue
		}
		word := "gap"
		if len(c.levels) == 1 {
			word = datum(f.order) + " to " + thing(q.Asked.Place)
		}
		foot := q.Top + q.Height()
		c.add(v.Y+q.Top*v.Scale, f.length(q.Top-at), word)
		c.add(v.Y+foot*v.Scale, f.length(q.Height()), pieceWord(q.Asked.Place))
		half := q.Box().Width / 2
		if left {
			half = -half
		}
		edge := v.X + (q.Box().Centre.X+half)*v.Scale
		f.guideReach(geom.Point{X: edge, Y: v.Y + q.Top*v.Scale}, x)
		f.guideReach(geom.Point{X: edge, Y: v.Y + foot*v.Scale}, x)
		at = foot
	}
	f.ladder(c, v.Y)
}

// guideReach is an extension line from a point of the drawing to the chain at x.
func (f *frame) guideReach(from geom.Point, x float64) {
	parts.Extension(f.Pen, from, geom.Point{X: x, Y: from.Y}, nil)
}

// guideAside measures how far a piece stands off the centre line.
func (f *frame) guideAside(v shirt.View, p sizes.Piece) {
	off := aside(p)
	if off == 0 || p.Turn != 0 {
		return
	}
	box := p.Box()
	y := v.Y + (box.Centre.Y+box.Height/2)*v.Scale + 4
	x := v.X + box.Centre.X*v.Scale
	f.Line(x, v.Y+box.Centre.Y*v.Scale, x, y+1.2, parts.Ink, page.Line{Weight: parts.Hair, Dash: parts.DatumDash()})
	clear := parts.OnShirt{Line: parts.Ink, Halo: page.White, Needs: true}
	parts.WidthLine(f.Pen, parts.Width{X1: math.Min(v.X, x), X2: math.Max(v.X, x), Y: y, Value: f.length(math.Abs(off)), Word: "off centre", On: &clear})
}

// aside is how far the middle of a piece lies to the viewer's right of the centre
// line, mm; 0 for a piece that stands on it.
func aside(p sizes.Piece) float64 {
	const centred = 5.0 // halves of unlike width, and the ink of letters, shift a piece by less
	if x := p.RoomCentre(); math.Abs(x) > centred {
		return x
	}
	return 0
}

// datum names what lengths are measured from.
func datum(o *order.Order) string {
	if o.Garment.Cut == garment.Shorts {
		return "waistband"
	}
	return "collar"
}
