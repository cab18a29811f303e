package nest

import "math"

// rows lays the parts in the order given: each right of the one before, pushed up
// from below until it meets what lies above, but never above the start of the row
// before its own, so that the sheet still reads in order.
func (n *nester) rows() plan {
	spots := make([]spot, 0, len(n.parts))
	f, sheet, x := n.newField(), 0, 0
	floor, next := 0, 0 // no piece of this row, or of the next, starts above it
	for i := range n.parts {
		l := n.look(i, n.parts[i].turns(n.room, Outlines)[0])
		if x >= l.columns {
			x, floor = 0, next
		}
		y := n.push(f, l, x, floor)
		if y > l.last {
			f, sheet, x, floor, next = n.newField(), sheet+1, 0, 0, 0
			y = 0
		}
		f.take(l.taken, x, y)
		spots = append(spots, spot{part: i, turn: l.turn, sheet: sheet, x: float64(x) * n.cell, y: float64(y) * n.cell})
		next = max(next, y)
		// The first column whose cells within a gap are past those touched here.
		t := n.tolerance()
		touched := math.Floor((float64(x)*n.cell+l.w+t)/n.cell+slack) + 1
		x = int(math.Ceil(touched + (n.gap+t)/n.cell + 2*slack))
	}
	return n.finish(n.parts, spots)
}

// push returns the highest row that a piece reaches from below.
func (n *nester) push(f *field, l look, x, floor int) int {
	y := max(floor, f.rows)
	for y > floor && f.fits(l.tests, x, y-1) {
		y--
	}
	return y
}
