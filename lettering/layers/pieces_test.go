package layers_test

import (
	"context"
	"math"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
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

func of(t require.TestingT, p sizes.Piece, method string, s layers.Settings) layers.Art {
	art, err := layers.Of(p, method, s)
	require.NoError(t, err)
	return art
}

// layer returns the layer of that name.
func layer(t require.TestingT, a layers.Art, name string) layers.Layer {
	for _, l := range a.Layers {
		if l.Name == name {
			return l
		}
	}
	require.Fail(t, "no layer "+name)
	return layers.Layer{}
}

func names(a layers.Art) []string {
	var out []string
	for _, l := range a.Layers {
		out = append(out, l.Name)
	}
	return out
}

// toEdge is the distance from a point to the nearest edge of a region, measured
// plainly from every edge.
func toEdge(p geom.Point, r geom.Region) float64 {
	best := math.Inf(1)
	for _, ring := range r {
		a := ring[len(ring)-1]
		for _, b := range ring {
			v, w := b.Sub(a), p.Sub(a)
			t := math.Max(0, math.Min(1, w.Dot(v)/math.Max(v.Dot(v), 1e-18)))
			best = math.Min(best, w.Sub(v.Mul(t)).Norm())
			a = b
		}
	}
	return best
}

// apart is the smallest distance between the edges of two regions of which one
// lies inside the other, and the largest from the edge of the first to that of
// the second; step thins the points that it is measured at.
func apart(a, b geom.Region, step int) (least, most float64) {
	least = math.Inf(1)
	for _, ring := range a {
		for i := 0; i < len(ring); i += step {
			d := toEdge(ring[i], b)
			least, most = math.Min(least, d), math.Max(most, d)
		}
	}
	for _, ring := range b {
		for i := 0; i < len(ring); i += step {
			least = math.Min(least, toEdge(ring[i], a))
		}
	}
	return least, most
}

func inside(inner, outer geom.Region, step int) bool {
	for _, ring := range inner {
		for i := 0; i < len(ring); i += step {
			if !outer.Contains(ring[i]) {
				return false
			}
		}
	}
	return true
}

// holes and outers part the rings of a region that runs as settled ones do.
func holes(r geom.Region) (inner, outer geom.Region) {
	for _, ring := range r {
		if ring.Area() < 0 {
			inner = append(inner, ring)
		} else {
			outer = append(outer, ring)
		}
	}
	return inner, outer
}
