package specsheet

import (
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// form is how a sheet is laid out.
type form uint8

const (
	long   form = iota // a row is one measure of one size
	wide               // a row is one size
	across             // a row is one measure, with a column a size
)

// column is what a column holds.
type column struct {
	kind    kind
	measure measure      // of a column of one measure
	size    string       // of a column of one size, as written
	unit    *length.Unit // from the heading
	cell    cell
}

type kind uint8

const (
	unused kind = iota
	groupColumn
	sizeColumn
	cutColumn
	measureColumn
	valueColumn
	unitColumn
	oneMeasure // values of one measure
	oneSize    // values of one size
	kinds
)

// head is the row of headings.
type head struct {
	form    form
	columns []column
	unit    *length.Unit // of the whole sheet, from a title above
}

// newHead reads a row as headings; ok is false for a row that is none.
func newHead(row []cell) (h head, ok bool) {
	var has [kinds]int
	for _, c := range row {
		k := newColumn(c)
		h.columns = append(h.columns, k)
		has[k.kind]++
	}
	switch {
	case has[measureColumn] > 0 && has[sizeColumn] > 0 && has[valueColumn] > 0:
		h.form = long
	case has[measureColumn] > 0 && has[sizeColumn] == 0 && has[oneSize] > 0:
		h.form = across
	case has[sizeColumn] > 0 && has[measureColumn] == 0 && has[oneMeasure] > 0:
		h.form = wide
	default:
		return head{}, false
	}
	return h, true
}

func newColumn(c cell) column {
	text, unit, has := unitOf(strings.ReplaceAll(c.text, "_", " "))
	out := column{cell: c}
	if has {
		out.unit = &unit
	}
	switch plain(text) {
	case "group", "size group", "gender", "for":
		out.kind = groupColumn
	case "size", "sizes":
		out.kind = sizeColumn
	case "cut", "style", "pattern", "garment":
		out.kind = cutColumn
	case "measure", "measures", "point of measure", "pom", "description", "dimension":
		out.kind = measureColumn
	case "value", "figure":
		out.kind = valueColumn
	case "unit", "units":
		out.kind = unitColumn
	default:
		if m, ok, _ := measureOf(text); ok {
			out.kind, out.measure = oneMeasure, m
		} else if _, err := garment.ParseSize(text, garment.Adult); err == nil {
			out.kind, out.size = oneSize, text
		}
	}
	return out
}

// titled takes the unit that a title names.
func (h *head) titled(titles [][]cell) {
	for _, row := range titles {
		for _, c := range row {
			if m := spoken.FindStringSubmatch(c.text); m != nil {
				if unit, ok := unitWord(m[1]); ok {
					h.unit = &unit
				}
			}
		}
	}
}

// at returns the cell of a row in the first column of a kind.
func (h *head) at(row []cell, k kind) (cell, bool) {
	for i, c := range h.columns {
		if c.kind == k && i < len(row) && row[i].text != "" {
			return row[i], true
		}
	}
	return cell{}, false
}
