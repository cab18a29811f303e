package fit

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/weight"
)

// Letters returns the curves of Ink letter by letter, in the order of the text: a
// mark belongs to its base's letter, a ligature is one letter and a space none.
// Nil for a Name that no Fitter made.
func (n Name) Letters() []geom.Path {
	d := n.art
	if d == nil {
		return nil
	}
	cut, err := d.cutDrawn()
	if err != nil {
		return nil
	}
	var out []geom.Path
	for line := d; line != nil; line = line.under {
		out = line.letters(out, cut)
	}
	if d.band == nil {
		return out
	}
	for i := range out {
		if out[i], err = d.band.Bend(out[i], bendTolerance); err != nil {
			return nil
		}
	}
	return out
}

// letters adds the letters of one line.
func (d *drawing) letters(out []geom.Path, cut *weight.Cut) []geom.Path {
	for from := 0; from < len(d.spots); {
		to := from + 1
		for to < len(d.spots) && d.spots[to].mid == d.spots[from].mid {
			to++
		}
		one := *d
		one.spots, one.under, from = d.spots[from:to], nil, to
		out = append(out, one.draw(nil, cut))
	}
	return out
}

// cutDrawn returns the cut that the letters are drawn from.
func (d *drawing) cutDrawn() (*weight.Cut, error) {
	if d.cut != nil {
		return d.cut, nil
	}
	face, err := instance(d.face, d.wdth, math.NaN())
	if err != nil {
		return nil, err
	}
	return cutOf(face, d.bold)
}
