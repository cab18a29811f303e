package findings

import (
	"fmt"

	"yokeline/lettering/tint"
)

// borderColours holds the borders of numbers against a book that asks them to
// stand out. No book says from what: one that stands out from garment or body and
// is the colour of neither does, one that is the colour of both does by no
// reading. One row a place, as all pieces of a place have the same colours.
func (c *checker) borderColours() {
	f := c.rules.Contrast.Border
	if !f.Yes() {
		return
	}
	for _, place := range drawn {
		m, ok := c.first(place)
		if !ok || m.Kind != KindNumber || len(m.Borders) == 0 {
			continue
		}
		body, err := tint.Parse(m.BodyColour)
		garment, other := tint.Parse(m.GarmentHex)
		if err != nil || other != nil {
			continue // the job gives colours by name alone
		}
		r := Result{Of: c.howMany(KindNumber), Finding: Finding{
			Severity: InOrder, Place: place, What: "colour of the border", Required: "a border that stands out",
		}}
		for _, b := range m.Borders {
			border, err := tint.Parse(b.Colour)
			if err != nil {
				continue
			}
			one, other := tint.Contrast(border, garment), tint.Contrast(border, body)
			if s, mend := borderVerdict(one, other); r.Measured == "" || s.weight() < r.Severity.weight() {
				r.Severity, r.mend = s, mend
				r.Measured = "to garment " + ratioText(one) + ", to body " + ratioText(other)
			}
		}
		c.cited(f, r)
	}
}

// borderVerdict judges a border by its contrast ratios to the garment and to the
// number's body; 1 is the same colour.
func borderVerdict(garment, body float64) (Severity, string) {
	const same = 1 + 1e-9
	switch {
	case garment <= same && body <= same:
		return Violation, "choose another colour for the border of the number, or leave it off: it is that of garment and number"
	case garment < plainContrast && body < plainContrast:
		return Advice, "look at the border of the number: the book prints no figure, but below 3 to 1 (WCAG 2.2, large text) it is hard to see"
	case garment <= same || body <= same:
		return Unknown, "ask what the border must stand out from: it is the colour of the garment or of the number itself"
	}
	return InOrder, ""
}

// ground says what to look at where a book wants one colour behind what is put
// on: an order gives a garment one colour and knows of no pattern.
func (c *checker) ground() {
	k, n := &c.rules.Contrast, &c.rules.Names
	r := Result{Of: c.howMany(KindNumber), Finding: Finding{
		Severity: Unknown, What: "garment behind the number", Measured: "the order has one garment colour", Required: "one colour behind the number",
	}}
	r.mend = "look at the garment: where it is striped, halved, checked or printed behind the number, have a panel of one colour put there"
	if k.Ground.Yes() && r.Of > 0 {
		c.cited(k.Ground, r)
	}
	if f := k.GroundDeltaLMax; f != nil && r.Of > 0 {
		r.Required = fmt.Sprintf("shirt colours at most %g apart in lightness, or a panel of one colour", f.Ratio)
		c.cited(f, r)
	}
	if r.Of = c.howMany(KindName); n.Ground.Yes() && r.Of > 0 {
		r.What, r.Required = "garment behind the name", "one colour behind the name"
		r.mend = "look at the garment: where it has a pattern behind the name, have a panel of one colour put there"
		c.cited(n.Ground, r)
	}
}
