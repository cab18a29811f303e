package nest

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// spot is where a packing puts a part: the upper left corner of its turned box,
// x from the left and y downward from the upper edge of the room. Packings fill
// from there, so sheets read as a page does.
type spot struct {
	part  int // index into the parts of the packing
	turn  Turn
	sheet int
	x, y  float64
	foot  float64 // y of the lower edge
}

// plan is a packing: a spot for each part, and how deep each sheet is filled.
type plan struct {
	spots []spot
	depth []float64
	cost  [2]float64
}

// finish works out the depths and the cost of a packing: the material it takes,
// then what it takes of the sheets before the offcut.
func (r room) finish(parts []part, spots []spot) plan {
	p := plan{spots: spots}
	for i, s := range spots {
		for len(p.depth) <= s.sheet {
			p.depth = append(p.depth, 0)
		}
		_, h := parts[s.part].size(s.turn)
		spots[i].foot = s.y + h
		p.depth[s.sheet] = math.Max(p.depth[s.sheet], s.y+h)
	}
	for _, d := range p.depth {
		length := d + 2*r.margin
		p.cost[1] += length
		if !r.roll {
			length = r.h
		}
		p.cost[0] += length
	}
	return p
}

// cheaper reports whether the plan costs less than another.
func (p plan) cheaper(than plan) bool {
	for i := range p.cost {
		if d := p.cost[i] - than.cost[i]; math.Abs(d) > slack*(1+p.cost[i]) {
			return d < 0
		}
	}
	return false
}

// better returns the cheaper plan, the first when they cost the same.
func better(a, b plan) plan {
	if b.cheaper(a) {
		return b
	}
	return a
}

// order lists the parts of a plan as they lie: by sheet, from above, from the left.
func (p plan) order() []int {
	spots := slices.Clone(p.spots)
	slices.SortStableFunc(spots, func(a, b spot) int {
		return cmp.Or(cmp.Compare(a.sheet, b.sheet), cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x))
	})
	out := make([]int, len(spots))
	for i, s := range spots {
		out[i] = s.part
	}
	return out
}

// deepest is the part that reaches deepest into the last sheet.
func (p plan) deepest() int {
	return slices.MaxFunc(p.spots, func(a, b spot) int {
		return cmp.Or(cmp.Compare(a.sheet, b.sheet), cmp.Compare(a.foot, b.foot))
	}).part
}

// press betters a plan that a packing made in an order: again and again the piece
// that reaches deepest goes halfway to the front, as long as the packing agrees to
// another try. The best plan met is kept.
func press(best plan, order []int, pack func([]int) (plan, bool)) plan {
	order, now := slices.Clone(order), best
	for {
		at := slices.Index(order, now.deepest())
		if at == 0 {
			return best
		}
		part := order[at]
		order = slices.Insert(slices.Delete(order, at, at+1), at/2, part)
		p, ok := pack(order)
		if !ok {
			return best
		}
		now, best = p, better(best, p)
	}
}

// sheets turns a plan into sheets with y upward.
func (p plan) sheets(parts []part, stock Stock) []Sheet {
	out := make([]Sheet, len(p.depth))
	for i, d := range p.depth {
		out[i] = Sheet{Group: parts[0].Group, Width: stock.Width, Height: stock.Height, Used: d + 2*stock.Margin}
		if stock.Roll() {
			out[i].Height = out[i].Used
		}
	}
	byPart := make([]spot, len(parts))
	for _, s := range p.spots {
		byPart[s.part] = s
	}
	for i, s := range byPart {
		sheet := &out[s.sheet]
		_, h := parts[i].size(s.turn)
		at := geom.Point{X: stock.Margin + s.x, Y: sheet.Height - stock.Margin - s.y - h}
		sheet.Ink += parts[i].area
		sheet.Placed = append(sheet.Placed, Placed{ID: parts[i].ID, Turn: s.turn, At: at, Move: parts[i].move(s.turn, at)})
	}
	return out
}

// shelves lays rows in the order given, each as high as its highest piece,
// turning a piece only when it does not fit as drawn.
func (r room) shelves(parts []part, order []int) plan {
	spots := make([]spot, 0, len(parts))
	sheet, x, y, row := 0, 0.0, 0.0, 0.0
	for _, i := range order {
		turn := parts[i].turns(r, Boxes)[0]
		w, h := parts[i].size(turn)
		if x > 0 && x+w > r.w+slack { // a new row
			x, y, row = 0, y+row+r.gap, 0
		}
		if y > 0 && y+h > r.h+slack { // a new sheet
			sheet, x, y, row = sheet+1, 0, 0, 0
		}
		spots = append(spots, spot{part: i, turn: turn, sheet: sheet, x: x, y: y})
		x, row = x+w+r.gap, math.Max(row, h)
	}
	return r.finish(parts, spots)
}
