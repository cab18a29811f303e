package sheets

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// The circle of the edge at true size, mm.
const (
	edgeRadius = 11.4
	edgeRight  = 1.0 // of the measured edge from the circle's middle
	edgeBelow  = 4.4
	edgeUnder  = 7.4 // of the measured place from the corner over it
)

// edgeCircle draws a corner of a real piece at 1 : 1 with its outline measured.
func (l *look) edgeCircle(x, y float64) error {
	l.heading(x, y, "Edge, true size")
	p, ok := l.edgePiece()
	if !ok {
		l.paragraph(x, y+5.2, 2*edgeRadius, parts.Note().In(parts.Ink), "Nothing is cut yet.")
		return nil
	}
	c := geom.Point{X: x + edgeRadius, Y: y + 14.6}
	at, err := edgePlace(p)
	if err != nil {
		return err
	}
	measured := c.Add(geom.Point{X: edgeRight, Y: edgeBelow})
	l.FillCircle(c.X, c.Y, edgeRadius, l.cloth.Body)
	l.Clip(page.CirclePath(c.X, c.Y, edgeRadius), geom.Identity(), func(inner *page.Pen) {
		err = shirt.Lettering(inner, p, l.cloth.Body, measured.X-at.X, measured.Y+at.Y, 1)
	})
	if err != nil {
		return err
	}
	l.StrokeCircle(c.X, c.Y, edgeRadius, parts.Ink, page.Line{Weight: parts.Outline})
	l.edgeLines(c, measured, p)
	return nil
}

// edgePiece is the piece whose edge is shown: one with outlines if there is
// any, numbers first.
func (l *look) edgePiece() (sizes.Piece, bool) {
	var all []sizes.Piece
	for _, place := range [...]garment.Place{
		garment.BackNumber, garment.FrontNumber, garment.ShortsNumber, garment.BackName,
		garment.FrontName, garment.LeftChest, garment.SleeveNumber,
	} {
		if p, ok := l.player.Piece(place); ok {
			all = append(all, p)
		}
	}
	if i := slices.IndexFunc(all, func(p sizes.Piece) bool { return len(p.Asked.Outlines) > 0 }); i >= 0 {
		return all[i], true
	}
	if len(all) > 0 {
		return all[0], true
	}
	return sizes.Piece{}, false
}

// edgePlace returns the point of the piece's bare ink (its own mm, y up) where
// the outline is measured: on the longest upright stretch of an edge that faces
// right, under its upper corner.
func edgePlace(p sizes.Piece) (geom.Point, error) {
	ink, err := outline.Union(p.Ink().Flatten(outline.Tolerance))
	if err != nil {
		return geom.Point{}, err
	}
	var runs []uprightRun
	for _, ring := range ink {
		runs = append(runs, uprightRuns(ring)...)
	}
	if len(runs) == 0 {
		return geom.Point{}, nil
	}
	best := slices.MaxFunc(runs, func(a, b uprightRun) int {
		return cmp.Or(cmp.Compare(math.Round(a.long()), math.Round(b.long())), cmp.Compare(a.top.X, b.top.X))
	})
	t := math.Min(edgeUnder, best.long()/2) / best.long()
	return best.top.Lerp(best.bottom, t), nil
}

// uprightRun is a stretch of an edge that runs up with the ink at its left.
type uprightRun struct{ top, bottom geom.Point }

func (r uprightRun) long() float64 { return r.top.Y - r.bottom.Y }

// uprightRuns joins neighbouring edges that run up within 8° of the vertical.
// Outer rings are anticlockwise and holes clockwise, so the ink lies at the
// left of an edge that runs up.
func uprightRuns(ring geom.Ring) []uprightRun {
	const slant = 0.14 // tangent of 8°
	n := len(ring)
	up := func(i int) bool {
		d := ring[(i+1)%n].Sub(ring[i%n])
		return d.Y > 0 && math.Abs(d.X) <= slant*d.Y
	}
	var out []uprightRun
	for i := range n {
		if !up(i) || up(i+n-1) {
			continue
		}
		k := i
		for k < i+n && up(k) {
			k++
		}
		out = append(out, uprightRun{top: ring[k%n], bottom: ring[i]})
	}
	return out
}

// edgeLines measures the outlines level through the measured point: each from
// its inner edge to its outer one.
func (l *look) edgeLines(c, at geom.Point, p sizes.Piece) {
	thin := page.Line{Weight: parts.DimensionLine}
	out := c.X + math.Sqrt(edgeRadius*edgeRadius-(at.Y-c.Y)*(at.Y-c.Y))
	if len(p.Asked.Outlines) == 0 {
		l.say(out+2.4, at.Y-0.3, parts.Label(), "no")
		l.say(out+2.4, at.Y+2.5, parts.Label(), "outline")
		return
	}
	inside := parts.WhiteOrInk(shirt.Paint(p.Asked.Colour)).Line
	l.Line(at.X-3.4, at.Y, at.X, at.Y, inside, thin)
	parts.DimensionTick(l.Pen, at.X, at.Y, inside)
	x, values := at.X, []string{}
	for _, o := range p.Asked.Outlines {
		mm := o.Width.MM()
		on := parts.WhiteOrInk(shirt.Paint(o.Colour)).Line
		l.Line(x, at.Y, x+mm, at.Y, on, thin)
		x += mm
		values = append(values, l.length(mm))
		parts.DimensionTick(l.Pen, x, at.Y, on)
	}
	end := c.X + edgeRadius + 1.6
	l.Line(x, at.Y, math.Min(out, end), at.Y, l.cloth.On.Line, thin)
	l.Line(out, at.Y, end, at.Y, parts.Ink, thin)
	l.outlineWidths(end+0.6, at.Y, p.Asked.Outlines, values)
}

// edgeLabel is the width that the colour's name may take before it would reach
// the sizes beside it, mm. A colour without a name goes by its chip.
const edgeLabel = 9.0

// outlineWidths prints the widths of the outlines, one line each.
func (l *look) outlineWidths(x, y float64, outlines []order.Outline, values []string) {
	if len(values) == 1 {
		l.say(x, y+1, parts.Value(), values[0])
		l.say(x, y+4, parts.Label(), "outline")
		return
	}
	for i, v := range values {
		at := y - 2.4*float64(len(values)-1) + 1 + 6.2*float64(i)
		l.say(x, at, parts.Value(), v)
		l.say(x, at+2.8, parts.Label(), parts.Shortened(l.Pen, parts.Label(), edgeLabel, outlines[i].Colour.Name))
	}
}
