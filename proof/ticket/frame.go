package ticket

import (
	"fmt"

	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// document is the pages under work: what all of them share.
type document struct {
	in    Input
	order *order.Order
	book  *page.Book
	sheet page.Sheet
	grid  parts.Grid
	pages []leaf // planned, in printing order
}

// leaf is one planned page.
type leaf struct {
	title, sentence string
	note            string // of the foot
	draw            func(*frame) error
}

// frame is a page with its head, ready for content.
type frame struct {
	*page.Pen
	*document
	parts.Grid
}

func (d *document) newFrame(i int) *frame {
	l := d.pages[i]
	p := d.book.Add(d.sheet, l.title)
	f := &frame{Pen: p.Pen, document: d, Grid: d.grid}
	if d.in.Unsigned {
		f.watermark()
	}
	head := d.in.Head
	if head.TeamText == "" {
		head.TeamText = d.order.Team
	}
	head.Page, head.Pages, head.Title, head.Sentence = i+1, len(d.pages), l.title, l.sentence
	parts.PageHead(f.Pen, f.Grid, head)
	return f
}

// unsignedWord stands on every page that is made without a signature.
const unsignedWord = "UNSIGNED"

// The stamp of an unsigned page, mm.
const (
	stampHigh, stampPad = 6.4, 2.6
	stampDown           = 18.4 // above the lower edge
	markShare           = 0.10 // of the colour in the large word under the content
)

// watermark lays the word large under everything, so that no copy of the page
// loses it.
func (f *frame) watermark() {
	style := parts.PageTitle().In(parts.Decide.Mix(page.White, markShare)).Style
	style.Size, style.Tracking = 92, 0
	path := f.Outlines(0, 0, style, unsignedWord)
	box := path.Bounds()
	m := geom.Translate(-box.Center().X, -box.Center().Y).Then(geom.Rotate(-0.9)).Then(geom.Translate(f.sheet.W/2, (f.Top+f.Bottom)/2))
	f.FillPath(path, m, style.Colour)
}

// foot draws the foot of a page, with its stamp where it is unsigned.
func (f *frame) foot(l leaf) {
	g, note := f.Grid, l.note
	if !f.in.Unsigned {
		parts.PageFoot(f.Pen, g, parts.Foot{Fingerprint: f.in.Fingerprint, Note: note})
		return
	}
	t := parts.Heading().In(page.White)
	wide := f.Width(t.Style, unsignedWord) + 2*stampPad
	y := g.Height - stampDown
	f.FillRect(g.Left, y, wide, stampHigh, parts.Decide)
	f.say(g.Left+stampPad, y+4.6, t, unsignedWord)
	g.Left += wide + 3
	parts.PageFoot(f.Pen, g, parts.Foot{Fingerprint: f.in.Fingerprint, Note: "Nobody has signed for this order. Make nothing from it. " + note})
	f.Line(f.Left, g.Bottom, g.Left, g.Bottom, parts.Ink, page.Line{Weight: parts.Hair})
}

// flowed deals strips out to pages. Titles of more than one page are numbered;
// sentence gives the line beside the title of each.
func (d *document) flowed(k Kind, strips []strip, sentence, note string) []leaf {
	from := d.grid.Top
	if k == PressTicket {
		from += standingHigh
	}
	deal := flow(strips, d.grid.Bottom-from-footClear)
	var out []leaf
	for i, page := range deal {
		title := k.String()
		if len(deal) > 1 {
			title = fmt.Sprintf("%s, %d of %d", title, i+1, len(deal))
		}
		out = append(out, leaf{title: title, sentence: sentence, note: note, draw: func(f *frame) error {
			if k == PressTicket {
				f.standing()
			}
			return f.drawStrips(page, from)
		}})
	}
	return out
}

// say sets one line in a type and returns its width.
func (f *frame) say(x, y float64, t parts.Type, text string) float64 {
	return f.Text(x, y, t.Style, text)
}

// fitted sets one line, smaller where it would be wider than its room.
func (f *frame) fitted(x, y, width float64, t parts.Type, text string) {
	t, _ = parts.Shrunk(f.Pen, t, parts.Label().Size, width, text)
	f.say(x, y, t, text)
}

// paragraph sets text in lines of at most width mm and returns the baseline of
// the line that would follow.
func (f *frame) paragraph(x, y, width float64, t parts.Type, text string) float64 {
	return f.Paragraph(x, y, width, t.Leading, t.Style, text)
}

// rule draws a line over the live width.
func (f *frame) rule(y float64, c page.Colour, weight float64) {
	f.Line(f.Left, y, f.Right, y, c, page.Line{Weight: weight})
}

// lines returns how many lines a paragraph takes.
func (d *document) lines(t parts.Type, width float64, text string) int {
	return len(d.book.Wrap(t.Style, width, text))
}

// high returns how high n lines of a type are, mm.
func high(t parts.Type, n int) float64 { return float64(n) * t.Leading * page.MMPerPoint }

// shrunk is parts.Shrunk while no page is there yet.
func (d *document) shrunk(t parts.Type, least, width float64, text string) (shrunk parts.Type, fits bool) {
	for t.Size > least && d.book.Width(t.Style, text) > width {
		t = t.Sized(max(least, t.Size-0.1))
	}
	return t, d.book.Width(t.Style, text) <= width
}
