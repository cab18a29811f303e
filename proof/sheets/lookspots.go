package sheets

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// Spots that show a colour, mm.
const (
	spotClear  = 0.45 // of a spot from the edges of its colour, if it can be
	bodyInside = 7.0  // of the spot that stands for the cloth, from the shirt's edge
)

// finders are the ways to find a spot of a colour on a view.
func finders(c teamColour) []func(*lookView) (geom.Point, bool) {
	var out []func(*lookView) (geom.Point, bool)
	if c.cloth {
		out = append(out, (*lookView).clothSpot)
	}
	for _, role := range c.trim {
		out = append(out, func(v *lookView) (geom.Point, bool) { return v.trimSpot(role) })
	}
	for _, place := range c.letters {
		if place == garment.SleeveNumber && len(c.letters) > 1 {
			continue // small, and seldom on the outer side
		}
		out = append(out, func(v *lookView) (geom.Point, bool) { return v.pieceSpot(place, 0) })
	}
	for _, place := range c.edges {
		out = append(out, func(v *lookView) (geom.Point, bool) { return v.outlineSpot(place, c) })
	}
	return out
}

// clothSpot lies on plain cloth in the lower part of the outer side, a little
// further in where the side has another colour.
func (v *lookView) clothSpot() (geom.Point, bool) {
	const clear, steps = 3.0, 10
	out := -v.inward()
	for i := range steps * 4 {
		y := v.at(0, (0.74+0.02*float64(i%steps))*v.view.Garment.Hem()).Y
		edge := v.edge(out, y-0.5, y+0.5)
		if math.IsInf(edge, 0) {
			continue
		}
		p := geom.Point{X: edge - out*bodyInside*(1+0.5*float64(i/steps)), Y: y}
		if v.bare(p) && v.bare(p.Add(geom.Point{X: clear})) && v.bare(p.Add(geom.Point{X: -clear})) && v.bare(p.Add(geom.Point{Y: clear})) {
			return p, true
		}
	}
	return geom.Point{}, false
}

// bare reports whether a spot lies on the body's cloth, clear of all pieces.
func (v *lookView) bare(p geom.Point) bool {
	for _, piece := range v.pieces() {
		box := piece.Ink().Transform(v.view.PieceMap(piece)).Bounds().Grow(piece.Reach()*v.plan.scale + 2)
		if p.X > box.Min.X && p.X < box.Max.X && p.Y > box.Min.Y && p.Y < box.Max.Y {
			return false
		}
	}
	return v.body.Contains(p) && !v.trim.Contains(p)
}

// pieceSpot lies in the letters of a piece, or in one of its outlines: layer 0
// is the letters.
func (v *lookView) pieceSpot(place garment.Place, layer int) (geom.Point, bool) {
	p, ok := v.player.Piece(place)
	if !ok || p.Side != v.view.Side {
		return geom.Point{}, false
	}
	layers := []geom.Region{p.Ink().Flatten(0.1)}
	if layer > 0 {
		outlines, err := p.Outlines()
		if err != nil || layer > len(outlines) {
			return geom.Point{}, false
		}
		layers = append(layers, outlines...)
	}
	m := v.view.PieceMap(p)
	var hole geom.Region
	if layer > 0 {
		hole = layers[layer-1].Transform(m)
	}
	area := layers[layer].Transform(m)
	box := area.Bounds()
	side := box.Min.X
	if v.inward() < 0 {
		side = box.Max.X
	}
	// Outlines are pointed at higher up than letters, to keep the two apart.
	high := 0.5
	if layer > 0 {
		high = 0.5 - 0.2*float64(layer)
	}
	return spotIn(area, hole, geom.Point{X: side, Y: box.Min.Y + high*box.Height()})
}

// outlineSpot lies in the outline of a piece that has the colour.
func (v *lookView) outlineSpot(place garment.Place, c teamColour) (geom.Point, bool) {
	p, _ := v.asked(place)
	for i, o := range p.Outlines {
		if o.Colour.Hex == c.colour.Hex {
			return v.pieceSpot(place, i+1)
		}
	}
	return geom.Point{}, false
}

// trimSpot lies on a part of the garment, on the outer side.
func (v *lookView) trimSpot(role garment.Role) (geom.Point, bool) {
	for _, part := range v.view.Garment.View(v.view.Side) {
		if part.Role != role {
			continue
		}
		rings := part.Path.Transform(v.view.Map()).Flatten(0.05)
		outer := slices.MinFunc(rings, func(a, b geom.Ring) int {
			return cmp.Compare(v.inward()*geom.Region{a}.Bounds().Min.X, v.inward()*geom.Region{b}.Bounds().Min.X)
		})
		box := geom.Region{outer}.Bounds()
		return spotIn(geom.Region{outer}, nil, geom.Point{X: box.Min.X + (1-v.inward())/2*box.Width(), Y: box.Center().Y})
	}
	return geom.Point{}, false
}

// spotIn returns the point of an area, outside a hole and clear of both edges
// if it can be, that is nearest to a wish.
func spotIn(area, hole geom.Region, wish geom.Point) (geom.Point, bool) {
	const steps = 48
	box := area.Bounds()
	inside := func(p geom.Point) bool { return area.Contains(p) && !hole.Contains(p) }
	for _, clear := range [3]float64{spotClear, spotClear / 2, 0} {
		best, found := geom.Point{}, false
		for i := range steps * steps {
			p := geom.Point{
				X: box.Min.X + box.Width()*(float64(i%steps)+0.5)/steps,
				Y: box.Min.Y + box.Height()*(float64(i/steps)+0.5)/steps,
			}
			if found && p.Sub(wish).Norm() >= best.Sub(wish).Norm() {
				continue
			}
			if inside(p) && inside(p.Add(geom.Point{X: clear})) && inside(p.Add(geom.Point{X: -clear})) &&
				inside(p.Add(geom.Point{Y: clear})) && inside(p.Add(geom.Point{Y: -clear})) {
				best, found = p, true
			}
		}
		if found {
			return best, true
		}
	}
	return geom.Point{}, false
}
