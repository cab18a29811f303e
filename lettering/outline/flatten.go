package outline

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// lead is the length in mm of the chord of a curve beside a corner. It must be
// short beside the curve's radius, so that the chord runs as the tangent does,
// and long beside a unit of the grid, so that rounding does not turn it: on a
// curve of 10 mm radius it is off by 0.005 radian, and by 0.001 from rounding.
const lead = 0.1

// Flatten returns the curves of a piece's ink, mm, as the rings to draw its
// layers from: within Tolerance. Round layers take no more than that. A mitre's
// tip, though, stands where the tangents at a corner lead, and a chord of a
// whole Tolerance would turn it away by a tenth of a millimetre and more. So
// for other joins a curve starts and ends with a short chord where it meets a
// corner, and has a point at each of its extremes along the axes: the box of the
// drawn layers is then the one that is reported, within 0.05 mm.
func Flatten(ink geom.Path, layers []Layer) geom.Region {
	if !slices.ContainsFunc(layers, func(l Layer) bool { return l.Join != Round }) {
		return ink.Flatten(Tolerance)
	}
	return led(ink).Flatten(Tolerance)
}

// led returns the path with its curves cut where Flatten must have points.
func led(ink geom.Path) geom.Path {
	out := make(geom.Path, 0, 2*len(ink))
	var contour []curve
	flush := func() {
		out = appendLed(out, contour)
		contour = contour[:0]
	}
	var start, at geom.Point
	for _, s := range ink {
		switch s.Op {
		case geom.Move:
			flush()
			start, at = s.P[0], s.P[0]
		case geom.Line:
			contour, at = append(contour, straight(at, s.P[0])), s.P[0]
		case geom.Quad:
			b, c := s.P[0], s.P[1]
			contour, at = append(contour, curve{at, at.Lerp(b, 2.0/3), c.Lerp(b, 2.0/3), c}), c
		case geom.Cube:
			contour, at = append(contour, curve{at, s.P[0], s.P[1], s.P[2]}), s.P[2]
		case geom.Close:
			contour, at = append(contour, straight(at, start)), start
			flush()
		}
	}
	flush()
	return out
}

// appendLed adds a contour, with short chords only where something hangs on them:
// they cost time.
func appendLed(path geom.Path, contour []curve) geom.Path {
	contour = slices.DeleteFunc(contour, func(c curve) bool { return c == straight(c[0], c[0]) })
	if len(contour) == 0 {
		return path
	}
	path.MoveTo(contour[0][0])
	n := len(contour)
	for i, c := range contour {
		before, after := contour[(i+n-1)%n], contour[(i+1)%n]
		if c == straight(c[0], c[3]) {
			path.LineTo(c[3])
			continue
		}
		path = c.cut(path, isKept(before, c), isKept(c, after))
	}
	path.Close()
	return path
}

// isKept reports a joint with a corner, or one at which the box may end: where
// the contour runs along an axis, or nearly. Without a short chord there, a tight
// curve might turn so much from chord to chord that it gets a tip of its own.
func isKept(a, b curve) bool {
	in, out := a.backwards().leaving().Mul(-1), b.leaving()
	if math.Abs(math.Atan2(in.Cross(out), in.Dot(out))) > shallow/2 {
		return true
	}
	return math.Min(math.Abs(out.X), math.Abs(out.Y)) < shallow*out.Norm()
}

// curve is a cubic Bézier curve.
type curve [4]geom.Point

// straight is a line: its controls lie at its ends.
func straight(a, b geom.Point) curve { return curve{a, a, b, b} }

func (c curve) backwards() curve { return curve{c[3], c[2], c[1], c[0]} }

// leaving returns a vector along the tangent at the start.
func (c curve) leaving() geom.Point {
	for _, p := range c[1:] {
		if p != c[0] {
			return p.Sub(c[0])
		}
	}
	return geom.Point{}
}

// cut appends the curve in pieces, led in and out if asked.
func (c curve) cut(path geom.Path, in, out bool) geom.Path {
	marks := append(make([]float64, 0, 8), 1)
	if in {
		marks = append(marks, c.leadIn())
	}
	if out {
		marks = append(marks, 1-c.backwards().leadIn())
	}
	marks = c.extremes(marks)
	slices.Sort(marks)
	from := 0.0
	for _, to := range marks {
		if to-from < 1e-9 {
			continue
		}
		bit := c.bit(from, to)
		path.CubeTo(bit[1], bit[2], bit[3])
		from = to
	}
	path[len(path)-1].P[2] = c[3] // not off by rounding: contours must close
	return path
}

// leadIn returns the parameter at which the first chord ends: lead along the
// curve, or a third of a curve that is hardly longer than that.
func (c curve) leadIn() float64 {
	const most = 1.0 / 3
	first, second := 3*c[1].Sub(c[0]).Norm(), 3*c[2].Sub(c[0]).Norm()
	switch {
	case first*most > lead:
		return lead / first
	case second*most*most > lead: // the first control point lies at the start, or near
		return math.Sqrt(lead / second)
	}
	return most
}

// extremes adds the parameters at which the curve runs along an axis, and those
// of the ends of a short chord to either side.
func (c curve) extremes(to []float64) []float64 {
	for _, v := range [2][4]float64{{c[0].X, c[1].X, c[2].X, c[3].X}, {c[0].Y, c[1].Y, c[2].Y, c[3].Y}} {
		p, q, r := v[3]-3*v[2]+3*v[1]-v[0], v[2]-2*v[1]+v[0], v[1]-v[0] // p·t² + 2q·t + r
		root := q*q - p*r
		if root < 0 {
			continue
		}
		s := -(q + math.Copysign(math.Sqrt(root), q)) // the form that cancels nothing
		for _, t := range [2]float64{s / p, r / s} {
			if t > 0 && t < 1 { // NaN is not
				before, after := c.bit(0, t).backwards(), c.bit(t, 1)
				to = append(to, t-t*before.leadIn(), t, t+(1-t)*after.leadIn())
			}
		}
	}
	return to
}

// bit returns the curve between two parameters.
func (c curve) bit(from, to float64) curve {
	return curve{c.blossom(from, from, from), c.blossom(from, from, to), c.blossom(from, to, to), c.blossom(to, to, to)}
}

// blossom is the polar form of the curve: its controls between two parameters
// are the values with those in turn.
func (c curve) blossom(t, u, v float64) geom.Point {
	a, b, d := c[0].Lerp(c[1], t), c[1].Lerp(c[2], t), c[2].Lerp(c[3], t)
	return a.Lerp(b, u).Lerp(b.Lerp(d, u), v)
}
