package ink

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// chunkEdges is how many edges share a box when distances are searched.
const chunkEdges = 8

// chunk is a run of edges points[from] … points[to] and its box.
type chunk struct {
	from, to int
	box      geom.Rect
}

// outline flattens the contours once and cuts them into chunks.
func (g *Glyph) outline() []chunk {
	if g.chunks != nil || g.Empty() {
		return g.chunks
	}
	for _, ring := range g.Path.Flatten(g.tolerance) {
		from := len(g.points)
		g.points = append(append(g.points, ring...), ring[0])
		last := len(g.points) - 1
		for from < last {
			c := g.chunk(from, last)
			g.chunks = append(g.chunks, c)
			from = c.to
		}
	}
	return g.chunks
}

// chunk starts a chunk at a point. It ends after chunkEdges edges, or sooner
// where a long edge would blow up its box.
func (g *Glyph) chunk(from, last int) chunk {
	c := chunk{from: from, to: from + 1, box: geom.EmptyRect().Include(g.points[from]).Include(g.points[from+1])}
	large := g.Box.Height() / 8
	for c.to < last && c.to-from < chunkEdges {
		grown := c.box.Include(g.points[c.to+1])
		if grown.Width()+grown.Height() > large {
			break
		}
		c.to, c.box = c.to+1, grown
	}
	return c
}

// Finder measures distances; it holds scratch space and is not safe for
// concurrent use. The zero value is ready.
type Finder struct {
	boxesA, boxesB []geom.Rect
	facing         []int
}

// Gap returns the smallest distance in the plane between two glyphs under
// their maps, or most if they are no nearer than that: 0 when their contours
// touch or cross. Looking for less than is already known is much faster.
func (f *Finder) Gap(a *Glyph, ma geom.Affine, b *Glyph, mb geom.Affine, most float64) float64 {
	best := most * most
	ma, mb = upright(ma, mb)
	boxA, boxB := mapBox(&a.Box, &ma), mapBox(&b.Box, &mb)
	if a.Empty() || b.Empty() || apart(&boxA, &boxB) >= best { // boxes of no ink mean nothing
		return most
	}
	ca, cb := a.outline(), b.outline()
	boxesA, allA := mapBoxes(f.boxesA, ca, ma)
	boxesB, allB := mapBoxes(f.boxesB, cb, mb)
	f.boxesA, f.boxesB = boxesA, boxesB
	// The two chunks that face each other most make best small, so that the
	// rest is passed over by their boxes.
	i, k := facing(f.boxesA, allB), facing(f.boxesB, allA)
	best = f.chunks(best, a, i, ma, b, k, mb)
	f.facing = f.facing[:0]
	for k := range cb {
		if apart(&f.boxesB[k], &allA) < best {
			f.facing = append(f.facing, k)
		}
	}
	slices.SortFunc(f.facing, func(i, k int) int { return cmp.Compare(f.boxesB[i].Min.X, f.boxesB[k].Min.X) })
	// Where letters cross, as in a connected script, the answer is 0 at once.
	if apart(&allA, &allB) == 0 && f.meet(a, ma, b, mb, allB) {
		return 0
	}
	for i := range ca {
		if apart(&f.boxesA[i], &allB) >= best {
			continue
		}
		for _, k := range f.facing {
			if best == 0 {
				return 0
			}
			if dx := f.boxesB[k].Min.X - f.boxesA[i].Max.X; dx > 0 && dx*dx >= best {
				break // and so for all that follow
			}
			best = f.chunks(best, a, i, ma, b, k, mb)
		}
	}
	return math.Sqrt(best)
}

// meet reports whether two chunks whose boxes overlap cross.
func (f *Finder) meet(a *Glyph, ma geom.Affine, b *Glyph, mb geom.Affine, allB geom.Rect) bool {
	for i := range a.chunks {
		if apart(&f.boxesA[i], &allB) > 0 {
			continue
		}
		var pa run
		for _, k := range f.facing {
			if f.boxesB[k].Min.X > f.boxesA[i].Max.X {
				break // and so for all that follow
			}
			if apart(&f.boxesA[i], &f.boxesB[k]) > 0 {
				continue
			}
			if pa.n == 0 {
				pa.fill(a.points[a.chunks[i].from:a.chunks[i].to+1], ma)
			}
			var pb run
			pb.fill(b.points[b.chunks[k].from:b.chunks[k].to+1], mb)
			if pa.crosses(&pb) {
				return true
			}
		}
	}
	return false
}

// Around returns a box that contains the glyph drawn into the plane by w. It
// is cheap, and the drawn ink's own box where w neither turns nor bends.
func (g *Glyph) Around(w Warp) geom.Rect {
	box := mapBox(&g.Box, &w.Map)
	if w.Bend == 0 || g.Empty() {
		return box
	}
	// Rise is largest in size where x is; it is 0 at x = 0 and grows to both sides.
	a, b := Rise(w.Bend, box.Min.X), Rise(w.Bend, box.Max.X)
	low, high := min(a, b), max(a, b)
	if box.Min.X < 0 && box.Max.X > 0 {
		low, high = min(low, 0), max(high, 0)
	}
	box.Min.Y, box.Max.Y = box.Min.Y+low, box.Max.Y+high
	return box
}

