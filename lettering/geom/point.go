// Package geom holds the plane geometry that lettering is made of: points,
// affine maps, paths of Bézier curves, and regions of flattened rings. Lengths
// are millimetres unless a caller works in font units; y grows upward.
package geom

import "math"

// Point is a point or a vector of the plane.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns p scaled by k.
func (p Point) Mul(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the z component of the vector product; positive when q lies
// anticlockwise of p.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Norm returns the length of the vector.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// Lerp returns the point at share t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point {
	return Point{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)}
}

// Rect is an axis-aligned rectangle. A Rect with Min.X > Max.X is empty.
type Rect struct{ Min, Max Point }

// EmptyRect contains nothing; the union with it is the other rectangle.
func EmptyRect() Rect {
	return Rect{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
}

// Empty reports whether the rectangle contains nothing.
func (r Rect) Empty() bool { return r.Min.X > r.Max.X || r.Min.Y > r.Max.Y }

// Width returns the extent along x, 0 when empty.
func (r Rect) Width() float64 { return math.Max(0, r.Max.X-r.Min.X) }

// Height returns the extent along y, 0 when empty.
func (r Rect) Height() float64 { return math.Max(0, r.Max.Y-r.Min.Y) }

// Center returns the middle of the rectangle.
func (r Rect) Center() Point { return r.Min.Lerp(r.Max, 0.5) }

// Include returns the smallest rectangle that also contains p.
func (r Rect) Include(p Point) Rect {
	return Rect{Point{math.Min(r.Min.X, p.X), math.Min(r.Min.Y, p.Y)}, Point{math.Max(r.Max.X, p.X), math.Max(r.Max.Y, p.Y)}}
}

// Union returns the smallest rectangle that contains both.
func (r Rect) Union(s Rect) Rect {
	if s.Empty() {
		return r
	}
	return r.Include(s.Min).Include(s.Max)
}

// Grow returns the rectangle with each side moved outward by d.
func (r Rect) Grow(d float64) Rect {
	if r.Empty() {
		return r
	}
	return Rect{Point{r.Min.X - d, r.Min.Y - d}, Point{r.Max.X + d, r.Max.Y + d}}
}

// Affine maps (x, y) to (A·x + C·y + E, B·x + D·y + F).
type Affine struct{ A, B, C, D, E, F float64 }

// Identity leaves every point where it is.
func Identity() Affine { return Affine{A: 1, D: 1} }

// Translate moves by (x, y).
func Translate(x, y float64) Affine { return Affine{1, 0, 0, 1, x, y} }

// Scale scales x and y about the origin.
func Scale(x, y float64) Affine { return Affine{A: x, D: y} }

// Rotate turns anticlockwise by the angle, in radians, about the origin.
func Rotate(angle float64) Affine {
	s, c := math.Sincos(angle)
	return Affine{c, s, -s, c, 0, 0}
}

// Then returns the map that applies m first and next after it.
func (m Affine) Then(next Affine) Affine {
	return Affine{
		next.A*m.A + next.C*m.B, next.B*m.A + next.D*m.B,
		next.A*m.C + next.C*m.D, next.B*m.C + next.D*m.D,
		next.A*m.E + next.C*m.F + next.E, next.B*m.E + next.D*m.F + next.F,
	}
}

// Apply maps a point.
func (m Affine) Apply(p Point) Point {
	return Point{m.A*p.X + m.C*p.Y + m.E, m.B*p.X + m.D*p.Y + m.F}
}
