package garment

import (
	"yokeline/lettering/garment/internal/curve"
)

// extendReach is how far a line is run on straight to meet the one it ends at, mm.
const extendReach = 60

// view paints one side of a garment with a body.
func (f *frame) view(s Side) []Part {
	p := &painter{}
	f.paintInside(p, s)
	f.paintSleeves(p, s)
	f.paintBody(p, s)
	f.paintFolds(p)
	if s == Front {
		f.paintPlacket(p)
	}
	f.paintCollar(p, s)
	f.paintSeams(p, s)
	f.paintHem(p, s)
	if s == Front {
		f.paintClosing(p)
	}
	f.paintEdges(p, s)
	return p.parts
}

// collarEnd is the short edge of the collar at the shoulder.
func (f *frame) collarEnd() chain { return curve.Line(f.ribFront.End(), f.hps) }

// farLayer is the far body down to the underarm, as much of it as can show.
func (f *frame) farLayer(s Side) chain {
	return curve.Join(f.neck(s), f.shoulder(), f.armholeOf(s), curve.Line(f.arm, pt{Y: f.arm.Y})).Whole()
}

// paintInside paints what shows of the far layer: through the neck on the front,
// past the armholes of tanks, and round a racer back.
func (f *frame) paintInside(p *painter, s Side) {
	if s == Back {
		if f.RacerWidth > 0 {
			p.fill(Inside, "inside of front", f.farLayer(Front))
			p.fill(InsideCollar, "inside of front collar", curve.Join(f.ribFront, f.collarEnd(), f.neckFront.Reverse()).Whole())
		}
		return
	}
	p.fill(Inside, "inside of back", curve.Join(f.neckBack, f.neckFront.Reverse()).Whole())
	if f.style.sleeve.kind == sleeveless {
		p.fill(Inside, "inside of back at the armholes", f.farLayer(Back))
	}
	p.fill(InsideCollar, "inside of back collar", curve.Join(f.ribBack, f.collarEnd(), f.neckBack.Reverse()).Whole())
	p.line(Seam, Inside, InsideCollar, "back neck seam", f.neckBack.Across())
	p.line(Detail, Inside, None, "neck tape", f.neckBack.Offset(neckTape).EndOn(f.neckFront, extendReach).Across())
}

func (f *frame) paintSleeves(p *painter, s Side) {
	if f.style.sleeve.kind == sleeveless {
		return
	}
	p.fill(Sleeve, "sleeves", both(f.sleevePiece(s))...)
	if f.style.sleeve.ribbed {
		p.fill(Cuff, "cuffs", both(f.cuffPiece())...)
	}
}

func (f *frame) paintBody(p *painter, s Side) {
	p.fill(Body, "body", f.outline(s).Whole())
	if f.style.sidePanel > 0 {
		p.fill(SidePanel, "side panels", both(f.sidePiece(s))...)
	}
	if f.style.yoke {
		upper, _ := f.yokeEnds(s)
		p.fill(Yoke, "yoke", curve.Join(f.neck(s), f.shoulder(), upper, f.yokeSeam(s).Reverse()).Whole())
	}
	if f.style.binding > 0 {
		p.fill(Binding, "armhole bindings", both(curve.Join(f.armholeOf(s), f.bindingSeam(s).Reverse()))...)
	}
}

// yokeEnds parts an armhole at the yoke seam.
func (f *frame) yokeEnds(s Side) (upper, lower chain) {
	upper, lower, _ = f.armholeOf(s).CutWhere(func(q pt) float64 { return q.Y - f.YokeDepth })
	return upper, lower
}

// yokeSeam runs from the centre to the armhole.
func (f *frame) yokeSeam(s Side) chain {
	upper, _ := f.yokeEnds(s)
	return curve.Line(pt{Y: f.YokeDepth}, upper.End())
}

// Proportions of a side panel. Common practice, no source.
const (
	panelTop    = 0.9  // its width at the armhole / that at the hem
	panelLean   = 0.10 // the seam leaves the armhole leaning out by this share of the way to the side
	panelUpper  = 0.30 // handles of the seam / its height
	panelLower  = 0.35
	bindingOver = 40.0 // a binding's seam is run back this far to find the shoulder line, mm
)

// sideSeam is the inner seam of a side panel, armhole to hem.
func (f *frame) sideSeam(s Side) chain {
	top, end := f.sideTop(s).Start(), f.sideFoot().End()
	h := end.Y - top.Y
	return curve.Bezier(top, top.Add(pt{X: (f.arm.X - top.X) * panelLean, Y: panelUpper * h}), end.Sub(pt{Y: panelLower * h}), end)
}

