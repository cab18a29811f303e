package order

import (
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/source"
)

// length1 reads an optional length.
func length1(to **length.Length, b bounds) func(value) {
	return func(v value) { set(to)(v.length(b)) }
}

// arch checks that an arch has its circle once, and that nothing else has one.
// A shape that was not understood is fault enough.
func (d *draft) arch(p *piece) {
	radius, rise, shape := p.found["radius"], p.found["rise"], p.found["shape"]
	if shape.r != nil && !p.shaped {
		return
	}
	arched := p.Shape != "straight"
	switch {
	case radius.r != nil && rise.r != nil:
		later := rise
		if radius.keyPlace().Compare(rise.keyPlace()) > 0 {
			later = radius
		}
		later.keyFault("keep one: the rise over the limit, or the radius of the baseline", "%s: radius and rise exclude each other", p.Place)
	case isForm(p.Shape) && radius.r != nil:
		radius.keyFault("write rise: and how far the edge rises over the limit", "%s: a %s is given by its rise", p.Place, p.Shape)
	case isForm(p.Shape) && rise.r == nil:
		shape.fault("add rise: 1in", "%s: a %s needs a rise", p.Place, p.Shape)
	case !arched && radius.r != nil:
		radius.keyFault("write shape: radial arch, or delete it", "%s: radius is for an arch", p.Place)
	case !arched && rise.r != nil:
		rise.keyFault("write shape: radial arch, or delete it", "%s: rise is for an arch", p.Place)
	case arched && radius.r == nil && rise.r == nil:
		shape.fault("add rise: 1in or radius: 14in", "%s: a %s needs a rise or a radius", p.Place, p.Shape)
	}
	if spacing := p.found["spacing"]; spacing.r != nil && !strings.HasPrefix(p.Shape, "radial") {
		spacing.keyFault("write shape: radial arch, or delete it", "%s: spacing is for a radial arch", p.Place)
	}
}

// offered checks that the cut has the place. A cut that was not understood is
// fault enough.
func (d *draft) offered(p *piece) {
	cut := d.o.Garment.Cut
	places := garment.Places(cut)
	if cut == "" || slices.Contains(places, p.Place) {
		return
	}
	var words []string
	for _, place := range places {
		words = append(words, string(place))
	}
	p.at.keyFault("it has a place for "+list(words)+"; another garment is another order", "a %s has no place for a %s", cut, p.Place)
}

// heightKnown checks that a height that is not written out can be found.
func (d *draft) heightKnown(p *piece) {
	at, given := p.found["height"]
	switch {
	case p.Height.By == ByRule && d.o.Rules == "":
		at.fault("name the rule book with rules:, or write a length", "%s: height by rule needs a rule book", p.Place)
	case p.Height.By == BySize && IsNumber(p.Place) && !usual(d.o.Sport, p.Place) && !d.badSport:
		const hint = "write a length, or name the sport if it is one of "
		if given {
			at.fault(hint+list(garment.Sports()), "%s: by size is not known for sport %s", p.Place, d.o.Sport)
		} else {
			p.at.keyFault(hint+list(garment.Sports()), "%s: height is missing, and not known for sport %s", p.Place, d.o.Sport)
		}
	}
}

// usual reports whether the garment table has a height for a number in a sport.
func usual(sport string, place Place) bool {
	heights, err := garment.NumberHeightsFor(sport, garment.Adult)
	if err != nil {
		return false
	}
	switch place {
	case garment.BackNumber:
		return heights.Back.To > 0
	case garment.FrontNumber:
		return heights.Front.To > 0
	case garment.SleeveNumber:
		return heights.Sleeve.To > 0
	}
	return heights.Shorts.To > 0
}

