package sizes

import (
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/outline"
)

// NumberWay says a way out of a number as what to do and, in brackets, what
// comes out: set it in league-gothic (10 in high, 7 1/4 in wide). Figures to
// give are in three decimals where the unit's usual step would alter them.
func NumberWay(w numeral.WayOut, unit length.Unit) string {
	r, n := w.Request, w.Number
	if w.Kind == numeral.NextSize {
		return "order " + w.Size
	}
	if w.Kind == numeral.LowerDigits {
		return numberChange(w, unit) + " (" + length.Plain(n.InkWidth, unit, length.Down) + " wide)"
	}
	out := "(" + length.Plain(n.Height, unit, length.Nearest) + " high, "
	if reach := outline.Reach(r.Outlines); reach > 0 {
		out += length.Plain(n.Height+2*reach, unit, length.Nearest) + " with its outline, "
	}
	out += length.Plain(n.InkWidth, unit, length.Down) + " wide"
	if r.Stroke+r.EmboldenTo > 0 && w.Kind != numeral.ThickerDigits {
		out += ", strokes of " + strokeOf(r, unit)
	}
	return numberChange(w, unit) + " " + out + ")"
}

func numberChange(w numeral.WayOut, unit length.Unit) string {
	r := w.Request
	switch w.Kind {
	case numeral.ThickerDigits:
		return "give it strokes of " + strokeOf(r, unit)
	case numeral.SmallerGap:
		return "set its digits " + gapToGive(w, unit) + " apart"
	case numeral.NarrowerOutlines:
		return "outline it with " + outlineWidths(r.Outlines, unit)
	case numeral.FewerOutlines:
		if len(r.Outlines) == 0 {
			return "leave its outline off"
		}
		return "outline it with " + outlineWidths(r.Outlines, unit) + " alone"
	case numeral.NarrowerDigits:
		return fmt.Sprintf("set it at wdth %g", r.Wdth)
	case numeral.NarrowerFace:
		out := "set it in " + r.Face.ID()
		if !math.IsNaN(r.Wdth) {
			out += fmt.Sprintf(" at wdth %g", r.Wdth)
		}
		if w.GapAsWell {
			out += " with its digits " + given(r.Gap, unit, length.Down) + " apart"
		}
		return out
	}
	if w.AnyLower {
		return "set it " + length.Plain(r.Height, unit, length.Down) + " high"
	}
	return "set it " + given(r.Height, unit, length.Down) + " high"
}

// gapToGive prints a gap as usual where that is still over its floor.
func gapToGive(w numeral.WayOut, unit length.Unit) string {
	text, r := length.Plain(w.Request.Gap, unit, length.Down), w.Request
	least := math.Max(2*outline.Reach(r.Outlines)+r.SmallestGap, r.Gap/2)
	if l, err := length.Parse(text); w.AnyLower && err == nil && l.MM() >= least {
		return text
	}
	return given(r.Gap, unit, length.Down)
}

// given prints a length for someone to write into a job: as usual where that is
// the very length, else with three decimals, rounded to the safe side.
func given(mm float64, unit length.Unit, r length.Rounding) string {
	text := length.Plain(mm, unit, length.Nearest)
	if l, err := length.Parse(text); err == nil && math.Abs(l.MM()-mm) < 1e-6 {
		return text
	}
	per := 10.0 // a centimetre
	if unit == length.Inch {
		per = 25.4
	}
	const thousand, whole = 1000, 1e-6 // whole: so near to a whole figure that it is one
	if r == length.Up {
		return length.Exact(math.Ceil(mm/per*thousand-whole)/thousand*per, unit)
	}
	return length.Exact(math.Floor(mm/per*thousand+whole)/thousand*per, unit)
}

// strokeOf returns the stroke that a request asks for.
func strokeOf(r numeral.Request, unit length.Unit) string {
	return given(r.Stroke+r.EmboldenTo, unit, length.Up)
}

func outlineWidths(layers []outline.Layer, unit length.Unit) string {
	var out []string
	for _, l := range layers {
		out = append(out, given(l.Width, unit, length.Down))
	}
	return strings.Join(out, " and ")
}

// NumberWays lists ways out for a sentence: A, B, or C; "" for none.
func NumberWays(ways []numeral.WayOut, unit length.Unit) string {
	var out []string
	for _, w := range ways {
		out = append(out, NumberWay(w, unit))
	}
	switch n := len(out); n {
	case 0:
		return ""
	case 1:
		return out[0]
	case 2:
		return out[0] + ", or " + out[1]
	default:
		return strings.Join(out[:n-1], ", ") + ", or " + out[n-1]
	}
}
