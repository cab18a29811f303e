package ink_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/outline"
)

func pt(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }

func polygon(points ...geom.Point) geom.Path { return geom.Region{geom.Ring(points)}.Path() }

func square(x, y, half float64) geom.Path {
	return polygon(pt(x-half, y-half), pt(x+half, y-half), pt(x+half, y+half), pt(x-half, y+half))
}

// disc is a circle of n quadratic arcs, close enough to round: its radius
// errs by less than 1e-6 of it.
func disc(x, y, r float64) geom.Path {
	const n = 64
	var p geom.Path
	at := func(a, k float64) geom.Point { return pt(x+k*r*math.Cos(a), y+k*r*math.Sin(a)) }
	p.MoveTo(at(0, 1))
	for i := range n {
		a := 2 * math.Pi * (float64(i) + 0.5) / n
		p.QuadTo(at(a, 1/math.Cos(math.Pi/n)), at(2*math.Pi*float64(i+1)/n, 1))
	}
	p.Close()
	return p
}

func anyPoint(t *rapid.T, name string) geom.Point {
	return pt(rapid.Float64Range(-500, 500).Draw(t, name+" x"), rapid.Float64Range(-500, 500).Draw(t, name+" y"))
}

func anyPath(t *rapid.T) geom.Path {
	var p geom.Path
	p.MoveTo(anyPoint(t, "start"))
	for range rapid.IntRange(2, 6).Draw(t, "pieces") {
		switch rapid.IntRange(0, 2).Draw(t, "op") {
		case 0:
			p.LineTo(anyPoint(t, "line"))
		case 1:
			p.QuadTo(anyPoint(t, "quad"), anyPoint(t, "end"))
		default:
			p.CubeTo(anyPoint(t, "first"), anyPoint(t, "second"), anyPoint(t, "end"))
		}
	}
	p.Close()
	return p
}

func TestMostIsTheFarthestPointOfTheCurves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path := anyPath(t)
		g := ink.New(path, 0.1)
		angle := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "angle")
		u := pt(math.Cos(angle), math.Sin(angle))
		want := math.Inf(-1)
		for _, ring := range path.Flatten(1e-4) {
			for _, p := range ring {
				want = math.Max(want, p.Dot(u))
			}
		}
		got := g.Most(u.X, u.Y)
		assert.InDelta(t, want, got, 2e-4)
		assert.GreaterOrEqual(t, got, want-1e-9, "never short of a point on the curve")
	})
}

func TestContoursThatEncloseNothingAreLeftOut(t *testing.T) {
	var p geom.Path
	p.MoveTo(pt(900, 900))
	p.Close()
	p = append(p, square(0, 0, 10)...)
	p.MoveTo(pt(-900, 0))
	p.LineTo(pt(-900, 50))
	p.Close()
	g := ink.New(p, 0.01)
	assert.Equal(t, geom.Rect{Min: pt(-10, -10), Max: pt(10, 10)}, g.Box)
	assert.Equal(t, 10.0, g.Most(1, 0))
	assert.Equal(t, g.Box, g.Draw(nil, ink.Warp{Map: geom.Identity()}, 0.01).Bounds())
	assert.True(t, ink.New(nil, 1).Empty())
}

func TestAbutOfDiscsAndSquares(t *testing.T) {
	cases := []struct {
		name string
		a, b geom.Path
		gap  float64
		want float64
	}{
		{"two discs", disc(0, 0, 30), disc(0, 0, 20), 5, 55},
		{"discs at different heights", disc(0, 0, 30), disc(0, 33, 20), 5, 44}, // 55² = 33² + 44²
		{"no gap", disc(0, 0, 30), disc(0, 30, 20), 0, 40},
		{"squares", square(0, 0, 10), square(0, 0, 10), 3, 23},
		{"corner to corner", square(0, 0, 10), square(0, 23, 10), 5, 24}, // 3, 4, 5
		{"squares without a gap", square(0, 0, 10), square(0, 5, 10), 0, 20},
		{"too far apart in height", square(0, 0, 10), square(0, 40, 10), 5, math.Inf(-1)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := ink.Abut(ink.New(c.a, 1e-4), ink.New(c.b, 1e-4), c.gap)
			if math.IsInf(c.want, -1) {
				assert.Equal(t, c.want, got)
				return
			}
			assert.InDelta(t, c.want, got, 2e-3)
		})
	}
}

func TestAbutLeavesExactlyTheGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyPath(t), anyPath(t)
		gap := rapid.Float64Range(0.5, 80).Draw(t, "gap")
		ga, gb := ink.New(a, 0.01), ink.New(b, 0.01)
		dx := ink.Abut(ga, gb, gap)
		if math.IsInf(dx, -1) {
			return
		}
		var f ink.Finder
		distance := func(x float64) float64 {
			return f.Gap(ga, geom.Identity(), gb, geom.Translate(x, 0), math.Inf(1))
		}
		assert.InDelta(t, gap, distance(dx), 1e-6)
		further := rapid.Float64Range(0.01, 300).Draw(t, "further")
		assert.Greater(t, distance(dx+further), gap, "outermost")
	})
}

func TestGapOfTurnedSquares(t *testing.T) {
	a, b := ink.New(square(0, 0, 10), 0.01), ink.New(square(0, 0, 10), 0.01)
	var f ink.Finder
	inf := math.Inf(1)
	turned := geom.Rotate(math.Pi / 4)
	assert.InDelta(t, 50-10-10*math.Sqrt2, f.Gap(a, geom.Identity(), b, turned.Then(geom.Translate(50, 0)), inf), 1e-9)
	assert.InDelta(t, 5, f.Gap(a, geom.Identity(), b, geom.Translate(23, 24), inf), 1e-9)
	assert.Zero(t, f.Gap(a, geom.Identity(), b, geom.Translate(15, 3), inf), "crossing")
	assert.Zero(t, f.Gap(a, geom.Identity(), b, geom.Translate(20, 0), inf), "touching")
	assert.Equal(t, 2.0, f.Gap(a, geom.Identity(), b, geom.Translate(23, 0), 2), "no nearer than is known")
	assert.Equal(t, inf, f.Gap(a, geom.Identity(), ink.New(nil, 1), geom.Identity(), inf))
}

func TestGapIsTheDistanceOfDensePoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyPath(t), anyPath(t)
		ma := geom.Rotate(rapid.Float64Range(-1, 1).Draw(t, "turn")).Then(geom.Scale(0.1, 0.1))
		mb := geom.Scale(0.1, 0.1).Then(geom.Translate(rapid.Float64Range(60, 200).Draw(t, "x"), 0))
		var f ink.Finder
		got := f.Gap(ink.New(a, 0.02), ma, ink.New(b, 0.02), mb, math.Inf(1))
		if got == 0 {
			return
		}
		ra, rb := a.Transform(ma).Flatten(0.01), b.Transform(mb).Flatten(0.01)
		assert.InDelta(t, math.Min(toEdges(ra, rb), toEdges(rb, ra)), got, 0.03)
	})
}

// toEdges is the smallest distance of the corners of a to the edges of b.
func toEdges(a, b geom.Region) float64 {
	best := math.Inf(1)
	for _, ring := range b {
		for i, p := range ring {
			for _, other := range a {
				for _, o := range other {
					best = math.Min(best, near(o, p, ring[(i+1)%len(ring)]))
				}
			}
		}
	}
	return best
}

func near(p, a, b geom.Point) float64 {
	ab := b.Sub(a)
	n := ab.Dot(ab)
	if n == 0 {
		return p.Sub(a).Norm()
	}
	return p.Sub(a.Lerp(b, math.Min(1, math.Max(0, p.Sub(a).Dot(ab)/n)))).Norm()
}

