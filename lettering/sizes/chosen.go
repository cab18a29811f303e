package sizes

import (
	"fmt"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
)

// Choice is a way out that the coach chose for one player's piece: of a name or
// of a number.
type Choice struct {
	Player int // index into Order.Players
	Place  garment.Place
	Name   *fit.WayOut
	Number *numeral.WayOut
}

// size returns the size of the garment that the choice asks for, empty for the
// player's own.
func (c Choice) size() string {
	switch {
	case c.Name != nil && c.Name.Kind == fit.NextSize:
		return c.Name.Size
	case c.Number != nil && c.Number.Kind == numeral.NextSize:
		return c.Number.Size
	}
	return ""
}

// sorted sorts choices by player.
func sorted(choices []Choice) map[int][]Choice {
	out := map[int][]Choice{}
	for _, c := range choices {
		out[c.Player] = append(out[c.Player], c)
	}
	return out
}

// dress returns the layout of the garment that a player wears, another than the
// roster's where the next size was chosen.
func (w *worker) dress(k int, size garment.Size) (*layout, error) {
	for _, c := range w.plan.chosen[k] {
		text := c.size()
		if text == "" {
			continue
		}
		next, err := garment.ParseSize(text, size.Group)
		if err != nil {
			return nil, fmt.Errorf("the size that was chosen: %w", err)
		}
		return w.layoutOf(next)
	}
	return w.layoutOf(size)
}

// choose puts the way that the coach chose in the place of what the piece came
// out as. A larger size was put on already, and makes the piece anew.
func (w *worker) choose(piece *Piece, l *layout, i, k int) error {
	for _, c := range w.plan.chosen[k] {
		if c.Place != piece.Asked.Place || c.size() != "" {
			continue
		}
		switch {
		case c.Name != nil && c.Name.Name != nil && piece.Name != nil:
			return w.chooseName(piece, l, i, c.Name)
		case c.Number != nil && piece.Number != nil:
			n := c.Number.Number
			piece.Number, piece.Conflict = &n, nil
			piece.Asked.Outlines = outlinesOf(piece.Asked.Outlines, c.Number.Request.Outlines)
			piece.At = l.spots[i].placement.Point(0, l.spots[i].top+n.Height)
		}
	}
	return nil
}

func (w *worker) chooseName(piece *Piece, l *layout, i int, way *fit.WayOut) error {
	at := w.forLines(l, i, way.Text)
	n := *way.Name
	n.WouldFit = nil
	if piece.Asked.Tail != nil {
		t, err := w.drawTail(i, n, at.limit)
		if err != nil {
			return err
		}
		n = t.name
		piece.Drawn, piece.Laid = t.shape.Path(), t.laid
	}
	piece.Name, piece.Alone, piece.Room = &n, 0, at.room
	piece.At = at.placement.Point(piece.shift(), at.top+at.drop+n.LetterHeight)
	return nil
}

// outlinesOf returns the outlines with the widths of a request, which may have
// fewer of them.
func outlinesOf(asked []order.Outline, given []outline.Layer) []order.Outline {
	out := slices.Clone(asked[:min(len(asked), len(given))])
	for k := range out {
		if given[k].Width != out[k].Width.MM() {
			out[k].Width = length.FromMM(given[k].Width, out[k].Width.Unit())
		}
	}
	return out
}
