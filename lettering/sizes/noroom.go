package sizes

import (
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
)

// withoutRoom makes a piece for which nothing of the panel is left: at the height
// asked and as it was designed, for there is nothing that it could be fitted to.
// It is over, its limit is 0, and it lies where it was asked to lie, so that a
// proof shows what is wrong. So does a name for which its arch is too tight.
func (w *worker) withoutRoom(piece Piece, l *layout, at *spot, i int, text string) (Piece, error) {
	if piece.NoRoom = true; piece.TooTight != nil {
		piece.Room.Why = "the arch is too tight"
	}
	if isNumber(piece.Asked.Place) {
		n, err := w.number(i, text, 0, at.height)
		if err != nil {
			return piece, err
		}
		over := *n
		over.Verdict = numeral.Over
		piece.Number, piece.At = &over, at.placement.Point(0, at.top+n.Height)
	} else {
		n, err := w.unfitted(i, text, at, piece.TooTight != nil)
		if err != nil {
			return piece, err
		}
		n.Verdict, n.OverBy, n.Limit = fit.Over, n.InkWidth, 0
		piece.Name, piece.At = &n, at.placement.Point(0, at.top+at.drop+n.LetterHeight)
	}
	piece.Remedies = w.remedies(l, i, text)
	return piece, nil
}

// unfitted sets a name without a limit. A rise is taken over the width that
// convention gives the place; an arch that is too tight for the name even so, and
// letters between edges, are set straight.
func (w *worker) unfitted(i int, text string, at *spot, straight bool) (fit.Name, error) {
	r := w.nameRequest(i, text, math.Max(at.room.Convention, at.height), at.height)
	settle(&r, w.plan.order.Pieces[i], w.plan.gap, 1)
	r.NoWaysOut, r.Edges = true, edgesOf(order.Piece{Shape: "straight"})
	if r.Rise > 0 {
		r.Radius, r.Rise = geom.RadiusOf(r.Limit, r.Rise), 0
	}
	r.Limit = 0
	if !straight {
		if n, err := w.fitter.Name(r); err == nil {
			return n, nil
		}
	}
	r.Shape, r.Radius, r.Rise = fit.Straight, 0, 0
	return w.fitter.Name(r)
}
