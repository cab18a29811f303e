package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/fonts"
	"yokeline/lettering/typeface"
	"yokeline/proof/outfile"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
	"yokeline/proof/specimen"
)

// drawFaces draws the faces named, or all that lettering is set in.
func drawFaces(c *cobra.Command, ids []string, path string) error {
	faces, err := specimenFaces(ids)
	if err != nil {
		return err
	}
	book, err := specimen.Pages(page.Letter(), faces)
	if err != nil {
		return err
	}
	return writePicture(c, book, path, "Faces")
}

// writePicture writes a book of pictures as what the file's name says: one PDF,
// or a file a page.
func writePicture(c *cobra.Command, book *page.Book, path, title string) error {
	pages := book.Pages()
	switch ext := strings.ToLower(filepath.Ext(path)); ext {
	case ".pdf":
		return outfile.Write(c.Context(), path, func(w io.Writer) error {
			return pdf.Write(w, book, pdf.Facts{Title: title, Language: "en"})
		})
	case ".svg", ".png":
		batch := outfile.NewBatch(c.Context())
		defer batch.Discard()
		for i, p := range pages {
			if err := batch.Add(numbered(path, i, len(pages)), writePage(p, ext)); err != nil {
				return err
			}
		}
		return batch.Commit()
	}
	return usagef("%s: the name must end in .pdf, .svg or .png", path)
}

func writePage(p *page.Page, ext string) func(io.Writer) error {
	const dpi = 150
	if ext == ".png" {
		return func(w io.Writer) error { return p.WritePNG(w, dpi) }
	}
	return func(w io.Writer) error { return p.WriteSVG(w, page.SVGOptions{Paper: true}) }
}

// numbered puts the page's number before the extension when there are several.
func numbered(path string, i, pages int) string {
	if pages == 1 {
		return path
	}
	ext := filepath.Ext(path)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ext), i+1, ext)
}

func specimenFaces(ids []string) ([]specimen.Face, error) {
	var out []specimen.Face
	for _, entry := range fonts.Catalogue() {
		if len(ids) == 0 && entry.Text {
			continue
		}
		if len(ids) > 0 && entry.ID != ids[0] {
			continue
		}
		row, err := faceRowOf(entry)
		if err != nil {
			return nil, err
		}
		face, err := typeface.Embedded(entry.ID)
		if err != nil {
			return nil, err
		}
		note := strings.Join(append([]string{entry.ID, entry.Licence}, row.Axes...), " · ")
		out = append(out, specimen.Face{Face: face, Name: strings.TrimSpace(entry.Name + " " + entry.Style), Role: entry.Role, Note: note, Script: entry.Script})
	}
	if len(out) == 0 {
		_, err := typeface.Embedded(ids[0])
		return nil, usageError{err.Error()}
	}
	return out, nil
}
