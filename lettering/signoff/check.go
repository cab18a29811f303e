package signoff

import (
	"fmt"
	"strings"
	"time"

	"yokeline/lettering/choices"
	"yokeline/lettering/sizes"
)

// Proof is the proof that an answer must be one to.
type Proof struct {
	Sized       *sizes.Sized
	Fingerprint string
	Questions   []choices.Question
}

// Correction is something that the coach asked the shop to change.
type Correction struct {
	Player string // how messages call the player; empty for a rule that more than one breaks
	Row    int    // counted from 1; 0 for a rule
	Number string
	About  string // spelling, number, size, a piece, a rule, or empty
	Note   string // in the coach's words, or what was chosen
}

// ForeignError says that an answer is to another proof.
type ForeignError struct {
	Signed, Ours string // fingerprints
}

// Error names both fingerprints by their first digits.
func (e *ForeignError) Error() string {
	return fmt.Sprintf("the answer is for fingerprint %s, and this order's is %s", Short(e.Signed), Short(e.Ours))
}

// Short returns a fingerprint as proofs show it: sixteen digits in four groups.
func Short(fingerprint string) string {
	var groups []string
	for i := 0; i+4 <= min(len(fingerprint), 16); i += 4 {
		groups = append(groups, fingerprint[i:i+4])
	}
	return strings.Join(groups, " ")
}

// Check holds an answer against the proof it claims to be for. The error is a
// *ForeignError when it is for another one; problems are what keeps it from
// binding, in words. Without either, the order is signed.
func (a *Answer) Check(p Proof) (problems []string, err error) {
	if a.Fingerprint != p.Fingerprint {
		return nil, &ForeignError{Signed: a.Fingerprint, Ours: p.Fingerprint}
	}
	problems = append(a.roster(p), a.chosen(p)...)
	if a.Signed == nil {
		return append(problems, "it is not signed"), nil
	}
	if strings.TrimSpace(a.Signed.Name) == "" {
		problems = append(problems, "it is signed without a name")
	}
	if _, err := time.Parse(time.DateOnly, a.Signed.Date); err != nil {
		problems = append(problems, fmt.Sprintf("it is signed on %q, which is no date", a.Signed.Date))
	}
	return problems, nil
}

// roster checks that every player of the proof was looked at and found right.
func (a *Answer) roster(p Proof) []string {
	if len(a.Players) != len(p.Sized.Players) {
		return []string{fmt.Sprintf("it answers for %d players, and the proof shows %d", len(a.Players), len(p.Sized.Players))}
	}
	var out []string
	for i, said := range a.Players {
		shown := p.Sized.Players[i]
		if said.Name != shown.Name || said.Number != shown.Number {
			out = append(out, fmt.Sprintf("row %d of it is %s %s, and of the proof %s %s", i+1, said.Number, said.Name, shown.Number, shown.Name))
		}
		switch said.Answer {
		case Note:
			out = append(out, fmt.Sprintf("%s: a change is asked for", shown.Label()))
		case Open:
			out = append(out, fmt.Sprintf("%s was not looked at", shown.Label()))
		}
	}
	return out
}

// chosen checks that every question that must be answered is, once, with one
// of its ways.
func (a *Answer) chosen(p Proof) []string {
	var out []string
	made := map[string]int{}
	for _, c := range a.Choices {
		made[c.Question]++
	}
	known := map[string]bool{}
	for _, q := range p.Questions {
		known[q.ID] = true
		switch n := made[q.ID]; {
		case n > 1:
			out = append(out, fmt.Sprintf("question %s is answered %d times", q.ID, n))
		case n == 0 && q.Open():
			out = append(out, unanswered(p, q))
		}
	}
	for _, c := range a.Choices {
		if !known[c.Question] {
			out = append(out, fmt.Sprintf("the proof has no question %q", c.Question))
			continue
		}
		out = append(out, a.way(p, c)...)
	}
	return out
}

func (a *Answer) way(p Proof, c Choice) []string {
	for _, q := range p.Questions {
		if q.ID != c.Question {
			continue
		}
		w, ok := q.Way(c.Letter)
		switch {
		case !ok || w.Kind != c.Way:
			return []string{fmt.Sprintf("question %s has no way %s, %s", c.Question, c.Letter, c.Way)}
		case w.Kind == choices.AnotherNumber:
			return []string{fmt.Sprintf("%s takes another number: that needs a new proof", p.Sized.Players[w.Player].Label())}
		case w.Kind == choices.PutRight:
			return []string{fmt.Sprintf("%s, %s, is to be put right: that needs a new proof", q.Rule.Words(), about(q))}
		case w.NewProof():
			return []string{fmt.Sprintf("%s: %s for the %s needs a new proof", p.Sized.Players[q.Player].Label(), w.Kind, about(q))}
		}
	}
	return nil
}

func unanswered(p Proof, q choices.Question) string {
	if q.Rule != nil {
		return fmt.Sprintf("no choice is made about %s, %s", q.Rule.Words(), about(q))
	}
	return fmt.Sprintf("%s: no choice is made for the %s", p.Sized.Players[q.Player].Label(), about(q))
}

func about(q choices.Question) string {
	switch {
	case q.Piece != nil:
		return string(q.Piece.Asked.Place)
	case q.Rule != nil:
		return strings.TrimSpace(q.Rule.Finding.Place + " " + strings.TrimPrefix(q.Rule.Finding.What, lastWord(q.Rule.Finding.Place)+" "))
	}
	return "number"
}

// lastWord keeps a word from being said twice: back number height.
func lastWord(place string) string { return place[strings.LastIndex(place, " ")+1:] }

// Corrections lists what the coach asked the shop to change: players in roster
// order, then what choices ask for that were not drawn.
func (a *Answer) Corrections(p Proof) []Correction {
	out := a.notes(p.Sized)
	for _, c := range a.Choices {
		for _, q := range p.Questions {
			w, ok := q.Way(c.Letter)
			if q.ID != c.Question || !ok || w.Kind != c.Way || !w.NewProof() || w.Kind == choices.AnotherNumber {
				continue // another number is a note of its player
			}
			out = append(out, correctionOf(p.Sized, q, w))
		}
	}
	return out
}

func correctionOf(s *sizes.Sized, q choices.Question, w choices.Way) Correction {
	if q.Rule != nil {
		return Correction{Player: q.Rule.Finding.Player, About: q.Rule.Words(), Note: "put it right: " + about(q) + ", " + q.Rule.Finding.Required}
	}
	shown := s.Players[q.Player]
	return Correction{Player: shown.Label(), Row: q.Player + 1, Number: shown.Number, About: about(q), Note: w.Kind}
}

func (a *Answer) notes(s *sizes.Sized) []Correction {
	var out []Correction
	for i, p := range a.Players {
		if p.Answer != Note {
			continue
		}
		c := Correction{Player: p.Name, Row: p.Row, Number: p.Number, About: p.About, Note: p.Note}
		if i < len(s.Players) {
			c.Player = s.Players[i].Label()
		}
		out = append(out, c)
	}
	return out
}
