package findings

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"yokeline/lettering/rulebook"
	"yokeline/lettering/tint"
)

// plainContrast is the contrast ratio below which a number is worth a look
// where the book asks for contrast and prints no figure: the 3 to 1 that WCAG
// 2.2 (success criteria 1.4.3 and 1.4.11) asks of large text and graphics.
const plainContrast = 3.0

// contrast holds the colours of the numbers against the book. All figures are
// estimates from screen colours, and say so.
func (c *checker) contrast() {
	k := &c.rules.Contrast
	for _, place := range drawn {
		ok, shown, rated, least, estimate := 0, 0, 0, math.Inf(1), ""
		for _, w := range c.subject.Players {
			m, here := w.piece(place)
			body, notKnown := tint.Parse(m.BodyColour)
			garment, norThat := tint.Parse(m.GarmentHex)
			if !here || notKnown != nil || norThat != nil {
				continue
			}
			shown++
			ratio := tint.Contrast(body, garment)
			if ratio < least {
				least, estimate = ratio, estimated(m, body, garment)
			}
			if c.bodyStands(k, w, m, ratio) {
				ok++
			}
			if c.ratioHolds(k.RatioMin, w, m, ratio) {
				rated++
			}
			c.lightnessHolds(k.DeltaLMin, w, m, tint.DeltaL(body, garment))
		}
		if shown > 0 && ok == shown && k.Body != nil {
			c.cited(k.Body, Result{Of: ok, Finding: Finding{
				Severity: InOrder, Place: place, What: "colour of the number", Measured: estimate, Required: "clearly unlike the garment; no figure printed",
			}})
		}
		if shown > 0 && rated == shown && k.RatioMin != nil {
			c.cited(k.RatioMin, Result{Of: rated, Finding: Finding{
				Severity: InOrder, Place: place, What: "contrast", Measured: estimate, Required: fmt.Sprintf("at least %g to 1", k.RatioMin.Ratio),
			}})
		}
	}
}

// bodyStands reports whether the number's own colour, or a border where the
// book lets one do it, stands out.
func (c *checker) bodyStands(k *rulebook.Contrast, w Wearer, m Measured, ratio float64) bool {
	if k.Body == nil {
		return true
	}
	same := strings.EqualFold(m.BodyColour, m.GarmentHex)
	required := "a colour unlike the garment's"
	if k.Body.Says("or border") {
		if borderStands(k, m) {
			return true
		}
		required += ", or a border of another colour"
		if k.BorderMin != nil {
			required += " of at least " + k.BorderMin.Text()
		}
	}
	finding := Finding{Severity: Violation, Player: w.Player, Place: m.Place, What: "colour of the number", Measured: "the garment's own", Required: required}
	mend := fmt.Sprintf("choose another colour: the %s of %s has the garment's", m.Place, who)
	if !same {
		if ratio >= plainContrast || k.RatioMin != nil {
			return true
		}
		finding.Severity, finding.Measured, finding.By = Advice, estimatedOf(m), lacks(plainContrast-ratio)
		mend = fmt.Sprintf("look at the %s of %s: the book prints no figure, but below 3 to 1 (WCAG 2.2, large text) it is hard to read", m.Place, who)
	}
	c.cited(k.Body, Result{Finding: finding, mend: mend})
	return false
}

// borderStands reports whether a border is wide enough and of another colour
// than the garment.
func borderStands(k *rulebook.Contrast, m Measured) bool {
	for _, b := range m.Borders {
		wide := k.BorderMin == nil || nanometres(b.Width) >= k.BorderMin.Length.Nanometres()
		one, err := tint.Parse(b.Colour)
		other, otherErr := tint.Parse(m.GarmentHex)
		if wide && err == nil && otherErr == nil && tint.Contrast(one, other) >= plainContrast {
			return true
		}
	}
	return false
}

func (c *checker) ratioHolds(f *rulebook.Figure, w Wearer, m Measured, ratio float64) bool {
	if f == nil || ratio >= f.Ratio {
		return true
	}
	got := ratioText(ratio)
	c.cited(f, Result{
		Finding: Finding{
			Severity: Violation, Player: w.Player, Place: m.Place, What: "contrast", Measured: estimatedOf(m),
			Required: fmt.Sprintf("at least %g to 1", f.Ratio), By: lacks(f.Ratio - ratio),
		},
		mend: fmt.Sprintf("choose colours further apart: the %s of %s is %s against the garment", m.Place, who, got),
	})
	return false
}

func (c *checker) lightnessHolds(f *rulebook.Figure, w Wearer, m Measured, difference float64) {
	if f == nil || difference >= f.Ratio {
		return
	}
	c.cited(f, Result{
		Finding: Finding{Severity: Violation, Player: w.Player, Place: m.Place, What: "difference in lightness", Measured: strconv.FormatFloat(math.Floor(difference*10)/10, 'f', 1, 64) + " on the screen", Required: fmt.Sprintf("at least %g", f.Ratio), By: lacks(f.Ratio - difference)},
		mend:    fmt.Sprintf("have the cloth measured, or choose colours further apart, for the %s of %s", m.Place, who),
	})
}

// ratioText prints a ratio rounded down, so that it never looks better than it
// is.
func ratioText(ratio float64) string {
	return strconv.FormatFloat(math.Floor(ratio*10)/10, 'f', 1, 64) + " to 1"
}
