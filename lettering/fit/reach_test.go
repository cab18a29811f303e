package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

func TestReachIsTheHeightThatNameComesOutAt(t *testing.T) {
	f := fit.NewFitter()
	faces := []*typeface.Face{embedded(t, "oswald"), embedded(t, "league-gothic"), embedded(t, "saira"), embedded(t, "yellowtail")}
	rapid.Check(t, func(t *rapid.T) {
		r := fit.Request{
			Text: rapid.StringMatching(`[A-Za-z]{1,16}(\n[A-Z]{1,9})?`).Draw(t, "text"), Face: faces[rapid.IntRange(0, 3).Draw(t, "face")],
			Wdth: math.NaN(), Wght: math.NaN(), Height: rapid.Float64Range(10, 90).Draw(t, "height"), NoWaysOut: true,
			Limit: rapid.SampledFrom([]float64{0, 100, 180, 300}).Draw(t, "limit"), Shape: rapid.SampledFrom([]fit.Shape{0, 1, 2, 3, 4}).Draw(t, "shape"),
			Outlines: []outline.Layer{{Width: rapid.Float64Range(0, 5).Draw(t, "outline")}}, Squash: rapid.Bool().Draw(t, "squash"),
		}
		r.Ladder = fit.Ladder{
			Tracking: rapid.SampledFrom([]float64{0, -0.04}).Draw(t, "tracking"), Width: rapid.SampledFrom([]float64{1, 0.8, 0.6}).Draw(t, "width"),
			Height: rapid.SampledFrom([]float64{1, 0.6, 0.3}).Draw(t, "floor") * r.Height,
		}
		if r.Shape != fit.Straight {
			r.Radius = rapid.Float64Range(60, 900).Draw(t, "radius")
		}
		n, err := f.Name(r)
		height, fits, also := f.Reach(r)
		if err != nil {
			require.Equal(t, err, also)
			return
		}
		require.NoError(t, also)
		require.Equal(t, n.LetterHeight, height)
		require.Equal(t, n.Verdict != fit.Over, fits)
	})
}
