package ink_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
)

func anyMap(t *rapid.T, name string) geom.Affine {
	k := rapid.Float64Range(0.2, 2).Draw(t, name+" scale")
	turn := rapid.Float64Range(-1.3, 1.3).Draw(t, name+" turn")
	at := anyPoint(t, name+" at")
	return geom.Scale(k, 1).Then(geom.Rotate(turn)).Then(geom.Translate(at.X, at.Y))
}

func TestAroundContainsTheDrawnInk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := ink.New(anyPath(t), 0.1)
		w := ink.Warp{Map: anyMap(t, "map"), Bend: rapid.SampledFrom([]float64{0, 3000, -3000}).Draw(t, "bend")}
		box, drawn := g.Around(w), g.Draw(nil, w, 0.01).Bounds()
		const near = 0.02
		assert.LessOrEqual(t, box.Min.X, drawn.Min.X+near)
		assert.LessOrEqual(t, box.Min.Y, drawn.Min.Y+near)
		assert.GreaterOrEqual(t, box.Max.X, drawn.Max.X-near)
		assert.GreaterOrEqual(t, box.Max.Y, drawn.Max.Y-near)
	})
}

func TestApartIsNeverMoreThanTheGap(t *testing.T) {
	var f ink.Finder
	parted := 0
	rapid.Check(t, func(t *rapid.T) {
		a, b := ink.New(anyPath(t), 0.1), ink.New(anyPath(t), 0.1)
		ma := anyMap(t, "a")
		mb := anyMap(t, "b").Then(geom.Translate(rapid.Float64Range(0, 500).Draw(t, "away"), 0))
		least := ink.Apart(a, ma, b, mb)
		if least > 0 {
			parted++
		}
		assert.LessOrEqual(t, least, f.Gap(a, ma, b, mb, 1e6)+1e-9)
	})
	// Short runs make a fifth of the checks.
	assert.Greater(t, parted, map[bool]int{false: 5, true: 0}[testing.Short()])
	assert.True(t, math.IsInf(ink.Apart(ink.New(nil, 1), geom.Identity(), ink.New(nil, 1), geom.Identity()), 1))
}

func TestAcrossFindsTheSidesAtAHeight(t *testing.T) {
	g := ink.New(disc(10, 0, 50), 1e-3)
	for _, y := range []float64{-49, -30, 0, 12.5, 40} {
		half := math.Sqrt(50*50 - y*y)
		first, last, ok := g.Across(y)
		assert.True(t, ok)
		assert.InDelta(t, 10-half, first, 0.02, "y %g", y)
		assert.InDelta(t, 10+half, last, 0.02, "y %g", y)
	}
	_, _, ok := g.Across(51)
	assert.False(t, ok)
	_, _, ok = ink.New(nil, 1).Across(0)
	assert.False(t, ok)
}

func TestDrawPathDrawsWhatTheGlyphDraws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path := anyPath(t)
		w := ink.Warp{Map: anyMap(t, "map"), Bend: rapid.SampledFrom([]float64{0, 3000, -3000}).Draw(t, "bend")}
		assert.Equal(t, ink.New(path, 0.1).Draw(nil, w, 0.01), ink.DrawPath(nil, path, w, 0.01))
	})
}
