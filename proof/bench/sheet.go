package bench

import (
	"io"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
)

// Sheet is one sheet, or one cut from a roll, with everything that is made from
// it at its place. Its origin is the lower left corner, y grows upward.
type Sheet struct {
	Name          string  // sheet 2, gold cut heat-transfer film
	Width, Height float64 // mm
	Parts         []SheetPart
}

// SheetPart is the art of one part, moved to its place, with its label.
type SheetPart struct {
	Art   layers.Art
	Label Label
}

// SheetSVG writes a sheet as SVG does one piece: what is cut or printed alike is
// one group.
func (b *Bench) SheetSVG(w io.Writer, s Sheet, o Options) error {
	groups, art, err := b.sheet(s, o)
	if err != nil {
		return err
	}
	o.Label, o.whole = Label{Player: s.Name}, true
	return writeSVG(w, groups, art, o)
}

// SheetPDF writes a sheet as PDF does one piece.
func (b *Bench) SheetPDF(w io.Writer, s Sheet, o Options) error {
	groups, art, err := b.sheet(s, o)
	if err != nil {
		return err
	}
	o.Label, o.whole = Label{Player: s.Name}, true
	return writePDF(w, groups, art, o)
}

// groupKey tells groups that are one on a sheet.
type groupKey struct {
	name, kind, colour string
	order              int
	fill, line         paint
}

// sheet gathers the groups of all parts, those alike as one, in the order in
// which they first appear, with the art that the sheet is as a whole.
func (b *Bench) sheet(s Sheet, o Options) ([]group, layers.Art, error) {
	whole := layers.Art{Box: geom.Rect{Max: geom.Point{X: s.Width, Y: s.Height}}, Ink: geom.EmptyRect()}
	var out []group
	at := map[groupKey]int{}
	for _, part := range s.Parts {
		whole.Method, whole.Mirrored, whole.Cut = part.Art.Method, part.Art.Mirrored, part.Art.Cut
		whole.Ink = whole.Ink.Union(part.Art.Ink)
		groups, err := b.groups(part.Art, Options{Label: part.Label})
		if err != nil {
			return nil, whole, err
		}
		for _, g := range groups {
			k := groupKey{name: g.name, kind: g.kind, colour: g.colour, order: g.order}
			if g.fill != nil {
				k.fill = *g.fill
			}
			if g.line != nil {
				k.line = *g.line
			}
			n, known := at[k]
			if !known {
				n = len(out)
				at[k], out = n, append(out, g)
				out[n].path = nil
			}
			out[n].path = append(out[n].path, g.path...)
		}
	}
	if o.Unsigned {
		out = append(out, b.unsignedGroup(whole))
	}
	return out, whole, nil
}
