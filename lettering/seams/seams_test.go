package seams_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/seams"
)

var adultM = garment.Size{Group: garment.Adult, Letter: "M"}

func made(t require.TestingT, cut garment.Cut, size garment.Size) *garment.Garment {
	g, err := garment.New(cut, size)
	require.NoError(t, err)
	return g
}

func on(t require.TestingT, g *garment.Garment, p garment.Place) *seams.Cloth {
	place, err := g.Place(p)
	require.NoError(t, err)
	return seams.On(g, place)
}

// box is a piece of one rectangle.
func box(x0, y0, x1, y1 float64) geom.Region {
	return geom.Region{{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}}
}

func named(t require.TestingT, l seams.Lie, words string) seams.Clearance {
	for _, c := range l.Clearances {
		if c.Line.Words() == words {
			return c
		}
	}
	require.Fail(t, "no such line", words)
	return seams.Clearance{}
}

func TestAPieceIsToldWhichSeamItHitsWhereAndByHowMuch(t *testing.T) {
	g := made(t, garment.CrewTee, adultM)
	c := on(t, g, garment.BackNumber)
	hem := g.Hem()
	for _, test := range []struct {
		name     string
		piece    geom.Region
		reach    float64
		inside   bool
		distance float64
	}{
		{"well above the hem", box(-60, 200, 60, 400), 0, true, hem - 400},
		{"exactly at the margin", box(-60, 500, 60, hem-25), 0, true, 25},
		{"5 mm into the margin", box(-60, 500, 60, hem-20), 0, false, 20},
		{"3 mm more by its outline", box(-60, 500, 60, hem-20), 3, false, 17},
		{"on the edge", box(-60, 500, 60, hem-1e-9), 0, false, 0},
		{"7 mm over the edge", box(-60, 500, 60, hem+7), 0, false, -7},
		{"10 mm over by its outline", box(-60, 500, 60, hem+7), 3, false, -10},
		{"beside the garment", box(-60, hem+10, 60, hem+50), 0, false, -50},
	} {
		lie := c.Lay(test.piece, test.reach)
		got := named(t, lie, "hem")
		assert.Equal(t, test.inside, lie.Inside, test.name)
		assert.InDelta(t, test.distance, got.Distance, 1e-6, test.name)
		assert.InDelta(t, 25-test.distance, got.Short(), 1e-6, test.name)
		assert.Equal(t, test.distance < -0.02, got.Over(), test.name)
		if test.inside {
			assert.Empty(t, lie.Hits(), test.name)
			continue
		}
		assert.Equal(t, "hem", lie.Hits()[0].Line.Name, test.name)
		assert.Equal(t, lie.Hits()[0], lie.Nearest(), test.name)
		assert.InDelta(t, test.piece.Bounds().Max.Y, got.At.Y, 1e-9, test.name)
	}
}

func TestTheShapeDecidesAndNotItsBox(t *testing.T) {
	g := made(t, garment.CrewTee, adultM)
	c := on(t, g, garment.BackName)
	// An arch whose ends hang down: its box is wider at the top than it is.
	top := g.Collar(garment.Back) + 45
	room := g.Room(garment.BackName, top, top+30)
	half := room.Panel/2 + 4
	arch := geom.Region{{{X: -half, Y: top + 75}, {X: 0, Y: top}, {X: half, Y: top + 75}, {X: half, Y: top + 80}, {X: 0, Y: top + 30}, {X: -half, Y: top + 80}}}
	b := arch.Bounds()
	assert.Equal(t, c.Lay(arch, 0).Inside, len(c.Lay(arch, 0).Hits()) == 0)
	assert.GreaterOrEqual(t, c.Lay(box(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y), 0).Hits()[0].Short(), 4-0.02)
	wedge := geom.Region{{{X: -half, Y: 300}, {X: half, Y: 300}, {X: 0, Y: top}}} // below the armholes there is more room
	assert.True(t, c.Lay(wedge, 0).Inside)
	assert.False(t, c.Lay(box(-half, top, half, 300), 0).Inside)
}

