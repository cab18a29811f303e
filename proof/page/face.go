package page

import (
	"bytes"
	"fmt"
	"slices"

	"github.com/go-text/typesetting/font"
	ot "github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/harfbuzz"
	"golang.org/x/text/unicode/norm"

	"yokeline/lettering/geom"
)

// face sets captions. It differs from the lettering's own shaper on purpose:
// PDF text stores one character code a glyph, so only kerning and mark
// placement are on, and every glyph is the face's plain one for its character.
type face struct {
	data     []byte
	face     *font.Face
	shaper   *harfbuzz.Font
	buffer   *harfbuzz.Buffer
	features []harfbuzz.Feature
	outlines map[uint32]geom.Path
	lines    map[string]line
	upem     float64
}

// line is a text as it was set: breaking lines sets the same text many times.
type line struct {
	glyphs  []Glyph
	advance float64
}

func openFace(data []byte) (*face, error) {
	f, err := font.ParseTTF(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("cannot be read: %w", err)
	}
	out := &face{
		data: data, face: f, shaper: harfbuzz.NewFont(f), buffer: harfbuzz.NewBuffer(),
		outlines: map[uint32]geom.Path{}, lines: map[string]line{}, upem: float64(f.Upem()),
	}
	for _, tag := range [...]string{"kern", "mark", "mkmk"} {
		out.features = append(out.features, feature(tag, 1))
	}
	for _, tag := range [...]string{"liga", "clig", "calt", "ccmp", "locl", "rlig", "rclt"} {
		out.features = append(out.features, feature(tag, 0))
	}
	return out, nil
}

func feature(tag string, value uint32) harfbuzz.Feature {
	return harfbuzz.Feature{Tag: ot.MustNewTag(tag), Value: value, End: harfbuzz.FeatureGlobalEnd}
}

// printable returns the text in NFC with every character that the face lacks
// spelled out as [U+1F3C6], so that nothing is ever printed as an empty box.
func (f *face) printable(text string) string {
	text = norm.NFC.String(text)
	for _, r := range text {
		if !f.has(r) {
			return f.spellOut(text)
		}
	}
	return text
}

func (f *face) has(r rune) bool {
	gid, ok := f.face.NominalGlyph(r)
	// Beyond U+FFFF a character has no code in the PDF's two-byte text.
	return ok && gid != 0 && r <= 0xFFFF
}

func (f *face) spellOut(text string) string {
	var out []byte
	for _, r := range text {
		if f.has(r) {
			out = append(out, string(r)...)
		} else {
			out = fmt.Appendf(out, "[U+%04X]", r)
		}
	}
	return string(out)
}

// set returns the glyphs of a printable text, placed in font units, and the
// advance of the whole; the glyphs are the caller's own.
func (f *face) set(text string) ([]Glyph, float64) {
	l, known := f.lines[text]
	if !known {
		l.glyphs, l.advance = f.shape([]rune(text))
		f.lines[text] = l
	}
	return slices.Clone(l.glyphs), l.advance
}

func (f *face) shape(runes []rune) (glyphs []Glyph, advance float64) {
	if len(runes) == 0 {
		return nil, 0
	}
	b := f.buffer
	b.Clear()
	b.AddRunes(runes, 0, len(runes))
	b.GuessSegmentProperties()
	b.Shape(f.shaper, f.features)
	if len(b.Info) != len(runes) {
		return f.plain(runes)
	}
	glyphs = make([]Glyph, 0, len(runes))
	for i, info := range b.Info {
		gid, _ := f.face.NominalGlyph(runes[i])
		if info.Cluster > i || info.Glyph != gid {
			return f.plain(runes)
		}
		pos := b.Pos[i]
		glyphs = append(glyphs, Glyph{
			ID: uint32(gid), Rune: runes[i], X: advance + float64(pos.XOffset), Y: -float64(pos.YOffset),
			Advance: float64(f.face.HorizontalAdvance(gid)) / f.upem,
		})
		advance += float64(pos.XAdvance)
	}
	return glyphs, advance
}

// plain sets without kerning: for text whose glyphs are not one to one with
// its characters even so.
func (f *face) plain(runes []rune) (glyphs []Glyph, advance float64) {
	for _, r := range runes {
		gid, _ := f.face.NominalGlyph(r)
		own := float64(f.face.HorizontalAdvance(gid))
		glyphs = append(glyphs, Glyph{ID: uint32(gid), Rune: r, X: advance, Advance: own / f.upem})
		advance += own
	}
	return glyphs, advance
}

// outline returns the glyph in font units, y up; callers must not change it.
func (f *face) outline(id uint32) geom.Path {
	if p, ok := f.outlines[id]; ok {
		return p
	}
	var p geom.Path
	if o, ok := f.face.GlyphData(font.GID(id)).(font.GlyphOutline); ok {
		for _, s := range o.Segments {
			at := func(i int) geom.Point { return geom.Point{X: float64(s.Args[i].X), Y: float64(s.Args[i].Y)} }
			switch s.Op {
			case ot.SegmentOpMoveTo:
				p.MoveTo(at(0))
			case ot.SegmentOpLineTo:
				p.LineTo(at(0))
			case ot.SegmentOpQuadTo:
				p.QuadTo(at(0), at(1))
			case ot.SegmentOpCubeTo:
				p.CubeTo(at(0), at(1), at(2))
			}
		}
	}
	p = slices.Clip(p)
	f.outlines[id] = p
	return p
}
