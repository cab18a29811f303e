package arrangement

import (
	"cmp"
	"slices"
)

// edge is an undirected edge, a before b. Contours that run along the same edge
// are one edge with their turns added up.
type edge struct {
	a, b  Point
	turns int32 // contours that run a→b less those that run b→a
	fresh bool  // not yet compared with the others
}

// cut is a point at which an edge is to be cut.
type cut struct {
	edge  int32
	at    Point
	along int64
}

// span is an edge in the sweep, with what the box test needs close together.
type span struct {
	end, low, high int32 // greatest x, least and greatest y
	edge           int32
}

func appendEdge(edges []edge, from, to Point, turns int32) []edge {
	if from == to {
		return edges
	}
	if to.before(from) {
		from, to, turns = to, from, -turns
	}
	return append(edges, edge{from, to, turns, true})
}

// cutAll cuts edges until no two cross or overlap and no vertex lies in the
// pixel-wide neighbourhood of an edge it is not an end of.
func (e *Engine) cutAll() error {
	e.merge()
	for e.rounds = 0; ; e.rounds++ {
		e.sweep()
		if len(e.cuts) == 0 {
			return nil
		}
		if e.rounds == maxRounds {
			return ErrUnsettled
		}
		e.apply()
		e.merge()
	}
}

// merge sorts the edges and joins equal ones; those whose turns cancel vanish.
func (e *Engine) merge() {
	slices.SortFunc(e.edges, func(p, q edge) int {
		if c := p.a.compare(q.a); c != 0 {
			return c
		}
		return p.b.compare(q.b)
	})
	kept := e.edges[:0]
	for i := 0; i < len(e.edges); {
		one := e.edges[i]
		for i++; i < len(e.edges) && e.edges[i].a == one.a && e.edges[i].b == one.b; i++ {
			one.turns += e.edges[i].turns
			// One that has been compared stands for all its like.
			one.fresh = one.fresh && e.edges[i].fresh
		}
		if one.turns != 0 {
			kept = append(kept, one)
		}
	}
	e.edges = kept
}

// sweep compares every pair of edges whose boxes meet and of which at least one
// is fresh, from left to right, and collects the cuts.
func (e *Engine) sweep() {
	e.cuts, e.old, e.fresh = e.cuts[:0], e.old[:0], e.fresh[:0]
	for i := range e.edges {
		one := &e.edges[i]
		s := span{one.b.X, min(one.a.Y, one.b.Y), max(one.a.Y, one.b.Y), int32(i)}
		e.fresh = e.against(s, e.fresh)
		if one.fresh {
			e.old = e.against(s, e.old)
			e.fresh = append(e.fresh, s)
		} else {
			e.old = append(e.old, s)
		}
	}
	for i := range e.edges {
		e.edges[i].fresh = false
	}
}

// against compares s with the active spans and drops those that end before it
// starts. Boxes need no margin: a grid point in the neighbourhood of an edge
// lies in the edge's box.
func (e *Engine) against(s span, active []span) []span {
	start := e.edges[s.edge].a.X
	k := 0
	for i := range active {
		t := active[i]
		if t.end < start {
			continue
		}
		active[k] = t
		k++
		if t.high >= s.low && t.low <= s.high {
			e.pair(s.edge, t.edge)
		}
	}
	return active[:k]
}

// pair collects the cuts that edges i and j make in each other.
func (e *Engine) pair(i, j int32) {
	p, q := &e.edges[i], &e.edges[j]
	if neighbours(p, q) {
		return
	}
	qa, qb := orient(p.a, p.b, q.a), orient(p.a, p.b, q.b)
	if misses(p, qa, qb) {
		return
	}
	pa, pb := orient(q.a, q.b, p.a), orient(q.a, q.b, p.b)
	if misses(q, pa, pb) {
		return
	}
	before := len(e.cuts)
	e.cutAtVertex(i, q.a, qa)
	e.cutAtVertex(i, q.b, qb)
	e.cutAtVertex(j, p.a, pa)
	e.cutAtVertex(j, p.b, pb)
	if len(e.cuts) > before || !opposite(qa, qb) || !opposite(pa, pb) {
		return
	}
	at := meet(q.a, q.b, qa, qb)
	e.cutAt(i, at)
	e.cutAt(j, at)
}

// neighbours reports, cheaply, that p and q only share an end: they leave it at
// a right angle or more from each other.
func neighbours(p, q *edge) bool {
	if p.a != q.a && p.b != q.b && p.a != q.b && p.b != q.a {
		return false
	}
	px, py := vector(p.a, p.b)
	qx, qy := vector(q.a, q.b)
	dot := px*qx + py*qy
	if p.a == q.a || p.b == q.b {
		return dot <= 0
	}
	return dot >= 0
}

// misses reports that both ends of another edge, on sides s and t of p, lie
// beyond p's neighbourhood on the same side.
func misses(p *edge, s, t int64) bool {
	dx, dy := vector(p.a, p.b)
	m := (abs(dx) + abs(dy)) / 2
	return s > m && t > m || s < -m && t < -m
}

func opposite(s, t int64) bool { return s > 0 && t < 0 || s < 0 && t > 0 }

func (e *Engine) cutAtVertex(i int32, at Point, side int64) {
	if inPixel(e.edges[i].a, e.edges[i].b, at, side) {
		e.cutAt(i, at)
	}
}

func (e *Engine) cutAt(i int32, at Point) {
	if one := &e.edges[i]; at != one.a && at != one.b {
		e.cuts = append(e.cuts, cut{i, at, along(one.a, one.b, at)})
	}
}

// apply cuts the edges. A cut that would lengthen what is left of its edge is
// dropped: the pieces are fresh, so the next round finds it if it still counts.
func (e *Engine) apply() {
	slices.SortFunc(e.cuts, func(p, q cut) int {
		return cmp.Or(cmp.Compare(p.edge, q.edge), cmp.Compare(p.along, q.along), p.at.compare(q.at))
	})
	out, k := e.spare[:0], 0
	for i, one := range e.edges {
		if k == len(e.cuts) || int(e.cuts[k].edge) != i {
			out = append(out, one)
			continue
		}
		from := one.a
		for ; k < len(e.cuts) && int(e.cuts[k].edge) == i; k++ {
			if at := e.cuts[k].at; between(from, at, one.b) {
				out = appendEdge(out, from, at, one.turns)
				from = at
			}
		}
		out = appendEdge(out, from, one.b, one.turns)
	}
	e.edges, e.spare = out, e.edges
}
