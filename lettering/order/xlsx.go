package order

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"

	"yokeline/lettering/source"
)

// readWorkbook reads a roster out of an XLSX workbook.
func readWorkbook(file string, data []byte, sheet string, opts RosterOptions) (roster *Roster, faults source.Faults) {
	// The library is not written for hostile files: whatever it stumbles over
	// is a damaged workbook, not a fault of this program.
	defer func() {
		if recover() != nil {
			roster, faults = nil, refuse(file, "the workbook is damaged", "open it in a spreadsheet program and save it again")
		}
	}()
	if faults := soundZip(file, data); len(faults) > 0 {
		return nil, faults
	}
	// With both limits equal the library writes no temporary files.
	f, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{UnzipSizeLimit: zipBytes, UnzipXMLSizeLimit: zipBytes})
	if err != nil {
		return nil, refuse(file, fmt.Sprintf("the workbook cannot be read: %v", err), "open it in a spreadsheet program and save it again")
	}
	defer f.Close()
	w := &workbook{file: file, f: f, opts: opts, words: newVocabulary(), parts: sheetParts(f)}
	if sheet != "" && !slices.Contains(f.GetSheetList(), sheet) {
		return nil, refuse(file, fmt.Sprintf("the workbook has no sheet %q", sheet), suggest(sheet, f.GetSheetList()))
	}
	if sheet == "" {
		sheet = w.choose()
	}
	marks, err := w.marks(sheet)
	if err != nil {
		return nil, refuse(file, fmt.Sprintf("sheet %q cannot be read: %v", sheet, err), again)
	}
	roster, faults = w.read(sheet, marks)
	if len(faults) == 0 && len(f.GetSheetList()) > 1 {
		w.severalSheets(roster, sheet)
	}
	return roster, faults
}

// workbook reads sheets of one file.
type workbook struct {
	file  string
	f     *excelize.File
	opts  RosterOptions
	words vocabulary
	parts map[string]string // path of the XML part by sheet name
}

// choose returns the first visible sheet with a heading row, else the first
// sheet with one, else the first.
func (w *workbook) choose() string {
	sheets := w.f.GetSheetList()
	if len(sheets) == 1 {
		return sheets[0]
	}
	withHeads := slices.DeleteFunc(slices.Clone(sheets), func(s string) bool { return !w.hasHeads(s) })
	for _, s := range withHeads {
		if visible, err := w.f.GetSheetVisible(s); err == nil && visible {
			return s
		}
	}
	return append(append(withHeads, sheets...), "")[0]
}

func (w *workbook) hasHeads(sheet string) bool {
	if _, err := w.marks(sheet); err != nil {
		return false
	}
	found := false
	seen := 0
	_ = w.rows(sheet, func(r row, _ bool) bool {
		_, key := w.words.count(r)
		found = found || key
		if !r.blank() {
			seen++
		}
		return !found && seen < titleRows && r.at.Cell != ""
	})
	return found
}

func (w *workbook) severalSheets(roster *Roster, sheet string) {
	var others []string
	for _, s := range w.f.GetSheetList() {
		if s != sheet {
			others = append(others, quote(clip(s)))
		}
	}
	roster.Notes = append(roster.Notes, Note{
		Severity: Advice, At: source.Place{File: w.file, Sheet: sheet}, What: "sheet",
		Message: "sheet " + quote(clip(sheet)) + " is read, not " + strings.Join(others[:min(len(others), 6)], ", "),
		Remedy:  "name the sheet in the job: roster: {file: …, sheet: …}",
	})
}

// rows yields the rows of a sheet with their formatted text, as the coach sees
// it, and whether each is hidden.
func (w *workbook) rows(sheet string, yield func(r row, hidden bool) bool) error {
	rows, err := w.f.Rows(sheet)
	if err != nil {
		return err
	}
	defer rows.Close()
	var cells []cell
	for n := 1; rows.Next(); n++ {
		texts, err := rows.Columns()
		if err != nil {
			return err
		}
		cells = cells[:0]
		for i, text := range texts[:min(len(texts), rosterCols+1)] {
			cells = append(cells, cell{text: text, at: w.place(sheet, i, n)})
		}
		if !yield(row{w.place(sheet, 0, n), n, cells}, rows.GetRowOpts().Hidden) {
			break
		}
	}
	return rows.Error()
}

func (w *workbook) place(sheet string, column, row int) source.Place {
	return source.Place{File: w.file, Sheet: sheet, Cell: fmt.Sprintf("%s%d", columnName(column), row)}
}

// read turns one sheet into players.
func (w *workbook) read(sheet string, m marks) (*Roster, source.Faults) {
	s := &scan{file: w.file, opts: w.opts, words: w.words, excerpt: func(c cell) string { return head(c.text, cellLetters) }}
	s.look = func(r row) { examine(s, r, m) }
	hidden := hiddenRows{}
	err := w.rows(sheet, func(r row, isHidden bool) bool {
		if isHidden && !r.blank() {
			hidden.add(r.at)
		}
		return s.take(r)
	})
	if err != nil {
		return nil, refuse(w.file, fmt.Sprintf("sheet %q cannot be read: %v", sheet, err), again)
	}
	roster, faults := s.finish()
	if roster == nil {
		return nil, faults
	}
	roster.Sheet = sheet
	roster.Notes = append(roster.Notes, hidden.note()...)
	roster.Notes = append(roster.Notes, s.lostZeros()...)
	return roster, faults
}
