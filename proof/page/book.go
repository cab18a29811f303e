package page

import (
	"fmt"

	"yokeline/fonts"
	"yokeline/lettering/geom"
)

// Book is a set of pages that share their type and their repeated drawings.
// It is not safe for concurrent use.
type Book struct {
	faces [2]*face
	pages []*Page
	arts  map[string]*Art
}

// Page is one sheet with what is drawn on it.
type Page struct {
	*Pen
	Sheet Sheet
	Title string // for the reader's list of pages; may be empty
}

// Art is a drawing that is stored once, however often it is used. Its
// coordinates are its own.
type Art struct {
	pen *Pen
	box geom.Rect
}

// NewBook returns a book without pages, ready to set text. An error means that
// an embedded face is damaged.
func NewBook() (*Book, error) {
	b := &Book{arts: map[string]*Art{}}
	for i, id := range [2]string{"ibm-plex-sans", "ibm-plex-sans-semibold"} {
		entry, ok := fonts.Lookup(id)
		if !ok {
			return nil, fmt.Errorf("the catalogue of faces has no %q", id)
		}
		data, err := fonts.Read(entry.File)
		if err != nil {
			return nil, fmt.Errorf("face %s: %w", id, err)
		}
		if b.faces[i], err = openFace(data); err != nil {
			return nil, fmt.Errorf("face %s: %w", id, err)
		}
	}
	return b, nil
}

// Add puts an empty page at the end of the book.
func (b *Book) Add(sheet Sheet, title string) *Page {
	p := &Page{Pen: &Pen{book: b}, Sheet: sheet, Title: title}
	b.pages = append(b.pages, p)
	return p
}

// Pages returns the pages in their order.
func (b *Book) Pages() []*Page { return b.pages }

// Art returns the shared drawing of that key; draw is called only the first
// time a key is seen, so a key must name everything that the drawing depends on.
func (b *Book) Art(key string, draw func(*Pen)) *Art {
	if a, ok := b.arts[key]; ok {
		return a
	}
	a := &Art{pen: &Pen{book: b}}
	draw(a.pen)
	a.box = Bounds(a.pen.ops)
	b.arts[key] = a
	return a
}

// Ops returns the steps of the drawing.
func (a *Art) Ops() []Op { return a.pen.ops }

// Bounds returns a box that holds the drawing; it may be a little larger.
func (a *Art) Bounds() geom.Rect { return a.box }
