package parts

import (
	"slices"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// The steps of a chain, mm.
const (
	stepStacked = 6.2 // room for the word below the value
	stepLevel   = 3.4 // room for both on one line
	stepText    = 2.0 // from the chain to its text
	ledFirst    = 15.0
	ledDown     = 6.0 // how far down a led-out value may go, for each step it passes
)

// Step is one length of a chain; an empty Value leaves it without text.
type Step struct{ Value, Word string }

// Chain is a run of heights along one upright line.
type Chain struct {
	X      float64
	Levels []float64 // from the top down; one more than Steps
	Steps  []Step
	Left   bool // words on the left of the line
}

// ChainLine draws a chain of heights. A step of 6.2 mm or more carries its
// word below the value, one of 3.4 or more on the same line; the text of a
// shorter one is led out by a thin line to a free place lower down.
func ChainLine(p *page.Pen, c Chain) {
	if len(c.Levels) < 2 {
		return
	}
	p.Line(c.X, c.Levels[0], c.X, c.Levels[len(c.Levels)-1], Ink, solid(DimensionLine))
	for i, y := range c.Levels {
		if i == 0 || i == len(c.Levels)-1 || y-c.Levels[i-1] >= TicksApart {
			DimensionTick(p, c.X, y, Ink)
		}
	}
	var taken []geom.Rect
	var short []int
	for i, s := range c.Steps {
		if i+1 >= len(c.Levels) || s.Value == "" {
			continue
		}
		if c.Levels[i+1]-c.Levels[i] < stepLevel {
			short = append(short, i)
			continue
		}
		taken = append(taken, c.place(p, i))
	}
	for _, i := range short {
		taken = append(taken, c.leadOut(p, i, taken))
	}
}

func (c Chain) middle(i int) float64 { return (c.Levels[i] + c.Levels[i+1]) / 2 }

// place sets the text of a step that has room beside it.
func (c Chain) place(p *page.Pen, i int) geom.Rect {
	s, y := c.Steps[i], c.middle(i)
	if c.Levels[i+1]-c.Levels[i] < stepStacked {
		return c.level(p, s, c.side(stepText), y+valueDrop)
	}
	align := page.Start
	if c.Left {
		align = page.End
	}
	x := c.side(stepText)
	wide := p.Text(x, y-0.15, Value().To(align).Style, s.Value)
	wide = max(wide, p.Text(x, y+2.6, Label().To(align).Style, s.Word))
	box := c.box(x, y-0.15, wide)
	box.Max.Y = y + 3.2
	return box
}

// side returns the x at a distance from the chain on the side of its words.
func (c Chain) side(d float64) float64 {
	if c.Left {
		return c.X - d
	}
	return c.X + d
}

// box is the room of a line of text that starts at x on the side of the words.
func (c Chain) box(x, y, wide float64) geom.Rect {
	if c.Left {
		x -= wide
	}
	return textBox(x, y, wide)
}

func (s Step) spans(left bool) []page.Span {
	spans := []page.Span{Value().Span(s.Value)}
	if s.Word == "" {
		return spans
	}
	if left {
		return append([]page.Span{Label().Span(s.Word + "  ")}, spans...)
	}
	return append(spans, Label().Span("  "+s.Word))
}

// level sets value and word on one line, the value nearer to the chain.
func (c Chain) level(p *page.Pen, s Step, x, y float64) geom.Rect {
	spans, align := s.spans(c.Left), page.Start
	if c.Left {
		align = page.End
	}
	p.Spans(x, y, align, spans...)
	return c.box(x, y, spansWidth(p, spans))
}

// leadOut sets the text of a step without room at the nearest free place lower
// down and further out.
func (c Chain) leadOut(p *page.Pen, i int, taken []geom.Rect) geom.Rect {
	s, y := c.Steps[i], c.middle(i)
	wide := spansWidth(p, s.spans(c.Left))
	at, down := ledFirst, ledDown
	place := func() geom.Rect { return c.box(c.side(at), y+down+valueDrop, wide).Grow(0.5) }
	blocked := func() bool {
		return slices.ContainsFunc(taken, func(r geom.Rect) bool { return overlap(r, place()) })
	}
	for blocked() && down < ledDown*float64(1+len(c.Steps)) {
		if down += 0.5; down > ledDown && at < 2*ledFirst {
			at, down = at+ledFirst/3, ledDown
		}
	}
	p.Line(c.X, y, c.side(at-1), y+down, Ink, solid(Hair))
	return c.level(p, s, c.side(at), y+down+valueDrop)
}

func overlap(a, b geom.Rect) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}
