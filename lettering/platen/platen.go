// Package platen finds the heated plate of a shop's press that takes a piece,
// and what of the garment lies on it when the piece is pressed: a seam, a hem or
// a placket under the platen holds the piece off the heat, so it is padded, or
// draped over the edge.
//
// Coordinates are those of package garment: millimetres, y down. The sizes of
// platens and the clearances are common practice, no source. A press is hot and
// closes with force: its maker's manual and the film maker's data sheet go before
// anything that is said here.
package platen

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"yokeline/lettering/length"
)

// Edge is how far a piece stays inside the edge of the platen on every side, mm,
// for a press loses heat and pressure at its rim. Common practice, no source.
const Edge = 12.0

// LeastOverlap is the narrowest strip that two presses of one piece share, mm:
// the two rims that stay off the press meet in it. Common practice, no source.
const LeastOverlap = Edge

// Platen is a rectangular heated plate.
type Platen struct {
	Width, Height length.Length
}

// String returns the platen as a job writes it: 15in x 15in.
func (p Platen) String() string {
	plain := func(l length.Length) string {
		return strings.ReplaceAll(l.String(), " "+l.Unit().String(), l.Unit().String())
	}
	return plain(p.Width) + " x " + plain(p.Height)
}

// What a platen's side may be, mm.
const (
	leastSide = 50.0
	mostSide  = 2000.0
)

// Parse reads a platen such as 15in x 15in, 16x20in or 381mm × 508mm. A unit
// after the second figure alone counts for both. The error names what is wrong
// and shows the form.
func Parse(text string) (Platen, error) {
	const form = "write a platen such as 15in x 15in or 38cm x 38cm"
	a, b, ok := strings.Cut(strings.NewReplacer("×", "x", "X", "x", " by ", "x").Replace(text), "x")
	if !ok {
		return Platen{}, fmt.Errorf("%q has no two sides: %s", text, form)
	}
	height, err := length.Parse(b)
	if err != nil {
		return Platen{}, fmt.Errorf("platen %s: %w; %s", strings.TrimSpace(text), err, form)
	}
	if last := strings.TrimSpace(a); last != "" && last[len(last)-1] >= '0' && last[len(last)-1] <= '9' {
		a = last + height.Unit().String()
	}
	width, err := length.Parse(a)
	if err != nil {
		return Platen{}, fmt.Errorf("platen %s: %w; %s", strings.TrimSpace(text), err, form)
	}
	for _, side := range []length.Length{width, height} {
		if mm := side.MM(); mm < leastSide || mm > mostSide {
			return Platen{}, fmt.Errorf("platen %s: a side of %v is out of reach; give between 50 mm and 2 m", strings.TrimSpace(text), side)
		}
	}
	return Platen{width, height}, nil
}

// Usual returns the platens that presses commonly come with, from small to
// large; a shop writes its own. Curved cap plates are left out: nothing flat is
// pressed on them. Common practice, no source.
func Usual() []Platen {
	var out []Platen
	for _, side := range [...][2]int64{{5, 5}, {6, 6}, {9, 12}, {11, 15}, {15, 15}, {16, 16}, {16, 20}, {16, 24}, {20, 25}} {
		out = append(out, Platen{length.Inches(side[0], 1), length.Inches(side[1], 1)})
	}
	return out
}

// area orders platens from small to large.
func (p Platen) area() float64 { return p.Width.MM() * p.Height.MM() }

// sorted returns the platens from small to large, squarer ones first among equals.
func sorted(platens []Platen) []Platen {
	out := slices.Clone(platens)
	slices.SortStableFunc(out, func(a, b Platen) int {
		return cmp.Or(cmp.Compare(a.area(), b.area()),
			cmp.Compare(a.Width.MM()+a.Height.MM(), b.Width.MM()+b.Height.MM()))
	})
	return out
}
