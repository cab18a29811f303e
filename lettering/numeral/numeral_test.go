package numeral_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/fonts"
	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
	"yokeline/lettering/outline"
	"yokeline/lettering/stroke"
	"yokeline/lettering/typeface"
)

func request(t require.TestingT, id, text string) numeral.Request {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	return numeral.Request{Text: text, Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 200, Gap: math.NaN()}
}

func number(t require.TestingT, r numeral.Request) numeral.Number {
	n, err := numeral.NewSizer().Number(r)
	require.NoError(t, err)
	return n
}

func faces() []string {
	var out []string
	for _, e := range fonts.Catalogue() {
		if !e.Text {
			out = append(out, e.ID)
		}
	}
	return out
}

// digitBox measures a digit on points of its outline alone.
func digitBox(t require.TestingT, face *typeface.Face, d rune) geom.Rect {
	id, err := face.Digit(d)
	require.NoError(t, err)
	return face.Outline(id).Flatten(1e-5 * face.UnitsPerEm()).Bounds()
}

func TestNumberHeightIsThatOfTheShortestDigit(t *testing.T) {
	for _, id := range faces() {
		for _, text := range []string{"1", "8", "18", "70", "963"} {
			n := number(t, request(t, id, text))
			shortest, tallest := math.Inf(1), 0.0
			face := request(t, id, text).Face
			for _, d := range text {
				h := digitBox(t, face, d).Height()
				shortest, tallest = math.Min(shortest, h), math.Max(tallest, h)
			}
			assert.Equal(t, 200.0, n.Height)
			assert.InDelta(t, 200*tallest/shortest, n.TallestDigit, 0.005, "%s %s", id, text)
			assert.GreaterOrEqual(t, n.Ink().Bounds().Height(), n.TallestDigit-1e-9)
		}
	}
}

// parts cuts the ink of a number into its digits by counting the segments of
// each digit's outline.
func parts(t require.TestingT, face *typeface.Face, n numeral.Number) []geom.Path {
	rest := n.Ink()
	var out []geom.Path
	for _, d := range n.Text {
		id, err := face.Digit(d)
		require.NoError(t, err)
		k := len(face.Outline(id))
		out, rest = append(out, rest[:k]), rest[k:]
	}
	require.Empty(t, rest)
	return out
}

// sampled is the smallest distance of dense points of two inks: samples are
// 0.3 mm apart, so it is over the true one by less than 0.3²/(8·gap).
func sampled(a, b geom.Path) float64 {
	points := func(p geom.Path) []geom.Point {
		var out []geom.Point
		for _, ring := range p.Flatten(0.002) {
			for i, q := range ring {
				next := ring[(i+1)%len(ring)]
				steps := math.Ceil(next.Sub(q).Norm() / 0.3)
				for k := range int(steps) {
					out = append(out, q.Lerp(next, float64(k)/steps))
				}
			}
		}
		slices.SortFunc(out, func(p, q geom.Point) int { return cmp.Compare(p.Y, q.Y) })
		return out
	}
	left := b.Bounds().Min.X
	best, other, from := a.Bounds().Width()+b.Bounds().Width(), points(b), 0
	for _, p := range points(a) {
		if p.X < left-best {
			continue
		}
		for from < len(other) && other[from].Y < p.Y-best {
			from++
		}
		for _, q := range other[from:] {
			if q.Y > p.Y+best {
				break
			}
			best = math.Min(best, p.Sub(q).Norm())
		}
	}
	return best
}

func TestGapIsTheSmallestDistanceInThePlane(t *testing.T) {
	worst := 0.0
	sizer := numeral.NewSizer()
	for _, id := range []string{"graduate", "alfa-slab-one", "damion"} {
		for _, text := range []string{"17", "74", "47", "008"} {
			for _, gap := range []float64{math.NaN(), 4, 25} {
				r := request(t, id, text)
				r.Gap = gap
				n, err := sizer.Number(r)
				require.NoError(t, err)
				want := gap
				if math.IsNaN(gap) {
					want = 12
				}
				assert.InDelta(t, want, n.Gap, 1e-9)
				digits := parts(t, r.Face, n)
				for i := 1; i < len(digits); i++ {
					worst = math.Max(worst, math.Abs(sampled(digits[i-1], digits[i])-n.Gap))
					if gap > 20 {
						continue
					}
					moved := digits[i].Transform(geom.Translate(0.05, 0))
					assert.Greater(t, sampled(digits[i-1], moved), n.Gap, "outermost")
				}
			}
		}
	}
	t.Logf("worst difference %.4f mm", worst)
	assert.Less(t, worst, 0.01)
}

