package geom

import (
	"math"
	"slices"
)

// Ring is a closed polygon; its last point joins its first.
type Ring []Point

// Region is a set of rings. A settled region has outer rings anticlockwise,
// holes clockwise, and no crossings.
type Region []Ring

// Area returns the signed area: positive for anticlockwise rings, holes
// subtracted.
func (r Region) Area() float64 {
	sum := 0.0
	for _, ring := range r {
		sum += ring.Area()
	}
	return sum
}

// Area returns the signed area of the ring.
func (r Ring) Area() float64 {
	sum := 0.0
	for i, p := range r {
		sum += p.Cross(r[(i+1)%len(r)])
	}
	return sum / 2
}

// Perimeter returns the summed length of all edges.
func (r Region) Perimeter() float64 {
	sum := 0.0
	for _, ring := range r {
		for i, p := range ring {
			sum += ring[(i+1)%len(ring)].Sub(p).Norm()
		}
	}
	return sum
}

// Bounds returns the bounding box of all points.
func (r Region) Bounds() Rect {
	box := EmptyRect()
	for _, ring := range r {
		for _, p := range ring {
			box = box.Include(p)
		}
	}
	return box
}

// Transform returns the region with every point mapped.
func (r Region) Transform(m Affine) Region {
	out := make(Region, len(r))
	for i, ring := range r {
		out[i] = make(Ring, len(ring))
		for k, p := range ring {
			out[i][k] = m.Apply(p)
		}
	}
	return out
}

// Contains reports whether p lies inside by the non-zero winding rule; points
// on an edge may go either way.
func (r Region) Contains(p Point) bool {
	winding := 0
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			side := b.Sub(a).Cross(p.Sub(a))
			if a.Y <= p.Y && b.Y > p.Y && side > 0 {
				winding++
			} else if a.Y > p.Y && b.Y <= p.Y && side < 0 {
				winding--
			}
		}
	}
	return winding != 0
}

// Path returns the region as a path of straight lines.
func (r Region) Path() Path {
	var p Path
	for _, ring := range r {
		for i, q := range ring {
			if i == 0 {
				p.MoveTo(q)
			} else {
				p.LineTo(q)
			}
		}
		p.Close()
	}
	return p
}

// Hull returns the convex hull of the points, anticlockwise, without
// collinear points (Andrew's monotone chain). The input is not changed.
func Hull(points []Point) Ring {
	pts := slices.Clone(points)
	slices.SortFunc(pts, func(a, b Point) int {
		switch {
		case a.X < b.X || a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return 0
		}
		return 1
	})
	pts = slices.Compact(pts)
	if len(pts) < 3 {
		return pts
	}
	hull := make(Ring, 0, 2*len(pts))
	for range 2 {
		start := len(hull)
		for _, p := range pts {
			for len(hull)-start >= 2 && hull[len(hull)-1].Sub(hull[len(hull)-2]).Cross(p.Sub(hull[len(hull)-1])) <= 0 {
				hull = hull[:len(hull)-1]
			}
			hull = append(hull, p)
		}
		hull = hull[:len(hull)-1]
		slices.Reverse(pts)
	}
	return hull
}

// RadiusOf returns the radius of the circle on which an arc with the given
// chord rises by rise over it: c²/(8h) + h/2 (Machinery's Handbook, 31st ed.,
// p. 79). Both must be over 0.
func RadiusOf(chord, rise float64) float64 { return chord*chord/(8*rise) + rise/2 }

// Sagitta returns the rise of the minor arc with the given radius and chord;
// NaN when the chord is longer than the diameter. Written as c²/4 over the sum
// so that flat arcs lose no digits.
func Sagitta(radius, chord float64) float64 {
	q := chord * chord / 4
	return q / (radius + math.Sqrt(radius*radius-q))
}
