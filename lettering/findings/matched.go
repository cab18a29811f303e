package findings

import "yokeline/lettering/length"

// matches reports names that were added to a signed order and do not reach the
// letter height that the signed names share: they would stand out beside the
// others. The coach chooses among their ways out.
func (c *checker) matches() {
	unit := c.subject.Units
	for _, w := range c.subject.Players {
		for _, m := range w.Pieces {
			if m.Unmatched == 0 || m.Verdict == "over" { // an over name is told as one
				continue
			}
			c.keep(Result{
				Finding: Finding{
					Severity: Advice, Player: w.Player, Place: m.Place, What: "letters beside the signed ones",
					Measured: breaking(m.Height, m.Unmatched, unit, length.Down), Required: length.Plain(m.Unmatched, unit, length.Nearest) + " as signed",
					By: length.Plain(m.Unmatched-m.Height, unit, length.Up),
				},
				mend: "the name of " + who + " comes out lower than the names that are signed: let the coach choose among its ways out on the proof",
			})
		}
	}
}
