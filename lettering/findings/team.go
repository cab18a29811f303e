package findings

import (
	"math"
	"slices"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// alikeWithin is how far heights that count as one may differ, mm: as near as
// pieces are sized.
const alikeWithin = 0.01

// libero is the role of the player whom volleyball lets stand apart.
const libero = "libero"

// alikeInTeam holds the numbers of the whole team against one height and one
// colour a place. It is one row a place: what is unlike is the set, not a player.
func (c *checker) alikeInTeam() {
	f := c.rules.Numbers.Team
	if !f.Says("yes", "not the libero") {
		return
	}
	for _, place := range drawn {
		low, high, n, colours := math.Inf(1), math.Inf(-1), 0, []string{}
		for _, w := range c.subject.Players {
			m, ok := w.piece(place)
			if !ok || m.Kind != KindNumber || w.Role == libero && f.Says("not the libero") {
				continue
			}
			n++
			low, high = math.Min(low, m.Height), math.Max(high, m.Height)
			if colour := strings.ToLower(m.BodyColour); !slices.Contains(colours, colour) {
				colours = append(colours, colour)
			}
		}
		if n > 0 {
			c.cited(f, c.teamRow(place, n, low, high, colours))
		}
	}
}

func (c *checker) teamRow(place string, n int, low, high float64, colours []string) Result {
	r := Result{Of: n, Finding: Finding{
		Severity: InOrder, Place: place, What: "alike in the team", Measured: "one height and colour", Required: "one height and colour for the team",
	}}
	unit := c.subject.Units
	switch {
	case math.IsNaN(low) || math.IsNaN(high):
		r.Severity, r.Measured, r.mend = Unknown, "not measured", "measure the "+place+"s of the team by hand"
	case high-low > alikeWithin:
		r.Severity = Violation
		r.Measured = breaking(low, high, unit, length.Down) + " to " + length.Plain(high, unit, length.Up) + " high"
		r.By = length.Plain(high-low, unit, length.Up)
		r.mend = "give every " + place + " one height, the one that the smallest garment has room for, or narrower digits"
	case len(colours) > 1:
		r.Severity, r.Measured, r.mend = Violation, strings.Join(colours, ", "), "give every "+place+" one colour"
	}
	return r
}

// libero says what to look at where the libero's jersey must be unlike the
// team's: an order has one garment colour, so it cannot be seen here.
func (c *checker) libero() {
	f := c.rules.Contrast.Libero
	if !f.Yes() {
		return
	}
	for _, w := range c.subject.Players {
		if w.Role == libero {
			c.cited(f, Result{
				Finding: Finding{Severity: Unknown, Player: w.Player, What: "jersey of the libero", Measured: "the order has one garment colour", Required: "a jersey unlike the team's"},
				mend:    "look at the jersey of " + who + ": where its colour is another, order it apart, so that its number is held against that colour",
			})
		}
	}
}

// upperHalf holds numbers against the upper half of their side. No book says
// where the half begins: what lies above the middle from shoulder to hem is in
// it by any reading, and what has its own middle under that from neck seam to hem
// is not. Between the two, and where a book prints no share at all, people judge.
func (c *checker) upperHalf(f *rulebook.Figure, place string, at func(Wearer) []Measured) {
	if !f.Says("yes", "upper part") {
		return
	}
	required := "on the upper half"
	if f.Says("upper part") {
		required = "on the upper part, no share printed"
	}
	const what = "upper half"
	ok, lost, open, failed := 0, 0, 0, 0
	for _, w := range c.subject.Players {
		for _, m := range at(w) {
			switch {
			case math.IsNaN(m.HalfFoot) || math.IsNaN(m.DownOffset):
				lost++
			case nanometres(m.HalfFoot) <= 0:
				ok++
			case nanometres(m.DownOffset) > 0 && f.Says("yes"):
				failed++
				by := length.Plain(m.DownOffset, c.subject.Units, length.Up)
				c.cited(f, Result{
					Finding: Finding{Severity: Violation, Player: w.Player, Place: place, What: what, Measured: "its middle is " + by + " under that between neck seam and hem", Required: required, By: by},
					mend:    "move the " + place + " of " + who + " up by " + by,
				})
			default:
				open++
			}
		}
	}
	if ok > 0 && lost+open+failed == 0 {
		c.cited(f, Result{Of: ok, Finding: Finding{Severity: InOrder, Place: place, What: what, Measured: "above the middle of the shirt", Required: required}})
	}
	for _, u := range []struct {
		n        int
		measured string
	}{{open, "reaches below the middle from shoulder to hem"}, {lost, "not measured"}} {
		if u.n > 0 {
			c.cited(f, Result{
				Of: u.n, Finding: Finding{Severity: Unknown, Place: place, What: what, Measured: u.measured, Required: required},
				mend: "look at the proof: the book does not say where the half begins or whether all of the number must be in it",
			})
		}
	}
}
