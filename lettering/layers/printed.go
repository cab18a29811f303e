package layers

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/order"
)

// directToFilm prints the colours on a film, mirrored, and white on them, which
// stays inside their edge so that none shows beside it.
func (b *builder) directToFilm(shapes []shape) error {
	b.art.Mirrored = true
	white, err := b.offset(shapes[len(shapes)-1].region, -b.settings.Choke)
	if err != nil {
		return err
	}
	if len(white) > 0 {
		b.add(Layer{Name: string(White), Colour: order.Colour{Name: "white", Hex: "#ffffff"}, Kind: White, Region: white,
			Order: 2, Spot: "white"})
	}
	b.image(shapes)
	return nil
}

// sublimation prints on paper, mirrored. There is no white ink.
func (b *builder) sublimation(shapes []shape) error {
	b.art.Mirrored = true
	b.image(shapes)
	for _, s := range shapes {
		if s.colour.Hex == "#ffffff" {
			b.note("%s: white is not printed; the cloth shows there in its own colour", s.name)
		}
	}
	return nil
}

// separations makes one plate for each colour. On the release paper the top
// colour is printed first, mirrored: what is printed later lies behind it and
// reaches under it by the trap, while the edge of the earlier colour is the one
// that shows. A colour that comes twice (digits and second outline, say) is
// printed once, at the place of the upper one.
func (b *builder) separations(shapes []shape) error {
	b.art.Mirrored = true
	var plates []Layer
	turn := make([]int, len(shapes))
	for i, s := range shapes {
		for turn[i] < len(plates) && plates[turn[i]].Colour.Hex != s.colour.Hex {
			turn[i]++
		}
		if turn[i] == len(plates) {
			plates = append(plates, Layer{Name: s.name, Colour: s.colour, Kind: Print, Order: turn[i] + 1, Spot: b.spot(s.colour)})
		} else {
			plates[turn[i]].Name += " and " + s.name
		}
	}
	for i := range shapes {
		part, err := b.separated(shapes, turn, i)
		if err != nil {
			return err
		}
		plate := &plates[turn[i]]
		if plate.Region, err = b.engine.Union(append(plate.Region, part...)); err != nil {
			return err
		}
	}
	for i := len(plates) - 1; i >= 0; i-- {
		b.add(plates[i])
	}
	return nil
}

// separated is the part of shape i that its plate prints.
func (b *builder) separated(shapes []shape, turn []int, i int) (geom.Region, error) {
	out, err := shapes[i].region, error(nil)
	if i+1 < len(shapes) && turn[i+1] < turn[i] {
		if out, err = b.offset(out, b.trapInto(shapes[i+1])); err != nil {
			return nil, err
		}
		// A mitred tip may stand at the edge of what surrounds it.
		if out, err = b.common(out, shapes[i+1].region); err != nil {
			return nil, err
		}
	}
	if i == 0 {
		return out, nil
	}
	hole := shapes[i-1].region
	if turn[i-1] < turn[i] {
		trap := b.settings.Trap
		if i > 1 {
			trap = b.trapInto(shapes[i-1])
		}
		if hole, err = b.offset(hole, -trap); err != nil {
			return nil, err
		}
	}
	return b.minus(out, hole)
}

// trapInto is the trap under a shape, at most half as wide as it shows.
func (b *builder) trapInto(s shape) float64 {
	if s.step == 0 {
		return b.settings.Trap
	}
	return math.Min(b.settings.Trap, s.step/2)
}
