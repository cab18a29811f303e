package nest

import (
	"cmp"
	"math"
	"slices"
)

// boxes packs by boxes: the largest free rectangles of each sheet are kept, and
// each box in turn takes the one that suits it best by a rule. Several orders by
// several rules are tried, the best packing is bettered and kept; plain shelves are
// among them, so it is never worse than those.
func (r room) boxes(parts []part, effort int) plan {
	best := r.shelves(parts, sorted(parts, part.height))
	first, by := best.order(), fitRule(highest)
	for _, key := range sortKeys() {
		order := sorted(parts, key)
		for _, rule := range []fitRule{highest, snuggest, smallest} {
			if p := r.freeRectangles(parts, order, rule); p.cheaper(best) {
				best, first, by = p, order, rule
			}
		}
	}
	tries := min(5*effort, boxTries/len(parts))
	return press(best, first, func(order []int) (plan, bool) {
		if tries == 0 {
			return plan{}, false
		}
		tries--
		return r.freeRectangles(parts, order, by), true
	})
}

// boxTries is how many boxes are placed at the most to better the best packing: so
// many tries times pieces.
const boxTries = 10_000

// sortKeys are the orders that packings try: large pieces first, by what makes
// them awkward.
func sortKeys() []func(part) float64 {
	return []func(part) float64{
		part.height,
		part.width,
		func(p part) float64 { return p.width() * p.height() },
		func(p part) float64 { return math.Max(p.width(), p.height()) },
		func(p part) float64 { return p.width() + p.height() },
	}
}

// free is a free rectangle, y downward.
type free struct{ x0, y0, x1, y1 float64 }

func (f free) overlaps(g free) bool {
	return f.x0 < g.x1-slack && g.x0 < f.x1-slack && f.y0 < g.y1-slack && g.y0 < f.y1-slack
}

func (f free) holds(g free) bool { return f.x0 <= g.x0 && f.y0 <= g.y0 && f.x1 >= g.x1 && f.y1 >= g.y1 }

// fitRule scores a box of w by h at the upper left corner of f; less is better,
// the first figure decides.
type fitRule func(f free, w, h float64) [2]float64

// highest keeps the lower edge of the box high on the sheet.
func highest(f free, w, h float64) [2]float64 { return [2]float64{f.y0 + h, f.y0} }

// snuggest leaves the least along the tighter side.
func snuggest(f free, w, h float64) [2]float64 {
	dx, dy := f.x1-f.x0-w, f.y1-f.y0-h
	return [2]float64{math.Min(dx, dy), f.y0 + h}
}

// smallest leaves the least area.
func smallest(f free, w, h float64) [2]float64 {
	return [2]float64{(f.x1-f.x0)*(f.y1-f.y0) - w*h, f.y0 + h}
}

// freeRectangles packs in the order given. Each box carries a gap to its right
// and below, so the room is a gap wider and longer.
func (r room) freeRectangles(parts []part, order []int, rule fitRule) plan {
	whole := free{0, 0, r.w + r.gap, r.h + r.gap}
	if math.IsInf(r.h, 1) { // as long as all pieces one below the other
		whole.y1 = 0
		for _, p := range parts {
			whole.y1 += math.Max(p.width(), p.height()) + r.gap
		}
	}
	var sheets [][]free
	spots := make([]spot, 0, len(parts))
	for _, i := range order {
		s, took := spot{}, free{}
		for ; ; s.sheet++ {
			if s.sheet == len(sheets) {
				sheets = append(sheets, []free{whole})
			}
			if at, box, ok := r.choose(parts[i], sheets[s.sheet], rule); ok {
				s.part, s.turn, s.x, s.y, took = i, at, box.x0, box.y0, box
				break
			}
		}
		sheets[s.sheet] = take(sheets[s.sheet], took)
		spots = append(spots, s)
	}
	return r.finish(parts, spots)
}

// choose finds the best free rectangle and turn for a part on a sheet.
func (r room) choose(p part, sheet []free, rule fitRule) (turn Turn, box free, ok bool) {
	var best [4]float64
	for _, t := range p.turns(r, Boxes) {
		w, h := p.size(t)
		w, h = w+r.gap, h+r.gap
		for _, f := range sheet {
			if w > f.x1-f.x0+slack || h > f.y1-f.y0+slack {
				continue
			}
			score := rule(f, w, h)
			full := [4]float64{score[0], score[1], f.y0, f.x0}
			if !ok || slices.Compare(full[:], best[:]) < 0 {
				turn, box, ok, best = t, free{f.x0, f.y0, f.x0 + w, f.y0 + h}, true, full
			}
		}
	}
	return turn, box, ok
}

// take cuts a box out of the free rectangles and drops those that lie inside
// another.
func take(sheet []free, box free) []free {
	var kept, cut []free
	for _, f := range sheet {
		if !f.overlaps(box) {
			kept = append(kept, f)
			continue
		}
		for _, g := range []free{{f.x0, f.y0, box.x0, f.y1}, {box.x1, f.y0, f.x1, f.y1}, {f.x0, f.y0, f.x1, box.y0}, {f.x0, box.y1, f.x1, f.y1}} {
			if g.x1-g.x0 > slack && g.y1-g.y0 > slack {
				cut = append(cut, g)
			}
		}
	}
	slices.SortFunc(cut, func(a, b free) int { // larger first: it may hold the smaller
		return cmp.Or(cmp.Compare((b.x1-b.x0)*(b.y1-b.y0), (a.x1-a.x0)*(a.y1-a.y0)), cmp.Compare(a.y0, b.y0), cmp.Compare(a.x0, b.x0))
	})
	for _, g := range cut {
		if !slices.ContainsFunc(kept, func(f free) bool { return f.holds(g) }) {
			kept = append(kept, g)
		}
	}
	return kept
}
