package typeface

import (
	"encoding/binary"
	"slices"
)

// checkGDEF walks the parts of GDEF that shaping uses, and blanks the offsets
// of the two lists that it does not: attachment points and ligature carets.
// The table given must be the checker's own copy.
func (c *checker) checkGDEF() {
	if !c.has(0, 12) {
		return
	}
	clear(c.data[6:10])
	for _, at := range [2]int{4, 10} {
		if off := c.u16(at); off != 0 {
			c.classes(off)
		}
	}
	minor := c.u16(2)
	if minor >= 2 {
		if at := c.u16(12); at != 0 {
			c.each(at+4, c.u16(at+2), 4, 16, func(off int) { c.coverage(at + c.u32(off)) })
		}
	}
	if minor >= 3 {
		if at := c.u32(14); at != 0 {
			c.variationStore(at)
		}
	}
}

// checkHVAR walks the advance variations.
func (c *checker) checkHVAR() {
	c.has(0, 20)
	if at := c.u32(4); at != 0 {
		c.variationStore(at)
	}
	for _, at := range [3]int{8, 12, 16} {
		off := c.u32(at)
		if off == 0 {
			continue
		}
		entry := (c.u8(off+1)>>4)&3 + 1
		switch c.u8(off) {
		case 0:
			c.each(off+4, c.u16(off+2), entry, 4, nil)
		case 1:
			c.each(off+6, c.u32(off+2), entry, 4, nil)
		default:
			c.fail("there is no index map of format %d", c.u8(off))
		}
	}
}

func (c *checker) variationStore(at int) {
	regions := at + c.u32(at+2)
	axes := c.u16(regions)
	c.each(regions+4, c.u16(regions+2), 6*axes, 24+6*axes, nil)
	c.each(at+8, c.u16(at+6), 4, 56, func(rec int) {
		off := c.u32(rec)
		if off == 0 {
			return
		}
		data := at + off
		items, words, n := c.u16(data), c.u16(data+2), c.u16(data+4)
		if words&0x8000 != 0 {
			c.fail("it has deltas of 32 bits, which are not read")
			return
		}
		c.each(data+6, n, 2, 2, nil)
		c.each(data+6+2*n, items, words+n, 24+2*n, nil)
	})
}

// maxAxes is generous: text families have two to five.
const maxAxes = 16

// checkFvar reads the axes, and drops the named instances from the checker's
// own copy of the table: lettering asks for axis values.
func (c *checker) checkFvar() []Axis {
	if !c.has(0, 16) {
		return nil
	}
	binary.BigEndian.PutUint16(c.data[12:], 0)
	n, size, start := c.u16(8), c.u16(10), c.u16(4)
	if n > maxAxes || size != 20 {
		c.fail("it has %d axes of %d bytes; up to %d of 20 are read", n, size, maxAxes)
		return nil
	}
	var axes []Axis
	fixed := func(at int) float64 { return float64(int32(c.u32(at))) / 65536 }
	c.each(start, n, size, 64, func(at int) {
		a := Axis{Tag: string(c.data[at : at+4]), Min: fixed(at + 4), Default: fixed(at + 8), Max: fixed(at + 12)}
		if a.Min > a.Default || a.Default > a.Max {
			c.fail("axis %q goes from %g over %g to %g", a.Tag, a.Min, a.Default, a.Max)
		}
		if slices.ContainsFunc(axes, func(b Axis) bool { return b.Tag == a.Tag }) {
			c.fail("axis %q is there twice", a.Tag)
		}
		axes = append(axes, a)
	})
	return axes
}

// checkAvar walks the axis maps: as many as there are axes, each rising.
func (c *checker) checkAvar(axes int) {
	if c.u16(6) != axes {
		c.fail("it maps %d axes of %d", c.u16(6), axes)
	}
	at := 8
	for range axes {
		n, last := c.u16(at), -1<<15
		c.each(at+2, n, 4, 4, func(pair int) {
			// equal neighbours would divide by nothing
			if from := c.i16(pair); from <= last {
				c.fail("an axis map does not rise")
			} else {
				last = from
			}
		})
		at += 2 + 4*n
	}
}

