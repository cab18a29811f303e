package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// freshNames returns names that no line cache holds, so that shaping is part
// of what is measured.
func freshNames(n int) []string {
	r := rand.New(rand.NewPCG(7, 11))
	out := make([]string, n)
	for i := range out {
		b := make([]byte, 6+r.IntN(8))
		for k := range b {
			b[k] = byte('A' + r.IntN(26))
		}
		out[i] = string(b)
	}
	return out
}

func plainRequest(t testing.TB, id, text string) Request {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	return Request{
		Text: text, Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 63.5, Limit: 279.4,
		Ladder: DefaultLadder(63.5), Outlines: []outline.Layer{{Width: 3}},
	}
}

func BenchmarkName(b *testing.B) {
	names := freshNames(20000)
	for _, c := range []struct {
		name, face string
		shape      Shape
		join       outline.Join
	}{
		{"straight", "oswald", Straight, outline.Round},
		{"radial", "oswald", RadialArch, outline.Round},
		{"radial down", "oswald", RadialArchDown, outline.Round},
		{"vertical", "oswald", VerticalArch, outline.Round},
		{"radial mitre", "oswald", RadialArch, outline.Mitre},
		{"radial octagon", "graduate", RadialArch, outline.Round},
		{"radial script", "yellowtail", RadialArch, outline.Round},
		{"radial width axis", "archivo", RadialArch, outline.Round},
	} {
		b.Run(c.name, func(b *testing.B) {
			r := plainRequest(b, c.face, "")
			r.Shape, r.Radius, r.NoWaysOut = c.shape, 350, true
			r.Outlines[0].Join = c.join
			f := NewFitter()
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				r.Text = names[i%len(names)]
				i++
				if _, err := f.Name(r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkShape is the shaper's part of what BenchmarkShapeAndFit measures.
func BenchmarkShape(b *testing.B) {
	names := freshNames(20000)
	shaper := plainRequest(b, "oswald", "").Face.NewShaper()
	var line typeface.Line
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		if err := shaper.ShapeInto(&line, names[i%len(names)], ""); err != nil {
			b.Fatal(err)
		}
		i++
	}
}

// BenchmarkShapeAndFit shapes and fits an outlined name on a radial arch; what
// Name adds is the smallest gap and the height of the ink. In the second half
// the line is in the cache, so only the ladder is measured.
func BenchmarkShapeAndFit(b *testing.B) {
	for _, c := range []struct {
		name  string
		fresh int
	}{{"fresh", 20000}, {"again", 100}} {
		b.Run(c.name, func(b *testing.B) {
			names, f := freshNames(c.fresh), NewFitter()
			r := plainRequest(b, "oswald", "")
			r.Shape, r.Radius, r.NoWaysOut = RadialArch, 350, true
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				r.Text = names[i%len(names)]
				i++
				if _, err := f.fit(&r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkInk draws the curves of a fitted name.
func BenchmarkInk(b *testing.B) {
	r := plainRequest(b, "oswald", "HERNANDEZ")
	r.Shape, r.Radius = RadialArch, 350
	n, err := Fit(r)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		_ = n.Ink()
	}
}
