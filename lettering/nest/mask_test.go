package nest

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

func square(x, y, side float64) geom.Ring {
	return geom.Ring{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
}

func turnedRound(r geom.Ring) geom.Ring {
	out := geom.Ring{}
	for i := range r {
		out = append(out, r[len(r)-1-i])
	}
	return out
}

func lookAt(t *testing.T, shape geom.Region, gap float64) (*nester, look) {
	parts, err := prepare([]Item{{Shape: shape}}, Stock{Width: 500, Gap: gap})
	require.NoError(t, err)
	n := newNester(roomOf(Stock{Width: 500, Gap: gap}), parts)
	return n, n.ways(0)[0]
}

// Two letters far apart with a dot above one, a counter and something inside it:
// as a mask they are one connected piece without a hole, so that one cut frees it.
func TestAMaskIsOnePieceWithoutHoles(t *testing.T) {
	big, small, dot := square(0, 0, 40), square(120, 30, 10), square(124, 70, 3)
	n, l := lookAt(t, geom.Region{big, turnedRound(square(10, 10, 20)), square(15, 15, 5), small, dot}, 2)
	m := newMask(int(130/n.cell)+2*n.pad+2, int(75/n.cell)+2*n.pad+2)
	area := 0
	for _, r := range l.taken {
		area += r.hi - r.lo + 1
		for x := r.lo; x <= r.hi; x++ {
			m.cells[r.row*m.w+x] = solid
		}
	}
	assert.Equal(t, area, flooded(m, solid, firstOf(m, solid)), "one piece")
	assert.Equal(t, m.w*m.h-area, flooded(m, open, 0), "no hole")
	// The hulls by hand: the corners of each by eye, and of the second what lies
	// above the first.
	first := geom.Ring{{X: 0, Y: 0}, {X: 40, Y: 0}, {X: 130, Y: 30}, {X: 130, Y: 40}, {X: 0, Y: 40}}.Area()
	second := geom.Ring{{X: 120, Y: 40}, {X: 130, Y: 40}, {X: 127, Y: 73}, {X: 124, Y: 73}}.Area()
	assert.InEpsilon(t, first+second, float64(area)*n.cell*n.cell, 0.06)
}

func firstOf(m *mask, kind byte) int {
	for i, c := range m.cells {
		if c == kind {
			return i
		}
	}
	return -1
}

// flooded counts the cells of a kind that are connected to one by their sides.
func flooded(m *mask, kind byte, from int) int {
	seen := map[int]bool{from: true}
	for todo := []int{from}; len(todo) > 0; {
		at := todo[0]
		todo = todo[1:]
		for _, d := range [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
			x, y := at%m.w+d[0], at/m.w+d[1]
			next := y*m.w + x
			if x >= 0 && x < m.w && y >= 0 && y < m.h && m.cells[next] == kind && !seen[next] {
				seen[next] = true
				todo = append(todo, next)
			}
		}
	}
	return len(seen)
}

// Cells within a distance of a segment, against the distance of many points of
// each cell: none that is clearly nearer may be missing, none clearly farther in.
func TestAnEdgeMarksTheCellsWithinItsReach(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range 150 {
		a, b := geom.Point{X: 5 + 8*r.Float64(), Y: 5 + 8*r.Float64()}, geom.Point{X: 5 + 8*r.Float64(), Y: 5 + 8*r.Float64()}
		reach := []float64{0, 0.3, 4}[r.IntN(3)]
		m := newMask(18, 18)
		m.edge(a, b, reach)
		for i, c := range m.cells {
			least := math.Inf(1)
			for k := range 11 * 11 {
				p := geom.Point{X: float64(i%m.w) + float64(k%11)/10, Y: float64(i/m.w) + float64(k/11)/10}
				least = math.Min(least, toEdge(p, a, b))
			}
			switch {
			case least <= reach:
				require.Equal(t, solid, c, "%v to %v reach %v cell %d", a, b, reach, i)
			case least > reach+0.1*math.Sqrt2:
				require.Equal(t, open, c, "%v to %v reach %v cell %d", a, b, reach, i)
			}
		}
	}
}

func toEdge(p, a, b geom.Point) float64 {
	d := b.Sub(a)
	t := math.Max(0, math.Min(1, p.Sub(a).Dot(d)/d.Dot(d)))
	return p.Sub(a.Add(d.Mul(t))).Norm()
}

func TestThinningStaysWithinItsTolerance(t *testing.T) {
	var ring geom.Ring
	for i := range 400 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 400)
		ring = append(ring, geom.Point{X: 50 * c, Y: 30 * s})
	}
	thinned := thin(ring, 0.05)
	assert.Less(t, len(thinned), 120)
	for _, p := range ring {
		least := math.Inf(1)
		for i, a := range thinned {
			least = math.Min(least, toEdge(p, a, thinned[(i+1)%len(thinned)]))
		}
		require.LessOrEqual(t, least, 0.05+1e-12)
	}
}

// The search by shifted words finds the same first place as trying every one.
func TestSearchFindsTheFirstFreePlace(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	for range 300 {
		const columns, rows = 150, 40
		f, grid := newField(columns), map[[2]int]bool{}
		for range 1 + r.IntN(12) {
			var runs []run
			x, y, w := r.IntN(columns-20), r.IntN(rows), 1+r.IntN(20)
			for row := range 1 + r.IntN(15) {
				runs = append(runs, run{row, 0, w - 1})
				for c := range w {
					grid[[2]int{x + c, y + row}] = true
				}
			}
			f.take(runs, x, y)
		}
		var piece []run
		for row := range 1 + r.IntN(12) {
			lo := r.IntN(20)
			piece = append(piece, run{row, lo, lo + r.IntN(60)}, run{row, lo + 70, lo + 70})
		}
		free := func(x, y int) bool {
			for _, p := range piece {
				for c := p.lo; c <= p.hi; c++ {
					if grid[[2]int{x + c, y + p.row}] {
						return false
					}
				}
			}
			return true
		}
		places, spent := columns-90, 0
		tests := testsOf(piece)
		x, y, ok := f.search(tests, places, 0, f.rows, &spent)
		require.True(t, ok)
		require.True(t, f.fits(tests, x, y))
		for v := 0; v <= y; v++ {
			for u := 0; u < places; u++ {
				if v == y && u == x {
					require.True(t, free(u, v))
					break
				}
				if free(u, v) || f.fits(tests, u, v) {
					t.Fatalf("%d, %d is free or fits, %d, %d was found", u, v, x, y)
				}
			}
		}
	}
}
