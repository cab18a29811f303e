package ink

import (
	"cmp"
	"math"
	"slices"
)

// Abut returns how far b must be moved along x so that the smallest distance
// between the two inks is gap, b at the outermost place that has it. Both are
// in one unit. It is exact for the flattened contours: the answer is the
// largest shift at which some point of b still is within gap of some point of
// a, that is the largest a.x - b.x + √(gap² - (a.y - b.y)²), which is concave
// over each pair of edges. It is -infinity when the two never come so near.
func Abut(a, b *Glyph, gap float64) float64 {
	ca, cb := slices.Clone(a.outline()), slices.Clone(b.outline())
	// Facing parts first, so that the rest is passed over by its bound.
	slices.SortFunc(ca, func(p, q chunk) int { return cmp.Compare(q.box.Max.X, p.box.Max.X) })
	slices.SortFunc(cb, func(p, q chunk) int { return cmp.Compare(p.box.Min.X, q.box.Min.X) })
	best := math.Inf(-1)
	for i := range ca {
		for k := range cb {
			p, q := &ca[i].box, &cb[k].box
			if p.Max.X-q.Min.X+gap <= best {
				break // and so for all that follow
			}
			dy := max(0, p.Min.Y-q.Max.Y, q.Min.Y-p.Max.Y)
			if dy > gap || p.Max.X-q.Min.X+math.Sqrt(gap*gap-dy*dy) <= best {
				continue
			}
			best = max(best, abutRuns(a, ca[i], b, cb[k], gap))
		}
	}
	return best
}

// abutRuns looks at every corner of one run against every edge of the other:
// the difference of two edges is a parallelogram, whose sides are those, and
// the largest value lies on a side.
func abutRuns(a *Glyph, ca chunk, b *Glyph, cb chunk, gap float64) float64 {
	best := math.Inf(-1)
	pa, pb := a.points[ca.from:ca.to+1], b.points[cb.from:cb.to+1]
	for _, p := range pa {
		for k := 1; k < len(pb); k++ {
			best = max(best, reachAlong(p.X-pb[k-1].X, p.Y-pb[k-1].Y, pb[k-1].X-pb[k].X, pb[k-1].Y-pb[k].Y, gap))
		}
	}
	for _, q := range pb {
		for i := 1; i < len(pa); i++ {
			best = max(best, reachAlong(pa[i-1].X-q.X, pa[i-1].Y-q.Y, pa[i].X-pa[i-1].X, pa[i].Y-pa[i-1].Y, gap))
		}
	}
	return best
}

// reachAlong returns the largest x + √(gap² - y²) on the way from (x, y) by
// (ex, ey), over the part with |y| <= gap; -infinity when there is none.
func reachAlong(x, y, ex, ey, gap float64) float64 {
	if ey == 0 {
		if math.Abs(y) > gap {
			return math.Inf(-1)
		}
		return max(x, x+ex) + math.Sqrt(gap*gap-y*y)
	}
	from, to := (-gap-y)/ey, (gap-y)/ey
	if from > to {
		from, to = to, from
	}
	from, to = max(from, 0), min(to, 1)
	if from > to {
		return math.Inf(-1)
	}
	// The disc of radius gap rolls on the edge where the edge is its tangent.
	touch := gap * ex / math.Copysign(math.Hypot(ex, ey), ey)
	t := min(max((touch-y)/ey, from), to)
	at := y + t*ey
	return x + t*ex + math.Sqrt(max(0, gap*gap-at*at))
}
