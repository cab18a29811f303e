package tint

import (
	"fmt"
	"math"
	"strconv"
)

// AdvisedRatio is the contrast ratio below which lettering is worth a look
// where no book prints a figure (W3C, Web Content Accessibility Guidelines
// 2.2, success criterion 1.4.11, non-text contrast). It is compared without
// rounding, as W3C asks.
const AdvisedRatio = 3.0

// keptShare is the share of the CIEDE2000 difference below which a red-green
// blind eye is said to lose most of what parts two colours (common practice,
// no source).
const keptShare = 0.5

// farInHue is the CIEDE2000 difference from which two colours that hardly
// differ in lightness look so unlike near by that nobody expects them to run
// into one far off (common practice, no source).
const farInHue = 20

// Apart is how far two colours stand apart for one kind of eye.
type Apart struct {
	Ratio  float64 // contrast ratio, 1 to 21
	DeltaL float64 // difference in CIE L*, 0 to 100
	DeltaE float64 // CIEDE2000 difference
}

// Report is how far a body stands apart from its ground. All figures are
// estimates from screen colours.
type Report struct {
	Body, Ground   Colour
	Apart                // to the usual eye
	Protan, Deutan Apart // to red-green blind eyes, as Simulate shows them
}

// Compare measures a body against what lies behind it: a number against the
// garment, a border against either. The figures are the same the other way
// round.
func Compare(body, ground Colour) Report {
	b, g := body.light(), ground.light()
	return Report{
		Body: body, Ground: ground, Apart: apart(b, g, Usual),
		Protan: apart(b, g, Protan), Deutan: apart(b, g, Deutan),
	}
}

func apart(a, b light, v Vision) Apart {
	a, b = a.seen(v), b.seen(v)
	one, two := a.lab(), b.lab()
	return Apart{Ratio: contrast(a, b), DeltaL: math.Abs(one.L - two.L), DeltaE: CIEDE2000(one, two)}
}

// Worst returns the red-green blind vision that leaves the smaller contrast
// ratio, and what it leaves.
func (r Report) Worst() (Vision, Apart) {
	if r.Protan.Ratio < r.Deutan.Ratio {
		return Protan, r.Protan
	}
	return Deutan, r.Deutan
}

// Advice is one thing about two colours that is worth a look.
type Advice struct {
	Vision   Vision // the eye that it is about
	Measured string // such as "1.9 to 1", rounded down
	Required string // such as "at least 3 to 1"
	Text     string // one sentence in plain words, without full stop
	Source   string // where the requirement comes from
}

// Advice returns what is worth a look: at most one thing for the usual eye and
// one for red-green blind eyes, in this order. None means that the colours
// stand apart on the screen; it says nothing of cloth.
func (r Report) Advice() []Advice {
	if r.Body == r.Ground {
		return []Advice{note(Usual, r.Ratio, "both have the same colour")}
	}
	var out []Advice
	if r.Ratio < AdvisedRatio {
		out = append(out, note(Usual, r.Ratio, r.plain()))
	}
	v, left := r.Worst()
	switch {
	case r.Ratio >= AdvisedRatio && left.Ratio < AdvisedRatio:
		out = append(out, note(v, left.Ratio, fmt.Sprintf(
			"to a red-green blind eye (%s) the contrast drops from %s to %s", v, ratioText(r.Ratio), ratioText(left.Ratio))))
	case left.Ratio < AdvisedRatio:
		if w, most := r.mostLost(); most.DeltaE < keptShare*r.DeltaE {
			out = append(out, note(w, most.Ratio, fmt.Sprintf(
				"to a red-green blind eye (%s) most of what parts the two colours is gone: a colour difference of %.0f becomes %.0f",
				w, r.DeltaE, most.DeltaE)))
		}
	}
	return out
}

// plain says in words why a low contrast matters.
func (r Report) plain() string {
	text := fmt.Sprintf("the contrast is %s on the screen; below %g to 1 lettering is hard to read", ratioText(r.Ratio), AdvisedRatio)
	if r.DeltaE > farInHue && r.DeltaE > 2*r.DeltaL {
		text += "; the two differ in hue more than in light and dark, and hue does not carry far"
	}
	return text
}

// mostLost returns the red-green blind vision that leaves the smaller
// CIEDE2000 difference, and what it leaves.
func (r Report) mostLost() (Vision, Apart) {
	if r.Protan.DeltaE < r.Deutan.DeltaE {
		return Protan, r.Protan
	}
	return Deutan, r.Deutan
}

func note(v Vision, ratio float64, text string) Advice {
	return Advice{
		Vision: v, Measured: ratioText(ratio), Text: text,
		Required: fmt.Sprintf("at least %g to 1", AdvisedRatio),
		Source:   "W3C, Web Content Accessibility Guidelines 2.2, 1.4.11",
	}
}

// ratioText rounds down, so that a ratio never looks better than it is.
func ratioText(ratio float64) string {
	return strconv.FormatFloat(math.Floor(ratio*10)/10, 'f', 1, 64) + " to 1"
}
