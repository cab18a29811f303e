package signpage

import (
	"fmt"
	"html/template"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"yokeline/lettering/choices"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/signoff"
	"yokeline/proof/parts"
	"yokeline/proof/sheets"
)

// content is what the page says and shows.
type content struct {
	in     Input
	screen *sheets.Screen
	art    *artist

	Team      string
	TeamArt   template.HTML // the name in the order's own face; empty where that lacks a letter
	Comb      template.HTML
	Code      string // the fingerprint as it is shown
	Title     string
	Intro     string
	Count     int
	Statement string
	Look      *look
	Questions []question
	DecideSay string
	Cards     []card
	Rules     []ruleLine
	InOrder   []ruleLine
	Checks    int // in order
}

// card is one player of the roster.
type card struct {
	Row, Index         int
	Number, Name, Size string
	Full               string // the player's whole name, where it is another
	Label              string // as a button calls the player
	Picture, Other     template.HTML
	Mark               string // id of the verdict's mark; empty for none
	Verdict, Rest      string
	Over               bool
	Warning, Remark    string
	Sized              bool
	Long               bool // the name takes smaller letters
	Asked              bool // a choice is to be made about this player
	Question           int  // index of that choice
}

// ruleLine is one line of the rules.
type ruleLine struct {
	Mark, Label, Text, Source string
	Broken, Memory            bool
}

func newContent(in Input, screen *sheets.Screen) (*content, error) {
	n := len(in.Sized.Players)
	c := &content{in: in, screen: screen, art: newArtist(in, screen), Count: n, Team: in.Sized.Order.Team, Code: signoff.Short(in.Fingerprint)}
	c.TeamArt, c.Comb = c.art.team(), c.art.comb()
	c.Title = "Please check " + plural(n, screen.Noun)
	c.Intro = c.intro()
	c.Statement = c.statement()
	var err error
	if c.Look, err = c.look(); err != nil {
		return nil, err
	}
	if err := c.questions(); err != nil {
		return nil, err
	}
	if err := c.cards(); err != nil {
		return nil, err
	}
	c.rules()
	return c, nil
}

// Subtitle and those below are what the template asks of the screen.
func (c *content) Subtitle() string           { return c.screen.Subtitle }
func (c *content) Fields() []parts.Field      { return c.screen.Fields }
func (c *content) Noun() string               { return c.screen.Noun }
func (c *content) Read() string               { return c.screen.Read }
func (c *content) Book() string               { return c.screen.BookName }
func (c *content) Terms() []sheets.ScreenTerm { return c.screen.Terms }
func (c *content) store() template.HTML       { return c.art.store() }

// texts are what the page's faces must be able to set.
func (c *content) texts() []string {
	out := []string{c.Team, c.Subtitle(), c.in.Sized.Order.Shop}
	for _, card := range c.Cards {
		out = append(out, card.Name, card.Full, card.Number)
	}
	for _, t := range c.Terms() {
		out = append(out, t.Title, t.Text)
	}
	return out
}

// intro says what to do and what waits for the coach.
func (c *content) intro() string {
	over, lower, twice, pairs, rules, unsized := 0, 0, 0, 0, 0, 0
	for _, q := range c.in.Questions {
		switch {
		case q.Rule != nil:
			rules++
		case q.Clash != nil && q.Clash.Alike:
			twice++
		case q.Clash != nil:
			pairs++
		case q.Over > 0:
			over++
		default:
			lower++
		}
	}
	for _, p := range c.in.Sized.Players {
		if p.Garment == nil {
			unsized++
		}
	}
	var waits []string
	add := func(n int, one, many string) {
		if n > 0 {
			waits = append(waits, counted(n, one, many))
		}
	}
	add(over, c.things(true)+" does not fit yet", strings.Replace(c.things(true)+"s", "piece of letterings", "pieces of lettering", 1)+" do not fit yet")
	add(lower, "name is lower than the others", "names are lower than the others")
	add(twice, "number is worn twice", "numbers are worn twice")
	add(rules, "rule is broken", "rules are broken")
	add(pairs, "pair of numbers counts as one", "pairs of numbers count as one")
	text := "Look at each one and tick it, or tell us what is off."
	if c.in.Onto > 0 {
		text = fmt.Sprintf("Players were added to revision %d, which you signed; one who is signed stands among them to compare. ", c.in.Onto) + text
	}
	if len(waits) > 0 {
		text += " " + sentence(list(waits)) + ": choose what to do."
	}
	if unsized > 0 {
		text += " " + sentence(counted(unsized, "player has", "players have")) + " no size yet: tell us which."
	}
	return text + " Then sign."
}

