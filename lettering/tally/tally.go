// Package tally counts what the bench needs for a sized order: digits and
// letters for shops that pick from stock kits, pieces by size and place, how
// much of each material, the blank garments to order, and what goes on each
// player's garment. It counts what was sized and decides no length.
//
// Lengths are mm and areas mm². A player's number is text.
package tally

import (
	"errors"
	"math"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// DefaultAllowance is the share that is added to the length of a material for
// test presses, miscuts and the ends of the roll: common practice, no source.
const DefaultAllowance = 0.10

// DefaultGap is what is left between two boxes on the material, mm, so that
// they can be cut apart: common practice, no source.
const DefaultGap = 5.0

// Options say what the count needs from outside; the zero value counts all but
// lengths of material.
type Options struct {
	// Roll gives the usable width of the roll of a material, mm; 0 or nil: not
	// known, and no length is counted.
	Roll func(m Material) float64
	// Laid gives the length of a material that its sheets take as they were
	// arranged, mm; false or nil: it is estimated from boxes.
	Laid func(m Material) (mm float64, ok bool)
	// Allowance is the share added to a length; negative for none, 0 for
	// DefaultAllowance.
	Allowance float64
	// Gap is left between two boxes, mm; negative for none, 0 for DefaultGap.
	Gap float64
	// KnockedOut counts a layer of film without what the layer above covers; else
	// every layer is whole. The overlap of the two is not in it.
	KnockedOut bool
	// Spots tells where the parts of a player's piece lie on the sheets; nil where
	// there are no sheets yet.
	Spots func(player int, place garment.Place) []Spot
}

// Spot is where one part of a piece lies.
type Spot struct {
	Sheet    string // as it is marked, such as 2
	Position string // on it, such as B4; may be empty
	Part     string // gold; empty where a piece is all on one sheet
}

// Count is everything that was counted.
type Count struct {
	Kits      []Kit      // digits first; by face, then from tall to low
	Sizes     []SizeRow  // by size and place
	Materials []Material // in the order in which the job names their colours
	Blanks    []Blank    // by size; a garment for every player whose size is known
	// ToAsk are the indexes of the players whose size is not known: nothing is
	// ordered or made for them yet.
	ToAsk []int
	Picks []Pick // one a player, in the order of the roster
	// Pieces is how many pieces the order has, and Players how many players.
	Pieces, Players int
	Allowance, Gap  float64
	Notes           []string // sentences about how it was counted
}

// Of counts a sized order. The error is that of a shape that could not be made.
func Of(s *sizes.Sized, o Options) (*Count, error) {
	if s == nil || s.Order == nil {
		return nil, errors.New("nothing to count: the order is not sized")
	}
	c := &Count{Players: len(s.Players), Allowance: chosen(o.Allowance, DefaultAllowance), Gap: chosen(o.Gap, DefaultGap)}
	for _, p := range s.Players {
		c.Pieces += len(p.Pieces)
	}
	c.Kits = kits(s)
	c.Sizes = sizeRows(s)
	c.Blanks, c.ToAsk = blanks(s)
	c.Picks = picks(s, o.Spots)
	var err error
	if c.Materials, err = materials(s, o, c); err != nil {
		return nil, err
	}
	c.Notes = c.notes(s, o)
	return c, nil
}

// chosen is an option, its default where it is 0, and 0 where it is negative.
func chosen(v, usual float64) float64 {
	switch {
	case v == 0 || math.IsNaN(v):
		return usual
	case v < 0:
		return 0
	}
	return v
}

// eachPiece calls use for every piece of the order.
func eachPiece(s *sizes.Sized, use func(player int, p *sizes.Piece)) {
	for i := range s.Players {
		for k := range s.Players[i].Pieces {
			use(i, &s.Players[i].Pieces[k])
		}
	}
}

// notes are the sentences that belong beside the figures.
func (c *Count) notes(s *sizes.Sized, o Options) []string {
	out := []string{"6 and 9 are counted apart: that one of a kit's turned over is the other is not taken for granted."}
	raised := false
	for _, p := range s.Order.Pieces {
		raised = raised || p.RaisePrefix && !order.IsNumber(p.Place)
	}
	if raised {
		out = append(out, "Raised small letters, such as the C of McLean, are counted as capitals of full height.")
	}
	if c.measured() && !o.KnockedOut && s.Order.Method != "sublimation" {
		out = append(out, "Every layer is counted whole, as full-backed film is cut.")
	}
	if c.estimated() {
		out = append(out, "A length is that of the boxes with their gaps, spread over the width of the roll: the sheets as they are arranged go before it.")
	}
	return out
}

func (c *Count) measured() bool {
	for _, m := range c.Materials {
		if m.Colour.Hex != "" {
			return true
		}
	}
	return false
}

func (c *Count) estimated() bool {
	for _, m := range c.Materials {
		if m.Length > 0 && !m.Laid {
			return true
		}
	}
	return false
}
