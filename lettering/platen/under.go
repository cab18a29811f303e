package platen

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// Under is a line of the garment that lies under the platen: pad it or drape it.
type Under struct {
	Name string // armhole seam, placket
	Hand string // left or right of the wearer, both, or empty for a line that runs across
	// Hard says that it is thicker than a seam: a placket with its buttons, a cord,
	// the elastic of a waistband.
	Hard bool
	// Behind says that it belongs to the other side of the garment and presses
	// through when the garment lies flat in two layers.
	Behind bool
	// FromPiece is its distance from the piece, mm; 0 where it runs under it.
	FromPiece float64
}

// Words names the line as it is said: both armhole seams, front placket behind.
func (u Under) Words(pressed garment.Side) string {
	name := u.Name
	if u.Behind {
		name = (1 - pressed).String() + " " + name
	}
	switch {
	case u.Hand == "both":
		name = "both " + name + "s"
	case u.Hand != "":
		name = u.Hand + " " + name
	}
	if u.Behind {
		return name + " behind"
	}
	return name
}

// under returns what lies under a bed of the size that is centred on a piece and
// turned with it.
func under(g *garment.Garment, piece Piece, across, down float64) []Under {
	into := geom.Translate(-piece.Centre.X, -piece.Centre.Y).Then(geom.Rotate(-piece.Turn))
	bed := geom.Rect{Min: geom.Point{X: -across / 2, Y: -down / 2}, Max: geom.Point{X: across / 2, Y: down / 2}}
	box := geom.Rect{Min: geom.Point{X: -piece.Width / 2, Y: -piece.Height / 2}, Max: geom.Point{X: piece.Width / 2, Y: piece.Height / 2}}
	var out []Under
	look := func(side garment.Side, into geom.Affine, behind bool) {
		for _, panel := range g.Panels(side) {
			for _, line := range panel.Lines {
				if skipped(line, behind) {
					continue
				}
				if d := nearest(line.Points, into, bed, box); !math.IsInf(d, 1) {
					out = gather(out, Under{Name: line.Name, Hand: line.Hand, Hard: line.Kind == garment.HardLine, Behind: behind, FromPiece: d})
				}
			}
		}
	}
	look(piece.Side, into, false)
	look(1-piece.Side, geom.Scale(-1, 1).Then(into), true) // the other side, seen from this one
	slices.SortStableFunc(out, func(a, b Under) int {
		return cmp.Or(cmp.Compare(a.FromPiece, b.FromPiece), cmp.Compare(a.Name, b.Name))
	})
	return out
}

// skipped leaves out what is no thickness: folds and lines of reckoning. Of the
// layer behind only what presses through counts; its seams lie under those of
// the side that is pressed.
func skipped(line garment.KeepClear, behind bool) bool {
	if line.Kind == garment.FoldLine || line.Name == "centre front" {
		return true
	}
	return behind && line.Kind != garment.HardLine && line.Name != "neck seam"
}

// gather adds a line to those found. Panels that share a line have it once, and
// the two of a pair are told together.
func gather(found []Under, u Under) []Under {
	for i := range found {
		f := &found[i]
		if f.Name != u.Name || f.Behind != u.Behind {
			continue
		}
		if f.Hand != u.Hand && f.Hand != "" && u.Hand != "" {
			f.Hand = "both"
		}
		f.FromPiece, f.Hard = math.Min(f.FromPiece, u.FromPiece), f.Hard || u.Hard
		return found
	}
	return append(found, u)
}

// nearest returns the distance to the box of the part of a line that lies on the
// bed, +Inf where none does.
func nearest(points []geom.Point, into geom.Affine, bed, box geom.Rect) float64 {
	out := math.Inf(1)
	for i := range points {
		a := into.Apply(points[max(i-1, 0)])
		b := into.Apply(points[i])
		if a, b, ok := clip(a, b, bed); ok {
			out = math.Min(out, apart(a, b, box))
		}
	}
	return out
}

// clip cuts a stretch to a rectangle (Liang and Barsky 1984). A stretch along the
// rim does not count as on the bed.
func clip(a, b geom.Point, r geom.Rect) (from, to geom.Point, ok bool) {
	d := b.Sub(a)
	t0, t1 := 0.0, 1.0
	for _, side := range [...][2]float64{{-d.X, a.X - r.Min.X}, {d.X, r.Max.X - a.X}, {-d.Y, a.Y - r.Min.Y}, {d.Y, r.Max.Y - a.Y}} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q <= 0:
			return a, b, false
		case p < 0:
			t0 = math.Max(t0, q/p)
		case p > 0:
			t1 = math.Min(t1, q/p)
		}
	}
	if t0 > t1 {
		return a, b, false
	}
	return a.Add(d.Mul(t0)), a.Add(d.Mul(t1)), true
}

// apart returns the distance between a stretch and a rectangle. Where they are
// apart, an end of the stretch or a corner of the rectangle is nearest.
func apart(a, b geom.Point, r geom.Rect) float64 {
	if _, _, ok := clip(a, b, r); ok {
		return 0
	}
	out := math.Min(outside(a, r), outside(b, r))
	for _, c := range [...]geom.Point{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}} {
		out = math.Min(out, fromStretch(c, a, b))
	}
	return out
}

// outside returns how far a point is from a rectangle.
func outside(p geom.Point, r geom.Rect) float64 {
	return math.Hypot(math.Max(0, math.Max(r.Min.X-p.X, p.X-r.Max.X)), math.Max(0, math.Max(r.Min.Y-p.Y, p.Y-r.Max.Y)))
}

// fromStretch returns how far a point is from a stretch.
func fromStretch(p, a, b geom.Point) float64 {
	d := b.Sub(a)
	t := 0.0
	if n := d.Dot(d); n > 0 {
		t = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/n))
	}
	return p.Sub(a.Add(d.Mul(t))).Norm()
}
