package garment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func placed(t *testing.T, c Cut, s Size, p Place) Placement {
	t.Helper()
	place, err := must(t, c, s).Place(p)
	require.NoError(t, err)
	return place
}

// The figures of the placement table, which are common practice without a
// source: this test guards them against slips, it does not make them true.
func TestPlacementsFollowTheTableOfTheSizesBand(t *testing.T) {
	for _, row := range []struct {
		sizes                                   []Size
		name, number, front, vee, gap, chest, x float64
	}{
		{[]Size{{Youth, "XS"}, {Youth, "S"}, {Youth, "M"}}, 65, 100, 50, 40, 25, 125, 65},
		{[]Size{{Youth, "L"}, {Youth, "XL"}}, 75, 115, 60, 45, 25, 140, 75},
		{[]Size{{Adult, "XS"}, {Adult, "S"}, {Adult, "M"}}, 90, 140, 75, 50, 32, 180, 95},
		{[]Size{{Adult, "L"}, {Adult, "XL"}}, 100, 150, 75, 50, 38, 190, 100},
		{[]Size{{Adult, "2XL"}, {Adult, "3XL"}, {Adult, "4XL"}}, 110, 165, 90, 60, 38, 205, 115},
		{[]Size{{Women, "XS"}, {Women, "M"}, {Women, "3XL"}}, 80, 125, 65, 45, 32, 165, 85},
	} {
		for _, s := range row.sizes {
			name := placed(t, CrewTee, s, BackName)
			assert.Equal(t, Back, name.Side)
			assert.InDelta(t, row.name, name.BelowCollar, 1e-9, "%s back name", s)
			assert.Equal(t, row.gap, name.GapAfter, "%s gap", s)
			assert.InDelta(t, row.number, placed(t, CrewTee, s, BackNumber).BelowCollar, 1e-9, "%s back number", s)
			assert.InDelta(t, row.front, placed(t, CrewTee, s, FrontName).BelowCollar, 1e-9, "%s front name", s)
			assert.InDelta(t, row.vee, placed(t, VNeck, s, FrontName).BelowCollar, 1e-9, "%s front name under a V", s)
			chest := placed(t, CrewTee, s, LeftChest)
			assert.Equal(t, row.chest, chest.Level, "%s left chest", s)
			assert.InDelta(t, row.x, chest.CentreX, 12, "%s left chest is moved aside a little at most", s)
			assert.Positive(t, chest.CentreX, "the wearer's left is the viewer's right on the front")
		}
	}
}

func TestEveryPlacementSaysWhatItRestsOn(t *testing.T) {
	for _, c := range Cuts() {
		g := must(t, c.Cut, Size{Adult, "M"})
		for _, p := range Places(c.Cut) {
			place, err := g.Place(p)
			require.NoError(t, err)
			assert.Equal(t, p, place.Place)
			assert.Contains(t, place.Basis, "no source")
		}
		_, err := g.Place("hip pocket")
		assert.ErrorContains(t, err, "no place for a hip pocket")
	}
	_, err := must(t, BasketballTank, Size{Adult, "M"}).Place(SleeveNumber)
	assert.ErrorContains(t, err, "no place for a sleeve number")
	_, err = must(t, Shorts, Size{Adult, "M"}).Place(BackName)
	assert.ErrorContains(t, err, "shorts number")
	assert.Zero(t, must(t, Shorts, Size{Adult, "M"}).Room(BackName, 0, 10).Width)
}

// sportOf is the sport that a cut is worn for here.
func sportOf(c Cut) string {
	return map[Cut]string{CrewTee: "lacrosse", VNeck: "volleyball", TwoButton: "softball", FullButton: "baseball", BasketballTank: "basketball",
		RacerbackTank: "volleyball", Raglan: "baseball", FootballYoke: "football", Hockey: "hockey", Soccer: "soccer", Shorts: "basketball"}[c]
}

