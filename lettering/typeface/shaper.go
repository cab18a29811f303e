package typeface

import (
	"fmt"
	"unicode"

	"github.com/go-text/typesetting/font"
	ot "github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
	"golang.org/x/text/unicode/norm"
)

// Glyph is one placed glyph of a line, in font units.
type Glyph struct {
	ID      uint32
	X, Y    float64 // where its origin is drawn: pen position plus the shaper's offset
	Advance float64 // how far the pen moves after it, pair kerning included
	Cluster int     // index of the first rune of the NFC text that it draws
	Mark    bool    // a mark that the shaper placed on the glyph before it, and that must move with it
}

// Line is a shaped text: glyphs in the order drawn, the pen starting at 0.
type Line struct {
	Glyphs  []Glyph
	Advance float64 // pen position at the end
}

// MaxRunes is the longest text that Shape takes. A name is far shorter; the
// bound keeps a hostile font and a hostile roster from multiplying.
const MaxRunes = 1000

// Shaper shapes text in one typeface and in the instances of it. It reuses
// its memory, and is NOT safe for concurrent use: take one per goroutine.
type Shaper struct {
	face    *Face
	work    *font.Face
	font    *harfbuzz.Font
	buffers map[[2]int]*harfbuzz.Buffer // by the feature variations in force
	buffer  *harfbuzz.Buffer
	runes   []rune
	riders  []riding // accents put on letters here, in the order of the text
	asked   string   // language as last given ...
	lang    language.Language
}

// features of every line: kerning on, the ligatures off that would join two
// letters into one glyph; all else stays at the shaper's default.
var features = []harfbuzz.Feature{
	{Tag: ot.MustNewTag("kern"), Value: 1, End: harfbuzz.FeatureGlobalEnd},
	{Tag: ot.MustNewTag("liga"), Value: 0, End: harfbuzz.FeatureGlobalEnd},
	{Tag: ot.MustNewTag("clig"), Value: 0, End: harfbuzz.FeatureGlobalEnd},
	{Tag: ot.MustNewTag("dlig"), Value: 0, End: harfbuzz.FeatureGlobalEnd},
}

// undetermined stands for no language. It must not be empty: the shaper would
// then look into the process's environment.
const undetermined = language.Language("und")

// NewShaper returns a shaper for this face.
func (f *Face) NewShaper() *Shaper {
	work := font.NewFace(f.source.font)
	s := &Shaper{
		work: work, font: harfbuzz.NewFont(work),
		buffers: map[[2]int]*harfbuzz.Buffer{},
		lang:    undetermined,
	}
	s.turn(f)
	return s
}

// Face returns the face that the shaper shapes in.
func (s *Shaper) Face() *Face { return s.face }

// Use turns the shaper to another instance of the same font file, which is
// much cheaper than a new shaper. An instance of another file is an error.
func (s *Shaper) Use(f *Face) error {
	if f.source != s.face.source {
		return fmt.Errorf("a shaper for %s cannot shape in %s; make a new one", s.face.ID(), f.ID())
	}
	if f != s.face {
		s.turn(f)
	}
	return nil
}

// turn sets the instance. The library keeps its shaping plans by face and
// language alone, although the alternates in force depend on the instance;
// one buffer for each set of feature variations keeps the plans apart.
func (s *Shaper) turn(f *Face) {
	s.face = f
	s.work.SetCoords(f.coords)
	key := [2]int{s.work.GSUB.FindVariationIndex(f.coords), s.work.GPOS.FindVariationIndex(f.coords)}
	if s.buffers[key] == nil {
		s.buffers[key] = harfbuzz.NewBuffer()
	}
	s.buffer = s.buffers[key]
}

// Shape lays out a text, a single line, in the shaper's face. The text is
// brought to NFC; lang is a BCP 47 tag, or empty. A character that the face
// cannot draw is a *MissingError. The empty text is an empty line.
func (s *Shaper) Shape(text, lang string) (Line, error) {
	var line Line
	err := s.ShapeInto(&line, text, lang)
	return line, err
}

// ShapeInto is Shape that fills a line of the caller's, reusing its memory.
// After an error the line is empty.
func (s *Shaper) ShapeInto(line *Line, text, lang string) (err error) {
	line.Glyphs, line.Advance = line.Glyphs[:0], 0
	if err := s.read(text); err != nil {
		return err
	}
	if len(s.runes) == 0 {
		return nil
	}
	defer func() {
		if r := recover(); r != nil {
			line.Glyphs, line.Advance = line.Glyphs[:0], 0
			err = fmt.Errorf("%s: the layout tables are damaged, so %q cannot be set (%v); use another copy of the font", s.face.ID(), text, r)
			s.buffers = map[[2]int]*harfbuzz.Buffer{} // what the panic left behind is not trusted
			s.turn(s.face)
		}
	}()
	s.run(lang)
	if err := s.check(text); err != nil {
		return err
	}
	return s.place(line, text)
}

