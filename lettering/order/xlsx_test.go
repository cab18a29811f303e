package order

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"yokeline/lettering/source"
)

func bookPlace(cell string) source.Place { return source.Place{File: "r.xlsx", Sheet: "S", Cell: cell} }

func readBook(t testing.TB, data []byte, sheet string) *Roster {
	r, faults := ReadRoster("r.xlsx", data, sheet, RosterOptions{})
	require.Empty(t, faults, "%v", faults)
	return r
}

func bookNotes(r *Roster) []string {
	var out []string
	for _, n := range r.Notes {
		out = append(out, fmt.Sprintf("%s %s [%s] %s", n.Severity, strings.TrimPrefix(n.At.String(), "r.xlsx "), n.Player, n.Message))
	}
	return out
}

func TestAWorkbookIsReadAsTheCoachSeesIt(t *testing.T) {
	data := book(t, [][]any{
		{"Herons"}, {}, {"#", "Name on back", "Size", "Captain"},
		{"0", "Peña", "YM"}, {"00", "Lind", "Adult L", "x"}, {}, {"07", "Ünsal", "W2XL"},
	}, nil)
	r := readBook(t, data, "")
	assert.Equal(t, []string{"Peña||0|youth M", "Lind||00|adult L|captain", "Ünsal||07|women 2XL"}, lines(r.Players))
	assert.Empty(t, bookNotes(r))
	assert.Equal(t, "Roster", r.Sheet)
	assert.Equal(t, "r.xlsx Roster!A7", r.Players[2].Row.String())
}

func TestNumbersStoredAsNumbersAreNotedOnce(t *testing.T) {
	padded := func(f *excelize.File) {
		format := "00"
		style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
		require.NoError(t, err)
		require.NoError(t, f.SetCellStyle("Roster", "B4", "B5", style))
	}
	r := readBook(t, book(t, [][]any{heads3(), {"Lind", 7, "M"}, {"Rook", 12, "M"}, {"Dell", 0, "M"}, {"Vo", 7, "M"}, {"Hale", "8", "M"}}, padded), "")
	assert.Equal(t, []string{"Lind||7|adult M", "Rook||12|adult M", "Dell||00|adult M", "Vo||07|adult M", "Hale||8|adult M"}, lines(r.Players))
	require.Equal(t, []string{"advice Roster!B1 [] 2 numbers are stored as numbers, not as text: a leading zero is lost that way, 07 is kept as 7 and 00 as 0"}, bookNotes(r))
	assert.Equal(t, "ask the coach whether these have a zero in front: 7 (Lind)", r.Notes[0].Remedy)
}

func TestHiddenRowsAreReadAndSaid(t *testing.T) {
	data := book(t, [][]any{heads3(), {"Lind", "7", "M"}, {"Rook", "9", "M"}, {"Dell", "8", "M"}}, func(f *excelize.File) {
		require.NoError(t, f.SetRowVisible("Roster", 3, false))
		require.NoError(t, f.SetRowVisible("Roster", 4, false))
	})
	r := readBook(t, data, "")
	assert.Len(t, r.Players, 3)
	assert.Equal(t, []string{"advice Roster!A3 [] rows that are hidden in the workbook are read too: 3, 4"}, bookNotes(r))
}

