package fit_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

func embedded(t require.TestingT, id string) *typeface.Face {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	return face
}

func request(t require.TestingT, id, text string) fit.Request {
	return fit.Request{
		Text: text, Face: embedded(t, id), Wdth: math.NaN(), Wght: math.NaN(), Height: 50,
		Ladder: fit.DefaultLadder(50), NoWaysOut: true,
	}
}

func name(t require.TestingT, r fit.Request) fit.Name {
	n, err := fit.Fit(r)
	require.NoError(t, err)
	return n
}

func TestWordsAreThoseOfTheDesign(t *testing.T) {
	assert.Equal(t, "straight", fit.Straight.String())
	assert.Equal(t, "radial arch", fit.RadialArch.String())
	assert.Equal(t, "radial arch down", fit.RadialArchDown.String())
	assert.Equal(t, "vertical arch", fit.VerticalArch.String())
	assert.Equal(t, "vertical arch down", fit.VerticalArchDown.String())
	assert.Equal(t, "shape 9", fit.Shape(9).String())
	assert.Equal(t, []string{"full", "eased", "reduced", "over"},
		[]string{fit.Full.String(), fit.Eased.String(), fit.Reduced.String(), fit.Over.String()})
	assert.Equal(t, "verdict 9", fit.Verdict(9).String())
	assert.Equal(t, "baseline", fit.Baseline.String())
	assert.Equal(t, "middle", fit.Middle.String())
}

func TestVerdictFollowsTheLadder(t *testing.T) {
	face := "oswald"
	whole := name(t, request(t, face, "HERNANDEZ")).InkWidth
	cases := []struct {
		name    string
		limit   float64 // share of the width as asked
		ladder  fit.Ladder
		verdict fit.Verdict
		changed string
	}{
		{"no limit", 0, fit.DefaultLadder(50), fit.Full, ""},
		{"as wide as the limit", 1, fit.DefaultLadder(50), fit.Full, ""},
		{"a little too wide", 0.98, fit.DefaultLadder(50), fit.Eased, "tracking"},
		{"tracking is not enough", 0.85, fit.DefaultLadder(50), fit.Eased, "width"},
		{"width is not enough", 0.6, fit.DefaultLadder(50), fit.Reduced, "height"},
		{"nothing is enough", 0.3, fit.DefaultLadder(50), fit.Over, "height"},
		{"tracking switched off", 0.98, fit.Ladder{Tracking: 0, Width: 0.8, Height: 30}, fit.Eased, "width"},
		{"width switched off", 0.85, fit.Ladder{Tracking: -0.04, Width: 1, Height: 30}, fit.Reduced, "height"},
		{"height switched off", 0.6, fit.Ladder{Tracking: -0.04, Width: 0.8, Height: 50}, fit.Over, "width"},
		{"a floor above the height asked", 0.6, fit.Ladder{Tracking: -0.04, Width: 0.8, Height: 80}, fit.Over, "width"},
		{"all switched off", 0.99, fit.Ladder{}, fit.Over, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := request(t, face, "HERNANDEZ")
			r.Limit, r.Ladder = c.limit*whole, c.ladder
			n := name(t, r)
			assert.Equal(t, c.verdict, n.Verdict, n.Verdict.String())
			changed := ""
			if n.Tracking != 0 {
				changed = "tracking"
			}
			if n.WidthScale != 1 {
				changed = "width"
			}
			if n.LetterHeight != 50 {
				changed = "height"
			}
			assert.Equal(t, c.changed, changed)
			assert.Equal(t, n.Verdict == fit.Over, n.OverBy > 0)
			assert.Equal(t, 50.0, n.Asked)
		})
	}
}

