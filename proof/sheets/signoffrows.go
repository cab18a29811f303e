package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// Columns of the sign-off table, mm from the left margin.
const (
	signName     = 13.0
	signSize     = 72.0
	signFit      = 84.0
	signBoxes    = 109.0
	signBoxWide  = 15.0
	signAnswer   = signBoxes + 3*signBoxWide
	signBoxShift = 2.0 // boxes stand left of the middle of their columns
	signColumn   = 2.0 // kept free at the end of a column

	signNameStep = 3.9 // to a further line of a name
	signDrop     = 1.25
	everyFifth   = 5
)

// signHeads draws the column heads and the rule under them.
func (f *frame) signHeads(y float64) {
	t := parts.Note()
	for _, h := range [...]struct {
		x    float64
		text string
	}{{0, "No."}, {signName, "Name, as it will be cut"}, {signSize, "Size"}, {signFit, "Fit"}, {signAnswer, "If not, what should it be?"}} {
		f.say(f.Left+h.x, y+headsDown, t, h.text)
	}
	for i, text := range [...]string{"spelling", "number", "size"} {
		f.say(f.Left+signBoxX(i), y+headsDown, t.To(page.Middle), text)
	}
	f.Line(f.Left, y+headsHigh, f.Right, y+headsHigh, parts.Ink, page.Line{Weight: parts.Outline})
}

// signBoxX is the middle of a column of boxes, from the left margin.
func signBoxX(i int) float64 {
	return signBoxes + (float64(i)+0.5)*signBoxWide - signBoxShift
}

// playerStrip is the row of a player. Names never get smaller: they break.
func (s *signOff) playerStrip(i int, heads *strip) strip {
	p := s.in.Sized.Players[i]
	name, t := s.asCut(p), parts.RowName()
	if name == "" {
		name, t = "no name", parts.Sentence().In(parts.Slate)
	}
	lines := s.book.Wrap(t.Style, signSize-signName-signColumn, name)
	high := s.row + signNameStep*float64(len(lines)-1)
	return strip{high: high, head: heads, draw: func(f *frame, y float64) {
		base := y + s.row/2 + signDrop
		for k, line := range lines {
			f.say(f.Left+signName, base+signNameStep*float64(k), t, line)
		}
		f.signNumber(p, base)
		f.signVerdict(p, base)
		if s.compared(p) {
			f.say(f.Left+signBoxX(0)-parts.BoxSize/2, base, parts.Sentence().In(parts.Slate), "signed before, to compare")
		}
		for k := range 3 {
			if s.compared(p) {
				break
			}
			parts.OpenBox(f.Pen, f.Left+signBoxX(k)-parts.BoxSize/2, y+(high-parts.BoxSize)/2, parts.BoxSize)
		}
		f.Line(f.Left+signAnswer, y+high-1.3, f.Right, y+high-1.3, parts.Rule, page.Line{Weight: parts.Hair, Dash: []float64{0.3, 0.7}})
		colour := parts.Rule
		if (i+1)%everyFifth == 0 {
			colour = parts.Ink
		}
		f.Line(f.Left, y+high, f.Right, y+high, colour, page.Line{Weight: parts.Hair})
	}}
}

func (f *frame) signNumber(p sizes.Player, base float64) {
	number, t := p.Number, parts.RowNumber()
	if number == "" {
		number, t = "no no.", parts.Value().In(parts.Slate)
		t.Weight = page.Regular
	}
	t, _ = parts.Shrunk(f.Pen, t, parts.Label().Size, signName-1, number)
	f.say(f.Left, base, t, number)
}

