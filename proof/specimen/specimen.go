// Package specimen draws the typefaces that a shop can choose from: a name,
// letters and digits of each at one true size, with what the face is for.
package specimen

import (
	"fmt"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// Face is one face to show.
type Face struct {
	Face       *typeface.Face
	Name, Role string
	Note       string // licence, axes
	Script     bool   // shown as typed, not in capitals
}

// What is shown of a face, and the letter heights in mm.
const (
	shown    = "Abernathy-Møller"
	capitals = "ABERNATHY-MØLLER"
	digits   = "0123456789"

	sampleHeight = 9.0
	rowHeight    = 25.5
	margin       = 14.0
)

// Pages draws the faces, as many to an upright sheet as it holds.
func Pages(sheet page.Sheet, faces []Face) (*page.Book, error) {
	book, err := page.NewBook()
	if err != nil {
		return nil, err
	}
	sheet = sheet.Portrait()
	const first = 34.0
	rows := int((sheet.H - first - margin) / rowHeight)
	var p *page.Page
	for i, f := range faces {
		if i%rows == 0 {
			p = book.Add(sheet, "Faces")
			p.Text(margin, 24, parts.PageTitle().Style, "Faces")
			p.Text(sheet.W-margin, 24, parts.Note().To(page.End).Style,
				fmt.Sprintf("Capitals %g mm high, less where a line would be too long", sampleHeight))
		}
		if err := row(p.Pen, sheet, first+float64(i%rows)*rowHeight, f); err != nil {
			return nil, fmt.Errorf("face %s: %w", f.Name, err)
		}
	}
	return book, nil
}

func row(p *page.Pen, sheet page.Sheet, y float64, f Face) error {
	p.Line(margin, y, sheet.W-margin, y, parts.Rule, page.Line{Weight: parts.Hair})
	x := margin + p.Text(margin, y+5, parts.Heading().Style, f.Name)
	p.Text(x+3, y+5, parts.Note().In(parts.Slate).Style, f.Note)
	p.Text(margin, y+9.2, parts.Note().In(parts.Slate).Style, f.Role)
	sample := capitals
	if f.Script {
		sample = shown
	}
	width := sheet.W - 2*margin
	name, err := set(f.Face, sample, width*0.6)
	if err != nil {
		return err
	}
	p.FillPath(name, upright(margin, y+21.5), parts.Ink)
	number, err := set(f.Face, digits, width*0.37)
	if err != nil {
		return err
	}
	p.FillPath(number, upright(sheet.W-margin-number.Bounds().Width(), y+21.5), parts.Ink)
	return nil
}

// set returns a line at the sample height, or lower where it would be wider
// than the limit, from x = 0.
func set(face *typeface.Face, text string, limit float64) (geom.Path, error) {
	r := fit.Request{Text: text, Face: face, Height: sampleHeight, Limit: limit, NoWaysOut: true,
		Wdth: nan, Wght: weightOf(face), Ladder: fit.Ladder{Width: 1, Height: 1}}
	n, err := fit.Fit(r)
	if err != nil {
		return nil, err
	}
	ink := n.Ink()
	return ink.Transform(geom.Translate(-ink.Bounds().Min.X, 0)), nil
}

// upright places y-up lettering with its origin at x, y of the page.
func upright(x, y float64) geom.Affine { return geom.Affine{A: 1, D: -1, E: x, F: y} }
