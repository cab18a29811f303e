package sizes

import (
	"context"
	"math"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/sizerun"
)

// Run tells in how many heights the pieces of one place can be made over the
// sizes of an order.
type Run struct {
	Place order.Place
	Asked order.Height // as the job asks for it
	Least float64      // that the rules allow, mm; 0 for none
	Sizes []RunSize    // from small to large
	// Plans are in heights on the shop's step (see stepped), which are what they
	// give up against.
	Plans []sizerun.Plan
	Taken int // index of the plan that the job takes, -1 for none
	// Waiting are the indexes of players whose piece is over at every height within
	// its floor. They wait for a decision and pull nobody down.
	Waiting []int
}

// RunSize is what one size allows at one place.
type RunSize struct {
	sizerun.Entry
	Asked  float64 // height asked for on this size, mm
	Player int     // index of the player whose piece decides; -1 where all reach the height asked
}

// Runs returns the run of every piece of the job, in its order. A piece that
// nobody wears is left out.
func (s *Sized) Runs() []Run {
	if s.runs != nil {
		return s.runs
	}
	var out []Run
	rules := &plan{rules: s.Rules}
	for _, asked := range s.Order.Pieces {
		run := Run{Place: asked.Place, Asked: asked.Height, Taken: -1}
		run.Least, _ = rules.demanded(asked)
		for i, p := range s.Players {
			if piece, ok := p.Piece(asked.Place); ok {
				run.wear(i, p.Size, piece)
			}
		}
		if len(run.Sizes) == 0 {
			continue
		}
		slices.SortFunc(run.Sizes, func(a, b RunSize) int { return a.Size.Compare(b.Size) })
		var entries []sizerun.Entry
		for _, size := range run.Sizes {
			entry := size.Entry
			entry.Fits = stepped(size, run, s.Order.Units)
			entries = append(entries, entry)
		}
		run.Plans = sizerun.Plans(entries, run.Least)
		out = append(out, run)
	}
	return out
}

// wear counts a player's piece in its size.
func (r *Run) wear(player int, size garment.Size, piece Piece) {
	height, asked := byItself(piece)
	if height == 0 {
		r.Waiting = append(r.Waiting, player)
		return
	}
	k := slices.IndexFunc(r.Sizes, func(s RunSize) bool { return s.Size == size })
	if k < 0 {
		k = len(r.Sizes)
		r.Sizes = append(r.Sizes, RunSize{Entry: sizerun.Entry{Size: size, Fits: asked}, Asked: asked, Player: -1})
	}
	s := &r.Sizes[k]
	s.Pieces++
	if height < s.Fits-sameHeight {
		s.Fits, s.Player = height, player
	}
}

// byItself returns the greatest height, up to the height asked, that a piece has
// where no other piece of its kind pulls it down; 0 for one that waits for a
// decision.
func byItself(p Piece) (height, asked float64) {
	asked = math.Max(p.AskedHeight, p.Height())
	switch {
	case p.NoRoom, p.Name != nil && p.Name.Verdict == fit.Over:
		return 0, asked
	case p.Name != nil:
		return math.Max(p.Alone, p.Name.LetterHeight), asked
	case p.Number.Verdict == numeral.Over:
		return p.Number.WouldFitHeight, asked
	}
	return p.Number.Height, asked
}

// runs reports whether a piece of the order is made in the steps of a plan.
func runs(o *order.Order) bool {
	return slices.ContainsFunc(o.Pieces, func(p order.Piece) bool { return p.Run != "" })
}

// resolveRuns sizes an order twice: first as it is asked, to learn what fits each
// size, and then with the heights of the plans that its pieces take.
func resolveRuns(ctx context.Context, o *order.Order, options Options) (*Sized, error) {
	first, without := options, *o
	first.NoWaysOut, first.NumberWays, first.Progress = true, false, nil
	without.Pieces = slices.Clone(o.Pieces)
	for i := range without.Pieces {
		without.Pieces[i].Run = ""
	}
	free, err := resolve(ctx, &without, first)
	if err != nil {
		return nil, err
	}
	all := free.Runs()
	planned := *o
	planned.Pieces = slices.Clone(o.Pieces)
	for i := range planned.Pieces {
		if planned.Pieces[i].Place == garment.BackName && planned.Pieces[i].Run != "" {
			planned.Fit.Same = sameNone // the run says which names have one height
		}
		for k := range all {
			if all[k].Place == planned.Pieces[i].Place {
				all[k].take(&planned.Pieces[i], o.Units)
			}
		}
	}
	sized, err := resolve(ctx, &planned, options)
	if sized != nil {
		sized.runs = all
	}
	return sized, err
}

// The steps that a shop cuts heights in, mm: 1/8 in, or 5 mm (common practice, no
// source).
const (
	stepInch   = 25.4 / 8
	stepMetric = 5.0
)

// stepped is the height that a size can be given in a plan: what fits, down to a
// step. A height that the job itself asks for is kept as it was written, and so is
// the least of the rules where rounding would break it.
func stepped(size RunSize, run Run, unit length.Unit) float64 {
	if size.Fits >= size.Asked-sameHeight && run.Asked.By != order.Largest {
		return size.Fits
	}
	step := stepMetric
	if unit == length.Inch {
		step = stepInch
	}
	down := math.Floor(size.Fits/step+sameHeight) * step
	if size.Fits >= run.Least {
		down = math.Max(down, run.Least)
	}
	if down <= 0 {
		return size.Fits
	}
	return down
}

// take gives a piece the heights of the plan that it asks for. The lowest height
// of its letters stays what it was for the heights asked.
func (r *Run) take(p *order.Piece, unit length.Unit) {
	kind, err := sizerun.ParseKind(p.Run)
	if err != nil {
		return // no run, or no plan: the order has refused other words
	}
	for k, plan := range r.Plans {
		if plan.Kind != kind {
			continue
		}
		r.Taken = k
		p.Heights = slices.Clone(p.Heights) // those of single sizes come before what the job says
		lowest := math.Inf(1)
		for _, size := range r.Sizes {
			lowest = math.Min(lowest, size.Asked)
			mm, _ := plan.Height(size.Size)
			p.Heights = append(p.Heights, order.SizedLength{Group: size.Size.Group, Letter: size.Size.Letter, Length: length.FromMM(mm, unit)})
		}
		floor := length.FromMM(fit.DefaultLadder(lowest).Height, length.Millimetre)
		p.Floor = &floor
	}
}
