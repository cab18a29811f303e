package geom

import "math"

// Op is what a path segment does.
type Op uint8

// The operations of a path. Each uses the first points of Segment.P: Move and
// Line one, Quad two, Cube three, Close none.
const (
	Move Op = iota
	Line
	Quad
	Cube
	Close
)

// Segment is one step of a path; its end is the last point its Op uses.
type Segment struct {
	Op Op
	P  [3]Point
}

// count returns how many points of P the segment uses.
func (s Segment) count() int { return [...]int{1, 1, 2, 3, 0}[s.Op] }

// Path is a sequence of contours of lines and Bézier curves.
type Path []Segment

// MoveTo starts a contour.
func (p *Path) MoveTo(a Point) { *p = append(*p, Segment{Move, [3]Point{a}}) }

// LineTo adds a straight line.
func (p *Path) LineTo(a Point) { *p = append(*p, Segment{Line, [3]Point{a}}) }

// QuadTo adds a quadratic curve with control point a and end b.
func (p *Path) QuadTo(a, b Point) { *p = append(*p, Segment{Quad, [3]Point{a, b}}) }

// CubeTo adds a cubic curve with control points a and b and end c.
func (p *Path) CubeTo(a, b, c Point) { *p = append(*p, Segment{Cube, [3]Point{a, b, c}}) }

// Close ends the contour with a straight line to its start.
func (p *Path) Close() { *p = append(*p, Segment{Op: Close}) }

// Transform returns the path with every point mapped.
func (p Path) Transform(m Affine) Path {
	out := make(Path, len(p))
	for i, s := range p {
		out[i].Op = s.Op
		for k := range s.count() {
			out[i].P[k] = m.Apply(s.P[k])
		}
	}
	return out
}

// Bounds returns the exact bounding box of the curves (not of their control
// points); empty for an empty path.
func (p Path) Bounds() Rect {
	r := EmptyRect()
	var at Point
	for _, s := range p {
		switch s.Op {
		case Move, Line:
			at = s.P[0]
			r = r.Include(at)
		case Quad:
			r = quadBounds(r, at, s.P[0], s.P[1])
			at = s.P[1]
		case Cube:
			r = cubeBounds(r, at, s.P[0], s.P[1], s.P[2])
			at = s.P[2]
		}
	}
	return r
}

func quadBounds(r Rect, a, b, c Point) Rect {
	r = r.Include(c)
	for _, d := range [2][2]float64{{a.X - b.X, a.X - 2*b.X + c.X}, {a.Y - b.Y, a.Y - 2*b.Y + c.Y}} {
		if d[1] == 0 {
			continue
		}
		if t := d[0] / d[1]; t > 0 && t < 1 {
			r = r.Include(quadAt(a, b, c, t))
		}
	}
	return r
}

func cubeBounds(r Rect, a, b, c, d Point) Rect {
	r = r.Include(d)
	for _, v := range [2][4]float64{{a.X, b.X, c.X, d.X}, {a.Y, b.Y, c.Y, d.Y}} {
		// derivative / 3 = q2 t² + q1 t + q0
		q0, q1, q2 := v[1]-v[0], 2*(v[2]-2*v[1]+v[0]), v[3]-3*v[2]+3*v[1]-v[0]
		for _, t := range quadraticRoots(q2, q1, q0) {
			if t > 0 && t < 1 {
				r = r.Include(cubeAt(a, b, c, d, t))
			}
		}
	}
	return r
}

// quadraticRoots returns the real roots of a·t² + b·t + c; the stable form
// avoids cancellation when a is small beside b.
func quadraticRoots(a, b, c float64) []float64 {
	if a == 0 {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	q := -0.5 * (b + math.Copysign(math.Sqrt(disc), b))
	if q == 0 {
		return []float64{0}
	}
	return []float64{q / a, c / q}
}

func quadAt(a, b, c Point, t float64) Point {
	u := 1 - t
	k0, k1, k2 := u*u, 2*u*t, t*t
	return Point{k0*a.X + k1*b.X + k2*c.X, k0*a.Y + k1*b.Y + k2*c.Y}
}

func cubeAt(a, b, c, d Point, t float64) Point {
	u := 1 - t
	k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{k0*a.X + k1*b.X + k2*c.X + k3*d.X, k0*a.Y + k1*b.Y + k2*c.Y + k3*d.Y}
}

// Flatten returns the contours as rings of straight edges that stay within
// tolerance (same unit as the path, over 0) of the curves. Every contour is
// taken as closed; rings of fewer than three points are left out.
func (p Path) Flatten(tolerance float64) Region {
	var out Region
	var ring Ring
	flush := func() {
		if n := len(ring); n > 1 && ring[0] == ring[n-1] {
			ring = ring[:n-1]
		}
		if len(ring) >= 3 {
			out = append(out, ring)
		}
		ring = nil
	}
	for _, s := range p {
		switch s.Op {
		case Move:
			flush()
			ring = append(ring, s.P[0])
		case Line:
			ring = appendNew(ring, s.P[0])
		case Quad:
			ring = flattenQuad(ring, s.P[0], s.P[1], tolerance)
		case Cube:
			ring = flattenCube(ring, s.P[0], s.P[1], s.P[2], tolerance)
		case Close:
			flush()
		}
	}
	flush()
	return out
}

func appendNew(ring Ring, p Point) Ring {
	if n := len(ring); n > 0 && ring[n-1] == p {
		return ring
	}
	return append(ring, p)
}

// flattenQuad cuts at equal parameters. The chord error of a quadratic over a
// parameter step 1/n is |a-2b+c| / (4n²), which fixes n.
func flattenQuad(ring Ring, b, c Point, tolerance float64) Ring {
	if len(ring) == 0 {
		return append(ring, c)
	}
	a := ring[len(ring)-1]
	bend := math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y)
	n := int(math.Ceil(math.Sqrt(bend / (4 * tolerance))))
	for i := 1; i < n; i++ {
		ring = appendNew(ring, quadAt(a, b, c, float64(i)/float64(n)))
	}
	return appendNew(ring, c)
}

// flattenCube cuts at equal parameters; the second derivative is at most six
// times the larger of the two control bends, and the chord error at most an
// eighth of it over n².
func flattenCube(ring Ring, b, c, d Point, tolerance float64) Ring {
	if len(ring) == 0 {
		return append(ring, d)
	}
	a := ring[len(ring)-1]
	bend := math.Max(math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y), math.Hypot(b.X-2*c.X+d.X, b.Y-2*c.Y+d.Y))
	n := int(math.Ceil(math.Sqrt(6 * bend / (8 * tolerance))))
	for i := 1; i < n; i++ {
		ring = appendNew(ring, cubeAt(a, b, c, d, float64(i)/float64(n)))
	}
	return appendNew(ring, d)
}
