// Package ink measures the filled shape of single glyphs: how far it reaches
// in a direction, with and without outlines, and how near two of them come to
// each other. Extents are exact: they come from the curves, never from
// polygons, so a fitted width holds to the last digit. Glyphs are in font
// units; a map brings them into the plane in mm.
package ink

import (
	"math"

	"yokeline/lettering/geom"
)

// Glyph is the ink of one glyph, prepared for measuring. Parts of it are made
// when first asked for, so it is NOT safe for concurrent use.
type Glyph struct {
	// Path is the outline as the font draws it, less contours that enclose
	// nothing.
	Path geom.Path
	// Box is the exact box of the ink, empty for a glyph without ink.
	Box geom.Rect

	corners   []geom.Point // convex hull of all ends of segments
	bows      []bow        // curves that may reach beyond that hull
	pieces    []piece
	joins     []join
	left      float64 // 1 when ink lies left of the contours' direction, -1 right; 0 not looked at yet
	tolerance float64
	points    []geom.Point // flattened contours, for distances
	chunks    []chunk
}

// bow is a curve that bulges; a quadratic has no d.
type bow struct {
	a, b, c, d geom.Point
	cubic      bool
}

// New prepares the outline of a glyph, in any unit. Distances are measured on
// contours flattened within tolerance, in the same unit.
func New(path geom.Path, tolerance float64) *Glyph {
	path = withoutStrays(path)
	g := &Glyph{Path: path, Box: path.Bounds(), tolerance: tolerance, pieces: split(path)}
	ends := make([]geom.Point, 0, len(g.pieces))
	for _, p := range g.pieces {
		ends = append(ends, p.start())
	}
	g.corners = geom.Hull(ends)
	for _, p := range g.pieces {
		if p.n == 3 && !inside(g.corners, p.p[1]) {
			g.bows = append(g.bows, bow{a: p.p[0], b: p.p[1], c: p.p[2]})
		}
		if p.n == 4 && !(inside(g.corners, p.p[1]) && inside(g.corners, p.p[2])) {
			g.bows = append(g.bows, bow{p.p[0], p.p[1], p.p[2], p.p[3], true})
		}
	}
	return g
}

// Empty reports a glyph without ink, such as a space.
func (g *Glyph) Empty() bool { return len(g.pieces) == 0 }

// inside reports whether q lies in the convex anticlockwise ring or on it.
func inside(hull geom.Ring, q geom.Point) bool {
	if len(hull) < 3 {
		return false
	}
	for i, p := range hull {
		if hull[(i+1)%len(hull)].Sub(p).Cross(q.Sub(p)) < 0 {
			return false
		}
	}
	return true
}

// Most returns the largest x·dx + y·dy over the ink: how far it reaches in
// the direction (dx, dy), times the length of that vector. It is exact.
func (g *Glyph) Most(dx, dy float64) float64 {
	best := math.Inf(-1)
	for _, p := range g.corners {
		if v := p.X*dx + p.Y*dy; v > best {
			best = v
		}
	}
	// A curve never leaves its control points' hull, so it matters only if a
	// control point beats what the corners reach; ends are corners.
	for i := range g.bows {
		w := &g.bows[i]
		b, c := w.b.X*dx+w.b.Y*dy, w.c.X*dx+w.c.Y*dy
		if b <= best && (!w.cubic || c <= best) {
			continue
		}
		a := w.a.X*dx + w.a.Y*dy
		if w.cubic {
			best = math.Max(best, crestCube(a, b, c, w.d.X*dx+w.d.Y*dy))
		} else {
			// b is over both ends here, so the crest lies inside.
			best = math.Max(best, b-(b-a)*(c-b)/(a-2*b+c))
		}
	}
	return best
}

// Across returns the first and the last x of the contours at a height, within
// the glyph's tolerance; false where they do not come to that height.
func (g *Glyph) Across(y float64) (first, last float64, ok bool) {
	first, last = math.Inf(1), math.Inf(-1)
	for _, c := range g.outline() {
		if y < c.box.Min.Y || y > c.box.Max.Y {
			continue
		}
		for i := c.from; i < c.to; i++ {
			a, b := g.points[i], g.points[i+1]
			if (a.Y <= y) == (b.Y <= y) {
				continue
			}
			x := a.X + (y-a.Y)/(b.Y-a.Y)*(b.X-a.X)
			first, last = min(first, x), max(last, x)
		}
	}
	return first, last, first <= last
}

// crestCube returns the largest value that a cubic with these control values
// takes between its ends.
func crestCube(a, b, c, d float64) float64 {
	best := math.Max(a, d)
	for _, t := range stationaryCube(a, b, c, d) {
		if math.IsNaN(t) {
			continue
		}
		u := 1 - t
		best = math.Max(best, u*u*u*a+3*u*u*t*b+3*u*t*t*c+t*t*t*d)
	}
	return best
}

// stationaryCube returns the parameters inside (0, 1) where the derivative is
// 0; NaN in place of those that are not.
func stationaryCube(a, b, c, d float64) [2]float64 {
	q2, q1, q0 := d-3*c+3*b-a, 2*(c-2*b+a), b-a
	out := [2]float64{math.NaN(), math.NaN()}
	disc := q1*q1 - 4*q2*q0
	if disc < 0 {
		return out
	}
	q := -0.5 * (q1 + math.Copysign(math.Sqrt(disc), q1))
	for i, t := range [2]float64{q / q2, q0 / q} {
		if t > 0 && t < 1 {
			out[i] = t
		}
	}
	return out
}
