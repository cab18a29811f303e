package typeface_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/typeface"
)

func BenchmarkShapeTenLetters(b *testing.B) {
	for _, e := range fonts.Catalogue() {
		b.Run(e.ID, func(b *testing.B) {
			shaper := embedded(b, e.ID).NewShaper()
			var line typeface.Line
			b.ReportAllocs()
			for b.Loop() {
				if err := shaper.ShapeInto(&line, "WAVERLYTON", ""); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkNewInstanceAndShape(b *testing.B) {
	face := embedded(b, "saira")
	shaper := face.NewShaper()
	var line typeface.Line
	width := 50.0
	b.ReportAllocs()
	for b.Loop() {
		if width += 0.01; width > 125 {
			width = 50
		}
		instance, err := face.Instance(map[string]float64{"wdth": width})
		if err != nil {
			b.Fatal(err)
		}
		_ = shaper.Use(instance)
		if err := shaper.ShapeInto(&line, "WAVERLYTON", ""); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOpen(b *testing.B) {
	for _, id := range []string{"oswald", "archivo"} {
		entry, _ := fonts.Lookup(id)
		data, err := fonts.Read(entry.File)
		require.NoError(b, err)
		b.Run(id, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := typeface.Open("x.ttf", data); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
