package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/outline"
	"yokeline/lettering/stroke"
)

func TestAnEmboldenedNameKeepsItsHeightAndGainsInStroke(t *testing.T) {
	for _, id := range []string{"graduate", "quantico", "barlow-condensed"} {
		r := request(t, id, "H")
		plain := name(t, r)
		r.Embolden = 1
		bold := name(t, r)
		box := bold.Ink().Bounds()
		assert.InDelta(t, 50, box.Max.Y, 1e-6, id)
		assert.InDelta(t, 0, box.Min.Y, 1e-3, id)
		k := 50.0 / 52 // brought back from 50 + 2·1
		thin := func(n fit.Name) float64 {
			settled, err := n.Settled()
			require.NoError(t, err)
			return stroke.Measure(settled, 0).Thin
		}
		assert.InDelta(t, k*(thin(plain)+2), thin(bold), 0.03, id)
		assert.InDelta(t, k*(plain.InkWidth+2), bold.InkWidth, 0.01, id)
	}
}

// TestEmboldeningKeepsTheWhiteBetweenLetters grows a straight line as package
// outline does and scales it: every letter must be the one that comes out,
// and the white between the letters the one that was designed.
func TestEmboldeningKeepsTheWhiteBetweenLetters(t *testing.T) {
	r := request(t, "graduate", "HIH")
	plain := name(t, r)
	r.Embolden = 2
	bold := name(t, r)
	k := 50.0 / 54
	assert.InDelta(t, k*plain.SmallestGap, bold.SmallestGap, 0.01)
	settled, err := plain.Settled()
	require.NoError(t, err)
	fat, err := outline.Offset(settled, 2, outline.Mitre)
	require.NoError(t, err)
	mine, err := bold.Settled()
	require.NoError(t, err)
	require.Equal(t, len(fat), len(mine))
	assert.InDelta(t, k*k*fat.Area(), mine.Area(), 0.5)
	assert.InDelta(t, k*(plain.InkWidth+3*4), bold.InkWidth, 0.01, "three letters grow by 4 mm each")
}

func TestAnEmboldenedNameIsFittedByItsOwnInk(t *testing.T) {
	for _, id := range []string{"graduate", "archivo"} {
		for _, shape := range []fit.Shape{fit.Straight, fit.RadialArch, fit.VerticalArch} {
			r := request(t, id, "HERNANDEZ")
			r.Shape, r.Radius, r.Limit, r.Embolden = shape, 400, 240, 1.2
			r.Ladder = fit.DefaultLadder(r.Height)
			n := name(t, r)
			box := n.Ink().Bounds()
			assert.InDelta(t, n.InkWidth, box.Width(), 1e-6, "%s %v", id, shape)
			assert.LessOrEqual(t, n.InkWidth, 240.0)
			assert.InDelta(t, n.InkHeight, box.Height(), 0.01)
			assert.Equal(t, n.Ink(), n.Ink())
		}
	}
}

func TestTheLightestWeightThatHasTheStroke(t *testing.T) {
	f := fit.NewFitter()
	r := request(t, "archivo", "NG")
	r.Stroke = 4
	n, err := f.Name(r)
	require.NoError(t, err)
	t.Logf("archivo: wght %g gives %.3f mm", n.Wght, n.StrokeThin)
	assert.GreaterOrEqual(t, n.StrokeThin, 4.0)
	assert.Zero(t, n.StrokeShort)
	assert.Less(t, n.StrokeThin, 4.1)
	other := r
	other.Text = "WILLOWS"
	m, err := f.Name(other)
	require.NoError(t, err)
	assert.Equal(t, n.Wght, m.Wght, "a team has one weight")

	lighter := r
	lighter.Stroke = n.StrokeThin * 0.95
	l, err := f.Name(lighter)
	require.NoError(t, err)
	assert.Less(t, l.Wght, n.Wght)

	r.Stroke = 40
	n, err = f.Name(r)
	require.NoError(t, err)
	assert.Equal(t, 900.0, n.Wght, "the heaviest")
	assert.InDelta(t, 40-n.StrokeThin, n.StrokeShort, 1e-9)

	fixed := request(t, "graduate", "NG")
	fixed.Stroke = 10
	n, err = f.Name(fixed)
	require.NoError(t, err)
	assert.True(t, math.IsNaN(n.Wght))
	assert.Greater(t, n.StrokeShort, 0.0, "a face of one weight")
}
