package tally

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
)

// Table is one list as a file of a spreadsheet holds it.
type Table struct {
	Name string // of the file, without its ending: pick-list
	Head []string
	Rows [][]string
}

// NumberNote says how numbers are written in CSV files.
const NumberNote = "A number stands twice: in the column number exactly as it is worn, and in the columns worn and text with No. before it. " +
	"A spreadsheet that makes figures of what it opens turns 00 into 0 in the first, never in the others."

// Tables returns the lists of a count: garments, to-ask, characters, pieces,
// materials, pick-list and notes, each with its heads even where it has no rows.
func (c *Count) Tables() []Table {
	return []Table{c.blankTable(), c.askTable(), c.kitTable(), c.sizeTable(), c.materialTable(), c.pickTable(), c.noteTable()}
}

// WriteCSV writes a table as CSV by RFC 4180: UTF-8 with a byte order mark, by
// which spreadsheets know it, every field in quotes, lines ended by CR LF. A field that a spreadsheet would take for a formula gets an
// apostrophe before it, and worn keeps numbers as text; see NumberNote.
func (t Table) WriteCSV(w io.Writer) error {
	b := bufio.NewWriter(w)
	b.WriteString("\ufeff")
	writeRow(b, t.Head)
	for _, r := range t.Rows {
		writeRow(b, r)
	}
	return b.Flush()
}

// writeRow leaves errors to Flush, which repeats the first.
func writeRow(b *bufio.Writer, fields []string) {
	for i, f := range fields {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteByte('"')
		b.WriteString(strings.ReplaceAll(harmless(f), `"`, `""`))
		b.WriteByte('"')
	}
	b.WriteString("\r\n")
}

// harmless marks a field that would be worked out as a formula.
func harmless(field string) string {
	if field != "" && strings.ContainsRune("=+-@\t\r", rune(field[0])) {
		return "'" + field
	}
	return field
}

// Worn is a number as text that no spreadsheet takes for a figure: No. 00.
func Worn(number string) string {
	if number == "" {
		return ""
	}
	return "No. " + number
}

func (c *Count) blankTable() Table {
	t := Table{Name: "garments", Head: []string{"cut", "group", "size", "colour", "trim", "garments"}}
	for _, b := range c.Blanks {
		t.add(string(b.Cut), string(b.Size.Group), b.Size.Letter, ColourName(b.Colour), ColourName(b.Trim), strconv.Itoa(b.Count))
	}
	return t
}

func (c *Count) askTable() Table {
	t := Table{Name: "to-ask", Head: []string{"player", "name", "number", "worn", "what"}}
	for _, i := range c.ToAsk {
		p := c.Picks[i]
		t.add(p.Label, p.Name, p.Number, Worn(p.Number), "size not known: ask")
	}
	return t
}

func (c *Count) kitTable() Table {
	t := Table{Name: "characters", Head: []string{"kind", "face", "height mm", "form", "colour", "outlines", "character", "count"}}
	for _, k := range c.Kits {
		for _, g := range k.Counts {
			t.add(k.Kind, k.Face, figure(k.Height), k.Form, ColourName(k.Colour), outlineWords(k.Outlines), g.Text, strconv.Itoa(g.Count))
		}
	}
	return t
}

func (c *Count) sizeTable() Table {
	t := Table{Name: "pieces", Head: []string{"group", "size", "place", "pieces"}}
	for _, r := range c.Sizes {
		t.add(string(r.Size.Group), r.Size.Letter, string(r.Place), strconv.Itoa(r.Pieces))
	}
	return t
}

func (c *Count) materialTable() Table {
	t := Table{Name: "materials", Head: []string{"material", "colour", "hex", "shapes", "true area cm2", "box area cm2", "roll width mm", "length mm", "allowance %", "length with allowance mm", "length is"}}
	for _, m := range c.Materials {
		row := []string{m.Name(), m.Colour.Name, m.Colour.Hex, strconv.Itoa(m.Shapes), figure(m.Ink / 100), figure(m.Box / 100), "", "", "", "", ""}
		if m.Roll > 0 {
			row[6] = figure(m.Roll)
		}
		if m.Length > 0 {
			row[7], row[8], row[9], row[10] = figure(m.Length), figure(c.Allowance*100), figure(m.WithAllowance), "estimated"
		}
		if m.Laid {
			row[10] = "as the sheets are arranged"
		}
		t.add(row...)
	}
	return t
}

func (c *Count) pickTable() Table {
	t := Table{Name: "pick-list", Head: []string{"player", "name", "number", "worn", "group", "size", "place", "text", "height mm", "sheets"}}
	for _, p := range c.Picks {
		group, letter := garment.Group("not known"), "not known"
		if p.Known {
			group, letter = p.Size.Group, p.Size.Letter
		}
		who := []string{p.Label, p.Name, p.Number, Worn(p.Number), string(group), letter}
		for _, piece := range p.Pieces {
			text := strings.ReplaceAll(piece.Text, "\n", " / ")
			if order.IsNumber(piece.Place) {
				text = Worn(text)
			}
			t.add(append(append([]string{}, who...), string(piece.Place), text, figure(piece.Height), SpotWords(piece.Spots))...)
		}
		if len(p.Pieces) == 0 {
			t.add(append(append([]string{}, who...), "", "", "", "")...)
		}
	}
	return t
}

func (c *Count) noteTable() Table {
	t := Table{Name: "notes", Head: []string{"note"}}
	for _, n := range append(append([]string{}, c.Notes...), NumberNote) {
		t.add(n)
	}
	return t
}

func (t *Table) add(fields ...string) { t.Rows = append(t.Rows, fields) }

func figure(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

func outlineWords(all []order.Outline) string {
	var out []string
	for _, o := range all {
		out = append(out, fmt.Sprintf("%s %s", ColourName(o.Colour), o.Width))
	}
	return strings.Join(out, ", ")
}

// Loose stands in place of a sheet for what no sheet takes.
const Loose = "loose"

// SpotWords says where the parts of a piece lie: gold sheet 2 B4, white sheet 1 A1.
func SpotWords(spots []Spot) string {
	var out []string
	for _, s := range spots {
		out = append(out, s.String())
	}
	return strings.Join(out, ", ")
}

// String returns the spot in words: gold sheet 2 B4, or gold on no sheet.
func (s Spot) String() string {
	words := "sheet " + s.Sheet
	if s.Sheet == Loose {
		words = "on no sheet"
	}
	if s.Part != "" {
		words = s.Part + " " + words
	}
	if s.Position != "" {
		words += " " + s.Position
	}
	return words
}
