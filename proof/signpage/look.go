package signpage

import (
	"html/template"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/parts"
	"yokeline/proof/sheets"
	"yokeline/proof/shirt"
)

// look is the drawing of page 1 and what stands under it.
type look struct {
	*sheets.ScreenLook
	Wide  string        // view box of the symbol "look"
	Small template.HTML // front, tape and back without lengths, for a phone
}

// tapeRoom is the room for the tape between two small views, mm of drawing.
const tapeRoom = 12.0

// look draws the look, nil when no player has a size.
func (c *content) look() (*look, error) {
	l := c.screen.Look
	if l == nil {
		return nil, nil
	}
	a := c.art
	a.symbols = append(a.symbols, a.drawings.Symbol(l.Page, l.View, "look"))
	small, err := c.smallLook(l)
	return &look{ScreenLook: l, Wide: box(geom.Rect{Max: geom.Point{X: l.View.Width(), Y: l.View.Height()}}), Small: small}, err
}

func (c *content) smallLook(l *sheets.ScreenLook) (template.HTML, error) {
	p := c.in.Sized.Players[l.Player]
	sheet := c.art.sheet()
	front, back := c.art.view(p, garment.Front, shirt.NoPosts), c.art.view(p, garment.Back, shirt.NoPosts)
	half := tapeRoom / 2
	front.X = -half - front.Bounds().Max.X
	back.X = half - back.Bounds().Min.X
	view := geom.EmptyRect()
	for _, v := range [...]shirt.View{front, back} {
		if err := v.Paint(sheet.Pen); err != nil {
			return "", err
		}
		view = view.Union(v.Bounds().Grow(0.5))
	}
	parts.Tape(sheet.Pen, 0, 0, view.Max.Y, scale, c.in.Sized.Order.Units)
	view = view.Include(geom.Point{Y: view.Max.Y + 2.5}).Include(geom.Point{Y: -5})
	return c.art.picture(sheet, view, "small", l.Sentence, ""), nil
}
