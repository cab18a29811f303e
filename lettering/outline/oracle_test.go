package outline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

func ringOf(xy ...float64) geom.Ring {
	var ring geom.Ring
	for i := 0; i < len(xy); i += 2 {
		ring = append(ring, geom.Point{X: xy[i], Y: xy[i+1]})
	}
	return ring
}

func rectangle(x0, y0, x1, y1 float64) geom.Ring { return ringOf(x0, y0, x1, y0, x1, y1, x0, y1) }

func regular(n int, radius, start float64) geom.Ring {
	ring := make(geom.Ring, n)
	for i := range ring {
		s, c := math.Sincos(start + 2*math.Pi*float64(i)/float64(n))
		ring[i] = geom.Point{X: radius * c, Y: radius * s}
	}
	return ring
}

func backwards(ring geom.Ring) geom.Ring {
	out := make(geom.Ring, len(ring))
	for i, p := range ring {
		out[len(ring)-1-i] = p
	}
	return out
}

// arcExcess is how much a round join's edges, which touch the circle from
// outside, may add to the area at most, over all the corners of a ring that the
// outline goes round.
func arcExcess(ring geom.Ring, d float64) float64 {
	half := math.Acos(d / (d + Tolerance))
	return d * d * convexTurn(ring) / 2 * (math.Tan(half)/half - 1)
}

func convexTurn(ring geom.Ring) float64 {
	sum, n := 0.0, len(ring)
	for i, p := range ring {
		u, v := p.Sub(ring[(i+n-1)%n]), ring[(i+1)%n].Sub(p)
		sum += math.Max(0, math.Atan2(u.Cross(v), u.Dot(v)))
	}
	return sum
}

// Areas and perimeters of outlines. Round: Steiner's formula A + P·r + π·r² for
// convex shapes (published widely, among others in R. Schneider, "Convex
// Bodies: The Brunn-Minkowski Theory", ch. 4; from memory). For reflex corners
// and for mitres the bracket is Σ φ/2 or Σ tan(φ/2) over the convex turns less
// Σ tan(φ/2) over the reflex ones, derived by hand and worked out to six digits
// apart from this package.
func TestOffsetHasTheAreaOfSteinersFormula(t *testing.T) {
	bar := rectangle(0, 0, 20, 200)
	cases := map[string]struct {
		ring         geom.Ring
		d            float64
		round, mitre float64
		roundP, mitP float64
	}{
		"unit square": {rectangle(0, 0, 1, 1), 1, 5 + math.Pi, 9, 4 + 2*math.Pi, 12},
		"bar 3.175":   {bar, 3.175, 5428.669217, 5437.3225, 459.949113, 465.4},
		"bar 6.35":    {bar, 6.35, 6920.676870, 6955.29, 479.898227, 490.8},
		"3-4-5":       {ringOf(0, 0, 4, 0, 0, 3), 1, 18 + math.Pi, 24, 12 + 2*math.Pi, 24},
		"equilateral": {ringOf(0, 0, 100, 0, 50, 50*math.Sqrt(3)), 5, 5908.666835, 5960.030829, 331.415927, 351.961524},
		"hexagon":     {regular(6, 10, 0), 2.5, 429.442575, 431.458256, 75.707963, 77.320508},
		"L":           {ringOf(0, 0, 2, 0, 2, 1, 1, 1, 1, 2, 0, 2), 0.1, 3.829270, 3.84, 8.585398, 8.8},
		"T":           {ringOf(-10, 0, 10, 0, 10, 80, 30, 80, 30, 100, -30, 100, -30, 80, -10, 80), 4, 4123.398224, 4144, 341.699112, 352},
		"plus":        {ringOf(10, 0, 20, 0, 20, 10, 30, 10, 30, 20, 20, 20, 20, 30, 10, 30, 10, 20, 0, 20, 0, 10, 10, 10), 2, 749.132741, 756, 129.132741, 136},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			settled, err := Union(geom.Region{c.ring})
			require.NoError(t, err)
			snap := settled.Perimeter() / grid // what rounding to the grid may do to the area

			round, err := Offset(settled, c.d, Round)
			require.NoError(t, err)
			assert.GreaterOrEqual(t, round.Area(), c.round-snap)
			assert.LessOrEqual(t, round.Area(), c.round+arcExcess(c.ring, c.d)+snap)
			assert.InDelta(t, c.roundP, round.Perimeter(), 2*arcExcess(c.ring, c.d)/c.d+0.01)

			mitred, err := Offset(settled, c.d, Mitre)
			require.NoError(t, err)
			assert.InDelta(t, c.mitre, mitred.Area(), snap)
			assert.InDelta(t, c.mitP, mitred.Perimeter(), 0.005)
			assert.Len(t, mitred[0], len(c.ring))
		})
	}
}

