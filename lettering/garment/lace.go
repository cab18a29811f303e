package garment

import (
	"math"

	"yokeline/lettering/garment/internal/curve"
)

// Proportions of a laced neck. The laces lie inside the neck seam, so they take
// nothing from a panel. Common practice, no source.
const (
	laceWide   = 6.0  // flat width of the lace, mm
	laceHole   = 2.6  // radius of an eyelet, mm
	laceInset  = 0.42 // eyelets stand this share of the collar away from its upper edge
	laceLowest = 0.16 // levels of the eyelets above the foot of the V / its depth
	laceStep   = 0.36
	laceLevels = 2
)

// paintLaces draws the laces of a V neck that is tied and not buttoned: a bar
// at the foot and crosses between the pairs of eyelets, few enough to be told
// apart on a small drawing.
func (f *frame) paintLaces(p *painter) {
	middle := f.eyelets()
	strap := func(a, b pt) {
		n := curve.Right(curve.Unit(b.Sub(a))).Mul(laceWide / 2)
		band := curve.Line(a.Sub(n), b.Sub(n), b.Add(n), a.Add(n), a.Sub(n))
		p.fill(Button, "lace", band)
	}
	strap(curve.Mirror(middle[0]), middle[0])
	for i := 1; i < len(middle); i++ {
		strap(middle[i-1], curve.Mirror(middle[i]))
		strap(curve.Mirror(middle[i-1]), middle[i])
	}
	var holes []chain
	for _, at := range middle {
		holes = append(holes, both(curve.Circle(at, laceHole))...)
	}
	p.line(Detail, Collar, None, "eyelets", holes...)
}

// eyelets are the holes on the viewer's right, from the foot of the V upwards.
func (f *frame) eyelets() []pt {
	foot := f.ribFront.Start().Y
	depth := foot - math.Max(f.ribFront.End().Y, 0)
	line := f.neckFront.Offset(-f.rib * (1 - laceInset)).FromAxis()
	var out []pt
	for i := range laceLevels {
		y := foot - (laceLowest+laceStep*float64(i))*depth
		head, _, _ := line.CutWhere(func(q pt) float64 { return q.Y - y })
		out = append(out, head.End())
	}
	return out
}
