package curve

import (
	"math"

	"yokeline/lettering/geom"
)

// Cross finds where two chains first meet and cuts both there.
func Cross(a, b Chain) (aHead, aTail, bHead, bTail Chain, ok bool) {
	ma, mb := a.marks(0.01), b.marks(0.01)
	for i := 1; i < len(ma); i++ {
		box := geom.EmptyRect().Include(ma[i-1].Point).Include(ma[i].Point).Grow(1e-6)
		for j := 1; j < len(mb); j++ {
			if apart(box, mb[j-1].Point, mb[j].Point) {
				continue
			}
			t, u, hit := Meet(ma[i-1].Point, ma[i].Point, mb[j-1].Point, mb[j].Point)
			if !hit {
				continue
			}
			aHead, aTail = a.cutAt(ma[i].curve, between(ma[i-1], ma[i], t))
			bHead, bTail = b.cutAt(mb[j].curve, between(mb[j-1], mb[j], u))
			return aHead, aTail, bHead, bTail, true
		}
	}
	return a, nil, b, nil, false
}

func apart(r geom.Rect, p, q geom.Point) bool {
	return math.Max(p.X, q.X) < r.Min.X || math.Min(p.X, q.X) > r.Max.X ||
		math.Max(p.Y, q.Y) < r.Min.Y || math.Min(p.Y, q.Y) > r.Max.Y
}

func between(m, n mark, k float64) float64 {
	lo := m.t
	if m.curve != n.curve {
		lo = 0
	}
	return lo + (n.t-lo)*math.Min(1, math.Max(0, k))
}

// Meet returns where segments ab and cd cross, as shares along each.
func Meet(a, b, c, d geom.Point) (t, u float64, ok bool) {
	r, s := b.Sub(a), d.Sub(c)
	den := r.Cross(s)
	if math.Abs(den) < 1e-14 {
		return 0, 0, false
	}
	t, u = c.Sub(a).Cross(s)/den, c.Sub(a).Cross(r)/den
	const e = 1e-9
	return t, u, t >= -e && t <= 1+e && u >= -e && u <= 1+e
}

// Offset returns the parallel at distance d to the right of travel, to the left
// when negative. Each curve is halved twice and its control polygon moved leg by
// leg (after Tiller and Hanson, Offsets of two-dimensional profiles, 1984): for
// the gentle curves of cloth the distance stays within a few per cent.
func (c Chain) Offset(d float64) Chain {
	var out Chain
	for _, s := range c {
		if s.IsStraight() {
			out = append(out, s.shifted(d))
			continue
		}
		a, b := s.Split(0.5)
		a1, a2 := a.Split(0.5)
		b1, b2 := b.Split(0.5)
		for _, q := range [4]Cubic{a1, a2, b1, b2} {
			out = append(out, q.shifted(d))
		}
	}
	for i := 1; i < len(out); i++ { // smooth joins agree to rounding; make them one point
		out[i][0] = out[i-1][3]
	}
	return out
}

func (s Cubic) shifted(d float64) Cubic {
	n0, n1 := Right(s.Dir(0)).Mul(d), Right(s.Dir(1)).Mul(d)
	nm := Right(Unit(s[2].Sub(s[1]))).Mul(d)
	out := Cubic{s[0].Add(n0), {}, {}, s[3].Add(n1)}
	out[1] = corner(out[0], s.Dir(0), s[1].Add(nm), s[2].Sub(s[1]), s[1].Add(n0))
	out[2] = corner(s[1].Add(nm), s[2].Sub(s[1]), out[3], s.Dir(1), s[2].Add(n1))
	return out
}

// corner is where the line through a along u meets that through b along v, or
// alt when they are nearly parallel.
func corner(a, u, b, v, alt geom.Point) geom.Point {
	u, v = Unit(u), Unit(v)
	den := u.Cross(v)
	if math.Abs(den) < 1e-3 {
		return alt
	}
	return a.Add(u.Mul(b.Sub(a).Cross(v) / den))
}

// FromAxis makes a half chain start exactly on the centre line: what lies beyond
// is trimmed, what falls short is extended along its first tangent (a mitre).
func (c Chain) FromAxis() Chain {
	s := c.Start()
	switch {
	case s.X < -1e-9:
		if _, tail, ok := c.CutWhere(func(q geom.Point) float64 { return q.X }); ok {
			tail[0][0].X = 0
			return tail
		}
	case s.X > 1e-9:
		if d := c[0].Dir(0); d.X > 1e-6 {
			return Join(Line(s.Sub(d.Mul(s.X/d.X)), s), c)
		}
	}
	return c
}

// EndOn makes the chain end exactly on another one: trimmed, or extended
// straight by up to reach. It is returned as it is when they do not meet.
func (c Chain) EndOn(b Chain, reach float64) Chain {
	long := Join(c, Line(c.End(), c.End().Add(c.EndDir().Mul(reach))))
	if head, _, _, _, ok := Cross(long, b); ok {
		return head
	}
	return c
}

// Between blends two chains of the same build, k = 0 giving a and 1 giving b.
func Between(a, b Chain, k float64) Chain {
	out := make(Chain, len(a))
	for i := range a {
		for j := range 4 {
			out[i][j] = a[i][j].Lerp(b[i][j], k)
		}
	}
	return out
}

// Circle returns a circle as four curves, clockwise on the page.
func Circle(c geom.Point, r float64) Chain {
	const k = 0.5522847498 // 4/3 (√2 - 1): the usual handle of a quarter circle
	p := func(x, y float64) geom.Point { return c.Add(geom.Point{X: x * r, Y: y * r}) }
	return Join(
		Bezier(p(1, 0), p(1, k), p(k, 1), p(0, 1)), Bezier(p(0, 1), p(-k, 1), p(-1, k), p(-1, 0)),
		Bezier(p(-1, 0), p(-1, -k), p(-k, -1), p(0, -1)), Bezier(p(0, -1), p(k, -1), p(1, -k), p(1, 0)))
}

// Leaf returns a thin closed leaf from a to b, about w wide where it is thickest,
// a third of the way along, and bowed by bow to the right of travel.
func Leaf(a, b geom.Point, bow, w float64) Chain {
	n := Right(Unit(b.Sub(a)))
	one, two := n.Mul((bow+w/2)*4/3), n.Mul((bow-w/2)*4/3)
	return Join(
		Bezier(a, a.Lerp(b, 0.10).Add(one), a.Lerp(b, 0.62).Add(one), b),
		Bezier(b, a.Lerp(b, 0.62).Add(two), a.Lerp(b, 0.10).Add(two), a))
}
