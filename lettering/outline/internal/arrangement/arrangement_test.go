package arrangement

import (
	"math/big"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func ring(xy ...int32) []Point {
	var out []Point
	for i := 0; i < len(xy); i += 2 {
		out = append(out, Point{xy[i], xy[i+1]})
	}
	return out
}

func traced(t require.TestingT, e *Engine, fill Fill, rings ...[]Point) [][]Point {
	e.Reset()
	for _, r := range rings {
		require.NoError(t, e.Add(r))
	}
	out, err := e.Trace(fill)
	require.NoError(t, err)
	return out
}

func TestFillRules(t *testing.T) {
	once, back := ring(0, 0, 9, 0, 9, 9, 0, 9), ring(20, 0, 20, 9, 29, 9, 29, 0)
	var e Engine
	both := [][]Point{once, ring(20, 0, 29, 0, 29, 9, 20, 9)}
	assert.Equal(t, both, traced(t, &e, NonZero, once, back))
	assert.Equal(t, both[:1], traced(t, &e, Positive, once, back))
	assert.Equal(t, both[1:], traced(t, &e, Negative, once, back))
	assert.Equal(t, both[:1], traced(t, &e, func(w int32) bool { return w == 2 }, once, once, back))
}

func TestCrossingSquaresBecomeOneRing(t *testing.T) {
	var e Engine
	got := traced(t, &e, NonZero, ring(0, 0, 4, 0, 4, 4, 0, 4), ring(2, 2, 6, 2, 6, 6, 2, 6))
	assert.Equal(t, [][]Point{ring(0, 0, 4, 0, 4, 2, 6, 2, 6, 6, 2, 6, 2, 4, 0, 4)}, got)
	assert.Equal(t, 1, e.Rounds())
}

func TestUnitDiagonalsSettle(t *testing.T) {
	var e Engine
	got := traced(t, &e, NonZero, ring(0, 0, 1, 1, 0, 1), ring(1, 0, 0, 1, 1, 1))
	var area int64
	for _, r := range got {
		area += twice(r)
	}
	assert.LessOrEqual(t, area, int64(2))
	assert.LessOrEqual(t, e.Rounds(), 3)
}

func twice(r []Point) int64 {
	var sum int64
	for i, p := range r {
		q := r[(i+1)%len(r)]
		sum += int64(p.X)*int64(q.Y) - int64(p.Y)*int64(q.X)
	}
	return sum
}

func TestPointsOutsideTheGridAreRefused(t *testing.T) {
	var e Engine
	for _, p := range []Point{{Limit + 1, 0}, {-Limit - 1, 0}, {0, Limit + 1}, {0, -Limit - 1}} {
		require.ErrorIs(t, e.Add([]Point{{0, 0}, {1, 0}, p}), ErrRange)
	}
	whole := ring(-Limit, -Limit, Limit, -Limit, Limit, Limit, -Limit, Limit)
	slant := ring(-Limit, -Limit, Limit, Limit-1, Limit, Limit, -Limit, -Limit+1)
	got := traced(t, &e, NonZero, whole, slant, ring(0, -Limit, 1, Limit, -1, Limit))
	assert.Equal(t, [][]Point{whole}, got)
}

// The nearest grid point to a crossing, by fractions of big integers.
func TestMeetIsTheNearestGridPoint(t *testing.T) {
	coordinate := rapid.OneOf(rapid.Int32Range(-20, 20), rapid.Int32Range(-Limit, Limit))
	point := rapid.Custom(func(t *rapid.T) Point { return Point{coordinate.Draw(t, "x"), coordinate.Draw(t, "y")} })
	rapid.Check(t, func(t *rapid.T) {
		a, b, c, d := point.Draw(t, "a"), point.Draw(t, "b"), point.Draw(t, "c"), point.Draw(t, "d")
		sa, sb := orient(c, d, a), orient(c, d, b)
		if !opposite(sa, sb) {
			t.Skip("does not cross")
		}
		got := meet(a, b, sa, sb)
		for _, axis := range [][3]int32{{a.X, b.X, got.X}, {a.Y, b.Y, got.Y}} {
			// off = a + (b-a)·sa/(sa-sb) - got, at most one half
			share := big.NewRat(1, 1).SetFrac(big.NewInt(sa), big.NewInt(sa-sb))
			off := new(big.Rat).Mul(share, new(big.Rat).SetInt64(int64(axis[1])-int64(axis[0])))
			off.Add(off, new(big.Rat).SetInt64(int64(axis[0])-int64(axis[2])))
			require.LessOrEqual(t, off.Abs(off).Cmp(big.NewRat(1, 2)), 0)
		}
		require.True(t, between(a, got, b), "cutting there does not lengthen the edge")
	})
}

// squares is the sum of squared lengths of the edges.
func squares(edges []edge) (sum int64) {
	for _, one := range edges {
		dx, dy := vector(one.a, one.b)
		sum += dx*dx + dy*dy
	}
	return sum
}

// What the proof in the package comment rests on.
func TestCuttingNeverLengthensEdges(t *testing.T) {
	at := rapid.Int32Range(0, 12)
	wide := rapid.Int32Range(0, 30000)
	rapid.Check(t, func(t *rapid.T) {
		var e Engine
		axis := at
		if rapid.Bool().Draw(t, "wide") {
			axis = wide
		}
		var r []Point
		for range rapid.IntRange(3, 40).Draw(t, "points") {
			r = append(r, Point{axis.Draw(t, "x"), axis.Draw(t, "y")})
		}
		require.NoError(t, e.Add(r))
		e.merge()
		for {
			sum, count := squares(e.edges), len(e.edges)
			if e.sweep(); len(e.cuts) == 0 {
				break
			}
			e.apply()
			e.merge()
			now := squares(e.edges)
			require.True(t, now < sum || now == sum && len(e.edges) > count, "sum %d to %d, edges %d to %d", sum, now, count, len(e.edges))
		}
		requirePlanar(t, e.edges)
	})
}

// requirePlanar compares all pairs: no crossing, no vertex on or next to an
// edge.
func requirePlanar(t require.TestingT, edges []edge) {
	for i := range edges {
		for j := range edges {
			p, q := edges[i], edges[j]
			qa, qb := orient(p.a, p.b, q.a), orient(p.a, p.b, q.b)
			require.False(t, inPixel(p.a, p.b, q.a, qa) || inPixel(p.a, p.b, q.b, qb))
			require.False(t, opposite(qa, qb) && opposite(orient(q.a, q.b, p.a), orient(q.a, q.b, p.b)))
		}
	}
}

func TestEnginesWorkSideBySide(t *testing.T) {
	star := ring(0, 100, 59, -81, -95, 31, 95, 31, -59, -81)
	want := traced(t, new(Engine), NonZero, star)
	require.Len(t, want, 1)
	require.Len(t, want[0], 10)
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			var e Engine
			for range 50 {
				assert.Equal(t, want, traced(t, &e, NonZero, star))
			}
		})
	}
	wait.Wait()
}
