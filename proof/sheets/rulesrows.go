package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/proof/parts"
)

// ruleRow is one row of the table of rules, in words.
type ruleRow struct {
	result             parts.Result
	label              string // of the result
	what, where, who   string
	measured, required string
	rule, source       string
	remedy             string
	memory             bool
	cited              bool // a rule book is meant
	unfit              bool // a piece that does not fit
	ask                bool // only the coach knows
	lowered            bool // pieces that fit only at a lower height
	clash              bool // players who share a number
	checks             int  // how many results the row stands for
	people             []string
	measures           []string // different ones of the people
}

// ruleGroups sorts the results into the four groups, with those of one cause in
// one row.
func (d *document) ruleGroups() []ruleGroup {
	out := []ruleGroup{
		{title: "To put right", severity: findings.Violation},
		{title: "Worth knowing", severity: findings.Advice},
		{title: "Could not be checked", severity: findings.Unknown},
		{title: "In order", severity: findings.InOrder},
	}
	add := func(s findings.Severity, r ruleRow) {
		r.checks = 1
		for i := range out {
			if out[i].severity == s {
				out[i].add(r)
			}
		}
	}
	for _, c := range choices.Clashes(d.in.Sized, d.in.Results) {
		add(c.Finding.Severity, d.clashRow(c))
	}
	lowered := false
	for _, g := range findings.Grouped(d.in.Results, len(d.in.Sized.Players)) {
		switch {
		case choices.AboutClash(g.Result):
		case isLowered(g.Finding):
			if !lowered {
				for _, r := range d.loweredRows() {
					add(findings.Advice, r)
				}
			}
			lowered = true
		default:
			add(g.Severity, d.rowOf(g))
		}
	}
	for i := range out {
		out[i].rows = d.withoutCrowds(out[i].rows)
		d.settle(out[i].rows)
	}
	return out
}

// aFew is how many pieces of one place that do not fit have a row each.
const aFew = 3

// withoutCrowds puts pieces that do not fit into one row a place where they are
// many: the choices list them one by one.
func (d *document) withoutCrowds(rows []ruleRow) []ruleRow {
	crowd := map[string]int{}
	for _, r := range rows {
		if r.unfit {
			crowd[r.what+r.where]++
		}
	}
	var out []ruleRow
	at := map[string]int{}
	for _, r := range rows {
		key := r.what + r.where
		if !r.unfit || crowd[key] <= aFew {
			out = append(out, r)
			continue
		}
		i, known := at[key]
		if !known {
			at[key] = len(out)
			r.measured, r.required = "wider than the room", "the room on each size"
			out = append(out, r)
			continue
		}
		out[i].people = append(out[i].people, r.people...)
		out[i].checks++
		out[i].who = shortList(out[i].people, mostPeople)
	}
	return out
}

// add puts a row at the end of the group. What is not known for the same reason
// shares a row, and so do people who break one rule by different figures.
func (g *ruleGroup) add(r ruleRow) {
	unknown := g.severity == findings.Unknown && r.measured == "" && r.who == ""
	if unknown {
		r.what, r.where = strings.TrimSpace(subjectOf(r.where, r.what)), ""
	}
	for i := range g.rows {
		same := &g.rows[i]
		if same.required != r.required || same.rule != r.rule || same.source != r.source || same.memory != r.memory {
			continue
		}
		switch {
		case unknown && same.measured == "" && same.who == "":
			same.what += "\n" + r.what
			same.checks++
			return
		case r.who == "" && same.who == "" && r.where != "" && same.what == r.what && same.measured == r.measured && same.result == r.result:
			same.where = list(append(strings.Split(strings.ReplaceAll(same.where, " and ", ", "), ", "), r.where))
			same.checks++
			return
		case r.cited && len(r.people) > 0 && len(same.people) > 0 && same.what == r.what && same.where == r.where:
			same.people, same.measures = append(same.people, r.people...), append(same.measures, r.measures...)
			same.remedy = "" // it spoke of the first
			return
		}
	}
	g.rows = append(g.rows, r)
}

// settle writes out the people and the figures of rows that were put together.
func (d *document) settle(rows []ruleRow) {
	for i := range rows {
		r := &rows[i]
		if len(r.measures) < 2 {
			continue
		}
		r.measured = shortList(r.measures, mostFigures)
		if r.who = shortList(r.people, mostPeople); len(r.people) == len(d.in.Sized.Players) {
			r.who = fmt.Sprintf("all %d players", len(r.people))
		}
	}
}

// checks counts the results in the group.
func (g ruleGroup) checks() int {
	n := 0
	for _, r := range g.rows {
		n += r.checks
	}
	return n
}

