package typeface

import (
	"encoding/binary"
	"fmt"
	"slices"
	"strings"
)

// MaxFileSize is the largest font file, in bytes, that Open reads.
const MaxFileSize = 8 << 20

// maxTables is far above what fonts have, some twenty.
const maxTables = 64

// fontFile is a font file cut into its tables, as the OpenType specification
// (1.9.1, "Organization of an OpenType font") lays them out. Tables that
// lettering does not need are left out, so that no parser ever sees them:
// bitmaps, colour, hints, Apple layout and vertical metrics are where hostile
// files hide most.
type fontFile struct {
	magic  uint32
	tables map[string][]byte
}

const (
	magicTrueType = 0x00010000
	magicApple    = 0x74727565 // "true"
	magicCFF      = 0x4F54544F // "OTTO"
)

// cut reads the table directory. Errors say what is wrong and what to do.
func cut(data []byte) (*fontFile, error) {
	if len(data) > MaxFileSize {
		return nil, fmt.Errorf("it has %d bytes, more than the %d that are read; use a version with fewer scripts", len(data), MaxFileSize)
	}
	if len(data) < 12 {
		return nil, fmt.Errorf("it has %d bytes, too few for a font; use the original .ttf or .otf file", len(data))
	}
	f := &fontFile{magic: binary.BigEndian.Uint32(data), tables: map[string][]byte{}}
	if err := checkMagic(f.magic, string(data[:4])); err != nil {
		return nil, err
	}
	n := int(binary.BigEndian.Uint16(data[4:]))
	if n == 0 || n > maxTables {
		return nil, fmt.Errorf("its header counts %d tables, where 1 to %d are read; %s", n, maxTables, another)
	}
	if len(data) < 12+16*n {
		return nil, fmt.Errorf("it ends inside the table directory; the file is cut short, so copy it again from its source")
	}
	for i := range n {
		entry := data[12+16*i:]
		tag := string(entry[:4])
		offset, length := uint64(binary.BigEndian.Uint32(entry[8:])), uint64(binary.BigEndian.Uint32(entry[12:]))
		if offset+length > uint64(len(data)) {
			return nil, fmt.Errorf("its table %q reaches past the end of the file (%d of %d bytes); the file is cut short, so copy it again from its source", tag, offset+length, len(data))
		}
		if _, twice := f.tables[tag]; twice && slices.Contains(shaping, tag) {
			return nil, fmt.Errorf("it has two tables %q; %s", tag, another)
		}
		f.tables[tag] = data[offset : offset+length : offset+length]
	}
	return f, nil
}

// another is the remedy for a file that is simply damaged.
const another = "the file is damaged, so use another copy of the font"

func checkMagic(magic uint32, text string) error {
	const save = "use the .ttf or .otf file of the font itself"
	switch {
	case magic == magicTrueType || magic == magicApple || magic == magicCFF:
		return nil
	case text == "ttcf":
		return fmt.Errorf("it is a collection of several fonts (.ttc); take the one font you need out of it and use that .ttf or .otf file")
	case text == "wOFF" || text == "wOF2":
		return fmt.Errorf("it is a web font (.woff or .woff2), which often lacks letters; %s", save)
	case strings.HasPrefix(text, "%!") || text[0] == 0x80:
		return fmt.Errorf("it is a PostScript Type 1 font; use its OpenType version")
	case text == "typ1":
		return fmt.Errorf("it is an old Type 1 font in a Macintosh wrapper; use its OpenType version")
	}
	return fmt.Errorf("it does not start like a TrueType or OpenType font; %s", save)
}

// shaping lists the tables that the shaper reads, after the checks have
// trimmed them; measuring those that the second parser compares with.
var (
	shaping   = []string{"CFF ", "GDEF", "GPOS", "GSUB", "HVAR", "OS/2", "avar", "cmap", "fvar", "glyf", "gvar", "head", "hhea", "hmtx", "kern", "loca", "maxp"}
	measuring = []string{"CFF ", "OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"}
)

// pack writes a font file of the listed tables, those that are there.
func (f *fontFile) pack(tags []string) []byte {
	present := slices.DeleteFunc(slices.Clone(tags), func(tag string) bool { return f.tables[tag] == nil })
	size := 12 + 16*len(present)
	for _, tag := range present {
		size += (len(f.tables[tag]) + 3) &^ 3
	}
	out := make([]byte, 12+16*len(present), size)
	binary.BigEndian.PutUint32(out, f.magic)
	binary.BigEndian.PutUint16(out[4:], uint16(len(present)))
	for i, tag := range present {
		t := f.tables[tag]
		entry := out[12+16*i:]
		copy(entry, tag)
		binary.BigEndian.PutUint32(entry[8:], uint32(len(out)))
		binary.BigEndian.PutUint32(entry[12:], uint32(len(t)))
		out = append(out, t...)
		out = append(out, make([]byte, (4-len(t)%4)%4)...)
	}
	return out
}

// plainPost stands in for the glyph names, which lettering does not need but
// the second parser insists on: version 3.0, no names.
func plainPost() []byte {
	post := make([]byte, 32)
	binary.BigEndian.PutUint32(post, 0x00030000)
	return post
}
