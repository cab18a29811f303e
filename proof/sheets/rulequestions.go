package sheets

import (
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
)

// aboutClash says who share a number, and why they are asked about.
func (d *document) aboutClash(q *question, c choices.Clash) {
	q.clash = true
	var numbers, names []string
	for _, i := range c.Players {
		if n := d.in.Sized.Players[i].Number; !slices.Contains(numbers, n) {
			numbers = append(numbers, n)
		}
		names = append(names, d.named(i))
	}
	q.number, q.who = strings.Join(numbers, ", "), list(names)
	q.verdict = "one number, " + plural(len(c.Players), "player")
	if c.Finding.Source != "" {
		q.verdict = "breaks a rule"
	}
	q.says = sentenceCase(onPage(c.Finding.Required))
	if !strings.HasSuffix(q.says, ".") {
		q.says += "."
	}
	if c.Finding.Rule != "" {
		q.says = "Rule " + c.Finding.Rule + ": " + onPage(c.Finding.Required) + "."
	}
	q.without = "Write the new number on the line, or let it stand."
}

// named is a player's name as it is cut, or else what messages say.
func (d *document) named(player int) string {
	p := d.in.Sized.Players[player]
	if name := d.asCut(p); name != "" {
		return name
	}
	return p.Label()
}

// wearer is what tells a player from the others of a clash.
func (d *document) wearer(c choices.Clash, player int) string {
	if c.Alike {
		return d.named(player)
	}
	return d.in.Sized.Players[player].Number
}

func leaveClash(c choices.Clash) string {
	stays := "leave both; I know that they share it"
	switch {
	case c.Finding.Rule != "":
		stays = "leave both; I know rule " + c.Finding.Rule + " is broken"
	case c.Finding.Source != "":
		stays = "leave both; I know that a rule is broken"
	}
	if len(c.Players) > 2 {
		stays = strings.Replace(stays, "both", "all", 1)
	}
	return stays
}

// ruleWords is the row of a broken rule with all who break it.
func (d *document) ruleWords(r *choices.Rule) ruleRow {
	row := d.rowOf(findings.Group{Result: findings.Result{Finding: r.Finding}})
	row.measures = nil
	for _, m := range r.Measures {
		row.measures = append(row.measures, forCoach(onPage(m)))
	}
	for _, i := range r.Players {
		row.people = append(row.people, d.in.Sized.Players[i].Label())
	}
	row.measured, row.who = shortList(row.measures, mostFigures), shortList(row.people, mostPeople)
	if n := len(row.people); n > 1 && n == len(d.in.Sized.Players) {
		row.who = fmt.Sprintf("all %d players", n)
	}
	return row
}

// aboutRule says which rule is broken, by whom and by how much.
func (d *document) aboutRule(q *question, rule *choices.Rule) {
	r := d.ruleWords(rule)
	q.who, q.verdict = sentenceCase(subjectOf(r.where, r.what)), "breaks "+rule.Words()
	var said []string
	if r.who != "" {
		said = append(said, sentenceCase(r.who)+".")
	}
	q.says = strings.Join(append(said, r.says()...), " ")
}

// says puts what is so and what the book asks for into sentences.
func (r ruleRow) says() []string {
	var out []string
	if r.measured != "" {
		out = append(out, fmt.Sprintf("It is %s.", r.measured))
	}
	if r.required != "" {
		out = append(out, fmt.Sprintf("The book asks for %s.", r.required))
	}
	if r.memory {
		out = append(out, "The figure is from memory: check your book.")
	}
	return out
}
