package sizes_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
)

// spare is what is left beyond the margins between a finished piece and the lines
// of the panel it lies on, mm, measured point by point; under 0 where one is missed.
func spare(t *testing.T, g *garment.Garment, p sizes.Piece) float64 {
	t.Helper()
	shape := finishedOf(t, p)
	middle, least := shape.Bounds().Center(), math.Inf(1)
	for _, panel := range g.Panels(p.Side) {
		if panel.Sleeve || p.Split == nil && !(geom.Region{panel.Cloth}).Contains(middle) {
			continue
		}
		for _, line := range panel.Lines {
			if p.Split != nil && line.Kind == garment.HardLine {
				continue // the halves stand off the opening by construction
			}
			// Either may have its corners far apart, so both look at the other.
			open := geom.Region{geom.Ring(line.Points)}
			for i := 1; i < len(line.Points); i++ {
				bit := geom.Region{{line.Points[i-1], line.Points[i]}}
				least = math.Min(least, math.Min(nearest(shape, bit), nearest(bit, shape))-line.Margin)
			}
			if len(open[0]) == 1 {
				least = math.Min(least, nearest(shape, open)-line.Margin)
			}
		}
	}
	return least
}

// largestOf is an order whose piece is to be the largest that lies inside.
func largestOf(cut garment.Cut, sport string, p order.Piece, players ...order.Player) *order.Order {
	o := herons(players...)
	o.Garment.Cut, o.Sport = cut, sport
	p.Height, p.Spacing = order.Height{By: order.Largest}, "baseline"
	if p.Shape == "" {
		p.Shape = "straight"
	}
	o.Pieces = []order.Piece{p}
	return o
}

func TestTheLargestLiesInsideAndALittleMoreDoesNot(t *testing.T) {
	inch := func(n, d int64) *length.Length { l := length.Inches(n, d); return &l }
	border := func(j outline.Join) []order.Outline {
		return []order.Outline{{Width: length.Inches(1, 8), Join: j}}
	}
	long := []order.Player{player("Wojciechowskieva", "8", garment.Adult, "M"), player("Ng", "7", garment.Adult, "M")}
	small := []order.Player{player("Brandtmeister", "88", garment.Youth, "XS"), player("Ngo", "7", garment.Youth, "XS")}
	for name, o := range map[string]*order.Order{
		"arched":        largestOf(garment.TwoButton, "softball", order.Piece{Place: garment.BackName, Face: "oswald", Shape: "radial arch", Rise: inch(2, 1), Outlines: border(outline.Round)}, long...),
		"arched down":   largestOf(garment.CrewTee, "softball", order.Piece{Place: garment.BackName, Face: "oswald", Shape: "radial arch down", Rise: inch(1, 1)}, small...),
		"vertical":      largestOf(garment.FootballYoke, "football", order.Piece{Place: garment.BackName, Face: "graduate", Shape: "vertical arch", Rise: inch(1, 2)}, long...),
		"mitred":        largestOf(garment.RacerbackTank, "basketball", order.Piece{Place: garment.BackName, Face: "league-gothic", Outlines: border(outline.Mitre)}, small...),
		"a racer":       largestOf(garment.RacerbackTank, "basketball", order.Piece{Place: garment.BackName, Face: "oswald"}, small...),
		"team name":     largestOf(garment.CrewTee, "softball", order.Piece{Place: garment.FrontName, Text: "Herons", Face: "yellowtail", Outlines: border(outline.Round)}, small...),
		"parted":        largestOf(garment.FullButton, "baseball", order.Piece{Place: garment.FrontName, Text: "Herons", Face: "graduate"}, long...),
		"low on a tee":  largestOf(garment.CrewTee, "football", order.Piece{Place: garment.BackNumber, Face: "graduate", Below: inch(12, 1)}, small...),
		"below a yoke":  largestOf(garment.FootballYoke, "football", order.Piece{Place: garment.BackNumber, Face: "alfa-slab-one", Below: inch(10, 1)}, small...),
		"half and half": largestOf(garment.TwoButton, "softball", order.Piece{Place: garment.LeftChest, Text: "Alder", Face: "oswald", Limit: inch(20, 1), Outlines: border(outline.Bevel)}, small...),
	} {
		s := resolve(t, o, nil)
		place := o.Pieces[0].Place
		found, asked := 0.0, s.Players[0].Garment
		least := math.Inf(1)
		for _, p := range s.Players {
			piece, ok := p.Piece(place)
			require.True(t, ok, name)
			if piece.Name != nil {
				assert.Equal(t, fit.Full, piece.Name.Verdict, name)
			} else {
				assert.Equal(t, "full", piece.Number.Verdict, name)
			}
			found = piece.Height()
			first, _ := s.Players[0].Piece(place)
			assert.Equal(t, first.Height(), found, "%s: all players of the size have one height", name)
			least = math.Min(least, spare(t, asked, piece))
		}
		assert.Greater(t, least, -0.04, "%s, %.2f mm high", name, found)

		// A twentieth of a millimetre more, and nothing that might ease it.
		first, _ := s.Players[0].Piece(place)
		o.Pieces[0].Height = order.Height{Length: length.FromMM(found+0.05, length.Millimetre)}
		limit := length.FromMM(first.Room.Width+1, length.Millimetre)
		o.Pieces[0].Limit, o.Fit.Tracking, o.Fit.Width, o.Fit.Height = &limit, 0, 1, &limit
		if o.Pieces[0].Rise != nil { // on the same circle
			radius := length.FromMM(first.Name.Radius, length.Millimetre)
			o.Pieces[0].Rise, o.Pieces[0].Radius = nil, &radius
		}
		more := math.Inf(1)
		for _, p := range resolve(t, o, nil).Players {
			piece, _ := p.Piece(place)
			require.InDelta(t, found+0.05, piece.Height(), 1e-6, name)
			more = math.Min(more, spare(t, asked, piece))
		}
		assert.Less(t, more, -0.02, "%s, %.2f mm high with %.3f to spare", name, found, least)
		assert.Less(t, more, least, name)
		t.Logf("%s: %.2f mm high, %.4f to spare; 0.05 mm more, %.4f", name, found, least, more)
	}
}

