package findings

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
)

// Placing is how a piece lies on its garment where that is not as it should be.
type Placing struct {
	Size   string // of the garment: youth XS
	NoRoom string // why nothing of the panel is left for the piece; "" where something is
	// Tight is why the arch does not carry the name, and Carries what would; both ""
	// for an arch that does. The piece has no room then.
	Tight, Carries string
	Mends          []string // what would give it room, in words; the last leaves it off
	Stack          []string // what the stack of name and number gave up, in the order taken
	Short          float64  // what the stack lacks at its foot even so, mm
	TooNear        float64  // what lacks to the clearance under the name, mm
	// Parted and Straddle are of a name at a full placket: its halves, empty for
	// one that is left whole, and the letters that lie on the opening, or would.
	Parted   [2]string
	Straddle []string
}

// placingOf returns how a piece lies, nil where there is nothing to say.
func placingOf(p sizes.Piece, size string, unit length.Unit) *Placing {
	out := Placing{Size: size, Short: p.Short, TooNear: p.TooNear}
	if p.NoRoom {
		out.NoRoom = strings.TrimPrefix(p.Room.Why, "seam: ")
	}
	if e := p.TooTight; e != nil {
		out.Tight = "radius " + length.Plain(e.Radius, unit, length.Down) + ", too tight for " + e.Text
		out.Carries = "a radius of at least " + length.Plain(e.Smallest, unit, length.Up)
		if e.Rise > 0 {
			out.Carries += ", which is a rise of at most " + length.Plain(e.Rise, unit, length.Down)
		}
	}
	if p.Number != nil { // the number tells it for the whole stack
		out.Stack = p.Eased
	}
	for _, r := range p.Remedies {
		out.Mends = append(out.Mends, r.Words(func(mm float64) string { return length.Plain(mm, unit, length.Nearest) }))
	}
	if s := p.Split; s != nil {
		if out.Straddle = s.Straddle; !s.Whole() {
			out.Parted = [2]string{s.Left, s.Right}
		}
	}
	if out.NoRoom == "" && len(out.Stack) == 0 && out.Short == 0 && out.TooNear == 0 && len(out.Straddle) == 0 && len(out.Mends) == 0 {
		return nil
	}
	return &out
}

// placing reports pieces without room, stacks that gave something up or are too
// tall, and letters on the opening of a placket. No rule book is needed for that.
func (c *checker) placing() {
	for _, w := range c.subject.Players {
		for _, m := range w.Pieces {
			if m.Placing == nil {
				continue
			}
			for _, find := range []func(Wearer, Measured){c.noRoom, c.stack, c.tooNear, c.straddle} {
				find(w, m)
			}
		}
	}
}

func (c *checker) noRoom(w Wearer, m Measured) {
	p := m.Placing
	if p.NoRoom == "" {
		return
	}
	mends := p.Mends
	if len(mends) == 0 {
		mends = []string{"another size", "another place", "leave it off"}
	}
	if p.Tight != "" {
		c.keep(Result{
			Finding: Finding{Severity: Violation, Player: w.Player, Place: m.Place, What: "arch", Measured: p.Tight, Required: p.Carries},
			mend:    "choose for the " + m.Place + " of " + who + ": " + strings.Join(mends, "; "),
		})
		return
	}
	c.keep(Result{
		Finding: Finding{
			Severity: Violation, Player: w.Player, Place: m.Place, What: m.Kind + " room",
			Measured: "none on size " + p.Size + ": " + p.NoRoom,
			Required: "room for " + length.Plain(m.Height, c.subject.Units, length.Nearest) + " high",
		},
		mend: "choose for the " + m.Place + " of " + who + ": " + strings.Join(mends, "; "),
	})
}

func (c *checker) stack(w Wearer, m Measured) {
	p, unit := m.Placing, c.subject.Units
	switch {
	case p.Short > 0:
		by := length.Plain(p.Short, unit, length.Up)
		c.keep(Result{
			Finding: Finding{
				Severity: Violation, Player: w.Player, Place: m.Place, What: "stack", By: by,
				Measured: "lacks " + by + " on size " + p.Size + " with gap, letters and digits at their smallest", Required: "inside the panel",
			},
			mend: "make name or number of " + who + " lower than their floors, or leave one of them off",
		})
	case len(p.Stack) > 0:
		c.keep(Result{
			Finding: Finding{
				Severity: Advice, Player: w.Player, Place: m.Place, What: "stack",
				Measured: strings.Join(p.Stack, ", then "), Required: "as asked; size " + p.Size + " has no room for that",
			},
			mend: "look at name and number of " + who + ", or ask for lower ones on size " + p.Size,
		})
	}
}

func (c *checker) tooNear(w Wearer, m Measured) {
	if m.Placing.TooNear <= 0 {
		return
	}
	by := length.Plain(m.Placing.TooNear, c.subject.Units, length.Up)
	c.keep(Result{
		Finding: Finding{
			Severity: Advice, Player: w.Player, Place: m.Place, What: "stack", By: by,
			Measured: "number " + by + " too near the name", Required: "at least " + length.Plain(sizes.Clearance, c.subject.Units, length.Nearest) + " apart",
		},
		mend: "move the " + m.Place + " of " + who + " down by " + by + " with below:, or leave below: out",
	})
}

func (c *checker) straddle(w Wearer, m Measured) {
	p := m.Placing
	if len(p.Straddle) == 0 {
		return
	}
	r := Result{
		Finding: Finding{
			Severity: Violation, Player: w.Player, Place: m.Place, What: "placket",
			Measured: strings.Join(p.Straddle, ", ") + " of " + m.Text + " on the opening or its clearance", Required: "clear of the placket",
		},
		mend: "part the " + m.Place + " of " + who + " at the opening: straight or arched, in one line and without a tail or split: no",
	}
	if p.Parted[1] != "" {
		r.Severity, r.Measured = Advice, "parted as "+p.Parted[0]+" and "+p.Parted[1]+"; whole, "+strings.Join(p.Straddle, ", ")+" would lie on the opening or its clearance"
		r.mend = "look at the halves on the " + m.Place + " of " + who + elsewhere(p.Parted)
	}
	c.keep(r)
}

// elsewhere says how to part a name at a place other than the present one;
// empty for two letters, which have no other.
func elsewhere(halves [2]string) string {
	left, right := letters(halves[0]), letters(halves[1])
	switch {
	case right > 1:
		left++
	case left > 1:
		left--
	default:
		return ""
	}
	return fmt.Sprintf("; split: at %d parts it elsewhere", left)
}

func letters(s string) int { return utf8.RuneCountInString(strings.Join(strings.Fields(s), "")) }
