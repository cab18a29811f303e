package typeface

import "math/bits"

// checkLayout walks a GSUB or GPOS table (OpenType 1.9.1, "GSUB", "GPOS" and
// "OpenType Layout common table formats") and returns the number of lookups.
// The costs are the sizes of what the parser builds, rounded up.
func (c *checker) checkLayout() (lookups int) {
	c.u32(0)
	if at := c.u16(4); at != 0 {
		c.each(at+2, c.u16(at), 6, 80, func(rec int) { c.script(at + c.u16(rec+4)) })
	}
	if at := c.u16(6); at != 0 {
		c.each(at+2, c.u16(at), 6, 48, func(rec int) { c.feature(at + c.u16(rec+4)) })
	}
	if c.u16(2) == 1 {
		if at := c.u32(10); at != 0 {
			c.featureVariations(at)
		}
	}
	at := c.u16(8)
	if at == 0 {
		return 0
	}
	lookups = c.u16(at)
	c.offsets(at+2, lookups, at, 160, c.lookup)
	return lookups
}

func (c *checker) script(at int) {
	langSys := func(at int) { c.each(at+6, c.u16(at+4), 2, 2, nil) }
	if off := c.u16(at); off != 0 {
		langSys(at + off)
	}
	c.each(at+4, c.u16(at+2), 6, 48, func(rec int) { langSys(at + c.u16(rec+4)) })
}

func (c *checker) feature(at int) { c.each(at+4, c.u16(at+2), 2, 2, nil) }

func (c *checker) featureVariations(at int) {
	c.each(at+8, c.u32(at+4), 8, 96, func(rec int) {
		if set := c.u32(rec); set != 0 {
			c.each(at+set+2, c.u16(at+set), 4, 16, func(off int) { c.has(at+set+c.u32(off), 8) })
		}
		if subs := c.u32(rec + 4); subs != 0 {
			c.each(at+subs+6, c.u16(at+subs+4), 6, 48, func(rec int) { c.feature(at + subs + c.u32(rec+2)) })
		}
	})
}

func (c *checker) lookup(at int) {
	kind := c.u16(at)
	c.offsets(at+6, c.u16(at+4), at, 160, func(sub int) { c.subtable(kind, sub, false) })
}

func (c *checker) subtable(kind, at int, extended bool) {
	extension := 7
	if c.table == "GPOS" {
		extension = 9
	}
	switch {
	case kind == extension && extended:
		c.fail("an extension lookup leads to another")
	case kind == extension:
		c.subtable(c.u16(at+2), at+c.u32(at+4), true)
	case c.table == "GPOS":
		c.positioning(kind, at)
	default:
		c.substitution(kind, at)
	}
}

func (c *checker) substitution(kind, at int) {
	format := c.u16(at)
	switch kind {
	case 1:
		c.coverage(at + c.u16(at+2))
		if format == 2 {
			c.each(at+6, c.u16(at+4), 2, 2, nil)
		}
	case 2, 3:
		c.coverage(at + c.u16(at+2))
		c.offsets(at+6, c.u16(at+4), at, 24, func(seq int) { c.each(seq+2, c.u16(seq), 2, 2, nil) })
	case 4:
		c.coverage(at + c.u16(at+2))
		c.offsets(at+6, c.u16(at+4), at, 24, func(set int) {
			c.offsets(set+2, c.u16(set), set, 40, func(lig int) {
				n := c.u16(lig + 2)
				if n == 0 {
					c.fail("a ligature has no components")
				}
				c.each(lig+4, n-1, 2, 2, nil)
			})
		})
	case 5:
		c.context(at)
	case 6:
		c.chained(at)
	case 8:
		c.coverage(at + c.u16(at+2))
		next := c.coverages(at+4, at)
		next = c.coverages(next, at)
		c.each(next+2, c.u16(next), 2, 2, nil)
	default:
		c.fail("there is no substitution of type %d", kind)
	}
}

func (c *checker) positioning(kind, at int) {
	format := c.u16(at)
	switch kind {
	case 1:
		c.coverage(at + c.u16(at+2))
		values := c.u16(at + 4)
		if format == 1 {
			c.value(at, at+6, values)
			return
		}
		c.each(at+8, c.u16(at+6), valueSize(values), 72, func(rec int) { c.value(at, rec, values) })
	case 2:
		c.pairs(format, at)
	case 3:
		c.coverage(at + c.u16(at+2))
		c.each(at+6, c.u16(at+4), 4, 40, func(rec int) { c.anchorAt(at, rec); c.anchorAt(at, rec+2) })
	case 4, 5, 6:
		c.marks(kind, at)
	case 7:
		c.context(at)
	case 8:
		c.chained(at)
	default:
		c.fail("there is no positioning of type %d", kind)
	}
}

func (c *checker) pairs(format, at int) {
	c.coverage(at + c.u16(at+2))
	size := valueSize(c.u16(at+4)) + valueSize(c.u16(at+6))
	if format == 1 {
		c.offsets(at+10, c.u16(at+8), at, 48, func(set int) { c.has(set, 2+c.u16(set)*(2+size)) })
		return
	}
	c.classes(at + c.u16(at+8))
	c.classes(at + c.u16(at+10))
	c.has(at+16, c.u16(at+12)*c.u16(at+14)*size)
}

