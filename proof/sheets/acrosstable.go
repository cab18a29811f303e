package sheets

import (
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// acrossTable is what changes from size to size, one column a size.
type acrossTable struct {
	title   string
	columns []int // indexes of the sizes
	rows    []acrossRow
	notes   []string // lines under the table
}

type acrossRow struct {
	label string
	cells []string // one a column
	count bool     // of players: never set off
}

// The table, mm.
const (
	acrossHead     = 4.6 // rule to the heads
	acrossHeadRule = 1.6 // to the rule under them
	acrossFirst    = 4.6 // to the first row
	acrossRow5     = 5.0
	acrossRowRule  = 1.7
	acrossNoteDown = 0.6 // from the row that would follow to the notes
	acrossNoteStep = 2.9
	acrossLabels   = 44.0 // width of the labels
	acrossColumns  = 8    // of the grid, that the table takes
	mostSizes      = 8    // with more, every second one is listed
)

// high is the height from the rule over the table to the last line under it.
func (t acrossTable) high() float64 {
	return acrossHead + acrossHeadRule + acrossFirst + acrossRow5*float64(len(t.rows)) + acrossNoteDown + acrossNoteStep*float64(len(t.notes)-1) + 1
}

// acrossTable lists the lengths of one side. The last table also says from how
// far away things are read.
func (d *document) acrossTable(a *across, side garment.Side, last bool) acrossTable {
	t := acrossTable{title: "On the " + side.String(), columns: a.listed()}
	cells := func(of func(sizes.Player) string) []string {
		var out []string
		for _, i := range t.columns {
			out = append(out, of(a.wearers[i]))
		}
		return out
	}
	if side == a.sides[0] {
		players := acrossRow{label: "players", count: true}
		for _, i := range t.columns {
			players.cells = append(players.cells, fmt.Sprint(a.counts[i].players))
		}
		t.rows = append(t.rows, players)
	}
	for _, asked := range d.order.Pieces {
		for _, r := range d.pieceRows(asked.Place, side) {
			if row := cells(r.of); strings.Join(row, "") != "" {
				t.rows = append(t.rows, acrossRow{label: r.label, cells: row})
			}
		}
	}
	if side == a.sides[0] {
		for _, r := range d.garmentRows(a) {
			t.rows = append(t.rows, acrossRow{label: r.label, cells: cells(r.of)})
		}
	}
	reading := ""
	if last {
		for _, r := range d.readingRows() {
			if row := cells(r.of); strings.Join(row, "") != "" {
				t.rows = append(t.rows, acrossRow{label: r.label, cells: row})
				reading = d.readingNote(len(a.sides) == 1)
			}
		}
	}
	t.notes = d.acrossNotes(reading)
	return t
}

// listed returns the sizes that the table lists.
func (a *across) listed() []int {
	var out []int
	for i := range a.counts {
		drawn := false
		for _, k := range a.shown {
			drawn = drawn || k == i
		}
		if len(a.counts) <= mostSizes || drawn || i%2 == 0 {
			out = append(out, i)
		}
	}
	return out
}

// acrossCell is a row of the table: what it is called and its figure for a
// player, empty for none.
type acrossCell struct {
	label string
	of    func(sizes.Player) string
}

// pieceRows are the rows of one place on a side.
func (d *document) pieceRows(place garment.Place, side garment.Side) []acrossCell {
	of := func(say func(sizes.Piece) string) func(sizes.Player) string {
		return func(p sizes.Player) string {
			piece, ok := p.Piece(place)
			if !ok || piece.Side != side {
				return ""
			}
			return say(piece)
		}
	}
	word, height := pieceWord(place), " height"
	var out []acrossCell
	if place == garment.BackName || place == garment.FrontName || place == garment.LeftChest {
		height = " letters"
		out = append(out, acrossCell{"room for the " + word, of(func(p sizes.Piece) string { return d.bare(p.Name.Limit) })})
	}
	out = append(out, acrossCell{word + height, of(func(p sizes.Piece) string { return d.bareHeight(p) })})
	return append(out, acrossCell{d.collarWord() + " to " + word, func(p sizes.Player) string {
		piece, ok := p.Piece(place)
		if !ok || piece.Side != side || piece.Turn != 0 || piece.Number != nil && named(p, side) {
			return ""
		}
		return d.bare(piece.BelowCollar)
	}})
}

// named reports whether a name stands on a side.
func named(p sizes.Player, side garment.Side) bool {
	return slices.ContainsFunc(p.Pieces, func(o sizes.Piece) bool { return o.Side == side && o.Name != nil && o.Turn == 0 })
}

func (d *document) collarWord() string {
	if d.order.Garment.Cut == garment.Shorts {
		return "waistband"
	}
	return "collar"
}

// garmentRows are the measures of the garment itself.
func (d *document) garmentRows(a *across) []acrossCell {
	if a.wearers[0].Garment.Measures().ChestHalf == 0 {
		return []acrossCell{
			{"hips, flat", func(p sizes.Player) string { return d.bare(p.Garment.Measures().HipHalf) }},
			{"length, top to hem", func(p sizes.Player) string { return d.bare(p.Garment.Measures().Outseam) }},
		}
	}
	return []acrossCell{
		{"chest, flat", func(p sizes.Player) string { return d.bare(p.Garment.Measures().ChestHalf) }},
		{"length, shoulder to hem", func(p sizes.Player) string { return d.bare(p.Garment.Measures().BodyLength) }},
	}
}

// bare prints a length without its unit, for a table whose note names it.
func (d *document) bare(mm float64) string { return withoutUnit(d.length(mm)) }

func (d *document) bareHeight(p sizes.Piece) string { return withoutUnit(d.heightOf(p)) }

func withoutUnit(printed string) string {
	if i := strings.LastIndexAny(printed, " \u00a0"); i > 0 {
		return printed[:i]
	}
	return printed
}

// acrossNotes are the lines under the table.
func (d *document) acrossNotes(reading string) []string {
	unit := "centimetres"
	if d.order.Units == length.Inch {
		unit = "inches"
	}
	text := fmt.Sprintf("Lengths in %s. Bold where a figure differs from the size before. Figures of the %s are generic: the maker’s size chart replaces them.", unit, d.noun())
	if reading != "" {
		text += " " + reading
	}
	grid := parts.NewGrid(d.in.Paper.sheet().Landscape())
	return d.book.Wrap(parts.Label().Style, grid.Span(acrossColumns), text)
}

// drawTable draws the table from the rule over it.
func (f *frame) drawTable(a *across, t acrossTable, y float64) {
	wide := f.Span(acrossColumns)
	step := (wide - acrossLabels) / float64(len(t.columns))
	at := func(i int) float64 { return f.Left + acrossLabels + step*float64(i+1) }
	y += acrossHead
	f.say(f.Left, y, parts.Value(), t.title)
	for i, k := range t.columns {
		f.say(at(i), y, parts.Value().To(page.End), f.sizeLabel(a.counts[k].size))
	}
	y += acrossHeadRule
	f.Line(f.Left, y, f.Left+wide, y, parts.Ink, page.Line{Weight: parts.Outline})
	y += acrossFirst
	for _, r := range t.rows {
		f.say(f.Left, y, parts.Caption(), r.label)
		for i, cell := range r.cells {
			style := parts.Caption().To(page.End)
			if i > 0 && cell != r.cells[i-1] && !r.count {
				style = style.Bold()
			}
			f.say(at(i), y, style, cell)
		}
		f.Line(f.Left, y+acrossRowRule, f.Left+wide, y+acrossRowRule, parts.Rule, page.Line{Weight: parts.Hair})
		y += acrossRow5
	}
	f.lines(f.Left, y+acrossNoteDown, acrossNoteStep, parts.Label(), t.notes)
}
