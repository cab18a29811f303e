package sheets

import (
	"math"
	"strconv"

	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// The block of sizes, mm.
const (
	sizesWidth  = 26.9
	sizePitch   = 5.75
	sizeBoxWide = 3.8
	sizeBoxHigh = 2.0
	sizeBoxStep = 2.6
	sizeColumns = 5 // more sizes are drawn as rows
)

// sizesBlock draws one small box a player, the drawn size filled.
func (l *look) sizesBlock(x, y float64) {
	l.heading(x, y, "Sizes in this order")
	counts, without := l.sizeCounts(), 0
	for _, p := range l.in.Sized.Players {
		if p.Garment == nil {
			without++
		}
	}
	switch {
	case len(counts) == 1 && without == 0:
		l.paragraph(x, y+5.2, sizesWidth, parts.Note().In(parts.Ink), "One size in this order.")
	case len(counts)+count(without > 0) <= sizeColumns:
		l.sizeStacks(x, y, counts, without)
	default:
		l.sizeRows(x, y, counts, without)
	}
}

// sizeStacks stands the boxes of each size on its letters.
func (l *look) sizeStacks(x, y float64, counts []sizeCount, without int) {
	most := without
	for _, c := range counts {
		most = max(most, c.players)
	}
	step := math.Min(sizeBoxStep, 17/float64(most))
	stack := func(i int, label string, n int, drawn bool) {
		at := x + float64(i)*sizePitch
		for j := range n {
			l.sizeBox(at, y+20-step*float64(j+1), sizeBoxWide, math.Min(sizeBoxHigh, step*0.77), drawn)
		}
		t := parts.Caption()
		if drawn {
			t = t.Bold()
		}
		t, _ = parts.Shrunk(l.Pen, t, parts.Label().Size, sizePitch-0.5, label)
		l.Text(at+sizeBoxWide/2, y+23.4, t.To(page.Middle).Style, label)
		l.Text(at+sizeBoxWide/2, y+26.2, parts.Label().To(page.Middle).Style, strconv.Itoa(n))
	}
	for i, c := range counts {
		stack(i, l.sizeLabel(c.size), c.players, c.size == l.player.Size)
	}
	if without > 0 {
		stack(len(counts), "none", without, false)
	}
}

// sizeRow is a size with its boxes in a row.
type sizeRow struct {
	label   string
	players int
	drawn   bool
}

// sizeRows lays the boxes of each size beside its letters; many sizes stand in
// two columns.
func (l *look) sizeRows(x, y float64, counts []sizeCount, without int) {
	var rows []sizeRow
	for _, c := range counts {
		rows = append(rows, sizeRow{l.sizeLabel(c.size), c.players, c.size == l.player.Size})
	}
	if without > 0 {
		rows = append(rows, sizeRow{label: "none", players: without})
	}
	const oneColumn, gap, low = 7, 2.0, 24.0
	width, each := sizesWidth, len(rows)
	if len(rows) > oneColumn {
		width, each = (sizesWidth-gap)/2, (len(rows)+1)/2
	}
	pitch := math.Min(4, low/float64(each))
	for i, r := range rows {
		l.sizeRow(x+float64(i/each)*(width+gap), y+5.2+float64(i%each)*pitch, width, r, rows)
	}
}

func (l *look) sizeRow(x, base, width float64, r sizeRow, all []sizeRow) {
	most := 0
	for _, a := range all {
		most = max(most, a.players)
	}
	const label, figure = 7.4, 2.2
	step := math.Min(sizeBoxHigh, (width-label-figure)/float64(most))
	t := parts.Label().In(parts.Ink)
	if r.drawn {
		t = t.Bold()
	}
	l.say(x, base, t, r.label)
	for j := range r.players {
		l.sizeBox(x+label+float64(j)*step, base-1.8, step*0.75, 1.8, r.drawn)
	}
	l.Text(x+width, base, parts.Label().To(page.End).Style, strconv.Itoa(r.players))
}

func (l *look) sizeBox(x, y, w, h float64, filled bool) {
	fill := page.White
	if filled {
		fill = parts.Ink
	}
	l.FillRect(x, y, w, h, fill)
	l.StrokeRect(x, y, w, h, parts.Ink, page.Line{Weight: parts.DimensionLine})
}
