package sizes

import (
	"math"
	"slices"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
	"yokeline/lettering/outline"
)

// clear is the highest top at which the number keeps the clearance to every name
// of the size. Names are taken as they come out by themselves: one that is made
// lower so that the team looks alike hangs from the same cap line and reaches
// less far down. A name in two lines moves its own number and is left out.
func (k *stack) clear() float64 {
	top := k.baseline() + k.reaches(k.above, k.i) + Clearance
	if k.upper.noRoom {
		return top
	}
	box := k.box(k.l, k.i)
	for _, text := range k.plan.texts(k.above, k.l.garment.Size()) {
		if strings.Contains(text, "\n") {
			continue
		}
		// What is wrong with a name is told when it is made.
		if name, err := k.piece(k.l, k.above, text, k.upper.height); err == nil {
			top = math.Max(top, box.clearTop(name))
		}
	}
	return top
}

// numberBox stands for all numbers of a size: as wide as the widest of them and
// as far above the line of the digits' tops and under that of their feet as any of
// them, outlines included.
type numberBox struct{ centre, half, over, under float64 } // mm

// include makes the box hold a number.
func (b *numberBox) include(n *numeral.Number, all []outline.Layer) {
	ends := n.Ink().Bounds().Grow(outline.Reach(all))
	if mitred(all) {
		if settled, err := n.Settled(); err == nil {
			ends = outline.ExtentOf(settled.Bounds(), settled, all)
		}
	}
	b.half = math.Max(b.half, n.InkWidth/2)
	b.over, b.under = math.Max(b.over, ends.Max.Y-n.Height), math.Max(b.under, -ends.Min.Y)
}

// mitred reports outlines whose corners reach farther than their widths.
func mitred(all []outline.Layer) bool {
	return slices.ContainsFunc(all, func(l outline.Layer) bool { return l.Join == outline.Mitre })
}

// box is the box of all numbers that the size wears at piece i.
func (w *worker) box(l *layout, i int) numberBox {
	s := &l.spots[i]
	made, _ := kept(w.boxes, key{piece: i, size: l.garment.Size(), height: s.height}, func() (numberBox, error) {
		all := layers(w.plan.order.Pieces[i])
		reach := outline.Reach(all)
		b := numberBox{over: reach, under: reach}
		for _, text := range w.plan.texts(i, l.garment.Size()) {
			// What is wrong with a number is told when it is made.
			if n, err := w.number(i, text, 0, s.height); err == nil {
				b.include(n, all)
			}
		}
		return b, nil
	})
	b := *made
	b.centre = s.placement.CentreX
	return b
}

// underTolerance is how closely a name's lower edge is followed, mm.
const underTolerance = 0.02

// clearTop returns the highest top of digits in the box that leaves the clearance to
// the finished shape of a name. Outlines are a constant distance from the
// letters, so the letters' own edge decides, with the reach added; mitred
// corners stand out farther and are drawn.
func (b numberBox) clearTop(name Piece) float64 {
	shape, reach := name.Ink().Flatten(underTolerance), name.Reach()
	if mitred(layers(name.Asked)) {
		if drawn, err := name.Outlines(); err == nil && len(drawn) > 0 {
			shape, reach = drawn[len(drawn)-1], 0
		}
	}
	need := reach + Clearance
	top := math.Inf(-1)
	for _, ring := range shape {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if name.At.Y-math.Min(p.Y, q.Y)+need <= top {
				continue // even right over the box it would not decide
			}
			pieces := math.Ceil(p.Sub(q).Norm()) // points at most 1 mm apart, for slanted edges beside the box
			for k := range int(pieces) {
				top = math.Max(top, b.underPoint(p.Lerp(q, float64(k)/pieces), name.At, need))
			}
		}
	}
	return top + b.over
}

// underPoint is the highest top edge of the box that is as far as need from one
// point of a name; no limit for a point beside it.
func (b numberBox) underPoint(p, at geom.Point, need float64) float64 {
	beside := math.Max(0, math.Abs(at.X+p.X-b.centre)-b.half)
	if beside >= need {
		return math.Inf(-1)
	}
	return at.Y - p.Y + math.Sqrt(need*need-beside*beside)
}
