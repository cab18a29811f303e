package order

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/source"
)

// from reads files out of memory.
func from(files map[string]string) func(string) ([]byte, error) {
	m := fstest.MapFS{}
	for name, text := range files {
		m[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return func(name string) ([]byte, error) { return fs.ReadFile(m, name) }
}

func TestAnOrderIsItsJobAndItsRoster(t *testing.T) {
	o, err := Read("job.yaml", from(map[string]string{
		"job.yaml":   short + "fit: {width: 60%}\n",
		"roster.csv": "Name on back,#,Size\nLind,7,YM\n,8,M\n",
	}))
	require.NoError(t, err)
	assert.Equal(t, []string{"Lind||7|youth M", "||8|adult M"}, lines(o.Players))
	require.Len(t, o.Notes, 2, "the job's notes first, then the roster's")
	assert.Equal(t, "job.yaml:9:14", o.Notes[0].At.String())
	assert.Equal(t, "roster.csv:3:1", o.Notes[1].At.String())
}

func TestFaultsOfJobAndRosterAreReportedTogether(t *testing.T) {
	o, err := Read("job.yaml", from(map[string]string{
		"job.yaml":   short + "method: cut flim\n",
		"roster.csv": "Name on back,#,Size\nLind,x,YM\n",
	}))
	assert.Nil(t, o)
	var faults source.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 2)
	assert.Equal(t, "job.yaml:9:9", faults[0].Place.String())
	assert.Equal(t, "roster.csv:2:6", faults[1].Place.String())
}

func TestFilesThatCannotBeReadAreFaultsToo(t *testing.T) {
	_, err := Read("job.yaml", from(nil))
	assert.EqualError(t, err, "job.yaml: the job is not there")
	_, err = Read("job.yaml", from(map[string]string{"job.yaml": short}))
	assert.EqualError(t, err, "job.yaml:4:9: roster: roster.csv is not there\n  4 | roster: roster.csv\n    |         ^^^^^^^^^^\n  write its name as it is found beside the job")
	refuses := func(err error) func(string) ([]byte, error) { return func(string) ([]byte, error) { return nil, err } }
	_, err = Read("job.yaml", refuses(&fs.PathError{Op: "open", Path: "/secret/place/job.yaml", Err: fs.ErrPermission}))
	assert.EqualError(t, err, "job.yaml: the job cannot be read: permission denied")
	_, err = Read("job.yaml", refuses(errors.New("disk on fire")))
	assert.EqualError(t, err, "job.yaml: the job cannot be read: disk on fire")
}

func TestTheGroupOfTheJobIsForSizesThatSayNone(t *testing.T) {
	o, err := Read("job.yaml", from(map[string]string{
		"job.yaml":   strings.Replace(short, "cut: soccer", "cut: soccer, group: women", 1),
		"roster.csv": "Name on back,#,Size\nLind,7,M\nRook,8,YM\nDell,9,Adult M\n",
	}))
	require.NoError(t, err)
	assert.Equal(t, []string{"Lind||7|women M", "Rook||8|youth M", "Dell||9|adult M"}, lines(o.Players))
}

func TestPiecesDecideWhatARosterMustHave(t *testing.T) {
	only := func(piece string) string {
		return strings.Replace(short, "  back name:\n  back number:\n", "  "+piece+":\n", 1)
	}
	for piece, roster := range map[string]string{"back name": "Name,Size\nLind,M\n", "back number": "#,Size\n7,M\n", "shorts number": "#,Size\n7,M\n"} {
		job := only(piece)
		if piece == "shorts number" {
			job = strings.Replace(job, "cut: soccer", "cut: shorts", 1)
		}
		o, err := Read("job.yaml", from(map[string]string{"job.yaml": job, "roster.csv": roster}))
		require.NoError(t, err, piece)
		assert.Empty(t, o.Notes, piece)
	}
	_, err := Read("job.yaml", from(map[string]string{"job.yaml": only("back number"), "roster.csv": "Name,Size\nLind,M\n"}))
	assert.ErrorContains(t, err, "no column for the number")
}

// numbers that a program might take for each other.
var confusable = []string{"0", "00", "000", "7", "07", "007", "70", "", "08", "8", "010", "10", "1", "01", "0777", "9999"}

func TestNumbersAreTheTextThatWasTyped(t *testing.T) {
	table := [][]any{{"Name on back", "Number", "Size"}}
	var comma, yaml strings.Builder
	comma.WriteString("Name on back,Number,Size\n")
	yaml.WriteString(strings.Replace(short, "roster: roster.csv\n", "", 1) + "players:\n")
	for i, n := range confusable {
		name := fmt.Sprintf("P%d", i)
		table = append(table, []any{name, n, "M"})
		fmt.Fprintf(&comma, "%s,%s,M\n", name, n)
		fmt.Fprintf(&yaml, "  - {name: %s, number: %s, size: M}\n", name, n)
	}
	want := func(players []Player, kind string) {
		var got []string
		for _, p := range players {
			got = append(got, p.Number)
		}
		assert.Equal(t, confusable, got, kind)
	}
	want(readRoster(t, comma.String()).Players, "csv")
	want(readRoster(t, strings.ReplaceAll(comma.String(), ",", "\t")).Players, "tabs")
	want(readBook(t, book(t, table, nil), "").Players, "xlsx")
	want(readGood(t, yaml.String()).Order.Players, "yaml")
	quoted := strings.NewReplacer("number: ", `number: "`, ", size", `", size`).Replace(yaml.String())
	want(readGood(t, quoted).Order.Players, "yaml in quotes")
}

func TestZeroAndDoubleZeroAreDifferentNumbers(t *testing.T) {
	assert.Empty(t, noteLines(readRoster(t, "Name,#,Size\nA,0,M\nB,00,M\nC,7,M\nD,07,M\n").Notes))
	assert.Len(t, readRoster(t, "Name,#,Size\nA,00,M\nB,00,M\n").Notes, 1)
}

func readDemo(t testing.TB) *Order {
	job, files := Demo()
	o, err := Read(job, func(name string) ([]byte, error) { return fs.ReadFile(files, name) })
	require.NoError(t, err)
	return o
}

func TestTheDemoHasWhatItIsMeantToShow(t *testing.T) {
	o := readDemo(t)
	assert.Len(t, o.Players, 16)
	assert.Empty(t, noteLines(o.Notes))
	assert.Equal(t, "nfhs-softball", o.Rules)
	groups, numbers := map[garment.Group]int{}, map[string]int{}
	shortest, longest, all := 99, 0, ""
	for _, p := range o.Players {
		require.True(t, p.SizeKnown)
		groups[p.Size.Group]++
		numbers[p.Number]++
		n := 0
		for _, r := range p.Name {
			if unicode.IsLetter(r) {
				n++
			}
		}
		shortest, longest = min(shortest, n), max(longest, n)
		all += p.Name + " "
	}
	assert.Len(t, groups, 3)
	assert.Equal(t, []int{2, 20}, []int{shortest, longest})
	assert.Equal(t, []int{1, 1}, []int{numbers["0"], numbers["00"]})
	for _, part := range []string{"'", "-", "Mc", "ñ", "Å", "Ü", "ó"} {
		assert.Contains(t, all, part)
	}
}

func TestTheStarterReadsWithoutFaultOrNote(t *testing.T) {
	files := map[string]string{}
	for _, f := range Starter() {
		files[f.Name] = string(f.Data)
	}
	o, err := Read("job.yaml", from(files))
	require.NoError(t, err)
	assert.Empty(t, noteLines(o.Notes))
	assert.Equal(t, []string{"7", "07", "23"}, []string{o.Players[0].Number, o.Players[1].Number, o.Players[2].Number})
	a, b := Starter(), Starter()
	a[0].Data[0] = '!'
	assert.NotEqual(t, a[0].Data[0], b[0].Data[0], "files are the caller's own")
	for _, line := range strings.Split(files["job.yaml"], "\n") {
		assert.LessOrEqual(t, len([]rune(line)), 130)
	}
}

const orders = "../../testdata/orders"

func readSample(t testing.TB, folder string) *Order {
	o, err := Read("job.yaml", func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(orders, folder, name)) })
	require.NoError(t, err)
	return o
}

