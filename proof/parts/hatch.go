package parts

import (
	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// Hatching lies at 45°, rising to the right; steps are measured along x, mm.
const (
	memoryHatch     = 0.20
	memoryHatchStep = 0.90
	// MemoryBarWidth is the width of the bar of a rule that is from memory.
	MemoryBarWidth = 2.4
	// MemoryWords stand beside the bar.
	MemoryWords = "from memory: check your book"

	// OverHatch and OverHatchStep are for what hangs over a limit.
	OverHatch     = 0.18
	OverHatchStep = 0.85
)

// Hatch fills the area with lines of the weight, one every step mm along x.
func Hatch(p *page.Pen, area geom.Path, c page.Colour, weight, step float64) {
	box := area.Bounds()
	if box.Empty() || step <= 0 {
		return
	}
	p.Clip(area, geom.Identity(), func(q *page.Pen) {
		var lines geom.Path
		high := box.Height()
		for i := 0; ; i++ {
			x := box.Min.X - high + float64(i)*step
			if x >= box.Max.X {
				break
			}
			lines.MoveTo(geom.Point{X: x, Y: box.Max.Y})
			lines.LineTo(geom.Point{X: x + high, Y: box.Min.Y})
		}
		q.StrokePath(lines, geom.Identity(), c, page.Line{Weight: weight, Cap: page.SquareCap})
	})
}

// MemoryBar draws the hatched bar that marks a figure from memory.
func MemoryBar(p *page.Pen, x, y, height float64) {
	Hatch(p, page.RectPath(x, y, MemoryBarWidth, height), Ink, memoryHatch, memoryHatchStep)
	p.StrokeRect(x, y, MemoryBarWidth, height, Ink, solid(Hair))
}
