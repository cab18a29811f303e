package arrangement

import "math/bits"

func vector(a, b Point) (dx, dy int64) {
	return int64(b.X) - int64(a.X), int64(b.Y) - int64(a.Y)
}

// orient is twice the area of abc: positive when c lies left of a→b.
func orient(a, b, c Point) int64 {
	ux, uy := vector(a, b)
	vx, vy := vector(a, c)
	return ux*vy - uy*vx
}

// along is the projection of p onto ab, times |ab|: 0 at a, |ab|² at b.
func along(a, b, p Point) int64 {
	ux, uy := vector(a, b)
	vx, vy := vector(a, p)
	return ux*vx + uy*vy
}

// between reports whether the angle a-p-b is at least a right one, the
// condition under which cutting ab at p cannot make the edges longer in sum of
// squares.
func between(a, p, b Point) bool {
	ux, uy := vector(a, p)
	vx, vy := vector(p, b)
	return ux*vx+uy*vy >= 0
}

func abs(v int64) int64 {
	if v < 0 {
		return -v
	}
	return v
}

// inPixel reports whether the open edge ab passes through the pixel of p, with
// side = orient(a, b, p). The bound is strict: taking in edges that only touch
// the pixel's corner would flip unit diagonals for ever. A point within the
// bound lies at less than √½ from the edge, and its projection is at least
// 1/|ab| from either end, so that between(a, p, b) holds.
func inPixel(a, b, p Point, side int64) bool {
	dx, dy := vector(a, b)
	if 2*abs(side) >= abs(dx)+abs(dy) || p == a || p == b {
		return false
	}
	t := along(a, b, p)
	return t > 0 && t < dx*dx+dy*dy
}

// meet returns the grid point nearest to where ab is crossed, with sa and sb
// the sides, of opposite sign, of a and b as seen from the crossing edge. As
// neither end is nearer to the true crossing than the result, between(a,
// result, b) holds.
func meet(a, b Point, sa, sb int64) Point {
	num, den := uint64(abs(sa)), uint64(abs(sa)+abs(sb))
	dx, dy := vector(a, b)
	return Point{a.X + share(dx, num, den), a.Y + share(dy, num, den)}
}

// share is d·num/den rounded to the nearest integer, with num <= den.
func share(d int64, num, den uint64) int32 {
	hi, lo := bits.Mul64(uint64(abs(d)), num)
	lo, carry := bits.Add64(lo, den/2, 0)
	q, _ := bits.Div64(hi+carry, lo, den)
	if d < 0 {
		return -int32(q)
	}
	return int32(q)
}