// sideTop is the part of the armhole, or of its binding's seam, that a side panel
// meets.
func (f *frame) sideTop(s Side) chain {
	edge := f.armholeOf(s)
	if f.style.binding > 0 {
		edge = f.bindingSeam(s)
	}
	_, low := edge.CutAtLength(edge.Length() - panelTop*f.style.sidePanel*f.ChestHalf)
	return low
}

// sideFoot is the part of the hem below a side panel, from the side inwards.
func (f *frame) sideFoot() chain {
	x := f.side.End().X - f.style.sidePanel*f.ChestHalf
	foot, _, _ := f.hem.CutWhere(func(q pt) float64 { return q.X - x })
	return foot
}

func (f *frame) sidePiece(s Side) chain {
	top := f.sideTop(s)
	_, side, ok := f.side.CutWhere(func(q pt) float64 { return q.Y - top.End().Y })
	if !ok {
		side = f.side
	}
	return curve.Join(top, side, f.sideFoot(), f.sideSeam(s).Reverse())
}

// bindingSeam is the armhole moved inwards, run out to the shoulder line and the
// side seam.
func (f *frame) bindingSeam(s Side) chain {
	in := f.armholeOf(s).Offset(f.style.binding * f.NeckWidth)
	long := curve.Join(curve.Line(in.Start().Sub(in[0].Dir(0).Mul(bindingOver)), in.Start()), in)
	if _, tail, _, _, ok := curve.Cross(long, f.shoulder()); ok {
		in = tail
	}
	return in.EndOn(f.side, extendReach)
}

func (f *frame) paintCollar(p *painter, s Side) {
	rib := f.ribFront
	if s == Back {
		rib = f.ribBack
	}
	p.fill(Collar, "collar", curve.Join(rib, f.collarEnd(), f.neck(s).Reverse()).Whole())
}

// paintFolds adds a few translucent wisps where cloth really breaks: from the
// armpit over the chest and down the side, and from the armpit into the sleeve.
// The shares are of the chest and of the side's height; common practice, no source.
func (f *frame) paintFolds(p *painter) {
	w, h, a := f.ChestHalf, f.BodyLength-f.arm.Y, f.arm
	in := f.style.sidePanel * w // stay on one cloth
	p.wisp(Body, "armpit fold", a.Add(pt{X: -0.020*w - in, Y: 0.020 * h}), a.Add(pt{X: -0.17*w - in, Y: 0.27 * h}), 0.014*w, 0.010*w)
	p.wisp(Body, "armpit fold", a.Add(pt{X: -0.016*w - in, Y: 0.060 * h}), a.Add(pt{X: -0.070*w - in, Y: 0.38 * h}), 0.010*w, 0.009*w)
	if f.style.sleeve.kind == sleeveless {
		return
	}
	fold, chord := f.sleeve.fold, f.arm.Sub(f.tip).Norm()
	on := fold.At(fold.Length() - f.SleeveLength + 0.48*chord)
	if f.style.sleeve.kind == toNeck {
		on = fold.At(f.tip.Sub(f.hps).Norm() + 0.40*chord)
	}
	pit := f.arm // below it the sleeve lies behind the body
	p.wisp(Sleeve, "sleeve fold", pit.Lerp(on, 0.06), pit.Lerp(on, 0.62), -0.012*w, 0.009*w)
}

func (f *frame) paintSeams(p *painter, s Side) {
	neck, beside := f.neck(s), Body
	if f.style.yoke {
		beside = Yoke
	}
	p.line(Seam, beside, Collar, "neck seam", neck.Across())
	if s == Front && f.style.neck.tip > 0 && f.style.closing == pullover {
		p.line(Seam, Collar, None, "collar mitre", curve.Line(f.ribFront.Start(), f.neckFront.Start()))
	}
	stitching := neck.Offset(stitchEdge).FromAxis().EndOn(f.shoulder(), extendReach)
	if s == Front && f.style.closing != pullover { // it stops at the placket
		_, stitching, _ = stitching.CutWhere(func(q pt) float64 { return q.X - f.placketHalf() })
		p.line(Stitch, beside, None, "neck stitching", both(stitching)...)
	} else {
		p.line(Stitch, beside, None, "neck stitching", stitching.Across())
	}
	f.paintJoints(p, s, beside)
}

