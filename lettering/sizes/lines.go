package sizes

import (
	"math"
	"strings"

	"yokeline/lettering/garment"
)

// index returns the index of the job's piece at a place, -1 for none.
func (p *plan) index(place garment.Place) int {
	for i := range p.order.Pieces {
		if p.order.Pieces[i].Place == place {
			return i
		}
	}
	return -1
}

// lineDepth is about how far the second of two lines reaches under the first,
// as a share of the letter height; it decides which band of the garment the
// room is measured in.
const lineDepth = 1.3

// forLines returns the spot of a name, with the room that two lines have where
// the text has two: their band is deeper.
func (w *worker) forLines(l *layout, i int, text string) spot {
	s := l.spots[i]
	if s.largest != nil && !s.largest.wide(text) {
		s.room.Width = s.narrow
		if s.limit = s.room.Width; w.plan.order.Pieces[i].Limit != nil {
			s.limit = w.plan.order.Pieces[i].Limit.MM()
		}
		s.noRoom = s.limit <= 2*s.opening
	}
	if !strings.Contains(text, "\n") {
		return s
	}
	sag := sagOver(w.plan.radius(i, s.limit), s.limit)
	w.widen(l, &s, i, lineDepth*s.height+sag)
	s.noRoom = s.limit <= 0
	return s
}

// underLines moves a number down that stands under a name in two lines. All
// other numbers of a size stay on one level.
func (w *worker) underLines(p *Player, l *layout) {
	for k := range p.Pieces {
		number := &p.Pieces[k]
		if number.Number == nil {
			continue
		}
		i := w.plan.index(number.Asked.Place)
		above := l.above(w.plan.order.Pieces, i)
		if above < 0 {
			continue
		}
		name, ok := p.Piece(w.plan.order.Pieces[above].Place)
		if !ok || name.Name.Leading == 0 {
			continue
		}
		top := math.Max(l.spots[i].top, w.clearOf(l, above, i, name, number))
		if err := w.moveTo(l, number, i, top); err != nil {
			p.faults = append(p.faults, faultOf(p.Player, number.Asked.Place, err))
			return
		}
	}
}

// clearOf returns the highest top of a number under a name in two lines: the
// usual gap under the middle of the lower baseline, or more where the lower edge
// of the name comes nearer.
func (w *worker) clearOf(l *layout, above, i int, name Piece, number *Piece) float64 {
	n := name.Name
	box := numberBox{centre: l.spots[i].placement.CentreX}
	box.include(number.Number, layers(number.Asked))
	baseline := l.spots[above].top + l.spots[above].drop + n.LetterHeight + n.Leading
	return math.Max(baseline+l.spots[above].placement.GapAfter, box.clearTop(name))
}

// moveTo sets a number again with its top at another level.
func (w *worker) moveTo(l *layout, number *Piece, i int, top float64) error {
	s := l.spots[i]
	s.below += top - s.top
	s.top = top
	w.widen(l, &s, i, 0)
	s.noRoom = s.limit <= 0
	moved, err := w.pieceAt(l, &s, i, number.Number.Text, s.height)
	if err == nil {
		*number = moved
	}
	return err
}
