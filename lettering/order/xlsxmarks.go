package order

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"path"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// mark is what a cell of a sheet is besides its text.
type mark uint8

const (
	markNone    mark = iota
	markNumber       // a number, not text
	markFormula      // a formula without its result
	markError        // an error such as #N/A
)

// marks are the marks of a sheet by row, counted from 1, and column, from 0.
type marks map[int][]mark

func (m marks) of(row, column int) mark {
	if cells := m[row]; column < len(cells) {
		return cells[column]
	}
	return markNone
}

// sheetParts finds the XML part of each sheet.
func sheetParts(f *excelize.File) map[string]string {
	var book struct {
		Sheets []struct {
			Name string `xml:"name,attr"`
			ID   string `xml:"id,attr"`
		} `xml:"sheets>sheet"`
	}
	var rels struct {
		Relationship []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
		}
	}
	_ = decoder(f, "xl/workbook.xml").Decode(&book)
	_ = decoder(f, "xl/_rels/workbook.xml.rels").Decode(&rels)
	out := map[string]string{}
	for _, s := range book.Sheets {
		for _, r := range rels.Relationship {
			if r.ID == s.ID && r.ID != "" {
				target := strings.ReplaceAll(r.Target, "\\", "/")
				if !strings.HasPrefix(target, "/") {
					target = "/xl/" + target
				}
				out[s.Name] = strings.TrimPrefix(path.Clean(target), "/")
			}
		}
	}
	return out
}

// decoder reads one part of the workbook; a part that is not there is empty.
func decoder(f *excelize.File, part string) *xml.Decoder {
	data, _ := f.Pkg.Load(part)
	text, _ := data.([]byte)
	d := xml.NewDecoder(bytes.NewReader(text))
	d.CharsetReader = f.CharsetReader
	return d
}

// marks reads the marks of a sheet in one pass over its XML, and holds the
// sheet against the limits before the library reads it. The library could tell
// a cell's kind too, but takes minutes to do so on a sheet made to be slow.
func (w *workbook) marks(sheet string) (marks, error) {
	d := decoder(w.f, w.parts[sheet])
	s := sheetScan{marks: marks{}}
	for {
		token, err := d.RawToken()
		if err == io.EOF {
			return s.marks, nil
		}
		if err != nil {
			return nil, fmt.Errorf("its XML is damaged in line %d", lineOf(err))
		}
		switch t := token.(type) {
		case xml.StartElement:
			s.open(t)
		case xml.EndElement:
			s.shut(t.Name.Local)
		case xml.CharData:
			s.value = s.value || s.inValue && len(bytes.TrimSpace(t)) > 0
		}
		if s.rows > sheetRows {
			return nil, fmt.Errorf("it has more than %d rows", sheetRows)
		}
		if s.cells > sheetCells {
			return nil, fmt.Errorf("it has more than %d cells", sheetCells)
		}
	}
}

func lineOf(err error) int {
	if syntax, ok := err.(*xml.SyntaxError); ok {
		return syntax.Line
	}
	return 1
}

// sheetScan keeps count while the XML of a sheet goes by.
type sheetScan struct {
	marks         marks
	rows, cells   int
	row, column   int // the current cell
	kind          string
	value, ruling bool // the cell has a value, a formula
	inValue       bool
}

func (s *sheetScan) open(e xml.StartElement) {
	switch e.Name.Local {
	case "row":
		s.rows++
		s.row++
		s.column = -1
		if n, err := strconv.Atoi(attribute(e, "r")); err == nil && n > 0 {
			s.row = n
		}
	case "c":
		s.cells++
		s.column++
		if n := columnOf(attribute(e, "r")); n >= 0 {
			s.column = n
		}
		s.kind, s.value, s.ruling = attribute(e, "t"), false, false
	case "v":
		s.inValue = true
		s.value = s.value || s.kind == "str" // an empty text is a result too
	case "is":
		s.value = true
	case "f":
		s.ruling = true
	}
}

func (s *sheetScan) shut(name string) {
	s.inValue = s.inValue && name != "v"
	if name != "c" || s.column < 0 || s.column >= rosterCols {
		return
	}
	m := markNone
	switch {
	case s.ruling && !s.value:
		m = markFormula
	case s.kind == "e":
		m = markError
	case s.value && (s.kind == "" || s.kind == "n"):
		m = markNumber
	}
	if m == markNone {
		return
	}
	cells := s.marks[s.row]
	for len(cells) <= s.column {
		cells = append(cells, markNone)
	}
	cells[s.column] = m
	s.marks[s.row] = cells
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// columnOf is the column of a cell such as C7, counted from 0, or -1.
func columnOf(cell string) int {
	n := 0
	for i := 0; i < len(cell) && cell[i] >= 'A' && cell[i] <= 'Z' && n < 1<<16; i++ {
		n = n*26 + int(cell[i]-'A') + 1
	}
	return n - 1
}
