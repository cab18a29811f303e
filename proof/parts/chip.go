package parts

import (
	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// Colour chips, mm.
const (
	// ChipHeight is the height of a chip's field; it is a column less ChipShort wide.
	ChipHeight = 9.5
	ChipShort  = 3.0
	chipGrey   = 6.5
	chipKey    = 3.2 // of the key letter's middle from the left and lower edges
	keyRadius  = 1.75
	leadEdge   = 0.45
	leadDot    = 0.5
	dotEdge    = 0.15
)

// Chip is one team colour as the page of the look shows it.
type Chip struct {
	Key    string // the letter that leads to the place on the drawing
	Name   string // empty: the hex figure alone
	Colour page.Colour
	Use    string
}

// ColourChip draws a chip with its top left corner at x, y: the colour, at its
// right the same in grey print, and its words below. The baseline under the
// last line is returned.
func ColourChip(p *page.Pen, x, y, width float64, c Chip) float64 {
	p.FillRect(x, y, width, ChipHeight, c.Colour)
	p.FillRect(x+width-chipGrey, y, chipGrey, ChipHeight, Grey(c.Colour))
	p.StrokeRect(x, y, width, ChipHeight, Ink, solid(DimensionLine))
	p.Line(x+width-chipGrey, y, x+width-chipGrey, y+ChipHeight, Ink, solid(DimensionLine))
	if c.Key != "" {
		KeyRing(p, x+chipKey, y+ChipHeight-chipKey, c.Key)
	}
	at := y + ChipHeight + 3.6
	if c.Name != "" {
		t, _ := Shrunk(p, Value(), Label().Size, width+ChipShort, c.Name)
		at = p.Paragraph(x, at, width+ChipShort, 3.1/page.MMPerPoint, t.Style, c.Name)
	}
	at = p.Paragraph(x, at, width, 2.9/page.MMPerPoint, Note().Style, c.Colour.Hex())
	if c.Use == "" {
		return at
	}
	return p.Paragraph(x, at, width+ChipShort+Gutter/2, 2.9/page.MMPerPoint, Note().Style, c.Use)
}

// KeyRing draws a key letter in its ring about x, y.
func KeyRing(p *page.Pen, x, y float64, key string) {
	p.FillCircle(x, y, keyRadius, page.White)
	p.StrokeCircle(x, y, keyRadius, Ink, solid(DimensionLine))
	p.Text(x, y+0.95, Caption().Bold().To(page.Middle).Style, key)
}

// KeyLead draws a key letter at from, and a thin line with a white edge to a
// dot on the thing itself.
func KeyLead(p *page.Pen, from, to geom.Point, key string) {
	p.Line(from.X, from.Y, to.X, to.Y, page.White, solid(leadEdge))
	p.Line(from.X, from.Y, to.X, to.Y, Ink, solid(DimensionLine))
	p.FillCircle(to.X, to.Y, leadDot+dotEdge/2, page.White)
	p.FillCircle(to.X, to.Y, leadDot-dotEdge/2, Ink)
	KeyRing(p, from.X, from.Y, key)
}