// paintJoints draws the seams between pieces of cloth other than the neck's.
func (f *frame) paintJoints(p *painter, s Side, beside Role) {
	switch f.style.sleeve.kind {
	case sleeveless:
		p.line(Seam, Body, Binding, "binding seams", both(f.bindingSeam(s))...)
	default:
		p.line(Seam, beside, Sleeve, "armhole seams", both(f.armholeOf(s))...)
		f.paintCuffs(p)
	}
	if f.style.sidePanel > 0 {
		p.line(Seam, Body, SidePanel, "side panel seams", both(f.sideSeam(s))...)
	}
	if f.style.yoke {
		seam := f.yokeSeam(s)
		p.line(Seam, Yoke, Body, "yoke seam", seam.Across())
		y, x := f.YokeDepth+stitchEdge, seam.End().X-1 // the armhole leans in by about a millimetre in four
		p.line(Stitch, Body, None, "yoke stitching", curve.Line(pt{Y: y}, pt{X: x, Y: y}).Across())
	}
}

func (f *frame) paintCuffs(p *painter) {
	cuff := f.style.sleeve.cuff
	if f.style.sleeve.ribbed {
		p.line(Seam, Sleeve, Cuff, "cuff seams", both(f.cuffLine(cuff))...)
		p.line(Stitch, Sleeve, None, "cuff stitching", both(f.cuffLine(cuff+stitchEdge))...)
		return
	}
	p.line(Stitch, Sleeve, None, "sleeve hem stitching", both(f.cuffLine(cuff))...)
	p.line(Stitch, Sleeve, None, "sleeve hem stitching", both(f.cuffLine(cuff-twinGap))...)
}

// paintHem draws the rows of stitching over the hem; a row too near the edge is
// left out.
func (f *frame) paintHem(p *painter, s Side) {
	for _, depth := range []float64{f.style.body.depth, f.style.body.depth - twinGap} {
		if depth <= twinGap {
			continue
		}
		l := f.hem.Offset(depth).Reverse().EndOn(f.side, extendReach)
		if f.style.sidePanel > 0 {
			if in, out, _, _, ok := curve.Cross(l, f.sideSeam(s)); ok {
				p.line(Stitch, SidePanel, None, "hem stitching", both(out)...)
				l = in
			}
		}
		p.line(Stitch, Body, None, "hem stitching", l.Across())
	}
}

// paintEdges draws the visible edges of layers and, last, the outline.
func (f *frame) paintEdges(p *painter, s Side) {
	if len(f.sleeve.pit) > 0 {
		p.line(Seam, Body, Sleeve, "armpit folds", both(f.sleeve.pit)...)
	}
	if f.style.sleeve.kind == sleeveless {
		beside := None // the back of a plain tank lies in front of everything
		if s == Front || f.RacerWidth > 0 {
			beside = Inside
		}
		p.line(Edge, Binding, beside, "armhole edges", both(f.armholeOf(s))...)
	}
	if s == Front {
		p.line(Edge, Collar, Inside, "collar edge", f.ribFront.Across())
		if f.style.laced {
			f.paintLaces(p)
		}
	} else if f.RacerWidth > 0 {
		p.line(Edge, Collar, Inside, "collar edge", f.ribBack.Across())
	}
	p.parts = append(p.parts, Part{Role: Outline, Name: "outline", Path: f.silhouette(s).Path(true), Closed: true, Cloth: Body})
}

// silhouette is the whole outline. The back collar stands higher than the front
// one, so it is the upper edge on both sides; of the two armholes of a tank the
// outer one shows on both.
func (f *frame) silhouette(Side) chain {
	if f.style.sleeve.kind == sleeveless {
		armhole := f.armBack
		if f.RacerWidth > 0 {
			armhole = f.armFront
		}
		return curve.Join(f.ribBack, f.collarEnd(), f.shoulder(), armhole, f.side, f.hem).Whole()
	}
	s, side := f.sleeve, f.side
	top := f.shoulder()
	if f.style.sleeve.kind == toNeck {
		top = nil
	}
	if len(s.pit) > 0 {
		_, side, _ = f.side.CutWhere(func(q pt) float64 { return q.Y - s.pit.Start().Y })
	}
	return curve.Join(f.ribBack, f.collarEnd(), top, s.fold, s.hem, s.under, side, f.hem).Whole()
}

func (f *frame) collar(s Side) float64 {
	if s == Back {
		return f.NeckDropBack
	}
	return f.NeckDropFront
}
