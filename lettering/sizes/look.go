package sizes

import (
	"cmp"
	"context"
	"math"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
)

// Look is one letter height that back names share: the largest that each of
// them reaches within its own floors. Names for which different heights were
// asked (youth and adult sizes, say) have different looks. A name that is over
// waits for a decision and pulls nobody down.
type Look struct {
	Size   garment.Size // whose players share it; zero for the whole team
	Asked  float64      // letter height asked for, mm
	Height float64      // that they share, mm
	Player int          // index of the first player whose name sets it; -1 when all reach the height asked
	// Without is the height that the others would share without that player, mm;
	// the height asked where there are no others.
	Without float64
	Names   int // how many names share it
}

// Whose names share a height, by the job's words.
const (
	sameNone = "none"
	sameSize = "size"
	sameTeam = "team"
)

type lookKey struct {
	size  garment.Size
	asked float64
}

// alone is how a player's back name comes out by itself.
type alone struct {
	key    lookKey
	height float64 // mm
	fits   bool    // false too for a player without a back name
}

// share finds the letter heights that back names share, where the job asks for
// that, before any piece is made.
func (p *plan) share(ctx context.Context, s *Sized) error {
	if same := p.order.Fit.Same; same != sameSize && same != sameTeam {
		return nil
	}
	i := p.index(garment.BackName)
	if i < 0 {
		return nil
	}
	p.reached = make([]alone, len(p.order.Players))
	if err := p.each(ctx, len(p.reached), func(w *worker, k int) {
		p.reached[k] = w.reach(i, p.order.Players[k])
	}, nil); err != nil {
		return err
	}
	s.Looks = looks(p.reached)
	p.common = map[lookKey]float64{}
	for _, look := range s.Looks {
		p.common[lookKey{look.Size, look.Asked}] = look.Height
	}
	return nil
}

// reach finds how tall a player's back name comes out by itself. What is wrong
// with it is told when it is made.
func (w *worker) reach(i int, player order.Player) alone {
	text := textOf(w.plan.order.Pieces[i], player)
	if !player.SizeKnown || text == "" {
		return alone{}
	}
	l := w.plan.layouts[player.Size]
	at := w.forLines(l, i, text)
	if at.noRoom {
		return alone{}
	}
	height, fits, err := w.fitter.Reach(w.nameRequest(i, text, at.limit, at.height))
	return alone{w.plan.lookKey(player.Size, at.height), height, fits && err == nil}
}

func (p *plan) lookKey(size garment.Size, asked float64) lookKey {
	if p.order.Fit.Same != sameSize {
		size = garment.Size{}
	}
	return lookKey{size, asked}
}

// looks finds the common heights.
func looks(heights []alone) []Look {
	var out []Look
	at := map[lookKey]int{}
	for i, a := range heights {
		if !a.fits {
			continue
		}
		n, seen := at[a.key]
		if !seen {
			n = len(out)
			at[a.key] = n
			out = append(out, Look{Size: a.key.size, Asked: a.key.asked, Height: a.key.asked, Player: -1, Without: a.key.asked})
		}
		out[n].Names++
		if look := &out[n]; a.height < look.Height {
			look.Without, look.Height, look.Player = look.Height, a.height, i
		} else {
			look.Without = math.Min(look.Without, a.height)
		}
	}
	slices.SortFunc(out, func(a, b Look) int {
		return cmp.Or(a.Size.Compare(b.Size), cmp.Compare(a.Asked, b.Asked))
	})
	return out
}

// sharedName fits a back name, at the height that it shares with others where
// it would be taller by itself.
func (w *worker) sharedName(l *layout, i int, text string, by alone) (Piece, error) {
	asked, common := by.key.asked, w.plan.common[by.key]
	if !by.fits || by.height-common <= sameHeight {
		return w.piece(l, i, text, l.spots[i].height)
	}
	low, err := w.piece(l, i, text, common)
	if err != nil {
		return low, err
	}
	n := *low.Name
	if n.Asked = asked; n.Verdict != fit.Over && n.LetterHeight < asked {
		n.Verdict = fit.Reduced
	}
	if by.height < asked && w.plan.waysOut {
		byItself, err := w.name(l, i, text, n.Limit, asked)
		if err != nil {
			return low, err
		}
		n.WouldFit = byItself.WouldFit
	}
	low.Name, low.Alone = &n, by.height
	return low, nil
}

// sameHeight is how near two letter heights are that count as one, mm.
const sameHeight = 1e-9
