package stroke_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/stroke"
	"yokeline/lettering/typeface"
)

func digitOf(t testing.TB, face *typeface.Face, d rune, height, tolerance float64) geom.Region {
	id, err := face.Digit(d)
	require.NoError(t, err)
	p := face.Outline(id)
	k := height / p.Bounds().Height()
	r, err := outline.Union(p.Transform(geom.Scale(k, k)).Flatten(tolerance))
	require.NoError(t, err)
	return r
}

func TestDigitsOfFacesAreMeasuredFinelyEnough(t *testing.T) {
	for _, id := range []string{"graduate", "anton", "alfa-slab-one", "yellowtail", "saira"} {
		face, err := typeface.Embedded(id)
		require.NoError(t, err)
		for d := '0'; d <= '9'; d++ {
			usual := stroke.Measure(digitOf(t, face, d, 200, 0.02), 1)
			fine := stroke.Measure(digitOf(t, face, d, 200, 0.001), 0.1)
			require.True(t, usual.Measurable, "%s %c", id, d)
			assert.LessOrEqual(t, usual.Thin, usual.Main)
			assert.InEpsilon(t, fine.Thin, usual.Thin, 0.02, "thin of %c in %s", d, id)
			// A median may lie between two thicknesses, so it moves more.
			assert.InEpsilon(t, fine.Main, usual.Main, 0.03, "main of %c in %s", d, id)
			assert.InDelta(t, fine.Kept, usual.Kept, 0.1, "kept of %c in %s", d, id)
		}
	}
}

func BenchmarkStrokeOfADigitOfAFace(b *testing.B) {
	for _, id := range []string{"graduate", "alfa-slab-one", "yellowtail"} {
		b.Run(id, func(b *testing.B) {
			face, err := typeface.Embedded(id)
			require.NoError(b, err)
			r := digitOf(b, face, '8', 200, 0.02)
			for b.Loop() {
				stroke.Measure(r, 1)
			}
		})
	}
}
