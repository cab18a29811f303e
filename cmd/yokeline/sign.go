package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"yokeline/lettering/changes"
	"yokeline/lettering/signoff"
	"yokeline/lettering/source"
	"yokeline/proof/outfile"
	"yokeline/proof/records"
	"yokeline/proof/sheets"
)

func signCommand(s streams) *cobra.Command {
	var p onPaper
	c := &cobra.Command{
		Use:   "sign JOB FILE",
		Short: "Record the coach's sign-off of one exact proof",
		Long: `sign takes the file that the proof page saved for the coach. When it signs exactly
this order, it is kept beside the proof and the order is signed. When the coach
asks for changes, they are kept and listed. When it is for another proof, what
changed since is said player by player, and nothing is recorded.

A proof that was signed by hand is recorded from its scan: FILE is the picture or
the PDF of the sheet, and the flags say what stands on it. Whatever was struck
through is not signed: change it and issue a new proof.

Exit codes: 0 signed; 1 changes are asked for; 3 the file does not fit this order.`,
		Example: `  yokeline sign spring-league herons-signoff.json
  yokeline sign spring-league scan.pdf --by "Robin Vale" --date 2027-02-24 --code "a622 b8c6 99bb b360" --choose 1=D`,
		Args: usageArgs(cobra.ExactArgs(2)),
	}
	output := formatFlag(c)
	f := c.Flags()
	f.StringVar(&p.by, "by", "", "who signed the sheet by hand")
	f.StringVar(&p.date, "date", "", "the day on the sheet, such as 2027-02-24")
	f.StringVar(&p.code, "code", "", "the fingerprint on the sheet, its sixteen digits")
	f.StringArrayVar(&p.choose, "choose", nil, "a choice that is ticked on the sheet, by its number: 1=D")
	c.RunE = func(c *cobra.Command, args []string) error {
		job := jobChoice{path: args[0]}
		if p.given() {
			return p.sign(c.Context(), s, job, args[1], *output)
		}
		return sign(c.Context(), s, job, args[1], *output)
	}
	return c
}

// signedJSON is what sign prints.
type signedJSON struct {
	Revision    int                  `json:"revision"`
	Fingerprint string               `json:"fingerprint"`
	Signed      *signoff.Signed      `json:"signed"`
	Players     int                  `json:"players"`
	Choices     []signoff.Choice     `json:"choices"`
	Known       []signoff.Known      `json:"known"`
	Corrections []signoff.Correction `json:"corrections"`
	Kept        string               `json:"kept"`
}

func sign(ctx context.Context, s streams, c jobChoice, file string, f format) error {
	data, err := os.ReadFile(file)
	if err != nil {
		return usagef("the sign-off cannot be read: %v", err)
	}
	answer, faults := signoff.Read(filepath.Base(file), data)
	if len(faults) > 0 {
		return faults
	}
	i, err := prepareAs(ctx, s, c, answer.Fingerprint)
	if err != nil {
		return err
	}
	proof := signoff.Proof{Sized: i.shown, Fingerprint: i.print, Questions: i.questions}
	problems, err := answer.Check(proof)
	var foreign *signoff.ForeignError
	if errors.As(err, &foreign) {
		return i.foreign(ctx, s, filepath.Base(file), foreign)
	}
	return i.settle(ctx, s, c, received{answer: answer, file: filepath.Base(file), data: data, problems: problems, corrections: answer.Corrections(proof)}, f)
}

// received is an answer to this proof, with what was found in it.
type received struct {
	answer      *signoff.Answer
	file        string
	data        []byte // the answer as it is kept
	scan        []byte // of a sheet that was signed by hand; nil for none
	problems    []string
	corrections []signoff.Correction
}

// settle records an answer, or refuses it, and says so.
func (i *issue) settle(ctx context.Context, s streams, c jobChoice, r received, f format) error {
	answer, problems, corrections := r.answer, r.problems, r.corrections
	if len(problems) > 0 && len(corrections) == 0 && answer.Signed != nil {
		return refused(r.file, problems)
	}
	kept, err := i.record(ctx, s, c, r)
	if err != nil {
		return err
	}
	out := signedJSON{
		Revision: i.number, Fingerprint: i.print, Players: len(i.shown.Players), Choices: answer.Choices, Known: answer.Known,
		Corrections: append([]signoff.Correction{}, corrections...), Kept: kept,
	}
	if len(problems) == 0 {
		out.Signed = answer.Signed
	}
	if err := printSigned(s, out, problems, f); err != nil {
		return err
	}
	return overIsAFinding(len(problems) > 0)
}

// prepareAs is prepare with the rule book, season and category that the proof
// with a fingerprint was drawn with, where it is kept.
func prepareAs(ctx context.Context, s streams, c jobChoice, fingerprint string) (*issue, error) {
	sh, err := openShelf(c)
	if err != nil {
		return nil, err
	}
	if r, ok := records.Find(sh.all, fingerprint); ok {
		c = sh.asked(c, r)
	}
	return prepare(ctx, s, c)
}

