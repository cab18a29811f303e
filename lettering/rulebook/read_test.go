package rulebook

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// good is a small sound book; the bad ones below differ from it in one place.
const good = `yokeline rules: 1
id: lakeside-softball
body: Lakeside League
sport: softball
level: club
edition: "2027"
played: spring
sources:
  page: {title: Uniform page, publisher: Lakeside League, season: "2027", kind: primary}
  book: {title: Rule book, publisher: Lakeside League, kind: unseen}
figures:
  - {about: back number, figure: height at least, is: 6in, rule: "4", source: page, how: read}
  - {about: numbers, figure: at most, is: 99, source: book, how: memory}
`

func TestAUsersOwnBookIsReadLikeOurs(t *testing.T) {
	b, faults := Read("lakeside.yaml", []byte(good))
	require.Empty(t, faults)
	assert.Equal(t, "lakeside-softball", b.ID)
	r, err := b.In("2027")
	require.NoError(t, err)
	assert.Equal(t, "6 in", r.Position("back number").HeightMin.Text())
	assert.Equal(t, 99, r.Numbers.Max.Count)
	assert.Equal(t, "Lakeside League, Uniform page (2027)", r.Position("back number").HeightMin.Source.String())
	read, memory := b.Count()
	assert.Equal(t, [2]int{1, 1}, [2]int{read, memory})
}

func TestABadBookIsRefusedWithLineAndColumn(t *testing.T) {
	const page = "source: page, how: read}"
	for _, c := range []struct {
		name, old, new string
		at             string // line:column of the first fault
		message        string
	}{
		{"an unknown key", "level: club", "levl: club", "5:1", `no key "levl"`},
		{"a key twice", "level: club", "level: club\nlevel: pro", "6:1", "twice"},
		{"a format of the future", "rules: 1", "rules: 2", "1:17", `format "2"`},
		{"no body", "body: Lakeside League\n", "", "1:1", "has no body"},
		{"an empty value", "sport: softball", "sport: \"\"", "4:8", "is empty"},
		{"null for a value", "sport: softball", "sport:", "4:7", "must be one value"},
		{"a list for a value", "sport: softball", "sport: [softball]", "4:8", "must be one value"},
		{"capitals in the id", "lakeside-softball", "Lakeside", "2:5", "small letters"},
		{"a season of no kind", "played: spring", "played: monsoon", "7:9", `cannot be "monsoon"`},
		{"sources that are a list", "sources:\n", "sources: []\nspare:\n", "8:10", "no sources"},
		{"a source of no kind", "kind: primary", "kind: hearsay", "9:81", `cannot be "hearsay"`},
		{"a source without a publisher", "publisher: Lakeside League, season", "season", "9:9", "has no publisher"},
		{"a figure about nothing", "about: back number", "about: back numbers", "12:13", `about "back numbers"`},
		{"a figure of no name", "figure: height at least", "figure: height", "12:34", `no figure "height"`},
		{"a figure without a value", "is: 6in, ", "", "12:5", "has no is"},
		{"a length without a unit", "is: 6in", "is: 6", "12:55", "no unit"},
		{"a length of nothing", "is: 6in", "is: 0in", "12:55", "limits nothing"},
		{"a negative length", "is: 6in", "is: -6in", "12:55", "not a length"},
		{"two lengths for a minimum", "is: 6in", "is: \"6in, 8in\"", "12:55", "not a length"},
		{"a count that is a word", "is: 99", "is: many", "13:43", "whole number"},
		{"a count below nothing", "is: 99", "is: -1", "13:43", "whole number"},
		{"a source that is not there", page, "source: pge, how: read}", "12:79", `"pge"`},
		{"no source", "source: page, ", "", "12:5", "has no source"},
		{"no word on how", ", how: read}", "}", "12:5", "has no how"},
		{"a made-up how", "how: read", "how: hearsay", "12:90", `cannot be "hearsay"`},
		{"read in a book nobody opened", "source: page, how: read", "source: book, how: read", "12:90", "cannot have been read"},
		{"a season that is none", page, "from: soon, " + page, "12:77", "not a season"},
		{"an end that is none", page, "until: later, " + page, "12:78", "not a season"},
		{"an end before its beginning", page, "from: 2027, until: 2026, " + page, "12:90", "ends before it begins"},
		{"advice that is neither yes nor no", page, "advice: maybe, " + page, "12:79", `cannot be "maybe"`},
		{"one figure twice", "  - {about: numbers", "  - {about: back number, figure: height at least, is: 8in, " + page + "\n  - {about: numbers", "13:5", "two figures for the same seasons"},
		{"a minimum over the maximum", "  - {about: numbers", "  - {about: back number, figure: height at most, is: 5in, " + page + "\n  - {about: numbers", "13:5", "cannot both hold"},
		{"a minimum count over the maximum", "  - {about: numbers", "  - {about: numbers, figure: at least, is: 100, " + page + "\n  - {about: numbers", "14:5", "cannot both hold"},
		{"a word that the figure does not have", "figure: at most, is: 99", "figure: zero, is: maybe", "13:40", "none of: legal, illegal"},
		{"digits that are no range", "figure: at most, is: 99", "figure: digits allowed, is: 5-0", "13:50", "range of digits"},
		{"an anchor", "body: Lakeside League", "body: &b Lakeside League", "3:7", "anchor or a tag"},
		{"an alias", "sport: softball", "level2: &x y\nsport: *x", "4:1", `no key "level2"`},
		{"a tag", "sport: softball", "sport: !!str softball", "4:8", "anchor or a tag"},
		{"a figure that is a word", "  - {about: numbers", "  - nonsense\n  - {about: numbers", "13:5", "keys and values"},
		{"figures that are one figure", "figures:\n", "figures: {}\nspare:\n", "11:10", "no figures"},
		{"a source without a name", "  page: {title", "  \"\": {title", "9:3", "no name to be cited by"},
		{"a thousand figures too many", "figures:\n", "figures:\n" + strings.Repeat("  - {}\n", 1000), "1012:5", "more than 1000"},
		{"a source twice", "  book: {title", "  page: {title", "10:3", "there twice"},
		{"a bracket left open", "kind: primary}", "kind: primary", "", "not YAML"},
		{"a tab for an indent", "  page: {", "\tpage: {", "9:1", "not YAML"},
		{"two documents", "figures:", "---\nfigures:", "", "not YAML"},
	} {
		t.Run(c.name, func(t *testing.T) {
			bad := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, bad, "the case changes nothing")
			b, faults := Read("own.yaml", []byte(bad))
			require.Nil(t, b)
			require.NotEmpty(t, faults)
			var found bool
			for _, f := range faults {
				assert.Positive(t, f.Place.Line)
				at := fmt.Sprintf("%d:%d", f.Place.Line, f.Place.Column)
				found = found || (c.at == "" || c.at == at) && strings.Contains(f.Message, c.message)
			}
			assert.True(t, found, "no %q at %s:\n%s", c.message, c.at, faults.Error())
			assert.Equal(t, "own.yaml", faults[0].Place.File)
		})
	}
}

