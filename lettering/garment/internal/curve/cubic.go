// Package curve holds the chains of cubic Bézier curves that garments are drawn
// with: splitting by length or by a condition, crossings, parallels. Lengths are
// millimetres; y grows down, so right of travel is clockwise on the page.
package curve

import (
	"math"

	"yokeline/lettering/geom"
)

// Cubic is one cubic Bézier curve; a straight line has its control points at
// the thirds.
type Cubic [4]geom.Point

// Straight returns the line from a to b.
func Straight(a, b geom.Point) Cubic { return Cubic{a, a.Lerp(b, 1./3), a.Lerp(b, 2./3), b} }

// At returns the point at parameter t.
func (s Cubic) At(t float64) geom.Point {
	u := 1 - t
	return s[0].Mul(u * u * u).Add(s[1].Mul(3 * u * u * t)).Add(s[2].Mul(3 * u * t * t)).Add(s[3].Mul(t * t * t))
}

// velocity is the derivative at t.
func (s Cubic) velocity(t float64) geom.Point {
	u := 1 - t
	return s[1].Sub(s[0]).Mul(3 * u * u).Add(s[2].Sub(s[1]).Mul(6 * u * t)).Add(s[3].Sub(s[2]).Mul(3 * t * t))
}

// Dir returns the unit tangent at t; where a handle has no length the chord
// serves.
func (s Cubic) Dir(t float64) geom.Point {
	v := s.velocity(t)
	if v.Norm() < 1e-9 {
		v = s[3].Sub(s[0])
	}
	return Unit(v)
}

// Split cuts the curve at t.
func (s Cubic) Split(t float64) (head, tail Cubic) {
	a, b, c := s[0].Lerp(s[1], t), s[1].Lerp(s[2], t), s[2].Lerp(s[3], t)
	d, e := a.Lerp(b, t), b.Lerp(c, t)
	m := d.Lerp(e, t)
	return Cubic{s[0], a, d, m}, Cubic{m, e, c, s[3]}
}

// IsStraight reports whether the curve is a line run at constant speed.
func (s Cubic) IsStraight() bool {
	return dist(s[1], s[0].Lerp(s[3], 1./3)) < 1e-6 && dist(s[2], s[0].Lerp(s[3], 2./3)) < 1e-6
}

// The nodes and weights of five-point Gauss-Legendre integration on [-1, 1].
// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4.
var gauss = [5][2]float64{
	{0, 0.568888888888889},
	{-0.538469310105683, 0.478628670499366}, {0.538469310105683, 0.478628670499366},
	{-0.906179845938664, 0.236926885056189}, {0.906179845938664, 0.236926885056189},
}

// lengthPieces is how many pieces a curve is integrated in: with the gentle
// curves of cloth the length is then right to less than a micrometre.
const lengthPieces = 8

// LengthTo returns the arc length from the start to parameter t.
func (s Cubic) LengthTo(t float64) float64 {
	if s.IsStraight() {
		return t * dist(s[0], s[3])
	}
	sum, h := 0.0, t/lengthPieces
	for i := range lengthPieces {
		mid := (float64(i) + 0.5) * h
		for _, g := range gauss {
			sum += g[1] * s.velocity(mid+g[0]*h/2).Norm() * h / 2
		}
	}
	return sum
}

// atLength returns the parameter at an arc length from the start.
func (s Cubic) atLength(l float64) float64 {
	lo, hi := 0.0, 1.0
	for range 50 {
		if m := (lo + hi) / 2; s.LengthTo(m) < l {
			lo = m
		} else {
			hi = m
		}
	}
	return (lo + hi) / 2
}

// steps is how many chords keep within tol of the curve (second differences).
func (s Cubic) steps(tol float64) int {
	if s.IsStraight() {
		return 1
	}
	a := s[0].Sub(s[1].Mul(2)).Add(s[2]).Norm()
	b := s[1].Sub(s[2].Mul(2)).Add(s[3]).Norm()
	return int(math.Ceil(math.Sqrt(0.75*math.Max(a, b)/tol))) + 1
}

func dist(a, b geom.Point) float64 { return a.Sub(b).Norm() }

// Unit returns p scaled to length 1; the zero vector stays zero.
func Unit(p geom.Point) geom.Point {
	if l := p.Norm(); l > 0 {
		return p.Mul(1 / l)
	}
	return p
}

// Right returns p turned a quarter to the right of travel: heading right gives
// down.
func Right(p geom.Point) geom.Point { return geom.Point{X: -p.Y, Y: p.X} }

// Heading returns the unit vector at an angle in radians below the horizontal,
// pointing right.
func Heading(a float64) geom.Point { return geom.Point{X: math.Cos(a), Y: math.Sin(a)} }

// Mirror returns the point mirrored in the centre line.
func Mirror(p geom.Point) geom.Point { return geom.Point{X: -p.X, Y: p.Y} }
