package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"yokeline/lettering/changes"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/signoff"
	"yokeline/proof/outfile"
	"yokeline/proof/pdf"
	"yokeline/proof/sheets"
)

// compareChoice holds the flags of compare.
type compareChoice struct {
	before, after string
	all           bool
	out           string
	pageFiles
}

func compareCommand(s streams) *cobra.Command {
	var p compareChoice
	c := &cobra.Command{
		Use:   "compare A B",
		Short: "Say and draw what changed between two states of an order",
		Long: `compare sizes two jobs and says in words what is not the same: what the job asks
for, who plays, and how each player's pieces come out. A job is a folder or a
file; every issued revision is kept as one, in issued/revision-1/job.

It leaves out what only follows from something else; --all lists every fact. With
-o it draws compare.pdf: every player who changed, before and after, at one scale.`,
		Example: `  yokeline compare spring-league/issued/revision-1/job spring-league
  yokeline compare spring-league/issued/revision-1/job spring-league -o spring-league/compare
  yokeline compare before.yaml after.yaml --format json`,
		Args: usageArgs(cobra.ExactArgs(2)),
	}
	output := formatFlag(c)
	f := c.Flags()
	f.BoolVar(&p.all, "all", false, "list every fact that is not the same")
	f.StringVarP(&p.out, "output", "o", "", "also draw compare.pdf into this folder; made when it is not there")
	p.pageFiles.flags(c)
	_ = c.MarkFlagDirname("output")
	c.RunE = func(c *cobra.Command, args []string) error {
		if p.out == "" && (p.svg || p.png || p.paper != "") {
			return usagef("say where the pages go: -o DIR")
		}
		if err := p.pageFiles.check(); err != nil {
			return err
		}
		p.before, p.after = args[0], args[1]
		return p.run(c.Context(), s, *output)
	}
	return c
}

// changeJSON is one change as compare prints it.
type changeJSON struct {
	Kind   string `json:"kind"`
	Player string `json:"player"`
	About  string `json:"about"`
	What   string `json:"what"`
	Was    string `json:"was"`
	Is     string `json:"is"`
	Text   string `json:"text"`
}

type comparedJSON struct {
	Before  string       `json:"before"` // fingerprints
	After   string       `json:"after"`
	Summary []string     `json:"summary"` // in a coach's words
	Changes []changeJSON `json:"changes"` // every fact
}

func (p *compareChoice) run(ctx context.Context, s streams, f format) error {
	was, err := asItWas(ctx, s, p.before)
	if err != nil {
		return err
	}
	is, err := asItWas(ctx, s, p.after)
	if err != nil {
		return err
	}
	all := changes.Between(was.sized, is.sized)
	if p.out != "" {
		if err := p.draw(ctx, s, was, is, all); err != nil {
			return err
		}
	}
	if f == formatJSON {
		return s.printJSON(compared(was, is, all))
	}
	fmt.Fprintf(s.out, "%s is now %s\n", signoff.Short(was.print), signoff.Short(is.print))
	if len(all) == 0 {
		fmt.Fprintln(s.out, "Nothing that is made has changed.")
	}
	for _, line := range p.lines(all, is.job.order.Units) {
		fmt.Fprintln(s.out, line)
	}
	if p.out != "" {
		fmt.Fprintln(s.out, filepath.Join(p.out, "compare.pdf"))
	}
	return nil
}

// lines are the changes in a coach's words, or every fact of them.
func (p *compareChoice) lines(all []changes.Change, unit length.Unit) []string {
	if !p.all {
		return inCoachWords(all, unit)
	}
	var out []string
	for _, c := range all {
		out = append(out, c.Text())
	}
	return out
}

// inCoachWords is the summary of changes for a terminal.
func inCoachWords(all []changes.Change, unit length.Unit) []string {
	return changes.Summary(all, func(mm float64) string { return length.Plain(mm, unit, length.Nearest) }).Text()
}

func compared(was, is *issue, all []changes.Change) comparedJSON {
	out := comparedJSON{Before: was.print, After: is.print, Summary: append([]string{}, inCoachWords(all, is.job.order.Units)...), Changes: []changeJSON{}}
	for _, c := range all {
		out.Changes = append(out.Changes, changeJSON{string(c.Kind), c.Player, c.About, c.What, c.Was, c.Is, c.Text()})
	}
	return out
}

// draw writes the pages that show what changed.
func (p *compareChoice) draw(ctx context.Context, s streams, was, is *issue, all []changes.Change) error {
	made, err := sourceDate(s.env)
	if err != nil {
		return err
	}
	unit, o := is.job.order.Units, is.job.order
	told := changes.Summary(all, func(mm float64) string { return length.Page(mm, unit, length.Nearest) })
	paper := p.paperFor(unit)
	side := func(i *issue) sheets.Input {
		i.job.order.Revision = i.revision()
		return sheets.Input{Sized: i.sized, Results: i.results, Fingerprint: i.print, Paper: paper, Face: i.job.face, Progress: s.progress("drawing")}
	}
	book, err := sheets.Compare(side(was), side(is), told)
	if err != nil {
		return err
	}
	if err := makeFolder(p.out); err != nil {
		return err
	}
	batch := outfile.NewBatch(ctx)
	defer batch.Discard()
	facts := factsOf(o, "What changed for ", made)
	err = batch.Add(filepath.Join(p.out, "compare.pdf"), func(w io.Writer) error { return pdf.Write(w, book, facts) })
	if err == nil {
		err = p.add(batch, book, filepath.Join(p.out, "compare"))
	}
	if err != nil {
		return err
	}
	return batch.Commit()
}

// factsOf is what a PDF about an order says of itself.
func factsOf(o *order.Order, title string, made time.Time) pdf.Facts {
	facts := pdf.Facts{Title: title + o.Team, Author: o.Shop, Subject: o.Sport, Language: "en", Made: made}
	if day, err := time.Parse(time.DateOnly, o.ProofDate); err == nil && made.IsZero() {
		facts.Made = day
	}
	return facts
}