func TestAFileThatIsNoBookAtAllIsRefused(t *testing.T) {
	for name, data := range map[string]string{
		"empty": "", "a list": "- a\n", "a word": "softball\n", "a comment": "# nothing\n",
		"bytes": "body: \xff\xfe\n", "zip": "PK\x03\x04\x00", "too long": strings.Repeat("# long\n", 200_000), "deep": strings.Repeat("[", 5000),
	} {
		b, faults := Read(name, []byte(data))
		assert.Nil(t, b, name)
		require.NotEmpty(t, faults, name)
		assert.NotEmpty(t, faults.Error(), name)
	}
	_, faults := Read("x.yaml", []byte("id: a\nbody: caf\xe9\n"))
	assert.Equal(t, "x.yaml:2:10", faults[0].Place.String())
}

func TestEveryFaultOfAFileIsReportedAtOnce(t *testing.T) {
	bad := strings.NewReplacer("played: spring", "played: monsoon", "is: 6in", "is: 6", "how: memory", "how: hearsay").Replace(good)
	_, faults := Read("own.yaml", []byte(bad))
	require.Len(t, faults, 3)
	assert.Less(t, faults[0].Place.Line, faults[1].Place.Line)
	assert.Less(t, faults[1].Place.Line, faults[2].Place.Line)
	assert.Contains(t, faults[1].Text(), "^")
}

func TestAFaultSuggestsTheWordMeant(t *testing.T) {
	for slip, want := range map[string]string{
		"figure: height at leest": "did you mean height at least", "about: back numbr": "did you mean back number", "source: pagee": "did you mean page",
	} {
		key, _, _ := strings.Cut(slip, ":")
		old := map[string]string{"figure": "figure: height at least", "about": "about: back number", "source": "source: page"}[key]
		_, faults := Read("own.yaml", []byte(strings.Replace(good, old, slip, 1)))
		require.NotEmpty(t, faults)
		assert.Equal(t, want, faults[0].Hint)
	}
}

// FuzzRead feeds Read anything: it must neither panic nor return a book with
// a figure that lacks what every figure has.
func FuzzRead(f *testing.F) {
	f.Add([]byte(good))
	for _, id := range []string{"nfhs-football", "uefa-equipment", "wftda"} {
		data, err := os.ReadFile("books/" + id + ".yaml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, seed := range []string{"", "a: &a [*a]", "? {a: b}\n: c", "yokeline rules: 1\nfigures: [{about: [], is: {}}]", "%YAML 9.9\n---\n", "a: !!binary x", "\ufeffid: x", "<<: {id: x}"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		b, faults := Read("fuzz.yaml", data)
		if (b == nil) == (len(faults) == 0) {
			t.Fatal("a book or faults, one of the two")
		}
		if b == nil {
			_ = faults.Error()
			return
		}
		for _, figure := range b.Figures {
			if figure.Source.Title == "" || figure.How != HowRead && figure.How != HowMemory || figure.Is == "" {
				t.Fatalf("%+v", figure)
			}
		}
		for _, season := range []string{"2027", "2027-28", "1900-01-01"} {
			r, err := b.In(season)
			if err != nil {
				t.Fatal(err)
			}
			_ = r.Lines()
		}
	})
}
