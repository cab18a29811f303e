package parts_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

const (
	tidewater page.Colour = 0x1D3B53
	egret     page.Colour = 0xFBF7EC
	marshGold page.Colour = 0xE2A336
	code                  = "7c41e09b52d6a38f00112233"
)

// sheet is a page that shows every part, for the golden file and for the eye.
type sheet struct {
	*page.Page
	grid parts.Grid
	wide float64
	x    [4]float64
}

func partsSheet(t testing.TB) *page.Page {
	t.Helper()
	book, err := page.NewBook()
	require.NoError(t, err)
	p := book.Add(page.Letter().Landscape(), "Parts")
	s := sheet{Page: p, grid: parts.NewGrid(p.Sheet)}
	s.wide = (s.grid.Live() - 3*8) / 4
	for i := range s.x {
		s.x[i] = s.grid.Left + float64(i)*(s.wide+8)
	}
	p.FillRect(s.grid.Left, parts.HeadTop, s.grid.Live(), parts.HeadBar, parts.Ink)
	p.Text(s.grid.Left, 21.5, parts.PageTitle().Style, "Parts")
	p.Text(106, 18.4, parts.Sentence().Style, "Marks are drawn larger than printed; bars, tape, comb and chips at printed size.")
	s.marks(28)
	s.lines(28)
	s.instruments(28)
	s.tileAndType(28)
	parts.VerdictKey(s.Pen, s.grid.Left, s.grid.Bottom+8)
	parts.VerdictLine(s.Pen, s.x[2]+35, s.grid.Bottom+8, parts.Over, "by 1 ¼ in")
	s.keyAndRuler()
	return p
}

func (s sheet) head(column int, y float64, title string) float64 {
	s.Line(s.x[column], y, s.x[column]+s.wide, y, parts.Ink, page.Line{Weight: parts.Outline})
	s.Text(s.x[column], y+4.6, parts.GroupTitle().Style, title)
	return y + 8.5
}

func (s sheet) marks(y float64) {
	x := s.x[0]
	y = s.head(0, y, "Verdicts: letters between two posts")
	said := [...]string{"three tall bars, clear of the posts", "five tall bars, up against the posts", "five low bars under a line at the height asked", "five tall bars, two outside the posts"}
	for v := parts.Full; v <= parts.Over; v++ {
		parts.VerdictMark(s.Pen, x, y, 12, v, parts.Ink)
		s.Text(x+25, y+4.4, parts.Heading().Style, v.String())
		s.Paragraph(x+25, y+8, s.wide-25, 9, parts.Note().Style, said[v])
		y += 16.6
	}
	y = s.head(0, y+1, "Rule results")
	for i, r := range [...]parts.Result{parts.Broken, parts.Advice, parts.NotChecked, parts.InOrder} {
		cx, cy := x+float64(i%2)*s.wide*0.58, y+float64(i/2)*15.5
		parts.ResultMark(s.Pen, cx+5.4, cy+5, 4.65, r, parts.Ink)
		s.Text(cx+12.2, cy+6.2, parts.Value().Style, r.String())
	}
	y = s.head(0, y+31, "Answers")
	parts.OpenBox(s.Pen, x, y, 8)
	s.Text(x+10, y+5.2, parts.Value().Style, "open")
	parts.TickedBox(s.Pen, x+22, y, 8)
	s.Text(x+32, y+5.2, parts.Value().Style, "right")
	parts.NoteFlag(s.Pen, x+43, y, 8)
	s.Text(x+52, y+5.2, parts.Value().Style, "note")
}

