package outline

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

// regionFrom reads rings from bytes: the first chooses the cell of a coarse or
// fine grid, each pair after it is a point, and 255 ends a ring.
func regionFrom(data []byte) geom.Region {
	if len(data) == 0 {
		return nil
	}
	// From a single grid unit, where everything crowds, to 0.5 mm.
	cell := float64(int(1)<<(data[0]%13)) / grid
	data = data[1:min(len(data), 200)]
	var out geom.Region
	var ring geom.Ring
	for i := 0; i+1 < len(data); i += 2 {
		if data[i] == 255 {
			out, ring = append(out, ring), nil
			i--
			continue
		}
		ring = append(ring, geom.Point{X: float64(data[i]) * cell, Y: float64(int8(data[i+1])) * cell})
	}
	return append(out, ring)
}

func FuzzUnion(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{0, 0, 0, 1, 1, 1, 0, 0, 1})                                     // two unit diagonals
	f.Add([]byte{12, 0, 0, 9, 0, 9, 9, 0, 9, 255, 3, 3, 6, 3, 6, 6, 3, 6})       // square in a square
	f.Add([]byte{12, 0, 0, 9, 0, 9, 9, 0, 9, 255, 3, 3, 3, 6, 6, 6, 6, 3})       // square with a hole
	f.Add([]byte{3, 0, 0, 200, 1, 0, 2, 200, 3, 0, 4, 200, 5})                   // near-parallel
	f.Add([]byte{0, 0, 0, 100, 37, 50, 18, 7, 3, 99, 36, 1, 1, 255, 8, 9, 1, 2}) // along a line
	f.Add([]byte{8, 10, 90, 60, 200, 90, 90, 5, 150, 95, 150})                   // five-point star
	f.Fuzz(func(t *testing.T, data []byte) {
		ink := regionFrom(data)
		settled, err := Union(ink)
		require.NoError(t, err)
		requireSettled(t, settled)
		if ink.Perimeter() == 0 {
			require.Empty(t, settled)
			return
		}
		// Rounding moves an edge by a unit or two.
		box := ink.Bounds()
		want, within := rasterArea(ink, max(box.Height()/256.37, 1e-6))
		assert.InDelta(t, want, settled.Area(), within+2*ink.Perimeter()/grid)
		for _, d := range []float64{box.Height() / 16, -box.Height() / 16} {
			grown, err := Offset(settled, d, Round)
			require.NoError(t, err)
			requireSettled(t, grown)
		}
	})
}
