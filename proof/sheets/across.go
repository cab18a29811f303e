package sheets

import (
	"cmp"
	"fmt"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/sizes"
	"yokeline/proof/parts"
)

const acrossTitle = "Across the sizes"

// across is what the pages of the sizes share.
type across struct {
	counts  []sizeCount    // the sizes of the order, small to large
	wearers []sizes.Player // one a size
	same    bool           // the wearers are one player on every size
	shown   []int          // the sizes that are drawn, small to large
	common  garment.Size
	scale   float64
	tables  map[garment.Side]acrossTable
	sides   []garment.Side
}

// The page of the sizes, mm.
const (
	acrossDatum   = 12.0 // content top to the high point of shoulder
	acrossGap     = 8.0  // beside a shirt
	acrossBeside  = 16.0 // for the tape
	acrossSize    = 5.0  // from the longest hem to the name of the size
	acrossVerdict = 9.4  // to the verdict
	acrossRule    = 12.9 // to the rule over the table
)

// planSizes plans the pages that show one player's art on the smallest, the
// middle and the largest size; an order in one size has none. The front has a
// page of its own, at the same scale, when something stands on it.
func (d *document) planSizes() ([]leaf, error) {
	counts := d.sizeCounts()
	if len(counts) < 2 {
		return nil, nil
	}
	a := &across{counts: counts}
	a.common, _ = d.commonest()
	a.wearers, a.same = d.onEverySize(counts)
	a.shown = a.choose()
	a.sides = a.decorated()
	a.tables = map[garment.Side]acrossTable{}
	for i, side := range a.sides {
		a.tables[side] = d.acrossTable(a, side, i == len(a.sides)-1)
	}
	a.scale = a.chooseScale(parts.NewGrid(d.in.Paper.sheet().Landscape()))
	var out []leaf
	for i, side := range a.sides {
		l := leaf{section: sizesSection, sheet: d.in.Paper.sheet().Landscape(), title: pageTitle(acrossTitle, i, len(a.sides))}
		l.sentence = d.acrossSentence(a, i)
		l.draw = func(f *frame) error { return f.drawAcross(a, side) }
		out = append(out, l)
	}
	return out, nil
}

// choose returns the smallest, the middle and the largest size by the chest. Of
// two in the middle it takes the commonest.
func (a *across) choose() []int {
	all := make([]int, len(a.counts))
	for i := range all {
		all[i] = i
	}
	girth := func(i int) float64 {
		m := a.wearers[i].Garment.Measures()
		return max(m.ChestHalf, m.HipHalf)
	}
	slices.SortStableFunc(all, func(i, k int) int { return cmp.Compare(girth(i), girth(k)) })
	n := len(all)
	if n == 2 {
		return all
	}
	middle := all[n/2]
	if lower := all[(n-1)/2]; a.counts[lower].size == a.common {
		middle = lower
	}
	return []int{all[0], middle, all[n-1]}
}

// decorated returns the sides that carry something, the back first; the back
// when neither does.
func (a *across) decorated() []garment.Side {
	var out []garment.Side
	for _, side := range [...]garment.Side{garment.Back, garment.Front} {
		if slices.ContainsFunc(a.wearers, func(p sizes.Player) bool {
			return slices.ContainsFunc(p.Pieces, func(piece sizes.Piece) bool { return piece.Side == side })
		}) {
			out = append(out, side)
		}
	}
	if len(out) == 0 {
		out = append(out, garment.Back)
	}
	return out
}

// chooseScale takes the largest scale at which the shirts stand beside one
// another and leave room for the tables.
func (a *across) chooseScale(g parts.Grid) float64 {
	wide, long, above := 0.0, 0.0, 0.0
	for _, i := range a.shown {
		s := lookSizeOf(a.wearers[i].Garment)
		wide, long, above = wide+s.width, max(long, s.length), max(above, s.above)
	}
	table := 0.0
	for _, side := range a.sides {
		table = max(table, a.tables[side].high())
	}
	across, down := g.Live()-acrossGap*float64(len(a.shown))-acrossBeside, g.Bottom-g.Top-acrossDatum-acrossRule-table-footClear
	all := scales()
	for _, n := range all {
		if wide/n <= across && (long+above)/n <= down {
			return 1 / n
		}
	}
	return 1 / all[len(all)-1]
}

// acrossSentence says what the page shows.
func (d *document) acrossSentence(a *across, page int) string {
	noun := d.noun()
	which := "the smallest, the middle and the largest " + noun
	if len(a.shown) == 2 {
		which = "both sizes"
	}
	switch {
	case page > 0:
		return "The front of the same " + inWords(len(a.shown), noun, noun+"s") + ", at the same scale. What changes from size to size is printed in the table."
	case a.same:
		return "The same " + a.subject() + " on " + which + ", at one scale. What changes from size to size is printed in the table."
	}
	return "One of you on " + which + ", at one scale. What changes from size to size is printed in the table."
}

// subject names what is alike on all the shirts.
func (a *across) subject() string {
	p := a.wearers[0]
	_, name := p.Piece(garment.BackName)
	switch {
	case name && p.Number != "":
		return "name and number"
	case name:
		return "name"
	case p.Number != "":
		return "number"
	}
	return "lettering"
}

// roleOf says what a drawn size is among the others.
func (a *across) roleOf(k int) string {
	role := [...]string{"smallest", "middle", "largest"}[k]
	if len(a.shown) == 2 && k == 1 {
		role = "largest"
	}
	if a.counts[a.shown[k]].size == a.common {
		role += ", and the commonest"
	}
	return role
}

// acrossVerdictOf says how the highest name on a side came out.
func (d *document) acrossVerdictOf(p sizes.Player, side garment.Side) (verdictText, bool) {
	for _, piece := range p.Pieces {
		if piece.Side != side || piece.Name == nil {
			continue
		}
		if piece.Name.Verdict == fit.Over {
			return verdictText{parts.Over, d.overWords(piece), true}, true
		}
		return verdictText{markOf(piece.Name.Verdict), d.heightOf(piece) + " high", true}, true
	}
	return verdictText{}, false
}

// acrossNote is the note in the foot.
func (f *frame) acrossNote(a *across) string {
	about := "½\u00a0in"
	if f.in.Paper == A4 {
		about = "1\u00a0cm"
	}
	note := fmt.Sprintf("Measured flat. A finished %s may differ by about %s: measure one before cutting close to a seam.", f.noun(), about)
	if a.same {
		return note
	}
	return "Each size shows one of its own players. " + note
}
