package findings_test

import (
	"context"
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// demo sizes the built-in order after an edit.
func demo(t *testing.T, edit func(*order.Order)) *sizes.Sized {
	t.Helper()
	job, files := order.Demo()
	o, err := order.Read(job, func(name string) ([]byte, error) { return fs.ReadFile(files, name) })
	require.NoError(t, err)
	edit(o)
	book, err := rulebook.Load(o.Rules)
	require.NoError(t, err)
	rules, err := book.In(o.Season)
	require.NoError(t, err)
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Rules: rules, Workers: 2})
	require.NoError(t, err)
	return s
}

func concerning(results []findings.Result, player, what string) (out []findings.Result) {
	for _, r := range results {
		if r.Player == player && r.What == what {
			out = append(out, r)
		}
	}
	return out
}

func TestAPlayerWhoseSizeIsNotKnownIsNotMissingANumber(t *testing.T) {
	s := demo(t, func(o *order.Order) { o.Players[2].SizeKnown = false })
	player := s.Players[2].Label()
	results := findings.Check(s.Rules, findings.Of(s))
	assert.Empty(t, concerning(results, player, "required place"))

	s = demo(t, func(o *order.Order) { o.Pieces = o.Pieces[:1] }) // the back name alone
	assert.NotEmpty(t, concerning(findings.Check(s.Rules, findings.Of(s)), player, "required place"), "but one without a back number is")
}

func TestWhatIsMeasuredIsThePieceAsItWillBeMade(t *testing.T) {
	s := demo(t, func(*order.Order) {})
	subject := findings.Of(s)
	for i, w := range subject.Players {
		require.Len(t, w.Pieces, len(s.Players[i].Pieces))
		for k, m := range w.Pieces {
			piece := s.Players[i].Pieces[k]
			assert.Equal(t, piece.Height(), m.Height)
			assert.Equal(t, piece.InkWidth(), m.Width)
			assert.Equal(t, len(piece.Asked.Outlines), len(m.Borders))
			assert.Equal(t, s.Order.Garment.Colour.Hex, m.GarmentHex)
		}
	}
}

func TestWhereABookDecidesTheRosterNoteGivesWay(t *testing.T) {
	notes := func(kind string, rules bool) (found []findings.Result) {
		s := demo(t, func(o *order.Order) {
			o.Notes = []order.Note{{Severity: order.Violation, Player: "Quill", What: "number", Kind: kind, Message: "the note"}}
		})
		r := s.Rules
		if !rules {
			r = nil
		}
		for _, result := range findings.Check(r, findings.Of(s)) {
			if result.Measured == "the note" {
				found = append(found, result)
			}
		}
		return found
	}
	for _, kind := range []string{order.NoNumber, order.TakenNumber} {
		assert.Empty(t, notes(kind, true), kind)
		assert.Len(t, notes(kind, false), 1, kind)
	}
	assert.Len(t, notes("", true), 1, "a remark that no book speaks of stays")
}
