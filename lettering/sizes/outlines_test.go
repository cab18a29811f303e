package sizes_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// Curves lead to the tips of these letters: drawn from plain chords, the
// outline comes out 0.1 mm and more taller than the size that is reported.
func TestMitredOutlinesAreDrawnAsLargeAsReported(t *testing.T) {
	face, err := typeface.Embedded("oswald")
	require.NoError(t, err)
	n, err := fit.Fit(fit.Request{
		Text: "QuilBERG", Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 60, Limit: 300, NoWaysOut: true,
		Ladder: fit.DefaultLadder(60), Shape: fit.RadialArch, Radius: 400,
		Outlines: []outline.Layer{{Width: 6, Join: outline.Mitre}},
	})
	require.NoError(t, err)
	six, err := length.Parse("6mm")
	require.NoError(t, err)
	piece := sizes.Piece{Name: &n, Asked: order.Piece{Outlines: []order.Outline{{Width: six, Join: outline.Mitre}}}}
	drawn, err := piece.Outlines()
	require.NoError(t, err)
	require.Len(t, drawn, 1)
	assert.InDelta(t, n.InkWidth, drawn[0].Bounds().Width(), 0.05)
	assert.InDelta(t, n.InkHeight, drawn[0].Bounds().Height(), 0.05)
}
