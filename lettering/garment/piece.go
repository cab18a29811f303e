package garment

import (
	"yokeline/lettering/garment/internal/curve"
)

// The usual clearances that decoration keeps from the lines of a garment, mm; see
// Margins for others. Common practice, no source.
const (
	ClearSeam     = 12.0 // any sewn seam: a press needs a flat bed
	ClearHard     = 25.0 // placket edges, buttons, the elastic of a waistband
	ClearHem      = 25.0 // hems, so that the turned double layer stays free
	ClearUnderarm = 40.0 // the crossing of armhole and side seam, four layers thick
	ClearFold     = 6.0  // a fold is no seam, but art must not creep round it unseen
)

// keep is a line that decoration stays away from.
type keep struct {
	why    string
	line   chain
	kind   LineKind
	margin float64 // filled in by newClear
}

func mirrored(keeps []keep) []keep {
	out := make([]keep, len(keeps))
	for i, k := range keeps {
		out[i] = keep{why: k.why, line: k.line.Mirror(), kind: k.kind}
	}
	return out
}

// piece is a cut of cloth that decoration may lie on: a closed outline, all of it
// guarded by lines to keep clear of.
type piece struct {
	name    string // by the wearer's side
	sleeve  bool
	outline chain
	keeps   []keep
}

// wearer names a piece on the viewer's right or left by the wearer's side.
func wearer(s Side, viewersRight bool, what string) string {
	if (s == Front) == viewersRight {
		return "left " + what
	}
	return "right " + what
}

// pieces lists what decoration may lie on, on one side of a garment with a body.
func (f *frame) pieces(s Side) []piece {
	keeps := f.bodyKeeps(s)
	var out []piece
	switch {
	case f.style.closing == fullPlacket && s == Front:
		out = f.frontHalves(keeps)
	case f.style.yoke:
		out = f.yokePieces(s, keeps)
	default:
		if f.style.closing == shortPlacket && s == Front {
			w, top, foot := f.placketHalf(), f.NeckDropFront-f.rib, f.placketFoot()
			stand := curve.Line(pt{X: -w, Y: top}, pt{X: -w, Y: foot}, pt{X: w, Y: foot}, pt{X: w, Y: top})
			keeps = append(keeps, keep{why: "placket", line: stand, kind: HardLine})
		}
		out = []piece{{s.String(), false, f.outline(s).Whole().Closed(), keeps}}
	}
	return append(out, f.sleevePieces(s)...)
}

// bodyKeeps are the seams and edges round a body.
func (f *frame) bodyKeeps(s Side) []keep {
	out := []keep{
		{why: "neck seam", line: f.neck(s).Across(), kind: SeamLine},
		{why: "hem", line: f.hem.Reverse().Across(), kind: HemLine},
	}
	two := func(why string, c chain, kind LineKind) {
		out = append(out, keep{why: why, line: c, kind: kind}, keep{why: why, line: c.Mirror(), kind: kind})
	}
	if f.style.sleeve.kind != toNeck {
		two("shoulder seam", f.shoulder(), SeamLine)
	}
	armhole := f.armholeOf(s)
	if f.style.binding > 0 {
		two("armhole binding", f.bindingSeam(s), SeamLine)
	}
	two("armhole seam", armhole, SeamLine)
	if f.style.sidePanel > 0 {
		two("side panel seam", f.sideSeam(s), SeamLine)
	}
	two("side seam", f.side, SeamLine)
	two("underarm", chain{{f.arm, f.arm, f.arm, f.arm}}, UnderarmLine)
	return out
}

