package ticket

import (
	"cmp"
	"fmt"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/pressing"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// plan is how the garments of an order are pressed.
type plan struct {
	cloth    pressing.Cloth
	ceiling  pressing.Ceiling
	steps    []step
	others   []pressing.Setting // that would do for the cloth too
	warnings []pressing.Warning // the heaviest first
	rows     []pressedRow
}

// step is one press of every garment, or of those that have the piece.
type step struct {
	pressing.Step
	places []order.Place // pressed at once; none for a step from outside
	side   garment.Side
	layers []string // colours of film, the first one pressed first; none where it is all one piece
}

// pressedRow is what is pressed alike on some sizes.
type pressedRow struct {
	what, platen string
	presses      int
	art, near    []string // lines of the garment under the art and near it
	behind       bool     // all that is under the art belongs to the other side
	sizes        []garment.Size
}

// newPlan orders the presses by their heats and checks them.
func (d *document) newPlan() (*plan, error) {
	p := &plan{}
	var err error
	method := d.order.Method
	if method == pressing.Unpressed && len(d.in.Also) == 0 {
		p.cloth, _ = d.cloth() // nothing sees any heat, so any cloth will do
		return p, nil
	}
	if p.cloth, err = d.cloth(); err != nil {
		return nil, err
	}
	presses := d.in.Sized.Press()
	if method != pressing.Unpressed {
		set, others, err := d.in.Shop.Choose(method, d.in.Variant, p.cloth)
		if err != nil {
			return nil, err
		}
		p.others = others
		for _, at := range d.together(presses) {
			s := step{Step: pressing.NewStep(at.words(), set), places: at.places, side: at.side}
			if pressing.Layered(method) {
				s.layers = d.layers(at.places)
			}
			p.steps = append(p.steps, s)
		}
	}
	for _, also := range d.in.Also {
		p.steps = append(p.steps, step{Step: also})
	}
	slices.SortStableFunc(p.steps, func(a, b step) int { return cmp.Compare(b.Celsius, a.Celsius) })
	if p.warnings, err = d.warnings(p); err != nil {
		return nil, err
	}
	if p.ceiling, err = d.in.Shop.CeilingOf(p.cloth); err != nil {
		return nil, err
	}
	if method != pressing.Unpressed {
		p.rows = d.pressedRows(presses)
	}
	return p, nil
}

// cloth reads the fibre of the job. What is printed with a colour that is not
// pale is dyed: its dye may move.
func (d *document) cloth() (pressing.Cloth, error) {
	g := d.order.Garment
	c, err := pressing.ParseCloth(g.Fibre)
	if err != nil {
		return c, fmt.Errorf("%w, such as garment: {cut: %s, fibre: polyester}", err, cmp.Or(string(g.Cut), "crew-tee"))
	}
	for _, colour := range []order.Colour{g.Colour, g.Trim} {
		if colour.Hex != "" && c.Share("polyester") > 0 && parts.Luminance(shirt.Paint(colour)) < pressing.PaleFrom {
			c.Dyed = true
		}
	}
	return c, nil
}

// warnings checks the steps, the circuit and the youth wear that is refused.
func (d *document) warnings(p *plan) ([]pressing.Warning, error) {
	steps := make([]pressing.Step, len(p.steps))
	for i, s := range p.steps {
		steps[i] = s.Step
	}
	found, err := d.in.Shop.Check(p.cloth, steps)
	if err != nil {
		return nil, err
	}
	if s := d.in.Supply; s.Watts > 0 && s.Volts > 0 && s.Amperes > 0 {
		if w, over := pressing.Circuit(s.Watts, s.Volts, s.Amperes); over {
			found = append(found, w)
		}
	}
	_, prompts := d.prompts()
	for _, w := range prompts {
		if w.Level == pressing.Stop {
			found = append(found, w)
		}
	}
	var out []pressing.Warning
	for _, level := range []pressing.Level{pressing.Stop, pressing.Warn, pressing.Think} {
		for _, w := range found {
			if w.Level == level && !slices.Contains(out, w) {
				out = append(out, w)
			}
		}
	}
	return out, nil
}

// prompts are the reminders of the law, and whether a market is known at all.
func (d *document) prompts() (known bool, all []pressing.Warning) {
	market, known := d.market()
	return known, pressing.Prompts(market, d.wearer())
}

func (d *document) market() (pressing.Market, bool) {
	switch {
	case d.in.Market != nil:
		return *d.in.Market, true
	case d.order.Market == order.MarketUS:
		return pressing.US, true
	case d.order.Market == order.MarketEU:
		return pressing.EU, true
	}
	return pressing.Other, d.order.Market != ""
}

func (d *document) wearer() pressing.Wearer {
	if d.in.Wearer != nil {
		return *d.in.Wearer
	}
	switch d.order.Wearer {
	case order.WearerAdult:
		return pressing.Wearer{}
	case order.WearerChild:
		return pressing.Wearer{Child: true}
	case order.WearerToddler:
		return pressing.Wearer{Child: true, UnderFour: true}
	}
	return pressing.Wearer{Child: slices.ContainsFunc(d.in.Sized.Players, func(p sizes.Player) bool { return p.Garment != nil && p.Size.Group == garment.Youth })}
}

// spot is pieces that are pressed at once.
type spot struct {
	side   garment.Side
	places []order.Place
}

// words names a spot: back name and back number.
func (s spot) words() string {
	words := make([]string, len(s.places))
	for i, p := range s.places {
		words[i] = string(p)
	}
	return list(words)
}

// together groups the places of the job that one press does at once on every
// size; the others are pressed one by one, the back before the front.
func (d *document) together(presses []sizes.Press) []spot {
	var out []spot
	for _, side := range []garment.Side{garment.Back, garment.Front} {
		var flat, turned []order.Place
		stacks, whole := 0, true
		for _, p := range presses {
			switch {
			case p.Side != side:
			case p.Place == "":
				stacks++
				whole = whole && p.Fit.Presses == 1
			case p.Box.Turn != 0:
				turned = with(turned, p.Place)
			default:
				flat = with(flat, p.Place)
			}
		}
		flat, turned = d.inOrder(flat), d.inOrder(turned)
		if stacks > 0 && whole {
			out, flat = append(out, spot{side, flat}), nil
		}
		for _, p := range slices.Concat(flat, turned) {
			out = append(out, spot{side, []order.Place{p}})
		}
	}
	return out
}

func with(all []order.Place, p order.Place) []order.Place {
	if slices.Contains(all, p) {
		return all
	}
	return append(all, p)
}

// inOrder sorts places as the job has them.
func (d *document) inOrder(places []order.Place) []order.Place {
	var out []order.Place
	for _, p := range d.order.Pieces {
		if slices.Contains(places, p.Place) {
			out = append(out, p.Place)
		}
	}
	return out
}

// layers lists the films of some places from the lowest up: at each depth the
// colours that lie so deep under the top.
func (d *document) layers(places []order.Place) []string {
	deepest := 0
	for _, p := range d.order.Pieces {
		if slices.Contains(places, p.Place) {
			deepest = max(deepest, len(p.Outlines))
		}
	}
	var out []string
	for depth := deepest; depth >= 0; depth-- {
		var level []string
		for _, p := range d.order.Pieces {
			if !slices.Contains(places, p.Place) || depth > len(p.Outlines) {
				continue
			}
			colour := p.Colour
			if depth > 0 {
				colour = p.Outlines[depth-1].Colour
			}
			if name := tally.ColourName(colour); !slices.Contains(level, name) {
				level = append(level, name)
			}
		}
		out = append(out, list(level))
	}
	return out
}
