package ink

import (
	"math"

	"yokeline/lettering/geom"
)

// Draw appends the glyph's curves, mapped by w, to dst. Without a bend they
// are the face's own curves; with one, every line and curve is cut into cubics
// that stay within tolerance (mm) of the bent outline. Their x is exact.
func (g *Glyph) Draw(dst geom.Path, w Warp, tolerance float64) geom.Path {
	if w.Bend != 0 {
		return drawBent(dst, g.pieces, w, tolerance)
	}
	return drawFlat(dst, g.Path, w.Map)
}

// DrawPath is Draw for an outline that nothing is measured of: it spares the
// making of a Glyph.
func DrawPath(dst, path geom.Path, w Warp, tolerance float64) geom.Path {
	path = withoutStrays(path)
	if w.Bend != 0 {
		return drawBent(dst, split(path), w, tolerance)
	}
	return drawFlat(dst, path, w.Map)
}

func drawFlat(dst, path geom.Path, m geom.Affine) geom.Path {
	for _, s := range path {
		for i := range s.P {
			s.P[i] = m.Apply(s.P[i])
		}
		dst = append(dst, s)
	}
	return dst
}

// Placed returns the glyph drawn into the plane by w as a glyph of its own,
// with the corners that show on the face's glyph.
func (g *Glyph) Placed(w Warp, tolerance float64) *Glyph {
	out := New(g.Draw(nil, w, tolerance), tolerance)
	corners := g.corner()
	out.left, out.joins = g.left, make([]join, len(corners))
	for i, j := range corners {
		at := w.Point(j.at)
		out.joins[i] = join{at, unit(w.direction(at.X, j.in)), unit(w.direction(at.X, j.out))}
	}
	return out
}

func drawBent(dst geom.Path, pieces []piece, w Warp, tolerance float64) geom.Path {
	for i, p := range pieces {
		if i == 0 || pieces[i-1].contour != p.contour {
			if i > 0 {
				dst.Close()
			}
			dst.MoveTo(w.Point(p.start()))
		}
		b := bender{piece: p, bend: w.Bend, tolerance: tolerance}
		for k := range p.n {
			b.piece.p[k] = w.Map.Apply(p.p[k])
		}
		dst = b.draw(dst, 0, 1, 0)
	}
	if len(pieces) > 0 {
		dst.Close()
	}
	return dst
}

// bender draws one piece, already in the plane, with its y bent.
type bender struct {
	piece     piece
	bend      float64
	tolerance float64
}

// at returns the bent point at t and its derivative.
func (b *bender) at(t float64) (q, d geom.Point) {
	work := b.piece.p
	n := b.piece.n - 1
	for k := n; k > 1; k-- {
		for i := range k {
			work[i] = work[i].Lerp(work[i+1], t)
		}
	}
	d = work[1].Sub(work[0]).Mul(float64(n))
	q = work[0].Lerp(work[1], t)
	q.Y += Rise(b.bend, q.X)
	d.Y += Slope(b.bend, q.X) * d.X
	return q, d
}

// draw joins the ends of the stretch with a cubic that has their directions,
// and halves the stretch where that leaves the true curve.
func (b *bender) draw(dst geom.Path, from, to float64, depth int) geom.Path {
	const deepest = 20 // beside the circle's side the curve stands upright
	p, dp := b.at(from)
	q, dq := b.at(to)
	if p.X == q.X && b.piece.n == 2 || depth == deepest {
		dst.LineTo(q)
		return dst
	}
	third := (to - from) / 3
	c1, c2 := p.Add(dp.Mul(third)), q.Sub(dq.Mul(third))
	for _, t := range [3]float64{0.25, 0.5, 0.75} {
		u := 1 - t
		y := u*u*u*p.Y + 3*u*u*t*c1.Y + 3*u*t*t*c2.Y + t*t*t*q.Y
		if on, _ := b.at(from + t*(to-from)); !(math.Abs(on.Y-y) <= b.tolerance) {
			mid := (from + to) / 2
			return b.draw(b.draw(dst, from, mid, depth+1), mid, to, depth+1)
		}
	}
	dst.CubeTo(c1, c2, q)
	return dst
}
