package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/findings"
)

// clashWords say why players who share a number are asked about.
func (d *document) clashWords(q *question, c clash) {
	q.verdict = "one number, " + plural(len(c.players), "player")
	if c.finding.Source != "" {
		q.verdict = "breaks a rule"
	}
	q.says = sentenceCase(onPage(c.finding.Required))
	if !strings.HasSuffix(q.says, ".") {
		q.says += "."
	}
	if c.finding.Rule != "" {
		q.says = "Rule " + c.finding.Rule + ": " + onPage(c.finding.Required) + "."
	}
	q.without = "Write the new number on the line, or let it stand."
}

// ruleQuestions ask about each rule that is broken: put right, or left as it is
// knowingly. What does not fit and numbers that clash have questions of their
// own; what only the coach knows (a size that is missing) is written on the
// sign-off page.
func (d *document) ruleQuestions() []question {
	var out []question
	for _, g := range d.ruleGroups() {
		if g.severity != findings.Violation {
			continue
		}
		for _, r := range g.rows {
			if r.cited && !r.unfit && !r.clash {
				out = append(out, d.ruleQuestion(r))
			}
		}
	}
	return out
}

func (d *document) ruleQuestion(r ruleRow) question {
	rule := "a rule"
	if r.rule != "" {
		rule = "rule " + r.rule
	}
	who := sentenceCase(subjectOf(r.where, r.what))
	q := question{player: -1, who: who, verdict: "breaks " + rule}
	var said []string
	if r.who != "" {
		said = append(said, sentenceCase(r.who)+".")
	}
	if r.measured != "" {
		said = append(said, fmt.Sprintf("It is %s.", r.measured))
	}
	if r.required != "" {
		said = append(said, fmt.Sprintf("The book asks for %s.", r.required))
	}
	if r.memory {
		said = append(said, "The figure is from memory: check your book.")
	}
	q.says = strings.Join(said, " ")
	q.ways = []way{
		{title: "put it right, with a new proof", detail: r.remedy, player: -1},
		{title: "leave it; I know " + rule + " is broken", player: -1},
	}
	return q
}
