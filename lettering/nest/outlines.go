package nest

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// Packing by outlines works on a raster: each piece has the cells it touches and
// the cells within a gap of it. A place is free when the latter meet no cell
// that another piece touches; then the true distance is at least the gap, since
// the cells are exact, and at most a cell and its diagonal more than it need be.

const (
	finest     = 0.5         // mm; a finer raster gains nothing that a knife could follow
	maskCells  = 8_000_000   // in all pieces together: sets the cell of a large order
	openRows   = 4000        // rows of the raster, from the last back, where a place is looked for
	wordBudget = 200_000_000 // words of 64 places compared: some seconds
)

// nester packs by outlines and keeps the masks from one packing to the next.
type nester struct {
	room
	parts []part
	cell  float64 // side of a cell, mm
	pad   int     // empty cells round each mask
	looks [][]look
	rings []geom.Region // silhouettes
	spare []*field      // of earlier packings
	spent int           // words compared, the measure of effort
}

// look is a piece in one turn.
type look struct {
	turn          Turn
	w, h          float64
	columns, last int // places across, and the last row it may start in
	taken         []run
	tests         []test
}

func newNester(r room, parts []part) *nester {
	n := &nester{room: r, parts: parts, cell: r.cell(parts), looks: make([][]look, len(parts)), rings: make([]geom.Region, len(parts))}
	n.pad = int((r.gap+n.tolerance())/n.cell) + 3
	return n
}

// outlines packs by outlines; boxes is the packing by boxes to be bettered.
func (r room) outlines(parts []part, o Options, boxes plan) plan {
	n := newNester(r, parts)
	if o.Order == Kept {
		return n.rows()
	}
	return n.tight(boxes, o.packings())
}

// tight tries several orders by several rules, then betters the best of them, as
// far as the budget goes. Effort is counted, not timed, so the layout is always
// the same. The order in which the best packing by boxes lies comes first.
func (n *nester) tight(boxes plan, tries int) plan {
	orders := [][]int{boxes.order()}
	for _, key := range sortKeys() {
		orders = append(orders, sorted(n.parts, key))
	}
	var best plan
	var first []int
	var by hang
	last := 0
	pass := func(order []int, h hang) (plan, bool) {
		if tries == 0 || n.spent+last > wordBudget {
			return plan{}, false
		}
		tries--
		before := n.spent
		p := n.pass(order, h)
		last = n.spent - before
		return p, true
	}
	for _, h := range []hang{lowerEdge, upperEdge, middle} {
		for _, order := range orders {
			p, ok := pass(order, h)
			if ok && (best.spots == nil || p.cheaper(best)) {
				best, first, by = p, order, h
			}
		}
	}
	return press(best, first, func(order []int) (plan, bool) { return pass(order, by) })
}

// cell chooses the raster: as fine as is of use, coarser for a large order.
func (r room) cell(parts []part) float64 {
	area, side := 0.0, 0.0
	for _, p := range parts {
		area += (p.width() + 2*r.gap) * (p.height() + 2*r.gap)
		side = math.Max(side, math.Max(p.width(), p.height())+2*r.gap)
	}
	fine := math.Min(finest, r.w/512)
	return math.Max(math.Max(fine, math.Sqrt(area/maskCells)), math.Max(r.w/2048, side/4096))
}

// tolerance is how far thinned rings may lie from the true ones, mm.
func (n *nester) tolerance() float64 { return n.cell / 16 }

// ways returns the part in every turn it may make.
func (n *nester) ways(i int) []look {
	if n.looks[i] == nil {
		for _, t := range n.parts[i].turns(n.room, Outlines) {
			n.looks[i] = append(n.looks[i], n.look(i, t))
		}
	}
	return n.looks[i]
}

