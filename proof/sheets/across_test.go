package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

func acrossOf(t *testing.T, in Input) (*document, []leaf) {
	t.Helper()
	d, err := newDocument(in)
	require.NoError(t, err)
	leaves, err := d.planSizes()
	require.NoError(t, err)
	return d, leaves
}

func TestAcrossShowsOnePlayerOnTheSmallestMiddleAndLargestSize(t *testing.T) {
	in := sampleInput(t)
	d, leaves := acrossOf(t, in)
	require.Len(t, leaves, 2, "the back, then the front")
	wearers, same := d.onEverySize(d.sizeCounts())
	require.True(t, same)
	for _, p := range wearers {
		assert.Equal(t, wearers[0].Name, p.Name)
		assert.Equal(t, wearers[0].Number, p.Number)
	}
	for _, p := range in.Sized.Players {
		if p.Name != wearers[0].Name {
			continue
		}
		for _, w := range wearers {
			if w.Size == p.Size {
				mine, _ := p.Piece(garment.BackName)
				theirs, _ := w.Piece(garment.BackName)
				assert.InDelta(t, mine.Height(), theirs.Height(), 1e-9, "as in the roster where the player is of that size")
			}
		}
	}
	text := said(t, in, (*document).planSizes)
	for _, want := range []string{"  smallest", "  middle, and the commonest", "  largest", "All five, one inside the other", "room for the name", "chest, flat", "Drawn 1 : "} {
		assert.Contains(t, text, want)
	}
	for _, p := range drawn(t, in, (*document).planSizes) {
		requireTidy(t, p)
	}
}

func TestAcrossIsLeftOutOfAnOrderInOneSize(t *testing.T) {
	_, leaves := acrossOf(t, inputOf(t, sampleJob, head+"Quill,7,M\nAdair,8,M\n"))
	assert.Empty(t, leaves)
	in := inputOf(t, sampleJob, head+"Quill,7,M\nAdair,8,L\n")
	text := said(t, in, (*document).planSizes)
	assert.Contains(t, text, "on both sizes")
	assert.Contains(t, text, "Both, one inside the other")
	assert.NotContains(t, text, "middle")
}

// A height that names share stays what it is for the team.
func TestAcrossKeepsTheHeightThatTheTeamShares(t *testing.T) {
	in := sampleInput(t, "same: none", "same: team")
	d, _ := acrossOf(t, in)
	wearers, same := d.onEverySize(d.sizeCounts())
	require.NotEmpty(t, in.Sized.Looks)
	for _, p := range wearers {
		name, ok := p.Piece(garment.BackName)
		require.True(t, ok)
		if same && name.Name.Verdict != fit.Over {
			assert.InDelta(t, in.Sized.Looks[0].Height, name.Height(), 0.01)
		}
	}
}

// The distance is that of package legibility, rounded down: 8 in at five
// minutes of arc is 8 in / tan 5′ = 458 ft; the stroke of the digits allows less.
func TestReadingDistancesAreSaidInTheUnitOfTheJob(t *testing.T) {
	text := said(t, sampleInput(t), (*document).planSizes)
	assert.Contains(t, text, "A 20/20 eye reads the back number, 8\u00a0in high, at ")
	assert.Contains(t, text, "A 20/20 eye reads the back name, 1\u00a0¾\u00a0in high, at 100\u00a0ft, a 20/40 eye at 50\u00a0ft.", "1.75 in / tan 5′ = 100.3 ft")
	assert.Contains(t, text, "American Academy of")
	assert.Contains(t, said(t, sampleInput(t, metric()...), (*document).planSizes), "\u00a0m, a 20/40 eye at")
	d, err := newDocument(blockInput(t, length.Inch, nil))
	require.NoError(t, err)
	assert.Equal(t, "45", d.far(0.3048*45.9), "below ten steps, whole feet, rounded down")
	assert.Equal(t, "100", d.far(0.3048*104.9))
}
