// Package choices lists what only the coach can decide: which way out a name or
// a number that does not fit shall take, and who takes another number where two
// players share one. The questions, their order and the letters of their ways
// follow from the sized order alone, so that an answer to a printed proof, a
// page on a phone and the shop's own records all speak of the same thing.
package choices

import (
	"cmp"
	"slices"
	"strconv"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/numeral"
	"yokeline/lettering/sizes"
)

// Question is one choice that the coach is asked to make.
type Question struct {
	// ID names the question under one fingerprint: the player's place in the
	// roster, counted from 1, and what it is about: "4 back name", "3 number".
	ID     string
	Player int          // index into Sized.Players; of a clash, the first who wears the number
	Piece  *sizes.Piece // what does not fit as asked; nil for a clash of numbers
	Clash  *Clash       // nil for a piece
	// Over is how far the piece is over its limit, mm; 0 for a name that was
	// only reduced, which may stay as it is.
	Over float64
	Ways []Way
}

// Open reports a question that must be answered before anything is made; one
// about a name that was only reduced may be left as it stands.
func (q Question) Open() bool { return q.Piece == nil || q.Ways == nil || q.Ways[0].Kind != AsItStands }

// Kinds of Way that are no change of a piece. The others are those of package
// fit and of package numeral.
const (
	AsItStands    = "as it stands"
	AnotherNumber = "another number" // of one of the players who share one
	LeaveBoth     = "leave both"     // the number stays shared
)

// Way is one answer to a question.
type Way struct {
	Letter string // A, B, C … over the ways of the question
	Kind   string
	Name   *fit.WayOut     // what the name comes to; nil for the other kinds
	Number *numeral.WayOut // what the number comes to; nil for the other kinds
	// Player takes another number: an index into Sized.Players, for
	// AnotherNumber; else -1.
	Player int
}

// Of lists the questions of a sized order: what is over, the furthest first,
// then names that were reduced, then numbers that clash. The ways out are those
// that were found when the order was sized; results are what the checks said,
// and decide which clashes a rule book lets stand.
func Of(s *sizes.Sized, results []findings.Result) []Question {
	var out []Question
	for i := range s.Players {
		p := &s.Players[i]
		for k := range p.Pieces {
			if q, ok := ofPiece(i, &p.Pieces[k]); ok && !slices.ContainsFunc(out, q.sameAs) {
				out = append(out, q)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Question) int { return cmp.Compare(b.Over, a.Over) })
	for _, c := range Clashes(s, results) {
		if !c.Advice {
			out = append(out, ofClash(c))
		}
	}
	return out
}

// sameAs reports whether another question asks the same: a team name is asked
// about once for all who wear it in the same way.
func (q Question) sameAs(o Question) bool {
	if q.Piece == nil || o.Piece == nil || q.Piece.Asked.Place != o.Piece.Asked.Place || PerPlayer(q.Piece.Asked.Place) {
		return false
	}
	return q.Piece.Text() == o.Piece.Text() && q.Piece.Height() == o.Piece.Height() && q.Piece.Room.Width == o.Piece.Room.Width
}

// PerPlayer reports whether what stands at a place differs from player to
// player.
func PerPlayer(place garment.Place) bool {
	return place != garment.FrontName && place != garment.LeftChest
}

func id(player int, about string) string { return strconv.Itoa(player+1) + " " + about }

// ofPiece asks about a piece that did not come out as asked.
func ofPiece(player int, p *sizes.Piece) (Question, bool) {
	q := Question{ID: id(player, string(p.Asked.Place)), Player: player, Piece: p}
	switch {
	case p.Number != nil:
		if p.Number.Verdict != fit.Over.String() {
			return q, false
		}
		q.Over = p.Number.InkWidth - p.Number.Limit
		if p.Conflict != nil {
			for i := range p.Conflict.WaysOut {
				w := &p.Conflict.WaysOut[i]
				q.Ways = append(q.Ways, Way{Kind: w.Kind, Number: w, Player: -1})
			}
		}
		return q.lettered(), true
	case p.ForTheLook():
		return q, false // lower only so that the team looks alike
	case p.Name.Verdict == fit.Over:
		q.Over = p.Name.OverBy
	case p.Name.Verdict == fit.Reduced:
		q.Ways = append(q.Ways, Way{Kind: AsItStands, Player: -1})
	default:
		return q, false
	}
	for i := range p.Name.WouldFit {
		w := &p.Name.WouldFit[i]
		q.Ways = append(q.Ways, Way{Kind: w.Kind, Name: w, Player: -1})
	}
	return q.lettered(), true
}

func ofClash(c Clash) Question {
	q := Question{ID: id(c.Players[0], "number"), Player: c.Players[0], Clash: &c}
	for _, i := range c.Players {
		q.Ways = append(q.Ways, Way{Kind: AnotherNumber, Player: i})
	}
	q.Ways = append(q.Ways, Way{Kind: LeaveBoth, Player: -1})
	return q.lettered()
}

// lettered gives the ways their letters.
func (q Question) lettered() Question {
	for i := range q.Ways {
		q.Ways[i].Letter = string(rune('A' + i))
	}
	return q
}

// Way returns the way with a letter.
func (q Question) Way(letter string) (Way, bool) {
	for _, w := range q.Ways {
		if w.Letter == letter {
			return w, true
		}
	}
	return Way{}, false
}

// Chosen returns what the answer to a question comes to when the order is sized
// again: for a team name, for everyone who wears it in the same way. It is empty
// for answers that change no piece.
func Chosen(s *sizes.Sized, q Question, letter string) []sizes.Choice {
	w, ok := q.Way(letter)
	if !ok || w.Name == nil && w.Number == nil {
		return nil
	}
	var out []sizes.Choice
	for i := range s.Players {
		for k := range s.Players[i].Pieces {
			p := &s.Players[i].Pieces[k]
			if i == q.Player && p.Asked.Place == q.Piece.Asked.Place || q.sameAs(Question{Piece: p}) {
				out = append(out, sizes.Choice{Player: i, Place: p.Asked.Place, Name: w.Name, Number: w.Number})
			}
		}
	}
	return out
}
