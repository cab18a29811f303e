package typeface

// Bounds on single glyphs. The most complex letters of ornate faces have some
// thousands of points.
const (
	maxPoints = 50_000
	maxDepth  = 8
)

// checkGlyf walks the TrueType outlines (OpenType 1.9.1, "glyf" and "loca")
// and returns the number of points of simple glyphs and of components of
// composite ones. A few bytes of repeated flags can stand for 65,536 points,
// and composites of composites can multiply without end, so both are counted.
func (c *checker) checkGlyf(loca *checker, glyphs int, long bool) []int {
	size := 2
	if long {
		size = 4
	}
	if !loca.has(0, size*(glyphs+1)) || !c.spend(80*glyphs) {
		return nil
	}
	offset := func(i int) int {
		if long {
			return loca.u32(4 * i)
		}
		return 2 * loca.u16(2*i)
	}
	w := glyfWalk{checker: c, counts: make([]int, glyphs), parts: make([][]int, glyphs)}
	for i := range glyphs {
		from, to := offset(i), offset(i+1)
		if from > to {
			loca.fail("glyph %d ends before it starts", i)
			return nil
		}
		if from < to && c.has(from, to-from) {
			w.glyph(i, from)
		}
		if c.err != nil {
			return nil
		}
	}
	w.totals()
	return w.counts
}

type glyfWalk struct {
	*checker
	counts []int   // points, or components
	parts  [][]int // glyphs of the components; nil for simple ones
}

func (w *glyfWalk) glyph(i, at int) {
	contours := w.i16(at)
	if contours < 0 {
		w.components(i, at+10)
		return
	}
	last := -1
	w.each(at+10, contours, 2, 2, func(end int) {
		if e := w.u16(end); e <= last {
			w.fail("the contours of glyph %d are out of order", i)
		} else {
			last = e
		}
	})
	w.counts[i] = last + 1
	w.spend(6 * (last + 1))
	if last >= maxPoints {
		w.fail("glyph %d has %d points; up to %d are read", i, last+1, maxPoints)
	}
}

func (w *glyfWalk) components(i, at int) {
	const words, scale, more, twoScales, matrix = 0x0001, 0x0008, 0x0020, 0x0040, 0x0080
	for w.spend(48) && w.has(at, 4) {
		flags, part := w.u16(at), w.u16(at+2)
		if part >= len(w.counts) {
			w.fail("glyph %d is made of glyph %d, which there is not", i, part)
			return
		}
		w.parts[i] = append(w.parts[i], part)
		at += 6
		if flags&words != 0 {
			at += 2
		}
		switch {
		case flags&scale != 0:
			at += 2
		case flags&twoScales != 0:
			at += 4
		case flags&matrix != 0:
			at += 8
		}
		if flags&more == 0 {
			break
		}
	}
	w.counts[i] = len(w.parts[i])
}

// totals follows the composites. known keeps each glyph's unfolded size, so
// that the walk is linear however the parts multiply.
func (w *glyfWalk) totals() {
	known := make([]int, len(w.counts)) // points + 1; 0 not yet known
	var unfold func(i, depth int) int
	unfold = func(i, depth int) int {
		if w.parts[i] == nil {
			return w.counts[i]
		}
		if depth > maxDepth {
			w.fail("glyph %d is made of parts of parts, more than %d deep", i, maxDepth)
		}
		if known[i] > 0 || w.err != nil {
			return known[i] - 1
		}
		sum := 0
		for _, part := range w.parts[i] {
			sum += unfold(part, depth+1)
			if sum > maxPoints {
				w.fail("glyph %d unfolds to more than %d points", i, maxPoints)
			}
			if w.err != nil {
				return 0
			}
		}
		known[i] = sum + 1
		return sum
	}
	for i := range w.parts {
		unfold(i, 1)
	}
}
