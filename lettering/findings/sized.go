package findings

import (
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
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
	for _, p := range s.Players {
		out.Players = append(out.Players, wearer(s, p))
	}
	for _, l := range s.Looks {
		if l.Player >= 0 && l.Height < l.Asked {
			out.Looks = append(out.Looks, lookOf(s, l))
		}
	}
	out.fine(s)
	return out
}

func lookOf(s *sizes.Sized, l sizes.Look) Look {
	who := "the team"
	if l.Size != (garment.Size{}) {
		who = "size " + l.Size.String()
	}
	return Look{Who: who, Player: s.Players[l.Player].Label(), Asked: l.Asked, Height: l.Height, Without: l.Without}
}

func wearer(s *sizes.Sized, p sizes.Player) Wearer {
	w := Wearer{Player: p.Label(), Name: p.Name, Number: p.Number, Role: p.Role, Unsized: p.Garment == nil}
	for _, piece := range p.Pieces {
		m := measure(piece)
		m.GarmentHex = s.Order.Garment.Colour.Hex
		if m.Kind == KindName {
			besideNumber(&m, piece, p, s)
		}
		w.Pieces = append(w.Pieces, m)
	}
	return w
}

func measure(p sizes.Piece) Measured {
	m := NewMeasured(string(p.Asked.Place), kindOf(p), p.Text())
	for _, o := range p.Asked.Outlines {
		m.Borders = append(m.Borders, Border{Width: o.Width.MM(), Colour: o.Colour.Hex})
	}
	m.BodyColour = p.Asked.Colour.Hex
	m.Height, m.Width, m.BelowCollar = p.Height(), p.InkWidth(), p.BelowCollar
	if onBody(p.Asked.Place) {
		// Ink boxes are centred on their own x, so the offset is that of the place.
		m.CentreOffset = p.At.X
	}
	if n := p.Number; n != nil {
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
	m.Alone = p.Alone
	m.Verdict, m.Asked, m.Limit, m.OverBy, m.Shape = n.Verdict.String(), n.Asked, orNone(n.Limit), n.OverBy, n.Form()
	if n.Form() == fit.Straight.String() {
		m.Tilt = 0
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

// besideNumber measures how a name stands to the number on its side. The
// distance between the two inks is worked out only when the book asks for one:
// it is the dearest figure of all.
func besideNumber(m *Measured, name sizes.Piece, p sizes.Player, s *sizes.Sized) {
	number, ok := p.Piece(order.Place(garment.BackNumber))
	if !ok {
		m.NumberGap = math.Inf(1)
		return
	}
	m.Side = "above"
	if name.Top > number.Top {
		m.Side = "below"
	}
	if s.Rules != nil && s.Rules.Names.GapMin != nil {
		m.NumberGap = apart(placed(name), placed(number))
	}
}

// gapTolerance is how far the flattened ink may stray when a gap is measured, mm.
const gapTolerance = 0.02

// placed returns the ink where it lies on the garment, flattened.
func placed(p sizes.Piece) geom.Region {
	return p.Ink().Transform(geom.Scale(1, -1)).Transform(geom.Translate(p.At.X, p.At.Y)).Flatten(gapTolerance)
}

// apart returns the smallest distance between the edges of two regions.
func apart(a, b geom.Region) float64 {
	least := math.Inf(1)
	for _, pair := range [2][2]geom.Region{{a, b}, {b, a}} {
		for _, ring := range pair[0] {
			for _, p := range ring {
				least = math.Min(least, toEdges(p, pair[1], least))
			}
		}
	}
	return least
}

// toEdges returns the distance from p to the nearest edge of the region, or
// least when no edge is nearer than that.
func toEdges(p geom.Point, region geom.Region, least float64) float64 {
	for _, ring := range region {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			d := b.Sub(a)
			share := math.Max(0, math.Min(1, p.Sub(a).Dot(d)/math.Max(d.Dot(d), math.SmallestNonzeroFloat64)))
			least = math.Min(least, p.Sub(a.Lerp(b, share)).Norm())
		}
	}
	return least
}
