package stroke

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

func box(x0, y0, x1, y1 float64) geom.Ring {
	return geom.Ring{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// circle is a regular polygon inscribed in a circle, turned by half an edge.
func circle(x, y, radius float64, n int, clockwise bool) geom.Ring {
	ring := make(geom.Ring, n)
	for i := range ring {
		a := 2 * math.Pi * (float64(i) + 0.5) / float64(n)
		if clockwise {
			a = -a
		}
		ring[i] = geom.Point{X: x + radius*math.Cos(a), Y: y + radius*math.Sin(a)}
	}
	return ring
}

// sides returns the number of edges that keep a circle within 0.02 mm.
func sides(radius float64) int { return int(math.Ceil(math.Pi / math.Acos(1-0.02/radius))) }

// chamfered is a rectangle with its corners cut at 45 degrees.
func chamfered(w, h, cut float64, clockwise bool) geom.Ring {
	w, h = w/2, h/2
	ring := geom.Ring{
		{X: w, Y: -h + cut}, {X: w, Y: h - cut}, {X: w - cut, Y: h}, {X: -w + cut, Y: h},
		{X: -w, Y: h - cut}, {X: -w, Y: -h + cut}, {X: -w + cut, Y: -h}, {X: w - cut, Y: -h},
	}
	if clockwise {
		for i, j := 0, len(ring)-1; i < j; i, j = i+1, j-1 {
			ring[i], ring[j] = ring[j], ring[i]
		}
	}
	return ring
}

func TestStrokeOfAKnownShape(t *testing.T) {
	// The chamfers of octagonal block figures: outer and inner chamfer are
	// offsets of each other when the inner cut is outer - t·(2-√2).
	inner := func(outer, t float64) float64 { return outer - t*(2-math.Sqrt2) }
	cases := map[string]struct {
		region     geom.Region
		thin, main float64
		within     float64 // relative
	}{
		"stem":              {geom.Region{box(0, 0, 20, 200)}, 20, 20, 1e-12},
		"bar":               {geom.Region{box(0, 0, 200, 20)}, 20, 20, 1e-12},
		"ring":              {geom.Region{circle(0, 0, 100, sides(100), false), circle(0, 0, 80, sides(80), true)}, 20, 20, 1e-3},
		"ring, coarse":      {geom.Region{circle(0, 0, 100, 40, false), circle(0, 0, 80, 32, true)}, 20, 20, 4e-3},
		"octagon":           {geom.Region{chamfered(120, 200, 40, false), chamfered(80, 160, inner(40, 20), true)}, 20, 20, 1e-12},
		"tee":               {geom.Region{{{X: -10, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 180}, {X: 60, Y: 180}, {X: 60, Y: 200}, {X: -60, Y: 200}, {X: -60, Y: 180}, {X: -10, Y: 180}}}, 20, 20, 1e-12},
		"thin bar on stem":  {geom.Region{{{X: -15, Y: 0}, {X: 15, Y: 0}, {X: 15, Y: 190}, {X: 90, Y: 190}, {X: 90, Y: 200}, {X: -90, Y: 200}, {X: -90, Y: 190}, {X: -15, Y: 190}}}, 10, 30, 1e-12},
		"two stems":         {geom.Region{box(0, 0, 10, 100), box(50, 0, 80, 300)}, 10, 30, 1e-12},
		"stem, 1 unit high": {geom.Region{box(0, 0, 0.1, 1)}, 0.1, 0.1, 1e-12},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			g := Measure(c.region, 1)
			require.True(t, g.Measurable, "kept %g", g.Kept)
			assert.InEpsilon(t, c.thin, g.Thin, c.within)
			assert.InEpsilon(t, c.main, g.Main, c.within)
		})
	}
}

func TestShapeWithoutStrokesIsNotMeasurable(t *testing.T) {
	cases := map[string]geom.Region{
		"triangle": {{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 50, Y: 87}}},
		"square":   {box(0, 0, 100, 100)},
		"empty":    nil,
		"a point":  {{{X: 1, Y: 1}}},
	}
	for name, r := range cases {
		t.Run(name, func(t *testing.T) {
			g := Measure(r, 1)
			assert.False(t, g.Measurable)
			assert.Less(t, g.Kept, 0.30)
			assert.True(t, math.IsNaN(g.Thin))
			assert.True(t, math.IsNaN(g.Main))
		})
	}
}

