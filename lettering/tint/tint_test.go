package tint

import (
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func must(t *testing.T, text string) Colour {
	t.Helper()
	c, err := Parse(text)
	require.NoError(t, err)
	return c
}

func anyColour() *rapid.Generator[Colour] {
	return rapid.Custom(func(t *rapid.T) Colour {
		return Colour{R: rapid.Uint8().Draw(t, "r"), G: rapid.Uint8().Draw(t, "g"), B: rapid.Uint8().Draw(t, "b")}
	})
}

func TestParseReadsSixDigitsInCapitalsOrNot(t *testing.T) {
	assert.Equal(t, Colour{R: 0x14, G: 0x28, B: 0x4b}, must(t, "#14284b"))
	assert.Equal(t, Colour{R: 0xab, G: 0xcd, B: 0xef}, must(t, "#AbCdEF"))
}

func TestParseRefusesAnythingElseAndSaysHowToWriteIt(t *testing.T) {
	for _, text := range []string{"", "#", "navy", "14284b", "#fff", "#14284", "#14284b0", "#14284g", "#+14284", "#1_2345", " #14284b", "#14284b ", "#é2345", "0x14284b"} {
		_, err := Parse(text)
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), "#14284b")
	}
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"#14284b", "#FFFFFF", "#fff", "", "#-12345", "#1_2_3_"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		if err != nil {
			assert.Zero(t, c)
			return
		}
		again, err := Parse(c.String())
		require.NoError(t, err)
		assert.Equal(t, c, again)
		assert.Len(t, text, 7)
	})
}

// The formula is W3C's, Web Content Accessibility Guidelines 2.2; the worked
// values are printed by those named beside them.
func TestContrastGivesWorkedValues(t *testing.T) {
	for _, tt := range []struct {
		one, other string
		want       float64
		within     float64
		source     string
	}{
		{"#000000", "#ffffff", 21, 1e-12, "WCAG 2.2, contrast ratio: 1 to 21"},
		{"#14284b", "#14284b", 1, 0, "WCAG 2.2, contrast ratio: 1 to 21"},
		{"#777777", "#ffffff", 4.478, 0.0005, "W3C technique G18 and many checkers, from memory: just short of 4.5"},
		{"#767676", "#ffffff", 4.54, 0.005, "lightest grey for 4.5 to 1 on white, from memory"},
		{"#949494", "#ffffff", 3.03, 0.005, "lightest grey for 3 to 1 on white, from memory"},
		{"#ff0000", "#ffffff", 3.998, 0.0005, "widely printed for pure red, from memory"},
		{"#0000ff", "#ffffff", 8.59, 0.005, "widely printed for pure blue, from memory"},
		{"#ff8100", "#64003a", 5.235369975583679, 1e-9, "tests of an open colour library, read"},
		{"#e5e5e5", "#aabb00", 1.698093107780376, 1e-9, "tests of an open colour library, read"},
		{"#11aa55", "#aa8811", 1.11, 0.005, "page of an open contrast library, read"},
		{"#e9faf5", "#ffffff", 1.08, 0.005, "page of an open contrast library, read"},
	} {
		assert.InDelta(t, tt.want, Contrast(must(t, tt.one), must(t, tt.other)), tt.within, "%s on %s: %s", tt.one, tt.other, tt.source)
	}
}

func TestLuminanceOfThePrimariesIsTheirWeight(t *testing.T) {
	// WCAG 2.2, definition of relative luminance.
	for text, want := range map[string]float64{"#000000": 0, "#ff0000": 0.2126, "#00ff00": 0.7152, "#0000ff": 0.0722, "#ffffff": 1} {
		assert.InDelta(t, want, must(t, text).Luminance(), 1e-15, text)
	}
}

func TestEitherThresholdOfTheTransferCurveServesEveryChannelValue(t *testing.T) {
	for v := range 256 {
		s := float64(v) / 255
		assert.False(t, s > 0.03928 && s <= 0.04045, v)
	}
}

func TestContrastIsSymmetricAndWithinBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyColour().Draw(t, "a"), anyColour().Draw(t, "b")
		ratio := Contrast(a, b)
		assert.Equal(t, ratio, Contrast(b, a))
		assert.GreaterOrEqual(t, ratio, 1.0)
		assert.LessOrEqual(t, ratio, 21.0+1e-12)
		assert.Equal(t, 1.0, Contrast(a, a))
	})
}

func TestALighterChannelNeverDarkensAColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyColour().Draw(t, "c")
		if c.G == 255 {
			return
		}
		up := c
		up.G++
		assert.Greater(t, up.Luminance(), c.Luminance())
		assert.Greater(t, up.Lab().L, c.Lab().L)
	})
}

// go-colorful uses a matrix with more digits, hence the tolerances.
func TestLabAgreesWithAnOpenLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyColour().Draw(t, "c")
		l, a, b := colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}.Lab()
		got := c.Lab()
		assert.InDelta(t, 100*l, got.L, 0.02)
		assert.InDelta(t, 100*a, got.A, 0.06)
		assert.InDelta(t, 100*b, got.B, 0.06)
	})
}

func TestLabOfRedIsThePrintedOne(t *testing.T) {
	// Test file of an open colour library, read. It uses a matrix with more
	// digits, which moves the last of the three by 0.023.
	got := must(t, "#ff0000").Lab()
	assert.InDelta(t, 53.24, got.L, 0.02)
	assert.InDelta(t, 80.09, got.A, 0.02)
	assert.InDelta(t, 67.20, got.B, 0.03)
}

func TestGreysHaveNoHueAndRunFrom0To100(t *testing.T) {
	for v := range 256 {
		got := Colour{uint8(v), uint8(v), uint8(v)}.Lab()
		assert.InDelta(t, 0, got.A, 1e-10)
		assert.InDelta(t, 0, got.B, 1e-10)
	}
	assert.InDelta(t, 0, Colour{}.Lab().L, 1e-12)
	assert.InDelta(t, 100, Colour{255, 255, 255}.Lab().L, 1e-12)
	// #777777 has L* 50.03, from memory.
	assert.InDelta(t, 50.03, Colour{0x77, 0x77, 0x77}.Lab().L, 0.005)
}

func TestTheFootOfTheLightnessCurveJoinsTheRoot(t *testing.T) {
	const joint = 216.0 / 24389
	assert.InDelta(t, cubeRoot(joint), cubeRoot(joint+1e-12), 1e-10)
	assert.InDelta(t, 6.0/29, cubeRoot(joint), 1e-12) // CIE 15:2004: (24/116)
}

func TestAColourComesBackFromLinearLight(t *testing.T) {
	for v := range 256 {
		c := Colour{uint8(v), uint8(255 - v), 7}
		assert.Equal(t, c, c.light().colour())
	}
}
