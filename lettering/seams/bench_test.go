package seams_test

import (
	"math"
	"testing"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// word is a row of rings with as many points as ten outlined letters have.
func word(top, half float64) geom.Region {
	var out geom.Region
	for i := range 10 {
		var r geom.Ring
		x, n := (float64(i)-4.5)*half/5, 220
		for k := range n {
			a := 2 * math.Pi * float64(k) / float64(n)
			r = append(r, geom.Point{X: x + half/11*math.Cos(a), Y: top + 25 + x*x/2000 + 25*math.Sin(a)})
		}
		out = append(out, r)
	}
	return out
}

func benchmarkLay(b *testing.B, half float64, inside bool) {
	g := made(b, garment.TwoButton, adultM)
	c := on(b, g, garment.BackName)
	piece := word(g.Collar(garment.Back)+45, half)
	if c.Lay(piece, 3).Inside != inside {
		b.Fatal("the piece does not lie as the benchmark says", c.Lay(piece, 3).Hits())
	}
	b.ReportAllocs()
	for b.Loop() {
		c.Lay(piece, 3)
	}
}

func BenchmarkLayInside(b *testing.B) { benchmarkLay(b, 130, true) }

func BenchmarkLayAcrossASeam(b *testing.B) { benchmarkLay(b, 230, false) }

func BenchmarkLayOnASleeve(b *testing.B) {
	g := made(b, garment.TwoButton, adultM)
	c := on(b, g, garment.SleeveNumber)
	place, _ := g.Place(garment.SleeveNumber)
	at := place.Point(0, place.Top)
	piece := word(at.Y, 30).Transform(geom.Translate(at.X, 0))
	b.ReportAllocs()
	for b.Loop() {
		c.Lay(piece, 3)
	}
}

func BenchmarkOn(b *testing.B) {
	for b.Loop() {
		on(b, made(b, garment.TwoButton, adultM), garment.BackName)
	}
}

func BenchmarkLargest(b *testing.B) {
	g := made(b, garment.TwoButton, adultM)
	c := on(b, g, garment.BackName)
	for b.Loop() {
		if _, _, err := c.Largest(10, 200, 3, func(h float64) (geom.Region, error) { return word(g.Collar(garment.Back)+45, 3*h), nil }); err != nil {
			b.Fatal(err)
		}
	}
}