func TestRequestsThatMakeNoSenseAreErrors(t *testing.T) {
	cases := []struct {
		name string
		with func(*fit.Request)
		want string
	}{
		{"no face", func(r *fit.Request) { r.Face = nil }, "no face"},
		{"no height", func(r *fit.Request) { r.Height = 0 }, "must be over 0"},
		{"height not a number", func(r *fit.Request) { r.Height = math.NaN() }, "must be over 0"},
		{"limit below 0", func(r *fit.Request) { r.Limit = -1 }, "limit of"},
		{"tracking floor above 0", func(r *fit.Request) { r.Ladder.Tracking = 0.1 }, "tracking floor 10%"},
		{"width floor over 1", func(r *fit.Request) { r.Ladder.Width = 1.2 }, "width floor 120%"},
		{"height floor below 0", func(r *fit.Request) { r.Ladder.Height = -3 }, "height floor"},
		{"outline below 0", func(r *fit.Request) { r.Outlines = []outline.Layer{{Width: -1}} }, "outline of"},
		{"unknown shape", func(r *fit.Request) { r.Shape = 7 }, "shape 7"},
		{"arch without a circle", func(r *fit.Request) { r.Shape = fit.RadialArch }, "neither radius nor rise"},
		{"radius and rise", func(r *fit.Request) { r.Shape, r.Radius, r.Rise = fit.RadialArch, 300, 20 }, "both a radius and a rise"},
		{"rise without a limit", func(r *fit.Request) { r.Shape, r.Rise = fit.VerticalArch, 20 }, "there is no limit"},
		{"radius below 0", func(r *fit.Request) { r.Shape, r.Radius = fit.VerticalArch, -20 }, "neither may be below 0"},
		{"axis that is not there", func(r *fit.Request) { r.Wdth = 80 }, "wdth"},
		{"nothing to draw", func(r *fit.Request) { r.Text = "  " }, "no letters to draw"},
		{"no text", func(r *fit.Request) { r.Text = "" }, "no letters to draw"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := request(t, "oswald", "RUIZ")
			c.with(&r)
			_, err := fit.Fit(r)
			require.ErrorContains(t, err, c.want)
		})
	}
	_, err := fit.Fit(request(t, "graduate", "NGUYỄN"))
	var missing *typeface.MissingError
	require.ErrorAs(t, err, &missing)
	assert.Equal(t, 'Ễ', missing.Rune)
}

// The radii are those of Machinery's Handbook, 31st ed., p. 79 (c = 16, h = 6:
// 8 1/3) and of a geometry program's help page (c = 21, h = 6: 12.1875), the
// lengths taken ten times as large.
func TestRiseGivesTheRadiusOfTheHandbook(t *testing.T) {
	for _, c := range []struct{ chord, rise, radius float64 }{{160, 60, 250.0 / 3}, {210, 60, 121.875}} {
		r := request(t, "league-gothic", "LI")
		r.Shape, r.Limit, r.Rise, r.Height = fit.RadialArch, c.chord, c.rise, 20
		assert.InDelta(t, c.radius, name(t, r).Radius, 1e-9)
	}
}

func TestATightRadialArchNamesTheSmallestRadius(t *testing.T) {
	for _, shape := range []fit.Shape{fit.RadialArch, fit.RadialArchDown} {
		for _, spacing := range []fit.Spacing{fit.Baseline, fit.Middle} {
			r := request(t, "oswald", "HERNANDEZ")
			straight := name(t, r).BareInkWidth
			r.Shape, r.Spacing, r.Radius = shape, spacing, 60
			_, err := fit.Fit(r)
			var tight *fit.TooTightError
			require.ErrorAs(t, err, &tight)
			// At the smallest radius the straight ink takes up 2 × 75 degrees.
			want := straight / (150 * math.Pi / 180)
			if spacing == fit.Middle {
				want += map[fit.Shape]float64{fit.RadialArch: -25, fit.RadialArchDown: 25}[shape]
			}
			assert.InDelta(t, want, tight.Smallest, 1e-4)
			assert.ErrorContains(t, err, "use a radius of at least")
			r.Radius = tight.Smallest
			assert.Equal(t, fit.Full, name(t, r).Verdict)
		}
	}
}

func TestATightRiseNamesTheLargestRise(t *testing.T) {
	r := request(t, "oswald", "HERNANDEZ")
	r.Shape, r.Limit, r.Rise, r.Height = fit.RadialArchDown, 300, 145, 100
	_, err := fit.Fit(r)
	var tight *fit.TooTightError
	require.ErrorAs(t, err, &tight)
	assert.ErrorContains(t, err, "use a rise of at most")
	r.Rise = tight.Rise * 0.9999
	name(t, r)
}

func TestALineAsWideAsTheCircleIsAnError(t *testing.T) {
	for _, shape := range []fit.Shape{fit.VerticalArch, fit.VerticalArchDown} {
		r := request(t, "oswald", "HERNANDEZ")
		straight := name(t, r).BareInkWidth
		r.Shape, r.Radius = shape, straight/2*0.999999
		_, err := fit.Fit(r)
		var tight *fit.TooTightError
		require.ErrorAs(t, err, &tight)
		assert.InDelta(t, straight/2, tight.Smallest, 1e-6)
		r.Radius = tight.Smallest
		n := name(t, r)
		assert.InDelta(t, straight, n.BareInkWidth, 1e-9)
		assert.Less(t, n.InkHeight, straight, "the ends stay on the circle")
	}
}

