package sizes

import (
	"context"
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
)

// matchHeights gives names one letter height where the job asks for it
// (same: size or same: team): the largest that every name of the set reaches
// within its own floors. Names that do not fit at all are left out of the
// reckoning: they wait for a decision and must not pull the others down.
func (p *plan) matchHeights(ctx context.Context, s *Sized, options Options) error {
	if p.order.Fit.Same != "size" && p.order.Fit.Same != "team" {
		return nil
	}
	common := map[garment.Size]float64{}
	for _, player := range s.Players {
		if piece, ok := player.Piece(garment.BackName); ok && piece.Name.Verdict != fit.Over {
			key := p.matchKey(player.Size)
			if least, seen := common[key]; !seen || piece.Name.LetterHeight < least {
				common[key] = piece.Name.LetterHeight
			}
		}
	}
	return p.each(ctx, len(s.Players), func(w *worker, i int) {
		w.match(&s.Players[i], common)
	}, nil)
}

func (p *plan) matchKey(size garment.Size) garment.Size {
	if p.order.Fit.Same == "team" {
		return garment.Size{}
	}
	return size
}

// match refits the player's name at the common height when it stands taller.
func (w *worker) match(player *Player, common map[garment.Size]float64) {
	for k := range player.Pieces {
		piece := &player.Pieces[k]
		if piece.Asked.Place != garment.BackName || piece.Name.Verdict == fit.Over {
			continue
		}
		least, ok := common[w.plan.matchKey(player.Size)]
		if !ok || math.Abs(piece.Name.LetterHeight-least) < 1e-9 {
			continue
		}
		for i, asked := range w.plan.order.Pieces {
			if asked.Place != garment.BackName {
				continue
			}
			refit, err := w.piece(asked, player.Name, &w.plan.layouts[player.Size].spots[i], least)
			if err != nil {
				player.faults = append(player.faults, faultOf(player.Player, asked.Place, err))
				return
			}
			refit.Name.Asked = piece.Name.Asked
			if refit.Name.LetterHeight < refit.Name.Asked && refit.Name.Verdict != fit.Over {
				refit.Name.Verdict = fit.Reduced
			}
			*piece = refit
		}
	}
}
