package sheets

import (
	"strings"
	"time"

	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// frame is a page with its head, ready for content between Top and Bottom and
// on the columns of the grid.
type frame struct {
	*page.Pen
	*document
	parts.Grid
	index  int     // of the page in the document, from 0
	scale  float64 // of the drawings in strips, mm of paper for a mm of garment
	failed error   // first fault of a drawing in a strip
}

// newFrame adds page i of the document to the book and draws its head.
func (d *document) newFrame(i int) *frame {
	l := d.pages[i]
	p := d.book.Add(l.sheet, l.title)
	f := &frame{Pen: p.Pen, document: d, Grid: parts.NewGrid(l.sheet), index: i}
	head := d.masthead()
	head.Page, head.Pages, head.Title, head.Sentence = i+1, len(d.pages), l.title, l.sentence
	parts.PageHead(f.Pen, f.Grid, head)
	return f
}

// foot draws the foot. A scale over 0 (mm of paper for a mm of garment) gets a
// scale bar and its ratio; the note then stands beside them.
func (f *frame) foot(note string, scale float64) {
	parts.PageFoot(f.Pen, f.Grid, parts.Foot{
		Fingerprint: f.in.Fingerprint, Note: note, Scale: scale, Unit: f.order.Units, Thing: f.noun(),
	})
}

// rule draws a thin rule over the live width.
func (f *frame) rule(y float64) { f.hair(f.Left, y, f.Right, y) }

// hair draws a thin line in ink.
func (f *frame) hair(x1, y1, x2, y2 float64) {
	f.Line(x1, y1, x2, y2, parts.Ink, page.Line{Weight: parts.Hair})
}

// say sets one line in a type and returns its width.
func (f *frame) say(x, y float64, t parts.Type, text string) float64 {
	return f.Text(x, y, t.Style, text)
}

// paragraph sets text in lines of at most width mm and returns the baseline of
// the line that would follow.
func (f *frame) paragraph(x, y, width float64, t parts.Type, text string) float64 {
	return f.Paragraph(x, y, width, t.Leading, t.Style, text)
}

// joined puts a middle dot between the words that are not empty.
func joined(words ...string) string {
	var kept []string
	for _, w := range words {
		if w != "" {
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, " · ")
}

// date prints a valid 2026-11-25 as 25 Nov 2026; anything else is kept.
func date(iso string) string {
	t, err := time.Parse(time.DateOnly, iso)
	if err != nil {
		return iso
	}
	return t.Format("2 Jan 2006")
}
