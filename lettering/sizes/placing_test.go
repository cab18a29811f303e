package sizes_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// yokes is a football order on which an arched name has no room on small sizes.
func yokes(players ...order.Player) *order.Order {
	o := herons(players...)
	o.Garment.Cut, o.Sport = garment.FootballYoke, "football"
	o.Pieces[0].Height.Length, o.Pieces[0].Outlines = length.Inches(7, 4), nil
	return o
}

func TestAPieceWithoutRoomIsReportedAndEverythingElseIsMade(t *testing.T) {
	s := resolve(t, yokes(player("Ng", "10", garment.Youth, "S"), player("Quill", "7", garment.Adult, "L")), nil)
	name, _ := s.Players[0].Piece(garment.BackName)
	number, ok := s.Players[0].Piece(garment.BackNumber)
	require.True(t, ok)
	assert.True(t, name.NoRoom)
	assert.Equal(t, fit.Over, name.Name.Verdict)
	assert.Zero(t, name.Name.Limit)
	assert.Contains(t, name.Room.Why, "yoke seam")
	assert.InDelta(t, 44.45, name.Height(), 1e-9, "drawn at the height asked")
	assert.NotEmpty(t, name.Ink())
	assert.False(t, number.NoRoom, "the number under it is made")
	other, _ := s.Players[1].Piece(garment.BackName)
	assert.False(t, other.NoRoom)
	assert.Equal(t, fit.Full, other.Name.Verdict)
}

func TestEveryRemedyGivesThePieceRoom(t *testing.T) {
	small := player("Ng", "10", garment.Youth, "S")
	name, _ := resolve(t, yokes(small), nil).Players[0].Piece(garment.BackName)
	kinds := map[string]bool{}
	for _, r := range name.Remedies {
		kinds[r.Kind] = true
		o := yokes(small)
		p := &o.Pieces[0]
		at := func(mm float64) *length.Length { l := length.FromMM(mm, length.Inch); return &l }
		switch r.Kind {
		case sizes.SmallerRise:
			assert.Less(t, r.Rise, p.Rise.MM())
			p.Rise = at(r.Rise)
		case sizes.StraightSet:
			p.Shape, p.Rise = "straight", nil
		case sizes.LowerLetters:
			assert.Less(t, r.Height, p.Height.Length.MM())
			p.Height.Length = *at(r.Height)
		case sizes.FurtherDown:
			p.Below = at(r.Below)
		case sizes.NextSize:
			size, err := garment.ParseSize(r.Size, "")
			require.NoError(t, err)
			o.Players[0].Size = size
		case sizes.LeaveOff:
			continue
		}
		mended, _ := resolve(t, o, nil).Players[0].Piece(garment.BackName)
		assert.False(t, mended.NoRoom, r.Kind)
		assert.NotEqual(t, fit.Over, mended.Name.Verdict, r.Kind)
	}
	assert.True(t, kinds[sizes.SmallerRise] && kinds[sizes.StraightSet] && kinds[sizes.NextSize] && kinds[sizes.LeaveOff], "%v", name.Remedies)
}

func TestDistancesAndHeightsOfASizeHoldForThatSize(t *testing.T) {
	o := herons(player("Ng", "7", garment.Adult, "M"), player("Ng", "7", garment.Youth, "M"), player("Ng", "7", garment.Youth, "XS"))
	o.Pieces[0].Belows = []order.SizedLength{
		{Group: garment.Youth, Letter: "XS", Length: length.Inches(2, 1)}, {Group: garment.Youth, Length: length.Inches(5, 2)}}
	o.Pieces[1].Heights = []order.SizedLength{{Group: garment.Youth, Length: length.Inches(6, 1)}}
	s := resolve(t, o, nil)
	for k, want := range []float64{90, 63.5, 50.8} {
		name, _ := s.Players[k].Piece(garment.BackName)
		assert.InDelta(t, want, name.BelowCollar, 1e-9)
		number, _ := s.Players[k].Piece(garment.BackNumber)
		assert.Equal(t, k > 0, math.Abs(number.Height()-152.4) < 1e-9)
	}
}

func TestAPieceStandsOnTheHandThatIsAskedFor(t *testing.T) {
	at := func(place order.Place, cut garment.Cut, hand string) sizes.Piece {
		o := herons(player("Ng", "7", garment.Adult, "M"))
		o.Garment.Cut = cut
		o.Pieces = []order.Piece{{Place: place, Face: "quantico", Height: order.Height{Length: length.Inches(3, 1)}, Shape: "straight", At: hand}}
		p, ok := resolve(t, o, nil).Players[0].Piece(place)
		require.True(t, ok)
		return p
	}
	assert.Zero(t, at(garment.FrontNumber, garment.CrewTee, "").At.X)
	assert.Positive(t, at(garment.FrontNumber, garment.CrewTee, order.AtLeft).At.X, "the wearer's left is on the viewer's right")
	assert.Equal(t, -at(garment.FrontNumber, garment.CrewTee, order.AtLeft).At.X, at(garment.FrontNumber, garment.CrewTee, order.AtRight).At.X)
	assert.Zero(t, at(garment.FrontNumber, garment.TwoButton, order.AtCentre).At.X)
	assert.True(t, at(garment.FrontNumber, garment.FullButton, order.AtCentre).NoRoom, "it would lie on the placket")
	left, right := at(garment.SleeveNumber, garment.CrewTee, ""), at(garment.SleeveNumber, garment.CrewTee, order.AtRight)
	assert.InDelta(t, -left.At.X, right.At.X, 1e-9)
	assert.InDelta(t, left.At.Y, right.At.Y, 1e-9)
	assert.Equal(t, -left.Turn, right.Turn)
	assert.Equal(t, left.Room, right.Room)
}