// levels are the tops and heights of the usual pieces of a garment, numbers under
// names.
func usualBands(t *testing.T, g *Garment) map[Place][2]float64 {
	heights, err := NumberHeightsFor(sportOf(g.Cut()), g.Size().Group)
	require.NoError(t, err)
	letters := LetterHeightFor(sportOf(g.Cut()), g.Size().Group).Usual
	usual := map[Place]Span{BackName: letters, FrontName: letters, BackNumber: heights.Back, FrontNumber: heights.Front,
		SleeveNumber: heights.Sleeve, ShortsNumber: heights.Shorts}
	out := map[Place][2]float64{}
	for _, p := range Places(g.Cut()) {
		place, err := g.Place(p)
		require.NoError(t, err)
		h := (usual[p].From + usual[p].To) / 2
		if p == LeftChest {
			h = place.MaxHeight
		}
		if h == 0 {
			continue
		}
		top := place.TopFor(h)
		if above := (map[Place]Place{BackNumber: BackName, FrontNumber: FrontName})[p]; above != "" {
			name, _ := g.Place(above)
			top = math.Max(out[above][0]+out[above][1]+name.GapAfter, place.Least)
		}
		out[p] = [2]float64{top, h}
	}
	return out
}

func TestEveryUsualPieceHasRoomOnEverySize(t *testing.T) {
	for _, c := range Cuts() {
		for _, s := range AllSizes() {
			g := must(t, c.Cut, s)
			for p, band := range usualBands(t, g) {
				r := g.Room(p, band[0], band[0]+band[1])
				least := 1.1 * band[1] // two digits of 0.5 of the height and their gap
				switch p {
				case BackName, FrontName:
					least = 130
				case LeftChest:
					least = 0.9 * band[1]
				case SleeveNumber:
					least = 0.7 * band[1] // a child's short sleeve holds one tall digit
				}
				assert.GreaterOrEqual(t, r.Width, least, "%s %s %s, %.0f high at %.0f: %+v", c.Cut, s, p, band[1], band[0], r)
			}
		}
	}
}

func TestRoomOfTwoButtonFollowsThePrintedTable(t *testing.T) {
	// Back name 0.70 of the shoulder width, team name 0.60 of the chest half, capped at 330 and 355 mm.
	for s, want := range map[Size][2]float64{
		{Youth, "XS"}: {225, 216}, {Youth, "M"}: {259, 250}, {Youth, "XL"}: {292, 285},
		{Adult, "XS"}: {307, 282}, {Adult, "M"}: {329, 330}, {Adult, "L"}: {330, 354}, {Adult, "4XL"}: {330, 355},
		{Women, "XS"}: {273, 264}, {Women, "M"}: {293, 312}, {Women, "3XL"}: {330, 355},
	} {
		g := must(t, TwoButton, s)
		name, team := g.Room(BackName, 110, 160), g.Room(FrontName, 330, 370)
		assert.InDelta(t, want[0], name.Convention, 0.51, "%s back name", s)
		assert.InDelta(t, want[1], team.Convention, 0.51, "%s front name", s)
		assert.Equal(t, team.Convention, team.Width, "%s: the chest is wide enough", s)
		assert.Equal(t, "convention, common practice, no source", team.Why)
	}
	assert.InDelta(t, 380, must(t, Hockey, Size{Adult, "M"}).Room(BackName, 110, 180).Convention, 1e-9)
}

func TestRoomIsDecidedByTheSeamWhereTheSeamIsNearer(t *testing.T) {
	r := must(t, RacerbackTank, Size{Adult, "M"}).Room(BackName, 120, 170)
	assert.Less(t, r.Width, 120.0, "inside the racer")
	assert.Equal(t, r.Panel, r.Width)
	assert.Contains(t, r.Why, "armhole binding")
	child := must(t, RacerbackTank, Size{Youth, "XS"}).Room(BackName, 100, 150)
	assert.Less(t, child.Width, r.Width, "a smaller racer has less room")
	assert.Less(t, must(t, CrewTee, Size{Youth, "XS"}).Room(BackName, 80, 130).Width, must(t, CrewTee, Size{Adult, "M"}).Room(BackName, 110, 160).Width)
}

