package outline_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// TestDrawnCornersEndWhereTheFitSays draws 20 names with 6 mm outlines that
// have corners, straight and on arches, and compares the drawing's box with the
// ink box of the fit, which knows nothing of polygons. Drawn from plain chords
// the boxes are apart by more: that shows what is tested.
func TestDrawnCornersEndWhereTheFitSays(t *testing.T) {
	const most = 0.05 // mm
	ids := []string{"graduate", "anton", "alfa-slab-one", "yellowtail", "oswald"}
	worst := map[outline.Join]float64{}
	plain, f := 0.0, fit.NewFitter()
	var e outline.Engine
	for i := range 20 {
		face, err := typeface.Embedded(ids[i%len(ids)])
		require.NoError(t, err)
		for k, shape := range []fit.Shape{fit.Straight, fit.RadialArch, fit.VerticalArch} {
			join := outline.Mitre
			if (i+k)%4 == 3 {
				join = outline.Bevel
			}
			r := fit.Request{
				Text: names()[i*5], Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 60, Limit: 300, NoWaysOut: true,
				Ladder: fit.DefaultLadder(60), Shape: shape, Outlines: []outline.Layer{{Width: 6, Join: join}},
			}
			if shape != fit.Straight {
				r.Radius = 400
			}
			name := fmt.Sprintf("%s in %s, %s, %s", r.Text, face.ID(), shape, join)
			n, err := f.Name(r)
			require.NoError(t, err, name)
			apart := boxApart(t, &e, outline.Flatten(n.Ink(), r.Outlines), n, r.Outlines)
			assert.LessOrEqual(t, apart, most, name)
			worst[join] = math.Max(worst[join], apart)
			if shape == fit.RadialArch {
				plain = math.Max(plain, boxApart(t, &e, n.Ink().Flatten(outline.Tolerance), n, r.Outlines))
			}
		}
	}
	t.Logf("worst: mitre %.4f mm, bevel %.4f mm; from plain chords %.4f mm", worst[outline.Mitre], worst[outline.Bevel], plain)
	assert.Greater(t, plain, most, "plain chords would do")
}

// boxApart returns how much width or height of the drawn outline and the fit's
// ink box differ.
func boxApart(t *testing.T, e *outline.Engine, flat geom.Region, n fit.Name, layers []outline.Layer) float64 {
	drawn, err := e.Layers(flat, layers)
	require.NoError(t, err, n.Text)
	box := drawn[len(drawn)-1].Bounds()
	return math.Max(math.Abs(box.Width()-n.InkWidth), math.Abs(box.Height()-n.InkHeight))
}

// A lens of two curves that meet at an angle known from their controls: the tip
// of its mitre stands off by the distance over the sine of half that angle.
func TestTheTipOfALensStandsWhereItsTangentsMeet(t *testing.T) {
	var lens geom.Path
	lens.MoveTo(geom.Point{})
	lens.QuadTo(geom.Point{X: 20, Y: -12}, geom.Point{X: 40})
	lens.QuadTo(geom.Point{X: 20, Y: 12}, geom.Point{})
	lens.Close()
	layers := []outline.Layer{{Width: 5, Join: outline.Mitre}}
	drawn, err := outline.Layers(outline.Flatten(lens, layers), layers)
	require.NoError(t, err)
	off := 5 / math.Sin(math.Atan2(12, 20))
	assert.InDelta(t, -off, drawn[0].Bounds().Min.X, 0.01)
	assert.InDelta(t, 40+off, drawn[0].Bounds().Max.X, 0.01)
	assert.InDelta(t, 6+5, drawn[0].Bounds().Max.Y, 0.001, "the curve's top is a point of the ring")
}

func TestRoundLayersTakePlainChords(t *testing.T) {
	face, err := typeface.Embedded("yellowtail")
	require.NoError(t, err)
	ink := fitted(t, face, "Quilfield").Ink()
	plain := ink.Flatten(outline.Tolerance)
	assert.Equal(t, plain, outline.Flatten(ink, nil))
	assert.Equal(t, plain, outline.Flatten(ink, []outline.Layer{{Width: 3}, {Width: 2}}))
	assert.NotEqual(t, plain, outline.Flatten(ink, []outline.Layer{{Width: 3}, {Width: 2, Join: outline.Bevel}}))
}

func fitted(t *testing.T, face *typeface.Face, text string) fit.Name {
	n, err := fit.Fit(fit.Request{
		Text: text, Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 60, Limit: 300, Ladder: fit.DefaultLadder(60), NoWaysOut: true,
	})
	require.NoError(t, err)
	return n
}

// Any curve, those with cusps, loops and controls on top of each other too,
// comes out within the tolerance, both ways.
func TestFlattenedCurvesKeepTheTolerance(t *testing.T) {
	layers := []outline.Layer{{Width: 1, Join: outline.Mitre}}
	at := rapid.Custom(func(t *rapid.T) geom.Point {
		axis := rapid.OneOf(rapid.SampledFrom([]float64{0, 10, 20}), rapid.Float64Range(-30, 30))
		return geom.Point{X: axis.Draw(t, "x"), Y: axis.Draw(t, "y")}
	})
	rapid.Check(t, func(t *rapid.T) {
		var p geom.Path
		p.MoveTo(at.Draw(t, "start"))
		p.CubeTo(at.Draw(t, "b"), at.Draw(t, "c"), at.Draw(t, "d"))
		p.QuadTo(at.Draw(t, "e"), at.Draw(t, "f"))
		p.LineTo(at.Draw(t, "g"))
		p.Close()
		fine, got := p.Flatten(0.0005), outline.Flatten(p, layers)
		if len(fine) == 0 || len(got) == 0 {
			t.Skip("a line only")
		}
		require.LessOrEqual(t, farthest(got[0], fine[0]), 0.002)
		require.LessOrEqual(t, farthest(fine[0], got[0]), outline.Tolerance+0.002)
	})
}

// farthest returns the greatest distance of a point of a from the line of b.
func farthest(a, b geom.Ring) float64 {
	worst := 0.0
	for _, p := range a {
		near := math.Inf(1)
		for i, q := range b {
			side := b[(i+1)%len(b)].Sub(q)
			t := 0.0
			if n := side.Dot(side); n > 0 {
				t = min(1, max(0, p.Sub(q).Dot(side)/n))
			}
			near = min(near, p.Sub(q.Add(side.Mul(t))).Norm())
		}
		worst = max(worst, near)
	}
	return worst
}
