package tally

import (
	"cmp"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// SizeRow is how many pieces of a place go on garments of one size.
type SizeRow struct {
	Size   garment.Size
	Place  order.Place
	Pieces int
}

// Blank is garments to order.
type Blank struct {
	Cut          garment.Cut
	Size         garment.Size
	Colour, Trim order.Colour // Trim is zero where the job names none
	Count        int
}

// Pick is what is taken for one player.
type Pick struct {
	Player int // index into Sized.Players
	Number string
	Name   string // as it is spelled on the roster; empty for none
	Label  string // how messages call the player
	Size   garment.Size
	Known  bool // the size is known: otherwise there are no pieces
	Pieces []PickPiece
}

// PickPiece is one piece of a pick list.
type PickPiece struct {
	Place  order.Place
	Text   string // as it is cut, with a line feed where it has two lines
	Height float64
	Spots  []Spot // none where there are no sheets
}

// sizeRows counts pieces by size, then by place in the order of the job.
func sizeRows(s *sizes.Sized) []SizeRow {
	var out []SizeRow
	eachPiece(s, func(player int, p *sizes.Piece) {
		size := s.Players[player].Size
		i := slices.IndexFunc(out, func(r SizeRow) bool { return r.Size == size && r.Place == p.Asked.Place })
		if i < 0 {
			i, out = len(out), append(out, SizeRow{Size: size, Place: p.Asked.Place})
		}
		out[i].Pieces++
	})
	rank := func(p order.Place) int {
		return slices.IndexFunc(s.Order.Pieces, func(a order.Piece) bool { return a.Place == p })
	}
	slices.SortStableFunc(out, func(a, b SizeRow) int {
		return cmp.Or(a.Size.Compare(b.Size), cmp.Compare(rank(a.Place), rank(b.Place)))
	})
	return out
}

// blanks counts garments by size and lists who has none yet.
func blanks(s *sizes.Sized) (out []Blank, ask []int) {
	g := s.Order.Garment
	for i, p := range s.Players {
		if p.Garment == nil {
			ask = append(ask, i)
			continue
		}
		k := slices.IndexFunc(out, func(b Blank) bool { return b.Size == p.Size })
		if k < 0 {
			k, out = len(out), append(out, Blank{Cut: g.Cut, Size: p.Size, Colour: g.Colour, Trim: g.Trim})
		}
		out[k].Count++
	}
	slices.SortFunc(out, func(a, b Blank) int { return a.Size.Compare(b.Size) })
	return out, ask
}

// picks lists the pieces of every player.
func picks(s *sizes.Sized, spots func(int, garment.Place) []Spot) []Pick {
	out := make([]Pick, len(s.Players))
	for i, p := range s.Players {
		pick := Pick{Player: i, Number: p.Number, Name: p.Name, Label: p.Label(), Size: p.Size, Known: p.Garment != nil}
		for _, piece := range p.Pieces {
			row := PickPiece{Place: piece.Asked.Place, Text: piece.Text(), Height: piece.Height()}
			if spots != nil {
				row.Spots = spots(i, piece.Asked.Place)
			}
			pick.Pieces = append(pick.Pieces, row)
		}
		out[i] = pick
	}
	return out
}
