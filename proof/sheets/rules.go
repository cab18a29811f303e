package sheets

import (
	"fmt"
	"strings"

	"yokeline/lettering/findings"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

const rulesTitle = "The rules"

// ruleGroup is one of the four weights with its rows.
type ruleGroup struct {
	title    string
	severity findings.Severity
	rows     []ruleRow
}

// planRules plans the page of the rules. It is left out when no rule book was
// named and nothing was noticed.
func (d *document) planRules() ([]leaf, error) {
	if d.in.Sized.Rules == nil && len(d.in.Results) == 0 {
		return nil, nil
	}
	t := d.newRuleTable()
	room := t.grid.Bottom - t.grid.Top - footClear
	pages := flow(t.strips(), room)
	t.pad, t.gap = tightPad, tightGap
	if tight := flow(t.strips(), room); len(tight) < len(pages) {
		pages = tight
	}
	var out []leaf
	for i, page := range pages {
		l := leaf{section: rulesSection, sheet: d.in.Paper.sheet().Portrait(), title: pageTitle(rulesTitle, i, len(pages)), sentence: t.sentence()}
		if i > 0 {
			l.sentence = fmt.Sprintf("The table goes on from page %d.", len(d.pages)+i)
		}
		l.draw = func(f *frame) error {
			f.drawStrips(page, f.Top)
			f.foot(t.footNote(), 0)
			return nil
		}
		out = append(out, l)
	}
	return out, nil
}

func (t *ruleTable) footNote() string {
	if t.in.Sized.Rules == nil {
		return "Rule books change from season to season. Ask your league which one holds for you."
	}
	return "Rule books change from season to season. Yours, with its own date, always outranks this page."
}

// checkedAgainst says which book was used.
func (d *document) checkedAgainst() []page.Span {
	r := d.in.Sized.Rules
	plain := parts.Caption().Sized(8).In(parts.Slate)
	if r == nil {
		return []page.Span{plain.Span("No rule book was named, so nothing was checked against one. "), parts.Value().Span("This is what the order itself shows.")}
	}
	book := strings.TrimSpace(r.Body + " " + r.Sport)
	for _, more := range [...]string{r.Edition, "season " + r.Season, "figures for " + r.Category} {
		if !strings.HasSuffix(more, " ") && more != "" {
			book += ", " + more
		}
	}
	return []page.Span{plain.Span("Checked against  "), parts.Value().Span(book)}
}

// sentence counts the results in words.
func (t *ruleTable) sentence() string {
	broken, unfit, other := 0, 0, 0
	for _, r := range t.groups[0].rows {
		switch {
		case r.cited:
			broken++
		case r.unfit:
			unfit += r.checks
		default:
			other++
		}
	}
	var said []string
	if broken > 0 || t.in.Sized.Rules != nil {
		said = append(said, inWords(broken, "rule is broken", "rules are broken"))
	}
	for _, c := range [...]struct {
		n         int
		one, many string
	}{
		{unfit, "piece does not fit yet", "pieces do not fit yet"},
		{other, "more thing to put right", "more things to put right"},
		{t.groups[1].checks(), "piece of advice", "pieces of advice"},
		{t.groups[2].checks(), "check waits", "checks wait"},
	} {
		if c.n > 0 {
			said = append(said, inWords(c.n, c.one, c.many))
		}
	}
	text := sentenceCase(strings.Join(said, ", ")) + "."
	if len(t.groups[3].rows) == 0 {
		return text
	}
	text += " All else is in order"
	long := text + ", measured on the finished shapes."
	if len(t.book.Wrap(parts.Sentence().Style, t.grid.Right-t.grid.X(6), long)) > 2 {
		return text + "."
	}
	return long
}

// inWords writes small counts in words: no rule is broken, one rule is broken,
// 14 rules are broken.
func inWords(n int, one, many string) string {
	words := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	count := fmt.Sprint(n)
	if n < len(words) {
		count = words[n]
	}
	if n < 2 {
		return count + " " + one
	}
	return count + " " + many
}
