package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"time"

	"yokeline/lettering/sizes"
	"yokeline/proof/outfile"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
	"yokeline/proof/records"
	"yokeline/proof/sheets"
	"yokeline/proof/signpage"
)

// drawn is a proof ready to be written.
type drawn struct {
	book   *page.Book
	facts  pdf.Facts
	screen signpage.Input
}

// revision is what the proof calls the revision: the job's own word, or the
// number that is counted.
func (i *issue) revision() string {
	switch {
	case i.job.order.Revision != "":
		return i.job.order.Revision
	case i.shelf.path == "":
		return ""
	}
	return strconv.Itoa(i.number)
}

// draw draws the proof of an issue.
func (i *issue) draw(s streams, paper sheets.Paper, made time.Time) (*drawn, error) {
	i.shown.Order.Revision = i.revision()
	onto := i.onto
	if i.rows == nil { // everybody is shown
		onto = 0
	}
	book, err := sheets.Proof(sheets.Input{
		Sized: i.shown, Onto: onto, Results: i.results, Fingerprint: i.print, Paper: paper, Face: i.job.face, Progress: s.progress("drawing"),
	})
	if err != nil {
		return nil, err
	}
	d := &drawn{book: book, facts: factsOf(i.job.order, "Proof for ", made)}
	d.screen = signpage.Input{Sized: i.shown, Onto: onto, Results: i.results, Questions: i.questions, Fingerprint: i.print, Face: i.job.face}
	return d, nil
}

func (d *drawn) writePDF(w io.Writer) error  { return pdf.Write(w, d.book, d.facts) }
func (d *drawn) writeHTML(w io.Writer) error { return signpage.Write(w, d.screen) }

// keep adds the issue to its shelf, the facts last: a revision counts only with
// them. It does nothing for one that is kept already.
func (i *issue) keep(batch *outfile.Batch, c jobChoice, d *drawn) error {
	if i.kept || i.shelf.path == "" {
		return nil
	}
	folder := filepath.Join(i.shelf.path, records.DirOf(i.number))
	asked := records.Asked{Job: i.job.file, Rules: c.rules, Season: c.season, Category: c.category, Onto: i.onto, Whole: i.whole}
	if isBookFile(c.rules) {
		asked.Rules = filepath.Base(c.rules)
	}
	text, err := json.MarshalIndent(asked, "", "  ")
	if err != nil {
		return err
	}
	type file struct {
		name  string
		write func(io.Writer) error
	}
	files := []file{{"proof.pdf", d.writePDF}, {"proof.html", d.writeHTML}, {records.AskedFile, writeBytes(append(text, '\n'))}}
	for _, in := range i.job.in.files {
		if filepath.IsLocal(in.name) {
			files = append(files, file{filepath.Join(records.InputsDir, in.name), writeBytes(in.data)})
		}
	}
	files = append(files, file{records.FactsFile, writeBytes([]byte(sizes.FactText(i.sized.Facts())))})
	for _, f := range files {
		path := filepath.Join(folder, f.name)
		if err := makeFolder(filepath.Dir(path)); err != nil {
			return err
		}
		if err := batch.Add(path, f.write); err != nil {
			return err
		}
	}
	return nil
}

// outside lists the files of the job that lie outside its folder: they are not
// kept with it, so a revision that needs them can only be drawn again while they
// stay as they are.
func (i *issue) outside() []string {
	var out []string
	for _, in := range i.job.in.files {
		if !filepath.IsLocal(in.name) {
			out = append(out, in.name)
		}
	}
	return out
}

// said tells the shop which revision a proof is.
func (i *issue) said(w io.Writer) {
	if i.shelf.path == "" {
		return
	}
	var text bytes.Buffer
	fmt.Fprintf(&text, "This is revision %d, kept in %s.", i.number, filepath.Join(i.shelf.path, records.DirOf(i.number)))
	if i.onto > 0 {
		fmt.Fprintf(&text, " It adds to revision %d, which is signed: those players stay exactly as they are.", i.onto)
	}
	for _, name := range i.outside() {
		fmt.Fprintf(&text, "\n%s lies outside the job's folder and is not kept with it.", name)
	}
	fmt.Fprintln(w, text.String())
}
