package garment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

func TestMarginsOfZeroAreTheUsualOnes(t *testing.T) {
	g := must(t, CrewTee, Size{Adult, "M"})
	assert.Equal(t, DefaultMargins(), g.Margins())
	same, err := g.With(Margins{})
	require.NoError(t, err)
	assert.Equal(t, DefaultMargins(), same.Margins())
	assert.Equal(t, g.Panel(Back), same.Panel(Back))
	some, err := g.With(Margins{Hem: 60})
	require.NoError(t, err)
	assert.Equal(t, Margins{Seam: 12, Hard: 25, Hem: 60, Underarm: 40, Fold: 6}, some.Margins())
	assert.Equal(t, DefaultMargins(), g.Margins(), "the first garment stays as it was")
}

func TestAMarginOutOfReachIsNamed(t *testing.T) {
	g := must(t, TwoButton, Size{Adult, "M"})
	for words, m := range map[string]Margins{
		"a seam: -1 mm": {Seam: -1}, "a hard part: 200 mm": {Hard: 200}, "a hem: 0.5 mm": {Hem: 0.5},
		"an underarm": {}, "a fold: NaN mm": {Fold: math.NaN()}, "a underarm: +Inf mm": {Underarm: math.Inf(1)},
	} {
		_, err := g.With(m)
		if m == (Margins{}) {
			assert.NoError(t, err)
			continue
		}
		require.Error(t, err, words)
		assert.ErrorContains(t, err, words)
		assert.ErrorContains(t, err, "between 1 mm and 150 mm")
	}
}

func TestTheRoomAndThePlacementsFollowTheMargins(t *testing.T) {
	g := must(t, TwoButton, Size{Adult, "M"})
	near, err := g.With(Margins{Seam: 5})
	require.NoError(t, err)
	assert.InDelta(t, g.Room(BackName, 150, 150).Panel+14, near.Room(BackName, 150, 150).Panel, 0.5)
	hard, err := g.With(Margins{Hard: 40})
	require.NoError(t, err)
	before, err := g.Place(FrontName)
	require.NoError(t, err)
	after, err := hard.Place(FrontName)
	require.NoError(t, err)
	assert.InDelta(t, before.Top+15, after.Top, 1e-9, "a name below a placket moves down with its margin")
	for _, c := range Cuts() { // so do the names and numbers of every cut: none stands where it may not
		wide, err := must(t, c.Cut, Size{Adult, "M"}).With(Margins{Seam: 18, Hard: 32, Hem: 35})
		require.NoError(t, err)
		for _, p := range Places(c.Cut) {
			at, err := wide.Place(p)
			require.NoError(t, err)
			assert.Positive(t, wide.Room(p, at.TopFor(30), at.TopFor(30)+30).Panel, "%s %s", c.Cut, p)
		}
	}
}

// Decoration that stays off all lines cannot leave its cloth: every edge of a
// piece of cloth has its line, but the middle of a button front, which lies
// behind its placket.
func TestEveryEdgeOfThePiecesIsGuardedByALine(t *testing.T) {
	for _, c := range Cuts() {
		for _, size := range someSizes() {
			g := must(t, c.Cut, size)
			for _, s := range []Side{Front, Back} {
				for _, p := range g.Panels(s) {
					for i, a := range p.Cloth {
						mid := a.Lerp(p.Cloth[(i+1)%len(p.Cloth)], 0.5)
						if mid.X == 0 && c.Cut == FullButton {
							continue
						}
						assert.Less(t, nearestLine(p.Lines, mid), 0.05, "%s %s %s at %v", c.Cut, size, p.Name, mid)
					}
				}
			}
		}
	}
}

func nearestLine(lines []KeepClear, q geom.Point) float64 {
	least := math.Inf(1)
	for _, l := range lines {
		for i := 1; i < len(l.Points); i++ {
			least = math.Min(least, segmentDistance(q, l.Points[i-1], l.Points[i]))
		}
	}
	return least
}

func TestLinesToKeepClearOfSayWhatTheyAre(t *testing.T) {
	g, err := must(t, TwoButton, Size{Adult, "M"}).With(Margins{Hard: 30})
	require.NoError(t, err)
	got := map[string]KeepClear{}
	for _, p := range g.Panels(Front) {
		if p.Sleeve {
			continue
		}
		assert.Equal(t, "front", p.Name)
		for _, l := range p.Lines {
			got[l.Words()] = l
		}
	}
	for words, want := range map[string]struct {
		kind   LineKind
		margin float64
		side   float64 // of the viewer
	}{
		"neck seam": {SeamLine, 12, 0}, "hem": {HemLine, 25, 0}, "placket": {HardLine, 30, 0},
		"left armhole seam": {SeamLine, 12, 1}, "right armhole seam": {SeamLine, 12, -1},
		"left side seam": {SeamLine, 12, 1}, "right underarm": {UnderarmLine, 40, -1},
	} {
		l, ok := got[words]
		require.True(t, ok, words)
		assert.Equal(t, want.kind, l.Kind, words)
		assert.Equal(t, want.margin, l.Margin, words)
		middle := geom.Region{l.Points}.Bounds().Center().X
		if want.side == 0 {
			assert.InDelta(t, 0, middle, 1e-9, words)
		} else {
			assert.Positive(t, middle*want.side, words)
		}
	}
	assert.Len(t, got["left underarm"].Points, 1)
	assert.Equal(t, "hard part", HardLine.String())
	assert.Equal(t, "none", lineKinds.String())
}

func TestAcrossIsTheInverseOfPoint(t *testing.T) {
	for _, c := range Cuts() {
		g := must(t, c.Cut, Size{Women, "L"})
		for _, p := range Places(c.Cut) {
			place, err := g.Place(p)
			require.NoError(t, err)
			across, level := place.Across(place.Point(17, 123))
			assert.InDelta(t, 17, across, 1e-9)
			assert.InDelta(t, 123, level, 1e-9)
		}
	}
}
