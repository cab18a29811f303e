package tally

import (
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/geom"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// Material is how much of one film, cloth or transfer an order takes.
type Material struct {
	Method string // id of order.Methods
	// Colour of the film or the twill; zero where one material carries all colours.
	Colour order.Colour
	Shapes int // that are cut or printed of it
	// Ink is the true area of the shapes and Box that of their boxes without
	// gaps, mm².
	Ink, Box float64
	Widest   float64 // the roll that every shape goes on, turned if need be, mm
	// Roll is the usable width of the roll and Length what is taken of it, mm,
	// without the allowance; both 0 where the width is not known, and for thread.
	Roll, Length  float64
	WithAllowance float64 // mm
	Laid          bool    // Length is that of the sheets as arranged, no estimate
	TooWide       bool    // a shape goes on the roll neither upright nor turned
}

// Name says what the material is: white film.
func (m Material) Name() string {
	words := map[string]string{
		"cut film": "film", "flock film": "flock or glitter film", "sewn twill": "twill", "satin twill": "twill", "embroidery": "thread",
		"printed film": "printable film", "screen transfer": "transfers", "direct-to-film": "transfer film", "sublimation": "transfer paper",
	}
	word := words[m.Method]
	if word == "" {
		word = m.Method
	}
	if m.Colour.Hex == "" {
		return word
	}
	return ColourName(m.Colour) + " " + word
}

// byColour reports a method that takes a material of its own for every colour.
func byColour(method string) bool {
	return slices.Contains([]string{"cut film", "flock film", "sewn twill", "satin twill", "embroidery"}, method)
}

// shape is one part of a piece, of one material.
type shape struct {
	colour        order.Colour
	ink           float64 // mm²
	width, height float64 // of its box, mm
}

// flatness is how closely curves are followed where areas are measured, mm.
const flatness = 0.02

// shapesOf returns the parts of a piece, from the inside outwards. Pieces with
// all colours on one material have one part: their outermost edge.
func shapesOf(p *sizes.Piece, method string, knockedOut bool) ([]shape, error) {
	inner, err := settled(p)
	if err != nil {
		return nil, err
	}
	regions, colours := []geom.Region{inner}, []order.Colour{p.Asked.Colour}
	if len(p.Asked.Outlines) > 0 {
		layers, err := p.Outlines()
		if err != nil {
			return nil, err
		}
		regions = append(regions, layers...)
		for _, o := range p.Asked.Outlines {
			colours = append(colours, o.Colour)
		}
	}
	if !byColour(method) {
		last := regions[len(regions)-1]
		return []shape{newShape(order.Colour{}, last, last.Area())}, nil
	}
	var out []shape
	for i, r := range regions {
		area := r.Area()
		if knockedOut && i > 0 {
			area -= regions[i-1].Area()
		}
		out = append(out, newShape(colours[i], r, area))
	}
	if p.Laid != nil {
		out = append(out, newShape(p.Asked.Tail.Colour, p.Laid, p.Laid.Area()))
	}
	return out, nil
}

func newShape(c order.Colour, r geom.Region, area float64) shape {
	box := r.Bounds()
	return shape{colour: c, ink: area, width: box.Width(), height: box.Height()}
}

// settled returns the bare shape of a piece.
func settled(p *sizes.Piece) (geom.Region, error) {
	switch {
	case p.Drawn != nil:
		return p.Drawn.Flatten(flatness), nil
	case p.Name != nil:
		return p.Name.Settled()
	}
	return p.Number.Settled()
}

// shapeKey tells pieces apart that may be of different shapes.
func shapeKey(p *sizes.Piece) string {
	tracking, scale, wdth := 0.0, 1.0, 0.0
	if p.Name != nil {
		tracking, scale, wdth = p.Name.Tracking, p.Name.WidthScale, p.Name.Wdth
	}
	return fmt.Sprintf("%s|%s|%v|%v|%v|%v|%v|%v", p.Asked.Place, p.Text(), p.Height(), p.InkWidth(), tracking, scale, wdth, p.Asked.Face)
}

// materials adds up the shapes of every piece by material.
func materials(s *sizes.Sized, o Options, c *Count) ([]Material, error) {
	method := s.Order.Method
	cached := map[string][]shape{}
	found := map[order.Colour]*Material{}
	boxes := map[order.Colour]float64{} // with their gaps, mm²
	var failed error
	eachPiece(s, func(player int, p *sizes.Piece) {
		key := shapeKey(p)
		all, ok := cached[key]
		if !ok && failed == nil {
			var err error
			if all, err = shapesOf(p, method, o.KnockedOut); err != nil {
				failed = fmt.Errorf("%s, %s: %w", s.Players[player].Label(), p.Asked.Place, err)
			}
			cached[key] = all
		}
		for _, sh := range all {
			m := found[sh.colour]
			if m == nil {
				m = &Material{Method: method, Colour: sh.colour}
				found[sh.colour] = m
			}
			m.add(sh)
			boxes[sh.colour] += (sh.width + c.Gap) * (sh.height + c.Gap)
		}
	})
	if failed != nil {
		return nil, failed
	}
	out := sorted(s.Order, found)
	for i := range out {
		out[i].lay(o, c, boxes[out[i].Colour])
	}
	return out, nil
}

func (m *Material) add(sh shape) {
	m.Shapes++
	m.Ink += sh.ink
	m.Box += sh.width * sh.height
	m.Widest = math.Max(m.Widest, math.Min(sh.width, sh.height))
}

// lay finds the length of a material on its roll.
func (m *Material) lay(o Options, c *Count, boxes float64) {
	if m.Method == "embroidery" {
		return
	}
	if o.Roll != nil {
		if w := o.Roll(*m); w > 0 {
			m.Roll, m.Length = w, boxes/(w+c.Gap)
		}
	}
	if o.Laid != nil {
		if l, ok := o.Laid(*m); ok {
			m.Length, m.Laid = l, true
		}
	}
	m.WithAllowance = m.Length * (1 + c.Allowance)
	m.TooWide = m.Roll > 0 && m.Widest > m.Roll
}

// sorted lists materials in the order in which the job names their colours:
// those of the list of colours, then those of the pieces.
func sorted(o *order.Order, found map[order.Colour]*Material) []Material {
	var out []Material
	take := func(c order.Colour) {
		if m := found[c]; m != nil {
			out = append(out, *m)
			delete(found, c)
		}
	}
	take(order.Colour{})
	for _, c := range o.Colours {
		take(c)
	}
	for _, p := range o.Pieces {
		take(p.Colour)
		for _, l := range p.Outlines {
			take(l.Colour)
		}
		if p.Tail != nil {
			take(p.Tail.Colour)
		}
	}
	return out
}
