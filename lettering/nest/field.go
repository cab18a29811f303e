package nest

import (
	"cmp"
	"math/bits"
	"slices"
)

// field is a sheet as a raster: which cells are taken. Level k of a row says of
// each cell whether any of the 2^k cells from it on is taken, so that a run of any
// length is tested against a whole row of places at once, with two shifts.
type field struct {
	words, levels int
	rows          int
	bits          []uint64
}

func newField(columns int) *field {
	return &field{words: columns/64 + 1, levels: bits.Len(uint(columns))}
}

func (f *field) row(y, level int) []uint64 {
	at := (y*f.levels + level) * f.words
	return f.bits[at : at+f.words]
}

// take marks the runs of a piece, moved by x and y, as taken, and returns how many
// words it worked out.
func (f *field) take(runs []run, x, y int) int {
	foot := y + runs[len(runs)-1].row + 1
	if foot > f.rows {
		more := (foot - f.rows) * f.levels * f.words
		f.bits = slices.Grow(f.bits, more)[:len(f.bits)+more]
		clear(f.bits[len(f.bits)-more:])
		f.rows = foot
	}
	for i, r := range runs {
		line := f.row(y+r.row, 0)
		for c := x + r.lo; c <= x+r.hi; c++ {
			line[c/64] |= 1 << (c % 64)
		}
		if i+1 == len(runs) || runs[i+1].row != r.row {
			f.raise(y + r.row)
		}
	}
	return (foot - y - runs[0].row) * f.levels * f.words
}

// raise works out the levels of a row from its lowest.
func (f *field) raise(y int) {
	for k := 1; k < f.levels; k++ {
		line, below := f.row(y, k), f.row(y, k-1)
		copy(line, below)
		merge(line, below, 1<<(k-1))
	}
}

// merge ors src, moved towards lower bits by shift, into dst, which is no longer,
// and reports whether every bit of dst is set.
func merge(dst, src []uint64, shift int) bool {
	src = src[shift/64:]
	part, full, n := uint(shift%64), ^uint64(0), min(len(dst), len(src)-1)
	for i, w := range dst[:n] {
		w |= src[i]>>part | src[i+1]<<(64-part) // the latter nothing when part is 0
		dst[i] = w
		full &= w
	}
	for i := n; i < len(dst); i++ {
		if i < len(src) {
			dst[i] |= src[i] >> part
		}
		full &= dst[i]
	}
	return full == ^uint64(0)
}

// test is one look at a row: level and shift make the places where a run of a
// piece would be on taken cells.
type test struct{ row, level, shift int }

// testsOf turns the runs of a piece into tests. The longest come first, since they
// rule out the most, and of those rows far apart, since neighbours tell the same.
func testsOf(runs []run) []test {
	var byLevel [64][]test
	for _, r := range runs {
		k := bits.Len(uint(r.hi-r.lo+1)) - 1
		byLevel[k] = append(byLevel[k], test{r.row, k, r.lo})
		if end := r.hi + 1 - 1<<k; end != r.lo {
			byLevel[k] = append(byLevel[k], test{r.row, k, end})
		}
	}
	var out []test
	for k := len(byLevel) - 1; k >= 0; k-- {
		slices.SortStableFunc(byLevel[k], func(a, b test) int {
			return cmp.Compare(bits.Reverse8(uint8(a.row)), bits.Reverse8(uint8(b.row)))
		})
		out = append(out, byLevel[k]...)
	}
	return out
}

// search returns the first place, by row and then by column, from row y to row
// last, in the first columns, where all tests find nothing taken. It adds the
// words compared to spent.
func (f *field) search(tests []test, columns, y, last int, spent *int) (x, row int, ok bool) {
	blocked := make([]uint64, (columns+63)/64)
	for ; y <= last; y++ {
		clear(blocked)
		if columns%64 > 0 { // beyond the columns there is no place
			blocked[len(blocked)-1] = ^uint64(0) << (columns % 64)
		}
		full := false
		for i := 0; i < len(tests) && !full; i++ {
			if t := tests[i]; y+t.row < f.rows {
				full = merge(blocked, f.row(y+t.row, t.level), t.shift)
				*spent += len(blocked)
			}
		}
		for i, w := range blocked {
			if w != ^uint64(0) {
				return i*64 + bits.TrailingZeros64(^w), y, true
			}
		}
	}
	return 0, 0, false
}

// fits reports whether all tests find nothing taken at one place.
func (f *field) fits(tests []test, x, y int) bool {
	for _, t := range tests {
		if y+t.row >= f.rows {
			continue
		}
		c := x + t.shift
		if f.row(y+t.row, t.level)[c/64]>>(c%64)&1 != 0 {
			return false
		}
	}
	return true
}