func TestGapIsRaisedForOutlinesAndMethod(t *testing.T) {
	cases := []struct {
		name     string
		gap      float64
		smallest float64
		reach    float64
		want     float64
		raised   bool
	}{
		{"default is enough", math.NaN(), 2, 4, 12, false},
		{"default is too small", math.NaN(), 3, 5, 13, true},
		{"asked is enough", 20, 3, 5, 20, false},
		{"asked is too small", 8, 0, 5, 10, true},
		{"just enough", 10, 0, 5, 10, false},
		{"no gap asked, none needed", 0, 0, 0, 0, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := request(t, "graduate", "27")
			r.Gap, r.SmallestGap = c.gap, c.smallest
			r.Outlines = []outline.Layer{{Width: c.reach - 1}, {Width: 1}}
			if c.reach == 0 {
				r.Outlines = nil
			}
			n := number(t, r)
			assert.InDelta(t, c.want, n.Gap, 1e-9)
			assert.Equal(t, c.raised, n.GapRaised)
			r.Text = "7"
			n = number(t, r)
			assert.True(t, math.IsNaN(n.Gap), "one digit has none")
			assert.False(t, n.GapRaised)
		})
	}
}

func TestWidthIsThatOfTheInkWithItsOutlines(t *testing.T) {
	sizer := numeral.NewSizer()
	rapid.Check(t, func(t *rapid.T) {
		r := request(t, rapid.SampledFrom(faces()).Draw(t, "face"), rapid.StringMatching(`[0-9]{1,3}`).Draw(t, "text"))
		r.Height = rapid.Float64Range(40, 300).Draw(t, "height")
		join := outline.Join(rapid.IntRange(0, 2).Draw(t, "join"))
		r.Outlines = []outline.Layer{{Width: rapid.Float64Range(1, 8).Draw(t, "width"), Join: join}}
		n, err := sizer.Number(r)
		require.NoError(t, err)
		exact := n.Ink().Bounds()
		assert.InDelta(t, exact.Width(), n.BareInkWidth, 1e-9)
		fine := n.Ink().Flatten(0.001).Bounds()
		assert.InDelta(t, fine.Width(), n.BareInkWidth, 0.003)
		if join == outline.Round {
			assert.InDelta(t, exact.Width()+2*r.Outlines[0].Width, n.InkWidth, 1e-9)
			assert.InDelta(t, exact.Height()+2*r.Outlines[0].Width, n.InkHeight, 1e-9)
			assert.InDelta(t, 0, exact.Center().X, 1e-9)
			return
		}
		// Finely flattened and large against the outline's grid: the tip of a
		// mitre at the end of a curve turns with the last chord, so this reference
		// nears the truth only as the root of the tolerance.
		const k = 16
		big := n.Ink().Transform(geom.Scale(k, k))
		settled, err := outline.Union(big.Flatten(0.001))
		require.NoError(t, err)
		box := outline.ExtentOf(big.Bounds(), settled, []outline.Layer{{Width: k * r.Outlines[0].Width, Join: join}})
		assert.InDelta(t, box.Width()/k, n.InkWidth, 0.06)
		assert.InDelta(t, box.Height()/k, n.InkHeight, 0.06)
	})
}

func TestANumberTooWideNamesTheHeightThatFits(t *testing.T) {
	sizer := numeral.NewSizer()
	rapid.Check(t, func(t *rapid.T) {
		r := request(t, rapid.SampledFrom([]string{"graduate", "oswald", "saira"}).Draw(t, "face"), rapid.StringMatching(`[0-9]{2,3}`).Draw(t, "text"))
		r.SmallestGap = rapid.Float64Range(0, 10).Draw(t, "smallest")
		r.Outlines = []outline.Layer{{Width: rapid.Float64Range(0, 5).Draw(t, "outline"), Join: outline.Join(rapid.IntRange(0, 2).Draw(t, "join"))}}
		if rapid.Bool().Draw(t, "asked") {
			r.Gap = rapid.Float64Range(0, 30).Draw(t, "gap")
		}
		// At least 90: two gaps of 30 and outlines of 5 leave room for digits.
		r.Limit = rapid.Float64Range(90, 300).Draw(t, "limit")
		n, err := sizer.Number(r)
		require.NoError(t, err)
		if n.InkWidth <= r.Limit {
			assert.Equal(t, numeral.Full, n.Verdict)
			assert.Zero(t, n.WouldFitHeight)
			return
		}
		assert.Equal(t, numeral.Over, n.Verdict)
		assert.Equal(t, 200.0, n.Height, "a number is never made smaller by itself")
		require.Greater(t, n.WouldFitHeight, 0.0)
		r.Height = n.WouldFitHeight
		n, err = sizer.Number(r)
		require.NoError(t, err)
		assert.Equal(t, numeral.Full, n.Verdict)
		r.Height += 0.011
		n, err = sizer.Number(r)
		require.NoError(t, err)
		assert.Equal(t, numeral.Over, n.Verdict, "no higher number fits")
	})
}

func TestNoHeightFitsALimitThatOutlinesFill(t *testing.T) {
	r := request(t, "graduate", "11")
	r.Outlines, r.Limit = []outline.Layer{{Width: 10}}, 20
	n := number(t, r)
	assert.Equal(t, numeral.Over, n.Verdict)
	assert.Zero(t, n.WouldFitHeight)
}

