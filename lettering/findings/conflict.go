package findings

import (
	"fmt"
	"math"

	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
)

// Conflict is a number whose face, rule and room do not go together, at a
// height that the rule allows. Lengths are in mm.
type Conflict struct {
	Face          string
	Height, Width float64
	Limit         float64
	OverBy        float64 // how much wider than the limit; 0 when it is within
	StrokeShort   float64 // what the thinnest stroke lacks to the rule; 0 for nothing, NaN when not measurable
	Thicker       bool    // thicker digits are all it takes
	Ways          string  // what would mend it, each tried: A, B, or C; "" for nothing we have
}

func conflictOf(p sizes.Piece, unit length.Unit) *Conflict {
	c := p.Conflict
	if c == nil {
		return nil
	}
	return &Conflict{
		Face: c.Number.FaceID, Height: c.Number.Height, Width: c.Number.InkWidth, Limit: c.Number.Limit,
		OverBy: c.OverBy, StrokeShort: c.StrokeShort, Thicker: c.Simple(), Ways: sizes.NumberWays(c.WaysOut, unit),
	}
}

// mend says what to do about the number of a player.
func (k *Conflict) mend(m Measured, by string) string {
	if k.Ways == "" {
		return fmt.Sprintf("measure the garment of %s: %s would need %s more room, and none of our faces, gaps and sizes helps", who, m.Text, by)
	}
	return fmt.Sprintf("the %s of %s: %s", m.Place, who, k.Ways)
}

// conflicts reports numbers that are within their room as they were asked, but
// not with the height or the strokes that the book demands. Those that are over
// as asked are reported by their width.
func (c *checker) conflicts(place string) {
	p := c.rules.Position(place)
	if p == nil {
		return
	}
	for _, w := range c.subject.Players {
		m, ok := w.piece(place)
		if !ok || m.Conflict == nil || m.Conflict.Thicker || m.OverBy > 0 || m.Verdict == "over" {
			continue
		}
		if m.Conflict.OverBy > 0 {
			c.tooWideByRule(p, w, m)
		} else if m.Conflict.StrokeShort > 0 {
			c.tooThinByRule(p, w, m)
		}
	}
}

const faceRuleRoom = "face, rule and room"

// tooWideByRule is about a number that is too wide at the height demanded.
func (c *checker) tooWideByRule(p *rulebook.Position, w Wearer, m Measured) {
	k, unit := m.Conflict, c.subject.Units
	figure := p.HeightMin
	if p.HeightExact != nil && !p.HeightExact.None() {
		figure = p.HeightExact
	}
	if figure == nil {
		return
	}
	by := length.Plain(k.OverBy, unit, length.Up)
	c.cited(figure, Result{
		Finding: Finding{
			Severity: Violation, Player: w.Player, Place: m.Place, What: faceRuleRoom, By: by,
			Measured: fmt.Sprintf("%s in %s is %s wide at %s high", m.Text, k.Face, breaking(k.Width, k.Limit, unit, length.Up), length.Plain(k.Height, unit, length.Nearest)),
			Required: figure.Text() + " high, at most " + length.Plain(k.Limit, unit, length.Down) + " wide",
		},
		mend: k.mend(m, by),
	})
}

// tooThinByRule is about a number whose face cannot be made as heavy as
// demanded within the room.
func (c *checker) tooThinByRule(p *rulebook.Position, w Wearer, m Measured) {
	k, unit := m.Conflict, c.subject.Units
	if p.StrokeMin == nil || math.IsNaN(k.StrokeShort) {
		return
	}
	by := length.Plain(k.StrokeShort, unit, length.Up)
	mend := k.mend(m, "")
	if k.Ways == "" {
		mend = fmt.Sprintf("choose a heavier face for %s: none of ours has strokes of %s within the room", who, p.StrokeMin.Text())
	}
	required := "strokes of at least " + p.StrokeMin.Text()
	if k.Limit > 0 {
		required += ", at most " + length.Plain(k.Limit, unit, length.Down) + " wide"
	}
	c.cited(p.StrokeMin, Result{
		Finding: Finding{
			Severity: Violation, Player: w.Player, Place: m.Place, What: faceRuleRoom, By: by,
			Measured: fmt.Sprintf("%s in %s lacks %s of stroke", m.Text, k.Face, by), Required: required,
		},
		mend: mend,
	})
}
