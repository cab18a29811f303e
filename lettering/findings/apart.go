package findings

import (
	"math"

	"yokeline/lettering/geom"
)

// apart returns the smallest distance between two regions, 0 where they meet.
func apart(a, b geom.Region) float64 {
	boxA, boxB := a.Bounds(), b.Bounds()
	if boxA.Empty() || boxB.Empty() {
		return math.Inf(1)
	}
	if boxToBox(boxA, boxB) == 0 && meet(a, b) {
		return 0
	}
	// The nearest point of each to the other's box first: most others are then
	// passed over by their distance to the box alone.
	least := toEdges(nearest(a, boxB), b, math.Inf(1))
	least = toEdges(nearest(b, boxA), a, least)
	least = toAll(a, b, boxB, least)
	return toAll(b, a, boxA, least)
}

func toAll(from, to geom.Region, box geom.Rect, least float64) float64 {
	for _, ring := range from {
		for _, p := range ring {
			if toBox(p, box) < least {
				least = toEdges(p, to, least)
			}
		}
	}
	return least
}

func nearest(r geom.Region, box geom.Rect) geom.Point {
	best, least := geom.Point{}, math.Inf(1)
	for _, ring := range r {
		for _, p := range ring {
			if d := toBox(p, box); d < least {
				best, least = p, d
			}
		}
	}
	return best
}

// toEdges returns the distance from p to the nearest edge of the region, or
// least when no edge is nearer than that.
func toEdges(p geom.Point, region geom.Region, least float64) float64 {
	for _, ring := range region {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if math.Min(a.Y, b.Y)-p.Y >= least || p.Y-math.Max(a.Y, b.Y) >= least ||
				math.Min(a.X, b.X)-p.X >= least || p.X-math.Max(a.X, b.X) >= least {
				continue
			}
			d := b.Sub(a)
			share := math.Max(0, math.Min(1, p.Sub(a).Dot(d)/math.Max(d.Dot(d), math.SmallestNonzeroFloat64)))
			least = math.Min(least, p.Sub(a.Lerp(b, share)).Norm())
		}
	}
	return least
}

func toBox(p geom.Point, r geom.Rect) float64 {
	return boxToBox(geom.Rect{Min: p, Max: p}, r)
}

func boxToBox(a, b geom.Rect) float64 {
	x := math.Max(0, math.Max(a.Min.X-b.Max.X, b.Min.X-a.Max.X))
	y := math.Max(0, math.Max(a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
	return math.Hypot(x, y)
}

// meet reports whether two regions share a point: an edge of one crosses one of
// the other, or one lies in the other.
func meet(a, b geom.Region) bool {
	for _, pair := range [2][2]geom.Region{{a, b}, {b, a}} {
		for _, ring := range pair[0] {
			if len(ring) > 0 && pair[1].Contains(ring[0]) {
				return true
			}
		}
	}
	box := b.Bounds()
	for _, ring := range a {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if boxToBox(geom.EmptyRect().Include(p).Include(q), box) == 0 && crosses(p, q, b) {
				return true
			}
		}
	}
	return false
}

func crosses(p, q geom.Point, region geom.Region) bool {
	side := func(a, b, c geom.Point) float64 { return b.Sub(a).Cross(c.Sub(a)) }
	for _, ring := range region {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if side(p, q, a)*side(p, q, b) <= 0 && side(a, b, p)*side(a, b, q) <= 0 &&
				boxToBox(geom.EmptyRect().Include(p).Include(q), geom.EmptyRect().Include(a).Include(b)) == 0 {
				return true
			}
		}
	}
	return false
}
