package seams

import (
	"fmt"

	"yokeline/lettering/geom"
)

// Steps of the search for the largest piece.
const (
	heightSteps = 32   // heights tried from the top down
	heightFine  = 0.01 // mm, how near the height found is to one that hits a line
)

// Largest returns the greatest height from least to most, in mm, at which a piece
// lies inside its panel, within 0.01 mm, and how it lies there. shape draws the
// piece at a height, on the garment; reach is as for Lay.
//
// A lower piece need not lie better than a higher one (its arch, or the number
// under it, moves): heights are tried from the top down in 32 steps, and only
// between the first that lies inside and the one above it the limit is taken to
// be a single one. The height returned was itself found to lie inside. It is an
// error when none of the heights tried does, which names the line that the
// lowest piece hits.
func (c *Cloth) Largest(least, most, reach float64, shape func(height float64) (geom.Region, error)) (float64, Lie, error) {
	try := func(height float64) (Lie, error) {
		piece, err := shape(height)
		if err != nil {
			return Lie{}, fmt.Errorf("%s at %.2f mm: %w", c.place.Place, height, err)
		}
		return c.Lay(piece, reach), nil
	}
	above := most
	for i := range heightSteps + 1 {
		height := most - (most-least)*float64(i)/heightSteps
		lie, err := try(height)
		if err != nil {
			return 0, lie, err
		}
		if lie.Inside {
			return refine(height, above, lie, try)
		}
		if i == heightSteps {
			return 0, lie, c.none(least, most, lie)
		}
		above = height
	}
	return 0, Lie{}, nil // not reached
}

// refine halves the way from a height that lies inside up to one that does not.
func refine(inside, outside float64, lie Lie, try func(float64) (Lie, error)) (float64, Lie, error) {
	for outside-inside > heightFine {
		mid := (inside + outside) / 2
		got, err := try(mid)
		if err != nil {
			return 0, got, err
		}
		if got.Inside {
			inside, lie = mid, got
		} else {
			outside = mid
		}
	}
	return inside, lie, nil
}

func (c *Cloth) none(least, most float64, lie Lie) error {
	why := "it is off the panel"
	if hits := lie.Hits(); len(hits) > 0 {
		h := hits[0]
		why = fmt.Sprintf("at the lowest it is %.1f mm from the %s and needs %g mm", h.Distance, h.Line.Words(), h.Line.Margin)
		if h.Over() {
			why = fmt.Sprintf("at the lowest it reaches %.1f mm over the %s", -h.Distance, h.Line.Words())
		}
	}
	return fmt.Errorf("no %s from %.1f mm to %.1f mm high lies inside its panel: %s", c.place.Place, least, most, why)
}
