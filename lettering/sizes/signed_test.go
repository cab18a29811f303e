package sizes_test

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

func onto(t *testing.T, signed *sizes.Sized, players ...order.Player) *sizes.Sized {
	t.Helper()
	o := *signed.Order
	o.Players = append(append([]order.Player{}, signed.Order.Players...), players...)
	s, err := sizes.Resolve(context.Background(), &o, sizes.Options{Face: typeface.Embedded, Workers: 2, Signed: signed})
	require.NoError(t, err)
	return s
}

// factsOf returns the facts about one player.
func factsOf(s *sizes.Sized, player int) string {
	return sizes.FactText(slices.DeleteFunc(s.Facts(), func(f sizes.Fact) bool { return f.Player != player }))
}

func TestAddedPlayersLeaveTheSignedOnesAsTheyAre(t *testing.T) {
	o := herons(team()...)
	o.Fit.Same = "team"
	signed := resolve(t, o, nil)
	// A wider number would lower everyone's on that size, and a longer name
	// everyone's letters, were the order sized anew.
	more := onto(t, signed, player("Ellingsworth-Marchbanks", "88", garment.Adult, "M"), player("Ode", "5", garment.Adult, "M"))
	require.Len(t, more.Players, len(signed.Players)+2)
	for i, p := range signed.Players {
		assert.True(t, more.Players[i].Signed)
		assert.Equal(t, factsOf(signed, i), factsOf(more, i), p.Label())
	}
	short := backName(t, more.Players[len(signed.Players)+1])
	assert.False(t, more.Players[len(signed.Players)+1].Signed)
	model := backName(t, signed.Players[0])
	assert.InDelta(t, model.Height(), short.Height(), 1e-9, "a name that was added has the height that the signed ones share")
	assert.Equal(t, model.Name.Radius, short.Name.Radius, "and their circle")
	number, _ := more.Players[len(signed.Players)+1].Piece(garment.BackNumber)
	level, _ := signed.Players[0].Piece(garment.BackNumber)
	assert.Equal(t, level.Top, number.Top, "and their level")
}

func TestANameThatCannotMatchSaysSo(t *testing.T) {
	o := herons(player("Ng", "7", garment.Adult, "M"), player("Quill", "9", garment.Adult, "M"))
	o.Fit.Same = "team"
	signed := resolve(t, o, nil)
	more := onto(t, signed, player("Wojciechowskimann", "5", garment.Adult, "M"), player("Ode", "6", garment.Adult, "M"))
	long := backName(t, more.Players[2])
	require.Less(t, long.Height(), backName(t, signed.Players[0]).Height())
	assert.InDelta(t, backName(t, signed.Players[0]).Height(), long.Unmatched, 1e-9)
	assert.NotEmpty(t, long.Name.WouldFit, "it comes with its ways out")
	assert.Zero(t, backName(t, more.Players[3]).Unmatched)
}

func TestAChangedPlayerIsSizedToMatchAndNotFixed(t *testing.T) {
	signed := resolve(t, herons(team()...), nil)
	o := *signed.Order
	o.Players = append([]order.Player{}, o.Players...)
	o.Players[0].Number = "70"
	s, err := sizes.Resolve(context.Background(), &o, sizes.Options{Face: typeface.Embedded, Workers: 1, Signed: signed})
	require.NoError(t, err)
	assert.False(t, s.Players[0].Signed)
	assert.True(t, s.Players[1].Signed)
}

func TestAWayThatWasChosenIsWhatIsMade(t *testing.T) {
	o := herons(team()...)
	s := resolve(t, o, nil)
	long := backName(t, s.Players[2])
	require.Equal(t, fit.Over, long.Name.Verdict)
	for i := range long.Name.WouldFit {
		way := &long.Name.WouldFit[i]
		t.Run(way.Kind, func(t *testing.T) {
			got, err := sizes.Resolve(context.Background(), o, sizes.Options{
				Face: typeface.Embedded, Workers: 1, Chosen: []sizes.Choice{{Player: 2, Place: garment.BackName, Name: way}},
			})
			require.NoError(t, err)
			name := backName(t, got.Players[2])
			assert.NotEqual(t, fit.Over, name.Name.Verdict)
			assert.InDelta(t, way.Height, name.Height(), 0.011)
			if way.Kind == fit.NextSize {
				assert.Equal(t, way.Size, got.Players[2].Garment.Size().String())
			}
			for k, p := range s.Players {
				if k != 2 {
					assert.Equal(t, factsOf(s, k), factsOf(got, k), "%s stays", p.Label())
				}
			}
			assert.NotEqual(t, s.Fingerprint(), got.Fingerprint())
		})
	}
}
