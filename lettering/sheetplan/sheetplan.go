// Package sheetplan decides what is cut or printed from which sheet: it makes the
// production art of every piece of an order, parts it by material, and arranges
// the parts on the shop's rolls or sheets. It says where each part lies, so that
// a pick list can, and how much of each material is taken.
package sheetplan

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/nest"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
)

// Part is what of a piece is made from one material.
type Part struct {
	Player, Piece int // indexes into Sized.Players and its Pieces
	Material      string
	Of, Parts     int // which part of the piece this is, counted from 1, and how many it has
	Art           layers.Art
}

// Options say how an order is made and arranged.
type Options struct {
	Settings layers.Settings
	// Stock is what everything is arranged on; nil chooses the narrowest of Stocks
	// that takes every part.
	Stock *nest.Stock
	Nest  nest.Options
	// Only takes some players; nil takes all.
	Only func(player int) bool
	// Workers is how many pieces are made at once.
	Workers  int
	Progress func(done, all int)
}

// Piece is the art of one piece, whole.
type Piece struct {
	Player, Piece int
	Art           layers.Art
}

// Plan is everything that is made, and where it lies.
type Plan struct {
	Pieces []Piece // in the order of the roster and the job
	Parts  []Part  // of the pieces, in the same order
	Layout nest.Layout
	Stock  nest.Stock
	// Loose are parts that no sheet of the stock takes, with the reason; they are
	// made one by one.
	Loose map[int]string
	// spots says where part i lies.
	spots map[int]spot
}

type spot struct{ sheet, place int } // counted from 1

// Of makes and arranges everything of a sized order. The error names the piece
// whose art cannot be made, or is the context's.
func Of(ctx context.Context, s *sizes.Sized, o Options) (*Plan, error) {
	p := &Plan{Loose: map[int]string{}, spots: map[int]spot{}}
	for i := range s.Players {
		if o.Only != nil && !o.Only(i) {
			continue
		}
		for k := range s.Players[i].Pieces {
			p.Pieces = append(p.Pieces, Piece{Player: i, Piece: k})
		}
	}
	if err := p.make(ctx, s, o); err != nil {
		return nil, err
	}
	for _, piece := range p.Pieces {
		p.Parts = append(p.Parts, partsOf(piece)...)
	}
	return p, p.arrange(o)
}

// drawing tells pieces whose art is the same: what was sized once for all who
// wear it is one drawing.
type drawing struct {
	place  garment.Place
	name   *fit.Name
	number *numeral.Number
}

// different lists the pieces with art of their own, and for each piece which of
// them it is.
func (p *Plan) different(s *sizes.Sized) (first, of []int) {
	known := map[drawing]int{}
	for i, piece := range p.Pieces {
		from := &s.Players[piece.Player].Pieces[piece.Piece]
		d := drawing{from.Asked.Place, from.Name, from.Number}
		k, ok := known[d]
		if !ok {
			k = len(first)
			known[d], first = k, append(first, i)
		}
		of = append(of, k)
	}
	return first, of
}

// make makes the art of every piece on several workers; each result has its own
// place, so the outcome does not depend on who was first.
func (p *Plan) make(ctx context.Context, s *sizes.Sized, o Options) error {
	first, of := p.different(s)
	if err := p.makeEach(ctx, s, o, first); err != nil {
		return err
	}
	for i := range p.Pieces {
		p.Pieces[i].Art = p.Pieces[first[of[i]]].Art
	}
	return nil
}

func (p *Plan) makeEach(ctx context.Context, s *sizes.Sized, o Options, which []int) error {
	faults := make([]error, len(which))
	next := make(chan int)
	var group sync.WaitGroup
	var told sync.Mutex
	done := 0
	for range max(1, min(o.Workers, len(which))) {
		group.Go(func() {
			for i := range next {
				piece := &p.Pieces[which[i]]
				player := &s.Players[piece.Player]
				var err error
				if piece.Art, err = layers.Of(player.Pieces[piece.Piece], s.Order.Method, o.Settings); err != nil {
					faults[i] = fmt.Errorf("%s: %w", player.Label(), err)
				}
				if o.Progress != nil {
					told.Lock()
					done++
					o.Progress(done, len(which))
					told.Unlock()
				}
			}
		})
	}
	err := feed(ctx, next, len(which))
	group.Wait()
	return errors.Join(append(faults, err)...)
}

func feed(ctx context.Context, next chan<- int, n int) error {
	defer close(next)
	for i := range n {
		select {
		case next <- i:
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return nil
}

// partsOf parts a piece by material: a film or a twill of each colour is one by
// itself, and what is printed goes on one carrier whole.
func partsOf(p Piece) []Part {
	one := Part{Player: p.Player, Piece: p.Piece, Of: 1, Parts: 1, Material: tally.Material{Method: p.Art.Method.ID}.Name(), Art: p.Art}
	switch p.Art.Method.ID {
	case "embroidery":
		return nil // goes to the machine, not on a sheet
	case "cut film", "flock film", "sewn twill", "satin twill":
	default:
		return []Part{one}
	}
	plates := p.Art.Plates()
	out := make([]Part, len(plates))
	for i, plate := range plates {
		out[i] = one
		out[i].Of, out[i].Parts, out[i].Art = i+1, len(plates), plate
		out[i].Material = tally.Material{Method: plate.Method.ID, Colour: colourOf(plate)}.Name()
	}
	return out
}

// colourOf is the colour of a plate that is of one.
func colourOf(a layers.Art) order.Colour {
	for _, l := range a.Layers {
		if l.Order > 0 && l.Colour.Hex != "" {
			return l.Colour
		}
	}
	return order.Colour{}
}

// shape is what a part keeps others away from: its whole box where parts lie in
// boxes; else its ink with the marks by which its layers meet, as one shape.
func shape(a layers.Art, by nest.By) (geom.Region, error) {
	if by == nest.Boxes {
		b := a.Box
		return geom.Region{{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}}, nil
	}
	var all geom.Region
	for _, l := range a.Layers {
		all = append(all, l.Region...)
	}
	if a.Mirrored { // rings run the other way round, and would count as holes
		all = slices.Clone(all)
		for i := range all {
			all[i] = slices.Clone(all[i])
			slices.Reverse(all[i])
		}
	}
	return outline.Union(all)
}
