package findings

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Worked values of WCAG 2.2, technique G18 and its definition of contrast
// ratio: black on white is 21 to 1, #767676 is the lightest grey that reaches
// 4.5 to 1 on white (4.54), #949494 the lightest that reaches 3 to 1 (3.03).
// From memory, recomputed by hand for the greys.
func TestContrastRatioIsThatOfWCAG(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"#000000", "#ffffff", 21}, {"#767676", "#ffffff", 4.54}, {"#949494", "#ffffff", 3.03}, {"#ffffff", "#ffffff", 1}, {"#ff0000", "#ffffff", 4.00},
	} {
		a, ok := colour(c.a)
		require.True(t, ok)
		b, ok := colour(c.b)
		require.True(t, ok)
		assert.InDelta(t, c.want, contrastRatio(a, b), 0.005, "%v", c)
		assert.Equal(t, contrastRatio(a, b), contrastRatio(b, a))
	}
}

// CIE L* of sRGB primaries and grey as commonly tabulated: white 100, red
// 53.24, green 87.73, blue 32.30, #777777 50.03 (from memory, 2 decimals).
func TestLightnessIsCIELStar(t *testing.T) {
	for hex, want := range map[string]float64{"#ffffff": 100, "#000000": 0, "#ff0000": 53.24, "#00ff00": 87.73, "#0000ff": 32.30, "#777777": 50.03} {
		c, ok := colour(hex)
		require.True(t, ok)
		assert.InDelta(t, want, lightness(c), 0.01, hex)
	}
}

func TestAColourThatCannotBeReadIsNotGuessed(t *testing.T) {
	for _, hex := range []string{"", "navy", "#fff", "#14284", "#14284g", "14284b#"} {
		_, ok := colour(hex)
		assert.False(t, ok, hex)
	}
}

func TestARatioNeverLooksBetterThanItIs(t *testing.T) {
	assert.Equal(t, "6.0 to 1", ratioText(6))
	assert.Equal(t, "5.9 to 1", ratioText(5.9999))
	assert.Equal(t, "4.5 to 1", ratioText(4.59))
}
