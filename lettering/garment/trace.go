package garment

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// How finely a panel is traced, mm.
const (
	rowStep       = 4.0   // rows at least this near to each other
	rowLeast      = 1e-4  // rows nearer than this are one: where the panel jumps or parts
	rowDeviation  = 0.01  // sides of the panel bend less than this between rows
	traceSimplify = 0.005 // points this near to the line between their neighbours are dropped
)

// level is one row: the height, and the panel's stretches just above and just
// below it. They differ where the panel starts, ends, parts or jumps.
type level struct {
	y            float64
	above, below []span
}

// trace returns the panel as one ring, its largest part; nothing when no point
// is free. The rows are exact, and are set closer until every bend between two
// of them is within rowDeviation.
func (c *clear) trace() geom.Region {
	c.once.Do(func() {
		rings := link(c.levels())
		var best geom.Ring
		for _, r := range rings {
			if len(best) == 0 || r.Area() > best.Area() {
				best = r
			}
		}
		if len(best) > 0 {
			c.region = geom.Region{simplified(best, traceSimplify)}
		}
	})
	return c.region
}

// levels returns the rows from top to bottom.
func (c *clear) levels() []level {
	w := &scratch{}
	box := geom.Region{c.ring}.Bounds()
	n := int(math.Ceil(box.Height()/rowStep)) + 1
	step := box.Height() / float64(n)
	y := box.Min.Y - step/2
	row := c.row(y, w)
	out := []level{{y: y, above: nil, below: row}}
	for range n + 1 {
		next := c.row(y+step, w)
		out = c.refine(w, out, y, y+step, row, next)
		y, row = y+step, next
	}
	out[len(out)-1].below = nil
	return out
}

// refine appends the rows after y0 up to and including y1.
func (c *clear) refine(w *scratch, out []level, y0, y1 float64, r0, r1 []span) []level {
	if len(r0) == 0 && len(r1) == 0 && y1-y0 <= rowStep/8 {
		return append(out, level{y: y1})
	}
	if y1-y0 <= rowLeast {
		if alike(r0, r1) {
			return append(out, level{y1, r1, r1})
		}
		out[len(out)-1].below = r1 // one row: r0 ends here and r1 starts
		return out
	}
	mid := (y0 + y1) / 2
	m := c.row(mid, w)
	if len(r0) > 0 && alike(r0, m) && alike(m, r1) && straight(r0, m, r1, y1-y0) {
		return append(out, level{y1, r1, r1})
	}
	out = c.refine(w, out, y0, mid, r0, m)
	return c.refine(w, out, mid, y1, m, r1)
}

// alike reports whether two rows have the same stretches, each overlapping its
// like.
func alike(a, b []span) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].hi <= b[i].lo || b[i].hi <= a[i].lo {
			return false
		}
	}
	return true
}

// straight reports whether the middle row lies on the lines between the outer two.
func straight(a, m, b []span, height float64) bool {
	bend := func(p, q, r float64) float64 { return math.Abs(q-(p+r)/2) * height / math.Hypot(height, r-p) }
	for i := range m {
		if bend(a[i].lo, m[i].lo, b[i].lo) > rowDeviation || bend(a[i].hi, m[i].hi, b[i].hi) > rowDeviation {
			return false
		}
	}
	return true
}

// corner is an end of a stretch on a level.
type corner struct {
	level int
	x     float64
}

// link joins the sides of all stretches into rings of positive area.
func link(levels []level) []geom.Ring {
	next := map[corner][]corner{}
	var starts []corner
	add := func(a, b corner) {
		next[a] = append(next[a], b)
		starts = append(starts, a)
	}
	for i, l := range levels {
		if i+1 < len(levels) {
			for k := range l.below {
				add(corner{i + 1, levels[i+1].above[k].lo}, corner{i, l.below[k].lo})
				add(corner{i, l.below[k].hi}, corner{i + 1, levels[i+1].above[k].hi})
			}
		}
		levelEdges(l, func(from, to float64) { add(corner{i, from}, corner{i, to}) })
	}
	var rings []geom.Ring
	for _, s := range starts {
		if r := walk(next, s, levels); len(r) > 2 {
			rings = append(rings, r)
		}
	}
	return rings
}

// levelEdges finds the level edges of the panel on one row: left to right where
// it begins below, right to left where it ends above.
func levelEdges(l level, add func(from, to float64)) {
	if slices.Equal(l.above, l.below) {
		return
	}
	var xs []float64
	for _, s := range append(slices.Clone(l.above), l.below...) {
		xs = append(xs, s.lo, s.hi)
	}
	slices.Sort(xs)
	xs = slices.Compact(xs)
	covers := func(spans []span, x float64) bool {
		return slices.ContainsFunc(spans, func(s span) bool { return s.lo < x && x < s.hi })
	}
	for i := 1; i < len(xs); i++ {
		mid := (xs[i-1] + xs[i]) / 2
		switch up, down := covers(l.above, mid), covers(l.below, mid); {
		case down && !up:
			add(xs[i-1], xs[i])
		case up && !down:
			add(xs[i], xs[i-1])
		}
	}
}

// walk follows the sides from a corner until it is back, taking each once.
func walk(next map[corner][]corner, start corner, levels []level) geom.Ring {
	var ring geom.Ring
	for at := start; ; {
		ways := next[at]
		if len(ways) == 0 {
			return nil
		}
		ring = append(ring, pt{X: at.x, Y: levels[at.level].y})
		next[at] = ways[1:]
		if at = ways[0]; at == start {
			return ring
		}
	}
}

// simplified drops points of a ring that lie within tol of the line between
// those that stay (Douglas and Peucker, 1973).
func simplified(ring geom.Ring, tol float64) geom.Ring {
	n, far := len(ring), 0
	for i := range ring {
		if ring[i].Sub(ring[0]).Norm() > ring[far].Sub(ring[0]).Norm() {
			far = i
		}
	}
	var out geom.Ring
	var keepBetween func(a, b int)
	keepBetween = func(a, b int) {
		at, most := -1, tol
		for i := a + 1; i < b; i++ {
			if d := segmentDistance(ring[i], ring[a], ring[b%n]); d > most {
				at, most = i, d
			}
		}
		if at < 0 {
			out = append(out, ring[a])
			return
		}
		keepBetween(a, at)
		keepBetween(at, b)
	}
	keepBetween(0, far)
	keepBetween(far, n)
	return out
}

// segmentDistance is the distance from q to the segment ab.
func segmentDistance(q, a, b pt) float64 {
	d := b.Sub(a)
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = math.Max(0, math.Min(1, q.Sub(a).Dot(d)/l))
	}
	return q.Sub(a.Add(d.Mul(t))).Norm()
}
