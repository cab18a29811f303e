package seams_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// narrowest is the level at which the room on the back is least, between two.
func narrowest(g *garment.Garment, from, to float64) (level, width float64) {
	width = 1e9
	for y := from; y < to; y++ {
		if w := g.Room(garment.BackNumber, y, y+1).Panel; w < width {
			level, width = y, w
		}
	}
	return level, width
}

func TestTheLimitShrinksWhereTheRacerNarrows(t *testing.T) {
	for _, size := range garment.AllSizes() {
		racer, tank := made(t, garment.RacerbackTank, size), made(t, garment.BasketballTank, size)
		label := size.String()
		collar, arm := racer.Collar(garment.Back), racer.Measures().ArmholeDepth
		level, width := narrowest(racer, collar+20, arm)
		assert.Greater(t, level, collar+25, label)
		assert.Less(t, level, arm-25, "%s: the narrow part lies above the underarm", label)
		assert.Less(t, width, racer.Measures().RacerWidth-2*garment.ClearSeam+0.1, label)
		assert.Less(t, width, 0.75*tank.Room(garment.BackNumber, level, level+1).Panel, "%s: a plain tank has no such waist", label)
		assert.Greater(t, racer.Room(garment.BackNumber, arm+30, arm+31).Panel, 1.5*width, label)

		c := on(t, racer, garment.BackName)
		half := 0.75 * width
		at := func(y float64) geom.Region { return box(-half, y, half, y+20) }
		waist := c.Lay(at(level-10), 0)
		require.NotEmpty(t, waist.Hits(), label)
		assert.Contains(t, waist.Hits()[0].Line.Name, "armhole", label)
		assert.True(t, c.Lay(at(arm+60), 0).Inside, "%s: the same piece lies inside below the armholes: %v", label, c.Lay(at(arm+60), 0).Hits())
	}
}

func TestYouthXSHasTheLeastRoomOfItsGroup(t *testing.T) {
	for _, info := range garment.Cuts() {
		for _, p := range garment.Places(info.Cut) {
			if p == garment.LeftChest {
				continue // stands as far across as fits, so its room is not about the middle
			}
			before := 0.0
			for _, letter := range garment.Sizes(garment.Youth) {
				g := made(t, info.Cut, garment.Size{Group: garment.Youth, Letter: letter})
				place, err := g.Place(p)
				require.NoError(t, err)
				top := place.TopFor(30)
				room := g.Room(p, top, top+30)
				assert.Positive(t, room.Panel, "%s youth %s %s: %s", info.Cut, letter, p, room.Why)
				if letter == "XS" {
					before = room.Panel
				}
				assert.GreaterOrEqual(t, room.Panel, before-0.01, "%s youth %s %s", info.Cut, letter, p)
			}
		}
	}
}

// What lies inside on a youth XS lies inside on every larger youth size too, the
// middles of their panels being one.
func TestALineIsMissedByMoreOnYouthXSThanOnM(t *testing.T) {
	for _, cut := range []garment.Cut{garment.CrewTee, garment.RacerbackTank, garment.Soccer} {
		small, usual := made(t, cut, garment.Size{Group: garment.Youth, Letter: "XS"}), made(t, cut, adultM)
		arm := small.Measures().ArmholeDepth
		piece := box(-170, arm+40, 170, arm+140)
		hits := on(t, small, garment.BackNumber).Lay(piece, 0).Hits()
		require.NotEmpty(t, hits, cut)
		for _, h := range hits {
			assert.Less(t, h.Distance, named(t, on(t, usual, garment.BackNumber).Lay(piece, 0), h.Line.Words()).Distance, cut)
		}
	}
}
