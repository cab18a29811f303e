package nest

import (
	"math"

	"yokeline/lettering/geom"
)

// A mask is a piece on a raster of square cells, y downward, with empty cells all
// round. Masks err on the safe side: a cell counts as soon as it is touched.
type mask struct {
	w, h  int
	cells []byte // row by row
	stack []int32
}

const (
	open   byte = iota // nothing there
	solid              // the piece
	passed             // reached by a walk from outside
)

// run is a stretch of solid cells in a row, both ends included.
type run struct{ row, lo, hi int }

func newMask(w, h int) *mask { return &mask{w: w, h: h, cells: make([]byte, w*h)} }

// edge marks every cell that lies within r of the segment from a to b, all in
// cells.
func (m *mask) edge(a, b geom.Point, r float64) {
	top := max(0, int(math.Floor(math.Min(a.Y, b.Y)-r-slack)))
	foot := min(m.h-1, int(math.Floor(math.Max(a.Y, b.Y)+r+slack)))
	for row := top; row <= foot; row++ {
		lo, hi := reachInRow(a, b, r, float64(row)-slack, float64(row+1)+slack)
		first, last := max(0, int(math.Floor(lo-slack))), min(m.w-1, int(math.Floor(hi+slack)))
		for x := first; x <= last; x++ {
			m.cells[row*m.w+x] = solid
		}
	}
}

// reachInRow returns how far to the left and right the points within r of the
// segment from a to b reach between the heights y0 and y1. They are the hull of
// two discs, so the extremes lie on a disc or on one of the two sides beside the
// segment.
func reachInRow(a, b geom.Point, r, y0, y1 float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range [2]geom.Point{a, b} {
		off := math.Max(0, math.Max(y0-c.Y, c.Y-y1))
		if off <= r {
			d := math.Sqrt(r*r - off*off)
			lo, hi = math.Min(lo, c.X-d), math.Max(hi, c.X+d)
		}
	}
	along := b.Sub(a)
	length := along.Norm()
	if length == 0 {
		return lo, hi
	}
	side := geom.Point{X: -along.Y, Y: along.X}.Mul(r / length)
	for _, s := range [2]geom.Point{side, side.Mul(-1)} {
		if p, q, ok := between(a.Add(s), b.Add(s), y0, y1); ok {
			lo, hi = math.Min(lo, math.Min(p, q)), math.Max(hi, math.Max(p, q))
		}
	}
	return lo, hi
}

// between returns x at both ends of the part of a segment between two heights.
func between(a, b geom.Point, y0, y1 float64) (p, q float64, ok bool) {
	if a.Y > b.Y {
		a, b = b, a
	}
	if b.Y < y0 || a.Y > y1 {
		return 0, 0, false
	}
	p, q = a.X, b.X
	if d := b.Y - a.Y; d > 0 {
		p = a.X + (b.X-a.X)*math.Max(0, (y0-a.Y)/d)
		q = a.X + (b.X-a.X)*math.Min(1, (y1-a.Y)/d)
	}
	return p, q, true
}

// seal fills what cannot be reached from outside: the piece itself, its counters
// and enclosed pockets.
func (m *mask) seal() {
	m.fence(m.cells)
	stack := append(m.stack[:0], int32(m.w+1)) // inside the fence, outside the piece
	m.cells[m.w+1] = passed
	for len(stack) > 0 {
		at := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, next := range m.neighbours(at) {
			if m.cells[next] == open {
				m.cells[next] = passed
				stack = append(stack, next)
			}
		}
	}
	m.stack = stack
	for i, c := range m.cells {
		m.cells[i] = solid
		if c == passed {
			m.cells[i] = open
		}
	}
}

// fence marks the outermost cells, which are empty, so that no walk leaves the
// mask.
func (m *mask) fence(cells []byte) {
	for x := range m.w {
		cells[x], cells[len(cells)-1-x] = passed, passed
	}
	for y := range m.h {
		cells[y*m.w], cells[y*m.w+m.w-1] = passed, passed
	}
}

// neighbours returns the four cells beside a cell inside the fence.
func (m *mask) neighbours(at int32) [4]int32 {
	w := int32(m.w)
	return [4]int32{at - 1, at + 1, at - w, at + w}
}

// runs lists the solid cells by row.
func (m *mask) runs() []run {
	var out []run
	for row := range m.h {
		line := m.cells[row*m.w : (row+1)*m.w]
		for x := 0; x < m.w; x++ {
			if line[x] != solid {
				continue
			}
			first := x
			for x+1 < m.w && line[x+1] == solid {
				x++
			}
			out = append(out, run{row, first, x})
		}
	}
	return out
}
