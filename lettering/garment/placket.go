package garment

import (
	"math"

	"yokeline/lettering/garment/internal/curve"
)

// The wearer's left front lies on top, so its edge shows to the viewer's left of
// the buttons: the one part of a view that is not symmetrical. Women's closings
// are not mirrored, for team orders mix the groups and take one closing.
// Common practice, no source.
const overlap = -1.0

// Proportions of a closing. Common practice, no source.
const (
	firstButton = 15.0 // its centre below the neck seam, mm
	lastButton  = 0.56 // of a short placket: its place / placket length; the box below it stays free
	lowButton   = 0.14 // of a full front: distance of the last one from the hem / body length
	boxHeight   = 1.5  // stitched box at the foot of a short placket / half its width
	holeOffset  = 1.3  // button holes from the button's centre, both ways, mm
	holeRadius  = 0.55
)

// placketHalf is half the width of the button stand.
func (f *frame) placketHalf() float64 { return (placketBase + placketGrow*f.ChestHalf) / 2 }

// placketFoot is where the button stand ends.
func (f *frame) placketFoot() float64 {
	if f.style.closing == shortPlacket {
		return f.NeckDropFront + f.PlacketLength
	}
	return f.BodyLength
}

// axisTo is the part of a half chain from the centre line out to x.
func axisTo(c chain, x float64) chain {
	head, _, _ := c.CutWhere(func(q pt) float64 { return q.X - x })
	return head
}

// paintPlacket paints the button stand, below the collar.
func (f *frame) paintPlacket(p *painter) {
	if f.style.closing == pullover {
		return
	}
	w, foot := f.placketHalf(), f.placketFoot()
	top := axisTo(f.neckFront, w)
	p.fill(Placket, "placket", curve.Join(top, curve.Line(top.End(), pt{X: w, Y: foot}, pt{X: -w, Y: foot}, curve.Mirror(top.End())), top.Mirror().Reverse()))
}

// paintClosing draws the placket's edges, stitching and buttons, over the collar.
func (f *frame) paintClosing(p *painter) {
	if f.style.closing == pullover {
		return
	}
	w, foot := f.placketHalf(), f.placketFoot()
	k := w - stitchEdge
	brim, seam := axisTo(f.ribFront, w).End().Y, axisTo(f.neckFront, w).End().Y
	inner := axisTo(f.neckFront, k).End().Y
	upright := func(x, from, to float64) chain { return curve.Line(pt{X: x, Y: from}, pt{X: x, Y: to}) }
	p.line(Seam, Collar, None, "overlap edge in the collar", upright(overlap*w, brim, seam))
	p.line(Edge, Placket, Body, "overlap edge", upright(overlap*w, seam, foot))
	if f.style.closing == fullPlacket {
		p.line(Stitch, Placket, None, "overlap stitching", upright(overlap*k, inner, foot))
		p.line(Stitch, Placket, None, "stand stitching", upright(-overlap*w, seam, foot))
	} else {
		box := foot - boxHeight*w
		p.line(Stitch, Placket, None, "overlap stitching", upright(overlap*k, inner, box))
		p.line(Seam, Placket, Body, "placket side", upright(-overlap*w, seam, foot))
		p.line(Stitch, Placket, None, "stand stitching", upright(-overlap*k, inner, box))
		p.line(Edge, Placket, Body, "placket foot", curve.Line(pt{X: -w, Y: foot}, pt{X: w, Y: foot}))
		low := foot - stitchEdge
		p.line(Stitch, Placket, None, "box stitching", curve.Line(pt{X: -k, Y: box}, pt{X: k, Y: box}, pt{X: k, Y: low}, pt{X: -k, Y: low}, pt{X: -k, Y: box}))
	}
	f.paintButtons(p)
}

// buttonLevels are the centres of the buttons, from the top.
func (f *frame) buttonLevels() []float64 {
	first := f.NeckDropFront + firstButton
	last, n := f.NeckDropFront+lastButton*f.PlacketLength, buttonCount
	if f.style.closing == fullPlacket {
		last = f.BodyLength * (1 - lowButton)
		n = max(buttonCount, int(math.Round((last-first)/f.style.pitch))+1)
	}
	ys := make([]float64, n)
	for i := range ys {
		ys[i] = first + (last-first)*float64(i)/float64(n-1)
	}
	return ys
}

func (f *frame) paintButtons(p *painter) {
	for _, y := range f.buttonLevels() {
		rim := curve.Circle(pt{Y: y}, buttonDiameter/2)
		p.fill(Button, "button", rim)
		p.line(Seam, Button, None, "button rim", rim)
		var holes []chain
		for _, d := range []pt{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: -1, Y: 1}, {X: 1, Y: 1}} {
			holes = append(holes, curve.Circle(pt{Y: y}.Add(d.Mul(holeOffset)), holeRadius))
		}
		p.line(Detail, Button, None, "button holes", holes...)
	}
}