// checkGvar walks the outline variations. points gives the number of points,
// or components, of every glyph. Offsets must not go back, so no two glyphs
// share data.
func (c *checker) checkGvar(points []int, axes int) {
	if c.u16(4) != axes || c.u16(12) != len(points) {
		c.fail("it is for %d axes and %d glyphs, the font has %d and %d", c.u16(4), c.u16(12), axes, len(points))
		return
	}
	shared, data := c.u32(8), c.u32(16)
	c.each(shared, c.u16(6), 2*axes, 32+2*axes, nil)
	size, unit := 2, 2
	if c.u16(14)&1 != 0 {
		size, unit = 4, 1
	}
	offset := func(i int) int {
		if size == 4 {
			return c.u32(20 + 4*i)
		}
		return unit * c.u16(20+2*i)
	}
	if !c.has(20, size*(len(points)+1)) || !c.spend(56*len(points)) {
		return
	}
	for i, n := range points {
		from, to := offset(i), offset(i+1)
		if from > to {
			c.fail("the variations of glyph %d end before they start", i)
			return
		}
		if from == to || !c.has(data+from, to-from) {
			continue
		}
		c.glyphVariations(data+from, data+to, axes, n+4)
		if c.err != nil {
			return
		}
	}
}

// glyphVariations walks the deltas of one glyph with the given number of
// points, the four metrics points included. Everything is followed as the
// parser will: it gives up in silence at the first fault and would leave this
// glyph and all after it at their default shape.
func (c *checker) glyphVariations(at, end, axes, points int) {
	const sharedPoints, ownPeak, ownRegion, ownPoints = 0x8000, 0x8000, 0x4000, 0x2000
	n, head := c.u16(at)&0x0FFF, at+4
	p := packed{c, at + c.u16(at+2), end}
	shared := points
	if c.u16(at)&sharedPoints != 0 {
		shared = p.pointNumbers(points)
	}
	for range n {
		size, flags := c.u16(head), c.u16(head+2)
		head += 4
		if flags&ownPeak != 0 {
			head += 2 * axes
		}
		if flags&ownRegion != 0 {
			head += 4 * axes
		}
		next, count := p.at+size, shared
		if flags&ownPoints != 0 {
			count = p.pointNumbers(points)
		}
		if !c.spend(160 + 6*axes + 6*count) {
			return
		}
		p.deltas(2 * count)
		if next > end {
			c.fail("the deltas of a glyph reach past its data")
		}
		p.at = next
	}
	c.has(at, head-at)
}

// packed reads the packed numbers of gvar from at up to end.
type packed struct {
	*checker
	at, end int
}

// pointNumbers reads a list of point numbers, which must be below limit, and
// returns how many there are; an empty list stands for all points.
func (p *packed) pointNumbers(limit int) int {
	n := p.u8(p.at)
	p.at++
	if n >= 0x80 {
		n = n&0x7F<<8 | p.u8(p.at)
		p.at++
	}
	if n == 0 {
		return limit
	}
	point := 0
	for read := 0; read < n && p.err == nil; {
		control := p.u8(p.at)
		p.at++
		for range control&0x7F + 1 {
			if control&0x80 != 0 {
				point += p.u16(p.at)
				p.at += 2
			} else {
				point += p.u8(p.at)
				p.at++
			}
			if point >= limit {
				p.fail("a glyph moves point %d of %d", point, limit)
			}
			read++
		}
		if read > n {
			p.fail("a run of point numbers is too long")
		}
	}
	return n
}

func (p *packed) deltas(n int) {
	for n > 0 && p.err == nil {
		control := p.u8(p.at)
		run := control&0x3F + 1
		p.at++
		switch {
		case control&0x80 != 0: // zeros; the last run may be longer than needed
			n -= run
			continue
		case control&0x40 != 0:
			p.at += 2 * run
		default:
			p.at += run
		}
		if n -= run; n < 0 || p.at > p.end {
			p.fail("a run of deltas is too long")
		}
	}
}
