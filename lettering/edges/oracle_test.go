package edges_test

import (
	"math"

	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
)

// figure is an edge written down a second time, from the definition: the
// circle through the ends of the chord, or the line, with no closed forms
// shared with the package.
func figure(e edges.Edge, chord, x float64) float64 {
	switch {
	case e.Kind == edges.Arch && (e.Rise != 0 || e.Radius != 0):
		r := math.Abs(e.Radius)
		if r == 0 {
			h := math.Abs(e.Rise)
			r = (chord*chord/4 + h*h) / (2 * h)
		}
		sag := r - r*math.Cos(math.Asin(x/r))
		return -math.Copysign(1, e.Rise+e.Radius) * sag
	case e.Kind == edges.Slant && e.Angle != 0:
		return x * math.Tan(e.Angle)
	case e.Kind == edges.Slant && e.Rise != 0:
		return x * e.Rise / chord
	}
	return 0
}

// oracle maps a flat point by the definition.
func oracle(s edges.Shape, height, chord float64, p geom.Point) geom.Point {
	lean := math.Tan(s.Shear)
	x := p.X + p.Y*lean
	u := x - height/2*lean
	bottom, top := figure(s.Bottom, chord, u), height+figure(s.Top, chord, u)
	return geom.Point{X: x, Y: bottom + p.Y/height*(top-bottom)}
}

// dense returns the contours with every line and curve cut into n steps, each
// point mapped.
func dense(p geom.Path, n int, to func(geom.Point) geom.Point) []geom.Ring {
	var out []geom.Ring
	var ring geom.Ring
	var at, first geom.Point
	add := func(f func(t float64) geom.Point) {
		for i := 1; i <= n; i++ {
			ring = append(ring, to(f(float64(i)/float64(n))))
		}
		at = f(1)
	}
	shut := func() {
		if len(ring) > 0 {
			a := at
			add(func(t float64) geom.Point { return a.Lerp(first, t) })
			out, ring = append(out, ring), nil
		}
	}
	for _, s := range p {
		a := at
		switch s.Op {
		case geom.Move:
			shut()
			at, first = s.P[0], s.P[0]
			ring = append(ring, to(at))
		case geom.Line:
			add(func(t float64) geom.Point { return a.Lerp(s.P[0], t) })
		case geom.Quad:
			add(func(t float64) geom.Point { return a.Lerp(s.P[0], t).Lerp(s.P[0].Lerp(s.P[1], t), t) })
		case geom.Cube:
			add(func(t float64) geom.Point {
				m := s.P[0].Lerp(s.P[1], t)
				return a.Lerp(s.P[0], t).Lerp(m, t).Lerp(m.Lerp(s.P[1].Lerp(s.P[2], t), t), t)
			})
		case geom.Close:
			shut()
		}
	}
	shut()
	return out
}

func identity(p geom.Point) geom.Point { return p }

// farthest returns the largest distance from a point of one ring to the edges
// of another. Edges are looked at in boxes of a few, and a box that lies
// farther off than the nearest edge so far is passed over.
func farthest(from, to geom.Ring) float64 {
	const few = 32
	var boxes []geom.Rect
	for i := range to {
		if i%few == 0 {
			boxes = append(boxes, geom.EmptyRect())
		}
		boxes[i/few] = boxes[i/few].Include(to[i]).Include(to[(i+1)%len(to)])
	}
	worst, near := 0.0, 0
	for _, p := range from {
		best := away(to, near, p)
		for k, box := range boxes {
			if box.Min.X-p.X > best || p.X-box.Max.X > best || box.Min.Y-p.Y > best || p.Y-box.Max.Y > best {
				continue
			}
			for i := k * few; i < min(len(to), (k+1)*few); i++ {
				if d := away(to, i, p); d < best {
					best, near = d, i
				}
			}
		}
		worst = max(worst, best)
	}
	return worst
}

func away(ring geom.Ring, i int, p geom.Point) float64 {
	a := ring[i]
	d := ring[(i+1)%len(ring)].Sub(a)
	share := 0.0
	if l := d.Dot(d); l > 0 {
		share = max(0, min(1, p.Sub(a).Dot(d)/l))
	}
	return p.Sub(a.Add(d.Mul(share))).Norm()
}

// deviation returns the larger of two distances, contour by contour: from the
// true curve to the drawn one and back. Places are looked at in steps, the other
// curve is a polygon of fine edges a line or curve.
func deviation(flat, drawn geom.Path, to func(geom.Point) geom.Point, steps, fine int) float64 {
	truth, got := dense(flat, steps, to), dense(drawn, steps, identity)
	fineTruth, fineGot := dense(flat, fine, to), dense(drawn, fine, identity)
	if len(truth) != len(got) {
		return math.Inf(1)
	}
	worst := 0.0
	for i := range truth {
		worst = max(worst, farthest(truth[i], fineGot[i]), farthest(got[i], fineTruth[i]))
	}
	return worst
}
