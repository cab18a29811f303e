package typeface

import (
	"encoding/binary"
	"fmt"
)

// checker walks one table before the parser does. It reads within bounds,
// keeps the first thing that is wrong, and adds up what the parser will
// allocate: in a table of offsets, a few hundred bytes can point at the same
// data thousands of times over and so ask for gigabytes.
type checker struct {
	table string
	data  []byte
	spent *int // bytes the parser will need, over all tables of the file
	err   error
}

// maxSpend is the memory, in bytes, that parsing one font may need beyond
// the file itself. The embedded faces need at most a few million.
const maxSpend = 32 << 20

func (c *checker) fail(format string, args ...any) {
	if c.err == nil {
		c.err = fmt.Errorf("its table %q is wrong: %s; %s", c.table, fmt.Sprintf(format, args...), another)
	}
}

// spend adds to the account and reports whether the walk may go on.
func (c *checker) spend(bytes int) bool {
	*c.spent += bytes
	if *c.spent > maxSpend && c.err == nil {
		c.err = fmt.Errorf("its tables unfold to more than %d MB by the time %q is read; use a version with fewer glyphs", maxSpend>>20, c.table)
	}
	return c.err == nil
}

// has reports whether length bytes lie in the table at the position.
func (c *checker) has(at, length int) bool {
	if c.err == nil && (at < 0 || length < 0 || at > len(c.data)-length) {
		c.fail("it should go on to byte %d but has %d", at+length, len(c.data))
	}
	return c.err == nil
}

func (c *checker) u8(at int) int {
	if !c.has(at, 1) {
		return 0
	}
	return int(c.data[at])
}

func (c *checker) u16(at int) int {
	if !c.has(at, 2) {
		return 0
	}
	return int(binary.BigEndian.Uint16(c.data[at:]))
}

func (c *checker) i16(at int) int { return int(int16(c.u16(at))) }

func (c *checker) u32(at int) int {
	if !c.has(at, 4) {
		return 0
	}
	return int(binary.BigEndian.Uint32(c.data[at:]))
}

// each walks an array of n fixed-size records, charging cost for each.
func (c *checker) each(at, n, size, cost int, visit func(at int)) {
	if !c.has(at, n*size) || !c.spend(n*cost) || visit == nil {
		return
	}
	for i := range n {
		if c.err != nil {
			return
		}
		visit(at + i*size)
	}
}

// offsets walks an array of 16-bit offsets from base; null ones are skipped.
func (c *checker) offsets(at, n, base, cost int, visit func(at int)) {
	c.each(at, n, 2, cost, func(at int) {
		if off := c.u16(at); off != 0 {
			visit(base + off)
		}
	})
}
