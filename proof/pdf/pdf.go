// Package pdf writes a book of drawn pages as one PDF: exact page sizes, curves
// as curves, text as text with its faces embedded, repeated drawings stored
// once. The same book gives the same bytes.
//
// A document says its title, author and language and lists its pages, but it is
// not tagged: the library that writes it (fpdf) has no structure tree. Readers take
// the order of the text from the page, which is the order it is drawn in. Whoever
// listens to a proof is better served by the HTML page, which has structure.
package pdf

import (
	"errors"
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"yokeline/proof/page"
)

// Facts are what a PDF says of itself. Made is written as its date in UTC; the
// zero time stands for 1 January 2000, so that a date never comes from a clock.
type Facts struct {
	Title, Author, Subject string
	Language               string // BCP 47, such as en or en-GB; empty is left out
	Made                   time.Time
}

// epoch is the date of a document that was given none.
var epoch = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// Write writes all pages of the book, each in its own size and turn. It
// returns an error for a book without pages and for one the writer refuses.
func Write(w io.Writer, b *page.Book, facts Facts) error {
	pages := b.Pages()
	if len(pages) == 0 {
		return errors.New("a PDF needs at least one page")
	}
	d := newDocument(pages[0].Sheet, facts)
	if err := d.adoptFaces(b); err != nil {
		return err
	}
	for _, p := range pages {
		d.addPage(p)
	}
	d.markRunes()
	if err := d.out.Output(w); err != nil {
		return fmt.Errorf("writing the PDF: %w", err)
	}
	return nil
}

// document is a PDF under work.
type document struct {
	out   *fpdf.Fpdf
	faces map[page.Weight]*adopted
	arts  map[*page.Art]*shared
	high  float64 // height of the sheet or shared drawing under work, mm
}

func newDocument(first page.Sheet, facts Facts) *document {
	out := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: size(first)})
	made := facts.Made
	if made.IsZero() {
		made = epoch
	}
	out.SetCatalogSort(true)
	out.SetCreationDate(made.UTC())
	out.SetModificationDate(made.UTC())
	out.SetProducer("yokeline", true)
	out.SetTitle(facts.Title, true)
	out.SetAuthor(facts.Author, true)
	out.SetSubject(facts.Subject, true)
	out.SetLang(facts.Language)
	out.SetMargins(0, 0, 0)
	out.SetAutoPageBreak(false, 0)
	return &document{out: out, faces: map[page.Weight]*adopted{}, arts: map[*page.Art]*shared{}}
}

func size(s page.Sheet) fpdf.SizeType { return fpdf.SizeType{Wd: s.W, Ht: s.H} }

// addPage draws in mm, y down, by one map at the head of the content: every
// number after it is the page's own. "P" keeps the library from turning sizes.
func (d *document) addPage(p *page.Page) {
	d.out.AddPageFormat("P", size(p.Sheet))
	d.high = p.Sheet.H
	if p.Title != "" {
		d.out.Bookmark(p.Title, 0, 0)
	}
	s := &stream{doc: d}
	k := d.out.GetConversionRatio()
	s.op("q").exact(k, 0, 0, -k, 0, p.Sheet.H*k).op("cm")
	s.limit().steps(p.Ops())
	s.op("Q")
	d.out.RawWriteStr(string(s.out))
}
