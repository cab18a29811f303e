package garment

import (
	"errors"
	"math"

	"yokeline/lettering/garment/internal/curve"
)

// Proportions of shorts. Common practice, no source: drawn and looked at.
const (
	legSplay    = 4.0   // degrees by which the inner leg leans outward as shorts lie flat
	bandDip     = 5.0   // how far the front waistband sags between the sides, mm
	hipLevel    = 0.75  // the hip is measured here / front rise
	legBow      = 0.012 // outward bow of a leg's hem / its width
	legHem      = 20.0  // depth of the hem, mm
	tiltLeast   = -30.0 // degrees of tilt of a leg's hem between which the outseam is looked for
	tiltMost    = 45.0
	outseamMiss = 0.01 // mm
	gatherCount = 9    // ticks a side where the elastic draws the cloth in
)

// shorts is a constructed pair of shorts; points and lines are those of the
// viewer's right.
type shorts struct {
	Measures
	waist, crotch, inner, outer pt    // top corner; crotch; inner and outer end of the leg's hem
	frontTop, backTop           chain // upper edges of the waistband, centre to side
	bandSeam                    chain // centre to side
	bandSide, legSide           chain // side seam, parted at the band
	hem, leg, centre            chain // outer to inner; inner to crotch; band to crotch
}

func newShorts(m Measures) (*shorts, error) {
	s := &shorts{Measures: m, waist: pt{X: m.WaistHalf / 2, Y: -bandDip}, crotch: pt{Y: m.FrontRise}}
	s.inner = s.crotch.Add(pt{X: math.Sin(legSplay * degree), Y: math.Cos(legSplay * degree)}.Mul(m.Inseam))
	side, err := s.layLeg()
	if err != nil {
		return nil, err
	}
	s.bandSide, s.legSide = side.CutAtLength(m.Band)
	w, up := s.waist, m.BackRise-m.FrontRise
	s.frontTop = s.level(0, w)
	s.backTop = curve.Bezier(pt{Y: -up}, pt{X: 0.5 * w.X, Y: -up}, w.Sub(pt{X: 0.28 * w.X, Y: bandDip}), w)
	s.bandSeam = s.level(m.Band, s.legSide.Start())
	s.hem = curve.Bowed(s.outer, s.inner, legBow)
	s.leg = curve.Line(s.inner, s.crotch)
	s.centre = curve.Bezier(pt{Y: m.Band}, pt{Y: m.Band + 0.4*(s.crotch.Y-m.Band)}, s.crotch.Sub(pt{Y: 0.3 * s.crotch.Y}), s.crotch)
	return s, nil
}

// level is nearly level across the front and ends at a point of the side.
func (s *shorts) level(y float64, end pt) chain {
	return curve.Bezier(pt{Y: y}, pt{X: 0.45 * s.waist.X, Y: y}, end.Add(pt{X: -0.35 * s.waist.X, Y: 0.8 * bandDip}), end)
}

// layLeg turns the leg's hem about its inner end until the side seam has exactly
// the length of the outseam.
func (s *shorts) layLeg() (chain, error) {
	lo, hi := tiltLeast*degree, tiltMost*degree // a larger tilt lifts the outer corner and shortens the side
	for range 60 {
		if mid := (lo + hi) / 2; s.sideAt(mid).Length() > s.Outseam {
			lo = mid
		} else {
			hi = mid
		}
	}
	side := s.sideAt(lo)
	s.outer = side.End()
	if math.Abs(side.Length()-s.Outseam) > outseamMiss {
		return nil, errors.New("outseam does not go with rise, inseam and leg: check the four")
	}
	return side, nil
}

// sideAt is the side seam for a tilt of the hem. Through the hip it runs along
// its own chord, so the hip is full but not a corner.
func (s *shorts) sideAt(tilt float64) chain {
	hip := pt{X: s.HipHalf / 2, Y: hipLevel * s.FrontRise}
	outer := s.inner.Add(pt{X: math.Cos(tilt), Y: -math.Sin(tilt)}.Mul(s.LegHalf))
	down, along, d := curve.Unit(outer.Sub(hip)), curve.Unit(outer.Sub(s.waist)), hip.Sub(s.waist)
	l := outer.Sub(hip).Norm()
	return curve.Join(
		curve.Bezier(s.waist, s.waist.Add(pt{X: 0.20 * d.X, Y: 0.36 * d.Y}), hip.Sub(along.Mul(0.40*d.Norm())), hip),
		curve.Bezier(hip, hip.Add(along.Mul(0.33*l)), outer.Sub(down.Mul(0.33*l)), outer))
}

