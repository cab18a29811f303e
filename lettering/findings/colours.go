package findings

import (
	"fmt"
	"math"
	"strconv"

	"yokeline/lettering/rulebook"
	"yokeline/lettering/tint"
)

// colours looks at what is put on the garment whether or not a book speaks of
// it: one row a place, as all pieces of a place have the same colours. Where a
// book asks for contrast of numbers, its own rows say the first of the two.
func (c *checker) colours() {
	for _, place := range c.subject.Asked {
		m, ok := c.first(place)
		if !ok {
			continue
		}
		body, err := tint.Parse(m.BodyColour)
		ground, other := tint.Parse(m.GarmentHex)
		if err != nil || other != nil {
			continue
		}
		if c.rules == nil || m.Kind != KindNumber || c.rules.Contrast.Body == nil && c.rules.Contrast.RatioMin == nil {
			c.plain(m, body, ground)
		}
		c.blindness(m, body, ground)
	}
}

// first returns the piece of the first player who has one at the place.
func (c *checker) first(place string) (Measured, bool) {
	for _, w := range c.subject.Players {
		if m, ok := w.piece(place); ok {
			return m, true
		}
	}
	return Measured{}, false
}

func (c *checker) plain(m Measured, body, ground tint.Colour) {
	ratio := tint.Contrast(body, ground)
	if ratio >= tint.AdvisedRatio || outlined(m, body) {
		return
	}
	c.keep(Result{
		Finding: Finding{
			Severity: Advice, Place: m.Place, What: "colour of the " + kindWords(m), Measured: estimated(m, body, ground), Required: fmt.Sprintf("at least %g to 1", tint.AdvisedRatio),
			By: lacks(tint.AdvisedRatio - ratio), Source: "WCAG 2.2, 1.4.11, taken as a rule of thumb; no rule book asks for it here",
		},
		mend: "look at the " + m.Place + " from afar: choose colours further apart, or an outline that stands out from the letters",
	})
}

// blindness gives advice where a piece that the usual eye tells from the garment
// is hard to tell for a red-green blind one.
func (c *checker) blindness(m Measured, body, ground tint.Colour) {
	for _, a := range tint.Compare(body, ground).Advice() {
		if a.Vision == tint.Usual || outlined(m, body) {
			continue // held against the book, or said by plain
		}
		c.keep(Result{
			Finding: Finding{Severity: Advice, Place: m.Place, What: "colour of the " + kindWords(m) + ", red-green blind eye", Measured: a.Measured, Required: a.Required, Source: a.Source},
			mend:    a.Text,
		})
	}
}

func kindWords(m Measured) string {
	if m.Kind == KindText {
		return "lettering"
	}
	return m.Kind
}

// outlined reports a border that parts the body from the garment for every kind
// of eye: it stands out from the body, so the letters are read by their edge.
func outlined(m Measured, body tint.Colour) bool {
	for _, b := range m.Borders {
		border, err := tint.Parse(b.Colour)
		if err != nil || tint.Contrast(body, border) < tint.AdvisedRatio {
			continue
		}
		if _, worst := tint.Compare(body, border).Worst(); worst.Ratio >= tint.AdvisedRatio {
			return true
		}
	}
	return false
}

// estimated prints how far the colours of a piece stand apart: the body from the
// garment, and each border from both. All are estimates from screen colours.
func estimated(m Measured, body, ground tint.Colour) string {
	text := ratioText(tint.Contrast(body, ground)) + " on the screen (" + apartWords(body, ground) + ")"
	for i, b := range m.Borders {
		border, err := tint.Parse(b.Colour)
		if err != nil {
			continue
		}
		name := "border"
		if len(m.Borders) > 1 {
			name = fmt.Sprintf("border %d", i+1)
		}
		text += fmt.Sprintf("; %s to garment %s (%s), to body %s (%s)", name,
			ratioText(tint.Contrast(border, ground)), apartWords(border, ground), ratioText(tint.Contrast(border, body)), apartWords(border, body))
	}
	return text
}

// estimatedOf is estimated for a piece whose colours have been read before.
func estimatedOf(m Measured) string {
	body, _ := tint.Parse(m.BodyColour)
	ground, _ := tint.Parse(m.GarmentHex)
	return estimated(m, body, ground)
}

func apartWords(a, b tint.Colour) string {
	return fmt.Sprintf("L* %.0f, CIEDE2000 %.0f", math.Floor(tint.DeltaL(a, b)), math.Floor(tint.DeltaE(a, b)))
}

// lacks prints what a ratio or a difference lacks, rounded up.
func lacks(by float64) string {
	return strconv.FormatFloat(math.Ceil(by*10-1e-9)/10, 'f', 1, 64)
}

// solid says that the body of every number has one solid colour where a book
// asks for it: nothing that is made here has another.
func (c *checker) solid() {
	if !c.rules.Contrast.Solid.Yes() {
		return
	}
	n := c.howMany(KindNumber)
	if n > 0 {
		c.cited(c.rules.Contrast.Solid, Result{Of: n, Finding: Finding{
			Severity: InOrder, What: "body of the number", Measured: "one solid colour", Required: "one solid colour",
		}})
	}
}

// howMany returns how many pieces of a kind the order has.
func (c *checker) howMany(kind string) int {
	n := 0
	for _, w := range c.subject.Players {
		for _, m := range w.Pieces {
			if m.Kind == kind {
				n++
			}
		}
	}
	return n
}

// shadow says that a number has none, which keeps every limit of one.
func (c *checker) shadow(f *rulebook.Figure, place string, at func(Wearer) []Measured) {
	n := 0
	for _, w := range c.subject.Players {
		n += len(at(w))
	}
	if n > 0 && figureOf(f) {
		c.cited(f, Result{Of: n, Finding: Finding{Severity: InOrder, Place: place, What: "shadow", Measured: "none", Required: "at most " + f.Text()}})
	}
}
