package ink

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

// Offset is one outline: its distance from the letters, mm, and its corners.
type Offset struct {
	Distance float64
	Join     outline.Join
}

// Offsets adds up layers, from the inside outwards, into distances from the
// letters.
func Offsets(layers []outline.Layer) []Offset {
	out := make([]Offset, len(layers))
	sum := 0.0
	for i, l := range layers {
		sum += l.Width
		out[i] = Offset{sum, l.Join}
	}
	return out
}

// Warp brings a glyph into the plane: an affine map and then, when Bend is not
// 0, the vertical arch y += ±(√(R² - x²) - R) with R = |Bend|, up when Bend is
// over 0. The affine map must not mirror.
type Warp struct {
	Map  geom.Affine
	Bend float64
}

// Point maps a point.
func (w Warp) Point(p geom.Point) geom.Point {
	q := w.Map.Apply(p)
	q.Y += Rise(w.Bend, q.X)
	return q
}

// direction maps a direction at the point that is mapped to x.
func (w Warp) direction(x float64, d geom.Point) geom.Point {
	m := w.Map
	out := geom.Point{X: m.A*d.X + m.C*d.Y, Y: m.B*d.X + m.D*d.Y}
	out.Y += Slope(w.Bend, x) * out.X
	return out
}

// Rise returns what a vertical arch adds to y at x; bend is the radius, below
// 0 for an arch down, 0 for none. Beyond the circle it stays at the circle's
// side.
func Rise(bend, x float64) float64 {
	if bend == 0 {
		return 0
	}
	// -x²/(R + √…) is √(R² - x²) - R without its loss of digits.
	drop := x * x / (math.Abs(bend) + math.Sqrt(math.Max(0, bend*bend-x*x)))
	return math.Copysign(math.Min(drop, math.Abs(bend)), -bend)
}

// Slope returns the derivative of Rise.
func Slope(bend, x float64) float64 {
	if bend == 0 {
		return 0
	}
	const steepest = 1e6
	s := x / math.Sqrt(math.Max(bend*bend-x*x, bend*bend/(steepest*steepest)))
	return math.Copysign(1, -bend) * s
}

// join is a corner of the contours that the ink turns outwards at, with the
// directions of the pieces that meet there.
type join struct{ at, in, out geom.Point }

// corner returns the joins that show. A join inside other ink of the same
// glyph (contours of variable fonts overlap) is no corner of the letter.
func (g *Glyph) corner() []join {
	if g.left != 0 || g.Empty() {
		return g.joins
	}
	flat := g.Path.Flatten(g.tolerance)
	g.left = math.Copysign(1, flat.Area())
	const smooth = 0.01 // a turn of less than half a degree is not a corner
	first := 0
	for i, p := range g.pieces {
		next := i + 1
		if next == len(g.pieces) || g.pieces[next].contour != p.contour {
			next, first = first, i+1
		}
		j := join{p.end(), unit(p.arriving()), unit(g.pieces[next].leaving())}
		turn := g.left * j.in.Cross(j.out)
		if turn < smooth && !(j.in.Dot(j.out) < 0 && turn > -smooth) {
			continue
		}
		outward := g.normal(j.in).Add(g.normal(j.out))
		if !flat.Contains(j.at.Add(unit(outward).Mul(4 * g.tolerance))) {
			g.joins = append(g.joins, j)
		}
	}
	return g.joins
}

func unit(p geom.Point) geom.Point {
	if n := p.Norm(); n > 0 {
		return p.Mul(1 / n)
	}
	return p
}

// normal returns the unit vector out of the ink beside direction d.
func (g *Glyph) normal(d geom.Point) geom.Point {
	return unit(geom.Point{X: g.left * d.Y, Y: -g.left * d.X})
}

// Outer returns the largest q·u over the outlines of the glyph, u a unit
// vector along an axis: what Most is for the bare ink. Round outlines reach
// the same distance everywhere; the others depend on the corners. When the
// warp bends, u must be along x.
func (g *Glyph) Outer(w Warp, u geom.Point, offsets []Offset) float64 {
	m := w.Map
	best := g.Most(m.A*u.X+m.B*u.Y, m.C*u.X+m.D*u.Y) + m.E*u.X + m.F*u.Y
	bare := best
	for _, o := range offsets {
		if o.Join == outline.Round {
			best = math.Max(best, bare+o.Distance)
			continue
		}
		best = g.sides(w, u, o.Distance, best)
		if o.Join == outline.Mitre {
			best = g.tips(w, u, o.Distance, best)
		}
	}
	return best
}

// sides returns the larger of best and how far the outline's sides reach,
// corners left open. Pieces that lie too far back are passed over.
func (g *Glyph) sides(w Warp, u geom.Point, d, best float64) float64 {
	g.corner()
	m := w.Map
	du, dv, at := m.A*u.X+m.B*u.Y, m.C*u.X+m.D*u.Y, m.E*u.X+m.F*u.Y+d
	for i := range g.pieces {
		p := &g.pieces[i]
		if at+p.most(du, dv) <= best { // a bend leaves x alone, and u is along x then
			continue
		}
		for _, end := range [2][2]geom.Point{{p.start(), p.leaving()}, {p.end(), p.arriving()}} {
			q := w.Point(end[0])
			n := g.normal(w.direction(q.X, end[1]))
			best = math.Max(best, q.Add(n.Mul(d)).Dot(u))
		}
		for _, t := range p.stationary(w.Map, u) {
			if !(t > 0 && t < 1) {
				continue
			}
			q, e := w.Point(p.at(t)), 1e-4
			along := w.Point(p.at(t + e)).Sub(w.Point(p.at(t - e)))
			if v := q.Dot(u); g.normal(along).Dot(u) > 0 {
				best = math.Max(best, v+d)
			}
		}
	}
	return best
}

// most returns the largest x·dx + y·dy of the control points.
func (s *piece) most(dx, dy float64) float64 {
	best := s.p[0].X*dx + s.p[0].Y*dy
	for i := 1; i < s.n; i++ {
		best = max(best, s.p[i].X*dx+s.p[i].Y*dy)
	}
	return best
}

// stationary returns the parameters where the piece runs across u.
func (s *piece) stationary(m geom.Affine, u geom.Point) [2]float64 {
	var v [4]float64
	for i := range s.n {
		v[i] = m.Apply(s.p[i]).Dot(u)
	}
	none := math.NaN()
	switch s.n {
	case 3:
		return [2]float64{(v[0] - v[1]) / (v[0] - 2*v[1] + v[2]), none}
	case 4:
		return stationaryCube(v[0], v[1], v[2], v[3])
	}
	return [2]float64{none, none}
}

// tips returns the larger of best and how far the tips of the mitres reach.
func (g *Glyph) tips(w Warp, u geom.Point, d, best float64) float64 {
	const limit = outline.MitreLimit
	for _, j := range g.corner() {
		q := w.Point(j.at)
		if q.Dot(u)+limit*d <= best {
			continue
		}
		a, b := g.normal(w.direction(q.X, j.in)), g.normal(w.direction(q.X, j.out))
		if c := 1 + a.Dot(b); 2 <= limit*limit*c {
			best = math.Max(best, q.Add(a.Add(b).Mul(d/c)).Dot(u))
		}
	}
	return best
}
