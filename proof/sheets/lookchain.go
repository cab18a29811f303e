package sheets

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// Steps of a chain as parts.ChainLine sets them, mm: the word goes below the
// value, beside it, or the text is led out.
const (
	stepStacked = 6.2
	stepBeside  = 3.4
	textAway    = 2.0 // from the chain
	wordClear   = 1.0 // of a text from a shirt
	ledAway     = 5.0
	ledMost     = 6.0 // how far below the chain a text may be led, for each that is
)

// chainLine draws the chain. A word that would touch the shirt is left out; the
// value stays. Steps too low for their text are led out here, because that
// depends on the shirt.
func (v *lookView) chainLine() {
	c := v.chain
	if len(c.Levels) == 0 {
		return
	}
	c.Steps = slices.Clone(c.Steps)
	var boxes []geom.Rect
	var low []int
	for i, s := range c.Steps {
		mid, high := (c.Levels[i]+c.Levels[i+1])/2, c.Levels[i+1]-c.Levels[i]
		if high < stepBeside {
			low = append(low, i)
			c.Steps[i] = parts.Step{}
			continue
		}
		box := v.stepBox(s, mid, high >= stepStacked)
		if v.touches(box) {
			s.Word = ""
			box = v.stepBox(s, mid, false)
		}
		c.Steps[i] = s
		boxes = append(boxes, box)
	}
	parts.ChainLine(v.Pen, c)
	v.taken = append(v.taken, boxes...)
	for k, i := range low {
		// Each on a track of its own, the first farthest out: they never cross.
		v.taken = append(v.taken, v.leadOut(v.chain, i, len(low), textAway*float64(len(low)-k)/float64(len(low)+1)))
	}
}

// stepBox is the room that the text of a step takes beside the chain.
func (v *lookView) stepBox(s parts.Step, mid float64, stacked bool) geom.Rect {
	value, word := v.Width(parts.Value().Style, s.Value), 0.0
	if s.Word != "" {
		word = v.Width(parts.Label().Style, s.Word)
	}
	if stacked && s.Word != "" {
		return v.boxFrom(textAway, max(value, word), mid-2.6, mid+3.2)
	}
	return v.boxFrom(textAway, value+v.gapTo(s)+word, mid-1.5, mid+1.6)
}

// gapTo is the space between a value and the word beside it.
func (v *lookView) gapTo(s parts.Step) float64 {
	if s.Word == "" {
		return 0
	}
	return v.Width(parts.Label().Style, "  ")
}

// boxFrom is a box that begins at a distance from the chain.
func (v *lookView) boxFrom(away, wide, y1, y2 float64) geom.Rect {
	x := v.chain.X + away
	if v.left {
		x = v.chain.X - away - wide
	}
	return geom.Rect{Min: geom.Point{X: x, Y: y1}, Max: geom.Point{X: x + wide, Y: y2}}
}

// touches reports whether a text would come within 1 mm of the shirt.
func (v *lookView) touches(box geom.Rect) bool {
	edge := v.edge(v.inward(), box.Min.Y, box.Max.Y)
	if v.inward() > 0 {
		return box.Min.X-wordClear < edge
	}
	return box.Max.X+wordClear > edge
}

// edge returns the x of the shirt's outermost point between two heights of the
// page, on the right (1) or the left (-1); infinitely far away when there is
// no shirt between them.
func (v *lookView) edge(side, y1, y2 float64) float64 {
	out := math.Inf(int(-side))
	for _, ring := range v.outline {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.Y > b.Y {
				a, b = b, a
			}
			if b.Y < y1 || a.Y > y2 {
				continue
			}
			for _, y := range [2]float64{max(a.Y, y1), min(b.Y, y2)} {
				x := a.X
				if b.Y > a.Y {
					x = a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
				}
				if side*x > side*out {
					out = x
				}
			}
		}
	}
	return out
}

// leadOut leads the text of a low step down to a free place: clear of other
// texts, of the levels' extension lines and of the shirt; if none is wide
// enough for the word, without it.
func (v *lookView) leadOut(c parts.Chain, i, all int, track float64) geom.Rect {
	s, mid := c.Steps[i], (c.Levels[i]+c.Levels[i+1])/2
	lowest := c.Levels[len(c.Levels)-1] + ledMost*float64(all)
	for _, words := range []parts.Step{s, {Value: s.Value}} {
		for y := mid + stepBeside; y <= lowest; y += 0.25 {
			box := v.ledBox(words, y)
			if v.free(box, c.Levels) {
				v.led(words, mid, y, track)
				return box
			}
		}
	}
	v.led(parts.Step{Value: s.Value}, mid, lowest, track)
	return v.ledBox(parts.Step{Value: s.Value}, lowest)
}

func (v *lookView) ledBox(s parts.Step, y float64) geom.Rect {
	word := 0.0
	if s.Word != "" {
		word = v.gapTo(s) + v.Width(parts.Label().Style, s.Word)
	}
	return v.boxFrom(ledAway, v.Width(parts.Value().Style, s.Value)+word, y-1.3, y+1.2)
}

func (v *lookView) free(box geom.Rect, levels []float64) bool {
	return !v.touches(box) &&
		!slices.ContainsFunc(levels, func(y float64) bool { return y > box.Min.Y-0.3 && y < box.Max.Y+0.3 }) &&
		!slices.ContainsFunc(v.taken, func(r geom.Rect) bool { return meet(r, box) })
}

// led draws a led-out text on the line y, and the line that leads to it.
func (v *lookView) led(s parts.Step, from, y, track float64) {
	side, align := 1.0, page.Start
	spans := []page.Span{parts.Value().Span(s.Value)}
	if s.Word != "" {
		spans = append(spans, parts.Label().Span("  "+s.Word))
	}
	if v.left {
		side, align = -1, page.End
		if s.Word != "" {
			spans = []page.Span{parts.Label().Span(s.Word + "  "), spans[0]}
		}
	}
	v.ledLine(from, y, side, track)
	v.Spans(v.chain.X+side*ledAway, y+1, align, spans...)
}

// ledLine leads from the chain to a text at y: straight, or where another text
// is in the way down a track beside the chain first.
func (v *lookView) ledLine(from, y, side, track float64) {
	a, b := geom.Point{X: v.chain.X, Y: from}, geom.Point{X: v.chain.X + side*(ledAway-0.8), Y: y}
	corner := []geom.Point{a, b}
	if slices.ContainsFunc(v.taken, func(r geom.Rect) bool { return crosses(a, b, r.Grow(0.2)) }) {
		x := a.X + side*track
		corner = []geom.Point{a, {X: x, Y: from + track}, {X: x, Y: y - track}, {X: x + side*track, Y: y}, b}
	}
	for i, p := range corner[1:] {
		v.hair(corner[i].X, corner[i].Y, p.X, p.Y)
	}
}

// meet reports whether two boxes overlap.
func meet(a, b geom.Rect) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}