// signVerdict sets size and fit; where the size is not known there is no fit.
func (f *frame) signVerdict(p sizes.Player, base float64) {
	if p.Garment == nil {
		f.say(f.Left+signSize, base, parts.Sentence().In(parts.Slate), "size not known")
		return
	}
	t, _ := parts.Shrunk(f.Pen, parts.Sentence().Sized(parts.RowName().Size), parts.Caption().Size, signFit-signSize-1, f.sizeLabel(p.Size))
	f.say(f.Left+signSize, base, t, f.sizeLabel(p.Size))
	v := f.verdictOf(p)
	if !v.has {
		return
	}
	x := f.Left + signFit
	x += parts.VerdictMark(f.Pen, x, base-2.75, parts.VerdictHeight, v.mark, v.mark.Colour()) + 1.5
	word := parts.Value().In(v.mark.Colour())
	if v.mark != parts.Over {
		word.Weight = page.Regular
	}
	f.say(x, base, word, v.mark.String())
}

// The rows of choices, mm.
const (
	choiceTitle  = 5.6
	choiceRule   = 1.8
	choiceIndex  = 4.0  // of the number, after that of the choice
	choiceBoxes  = 62.0 // of the first box from the left margin
	choiceSlots  = 4
	choiceText   = 5.2 // box to its letter
	choiceDetail = 3.0 // to the line of figures
	choiceStep   = 5.2 // to a further line of boxes
	blankBefore  = 1.2
	blankLeast   = 3.4 // of the line to write on
	blankAfter   = 2.0
)

// choiceStrips are the title and the rows of the questions, or the words that
// there are none.
func (s *signOff) choiceStrips() []strip {
	var out []strip
	for _, words := range s.nothingWords() {
		out = append(out, strip{high: choiceTitle, keep: true, draw: func(f *frame, y float64) {
			f.say(f.Left, y+choiceTitle-0.4, parts.Sentence(), words)
		}})
	}
	if len(s.questions) == 0 {
		return out
	}
	title := &strip{high: choiceTitle + choiceRule, draw: func(f *frame, y float64) {
		note := "   tick one in each row"
		if pages := f.decidePages(); pages != "" {
			verb := "shows"
			if strings.HasPrefix(pages, "pages") {
				verb = "show"
			}
			note += fmt.Sprintf(", here or there: %s %s them drawn", pages, verb)
		}
		f.Spans(f.Left, y+choiceTitle, page.Start, parts.GroupTitle().Span("Still to choose"), parts.Caption().In(parts.Slate).Span(note))
		f.Line(f.Left, y+choiceTitle+choiceRule, f.Right, y+choiceTitle+choiceRule, parts.Ink, page.Line{Weight: parts.Outline})
	}}
	first := *title
	first.keep = true
	out = append(out, first)
	for i, q := range s.questions {
		out = append(out, s.questionStrip(i, q, title))
	}
	return out
}

// nothingWords are the lines of an order that leaves nothing to choose or was
// checked against no book.
func (s *signOff) nothingWords() []string {
	var out []string
	unsized := 0
	for _, p := range s.in.Sized.Players {
		unsized += count(p.Garment == nil)
	}
	_, names := s.asked(garment.BackName)
	switch {
	case unsized > 0:
		out = append(out, plural(unsized, "player")+" without a size: we fit the name when you have written the size beside it.")
	case len(s.questions) == 0 && names:
		out = append(out, "Nothing to choose: every name fits as asked.")
	case len(s.questions) == 0:
		out = append(out, "Nothing to choose: every number fits as asked.")
	}
	if s.in.Sized.Rules == nil {
		out = append(out, "No rule book was named, so nothing was checked against one.")
	}
	return out
}

// placedWay is an answer with the place of its box: a line of four slots.
type placedWay struct {
	way
	line, slot int
	slots      int
}

// placeWays gives each answer the slots it needs.
func (s *signOff) placeWays(ways []way) (placed []placedWay, lines int) {
	blanks := 1 // lines to write on are alike
	for _, w := range ways {
		if w.blank {
			blanks = max(blanks, s.slotsOf(w))
		}
	}
	at, line := 0, 0
	for _, w := range ways {
		n := s.slotsOf(w)
		if w.blank {
			n = blanks
		}
		if at+n > choiceSlots {
			at, line = 0, line+1
		}
		placed = append(placed, placedWay{w, line, at, n})
		at += n
	}
	return placed, line + 1
}