func TestKeptShareOfAStem(t *testing.T) {
	// A stem of 20 by 200: the walls within 10 of an end meet the end first, and
	// the ends meet the walls; 360 of 440 are kept.
	g := Measure(geom.Region{box(0, 0, 20, 200)}, 0.5)
	assert.InDelta(t, 360.0/440, g.Kept, 0.003)
}

// slow is the largest ball by its definition: the walls are taken as so many
// points, 0.02 apart, and every one is looked at.
func slow(r geom.Region, p, n geom.Point) (radius, cosine float64) {
	radius = math.Inf(1)
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			steps := math.Ceil(b.Sub(a).Norm() / 0.02)
			for k := range int(steps) {
				q := a.Lerp(b, float64(k)/steps)
				v := q.Sub(p)
				if ahead := v.Dot(n); ahead > 1e-9 && v.Dot(v)/(2*ahead) < radius {
					radius = v.Dot(v) / (2 * ahead)
					cosine = -n.Dot(q.Sub(p.Add(n.Mul(radius))).Mul(1 / radius))
				}
			}
		}
	}
	return radius, cosine
}

func TestBallIsTheLargestThatFits(t *testing.T) {
	r := digit(60)
	walls := wallsOf(r)
	b := ballFinder{walls: walls, cells: newCells(walls, r.Bounds())}
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, len(walls)-1).Draw(t, "wall")
		w := walls[i]
		p := w.a.Lerp(w.b, rapid.Float64Range(0.1, 0.9).Draw(t, "share"))
		got := b.largest(i, p)
		radius, cosine := slow(r, p, w.inward)
		assert.LessOrEqual(t, got.radius, radius+1e-9)
		assert.GreaterOrEqual(t, got.radius, radius-0.03)
		// Both agree on what is opposed, but for balls at the very border.
		if math.Abs(got.cosine-opposed) > 0.02 && math.Abs(got.radius-radius) < 1e-3 {
			assert.Equal(t, cosine <= opposed, got.cosine <= opposed)
		}
	})
}

// digit is a made-up figure: a bowl on a stem with a foot, height units high.
func digit(height float64) geom.Region {
	k := height / 100
	var p geom.Path
	at := func(x, y float64) geom.Point { return geom.Point{X: x * k, Y: y * k} }
	p.MoveTo(at(10, 0))
	p.LineTo(at(60, 0))
	p.LineTo(at(60, 14))
	p.LineTo(at(42, 14))
	p.CubeTo(at(70, 22), at(72, 100), at(35, 100))
	p.CubeTo(at(0, 100), at(0, 45), at(35, 45))
	p.LineTo(at(30, 14))
	p.LineTo(at(10, 14))
	p.Close()
	p.MoveTo(at(35, 88))
	p.CubeTo(at(47, 88), at(47, 57), at(35, 57))
	p.CubeTo(at(18, 57), at(18, 88), at(35, 88))
	p.Close()
	return p.Flatten(0.02)
}

func TestStrokeGrowsWithTheShape(t *testing.T) {
	small, large := Measure(digit(50), 0.25), Measure(digit(200), 1)
	require.True(t, small.Measurable)
	assert.InEpsilon(t, 4*small.Thin, large.Thin, 0.02)
	assert.InEpsilon(t, 4*small.Main, large.Main, 0.02)
	assert.Equal(t, large, Measure(digit(200), 0), "the default step is 1/200 of the height")
}

func TestStrokeDoesNotDependOnDirection(t *testing.T) {
	r := digit(200)
	want := Measure(r, 1)
	for _, m := range []geom.Affine{geom.Translate(-500, 300), geom.Rotate(math.Pi / 2), geom.Rotate(1)} {
		got := Measure(r.Transform(m), 1)
		assert.InEpsilon(t, want.Thin, got.Thin, 1e-6)
		assert.InEpsilon(t, want.Main, got.Main, 1e-6)
	}
}

func BenchmarkStrokeOfADigit(b *testing.B) {
	r := digit(200)
	points := 0
	for _, ring := range r {
		points += len(ring)
	}
	for b.Loop() {
		Measure(r, 1)
	}
	b.ReportMetric(float64(points), "points")
}
