package tail_test

import (
	"testing"

	"yokeline/lettering/tail"
)

func BenchmarkDraw(b *testing.B) {
	ink := script(b, "yellowtail", "Badgers", 60)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tail.Draw(ink, 60, tail.Default()); err != nil {
			b.Fatal(err)
		}
	}
}
