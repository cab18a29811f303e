package parts

import (
	"yokeline/lettering/length"
	"yokeline/proof/page"
)

// The foot of a page: distances above the lower edge and from the right
// margin, mm.
const (
	footBar       = 15.9
	footDrawn     = 16.8
	footNote      = 13.4
	footNoteAlone = 17.2
	footCombRule  = 18.6
	footLabel     = 16.9
	footCode      = 13.4
	footComb      = 19.0
	footAfterBar  = 24.0
	footBarLeast  = 32.0
	footCodeRoom  = 54.0
	footNoteRoom  = 66.0
)

// Foot is what the foot of a page says.
type Foot struct {
	Fingerprint string // its first sixteen hexadecimal digits are shown
	Note        string
	Scale       float64 // mm of paper for 1 mm of garment; 0: a page without a drawing
	Unit        length.Unit
	Thing       string // what the drawing shows: shirt
	Remark      string // beside the scale, such as how the page is drawn, or before the note; may be empty
}

// PageFoot draws the foot. On a narrow sheet the scale bar gives way to the
// note, which has two lines before it comes too near the edge.
func PageFoot(p *page.Pen, g Grid, f Foot) {
	p.Line(g.Left, g.Bottom, g.Right, g.Bottom, Ink, solid(Hair))
	if f.Scale > 0 {
		footScale(p, g, f)
	} else {
		note := Note()
		p.Paragraph(g.Left, g.Height-footNoteAlone, g.Right-footNoteRoom-g.Left, 9.4, note.Style, f.Note)
	}
	x := g.Right - footComb
	Comb(p, x, g.Height-footCombRule, f.Fingerprint)
	p.Text(x-Gutter, g.Height-footLabel, Label().To(page.End).Style, "Fingerprint of this proof")
	p.Text(x-Gutter, g.Height-footCode, Value().To(page.End).Style, Code(f.Fingerprint))
}

func footScale(p *page.Pen, g Grid, f Foot) {
	note, drawn := Label(), Value().Span("Drawn "+Ratio(f.Scale))
	room := func(bar float64) float64 { return g.Right - footCodeRoom - g.Left - bar - footAfterBar }
	bar := ScaleBarLength
	for bar > footBarLeast && len(p.Book().Wrap(note.Style, room(bar), f.Note)) > 2 {
		bar -= 8
	}
	x := ScaleBar(p, g.Left, g.Height-footBar, f.Scale, bar, f.Unit, f.Thing) + footAfterBar
	width := g.Right - footCodeRoom - x
	words, remark := f.Note, Note().Span("   "+f.Remark)
	switch spans := []page.Span{drawn, remark}; {
	case f.Remark != "" && spansWidth(p, spans) <= width:
		p.Spans(x, g.Height-footDrawn, page.Start, spans...)
	case f.Remark != "":
		p.Text(x, g.Height-footDrawn, drawn.Style, drawn.Text)
		words = f.Remark + ". " + f.Note
	default:
		p.Text(x, g.Height-footDrawn, drawn.Style, drawn.Text)
	}
	p.Paragraph(x, g.Height-footNote, width, note.Leading, note.Style, words)
}
