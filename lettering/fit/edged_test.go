package fit_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/edges"
	"yokeline/lettering/fit"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

func edgedRequest(t require.TestingT, text string, shape edges.Shape) fit.Request {
	face, err := typeface.Embedded("oswald")
	require.NoError(t, err)
	return fit.Request{Text: text, Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 60, Limit: 320,
		Ladder: fit.DefaultLadder(60), Edges: shape, Outlines: []outline.Layer{{Width: 3}}, NoWaysOut: true}
}

func form(t require.TestingT, f edges.Form, rise float64) edges.Shape {
	s, err := f.ByRise(rise)
	require.NoError(t, err)
	return s
}

// The figures of a name between edges are held against the very curves that
// are drawn: their box and the reach of the outline.
func TestANameBetweenEdgesMeasuresWhatItDraws(t *testing.T) {
	fitter := fit.NewFitter()
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(edges.Forms()).Draw(t, "form")
		shape := edges.Shape{}
		if f.Kind() != edges.Straight {
			shape = form(t, f, rapid.Float64Range(2, 18).Draw(t, "rise"))
		}
		shape.Shear = rapid.SampledFrom([]float64{0, 0.2, -0.15}).Draw(t, "lean")
		r := edgedRequest(t, rapid.SampledFrom([]string{"HERONS", "Quillfeather", "WOJCIECHOWSKA", "ÅJ", "A"}).Draw(t, "text"), shape)
		r.Limit = rapid.Float64Range(150, 400).Draw(t, "limit")
		n, err := fitter.Name(r)
		var vanish *edges.VanishError
		if errors.As(err, &vanish) {
			return // a wide name over which the edges meet is refused, and rightly
		}
		require.NoError(t, err)
		box := n.Ink().Bounds()
		assert.InDelta(t, box.Width()+6, n.InkWidth, 0.002)
		assert.InDelta(t, box.Height()+6, n.InkHeight, 0.01)
		assert.InDelta(t, 0, box.Min.X+box.Max.X, 0.002, "centred by its box")
		if n.Verdict != fit.Over {
			assert.LessOrEqual(t, n.InkWidth, r.Limit)
		}
		if n.Verdict == fit.Eased || n.Verdict == fit.Reduced {
			assert.GreaterOrEqual(t, n.InkWidth, r.Limit-0.01)
		}
	})
}

func TestStraightEdgesAreTheStraightLine(t *testing.T) {
	r := edgedRequest(t, "HALVORSEN", edges.Shape{})
	plain, err := fit.Fit(r)
	require.NoError(t, err)
	assert.Equal(t, "straight", plain.Form())
	r.Edges = edges.Shape{Shear: 1e-12}
	lean, err := fit.Fit(r)
	require.NoError(t, err)
	assert.InDelta(t, plain.InkWidth, lean.InkWidth, 1e-6)
	assert.InDelta(t, plain.InkHeight, lean.InkHeight, 1e-6)
	assert.InDelta(t, plain.SmallestGap, lean.SmallestGap, 1e-3)
	assert.Equal(t, "oblique", lean.Form())
}

func TestTwoEqualArchesAreTheVerticalArch(t *testing.T) {
	r := edgedRequest(t, "HALVORSEN", form(t, formNamed(t, "vertical arch"), 25))
	between, err := fit.Fit(r)
	require.NoError(t, err)
	assert.Equal(t, "vertical arch", between.Form())
	r.Edges, r.Shape, r.Rise = edges.Shape{}, fit.VerticalArch, 25
	arch, err := fit.Fit(r)
	require.NoError(t, err)
	assert.InDelta(t, arch.InkWidth, between.InkWidth, 1e-6)
	assert.InDelta(t, arch.InkHeight, between.InkHeight, 0.01)
	assert.InDelta(t, arch.SmallestGap, between.SmallestGap, 0.01)
	assert.InDelta(t, 0, arch.Ink().Bounds().Max.Y-between.Ink().Bounds().Max.Y, 0.01)
}

func TestMitredOutlinesBetweenEdgesKeepTheLimit(t *testing.T) {
	for _, f := range edges.Forms() {
		if f.Kind() == edges.Straight {
			continue
		}
		r := edgedRequest(t, "WAVYKAX", form(t, f, 15))
		r.Outlines = []outline.Layer{{Width: 4, Join: outline.Mitre}}
		r.Limit = 210
		n, err := fit.Fit(r)
		require.NoError(t, err, f)
		settled, err := outline.Union(n.Ink().Flatten(0.002))
		require.NoError(t, err)
		drawn := outline.ExtentOf(n.Ink().Bounds(), settled, r.Outlines)
		// The tips of the flattened reference turn with its last chords.
		assert.InDelta(t, drawn.Width(), n.InkWidth, 0.05, f)
		assert.LessOrEqual(t, n.InkWidth, r.Limit, f)
	}
}

func TestEdgesThatCannotBeUsedSayWhy(t *testing.T) {
	pinch := form(t, formNamed(t, "pinch"), 15)
	for name, c := range map[string]struct {
		edit  func(*fit.Request)
		words string
	}{
		"with an arch":    {func(r *fit.Request) { r.Shape, r.Radius = fit.RadialArch, 300 }, "use one of them"},
		"two lines":       {func(r *fit.Request) { r.Text = "DE LA\nCRUZ" }, "two lines"},
		"leans too far":   {func(r *fit.Request) { r.Edges.Shear = 1.2 }, "lean"},
		"without a limit": {func(r *fit.Request) { r.Limit = 0 }, "limit"},
		"letters vanish":  {func(r *fit.Request) { r.Edges = form(t, formNamed(t, "taper"), 150) }, "HERONS"},
	} {
		r := edgedRequest(t, "HERONS", pinch)
		r.Limit = 200
		c.edit(&r)
		_, err := fit.Fit(r)
		require.Error(t, err, name)
		assert.Contains(t, err.Error(), c.words, name)
	}
}

func formNamed(t require.TestingT, name string) edges.Form {
	f, err := edges.Parse(name)
	require.NoError(t, err)
	return f
}
