package findings

import (
	"math"
	"sync"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/sizes"
)

// Of measures a sized order for Check. Everything is taken from the pieces as
// they will be made, not from what the job asked for.
func Of(s *sizes.Sized) Subject {
	out := Subject{Units: s.Order.Units}
	for _, piece := range s.Order.Pieces {
		out.Asked = append(out.Asked, string(piece.Place))
	}
	for _, n := range s.Order.Notes {
		out.Notes = append(out.Notes, Note{Severity: Severity(n.Severity), Player: n.Player, What: n.What, Message: n.Message, Remedy: n.Remedy, Kind: n.Kind})
	}
	// Each of the three fills fields of its own, and only reads the pieces.
	var group sync.WaitGroup
	group.Go(func() { out.fine(s) })
	group.Go(func() { out.hits(s) })
	w := wantsOf(s.Rules)
	for _, p := range s.Players {
		out.Players = append(out.Players, wearer(s, p, w))
	}
	group.Wait()
	for _, l := range s.Looks {
		if l.Player >= 0 && l.Height < l.Asked && l.Names > 1 { // a single name keeps no other low
			out.Looks = append(out.Looks, lookOf(s, l))
		}
	}
	return out
}

func lookOf(s *sizes.Sized, l sizes.Look) Look {
	who := "the team"
	if l.Size != (garment.Size{}) {
		who = "size " + l.Size.String()
	}
	return Look{Who: who, Player: s.Players[l.Player].Label(), Asked: l.Asked, Height: l.Height, Without: l.Without}
}

func wearer(s *sizes.Sized, p sizes.Player, asked wants) Wearer {
	w := Wearer{Player: p.Label(), Name: p.Name, Number: p.Number, Role: p.Role, Unsized: p.Garment == nil, Signed: p.Signed}
	for _, piece := range p.Pieces {
		m := measure(piece, asked)
		if asked.down && m.Kind == KindNumber {
			down(&m, piece, p)
		}
		m.Placing = placingOf(piece, p.Size.String(), s.Order.Units)
		m.GarmentHex, m.Conflict = s.Order.Garment.Colour.Hex, conflictOf(piece, s.Order.Units)
		if m.Kind == KindName {
			besideNumber(&m, piece, p, asked)
		}
		w.Pieces = append(w.Pieces, m)
	}
	return w
}

func measure(p sizes.Piece, asked wants) Measured {
	m := NewMeasured(string(p.Asked.Place), kindOf(p), p.Text())
	for _, o := range p.Asked.Outlines {
		m.Borders = append(m.Borders, Border{Width: o.Width.MM(), Colour: o.Colour.Hex})
	}
	m.BodyColour, m.Face = p.Asked.Colour.Hex, p.Asked.Face
	m.Height, m.Width = p.Height(), p.InkWidth()
	if asked.collar && onBody(p.Asked.Place) {
		tops(&m, p)
	}
	if onBody(p.Asked.Place) {
		// Ink boxes are centred on their own x, so the offset is that of the place.
		m.CentreOffset = p.RoomCentre()
	}
	if n := p.Number; n != nil {
		if asked.digits {
			m.NarrowestDigit = narrowestDigit(p)
		}
		m.TallestDigit, m.StrokeThin, m.StrokeMain, m.DigitGap = n.TallestDigit, n.StrokeThin, n.StrokeMain, n.Gap
		m.Verdict, m.Asked = n.Verdict, n.Height
		m.Limit, m.OverBy = orNone(n.Limit), math.Max(0, n.InkWidth-n.Limit)
		if n.Verdict != "over" {
			m.OverBy = 0
		} else if n.WouldFitHeight > 0 {
			m.FitsAt = n.WouldFitHeight
		}
		return m
	}
	n := p.Name
	m.Alone, m.Unmatched = p.Alone, p.Unmatched
	m.Verdict, m.Asked, m.Limit, m.OverBy, m.Shape = n.Verdict.String(), n.Asked, orNone(n.Limit), n.OverBy, n.Form()
	// A wider limit flattens the circle that a rise makes, and so widens a name
	// on it: the width that it has now is no limit that would do.
	flattens := (n.Shape == fit.RadialArch || n.Shape == fit.RadialArchDown) && p.Asked.Rise != nil
	if !flattens && p.Asked.Limit == nil && p.Room.Convention > 0 && p.Room.Convention < p.Room.Panel {
		m.Leaves = p.Room.Panel
	}
	if asked.level {
		m.Tilt = tilt(n)
	}
	return m
}

func kindOf(p sizes.Piece) string {
	switch {
	case p.Number != nil:
		return KindNumber
	case p.Asked.Place == garment.BackName:
		return KindName
	}
	return KindText
}

func onBody(place garment.Place) bool {
	return place != garment.SleeveNumber && place != garment.ShortsNumber
}

func orNone(mm float64) float64 {
	if mm == 0 {
		return math.NaN()
	}
	return mm
}