func TestTheSheetIsNamedOrFoundByItsHeadings(t *testing.T) {
	data := book(t, [][]any{{"Order form"}, {"for", "you"}}, func(f *excelize.File) {
		for i, name := range []string{"Old", "Players", "Coach's list"} {
			_, err := f.NewSheet(name)
			require.NoError(t, err)
			for n, r := range [][]any{heads3(), {name, "7", "M"}} {
				require.NoError(t, f.SetSheetRow(name, fmt.Sprintf("A%d", n+1), &r))
			}
			require.NoError(t, f.SetSheetVisible(name, i > 0))
		}
	})
	r := readBook(t, data, "")
	assert.Equal(t, "Players", r.Players[0].Name, "the first that is visible and has headings")
	assert.Equal(t, []string{"advice Players [] sheet “Players” is read, not “Roster”, “Old”, “Coach's list”"}, bookNotes(r))
	assert.Equal(t, "Coach's list", readBook(t, data, "Coach's list").Players[0].Name)
	assert.Equal(t, "Old", readBook(t, data, "Old").Players[0].Name, "a hidden sheet may be named")
	_, faults := ReadRoster("r.xlsx", data, "Playrs", RosterOptions{})
	require.Len(t, faults, 1)
	assert.Equal(t, `the workbook has no sheet "Playrs"`, faults[0].Message)
	assert.Equal(t, "did you mean Players?", faults[0].Hint)
	_, faults = ReadRoster("r.csv", []byte("Name,#,Size\nLind,7,M\n"), "Players", RosterOptions{})
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Message, "the roster is a text file")
}

func TestFormulasWithTheirResultAreRead(t *testing.T) {
	r := readBook(t, rawBook(t, `<row r="1"><c r="A1" t="inlineStr"><is><t>Name</t></is></c><c r="B1" t="inlineStr"><is><t>#</t></is></c><c r="C1" t="inlineStr"><is><t>Size</t></is></c></row>
<row r="2"><c r="A2" t="str"><f>UPPER("lind")</f><v>LIND</v></c><c r="B2" t="str"><f>TEXT(7,"00")</f><v>07</v></c><c r="C2" t="inlineStr"><is><r><t>Y</t></r><r><t>M</t></r></is></c></row>`), "")
	assert.Equal(t, []string{"LIND||07|youth M"}, lines(r.Players))
	assert.Empty(t, bookNotes(r))
}

func TestCellsThatShowAnErrorAreRefused(t *testing.T) {
	_, faults := ReadRoster("r.xlsx", rawBook(t, `<row r="1"><c r="A1" t="inlineStr"><is><t>Name</t></is></c><c r="B1" t="inlineStr"><is><t>#</t></is></c><c r="C1" t="inlineStr"><is><t>Size</t></is></c></row>
<row r="2"><c r="A2" t="inlineStr"><is><t>Lind</t></is></c><c r="B2" t="inlineStr"><is><t>7</t></is></c><c r="C2" t="e"><f>NA()</f><v>#N/A</v></c></row>`), "", RosterOptions{})
	require.Len(t, faults, 1)
	assert.Equal(t, "r.xlsx S!C2: the cell shows the error #N/A", faults[0].Place.String()+": "+faults[0].Message)
}

func TestCellsUnderNoHeadingAreSaid(t *testing.T) {
	r := readBook(t, book(t, [][]any{heads3(), {"Lind", "7", "M", "call mother"}}, nil), "")
	assert.Equal(t, []string{"advice Roster!D2 [] “call mother” stands under no heading: it is not used"}, bookNotes(r))
}

// rawBook is a workbook of one sheet S whose rows are written out, for what the
// library does not write itself.
func rawBook(t testing.TB, rows string) []byte {
	const head = `<?xml version="1.0" encoding="UTF-8"?>`
	const office = "http://schemas.openxmlformats.org/"
	return archive(t, map[string]string{
		"[Content_Types].xml": head + `<Types xmlns="` + office + `package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
		"_rels/.rels":         head + `<Relationships xmlns="` + office + `package/2006/relationships"><Relationship Id="rId1" Type="` + office + `officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
		"xl/workbook.xml":     head + `<workbook xmlns="` + office + `spreadsheetml/2006/main" xmlns:r="` + office + `officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": head + `<Relationships xmlns="` + office + `package/2006/relationships"><Relationship Id="rId1" Type="` + office +
			`officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
		"xl/worksheets/sheet1.xml": head + `<worksheet xmlns="` + office + `spreadsheetml/2006/main"><sheetData>` + rows + `</sheetData></worksheet>`,
	})
}
