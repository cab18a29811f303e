package choices_test

import (
	"context"
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// demo sizes and checks the demo order after an edit.
func demo(t *testing.T, withRules bool, edit func(*order.Order)) (*sizes.Sized, []findings.Result) {
	t.Helper()
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) },
		order.WithFaces("oswald", "quantico", "yellowtail"), order.WithRules("nfhs-softball"))
	require.NoError(t, err)
	edit(o)
	var rules *rulebook.Rules
	if withRules {
		book, err := rulebook.Load("nfhs-softball")
		require.NoError(t, err)
		rules, err = book.In("2027")
		require.NoError(t, err)
	}
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Rules: rules, Workers: 2})
	require.NoError(t, err)
	return s, findings.Check(rules, findings.Of(s))
}

func as(*order.Order) {}

func TestTheDemoAsksAboutTheNamesThatDoNotFitAndTheSharedNumber(t *testing.T) {
	s, results := demo(t, true, as)
	all := choices.Of(s, results)
	require.NotEmpty(t, all)
	open, clashes := 0, 0
	for i, q := range all {
		if i > 0 && all[i-1].Piece != nil && q.Piece != nil {
			assert.GreaterOrEqual(t, all[i-1].Over, q.Over, "the furthest over comes first")
		}
		for k, w := range q.Ways {
			assert.Equal(t, string(rune('A'+k)), w.Letter)
			found, ok := q.Way(w.Letter)
			assert.True(t, ok)
			assert.Equal(t, w.Kind, found.Kind)
		}
		if q.Open() {
			open++
		}
		if q.Clash != nil {
			clashes++
			assert.Equal(t, choices.BothZeros, q.Clash.What)
			assert.Equal(t, "1 number", q.ID)
			assert.Equal(t, choices.LeaveBoth, q.Ways[len(q.Ways)-1].Kind)
		}
	}
	assert.Equal(t, 1, clashes, "0 and 00 count as one in this book")
	assert.Positive(t, open)
	_, ok := all[0].Way("Z")
	assert.False(t, ok)
}

func TestAReducedNameMayStayAsItIs(t *testing.T) {
	s, results := demo(t, false, as)
	reduced := 0
	for _, q := range choices.Of(s, results) {
		if q.Piece == nil || q.Piece.Name == nil || q.Piece.Name.Verdict != fit.Reduced {
			continue
		}
		reduced++
		assert.False(t, q.Open(), q.ID)
		assert.Equal(t, choices.AsItStands, q.Ways[0].Kind)
		assert.Zero(t, q.Over)
	}
	assert.Positive(t, reduced, "the demo has a name that was reduced")
}

func TestPlayersWithoutANumberDoNotClash(t *testing.T) {
	s, results := demo(t, true, func(o *order.Order) {
		o.Players[2].Number, o.Players[3].Number = "", ""
	})
	for _, c := range choices.Clashes(s, results) {
		assert.NotContains(t, c.Players, 2)
	}
}

func TestNumbersClashAsTheyAreWrittenAndByValueOnlyWhereTheBookSaysSo(t *testing.T) {
	for _, test := range []struct {
		name   string
		rules  bool
		first  string
		second string
		clash  bool
	}{
		{"the same text", false, "7", "7", true},
		{"7 and 07 without a book", false, "7", "07", false},
		{"0 and 00 without a book", false, "0", "00", false},
	} {
		t.Run(test.name, func(t *testing.T) {
			s, results := demo(t, test.rules, func(o *order.Order) {
				o.Players = o.Players[1:3]
				o.Players[0].Number, o.Players[1].Number = test.first, test.second
			})
			all := choices.Clashes(s, results)
			if !test.clash {
				assert.Empty(t, all)
				return
			}
			require.Len(t, all, 1)
			assert.Equal(t, []int{0, 1}, all[0].Players)
			assert.True(t, all[0].Alike)
			assert.Empty(t, all[0].Others(s.Players, 0))
		})
	}
}
