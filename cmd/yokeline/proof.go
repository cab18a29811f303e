package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"yokeline/proof/outfile"
)

// proofChoice holds the flags of proof.
type proofChoice struct {
	jobChoice
	pageFiles
	out   string
	draft bool
	html  bool
}

func proofCommand(s streams) *cobra.Command {
	var p proofChoice
	c := &cobra.Command{
		Use:   "proof JOB -o DIR | proof --demo -o DIR",
		Short: "Draw the proof of an order",
		Long: `proof draws the order to scale as one PDF, proof.pdf: the look with every length,
every player's back at one scale, what the rule book says, and the sign-off.
Letter or A4 follows the units of the job. What it found is printed on standard
error; the exit code is 0 once the proof is written.

With --html it also writes proof.html: one file to send to the coach, who ticks
every player, chooses, signs and sends the small file back that the page saves.

The date on the proof is the job's own (date:). Same job, same bytes.`,
		Example: `  yokeline proof --demo -o demo
  yokeline proof spring-league -o spring-league/proof
  yokeline proof spring-league -o out --svg --png --dpi 200`,
		Args: usageArgs(cobra.MaximumNArgs(1)),
	}
	f := c.Flags()
	f.StringVarP(&p.out, "output", "o", "", "folder for the proof; made when it is not there")
	f.BoolVar(&p.demo, "demo", false, "draw the built-in order")
	f.BoolVar(&p.draft, "draft", false, "mark the proof as a draft and keep nothing of it")
	f.BoolVar(&p.html, "html", false, "also write proof.html, the page that the coach ticks and signs on a phone or a computer")
	p.pageFiles.flags(c)
	f.StringVar(&p.rules, "rules", "", "rule book, instead of the job's own")
	f.StringVar(&p.season, "season", "", "season, instead of the due date's year")
	f.StringVar(&p.category, "category", "", "whose figures hold, such as women or 12U, instead of the job's own")
	_ = c.MarkFlagDirname("output")
	c.RunE = func(c *cobra.Command, args []string) error {
		if err := p.check(args); err != nil {
			return err
		}
		return p.run(c, s)
	}
	return c
}

func (p *proofChoice) check(args []string) error {
	switch {
	case len(args) == 0 && !p.demo:
		return usagef("give a job, or --demo; see yokeline proof --help")
	case len(args) == 1 && p.demo:
		return usagef("give a job or --demo, not both")
	case p.out == "":
		return usagef("say where the proof goes: -o DIR")
	case len(args) == 1:
		p.path = args[0]
	}
	return p.pageFiles.check()
}

func (p *proofChoice) run(c *cobra.Command, s streams) error {
	made, err := sourceDate(s.env)
	if err != nil {
		return err
	}
	i, err := prepare(c.Context(), s, p.jobChoice)
	if err != nil {
		return err
	}
	if p.draft {
		i.job.order.Revision, i.shelf.path = "draft", ""
	}
	d, err := i.draw(s, p.paperFor(i.job.order.Units), made)
	if err != nil {
		return err
	}
	if err := p.write(c, i, d); err != nil {
		return err
	}
	printFindings(s.err, i.results, len(i.sized.Players))
	i.keepBeside(c, s.err, p.jobChoice, d)
	_, err = fmt.Fprintln(s.out, filepath.Join(p.out, "proof.pdf"))
	return err
}

// write puts all files of the proof in place together.
func (p *proofChoice) write(c *cobra.Command, i *issue, d *drawn) error {
	if err := makeFolder(p.out); err != nil {
		return err
	}
	batch := outfile.NewBatch(c.Context())
	defer batch.Discard()
	err := batch.Add(filepath.Join(p.out, "proof.pdf"), d.writePDF)
	if p.html && err == nil {
		err = batch.Add(filepath.Join(p.out, "proof.html"), d.writeHTML)
	}
	if err == nil {
		err = p.pageFiles.add(batch, d.book, filepath.Join(p.out, "page"))
	}
	if err != nil {
		return err
	}
	return batch.Commit()
}

// keepBeside keeps the proof beside its job. It is drawn by then: where it cannot
// be kept, that is said and no more.
func (i *issue) keepBeside(c *cobra.Command, w io.Writer, choice jobChoice, d *drawn) {
	batch := outfile.NewBatch(c.Context())
	defer batch.Discard()
	err := i.keep(batch, choice, d)
	if err == nil {
		err = batch.Commit()
	}
	if err != nil {
		fmt.Fprintf(w, "The proof is drawn but could not be kept beside its job: %v\nA sign-off of it can be recorded only while the job stays as it is.\n", err)
		return
	}
	i.said(w)
}

// makeFolder makes the folder of the output and those above it.
func makeFolder(path string) error {
	if err := os.MkdirAll(path, 0o755); err != nil {
		return &outfile.Error{Kind: outfile.NoFolder, Path: path, Err: err}
	}
	return nil
}

func writeBytes(data []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	}
}

// sourceDate reads SOURCE_DATE_EPOCH (reproducible-builds.org): whole seconds
// since 1970. The zero time means that it is not set.
func sourceDate(env func(string) string) (time.Time, error) {
	text := env("SOURCE_DATE_EPOCH")
	if text == "" {
		return time.Time{}, nil
	}
	seconds, err := strconv.ParseInt(text, 10, 64)
	if err != nil || seconds < 0 {
		return time.Time{}, usagef("SOURCE_DATE_EPOCH: %q is not a count of seconds", text)
	}
	return time.Unix(seconds, 0).UTC(), nil
}
