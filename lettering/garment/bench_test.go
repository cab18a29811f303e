package garment

import "testing"

func BenchmarkNewAndView(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		g, err := New(TwoButton, Size{Adult, "M"})
		if err != nil {
			b.Fatal(err)
		}
		g.View(Front)
		g.View(Back)
	}
}

func BenchmarkPanel(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		g, _ := New(TwoButton, Size{Adult, "M"})
		g.Panel(Front)
		g.Panel(Back)
	}
}

func BenchmarkPanelsWithSleeves(b *testing.B) {
	for b.Loop() {
		g, _ := New(TwoButton, Size{Adult, "M"})
		g.Panels(Front)
		g.Panels(Back)
	}
}

func BenchmarkRoomFirst(b *testing.B) {
	for b.Loop() {
		g, _ := New(TwoButton, Size{Adult, "M"})
		g.Room(BackName, 110, 170)
	}
}

func BenchmarkRoomAgain(b *testing.B) {
	g, _ := New(TwoButton, Size{Adult, "M"})
	g.Room(BackName, 110, 170)
	b.ResetTimer()
	for b.Loop() {
		g.Room(BackName, 110, 170)
	}
}

func BenchmarkLoadTable(b *testing.B) {
	for b.Loop() {
		if _, err := readTable(measuresCSV); err != nil {
			b.Fatal(err)
		}
	}
}