func TestNumbersAndNamesStayOffSeamsAndPlackets(t *testing.T) {
	g := must(t, TwoButton, Size{Adult, "M"})
	m := g.Measures()
	assert.Zero(t, g.Room(FrontName, m.NeckDropFront+75, m.NeckDropFront+125).Width, "across the placket")
	assert.Equal(t, "placket", g.Room(FrontName, m.NeckDropFront+75, m.NeckDropFront+125).Line)
	assert.Positive(t, g.Room(FrontName, m.NeckDropFront+m.PlacketLength+25.01, 400).Width, "clear of its foot")
	assert.Zero(t, g.Room(BackNumber, 500, m.BodyLength-24).Width, "into the hem")
	assert.Zero(t, g.Room(BackNumber, m.BodyLength+50, m.BodyLength+90).Width, "off the garment")
	y := must(t, FootballYoke, Size{Adult, "M"})
	assert.Zero(t, y.Room(BackName, 120, 180).Width, "across the yoke seam")
	assert.Equal(t, "yoke seam", y.Room(BackName, 120, 180).Line)
}

func TestANumberOnAButtonFrontStandsOnTheWearersLeft(t *testing.T) {
	for _, c := range []Cut{TwoButton, FullButton} {
		g := must(t, c, Size{Adult, "M"})
		number := placed(t, c, Size{Adult, "M"}, FrontNumber)
		name := placed(t, c, Size{Adult, "M"}, FrontName)
		assert.InDelta(t, g.Measures().ChestHalf/4, number.CentreX, 1e-9)
		assert.Equal(t, 90.0, name.GapAfter)
		assert.Equal(t, c == FullButton, name.Split)
		assert.Greater(t, number.Top, name.Top)
	}
}

func TestASplitNameMayReachFromFrontToFront(t *testing.T) {
	g := must(t, FullButton, Size{Adult, "M"})
	place := placed(t, FullButton, Size{Adult, "M"}, FrontName)
	r := g.Room(FrontName, place.Top, place.Top+75)
	left, ok := g.clears(Front)[0].stretch(g.Measures().ChestHalf/4, place.Top, place.Top+75)
	require.True(t, ok)
	assert.InDelta(t, 2*left.hi, r.Panel, 1e-9, "the outer end of one front, twice")
	assert.Greater(t, left.lo, 25.0, "the placket's clearance stays free in between")
}

func TestSleevePlacementTurnsWithTheSleeve(t *testing.T) {
	for _, c := range []Cut{CrewTee, Hockey, Raglan} {
		g := must(t, c, Size{Adult, "M"})
		p := placed(t, c, Size{Adult, "M"}, SleeveNumber)
		a, b := p.Point(0, p.Level), p.Point(0, p.Level+10)
		assert.InDelta(t, p.CentreX, a.X, 1e-9)
		assert.InDelta(t, 10, b.Sub(a).Norm(), 1e-9)
		assert.InDelta(t, -p.Turn, math.Atan2(b.X-a.X, b.Y-a.Y), 1e-9, "turned by the angle between down and the sleeve")
		assert.Negative(t, p.Turn, "the sleeve on the viewer's right turns its lower end outward, anticlockwise on the page")
		outline := part(t, g, Front, "sleeves").Path.Flatten(0.1)
		assert.True(t, outline.Contains(a), "%s: the centre lies on the sleeve", c)
		right := p.Point(10, p.Level)
		assert.InDelta(t, 0, right.Sub(a).Dot(b.Sub(a)), 1e-9, "across is square to down")
	}
}

