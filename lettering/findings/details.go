package findings

import (
	"fmt"
	"math"

	"yokeline/lettering/length"
	"yokeline/lettering/makeable"
)

// details reports what is finer than the method holds, one row for a place and
// a kind of detail. It is advice: the supplier's data sheet and a test piece
// decide.
func (c *checker) details() {
	basis := c.subject.FineBasis
	for _, f := range c.subject.Fine {
		// Rounded so that a figure never looks like the one it misses.
		measured := fmt.Sprintf("%.2f mm", math.Floor(f.Measured*100+1e-9)/100)
		if f.Layer != "" {
			measured += " in " + f.Layer
		}
		measured += " at " + f.Where
		switch {
		case f.Pieces == 2:
			measured += "; one more piece falls short"
		case f.Pieces > 2:
			measured += fmt.Sprintf("; %d more pieces fall short", f.Pieces-1)
		}
		c.keep(Result{
			Finding: Finding{
				Severity: Advice, Place: f.Place, What: detailWords(f.What), Measured: measured,
				Required: fmt.Sprintf("at least %g mm", f.Required), By: fmt.Sprintf("%.2f mm", math.Ceil((f.Required-f.Measured)*100-1e-9)/100), Source: basis,
			},
			Bench: true, Of: f.Pieces, mend: mendDetail(f),
		})
	}
	if basis != "" && len(c.subject.Fine) == 0 && c.subject.Unmeasured == 0 {
		c.keep(Result{Bench: true, Finding: Finding{
			Severity: InOrder, What: "finest details", Measured: "all larger, on every piece that fits", Required: "what the method holds", Source: basis,
		}})
	}
	if c.subject.Unmeasured > 0 {
		c.keep(Result{
			Bench: true,
			Finding: Finding{
				Severity: Unknown, What: "finest details", Measured: inPieces(c.subject.Unmeasured) + " not measured",
				Required: "what the method holds", Source: basis,
			},
			mend: "measured were those with the closest and lowest letters; check other players in an order of their own",
		})
	}
}

func inPieces(n int) string {
	if n == 1 {
		return "1 piece was"
	}
	return fmt.Sprintf("%d pieces were", n)
}

func detailWords(w makeable.What) string {
	switch w {
	case makeable.Stroke:
		return "thinnest stroke"
	case makeable.Gap:
		return "smallest gap"
	case makeable.Counter:
		return "smallest counter"
	}
	return w.String()
}

// mendDetail says what the shop can do about a detail, the test piece first
// where it may turn out well.
func mendDetail(f Fine) string {
	switch f.What {
	case makeable.Stroke:
		if f.Layer != "" {
			return fmt.Sprintf("where outlines only just meet they leave a thin bridge: cut %s as a test first, or make the outline wider or narrower", f.Where)
		}
		return fmt.Sprintf("cut %s as a test first, or give the %s bolder or larger letters (wght, or embolden)", f.Where, f.Place)
	case makeable.Gap:
		return fmt.Sprintf("what lies in the gap has to be weeded out: cut %s as a test first, or set the letters of the %s wider apart", f.Where, f.Place)
	case makeable.ClosedCounter:
		return fmt.Sprintf("the outline fills the hole at %s: make it narrower or the %s larger, or let the coach see it closed", f.Where, f.Place)
	case makeable.LetterHeight:
		return fmt.Sprintf("make the %s at least %g mm high, or choose a method that holds lower letters", f.Place, f.Required)
	}
	if f.Layer != "" {
		return fmt.Sprintf("where outlines nearly meet they leave a slit: weed %s as a test first, or make the outline wider or narrower", f.Where)
	}
	return fmt.Sprintf("weed %s as a test first, or make the %s larger", f.Where, f.Place)
}

// Look is one letter height that back names share and that is lower than
// asked.
type Look struct {
	Who     string  // the team, or the size
	Player  string  // whose name sets it
	Asked   float64 // mm
	Height  float64 // mm
	Without float64 // mm, that the others would share without that player
}

// looks says whose name keeps all the others low.
func (c *checker) looks() {
	unit := c.subject.Units
	for _, l := range c.subject.Looks {
		got, by := lower(l.Height, l.Asked, unit)
		without := length.Plain(l.Without, unit, length.Down)
		more := "without that name the others would be " + without + " high"
		measured := got + ", set by this name; without it " + without
		if without == length.Plain(l.Height, unit, length.Down) {
			more, measured = "other names come out as low", got+", set by this name; no higher without it"
		}
		c.keep(Result{
			Finding: Finding{
				Severity: Advice, Player: l.Player, Place: "back name", What: "letters of " + l.Who,
				Measured: measured, Required: length.Plain(l.Asked, unit, length.Nearest) + " as asked", By: by,
			},
			mend: "the name of " + who + " sets the height for " + l.Who + ": " + more + "; shorten that name, or size names by themselves (fit: same: none)",
		})
	}
}