// TestVerticalArchStaysNearTheTrueCurve samples the straight letters densely,
// moves every sample by the definition and looks for it on the drawn curve.
func TestVerticalArchStaysNearTheTrueCurve(t *testing.T) {
	worst := 0.0
	for _, id := range []string{"alfa-slab-one", "yellowtail", "graduate"} {
		for _, radius := range []float64{155, 350} {
			for _, shape := range []fit.Shape{fit.VerticalArch, fit.VerticalArchDown} {
				r := request(t, id, "Fordham")
				r.Height = 300 / name(t, r).BareInkWidth * 50
				straight := name(t, r)
				r.Shape, r.Radius = shape, radius
				bent := name(t, r)
				drawn := segmentsOf(bent.Ink().Flatten(5e-4))
				for _, ring := range dense(straight.Ink()) {
					for _, p := range ring {
						fall := radius - math.Sqrt(radius*radius-p.X*p.X)
						if shape == fit.VerticalArch {
							fall = -fall
						}
						worst = math.Max(worst, drawn.distance(geom.Point{X: p.X, Y: p.Y + fall}))
					}
				}
			}
		}
	}
	t.Logf("worst distance %.4f mm", worst)
	assert.Less(t, worst, 0.02)
}

// dense returns points on the curves, straight edges filled in.
func dense(p geom.Path) geom.Region {
	var out geom.Region
	for _, ring := range p.Flatten(0.002) {
		var full geom.Ring
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			n := math.Ceil(b.Sub(a).Norm() / 1.3)
			for k := range int(n) {
				full = append(full, a.Lerp(b, float64(k)/n))
			}
		}
		out = append(out, full)
	}
	return out
}

// segments are edges sorted into columns 1 mm wide.
type segments map[int][][2]geom.Point

func segmentsOf(r geom.Region) segments {
	out := segments{}
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			for x := math.Floor(math.Min(a.X, b.X)) - 1; x <= math.Max(a.X, b.X)+1; x++ {
				out[int(x)] = append(out[int(x)], [2]geom.Point{a, b})
			}
		}
	}
	return out
}

func (s segments) distance(p geom.Point) float64 {
	best := math.Inf(1)
	for _, e := range s[int(math.Floor(p.X))] {
		best = math.Min(best, pointToEdge(p, e[0], e[1]))
	}
	return best
}

func pointToEdge(p, a, b geom.Point) float64 {
	ab := b.Sub(a)
	t := 0.0
	if n := ab.Dot(ab); n > 0 {
		t = math.Min(1, math.Max(0, p.Sub(a).Dot(ab)/n))
	}
	return p.Sub(a.Lerp(b, t)).Norm()
}

func TestOutlinesWithCornersHaveTheBoxOfTheOutline(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 9))
	f := fit.NewFitter()
	for range 40 {
		r := request(t, pick(rnd, []string{"graduate", "oswald", "quantico", "archivo", "anton"}), "")
		r.Text = pick(rnd, []string{"WAVE", "KNIVZ", "AXMEN", "LOYAL", "47TH"})
		r.Shape, r.Radius = fit.Shape(rnd.IntN(5)), between(rnd, 200, 600)
		for range 1 + rnd.IntN(2) {
			r.Outlines = append(r.Outlines, outline.Layer{Width: between(rnd, 0.5, 6), Join: outline.Join(rnd.IntN(3))})
		}
		n, err := f.Name(r)
		require.NoError(t, err)
		// Large, so that the outline's grid turns short edges little, and finely
		// flattened, for a tip at the end of a curve moves with the last chord.
		const k = 16
		big := n.Ink().Transform(geom.Scale(k, k))
		settled, err := outline.Union(big.Flatten(0.001))
		require.NoError(t, err)
		layers := slices.Clone(r.Outlines)
		for i := range layers {
			layers[i].Width *= k
		}
		box := outline.ExtentOf(big.Bounds(), settled, layers)
		near := 0.001
		if r.Shape == fit.VerticalArch || r.Shape == fit.VerticalArchDown {
			near = 0.012 // of the reference, whose straight edges became chords
		}
		assert.InDelta(t, box.Width()/k, n.InkWidth, near, "%+v", r)
		assert.InDelta(t, box.Height()/k, n.InkHeight, near, "%+v", r)
		assert.InDelta(t, 0, box.Center().X/k, 0.001)
		r.Limit, r.Ladder = n.InkWidth*0.9, fit.Ladder{Width: 0.5, Height: 1}
		eased, err := f.Name(r)
		require.NoError(t, err)
		assert.LessOrEqual(t, eased.InkWidth, r.Limit)
		assert.Greater(t, eased.InkWidth, r.Limit-0.01)
	}
}
