package specsheet

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"yokeline/lettering/source"
)

// Limits on what is read; a sheet of every cut in every size is far under each.
const (
	mostBytes = 1 << 20
	mostRows  = 5000
	mostCols  = 100
	mostCell  = 200 // characters
	titleRows = 20  // above the headings
)

// cell is one value of the file.
type cell struct {
	text  string // trimmed
	at    source.Place
	width int // characters of its line
}

// reader reads one sheet.
type reader struct {
	defaults Defaults
	sheet    *Sheet
	file     *source.File
	rows     [][]cell
	head     head
	faults   source.Faults
}

func (r *reader) fault(c cell, hint, format string, args ...any) {
	r.faults = append(r.faults, source.Fault{Place: c.at, Message: fmt.Sprintf(format, args...), Hint: hint,
		Excerpt: r.file.Line(c.at.Line), Width: c.width})
}

func (r *reader) note(c cell, remedy, format string, args ...any) {
	r.sheet.notes = append(r.sheet.notes, Note{At: c.at, Message: fmt.Sprintf(format, args...), Remedy: remedy})
}

// open cuts the file into cells, under the separator that shows its headings.
func (r *reader) open(name string, data []byte) {
	text := strings.TrimPrefix(string(data), "\ufeff")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	whole := func(message string) {
		r.faults = source.Faults{{Place: source.Place{File: name}, Message: message, Hint: "save the sheet as CSV UTF-8"}}
	}
	switch b, line, column, bad := source.BadByte([]byte(text)); {
	case len(data) > mostBytes:
		whole("the spec sheet has more than 1 MiB")
		return
	case bad:
		r.faults = source.Faults{{Place: source.Place{File: name, Line: line, Column: column},
			Message: fmt.Sprintf("byte 0x%02X is not UTF-8 text", b), Hint: "save the sheet as CSV UTF-8"}}
		return
	case strings.ContainsRune(text, 0):
		whole("this is not a text file")
		return
	case strings.TrimSpace(text) == "":
		whole("the spec sheet is empty")
		return
	}
	r.file = source.NewFile(name, text)
	for _, comma := range ",;\t" {
		rows, fault := cut(r.file, text, comma)
		if fault != nil {
			r.faults = source.Faults{*fault}
			return
		}
		for i := range rows[:min(titleRows, len(rows))] {
			if h, ok := newHead(rows[i]); ok {
				r.rows, r.head = rows[i+1:], h
				r.head.titled(rows[:i])
				return
			}
		}
		if len(r.rows) == 0 && len(rows) > 0 {
			r.rows = rows
		}
	}
	if len(r.rows) == 0 {
		whole("the spec sheet is empty")
		return
	}
	r.fault(r.rows[0][0], "the first row is, for one measure a row, group,size,cut,measure,value; or size and a column a measure; or measure and a column a size",
		"no row of headings is found")
}

// cut splits the text. Rows without any text are left out.
func cut(file *source.File, text string, comma rune) ([][]cell, *source.Fault) {
	in := csv.NewReader(strings.NewReader(text))
	in.Comma, in.FieldsPerRecord, in.LazyQuotes = comma, -1, true
	var rows [][]cell
	for {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			f := file.Fault(1, 1, 1, "the spec sheet cannot be read: "+err.Error(), "save the sheet as CSV UTF-8")
			return nil, &f
		}
		var row []cell
		said := false
		for i, field := range record {
			line, column := in.FieldPos(i)
			c := newCell(file, field, line, column)
			if strings.Contains(field, "\n") || utf8.RuneCountInString(field) > mostCell {
				f := file.Fault(c.at.Line, c.at.Column, 1, "a cell runs over lines or is too long", "look for a quote that is opened here and never closed")
				return nil, &f
			}
			said = said || c.text != ""
			row = append(row, c)
		}
		if !said {
			continue
		}
		if rows = append(rows, row); len(rows) > mostRows || len(row) > mostCols {
			f := file.Fault(row[0].at.Line, 1, 1, fmt.Sprintf("at most %d rows and %d columns are read", mostRows, mostCols), "keep the measures and leave the rest out")
			return nil, &f
		}
	}
}

// newCell trims a field and finds its place in characters.
func newCell(file *source.File, field string, line, column int) cell {
	text := file.Line(line)
	before := text[:min(column-1, len(text))]
	lead := len(field) - len(strings.TrimLeft(field, " \u00a0"))
	trimmed := strings.Trim(field, " \u00a0\t")
	at := utf8.RuneCountInString(before) + 1 + utf8.RuneCountInString(field[:lead])
	return cell{text: trimmed, at: source.Place{File: file.Name(), Line: line, Column: at}, width: max(1, utf8.RuneCountInString(trimmed))}
}