func TestRoomOnASleeveIsTwiceTheWayFromFoldToSeam(t *testing.T) {
	for _, c := range []Cut{CrewTee, Hockey, FootballYoke, Raglan} {
		for _, size := range []Size{{Youth, "S"}, {Women, "2XL"}} {
			g := must(t, c, size)
			p := placed(t, c, size, SleeveNumber)
			top := p.TopFor(60)
			// Walk square to the sleeve from the innermost point of the fold towards the body, on both halves, at many levels.
			fold, half := math.Inf(1), math.Inf(1)
			for _, q := range g.shape.(*frame).sleeve.fold.Flatten(1e-6) {
				d := q.Sub(p.Point(0, 0))
				if level := d.Dot(p.Point(0, 1).Sub(p.Point(0, 0))); top <= level && level <= top+60 {
					fold = math.Min(fold, d.Dot(p.Point(1, 0).Sub(p.Point(0, 0))))
				}
			}
			for _, s := range []Side{Front, Back} {
				var keeps []keep
				for _, k := range g.sleeveOn(s).keeps {
					if k.why != "fold" {
						keeps = append(keeps, k)
					}
				}
				lines := linesOf(keeps, 0.02)
				for i := range 16 {
					level := top + 4*float64(i)
					for d := 0.0; d < half; d += 0.2 {
						if short, _ := shortest(keeps, lines, p.Point(fold-d, level)); short > 0 {
							half = d
						}
					}
				}
			}
			r := g.Room(SleeveNumber, top, top+60)
			assert.InDelta(t, 2*half, r.Panel, 0.6, "%s %s", c, size) // the walk goes in steps of 0.2 mm
			assert.Equal(t, r.Panel, r.Width, "no convention for a sleeve number")
		}
	}
	assert.Zero(t, must(t, CrewTee, Size{Adult, "M"}).Room(SleeveNumber, 120, 260).Width, "past the hem")
}

func TestALowerOrDeeperBandNeverHasMoreRoomThanAPartOfIt(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := rapid.SampledFrom(Cuts()).Draw(rt, "cut").Cut
		p := rapid.SampledFrom(Places(c)).Draw(rt, "place")
		g, err := New(c, rapid.SampledFrom(AllSizes()).Draw(rt, "size"))
		require.NoError(rt, err)
		place, _ := g.Place(p)
		top := place.TopFor(60) + rapid.Float64Range(-30, 30).Draw(rt, "move")
		inner, outer := rapid.Float64Range(5, 60).Draw(rt, "part"), rapid.Float64Range(0, 60).Draw(rt, "more")
		all, part := g.Room(p, top, top+inner+outer), g.Room(p, top, top+inner)
		assert.LessOrEqual(rt, all.Width, part.Width+1e-9, "%s %s %s", c, g.Size(), p)
		assert.Equal(rt, all, g.Room(p, top+inner+outer, top), "order of the levels does not matter")
	})
}

func TestUsualHeightsOfEverySport(t *testing.T) {
	for _, sport := range Sports() {
		for _, g := range Groups() {
			h, err := NumberHeightsFor(sport, g)
			require.NoError(t, err)
			assert.LessOrEqual(t, h.Front.To, h.Back.From+1, "%s %s: the back is at least as tall", sport, g)
			assert.Positive(t, h.Back.From)
			assert.Positive(t, h.Stroke.From)
			assert.Contains(t, h.Basis, "no source")
			letters := LetterHeightFor(sport, g)
			assert.GreaterOrEqual(t, letters.Usual.From, letters.Floor)
		}
		child, _ := NumberHeightsFor(sport, Youth)
		adult, _ := NumberHeightsFor(sport, Adult)
		assert.GreaterOrEqual(t, adult.Back.From, child.Back.From)
	}
	_, err := NumberHeightsFor("curling", Adult)
	assert.ErrorContains(t, err, "basketball")
	h, err := NumberHeightsFor("Ice Hockey", Adult)
	require.NoError(t, err)
	assert.Equal(t, Span{250, 300}, h.Back)
	// NFHS football and basketball, FIBA: the rule's least number is not over the shop's usual one.
	football, _ := NumberHeightsFor("football", Adult)
	assert.InDelta(t, 254, football.Back.From, 0.5, "10 in (NFHS football, read in news texts that quote the rule)")
	assert.InDelta(t, 203.2, football.Front.From, 0.5, "8 in (the same)")
	basketball, _ := NumberHeightsFor("basketball", Adult)
	assert.GreaterOrEqual(t, basketball.Back.From, 200.0, "20 cm (FIBA, read in a general article)")
	assert.GreaterOrEqual(t, basketball.Front.From, 100.0, "10 cm (the same)")
}
