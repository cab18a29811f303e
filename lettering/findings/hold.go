package findings

import (
	"fmt"
	"math"

	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// side says how a figure bounds what is measured.
type side uint8

const (
	atLeast side = iota
	atMost
	exactly
	about
)

func (s side) rounding() length.Rounding {
	return [...]length.Rounding{length.Down, length.Up, length.Nearest, length.Nearest}[s]
}

func (s side) required(f *rulebook.Figure) string {
	return [...]string{"at least ", "at most ", "exactly ", "about "}[s] + f.Text()
}

// bound is one length of the book and how a piece is held against it.
type bound struct {
	figure *rulebook.Figure
	place  string
	what   string // number height
	object string // what to change: it, its strokes
	state  string // how it is now: "%s is %s high", of whose piece and what was measured
	side   side
	basis  string // what was measured where that is not plain; "" where it is
	// inward marks a distance that a border makes smaller.
	inward bool
	// of returns the measured length in mm; two different ones where the book
	// does not say which of the two it means (with or without the border).
	// NaN: not measured. ok is false for pieces the figure does not concern.
	of func(Measured) (low, high float64, ok bool)
}

// nanometres makes lengths comparable with a rule's exact length.
func nanometres(mm float64) int64 { return int64(math.Round(mm * 1e6)) }

// verdict of holding one piece against one limit.
type verdict uint8

const (
	kept verdict = iota
	broken
	open // depends on what the book does not say
	unmeasured
)

func (l bound) judge(low, high float64) verdict {
	if math.IsNaN(low) || math.IsNaN(high) {
		return unmeasured
	}
	lo, hi, want := nanometres(low), nanometres(high), l.figure.Length.Nanometres()
	switch l.side {
	case atLeast:
		return between(lo >= want, hi < want)
	case atMost:
		return between(hi <= want, lo > want)
	case about:
		// within 10 %, the tolerance that "approximately" is given here
		return between(10*max(lo-want, want-lo) <= want, true)
	}
	all, some := false, false
	for _, want := range l.figure.Lengths {
		loIs, hiIs := lo == want.Nanometres(), hi == want.Nanometres()
		all, some = all || loIs && hiIs, some || loIs || hiIs
	}
	return between(all, !some)
}

func between(isKept, isBroken bool) verdict {
	switch {
	case isKept:
		return kept
	case isBroken:
		return broken
	}
	return open
}

// tally is how a limit went for all pieces.
type tally struct {
	kept, open, unmeasured int
	worst                  float64 // the kept piece nearest to breaking the limit
	low, high              float64 // of the first open piece
}

// hold holds every piece that a limit concerns against it: one result for
// each that breaks it, one for all that keep it, one for all that cannot be
// judged.
func (c *checker) hold(l bound, pieces func(Wearer) []Measured) {
	if l.figure == nil || l.figure.None() {
		return
	}
	t, failed := tally{worst: math.NaN()}, 0
	for _, w := range c.subject.Players {
		for _, m := range pieces(w) {
			low, high, ok := l.of(m)
			if !ok {
				continue
			}
			switch l.judge(low, high) {
			case kept:
				t.keep(l, low, high)
			case broken:
				failed++
				c.broke(l, w, m, low, high)
			case open:
				if t.open++; t.open == 1 {
					t.low, t.high = low, high
				}
			case unmeasured:
				t.unmeasured++
			}
		}
	}
	c.report(l, t, failed)
}

func (t *tally) keep(l bound, low, high float64) {
	t.kept++
	value := low
	if l.side == atMost {
		value = high
	}
	want := l.figure.Length.MM()
	nearer := map[side]bool{
		atLeast: value < t.worst, atMost: value > t.worst,
		about: math.Abs(value-want) > math.Abs(t.worst-want),
	}[l.side]
	if t.kept == 1 || nearer {
		t.worst = value
	}
}

func (c *checker) broke(l bound, w Wearer, m Measured, low, high float64) {
	value := low
	if l.side == atLeast {
		value = high
	}
	nearest := nearestOf(l.figure, value)
	measured, required := c.measured(value, nearest, l.side.rounding())+l.basis, l.side.required(l.figure)
	c.cited(l.figure, Result{
		Finding: Finding{
			Severity: l.severity(), Player: w.Player, Place: m.Place, What: l.what, Measured: measured, Required: required,
			By: length.Plain(math.Abs(value-nearest.MM()), c.subject.Units, length.Up),
		},
		mend: fmt.Sprintf("make %s %s: "+l.state, l.object, required, "the "+m.Place+" of "+who, measured),
	})
}

func (l bound) severity() Severity {
	if l.side == about {
		return Advice
	}
	return Violation
}

func nearestOf(f *rulebook.Figure, mm float64) length.Length {
	best := f.Length
	for _, l := range f.Lengths {
		if math.Abs(l.MM()-mm) < math.Abs(best.MM()-mm) {
			best = l
		}
	}
	return best
}

func (c *checker) report(l bound, t tally, failed int) {
	required := l.side.required(l.figure)
	if t.kept > 0 && failed == 0 && t.open == 0 && t.unmeasured == 0 {
		c.cited(l.figure, Result{Of: t.kept, Finding: Finding{
			Severity: InOrder, Place: l.place, What: l.what, Required: required,
			Measured: c.kept(t.worst, l.figure, l.side.rounding()) + l.basis,
		}})
	}
	if t.open > 0 {
		unit := c.subject.Units
		bare, whole := t.low, t.high
		if l.inward {
			bare, whole = whole, bare
		}
		c.cited(l.figure, Result{Of: t.open, Finding: Finding{
			Severity: Unknown, Place: l.place, What: l.what, Required: required,
			Measured: fmt.Sprintf("%s without the border, %s with it", length.Plain(bare, unit, l.side.rounding()), length.Plain(whole, unit, l.side.rounding())),
		}, mend: fmt.Sprintf("ask whether the border counts, or make %s %s either way (%s)", l.object, required, pieces(t.open))})
	}
	if t.unmeasured > 0 {
		c.cited(l.figure, Result{Of: t.unmeasured, Finding: Finding{
			Severity: Unknown, Place: l.place, What: l.what, Required: required, Measured: "not measurable",
		}, mend: fmt.Sprintf("measure %s by hand on %s", l.what, pieces(t.unmeasured))})
	}
}

func pieces(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}

// kept prints a length that keeps its limit.
func (c *checker) kept(mm float64, f *rulebook.Figure, r length.Rounding) string {
	text := length.Plain(mm, c.subject.Units, r)
	if other := f.Length.Unit(); (other == length.Inch) != (c.subject.Units == length.Inch) {
		text += " (" + length.Plain(mm, other, r) + ")"
	}
	return text
}

// measured prints a length that misses its limit, in the unit of the job and,
// where the rule's is of the other system, in that too.
func (c *checker) measured(mm float64, limit length.Length, r length.Rounding) string {
	text := breaking(mm, limit.MM(), c.subject.Units, r)
	if other := limit.Unit(); (other == length.Inch) != (c.subject.Units == length.Inch) {
		text += " (" + breaking(mm, limit.MM(), other, r) + ")"
	}
	return text
}

// breaking prints a length that misses a limit so that it never looks equal
// to it: with three decimals if rounding would hide the fault, in nanometres
// of a millimetre if even those would.
func breaking(mm, limit float64, unit length.Unit, r length.Rounding) string {
	text := length.Plain(mm, unit, r)
	if text != length.Plain(limit, unit, length.Nearest) {
		return text
	}
	if text = length.Exact(mm, unit); text != length.Exact(limit, unit) {
		return text
	}
	return fmt.Sprintf("%.6f mm", mm)
}

// lower says how high letters came out that were asked for higher, rounded
// down as in every list of sizes, and by how much they fall short.
func lower(high, asked float64, unit length.Unit) (got, by string) {
	return breaking(high, asked, unit, length.Down), length.Plain(asked-high, unit, length.Up)
}
