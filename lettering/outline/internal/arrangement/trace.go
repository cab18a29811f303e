package arrangement

import (
	"cmp"
	"slices"
)

// Half edge 2i runs along edge i from a to b, 2i+1 from b to a; so h^1 is the
// way back of h.

// spoke is a half edge as seen from its origin.
type spoke struct {
	origin Point
	dx, dy int32
	half   int32
}

// sector orders directions anticlockwise from just past due left (-1, 0).
func (s spoke) sector() int {
	switch {
	case s.dy < 0:
		return 0
	case s.dy > 0:
		return 2
	case s.dx > 0:
		return 1
	}
	return 3
}

func compareSpokes(s, t spoke) int {
	if c := s.origin.compare(t.origin); c != 0 {
		return c
	}
	if c := cmp.Compare(s.sector(), t.sector()); c != 0 {
		return c
	}
	return cmp.Compare(0, int64(s.dx)*int64(t.dy)-int64(s.dy)*int64(t.dx))
}

// link sorts the half edges round their vertices.
func (e *Engine) link() {
	e.spokes = e.spokes[:0]
	for i, one := range e.edges {
		dx, dy := one.b.X-one.a.X, one.b.Y-one.a.Y
		e.spokes = append(e.spokes, spoke{one.a, dx, dy, int32(2 * i)}, spoke{one.b, -dx, -dy, int32(2*i + 1)})
	}
	slices.SortFunc(e.spokes, compareSpokes)
	n := len(e.spokes)
	e.slot, e.hub, e.first = sized(e.slot, n), sized(e.hub, n), e.first[:0]
	for k, s := range e.spokes {
		if k == 0 || s.origin != e.spokes[k-1].origin {
			e.first = append(e.first, int32(k))
		}
		e.slot[s.half], e.hub[s.half] = int32(k), int32(len(e.first)-1)
	}
	e.first = append(e.first, int32(n))
}

// sized returns s with n zero elements, in its own memory if that suffices.
func sized[T any](s []T, n int) []T {
	s = slices.Grow(s[:0], n)[:n]
	clear(s)
	return s
}

// turns is the winding number on the left of the half edge less that on its
// right.
func (e *Engine) turns(half int32) int32 {
	if half&1 == 0 {
		return e.edges[half>>1].turns
	}
	return -e.edges[half>>1].turns
}

// wind finds the winding number of every face. Vertices come in order, so the
// first one met of a connected part is its leftmost, and the winding number
// just left of it depends on other parts only.
func (e *Engine) wind() {
	e.left = sized(e.left, len(e.spokes))
	seen := sized(e.done, len(e.first)-1)
	var stack []int32
	for v := range seen {
		if seen[v] {
			continue
		}
		// All spokes point right or straight up: the face to the left is
		// the one past the last spoke.
		last := e.spokes[e.first[v+1]-1]
		e.left[last.half] = e.windingLeftOf(last.origin)
		seen[v] = true
		stack = append(stack[:0], last.half)
		for len(stack) > 0 {
			half := stack[len(stack)-1]
			stack = e.windRound(half, seen, stack[:len(stack)-1])
		}
	}
	e.done = seen
}

// windRound carries the winding number on the left of a half edge to all
// others at its origin and to their ways back, and pushes the vertices that
// are reached for the first time.
func (e *Engine) windRound(half int32, seen []bool, stack []int32) []int32 {
	v := e.hub[half]
	low, high := e.first[v], e.first[v+1]
	w := e.left[half]
	k := e.slot[half]
	for range high - low {
		if k++; k == high {
			k = low
		}
		h := e.spokes[k].half
		back := h ^ 1
		e.left[back] = w // the face between two spokes lies right of the later
		w += e.turns(h)
		e.left[h] = w
		if u := e.hub[back]; !seen[u] {
			seen[u] = true
			stack = append(stack, back)
		}
	}
	return stack
}

// windingLeftOf is the winding number just left of p, by the edges below.
func (e *Engine) windingLeftOf(p Point) int32 {
	w := int32(0)
	for i := range e.edges {
		one := &e.edges[i]
		if one.a.X >= p.X {
			break
		}
		if one.b.X >= p.X && orient(one.a, one.b, p) > 0 {
			w += one.turns
		}
	}
	return w
}

// trace walks along the half edges with the filled area on the left only.
func (e *Engine) trace(fill Fill) [][]Point {
	e.border = sized(e.border, len(e.spokes))
	for h := range e.border {
		left := e.left[h]
		e.border[h] = fill(left) && !fill(left-e.turns(int32(h)))
	}
	e.done = sized(e.done, len(e.spokes))
	var rings [][]Point
	var ring []Point
	for _, s := range e.spokes {
		if !e.border[s.half] || e.done[s.half] {
			continue
		}
		ring = ring[:0]
		for h := s.half; !e.done[h]; h = e.next(h) {
			e.done[h] = true
			ring = append(ring, e.spokes[e.slot[h]].origin)
		}
		rings = append(rings, corners(ring))
	}
	return rings
}

// next is the border half edge that bounds the same filled sector at the end of
// h: the first one clockwise from the way back. A vertex has as many border
// half edges coming in as going out, so there is one, and only one h leads to
// each.
func (e *Engine) next(h int32) int32 {
	back := h ^ 1
	v := e.hub[back]
	low, high := e.first[v], e.first[v+1]
	k := e.slot[back]
	for range high - low {
		if k--; k < low {
			k = high - 1
		}
		if out := e.spokes[k].half; e.border[out] {
			return out
		}
	}
	return h
}

// corners returns a copy of the ring without its straight vertices. The first
// point is the least of the ring and so always a corner.
func corners(ring []Point) []Point {
	out := make([]Point, 0, len(ring))
	n := len(ring)
	for i, p := range ring {
		if orient(ring[(i+n-1)%n], p, ring[(i+1)%n]) != 0 {
			out = append(out, p)
		}
	}
	return out
}
