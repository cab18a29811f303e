package sizes_test

import (
	"context"
	"strings"
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
	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

// herons is a small order of ours: arched back names over block numbers.
func herons(players ...order.Player) *order.Order {
	white, gold := order.Colour{Name: "white", Hex: "#ffffff"}, order.Colour{Name: "gold", Hex: "#e8b33a"}
	rise := length.Inches(1, 1)
	return &order.Order{
		Team: "Alder Point Herons", Sport: "softball", Units: length.Inch, Method: order.DefaultMethod,
		Garment: order.GarmentChoice{Cut: garment.TwoButton, Group: garment.Adult, Colour: order.Colour{Name: "navy", Hex: "#14284b"}, Fibre: "polyester"},
		Pieces: []order.Piece{
			{Place: garment.BackName, Face: "oswald", Case: spelling.Upper, Height: order.Height{Length: length.Inches(5, 2)},
				Shape: "radial arch", Rise: &rise, Spacing: "baseline", Colour: white,
				Outlines: []order.Outline{{Width: length.Inches(1, 8), Colour: gold}}},
			{Place: garment.BackNumber, Face: "quantico", Height: order.Height{By: order.BySize}, Shape: "straight", Spacing: "baseline", Colour: gold,
				Outlines: []order.Outline{{Width: length.Inches(1, 8), Colour: white}}},
		},
		Fit:     order.Fit{Tracking: -0.04, Width: 0.8, Same: "none"},
		Players: players,
	}
}

func player(name, number string, group garment.Group, letter string) order.Player {
	return order.Player{Name: name, Number: number, Size: garment.Size{Group: group, Letter: letter}, SizeKnown: true, Row: source.Place{File: "roster.csv", Line: 2, Column: 1}}
}

func resolve(t *testing.T, o *order.Order, rules *rulebook.Rules) *sizes.Sized {
	t.Helper()
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Rules: rules, Workers: 2})
	require.NoError(t, err)
	return s
}

func team() []order.Player {
	return []order.Player{
		player("Ng", "7", garment.Adult, "M"), player("Wojciechowski", "07", garment.Adult, "M"),
		player("Featherstonehaugh-Lindqvist", "0", garment.Youth, "S"), player("Quill", "00", garment.Youth, "XS"),
		player("Íñiguez", "88", garment.Women, "2XL"), player("O’Rourke", "11", garment.Adult, "4XL"),
	}
}

func TestEveryPieceStaysWithinItsRoom(t *testing.T) {
	s := resolve(t, herons(team()...), nil)
	for _, p := range s.Players {
		require.Len(t, p.Pieces, 2, p.Label())
		for _, piece := range p.Pieces {
			if piece.Name != nil && piece.Name.Verdict != fit.Over || piece.Number != nil && piece.Number.Verdict == "full" {
				assert.LessOrEqual(t, piece.InkWidth(), piece.Room.Width, "%s %s", p.Label(), piece.Asked.Place)
			}
		}
	}
	long, _ := s.Players[2].Piece(garment.BackName)
	assert.Equal(t, fit.Over, long.Name.Verdict)
	assert.NotEmpty(t, long.Name.WouldFit, "an over name comes with its ways out")
}

func TestPlayersOfOneSizeHaveTheirNumbersOnOneLevel(t *testing.T) {
	s := resolve(t, herons(team()...), nil)
	first, _ := s.Players[0].Piece(garment.BackNumber)
	second, _ := s.Players[1].Piece(garment.BackNumber)
	assert.Equal(t, first.Top, second.Top)
	assert.Equal(t, "7", first.Text())
	assert.Equal(t, "07", second.Text(), "a number is text")
}

func TestANumberKeepsClearOfTheEndsOfAnArch(t *testing.T) {
	o := herons(player("Brightwater", "88", garment.Adult, "L"))
	tight := length.Inches(3, 1)
	o.Pieces[0].Rise = &tight
	s := resolve(t, o, nil)
	name, _ := s.Players[0].Piece(garment.BackName)
	number, _ := s.Players[0].Piece(garment.BackNumber)
	onGarment := func(p sizes.Piece) geom.Region {
		layers, err := p.Outlines()
		require.NoError(t, err)
		return layers[len(layers)-1].Transform(geom.Scale(1, -1)).Transform(geom.Translate(p.At.X, p.At.Y))
	}
	both := append(onGarment(name), onGarment(number)...)
	for i, ring := range both { // mirrored by the change of y
		for a, b := 0, len(ring)-1; a < b; a, b = a+1, b-1 {
			both[i][a], both[i][b] = both[i][b], both[i][a]
		}
	}
	merged, err := outline.Union(both)
	require.NoError(t, err)
	assert.InDelta(t, both.Area(), merged.Area(), 0.5, "name and number do not overlap")
}

func TestBySizeIsRaisedToTheRuleBook(t *testing.T) {
	book, err := rulebook.Load("nfhs-softball")
	require.NoError(t, err)
	rules, err := book.In("2027")
	require.NoError(t, err)
	least := rules.Position("back number").HeightMin.Length.MM()
	for _, p := range resolve(t, herons(team()...), rules).Players {
		number, _ := p.Piece(garment.BackNumber)
		assert.GreaterOrEqual(t, number.Height(), least, p.Label())
	}
	o := herons(team()...)
	o.Pieces[1].Height.By = order.ByRule
	for _, p := range resolve(t, o, rules).Players {
		number, _ := p.Piece(garment.BackNumber)
		assert.InDelta(t, least, number.Height(), 1e-9, p.Label())
	}
	_, err = sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded})
	require.ErrorContains(t, err, "the job names no rule book")
}

