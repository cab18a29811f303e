// Package choices lists what only the coach can decide: which way out a name or
// a number that does not fit shall take, who takes another number where two
// players share one, and whether a rule that is broken stays so. The questions, their order and the letters of their ways
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
	// roster, counted from 1, and what it is about: "4 back name", "3 number",
	// "4 rule 3-2-2", "order rule 3-2-2".
	ID string
	// Player is an index into Sized.Players; of a clash, the first who wears the
	// number, and of a rule, the first who breaks it, -1 for the order as a whole.
	Player int
	Piece  *sizes.Piece // what does not fit as asked; nil for the other kinds
	Clash  *Clash       // numbers that count as one; nil for the other kinds
	Rule   *Rule        // a rule that is broken; nil for the other kinds
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
	PutRight      = "put it right"   // the rule is kept in a new proof
	LeaveIt       = "leave it"       // the rule stays broken
)

// Way is one answer to a question.
type Way struct {
	Letter string // A, B, C … over the ways of the question
	Kind   string
	Name   *fit.WayOut     // what the name comes to; nil for the other kinds
	Number *numeral.WayOut // what the number comes to; nil for the other kinds
	Remedy *sizes.Remedy   // what gives the piece room; nil for the other kinds
	// Player takes another number: an index into Sized.Players, for
	// AnotherNumber; else -1.
	Player int
}

// NewProof reports an answer that changes what the proof shows beyond what was
// tried: it cannot be signed, and is answered by a new proof.
func (w Way) NewProof() bool {
	return w.Kind == AnotherNumber || w.Kind == PutRight || w.Remedy != nil
}

// Of lists the questions of a sized order: what is over, the furthest first,
// then names that were reduced, then numbers that clash, then rules that are
// broken. Players who are signed are asked nothing. The ways out are those
// that were found when the order was sized; results are what the checks said,
// and decide which clashes a rule book lets stand.
func Of(s *sizes.Sized, results []findings.Result) []Question {
	var out []Question
	for i := range s.Players {
		p := &s.Players[i]
		if p.Signed {
			continue // decided
		}
		for k := range p.Pieces {
			if q, ok := ofPiece(i, &p.Pieces[k]); ok && !slices.ContainsFunc(out, q.sameAs) {
				out = append(out, q)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Question) int { return cmp.Compare(b.Over, a.Over) })
	clashes := Clashes(s, results)
	for _, c := range clashes {
		if q := ofClash(s, c); !c.Advice && q.Ways != nil {
			out = append(out, q)
		}
	}
	return append(out, ofRules(s, results, clashes)...)
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
	case len(p.Remedies) > 0:
		q.Over = overBy(p)
		for i := range p.Remedies {
			q.Ways = append(q.Ways, Way{Kind: p.Remedies[i].Kind, Remedy: &p.Remedies[i], Player: -1})
		}
		return q.lettered(), p.Over()
	case p.Number != nil:
		if p.Number.Verdict != fit.Over.String() {
			return q, false
		}
		q.Over = overBy(p)
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
		q.Over = overBy(p)
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

func overBy(p *sizes.Piece) float64 {
	if p.Name != nil {
		return p.Name.OverBy
	}
	return p.Number.InkWidth - p.Number.Limit
}

// ofClash asks who takes another number: none of those who are signed, and
// nobody at all where all are.
func ofClash(s *sizes.Sized, c Clash) Question {
	q := Question{ID: id(c.Players[0], "number"), Player: c.Players[0], Clash: &c}
	for _, i := range c.Players {
		if !s.Players[i].Signed {
			q.Ways = append(q.Ways, Way{Kind: AnotherNumber, Player: i})
		}
	}
	if q.Ways == nil {
		return q
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
