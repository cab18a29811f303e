package sizes_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

func backName(t require.TestingT, p sizes.Player) sizes.Piece {
	piece, ok := p.Piece(garment.BackName)
	require.True(t, ok)
	return piece
}

func mixed() []order.Player {
	return []order.Player{
		player("Ng", "7", garment.Adult, "M"), player("Wojciechowskieva", "8", garment.Adult, "M"), player("Quill", "9", garment.Adult, "S"),
		player("Featherstonehaugh-Lindqvist", "0", garment.Youth, "S"), player("Brandtmeister", "1", garment.Youth, "L"),
		player("Schwarzenbergers", "2", garment.Adult, "S"),
	}
}

func TestALookTellsWhoSetsItAndWhatTheOthersWouldShare(t *testing.T) {
	alone := herons(mixed()...)
	heights := []float64{}
	for _, p := range resolve(t, alone, nil).Players {
		if n := backName(t, p).Name; n.Verdict != fit.Over {
			heights = append(heights, n.LetterHeight)
		}
	}
	slices.Sort(heights)
	o := herons(mixed()...)
	o.Fit.Same = "team"
	s := resolve(t, o, nil)
	require.Len(t, s.Looks, 1)
	look := s.Looks[0]
	assert.Equal(t, heights[0], look.Height)
	assert.Equal(t, heights[1], look.Without)
	assert.Equal(t, garment.Size{}, look.Size)
	setter := backName(t, s.Players[look.Player])
	assert.Equal(t, look.Height, setter.Name.LetterHeight)
	assert.Zero(t, setter.Alone, "it comes out as it does by itself")
	assert.NotEmpty(t, setter.Name.WouldFit)

	without := herons(slices.Delete(mixed(), look.Player, look.Player+1)...)
	without.Fit.Same = "team"
	assert.InDelta(t, look.Without, resolve(t, without, nil).Looks[0].Height, 1e-9, "left out, the others do share that")
}

func TestANameLoweredForTheLookIsReducedAndNeedsNoWayOut(t *testing.T) {
	o := herons(mixed()...)
	o.Fit.Same = "team"
	s := resolve(t, o, nil)
	short := backName(t, s.Players[0])
	assert.Equal(t, fit.Reduced, short.Name.Verdict)
	assert.True(t, short.ForTheLook())
	assert.Equal(t, 63.5, short.Alone)
	assert.Equal(t, 63.5, short.Name.Asked)
	assert.Empty(t, short.Name.WouldFit)
	assert.False(t, backName(t, s.Players[s.Looks[0].Player]).ForTheLook())

	o = herons(player("Ng", "7", garment.Adult, "M"), player("Quill", "9", garment.Adult, "S"))
	o.Fit.Same = "team"
	s = resolve(t, o, nil)
	assert.Equal(t, sizes.Look{Asked: 63.5, Height: 63.5, Player: -1, Without: 63.5, Names: 2}, s.Looks[0])
	assert.Equal(t, fit.Full, backName(t, s.Players[0]).Name.Verdict, "at the height asked nothing is reduced")
}

func TestEachSizeHasItsLook(t *testing.T) {
	o := herons(mixed()...)
	o.Fit.Same = "size"
	s := resolve(t, o, nil)
	var of []string
	for _, look := range s.Looks {
		of = append(of, look.Size.String())
	}
	assert.Equal(t, []string{"youth L", "adult S", "adult M"}, of, "youth S has only a name that is over")
	o.Fit.Same = "none"
	assert.Empty(t, resolve(t, o, nil).Looks)
}

func TestHeightsThatWereAskedToDifferStayApart(t *testing.T) {
	o := herons(mixed()...)
	o.Fit.Same, o.Pieces[0].Height = "team", order.Height{By: order.BySize}
	s := resolve(t, o, nil)
	require.Len(t, s.Looks, 2)
	for _, p := range s.Players {
		n := backName(t, p).Name
		if n.Verdict == fit.Over {
			continue
		}
		k := slices.IndexFunc(s.Looks, func(l sizes.Look) bool { return l.Asked == n.Asked })
		assert.InDelta(t, s.Looks[k].Height, n.LetterHeight, 1e-6, p.Name)
	}
}

