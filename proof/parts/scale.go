package parts

import (
	"strconv"

	"yokeline/lettering/length"
	"yokeline/proof/page"
)

// The scale bar, mm.
const (
	// ScaleBarLength is about how long a scale bar is.
	ScaleBarLength = 64.0
	blockHigh      = 1.5
	blockLeast     = 9.0
	figureAbove    = 0.9
	figureBelow    = 4.0
	unitTick       = 1.7
	partTick       = 0.9
	wordsBeside    = 2.6
)

// ScaleBar draws a bar with its top left corner at x, y that reads both ways:
// above it lengths on the garment, called thing (shirt), below it true lengths
// on this paper, for a ruler. It is about want mm long; k is mm of paper for
// 1 mm of garment. The x of its right end is returned.
func ScaleBar(p *page.Pen, x, y, k, want float64, unit length.Unit, thing string) float64 {
	u := counts(unit)
	step := scaleStep(unit, u.mm*k)
	block := float64(step) * u.mm * k
	n := max(2, int(want/block))
	for i := range n {
		fill := Ink
		if i%2 == 1 {
			fill = page.White
		}
		p.FillRect(x+float64(i)*block, y, block, blockHigh, fill)
	}
	p.StrokeRect(x, y, float64(n)*block, blockHigh, Ink, solid(DimensionLine))
	for i := range n + 1 {
		p.Text(x+float64(i)*block, y-figureAbove, Label().Bold().In(Ink).To(page.Middle).Style, strconv.Itoa(i*step))
	}
	end := x + float64(n)*block
	paperScale(p, x, y+blockHigh, end-x, unit)
	p.Text(end+wordsBeside, y-figureAbove, Label().Style, u.name+" on the "+thing)
	p.Text(end+wordsBeside, y+blockHigh+figureBelow, Label().Style, u.name+" on this paper")
	return end
}

// scaleStep returns the units of one block: the first of 1, 2, 5, 10, 20 (50
// too in centimetres) that is long enough on paper.
func scaleStep(unit length.Unit, perUnit float64) int {
	steps := []int{1, 2, 5, 10, 20, 50}
	if unit == length.Inch {
		steps = steps[:5]
	}
	for _, s := range steps {
		if float64(s)*perUnit >= blockLeast {
			return s
		}
	}
	return steps[len(steps)-1]
}

// paperScale draws the lower reading: ticks each quarter inch or half
// centimetre, figures each inch or every second centimetre.
func paperScale(p *page.Pen, x, y, long float64, unit length.Unit) {
	u := counts(unit)
	parts, every := 2, 2
	if unit == length.Inch {
		parts, every = 4, 1
	}
	for i := range int(long/u.mm*float64(parts)+lengthNoise) + 1 {
		at, whole := x+float64(i)*u.mm/float64(parts), i%parts == 0
		tick := partTick
		if whole {
			tick = unitTick
		}
		p.Line(at, y, at, y+tick, Ink, solid(Hair))
		if whole && i/parts%every == 0 {
			p.Text(at, y+figureBelow, Label().In(Ink).To(page.Middle).Style, strconv.Itoa(i/parts))
		}
	}
}

// Ratio returns the scale k (mm of paper for 1 mm of garment) in words: 1 : 7
// or 1 : 2.5.
func Ratio(k float64) string {
	return "1 : " + string(page.AppendNumber(nil, 1/k, 1))
}
