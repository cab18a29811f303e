package outline

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// shallow is the turn, in radians, below which a corner is taken for a joint of
// a flattened curve. A curve flattened to 0.02 mm turns by less than that where
// its radius is over 5 mm.
const shallow = 10 * math.Pi / 180

// rawOffset makes the raw offset of settled rings: a closed line whose winding
// number is positive exactly inside the grown area. At a corner that the
// outline goes round, it follows the join. At a corner that the outline cuts
// into, it runs back to the corner, so that what it winds round is the region,
// plus a strip along every edge, plus a wedge at every join, and nothing has to
// be known about holes that close.
type rawOffset struct {
	d     float64 // distance, over 0
	step  float64 // greatest turn of an arc's edge, radians
	join  Join
	edges []side
	out   geom.Ring
}

// side is an edge of a ring, with the corner at its start.
type side struct {
	start  geom.Point
	normal geom.Point // outward, length 1
	length float64
	turn   float64 // at start: over 0 where the outline goes round the corner
	kite   float64 // at start: the length both sides need for a short cut
}

// ring returns the raw offset of one ring of a settled region by d; valid until
// the next call. For d below 0 the ring is taken backwards: the empty plane
// grows by -d, and the area left has a negative winding number.
func (r *rawOffset) ring(ring geom.Ring, d float64, j Join) geom.Ring {
	r.out = r.out[:0]
	r.d, r.join = math.Abs(d), j
	if r.d == 0 || len(ring) < 3 {
		r.out = append(r.out, ring...)
		return r.out
	}
	r.step = 2 * math.Acos(r.d/(r.d+Tolerance))
	r.measure(ring, d < 0)
	if !slices.ContainsFunc(r.edges, func(s side) bool { return s.turn >= 0 }) {
		r.inset()
		return r.out
	}
	for i := range r.edges {
		r.corner(i)
	}
	return r.out
}

// bounds returns the box of the offset by d, 0 or more: all of the raw offset's
// points belong to the closed area.
func (r *rawOffset) bounds(settled geom.Region, d float64, j Join) geom.Rect {
	box := geom.EmptyRect()
	for _, ring := range settled {
		for _, p := range r.ring(ring, d, j) {
			box = box.Include(p)
		}
	}
	return box
}

// measure fills edges.
func (r *rawOffset) measure(ring geom.Ring, backwards bool) {
	r.edges = r.edges[:0]
	for _, p := range ring {
		r.edges = append(r.edges, side{start: p})
	}
	if backwards {
		slices.Reverse(r.edges)
	}
	n := len(r.edges)
	for i := range r.edges {
		s := &r.edges[i]
		v := r.edges[(i+1)%n].start.Sub(s.start)
		s.length = v.Norm()
		if s.length > 0 {
			s.normal = geom.Point{X: v.Y / s.length, Y: -v.X / s.length}
		}
	}
	r.edges = slices.DeleteFunc(r.edges, func(s side) bool { return s.length == 0 })
	prev := len(r.edges) - 1
	for i := range r.edges {
		a, b := r.edges[prev].normal, r.edges[i].normal
		r.edges[i].turn = math.Atan2(a.Cross(b), a.Dot(b))
		r.edges[i].kite = r.kite(-r.edges[i].turn)
		prev = i
	}
}

// corner appends the points of the corner at the start of edge i.
func (r *rawOffset) corner(i int) {
	n := len(r.edges)
	before, after := &r.edges[(i+n-1)%n], &r.edges[i]
	switch {
	case after.turn < 0 && r.trims((i+n-1)%n) && r.trims(i):
		r.add(mitred(before, after, r.d))
	case after.turn < 0:
		r.add(after.start.Add(before.normal.Mul(r.d)))
		r.add(after.start)
		r.add(after.start.Add(after.normal.Mul(r.d)))
	case r.join == Round || after.turn < shallow:
		r.arc(before, after)
	case r.join == Mitre && r.withinLimit(after.turn):
		r.add(mitred(before, after, r.d))
	default:
		r.add(after.start.Add(before.normal.Mul(r.d)))
		r.add(after.start.Add(after.normal.Mul(r.d)))
	}
}

func (r *rawOffset) add(p geom.Point) { r.out = append(r.out, p) }

// kite returns how far along its sides reaches what their strips have in common
// at a corner with the given turn inward: a kite of the corner, the ends of the
// strips, and where the offset edges meet. Past a right angle the kite reaches
// behind its sides.
func (r *rawOffset) kite(turn float64) float64 {
	const rightAngle = math.Pi/2 + 1e-6 // drawn corners are off by rounding
	switch {
	case turn <= 0:
		return 0
	case turn > rightAngle:
		return math.Inf(1)
	}
	return r.d * math.Max(math.Sin(turn), math.Tan(turn/2))
}

// trims reports whether edge i is long enough to contain the kites at its ends.
// If both strips contain the whole kite, the raw offset may go straight to where
// the offset edges meet, leaving the kite out once: of m kites in a row that a
// point lies in, m+1 strips contain it too, so its winding number stays over 0,
// and a tangle of crossings is saved. That counts on a corner in the ring at
// which no kite is left out; inset does the rings without one.
func (r *rawOffset) trims(i int) bool {
	return r.edges[i].length >= math.Max(r.edges[i].kite, r.edges[(i+1)%len(r.edges)].kite)
}

// withinLimit reports whether a corner with the given turn may be mitred: its
// tip stands off by 1/cos(turn/2) distances.
func (r *rawOffset) withinLimit(turn float64) bool {
	// The sum of directions is compared with a little room, so that a corner
	// at the limit does not depend on rounding.
	return MitreLimit*math.Cos(turn/2) >= 1-1e-9
}

// mitred returns where the offset edges meet.
func mitred(before, after *side, d float64) geom.Point {
	sum := before.normal.Add(after.normal)
	return after.start.Add(sum.Mul(d / (1 + before.normal.Dot(after.normal))))
}

// arc appends the corners of a line of edges that touch the circle about the
// corner from outside, from one offset edge to the next. It is made in pieces
// that end where the circle crosses the corner's axes, so that one edge there
// is square to the axis and the line's box is the circle's.
func (r *rawOffset) arc(before, after *side) {
	const quarter, hair = math.Pi / 2, 1e-9
	from := math.Atan2(before.normal.Y, before.normal.X)
	to := from + after.turn
	if after.turn < hair {
		r.add(after.start.Add(after.normal.Mul(r.d)))
		return
	}
	for from < to-hair {
		stop := math.Min(to, quarter*(math.Floor(from/quarter+hair)+1))
		r.piece(after.start, from, stop)
		from = stop
	}
}

// piece appends the corners of the part of an arc between two angles.
func (r *rawOffset) piece(centre geom.Point, from, to float64) {
	n := math.Ceil((to - from) / r.step)
	half := (to - from) / (2 * n)
	radius := r.d / math.Cos(half)
	for i := range int(n) {
		sin, cos := math.Sincos(from + float64(2*i+1)*half)
		r.add(centre.Add(geom.Point{X: radius * cos, Y: radius * sin}))
	}
}
