package layers

import (
	"math"

	"yokeline/lettering/geom"
)

// mostBacked is how many films may lie on each other in full: common practice, no
// source.
const mostBacked = 3

// film cuts each shape from its own film, the largest pressed first. It is cut
// from the back of the film, so mirrored.
func (b *builder) film(shapes []shape) error {
	b.art.Mirrored = true
	if !b.settings.Knockout && len(shapes) > mostBacked {
		b.note("%d films lie on each other; more than %d are stiff (%s): knock the lower ones out", len(shapes), mostBacked, basis)
	}
	for i, s := range shapes {
		eased, err := b.eased(s, b.settings.Ease)
		if err != nil {
			return err
		}
		shapes[i].region = eased
	}
	for i := len(shapes) - 1; i >= 0; i-- {
		region := shapes[i].region
		if b.settings.Knockout && i > 0 {
			hole, err := b.hole(shapes[i-1])
			if err != nil {
				return err
			}
			if region, err = b.minus(region, hole); err != nil {
				return err
			}
		}
		b.add(Layer{Name: shapes[i].name, Colour: shapes[i].colour, Kind: CutContour, Region: region,
			Order: len(shapes) - i, Spot: b.spot(shapes[i].colour)})
	}
	return nil
}

// hole is what is cut out under a film: all but the overlap, with round corners,
// and nothing that is too narrow to be weeded.
func (b *builder) hole(above shape) (hole geom.Region, err error) {
	if hole, err = b.offset(above.region, -b.settings.Overlap); err != nil {
		return nil, err
	}
	return b.opened(hole, math.Max(b.settings.Ease, b.art.Method.MinGap/2))
}

// printedFilm prints all colours on one film and cuts round them from the face,
// so it is not mirrored. Openings too narrow for the blade are closed.
func (b *builder) printedFilm(shapes []shape) error {
	b.image(shapes)
	outer := shapes[len(shapes)-1].region
	grown, err := b.offset(outer, b.settings.Contour)
	if err != nil {
		return err
	}
	contour, err := b.closed(grown, math.Max(b.settings.Ease, b.art.Method.MinGap/2))
	if err != nil {
		return err
	}
	b.add(Layer{Name: string(CutContour), Kind: CutContour, Region: contour, Order: 2, Spot: b.settings.CutName})
	return nil
}

// image adds the shapes as one picture, each painted over the one under it.
func (b *builder) image(shapes []shape) {
	for i := len(shapes) - 1; i >= 0; i-- {
		b.add(Layer{Name: shapes[i].name, Colour: shapes[i].colour, Kind: Print, Region: shapes[i].region, Order: 1})
	}
}
