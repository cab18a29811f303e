package signpage

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/tdewolff/font"

	"yokeline/fonts"
)

// The faces of the page's text, by the weight that the style sheet calls.
var weights = [...]struct{ id, slot string }{
	{"ibm-plex-sans", "/* face 400 */"}, {"ibm-plex-sans-semibold", "/* face 600 */"},
}

// styleWithFonts returns the style sheet with the text faces in it, each cut down
// to the letters of European languages, the signs of lengths and whatever else
// the given texts hold. What else a coach types, the device sets in a face of
// its own.
func styleWithFonts(texts ...string) (string, error) {
	style := pageStyle
	for _, w := range weights {
		entry, ok := fonts.Lookup(w.id)
		if !ok {
			return "", fmt.Errorf("the catalogue of faces has no %q", w.id)
		}
		data, err := fonts.Read(entry.File)
		if err != nil {
			return "", err
		}
		small, err := subset(data, append(kept(), []rune(strings.Join(texts, ""))...))
		if err != nil {
			return "", fmt.Errorf("face %s: %w", w.id, err)
		}
		source := "src: url(data:font/woff;base64," + base64.StdEncoding.EncodeToString(small) + ") format(\"woff\");"
		if !strings.Contains(style, w.slot) {
			return "", fmt.Errorf("the style sheet has no %s", w.slot)
		}
		style = strings.Replace(style, w.slot, source, 1)
	}
	return style, nil
}

// kept are the characters that the page's faces keep: Latin letters with all
// accents of Europe, and the signs that lengths and sentences are printed with.
func kept() []rune {
	var out []rune
	for r := rune(0x20); r < 0x180; r++ {
		out = append(out, r)
	}
	return append(out, []rune("ȘșȚțẞ‘’“”„–—…·•⁄½¼¾⅛⅜⅝⅞⅓⅔⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉€′″−×\u00a0")...)
}

// subset cuts a face down to some characters and packs it. The result has no
// name of its own: the face's licence reserves its name for the whole.
func subset(data []byte, characters []rune) ([]byte, error) {
	whole, err := font.ParseSFNT(data, 0)
	if err != nil {
		return nil, err
	}
	glyphs := []uint16{0}
	for _, r := range characters {
		if id := whole.GlyphIndex(r); !slices.Contains(glyphs, id) {
			glyphs = append(glyphs, id)
		}
	}
	small, err := whole.Subset(glyphs, font.SubsetOptions{Tables: []string{
		"OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post",
	}})
	if err != nil {
		return nil, err
	}
	return woff(small.Tables)
}

// woff packs the tables of a TrueType face (WOFF File Format 1.0, W3C,
// sections 3 to 5).
func woff(tables map[string][]byte) ([]byte, error) {
	const header, entry = 44, 20
	tags := slices.Sorted(maps.Keys(tables))
	directory, body := make([]byte, 0, entry*len(tags)), []byte(nil)
	full := 12 + 16*len(tags)
	for _, tag := range tags {
		table := tables[tag]
		packed, err := deflated(table)
		if err != nil {
			return nil, err
		}
		directory = append(directory, tag...)
		for _, v := range [...]int{header + entry*len(tags) + len(body), len(packed), len(table)} {
			directory = binary.BigEndian.AppendUint32(directory, uint32(v))
		}
		directory = binary.BigEndian.AppendUint32(directory, checksum(table))
		body = append(body, packed...)
		body = append(body, make([]byte, -len(body)&3)...)
		full += (len(table) + 3) &^ 3
	}
	out := []byte("wOFF\x00\x01\x00\x00")
	out = binary.BigEndian.AppendUint32(out, uint32(header+len(directory)+len(body)))
	out = binary.BigEndian.AppendUint32(out, uint32(len(tags))<<16)
	out = binary.BigEndian.AppendUint32(out, uint32(full))
	out = append(out, make([]byte, header-len(out))...) // no version, no metadata, no private data
	return append(append(out, directory...), body...), nil
}

// deflated packs a table, or returns it as it is where packing gains nothing.
func deflated(table []byte) ([]byte, error) {
	var out bytes.Buffer
	w, err := zlib.NewWriterLevel(&out, zlib.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(table); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	if out.Len() >= len(table) {
		return table, nil
	}
	return out.Bytes(), nil
}

// checksum is the sum of a table's 32-bit words.
func checksum(table []byte) uint32 {
	var sum uint32
	for i := 0; i < len(table); i += 4 {
		var word [4]byte
		copy(word[:], table[i:])
		sum += binary.BigEndian.Uint32(word[:])
	}
	return sum
}