// things are what the questions about pieces, or only those about pieces that
// are over, are about.
func (c *content) things(over bool) string {
	thing := ""
	for _, q := range c.in.Questions {
		if q.Piece == nil || over && q.Over == 0 {
			continue
		}
		of := "number"
		if q.Piece.Name != nil {
			of = "name"
		}
		if thing != "" && thing != of {
			return "piece of lettering"
		}
		thing = of
	}
	return thing
}

func (c *content) statement() string {
	who := fmt.Sprintf("all %d players", c.Count)
	if c.Count == 1 {
		who = "the player"
	}
	if c.in.Onto > 0 {
		who = "the " + counted(c.added(), "added player", "added players")
	}
	done := "ticked"
	if len(c.in.Questions) > 0 {
		done = "ticked and chosen"
	}
	return "I have looked at " + who + " and at the look. Make it as " + done + "."
}

// added counts the players who are not signed yet.
func (c *content) added() int {
	n := 0
	for _, p := range c.in.Sized.Players {
		if !p.Signed {
			n++
		}
	}
	return n
}

// cards draws the roster.
func (c *content) cards() error {
	for i, p := range c.in.Sized.Players {
		said := c.screen.Players[i]
		k := card{
			Row: i + 1, Index: i, Number: p.Number, Name: said.Name, Size: said.Size, Sized: p.Garment != nil, Long: long(said.Name),
			Label: strings.TrimSpace(p.Number + " " + said.Name), Question: -1,
		}
		if p.FullName != "" && !strings.EqualFold(p.FullName, said.Name) {
			k.Full = p.FullName
		}
		if k.Label == "" {
			k.Label = p.Label()
		}
		if said.Fitted {
			k.Mark, k.Verdict, k.Rest, k.Over = verdictID(said.Verdict), said.Verdict.String(), said.Rest, said.Verdict == parts.Over
		}
		if c.in.Onto > 0 && p.Signed {
			k.Remark = "signed before, here to compare"
		} else if said.Broken {
			k.Warning = said.Remark
		} else {
			k.Remark = said.Remark
		}
		for n, q := range c.in.Questions {
			for _, of := range c.concerned(q) {
				if of == i && k.Question < 0 {
					k.Asked, k.Question = true, n
				}
			}
		}
		if k.Sized {
			var err error
			if k.Picture, k.Other, err = c.art.player(p); err != nil {
				return fmt.Errorf("%s: %w", p.Label(), err)
			}
		}
		c.Cards = append(c.Cards, k)
	}
	return nil
}

// long reports a name that takes smaller letters beside its drawing.
func long(name string) bool {
	const most = 14
	return utf8.RuneCountInString(name) > most
}

// concerned lists the players whose cards show what is chosen: none for a rule,
// which many may break.
func (c *content) concerned(q choices.Question) []int {
	switch {
	case q.Clash != nil:
		return q.Clash.Players
	case q.Rule != nil:
		return []int{}
	}
	return []int{q.Player}
}

