package typeface

import (
	"encoding/binary"
	"fmt"
	"slices"
)

// checked is what the walk over the tables found out.
type checked struct {
	glyphs     int
	upem       int
	axes       []Axis
	gsub, gpos int // lookups that the tables count
	spent      int // bytes that parsing will need
}

// check walks every table that the parsers will see, and takes out or trims
// what lettering does not need. After it, parsing is bounded in memory and
// time whatever the file says.
func (f *fontFile) check() (checked, error) {
	if err := f.kinds(); err != nil {
		return checked{}, err
	}
	spent := 0
	table := func(tag string) *checker { return &checker{table: tag, data: f.tables[tag], spent: &spent} }
	head, maxp, hhea := table("head"), table("maxp"), table("hhea")
	found := checked{upem: head.u16(18), glyphs: maxp.u16(4)}
	if head.u32(12) != 0x5F0F3CF5 {
		head.fail("its magic number is %#x", head.u32(12))
	}
	if found.upem < 16 || found.upem > 16384 {
		head.fail("%d units per em, where 16 to 16384 are allowed", found.upem)
	}
	long := hhea.u16(34)
	if long < 1 || long > found.glyphs {
		hhea.fail("%d advances for %d glyphs", long, found.glyphs)
	}
	hmtx := table("hmtx")
	hmtx.each(0, long, 4, 4, nil)
	hmtx.each(4*long, found.glyphs-long, 2, 2, nil)
	walked := []*checker{head, maxp, hhea, hmtx, f.checkCmap(table("cmap"))}
	for _, c := range walked {
		if c.err != nil {
			return checked{}, c.err
		}
	}
	points, err := f.checkOutlines(table, found.glyphs, head.u16(50) == 1)
	if err != nil {
		return checked{}, err
	}
	if err := f.checkVariations(table, &found, points); err != nil {
		return checked{}, err
	}
	err = f.checkLayouts(table, &found)
	found.spent = spent
	return found, err
}

// kinds refuses the kinds of font that would be read wrongly or not at all.
func (f *fontFile) kinds() error {
	for _, need := range [...]string{"head", "maxp", "hhea", "hmtx", "cmap"} {
		if f.tables[need] == nil {
			return fmt.Errorf("it has no table %q; %s", need, another)
		}
	}
	_, morx := f.tables["morx"]
	_, mort := f.tables["mort"]
	_, kerx := f.tables["kerx"]
	switch {
	case f.tables["CFF2"] != nil:
		return fmt.Errorf("it is a variable font with CFF2 outlines; use its TrueType version (.ttf)")
	case morx || mort || kerx && f.tables["GPOS"] == nil:
		return fmt.Errorf("it is laid out by Apple's own tables (morx, mort or kerx), which are not read; use the maker's OpenType version")
	case f.magic == magicCFF && f.tables["CFF "] == nil:
		return fmt.Errorf("it has no outlines (no table \"CFF \"); use a font with outlines, not bitmaps")
	case f.magic != magicCFF && (f.tables["glyf"] == nil || f.tables["loca"] == nil):
		return fmt.Errorf("it has no outlines (no tables \"glyf\" and \"loca\"); use a font with outlines, not bitmaps")
	}
	if f.magic == magicCFF {
		delete(f.tables, "glyf")
		delete(f.tables, "loca")
	} else {
		delete(f.tables, "CFF ")
	}
	delete(f.tables, "OS/2") // its heights are measured instead
	f.tables["post"] = plainPost()
	return nil
}

func (f *fontFile) checkOutlines(table func(string) *checker, glyphs int, long bool) ([]int, error) {
	if f.magic == magicCFF {
		c := table("CFF ")
		c.checkCFF(glyphs)
		return nil, c.err
	}
	glyf, loca := table("glyf"), table("loca")
	points := glyf.checkGlyf(loca, glyphs, long)
	if loca.err != nil {
		return nil, loca.err
	}
	return points, glyf.err
}

func (f *fontFile) checkVariations(table func(string) *checker, found *checked, points []int) error {
	if f.tables["fvar"] == nil || points == nil {
		for _, tag := range [...]string{"fvar", "avar", "gvar", "HVAR"} {
			delete(f.tables, tag)
		}
		return nil
	}
	f.tables["fvar"] = slices.Clone(f.tables["fvar"])
	fvar := table("fvar")
	found.axes = fvar.checkFvar()
	if fvar.err != nil {
		return fvar.err
	}
	if len(found.axes) > 0 && f.tables["gvar"] == nil {
		return fmt.Errorf("it has axes but no table \"gvar\" to move its outlines; %s", another)
	}
	for _, walk := range [...]struct {
		tag string
		do  func(c *checker)
	}{
		{"avar", func(c *checker) { c.checkAvar(len(found.axes)) }},
		{"gvar", func(c *checker) { c.checkGvar(points, len(found.axes)) }},
		{"HVAR", (*checker).checkHVAR},
	} {
		if f.tables[walk.tag] == nil {
			continue
		}
		c := table(walk.tag)
		walk.do(c)
		if c.err != nil {
			return c.err
		}
	}
	return nil
}