func TestAHitNamesTheWearersHand(t *testing.T) {
	g := made(t, garment.CrewTee, adultM)
	for _, test := range []struct {
		place garment.Place
		to    float64
		words string
	}{
		{garment.FrontName, 1, "left armhole seam"}, {garment.FrontName, -1, "right armhole seam"},
		{garment.BackName, 1, "right armhole seam"}, {garment.BackName, -1, "left armhole seam"},
	} {
		c := on(t, g, test.place)
		var hits []seams.Clearance
		for x := 150.0; len(hits) == 0; x++ { // out to the side until something is hit
			hits = c.Lay(box(test.to*x-20, 150, test.to*x+20, 190), 0).Hits()
		}
		assert.Equal(t, test.words, hits[0].Line.Words())
	}
}

// Every place of every cut: a box as wide as the room lies inside, and one a
// little wider hits the line that ends the room. Room works from rows, Lay from
// distances.
func TestABoxAsWideAsTheRoomLiesInside(t *testing.T) {
	held := 0
	for _, info := range garment.Cuts() {
		for _, size := range []garment.Size{{Group: garment.Youth, Letter: "XS"}, adultM, {Group: garment.Adult, Letter: "4XL"}} {
			g := made(t, info.Cut, size)
			for _, p := range garment.Places(info.Cut) {
				place, err := g.Place(p)
				require.NoError(t, err)
				c := on(t, g, p)
				for _, height := range []float64{10, 40, 75} {
					top := place.TopFor(height)
					room := g.Room(p, top, top+height)
					if room.Panel == 0 {
						continue
					}
					held++
					piece := func(width float64) geom.Region {
						var r geom.Ring
						for _, q := range box(-width/2, top, width/2, top+height)[0] {
							r = append(r, place.Point(q.X, q.Y))
						}
						return geom.Region{r}
					}
					label := string(info.Cut) + " " + size.String() + " " + string(p)
					assert.True(t, c.Lay(piece(room.Panel-0.1), 0).Inside, "%s %v: %v", label, room, c.Lay(piece(room.Panel-0.1), 0).Hits())
					wide := c.Lay(piece(room.Panel+1), 0)
					require.NotEmpty(t, wide.Hits(), label)
					assert.False(t, wide.Inside, label)
					assert.Equal(t, room.Line, wide.Hits()[0].Line.Name, label)
				}
			}
		}
	}
	assert.Greater(t, held, 400)
}

// blobs draws pieces from rapid, about a place.
func blobs(rt *rapid.T, place garment.Placement) geom.Region {
	var out geom.Region
	for range rapid.IntRange(1, 4).Draw(rt, "letters") {
		at := place.Point(rapid.Float64Range(-150, 150).Draw(rt, "across"), place.TopFor(60)+rapid.Float64Range(-30, 90).Draw(rt, "down"))
		n := rapid.IntRange(3, 30).Draw(rt, "corners")
		var r geom.Ring
		for i := range n {
			a, d := 2*math.Pi*float64(i)/float64(n), rapid.Float64Range(5, 40).Draw(rt, "out")
			r = append(r, at.Add(geom.Point{X: d * math.Cos(a), Y: d * math.Sin(a)}))
		}
		out = append(out, r)
	}
	return out
}

func anywhere(rt *rapid.T) (*garment.Garment, garment.Placement) {
	cut := rapid.SampledFrom(garment.Cuts()).Draw(rt, "cut").Cut
	g := made(rt, cut, rapid.SampledFrom(garment.AllSizes()).Draw(rt, "size"))
	place, err := g.Place(rapid.SampledFrom(garment.Places(cut)).Draw(rt, "place"))
	require.NoError(rt, err)
	return g, place
}