func TestALongTextDecidesForItsSizeAndOneThatCannotLieInsideForNobody(t *testing.T) {
	name := order.Piece{Place: garment.BackName, Face: "oswald"}
	heights := func(same string, players ...order.Player) (out []float64) {
		o := largestOf(garment.TwoButton, "softball", name, players...)
		o.Fit.Same = same
		for _, p := range resolve(t, o, nil).Players {
			out = append(out, backName(t, p).Height())
		}
		return out
	}
	ng, long := player("Ng", "7", garment.Adult, "M"), player("Wojciechowskieva", "8", garment.Adult, "M")
	never := player("Featherstonehaugh-Lindqvist", "9", garment.Adult, "M")
	large, kid := player("Schwarzenbergers", "2", garment.Adult, "XL"), player("Pim", "3", garment.Youth, "M")

	assert.Equal(t, []float64{63.5}, heights("none", ng), "no more than shops usually make")
	both := heights("none", ng, long, large)
	assert.Equal(t, both[0], both[1])
	assert.Less(t, both[1], both[2], "another size has its own")
	assert.Less(t, both[2], 63.5)
	with := heights("none", ng, long, never)
	assert.Equal(t, both[:2], with[:2], "a name that cannot lie inside pulls nobody down")
	assert.Less(t, with[2], with[0], "and is eased")

	team := heights("team", ng, long, large, kid)
	assert.Equal(t, []float64{both[0], both[0], both[0]}, team[:3], "the lowest of the sizes")
	assert.Equal(t, 50.8, team[3], "as with by size, youth sizes have their own")
}

