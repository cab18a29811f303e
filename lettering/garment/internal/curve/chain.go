package curve

import (
	"math"

	"yokeline/lettering/geom"
)

// Chain is a run of curves, each starting where the one before ended.
type Chain []Cubic

// Line returns the straight chain through the points.
func Line(ps ...geom.Point) Chain {
	var out Chain
	for i := 1; i < len(ps); i++ {
		out = append(out, Straight(ps[i-1], ps[i]))
	}
	return out
}

// Bezier returns a chain of one curve.
func Bezier(a, b, c, d geom.Point) Chain { return Chain{{a, b, c, d}} }

// Arc returns a circular turn from a point: it starts on heading a0, ends on a1
// (radians below horizontal, less than a half turn apart) and is length l long.
func Arc(from geom.Point, a0, a1, l float64) Chain {
	turn := a1 - a0
	if math.Abs(turn) < 1e-6 {
		return Line(from, from.Add(Heading(a0).Mul(l)))
	}
	r := l / turn
	h := 4. / 3 * math.Tan(turn/4) * r
	to := from.Add(Heading((a0 + a1) / 2).Mul(2 * r * math.Sin(turn/2)))
	return Bezier(from, from.Add(Heading(a0).Mul(h)), to.Sub(Heading(a1).Mul(h)), to)
}

// Bowed returns a shallow curve from a to b, bowed to the left of travel by k of
// its length.
func Bowed(a, b geom.Point, k float64) Chain {
	n := Right(b.Sub(a)).Mul(-k * 4 / 3) // a cubic reaches three quarters of its handles' bow
	return Bezier(a, a.Lerp(b, 0.3).Add(n), a.Lerp(b, 0.7).Add(n), b)
}

// weld is the gap that Join closes by moving an end; a larger one gets a line.
const weld = 1e-3

// Join chains the parts in order; empty parts are left out.
func Join(parts ...Chain) Chain {
	var out Chain
	for _, p := range parts {
		if len(p) == 0 {
			continue
		}
		n := len(out)
		if n > 0 && dist(out.End(), p.Start()) > weld {
			out = append(out, Straight(out.End(), p.Start()))
			n++
		}
		out = append(out, p...)
		if n > 0 {
			out[n][0] = out[n-1][3]
		}
	}
	return out
}

// Closed returns the chain with a straight line back to its start where one is
// needed.
func (c Chain) Closed() Chain {
	d := dist(c.End(), c.Start())
	if d == 0 {
		return c
	}
	out := append(Chain{}, c...)
	if d < weld {
		out[len(out)-1][3] = c.Start()
		return out
	}
	return append(out, Straight(c.End(), c.Start()))
}

// Start returns the first point.
func (c Chain) Start() geom.Point { return c[0][0] }

// End returns the last point.
func (c Chain) End() geom.Point { return c[len(c)-1][3] }

// EndDir returns the unit tangent at the end.
func (c Chain) EndDir() geom.Point { return c[len(c)-1].Dir(1) }

// Reverse returns the chain run the other way.
func (c Chain) Reverse() Chain {
	out := make(Chain, len(c))
	for i, s := range c {
		out[len(c)-1-i] = Cubic{s[3], s[2], s[1], s[0]}
	}
	return out
}

// Mirror returns the chain mirrored in the centre line, run from the same end.
func (c Chain) Mirror() Chain {
	out := make(Chain, len(c))
	for i, s := range c {
		out[i] = Cubic{Mirror(s[0]), Mirror(s[1]), Mirror(s[2]), Mirror(s[3])}
	}
	return out
}

// Whole joins a right half that runs from centre to centre to its mirror image.
func (c Chain) Whole() Chain { return Join(c, c.Mirror().Reverse()) }

// Across joins a chain that starts on the centre line to its mirror image, left
// to right; another chain is returned as it is.
func (c Chain) Across() Chain {
	if len(c) == 0 || math.Abs(c.Start().X) > 1e-6 {
		return c
	}
	return Join(c.Mirror().Reverse(), c)
}

// Length returns the arc length.
func (c Chain) Length() float64 {
	sum := 0.0
	for _, s := range c {
		sum += s.LengthTo(1)
	}
	return sum
}

// At returns the point a length along the chain, measured from the end when
// negative.
func (c Chain) At(length float64) geom.Point {
	if length < 0 {
		length += c.Length()
	}
	for i, s := range c {
		l := s.LengthTo(1)
		if length <= l || i == len(c)-1 {
			return s.At(s.atLength(length))
		}
		length -= l
	}
	return geom.Point{}
}

// cutAt splits at a parameter of one curve.
func (c Chain) cutAt(i int, t float64) (head, tail Chain) {
	a, b := c[i].Split(t)
	head = append(append(Chain{}, c[:i]...), a)
	tail = append(Chain{b}, c[i+1:]...)
	return head, tail
}

// CutAtLength splits at a length from the start.
func (c Chain) CutAtLength(l float64) (head, tail Chain) {
	for i, s := range c {
		d := s.LengthTo(1)
		if l > d && i < len(c)-1 {
			l -= d
			continue
		}
		return c.cutAt(i, s.atLength(l))
	}
	return c, nil
}

// mark is a point of a flattened chain that knows where on the chain it lies.
type mark struct {
	geom.Point
	curve int
	t     float64
}

func (c Chain) marks(tol float64) []mark {
	out := []mark{{c.Start(), 0, 0}}
	for i, s := range c {
		n := s.steps(tol)
		for k := 1; k <= n; k++ {
			t := float64(k) / float64(n)
			out = append(out, mark{s.At(t), i, t})
		}
	}
	return out
}

// Flatten returns points along the chain whose joining lines stay within tol.
func (c Chain) Flatten(tol float64) []geom.Point {
	var out []geom.Point
	for i, s := range c {
		if i == 0 {
			out = append(out, s[0])
		}
		n := s.steps(tol)
		for k := 1; k < n; k++ {
			out = append(out, s.At(float64(k)/float64(n)))
		}
		out = append(out, s[3])
	}
	return out
}

// CutWhere splits at the first place where f changes sign, found by halving; ok
// is false and head the whole chain if it never does.
func (c Chain) CutWhere(f func(geom.Point) float64) (head, tail Chain, ok bool) {
	ms := c.marks(0.05)
	for i := 1; i < len(ms); i++ {
		a, b := f(ms[i-1].Point), f(ms[i].Point)
		if (a < 0) == (b < 0) {
			continue
		}
		lo, hi := ms[i-1].t, ms[i].t
		if ms[i-1].curve != ms[i].curve {
			lo = 0
		}
		s := c[ms[i].curve]
		for range 60 {
			if m := (lo + hi) / 2; (f(s.At(m)) < 0) == (a < 0) {
				lo = m
			} else {
				hi = m
			}
		}
		head, tail = c.cutAt(ms[i].curve, lo)
		return head, tail, true
	}
	return c, nil, false
}

// Path appends the chain to a path as one contour; closed ends it with a Close.
func (c Chain) Path(closed bool) geom.Path {
	var p geom.Path
	if len(c) == 0 {
		return p
	}
	p.MoveTo(c.Start())
	for _, s := range c {
		if s.IsStraight() {
			p.LineTo(s[3])
		} else {
			p.CubeTo(s[1], s[2], s[3])
		}
	}
	if closed {
		p.Close()
	}
	return p
}
