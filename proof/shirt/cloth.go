package shirt

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// Cloth is the set of colours that a garment is painted in.
type Cloth struct {
	Body page.Colour
	Trim page.Colour   // collar, cuffs, bindings and side panels; Body when the job names none
	On   parts.OnShirt // lines and text on the body
}

// NewCloth returns the colours of a garment that carries the pieces. Colours of
// an order are always valid; one that is not is painted white.
func NewCloth(g order.GarmentChoice, pieces []order.Piece) Cloth {
	c := Cloth{Body: Paint(g.Colour), Trim: Paint(g.Colour)}
	if g.Trim.Hex != "" {
		c.Trim = Paint(g.Trim)
	}
	var lettering []page.Colour
	for _, p := range pieces {
		lettering = append(lettering, coloursOf(p)...)
	}
	c.On = parts.WhiteOrInk(c.Body, lettering...)
	return c
}

// Paint returns the colour of an order for the page; white for one that is not
// written as a colour.
func Paint(c order.Colour) page.Colour {
	v, err := page.ParseColour(c.Hex)
	if err != nil {
		return page.White
	}
	return v
}

// coloursOf returns the colours of a piece, its letters' first.
func coloursOf(p order.Piece) []page.Colour {
	out := []page.Colour{Paint(p.Colour)}
	for _, o := range p.Outlines {
		out = append(out, Paint(o.Colour))
	}
	return out
}

// fill returns the colour of a part of cloth.
func (c Cloth) fill(r garment.Role) page.Colour {
	switch {
	case IsTrim(r):
		return c.Trim
	case r == garment.Inside:
		return inShade(c.Body)
	case r == garment.InsideCollar:
		return inShade(c.Trim)
	}
	return c.Body
}

// inShade is the colour of the far layer seen through the neck. Near-black
// cloth is lifted instead, since black has no darker.
func inShade(of page.Colour) page.Colour {
	const nearBlack, shade, lift = 0.012, 0.17, 0.13
	if parts.Luminance(of) < nearBlack {
		return page.White.Mix(of, lift)
	}
	return page.Colour(0).Mix(of, shade)
}

// line returns the colour of a line on a part of cloth: the line colour of that
// cloth, mixed into it by share.
func (c Cloth) line(on garment.Role, share float64) page.Colour {
	ground := c.fill(on)
	lines := c.On
	if ground != c.Body {
		lines = parts.WhiteOrInk(ground)
	}
	return lines.Line.Mix(ground, share)
}

// Line draws a straight line on the body in its line colour, over a halo where
// the cloth needs one.
func (c Cloth) Line(pen *page.Pen, x1, y1, x2, y2 float64, l page.Line) {
	if c.On.Needs {
		pen.Line(x1, y1, x2, y2, c.On.Halo, page.Line{Weight: l.Weight + 2*parts.HaloWidth})
	}
	pen.Line(x1, y1, x2, y2, c.On.Line, l)
}

// IsTrim reports whether a part of a garment has the trim's colour.
func IsTrim(r garment.Role) bool {
	switch r {
	case garment.Collar, garment.Cuff, garment.Binding, garment.SidePanel:
		return true
	}
	return false
}