func (s sheet) lines(y float64) {
	x := s.x[1]
	y = s.head(1, y, "Dimension line")
	shirt := parts.Ground{Shape: page.RectPath(x, y+12, s.wide, 16), Panel: tidewater, On: parts.WhiteOrInk(tidewater, egret)}
	s.FillPath(shirt.Shape, geom.Identity(), tidewater)
	ink := geom.Rect{Min: geom.Point{X: x + 6, Y: y + 20}, Max: geom.Point{X: x + 50, Y: y + 25}}
	for _, at := range [...]float64{ink.Min.X, ink.Max.X} {
		parts.Extension(s.Pen, geom.Point{X: at, Y: ink.Min.Y}, geom.Point{X: at, Y: y + 6}, &shirt)
	}
	s.FillRect(ink.Min.X, ink.Min.Y, ink.Width(), ink.Height(), egret)
	parts.WidthLine(s.Pen, parts.Width{X1: ink.Min.X, X2: ink.Max.X, Y: y + 6, Value: length.Page(277.8, length.Inch, length.Nearest), Word: "name"})
	parts.WidthLine(s.Pen, parts.Width{X1: x + 6, X2: x + 14, Y: y + 34, Value: "2 ½ in", Word: "beside a short line"})
	shirt.Shape = page.RectPath(x, y+38, s.wide, 7)
	s.FillPath(shirt.Shape, geom.Identity(), tidewater)
	parts.WidthLine(s.Pen, parts.Width{X1: x + 6, X2: x + 50, Y: y + 43, Value: "10 ¹⁄₁₆ in", Word: "number", On: &shirt.On})
	weak := parts.WhiteOrInk(0x7D7D7D)
	s.FillRect(x, y+47, s.wide, 7, 0x7D7D7D)
	parts.WidthLine(s.Pen, parts.Width{X1: x + 6, X2: x + 50, Y: y + 52, Value: "10 ¹⁄₁₆ in", Word: "with a halo", On: &weak})
	y = s.head(1, y+60, "Chain: where the words go")
	steps := []parts.Step{{"3 ⅛ in", "step 6.2 mm or more: word below"}, {"1 ¾ in", "word below, tight"}, {"1 ½ in", "under 6.2: same line"}, {"¼ in", "under 3.4: led out"}, {"8 in", "number"}}
	parts.ChainLine(s.Pen, parts.Chain{X: x + 4, Levels: []float64{y + 1, y + 11, y + 17.4, y + 22.4, y + 25, y + 41}, Steps: steps})
	y = s.head(1, y+47, "Line weights, mm")
	for i, w := range [...]float64{parts.HeadBar, parts.Outline, parts.DimensionLine, parts.Seam, parts.Hair} {
		at := y + float64(i)*4.4
		s.Line(x, at, x+14, at, parts.Ink, page.Line{Weight: w})
		s.Text(x+17, at+0.9, parts.Note().In(parts.Ink).Style, fmt.Sprintf("%.2f", w))
	}
}

func (s sheet) instruments(y float64) {
	x, note := s.x[2], parts.Note().In(parts.Ink)
	y = s.head(2, y, "Tape, zero at the top of the shoulder")
	parts.Tape(s.Pen, x+5, y+4, y+48, 1.0/7, length.Inch)
	parts.Tape(s.Pen, x+17, y+4, y+48, 1.0/7, length.Centimetre)
	s.Paragraph(x+26, y+5, s.wide-26, note.Leading, note.Style, "7.6 mm wide; inch ticks 1.5, halves 0.8, fives 2.0 mm. Metric: centimetres 0.9, fives 1.5, tens 2.0.")
	y = s.head(2, y+54, "Scale bar, two readings")
	parts.ScaleBar(s.Pen, x, y+3.4, 1.0/14, 34, length.Inch, "shirt")
	parts.ScaleBar(s.Pen, x, y+15.4, 1.0/7, 34, length.Centimetre, "shirt")
	y = s.head(2, y+24, "Fingerprint comb")
	parts.Comb(s.Pen, x+1, y, code)
	s.Text(x+1, y+9, parts.Value().Style, parts.Code(code))
	s.Paragraph(x+28, y+2.4, s.wide-28, note.Leading, note.Style, "16 teeth hang from a rule, one a hex digit.")
	y = s.head(2, y+14, "Colour chips")
	parts.ColourChip(s.Pen, x, y, 25, parts.Chip{Key: "a", Name: "Tidewater", Colour: tidewater, Use: "shirt"})
	parts.ColourChip(s.Pen, x+30, y, 25, parts.Chip{Key: "b", Colour: marshGold, Use: "outlines, collar and cuffs"})
	y = s.head(2, y+25, "From memory")
	parts.MemoryBar(s.Pen, x, y-1, 8)
	s.Text(x+5, y+2.4, parts.Caption().Bold().Style, parts.MemoryWords)
}

func (s sheet) keyAndRuler() {
	x, y := s.x[3], s.grid.Bottom
	parts.PageRuler(s.Pen, x, y+8, 26, 2, 6)
	parts.KeyLead(s.Pen, geom.Point{X: x + 35, Y: y + 2}, geom.Point{X: x + 50, Y: y + 8}, "c")
}

