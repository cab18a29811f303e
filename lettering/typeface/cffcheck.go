package typeface

import "fmt"

// Bounds on CFF programs. A glyph is a small program whose subroutines nest
// ten deep, so a few hundred bytes can run for years; each is run once here,
// counting steps instead of drawing.
const (
	maxGlyphSteps = 200_000
	maxFontSteps  = 20_000_000
	maxStack      = 513
	maxCalls      = 10 // Adobe Technical Note 5177, appendix B
)

// checkCFF walks a CFF table (Adobe Technical Notes 5176 and 5177).
func (c *checker) checkCFF(glyphs int) {
	if c.u8(0) != 1 {
		c.fail("it is of version %d; version 1 is read", c.u8(0))
		return
	}
	_, next := c.index(c.u8(2)) // names
	tops, next := c.index(next)
	_, next = c.index(next) // strings
	global, _ := c.index(next)
	if len(tops) != 1 {
		c.fail("it holds %d fonts, not one", len(tops))
		return
	}
	top := c.dict(tops[0])
	if _, cid := top[0x0C1E]; cid {
		c.err = fmt.Errorf("its glyphs are keyed by CID, as in fonts for Chinese, Japanese and Korean, which is not read; use a Latin version or the .ttf")
		return
	}
	charstrings, _ := c.index(operand(top, 17, 0))
	if len(charstrings) != glyphs {
		c.fail("it draws %d glyphs of %d", len(charstrings), glyphs)
		return
	}
	var local []span
	if size, at := operand(top, 18, 0), operand(top, 18, 1); size > 0 && c.has(at, size) {
		if subrs := operand(c.dict(span{at, at + size}), 19, 0); subrs != 0 {
			local, _ = c.index(at + subrs)
		}
	}
	total := 0
	for i, cs := range charstrings {
		r := cffRun{checker: c, local: local, global: global}
		r.run(cs, 0)
		if total += r.steps; c.err == nil && (r.steps > maxGlyphSteps || total > maxFontSteps) {
			c.fail("drawing glyph %d takes too many steps", i)
		}
		if c.err != nil {
			return
		}
	}
}

// span is a piece of the table, from a byte up to another.
type span struct{ from, to int }

// index reads an INDEX and returns its items and the position behind it.
func (c *checker) index(at int) ([]span, int) {
	n := c.u16(at)
	if n == 0 {
		return nil, at + 2
	}
	size := c.u8(at + 2)
	if size < 1 || size > 4 {
		c.fail("an index has offsets of %d bytes", size)
		return nil, 0
	}
	if !c.has(at+3, size*(n+1)) || !c.spend(24*n) {
		return nil, 0
	}
	offset := func(i int) (v int) {
		for k := range size {
			v = v<<8 | int(c.data[at+3+size*i+k])
		}
		return v
	}
	base := at + 2 + size*(n+1)
	items := make([]span, n)
	for i := range items {
		items[i] = span{base + offset(i), base + offset(i+1)}
		if s := items[i]; s.from > s.to || s.from <= base || !c.has(s.from, s.to-s.from) {
			c.fail("an index is out of order")
			return nil, 0
		}
	}
	return items, items[n-1].to
}

// dict reads a DICT; two-byte operators are 0x0C00 and the second byte. Real
// numbers count as 0: no operand that matters here is one.
func (c *checker) dict(s span) map[int][]int {
	out := map[int][]int{}
	var stack []int
	for at := s.from; at < s.to && c.err == nil; {
		b := c.u8(at)
		at++
		switch {
		case b <= 21:
			if b == 12 {
				b = 0x0C00 | c.u8(at)
				at++
			}
			out[b] = stack
			stack = nil
		case b == 30:
			for c.err == nil {
				nibbles := c.u8(at)
				at++
				if nibbles&0x0F == 0x0F || nibbles>>4 == 0x0F {
					break
				}
			}
			stack = append(stack, 0)
		case b == 29:
			stack = append(stack, int(int32(c.u32(at))))
			at += 4
		default:
			v, size := c.number(b, at)
			stack = append(stack, v)
			at += size
		}
	}
	return out
}

func operand(dict map[int][]int, op, i int) int {
	if args := dict[op]; i < len(args) {
		return args[i]
	}
	return 0
}

// number reads the integer encodings that DICTs and charstrings share; b is
// the first byte, at the position behind it.
func (c *checker) number(b, at int) (v, size int) {
	switch {
	case b == 28:
		return c.i16(at), 2
	case b >= 32 && b <= 246:
		return b - 139, 0
	case b >= 247 && b <= 250:
		return (b-247)*256 + c.u8(at) + 108, 1
	case b >= 251 && b <= 254:
		return -(b-251)*256 - c.u8(at) - 108, 1
	}
	c.fail("byte %d is not a number", b)
	return 0, 0
}

// cffRun runs one glyph's program, keeping the stack and the hints, which
// decide where its bytes mean what.
type cffRun struct {
	*checker
	local, global []span
	stack         []int
	steps, stems  int
	ended         bool
}

func (r *cffRun) run(s span, depth int) {
	for at := s.from; at < s.to && !r.ended && r.err == nil; {
		b := r.u8(at)
		at++
		if r.steps++; r.steps > maxGlyphSteps {
			return
		}
		switch {
		case b == 255:
			r.push(r.i16(at))
			at += 4
		case b == 28 || b >= 32:
			v, size := r.number(b, at)
			r.push(v)
			at += size
		case b == 10:
			r.call(r.local, depth)
		case b == 29:
			r.call(r.global, depth)
		case b == 11:
			return
		default:
			at += r.operator(b, at)
		}
	}
}

func (r *cffRun) push(v int) {
	if r.stack = append(r.stack, v); len(r.stack) > maxStack {
		r.fail("a glyph stacks up more than %d numbers", maxStack)
	}
}

// operator carries out an operator other than a call and returns how many
// bytes after it belong to it.
func (r *cffRun) operator(b, at int) (skip int) {
	const hstem, vstem, escape, endchar, hstemhm, hintmask, cntrmask, vstemhm = 1, 3, 12, 14, 18, 19, 20, 23
	switch b {
	case hstem, vstem, hstemhm, vstemhm:
		r.stems += len(r.stack) / 2
	case hintmask, cntrmask:
		r.stems += len(r.stack) / 2
		skip = (r.stems + 7) / 8
	case escape:
		skip = 1
		// 34 to 37 are the flex curves; the rest is arithmetic that no font
		// program of today uses, and that would make calls unpredictable.
		if op := r.u8(at); op < 34 || op > 37 {
			r.fail("a glyph uses the operator 12 %d, which is not read", op)
		}
	case endchar:
		r.ended = true
	}
	r.steps += len(r.stack)
	r.stack = r.stack[:0]
	return skip
}

func (r *cffRun) call(subrs []span, depth int) {
	if len(r.stack) == 0 || depth >= maxCalls {
		r.fail("a glyph calls a subroutine without a number, or too deep")
		return
	}
	bias := 107
	if n := len(subrs); n >= 33900 {
		bias = 32768
	} else if n >= 1240 {
		bias = 1131
	}
	i := r.stack[len(r.stack)-1] + bias
	r.stack = r.stack[:len(r.stack)-1]
	if i < 0 || i >= len(subrs) {
		r.fail("a glyph calls subroutine %d of %d", i, len(subrs))
		return
	}
	r.run(subrs[i], depth+1)
}
