package specimen

import (
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// The columns of the list of measures, mm.
const (
	listUnits = 31.0 // right end of the column before the first unit
	listUnit  = 20.0 // one unit
	listHow   = 6.0  // from the last unit to how a figure was worked out
	listBasis = 72.0 // from there to what it rests on
)

// list writes every measure with how it was worked out and what it rests on; y
// is the baseline of its head.
func (d *drawnGarment) list(p *page.Pen, grid parts.Grid, y float64) {
	how := grid.Left + listUnits + listUnit*float64(len(d.units)) + listHow
	note := parts.Note()
	p.Text(grid.Left, y, note.Style, "measure")
	for i, unit := range d.units {
		p.Text(d.unitAt(grid, i), y, note.To(page.End).Style, unitName(unit))
	}
	p.Text(how, y, note.Style, "how, in mm: k sizes from M, C girth, H stature")
	p.Text(how+listBasis, y, note.Style, "what it rests on")
	p.Line(grid.Left, y+1.5, grid.Right, y+1.5, parts.Ink, page.Line{Weight: parts.Outline})
	for i, f := range d.figures() {
		y += listRowHigh
		if i > 0 {
			p.Line(grid.Left, y-3.2, grid.Right, y-3.2, parts.Rule, page.Line{Weight: parts.Hair})
		}
		d.listRow(p, grid, how, y, f)
	}
}

// figures are the measures that the cut has: a tank has no sleeve.
func (d *drawnGarment) figures() []garment.Figure {
	return slices.DeleteFunc(d.g.Figures(), func(f garment.Figure) bool { return f.MM == 0 })
}

func (d *drawnGarment) unitAt(grid parts.Grid, i int) float64 {
	return grid.Left + listUnits + listUnit*float64(i+1)
}

func (d *drawnGarment) listRow(p *page.Pen, grid parts.Grid, how, y float64, f garment.Figure) {
	p.Text(grid.Left, y, parts.Caption().Bold().Style, f.Measure)
	for i, unit := range d.units {
		p.Text(d.unitAt(grid, i), y, parts.Caption().To(page.End).Style, length.Page(f.MM, unit, length.Nearest))
	}
	note := parts.Note()
	p.Text(how, y, note.Style, parts.Shortened(p, note, listBasis-3, f.Formula))
	p.Text(how+listBasis, y, note.Style, parts.Shortened(p, note, grid.Right-how-listBasis, strings.TrimSpace(f.Basis)))
}

func unitName(u length.Unit) string {
	if u == length.Inch {
		return "inches"
	}
	return "centimetres"
}
