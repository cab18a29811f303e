package garment

import (
	"math"

	"yokeline/lettering/garment/internal/curve"
)

// Ratios of the sleeve that all cuts share. Common practice, no source.
const (
	leastSleeve = 5.0 // the fold ends at least this far outside the body, mm
	foldClear   = 3.0 // degrees by which the fold drops below the shoulder line at least: cloth does not lift
	dropGive    = 6.0 // degrees by which the arm may lie flatter than the cut asks, where the hem would swing out
	dropStep    = 0.5
	openMost    = 0.80 // flat width at the hem / length below the shoulder, at most: a sleeve is longer than wide
	pitSlack    = 0.95 // a sleeve this close to its width needs no fold in the armpit
	underLeave  = 0.33 // handles of the underarm seam / its chord
	underPit    = 0.32
	underSag    = 0.02 // it hangs a little towards the armpit
	hemBow      = 0.02 // outward bow of a sleeve's hem / its width
	shortCentre = 0.31 // where a short sleeve's piece is drawn / width of the hem, from the fold
	longCentre  = 0.57 // the same on a sleeve that tapers to the wrist
	bendEnds    = 0.30 // share of the fold's bend that turns gently, at each end,
	bendTurn    = 0.22 // and its share of the whole turn
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
	drop = math.Min(math.Max(drop, s.minDrop), s.maxDrop)
	least := math.Max(s.minDrop-dropGive, f.slope/degree+foldClear)
	for {
		drop = math.Max(drop, least)
		out, swing := f.laySleeve(drop*degree, chord.Norm())
		if swing == 0 || drop == least {
			return out
		}
		drop -= dropStep
	}
}

// laySleeve lays the sleeve out for one drop. swing is how far its hem turns
// outward so that the underarm seam is long enough: a short sleeve on a wide
// body lies flatter rather than that.
func (f *frame) laySleeve(drop, chord float64) (out sleeve, swing float64) {
	s := f.style.sleeve
	f.layFold(&out, drop)
	hemTop := out.fold.End()
	length := f.SleeveLength
	if s.kind == toNeck {
		length -= f.tip.Sub(f.hps).Norm()
	}
	open := math.Min(s.opening*chord, openMost*length)
	width := func(p pt) float64 { return p.Sub(hemTop).Dot(out.down) }
	pit, want := f.arm, math.Max(s.biceps*chord, open)
	if width(f.arm) < pitSlack*want {
		if upper, _, ok := f.side.CutWhere(func(p pt) float64 { return width(p) - want }); ok {
			out.pit, pit = upper.Reverse(), upper.End()
		}
	}
	swing = math.Max(0, pit.Sub(hemTop).Dot(out.axis)+s.under*length)
	corner := hemTop.Add(out.axis.Mul(swing)).Add(out.down.Mul(open))
	out.hem = curve.Bowed(hemTop, corner, hemBow)
	out.under = underarm(corner, pit, out.axis, out.down)
	return out, swing
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
	bend := softBend(f.tip, f.slope, end, s.bend*length)
	straight := curve.Line(bend.End(), bend.End().Add(curve.Heading(end).Mul((1-s.bend)*length)))
	out.fold = curve.Join(out.fold, bend, straight)
	out.axis, out.down = curve.Heading(end), curve.Right(curve.Heading(end))
}

// softBend turns from one heading to another over a length, gently at first and
// at last: a shoulder under cloth is no circle.
func softBend(from pt, a0, a1, length float64) chain {
	turn := (a1 - a0) * bendTurn
	in := curve.Arc(from, a0, a0+turn, bendEnds*length)
	mid := curve.Arc(in.End(), a0+turn, a1-turn, (1-2*bendEnds)*length)
	return curve.Join(in, mid, curve.Arc(mid.End(), a1-turn, a1, bendEnds*length))
}

// underarm leaves the hem between the sleeve's direction and the armpit's, and
// turns down a little into the armpit.
func underarm(corner, pit, axis, down pt) chain {
	run := pit.Sub(corner)
	l := run.Norm()
	leave := curve.Unit(curve.Unit(run).Sub(axis))
	return curve.Bezier(corner, corner.Add(leave.Mul(underLeave*l)), pit.Sub(run.Mul(underPit)).Add(down.Mul(underSag*l)), pit)
}

// sleeveMiddle runs down the middle of what is free of the visible half of the
// sleeve, from the shoulder point's level to the hem, parallel to the straight
// part of the fold. The armhole takes more of the half than the fold does.
func (f *frame) sleeveMiddle() (from, to pt) {
	s, centre := f.sleeve, shortCentre
	if f.style.sleeve.biceps > 0 {
		centre = longCentre
	}
	to = s.hem.Start().Lerp(s.hem.End(), centre)
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
