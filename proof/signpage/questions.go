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
	Broken              string // of a clash or a rule: what is broken
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
		var err error
		switch {
		case q.Clash != nil:
			out = c.clash(q)
		case q.Rule != nil:
			out = c.rule(q)
		default:
			if out, err = c.choice(q); err != nil {
				return err
			}
		}
		out.Index, out.Long = i, q.Rule != nil || long(out.Name)
		c.Questions = append(c.Questions, out)
	}
	c.DecideSay = c.decideSay()
	return nil
}

// decideSay counts what asks for a choice.
func (c *content) decideSay() string {
	pieces, clashes, rules := 0, 0, 0
	for _, q := range c.in.Questions {
		switch {
		case q.Clash != nil:
			clashes++
		case q.Rule != nil:
			rules++
		default:
			pieces++
		}
	}
	thing := c.things(false)
	var who []string
	for _, k := range []struct {
		n         int
		one, many string
	}{
		{pieces, thing, strings.Replace(thing+"s", "piece of letterings", "pieces of lettering", 1)},
		{clashes, "shared number", "shared numbers"}, {rules, "broken rule", "broken rules"},
	} {
		if k.n > 0 {
			who = append(who, counted(k.n, k.one, k.many))
		}
	}
	verb := " asks for your choice."
	if pieces+clashes+rules > 1 {
		verb = " ask for your choice."
	}
	say := sentence(list(who)) + verb
	if pieces > 0 {
		say += " The posts beside a name show the room on that size."
	}
	return say
}

// rule is the question whether a broken rule is put right.
func (c *content) rule(q choices.Question) question {
	said, sentences := c.screen.Rule(q.Rule)
	out := question{Name: sentence(said.About), Plain: true, Broken: "breaks " + strings.Replace(q.Rule.Words(), " ", "\u00a0", 1)}
	if said.Who != "" {
		sentences = append([]string{sentence(said.Who) + "."}, sentences...)
	}
	out.Consequence = strings.Join(sentences, " ")
	for _, w := range q.Ways {
		title, detail := c.words(q, w)
		out.Ways = append(out.Ways, way{Letter: w.Letter, Title: title, Detail: detail})
	}
	return out
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
	case w.Remedy != nil:
		if detail = w.Remedy.Words(c.screen.Near); detail == w.Kind {
			detail = ""
		}
	case w.Kind == choices.PutRight:
		said, _ := c.screen.Rule(q.Rule)
		title, detail = "Put it right, with a new proof", said.Remedy
	case w.Kind == choices.LeaveIt:
		detail = "I know that " + strings.Replace(q.Rule.Words(), " ", "\u00a0", 1) + " is broken."
	case w.Kind == choices.LeaveBoth && q.Clash != nil && q.Clash.Finding.Rule != "":
		detail = "I know that the rule is broken."
	case w.Kind == choices.LeaveBoth:
		detail = "I know that they share it."
	case w.Kind == choices.AsItStands && q.Piece != nil:
		detail = c.screen.Height(*q.Piece) + " high, as drawn."
	}
	return title, detail
}
