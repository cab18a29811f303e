package ticket

import (
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// ladder is a chain of heights whose words stand in a column of their own, each
// led to its step, so that none runs into another however short the steps are.
type ladder struct {
	x      float64
	left   bool // words on the left of the line
	levels []float64
	steps  []parts.Step
}

// add ends a step at the level y.
func (l *ladder) add(y float64, value, word string) {
	l.levels, l.steps = append(l.levels, y), append(l.steps, parts.Step{Value: value, Word: word})
}

// The column of words, mm.
const (
	ladderLead  = 5.0 // from the line to the words
	ladderApart = 6.8 // from one to the next
	ladderValue = 0.1 // above the middle of the words
	ladderWord  = 2.7
)

// places spreads the words: each as near to the middle of its step as the others
// let it, none above top.
func (l *ladder) places(top float64) []float64 {
	out := make([]float64, len(l.steps))
	for i := range l.steps {
		out[i] = (l.levels[i] + l.levels[i+1]) / 2
		if i == 0 {
			out[i] = max(out[i], top)
			continue
		}
		out[i] = max(out[i], out[i-1]+ladderApart)
	}
	return out
}

// ladder draws a chain of heights; nothing of its words stands above top.
func (f *frame) ladder(l ladder, top float64) {
	if len(l.steps) == 0 {
		return
	}
	side, align := 1.0, page.Start
	if l.left {
		side, align = -1, page.End
	}
	f.Line(l.x, l.levels[0], l.x, l.levels[len(l.levels)-1], parts.Ink, page.Line{Weight: parts.DimensionLine})
	for i, y := range l.levels {
		if i == 0 || i == len(l.levels)-1 || y-l.levels[i-1] >= parts.TicksApart {
			parts.DimensionTick(f.Pen, l.x, y, parts.Ink)
		}
	}
	for i, y := range l.places(top) {
		from := (l.levels[i] + l.levels[i+1]) / 2
		f.Line(l.x, from, l.x+side*(ladderLead-1), y, parts.Ink, page.Line{Weight: parts.Hair})
		f.say(l.x+side*ladderLead, y-ladderValue, parts.Value().To(align), l.steps[i].Value)
		f.say(l.x+side*ladderLead, y+ladderWord, parts.Label().To(align), l.steps[i].Word)
	}
}