func TestOuterOfASquare(t *testing.T) {
	const d = 3
	reach := func(p geom.Path, turn float64, join outline.Join) float64 {
		g := ink.New(p, 0.01)
		return g.Outer(ink.Warp{Map: geom.Rotate(turn)}, pt(1, 0), []ink.Offset{{Distance: d, Join: join}})
	}
	clockwise := polygon(pt(-10, -10), pt(-10, 10), pt(10, 10), pt(10, -10))
	for name, p := range map[string]geom.Path{"anticlockwise": square(0, 0, 10), "clockwise": clockwise} {
		t.Run(name, func(t *testing.T) {
			diagonal := 10 * math.Sqrt2
			assert.InDelta(t, 13, reach(p, 0, outline.Round), 1e-12)
			assert.InDelta(t, 13, reach(p, 0, outline.Mitre), 1e-12)
			assert.InDelta(t, 13, reach(p, 0, outline.Bevel), 1e-12)
			assert.InDelta(t, diagonal+d, reach(p, math.Pi/4, outline.Round), 1e-9)
			assert.InDelta(t, diagonal+d*math.Sqrt2, reach(p, math.Pi/4, outline.Mitre), 1e-9)
			assert.InDelta(t, diagonal+d/math.Sqrt2, reach(p, math.Pi/4, outline.Bevel), 1e-9)
		})
	}
	// A spike of 2·atan(1/10) is sharper than the mitre limit of 4 allows.
	spike := polygon(pt(0, -10), pt(100, 0), pt(0, 10))
	blunt := polygon(pt(0, -40), pt(100, 0), pt(0, 40))
	half := math.Atan2(10, 100)
	assert.InDelta(t, 100+d*math.Sin(half), reach(spike, 0, outline.Mitre), 1e-9, "bevelled")
	assert.InDelta(t, 100+d/math.Sin(math.Atan2(40, 100)), reach(blunt, 0, outline.Mitre), 1e-9)
	// All joins agree on a smooth curve.
	for _, join := range []outline.Join{outline.Round, outline.Mitre, outline.Bevel} {
		assert.InDelta(t, 33, reach(disc(0, 0, 30), 0.3, join), 1e-3)
	}
}

func TestACornerInsideOtherInkHasNoTip(t *testing.T) {
	p := append(square(0, 0, 10), polygon(pt(-5, -1), pt(8, 0), pt(-5, 1))...)
	g := ink.New(p, 0.01)
	got := g.Outer(ink.Warp{Map: geom.Identity()}, pt(1, 0), []ink.Offset{{Distance: 3, Join: outline.Mitre}})
	assert.InDelta(t, 13, got, 1e-9)
}

func TestOffsetsAddUp(t *testing.T) {
	got := ink.Offsets([]outline.Layer{{Width: 2}, {Width: 3, Join: outline.Bevel}})
	assert.Equal(t, []ink.Offset{{Distance: 2}, {Distance: 5, Join: outline.Bevel}}, got)
}

func TestRiseIsTheCircle(t *testing.T) {
	for _, x := range []float64{0, 0.001, 30, -120, 299} {
		want := math.Sqrt(300*300-x*x) - 300
		assert.InDelta(t, want, ink.Rise(300, x), 1e-9)
		assert.InDelta(t, -want, ink.Rise(-300, x), 1e-9)
		const e = 1e-4
		slope := (ink.Rise(300, x+e) - ink.Rise(300, x-e)) / (2 * e)
		assert.InDelta(t, slope, ink.Slope(300, x), 1e-4*(1+math.Abs(slope)))
		assert.InDelta(t, -slope, ink.Slope(-300, x), 1e-4*(1+math.Abs(slope)))
	}
	assert.Equal(t, -300.0, ink.Rise(300, 500), "beyond the circle")
	assert.Zero(t, ink.Rise(0, 40))
	assert.Zero(t, ink.Slope(0, 40))
}

func TestABentStemStaysUprightAndABarBecomesAnArc(t *testing.T) {
	g := ink.New(polygon(pt(-100, 0), pt(100, 0), pt(100, 40), pt(-100, 40)), 0.01)
	drawn := g.Draw(nil, ink.Warp{Map: geom.Identity(), Bend: 250}, 0.004)
	box := drawn.Bounds()
	assert.Equal(t, -100.0, box.Min.X)
	assert.Equal(t, 100.0, box.Max.X)
	assert.InDelta(t, 40, box.Max.Y, 0.004)
	assert.InDelta(t, math.Sqrt(250*250-100*100)-250, box.Min.Y, 1e-9)
	for _, ring := range drawn.Flatten(0.001) {
		for _, p := range ring {
			if math.Abs(p.X) < 99.999 {
				r := math.Hypot(p.X, p.Y+250)
				onTop := math.Hypot(p.X, p.Y-40+250)
				assert.Less(t, math.Min(math.Abs(r-250), math.Abs(onTop-250)), 0.006)
			}
		}
	}
}
