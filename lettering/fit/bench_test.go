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
