package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/choices"
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

// way is one answer to a question.
type way struct {
	letter string
	title  string
	detail string        // what it comes to, for a proof that does not draw it
	blank  bool          // the answer is written on a line
	out    *fit.WayOut   // nil when it is no change of a name
	player int           // whose number changes, an index into the roster; -1 for nobody's
	choice *sizes.Choice // how the piece is made then; nil when it is not known
}

// questions lists the choices in the order and with the letters that the page
// for the phone and the shop's records have too.
func (d *document) questions() []question {
	var out []question
	for _, q := range choices.Of(d.in.Sized, d.in.Results) {
		out = append(out, d.question(q))
	}
	return out
}

// question puts a choice into words.
func (d *document) question(c choices.Question) question {
	q := question{player: c.Player, piece: c.Piece, over: c.Over}
	for _, w := range c.Ways {
		q.ways = append(q.ways, d.wayOf(c, w))
	}
	switch {
	case c.Clash != nil:
		d.aboutClash(&q, *c.Clash)
	case c.Rule != nil:
		d.aboutRule(&q, c.Rule)
	default:
		d.aboutPiece(&q)
	}
	return q
}

// aboutPiece says whose piece a question is about.
func (d *document) aboutPiece(q *question) {
	p := &d.in.Sized.Players[q.player]
	q.number, q.who = p.Number, d.asCut(*p)
	switch place := q.piece.Asked.Place; {
	case place == garment.BackName:
	case choices.PerPlayer(place):
		q.who = strings.TrimPrefix(strings.TrimSpace(q.who+", "+string(place)), ", ")
	default:
		q.number, q.who = "", fmt.Sprintf("%s, size %s", q.piece.Text(), d.sizeLabel(p.Size))
	}
}

// wayOf puts an answer into words.
func (d *document) wayOf(q choices.Question, w choices.Way) way {
	out := way{letter: w.Letter, title: w.Kind, player: w.Player, out: w.Name}
	switch {
	case w.Name != nil:
		out.detail = d.wayDetail(*w.Name)
		out.choice = &sizes.Choice{Place: q.Piece.Asked.Place, Name: w.Name}
	case w.Number != nil:
		figure, more := d.numberWords(*q.Piece, w.Number)
		out.detail, out.choice = joined(figure, more), &sizes.Choice{Place: q.Piece.Asked.Place, Number: w.Number}
	case w.Remedy != nil:
		if words := w.Remedy.Words(d.length); words != w.Kind {
			out.detail = words
		}
	case w.Kind == choices.AsItStands:
		out.detail = d.heightOf(*q.Piece) + " high"
	case w.Kind == choices.AnotherNumber:
		out.title, out.blank = d.wearer(*q.Clash, w.Player)+" becomes", true
	case w.Kind == choices.LeaveBoth:
		out.title = leaveClash(*q.Clash)
	case w.Kind == choices.PutRight:
		out.title, out.detail = "put it right, with a new proof", d.ruleWords(q.Rule).remedy
	case w.Kind == choices.LeaveIt:
		out.title = "leave it; I know " + q.Rule.Words() + " is broken"
	}
	return out
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
