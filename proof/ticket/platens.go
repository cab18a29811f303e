package ticket

import (
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/platen"
	"yokeline/lettering/sizes"
)

// pressedRows puts sizes together whose platen and seams are alike.
func (d *document) pressedRows(presses []sizes.Press) []pressedRow {
	var out []pressedRow
	for _, at := range d.together(presses) {
		first := len(out)
		for _, p := range presses {
			if !at.has(p, presses) {
				continue
			}
			row := d.pressedRow(spotTitle(at), p)
			i := slices.IndexFunc(out[first:], func(r pressedRow) bool { return r.like(row) })
			if i < 0 {
				out = append(out, row)
				continue
			}
			out[first+i].sizes = append(out[first+i].sizes, p.Size)
		}
	}
	return out
}

// has reports whether a press is that of a spot on its size: of all its pieces
// at once, where a size has several.
func (s spot) has(p sizes.Press, all []sizes.Press) bool {
	if p.Side != s.side {
		return false
	}
	if len(s.places) == 1 {
		return p.Place == s.places[0]
	}
	stacked := slices.ContainsFunc(all, func(o sizes.Press) bool { return o.Place == "" && o.Side == p.Side && o.Size == p.Size })
	if stacked {
		return p.Place == ""
	}
	return slices.Contains(s.places, p.Place)
}

func (r pressedRow) like(o pressedRow) bool {
	return r.platen == o.platen && r.presses == o.presses && slices.Equal(r.art, o.art) && slices.Equal(r.near, o.near)
}

func (d *document) pressedRow(what string, p sizes.Press) pressedRow {
	row := pressedRow{what: what, behind: true, presses: p.Fit.Presses, sizes: []garment.Size{p.Size}, platen: "none that is listed"}
	if p.Fit.Presses > 0 {
		row.platen = d.platenWords(p.Fit)
	}
	for _, u := range p.Fit.Under {
		if words := u.Words(p.Side); u.FromPiece == 0 {
			row.art = append(row.art, words)
			row.behind = row.behind && u.Behind
		} else {
			row.near = append(row.near, words)
		}
	}
	slices.Sort(row.near) // by distance they would differ from size to size
	return row
}

// platenWords names a platen and how the garment lies on it.
func (d *document) platenWords(f platen.Fit) string {
	words := side(f.Platen.Width) + " × " + side(f.Platen.Height)
	if f.Turned {
		words += ", turned"
	}
	if f.Presses == 2 {
		words += ", twice, overlapping by " + length.Page(f.Overlap, d.order.Units, length.Down)
	}
	return words
}

func side(l length.Length) string {
	return length.Page(l.MM(), l.Unit(), length.Nearest)
}
