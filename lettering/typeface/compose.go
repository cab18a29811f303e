package typeface

import (
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// seat is how an accent sits on its letter.
type seat uint8

const (
	above  seat = iota // clear of the letter's top, centred
	beside             // the caron of ď ť ľ Ľ: an apostrophe at the letter's shoulder
	below              // clear of the letter's foot, centred
	hung               // a cedilla: joined to the middle of the foot
	tail               // an ogonek: joined to the right foot
)

// accent is a combining mark and the spacing character that draws it.
type accent struct {
	mark, spacing rune
	seat          seat
}

// accents are the marks that can be composed. Strokes through a letter (Đ, Ł)
// are no accents of its outline and have no spacing form: such letters stay
// missing, as do horns and hooks.
func accents() []accent {
	return []accent{
		{'\u0300', '`', above}, {'\u0301', '´', above}, {'\u0302', 'ˆ', above}, {'\u0303', '˜', above},
		{'\u0304', '¯', above}, {'\u0306', '˘', above}, {'\u0307', '˙', above}, {'\u0308', '¨', above},
		{'\u030A', '˚', above}, {'\u030B', '˝', above}, {'\u030C', 'ˇ', above},
		{'\u0326', ',', below}, {'\u0327', '¸', hung}, {'\u0328', '˛', tail},
	}
}

func accentOf(mark rune) (accent, bool) {
	for _, a := range accents() {
		if a.mark == mark {
			return a, true
		}
	}
	return accent{}, false
}

// composition is a letter put together from two characters of the face.
type composition struct {
	letter rune // drawn as the base: dotless where the accent takes the dot's place
	accent accent
	glyph  uint32 // draws the accent
}

// Composed reports whether Shape puts the character together from a letter and
// a spacing accent of the face, and from which two: the face neither maps it
// nor has the combining mark, but its own letter and accent are there. The
// letter keeps its kerning; the accent is a glyph of its own that rides on it
// (Glyph.Mark).
func (f *Face) Composed(r rune) (letter, spacing rune, ok bool) {
	c, ok := f.source.composed(r)
	return c.letter, c.accent.spacing, ok
}

// composed finds the composition of a character that the face lacks. Whether
// there is one is decided at the default instance, so that it never depends on
// the width a name is fitted at.
func (s *source) composed(r rune) (composition, bool) {
	if r < 0x80 || s.has(r) {
		return composition{}, false
	}
	letter, mark, ok := decompose(r)
	if !ok || !unicode.Is(unicode.Latin, letter) || !norm.NFD.IsNormalString(string(letter)) {
		return composition{}, false
	}
	a, ok := accentOf(mark)
	if !ok {
		return composition{}, false
	}
	c := composition{letter: letter, accent: a}
	if !s.reseat(&c) || !s.bare(&c) {
		return composition{}, false
	}
	id, ok := s.nominal(c.letter)
	if !ok {
		return composition{}, false
	}
	if c.glyph, ok = s.nominal(c.accent.spacing); !ok || s.root.Bounds(c.glyph).Empty() || s.root.Bounds(id).Empty() {
		return composition{}, false
	}
	_, ok = s.root.place(id, c)
	return c, ok
}

// Shapes of letters and commas, as shares of the em and of the cap height.
const (
	ascends  = 0.08 // a small letter this far over the x height has an ascender
	descends = 0.05 // and one this far under the baseline a descender
	tallest  = 0.35 // a higher comma hangs too deep under a letter
)

// reseat picks the form that an accent takes with a letter. The caron of
// letters with an ascender is an apostrophe beside it, and the cedilla of the
// Latvian consonants a comma (both: Unicode Standard 16.0, section 7.1). Where
// the face's comma is too big to stand under a letter, Romanian ș and ț take
// the cedilla, as they long did in older character sets; Latvian has no such
// custom, so its letters then stay missing.
func (s *source) reseat(c *composition) bool {
	mark := c.accent.mark
	switch c.letter {
	case 'L', 'l':
		if mark == '\u030C' {
			c.accent.spacing, c.accent.seat = '\u2019', beside
		}
	case 'd', 't':
		if mark == '\u030C' && s.topOf(c.letter) > s.root.xTop+ascends*s.upem {
			c.accent.spacing, c.accent.seat = '\u2019', beside
		}
	}
	if mark == '\u0327' && latvian(c.letter) {
		c.accent.spacing, c.accent.seat = ',', below
	}
	if c.accent.seat != below {
		return true
	}
	id, _ := s.nominal(c.letter)
	if s.root.Bounds(id).Min.Y < -descends*s.upem {
		return false // ģ carries its comma above, turned
	}
	comma, ok := s.nominal(',')
	if ok && s.root.Bounds(comma).Height() <= tallest*s.root.capTop {
		return true
	}
	c.accent.spacing, c.accent.seat = '¸', hung
	return mark == '\u0326'
}

func latvian(letter rune) bool {
	switch unicode.ToUpper(letter) {
	case 'G', 'K', 'L', 'N', 'R':
		return true
	}
	return false
}

// bare puts the dotless letter under an accent that takes the dot's place.
// Where the face has none, a small letter drawn as a low capital has no dot.
func (s *source) bare(c *composition) bool {
	if c.accent.seat != above || c.letter != 'i' && c.letter != 'j' {
		return true
	}
	dotless := map[rune]rune{'i': 'ı', 'j': 'ȷ'}[c.letter]
	if _, ok := s.nominal(dotless); ok {
		c.letter = dotless
		return true
	}
	return s.topOf(c.letter) <= s.root.xTop+near*s.upem
}

func (s *source) topOf(r rune) float64 {
	id, _ := s.nominal(r)
	return s.root.Bounds(id).Max.Y
}

// riding is a composition at its place in the text being shaped.
type riding struct {
	composition
	cluster int
	set     bool
}

// ride appends the accents that ride on the glyph just placed, the first of
// its cluster.
func (s *Shaper) ride(line *Line, pen float64) float64 {
	base := line.Glyphs[len(line.Glyphs)-1]
	for i := range s.riders {
		r := &s.riders[i]
		if r.cluster != base.Cluster || r.set {
			continue
		}
		p, ok := s.face.place(base.ID, r.composition)
		if !ok {
			return pen
		}
		r.set = true
		line.Glyphs = append(line.Glyphs, Glyph{
			ID: r.glyph, X: base.X + p.x, Y: base.Y + p.y,
			Advance: p.advance, Cluster: base.Cluster, Mark: true,
		})
		pen += p.advance
	}
	return pen
}