// read brings the text to NFC and puts in place of the two apostrophe letters
// the quotation marks of the same shape where the face lacks them. A letter
// that is put together here is shaped as its base letter, so that it has the
// base's kerning.
func (s *Shaper) read(text string) error {
	if !norm.NFC.IsNormalString(text) {
		text = norm.NFC.String(text)
	}
	s.runes, s.riders = s.runes[:0], s.riders[:0]
	for _, r := range text {
		r = s.face.source.standIn(r)
		if c, ok := s.face.source.composed(r); ok {
			s.riders = append(s.riders, riding{composition: c, cluster: len(s.runes)})
			r = c.letter
		}
		s.runes = append(s.runes, r)
		if len(s.runes) > MaxRunes {
			return fmt.Errorf("the text starting %q is longer than %d characters; shorten it", string(s.runes[:20]), MaxRunes)
		}
	}
	return nil
}

func (s *Shaper) run(lang string) {
	if lang != s.asked {
		s.asked, s.lang = lang, language.NewLanguage(lang)
		if s.lang == "" {
			s.lang = undetermined
		}
	}
	b := s.buffer
	b.Clear()
	b.AddRunes(s.runes, 0, len(s.runes))
	b.Props.Language = s.lang
	b.GuessSegmentProperties()
	b.Shape(s.font, features)
}

// check refuses a line in which a character is not drawn as itself. Outlines
// are tried at the default instance, where they are cached: what can be wrong
// with one (its structure; the deltas were walked at the door) is the same at
// every setting, and fitting by width tries many settings.
func (s *Shaper) check(text string) error {
	for _, r := range s.runes {
		if _, ok := s.face.source.nominal(r); !ok && !s.face.Has(r) {
			return missing(s.face, text, r)
		}
	}
	for i, g := range s.buffer.Info {
		if g.Glyph == 0 {
			return missing(s.face, text, s.blame(i))
		}
		if err := s.face.source.root.glyph(uint32(g.Glyph)).err; err != nil {
			r := s.blame(i)
			return fmt.Errorf("%s: the glyph for %q (%U) cannot be drawn: %w; use another copy of the font", s.face.ID(), r, r, err)
		}
	}
	return nil
}

// blame returns the character behind glyph i: the first unmapped one of its
// cluster, or else the cluster's first.
func (s *Shaper) blame(i int) rune {
	from := s.buffer.Info[i].Cluster
	to := len(s.runes)
	for _, g := range s.buffer.Info {
		if g.Cluster > from && g.Cluster < to {
			to = g.Cluster
		}
	}
	for _, r := range s.runes[from:to] {
		if _, ok := s.face.source.nominal(r); !ok {
			return r
		}
	}
	return s.runes[from]
}

// place writes the line. A letter whose accent found no glyph to ride on is
// missing, not drawn without it.
func (s *Shaper) place(line *Line, text string) error {
	pen, penY := 0.0, 0.0
	for i, g := range s.buffer.Info {
		p := s.buffer.Pos[i]
		line.Glyphs = append(line.Glyphs, Glyph{
			ID: uint32(g.Glyph), X: pen + float64(p.XOffset), Y: penY + float64(p.YOffset),
			Advance: float64(p.XAdvance), Cluster: g.Cluster, Mark: s.isMark(i),
		})
		pen += float64(p.XAdvance)
		penY += float64(p.YAdvance)
		if len(s.riders) > 0 && (i == 0 || s.buffer.Info[i-1].Cluster != g.Cluster) {
			pen = s.ride(line, pen)
		}
	}
	line.Advance = pen
	for _, r := range s.riders {
		if !r.set {
			line.Glyphs, line.Advance = line.Glyphs[:0], 0
			return missing(s.face, text, []rune(norm.NFC.String(text))[r.cluster])
		}
	}
	return nil
}

// isMark reports whether glyph i rides on the one before it: the shaper puts
// a mark into the cluster of its base. Fonts without glyph classes are judged
// by the advance, which the shaper takes away from marks.
func (s *Shaper) isMark(i int) bool {
	const markClass = 3 // GDEF glyph class definition, OpenType 1.9.1
	info := s.buffer.Info
	if i == 0 || info[i].Cluster != info[i-1].Cluster {
		return false
	}
	if s.buffer.Pos[i].XAdvance == 0 {
		return true
	}
	classes := s.work.GDEF.GlyphClassDef
	if classes == nil {
		return false
	}
	class, _ := classes.Class(uint16(info[i].Glyph))
	return class == markClass
}

// isSpace reports a space that draws nothing, which the shaper makes from the
// face's plain space when the face does not map it.
func isSpace(r rune) bool { return unicode.Is(unicode.Zs, r) }
