package specimen

import (
	"math"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// The contact sheet of garments, mm.
const (
	sheetTitle = 21.0 // baseline of the title
	sheetHeads = 27.6 // baseline of the sizes over their columns
	sheetTop   = 29.6 // of the first row
	rowTitle   = 4.6  // from a row's rule to the baseline of its title
	rowHead    = 7.0  // from a row's rule to the highest thing drawn
	rowFoot    = 2.2  // from the lowest thing drawn to the next rule
	viewGap    = 2.5  // between front and back
	sizeGap    = 7.0  // between two sizes
)

// sides are the two faces in the order in which they are drawn.
func sides() [2]garment.Side { return [2]garment.Side{garment.Front, garment.Back} }

// ContactSizes are the sizes of the contact sheet: a child's, one that many grown
// players wear, and a wide one.
func ContactSizes() []garment.Size {
	return []garment.Size{{Group: garment.Youth, Letter: "M"}, {Group: garment.Adult, Letter: "L"}, {Group: garment.Adult, Letter: "3XL"}}
}

// Garments draws the front and back of every cut in the sizes, all at one scale,
// as large as the sheet allows. The unit is that of the scale bar. The error is
// that of a size that a cut does not have.
func Garments(sheet page.Sheet, sizes []garment.Size, unit length.Unit) (*page.Book, error) {
	book, err := page.NewBook()
	if err != nil {
		return nil, err
	}
	rows, err := contactRows(sizes)
	if err != nil {
		return nil, err
	}
	c := contact{book: book, sheet: sheet.Landscape(), grid: parts.NewGrid(sheet.Landscape()), unit: unit}
	c.columns(sizes, rows)
	for _, r := range rows {
		c.row(r)
	}
	return book, nil
}

// contactRow is one cut in its sizes.
type contactRow struct {
	info garment.CutInfo
	worn []*garment.Garment
}

func contactRows(sizes []garment.Size) ([]contactRow, error) {
	var out []contactRow
	for _, info := range garment.Cuts() {
		r := contactRow{info: info}
		for _, size := range sizes {
			g, err := garment.New(info.Cut, size)
			if err != nil {
				return nil, err
			}
			r.worn = append(r.worn, g)
		}
		out = append(out, r)
	}
	return out, nil
}

// reach is how far the row's tallest view stands above and below its datum.
func (r contactRow) reach() (above, below float64) {
	for _, g := range r.worn {
		for _, s := range sides() {
			b := g.Bounds(s)
			above, below = math.Max(above, -b.Min.Y), math.Max(below, b.Max.Y)
		}
	}
	return above, below
}

// contact is the sheet being drawn.
type contact struct {
	book  *page.Book
	sheet page.Sheet
	grid  parts.Grid
	unit  length.Unit
	k     float64    // mm of paper for 1 mm of garment
	sizes []column   // one a size
	page  *page.Page // nil before the first
	y     float64    // rule of the next row
}

// column is where the views of a size stand: the centre lines of front and back.
type column struct {
	size   garment.Size
	centre [2]float64
}

// columns settles the scale, the largest whole ratio at which the widest
// garments stand side by side, and the places of the views.
func (c *contact) columns(sizes []garment.Size, rows []contactRow) {
	widest := make([]float64, len(sizes))
	cloth, gaps := 0.0, float64(len(sizes))*(viewGap+sizeGap)-sizeGap
	for i := range sizes {
		for _, r := range rows {
			widest[i] = math.Max(widest[i], r.worn[i].Bounds(garment.Front).Width())
		}
		cloth += 2 * widest[i]
	}
	c.k = 1 / math.Ceil(cloth/(c.grid.Live()-gaps))
	spare := (c.grid.Live() - gaps - cloth*c.k) / float64(2*len(sizes))
	x := c.grid.Left
	for i, size := range sizes {
		wide := widest[i]*c.k + spare
		c.sizes = append(c.sizes, column{size, [2]float64{x + wide/2, x + viewGap + wide*1.5}})
		x += 2*wide + viewGap + sizeGap
	}
}

// row draws one cut, on a new page where this one is full.
func (c *contact) row(r contactRow) {
	above, below := r.reach()
	high := rowHead + (above+below)*c.k + rowFoot
	if c.page == nil || c.y+high > c.grid.Bottom {
		c.turn()
	}
	p := c.page
	p.Line(c.grid.Left, c.y, c.grid.Right, c.y, parts.Rule, page.Line{Weight: parts.Hair})
	end := c.grid.Left + p.Text(c.grid.Left, c.y+rowTitle, parts.GroupTitle().Style, r.info.Title)
	p.Text(end+2.5, c.y+rowTitle, parts.Note().Style, r.info.About)
	for i, g := range r.worn {
		for _, s := range sides() {
			flat{garment: g, side: s, k: c.k, plain: true, x: c.sizes[i].centre[s], y: c.y + rowHead + above*c.k}.paint(p.Pen)
		}
	}
	c.y += high
}

// turn begins a page.
func (c *contact) turn() {
	c.page, c.y = c.book.Add(c.sheet, "Garments"), sheetTop
	c.page.Text(c.grid.Left, sheetTitle, parts.PageTitle().Style, "Garments")
	c.page.Text(c.grid.Right, sheetTitle, parts.Note().To(page.End).Style, "Front and back, laid flat, all at one scale")
	for _, at := range c.sizes {
		c.page.Text((at.centre[0]+at.centre[1])/2, sheetHeads, parts.GroupTitle().To(page.Middle).Style, at.size.String())
	}
	garmentFoot(c.page.Pen, c.grid, c.k, c.unit, sentenceCase(garment.Generic)+".")
}

// garmentFoot draws the foot of a page of garments: scale and bar as on a proof,
// and worth, which says what the figures are worth.
func garmentFoot(p *page.Pen, grid parts.Grid, k float64, unit length.Unit, worth string) {
	p.Line(grid.Left, grid.Bottom, grid.Right, grid.Bottom, parts.Ink, page.Line{Weight: parts.Hair})
	const barUp, drawnUp, noteUp, barLength, afterBar = 15.9, 16.8, 13.4, 56.0, 26.0
	x := parts.ScaleBar(p, grid.Left, grid.Height-barUp, k, barLength, unit, "garment") + afterBar
	p.Text(x, grid.Height-drawnUp, parts.Value().Style, "Drawn "+parts.Ratio(k))
	note := parts.Label()
	p.Paragraph(x, grid.Height-noteUp, grid.Right-x, note.Leading, note.Style,
		worth+" If a ruler disagrees with the lower scale, print again at 100 %.")
}
