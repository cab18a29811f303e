package edges_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/edges"
)

func TestNamesReadBackAsTheirForms(t *testing.T) {
	require.Len(t, edges.Forms(), 13)
	for _, f := range edges.Forms() {
		got, err := edges.Parse(f.String())
		require.NoError(t, err)
		assert.Equal(t, f, got)
		if f.Kind() == edges.Straight {
			assert.Equal(t, f.String(), edges.Shape{}.String())
			continue
		}
		s, err := f.ByRise(12)
		require.NoError(t, err)
		assert.Equal(t, f.String(), s.String())
	}
	_, err := edges.Parse("Bulge")
	assert.ErrorContains(t, err, `shape "Bulge" is unknown: use straight, arched top, sunken top,`)
	assert.Equal(t, "form 99", edges.Form(99).String())
	assert.Equal(t, "edge kind 7", edges.Kind(7).String())
}

// Each form by the heights of its ends and where its edges lie there, rise 20
// over a chord of 280, letters of 60.
func TestFormsAreWhatTheirNamesSay(t *testing.T) {
	for _, c := range []struct {
		form                     edges.Form
		topL, footL, topR, footR float64
	}{
		{edges.ArchedTop, 40, 0, 40, 0},
		{edges.SunkenTop, 80, 0, 80, 0},
		{edges.ArchedFoot, 60, -20, 60, -20},
		{edges.SunkenFoot, 60, 20, 60, 20},
		{edges.Bulge, 40, 20, 40, 20},
		{edges.Pinch, 80, -20, 80, -20},
		{edges.VerticalArch, 40, -20, 40, -20},
		{edges.VerticalArchDown, 80, 20, 80, 20},
		{edges.Taper, 70, -10, 50, 10},
		{edges.SlantedTop, 50, 0, 70, 0},
		{edges.SlantedFoot, 60, -10, 60, 10},
		{edges.Slanted, 50, -10, 70, 10},
	} {
		s, err := c.form.ByRise(20)
		require.NoError(t, err)
		b, err := s.Band(60, 280)
		require.NoError(t, err)
		got := []float64{b.Top(-140), b.Bottom(-140), b.Top(140), b.Bottom(140), b.Top(0), b.Bottom(0)}
		assert.InDeltaSlice(t, []float64{c.topL, c.footL, c.topR, c.footR, 60, 0}, got, 1e-9, c.form.String())
	}
}

func TestFormsTakeOnlyTheFiguresOfTheirEdges(t *testing.T) {
	_, err := edges.Bulge.ByAngle(0.1)
	assert.EqualError(t, err, "bulge takes no angle: use a rise or a radius")
	_, err = edges.Taper.ByRadius(300)
	assert.EqualError(t, err, "taper takes no radius: use a rise or an angle")
	_, err = edges.Flat.ByRise(3)
	assert.EqualError(t, err, "straight takes no rise: use none")
	_, err = edges.Pinch.ByRise(-3)
	assert.EqualError(t, err, "rise of the pinch is -3 mm; it must be over 0")
	for _, v := range []float64{0, math.NaN(), math.Inf(1)} {
		_, err = edges.Taper.ByRise(v)
		assert.ErrorContains(t, err, "it must not be 0")
	}
	_, err = edges.Form(99).ByRise(3)
	assert.Error(t, err)
	back, err := edges.Slanted.ByRise(-20)
	require.NoError(t, err)
	b, err := back.Band(60, 280)
	require.NoError(t, err)
	assert.Equal(t, 10.0, b.Bottom(-140), "a slant also falls to the right")
}
