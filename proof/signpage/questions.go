package signpage

import (
	"html/template"
	"strings"

	"yokeline/lettering/choices"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// question is one choice on the page.
type question struct {
	ID                  string // of the element, not of the question
	Index               int
	Number, Name, Size  string
	Piece               string // what it is about, where it is not the name
	Mark, Verdict, Rest string
	Over                bool
	Broken              string // of a clash: what is broken
	Consequence         string
	Long                bool // the name takes smaller letters
	Plain               bool // without drawings
	Ways                []way
}

// way is one answer to a question.
type way struct {
	Letter, Title, Detail string
	Picture               template.HTML
	Write                 bool // a number is to be written
}

// questions draws the choices and says what they need.
func (c *content) questions() error {
	for i, q := range c.in.Questions {
		var out question
		if q.Clash != nil {
			out = c.clash(q)
		} else {
			var err error
			if out, err = c.choice(q); err != nil {
				return err
			}
		}
		out.Index, out.Long = i, long(out.Name)
		c.Questions = append(c.Questions, out)
	}
	names, clashes := 0, 0
	for _, q := range c.in.Questions {
		if q.Clash != nil {
			clashes++
		} else {
			names++
		}
	}
	var who []string
	if names > 0 {
		thing := c.things(false)
		who = append(who, counted(names, thing, strings.Replace(thing+"s", "piece of letterings", "pieces of lettering", 1)))
	}
	if clashes > 0 {
		who = append(who, counted(clashes, "shared number", "shared numbers"))
	}
	verb := " asks for your choice."
	if names+clashes > 1 {
		verb = " ask for your choice."
	}
	c.DecideSay = sentence(list(who)) + verb
	if names > 0 {
		c.DecideSay += " The posts beside a name show the room on that size."
	}
	return nil
}

// choice is the question about a piece that did not come out as asked.
func (c *content) choice(q choices.Question) (question, error) {
	p, said := c.in.Sized.Players[q.Player], c.screen.Players[q.Player]
	out := question{Number: p.Number, Name: said.Name, Size: said.Size, Piece: pieceOf(q), Mark: verdictID(verdictOf(q)), Verdict: verdictOf(q).String()}
	if !choices.PerPlayer(q.Piece.Asked.Place) {
		out.Number, out.Name = "", q.Piece.Text()
	}
	switch {
	case q.Over > 0 && len(q.Ways) == 0:
		out.Over, out.Rest = true, "by "+c.screen.Length(q.Over, length.Up)
		out.Consequence = "No way out was found: it needs another name or another place. We settle it with you and send a new proof."
	case q.Over > 0:
		out.Over, out.Rest = true, "by "+c.screen.Length(q.Over, length.Up)
		out.Consequence = "It cannot be made until you choose."
	default:
		out.Rest = c.screen.Height(*q.Piece) + " high"
		out.Consequence = "It fits as drawn: choose only if you mind the lower letters."
		if len(q.Ways) == 1 {
			out.Consequence = "It fits as drawn. No other way out fits this name."
		}
	}
	return out, c.answers(q, &out)
}

// answers draws the ways of a question and says what each comes to.
func (c *content) answers(q choices.Question, out *question) error {
	var drawn []sizes.Player
	at := map[int]int{}
	for i, w := range q.Ways {
		if p, ok := c.art.answer(q, w); ok {
			at[i], drawn = len(drawn), append(drawn, p)
		}
	}
	out.Plain = len(drawn) == 0
	view := c.art.wayView(q, drawn)
	for i, w := range q.Ways {
		said := way{Letter: w.Letter}
		said.Title, said.Detail = c.words(q, w)
		if k, ok := at[i]; ok {
			var err error
			if said.Picture, err = c.art.way(q, drawn[k], view); err != nil {
				return err
			}
		}
		out.Ways = append(out.Ways, said)
	}
	return nil
}

// clash is the question who takes another number.
func (c *content) clash(q choices.Question) question {
	var numbers, names []string
	for _, i := range q.Clash.Players {
		p := c.in.Sized.Players[i]
		if !q.Clash.Alike || len(numbers) == 0 {
			numbers = append(numbers, p.Number)
		}
		names = append(names, c.screen.Players[i].Name)
	}
	out := question{Number: strings.Join(numbers, ", "), Name: strings.Join(names, ", "), Plain: true, Broken: "number worn twice"}
	if rule := q.Clash.Finding.Rule; rule != "" {
		out.Broken = "breaks rule\u00a0" + rule
	}
	for _, w := range q.Ways {
		said := way{Letter: w.Letter, Write: w.Kind == choices.AnotherNumber}
		said.Title, said.Detail = c.words(q, w)
		out.Ways = append(out.Ways, said)
	}
	return out
}

// words name a way for people and say what it comes to, and what follows from it.
func (c *content) words(q choices.Question, w choices.Way) (title, detail string) {
	title = sentence(w.Kind)
	switch {
	case w.Name != nil || w.Number != nil:
		var figure, more string
		title, figure, more = c.screen.Way(q.Player, q.Piece, w.Name, w.Number)
		detail = strings.TrimSuffix(figure+"; "+more, "; ")
	case w.Kind == choices.AnotherNumber:
		p := c.in.Sized.Players[w.Player]
		if title = p.Name; title == "" {
			title = p.Label()
		}
		if q.Clash != nil && !q.Clash.Alike {
			title = p.Number + " " + title
		}
		title += " becomes"
	case w.Kind == choices.LeaveBoth && q.Clash != nil && q.Clash.Finding.Rule != "":
		detail = "I know that the rule is broken."
	case w.Kind == choices.LeaveBoth:
		detail = "I know that they share it."
	case w.Kind == choices.AsItStands && q.Piece != nil:
		detail = c.screen.Height(*q.Piece) + " high, as drawn."
	}
	return title, detail
}
