package findings

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// centredWithin is how far off a piece may be and still count as centred: no
// book prints a figure (common practice, no source; 1 mm).
const centredWithin = 1.0

// position holds the numbers at one place against the book.
func (c *checker) position(place string) {
	p := c.rules.Position(place)
	if p == nil {
		return
	}
	at := func(w Wearer) []Measured {
		if m, ok := w.piece(place); ok && m.Kind == KindNumber {
			return []Measured{m}
		}
		return nil
	}
	for _, l := range slices.Concat(heights(p), strokes(p), borders(p), extents(p)) {
		l.place = place
		c.hold(l, at)
	}
	c.count(p.BorderCountMax, place, "number of borders", at, func(m Measured) int { return len(m.Borders) })
	c.count(p.ColoursMax, place, "colours of the number", at, Measured.colours)
	c.shadow(p.ShadowMax, place, at)
	c.centred(p, place, at)
	c.upperHalf(p.UpperHalf, place, at)
	c.sameAsShirt(p, place)
}

func heights(p *rulebook.Position) []bound {
	shortest := func(m Measured) (float64, float64, bool) { return withBorder(m.Height, m, p.HeightIncludesBorder) }
	tallest := func(m Measured) (float64, float64, bool) {
		return withBorder(m.TallestDigit, m, p.HeightIncludesBorder)
	}
	bare := func(m Measured) (float64, float64, bool) { return m.Height, m.Height, true }
	const what, object, state = "number height", "it", "%s is %s high"
	return []bound{
		{figure: p.HeightMin, what: what, object: object, state: state, side: atLeast, of: shortest},
		{figure: p.HeightMax, what: what, object: object, state: state, side: atMost, of: tallest},
		{figure: p.HeightExact, what: what, object: object, state: state, side: exactly, of: shortest},
		{figure: p.HeightAbout, what: what, object: object, state: state, side: about, of: bare},
		{figure: p.HeightAdvised, what: what + " advised", object: object, state: state, side: atLeast, of: shortest},
	}
}

// withBorder returns the height as the book counts it: both ways if it does
// not say.
func withBorder(height float64, m Measured, includes *rulebook.Figure) (low, high float64, ok bool) {
	whole := height + 2*m.border()
	switch {
	case includes.Says("yes"):
		return whole, whole, true
	case includes.Says("no"):
		return height, height, true
	}
	return height, whole, true
}

// strokes are held against the bare digits unless a book says otherwise: a
// minimum against the thinnest part too, a maximum and an approximate figure
// against the main strokes.
func strokes(p *rulebook.Position) []bound {
	reach := func(m Measured) float64 {
		if p.StrokeIncludesBorder.Yes() {
			return 2 * m.border()
		}
		return 0
	}
	thin := func(m Measured) (float64, float64, bool) {
		v := m.StrokeThin + reach(m)
		// where the main strokes are too thin already that is said once
		main := m.StrokeMain + reach(m)
		return v, v, p.StrokeMin != nil && nanometres(main) >= p.StrokeMin.Length.Nanometres() && !math.IsNaN(main)
	}
	mainly := func(m Measured) (float64, float64, bool) {
		v := m.StrokeMain + reach(m)
		return v, v, true
	}
	const what, object, state = "number stroke", "its strokes", "those of %s are %s"
	return []bound{
		{figure: p.StrokeMin, what: what, object: object, state: state, side: atLeast, of: mainly},
		{figure: p.StrokeMin, what: what + " at its thinnest", object: object, state: "the thinnest of %s are %s", side: atLeast, of: thin},
		{figure: p.StrokeMax, what: what, object: object, state: state, side: atMost, of: mainly},
		{figure: p.StrokeAbout, what: what, object: object, state: state, side: about, of: mainly},
	}
}

func borders(p *rulebook.Position) []bound {
	whole := func(m Measured) (float64, float64, bool) { return m.border(), m.border(), len(m.Borders) > 0 }
	each := func(m Measured) (float64, float64, bool) { return m.widest(), m.widest(), len(m.Borders) > 0 }
	const what, object, state = "number border", "its border", "that of %s is %s"
	return []bound{
		{figure: p.BorderMin, what: what, object: object, state: state, side: atLeast, of: whole},
		{figure: p.BorderMax, what: what, object: object, state: state, side: atMost, of: whole},
		{figure: p.EachBorderMax, what: "widest border", object: "each border", state: "the widest of %s is %s", side: atMost, of: each},
	}
}

func extents(p *rulebook.Position) []bound {
	narrowest := func(m Measured) (float64, float64, bool) { return m.NarrowestDigit, m.NarrowestDigit, true }
	gap := func(m Measured) (float64, float64, bool) { return m.DigitGap, m.DigitGap, len(m.Text) > 1 }
	below := func(m Measured) (float64, float64, bool) { return belowCollar(m, p.HeightIncludesBorder) }
	out := []bound{
		{figure: p.WidthMin, what: "digit width", object: "every digit", state: "the narrowest of %s is %s wide", side: atLeast, of: narrowest},
		{figure: p.GapExact, what: "gap between digits", object: "the gap between its digits", state: "that of %s is %s", side: exactly, of: gap},
		{figure: p.BelowCollarMax, what: "distance below the collar", object: "its distance below the collar", state: "that of %s is %s", side: atMost, inward: true, of: below},
	}
	for digits, f := range p.BlockMin {
		of := func(m Measured) (float64, float64, bool) { return m.Width, m.Width, len(m.Text) == digits }
		out = append(out, bound{figure: f, what: "number width", object: "it", state: "%s is %s wide", side: atLeast, of: of})
	}
	return out
}

