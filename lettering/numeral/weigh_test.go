package numeral_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
	"yokeline/lettering/outline"
	"yokeline/lettering/stroke"
)

var everyDigit = []string{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9"}

// thinnest sets every digit alone and returns the smallest stroke, measured on
// the drawn ink.
func thinnest(t *testing.T, s *numeral.Sizer, r numeral.Request) float64 {
	least := math.Inf(1)
	for _, text := range everyDigit {
		r.Text = text
		n, err := s.Number(r)
		require.NoError(t, err)
		settled, err := n.Settled()
		require.NoError(t, err)
		drawn := stroke.Measure(settled, 0).Thin
		assert.InDelta(t, drawn, n.StrokeThin, 0.02*drawn, "%s %s", r.Face.ID(), text)
		least = min(least, n.StrokeThin)
	}
	return least
}

func TestEmboldenedDigitsKeepTheirHeightAndGainInStroke(t *testing.T) {
	s := numeral.NewSizer()
	for _, id := range []string{"graduate", "quantico", "oswald"} {
		r := request(t, id, "27")
		plain := number(t, r)
		r.Embolden = 3
		bold := number(t, r)
		assert.InDelta(t, 200, bold.Height, 0, id)
		assert.InDelta(t, bold.TallestDigit, bold.Ink().Bounds().Height(), 1, id)
		assert.GreaterOrEqual(t, bold.Ink().Bounds().Height(), 200-1e-6, id)
		k := 200.0 / 206
		assert.InDelta(t, k*(plain.StrokeMain+6), bold.StrokeMain, 0.4, id)
		assert.InDelta(t, 12, bold.Gap, 1e-9, "6 % between the emboldened ink")
		ink, err := bold.Settled()
		require.NoError(t, err)
		near, err := outline.Offset(ink, 5.9, outline.Round)
		require.NoError(t, err)
		far, err := outline.Offset(ink, 6.1, outline.Round)
		require.NoError(t, err)
		assert.Greater(t, outerRings(near), outerRings(far), "the gap is 12 mm")
		assert.Greater(t, thinnest(t, s, r), k*5.9)
	}
}

func outerRings(r geom.Region) int {
	count := 0
	for _, ring := range r {
		if ring.Area() > 0 {
			count++
		}
	}
	return count
}

func TestTheLightestWeightThatHasTheStroke(t *testing.T) {
	s := numeral.NewSizer()
	for _, id := range []string{"archivo", "saira"} {
		r := request(t, id, "8")
		r.Stroke = 20
		n, err := s.Number(r)
		require.NoError(t, err)
		assert.Zero(t, n.StrokeShort)
		assert.Equal(t, math.Trunc(n.Wght), n.Wght)
		assert.GreaterOrEqual(t, thinnest(t, s, r), 20.0, id)
		t.Logf("%s: wght %g", id, n.Wght)
		// One unit lighter, some digit is too thin.
		lighter := r
		lighter.Stroke, lighter.Wght = 0, n.Wght-1
		assert.Less(t, thinnest(t, s, lighter), 20.0, id)
	}
}

func TestAStrokeThatNoWeightHasIsSaid(t *testing.T) {
	r := request(t, "archivo", "8")
	r.Stroke = 150
	n := number(t, r)
	assert.Equal(t, 900.0, n.Wght)
	assert.InDelta(t, 150-n.StrokeThin, n.StrokeShort, 1e-9)

	r = request(t, "graduate", "8")
	r.Stroke = 150
	n = number(t, r)
	assert.True(t, math.IsNaN(n.Wght), "a face of one weight")
	assert.Greater(t, n.StrokeShort, 0.0)
	assert.Zero(t, number(t, request(t, "graduate", "8")).StrokeShort, "nothing asked")
}

func TestEmboldenToIsTheSmallestThatDoes(t *testing.T) {
	s := numeral.NewSizer()
	for _, id := range []string{"graduate", "quantico"} {
		r := request(t, id, "8")
		r.EmboldenTo = thinnest(t, s, r) * 1.3
		n, err := s.Number(r)
		require.NoError(t, err)
		assert.Zero(t, n.StrokeShort)
		assert.GreaterOrEqual(t, thinnest(t, s, r), r.EmboldenTo, id)
		t.Logf("%s: %.2f mm thick by %.2f mm", id, r.EmboldenTo, n.Embolden)
		less := r
		less.EmboldenTo, less.Embolden = 0, n.Embolden-0.02
		assert.Less(t, thinnest(t, s, less), r.EmboldenTo, "%s: a step less is not enough", id)
	}
	r := request(t, "graduate", "8")
	r.Embolden, r.EmboldenTo = 1, 20
	_, err := s.Number(r)
	assert.ErrorContains(t, err, "give one of them")
}
