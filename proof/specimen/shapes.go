package specimen

import (
	"fmt"
	"math"

	"yokeline/lettering/edges"
	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/tail"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// The team that the shapes are shown on, and their sizes in mm.
const (
	shapeText   = "HERONS"
	scriptText  = "Herons"
	shapeHeight = 15.0
	tailHeight  = 11.5 // a curled tail hangs as deep again as its letters
	shapeRoom   = 78.0
	shapeRise   = 5.0
	shapeRadius = 170.0
	leanDegrees = 12.0

	cellHeight = 37.0
)

// shaped is one cell of the sheet.
type shaped struct {
	name, how string
	draw      func() (geom.Path, error)
}

// Shapes draws every shape that a name may have in a block face, and tails
// under the script faces.
func Shapes(sheet page.Sheet, block *typeface.Face, scripts []*typeface.Face) (*page.Book, error) {
	book, err := page.NewBook()
	if err != nil {
		return nil, err
	}
	if err := cells(book, sheet.Portrait(), "Shapes", shapeCells(block)); err != nil {
		return nil, err
	}
	return book, cells(book, sheet.Portrait(), "Tails", tailCells(scripts))
}

// cells draws the list two to a row.
func cells(book *page.Book, sheet page.Sheet, title string, list []shaped) error {
	const first = 34.0
	perPage := 2 * int((sheet.H-first-margin)/cellHeight)
	wide := (sheet.W - 2*margin - 10) / 2
	var p *page.Page
	for i, c := range list {
		if i%perPage == 0 {
			p = book.Add(sheet, title)
			p.Text(margin, 24, parts.PageTitle().Style, title)
		}
		x := margin + float64(i%2)*(wide+10)
		y := first + float64(i%perPage/2)*cellHeight
		path, err := c.draw()
		if err != nil {
			return fmt.Errorf("%s: %w", c.name, err)
		}
		p.Line(x, y, x+wide, y, parts.Rule, page.Line{Weight: parts.Hair})
		end := x + p.Text(x, y+4.6, parts.Heading().Style, c.name)
		p.Text(end+2.5, y+4.6, parts.Note().In(parts.Slate).Style, c.how)
		box := path.Bounds()
		middle := y + 6.5 + (cellHeight-9)/2
		p.FillPath(path, geom.Affine{A: 1, D: -1, E: x + wide/2 - box.Center().X, F: middle + box.Center().Y}, parts.Ink)
	}
	return nil
}

func shapeCells(block *typeface.Face) []shaped {
	request := func() fit.Request {
		return fit.Request{Text: shapeText, Face: block, Wdth: nan, Wght: weightOf(block), Height: shapeHeight,
			Limit: shapeRoom, Ladder: fit.DefaultLadder(shapeHeight), NoWaysOut: true}
	}
	drawn := func(r fit.Request) func() (geom.Path, error) {
		return func() (geom.Path, error) {
			n, err := fit.Fit(r)
			return n.Ink(), err
		}
	}
	var out []shaped
	for _, s := range []fit.Shape{fit.Straight, fit.RadialArch, fit.RadialArchDown, fit.VerticalArch, fit.VerticalArchDown} {
		r, how := request(), ""
		if r.Shape = s; s != fit.Straight {
			r.Radius, how = shapeRadius, fmt.Sprintf("radius %.1f × the letter height", shapeRadius/shapeHeight)
		}
		out = append(out, shaped{s.String(), how, drawn(r)})
	}
	for _, f := range edges.Forms() {
		if f.Kind() == edges.Straight || f.String() == fit.VerticalArch.String() || f.String() == fit.VerticalArchDown.String() {
			continue
		}
		r := request()
		shape, err := f.ByRise(shapeRise)
		r.Edges = shape
		draw := drawn(r)
		if err != nil {
			draw = func() (geom.Path, error) { return nil, err }
		}
		out = append(out, shaped{f.String(), "rise a third of the letter height", draw})
	}
	r := request()
	r.Edges.Shear = leanDegrees * math.Pi / 180
	return append(out, shaped{"oblique", fmt.Sprintf("lean %g degrees", leanDegrees), drawn(r)})
}

func tailCells(scripts []*typeface.Face) []shaped {
	long, up, plain := tail.Default(), tail.Default(), tail.Default()
	long.Curl, up.Curl, up.Length = 0.75, -0.45, tail.Share(1.02)
	plain.Curl, plain.Taper, plain.Bow = 0, 0.2, 4
	var out []shaped
	for _, face := range scripts {
		for _, variant := range []struct {
			how string
			p   tail.Params
		}{{"as it comes", tail.Default()}, {"curl 75 %", long}, {"curl −45 %", up}, {"curl 0 %, taper 20 %", plain}} {
			out = append(out, shaped{face.Name(), variant.how, func() (geom.Path, error) { return tailed(face, variant.p) }})
		}
	}
	return out
}

func tailed(face *typeface.Face, p tail.Params) (geom.Path, error) {
	n, err := fit.Fit(fit.Request{Text: scriptText, Face: face, Wdth: nan, Wght: nan, Height: tailHeight, NoWaysOut: true})
	if err != nil {
		return nil, err
	}
	ink, err := n.Settled()
	if err != nil {
		return nil, err
	}
	drawn, err := tail.Draw(ink, tailHeight, p)
	return drawn.Joined.Path(), err
}
