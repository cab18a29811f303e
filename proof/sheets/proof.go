package sheets

import (
	"errors"
	"fmt"
	"slices"

	"yokeline/lettering/findings"
	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/proof/page"
	"yokeline/proof/shirt"
)

// document is a proof under work: what all its pages share.
type document struct {
	in    Input
	order *order.Order
	team  geom.Path // the team's name as the head shows it
	cloth shirt.Cloth
	book  *page.Book
	pages []leaf // planned, in printing order
}

// section names a kind of page, for references from one page to another.
type section string

// The sections of a proof in printing order.
const (
	lookSection    section = "the look"
	rosterSection  section = "the roster"
	sizesSection   section = "across the sizes"
	decideSection  section = "to decide"
	rulesSection   section = "the rules"
	signOffSection section = "sign-off"
)

// leaf is one planned page: draw is called once all pages are planned, on a
// frame that has its head already.
type leaf struct {
	section  section
	sheet    page.Sheet
	title    string // "The rules, 2 of 2" included
	sentence string
	// questions are the indexes of the choices that begin on the page.
	questions []int
	draw      func(*frame) error
}

// planner plans the pages of one section: none when the section is empty.
type planner func(*document) ([]leaf, error)

// Proof draws all pages of a proof. The error names the page and what could not
// be drawn.
func Proof(in Input) (*page.Book, error) {
	return draw(in, (*document).planLook, (*document).planRoster, (*document).planSizes, (*document).planDecide, (*document).planRules, (*document).planSignOff)
}

// draw plans the sections in their order and then draws the pages.
func draw(in Input, planners ...planner) (*page.Book, error) {
	d, err := newDocument(in)
	if err != nil {
		return nil, err
	}
	for _, plan := range planners {
		leaves, err := plan(d)
		if err != nil {
			return nil, err
		}
		d.pages = append(d.pages, leaves...)
	}
	for i, l := range d.pages {
		if err := l.draw(d.newFrame(i)); err != nil {
			return nil, fmt.Errorf("page %d, %s: %w", i+1, l.title, err)
		}
		if in.Progress != nil {
			in.Progress(i+1, len(d.pages))
		}
	}
	return d.book, nil
}

func newDocument(in Input) (*document, error) {
	if in.Sized == nil || in.Sized.Order == nil || in.Face == nil {
		return nil, errors.New("a proof needs a sized order and a way to open its faces")
	}
	book, err := page.NewBook()
	if err != nil {
		return nil, err
	}
	in.Results = slices.DeleteFunc(slices.Clone(in.Results), func(r findings.Result) bool { return r.Bench })
	o := in.Sized.Order
	d := &document{in: in, order: o, book: book, cloth: shirt.NewCloth(o.Garment, o.Pieces)}
	if d.team, err = d.teamName(); err != nil {
		return nil, fmt.Errorf("the team's name: %w", err)
	}
	return d, nil
}

// pageOf returns the number of a section's first page, 0 when it has none.
// It may be asked only while drawing, when all pages are planned.
func (d *document) pageOf(s section) int {
	for i, l := range d.pages {
		if l.section == s {
			return i + 1
		}
	}
	return 0
}
