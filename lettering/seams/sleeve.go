package seams

import (
	"math"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// sleeve is the cloth of a piece that is centred on the fold of a sleeve: the
// half that is seen on the front and the half that is seen at the back, both
// across and along the sleeve. A piece is drawn on the middle of the half that is
// seen, but made to lie across the fold, and is measured there.
type sleeve struct {
	place garment.Placement
	out   float64      // 1 where across grows towards the fold, -1 on the wearer's right sleeve
	hand  string       // of the wearer
	fold  []geom.Point // X across towards the fold, Y level
	half  [2]*part     // front, back
}

func newSleeve(g *garment.Garment, place garment.Placement) *sleeve {
	s := &sleeve{place: place, out: 1, hand: "left"}
	if place.CentreX < 0 {
		s.out, s.hand = -1, "right"
	}
	for i, side := range []garment.Side{garment.Front, garment.Back} {
		for _, panel := range g.Panels(side) {
			// The back shows the mirror image of the wearer's other sleeve.
			if panel.Sleeve && (panel.Cloth[0].X < 0) == (s.out < 0) {
				s.half[i] = s.unrolled(panel)
			}
		}
	}
	return s
}

// unrolled maps a half of the sleeve and parts the fold from its lines: a piece
// lies across it.
func (s *sleeve) unrolled(panel garment.PanelInfo) *part {
	p := &part{cloth: geom.Region{s.across(panel.Cloth)}}
	for _, k := range panel.Lines {
		k.Points = s.across(k.Points)
		if k.Kind == garment.FoldLine {
			s.fold = k.Points
			continue
		}
		k.Hand = s.hand
		p.lines = append(p.lines, newLine(k))
	}
	return p
}

func (s *sleeve) across(points []geom.Point) []geom.Point {
	out := make([]geom.Point, len(points))
	for i, q := range points {
		out[i] = s.flat(q)
	}
	return out
}

func (s *sleeve) flat(q geom.Point) geom.Point {
	x, y := s.place.Across(q)
	return geom.Point{X: s.out * x, Y: y}
}

// lay holds a piece against both halves. The fold is taken where it lies furthest
// in over the height of the piece, as the room of a sleeve does.
func (s *sleeve) lay(piece *shape, reach float64) Lie {
	flat := piece.moved(s.flat)
	fold := s.foldOver(flat.box.Min.Y, flat.box.Max.Y)
	views := [2]*shape{
		flat.moved(func(q geom.Point) geom.Point { return geom.Point{X: fold + q.X, Y: q.Y} }),
		flat.moved(func(q geom.Point) geom.Point { return geom.Point{X: fold - q.X, Y: q.Y} }),
	}
	out := Lie{Inside: true}
	for i, half := range s.half {
		for k := range half.lines {
			c, _ := half.lines[k].clearance(views[i], reach)
			across := c.At.X - fold
			if i == 1 {
				across = -across
			}
			c.At = s.place.Point(s.out*across, c.At.Y)
			out.Inside = out.Inside && c.Short() <= Slack
			out.Clearances = append(out.Clearances, c)
		}
	}
	for i := range flat.rings {
		out.Inside = out.Inside && (touches(views[0].rings[i], s.half[0].cloth) || touches(views[1].rings[i], s.half[1].cloth))
	}
	return out
}

// foldOver returns how far in the fold lies between two levels.
func (s *sleeve) foldOver(top, bottom float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(s.fold); i++ {
		a, b := s.fold[i-1], s.fold[i]
		if a.Y > b.Y {
			a, b = b, a
		}
		if b.Y < top || a.Y > bottom {
			continue
		}
		for _, y := range [2]float64{math.Max(a.Y, top), math.Min(b.Y, bottom)} {
			t := 0.0
			if b.Y > a.Y {
				t = (y - a.Y) / (b.Y - a.Y)
			}
			least = math.Min(least, a.Lerp(b, t).X)
		}
	}
	if math.IsInf(least, 1) { // beyond the sleeve's ends
		return s.fold[len(s.fold)-1].X
	}
	return least
}