// rules lists what the checks said: what is in order apart, to be opened.
func (c *content) rules() {
	for _, r := range c.screen.Rules {
		l := ruleLine{Mark: resultID(r.Result), Label: r.Label, Broken: r.Result == parts.Broken, Memory: r.Memory}
		l.Text = r.About
		if r.Who != "" {
			l.Text += ", " + r.Who
		}
		l.Text += figures(r)
		l.Text += "."
		if r.Remedy != "" {
			l.Text += " " + r.Remedy
		}
		l.Source = strings.TrimSpace(r.Rule + " " + r.Source)
		if r.Result == parts.InOrder {
			c.InOrder, c.Checks = append(c.InOrder, l), c.Checks+r.Checks
			continue
		}
		c.Rules = append(c.Rules, l)
	}
}

// figures says what was measured and what is required.
func figures(r sheets.ScreenRule) string {
	switch {
	case r.Measured == "" && r.Required == "":
		return ""
	case r.Measured == "":
		return ": " + r.Required
	case r.Required == "":
		return ": " + r.Measured
	case r.Rule != "":
		return ": " + r.Measured + "; the book says " + r.Required
	}
	return ": " + r.Measured + "; required: " + r.Required
}

// known lists the rules that stay broken, each with the answer that leaves it so.
func (c *content) known() []recordKnown {
	out := []recordKnown{}
	for _, q := range c.in.Questions {
		for _, w := range q.Ways {
			k := recordKnown{Question: q.ID, Letter: w.Letter}
			switch {
			case w.Kind == choices.LeaveBoth && q.Clash != nil:
				k.Rule = q.Clash.Finding.Rule
				k.What = staysBroken(k.Rule, c.clashWords(q.Clash))
			case w.Kind == choices.LeaveIt && q.Rule != nil:
				k.Rule = q.Rule.Finding.Rule
				k.What = staysBroken(k.Rule, c.ruleWords(q.Rule))
			default:
				continue
			}
			out = append(out, k)
		}
	}
	return out
}

// ruleWords says in one line what is broken, by whom and by how much.
func (c *content) ruleWords(r *choices.Rule) string {
	said, _ := c.screen.Rule(r)
	what := said.About
	if said.Who != "" {
		what += ", " + said.Who
	}
	if said.Measured != "" {
		what += ": " + said.Measured + ", required " + said.Required
	}
	return what
}

func staysBroken(rule, what string) string {
	if rule == "" {
		return sentence(what) + "."
	}
	return "Rule\u00a0" + rule + " stays broken: " + what + "."
}

// clashWords says who wears what twice.
func (c *content) clashWords(k *choices.Clash) string {
	if k.Alike {
		return fmt.Sprintf("%s wear number %s", counted(len(k.Players), "player", "players"), c.in.Sized.Players[k.Players[0]].Number)
	}
	var numbers []string
	for _, i := range k.Players {
		numbers = append(numbers, c.in.Sized.Players[i].Number)
	}
	return "numbers " + list(numbers) + " count as one"
}

// pieceOf names what a question is about where it is not the back name.
func pieceOf(q choices.Question) string {
	if q.Piece == nil || q.Piece.Asked.Place == garment.BackName {
		return ""
	}
	return string(q.Piece.Asked.Place)
}

// verdictOf returns the verdict of a piece that a question is about.
func verdictOf(q choices.Question) parts.Verdict {
	if q.Over == 0 && q.Piece.Name != nil && q.Piece.Name.Verdict == fit.Reduced {
		return parts.Reduced
	}
	return parts.Over
}

// fileName is what the saved answer is called: the team's name in plain small
// letters.
func fileName(team string) string {
	var b strings.Builder
	gap := false
	for _, r := range norm.NFKD.String(strings.ToLower(team)) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			b.WriteRune(r)
			gap = false
		case r == ' ', r == '-', r == '_', r == '/', r == '.':
			gap = true
		}
		if b.Len() >= 60 {
			break
		}
	}
	if b.Len() == 0 {
		return "signoff.json"
	}
	return b.String() + "-signoff.json"
}