// Apart returns a distance that two glyphs under their maps are at least from
// each other: that of their boxes, turned to lean as little as they can.
func Apart(a *Glyph, ma geom.Affine, b *Glyph, mb geom.Affine) float64 {
	if a.Empty() || b.Empty() {
		return math.Inf(1)
	}
	ma, mb = upright(ma, mb)
	boxA, boxB := mapBox(&a.Box, &ma), mapBox(&b.Box, &mb)
	return math.Sqrt(apart(&boxA, &boxB))
}

// upright turns both maps together so that the two glyphs lean as little as
// they can. Boxes then hug them, and far more is passed over.
func upright(ma, mb geom.Affine) (geom.Affine, geom.Affine) {
	if ma.B == 0 && mb.B == 0 {
		return ma, mb
	}
	along := unit(unit(geom.Point{X: ma.A, Y: ma.B}).Add(unit(geom.Point{X: mb.A, Y: mb.B})))
	if along == (geom.Point{}) {
		return ma, mb
	}
	back := geom.Affine{A: along.X, B: -along.Y, C: along.Y, D: along.X}
	return ma.Then(back), mb.Then(back)
}

// chunks returns the smaller of best and the squared distance of two chunks.
func (f *Finder) chunks(best float64, a *Glyph, i int, ma geom.Affine, b *Glyph, k int, mb geom.Affine) float64 {
	d := apart(&f.boxesA[i], &f.boxesB[k])
	if d >= best {
		return best
	}
	ra, rb := a.chunks[i], b.chunks[k]
	var pa, pb run
	pa.fill(a.points[ra.from:ra.to+1], ma)
	pb.fill(b.points[rb.from:rb.to+1], mb)
	best = pa.toEdges(best, &pb, &f.boxesB[k])
	best = pb.toEdges(best, &pa, &f.boxesA[i])
	if d == 0 && best > 0 && pa.crosses(&pb) {
		return 0
	}
	return best
}

// run is a chunk's corners in the plane.
type run struct {
	p [chunkEdges + 1]geom.Point
	n int
}

func (r *run) fill(points []geom.Point, m geom.Affine) {
	for i, p := range points {
		r.p[i] = m.Apply(p)
	}
	r.n = len(points)
}

// toEdges returns the smaller of best and the squared distance of r's corners
// to the edges of o, which lie in box.
func (r *run) toEdges(best float64, o *run, box *geom.Rect) float64 {
	for _, p := range r.p[:r.n] {
		if apart(&geom.Rect{Min: p, Max: p}, box) >= best {
			continue
		}
		for k := 1; k < o.n; k++ {
			best = min(best, toEdge(p, o.p[k-1], o.p[k]))
		}
	}
	return best
}

func (r *run) crosses(o *run) bool {
	for i := 1; i < r.n; i++ {
		for k := 1; k < o.n; k++ {
			if cross(r.p[i-1], r.p[i], o.p[k-1], o.p[k]) {
				return true
			}
		}
	}
	return false
}

// facing returns the box nearest to the whole of the other glyph.
func facing(boxes []geom.Rect, other geom.Rect) int {
	best, at := math.Inf(1), 0
	for i := range boxes {
		if d := apart(&boxes[i], &other); d < best {
			best, at = d, i
		}
	}
	return at
}

func mapBoxes(out []geom.Rect, chunks []chunk, m geom.Affine) ([]geom.Rect, geom.Rect) {
	out, all := out[:0], geom.EmptyRect()
	for i := range chunks {
		r := mapBox(&chunks[i].box, &m)
		out = append(out, r)
		all.Min.X, all.Min.Y = min(all.Min.X, r.Min.X), min(all.Min.Y, r.Min.Y)
		all.Max.X, all.Max.Y = max(all.Max.X, r.Max.X), max(all.Max.Y, r.Max.Y)
	}
	return out, all
}

// mapBox returns the box of a mapped box.
func mapBox(b *geom.Rect, m *geom.Affine) geom.Rect {
	c := m.Apply(geom.Point{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2})
	hx, hy := (b.Max.X-b.Min.X)/2, (b.Max.Y-b.Min.Y)/2
	rx, ry := math.Abs(m.A)*hx+math.Abs(m.C)*hy, math.Abs(m.B)*hx+math.Abs(m.D)*hy
	return geom.Rect{Min: geom.Point{X: c.X - rx, Y: c.Y - ry}, Max: geom.Point{X: c.X + rx, Y: c.Y + ry}}
}

// apart returns the squared distance of two boxes.
func apart(a, b *geom.Rect) float64 {
	dx := max(0, a.Min.X-b.Max.X, b.Min.X-a.Max.X)
	dy := max(0, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y)
	return dx*dx + dy*dy
}

// toEdge returns the squared distance of p to the edge from a to b.
func toEdge(p, a, b geom.Point) float64 {
	ex, ey, px, py := b.X-a.X, b.Y-a.Y, p.X-a.X, p.Y-a.Y
	n := ex*ex + ey*ey
	t := px*ex + py*ey
	switch {
	case t <= 0 || n == 0:
	case t >= n:
		px, py = px-ex, py-ey
	default:
		c := ex*py - ey*px
		return c * c / n
	}
	return px*px + py*py
}

// cross reports whether two edges cross properly.
func cross(a, b, c, d geom.Point) bool {
	ab, cd := b.Sub(a), d.Sub(c)
	return ab.Cross(c.Sub(a))*ab.Cross(d.Sub(a)) < 0 && cd.Cross(a.Sub(c))*cd.Cross(b.Sub(c)) < 0
}
