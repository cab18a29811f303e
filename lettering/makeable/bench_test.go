package makeable_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/makeable"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// set sets a text in a face, its letters height mm high, straight; one region
// a letter with its accents, and all of them settled.
func set(t testing.TB, id, text string, height float64) (letters []makeable.Letter, ink geom.Region) {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	line, err := face.NewShaper().Shape(text, "")
	require.NoError(t, err)
	k := height / face.CapHeight()
	runes := []rune(text)
	var all geom.Region
	for _, g := range line.Glyphs {
		path := face.Outline(g.ID).Transform(geom.Translate(g.X, g.Y).Then(geom.Scale(k, k)))
		r, err := outline.Union(path.Flatten(0.02))
		require.NoError(t, err)
		all = append(all, r...)
		if n := len(letters); g.Mark && n > 0 {
			letters[n-1].Ink = append(letters[n-1].Ink, r...)
			continue
		}
		letters = append(letters, makeable.Letter{Text: string(runes[g.Cluster]), Index: g.Cluster, Ink: r})
	}
	ink, err = outline.Union(all)
	require.NoError(t, err)
	return letters, ink
}

func BenchmarkName(b *testing.B) {
	for _, c := range []struct {
		name, face, text string
		upTo             float64
	}{
		{"block", "oswald", "WOJCIECHOWSKI", 0},
		{"block up to 12 mm", "oswald", "WOJCIECHOWSKI", 12},
		{"octagon", "graduate", "HERNANDEZ", 0},
		{"script", "yellowtail", "Thunderbirds", 0},
		{"no counters", "oswald", "ILTIT", 0},
	} {
		b.Run(c.name, func(b *testing.B) {
			letters, ink := set(b, c.face, c.text, 50.8)
			layers, err := outline.Layers(ink, []outline.Layer{{Width: 1.6}, {Width: 1.6}})
			require.NoError(b, err)
			walls := 0
			for _, r := range append(layers, ink) {
				for _, ring := range r {
					walls += len(ring)
				}
			}
			for b.Loop() {
				_, err := makeable.Measure(ink, makeable.Options{Letters: letters, UpTo: c.upTo})
				require.NoError(b, err)
				for _, layer := range layers {
					_, err := makeable.Measure(layer, makeable.Options{Letters: letters, Bare: ink, UpTo: c.upTo})
					require.NoError(b, err)
				}
			}
			b.ReportMetric(float64(walls), "edges")
		})
	}
}