func TestTheLargestNumberLeavesTheNameItsPlace(t *testing.T) {
	o := herons(player("Quill", "88", garment.Youth, "XS"), player("Ng", "7", garment.Youth, "XS"))
	o.Garment.Cut, o.Sport = garment.RacerbackTank, "football"
	o.Pieces[0].Height.Length, o.Pieces[1].Height.By, o.Pieces[1].Face = length.Inches(2, 1), order.Largest, "league-gothic"
	s := resolve(t, o, nil)
	name, _ := s.Players[0].Piece(garment.BackName)
	number, _ := s.Players[0].Piece(garment.BackNumber)
	assert.Equal(t, "full", number.Number.Verdict)
	assert.Less(t, number.Height(), 203.2, "the hem is too near for the usual height")
	assert.Equal(t, 50.8, name.AskedHeight, "nothing is taken from the name")
	assert.Empty(t, number.Eased)
	assert.InDelta(t, 0, spare(t, s.Players[0].Garment, number), 0.05)
	gap := nearest(finishedOf(t, name), finishedOf(t, number))
	assert.GreaterOrEqual(t, gap, sizes.Clearance-0.05)
	require.InDelta(t, name.At.Y+45, number.Top, 30, "a usual gap under the name")
}

func TestTheLargestKeepsToTheRulesAndToALimit(t *testing.T) {
	book, err := rulebook.Load("nfhs-softball")
	require.NoError(t, err)
	rules, err := book.In("2027")
	require.NoError(t, err)
	demanded := rules.Position("back number").HeightMin.Length.MM()
	o := largestOf(garment.TwoButton, "softball", order.Piece{Place: garment.BackNumber, Face: "graduate"}, player("Ng", "7", garment.Youth, "L"), player("Quill", "8", garment.Adult, "L"))
	for _, p := range resolve(t, o, rules).Players {
		piece, _ := p.Piece(garment.BackNumber)
		assert.GreaterOrEqual(t, piece.Height(), demanded, p.Size)
	}
	limit := length.Inches(8, 1)
	name := order.Piece{Place: garment.BackName, Face: "oswald", Limit: &limit}
	piece := backName(t, resolve(t, largestOf(garment.TwoButton, "softball", name, player("Quilliams", "8", garment.Adult, "L")), nil).Players[0])
	assert.Equal(t, fit.Full, piece.Name.Verdict)
	assert.InDelta(t, limit.MM(), piece.InkWidth(), 0.2)
	assert.LessOrEqual(t, piece.InkWidth(), limit.MM())
}

func TestARunOfLargestHeightsIsInTheShopsSteps(t *testing.T) {
	o := largestOf(garment.TwoButton, "softball", order.Piece{Place: garment.BackName, Face: "oswald", Run: "every size"}, squad()...)
	for _, unit := range []length.Unit{length.Inch, length.Centimetre} {
		o.Units = unit
		held := 0
		for _, p := range resolve(t, o, nil).Players {
			n := backName(t, p).Name
			if n.Verdict == fit.Over || n.Verdict == fit.Reduced {
				continue // cannot lie inside at a height of the run
			}
			held++
			step := 25.4 / 8
			if unit != length.Inch {
				step = 5
			}
			assert.InDelta(t, math.Round(n.LetterHeight/step)*step, n.LetterHeight, 1e-5, "%s in %v", p.Name, unit)
		}
		assert.Greater(t, held, 3)
	}
}

func TestAHeightThatIsWrittenForASizeStaysBesideLargest(t *testing.T) {
	o := largestOf(garment.RacerbackTank, "basketball", order.Piece{Place: garment.BackName, Face: "oswald"},
		player("Brandtmeister", "8", garment.Youth, "XS"), player("Ng", "7", garment.Youth, "XS"), player("Quill", "6", garment.Adult, "M"))
	o.Pieces[0].Heights = []order.SizedLength{{Group: garment.Youth, Length: length.Inches(2, 1)}}
	s := resolve(t, o, nil)
	assert.Equal(t, 63.5, backName(t, s.Players[2]).Height())
	ng, long := backName(t, s.Players[1]), backName(t, s.Players[0])
	assert.Equal(t, 50.8, ng.Height())
	assert.Equal(t, fit.Reduced, long.Name.Verdict, "it does not lie inside at the height written")
	assert.Greater(t, spare(t, s.Players[0].Garment, long), -0.04, "and is eased until it does")
}
