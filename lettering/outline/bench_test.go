package outline

import (
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

// word repeats the made-up signs to about the size of a ten-letter name.
func word() geom.Region {
	var out geom.Region
	for i := range 3 {
		out = append(out, letters().Transform(geom.Translate(168*float64(i), 0))...)
	}
	return out
}

func BenchmarkUnionOfAName(b *testing.B) {
	var e Engine
	ink := word()
	points := 0
	for _, ring := range ink {
		points += len(ring)
	}
	b.ReportAllocs()
	for b.Loop() {
		_, err := e.Union(ink)
		require.NoError(b, err)
	}
	b.ReportMetric(float64(points), "points")
}

func BenchmarkTwoLayersOfAName(b *testing.B) {
	var e Engine
	ink := word()
	b.ReportAllocs()
	for b.Loop() {
		_, err := e.Layers(ink, []Layer{{Width: 3}, {Width: 3}})
		require.NoError(b, err)
	}
}
