package makeable

import (
	"math"

	"yokeline/lettering/geom"
)

// ring is one ring of a layer: the shape it belongs to, counted by outer rings.
type ring struct {
	shape int
	hole  bool
	area  float64
	box   geom.Rect
}

// shapesOf sorts the rings of a settled region into shapes: a hole belongs to
// the smallest outer ring around it.
func shapesOf(r geom.Region) []ring {
	out := make([]ring, len(r))
	for i := range r {
		a := r[i].Area()
		out[i] = ring{shape: i, hole: a < 0, area: math.Abs(a), box: r[i : i+1].Bounds()}
	}
	for i := range out {
		if !out[i].hole {
			continue
		}
		parent := -1
		for k := range out {
			if out[k].hole || out[k].area < out[i].area || !holds(out[k].box, out[i].box) || parent >= 0 && out[parent].area <= out[k].area {
				continue
			}
			if r[k : k+1].Contains(r[i][0].Lerp(r[i][1], 0.5)) {
				parent = k
			}
		}
		if parent >= 0 {
			out[i].shape = parent
		}
	}
	return out
}

func holds(outer, inner geom.Rect) bool {
	return outer.Min.X <= inner.Min.X && outer.Min.Y <= inner.Min.Y && outer.Max.X >= inner.Max.X && outer.Max.Y >= inner.Max.Y
}

// wall is an edge of the boundary; the side that is measured lies on its left.
type wall struct {
	a, b        geom.Point
	dir, inward geom.Point // length 1
	length      float64
	box         geom.Rect
	ring        int
	prev        int
	at          float64 // how far along its ring it starts
	turn        float64 // at a, radians; under 0 where the wall bulges into the side measured
	corner      bool    // turns so at a by more than a joint of a flattened curve
	curved      bool    // a joint of a flattened curve at either end
}

// smooth is the turn, radians, below which two edges are taken for parts of
// one flattened curve.
const smooth = 15 * math.Pi / 180

// wallsOf lists the walls, of the ink or, backwards, of the field around it.
// Edges shorter than least are taken into the next, so that a corner that a
// grid has cut off by a hair is still one corner.
func wallsOf(r geom.Region, outside bool, least float64) []wall {
	edges := 0
	for _, ring := range r {
		edges += len(ring)
	}
	out := make([]wall, 0, edges)
	var points geom.Ring
	for k, ring := range r {
		points = points[:0]
		for i := range ring {
			p := ring[i]
			if outside {
				p = ring[len(ring)-1-i]
			}
			if n := len(points); n == 0 || p.Sub(points[n-1]).Norm() >= least {
				points = append(points, p)
			}
		}
		for len(points) > 1 && points[0].Sub(points[len(points)-1]).Norm() < least {
			points = points[:len(points)-1]
		}
		if len(points) >= 3 {
			out = appendWalls(out, points, k)
		}
	}
	return out
}

func appendWalls(out []wall, points geom.Ring, ring int) []wall {
	first, n := len(out), len(points)
	for i, a := range points {
		b := points[(i+1)%n]
		v := b.Sub(a)
		length := v.Norm()
		d := v.Mul(1 / length)
		out = append(out, wall{
			a: a, b: b, dir: d, inward: geom.Point{X: -d.Y, Y: d.X}, length: length, ring: ring,
			box:  geom.EmptyRect().Include(a).Include(b),
			prev: first + (i+n-1)%n,
		})
	}
	for i := first; i < len(out); i++ {
		p := &out[out[i].prev]
		w := &out[i]
		w.turn = math.Atan2(p.dir.Cross(w.dir), p.dir.Dot(w.dir))
		w.corner = w.turn <= -smooth
		if joint := math.Abs(w.turn); joint > 0 && joint < smooth {
			p.curved, w.curved = true, true
		}
	}
	return out
}

// chord reports whether the wall is a short piece of a flattened curve, for a
// disc of the given radius.
func (w *wall) chord(radius float64) bool { return w.curved && w.length < radius }

// nearest returns the point of the wall nearest to p.
func (w *wall) nearest(p geom.Point) geom.Point {
	t := p.Sub(w.a).Dot(w.dir)
	return w.a.Add(w.dir.Mul(min(w.length, max(0, t))))
}

// closest returns the two nearest points of two walls that do not cross: one
// of them is an end.
func closest(v, w *wall) (p, q geom.Point) {
	best := math.Inf(1)
	try := func(a, b geom.Point) {
		if d := b.Sub(a).Norm(); d < best {
			best, p, q = d, a, b
		}
	}
	try(v.a, w.nearest(v.a))
	try(v.b, w.nearest(v.b))
	try(v.nearest(w.a), w.a)
	try(v.nearest(w.b), w.b)
	return p, q
}

// separation returns the squared distance of two boxes.
func separation(a, b *geom.Rect) float64 {
	dx := max(0, a.Min.X-b.Max.X, b.Min.X-a.Max.X)
	dy := max(0, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y)
	return dx*dx + dy*dy
}
