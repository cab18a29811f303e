package order

import (
	"archive/zip"
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Rows of a sheet as XML: headings and one player.
const (
	rawHeads  = `<row><c t="inlineStr"><is><t>Name</t></is></c><c t="inlineStr"><is><t>#</t></is></c><c t="inlineStr"><is><t>Size</t></is></c></row>`
	rawPlayer = `<row><c t="inlineStr"><is><t>Lind</t></is></c><c><v>7</v></c><c t="inlineStr"><is><t>M</t></is></c></row>`
)

// bomb is an archive of parts full of zero bytes.
func bomb(t testing.TB, size, parts int) []byte {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for i := range parts {
		w, err := z.Create(fmt.Sprintf("xl/part%d.xml", i))
		require.NoError(t, err)
		_, err = w.Write(make([]byte, size))
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return b.Bytes()
}

func TestHostileWorkbooksAreRefused(t *testing.T) {
	sheet := func(rows string) []byte { return rawBook(t, rawHeads+rawPlayer+rows) }
	for name, c := range map[string]struct {
		data    []byte
		message string
	}{
		"one large part":       {bomb(t, partBytes+1, 1), "part “xl/part0.xml” of the workbook unpacks to more than 8 MiB"},
		"many large parts":     {bomb(t, partBytes, 5), "the workbook unpacks to more than 32 MiB"},
		"many parts":           {bomb(t, 1, zipFiles+1), "holds 1001 parts: at most 1000"},
		"large sheet":          {sheet(strings.Repeat(" ", sheetBytes)), "unpacks to more than 16 MiB"},
		"cut short":            {sheet("")[:500], "damaged or cut short"},
		"blank rows":           {sheet(strings.Repeat("<row/>", sheetRows)), "more than 100000 rows"},
		"blank cells":          {sheet("<row>" + strings.Repeat("<c/>", sheetCells) + "</row>"), "more than 400000 cells"},
		"far column":           {sheet(`<row><c r="XFD3"><v>1</v></c></row>`), "more than 60 columns"},
		"long cell":            {sheet(`<row><c t="inlineStr"><is><t>` + strings.Repeat("x", 1<<20) + `</t></is></c></row>`), "a cell of 1048576 characters"},
		"deep elements":        {sheet(strings.Repeat("<a>", 1000)), "not as spreadsheet programs write it"},
		"deep after a comment": {sheet("<!-- it's -->" + strings.Repeat("<a>", 1000)), "not as spreadsheet programs write it"},
		"long tag":             {sheet("<row " + strings.Repeat(`a="" `, 10_000) + "/>"), "not as spreadsheet programs write it"},
		"long tag with >":      {sheet("<row " + strings.Repeat(`a=">" `, 10_000) + "/>"), "not as spreadsheet programs write it"},
		"unended tag":          {sheet("<row"), "its XML is damaged"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r, faults := ReadRoster("r.xlsx", c.data, "", RosterOptions{})
			assert.Nil(t, r)
			require.Len(t, faults, 1)
			assert.Contains(t, faults[0].Message, c.message)
			assert.Less(t, len(faults[0].Text()), 2000)
		})
	}
}

func TestAPartThatLiesAboutItsSizeIsRefused(t *testing.T) {
	data := rawBook(t, "<row>"+strings.Repeat(" ", 1<<20)+"</row>")
	// Every size in the archive's directory is set to 100 bytes.
	sig := []byte("PK\x01\x02")
	for at := 0; ; at += 4 {
		i := bytes.Index(data[at:], sig)
		if i < 0 {
			break
		}
		at += i
		copy(data[at+24:], []byte{100, 0, 0, 0})
	}
	r, faults := ReadRoster("r.xlsx", data, "", RosterOptions{})
	assert.Nil(t, r)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Message, "damaged")
}

// Asking the library for the kind of each cell took minutes on these.
func TestSheetsThatAreSlowToLookIntoAreRead(t *testing.T) {
	for name, c := range map[string]struct {
		rows    string
		players int
	}{
		"far row":           {rawHeads + strings.Replace(rawPlayer, "<row>", `<row r="500000">`, 1), 1},
		"rows without refs": {rawHeads + strings.Repeat(rawPlayer, 5000), 5000},
		"many merges": {rawHeads + strings.Repeat(rawPlayer, 500) + "</sheetData><mergeCells>" +
			strings.Repeat(`<mergeCell ref="D1:E2"/>`, 30_000) + "</mergeCells><sheetData>", 500},
		"wide blank rows": {rawHeads + rawPlayer + strings.Repeat("<row>"+strings.Repeat("<c/>", 60)+"</row>", 1000), 1},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			assert.Len(t, readBook(t, rawBook(t, c.rows), "").Players, c.players)
		})
	}
}

func TestTextFilesMadeToBeSlowAreRefused(t *testing.T) {
	for name, c := range map[string]struct {
		text, message string
		faults        int
	}{
		"one row of commas": {"Name,#,Size\n" + strings.Repeat(",", 1<<20), "more than 60 columns", 1},
		"open quotes":       {"Name,#,Size\n" + strings.Repeat("\"a\"b,", 1<<18), "text follows a closing quote", 61 + 1},
		"faults without end": {"Name,#,Size\n" + strings.Repeat("a,b,\n", 1<<18),
			"number “b” of a is not all digits", rosterRows},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			_, faults := ReadRoster("r.csv", []byte(c.text), "", RosterOptions{})
			require.NotEmpty(t, faults)
			assert.LessOrEqual(t, len(faults), c.faults+1)
			assert.Contains(t, faults[0].Message, c.message)
			assert.Less(t, len(faults.Error()), 100_000, "what is printed stays short")
		})
	}
}

// slowBytes is enough for work that grows with the square to show.
const slowBytes = jobBytes / 4

func TestJobsMadeToBeSlowAreRefused(t *testing.T) {
	for name, text := range map[string]string{
		"brackets": strings.Repeat("[", slowBytes),
		"nested":   "a: " + strings.Repeat("{a: ", slowBytes/4),
		"keys":     strings.Repeat("k: 1\n", slowBytes/5),
		"other keys": func() string {
			var b strings.Builder
			for i := 0; b.Len() < slowBytes; i++ {
				fmt.Fprintf(&b, "k%d: 1\n", i)
			}
			return b.String()
		}(),
		"aliases": "a: &a [x]\nb: &b [*a, *a]\nc: &c [*b, *b]\n",
		"quotes":  strings.Repeat("\"", slowBytes),
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			job, faults := ReadJob("j", []byte(text))
			assert.Nil(t, job)
			assert.NotEmpty(t, faults)
			assert.Less(t, len(faults.Error()), 100_000)
		})
	}
}

// FuzzSoundXML: the scanner ends and never reads outside its text.
func FuzzSoundXML(f *testing.F) {
	for _, s := range []string{"", "<", "<a>", "<a b='>'/>", "<!-- ' -->", "</", "<?x?>", "<a\"", "<a b=\"'\">"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) { soundXML(data) })
}
