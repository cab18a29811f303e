package layers_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
)

// settings draws values within the ranges that the settings give.
func settings(t *rapid.T) layers.Settings {
	s := layers.Default()
	s.Knockout = rapid.Bool().Draw(t, "knockout")
	for _, v := range s.Values() {
		require.NoError(t, s.Set(v.Name, rapid.Float64Range(v.Least, v.Most).Draw(t, v.Name)))
	}
	return s
}

// pool is pieces of every sort, sized once; a property draws from it.
func pool(t *testing.T) []sizes.Piece {
	var out []sizes.Piece
	r := rand.New(rand.NewPCG(3, 9))
	for range 10 {
		out = append(out, randomPiece(t, r))
	}
	mixed := number(ring(2, white, outline.Mitre), ring(2, gold, outline.Round))
	return append(out, sized(t, garment.TwoButton, "14", number()), sized(t, garment.TwoButton, "41", mixed),
		sized(t, garment.TwoButton, "A", name("damion", mixed.Outlines...)))
}

// whole checks what holds of any art.
func whole(t *rapid.T, p sizes.Piece, art layers.Art) {
	require.NotEmpty(t, art.Layers)
	seen := map[string]bool{}
	for _, l := range art.Layers {
		require.False(t, seen[l.Name], "two layers %s", l.Name)
		seen[l.Name] = true
		require.NotEqual(t, len(l.Region) > 0, len(l.Line) > 0, "%s is an area or a line", l.Name)
		box := l.Region.Bounds().Union(l.Line.Bounds())
		require.Equal(t, art.Box, art.Box.Union(box), "%s lies in the box", l.Name)
		if l.Order > 0 {
			require.Equal(t, art.Ink, art.Ink.Union(box), "%s lies in the ink", l.Name)
			require.Equal(t, art.Mirrored, l.Region.Area() < 0 || l.Line.Flatten(1).Area() < 0, l.Name)
		}
	}
	want := p.InkWidth()
	if seen["cut contour"] {
		want = art.Ink.Width()
	}
	require.InDelta(t, want, art.Ink.Width(), 0.03)
	for _, room := range art.Waste {
		require.True(t, room.Empty() || art.Box.Union(room) == art.Box)
	}
	last := 0
	for _, plate := range art.Plates() {
		for _, l := range plate.Layers {
			last = max(last, l.Order)
		}
	}
	require.Len(t, art.Plates(), last, "every order is taken")
}

func TestArtOfAnyPieceIsWhole(t *testing.T) {
	pieces := pool(t)
	rapid.Check(t, func(t *rapid.T) {
		p := pieces[rapid.IntRange(0, len(pieces)-1).Draw(t, "piece")]
		whole(t, p, of(t, p, rapid.SampledFrom(order.Methods()).Draw(t, "method").ID, settings(t)))
	})
}

// The separations together cover the whole piece, and where two of them lie on
// each other it is along their edges only: no more than the trap wide.
func TestSeparationsOfAnyPieceCoverItAndOverlapOnlyByTheTrap(t *testing.T) {
	pieces := pool(t)[6:]
	rapid.Check(t, func(t *rapid.T) {
		p, s := pieces[rapid.IntRange(0, len(pieces)-1).Draw(t, "piece")], settings(t)
		art := of(t, p, "screen transfer", s).Mirror()
		solid := of(t, p, "direct-to-film", s).Mirror()
		full := layer(t, solid, solid.Layers[1].Name).Region // the largest, over the white
		var all geom.Region
		sum, edges := 0.0, 0.0
		for _, l := range art.Layers {
			if l.Kind == layers.Print {
				all, sum = append(all, l.Region...), sum+l.Region.Area()
			}
		}
		for _, l := range solid.Layers[2:] {
			edges += l.Region.Perimeter()
		}
		merged, err := outline.Union(all)
		require.NoError(t, err)
		require.InDelta(t, full.Area(), merged.Area(), 0.05+1e-4*full.Area())
		require.LessOrEqual(t, sum-full.Area(), s.Trap*edges*1.02+1, "overlap")
		if len(solid.Layers) > 2 {
			require.GreaterOrEqual(t, sum-full.Area(), math.Min(s.Trap, 0.25)*edges*0.5, "and some there is")
		}
	})
}
