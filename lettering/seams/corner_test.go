package seams_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/seams"
)

// disc is a piece that is round.
func disc(x, y, r float64) geom.Region {
	var out geom.Ring
	for i := range 360 {
		a := 2 * math.Pi * float64(i) / 360
		out = append(out, geom.Point{X: x + r*math.Cos(a), Y: y + r*math.Sin(a)})
	}
	return geom.Region{out}
}

// Under the sharp point of a V, cloth lies on the far side of either arm: only
// both arms together tell which side of the seam a point is on.
func TestThePointOfAVTellsItsSidesApart(t *testing.T) {
	g := made(t, garment.VNeck, adultM)
	tip := g.Collar(garment.Front)
	lie := on(t, g, garment.FrontName).Lay(disc(0, tip+57, 60), 0)
	got := named(t, lie, "neck seam")
	assert.True(t, got.Over())
	assert.Less(t, -got.Distance, 3.01, "no more than the disc reaches over the point")
	assert.Greater(t, -got.Distance, 0.5)
	assert.Less(t, got.At.Y, tip)
}

func TestALetterInTheMiddleOfAWideOpeningIsParted(t *testing.T) {
	g, err := made(t, garment.FullButton, adultM).With(garment.Margins{Hard: 1})
	require.NoError(t, err)
	place, err := g.Place(garment.FrontName)
	require.NoError(t, err)
	lie := seams.On(g, place).Lay(box(-4, place.Top, 4, place.Top+30), 0)
	assert.Equal(t, []int{0}, lie.Parted, "clear of both edges, but on the button stand")
}

// A piece across the fold is held against the front half with its one side and
// against the back half with the other.
func TestEachSideOfASleevePieceIsHeldAgainstItsOwnHalf(t *testing.T) {
	g := made(t, garment.CrewTee, adultM)
	place, err := g.Place(garment.SleeveNumber)
	require.NoError(t, err)
	c := seams.On(g, place)
	for _, side := range []float64{-1, 1} {
		var hits []seams.Clearance
		reached := 20.0
		for ; len(hits) == 0 && reached < 300; reached++ {
			var r geom.Ring
			for _, q := range box(-20*side, place.Top, reached*side, place.Top+40)[0] {
				r = append(r, place.Point(q.X, q.Y))
			}
			hits = c.Lay(geom.Region{r}, 0).Hits()
		}
		require.NotEmpty(t, hits, side)
		across, _ := place.Across(hits[0].At)
		assert.InDelta(t, side*(reached-1), across, 1e-6, "the far side is what hits")
		room := g.Room(garment.SleeveNumber, place.Top, place.Top+40)
		assert.Greater(t, reached, room.Panel/2-1)
	}
}
