package source

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestPlaceIsWrittenAsEditorsAndSpreadsheetsWriteIt(t *testing.T) {
	for _, c := range []struct {
		at   Place
		want string
	}{
		{Place{}, ""},
		{Place{File: "job.yaml"}, "job.yaml"},
		{Place{File: "job.yaml", Line: 4}, "job.yaml:4"},
		{Place{File: "job.yaml", Line: 4, Column: 9}, "job.yaml:4:9"},
		{Place{File: "r.xlsx", Sheet: "Sheet1"}, "r.xlsx Sheet1"},
		{Place{File: "r.xlsx", Sheet: "Sheet1", Cell: "C7"}, "r.xlsx Sheet1!C7"},
		{Place{File: "r.xlsx", Sheet: "Coach's list", Cell: "C7"}, "r.xlsx 'Coach''s list'!C7"},
		{Place{Sheet: "S", Cell: "A1"}, "S!A1"},
	} {
		assert.Equal(t, c.want, c.at.String())
	}
}

func TestPlacesCompareInReadingOrder(t *testing.T) {
	cell := func(c string) Place { return Place{File: "r", Sheet: "S", Cell: c} }
	line := func(l, c int) Place { return Place{File: "r", Line: l, Column: c} }
	for _, order := range [][]Place{
		{line(1, 1), line(1, 2), line(1, 10), line(2, 1), line(10, 1)},
		{cell("A1"), cell("B1"), cell("Z1"), cell("AA1"), cell("A2"), cell("A10")},
	} {
		for i := range order {
			for j := range order {
				assert.Equal(t, sign(i-j), order[i].Compare(order[j]), "%v against %v", order[i], order[j])
			}
		}
	}
}

func TestFaultsSortByFileAsFirstMetThenByPlace(t *testing.T) {
	fs := Faults{
		{Place: Place{File: "job", Line: 3, Column: 1}, Message: "c"},
		{Place: Place{File: "a roster", Line: 1, Column: 1}, Message: "d"},
		{Place: Place{File: "job", Line: 2, Column: 5}, Message: "a"},
		{Place: Place{File: "job", Line: 2, Column: 5}, Message: "b"},
	}
	fs.Sort()
	got := ""
	for _, f := range fs {
		got += f.Message
	}
	assert.Equal(t, "abcd", got)
}

func TestErrorPrintsAHundredFaultsAndSaysHowManyMore(t *testing.T) {
	for _, c := range []struct {
		n    int
		last string
	}{
		{1, "f:1:1: fault 1"},
		{100, "f:100:1: fault 100"},
		{101, "and 1 more fault like these"},
		{350, "and 250 more faults like these"},
	} {
		var fs Faults
		for i := 1; i <= c.n; i++ {
			fs = append(fs, Fault{Place: Place{File: "f", Line: i, Column: 1}, Message: fmt.Sprintf("fault %d", i)})
		}
		lines := strings.Split(fs.Error(), "\n")
		assert.Equal(t, c.last, lines[len(lines)-1])
		assert.Equal(t, min(c.n, 100), strings.Count(fs.Error(), "f:"))
	}
}

func TestErrOfNoFaultsIsNil(t *testing.T) {
	assert.NoError(t, Faults(nil).Err())
	assert.NoError(t, Faults{}.Err())
	var fs Faults
	require.ErrorAs(t, Faults{{Message: "x"}}.Err(), &fs)
	assert.Equal(t, "job:1:2: bad (do this)", Fault{Place{File: "job", Line: 1, Column: 2}, "bad", "do this", "", 0}.Error())
}

func TestLinesEndWithEveryKindOfBreak(t *testing.T) {
	f := NewFile("f", "a\nbé\r\nc\rd")
	require.Equal(t, 4, f.Lines())
	for i, want := range []string{"", "a", "bé", "c", "d", ""} {
		assert.Equal(t, want, f.Line(i))
	}
	assert.Equal(t, Fault{Place{File: "f", Line: 2, Column: 2}, "m", "h", "bé", 1}, f.Fault(2, 2, 1, "m", "h"))
	assert.Equal(t, "f", f.Name())
}

func TestBadByteIsFoundByLineAndCharacter(t *testing.T) {
	for _, c := range []struct {
		data         string
		found        bool
		b            byte
		line, column int
	}{
		{"sound: é\n", false, 0, 0, 0},
		{"\xff", true, 0xff, 1, 1},
		{"a\nPe\xf1a", true, 0xf1, 2, 3},
		{"a\r\né\xe9", true, 0xe9, 2, 2},
		{"a\rb\xe2\x82", true, 0xe2, 2, 2},
		{"\ufffd ok", false, 0, 0, 0},
	} {
		b, line, column, found := BadByte([]byte(c.data))
		assert.Equal(t, c.found, found, "%q", c.data)
		assert.Equal(t, []int{int(c.b), c.line, c.column}, []int{int(b), line, column}, "%q", c.data)
	}
}

func TestSortNeverLosesAFault(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 200).Draw(t, "n")
		fs := make(Faults, n)
		for i := range fs {
			fs[i] = Fault{
				Place:   Place{File: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "file"), Line: rapid.IntRange(1, 5).Draw(t, "line"), Column: rapid.IntRange(1, 5).Draw(t, "column")},
				Message: fmt.Sprint(i),
			}
		}
		fs.Sort()
		seen := map[string]bool{}
		for i, f := range fs {
			seen[f.Message] = true
			if i > 0 && fs[i-1].Place.File == f.Place.File {
				assert.LessOrEqual(t, fs[i-1].Place.Compare(f.Place), 0)
			}
		}
		assert.Len(t, seen, n)
	})
}