func TestTheSampleOrdersRead(t *testing.T) {
	o := readSample(t, "basketball")
	assert.Equal(t, []any{length.Inch, garment.BasketballTank, "nfhs-basketball", 6}, []any{o.Units, o.Garment.Cut, o.Rules, len(o.Players)})
	assert.Equal(t, "16", o.Players[2].Number, "the number that the rules do not list")
	o = readSample(t, "soccer")
	assert.Equal(t, []any{length.Centimetre, garment.Soccer, "fifa-equipment", len(soccerRows()) - 3}, []any{o.Units, o.Garment.Cut, o.Rules, len(o.Players)})
	assert.Equal(t, "Ødegrim|Kari Ødegrim|1|women L|goalkeeper", lines(o.Players)[0])
	assert.Len(t, o.Notes, 2, "the other sheet, and numbers stored as numbers: %v", noteLines(o.Notes))
}

// soccerRows is the roster of the soccer sample, as a club's spreadsheet has it:
// a title, numbers typed as numbers, and one kept as text.
func soccerRows() [][]any {
	return [][]any{
		{"Holmvik Tern, season 2027"}, {},
		{"Jersey name", "Player", "No.", "Size", "Position"},
		{"Ødegrim", "Kari Ødegrim", 1, "L", "goalkeeper"},
		{"Sæterlund", "Mai Sæterlund", 4, "M"},
		{"Bø", "Ane Bø", "07", "S"},
		{"Tveitmoen", "Rut Tveitmoen", 10, "M", "captain"},
		{"Aarrestadhaug", "Pia Aarrestadhaug", 14, "XL"},
		{"Nyvoll", "Eli Nyvoll", 23, "YXL"},
	}
}

func TestTheSoccerRosterIsTheOneBuiltHere(t *testing.T) {
	data := book(t, soccerRows(), func(f *excelize.File) {
		require.NoError(t, f.SetSheetName("Roster", "Spillere"))
		_, err := f.NewSheet("Kontakt")
		require.NoError(t, err)
		require.NoError(t, f.SetCellValue("Kontakt", "A1", "see the club's office"))
	})
	path := filepath.Join(orders, "soccer", "roster.xlsx")
	if *update {
		require.NoError(t, os.WriteFile(path, data, 0o644))
	}
	stored, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, readBook(t, data, "Spillere"), readBook(t, stored, "Spillere"))
}
