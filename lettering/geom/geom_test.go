package geom_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

func curve(t *rapid.T) geom.Path {
	coordinate := rapid.Float64Range(-100, 100)
	point := func(name string) geom.Point {
		return geom.Point{X: coordinate.Draw(t, name+".x"), Y: coordinate.Draw(t, name+".y")}
	}
	var p geom.Path
	p.MoveTo(point("start"))
	p.QuadTo(point("q1"), point("q2"))
	p.CubeTo(point("c1"), point("c2"), point("c3"))
	p.LineTo(point("l"))
	p.Close()
	return p
}

func TestBoundsAreThoseOfTheCurveNotOfItsHandles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := curve(t)
		exact, flat := p.Bounds(), p.Flatten(1e-4).Bounds()
		for _, pair := range [][2]float64{{exact.Min.X, flat.Min.X}, {exact.Min.Y, flat.Min.Y}, {flat.Max.X, exact.Max.X}, {flat.Max.Y, exact.Max.Y}} {
			assert.LessOrEqual(t, pair[0], pair[1]+1e-9, "flattened points lie on the curve")
			assert.InDelta(t, pair[0], pair[1], 1e-4)
		}
	})
}

func TestFlattenStaysWithinItsTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := curve(t)
		const tolerance = 0.05
		coarse, fine := p.Flatten(tolerance), p.Flatten(tolerance/200)
		for _, q := range fine[0] {
			require.LessOrEqual(t, distance(coarse[0], q), tolerance*1.01)
		}
	})
}

func distance(ring geom.Ring, p geom.Point) float64 {
	best := math.Inf(1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		d := b.Sub(a)
		share := 0.0
		if l := d.Dot(d); l > 0 {
			share = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l))
		}
		best = math.Min(best, p.Sub(a.Lerp(b, share)).Norm())
	}
	return best
}

func TestAffineMapsComposeInOrder(t *testing.T) {
	m := geom.Rotate(math.Pi / 2).Then(geom.Translate(10, 0)).Then(geom.Scale(2, 3))
	got := m.Apply(geom.Point{X: 1, Y: 0})
	assert.InDelta(t, 20, got.X, 1e-12)
	assert.InDelta(t, 3, got.Y, 1e-12)
	assert.Equal(t, geom.Point{X: 4, Y: 5}, geom.Identity().Apply(geom.Point{X: 4, Y: 5}))
}

func TestAreaPerimeterAndContains(t *testing.T) {
	ring := geom.Region{
		{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 0, Y: 10}},
		{{X: 2, Y: 2}, {X: 2, Y: 8}, {X: 8, Y: 8}, {X: 8, Y: 2}},
	}
	assert.Equal(t, 64.0, ring.Area())
	assert.Equal(t, 64.0, ring.Perimeter())
	assert.True(t, ring.Contains(geom.Point{X: 1, Y: 5}))
	assert.False(t, ring.Contains(geom.Point{X: 5, Y: 5}), "the hole")
	assert.False(t, ring.Contains(geom.Point{X: 11, Y: 5}))
	assert.Equal(t, ring, ring.Path().Flatten(0.1))
	moved := ring.Transform(geom.Translate(5, -5))
	assert.Equal(t, geom.Rect{Min: geom.Point{X: 5, Y: -5}, Max: geom.Point{X: 15, Y: 5}}, moved.Bounds())
}

func TestHullHoldsEveryPointAndIsConvex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 40).Draw(t, "n")
		points := make([]geom.Point, n)
		for i := range points {
			points[i] = geom.Point{X: float64(rapid.IntRange(-9, 9).Draw(t, "x")), Y: float64(rapid.IntRange(-9, 9).Draw(t, "y"))}
		}
		hull := geom.Hull(points)
		if len(hull) < 3 {
			return // all points on one line
		}
		for i, a := range hull {
			b, c := hull[(i+1)%len(hull)], hull[(i+2)%len(hull)]
			require.Positive(t, b.Sub(a).Cross(c.Sub(b)), "turns left everywhere")
			for _, p := range points {
				require.GreaterOrEqual(t, b.Sub(a).Cross(p.Sub(a)), 0.0)
			}
		}
	})
}

// Rows of Machinery's Handbook, 31st ed., p. 79 (c = 16, h = 6 gives 8 1/3),
// and of exact algebra for the names on an arc that shops ask for.
func TestRadiusAndSagittaMeetTheHandbook(t *testing.T) {
	for _, row := range []struct{ chord, rise, radius float64 }{
		{16, 6, 25.0 / 3}, {21, 6, 12.1875}, {280, 25, 404.5}, {300, 30, 390}, {280, 40, 265}, {304.8, 38.1, 323.85}, {100, 50, 50},
	} {
		assert.InDelta(t, row.radius, geom.RadiusOf(row.chord, row.rise), 1e-12*row.radius)
		assert.InDelta(t, row.rise, geom.Sagitta(row.radius, row.chord), 1e-9)
	}
	// Machinery's Handbook, 31st ed., p. 79: r = 60 in, h = 8 in has the chord
	// 59.86 in (printed; 59.866518 computed).
	assert.InDelta(t, 8, geom.Sagitta(60, 59.866518), 1e-6)
	assert.True(t, math.IsNaN(geom.Sagitta(10, 21)), "a chord longer than the diameter")
}

func TestSagittaInvertsRadius(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := rapid.Float64Range(1, 1000).Draw(t, "chord")
		rise := chord * rapid.Float64Range(1e-6, 0.499).Draw(t, "share")
		assert.InEpsilon(t, rise, geom.Sagitta(geom.RadiusOf(chord, rise), chord), 1e-9)
	})
}