// belowCollar returns the distance of the top as the book counts it: from the
// finished edge, or both ways if the book does not say whether a border is part
// of the number.
func belowCollar(m Measured, includes *rulebook.Figure) (low, high float64, ok bool) {
	reach := m.TopReach
	if math.IsNaN(reach) {
		reach = m.border()
	}
	finished := m.BelowCollar - reach
	switch {
	case includes.Says("yes"):
		return finished, finished, true
	case includes.Says("no"):
		return m.BelowCollar, m.BelowCollar, true
	}
	return finished, m.BelowCollar, true
}

// count holds a whole number, such as how many borders, against its maximum.
func (c *checker) count(f *rulebook.Figure, place, what string, at func(Wearer) []Measured, of func(Measured) int) {
	if f == nil || f.None() {
		return
	}
	most, n, failed := 0, 0, 0
	for _, w := range c.subject.Players {
		for _, m := range at(w) {
			got := of(m)
			n, most = n+1, max(most, got)
			if got <= f.Count {
				continue
			}
			failed++
			c.cited(f, Result{
				Finding: Finding{
					Severity: Violation, Player: w.Player, Place: m.Place, What: what, Measured: fmt.Sprint(got),
					Required: fmt.Sprintf("at most %d", f.Count), By: fmt.Sprint(got - f.Count),
				},
				mend: fmt.Sprintf("take away %d: %s on the %s of %s is %d", got-f.Count, what, m.Place, who, got),
			})
		}
	}
	if n > 0 && failed == 0 {
		c.cited(f, Result{Of: n, Finding: Finding{
			Severity: InOrder, Place: place, What: what, Measured: fmt.Sprint(most), Required: fmt.Sprintf("at most %d", f.Count),
		}})
	}
}

// centred holds numbers against the middle of their place, across. How high
// one sits is measured but not held against anything: it depends on what the
// body calls the visible part, and no book says.
func (c *checker) centred(p *rulebook.Position, place string, at func(Wearer) []Measured) {
	n := 0
	for _, w := range c.subject.Players {
		n += len(at(w))
	}
	if n > 0 && p.Centred.Says("across", "both") {
		c.across(p.Centred, place, at)
	}
	if n > 0 && p.Centred.Says("down", "both") {
		c.cited(p.Centred, Result{
			Of: n, Finding: Finding{Severity: Unknown, Place: place, What: "centring up and down", Measured: c.downWords(at), Required: "centred up and down"},
			mend: "look at the proof: how high a number sits depends on what the body calls the visible part",
		})
	}
}

// downWords says how far the pieces are from the middle between neck seam and
// hem, by the one that is farthest from it.
func (c *checker) downWords(at func(Wearer) []Measured) string {
	farthest := math.NaN()
	for _, w := range c.subject.Players {
		for _, m := range at(w) {
			if math.IsNaN(farthest) || math.Abs(m.DownOffset) > math.Abs(farthest) {
				farthest = m.DownOffset
			}
		}
	}
	const middle = " the middle between neck seam and hem"
	by := length.Plain(math.Abs(farthest), c.subject.Units, length.Up)
	switch {
	case math.IsNaN(farthest):
		return "not measured"
	case math.Abs(farthest) <= centredWithin:
		return "at" + middle
	case farthest < 0:
		return "up to " + by + " over" + middle
	}
	return "up to " + by + " under" + middle
}

func (c *checker) across(f *rulebook.Figure, place string, at func(Wearer) []Measured) {
	const what, required = "centring", "centred across"
	ok, lost, failed := 0, 0, 0
	for _, w := range c.subject.Players {
		for _, m := range at(w) {
			off := math.Abs(m.CentreOffset)
			switch {
			case math.IsNaN(off):
				lost++
			case off <= centredWithin:
				ok++
			default:
				failed++
				by := length.Plain(off, c.subject.Units, length.Up)
				c.cited(f, Result{
					Finding: Finding{Severity: Violation, Player: w.Player, Place: m.Place, What: what, Measured: by + " off the middle", Required: required, By: by},
					mend:    fmt.Sprintf("move it to the middle: the %s of %s is %s off", m.Place, who, by),
				})
			}
		}
	}
	if ok > 0 && lost+failed == 0 {
		c.cited(f, Result{Of: ok, Finding: Finding{Severity: InOrder, Place: place, What: what, Measured: "in the middle", Required: required}})
	}
	if lost > 0 {
		c.cited(f, Result{Of: lost, Finding: Finding{Severity: Unknown, Place: place, What: what, Measured: "not measured", Required: required}})
	}
}

func (c *checker) sameAsShirt(p *rulebook.Position, place string) {
	if !p.MatchesShirt.Yes() {
		return
	}
	n, failed := 0, 0
	for _, w := range c.subject.Players {
		m, ok := w.piece(place)
		if !ok {
			continue
		}
		if n++; m.Text == w.Number {
			continue
		}
		failed++
		c.cited(p.MatchesShirt, Result{
			Finding: Finding{Severity: Violation, Player: w.Player, Place: place, What: "same number as the shirt", Measured: m.Text, Required: w.Number},
			mend:    fmt.Sprintf("put %s on both: the %s of %s says %s", w.Number, place, who, m.Text),
		})
	}
	if n > 0 && failed == 0 {
		c.cited(p.MatchesShirt, Result{Of: n, Finding: Finding{Severity: InOrder, Place: place, What: "same number as the shirt", Measured: "the same", Required: "the same"}})
	}
}

// isGoalkeeper reports the role that some rules make an exception for.
func (w Wearer) isGoalkeeper() bool { return strings.EqualFold(w.Role, "goalkeeper") }
