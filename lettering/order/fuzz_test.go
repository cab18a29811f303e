package order

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/source"
)

// seeds adds the broken files of testdata whose names start so, and fails when
// there are none: a target without seeds tests next to nothing.
func seeds(f *testing.F, prefixes ...string) {
	n := 0
	for _, v := range vectors(f) {
		for _, p := range prefixes {
			if strings.HasPrefix(v.file, p) {
				data, err := os.ReadFile(filepath.Join(bad, v.file))
				require.NoError(f, err)
				f.Add(data)
				n++
			}
		}
	}
	require.Positive(f, n)
}

// requireInside holds a fault's place against the text it points into. One
// column past the end of a line is where something is missing.
func requireInside(t *testing.T, text string, p source.Place) {
	if p.Line == 0 {
		return
	}
	file := source.NewFile("f", text)
	require.LessOrEqual(t, p.Line, file.Lines())
	require.Positive(t, p.Column)
	require.LessOrEqual(t, p.Column, utf8.RuneCountInString(file.Line(p.Line))+1, "%v in %q", p, text)
}

func requireFaults(t *testing.T, faults source.Faults) {
	for i, f := range faults {
		require.NotEmpty(t, f.Message)
		require.True(t, utf8.ValidString(f.Text()))
		require.NotContains(t, f.Message, "\n")
		if i > 0 {
			require.LessOrEqual(t, faults[i-1].Place.Compare(f.Place), 0, "in file order")
		}
	}
}

func requirePlayers(t *testing.T, players []Player) {
	require.LessOrEqual(t, len(players), rosterRows)
	for _, p := range players {
		require.Empty(t, strings.Trim(p.Number, "0123456789"))
		require.LessOrEqual(t, len(p.Number), digits)
		require.LessOrEqual(t, utf8.RuneCountInString(p.Name), nameLetters)
		require.NotEmpty(t, p.Label())
		require.Equal(t, p.SizeKnown, p.Size.Letter != "")
	}
}

func FuzzReadJob(f *testing.F) {
	seeds(f, "job-")
	for _, s := range []string{full, short, string(Starter()[0].Data)} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		job, faults := ReadJob("j", data, WithFaces("oswald", "graduate"))
		require.Equal(t, job == nil, len(faults) > 0, "a fault means no job, and no job a fault")
		requireFaults(t, faults)
		text := strings.TrimPrefix(strings.ToValidUTF8(string(data), "\ufffd"), bom)
		if utf8.Valid(data) {
			for _, fault := range faults {
				requireInside(t, text, fault.Place)
			}
		}
		if job == nil {
			return
		}
		require.NotEmpty(t, job.Order.Pieces)
		requirePlayers(t, job.Order.Players)
		for _, p := range job.Order.Pieces {
			require.Len(t, p.Colour.Hex, 7)
			require.False(t, p.Radius != nil && p.Rise != nil)
		}
		again, _ := ReadJob("j", data, WithFaces("oswald", "graduate"))
		require.Equal(t, job, again, "same input, same order")
	})
}

func FuzzReadRoster(f *testing.F) {
	seeds(f, "roster-", "book-")
	f.Add([]byte("Name,#,Size\nLind,00,YM\n"))
	f.Add(Starter()[1].Data)
	f.Add([]byte("sep=;\nName;#;Size\n\"a;\"\"b\";7;M\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		roster, faults := ReadRoster("r", data, "", RosterOptions{})
		require.Equal(t, roster == nil, len(faults) > 0, "a fault means no roster, and no roster a fault")
		requireFaults(t, faults)
		if utf8.Valid(data) {
			text := strings.TrimPrefix(string(data), bom)
			for _, fault := range faults {
				requireInside(t, text, fault.Place)
			}
		}
		if roster == nil {
			return
		}
		require.NotEmpty(t, roster.Players)
		requirePlayers(t, roster.Players)
		for i, n := range roster.Notes {
			require.NotEmpty(t, n.Message)
			require.NotEmpty(t, n.Remedy)
			require.True(t, i == 0 || roster.Notes[i-1].At.Compare(n.At) <= 0, "in row order")
		}
	})
}

// FuzzSheet puts what a hostile sheet may hold into a sound workbook, which
// changes of a whole file hardly ever reach.
func FuzzSheet(f *testing.F) {
	for _, s := range []string{
		rawHeads + rawPlayer, rawHeads + `<row r="2"><c r="B2" s="9" t="s"><v>-1</v></c></row>`, `<row r="0"><c r="A0"/></row>`,
		rawHeads + `<row r="1" hidden="1"><c r="C2" t="e"><f>NA()</f><v>#N/A</v></c></row>`, rawHeads + `<row r="3"/><row r="2"><c r="ZZZZ1"/></row>`,
		rawHeads + `</sheetData><mergeCells><mergeCell ref="B2:A1"/></mergeCells><sheetData>` + rawPlayer, rawHeads + `<row><c t="b"><v>1</v></c><c t="d"><v>2027-01-01</v></c></row>`,
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, rows string) {
		roster, faults := ReadRoster("r", rawBook(t, rows), "", RosterOptions{})
		require.Equal(t, roster == nil, len(faults) > 0)
		requireFaults(t, faults)
		if roster != nil {
			requirePlayers(t, roster.Players)
		}
	})
}

// FuzzNumberIdentity writes a number into each kind of file and reads it back.
func FuzzNumberIdentity(f *testing.F) {
	for _, n := range confusable {
		f.Add(n)
	}
	f.Fuzz(func(t *testing.T, number string) {
		if len(number) > digits || strings.Trim(number, "0123456789") != "" {
			return
		}
		r, faults := ReadRoster("r", []byte("Name,#,Size\nLind,"+number+",M\n"), "", RosterOptions{})
		require.Empty(t, faults)
		require.Equal(t, number, r.Players[0].Number)
		job, faults := ReadJob("j", []byte(strings.Replace(short, "roster: roster.csv", "players: [{name: Lind, number: "+number+", size: M}]", 1)))
		require.Empty(t, faults)
		require.Equal(t, number, job.Order.Players[0].Number)
	})
}
