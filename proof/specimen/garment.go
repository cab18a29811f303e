package specimen

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// The drawing of one garment, mm. The views of both its sheets have one scale.
const (
	drawnTitle  = 24.0 // baseline of the title
	drawnTop    = 33.0 // of the content
	ordinates   = 34.0 // room for the levels beside a view
	betweenView = 22.0 // between front and back
	lanesAbove  = 15.5 // room for the widths over a view
	legendHigh  = 34.0 // what the second sheet needs under its views
	listHead    = 13.0 // from the views to the first row of the list
	listRowHigh = 4.7
)

// Units are the units that lengths are printed in, the first of them that of the
// scale bar.
type Units []length.Unit

// words prints a length in every unit.
func (u Units) words(mm float64) string {
	var out []string
	for _, unit := range u {
		out = append(out, length.Page(mm, unit, length.Nearest))
	}
	return strings.Join(out, " · ")
}

// Paper is the sheet that goes with the first unit.
func (u Units) Paper() page.Sheet {
	if len(u) > 0 && u[0] == length.Inch {
		return page.Letter()
	}
	return page.A4()
}

// drawnGarment is one garment in its book.
type drawnGarment struct {
	book  *page.Book
	g     *garment.Garment
	units Units
	k     float64 // mm of paper for 1 mm of garment
}

// Garment draws one garment: its measures where they are taken, its panels and
// usual places, and a list of the measures with what each rests on. The error is
// that of a text face that cannot be opened.
func Garment(g *garment.Garment, units Units) (*page.Book, error) {
	book, err := page.NewBook()
	if err != nil {
		return nil, err
	}
	d := &drawnGarment{book: book, g: g, units: units}
	d.k = d.scale()
	d.measured()
	d.panelled()
	return book, nil
}

// scale is the largest ratio at which both views fit on both sheets.
func (d *drawnGarment) scale() float64 {
	grid := parts.NewGrid(d.units.Paper().Landscape())
	box := d.g.Bounds(garment.Front).Union(d.g.Bounds(garment.Back))
	across := (grid.Live() - 2*ordinates - betweenView) / (2 * box.Width())
	under := math.Max(legendHigh, listHead+listRowHigh*float64(len(d.figures())))
	down := (grid.Bottom - drawnTop - lanesAbove - under) / box.Height()
	return 1 / math.Ceil(1/math.Min(across, down))
}

// worth says whether the figures are generic: those that stand in the table
// with the same basis, and those that fill a maker's sheet and say so.
func (d *drawnGarment) worth() string {
	_, table, err := garment.Standard(d.g.Cut(), d.g.Size())
	mine, generic := d.figures(), 0
	for _, f := range mine {
		if err == nil && slices.Contains(table, f) || strings.HasPrefix(f.Basis, "generic") {
			generic++
		}
	}
	switch generic {
	case len(mine):
		return sentenceCase(garment.Generic) + "."
	case 0:
		return "Measures from the maker's spec sheet."
	}
	return fmt.Sprintf("%d of %d measures are generic: ask the maker for them.", generic, len(mine))
}

// views are front and back where they stand on a landscape sheet.
func (d *drawnGarment) views(grid parts.Grid, panels bool) [2]flat {
	wide := d.g.Bounds(garment.Front).Width() * d.k
	above := math.Max(-d.g.Bounds(garment.Front).Min.Y, -d.g.Bounds(garment.Back).Min.Y) * d.k
	middle := (grid.Left + grid.Right) / 2
	var out [2]flat
	for i, s := range sides() {
		x := middle + (wide+betweenView)/2*float64(2*i-1)
		out[i] = flat{garment: d.g, side: s, k: d.k, x: x, y: drawnTop + lanesAbove + above, panels: panels}
	}
	return out
}

// sheet begins a landscape page.
func (d *drawnGarment) sheet(title, note string) (*page.Page, parts.Grid) {
	sheet := d.units.Paper().Landscape()
	grid := parts.NewGrid(sheet)
	p := d.book.Add(sheet, title)
	d.head(p, grid, note)
	garmentFoot(p.Pen, grid, d.k, d.units[0], d.worth())
	return p, grid
}

func (d *drawnGarment) head(p *page.Page, grid parts.Grid, note string) {
	info, _ := d.g.Cut().Info()
	end := grid.Left + p.Text(grid.Left, drawnTitle, parts.PageTitle().Style, sentenceCase(info.Title)+", "+d.g.Size().String())
	p.Text(end+4, drawnTitle, parts.Note().Style, info.About)
	p.Text(grid.Right, drawnTitle, parts.Sentence().To(page.End).Style, note)
}