func (n *nester) look(i int, t Turn) look {
	w, h := n.parts[i].size(t)
	out := look{turn: t, w: w, h: h, columns: 1 + n.cells(n.w-w), last: math.MaxInt32}
	if !math.IsInf(n.room.h, 1) {
		out.last = n.cells(n.room.h - h)
	}
	k, pad := 1/n.cell, float64(n.pad)
	// The page's y downward: the upper edge of the turned box is row 0.
	m := n.parts[i].move(t, geom.Point{}).Then(geom.Translate(0, -h)).Then(geom.Scale(k, -k)).Then(geom.Translate(pad, pad))
	if n.rings[i] == nil {
		n.rings[i] = silhouette(n.parts[i].Shape, n.tolerance())
	}
	rings := n.rings[i].Transform(m)
	across, down := int(math.Ceil(w*k))+1+2*n.pad, int(math.Ceil(h*k))+1+2*n.pad
	touched, near := newMask(across, down), newMask(across, down)
	for _, ring := range rings {
		for j, a := range ring {
			b := ring[(j+1)%len(ring)]
			touched.edge(a, b, n.tolerance()*k)
			near.edge(a, b, (n.gap+n.tolerance())*k)
		}
	}
	touched.seal()
	near.seal()
	out.taken, out.tests = touched.runs(), testsOf(near.runs())
	return out
}

// cells returns how many whole cells a length holds.
func (n *nester) cells(mm float64) int { return max(0, int(math.Floor(mm/n.cell+slack))) }

func (n *nester) newField() *field {
	if k := len(n.spare); k > 0 {
		f := n.spare[k-1]
		n.spare = n.spare[:k-1]
		f.rows, f.bits = 0, f.bits[:0]
		return f
	}
	return newField(int(math.Ceil(n.w/n.cell)) + 3 + 2*n.pad)
}

// hang says which part of a piece is to lie as high on the sheet as it can: a
// share of its height.
type hang float64

const (
	upperEdge hang = 0
	middle    hang = 0.5
	lowerEdge hang = 1
)

// score rates a place at x, y for a piece of height h; less is better.
func (g hang) score(x, y, h float64) [3]float64 {
	return [3]float64{y + float64(g)*h, y + h, x}
}

// lowest is the lowest y at which a piece of height h can beat or match a score.
func (g hang) lowest(score [3]float64, h float64) float64 { return score[0] - float64(g)*h }

// pass packs in the order given; every piece takes the best place on the first
// sheet that has one.
func (n *nester) pass(order []int, by hang) plan {
	var fields []*field
	spots := make([]spot, 0, len(order))
	for _, i := range order {
		s := spot{part: i, sheet: firstOpen(fields)}
		for ; ; s.sheet++ {
			if s.sheet == len(fields) {
				fields = append(fields, n.newField())
			}
			if best, x, y, ok := n.place(i, fields[s.sheet], by); ok {
				n.spent += fields[s.sheet].take(best.taken, x, y)
				s.turn, s.x, s.y = best.turn, float64(x)*n.cell, float64(y)*n.cell
				break
			}
		}
		spots = append(spots, s)
	}
	n.spare = append(n.spare, fields...)
	return n.finish(n.parts, spots)
}

// firstOpen is the first sheet that is still looked at: those that hold the last
// openRows rows.
func firstOpen(fields []*field) int {
	at := len(fields)
	for rows := 0; at > 0 && rows < openRows; at-- {
		rows += fields[at-1].rows
	}
	return at
}

// place finds the best turn and place on a sheet.
func (n *nester) place(i int, f *field, by hang) (best look, x, y int, ok bool) {
	var score [3]float64
	for _, l := range n.ways(i) {
		last := min(l.last, f.rows)
		if ok { // lower down it cannot be better
			last = min(last, n.cells(by.lowest(score, l.h)))
		}
		cx, cy, found := f.search(l.tests, l.columns, max(0, f.rows-openRows), last, &n.spent)
		if !found {
			continue
		}
		s := by.score(float64(cx)*n.cell, float64(cy)*n.cell, l.h)
		if !ok || slices.Compare(s[:], score[:]) < 0 {
			best, x, y, ok, score = l, cx, cy, true, s
		}
	}
	return best, x, y, ok
}