// marks walks the mark-to-base, mark-to-ligature and mark-to-mark tables,
// which differ only in one more level for ligatures.
func (c *checker) marks(kind, at int) {
	c.coverage(at + c.u16(at+2))
	c.coverage(at + c.u16(at+4))
	classes := c.u16(at + 6)
	array := at + c.u16(at+8)
	c.each(array+2, c.u16(array), 4, 32, func(rec int) {
		if c.u16(rec) >= classes {
			c.fail("a mark is in class %d of %d", c.u16(rec), classes)
		}
		c.anchorAt(array, rec+2)
	})
	bases := at + c.u16(at+10)
	row := func(base int) {
		c.each(base+2, c.u16(base), 2*classes, 24+2*classes, func(rec int) {
			for k := range classes {
				c.anchorAt(base, rec+2*k)
			}
		})
	}
	if kind == 5 {
		c.offsets(bases+2, c.u16(bases), bases, 48, row)
		return
	}
	row(bases)
}

func (c *checker) context(at int) {
	switch c.u16(at) {
	case 1:
		c.coverage(at + c.u16(at+2))
		c.ruleSets(at+4, at, c.rule)
	case 2:
		c.coverage(at + c.u16(at+2))
		c.classes(at + c.u16(at+4))
		c.ruleSets(at+6, at, c.rule)
	case 3:
		n := c.u16(at + 2)
		c.offsets(at+6, n, at, 16, c.coverage)
		c.each(at+6+2*n, c.u16(at+4), 4, 4, nil)
	default:
		c.fail("there is no context of format %d", c.u16(at))
	}
}

func (c *checker) chained(at int) {
	switch c.u16(at) {
	case 1:
		c.coverage(at + c.u16(at+2))
		c.ruleSets(at+4, at, c.chainedRule)
	case 2:
		c.coverage(at + c.u16(at+2))
		for _, off := range [3]int{4, 6, 8} {
			c.classes(at + c.u16(at+off))
		}
		c.ruleSets(at+10, at, c.chainedRule)
	case 3:
		next := c.coverages(at+2, at)
		next = c.coverages(next, at)
		next = c.coverages(next, at)
		c.each(next+2, c.u16(next), 4, 4, nil)
	default:
		c.fail("there is no chained context of format %d", c.u16(at))
	}
}

func (c *checker) ruleSets(at, base int, rule func(at int)) {
	c.offsets(at+2, c.u16(at), base, 24, func(set int) { c.offsets(set+2, c.u16(set), set, 104, rule) })
}

func (c *checker) rule(at int) {
	n := c.u16(at)
	if n == 0 {
		c.fail("a rule has no glyphs")
	}
	c.each(at+4, n-1, 2, 2, nil)
	c.each(at+4+2*(n-1), c.u16(at+2), 4, 4, nil)
}

func (c *checker) chainedRule(at int) {
	before := c.u16(at)
	c.each(at+2, before, 2, 2, nil)
	at += 2 + 2*before
	n := c.u16(at)
	if n == 0 {
		c.fail("a rule has no glyphs")
	}
	c.each(at+2, n-1, 2, 2, nil)
	at += 2 + 2*(n-1)
	after := c.u16(at)
	c.each(at+2, after, 2, 2, nil)
	at += 2 + 2*after
	c.each(at+2, c.u16(at), 4, 4, nil)
}

// coverages walks a counted array of offsets to coverages and returns the
// position behind it.
func (c *checker) coverages(at, base int) int {
	n := c.u16(at)
	c.offsets(at+2, n, base, 16, c.coverage)
	return at + 2 + 2*n
}

func (c *checker) coverage(at int) {
	switch c.u16(at) {
	case 1:
		c.each(at+4, c.u16(at+2), 2, 2, nil)
	case 2:
		c.each(at+4, c.u16(at+2), 6, 6, nil)
	default:
		c.fail("there is no coverage of format %d", c.u16(at))
	}
	c.spend(48)
}

func (c *checker) classes(at int) {
	switch c.u16(at) {
	case 1:
		c.each(at+6, c.u16(at+4), 2, 2, nil)
	case 2:
		c.each(at+4, c.u16(at+2), 6, 6, nil)
	default:
		c.fail("there is no class definition of format %d", c.u16(at))
	}
	c.spend(48)
}

func valueSize(format int) int { return 2 * bits.OnesCount16(uint16(format)) }

// value walks the device tables of one value record; base is where their
// offsets count from.
func (c *checker) value(base, at, format int) {
	if !c.has(at, valueSize(format)) {
		return
	}
	for bit := 1; bit <= 0x80; bit <<= 1 {
		if format&bit == 0 {
			continue
		}
		if off := c.u16(at); bit >= 0x10 && off != 0 {
			c.device(base + off)
		}
		at += 2
	}
}

func (c *checker) device(at int) {
	format := c.u16(at + 4)
	if format >= 1 && format <= 3 {
		c.spend(c.u16(at+2) - c.u16(at) + 1)
	}
	c.spend(32)
}

// anchorAt follows the offset at the position to an anchor; null is none.
func (c *checker) anchorAt(base, at int) {
	off := c.u16(at)
	if off == 0 || !c.spend(32) {
		return
	}
	anchor := base + off
	c.has(anchor, 6)
	if c.u16(anchor) != 3 {
		return
	}
	for _, at := range [2]int{anchor + 6, anchor + 8} {
		if off := c.u16(at); off != 0 {
			c.device(anchor + off)
		}
	}
}
