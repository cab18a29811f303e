package parts

import (
	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// Dimension lines, mm.
const (
	tickReach    = 0.72 // half of a tick, each way
	extensionGap = 1.0  // between the ink and its extension line
	extensionEnd = 1.6  // past the dimension line
	eraseWeight  = 0.25
	shirtShare   = 0.8 // of white-or-ink in an extension line on a shirt
	valueAbove   = 0.9
	besideLine   = 4.0 // a line shorter than its text and this has it beside it
	// ExtensionsApart is how near two extension lines may lie; of two nearer
	// ones only the longer is drawn.
	ExtensionsApart = 0.8
	// TicksApart is how near two ticks may lie; of two nearer ones that of the
	// lower lane is left out.
	TicksApart = 1.6
	// FirstLane and LaneStep place the lanes of widths above a shirt.
	FirstLane = 4.2
	LaneStep  = 6.6
)

// Ground is the garment that lines and words lie on: its outline in place on
// paper, the colour of its panel, and what stands on it.
type Ground struct {
	Shape geom.Path
	Panel page.Colour
	On    OnShirt
}

// Extension draws an extension line from 1 mm off the ink, straight to the
// dimension line and past it. On the garment it turns white-or-ink. Draw it
// before the lettering, which lies over it. ground may be nil.
func Extension(p *page.Pen, ink, line geom.Point, ground *Ground) {
	long := line.Sub(ink).Norm()
	if long <= extensionGap {
		return
	}
	along := line.Sub(ink).Mul(1 / long)
	a, b := ink.Add(along.Mul(extensionGap)), line.Add(along.Mul(extensionEnd))
	p.Line(a.X, a.Y, b.X, b.Y, Ink, solid(Hair))
	if ground == nil || len(ground.Shape) == 0 {
		return
	}
	p.Clip(ground.Shape, geom.Identity(), func(q *page.Pen) {
		q.Line(a.X, a.Y, b.X, b.Y, ground.Panel, solid(eraseWeight))
		if ground.On.Needs {
			q.Line(a.X, a.Y, b.X, b.Y, ground.On.Halo, solid(Hair+2*HaloWidth))
		}
		q.Line(a.X, a.Y, b.X, b.Y, ground.On.Line.Mix(ground.Panel, shirtShare), solid(Hair))
	})
}

// DimensionTick draws the tick at the end of a dimension line: 45°, rising to
// the right.
func DimensionTick(p *page.Pen, x, y float64, c page.Colour) {
	p.Line(x-tickReach, y+tickReach, x+tickReach, y-tickReach, c, solid(Outline))
}

// Width is a level dimension: a line from X1 to X2 with a tick at each end and
// its value over it, the word before the value.
type Width struct {
	X1, X2, Y   float64
	Value, Word string // Word may be empty
	On          *OnShirt
	// NoTick1 and NoTick2 leave out the tick at an end where another is too near.
	NoTick1, NoTick2 bool
}

// WidthLine draws a level dimension. A line that is shorter than its text has
// the text at its right. The box that the text takes is returned.
func WidthLine(p *page.Pen, w Width) geom.Rect {
	line, word := Ink, Slate
	if w.On != nil {
		line, word = w.On.Line, w.On.Line
	}
	haloLine(p, w.On, w.X1, w.Y, w.X2, w.Y)
	p.Line(w.X1, w.Y, w.X2, w.Y, line, solid(DimensionLine))
	if !w.NoTick1 {
		DimensionTick(p, w.X1, w.Y, line)
	}
	if !w.NoTick2 {
		DimensionTick(p, w.X2, w.Y, line)
	}
	spans := []page.Span{Value().In(line).Span(w.Value)}
	if w.Word != "" {
		spans = []page.Span{Label().In(word).Span(w.Word + "  "), spans[0]}
	}
	wide := spansWidth(p, spans)
	x, y := (w.X1+w.X2-wide)/2, w.Y-valueAbove
	if w.X2-w.X1 < wide+besideLine {
		x, y = w.X2+2, w.Y+valueDrop
	}
	haloText(p, w.On, x, y, spans)
	p.Spans(x, y, page.Start, spans...)
	return textBox(x, y, wide)
}

// valueDrop puts the middle of a value's figures on a line.
const valueDrop = 1.0

// textBox is the room of a line of values: 8 pt figures and a little air.
func textBox(x, y, wide float64) geom.Rect {
	return geom.Rect{Min: geom.Point{X: x, Y: y - 2.3}, Max: geom.Point{X: x + wide, Y: y + 0.7}}
}

func spansWidth(p *page.Pen, spans []page.Span) float64 {
	wide := 0.0
	for _, s := range spans {
		wide += p.Width(s.Style, s.Text)
	}
	return wide
}

func haloLine(p *page.Pen, on *OnShirt, x1, y1, x2, y2 float64) {
	if on != nil && on.Needs {
		p.Line(x1, y1, x2, y2, on.Halo, page.Line{Weight: DimensionLine + 2*HaloWidth, Cap: page.RoundCap})
	}
}

func haloText(p *page.Pen, on *OnShirt, x, y float64, spans []page.Span) {
	if on == nil || !on.Needs {
		return
	}
	for _, s := range spans {
		path := p.Outlines(x, y, s.Style, s.Text)
		p.StrokePath(path, geom.Identity(), on.Halo, page.Line{Weight: 2 * HaloWidth, Join: page.RoundJoin, Cap: page.RoundCap})
		x += p.Width(s.Style, s.Text)
	}
}
