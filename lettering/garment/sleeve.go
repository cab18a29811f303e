package garment

import (
	"math"

	"yokeline/lettering/garment/internal/curve"
)

// Ratios of the sleeve that all cuts share. Common practice, no source.
const (
	leastSleeve = 5.0  // the fold ends at least this far outside the body, mm
	foldClear   = 3.0  // degrees by which the fold drops below the shoulder line at least: cloth does not lift
	pitSlack    = 0.97 // a sleeve this close to its width needs no fold in the armpit
	underLeave  = 0.33 // handles of the underarm seam / its chord
	underPit    = 0.32
	underSag    = 0.02 // it hangs a little towards the armpit
	hemBow      = 0.02 // outward bow of a sleeve's hem / its width
)

// sleeve is one sleeve as it lies, on the viewer's right.
type sleeve struct {
	fold, hem, under chain // shoulder point (raglan: HPS) to hem; fold to underarm side; hem to armpit
	pit              chain // armpit back up the side seam to the underarm point; empty where they are one
	axis, down       pt    // unit vectors along the straight part of the fold and across it towards the body
}

// newSleeve lays the sleeve out from the armhole's chord. Flat, a sleeve is a
// quadrilateral of shoulder point, hem at the fold, hem at the seam, underarm
// point. The chord from shoulder to underarm belongs to the body, so the fold's
// angle decides how wide the sleeve can be at the armpit: chord × sin(angle
// between). Hence the cut names that angle, and the arm's drop follows, within
// bounds. Where the sleeve is then wider than its place, real cloth folds in the
// armpit and the sleeve leaves the side seam lower down: so does this one.
func (f *frame) newSleeve() sleeve {
	s := f.style.sleeve
	chord := f.arm.Sub(f.tip)
	drop := math.Atan2(chord.Y, chord.X)/degree - s.spread
	drop = math.Min(math.Max(drop, s.minDrop), s.maxDrop) * degree
	drop = math.Max(drop, f.slope+foldClear*degree)
	var out sleeve
	f.layFold(&out, drop)

	hemTop := out.fold.End()
	open := s.opening * chord.Norm()
	width := func(p pt) float64 { return p.Sub(hemTop).Dot(out.down) }
	pit, want := f.arm, math.Max(s.biceps*chord.Norm(), open)
	if width(f.arm) < pitSlack*want {
		if upper, _, ok := f.side.CutWhere(func(p pt) float64 { return width(p) - want }); ok {
			out.pit, pit = upper.Reverse(), upper.End()
		}
	}
	// The hem swings outward until the underarm seam is long enough.
	skew := math.Max(0, pit.Sub(hemTop).Dot(out.axis)+s.under*f.SleeveLength)
	if s.kind == toNeck {
		skew = math.Max(0, pit.Sub(hemTop).Dot(out.axis)+s.under*(f.SleeveLength-f.tip.Sub(f.hps).Norm()))
	}
	corner := hemTop.Add(out.axis.Mul(skew)).Add(out.down.Mul(open))
	out.hem = curve.Bowed(hemTop, corner, hemBow)
	out.under = underarm(corner, pit, out.axis, out.down)
	return out
}

// layFold draws the top fold. It leaves along the shoulder line and bends so
// that its mean lies at drop radians below horizontal.
func (f *frame) layFold(out *sleeve, drop float64) {
	s, length := f.style.sleeve, f.SleeveLength
	if s.kind == toNeck { // the virtual shoulder point lies on the fold
		out.fold = f.shoulder()
		length -= f.tip.Sub(f.hps).Norm()
	}
	end := f.slope + (drop-f.slope)/(1-s.bend/2)
	bend := curve.Arc(f.tip, f.slope, end, s.bend*length)
	straight := curve.Line(bend.End(), bend.End().Add(curve.Heading(end).Mul((1-s.bend)*length)))
	out.fold = curve.Join(out.fold, bend, straight)
	out.axis, out.down = curve.Heading(end), curve.Right(curve.Heading(end))
}

// underarm leaves the hem between the sleeve's direction and the armpit's, and
// turns down a little into the armpit.
func underarm(corner, pit, axis, down pt) chain {
	run := pit.Sub(corner)
	l := run.Norm()
	leave := curve.Unit(curve.Unit(run).Sub(axis))
	return curve.Bezier(corner, corner.Add(leave.Mul(underLeave*l)), pit.Sub(run.Mul(underPit)).Add(down.Mul(underSag*l)), pit)
}

// sleeveMiddle runs down the middle of the visible half of the sleeve, from the
// shoulder point's level to the hem, parallel to the straight part of the fold.
func (f *frame) sleeveMiddle() (from, to pt) {
	s := f.sleeve
	to = s.hem.Start().Lerp(s.hem.End(), 0.5)
	return to.Sub(s.axis.Mul(to.Sub(f.tip).Dot(s.axis))), to
}

// sleevePiece is the closed outline of the visible half of the sleeve.
func (f *frame) sleevePiece(side Side) chain {
	s, armhole := f.sleeve, f.armholeOf(side)
	p := curve.Join(s.fold, s.hem, s.under, s.pit, armhole.Reverse())
	if f.style.sleeve.kind == toNeck {
		_, tail := splitNeck(f.neck(side), armhole.Start())
		p = curve.Join(p, tail)
	}
	return p.Closed()
}

// cuffEnds are the ends of fold and underarm seam that lie within depth of the
// sleeve's hem.
func (f *frame) cuffEnds(depth float64) (foldEnd, underEnd chain) {
	_, foldEnd = f.sleeve.fold.CutAtLength(f.sleeve.fold.Length() - depth)
	underEnd, _ = f.sleeve.under.CutAtLength(depth)
	return foldEnd, underEnd
}

// cuffLine is parallel to the sleeve's hem at a depth, fold to underarm seam.
func (f *frame) cuffLine(depth float64) chain {
	foldEnd, underEnd := f.cuffEnds(depth)
	return curve.Bowed(foldEnd.Start(), underEnd.End(), hemBow)
}

func (f *frame) cuffPiece() chain {
	foldEnd, underEnd := f.cuffEnds(f.style.sleeve.cuff)
	return curve.Join(foldEnd, f.sleeve.hem, underEnd, f.cuffLine(f.style.sleeve.cuff).Reverse())
}