func TestSameGivesNamesOneHeight(t *testing.T) {
	names := []order.Player{
		player("Ng", "7", garment.Adult, "M"), player("Wojciechowskieva", "8", garment.Adult, "M"), player("Quill", "9", garment.Adult, "S"),
		player("Featherstonehaugh-Lindqvist", "0", garment.Youth, "S"),
	}
	heights := func(same string) (out []float64) {
		o := herons(names...)
		o.Fit.Same = same
		for _, p := range resolve(t, o, nil).Players[:3] {
			piece, _ := p.Piece(garment.BackName)
			out = append(out, piece.Name.LetterHeight)
		}
		return out
	}
	alone, bySize, team := heights("none"), heights("size"), heights("team")
	require.Less(t, alone[1], alone[0], "the long name comes out lower")
	assert.InDelta(t, alone[1], bySize[0], 1e-6)
	assert.Equal(t, alone[2], bySize[2], "another size is not touched")
	assert.InDelta(t, alone[1], team[2], 1e-6, "and the name that is over pulls nobody down")
}

func TestFaultsNameEveryPlayerAndTheRemedy(t *testing.T) {
	o := herons(player("Đurić", "7", garment.Adult, "M"), player("Ng", "1", garment.Adult, "M"), player("Ωmega", "2", garment.Adult, "L"))
	o.Pieces[0].Face = "graduate"
	_, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: 2})
	var faults source.Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 2, "all at once")
	assert.Contains(t, faults[0].Message, "Đurić, back name")
	assert.Contains(t, faults[0].Message, "U+0110")
	assert.Equal(t, "roster.csv:2:1", faults[0].Place.String())
	assert.Contains(t, faults[1].Message, "Ωmega")
}

func TestAnInterruptedOrderGivesNothing(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	s, err := sizes.Resolve(ctx, herons(team()...), sizes.Options{Face: typeface.Embedded})
	require.ErrorIs(t, err, context.Canceled)
	assert.Nil(t, s)
}

func TestTheFingerprintDoesNotDependOnWorkersAndChangesWithEveryEdit(t *testing.T) {
	print := func(workers int, edit func(*order.Order)) string {
		o := herons(team()...)
		if edit != nil {
			edit(o)
		}
		s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: workers})
		require.NoError(t, err)
		return s.Fingerprint()
	}
	base := print(1, nil)
	assert.Len(t, base, 64)
	assert.Equal(t, base, print(7, nil))
	seen := map[string]string{base: "nothing"}
	hundredth := length.FromMM(0.01, length.Millimetre)
	for what, edit := range map[string]func(*order.Order){
		"a letter":             func(o *order.Order) { o.Players[0].Name = "Nh" },
		"an accent":            func(o *order.Order) { o.Players[4].Name = "Iñiguez" },
		"a number":             func(o *order.Order) { o.Players[0].Number = "07" },
		"a size":               func(o *order.Order) { o.Players[0].Size.Letter = "L" },
		"a colour":             func(o *order.Order) { o.Pieces[0].Colour.Hex = "#fffffe" },
		"an outline's colour":  func(o *order.Order) { o.Pieces[0].Outlines[0].Colour.Hex = "#e8b33b" },
		"an outline's width":   func(o *order.Order) { o.Pieces[0].Outlines[0].Width = o.Pieces[0].Outlines[0].Width.Add(hundredth) },
		"an outline's join":    func(o *order.Order) { o.Pieces[0].Outlines[0].Join = outline.Mitre },
		"the letter height":    func(o *order.Order) { o.Pieces[0].Height.Length = o.Pieces[0].Height.Length.Add(hundredth) },
		"the rise":             func(o *order.Order) { r := o.Pieces[0].Rise.Add(hundredth); o.Pieces[0].Rise = &r },
		"the face":             func(o *order.Order) { o.Pieces[1].Face = "anton" },
		"the shape":            func(o *order.Order) { o.Pieces[0].Shape = "vertical arch" },
		"the garment":          func(o *order.Order) { o.Garment.Cut = garment.CrewTee },
		"the garment's colour": func(o *order.Order) { o.Garment.Colour.Hex = "#14284c" },
		"the fibre":            func(o *order.Order) { o.Garment.Fibre = "cotton" },
		"the method":           func(o *order.Order) { o.Method = "sewn twill" },
		"the distance":         func(o *order.Order) { b := length.Inches(4, 1); o.Pieces[0].Below = &b },
		"the team":             func(o *order.Order) { o.Team += "s" },
		"the terms":            func(o *order.Order) { o.Terms = "cash" },
		"one player more":      func(o *order.Order) { o.Players = append(o.Players, player("Late", "5", garment.Adult, "M")) },
	} {
		f := print(2, edit)
		assert.Empty(t, seen[f], "%s gives the fingerprint of %s", what, seen[f])
		seen[f] = what
	}
	assert.False(t, strings.ContainsAny(base, "ABCDEF"))
}
