package order

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// margins are what a distance to keep clear may be; see garment.Margins.
var margins = bounds{garment.LeastMargin, garment.MostMargin, "between 1 mm and 150 mm"}

// clear reads how far decoration keeps from the lines of the garment. What it
// leaves out stays as usual.
func (d *draft) clear(v value) {
	to := &d.o.Garment.Clear
	margin := func(mm *float64) func(value) {
		return func(v value) {
			var l *length.Length
			if length1(&l, margins)(v); l != nil {
				*mm = l.MM()
			}
		}
	}
	v.fields("{seam: 12mm, placket: 25mm, hem: 25mm}", []field{
		{key: "seam", read: margin(&to.Seam)},
		{key: "placket", read: margin(&to.Hard)},
		{key: "hem", read: margin(&to.Hem)},
		{key: "underarm", read: margin(&to.Underarm)},
		{key: "fold", read: margin(&to.Fold)},
	})
}
