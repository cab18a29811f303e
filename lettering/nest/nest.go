// Package nest arranges finished pieces on the sheets or the roll of a shop, so
// that little of the material is thrown away: row by row in the order given, or
// packed tight, by their boxes or by their true outlines, so that arched names
// lie in each other. Lengths are millimetres.
//
// No two pieces come closer than the gap, none comes into the margins, and every
// piece can be cut free by one cut and keeps its carrier: nothing lies in a counter
// of another piece or between its letters. Same input, same layout: nothing depends on a clock, a
// random number or the order of a map.
package nest

import (
	"yokeline/lettering/geom"
)

// Turns says which turns a material lets a piece make on its sheet.
type Turns uint8

// The turns of a material. The zero value never turns.
const (
	Upright      Turns = iota // as drawn only: a nap, a print that has a top
	HalfTurns                 // as drawn or upside down: a grain
	QuarterTurns              // any quarter turn: no grain
)

// Turn is how far a piece is turned on its sheet, anticlockwise, in degrees: 0,
// 90, 180 or 270.
type Turn int

// Item is one piece to be arranged.
type Item struct {
	ID    int         // unique among the items; breaks ties
	Shape geom.Region // the finished, settled outline in mm, y up, anywhere
	Turns Turns
	Group string // colour and material: pieces of different groups never share a sheet
}

// Stock is the sheet or the roll that pieces are cut from.
type Stock struct {
	Name   string
	Width  float64 // mm
	Height float64 // mm; 0 is a roll, cut at need
	// MaxLength is the longest cut from a roll, in mm; 0 for no limit. Sheets
	// have none.
	MaxLength float64
	Margin    float64 // kept free along every edge of a sheet or a cut, in mm
	Gap       float64 // the least distance between two pieces, in mm
}

// Roll reports whether the stock is a roll.
func (s Stock) Roll() bool { return s.Height == 0 }

// Order says whether pieces stay in the order given.
type Order uint8

// The orders. Kept lays rows from the upper left in the order of the items, as
// drawn wherever the stock allows it; Tight lays them wherever they save material.
const (
	Kept Order = iota
	Tight
)

// By says what keeps two pieces apart.
type By uint8

// Pieces are kept apart by their boxes, or by their true outlines.
const (
	Boxes By = iota
	Outlines
)

// Options choose how pieces are arranged. The zero value keeps the order and
// goes by boxes.
type Options struct {
	Order Order
	By    By
	// Effort is how many packings by outlines Tight tries at the most, and a fifth of
	// the tries by boxes after the first; 0 for 40. A large order gets fewer, so that
	// five hundred pieces take some seconds.
	Effort int
}

func (o Options) packings() int {
	if o.Effort > 0 {
		return o.Effort
	}
	return 40
}

// Placed is a piece on its sheet. A sheet's origin is its lower left corner, y
// grows upward.
type Placed struct {
	ID   int
	Turn Turn
	At   geom.Point  // the lower left corner of the turned piece's box
	Move geom.Affine // takes the item's shape to its place on the sheet
}

// Sheet is one sheet, or one cut from a roll.
type Sheet struct {
	Group  string
	Width  float64 // mm
	Height float64 // mm; the length of a cut from a roll
	// Used is how far down from the upper edge pieces reach, with both margins,
	// in mm: what is below it can be kept. A cut from a roll is used whole.
	Used   float64
	Ink    float64  // true area of the pieces on it, mm²
	Placed []Placed // in the order of the items
}

// Layout is every piece on a sheet, exactly once.
type Layout struct {
	Sheets []Sheet // by group, in the order in which groups first appear
	Figures
	Groups []GroupFigures
}

// Arrange lays the items on as many sheets of the stock as they need. Tight
// keeps the best of several packings; by outlines is never worse than by boxes.
// The error names every item that cannot be arranged: it joins a *FitError for
// each one that the stock is too small for.
func Arrange(items []Item, stock Stock, options Options) (Layout, error) {
	return arrange(items, stock, func(parts []part, r room) plan { return r.pack(parts, options) })
}

// Shelves is the plain packing that Arrange is compared with: rows of pieces by
// falling height, as drawn, each row as high as its first, never looked at again.
func Shelves(items []Item, stock Stock) (Layout, error) {
	return arrange(items, stock, func(parts []part, r room) plan { return r.shelves(parts, sorted(parts, part.height)) })
}

func arrange(items []Item, stock Stock, pack func([]part, room) plan) (Layout, error) {
	parts, err := prepare(items, stock)
	if err != nil {
		return Layout{}, err
	}
	var out Layout
	for _, group := range groupsOf(parts) {
		p := pack(group, roomOf(stock))
		sheets := p.sheets(group, stock)
		figures := GroupFigures{Group: group[0].Group, Sheets: len(sheets), Figures: measure(group, sheets, stock)}
		out.Sheets = append(out.Sheets, sheets...)
		out.Groups = append(out.Groups, figures)
		out.Figures = out.plus(figures.Figures)
	}
	return out, nil
}

// groupsOf splits the parts by group, in the order in which groups appear.
func groupsOf(parts []part) [][]part {
	var out [][]part
	at := map[string]int{}
	for _, p := range parts {
		i, seen := at[p.Group]
		if !seen {
			i = len(out)
			at[p.Group], out = i, append(out, nil)
		}
		out[i] = append(out[i], p)
	}
	return out
}

// pack keeps the best of the packings that the options allow.
func (r room) pack(parts []part, o Options) plan {
	var best plan
	if o.Order == Kept {
		best = r.shelves(parts, identity(len(parts)))
	} else {
		best = r.boxes(parts, o.packings())
	}
	if o.By == Outlines {
		best = better(best, r.outlines(parts, o, best))
	}
	return best
}