// slotsOf is how many slots an answer takes.
func (s *signOff) slotsOf(w way) int {
	need := choiceText + s.book.Width(parts.Value().Style, w.letter) + s.book.Width(wayType().Style, "  "+w.title)
	if w.blank {
		need += blankBefore + blankLeast + blankAfter
	}
	if s.detail && w.detail != "" {
		need = max(need, choiceText+s.book.Width(parts.Label().Style, w.detail)+1)
	}
	return min(choiceSlots, max(1, int(math.Ceil(need/s.choiceSlot()))))
}

func (s *signOff) choiceSlot() float64 { return (s.grid.Live() - choiceBoxes) / choiceSlots }

func wayType() parts.Type {
	t := parts.Value()
	t.Weight = page.Regular
	return t
}

// questionStrip is one row of boxes.
func (s *signOff) questionStrip(index int, q question, title *strip) strip {
	placed, lines := s.placeWays(q.ways)
	who := s.shrunk(parts.GroupTitle().Sized(8.5), nameLeast, choiceBoxes-signName-signColumn, q.who)
	names := s.book.Wrap(who.Style, choiceBoxes-signName-signColumn, q.who)
	row, step := s.row, choiceStep
	if s.detail && slices.ContainsFunc(q.ways, func(w way) bool { return w.detail != "" }) {
		row, step = row+choiceDetail, step+choiceDetail
	}
	high := max(row+step*float64(lines-1), s.row+3.6*float64(len(names)-1))
	return strip{high: high, head: title, draw: func(f *frame, y float64) {
		base := y + s.row/2 + signDrop - 0.05
		f.choiceHead(index, q.number, base)
		for i, line := range names {
			f.say(f.Left+signName, base+3.6*float64(i), who, line)
		}
		if len(q.ways) == 0 {
			f.say(f.Left+choiceBoxes, base, wayType().In(parts.Slate), "No way out was found: it needs another name or another place.")
		}
		for _, w := range placed {
			f.drawWay(s, w, y+(s.row-parts.BoxSize)/2+step*float64(w.line), base+step*float64(w.line))
		}
		f.Line(f.Left, y+high, f.Right, y+high, parts.Rule, page.Line{Weight: parts.Hair})
	}}
}

// choiceHead prints the number of a choice and whose it is; a player's number
// that has no room beside it stands alone.
func (f *frame) choiceHead(index int, number string, base float64) {
	label := fmt.Sprint(index + 1)
	x := max(choiceIndex, f.Width(parts.Label().Style, label)+1.2)
	t, fits := parts.Shrunk(f.Pen, parts.GroupTitle(), parts.Label().Size, signName-x-1, number)
	if !fits {
		t, _ = parts.Shrunk(f.Pen, parts.GroupTitle(), parts.Label().Size, signName-1, number)
		f.say(f.Left, base, t, number)
		return
	}
	f.say(f.Left, base, parts.Label(), label)
	f.say(f.Left+x, base, t, number)
}

func (f *frame) drawWay(s *signOff, w placedWay, top, base float64) {
	x := f.Left + choiceBoxes + s.choiceSlot()*float64(w.slot)
	parts.OpenBox(f.Pen, x, top, parts.BoxSize)
	end := f.Spans(x+choiceText, base, page.Start, parts.Value().Span(w.letter), wayType().Span("  "+w.title))
	if w.blank {
		f.hair(end+blankBefore, base+0.6, x+s.choiceSlot()*float64(w.slots)-blankAfter, base+0.6)
	}
	if s.detail && w.detail != "" {
		f.say(x+choiceText, base+choiceDetail, parts.Label(), w.detail)
	}
}
