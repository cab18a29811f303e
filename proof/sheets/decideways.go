package sheets

import (
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/proof/parts"
)

// decideTiles draws a question: how it stands, then its ways out.
func (d *document) decideTiles(q *question) []decideTile {
	if q.piece == nil {
		return d.ruleTiles(q)
	}
	player := &d.in.Sized.Players[q.player]
	var out []decideTile
	if q.over > 0 || q.piece.Name == nil || q.piece.Name.Verdict == fit.Over {
		t := d.standing(q, player)
		t.mark, t.forbidden = new(parts.Verdict), true
		*t.mark = parts.Over
		t.figure = d.overWords(*q.piece)
		if n := q.piece.Name; n != nil && (n.Tracking < 0 || n.WidthScale < 1) {
			t.more = "narrowed as far as we allow"
		}
		out = append(out, t)
	}
	for i := range q.ways {
		out = append(out, d.wayTile(q, &q.ways[i], player))
	}
	return out
}

// standing is the tile of a piece as it came out.
func (d *document) standing(q *question, player *sizes.Player) decideTile {
	t := decideTile{title: "As it stands", player: player, place: q.piece.Asked.Place}
	if n := q.piece.Name; n != nil {
		t.limit, t.over = n.Limit, n.OverBy
		if n.Verdict == fit.Reduced {
			mark := parts.Reduced
			t.mark, t.figure, t.more = &mark, d.heightOf(*q.piece)+" high", "asked for: "+d.length(n.Asked)
		}
		return t
	}
	t.limit = q.piece.Number.Limit
	t.over = max(0, q.piece.Number.InkWidth-t.limit)
	if t.limit <= 0 {
		t.limit, t.over = 0, 0
	}
	return t
}

// wayTile is the tile of one answer.
func (d *document) wayTile(q *question, w *way, player *sizes.Player) decideTile {
	t := decideTile{letter: w.letter, title: sentenceCase(w.title), more: w.detail, place: q.piece.Asked.Place}
	switch {
	case w.choice == nil && q.piece.Name != nil && len(q.piece.Remedies) == 0:
		t = d.standing(q, player)
		t.letter = w.letter
		return t
	case w.choice == nil:
		return t
	case w.out != nil:
		t.title, t.limit = titleOf(w.out.Kind), w.out.Limit
		t.figure, t.more = d.wayWords(q, w.out)
	default:
		t.title = titleOf(w.choice.Number.Kind)
		t.figure, t.more = d.numberWords(*q.piece, w.choice.Number)
	}
	if changed, ok := d.changed(player, *w.choice); ok {
		t.player = &changed
		if piece := t.piece(); piece.Number != nil {
			t.limit = piece.Number.Limit
		}
	} else {
		t.figure, t.more = "", detailWords(t.figure, t.more)
	}
	return t
}

// changed is the player with a way out in place.
func (d *document) changed(player *sizes.Player, c sizes.Choice) (sizes.Player, bool) {
	out, ok := d.chosen(player.Player, c)
	if !ok {
		return out, false
	}
	for i := range out.Pieces {
		if p := &out.Pieces[i]; c.Number != nil && p.Asked.Place == c.Place {
			d.withOutlines(p, c.Number)
		}
	}
	_, ok = out.Piece(c.Place)
	return out, ok
}

// loweredNumber says how much lower the number stands under two lines.
func (d *document) loweredNumber(q *question, w *fit.WayOut) string {
	player := &d.in.Sized.Players[q.player]
	two, ok := d.changed(player, sizes.Choice{Place: q.piece.Asked.Place, Name: w})
	if !ok {
		return ""
	}
	was, has := player.Piece(garment.BackNumber)
	is, had := two.Piece(garment.BackNumber)
	if !has || !had || is.At.Y-was.At.Y < 0.5 {
		return "the number stays where it is"
	}
	return "number " + d.length(is.At.Y-was.At.Y) + " lower"
}

// ruleTiles are the answers to a question about a rule. Players whose numbers
// clash are drawn.
func (d *document) ruleTiles(q *question) []decideTile {
	var out []decideTile
	for i := range q.ways {
		w := &q.ways[i]
		t := decideTile{letter: w.letter, title: sentenceCase(w.title), blank: w.blank, more: w.detail}
		if w.player >= 0 && q.clash {
			p := &d.in.Sized.Players[w.player]
			if place, ok := numberPlace(*p); ok && p.Garment != nil {
				t.player, t.place, t.title = p, place, p.Number+" becomes"
				t.figure = joined(d.asCut(*p), "size "+d.sizeLabel(p.Size))
			}
		}
		out = append(out, t)
	}
	return out
}

// numberPlace is where a player's number is seen best.
func numberPlace(p sizes.Player) (order.Place, bool) {
	for _, place := range [...]garment.Place{garment.BackNumber, garment.FrontNumber, garment.SleeveNumber, garment.ShortsNumber} {
		if _, ok := p.Piece(place); ok {
			return place, true
		}
	}
	return "", false
}
