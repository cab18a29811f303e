package layers

// twill cuts each shape from twill, from the face and so not mirrored, and sews
// it on the larger one under it along a line inside its edge.
func (b *builder) twill(shapes []shape) error {
	for i := len(shapes) - 1; i >= 0; i-- {
		s := shapes[i]
		region, err := b.eased(s, b.settings.TwillEase)
		if err != nil {
			return err
		}
		at := len(shapes) - i
		b.add(Layer{Name: s.name, Colour: s.colour, Kind: CutContour, Region: region, Order: at, Spot: b.spot(s.colour)})
		line, err := b.offset(region, -b.settings.StitchInset)
		if err != nil {
			return err
		}
		if len(line) == 0 {
			b.note("%s: nowhere wide enough to be sewn along a line %g mm inside its edge", s.name, b.settings.StitchInset)
			continue
		}
		b.add(Layer{Name: string(StitchLine) + " of " + s.name, Colour: s.colour, Kind: StitchLine, Line: thinned(line, thinness*fineness).Path(), Order: at,
			Spot: string(StitchLine)})
	}
	return nil
}

// embroidery gives the areas that stitches are to cover, as they show.
func (b *builder) embroidery(shapes []shape) error {
	b.note("only the areas are given: digitising (stitch directions, densities, underlay, pull compensation) is not done here")
	for i := len(shapes) - 1; i >= 0; i-- {
		region, err := shapes[i].region, error(nil)
		if i > 0 {
			if region, err = b.minus(region, shapes[i-1].region); err != nil {
				return err
			}
		}
		b.add(Layer{Name: shapes[i].name, Colour: shapes[i].colour, Kind: StitchedArea, Region: region, Order: len(shapes) - i,
			Spot: b.spot(shapes[i].colour)})
	}
	return nil
}
