package tint

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Figures worked out for this project by another program, with a matrix of
// more digits.
func TestCompareGivesTheFiguresOfUniformColours(t *testing.T) {
	for _, tt := range []struct {
		body, ground          string
		deltaL, ratio, deltaE float64
	}{
		{"#ffffff", "#000000", 100.00, 21.00, 100.00},
		{"#ffffff", "#000080", 87.03, 16.01, 85.51},
		{"#ffd700", "#000080", 73.96, 11.41, 102.99},
		{"#ffffff", "#0000ff", 67.70, 8.59, 64.23},
		{"#ff0000", "#000000", 53.24, 5.25, 50.41},
		{"#ffffff", "#ff0000", 46.76, 4.00, 45.81},
		{"#ffffff", "#ffa500", 25.06, 1.97, 33.07},
		{"#800000", "#000000", 25.54, 1.92, 30.84},
		{"#c0c0c0", "#808080", 24.12, 2.17, 19.68},
		{"#c0c0c0", "#ffffff", 22.30, 1.82, 14.12},
		{"#ff0000", "#0000ff", 20.94, 2.15, 52.88},
		{"#ffd700", "#ffffff", 13.07, 1.40, 30.48},
		{"#000000", "#000080", 12.97, 1.31, 29.70},
		{"#ff0000", "#008000", 7.01, 1.28, 72.18},
		{"#ffff00", "#ffffff", 2.86, 1.07, 30.52},
	} {
		got := Compare(must(t, tt.body), must(t, tt.ground))
		assert.InDelta(t, tt.deltaL, got.DeltaL, 0.02, "%s on %s", tt.body, tt.ground)
		assert.InDelta(t, tt.ratio, got.Ratio, 0.0051, "%s on %s", tt.body, tt.ground)
		assert.InDelta(t, tt.deltaE, got.DeltaE, 0.03, "%s on %s", tt.body, tt.ground)
	}
}

func TestCompareIsTheSameTheOtherWayRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyColour().Draw(t, "a"), anyColour().Draw(t, "b")
		one, two := Compare(a, b), Compare(b, a)
		for _, p := range [][2]Apart{{one.Apart, two.Apart}, {one.Protan, two.Protan}, {one.Deutan, two.Deutan}} {
			assert.Equal(t, p[0].Ratio, p[1].Ratio)
			assert.Equal(t, p[0].DeltaL, p[1].DeltaL)
			assert.InDelta(t, p[0].DeltaE, p[1].DeltaE, 1e-9)
		}
		assert.Equal(t, Contrast(a, b), one.Ratio)
		assert.Equal(t, DeltaL(a, b), one.DeltaL)
		assert.Equal(t, DeltaE(a, b), one.DeltaE)
	})
}

func TestGreysKeepTheirDistanceForEveryEye(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, y := rapid.Uint8().Draw(t, "x"), rapid.Uint8().Draw(t, "y")
		r := Compare(Colour{x, x, x}, Colour{y, y, y})
		for _, left := range []Apart{r.Protan, r.Deutan} {
			assert.InDelta(t, r.Ratio, left.Ratio, 1e-9)
			assert.InDelta(t, r.DeltaE, left.DeltaE, 1e-6)
		}
	})
}

func advice(t *testing.T, body, ground string) []Advice {
	t.Helper()
	return Compare(must(t, body), must(t, ground)).Advice()
}

func TestAdviceSetsInJustBelow3To1(t *testing.T) {
	assert.Empty(t, advice(t, "#949494", "#ffffff")) // 3.03 to 1
	got := advice(t, "#959595", "#ffffff")           // 2.99 to 1
	require.Len(t, got, 1)
	assert.Equal(t, Advice{
		Vision: Usual, Measured: "2.9 to 1", Required: "at least 3 to 1",
		Text:   "the contrast is 2.9 to 1 on the screen; below 3 to 1 lettering is hard to read",
		Source: "W3C, Web Content Accessibility Guidelines 2.2, 1.4.11",
	}, got[0])
}

func TestAdviceNamesTheSameColour(t *testing.T) {
	got := advice(t, "#14284b", "#14284B")
	require.Len(t, got, 1)
	assert.Equal(t, "both have the same colour", got[0].Text)
	assert.Equal(t, "1.0 to 1", got[0].Measured)
}

func TestAdviceOnRedOverGreenNamesHueAndColourBlindness(t *testing.T) {
	got := advice(t, "#ff0000", "#008000")
	require.Len(t, got, 2)
	assert.Contains(t, got[0].Text, "hue does not carry far")
	assert.NotEqual(t, Usual, got[1].Vision)
	assert.Contains(t, got[1].Text, "a colour difference of 72 becomes")
}

func TestAdviceOnRedOverBlackComesFromTheProtanEyeAlone(t *testing.T) {
	got := advice(t, "#ff0000", "#000000") // 5.25 to 1, but the red looks dark
	r := Compare(Colour{R: 255}, Colour{})
	require.GreaterOrEqual(t, r.Ratio, AdvisedRatio)
	// 0.11238 of red and green each, and 0.00401 of blue: (0.1046 + 0.05) / 0.05.
	assert.InDelta(t, 3.09, r.Protan.Ratio, 0.05)
	assert.Empty(t, got)
	got = advice(t, "#e00000", "#000000")
	require.Len(t, got, 1)
	assert.Equal(t, Protan, got[0].Vision)
	assert.True(t, strings.HasPrefix(got[0].Text, "to a red-green blind eye (protan) the contrast drops from"))
}

func TestAdviceIsSilentOnStrongPairs(t *testing.T) {
	for _, p := range [][2]string{{"#ffffff", "#14284b"}, {"#e8b33a", "#14284b"}, {"#000000", "#ffff00"}} {
		assert.Empty(t, advice(t, p[0], p[1]), p)
	}
}

func TestAdviceFollowsTheFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Compare(anyColour().Draw(t, "body"), anyColour().Draw(t, "ground"))
		got := r.Advice()
		v, worst := r.Worst()
		assert.NotEqual(t, Usual, v)
		assert.Equal(t, min(r.Protan.Ratio, r.Deutan.Ratio), worst.Ratio)
		usual := len(got) > 0 && got[0].Vision == Usual
		assert.Equal(t, r.Ratio < AdvisedRatio, usual)
		if r.Ratio >= AdvisedRatio {
			assert.Equal(t, worst.Ratio < AdvisedRatio, len(got) == 1)
		}
		assert.LessOrEqual(t, len(got), 2)
		for _, a := range got {
			assert.NotContains(t, a.Text, "\n")
			assert.False(t, strings.HasSuffix(a.Text, "."))
			assert.NotEmpty(t, a.Source)
		}
	})
}
