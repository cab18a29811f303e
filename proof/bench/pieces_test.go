package bench_test

import (
	"context"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

var (
	white = order.Colour{Name: "white", Hex: "#ffffff"}
	gold  = order.Colour{Name: "gold", Hex: "#e8b33a"}
	navy  = order.Colour{Name: "navy", Hex: "#14284b"}
)

// ring is an outline of so many 1/16 in.
func ring(sixteenths int64, c order.Colour, j outline.Join) order.Outline {
	return order.Outline{Width: length.Inches(sixteenths, 16), Colour: c, Join: j}
}

// number and name are pieces as an order asks for them.
func number(rings ...order.Outline) order.Piece {
	return order.Piece{Place: garment.BackNumber, Face: "graduate", Height: order.Height{Length: length.Inches(8, 1)}, Shape: "straight",
		Spacing: "baseline", Colour: gold, Outlines: rings}
}

func name(face string, rings ...order.Outline) order.Piece {
	rise := length.Inches(1, 1)
	return order.Piece{Place: garment.BackName, Face: face, Case: spelling.Upper, Height: order.Height{Length: length.Inches(5, 2)},
		Shape: "radial arch", Rise: &rise, Spacing: "baseline", Colour: gold, Outlines: rings}
}

// frontName is a script team name with a tail that has a small text laid on it.
func frontName(laid bool) order.Piece {
	p := order.Piece{Place: garment.FrontName, Text: "Herons", Face: "yellowtail", Case: spelling.Typed, Height: order.Height{Length: length.Inches(3, 1)},
		Shape: "straight", Spacing: "baseline", Colour: navy, Outlines: []order.Outline{ring(2, white, outline.Round)}}
	if laid {
		p.Tail = &order.Tail{Text: "ALDER POINT", Face: "oswald", Thickness: 0.4, Laid: true, Colour: gold, Plain: true}
	}
	return p
}

// sized sizes one piece for one player.
func sized(t require.TestingT, cut garment.Cut, text string, asked order.Piece) sizes.Piece {
	player := order.Player{Name: text, Number: text, Size: garment.Size{Group: garment.Adult, Letter: "L"}, SizeKnown: true,
		Row: source.Place{File: "roster.csv", Line: 2, Column: 1}}
	o := &order.Order{
		Team: "Alder Point Herons", Sport: "softball", Units: length.Inch, Method: order.DefaultMethod,
		Garment: order.GarmentChoice{Cut: cut, Group: garment.Adult, Colour: navy, Fibre: "polyester"},
		Pieces:  []order.Piece{asked}, Fit: order.Fit{Tracking: -0.04, Width: 0.8, Same: "none"}, Players: []order.Player{player},
	}
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, NoWaysOut: true})
	require.NoError(t, err)
	require.Len(t, s.Players[0].Pieces, 1)
	return s.Players[0].Pieces[0]
}