func TestANumberOnARacerBackStandsBelowTheRacer(t *testing.T) {
	for _, size := range garment.AllSizes() {
		o := herons(player("", "88", size.Group, size.Letter))
		o.Garment.Cut, o.Pieces = garment.RacerbackTank, o.Pieces[1:]
		o.Sport, o.Pieces[0].Face = "volleyball", "graduate"
		p := resolve(t, o, nil).Players[0]
		number, _ := p.Piece(garment.BackNumber)
		require.False(t, number.NoRoom, size)
		require.Equal(t, "full", number.Number.Verdict, size)
		assert.True(t, inside(number, p.Garment, finishedOf(t, number)), "%s", size)
	}
}

// Trade check, common practice, no source: numbers of 4 in in front and 8 in on
// the back go on every adult softball jersey, within the ranges of the placement
// table: the name 89 to 140 mm below the collar, the number 25 to 38 mm under it.
func TestFourAndEightInchNumbersFitEveryAdultSoftballJersey(t *testing.T) {
	for _, letter := range garment.Sizes(garment.Adult) {
		o := herons(player("Ng", "88", garment.Adult, letter))
		o.Pieces[0].Shape, o.Pieces[0].Rise = "straight", nil
		o.Pieces[1].Height = order.Height{Length: length.Inches(8, 1)}
		front := o.Pieces[1]
		front.Place, front.Height.Length = garment.FrontNumber, length.Inches(4, 1)
		o.Pieces = append(o.Pieces, front)
		p := resolve(t, o, nil).Players[0]
		name, _ := p.Piece(garment.BackName)
		assert.GreaterOrEqual(t, name.BelowCollar, 89.0, letter)
		assert.LessOrEqual(t, name.BelowCollar, 140.0, letter)
		for place, height := range map[order.Place]float64{garment.BackNumber: 203.2, garment.FrontNumber: 101.6} {
			number, _ := p.Piece(place)
			assert.Equal(t, "full", number.Number.Verdict, "%s %s", letter, place)
			assert.InDelta(t, height, number.Height(), 1e-9)
			assert.Empty(t, number.Eased, "%s %s", letter, place)
			assert.True(t, inside(number, p.Garment, finishedOf(t, number)), "%s %s", letter, place)
		}
		number, _ := p.Piece(garment.BackNumber)
		gap := number.Top - name.Top - 63.5
		assert.GreaterOrEqual(t, gap, 25.0, letter)
		assert.LessOrEqual(t, gap, 38.0, letter)
	}
}

// buttons is an order with a team name across a full placket.
func buttons(text string, edit func(*order.Piece)) *order.Order {
	o := herons(player("Ng", "7", garment.Adult, "L"))
	o.Garment.Cut, o.Pieces = garment.FullButton, o.Pieces[:1]
	p := &o.Pieces[0]
	p.Place, p.Text, p.Shape, p.Rise, p.Height.Length = garment.FrontName, text, "straight", nil, length.Inches(2, 1)
	edit(p)
	return o
}

func TestANameIsPartedAtAFullPlacket(t *testing.T) {
	for _, c := range []struct {
		text, shape, left, right string
		at                       int
	}{
		{"HERONS", "straight", "HER", "ONS", 0}, {"HERONS", "straight", "HE", "RONS", 2}, {"MILL BAY", "straight", "MILL", "BAY", 0},
		{"HERONS", "radial arch", "HER", "ONS", 0}, {"ÉIRE", "straight", "ÉI", "RE", 0},
	} {
		rise := length.Inches(1, 1)
		s := resolve(t, buttons(c.text, func(p *order.Piece) {
			if p.SplitAt = c.at; c.shape != "straight" {
				p.Shape, p.Rise = c.shape, &rise
			}
		}), nil)
		p := s.Players[0]
		name, _ := p.Piece(garment.FrontName)
		require.NotNil(t, name.Split, c.text)
		assert.Equal(t, [2]string{c.left, c.right}, [2]string{name.Split.Left, name.Split.Right})
		assert.NotEmpty(t, name.Split.Straddle)
		shape := finishedOf(t, name)
		low, high, ends := math.Inf(-1), math.Inf(1), shape.Bounds()
		for _, ring := range shape {
			for _, q := range ring {
				if q.X < 0 {
					low = math.Max(low, q.X)
				} else {
					high = math.Min(high, q.X)
				}
			}
		}
		assert.InDelta(t, name.Split.Gap, high-low, 0.05, "the halves are the opening apart")
		assert.InDelta(t, 0, high+low, 0.05, "in its middle")
		assert.InDelta(t, ends.Width(), name.InkWidth(), 0.05, "the width is that of both halves")
		assert.LessOrEqual(t, math.Max(-ends.Min.X, ends.Max.X), name.Room.Width/2+0.05, "and the wider one stays in the room")
		assert.True(t, inside(name, p.Garment, shape[:0]))
		assert.Zero(t, name.RoomCentre())
	}
}

func TestANameThatIsLeftWholeNamesTheLettersOnThePlacket(t *testing.T) {
	name, _ := resolve(t, buttons("HERONS", func(p *order.Piece) { p.Unsplit = true }), nil).Players[0].Piece(garment.FrontName)
	require.NotNil(t, name.Split)
	assert.True(t, name.Split.Whole())
	assert.Subset(t, name.Split.Straddle, []string{"R", "O"})
	assert.NotContains(t, name.Split.Straddle, "H")
	crew := buttons("HERONS", func(*order.Piece) {})
	crew.Garment.Cut = garment.CrewTee
	name, _ = resolve(t, crew, nil).Players[0].Piece(garment.FrontName)
	assert.Nil(t, name.Split, "nothing to part at")
}
