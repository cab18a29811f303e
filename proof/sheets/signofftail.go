package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// The end of the sign-off, mm.
const (
	signatureUp   = 7.5  // signature line over the foot's rule
	signLabelDown = 3.4  // to its label
	statementUp   = 12.2 // last line of the statement over the signature line
	statementStep = 4.2
	tailGap       = 6.4 // from the last row
	tailGapTight  = 4.2 // both without the look, when room is scarce
	tailAirTight  = 3.2
	tailAir       = 7.5 // over the statement
	colourDown    = 6.0 // from the look and the terms to the line of colours

	termsTitleStep = 4.0
	termsStep      = 10.0 // pt
	termsGap       = 5.0  // between two rows of terms
	swatch         = 2.6
)

// term is one paragraph of what the coach signs for.
type term struct{ title, text string }

// setTerm is a term with its lines and its place from the top left corner of
// the block.
type setTerm struct {
	title string
	lines []string
	x, y  float64
}

// signTail is what stands after the last row: the look, the terms, the
// statement, the signature.
type signTail struct {
	strip     strip
	look      smallLook
	terms     []setTerm
	gap       float64 // from the last row
	high      float64 // of the look and the terms
	statement []string
	top       *float64 // y where the strip was drawn
}

// newTail sets the end of the page, with the look or without it.
func (s *signOff) newTail(withLook bool) signTail {
	t := signTail{top: new(float64), gap: tailGapTight}
	air := tailAirTight
	left, columns := 0.0, 4
	if withLook {
		t.gap, air = tailGap, tailAir
		t.look = s.newSmallLook()
		if t.look.fits {
			left, columns = max(s.grid.X(6)-s.grid.Left, t.look.wide+parts.Gutter), 2
		}
	}
	if s.ownTerms() == "" {
		t.terms, t.high = s.setTerms(s.defaultTerms(), left, columns)
	} else if withLook {
		t.terms, t.high = s.setTerms(s.ownIntroduction(), left, 1)
	}
	t.high = max(t.high, t.look.high)
	t.statement = s.book.Wrap(parts.GroupTitle().Style, s.grid.Live(), s.statement())
	t.strip.high = t.gap + t.high + air + t.said() + statementUp + signatureUp - footClear
	if t.high == 0 {
		t.strip.high -= t.gap
	}
	t.strip.draw = func(_ *frame, y float64) { *t.top = y }
	return t
}

// said is the height from the first line over the signature to the last.
func (t signTail) said() float64 { return statementStep * float64(len(t.statement)-1) }

// setTerms lays terms out in columns right of left, row by row, and returns
// the height of all.
func (s *signOff) setTerms(terms []term, left float64, columns int) (out []setTerm, high float64) {
	wide := (s.grid.Live() - left - parts.Gutter*float64(columns-1)) / float64(columns)
	const firstLine, lastLine = 2.2, 0.9 // over the first baseline, under the last
	for from := 0; from < len(terms); from += columns {
		if from > 0 {
			high += termsGap
		}
		row := 0.0
		for i, t := range terms[from:min(from+columns, len(terms))] {
			lines := s.book.Wrap(parts.Caption().Style, wide-1, t.text)
			out = append(out, setTerm{t.title, lines, left + float64(i)*(wide+parts.Gutter), high + firstLine})
			row = max(row, firstLine+termsTitleStep+termsStep*page.MMPerPoint*float64(len(lines)-1)+lastLine)
		}
		high += row
	}
	return out, high
}

// defaultTerms are the terms of a shop that wrote none.
func (s *signOff) defaultTerms() []term {
	off := "¼\u00a0in"
	if s.order.Units != length.Inch {
		off = "0.6\u00a0cm"
	}
	placed := "Pressed by hand"
	if strings.Contains(s.order.Method, "twill") || s.order.Method == "embroidery" {
		placed = "Placed by hand"
	}
	return []term{
		{"What you sign for", "The spelling, the number and the size of each player, and the look on page 1, exactly as drawn here."},
		{"What we then make", "These shapes and no others. If anything changes, you get a new proof with a new fingerprint."},
		{"How close it will be", placed + ": up to " + off + " from where it is drawn. Colours on paper and on screen are a guide; ask for a sample."},
		{"After you sign", "If something printed and signed here turns out wrong, making it again is at your cost. If we make anything else, it is at ours."},
	}
}

// ownTerms are those that the job gives.
func (s *signOff) ownTerms() string { return strings.TrimSpace(s.order.Terms) }

// ownIntroduction stands beside the look where the terms are the shop's own.
func (s *signOff) ownIntroduction() []term {
	return []term{{"What you sign for", s.ownTerms()}}
}

// own lists the shop's terms as strips of one line, when they do not stand
// beside the look: they may be of any length.
func (s *signOff) own() []strip {
	if s.ownTerms() == "" || s.tail.look.fits {
		return nil
	}
	out := []strip{{high: tailGap + 1, keep: true, draw: func(f *frame, y float64) {
		f.say(f.Left, y+tailGap, parts.Value(), "What you sign for")
	}}}
	step := parts.Caption().Leading * page.MMPerPoint
	for _, line := range s.book.Wrap(parts.Caption().Style, s.grid.Live(), s.ownTerms()) {
		out = append(out, strip{high: step, draw: func(f *frame, y float64) { f.say(f.Left, y+step-0.6, parts.Caption(), line) }})
	}
	return out
}

