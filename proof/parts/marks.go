package parts

import (
	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// Verdict is what became of a name, in the order of the fitting ladder.
type Verdict uint8

// The verdicts.
const (
	Full Verdict = iota
	Eased
	Reduced
	Over
)

// String returns the verdict's word.
func (v Verdict) String() string {
	if v > Over {
		return "unknown"
	}
	return [...]string{"full", "eased", "reduced", "over"}[v]
}

// Colour returns the colour that a verdict stands in: decide for over.
func (v Verdict) Colour() page.Colour {
	if v == Over {
		return Decide
	}
	return Ink
}

// Heights of verdict marks, mm: beside text, and in the key.
const (
	VerdictHeight    = 3.0
	VerdictKeyHeight = 3.2
)

// barStarts are the left edges of the letters, in eighteenths of the mark.
func (v Verdict) barStarts() []float64 {
	switch v {
	case Full:
		return []float64{4.4, 8, 11.6}
	case Over:
		return []float64{0.6, 4.3, 8, 11.7, 15.4}
	}
	return []float64{2.1, 5.05, 8, 10.95, 13.9}
}

// VerdictMark draws letters between the two posts of the limit, its top left
// corner at x, y and h high, and returns its width, 1.8 h.
func VerdictMark(p *page.Pen, x, y, h float64, v Verdict, c page.Colour) float64 {
	width := 1.8 * h
	u := width / 18
	post := Outline * h / 3.4
	top, tall := 0.16*h, 0.68*h
	if v == Reduced {
		top, tall = 0.47*h, 0.37*h
		p.Line(x+2.1*u, y+0.2*h, x+15.9*u, y+0.2*h, c, solid(0.8*post))
	}
	for _, bar := range v.barStarts() {
		p.FillRect(x+bar*u, y+top, 2*u, tall, c)
	}
	posts := [2]float64{0.6, 17.4}
	if v == Over {
		posts = [2]float64{3.4, 14.6}
	}
	for _, at := range posts {
		p.FillRect(x+at*u-post/2, y, post, h, c)
	}
	return width
}

// VerdictLine draws the mark, the verdict's word and what follows it on the
// baseline y in caption size, and returns the x where it ends. An over stands
// in decide, its figure in ink.
func VerdictLine(p *page.Pen, x, y float64, v Verdict, rest string) float64 {
	x += VerdictMark(p, x, y-2.55, VerdictHeight, v, v.Colour()) + 1.5
	gap := "  "
	if v == Over {
		gap = " "
	}
	return p.Spans(x, y, page.Start, Caption().Bold().In(v.Colour()).Span(v.String()), Caption().Span(gap+rest))
}

// VerdictKey draws the key of the four marks on the baseline y and returns the
// x where it ends.
func VerdictKey(p *page.Pen, x, y float64) float64 {
	const gap = 6.0
	words := [...]string{"at the height asked", "set closer or narrower", "lower letters", "does not fit yet"}
	for v := Full; v <= Over; v++ {
		x += VerdictMark(p, x, y-2.75, VerdictKeyHeight, v, Ink) + 1.6
		x = p.Spans(x, y, page.Start, Caption().Bold().Span(v.String()), Caption().In(Slate).Span("  "+words[v])) + gap
	}
	return x - gap
}

// Result is what came of one rule.
type Result uint8

// The results, the worst first.
const (
	Broken Result = iota
	Advice
	NotChecked
	InOrder
)

// String returns the result's words.
func (r Result) String() string {
	if r > InOrder {
		return "unknown"
	}
	return [...]string{"breaks a rule", "advice", "not checked", "in order"}[r]
}

// Colour returns the colour that a result stands in.
func (r Result) Colour() page.Colour {
	if r == Broken {
		return Decide
	}
	return Ink
}

// ResultRadius is half the height of a result mark beside text, mm.
const ResultRadius = 1.55

// ResultMark draws a rule's result about the centre x, y. Its lines grow with
// its radius.
func ResultMark(p *page.Pen, x, y, r float64, result Result, c page.Colour) {
	k := r / ResultRadius
	switch result {
	case Broken:
		p.FillRect(x-r, y-r, 2*r, 2*r, c)
		p.FillRect(x-0.58*r, y-0.2*r, 1.16*r, 0.4*r, page.White)
	case Advice:
		p.StrokeCircle(x, y, 0.92*r, c, solid(Outline*k))
		p.FillCircle(x, y, 0.26*r, c)
	case NotChecked:
		p.StrokeCircle(x, y, 0.92*r, c, page.Line{Weight: 0.30 * k, Dash: []float64{0.75 * k, 0.6 * k}})
	case InOrder:
		tick(p, x, y, r, c, page.Line{Weight: 0.42 * k, Cap: page.SquareCap})
	}
}

// tick draws a check mark about the centre x, y.
func tick(p *page.Pen, x, y, r float64, c page.Colour, l page.Line) {
	var path geom.Path
	path.MoveTo(geom.Point{X: x - 0.75*r, Y: y + 0.05*r})
	path.LineTo(geom.Point{X: x - 0.2*r, Y: y + 0.6*r})
	path.LineTo(geom.Point{X: x + 0.8*r, Y: y - 0.65*r})
	p.StrokePath(path, geom.Identity(), c, l)
}

// BoxSize is the side of a tick box, mm.
const BoxSize = 3.6

// OpenBox draws an empty tick box with its top left corner at x, y.
func OpenBox(p *page.Pen, x, y, side float64) {
	p.FillRect(x, y, side, side, page.White)
	p.StrokeRect(x, y, side, side, Ink, solid(OutlineSmall*side/BoxSize))
}

// TickedBox draws a filled tick box.
func TickedBox(p *page.Pen, x, y, side float64) {
	p.FillRect(x, y, side, side, Ink)
	tick(p, x+side*0.51, y+side*0.515, side*0.37, page.White, solid(0.36*side/BoxSize))
}

// NoteFlag draws the flag of a note: a post at the left edge, as high as side,
// and a flag with a notch.
func NoteFlag(p *page.Pen, x, y, side float64) {
	k := side / BoxSize
	p.FillRect(x, y, 0.5*k, side, Ink)
	var flag geom.Path
	flag.MoveTo(geom.Point{X: x + 0.5*k, Y: y})
	flag.LineTo(geom.Point{X: x + 3.3*k, Y: y})
	flag.LineTo(geom.Point{X: x + 2.5*k, Y: y + 1.1*k})
	flag.LineTo(geom.Point{X: x + 3.3*k, Y: y + 2.2*k})
	flag.LineTo(geom.Point{X: x + 0.5*k, Y: y + 2.2*k})
	flag.Close()
	p.FillPath(flag, geom.Identity(), Ink)
}
