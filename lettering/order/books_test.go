package order

import (
	"archive/zip"
	"bytes"
	"flag"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

var update = flag.Bool("update", false, "write the workbooks of testdata again")

// book makes a workbook of one sheet called Roster.
func book(t testing.TB, rows [][]any, change func(f *excelize.File)) []byte {
	f := excelize.NewFile()
	defer f.Close()
	require.NoError(t, f.SetSheetName("Sheet1", "Roster"))
	for i, r := range rows {
		require.NoError(t, f.SetSheetRow("Roster", "A"+strconv.Itoa(i+1), &r))
	}
	if change != nil {
		change(f)
	}
	var b bytes.Buffer
	require.NoError(t, f.Write(&b))
	return b.Bytes()
}

func heads3() []any { return []any{"Name on back", "Number", "Size"} }

// badBooks builds the workbooks of testdata/bad; what is wrong with each stands
// in index.csv.
func badBooks(t testing.TB) map[string][]byte {
	good := [][]any{heads3(), {"Lind", "7", "M"}, {"Rook", "9", "L"}}
	with := func(cell string, value any) []byte {
		return book(t, good, func(f *excelize.File) { require.NoError(t, f.SetCellValue("Roster", cell, value)) })
	}
	formula := func(cell, text string) []byte {
		return book(t, good, func(f *excelize.File) {
			require.NoError(t, f.SetCellValue("Roster", cell, nil))
			require.NoError(t, f.SetCellFormula("Roster", cell, text))
		})
	}
	wide := make([]any, 61)
	for i := range wide {
		wide[i] = "x"
	}
	copy(wide, heads3())
	return map[string][]byte{
		"book-number-letters.xlsx": with("B3", "9a"),
		"book-number-decimal.xlsx": with("B3", 9.5),
		"book-number-percent.xlsx": book(t, good, func(f *excelize.File) {
			style, err := f.NewStyle(&excelize.Style{NumFmt: 9})
			require.NoError(t, err)
			require.NoError(t, f.SetCellValue("Roster", "B3", 9))
			require.NoError(t, f.SetCellStyle("Roster", "B3", "B3", style))
		}),
		"book-number-truth.xlsx":   with("B3", true),
		"book-formula-number.xlsx": formula("B2", "ROW()+4"),
		"book-formula-size.xlsx":   formula("C3", `IF(1,"M","L")`),
		"book-formula-name.xlsx":   formula("A2", `UPPER("lind")`),
		"book-long-name.xlsx":      with("A3", strings.Repeat("L", 41)),
		"book-long-cell.xlsx":      with("C3", strings.Repeat("M", 201)),
		"book-two-numbers.xlsx":    with("D1", "Jersey #"),
		"book-no-size.xlsx":        book(t, [][]any{{"Name", "No."}, {"Lind", "7"}}, nil),
		"book-no-headings.xlsx":    book(t, [][]any{{"Lind", "7", "M"}}, nil),
		"book-empty.xlsx":          book(t, nil, nil),
		"book-headings-only.xlsx":  book(t, [][]any{heads3()}, nil),
		"book-wide.xlsx":           book(t, [][]any{wide, {"Lind", "7", "M"}}, nil),
		"book-below-title.xlsx":    book(t, [][]any{{"Herons"}, {}, heads3(), {"Lind", "seven", "M"}}, nil),
		"book-archive.xlsx":        archive(t, map[string]string{"notes.txt": "no workbook"}),
		"book-broken-parts.xlsx":   archive(t, map[string]string{"xl/workbook.xml": "<workbook", "[Content_Types].xml": "<Types"}),
	}
}

func archive(t testing.TB, parts map[string]string) []byte {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = w.Write([]byte(parts[name]))
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return b.Bytes()
}

func TestBrokenWorkbooksOfTestdataAreThoseBuiltHere(t *testing.T) {
	for name, data := range badBooks(t) {
		path := filepath.Join(bad, name)
		if *update {
			require.NoError(t, os.WriteFile(path, data, 0o644))
		}
		stored, err := os.ReadFile(path)
		require.NoError(t, err)
		// Bytes differ with the library's version; what is read must not.
		_, want := ReadRoster(name, data, "", RosterOptions{})
		_, got := ReadRoster(name, stored, "", RosterOptions{})
		assert.Equal(t, want, got, name)
	}
}
