package layers_test

import (
	"testing"

	"yokeline/lettering/garment"
	"yokeline/lettering/layers"
	"yokeline/lettering/outline"
)

func BenchmarkOf(b *testing.B) {
	piece := sized(b, garment.TwoButton, "Quillon", name("oswald", ring(2, white, outline.Round), ring(2, navy, outline.Round)))
	for _, method := range []string{"cut film", "screen transfer", "direct-to-film"} {
		b.Run(method, func(b *testing.B) {
			for b.Loop() {
				of(b, piece, method, layers.Default())
			}
		})
	}
}
