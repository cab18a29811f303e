package tail_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/tail"
)

// drawnWith draws a default tail and sets a text into it.
func drawnWith(t *testing.T, face, text string) (tail.Tail, geom.Region, float64) {
	t.Helper()
	drawn, err := tail.Draw(script(t, face, "Herons", height), height, tail.Default())
	require.NoError(t, err)
	set, high, err := drawn.Spot.Set(script(t, "oswald", text, 10))
	require.NoError(t, err)
	return drawn, set, high
}

func TestTextStaysInsideTheTailWithItsMargin(t *testing.T) {
	for _, face := range scripts {
		for _, text := range []string{"B", "SOFTBALL", "ALDER POINT RECREATION"} {
			drawn, set, high := drawnWith(t, face, text)
			assert.Positive(t, high)
			assert.LessOrEqual(t, high, drawn.Spot.Height*(1+1e-9))
			core, err := outline.Offset(drawn.Alone, -(drawn.Spot.Margin - 0.03), outline.Round)
			require.NoError(t, err)
			_, err = tail.Lay(core, set)
			assert.NoError(t, err, "%s in %s comes nearer to the edge than the margin", text, face)
			tight, err := outline.Offset(drawn.Alone, -3*drawn.Spot.Margin, outline.Round)
			require.NoError(t, err)
			_, err = tail.Lay(tight, set)
			assert.ErrorContains(t, err, "hang over")
			if text == "B" { // longer ones bend
				assert.InDelta(t, 0, set.Bounds().Center().Sub(drawn.Spot.Origin).Norm(), 0.1)
			}
		}
	}
}

func TestTextReadsFromLeftToRight(t *testing.T) {
	drawn, err := tail.Draw(script(t, "damion", "Herons", height), height, tail.Default())
	require.NoError(t, err)
	// A bar with a tick up at its right end.
	text := geom.Region{{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 3}, {X: 9, Y: 3}, {X: 9, Y: 1}, {X: 0, Y: 1}}}
	set, err := drawn.Spot.Bend(text)
	require.NoError(t, err)
	require.Len(t, set, 1)
	assert.InDelta(t, text.Area(), set.Area(), 0.1)
	box := set.Bounds()
	for _, p := range set[0] {
		if p.Y > box.Max.Y-1.5 {
			assert.Greater(t, p.X, box.Center().X)
		}
	}
}

func TestCutTakesTheTextOutAndLeavesItsCounters(t *testing.T) {
	drawn, set, _ := drawnWith(t, "yellowtail", "BODO")
	cut, err := tail.Cut(drawn.Joined, set)
	require.NoError(t, err)
	assert.InDelta(t, drawn.Joined.Area()-set.Area(), cut.Area(), 0.01)
	// Four letters are four holes more, their five counters five islands.
	assert.Len(t, outers(cut), len(outers(drawn.Joined))+5)
	assert.Len(t, cut, len(drawn.Joined)+4+5)
	over, err := tail.Lay(drawn.Joined, set)
	require.NoError(t, err)
	assert.Equal(t, set, over)
}

func TestTextThatDoesNotLieInTheTail(t *testing.T) {
	drawn, set, _ := drawnWith(t, "yellowtail", "HOME")
	aside := set.Transform(geom.Translate(0, drawn.Spot.Height))
	_, err := tail.Cut(drawn.Joined, aside)
	assert.ErrorContains(t, err, "hang over the tail")
	_, err = tail.Lay(drawn.Joined, aside)
	assert.ErrorContains(t, err, "hang over the tail")
	_, err = tail.Cut(drawn.Joined, nil)
	assert.ErrorContains(t, err, "no ink")
	_, err = drawn.Spot.Bend(script(t, "oswald", "FAR TOO LARGE", 30))
	assert.ErrorContains(t, err, "would do")
	_, _, err = drawn.Spot.Set(nil)
	assert.ErrorContains(t, err, "no ink")
	_, _, err = new(tail.TextSpot).Set(set)
	assert.ErrorContains(t, err, "no room")
}
