package outline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

// clipped cuts a convex ring along the line through p, square to n, and keeps
// the side into which n points.
func clipped(ring geom.Ring, p, n geom.Point) geom.Ring {
	var out geom.Ring
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		da, db := a.Sub(p).Dot(n), b.Sub(p).Dot(n)
		if da >= 0 {
			out = append(out, a)
		}
		if da*db < 0 {
			out = append(out, a.Lerp(b, da/(da-db)))
		}
	}
	return out
}

func TestConvexHoleShrinksToTheCommonPartOfHalfPlanes(t *testing.T) {
	at := rapid.Float64Range(-20, 20)
	rapid.Check(t, func(t *rapid.T) {
		var points []geom.Point
		for range rapid.IntRange(3, 24).Draw(t, "points") {
			p := geom.Point{X: at.Draw(t, "x"), Y: at.Draw(t, "y")}
			if rapid.Bool().Draw(t, "round") && p.Norm() > 0.1 {
				p = p.Mul(20 / p.Norm()) // many short edges
			}
			points = append(points, p)
		}
		hole, err := Union(geom.Region{geom.Hull(points)})
		require.NoError(t, err)
		if len(hole) == 0 || convexTurn(hole[0]) > 2*math.Pi+1e-9 {
			t.Skip("flat, or no longer convex on the grid")
		}
		for range 10 {
			requireInset(t, hole[0], rapid.Float64Range(0.05, 25).Draw(t, "d"))
		}
	})
}

// requireInset checks a convex ring as a hole in a plate and as a shape that
// shrinks.
func requireInset(t require.TestingT, ring geom.Ring, d float64) {
	area := insetArea(ring, d)
	plate := geom.Region{rectangle(-60, -60, 60, 60), backwards(ring)}
	got, err := Offset(plate, d, Mitre)
	require.NoError(t, err)
	snap := (480 + 8*d + geom.Region{ring}.Perimeter()) * 2 / grid
	require.InDelta(t, (120+2*d)*(120+2*d)-area, got.Area(), snap, "hole, %g", d)
	shrunk, err := Offset(geom.Region{ring}, -d, Round)
	require.NoError(t, err)
	require.InDelta(t, area, shrunk.Area(), snap, "shrunk by %g", d)
}

// insetArea is the area left of a convex ring at d or more inside all its edges.
func insetArea(ring geom.Ring, d float64) float64 {
	left := ring
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		n := outward(q, p)
		left = clipped(left, p.Add(n.Mul(d)), n)
	}
	if len(left) < 3 {
		return 0
	}
	return math.Max(0, left.Area())
}
