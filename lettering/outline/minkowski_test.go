package outline

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

// scribble draws a few random rings, most of them crossing themselves and each
// other; half of the time on a coarse grid where edges overlap.
func scribble(t *rapid.T) geom.Region {
	size := rapid.SampledFrom([]int{6, 20, 100000}).Draw(t, "cells")
	at := rapid.IntRange(0, size)
	var out geom.Region
	for range rapid.IntRange(1, 3).Draw(t, "rings") {
		var ring geom.Ring
		for range rapid.IntRange(3, 9).Draw(t, "points") {
			p := geom.Point{X: float64(at.Draw(t, "x")), Y: float64(at.Draw(t, "y"))}
			ring = append(ring, p.Mul(60/float64(size)))
		}
		out = append(out, ring)
	}
	return out
}

// apart returns the area that belongs to one of two settled regions only.
func apart(t require.TestingT, a, b geom.Region) float64 {
	both, err := Union(append(append(geom.Region{}, a...), b...))
	require.NoError(t, err)
	return 2*both.Area() - a.Area() - b.Area()
}

// spread is the outline by its definition: the region, a strip along each edge
// and a wedge at each corner that the outline goes round, as rings to be merged.
// Round wedges are drawn so finely that they count as exact.
func spread(settled geom.Region, d float64, join Join) geom.Region {
	out := append(geom.Region{}, settled...)
	for _, ring := range settled {
		n := len(ring)
		for i, p := range ring {
			o, q := ring[(i+n-1)%n], ring[(i+1)%n]
			u, v := outward(o, p).Mul(d), outward(p, q).Mul(d)
			out = append(out, geom.Ring{p, p.Add(v), q.Add(v), q})
			if turn := math.Atan2(u.Cross(v), u.Dot(v)); turn > 0 {
				out = append(out, wedge(p, u, v, turn, join))
			}
		}
	}
	// All anticlockwise, so that none cancels another.
	for i := len(settled); i < len(out); i++ {
		if out[i].Area() < 0 {
			out[i] = backwards(out[i])
		}
	}
	return out
}

func outward(a, b geom.Point) geom.Point {
	v := b.Sub(a)
	return geom.Point{X: v.Y, Y: -v.X}.Mul(1 / v.Norm())
}

func wedge(p, u, v geom.Point, turn float64, join Join) geom.Ring {
	ring := geom.Ring{p, p.Add(u)}
	switch {
	case join == Round || turn < shallow:
		n := math.Ceil(turn / 0.02)
		for i := 1; i < int(n); i++ {
			ring = append(ring, p.Add(geom.Rotate(turn*float64(i)/n).Apply(u)))
		}
	case join == Mitre && 1/math.Cos(turn/2) <= MitreLimit:
		ring = append(ring, p.Add(u.Add(v).Mul(1/(1+math.Cos(turn)))))
	}
	return append(ring, p.Add(v))
}

// roundExcess bounds what arcs may add to an outline's area.
func roundExcess(settled geom.Region, d float64, join Join) float64 {
	sum := 0.0
	for _, ring := range settled {
		if join == Round {
			sum += arcExcess(ring, d)
			continue
		}
		// Only shallow corners are arcs, and each is at most a mitre.
		sum += float64(len(ring)) * d * d * (math.Tan(shallow/2) - shallow/2)
	}
	return sum
}

func convexHole(ring geom.Ring) bool { return convexTurn(ring) == 0 }

func TestOffsetIsTheUnionOfStripsAndWedges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ink, err := Union(scribble(t))
		require.NoError(t, err)
		d := rapid.Float64Range(0.05, 12).Draw(t, "d")
		joins := []Join{Round, Mitre, Bevel}
		if slices.ContainsFunc(ink, convexHole) {
			// Strips along a hole's edges may reach through thin ink and past
			// a bevel or mitre outside; Offset leaves that out. Past a round
			// join they cannot.
			joins = joins[:1]
		}
		for _, join := range joins {
			got, err := Offset(ink, d, join)
			require.NoError(t, err)
			want, err := Union(spread(ink, d, join))
			require.NoError(t, err)
			snap := 2 * (want.Perimeter() + ink.Perimeter()) / grid
			assert.LessOrEqual(t, apart(t, got, want), roundExcess(ink, d, join)+snap, "%s %g", join, d)
			assert.GreaterOrEqual(t, got.Area(), want.Area()-snap-1e-4*d*d, "%s %g", join, d)
		}
	})
}

func TestShrinkingIsGrowingTheRest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ink, err := Union(scribble(t))
		require.NoError(t, err)
		d := rapid.Float64Range(0.05, 5).Draw(t, "d")
		// The rest of a wide frame round the ink.
		frame := rectangle(-50, -50, 110, 110)
		rest := geom.Region{frame}
		for _, ring := range ink {
			rest = append(rest, backwards(ring))
		}
		grown, err := Offset(rest, d, Round)
		require.NoError(t, err)
		shrunk, err := Offset(ink, -d, Round)
		require.NoError(t, err)
		outer, err := Offset(geom.Region{frame}, d, Round)
		require.NoError(t, err)
		assert.InDelta(t, outer.Area()-grown.Area(), shrunk.Area(), 1+2*ink.Perimeter()/grid)
		assert.LessOrEqual(t, shrunk.Area(), ink.Area())
		back, err := Offset(shrunk, d, Round)
		require.NoError(t, err)
		over := apart(t, ink, back) - (ink.Area() - back.Area())
		assert.LessOrEqual(t, over, 2*roundExcess(shrunk, d, Round)+roundExcess(ink, d, Round)+2*ink.Perimeter()/grid, "opening stays inside")
	})
}
