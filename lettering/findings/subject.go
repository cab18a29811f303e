package findings

import (
	"math"
	"slices"
	"strings"

	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
)

// Subject is an order as it was sized.
type Subject struct {
	Units   length.Unit // of the job
	Asked   []string    // places that the order puts something on
	Players []Wearer    // in the order of the roster
	Notes   []Note      // what reading the order noticed
	Looks   []Look      // letter heights that names share, where they are lower than asked
	Fine    []Fine      // details that are too fine for the method, see Of
	Hits    []Hit       // pieces too near to a seam or another line of their garment, see Of
	// Unmeasured is how many pieces nothing is known of in this respect.
	Unmeasured int
	FineBasis  string // of the method's limits; "" when nothing was measured
}

// Wearer is one player with everything that goes on the garments.
type Wearer struct {
	Player string // how messages call the player
	Name   string // on the back; "" for none
	Number string // as text: 0, 00, 7 and 07 all differ; "" for none
	Role   string // goalkeeper, libero, captain, or ""
	// Unsized is set when the garment's size is not known: nothing can be
	// placed yet, so nothing is missing either.
	Unsized bool
	// Signed is set for a player who is signed already: how the name came out was
	// chosen, and is no news.
	Signed bool
	Pieces []Measured
}

// Kinds of piece.
const (
	KindNumber = "number"
	KindName   = "name" // a player's name
	KindText   = "text" // the team's name and the like; no rule for names is held against it
)

// Measured is one piece as it came out. Lengths are in mm. A length that was
// not measured is NaN, never zero: start from NewMeasured.
type Measured struct {
	Place string // back number
	Kind  string
	Text  string // as it is cut

	Height       float64 // of a number: its shortest digit; of a name: the letter height; without outlines
	TallestDigit float64 // of a number, without outlines
	Asked        float64 // height asked for
	Width        float64 // with outlines
	Limit        float64 // the width there is; NaN without one
	OverBy       float64 // how much wider than the limit; 0 when it fits
	Leaves       float64 // width that the seams leave where convention alone keeps a name narrower; else 0
	FitsAt       float64 // of a number that is over: the height that would fit; NaN when none does
	// Conflict is of a number that is over, or cannot be as the rule wants it; nil
	// for none and where ways out were not looked for.
	Conflict *Conflict
	// Placing is how the piece lies on the garment; nil where it lies as it should.
	Placing *Placing
	Verdict string // full, eased, reduced, over
	// Unmatched is of a name that was added to a signed order: the letter height
	// that the signed names share, where it does not reach it; else 0.
	Unmatched float64
	Alone     float64 // of a name that is lower because names share one height: the height it has by itself; else 0

	StrokeThin, StrokeMain float64 // of a number's bare ink
	NarrowestDigit         float64 // width of the narrowest digit's bare ink
	DigitGap               float64 // ink gap between digits; NaN for one digit

	Borders     []Border // from the inside outwards; empty for none
	BodyColour  string   // "#14284b"; "" when it is not known
	GarmentHex  string   // colour of the garment under the piece
	Face        string   // as the job names it
	BelowCollar float64  // of the top of the bare ink, as drawn, under the neck seam
	TopReach    float64  // how far the outlines stand over that top; NaN: as far as everywhere
	DownOffset  float64  // of its middle under the middle between neck seam and hem
	// HalfFoot is how far its finished foot is under the middle between the high
	// point of shoulder and the hem; negative above it.
	HalfFoot     float64
	CentreOffset float64 // sideways from the middle of its place

	NumberGap float64 // of a name: smallest distance of its finished edge to the number's on the same side; +Inf where there is no number
	Side      string  // of a name: above or below the number; "" where there is no number
	Tilt      float64 // of a name: difference in level of the outer feet of its first and last letter
	// EndsClear is of a name: how far the level on which its end letters stand is
	// clear of the number's finished edge; negative inside the number's height,
	// +Inf where there is no number.
	EndsClear float64
	Shape     string // of a name: straight, radial arch ...
}

// Border is one outline around a piece.
type Border struct {
	Width  float64 // mm
	Colour string  // "#ffffff"
}

// NewMeasured returns a piece of which nothing has been measured yet.
func NewMeasured(place, kind, text string) Measured {
	none := math.NaN()
	return Measured{
		Place: place, Kind: kind, Text: text,
		Height: none, TallestDigit: none, Asked: none, Width: none, Limit: none, FitsAt: none,
		StrokeThin: none, StrokeMain: none, NarrowestDigit: none, DigitGap: none,
		BelowCollar: none, TopReach: none, DownOffset: none, HalfFoot: none, CentreOffset: none, NumberGap: none, Tilt: none, EndsClear: none,
	}
}

// border returns how far the outlines reach beyond the bare ink.
func (m Measured) border() float64 {
	sum := 0.0
	for _, b := range m.Borders {
		sum += b.Width
	}
	return sum
}

