package sheets

import (
	"slices"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/proof/page"
	"yokeline/proof/shirt"
)

// teamColour is a colour of the order with what it is used for.
type teamColour struct {
	key     string // a, b, c … in the order of the chips
	colour  order.Colour
	cloth   bool            // the garment itself
	trim    []garment.Role  // parts of the garment
	letters []garment.Place // pieces whose letters or digits have it
	edges   []garment.Place // pieces with an outline in it
}

func (c teamColour) paint() page.Colour { return shirt.Paint(c.colour) }

// teamColours lists the colours that the order uses: the garment's, the
// letters', the outlines', the trim's.
func (d *document) teamColours() []teamColour {
	var out []teamColour
	use := func(c order.Colour) *teamColour {
		i := slices.IndexFunc(out, func(t teamColour) bool { return t.colour.Hex == c.Hex })
		if i < 0 {
			i, out = len(out), append(out, teamColour{colour: c})
		}
		return &out[i]
	}
	use(d.order.Garment.Colour).cloth = true
	for _, p := range d.order.Pieces {
		t := use(p.Colour)
		t.letters = append(t.letters, p.Place)
	}
	for _, p := range d.order.Pieces {
		for _, o := range p.Outlines {
			t := use(o.Colour)
			t.edges = append(t.edges, p.Place)
		}
	}
	if trim := d.trimRoles(); d.order.Garment.Trim.Hex != "" && len(trim) > 0 {
		use(d.order.Garment.Trim).trim = trim
	}
	for i := range out {
		out[i].key = string(rune('a' + i))
	}
	return out
}

// trimRoles lists the parts of the garment that have the trim's colour.
func (d *document) trimRoles() []garment.Role {
	var out []garment.Role
	player, ok := d.shown()
	if !ok {
		return nil
	}
	for _, side := range [2]garment.Side{garment.Front, garment.Back} {
		for _, part := range player.Garment.View(side) {
			if shirt.IsTrim(part.Role) && !slices.Contains(out, part.Role) {
				out = append(out, part.Role)
			}
		}
	}
	slices.Sort(out)
	return out
}

// uses says in words what a colour is used for.
func (d *document) uses(c teamColour) string {
	var words []string
	if c.cloth {
		words = append(words, d.noun())
	}
	words = append(words, d.letterWords(c.letters)...)
	if len(c.edges) > 0 {
		words = append(words, d.edgeWords(c.edges))
	}
	for _, r := range c.trim {
		words = append(words, trimWord(r))
	}
	if slices.ContainsFunc(words, func(w string) bool { return strings.Contains(w, " and ") }) {
		return strings.Join(words, ", ")
	}
	return list(words)
}

// letterWords names the pieces whose letters have a colour, in as few words as
// say which.
func (d *document) letterWords(places []garment.Place) []string {
	if len(places) == 0 {
		return nil
	}
	names, digits, allNames, allDigits := 0, 0, 0, 0
	for _, p := range d.order.Pieces {
		has := slices.Contains(places, p.Place)
		switch {
		case order.IsNumber(p.Place):
			allDigits++
			digits += count(has)
		default:
			allNames++
			names += count(has)
		}
	}
	var words []string
	switch {
	case names == allNames && digits == allDigits && names > 0 && digits > 0:
		return []string{"all letters and digits"}
	case names == allNames && names > 0:
		words = append(words, "all letters")
	default:
		words = append(words, d.placeWords(places, false)...)
	}
	if digits == allDigits && digits > 0 {
		return append(words, "all digits")
	}
	return append(words, d.placeWords(places, true)...)
}

func count(is bool) int {
	if is {
		return 1
	}
	return 0
}

// placeWords names the places of numbers or of names among them.
func (d *document) placeWords(places []garment.Place, numbers bool) []string {
	var words []string
	for _, p := range places {
		if order.IsNumber(p) == numbers {
			words = append(words, placeWord(p))
		}
	}
	return words
}

// placeWord names a piece where front and back must be told apart.
func placeWord(p garment.Place) string {
	switch p {
	case garment.BackName:
		return "name"
	case garment.FrontName:
		return "team name"
	}
	return string(p)
}

// edgeWords names outlines: all of them, or those of some pieces.
func (d *document) edgeWords(places []garment.Place) string {
	for _, p := range d.order.Pieces {
		if len(p.Outlines) > 0 && !slices.Contains(places, p.Place) {
			var of []string
			for _, place := range slices.Compact(slices.Clone(places)) {
				of = append(of, placeWord(place))
			}
			return "outline of " + list(of)
		}
	}
	return "outlines"
}

func trimWord(r garment.Role) string {
	switch r {
	case garment.Cuff:
		return "cuffs"
	case garment.Binding:
		return "binding"
	case garment.SidePanel:
		return "side panels"
	}
	return r.String()
}

// list joins words for reading: a, b and c.
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