func refused(file string, problems []string) error {
	var faults source.Faults
	for _, p := range problems {
		faults = append(faults, source.Fault{Place: source.Place{File: file}, Message: p})
	}
	faults[len(faults)-1].Hint = "send the coach a new proof page and ask for a new answer"
	return faults
}

// foreign says what a sign-off of another proof is for.
func (i *issue) foreign(ctx context.Context, s streams, file string, wrong *signoff.ForeignError) error {
	fault := source.Fault{Place: source.Place{File: file}, Message: wrong.Error()}
	r, ok := records.Find(i.shelf.all, wrong.Signed)
	if !ok {
		fault.Hint = "no proof with that fingerprint was issued from this job: is it another team's, or was the proof drawn with --draft?"
		return source.Faults{fault}
	}
	was, err := i.shelf.replay(ctx, s, r)
	if err != nil {
		return err
	}
	var lines []string
	for _, line := range inCoachWords(changes.Between(was.sized, i.sized), i.job.order.Units) {
		lines = append(lines, "  "+line)
	}
	fmt.Fprintf(s.err, "It signs revision %d. Since then:\n%s\n", r.Number, strings.Join(lines, "\n"))
	fault.Hint = fmt.Sprintf("put the job back as it was in %s, or send the coach the new proof", filepath.Join(i.shelf.path, r.Dir(), records.InputsDir))
	return source.Faults{fault}
}

// record keeps an answer beside its proof, and the proof too when it is not kept
// yet.
func (i *issue) record(ctx context.Context, s streams, c jobChoice, got received) (string, error) {
	answer, binds := got.answer, len(got.problems) == 0
	batch := outfile.NewBatch(ctx)
	defer batch.Discard()
	if !i.kept {
		d, err := i.draw(s, sheets.PaperFor(i.job.order.Units), time.Time{})
		if err != nil {
			return "", err
		}
		if err := i.keep(batch, c, d); err != nil {
			return "", err
		}
	}
	r := records.Revision{Number: i.number}
	for _, known := range i.shelf.all {
		if known.Number == i.number {
			r = known
		}
	}
	for _, a := range r.Answers {
		if a.Answer.Seal == answer.Seal && a.Binds == binds { // the same file again
			return filepath.Join(i.shelf.path, r.Dir(), a.File), nil
		}
	}
	path := filepath.Join(i.shelf.path, r.Dir(), r.NextFile(binds))
	if got.scan != nil {
		sheet := strings.TrimSuffix(path, filepath.Ext(path)) + strings.ToLower(filepath.Ext(got.file))
		if err := batch.Add(sheet, writeBytes(got.scan)); err != nil {
			return "", err
		}
	}
	if err := batch.Add(path, writeBytes(got.data)); err != nil {
		return "", err
	}
	return path, batch.Commit()
}

func printSigned(s streams, out signedJSON, problems []string, f format) error {
	if f == formatJSON {
		return s.printJSON(out)
	}
	w := s.out
	if out.Signed != nil {
		fmt.Fprintf(w, "Signed by %s on %s: revision %d, %s, %s.\n", out.Signed.Name, out.Signed.Date, out.Revision, signoff.Short(out.Fingerprint), players(out.Players))
	} else {
		fmt.Fprintf(w, "Not signed: revision %d, %s.\n", out.Revision, signoff.Short(out.Fingerprint))
		printCorrections(w, out.Corrections, problems)
	}
	for _, c := range out.Choices {
		fmt.Fprintf(w, "  chosen: %s, %s %s\n", c.Question, c.Letter, c.Way)
	}
	for _, k := range out.Known {
		fmt.Fprintf(w, "  known: rule %s stays broken: %s\n", k.Rule, k.What)
	}
	_, err := fmt.Fprintf(w, "Kept in %s\n", out.Kept)
	return err
}

func printCorrections(w io.Writer, corrections []signoff.Correction, problems []string) {
	if len(corrections) == 0 {
		for _, p := range problems {
			fmt.Fprintf(w, "  %s\n", p)
		}
		return
	}
	fmt.Fprintln(w, "The coach asks for changes. Make them in the roster or the job, and issue a new proof:")
	t := &table{}
	t.add("  row", "player", "number", "about", "what it should be")
	for _, c := range corrections {
		row := ""
		if c.Row > 0 {
			row = fmt.Sprint(c.Row)
		}
		t.add("  "+row, c.Player, c.Number, c.About, c.Note)
	}
	_ = t.print(w) // what cannot be printed here shows in the exit code of the next line
}

func players(n int) string {
	if n == 1 {
		return "1 player"
	}
	return fmt.Sprintf("%d players", n)
}