func TestABiggerMarginNeverMakesAHitDisappear(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		g, place := anywhere(rt)
		piece := blobs(rt, place) // where the usual margins place it
		some := func(name string, least float64) float64 { return rapid.Float64Range(least, 60).Draw(rt, name) }
		small := garment.Margins{Seam: some("seam", 1), Hard: some("hard", 1), Hem: some("hem", 1), Underarm: some("underarm", 1), Fold: some("fold", 1)}
		big := garment.Margins{Seam: some("seam", small.Seam), Hard: some("hard", small.Hard), Hem: some("hem", small.Hem), Underarm: some("underarm", small.Underarm), Fold: some("fold", small.Fold)}
		if place.Place == garment.SleeveNumber {
			big.Hem, big.Seam = small.Hem, small.Seam // they move the place itself
		}
		var lies [2]seams.Lie
		for i, m := range []garment.Margins{small, big} {
			with, err := g.With(m)
			require.NoError(rt, err)
			lies[i] = on(rt, with, place.Place).Lay(piece, 0)
		}
		require.Equal(rt, len(lies[0].Clearances), len(lies[1].Clearances))
		for i, c := range lies[0].Clearances {
			wider := lies[1].Clearances[i]
			assert.Equal(rt, c.Distance, wider.Distance, "a margin moves no line")
			assert.GreaterOrEqual(rt, wider.Short(), c.Short())
		}
		assert.GreaterOrEqual(rt, len(lies[1].Hits()), len(lies[0].Hits()))
		assert.GreaterOrEqual(rt, len(lies[1].Parted), len(lies[0].Parted))
		assert.False(rt, lies[1].Inside && !lies[0].Inside)
	})
}

func TestMirroredPiecesLieAlikeOnTheOtherHand(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		g, place := anywhere(rt)
		if place.Place == garment.SleeveNumber || place.Place == garment.ShortsNumber {
			rt.Skip("one hand only")
		}
		piece := blobs(rt, place)
		mirror := geom.Region{}
		for _, r := range piece {
			var m geom.Ring
			for _, q := range r {
				m = append(m, geom.Point{X: -q.X, Y: q.Y})
			}
			mirror = append(mirror, m)
		}
		c := on(rt, g, place.Place)
		here, there := c.Lay(piece, 1.5), c.Lay(mirror, 1.5)
		if math.Abs(here.Nearest().Short()-seams.Slack) > 1e-6 {
			assert.Equal(rt, here.Inside, there.Inside)
		}
		other := map[string]string{"left": "right", "right": "left"}
		for _, a := range here.Clearances {
			a.Line.Hand = other[a.Line.Hand]
			assert.InDelta(rt, a.Distance, named(rt, there, a.Line.Words()).Distance, 1e-6, a.Line.Words())
		}
	})
}

func TestALongerReachTakesFromEveryDistanceAlike(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		g, place := anywhere(rt)
		piece, reach := blobs(rt, place), rapid.Float64Range(0, 12).Draw(rt, "reach")
		bare, lined := on(rt, g, place.Place).Lay(piece, 0), on(rt, g, place.Place).Lay(piece, reach)
		for i := range bare.Clearances {
			assert.InDelta(rt, bare.Clearances[i].Distance-reach, lined.Clearances[i].Distance, 1e-9)
		}
		assert.False(rt, lined.Inside && !bare.Inside)
	})
}

func TestANameAcrossAPlacketIsToldWhichLettersToPart(t *testing.T) {
	g := made(t, garment.FullButton, adultM)
	place, err := g.Place(garment.FrontName)
	require.NoError(t, err)
	require.True(t, place.Split)
	c := on(t, g, garment.FrontName)
	var piece geom.Region
	for _, x := range []float64{-120, -70, -5, 45, 100} {
		piece = append(piece, box(x-12, place.Top, x+12, place.Top+30)...)
	}
	lie := c.Lay(piece, 0)
	assert.Equal(t, []int{2, 3}, lie.Parted, "the letter on the button stand and the one within 25 mm of it")
	assert.True(t, lie.Inside, "%v", lie.Hits())
	lie = c.Lay(append(piece, box(200, place.Top, 240, place.Top+30)...), 0)
	assert.False(t, lie.Inside)
	assert.Equal(t, "left armhole seam", lie.Hits()[0].Line.Words())
}

