package outline

import (
	"cmp"
	"encoding/json"
	"math"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline/internal/arrangement"
)

// The areas in testdata/unions.json were computed by another library; the file
// names it and its version, the script beside it made the file.
func TestUnionAndOffsetAgreeWithGEOS(t *testing.T) {
	data, err := os.ReadFile("testdata/unions.json")
	require.NoError(t, err)
	var file struct {
		Source string
		Cases  []struct {
			Size, Area, D, Grown, Shrunk float64
			Rings                        [][]float64
		}
	}
	require.NoError(t, json.Unmarshal(data, &file))
	require.Len(t, file.Cases, 200)
	require.Contains(t, file.Source, "GEOS")
	for i, c := range file.Cases {
		var ink geom.Region
		for _, xy := range c.Rings {
			ink = append(ink, ringOf(xy...))
		}
		settled, err := Union(ink)
		require.NoError(t, err, "case %d", i)
		snap := 2 * settled.Perimeter() / grid
		assert.InDelta(t, c.Area, settled.Area(), snap+1e-6, "case %d", i)

		grown, err := Offset(settled, c.D, Round)
		require.NoError(t, err)
		more := roundExcess(settled, c.D, Round)
		assert.GreaterOrEqual(t, grown.Area(), c.Grown-2*snap, "case %d grown by %g", i, c.D)
		assert.LessOrEqual(t, grown.Area(), c.Grown+2*snap+more+1e-4*c.Grown, "case %d grown by %g", i, c.D)

		shrunk, err := Offset(settled, -c.D, Round)
		require.NoError(t, err)
		assert.InDelta(t, c.Shrunk, shrunk.Area(), 2*snap+Tolerance*settled.Perimeter()/4, "case %d shrunk by %g", i, c.D)
	}
}

// pass is where an edge passes a scan line, upward with turn 1, downward -1.
type pass struct {
	x    float64
	turn int
}

// rasterArea measures on scan lines, cell mm apart, the lengths that some ring
// goes round. It knows nothing of edges that cross. A line stands for a strip
// as high as cell; the filled length changes within a strip by no more than what
// the edges go sideways, hence within is half of the perimeter times the cell.
func rasterArea(ink geom.Region, cell float64) (filled, within float64) {
	box := ink.Bounds()
	var row []pass
	for y := box.Min.Y + cell/2; y < box.Max.Y+cell/2; y += cell {
		row = row[:0]
		for _, ring := range ink {
			for i, a := range ring {
				b := ring[(i+1)%len(ring)]
				if (a.Y > y) == (b.Y > y) {
					continue
				}
				turn := 1
				if a.Y > y {
					turn = -1
				}
				row = append(row, pass{a.X + (y-a.Y)*(b.X-a.X)/(b.Y-a.Y), turn})
			}
		}
		slices.SortFunc(row, func(p, q pass) int { return cmp.Compare(p.x, q.x) })
		w := 0
		for i := 1; i < len(row); i++ {
			if w += row[i-1].turn; w != 0 {
				filled += (row[i].x - row[i-1].x) * cell
			}
		}
	}
	return filled, ink.Perimeter() * cell / 2
}

func TestUnionHasTheAreaOfARasterByWindingNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ink := scribble(t)
		settled, err := Union(ink)
		require.NoError(t, err)
		want, within := rasterArea(ink, 0.02)
		assert.InDelta(t, want, settled.Area(), within+2*ink.Perimeter()/grid)
		requireSettled(t, settled)
	})
}

// requireSettled checks everything that Union promises.
func requireSettled(t require.TestingT, r geom.Region) {
	again, err := Union(r)
	require.NoError(t, err)
	require.Equal(t, r, again, "settling a settled region changes nothing")
	sum := 0.0
	for _, ring := range r {
		require.GreaterOrEqual(t, len(ring), 3)
		require.NotZero(t, ring.Area())
		sum += ring.Area()
	}
	require.GreaterOrEqual(t, sum, 0.0)
	// The filled area lies on the left: no face has a winding number but 0 and 1.
	flipped := make(geom.Region, 0, len(r))
	for _, ring := range r {
		flipped = append(flipped, backwards(ring))
	}
	empty, err := Union(append(flipped, r...))
	require.NoError(t, err)
	require.Empty(t, empty, "every edge cancels its way back")
	holes, err := positive(flipped)
	require.NoError(t, err)
	require.Empty(t, holes, "backwards, nothing has a positive winding number")
}

func TestUnionDoesNotDependOnOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ink := scribble(t)
		want, err := Union(ink)
		require.NoError(t, err)
		turned := make(geom.Region, 0, len(ink))
		for _, ring := range ink {
			k := rapid.IntRange(0, len(ring)-1).Draw(t, "start")
			turned = append(turned, append(slices.Clone(ring[k:]), ring[:k]...))
		}
		slices.Reverse(turned)
		got, err := Union(turned)
		require.NoError(t, err)
		require.Equal(t, want, got)
		backward := make(geom.Region, 0, len(ink))
		for _, ring := range ink {
			backward = append(backward, backwards(ring))
		}
		got, err = Union(backward)
		require.NoError(t, err)
		require.Equal(t, want, got)
	})
}

func TestUnionOfOverlappingGrids(t *testing.T) {
	// Cells that share all their sides, and the same grid again and again,
	// turned and shifted by whole and half cells.
	var ink geom.Region
	for x := range 8 {
		for y := range 8 {
			ink = append(ink, rectangle(float64(x), float64(y), float64(x+1), float64(y+1)))
		}
	}
	got, err := Union(ink)
	require.NoError(t, err)
	assert.Equal(t, geom.Region{rectangle(0, 0, 8, 8)}, got)

	for range 5 {
		ink = append(ink, ink[:64]...)
	}
	got, err = Union(append(ink, ink[:64].Transform(geom.Translate(0.5, 0.5))...))
	require.NoError(t, err)
	assert.InDelta(t, 2*64-7.5*7.5, got.Area(), 1e-12)
	assert.Len(t, got, 1)
	assert.Len(t, got[0], 8)

	got, err = Union(append(ink[:64:64], ink[:64].Transform(geom.Rotate(math.Pi/4))...))
	require.NoError(t, err)
	requireSettled(t, got)
	// Common is half of the turned square, less its tip above the other.
	tip := 8*math.Sqrt2 - 8
	assert.InDelta(t, 2*64-(32-tip*tip/2), got.Area(), 0.01)
}

func TestTouchingAreasAreSeparateRings(t *testing.T) {
	got, err := Union(geom.Region{rectangle(0, 0, 1, 1), rectangle(1, 1, 2, 2)})
	require.NoError(t, err)
	assert.Equal(t, geom.Region{rectangle(0, 0, 1, 1), rectangle(1, 1, 2, 2)}, got)

	frame := geom.Region{rectangle(0, 0, 9, 9), backwards(rectangle(3, 3, 6, 6)), rectangle(4, 4, 5, 5)}
	got, err = Union(frame)
	require.NoError(t, err)
	require.Len(t, got, 3)
	assert.Equal(t, 81.0-9+1, got.Area())
	assert.Equal(t, -9.0, got[1].Area())
}

func positive(r geom.Region) (geom.Region, error) {
	var e Engine
	for _, ring := range r {
		if err := e.add(ring); err != nil {
			return nil, err
		}
	}
	return e.trace(arrangement.Positive)
}
