package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// question is one choice that the coach is asked to make.
type question struct {
	number string // as the row begins: 14, or 0, 00
	who    string
	player int          // index into the roster
	piece  *sizes.Piece // what does not fit as asked; nil for a clash of numbers
	over   float64      // mm over the limit; 0 for a name that was only reduced
	ways   []way

	// Of a question about a rule: what came of it, what is so, what happens
	// without an answer, and whether players share a number.
	verdict, says, without string
	clash                  bool
}

// way is one answer to a question. The letters run A, B, C … over those that
// can be ticked.
type way struct {
	letter string
	title  string
	detail string        // what it comes to, for a proof that does not draw it
	blank  bool          // the answer is written on a line
	out    *fit.WayOut   // nil when it is no change of a name
	player int           // whose number changes, an index into the roster; -1 for nobody's
	choice *sizes.Choice // how the piece is made then; nil when it is not known
}

// questions lists the choices: what is over, the furthest first, then names
// that were reduced, then numbers that clash.
func (d *document) questions() []question {
	var out []question
	for i := range d.in.Sized.Players {
		p := &d.in.Sized.Players[i]
		for k := range p.Pieces {
			if q, ok := d.questionOf(p, &p.Pieces[k]); ok && !slices.ContainsFunc(out, q.sameAs) {
				q.player = i
				out = append(out, q)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b question) int { return cmp.Compare(b.over, a.over) })
	for _, c := range d.clashes() {
		if !c.advice {
			out = append(out, d.clashQuestion(c))
		}
	}
	out = append(out, d.ruleQuestions()...)
	for i := range out {
		letterWays(out[i].ways)
	}
	return out
}

func letterWays(ways []way) {
	for i := range ways {
		ways[i].letter = string(rune('A' + i))
	}
}

// sameAs reports whether another question asks the same: a team name is asked
// about once for all who wear it in the same way.
func (q question) sameAs(o question) bool {
	if q.piece == nil || o.piece == nil || q.piece.Asked.Place != o.piece.Asked.Place || perPlayer(q.piece.Asked.Place) {
		return false
	}
	return q.piece.Text() == o.piece.Text() && q.piece.Height() == o.piece.Height() && q.piece.Room.Width == o.piece.Room.Width
}

// perPlayer reports whether a piece differs from player to player.
func perPlayer(place garment.Place) bool {
	return place != garment.FrontName && place != garment.LeftChest
}

// questionOf asks about a piece that did not come out as asked.
func (d *document) questionOf(p *sizes.Player, piece *sizes.Piece) (question, bool) {
	by, over := overBy(*piece)
	q := question{number: p.Number, who: d.asCut(*p), piece: piece}
	if over {
		q.over = by
	}
	switch place := piece.Asked.Place; {
	case place == garment.BackName:
	case perPlayer(place):
		q.who = strings.TrimSpace(q.who + ", " + string(place))
		q.who = strings.TrimPrefix(q.who, ", ")
	default:
		q.number, q.who = "", fmt.Sprintf("%s, size %s", piece.Text(), d.sizeLabel(p.Size))
	}
	if len(piece.Remedies) > 0 {
		q.ways = d.remedyWays(*piece)
		return q, over
	}
	if piece.Number != nil {
		q.ways = d.numberWays(*piece)
		return q, over
	}
	if piece.ForTheLook() {
		return q, false // lower only so that the team looks alike
	}
	if piece.Name.Verdict == fit.Reduced {
		q.ways = append(q.ways, way{title: "as it stands", detail: d.heightOf(*piece) + " high"})
	}
	for i := range piece.Name.WouldFit {
		w := &piece.Name.WouldFit[i]
		q.ways = append(q.ways, way{title: w.Kind, detail: d.wayDetail(*w), out: w, choice: &sizes.Choice{Place: piece.Asked.Place, Name: w}})
	}
	return q, over || piece.Name.Verdict == fit.Reduced
}

// wayDetail says in figures what a way out comes to.
func (d *document) wayDetail(w fit.WayOut) string {
	high := d.rounded(w.Height, length.Down)
	switch w.Kind {
	case fit.NarrowerLetters:
		return fmt.Sprintf("%.1f %% wide, %s", 100*w.WidthFloor, high)
	case fit.NextSize:
		return w.Size + ", " + high
	case fit.NarrowerFace:
		return d.faceName(w.FaceID) + ", " + high
	case fit.MoreRoom:
		return "room " + d.rounded(w.Limit, length.Up)
	case fit.TwoLines:
		return strings.ReplaceAll(w.Text, "\n", " / ")
	case fit.AnInitial:
		return w.Text
	}
	return high + " high"
}

// faceName is the name of a face for people.
func (d *document) faceName(id string) string {
	if face, err := d.in.Face(id); err == nil {
		return strings.TrimSuffix(face.Name(), " Regular")
	}
	return id
}

// clashQuestion asks which of the players takes another number.
func (d *document) clashQuestion(c clash) question {
	q := question{player: c.players[0], clash: true}
	var numbers, names []string
	for _, i := range c.players {
		p := d.in.Sized.Players[i]
		if !slices.Contains(numbers, p.Number) {
			numbers = append(numbers, p.Number)
		}
		name := d.asCut(p)
		if name == "" {
			name = p.Label()
		}
		names = append(names, name)
		subject := p.Number
		if c.byNumber {
			subject = name
		}
		q.ways = append(q.ways, way{title: subject + " becomes", blank: true, player: i})
	}
	q.number, q.who = strings.Join(numbers, ", "), list(names)
	stays := "leave both; I know that they share it"
	switch {
	case c.finding.Rule != "":
		stays = "leave both; I know rule " + c.finding.Rule + " is broken"
	case c.finding.Source != "":
		stays = "leave both; I know that a rule is broken"
	}
	if len(c.players) > 2 {
		stays = strings.Replace(stays, "both", "all", 1)
	}
	q.ways = append(q.ways, way{title: stays, player: -1})
	d.clashWords(&q, c)
	return q
}
