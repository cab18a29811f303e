package bench_test

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/layers"
	"yokeline/lettering/outline"
	"yokeline/proof/bench"
)

func BenchmarkWrite(b *testing.B) {
	piece := sized(b, garment.TwoButton, "27", number(ring(3, white, outline.Round), ring(3, navy, outline.Round)))
	art, err := layers.Of(piece, "direct-to-film", layers.Default())
	require.NoError(b, err)
	desk, err := bench.New()
	require.NoError(b, err)
	o := bench.Options{Label: bench.Label{Player: "Quill", Place: "back number", Size: "adult L"}}
	for name, write := range map[string]func() error{
		"SVG": func() error { return desk.SVG(io.Discard, art, o) },
		"PDF": func() error { return desk.PDF(io.Discard, art, o) },
		"PNG": func() error { return desk.PNG(io.Discard, art, o) },
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				require.NoError(b, write())
			}
		})
	}
}
