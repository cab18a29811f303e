package outline_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// names returns 100 invented names.
func names() []string {
	starts := []string{"Bray", "Wojt", "Quil", "O'M", "Gard", "Vask", "Jef", "Kym", "Sax", "Zeb"}
	ends := []string{"den", "kowag", "field", "aloy", "strom", "BERG", "LUND", "WEX", "TAVI", "OAKSON"}
	var out []string
	for _, s := range starts {
		for _, e := range ends {
			out = append(out, s+e)
		}
	}
	return out
}

// inkOf sets a name 60 mm high, straight, or on an arc for a radius over 0.
func inkOf(t testing.TB, face *typeface.Face, text string, radius float64) geom.Region {
	line, err := face.NewShaper().Shape(text, "")
	require.NoError(t, err)
	k := 60 / face.CapHeight()
	var out geom.Region
	for _, g := range line.Glyphs {
		m := geom.Translate(g.X, g.Y).Then(geom.Scale(k, k))
		if radius > 0 {
			middle := g.X + g.Advance/2
			turn := (line.Advance/2 - middle) * k / radius
			m = geom.Translate(g.X-middle, g.Y).Then(geom.Scale(k, k)).Then(geom.Translate(0, radius)).Then(geom.Rotate(turn))
		}
		out = append(out, face.Outline(g.ID).Transform(m).Flatten(outline.Tolerance)...)
	}
	return out
}

func TestOutlinedNames(t *testing.T) {
	var e outline.Engine
	var faces []*typeface.Face
	for _, id := range []string{"graduate", "anton", "alfa-slab-one", "yellowtail"} {
		face, err := typeface.Embedded(id)
		require.NoError(t, err)
		faces = append(faces, face)
	}
	for i, text := range names() {
		if testing.Short() && i%7 != 0 {
			continue
		}
		face := faces[i%len(faces)]
		name := fmt.Sprintf("%s in %s", text, face.ID())
		settled, err := e.Union(inkOf(t, face, text, float64(i%3)*200))
		require.NoError(t, err, name)
		requireIdempotent(t, &e, settled, name)
		join := outline.Join(i % 3)
		for _, d := range []float64{1.5, 3, 6} {
			layer, err := e.Offset(settled, d, join)
			require.NoError(t, err, name)
			requireIdempotent(t, &e, layer, name)
			box := outline.Extent(settled, []outline.Layer{{Width: d, Join: join}})
			assert.InDelta(t, 0, apartOf(box, layer.Bounds()), 2.0/8192, "%s, %g mm %s", name, d, join)
			if d == 1.5 {
				requireAround(t, &e, settled, layer, name)
			}
		}
	}
}

func requireIdempotent(t *testing.T, e *outline.Engine, settled geom.Region, name string) {
	again, err := e.Union(settled)
	require.NoError(t, err, name)
	require.Equal(t, settled, again, name)
}

// requireAround checks that the layer covers the ink.
func requireAround(t *testing.T, e *outline.Engine, ink, layer geom.Region, name string) {
	both, err := e.Union(append(append(geom.Region{}, ink...), layer...))
	require.NoError(t, err, name)
	require.InDelta(t, layer.Area(), both.Area(), 1e-6*layer.Area(), name)
}

// apartOf returns the greatest distance between sides of the boxes.
func apartOf(a, b geom.Rect) float64 {
	u, v := a.Min.Sub(b.Min), a.Max.Sub(b.Max)
	return max(u.X, -u.X, u.Y, -u.Y, v.X, -v.X, v.Y, -v.Y)
}

func BenchmarkTwoLayersOfAWideName(b *testing.B) {
	for _, id := range []string{"graduate", "anton", "yellowtail"} {
		b.Run(id, func(b *testing.B) {
			face, err := typeface.Embedded(id)
			require.NoError(b, err)
			var e outline.Engine
			ink := inkOf(b, face, "Wojtkowag", 400)
			for b.Loop() {
				_, err := e.Layers(ink, []outline.Layer{{Width: 3}, {Width: 3}})
				require.NoError(b, err)
			}
		})
	}
}