func TestInwardOffset(t *testing.T) {
	cases := map[string]struct {
		ring geom.Ring
		d    float64
		area float64
	}{
		"100 x 60 by 5":   {rectangle(0, 0, 100, 60), -5, 90 * 50},
		"3-4-5 by half":   {ringOf(0, 0, 4, 0, 0, 3), -0.5, 1.5}, // inradius 1: similar at half size
		"3-4-5 vanishes":  {ringOf(0, 0, 4, 0, 0, 3), -1.01, 0},
		"square vanishes": {rectangle(0, 0, 10, 10), -6, 0},
		// Two squares of 6, each with a point into the mouth of the bar between
		// them: 2·∫(2 - √(4 - t²)) dt over 0..1.
		"dumb-bell in two": {ringOf(0, 0, 10, 0, 10, 4, 20, 4, 20, 0, 30, 0, 30, 10, 20, 10, 20, 6, 10, 6, 10, 10, 0, 10), -2,
			2 * (36 + 4 - math.Sqrt(3) - 2*math.Pi/3)},
		"nothing to shrink": {nil, -1, 0},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			settled, err := Union(geom.Region{c.ring})
			require.NoError(t, err)
			got, err := Offset(settled, c.d, Round)
			require.NoError(t, err)
			assert.LessOrEqual(t, got.Area(), c.area+0.01)
			assert.GreaterOrEqual(t, got.Area(), c.area-0.03) // the arcs about reflex corners
		})
	}
}

func TestCounterClosesAtItsInscribedRadius(t *testing.T) {
	// A ring of radii 30 and 10: outlined by r, π((30+r)² - (10-r)²) while r is
	// under 10, then the hole is gone and π(30+r)² is left.
	o := geom.Region{regular(400, 30, 0), backwards(regular(400, 10, 0))}
	for _, d := range []float64{1, 5, 9, 9.9} {
		got, err := Offset(o, d, Round)
		require.NoError(t, err)
		assert.Len(t, got, 2, "d = %g", d)
		assert.InEpsilon(t, math.Pi*((30+d)*(30+d)-(10-d)*(10-d)), got.Area(), 2e-4)
	}
	got, err := Offset(o, 10.1, Round)
	require.NoError(t, err)
	assert.Len(t, got, 1)
	assert.InEpsilon(t, math.Pi*40.1*40.1, got.Area(), 2e-4)
}

func TestCornersOfASquare(t *testing.T) {
	square, err := Union(geom.Region{rectangle(0, 0, 10, 10)})
	require.NoError(t, err)

	mitred, err := Offset(square, 2, Mitre)
	require.NoError(t, err)
	assert.Equal(t, geom.Region{ringOf(-2, -2, 12, -2, 12, 12, -2, 12)}, mitred)

	bevelled, err := Offset(square, 2, Bevel)
	require.NoError(t, err)
	assert.Equal(t, geom.Region{ringOf(-2, 0, 0, -2, 10, -2, 12, 0, 12, 10, 10, 12, 0, 12, -2, 10)}, bevelled)

	same, err := Offset(square, 0, Round)
	require.NoError(t, err)
	assert.Equal(t, square, same)
}

// star is a star with n points; point is the angle at each tip, in radians.
func star(n int, radius, point float64) geom.Ring {
	half := math.Pi / float64(n)
	// In the triangle centre, tip, notch: law of sines.
	notch := radius * math.Sin(point/2) / math.Sin(math.Pi-half-point/2)
	ring := make(geom.Ring, 0, 2*n)
	for i := range n {
		at := math.Pi/2 + 2*half*float64(i)
		s, c := math.Sincos(at)
		ring = append(ring, geom.Point{X: radius * c, Y: radius * s})
		s, c = math.Sincos(at + half)
		ring = append(ring, geom.Point{X: notch * c, Y: notch * s})
	}
	return ring
}

func TestMitreOfAStarStopsAtTheLimit(t *testing.T) {
	// A tip with angle a is mitred to 1/sin(a/2) distances; the limit of 4 is
	// met at a = 2·asin(1/4) = 28.955 degrees.
	const d = 2
	limit := 2 * math.Asin(1.0/MitreLimit)
	for _, point := range []float64{limit + 0.01, 0.8, math.Pi / 5} {
		s, err := Union(geom.Region{star(5, 50, point)})
		require.NoError(t, err)
		got, err := Offset(s, d, Mitre)
		require.NoError(t, err)
		assert.Len(t, got[0], 10)
		assert.InDelta(t, 50+d/math.Sin(point/2), got.Bounds().Max.Y, 0.005)
	}
	for _, point := range []float64{limit - 0.01, 0.3, 0.1} {
		s, err := Union(geom.Region{star(5, 50, point)})
		require.NoError(t, err)
		got, err := Offset(s, d, Mitre)
		require.NoError(t, err)
		assert.Len(t, got[0], 15) // two corners for every tip
		assert.InDelta(t, 50+d*math.Sin(point/2), got.Bounds().Max.Y, 0.005)
		bevelled, err := Offset(s, d, Bevel)
		require.NoError(t, err)
		assert.Equal(t, bevelled, got)
	}
}

func TestShallowCornersAreRoundAtEveryJoin(t *testing.T) {
	// A circle drawn with 60 edges turns by 6 degrees a corner: a bevel must not
	// cut into it, and a mitre not stick out where the axes cross it.
	wheel, err := Union(geom.Region{regular(60, 20, 0)})
	require.NoError(t, err)
	round, err := Offset(wheel, 6, Round)
	require.NoError(t, err)
	for _, join := range []Join{Mitre, Bevel} {
		got, err := Offset(wheel, 6, join)
		require.NoError(t, err)
		assert.Equal(t, round, got)
	}
	assert.InDelta(t, 52, round.Bounds().Width(), 2.0/grid)
	coarse, err := Union(geom.Region{regular(30, 20, 0)}) // 12 degrees: corners
	require.NoError(t, err)
	bevelled, err := Offset(coarse, 6, Bevel)
	require.NoError(t, err)
	assert.InDelta(t, 40+12*math.Cos(math.Pi/30), bevelled.Bounds().Width(), 2.0/grid)
}