// widest returns the widest single outline, 0 for none.
func (m Measured) widest() float64 {
	out := 0.0
	for _, b := range m.Borders {
		out = math.Max(out, b.Width)
	}
	return out
}

// colours returns how many different colours the piece has.
func (m Measured) colours() int {
	all := []string{m.BodyColour}
	for _, b := range m.Borders {
		all = append(all, b.Colour)
	}
	slices.Sort(all)
	return len(slices.Compact(all))
}

// Note is something that reading the order noticed, in neutral form.
type Note struct {
	Severity              Severity
	Player, What, Message string
	Remedy                string
	Kind                  string // as package order calls it, for what a rule book decides
}

// piece returns the wearer's piece at a place.
func (w Wearer) piece(place string) (Measured, bool) {
	for _, m := range w.Pieces {
		if m.Place == place {
			return m, true
		}
	}
	return Measured{}, false
}

// places returns the places of numbers that the book speaks of or the order
// uses, in the order of the books.
func places(r *rulebook.Rules, s Subject) []string {
	var out []string
	for _, place := range rulebook.Places() {
		used := slices.ContainsFunc(s.Players, func(w Wearer) bool {
			m, ok := w.piece(place)
			return ok && m.Kind == KindNumber
		})
		if used || r.Position(place) != nil {
			out = append(out, place)
		}
	}
	return out
}

// notes passes on what the order noticed, and reports it as it is.
func (c *checker) notes() {
	for _, n := range c.subject.Notes {
		if c.decided(n) {
			continue
		}
		c.keep(Result{
			Finding: Finding{Severity: n.Severity, Player: n.Player, What: n.What, Measured: n.Message},
			mend:    n.Remedy,
		})
	}
}

// decided reports a note on which the rule book has the say: whether a number
// may be worn twice, and who needs none.
func (c *checker) decided(n Note) bool {
	if c.rules == nil {
		return false
	}
	switch n.Kind {
	case order.TakenNumber:
		return c.rules.Numbers.Duplicates != nil && !c.rules.Numbers.Duplicates.None()
	case order.NoNumber:
		return slices.ContainsFunc(c.rules.Positions, func(p rulebook.Position) bool { return p.Required.Says("yes") })
	}
	return false
}

// fits reports pieces that do not fit or came out smaller than asked. No rule
// book is needed for that.
func (c *checker) fits() {
	unit := c.subject.Units
	for _, w := range c.subject.Players {
		for _, m := range w.Pieces {
			what := m.Kind
			switch {
			case m.Placing != nil && m.Placing.NoRoom != "":
				// placing reports it
			case m.OverBy > 0 || m.Verdict == "over":
				by := length.Plain(m.OverBy, unit, length.Up)
				c.keep(Result{
					Finding: Finding{
						Severity: Violation, Player: w.Player, Place: m.Place, What: what + " width", By: by,
						Measured: breaking(m.Width, m.Limit, unit, length.Up), Required: "at most " + length.Plain(m.Limit, unit, length.Down),
					},
					mend: mendWidth(m, by, unit),
				})
			case m.Verdict == "reduced" && max(m.Height, m.Alone) < m.Asked && !w.Signed:
				high := max(m.Height, m.Alone)
				got, by := lower(high, m.Asked, unit)
				c.keep(Result{
					Finding: Finding{
						Severity: Advice, Player: w.Player, Place: m.Place, What: what + " height", By: by,
						Measured: got, Required: length.Plain(m.Asked, unit, length.Nearest) + " as asked",
					},
					mend: "look at the " + m.Place + " of " + who + ": it fits only at " + got,
				})
			}
		}
	}
}

// mendWidth says what to do about a piece that is wider than its room.
func mendWidth(m Measured, by string, unit length.Unit) string {
	switch {
	case m.Placing != nil && len(m.Placing.Mends) > 0:
		return "choose for the " + m.Place + " of " + who + ": " + strings.Join(m.Placing.Mends, "; ")
	case m.Conflict != nil:
		return m.Conflict.mend(m, length.Plain(m.Conflict.OverBy, unit, length.Up))
	case m.Kind == KindNumber && m.FitsAt > 0:
		return "make the " + m.Place + " of " + who + " " + length.Plain(m.FitsAt, unit, length.Down) + " high, or use narrower digits"
	case m.Kind == KindNumber:
		return "use narrower digits for " + who + ": " + m.Text + " is wider than the room by " + by
	}
	if m.Leaves >= m.Width {
		return "write limit: " + length.Plain(m.Width, unit, length.Up) + " for the " + m.Place + ", which the seams leave room for (convention keeps to " +
			length.Plain(m.Limit, unit, length.Down) + "), or choose a way out for " + who + ": " + m.Text + " is wider than the room by " + by
	}
	return "choose a way out for " + who + ": " + m.Text + " is wider than the room by " + by
}
