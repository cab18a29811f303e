package tail

import (
	"errors"
	"fmt"
	"slices"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

// Cut returns the tail (alone or joined with its script) with the text cut out
// of it; the counters of the text stay as islands. Both regions may be any set
// of rings; the result is settled. A text that does not lie inside is an error.
func Cut(tail, text geom.Region) (geom.Region, error) {
	under, over, err := laid(tail, text)
	if err != nil {
		return nil, err
	}
	// Text taken backwards winds the other way round, so within the tail its
	// area comes to 0.
	for _, ring := range over {
		back := slices.Clone(ring)
		slices.Reverse(back)
		under = append(under, back)
	}
	return outline.Union(under)
}

// Lay returns the text as it is laid on the tail in a colour of its own:
// settled, and held to lie inside the tail. A text that does not is an error.
func Lay(tail, text geom.Region) (geom.Region, error) {
	_, over, err := laid(tail, text)
	return over, err
}

// laid settles both and holds the text to lie inside the tail: together they
// cover no more than the tail alone.
func laid(tail, text geom.Region) (under, over geom.Region, err error) {
	var e outline.Engine
	if under, err = e.Union(tail); err != nil {
		return nil, nil, err
	}
	if over, err = e.Union(text); err != nil {
		return nil, nil, err
	}
	if len(over) == 0 {
		return nil, nil, errors.New("the text for the tail has no ink")
	}
	both, err := e.Union(append(slices.Clone(under), over...))
	if err != nil {
		return nil, nil, err
	}
	beyond := both.Area() - under.Area()
	if rounding := 1e-4 * max(1, over.Perimeter()); beyond > rounding {
		return nil, nil, fmt.Errorf("%.4g of the text's %.4g mm² hang over the tail; set it smaller, or set it into the tail's text spot", beyond, over.Area())
	}
	return under, over, nil
}
