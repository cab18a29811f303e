package parts

import (
	"fmt"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// The head of a page: y from the top edge, mm.
const (
	headTeam     = 19.3
	headSubtitle = 23.6
	headLabel    = 15.6
	headValue    = 19.4
	headRule     = 26.0
	headTitle    = 35.6
	headSentence = 31.9
	rulerWidth   = 26.0
	rulerGap     = 1.0
	rulerTick    = 1.1
	rulerBar     = 1.3

	// TeamHeight is the capital height and TeamTracking the tracking that the
	// team's name is set in; TeamSmall is the height of one too wide for it.
	TeamHeight   = 4.3
	TeamSmall    = 3.2
	TeamTracking = 0.12
)

// Field is one labelled value of the head.
type Field struct{ Label, Value string }

// Head is what the head of a page says.
type Head struct {
	// Team is the team's name in the job's own back-name face: y up, the
	// baseline at 0, at TeamHeight and TeamTracking. Empty when the face lacks
	// a character; then TeamText is set in the text face.
	Team     geom.Path
	TeamText string
	Subtitle string   // sport · garment
	Fields   [3]Field // order, revision and date, from
	Page     int      // this page, from 1
	Pages    int
	Title    string
	Sentence string // says the page's result
}

// PageHead draws the head.
func PageHead(p *page.Pen, g Grid, h Head) {
	p.FillRect(g.Left, HeadTop, g.Live(), HeadBar, Ink)
	fields := fieldWidths(g.Wide)
	teamRoom := 66.0
	if g.Wide {
		teamRoom = 80
	}
	teamName(p, g, h, teamRoom)
	x := g.Right - rulerWidth - rulerGap
	for _, w := range fields {
		x -= w
	}
	subtitle := Caption().In(Slate)
	p.Text(g.Left, headSubtitle, subtitle.Style, Shortened(p, subtitle, x-g.Left-2, h.Subtitle))
	for i, f := range h.Fields {
		headField(p, x, fields[i]-2, f)
		x += fields[i]
	}
	headField(p, g.Right-rulerWidth, rulerWidth, Field{"Page", fmt.Sprintf("%d of %d", h.Page, h.Pages)})
	PageRuler(p, g.Right-rulerWidth, headSubtitle, rulerWidth, h.Page, h.Pages)
	p.Line(g.Left, headRule, g.Right, headRule, Ink, solid(Hair))
	titleAndSentence(p, g, h)
}

// fieldWidths are those of order, revision and from.
func fieldWidths(wide bool) [3]float64 {
	if wide {
		return [3]float64{22, 36, 46}
	}
	return [3]float64{19, 32, 40}
}

func headField(p *page.Pen, x, width float64, f Field) {
	p.Text(x, headLabel, Label().Style, f.Label)
	t, _ := Shrunk(p, Value(), Label().Size, width, f.Value)
	p.Text(x, headValue, t.Style, Shortened(p, t, width, f.Value))
}

// teamName draws the team's name as large as its room allows: in the job's
// face, smaller, then in the text face, then that on two lines.
func teamName(p *page.Pen, g Grid, h Head, room float64) {
	box := h.Team.Bounds()
	for _, height := range [...]float64{TeamHeight, TeamSmall} {
		k := height / TeamHeight
		if box.Empty() || box.Width()*k > room {
			continue
		}
		p.FillPath(h.Team, geom.Affine{A: k, D: -k, E: g.Left - box.Min.X*k, F: headTeam}, Ink)
		return
	}
	if t := GroupTitle().Sized(12); p.Width(t.Style, h.TeamText) <= room {
		p.Text(g.Left, headTeam, t.Style, h.TeamText)
		return
	}
	t := GroupTitle()
	lines := p.Book().Wrap(t.Style, room, h.TeamText)
	for i, line := range lines[:min(2, len(lines))] {
		if i == 1 && len(lines) > 2 {
			line = Shortened(p, t, room, line+"…")
		}
		p.Text(g.Left, headTeam-3.6*float64(min(2, len(lines))-1-i), t.Style, line)
	}
}

// titleAndSentence sets the title as large and the sentence in as few lines as
// fit beside each other.
func titleAndSentence(p *page.Pen, g Grid, h Head) {
	x := g.X(6)
	if g.Wide {
		x = g.X(5)
	}
	title, _ := Shrunk(p, PageTitle(), Heading().Size, x-g.Left-Gutter, h.Title)
	p.Text(g.Left, headTitle, title.Style, h.Title)
	t := Sentence()
	for t.Size > Caption().Size && len(p.Book().Wrap(t.Style, g.Right-x, h.Sentence)) > 2 {
		t = t.Sized(t.Size - 0.5)
	}
	p.Paragraph(x, headSentence, g.Right-x, t.Leading, t.Style, h.Sentence)
}

// PageRuler draws a ruler on the baseline y with one division a page, the
// present one filled.
func PageRuler(p *page.Pen, x, y, width float64, present, pages int) {
	if pages < 1 {
		return
	}
	step := width / float64(pages)
	for i := range pages + 1 {
		at := x + float64(i)*step
		p.Line(at, y, at, y-rulerTick, Ink, solid(Hair))
	}
	p.Line(x, y, x+width, y, Ink, solid(Hair))
	if present >= 1 && present <= pages {
		p.FillRect(x+float64(present-1)*step, y-rulerBar, step, rulerBar, Ink)
	}
}
