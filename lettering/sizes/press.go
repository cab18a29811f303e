package sizes

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/platen"
)

// Press says how the pieces of one place are pressed on one size. They are alike
// up to what they say, so it is told for the one that needs most.
type Press struct {
	Size   garment.Size
	Place  order.Place // empty for all pieces of a side at once
	Side   garment.Side
	Pieces int // how many are pressed so; of a stack, how many garments
	Player int // index of the player whose piece needs most
	Box    platen.Piece
	Fit    platen.Fit
}

// Press returns how every piece is pressed, on the platens of the order or, where
// it lists none, on the usual ones: by size, then by place as the job has them,
// then the pieces of the front and of the back together where there are several.
// Sleeves are turned on the press and are no part of a stack.
func (s *Sized) Press() []Press {
	platens := s.Order.Platens
	if len(platens) == 0 {
		platens = platen.Usual()
	}
	found := map[pressKey]*Press{}
	for i, p := range s.Players {
		if p.Garment == nil {
			continue
		}
		stacks := map[garment.Side][]platen.Piece{}
		for _, piece := range p.Pieces {
			box := piece.Box()
			worst(found, pressKey{p.Size, piece.Side, piece.Asked.Place}, i, box, platens)
			if piece.Turn == 0 {
				stacks[piece.Side] = append(stacks[piece.Side], box)
			}
		}
		for side, boxes := range stacks {
			if len(boxes) > 1 {
				worst(found, pressKey{p.Size, side, ""}, i, platen.Stack(boxes), platens)
			}
		}
	}
	out := make([]Press, 0, len(found))
	for _, press := range found {
		press.Fit = platen.Choose(s.Players[press.Player].Garment, press.Box, platens)
		out = append(out, *press)
	}
	slices.SortFunc(out, func(a, b Press) int {
		return cmp.Or(a.Size.Compare(b.Size), cmp.Compare(s.rank(a.Place), s.rank(b.Place)), cmp.Compare(a.Side, b.Side))
	})
	return out
}

type pressKey struct {
	size  garment.Size
	side  garment.Side
	place order.Place
}

// worst counts a piece and keeps it where it needs more than those before it.
func worst(found map[pressKey]*Press, k pressKey, player int, box platen.Piece, platens []platen.Platen) {
	fit := platen.Choose(nil, box, platens)
	press := found[k]
	if press == nil {
		found[k] = &Press{Size: k.size, Place: k.place, Side: k.side, Pieces: 1, Player: player, Box: box, Fit: fit}
		return
	}
	press.Pieces++
	if needs(fit, press.Fit) > 0 {
		press.Player, press.Box, press.Fit = player, box, fit
	}
}

// needs orders fits by what they ask of the shop.
func needs(a, b platen.Fit) int {
	rank := func(f platen.Fit) int { return [...]int{2, 0, 1}[f.Presses] }
	area := func(p platen.Platen) float64 { return p.Width.MM() * p.Height.MM() }
	return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(area(a.Platen), area(b.Platen)),
		cmp.Compare(a.NeedWidth*a.NeedHeight, b.NeedWidth*b.NeedHeight))
}

// rank is the place's index in the job; stacks come last.
func (s *Sized) rank(place order.Place) int {
	for i, p := range s.Order.Pieces {
		if p.Place == place {
			return i
		}
	}
	return len(s.Order.Pieces)
}

// Box returns the finished box of the piece, outlines included, as it lies on its
// garment.
func (p Piece) Box() platen.Piece {
	ink := p.Ink().Bounds().Grow(p.Reach())
	width, height := ink.Width(), ink.Height()
	if p.Name != nil { // the tips of mitred outlines reach further
		width, height = math.Max(width, p.Name.InkWidth), math.Max(height, p.Name.InkHeight)
	} else {
		width, height = math.Max(width, p.Number.InkWidth), math.Max(height, p.Number.InkHeight)
	}
	middle := ink.Center()
	centre := geom.Rotate(p.Turn).Apply(geom.Point{X: middle.X, Y: -middle.Y}).Add(p.At)
	return platen.Piece{Side: p.Side, Centre: centre, Width: width, Height: height, Turn: p.Turn}
}
