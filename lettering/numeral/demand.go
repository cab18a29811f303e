package numeral

import (
	"math"

	"yokeline/lettering/outline"
)

// Span is what a length must keep to, mm; 0 leaves an end open. A length may
// equal either end, compared in whole nanometres.
type Span struct{ Least, Most float64 }

func (s Span) holds(mm float64) bool {
	return !(s.Least > 0 && !atLeast(mm, s.Least)) && !(s.Most > 0 && !atLeast(s.Most, mm))
}

// atLeast compares in whole nanometres, as a rule's exact length is.
func atLeast(mm, least float64) bool { return math.Round(mm*1e6) >= math.Round(least*1e6) }

// Demand is what a rule book and a decoration method ask of a number. The zero
// value asks for nothing.
type Demand struct {
	// Height bounds the shortest digit from below and the tallest from above;
	// with HeightOutlined the outlines count.
	Height         Span
	HeightOutlined bool
	// Stroke bounds StrokeThin from below and StrokeMain from above; with
	// StrokeOutlined the outlines count. A stroke that is not measurable keeps
	// no bound.
	Stroke         Span
	StrokeOutlined bool
	DigitWidth     Span // of the narrowest digit's bare ink, from below
	Width          Span // of the whole number with its outlines
	Gap            Span // between digits
	Outlines       Span // of all outlines together, where there are any
	EachOutline    Span // of each; the least is what the method can make
}

// Keeps reports whether a number with these outlines keeps the demand, and
// how much its thinnest stroke lacks, mm: NaN when it is not measurable, 0
// when nothing is missing.
func (d Demand) Keeps(n Number, outlines []outline.Layer) (keeps bool, strokeShort float64) {
	reach := outline.Reach(outlines)
	high, thick := 0.0, 0.0
	if d.HeightOutlined {
		high = 2 * reach
	}
	if d.StrokeOutlined {
		thick = 2 * reach
	}
	keeps = Span{Least: d.Height.Least}.holds(n.Height+high) && Span{Most: d.Height.Most}.holds(n.TallestDigit+high) &&
		d.DigitWidth.holds(n.NarrowestDigit) && d.Width.holds(n.InkWidth) && (len(n.Text) < 2 || d.Gap.holds(n.Gap))
	if reach > 0 {
		keeps = keeps && d.Outlines.holds(reach)
	}
	for _, l := range outlines {
		keeps = keeps && d.EachOutline.holds(l.Width)
	}
	if least := d.Stroke.Least; least > 0 && !atLeast(n.StrokeThin+thick, least) {
		keeps, strokeShort = false, least-thick-n.StrokeThin // NaN passes on
	}
	if d.Stroke.Most > 0 && !atLeast(d.Stroke.Most, n.StrokeMain+thick) {
		keeps = false
	}
	return keeps, strokeShort
}

// least returns the number height that the demand asks of bare digits with the
// outlines, 0 for none.
func (d Demand) least(outlines []outline.Layer) float64 {
	if d.HeightOutlined {
		return d.Height.Least - 2*outline.Reach(outlines)
	}
	return d.Height.Least
}

// stroke returns the stroke that the demand asks of bare digits, 0 for none.
func (d Demand) stroke(outlines []outline.Layer) float64 {
	if d.Stroke.Least > 0 && d.StrokeOutlined {
		return math.Max(0, d.Stroke.Least-2*outline.Reach(outlines))
	}
	return d.Stroke.Least
}
