package main

import (
	"fmt"
	"io"
	"path/filepath"

	"github.com/spf13/cobra"

	"yokeline/proof/outfile"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
	"yokeline/proof/specimen"
)

// draw writes the sheets of one garment, or those of all cuts, and prints the
// path of the PDF.
func (g garmentsChoice) draw(c *cobra.Command, s streams) error {
	book, name, title, err := g.book()
	if err != nil {
		return err
	}
	if err := makeFolder(g.out); err != nil {
		return err
	}
	batch := outfile.NewBatch(c.Context())
	defer batch.Discard()
	path := filepath.Join(g.out, name)
	err = batch.Add(path+".pdf", func(w io.Writer) error {
		return pdf.Write(w, book, pdf.Facts{Title: title, Language: "en"})
	})
	pages := book.Pages()
	for i, p := range pages {
		for _, kind := range []struct {
			ext    string
			wanted bool
		}{{".svg", g.svg}, {".png", g.png}} {
			if kind.wanted && err == nil {
				err = batch.Add(numbered(path+kind.ext, i, len(pages)), writePage(p, kind.ext))
			}
		}
	}
	if err != nil {
		return err
	}
	if err := batch.Commit(); err != nil {
		return err
	}
	_, err = fmt.Fprintln(s.out, path+".pdf")
	return err
}

// book draws what was asked for, and names it.
func (g garmentsChoice) book() (book *page.Book, name, title string, err error) {
	units := g.unitList()
	if g.cut == "" {
		book, err = specimen.Garments(units.Paper(), specimen.ContactSizes(), units[0])
		return book, "garments", "Garments", err
	}
	list, err := g.garments()
	if err != nil {
		return nil, "", "", err
	}
	one := list[0]
	book, err = specimen.Garment(one, units)
	return book, fmt.Sprintf("%s-%s", one.Cut(), one.Size().Label()), fmt.Sprintf("%s, %s", one.Cut(), one.Size()), err
}