func TestLargestFindsTheGreatestHeightThatLiesInside(t *testing.T) {
	g := made(t, garment.CrewTee, adultM)
	c := on(t, g, garment.BackName)
	top := g.Collar(garment.Back) + 45
	name := func(height float64) (geom.Region, error) { // six times as wide as high
		return box(-3*height, top, 3*height, top+height), nil
	}
	height, lie, err := c.Largest(10, 120, 2, name)
	require.NoError(t, err)
	assert.True(t, lie.Inside)
	above, _ := name(height + 0.02)
	assert.False(t, c.Lay(above, 2).Inside)
	here, _ := name(height)
	assert.Equal(t, c.Lay(here, 2), lie)

	full, _, err := c.Largest(10, 30, 2, name)
	require.NoError(t, err)
	assert.Equal(t, 30.0, full, "what fits at the height asked stays at it")

	_, _, err = c.Largest(100, 120, 2, name)
	assert.ErrorContains(t, err, "no back name from 100.0 mm to 120.0 mm high lies inside its panel")
	assert.ErrorContains(t, err, "armhole seam")

	broken := errors.New("the arch is too tight")
	_, _, err = c.Largest(10, 120, 2, func(float64) (geom.Region, error) { return nil, broken })
	assert.ErrorIs(t, err, broken)
}

// A piece that moves as it grows may lie inside at two ranges of heights with one
// between that hits: the upper one is found.
func TestLargestIsNotCaughtByALowerRange(t *testing.T) {
	g := made(t, garment.CrewTee, adultM)
	c := on(t, g, garment.BackNumber)
	shape := func(height float64) (geom.Region, error) {
		if height > 50 && height < 80 {
			return box(-400, 200, 400, 200+height), nil
		}
		return box(-40, 200, 40, 200+height), nil
	}
	height, _, err := c.Largest(10, 600, 0, shape)
	require.NoError(t, err)
	assert.InDelta(t, g.Hem()-25-200+seams.Slack, height, 0.011)
}

func TestNothingLiesNowhere(t *testing.T) {
	lie := on(t, made(t, garment.CrewTee, adultM), garment.BackName).Lay(nil, 0)
	assert.False(t, lie.Inside)
	assert.Empty(t, lie.Hits())
}

// The wearer's right sleeve is the mirror image of the left, hands and all.
func TestAPieceLiesAlikeOnBothSleeves(t *testing.T) {
	for _, cut := range []garment.Cut{garment.CrewTee, garment.Raglan, garment.Hockey} {
		g := made(t, cut, adultM)
		left, err := g.Place(garment.SleeveNumber)
		require.NoError(t, err)
		right := g.Moved(left, garment.AtWearersRight)
		require.Negative(t, right.CentreX)
		for _, half := range []float64{20, 60, 120} {
			var here, there geom.Ring
			for _, q := range box(-half, left.Top, half+5, left.Top+60)[0] { // not centred, so a wrong turn shows
				p := left.Point(q.X, q.Y)
				here, there = append(here, p), append(there, geom.Point{X: -p.X, Y: p.Y})
			}
			a, b := seams.On(g, left).Lay(geom.Region{here}, 0), seams.On(g, right).Lay(geom.Region{there}, 0)
			assert.Equal(t, a.Inside, b.Inside)
			for i, c := range a.Clearances {
				assert.InDelta(t, c.Distance, b.Clearances[i].Distance, 1e-9)
				assert.Equal(t, "left "+c.Line.Name, c.Line.Words())
				assert.Equal(t, "right "+c.Line.Name, b.Clearances[i].Line.Words())
				assert.InDelta(t, c.At.X, -b.Clearances[i].At.X, 1e-9)
			}
		}
	}
}
