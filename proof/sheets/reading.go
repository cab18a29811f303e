package sheets

import (
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/legibility"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// readingSource is where the angles of package legibility come from, said
// beside its figures.
const readingSource = "Smallest angles read: 5′ for the height, 1′ for the stroke (American Academy of Ophthalmology, Snellen letters)."

// reading returns from how far a piece is read; false where a name in small
// letters or a piece without a height has no figure.
func (d *document) reading(p sizes.Piece) (legibility.Reading, bool) {
	var stroke float64
	if p.Number != nil {
		stroke = p.Number.StrokeThin
	} else if stroke = p.Name.StrokeThin; p.Name.Text != strings.ToUpper(p.Name.Text) {
		return legibility.Reading{}, false // their own height is not known here
	}
	r, err := legibility.Read(p.Height(), stroke, string(p.Asked.Place), d.order.Units)
	return r, err == nil
}

// far prints a distance in feet or metres, rounded down, without the unit.
func (d *document) far(metres float64) string {
	const foot = 0.3048
	step := 1.0
	if d.order.Units == length.Inch {
		metres, step = metres/foot, 5
	}
	if metres < 10*step {
		step = 1
	}
	return fmt.Sprint(int(math.Floor(metres/step) * step))
}

// farUnit is the unit of far.
func (d *document) farUnit() string {
	if d.order.Units == length.Inch {
		return "ft"
	}
	return "m"
}

// readPlaces are the places whose distance is worth knowing.
func readPlaces() []garment.Place {
	return []garment.Place{garment.BackNumber, garment.BackName, garment.FrontNumber}
}

// readingRows are rows of the table of sizes: how far off a 20/20 and a 20/40
// eye reads numbers and names.
func (d *document) readingRows() []acrossCell {
	var out []acrossCell
	for _, place := range readPlaces() {
		out = append(out, acrossCell{fmt.Sprintf("%s read at, %s", place, d.farUnit()), func(p sizes.Player) string {
			piece, ok := p.Piece(place)
			if !ok {
				return ""
			}
			r, ok := d.reading(piece)
			if !ok {
				return ""
			}
			return d.far(r.Metres20) + " · " + d.far(r.Metres40)
		}})
	}
	return out
}

// readingNote says how the rows of reading distances are read.
func (d *document) readingNote(source bool) string {
	note := "Read at: furthest for a 20/20 · a 20/40 eye."
	if source {
		note = "Read at: furthest for a 20/20 · a 20/40 eye, standing still in good light. " + readingSource
	}
	return note
}

// readingSentence says in words from how far a player's pieces are read; empty
// when none has a figure.
func (d *document) readingSentence(p sizes.Player) string {
	var said []string
	for _, place := range readPlaces() {
		piece, ok := p.Piece(place)
		if !ok {
			continue
		}
		r, ok := d.reading(piece)
		if !ok {
			continue
		}
		unit := "\u00a0" + d.farUnit()
		said = append(said, fmt.Sprintf("A 20/20 eye reads the %s, %s high, at %s, a 20/40 eye at %s.", place, d.heightOf(piece), d.far(r.Metres20)+unit, d.far(r.Metres40)+unit))
	}
	return strings.Join(said, "\n")
}
