package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"yokeline/lettering/length"
	"yokeline/proof/outfile"
	"yokeline/proof/page"
	"yokeline/proof/sheets"
)

// pageFiles holds the flags of what draws pages: the paper, and a picture of
// each page beside the PDF.
type pageFiles struct {
	paper    string
	svg, png bool
	dpi      float64
}

func (p *pageFiles) flags(c *cobra.Command) {
	f := c.Flags()
	f.BoolVar(&p.svg, "svg", false, "also write each page as SVG")
	f.BoolVar(&p.png, "png", false, "also write each page as PNG")
	f.Float64Var(&p.dpi, "dpi", 150, "dots per inch of the PNG pages, 36 to 600")
	f.StringVar(&p.paper, "paper", "", "letter or a4, instead of what goes with the job's units")
	_ = c.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"letter", "a4"}, cobra.ShellCompDirectiveNoFileComp))
}

func (p *pageFiles) check() error {
	switch {
	case p.dpi < 36 || p.dpi > 600:
		return usagef("--dpi: %g is outside 36 to 600", p.dpi)
	case p.paper != "" && p.paper != "letter" && p.paper != "a4":
		return usagef("--paper: %q is not letter or a4", p.paper)
	}
	return nil
}

func (p *pageFiles) paperFor(unit length.Unit) sheets.Paper {
	switch p.paper {
	case "letter":
		return sheets.Letter
	case "a4":
		return sheets.A4
	}
	return sheets.PaperFor(unit)
}

// add writes the pictures that were asked for: prefix-01.svg and so on.
func (p *pageFiles) add(batch *outfile.Batch, book *page.Book, prefix string) error {
	for k, sheet := range book.Pages() {
		name := fmt.Sprintf("%s-%02d", prefix, k+1)
		if p.svg {
			if err := batch.Add(name+".svg", func(w io.Writer) error { return sheet.WriteSVG(w, page.SVGOptions{Paper: true}) }); err != nil {
				return err
			}
		}
		if p.png {
			if err := batch.Add(name+".png", func(w io.Writer) error { return sheet.WritePNG(w, p.dpi) }); err != nil {
				return err
			}
		}
	}
	return nil
}
