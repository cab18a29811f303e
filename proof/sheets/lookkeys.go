package sheets

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/parts"
)

// Key letters beside the views, mm.
const (
	keyRadius = 1.75
	keyClear  = 2.0 // of a ring from the shirt and from texts
	keyStep   = 1.0 // between the places that are tried
)

// What speaks against a place for a key letter, in mm of its line.
const (
	keyCrossing = 12.0 // a line over an extension line
	keyTogether = 15.0 // two spots nearer than keySpots
	keySpots    = 4.0
	keyOverKey  = 40.0 // two lines over each other
	keyOnBack   = 20.0 // a spot on the back
	keyOnShirt  = 70.0 // a letter on the cloth, when there is no place outside
	keyTries    = 24   // places kept of each colour, the best ones
)

// lead is a key letter with a place for it and the spot it leads to.
type lead struct {
	key      string
	view     *lookView
	from, to geom.Point
	cost     float64
}

// leads draws each key letter outside the shirt with a line to a spot that has
// its colour.
func (l *look) leads() {
	var choices [][]lead
	for _, c := range l.chips {
		if c := l.choices(c); len(c) > 0 {
			choices = append(choices, c)
		}
	}
	for _, d := range cheapest(choices) {
		parts.KeyLead(l.Pen, d.from, d.to, d.key)
	}
}

// choices lists the best leads of a colour, the cheapest first: at most a few
// for each spot, so that every spot has its turn.
func (l *look) choices(c teamColour) []lead {
	var all []lead
	for _, v := range l.views {
		for _, find := range finders(c) {
			to, found := find(v)
			if !found {
				continue
			}
			all = append(all, v.keyPlaces(c.key, to)...)
		}
	}
	slices.SortStableFunc(all, func(a, b lead) int { return cmp.Compare(a.cost, b.cost) })
	return all[:min(keyTries, len(all))]
}

// cheapest takes one lead of each colour so that together they cost least,
// lines over each other and letters too near each other counted.
func cheapest(choices [][]lead) []lead {
	// What is still to come costs at least this much from each colour on.
	rest := make([]float64, len(choices)+1)
	for i := len(choices) - 1; i >= 0; i-- {
		rest[i] = rest[i+1] + choices[i][0].cost
	}
	var best, taken []lead
	least := math.Inf(1)
	var search func(i int, cost float64)
	search = func(i int, cost float64) {
		if i == len(choices) {
			best, least = slices.Clone(taken), cost
			return
		}
		for _, d := range choices[i] {
			with := cost + d.cost
			for _, o := range taken {
				with += d.against(o)
			}
			if with+rest[i+1] < least {
				taken = append(taken, d)
				search(i+1, with)
				taken = taken[:i]
			}
		}
	}
	search(0, 0)
	return best
}

// against is what speaks against having both leads.
func (d lead) against(o lead) float64 {
	ring := func(l lead) geom.Rect { return geom.Rect{Min: l.from, Max: l.from}.Grow(keyRadius + keyClear/2) }
	switch {
	case meet(ring(d), ring(o)), crosses(d.from, d.to, ring(o)), crosses(o.from, o.to, ring(d)):
		return 2 * keyOverKey
	case intersect(d.from, d.to, o.from, o.to):
		return keyOverKey
	case d.to.Sub(o.to).Norm() < keySpots:
		return keyTogether
	}
	return 0
}

// intersect reports whether two lines cross.
func intersect(a, b, c, d geom.Point) bool {
	side := func(p, q, r geom.Point) bool { return q.Sub(p).Cross(r.Sub(p)) > 0 }
	return side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
}

// keyPlaces lists the places for a key letter that leads to a spot: outside the
// shirt on the outer side, clear of texts, near, and with few lines to cross;
// and one on the cloth.
func (v *lookView) keyPlaces(key string, to geom.Point) []lead {
	back := 0.0
	if v.view.Side == garment.Back {
		back = keyOnBack
	}
	on := v.keyOnCloth(to)
	out := []lead{{key, v, on, to, keyOnShirt + back}}
	away := -v.inward()
	low, high := v.view.Bounds().Min.Y-4, v.view.Bounds().Max.Y-keyRadius
	for y := low; y <= high; y += keyStep {
		edge := v.edge(away, y-keyRadius-keyClear, y+keyRadius+keyClear)
		x := to.X
		if !math.IsInf(edge, 0) {
			x = away * max(away*to.X, away*edge+keyRadius+2*keyClear)
		}
		p := geom.Point{X: x, Y: y}
		long := p.Sub(to).Norm()
		if long < 3*keyRadius || !v.roomForKey(p, to) {
			continue
		}
		cost := long + back
		for _, e := range v.extensions {
			if crosses(p, to, boxOf(e.ink, e.line).Grow(0.2)) {
				cost += keyCrossing
			}
		}
		out = append(out, lead{key, v, p, to, cost})
	}
	slices.SortStableFunc(out, func(a, b lead) int { return cmp.Compare(a.cost, b.cost) })
	return out[:min(keyTries/2, len(out))]
}

// keyOnCloth finds the nearest place on plain cloth for a key letter that has
// none outside the shirt.
func (v *lookView) keyOnCloth(to geom.Point) geom.Point {
	const nearest, farthest, turns = 6.0, 30.0, 24
	for d := nearest; d <= farthest; d += keyStep {
		for i := range turns {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / turns)
			p := to.Add(geom.Point{X: -v.inward() * d * cos, Y: d * sin})
			ring := keyRadius + keyClear/2
			clear := v.roomForKey(p, to)
			for _, q := range [4]geom.Point{{X: ring}, {X: -ring}, {Y: ring}, {Y: -ring}} {
				clear = clear && v.bare(p.Add(q))
			}
			if clear {
				return p
			}
		}
	}
	return to.Add(geom.Point{Y: nearest})
}

// boxOf is the box of a line.
func boxOf(a, b geom.Point) geom.Rect { return geom.EmptyRect().Include(a).Include(b) }

// roomForKey reports whether a ring at p lies within the margins, clear of what
// is there, and its line crosses no text.
func (v *lookView) roomForKey(p, to geom.Point) bool {
	ring := geom.Rect{Min: p, Max: p}.Grow(keyRadius)
	if ring.Min.X < v.Left || ring.Max.X > v.Right {
		return false
	}
	for _, e := range v.extensions {
		if meet(boxOf(e.ink, e.line).Grow(keyClear/2), ring) {
			return false
		}
	}
	return !slices.ContainsFunc(v.taken, func(r geom.Rect) bool {
		return meet(r.Grow(keyClear), ring) || crosses(p, to, r.Grow(0.5))
	})
}

// crosses reports whether the line from a to b passes through a box: the part
// of the line that is within the box one way must overlap the part that is the
// other way.
func crosses(a, b geom.Point, r geom.Rect) bool {
	from, to := 0.0, 1.0
	for _, s := range [2][4]float64{{a.X, b.X, r.Min.X, r.Max.X}, {a.Y, b.Y, r.Min.Y, r.Max.Y}} {
		start, along, low, high := s[0], s[1]-s[0], s[2], s[3]
		if along == 0 {
			if start <= low || start >= high {
				return false
			}
			continue
		}
		in, out := (low-start)/along, (high-start)/along
		from, to = max(from, min(in, out)), min(to, max(in, out))
	}
	return from < to
}