func (f *fontFile) checkLayouts(table func(string) *checker, found *checked) error {
	if f.tables["GDEF"] != nil {
		f.tables["GDEF"] = slices.Clone(f.tables["GDEF"])
		c := table("GDEF")
		if c.checkGDEF(); c.err != nil {
			return c.err
		}
	}
	for _, layout := range [...]struct {
		tag   string
		count *int
	}{{"GSUB", &found.gsub}, {"GPOS", &found.gpos}} {
		if f.tables[layout.tag] == nil {
			continue
		}
		c := table(layout.tag)
		if *layout.count = c.checkLayout(); c.err != nil {
			return c.err
		}
	}
	if f.tables["kern"] == nil {
		return nil
	}
	c := table("kern")
	c.checkKern()
	if c.err != nil && found.gpos > 0 {
		delete(f.tables, "kern") // many old kern tables are broken, and GPOS comes first
		return nil
	}
	return c.err
}

// checkKern walks a kern table of the Windows kind with plain pair lists.
func (c *checker) checkKern() {
	if c.u16(0) != 0 && c.err == nil {
		c.err = fmt.Errorf("its kerning is in Apple's own format, which is not read; use the maker's OpenType version")
	}
	at := 4
	for range c.u16(2) {
		if c.err != nil {
			return
		}
		length := c.u16(at + 2)
		if format := c.u16(at+4) >> 8; format != 0 {
			c.fail("it has pairs of format %d; format 0 is read", format)
		}
		n := c.u16(at + 6)
		if length < 14+6*n {
			c.fail("%d pairs do not fit into %d bytes", n, length)
		}
		c.each(at+14, n, 6, 16, nil)
		c.spend(64)
		at += length
	}
}

// checkCmap keeps of all the character maps the one that the shaper would
// choose, if its format is one that both parsers read.
func (f *fontFile) checkCmap(c *checker) *checker {
	order := [...][2]int{{3, 10}, {0, 6}, {0, 4}, {3, 1}, {0, 3}, {0, 2}, {0, 1}, {0, 0}}
	best, at := len(order), 0
	c.each(4, min(c.u16(2), 64), 8, 0, func(rec int) {
		rank := slices.Index(order[:], [2]int{c.u16(rec), c.u16(rec + 2)})
		sub := c.u32(rec + 4)
		if rank < 0 || rank >= best || !slices.Contains([]int{4, 6, 12}, c.u16(sub)) {
			return
		}
		best, at = rank, sub
	})
	if c.err == nil && at == 0 {
		c.err = fmt.Errorf("it has no Unicode character map (it may be a symbol font); use a Unicode version of the font")
	}
	if c.err != nil {
		return c
	}
	switch c.u16(at) {
	case 4:
		c.segments(at)
	case 6:
		c.each(at+10, c.u16(at+8), 2, 2, nil)
	case 12:
		c.each(at+16, c.u32(at+12), 12, 12, func(g int) {
			if from, to := c.u32(g), c.u32(g+4); from > to || to > 0x10FFFF {
				c.fail("it maps U+%04X to U+%04X", from, to)
			}
		})
	}
	kept := make([]byte, 12, 12+len(c.data)-at)
	binary.BigEndian.PutUint16(kept[2:], 1)
	binary.BigEndian.PutUint16(kept[4:], uint16(order[best][0]))
	binary.BigEndian.PutUint16(kept[6:], uint16(order[best][1]))
	binary.BigEndian.PutUint32(kept[8:], 12)
	f.tables["cmap"] = append(kept, c.data[at:]...)
	return c
}

// segments walks a format 4 map. A segment is unfolded by the parser, so
// overlapping ones are counted in full.
func (c *checker) segments(at int) {
	n := c.u16(at+6) / 2
	ends, starts := at+14, at+16+2*n
	c.each(ends, n, 2, 40, nil)
	c.each(starts, n, 2, 0, func(start int) {
		from, to := c.u16(start), c.u16(start-2*n-2)
		if from > to {
			c.fail("it maps U+%04X to U+%04X", from, to)
		}
		if c.u16(start+4*n) != 0 {
			c.spend(2 * (to - from + 1))
		}
	})
}
