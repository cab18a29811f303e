package platen_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/platen"
)

func parsed(t *testing.T, texts ...string) []platen.Platen {
	t.Helper()
	var out []platen.Platen
	for _, text := range texts {
		p, err := platen.Parse(text)
		require.NoError(t, err)
		out = append(out, p)
	}
	return out
}

// TestTwoTallDigitsNeedAFifteenInchPlaten is worked by hand: two digits 254 mm
// high and 0.6 of that wide, 15 mm apart, with an outline of 1/4 in all round
// are 332.5 × 266.7 mm, and with 12 mm at every edge 356.5 × 290.7 mm. So 11 in
// (279.4 mm) is too narrow, however the platen is turned, and 15 in (381 mm) does.
func TestTwoTallDigitsNeedAFifteenInchPlaten(t *testing.T) {
	width, height := 2*0.6*254+15+2*6.35, 254+2*6.35
	require.InDelta(t, 332.5, width, 1e-9)
	require.InDelta(t, 266.7, height, 1e-9)
	got := platen.Choose(nil, platen.Piece{Width: width, Height: height}, platen.Usual())
	assert.InDelta(t, 356.5, got.NeedWidth, 1e-9)
	assert.InDelta(t, 290.7, got.NeedHeight, 1e-9)
	assert.Equal(t, "15in x 15in", got.Platen.String())
	assert.Equal(t, 1, got.Presses)

	small := platen.Choose(nil, platen.Piece{Width: width, Height: height}, parsed(t, "11in x 15in"))
	assert.Equal(t, 2, small.Presses)
	assert.False(t, small.Turned)
	assert.True(t, small.Beside)
	assert.InDelta(t, 2*(279.4-24)-332.5, small.Overlap, 1e-9, "two presses of 255.4 mm each")
}

func TestAPlatenIsReadAsShopsWriteIt(t *testing.T) {
	for text, want := range map[string][2]float64{
		"15in x 15in":    {381, 381},
		"16x20in":        {406.4, 508},
		`16" × 20"`:      {406.4, 508},
		"38cm x 380mm":   {380, 380},
		"15 1/2in X 9in": {393.7, 228.6},
		"16 by 20 in":    {406.4, 508},
	} {
		p, err := platen.Parse(text)
		require.NoError(t, err, text)
		assert.InDelta(t, want[0], p.Width.MM(), 1e-9, text)
		assert.InDelta(t, want[1], p.Height.MM(), 1e-9, text)
		again, err := platen.Parse(p.String())
		require.NoError(t, err, text)
		assert.Equal(t, p, again)
	}
	for text, want := range map[string]string{
		"15in": "two sides", "15 x 15": "unit", "x": "missing", "15in x 0in": "out of reach", "900in x 9in": "out of reach", "ax9in": "platen",
	} {
		_, err := platen.Parse(text)
		assert.ErrorContains(t, err, want, text)
	}
}

func TestUsualPlatensAreThoseOfTheTrade(t *testing.T) {
	want := [][2]int{{127, 127}, {152, 152}, {229, 305}, {279, 381}, {381, 381}, {406, 406}, {406, 508}, {406, 610}, {508, 635}}
	var got [][2]int
	for _, p := range platen.Usual() {
		got = append(got, [2]int{int(math.Round(p.Width.MM())), int(math.Round(p.Height.MM()))})
	}
	assert.Equal(t, want, got)
}

// takes tells from the definition whether one press of a platen takes a piece.
func takes(p platen.Platen, w, h float64) bool {
	in := func(a, b float64) bool { return w+2*platen.Edge <= a && h+2*platen.Edge <= b }
	return in(p.Width.MM(), p.Height.MM()) || in(p.Height.MM(), p.Width.MM())
}

func TestTheSmallestPlatenThatTakesAPieceIsChosen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var platens []platen.Platen
		for range rapid.IntRange(0, 5).Draw(t, "platens") {
			side := func(label string) length.Length {
				return length.FromMM(float64(rapid.IntRange(50, 700).Draw(t, label)), length.Millimetre)
			}
			platens = append(platens, platen.Platen{Width: side("w"), Height: side("h")})
		}
		w, h := rapid.Float64Range(5, 1200).Draw(t, "width"), rapid.Float64Range(5, 1200).Draw(t, "height")
		got := platen.Choose(nil, platen.Piece{Width: w, Height: h}, platens)
		area := func(p platen.Platen) float64 { return p.Width.MM() * p.Height.MM() }
		smallest := math.Inf(1)
		for _, p := range platens {
			if takes(p, w, h) {
				smallest = math.Min(smallest, area(p))
			}
		}
		switch got.Presses {
		case 1:
			assert.True(t, takes(got.Platen, w, h))
			assert.Equal(t, smallest, area(got.Platen))
		case 2:
			assert.True(t, math.IsInf(smallest, 1), "one press would do")
			assertTwoPressesCover(t, got, w, h)
		default:
			assert.True(t, math.IsInf(smallest, 1))
			assert.Zero(t, got.Platen)
		}
	})
}

// assertTwoPressesCover lays the two presses out and looks at the piece's ends
// and its middle.
func assertTwoPressesCover(t *rapid.T, f platen.Fit, w, h float64) {
	down := f.Platen.Width.MM() + f.Platen.Height.MM() - f.Across
	long, plate, short, other := w, f.Across, h, down
	if !f.Beside {
		long, plate, short, other = h, down, w, f.Across
	}
	assert.LessOrEqual(t, short+2*platen.Edge, other+1e-6)
	// The first press begins an edge before the piece, the second ends one after it.
	first, second := -platen.Edge+plate-platen.Edge, long+platen.Edge-plate+platen.Edge
	assert.Less(t, first-1e-9, long, "a second press is needed")
	assert.InDelta(t, first-second, f.Overlap, 1e-6)
	assert.GreaterOrEqual(t, f.Overlap, platen.LeastOverlap-1e-6)
}

func TestAStackIsTheBoxRoundItsPieces(t *testing.T) {
	got := platen.Stack([]platen.Piece{
		{Side: garment.Back, Centre: geom.Point{Y: 150}, Width: 280, Height: 60},
		{Side: garment.Back, Centre: geom.Point{Y: 320}, Width: 200, Height: 210, Turn: math.Pi / 2},
	})
	assert.InDelta(t, 280, got.Width, 1e-9)
	assert.InDelta(t, 420-120, got.Height, 1e-9)
	assert.InDelta(t, 270, got.Centre.Y, 1e-9)
	assert.Equal(t, garment.Back, got.Side)
}