// TestEveryNameReachesTheCommonHeight holds random teams against the floors of
// the job.
func TestEveryNameReachesTheCommonHeight(t *testing.T) {
	all := garment.AllSizes()
	rapid.Check(t, func(t *rapid.T) {
		var players []order.Player
		for range rapid.IntRange(1, 6).Draw(t, "players") {
			size := rapid.SampledFrom(all).Draw(t, "size")
			players = append(players, player(rapid.StringMatching(`[A-Z][a-z]{1,17}`).Draw(t, "name"), "7", size.Group, size.Letter))
		}
		o := herons(players...)
		o.Fit.Same = rapid.SampledFrom([]string{"size", "team"}).Draw(t, "same")
		o.Fit.Arc = rapid.SampledFrom(order.Arcs()).Draw(t, "arc")
		s, err := sizes.Resolve(t.Context(), o, sizes.Options{Face: embedded, NoWaysOut: true})
		require.NoError(t, err)
		for _, p := range s.Players {
			piece := backName(t, p)
			n := piece.Name
			if n.Verdict == fit.Over {
				continue
			}
			k := slices.IndexFunc(s.Looks, func(l sizes.Look) bool { return l.Size == (garment.Size{}) || l.Size == p.Size })
			require.InDelta(t, s.Looks[k].Height, n.LetterHeight, 1e-6)
			require.LessOrEqual(t, n.InkWidth, n.Limit+1e-9)
			require.GreaterOrEqual(t, n.WidthScale, 0.8-1e-9)
			require.GreaterOrEqual(t, n.Tracking, -0.04*n.LetterHeight-1e-9)
			require.Equal(t, n.LetterHeight < n.Asked, n.Verdict == fit.Reduced)
			require.InDelta(t, piece.At.Y, piece.Top+n.LetterHeight, 1e-9, "the cap line stays where it is")
		}
	})
}

func TestATeamSharesOneCircle(t *testing.T) {
	players := []order.Player{
		player("Ng", "7", garment.Youth, "S"), player("Brandt", "8", garment.Adult, "S"), player("Quill", "9", garment.Adult, "XL"),
		player("Hall", "1", garment.Adult, "S"), player("Lind", "2", garment.Adult, "XL"),
	}
	radii := func(arc string) (out []float64, limits []float64) {
		o := herons(players...)
		o.Fit.Arc = arc
		for _, p := range resolve(t, o, nil).Players {
			n := backName(t, p).Name
			out, limits = append(out, n.Radius), append(limits, n.Limit)
		}
		return out, limits
	}
	team, limits := radii("team")
	for i := range team {
		assert.Equal(t, geom.RadiusOf(limits[2], 25.4), team[i], "that of XL, which as many wear as S")
	}
	bySize, limits := radii("size")
	for i := range bySize {
		assert.Equal(t, geom.RadiusOf(limits[i], 25.4), bySize[i])
	}
	assert.NotEqual(t, bySize[0], bySize[2])
	unsaid, _ := radii("")
	assert.Equal(t, bySize, unsaid)
}

func TestANameMayHaveItsOwnCircle(t *testing.T) {
	o := herons(player("Ng", "7", garment.Adult, "M"), player("Brandtmeister", "8", garment.Adult, "M"), player("Brandtmeister", "8", garment.Youth, "S"))
	o.Fit.Arc = "name"
	s := resolve(t, o, nil)
	for i, p := range s.Players {
		n := backName(t, p).Name
		rise := geom.Sagitta(n.Radius, n.InkWidth)
		if i == 0 {
			assert.InDelta(t, 0.2071*n.InkWidth, rise, 0.05*n.InkWidth, "a short name is not bent into a ring")
			continue
		}
		assert.InDelta(t, 25.4, rise, 0.02, "the rise over its own width")
	}
}

func TestARadiusThatIsWrittenIsEverybodys(t *testing.T) {
	for _, arc := range order.Arcs() {
		o := herons(team()...)
		radius := length.Inches(20, 1)
		o.Pieces[0].Rise, o.Pieces[0].Radius, o.Fit.Arc = nil, &radius, arc
		for _, p := range resolve(t, o, nil).Players {
			assert.Equal(t, 508.0, backName(t, p).Name.Radius)
		}
	}
}