func sentenceCase(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// measured draws both sides with a line for every measure.
func (d *drawnGarment) measured() {
	p, grid := d.sheet("Measures", "Measures")
	taken, low := d.g.Taken(), 0.0
	for _, v := range d.views(grid, false) {
		v.paint(p.Pen)
		d.viewTitle(p.Pen, v)
		mine := slices.DeleteFunc(slices.Clone(taken), func(t garment.Taken) bool { return t.Side != v.side })
		d.widths(p.Pen, v, mine)
		d.levels(p.Pen, v, mine)
		d.seams(p.Pen, v, mine)
		low = math.Max(low, v.bounds().Max.Y)
	}
	d.list(p.Pen, grid, low+listHead-listRowHigh)
}

// viewTitle names a view at the outer end of its top.
func (d *drawnGarment) viewTitle(p *page.Pen, v flat) {
	b := v.bounds()
	if v.side == garment.Front {
		p.Text(b.Min.X-ordinates+2, drawnTop+5.2, parts.Heading().Style, "Front")
		return
	}
	p.Text(b.Max.X+ordinates-2, drawnTop+5.2, parts.Heading().To(page.End).Style, "Back")
}

// widths draws what runs straight across: over the view what lies at its top,
// the shorter one nearer, and on the cloth what lies lower down.
func (d *drawnGarment) widths(p *page.Pen, v flat, taken []garment.Taken) {
	lane := v.bounds().Min.Y - parts.FirstLane
	above := slices.DeleteFunc(slices.Clone(taken), func(t garment.Taken) bool { return t.Run != garment.Across || !d.nearTop(t) })
	slices.SortStableFunc(above, func(a, b garment.Taken) int {
		return int(math.Round(a.Path.Bounds().Width() - b.Path.Bounds().Width()))
	})
	for _, t := range above {
		b := t.Path.Bounds()
		from, to := v.point(b.Min), v.point(b.Max)
		for _, x := range []float64{from.X, to.X} {
			parts.Extension(p, geom.Point{X: x, Y: from.Y}, geom.Point{X: x, Y: lane}, nil)
		}
		parts.WidthLine(p, parts.Width{X1: from.X, X2: to.X, Y: lane, Word: t.Measure, Value: d.units.words(b.Width())})
		lane -= parts.LaneStep
	}
	for _, t := range taken {
		if t.Run == garment.Across && !d.nearTop(t) {
			d.widthOnCloth(p, v, t)
		}
	}
}

// widthOnCloth draws a width where it is taken. Its text has a white edge where
// it crosses a seam; where the line is too short for it, it stands outside.
func (d *drawnGarment) widthOnCloth(p *page.Pen, v flat, t garment.Taken) {
	b := t.Path.Bounds()
	from, to := v.point(b.Min), v.point(b.Max)
	p.Line(from.X, from.Y, to.X, to.Y, parts.Ink, page.Line{Weight: parts.DimensionLine})
	parts.DimensionTick(p, from.X, from.Y, parts.Ink)
	parts.DimensionTick(p, to.X, to.Y, parts.Ink)
	spans := []page.Span{parts.Label().Span(t.Measure + "  "), parts.Value().Span(d.units.words(b.Width()))}
	wide := 0.0
	for _, s := range spans {
		wide += p.Width(s.Style, s.Text)
	}
	x, y := (from.X+to.X-wide)/2, from.Y-0.9
	if to.X-from.X < wide+2 {
		x, y = v.bounds().Max.X+levelText, from.Y+1
		parts.Extension(p, to, geom.Point{X: x - 2*levelText, Y: to.Y}, nil)
	}
	at := x
	for _, s := range spans {
		p.StrokePath(p.Outlines(at, y, s.Style, s.Text), geom.Identity(), page.White, page.Line{Weight: 2 * parts.HaloWidth, Join: page.RoundJoin})
		at += p.Width(s.Style, s.Text)
	}
	p.Spans(x, y, page.Start, spans...)
}

// nearTop reports whether a width is measured at the top of the garment.
func (d *drawnGarment) nearTop(t garment.Taken) bool {
	const topShare = 0.14
	return t.Path.Bounds().Min.Y < topShare*d.g.Bounds(t.Side).Height()
}