// statement is what the signature stands under.
func (s *signOff) statement() string {
	pages := ""
	switch n := len(s.pages); {
	case n == 1:
		pages = " and at page 1"
	case n == 2:
		pages = " and at pages 1 and 2"
	case n > 1:
		pages = fmt.Sprintf(" and at pages 1 to %d", n)
	}
	done := "ticked"
	if len(s.questions) > 0 {
		done = "ticked and chosen"
	}
	return fmt.Sprintf("I have looked at %s%s of this proof. Make it as %s above.", s.signedPlayers(), pages, done)
}

// smallLook is the look once more.
type smallLook struct {
	fits       bool
	scale      float64
	wide, high float64
	player     sizes.Player
	x          [2]float64 // centre lines of front and back from the left margin
	above      float64    // of the high point of shoulder under the block's top
}

const (
	smallLookLeast = 24.0 // width of a view
	smallLookGap   = 4.0
	smallLookNote  = 4.4
	smallLookMost  = 90.0 // width of both
	smallLookDeep  = 52.0
)

// newSmallLook finds the scale of the look at the end of the sign-off.
func (s *signOff) newSmallLook() smallLook {
	player, ok := s.shown()
	if !ok {
		return smallLook{}
	}
	g := player.Garment
	front, back := g.Bounds(garment.Front), g.Bounds(garment.Back)
	// 1 : 20, larger for narrow garments, smaller for wide ones.
	for _, n := range [...]float64{20, 18, 16, 14, 12, 24} {
		l := smallLook{scale: 1 / n, player: player}
		k := l.scale
		box := front.Union(back)
		l.x = [2]float64{-front.Min.X * k, front.Width()*k + smallLookGap - back.Min.X*k}
		l.above = max(0, -box.Min.Y) * k
		l.wide = front.Width()*k + smallLookGap + back.Width()*k
		l.high = l.above + box.Max.Y*k + smallLookNote
		if l.wide <= smallLookMost && l.high <= smallLookDeep && front.Width()*k >= smallLookLeast {
			l.fits = true
			return l
		}
	}
	return smallLook{}
}

// drawTail draws the end of the sign-off: its upper part after the last row,
// the signature at the foot of the page.
func (f *frame) drawTail(s *signOff) error {
	y := *s.tail.top + s.tail.gap
	if s.tail.look.fits {
		if err := f.drawSmallLook(s.tail.look, y); err != nil {
			return err
		}
	}
	for _, t := range s.tail.terms {
		f.say(f.Left+t.x, y+t.y, parts.Value(), t.title)
		for i, line := range t.lines {
			f.say(f.Left+t.x, y+t.y+termsTitleStep+termsStep*page.MMPerPoint*float64(i), parts.Caption(), line)
		}
	}
	line := f.Bottom - signatureUp
	top := line - statementUp - s.tail.said()
	if at := y + s.tail.high + colourDown; at < top-tailAir {
		f.colourLine(at)
	}
	f.lines(f.Left, top, statementStep, parts.GroupTitle(), s.tail.statement)
	f.signatureLines(line)
	return nil
}

// signatureLines draws the three lines with their labels.
func (f *frame) signatureLines(y float64) {
	x := f.Left
	widths := [3]float64{0.42 * f.Live(), 0.30 * f.Live(), 0.28*f.Live() - 2*parts.Gutter}
	for i, label := range [3]string{"Signature", "Name in capitals", "Date"} {
		f.Line(x, y, x+widths[i], y, parts.Ink, page.Line{Weight: parts.Outline})
		f.say(x, y+signLabelDown, parts.Note(), label)
		x += widths[i] + parts.Gutter
	}
}

// colourLine names the team's colours on one line, where they fit on one.
func (f *frame) colourLine(y float64) {
	t, note := parts.Caption(), parts.Caption().In(parts.Slate)
	wide := 0.0
	colours := f.teamColours()
	words := func(c teamColour) []page.Span {
		name := strings.TrimSpace(sentenceCase(c.colour.Name) + " " + c.paint().Hex())
		return []page.Span{t.Span(name), note.Span(" " + f.uses(c))}
	}
	for _, c := range colours {
		wide += swatch + 1.4 + 5
		for _, s := range words(c) {
			wide += f.Width(s.Style, s.Text)
		}
	}
	if wide-5 > f.Live() {
		return
	}
	x := f.Left
	for _, c := range colours {
		f.FillRect(x, y-2.2, swatch, swatch, c.paint())
		f.StrokeRect(x, y-2.2, swatch, swatch, parts.Ink, page.Line{Weight: parts.DimensionLine})
		x = f.Spans(x+swatch+1.4, y, page.Start, words(c)...) + 5
	}
}

func (f *frame) drawSmallLook(l smallLook, y float64) error {
	for i, side := range [2]garment.Side{garment.Front, garment.Back} {
		v := shirt.View{
			Garment: l.player.Garment, Side: side, Pieces: l.player.Pieces, Cloth: f.cloth,
			Scale: l.scale, X: f.Left + l.x[i], Y: y + l.above,
		}
		if err := v.Paint(f.Pen); err != nil {
			return err
		}
	}
	f.say(f.Left, y+l.high-0.6, parts.Note(), "the look, page 1, at "+parts.Ratio(l.scale))
	return nil
}