func (s sheet) tileAndType(y float64) {
	x := s.x[3]
	y = s.head(3, y, "A tile and its caption")
	s.tile(x, y)
	y = s.head(3, y+49, "Type, IBM Plex Sans")
	for _, row := range [...]struct {
		t    parts.Type
		text string
	}{
		{parts.PageTitle(), "Page title"}, {parts.Heading(), "No. 17, view title"}, {parts.Sentence(), "Sentence, one or two lines"},
		{parts.TableText(), "Table text"}, {parts.Value(), "Values and heads"}, {parts.Note(), "Notes"}, {parts.Label(), "Labels, the smallest"},
	} {
		y += row.t.Leading*page.MMPerPoint*0.62 + 1.4
		s.Text(x, y, row.t.Style, row.text)
		s.Text(x+s.wide, y, parts.Note().To(page.End).Style, fmt.Sprintf("%g/%g", row.t.Size, row.t.Leading))
		y += row.t.Leading * page.MMPerPoint * 0.3
	}
	y = s.head(3, y+4, "Page colours") + 2
	for _, row := range [...]struct {
		c    page.Colour
		name string
	}{{parts.Ink, "ink"}, {parts.Slate, "slate"}, {parts.Rule, "rule"}, {parts.Mist, "mist"}, {parts.Tile, "tile"}, {parts.Decide, "decide"}} {
		s.FillRect(x, y-2.6, 8, 4.2, row.c)
		s.StrokeRect(x, y-2.6, 8, 4.2, parts.Ink, page.Line{Weight: parts.Hair})
		s.Text(x+10.5, y+0.6, parts.Caption().Bold().Style, row.name)
		s.Text(x+22, y+0.6, parts.Note().In(parts.Ink).Style, row.c.Hex())
		s.Text(x+s.wide, y+0.6, parts.Note().To(page.End).Style, fmt.Sprintf("%.1f : 1 on white", parts.Contrast(row.c, page.White)))
		y += 5.6
	}
}

// tile draws a stand-in for a shirt in a window, with posts and a caption.
func (s sheet) tile(x, y float64) {
	const w, h = 46.3, 35.0
	s.FillRect(x, y, w, h, parts.Tile)
	shirt := standInShirt()
	at := geom.Translate(x+w/2, y+1.3)
	s.Clip(page.RectPath(x, y, w, h), geom.Identity(), func(p *page.Pen) {
		art := p.Book().Art("shirt", func(q *page.Pen) {
			q.FillPath(shirt, geom.Identity(), tidewater)
			q.StrokePath(shirt, geom.Identity(), parts.Ink, page.Line{Weight: parts.OutlineSmall, Join: page.RoundJoin})
		})
		p.Use(art, at)
		on := parts.WhiteOrInk(tidewater, egret)
		for _, side := range [2]float64{-1, 1} {
			p.Line(x+w/2+side*9.6, y+7, x+w/2+side*9.6, y+14, on.Line, page.Line{Weight: parts.Hair})
		}
	})
	s.StrokeRect(x, y, w, h, parts.Rule, page.Line{Weight: parts.Hair})
	s.Spans(x, y+h+4.5, page.Start, parts.Heading().Span("21"), parts.GroupTitle().Span("  BRIGHTWATER"))
	s.Text(x+w, y+h+4.5, parts.Sentence().To(page.End).Style, "M")
	parts.VerdictLine(s.Pen, x, y+h+8.7, parts.Eased, "1 ¾ in high")
}

func standInShirt() geom.Path {
	var p geom.Path
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	p.MoveTo(at(-6.5, 0))
	p.QuadTo(at(0, 2.8), at(6.5, 0))
	p.LineTo(at(15, 3))
	p.LineTo(at(25, 9))
	p.LineTo(at(21, 18))
	p.LineTo(at(17, 15))
	p.CubeTo(at(16.5, 25), at(17, 35), at(17.5, 47))
	p.LineTo(at(-17.5, 47))
	p.CubeTo(at(-17, 35), at(-16.5, 25), at(-17, 15))
	p.LineTo(at(-21, 18))
	p.LineTo(at(-25, 9))
	p.LineTo(at(-15, 3))
	p.Close()
	return p
}