func (s *shorts) top(side Side) chain {
	if side == Back {
		return s.backTop
	}
	return s.frontTop
}

// view paints one side.
func (s *shorts) view(side Side) []Part {
	p := &painter{}
	top := s.top(side)
	if side == Front {
		p.fill(InsideCollar, "inside of back waistband", curve.Join(s.backTop, s.frontTop.Reverse()).Whole())
	}
	p.fill(Body, "legs", curve.Join(s.bandSeam, s.legSide, s.hem, s.leg).Whole())
	s.paintFolds(p)
	p.fill(Waistband, "waistband", curve.Join(top, s.bandSide, s.bandSeam.Reverse()).Whole())
	p.line(Seam, Body, Waistband, "waistband seam", s.bandSeam.Across())
	for i := 1.0; i <= 2; i++ { // rows of stitching that hold the elastic
		p.line(Stitch, Waistband, None, "elastic stitching", curve.Between(top, s.bandSeam, i/3).Across())
	}
	s.paintGathers(p)
	p.line(Seam, Body, None, "centre seam", s.centre)
	for _, d := range []float64{legHem, legHem - twinGap} {
		row := curve.Bowed(s.legSide.At(-d), s.inner.Lerp(s.crotch, d/s.Inseam), legBow)
		p.line(Stitch, Body, None, "hem stitching", both(row)...)
	}
	if side == Front {
		s.paintCord(p)
		p.line(Edge, Waistband, InsideCollar, "waistband edge", s.frontTop.Across())
	}
	p.parts = append(p.parts, Part{Role: Outline, Name: "outline", Path: s.silhouette(side).Path(true), Closed: true, Cloth: Body})
	return p.parts
}

// paintGathers draws short ticks below the waistband, of three lengths in turn.
func (s *shorts) paintGathers(p *painter) {
	l := s.bandSeam.Length()
	for i := range gatherCount {
		q := s.bandSeam.At(l * (0.09 + 0.1*float64(i)))
		d := []float64{15, 24, 10}[i%3]
		tick := curve.Bezier(q.Add(pt{Y: 2}), q.Add(pt{Y: d / 2}), q.Add(pt{X: q.X * 0.02, Y: d * 0.8}), q.Add(pt{X: q.X * 0.03, Y: d}))
		p.line(Detail, Body, None, "gather", both(tick)...)
	}
}

// paintCord draws the two ends of the drawcord.
func (s *shorts) paintCord(p *painter) {
	y := s.Band * 0.55
	p.line(Seam, Waistband, None, "drawcord", both(curve.Bezier(pt{X: 9, Y: y}, pt{X: 13, Y: y + 40}, pt{X: 20, Y: y + 60}, pt{X: 15, Y: y + 0.22*s.FrontRise + 20}))...)
}

func (s *shorts) paintFolds(p *painter) {
	w := s.HipHalf
	p.wisp(Body, "crotch fold", pt{X: 14, Y: 0.97 * s.FrontRise}, pt{X: 0.24 * w, Y: 0.70 * s.FrontRise}, 0.012*w, 0.018*w)
	o := s.outer
	p.wisp(Body, "leg fold", pt{X: o.X * 0.80, Y: o.Y - 0.10*s.Outseam}, pt{X: o.X * 0.76, Y: o.Y - 0.46*s.Outseam}, 0.010*w, 0.018*w)
}

// silhouette is the whole outline; the back waistband stands higher and shows on
// both sides.
func (s *shorts) silhouette(Side) chain {
	return curve.Join(s.backTop, s.bandSide, s.legSide, s.hem, s.leg).Whole()
}

func (s *shorts) collar(Side) float64 { return s.Band }
