// Package findings holds what came out of sizing against a rule book: which
// rule of which edition a name or a number breaks, by how much, what would
// mend it, and where the rule was read. What is not known is reported as not
// known; it never counts as in order.
package findings

import (
	"cmp"
	"slices"
	"strings"

	"yokeline/lettering/rulebook"
)

// Severity is how much a result weighs.
type Severity string

// The four results, heaviest first. InOrder is no finding; it is kept for the
// rules page of the proof.
const (
	Violation Severity = "violation"
	Advice    Severity = "advice"
	Unknown   Severity = "unknown"
	InOrder   Severity = "in order"
)

func (s Severity) weight() int {
	return slices.Index([]Severity{Violation, Advice, Unknown, InOrder}, s)
}

// Finding is one thing noticed, as check prints it. Lengths measured are in
// the unit of the job (and in the rule's, where that is of the other system);
// lengths required are in the unit the book prints.
type Finding struct {
	Severity Severity `json:"severity"`
	Player   string   `json:"player"` // "" when it is about the whole order
	Place    string   `json:"place"`  // back number; "" when it is about no place
	What     string   `json:"what"`   // number height
	Measured string   `json:"measured"`
	Required string   `json:"required"`
	Rule     string   `json:"rule"`
	Season   string   `json:"season,omitempty"` // that the rules were looked up for; "" where no rule book is meant
	Source   string   `json:"source"`
	How      string   `json:"how"` // read, memory, or "" where no rule book is meant
	By       string   `json:"by,omitempty"`
	Remedy   string   `json:"remedy,omitempty"`
}

// Result is a finding, or something that is in order.
type Result struct {
	Finding
	Of int // how many pieces or players a row about the whole order speaks of
	// Bench marks what concerns the shop's bench and not the coach: a proof leaves
	// it out.
	Bench bool
	mend  string // the remedy with {who} where the player stands
}

// who stands for the player in a remedy until it is known whether the row is
// about one player or about many.
const who = "{who}"

// Findings returns the results that are findings, without their order changed.
func Findings(results []Result) []Finding {
	out := []Finding{}
	for _, r := range results {
		if r.Severity != InOrder {
			out = append(out, r.Finding)
		}
	}
	return out
}

// Worst returns the heaviest severity among the results, InOrder for none.
func Worst(results []Result) Severity {
	worst := InOrder
	for _, r := range results {
		if r.Severity.weight() < worst.weight() {
			worst = r.Severity
		}
	}
	return worst
}

// Check holds everybody's pieces against the rules of one season. Without
// rules (nil) it reports only what needs no book: pieces that do not fit or
// came out smaller than asked, and the notes of the order. The results come
// heaviest first, then in the order of the checks, then in that of the roster.
func Check(r *rulebook.Rules, s Subject) []Result {
	c := &checker{rules: r, subject: s}
	c.notes()
	c.placing()
	c.seams()
	c.fits()
	c.looks()
	c.matches()
	c.details()
	c.colours()
	if r != nil {
		c.required()
		c.numbers()
		c.style()
		c.alikeInTeam()
		c.duplicates()
		for _, place := range places(r, s) {
			c.position(place)
			c.conflicts(place)
		}
		c.names()
		c.contrast()
		c.solid()
		c.borderColours()
		c.ground()
		c.libero()
		c.missing()
	}
	slices.SortStableFunc(c.results, func(a, b Result) int { return cmp.Compare(a.Severity.weight(), b.Severity.weight()) })
	return c.results
}

// checker gathers the results of one check.
type checker struct {
	rules   *rulebook.Rules
	subject Subject
	results []Result
}

// cited fills in where the rule was read and what its being remembered means
// for the remedy, and keeps the result.
func (c *checker) cited(f *rulebook.Figure, r Result) {
	r.Rule, r.Source, r.How = f.Rule, f.Source.String(), string(f.How)
	r.Season = c.rules.Season
	if f.Advice && r.Severity == Violation {
		r.Severity = Advice
	}
	if r.mend != "" && f.How == rulebook.HowMemory {
		r.mend += "; this figure is from memory, so confirm it in the current book first"
	}
	c.keep(r)
}

func (c *checker) keep(r Result) {
	r.Remedy = strings.ReplaceAll(r.mend, who, r.Player)
	c.results = append(c.results, r)
}

// unknown keeps a result about something that could not be checked.
func (c *checker) unknown(place, what, required, remedy string) {
	c.keep(Result{
		Finding: Finding{
			Severity: Unknown, Place: place, What: what, Required: required, Season: c.rules.Season,
			Source: c.rules.Body + " " + c.rules.Sport + ", " + c.rules.Edition,
		},
		mend: remedy,
	})
}