// frontHalves are the two fronts of a full placket.
func (f *frame) frontHalves(keeps []keep) []piece {
	w := f.placketHalf()
	half := f.outline(Front).Closed()
	edge := curve.Line(pt{X: w, Y: f.NeckDropFront - ClearHard}, pt{X: w, Y: f.BodyLength})
	right := append(keeps[:len(keeps):len(keeps)], keep{why: "placket", line: edge, kind: HardLine})
	left := append(keeps[:len(keeps):len(keeps)], keep{why: "placket", line: edge.Mirror(), kind: HardLine})
	return []piece{
		{wearer(Front, true, "front"), false, half, right},
		{wearer(Front, false, "front"), false, half.Mirror(), left},
	}
}

// yokePieces parts a yoked side at the seam. On the front the neck parts the yoke
// into two shoulders, which are never bridged below it; at the back it is one.
func (f *frame) yokePieces(s Side, keeps []keep) []piece {
	upper, lower := f.yokeEnds(s)
	seam := f.yokeSeam(s)
	keeps = append(keeps, keep{why: "yoke seam", line: seam.Across(), kind: SeamLine})
	out := []piece{{s.String() + " below the yoke", false, curve.Join(seam, lower, f.side, f.hem).Whole().Closed(), keeps}}
	half := curve.Join(f.neck(s), f.shoulder(), upper, seam.Reverse())
	if s == Back {
		return append(out, piece{"back yoke", false, half.Whole().Closed(), keeps})
	}
	middle := curve.Line(half.End(), half.Start())
	keeps = append(keeps, keep{why: "centre front", line: middle, kind: SeamLine})
	half = curve.Join(half, middle).Closed()
	return append(out,
		piece{wearer(s, true, "front yoke"), false, half, keeps},
		piece{wearer(s, false, "front yoke"), false, half.Mirror(), keeps})
}

// sleevePieces are the visible halves of the sleeves, up to the fold.
func (f *frame) sleevePieces(s Side) []piece {
	if f.style.sleeve.kind == sleeveless {
		return nil
	}
	v := f.sleeve
	keeps := []keep{
		{why: "armhole seam", line: f.armholeOf(s), kind: SeamLine},
		{why: "fold", line: v.fold, kind: FoldLine},
		{why: "sleeve hem", line: v.hem, kind: HemLine},
		{why: "underarm seam", line: v.under, kind: SeamLine},
	}
	if f.style.sleeve.ribbed {
		keeps = append(keeps, keep{why: "cuff seam", line: f.cuffLine(f.style.sleeve.cuff), kind: SeamLine})
	}
	if f.style.sleeve.kind == toNeck {
		keeps = append(keeps, keep{why: "neck seam", line: f.neck(s), kind: SeamLine})
	}
	if len(v.pit) > 0 {
		keeps = append(keeps, keep{why: "armpit fold", line: v.pit, kind: SeamLine})
	}
	cloth := f.sleevePiece(s)
	return []piece{
		{wearer(s, true, "sleeve"), true, cloth, keeps},
		{wearer(s, false, "sleeve"), true, cloth.Mirror(), mirrored(keeps)},
	}
}

// pieces are the two legs.
func (s *shorts) pieces(side Side) []piece {
	leg := curve.Join(s.bandSeam, s.legSide, s.hem, s.leg, s.centre.Reverse()).Closed()
	keeps := []keep{
		{why: "waistband", line: s.bandSeam, kind: HardLine},
		{why: "side seam", line: s.legSide, kind: SeamLine},
		{why: "hem", line: s.hem, kind: HemLine},
		{why: "inner leg seam", line: s.leg, kind: SeamLine},
		{why: "centre seam", line: s.centre, kind: SeamLine},
	}
	if side == Front { // the ends of the cord hang down the middle
		cord := curve.Line(pt{X: 15, Y: s.Band}, pt{X: 15, Y: s.Band*0.55 + 0.22*s.FrontRise + 20})
		keeps = append(keeps, keep{why: "drawcord", line: cord, kind: HardLine})
	}
	return []piece{
		{wearer(side, true, "leg"), false, leg, keeps},
		{wearer(side, false, "leg"), false, leg.Mirror(), mirrored(keeps)},
	}
}