// fit reads the ladder.
func (d *draft) fit(v value) {
	f := &d.o.Fit
	v.fields("{tracking: -4%, width: 80%}", []field{
		{key: "tracking", read: func(v value) {
			set(&f.Tracking)(v.percent(-20, 0, "write how far letters may be tightened, such as -4%; 0% forbids it"))
		}},
		{key: "width", read: d.fitWidth},
		{key: "height", read: length1(&f.Height, heights)},
		{key: "same", read: word(&f.Same, "way to share a height", Sames())},
		{key: "arc", read: word(&f.Arc, "way to share an arch", Arcs())},
	})
}

// narrow is the width below which bars get thinner than most rules allow:
// common practice, no source.
const narrow = 0.70

func (d *draft) fitWidth(v value) {
	w, ok := v.percent(20, 100, "write how narrow letters may get, such as 80%; 100% forbids it")
	if !ok {
		return
	}
	d.o.Fit.Width = w
	if w < narrow {
		v.note(Advice, "fit", "letters may be narrowed below 70 %: their bars get thin and the name looks squeezed", "keep to 70% or more (common practice, no source)")
	}
}

// settleFit holds the lowest letter height against the height asked for on the
// back. Text that the shop wrote itself is no name to ease, and often smaller.
func (d *draft) settleFit() {
	floor, p := d.o.Fit.Height, d.pieces[garment.BackName]
	if floor == nil || p == nil {
		return
	}
	asked := p.Heights
	if p.Height.By == ByLength {
		asked = append([]SizedLength{{Length: p.Height.Length}}, asked...)
	}
	for _, h := range asked {
		if floor.Compare(h.Length) > 0 {
			p.found["height"].fault("lower fit: height, or raise this one", "%s: %v is below the lowest letter height of fit, %v", p.Place, h.Length, *floor)
		}
	}
}

// settleSeason takes the year that rules are looked up for from the dates.
func (d *draft) settleSeason() {
	for _, day := range []string{d.o.Due, d.o.ProofDate} {
		if d.o.Season == "" && day != "" {
			d.o.Season = day[:4]
		}
	}
}

// settlePieces puts the pieces in their order and gives them a colour.
func (d *draft) settlePieces() {
	for _, place := range Places() {
		p := d.pieces[place]
		if p == nil {
			continue
		}
		if !p.coloured {
			p.Colour = d.standOut()
		}
		d.o.Pieces = append(d.o.Pieces, p.Piece)
	}
}

// standOut is the colour of a piece that names none: the first of the job's
// colours that is not the garment's.
func (d *draft) standOut() Colour {
	for _, c := range d.o.Colours {
		if c.Hex != d.o.Garment.Colour.Hex {
			return c
		}
	}
	return contrast(d.o.Garment.Colour)
}

func (d *draft) roster(v value) {
	ref := &d.job.Roster
	ref.At = v.place()
	if v.node.Kind != mapping {
		set(&ref.File)(v.raw(cellLetters))
	} else {
		found, _ := v.fields("{file: roster.xlsx, sheet: Players}", []field{
			{key: "file", read: func(v value) { ref.At = v.place(); set(&ref.File)(v.raw(cellLetters)) }},
			{key: "sheet", read: func(v value) { set(&ref.Sheet)(v.raw(cellLetters)) }},
		})
		if _, given := found["file"]; !given {
			v.keyFault("such as {file: roster.xlsx}", "roster: file is missing")
		}
	}
	ref.excerpt = v.r.file.Line(ref.At.Line)
}

// settleRoster checks that players come from one place.
func (d *draft) settleRoster(top map[string]value) {
	roster, players := top["roster"], top["players"]
	switch {
	case roster.r == nil && players.r == nil:
		d.whole("write roster: and the name of a csv or xlsx file, or list players:", "roster: is missing")
	case roster.r != nil && players.r != nil:
		later := roster
		if roster.key.Line < players.key.Line {
			later = players
		}
		later.keyFault("keep one of them", "roster and players exclude each other")
	}
}

// missing is a fault of the roster at the place where the job names it.
func (ref RosterFile) missing(message, hint string) source.Fault {
	return source.Fault{Place: ref.At, Message: message, Hint: hint, Excerpt: ref.excerpt, Width: len([]rune(ref.File))}
}