func resultOf(s findings.Severity) parts.Result {
	switch s {
	case findings.Violation:
		return parts.Broken
	case findings.Advice:
		return parts.Advice
	case findings.Unknown:
		return parts.NotChecked
	}
	return parts.InOrder
}

func (d *document) rowOf(g findings.Group) ruleRow {
	r := ruleRow{
		result: resultOf(g.Severity), what: g.What, where: g.Place, who: g.Who,
		measured: forCoach(onPage(g.Measured)), required: onPage(g.Required),
		rule: g.Rule, source: g.Source, memory: g.How == "memory", cited: g.Source != "",
		people: g.Players, measures: []string{forCoach(onPage(g.Measured))},
	}
	if merged, ok := merge(g.Place, g.What); ok {
		r.what, r.where = merged, ""
	}
	if r.who == "" {
		r.who = g.Player
	}
	r.label = r.result.String()
	if g.Severity != findings.Violation {
		return r
	}
	r.unfit = !r.cited && strings.HasSuffix(g.What, " width")
	r.ask = !r.cited && strings.HasPrefix(g.Remedy, "ask the coach")
	switch {
	case r.unfit:
		r.label = "does not fit"
	case !r.cited:
		r.label = "to put right"
	}
	if g.Remedy != "" && !r.unfit && !r.ask { // the coach is who reads this
		r.remedy = sentenceCase(onPage(g.Remedy)) + "."
	}
	return r
}

// subjectOf names what a result is about in one go: back number height, number
// stroke of back number and front number.
func subjectOf(place, what string) string {
	if merged, ok := merge(place, what); ok {
		return merged
	}
	if place == "" {
		return what
	}
	return what + ", " + list(strings.Split(place, ", "))
}

// merge says place and thing without saying a word twice: back number height.
func merge(place, what string) (string, bool) {
	last := place[strings.LastIndex(place, " ")+1:]
	if place == "" || strings.Contains(place, ",") || !strings.HasPrefix(what, last+" ") {
		return "", false
	}
	return place + strings.TrimPrefix(what, last), true
}

// isLowered reports whether a finding is a piece that fits only at a lower
// height: each player has another figure, so they share a row of their own.
func isLowered(f findings.Finding) bool {
	return f.Severity == findings.Advice && f.Source == "" && f.Place != "" && strings.HasSuffix(f.What, " height")
}

// loweredRows puts the pieces of a place that were reduced into one row.
func (d *document) loweredRows() []ruleRow {
	var out []ruleRow
	for _, asked := range d.order.Pieces {
		var who []string
		low, high, want := 0.0, 0.0, 0.0
		for _, p := range d.in.Sized.Players {
			piece, ok := p.Piece(asked.Place)
			if !ok || piece.Name == nil || piece.Name.Verdict != fit.Reduced {
				continue
			}
			h := piece.Height()
			if len(who) == 0 || h < low {
				low = h
			}
			high, want = max(high, h), max(want, piece.Name.Asked)
			who = append(who, p.Label())
		}
		if len(who) > 0 {
			out = append(out, d.loweredRow(asked.Place, who, low, high, want))
		}
	}
	return out
}

func (d *document) loweredRow(place garment.Place, who []string, low, high, want float64) ruleRow {
	from, to := d.lowered(low, want), d.lowered(high, want)
	measured := from
	if len(who) > 1 && from != to {
		measured = from + " to " + to
	}
	return ruleRow{
		result: parts.Advice, label: parts.Advice.String(), what: "letters of the " + string(place), who: shortList(who, mostPeople),
		measured: measured, required: d.length(want) + ", as asked", lowered: true,
	}
}

// How many people and how many figures a row writes out before it counts the
// rest.
const (
	mostPeople  = 3
	mostFigures = 8
)

// shortList writes out the first of many and counts the rest.
func shortList(names []string, most int) string {
	if len(names) <= most+1 {
		return list(names)
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

// clashRow is the row of players who share a number.
func (d *document) clashRow(c choices.Clash) ruleRow {
	f := c.Finding
	var who, numbers []string
	for _, i := range c.Players {
		p := d.in.Sized.Players[i]
		who, numbers = append(who, p.Label()), append(numbers, p.Number)
	}
	r := ruleRow{
		result: resultOf(f.Severity), who: list(who), measured: "both on the roster", required: onPage(f.Required),
		rule: f.Rule, source: f.Source, memory: f.How == "memory", cited: f.Source != "", clash: true,
	}
	r.what = "numbers " + list(numbers)
	if c.Alike {
		r.what = "number " + numbers[0]
		r.measured = fmt.Sprintf("worn by %d players", len(numbers))
	} else if len(numbers) > 2 {
		r.measured = "all on the roster"
	}
	if r.label = r.result.String(); !r.cited && r.result == parts.Broken {
		r.label = "to put right"
	}
	return r
}