func TestANumberIsText(t *testing.T) {
	seen := map[string]string{}
	for _, text := range []string{"0", "00", "7", "07"} {
		n := number(t, request(t, "oswald", text))
		assert.Equal(t, text, n.Text)
		key := fmt.Sprintf("%.3f", n.InkWidth)
		assert.Empty(t, seen[key], "%s is as wide as %s", text, seen[key])
		seen[key] = text
	}
}

func TestGraduateHasNoDotInItsZero(t *testing.T) {
	settled, err := number(t, request(t, "graduate", "0")).Settled()
	require.NoError(t, err)
	assert.Len(t, settled, 2, "an octagon and its counter")
}

// TestStrokesAreTheSmallestOfTheDigits measures each digit by itself at the
// size it comes out.
func TestStrokesAreTheSmallestOfTheDigits(t *testing.T) {
	for _, id := range []string{"graduate", "oswald", "saira"} {
		for _, text := range []string{"1", "48", "105"} {
			r := request(t, id, text)
			r.Height = 150
			r.Outlines = []outline.Layer{{Width: 4}}
			n := number(t, r)
			thin, main := math.Inf(1), math.Inf(1)
			for _, part := range parts(t, r.Face, n) {
				settled, err := outline.Union(part.Flatten(0.005))
				require.NoError(t, err)
				g := stroke.Measure(settled, 0.3)
				require.True(t, g.Measurable)
				thin, main = math.Min(thin, g.Thin), math.Min(main, g.Main)
			}
			assert.InEpsilon(t, thin, n.StrokeThin, 0.02, "%s %s", id, text)
			assert.InEpsilon(t, main, n.StrokeMain, 0.02, "%s %s", id, text)
		}
	}
	// The stem of Graduate's 1 runs from x = 309 to 401 in the font file, on a
	// digit 750 units high.
	assert.InDelta(t, 200*92.0/750, number(t, request(t, "graduate", "1")).StrokeMain, 0.2)
}

func TestAxesOfANumber(t *testing.T) {
	r := request(t, "saira", "88")
	normal := number(t, r)
	r.Wdth, r.Wght = 75, 800
	narrow := number(t, r)
	assert.Less(t, narrow.InkWidth, normal.InkWidth)
	assert.Greater(t, narrow.StrokeMain, normal.StrokeMain)
	r.Wdth = 300
	_, err := numeral.NewSizer().Number(r)
	assert.ErrorContains(t, err, "wdth cannot be 300")
}

func TestRequestsThatMakeNoSenseAreErrors(t *testing.T) {
	cases := []struct {
		name string
		with func(*numeral.Request)
		want string
	}{
		{"no face", func(r *numeral.Request) { r.Face = nil }, "no face"},
		{"no digits", func(r *numeral.Request) { r.Text = "" }, "give 1 to 3 digits"},
		{"too many", func(r *numeral.Request) { r.Text = "1234" }, "give 1 to 3 digits"},
		{"a letter", func(r *numeral.Request) { r.Text = "1A" }, "U+0041"},
		{"a sign", func(r *numeral.Request) { r.Text = "-7" }, "digits 0 to 9 only"},
		{"a digit of another script", func(r *numeral.Request) { r.Text = "٣" }, "U+0663"},
		{"no height", func(r *numeral.Request) { r.Height = 0 }, "height of number"},
		{"height not a number", func(r *numeral.Request) { r.Height = math.NaN() }, "height of number"},
		{"limit below 0", func(r *numeral.Request) { r.Limit = -1 }, "limit of number"},
		{"gap below 0", func(r *numeral.Request) { r.Gap = -1 }, "gap of number"},
		{"smallest gap not a number", func(r *numeral.Request) { r.SmallestGap = math.NaN() }, "smallest gap"},
		{"outline below 0", func(r *numeral.Request) { r.Outlines = []outline.Layer{{Width: -1}} }, "outline of number"},
		{"axis that is not there", func(r *numeral.Request) { r.Wdth = 80 }, "wdth"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := request(t, "oswald", "27")
			c.with(&r)
			_, err := numeral.NewSizer().Number(r)
			require.ErrorContains(t, err, c.want)
		})
	}
}

func BenchmarkNumber(b *testing.B) {
	for _, id := range []string{"graduate", "oswald"} {
		b.Run(id, func(b *testing.B) {
			r := request(b, id, "")
			r.Outlines = []outline.Layer{{Width: 3}}
			s := numeral.NewSizer()
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				r.Text = fmt.Sprintf("%02d", i%100)
				i++
				if _, err := s.Number(r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkNumberOfAFreshFace(b *testing.B) {
	r := request(b, "oswald", "86")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := numeral.NewSizer().Number(r); err != nil {
			b.Fatal(err)
		}
	}
}
