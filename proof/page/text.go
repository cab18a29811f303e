package page

import (
	"strings"
	"unicode"

	"yokeline/lettering/geom"
)

// MMPerPoint is the length of a typographic point: 1/72 in.
const MMPerPoint = 25.4 / 72

// Weight is a weight of the text face.
type Weight uint8

// The two weights that captions are set in.
const (
	Regular  Weight = iota // 400
	SemiBold               // 600
)

// Align is where a line stands against its x.
type Align uint8

// The line starts at x, is centred on it, or ends at it.
const (
	Start Align = iota
	Middle
	End
)

// before returns how much of a line's width stands before its x.
func (a Align) before(width float64) float64 {
	return [...]float64{Start: 0, Middle: width / 2, End: width}[a]
}

// Style is how a line of text is set: size in points, tracking in mm after
// each glyph but the last.
type Style struct {
	Size     float64
	Weight   Weight
	Colour   Colour
	Tracking float64
	Align    Align
}

// Span is a piece of a line in one style; its Align is not used.
type Span struct {
	Style Style
	Text  string
}

func (b *Book) face(w Weight) *face { return b.faces[min(int(w), len(b.faces)-1)] }

// FontData returns the font file of a weight; callers must not change it.
func (b *Book) FontData(w Weight) []byte { return b.face(w).data }

// Outline returns a glyph's outline in font units, y up, and the units per em;
// callers must not change it.
func (b *Book) Outline(w Weight, id uint32) (outline geom.Path, unitsPerEm float64) {
	f := b.face(w)
	return f.outline(id), f.upem
}

// set returns the line's glyphs in mm from its start, and its width in mm.
func (b *Book) set(s Style, text string) (string, []Glyph, float64) {
	f := b.face(s.Weight)
	text = f.printable(text)
	glyphs, advance := f.set(text)
	k := s.Size * MMPerPoint / f.upem
	track := 0.0
	for i := range glyphs {
		if i > 0 && !unicode.Is(unicode.Mn, glyphs[i].Rune) {
			track += s.Tracking
		}
		glyphs[i].X, glyphs[i].Y = glyphs[i].X*k+track, glyphs[i].Y*k
	}
	return text, glyphs, advance*k + track
}

// Width returns the width in mm that the text takes in one line.
func (b *Book) Width(s Style, text string) float64 {
	_, _, width := b.set(s, text)
	return width
}

// Width returns the width in mm that the text takes in one line.
func (p *Pen) Width(s Style, text string) float64 { return p.book.Width(s, text) }

// Text sets one line on the baseline y and returns its width in mm. A
// character that the text face lacks is printed as its number, [U+1F3C6].
func (p *Pen) Text(x, y float64, s Style, text string) float64 {
	text, glyphs, width := p.book.set(s, text)
	x -= s.Align.before(width)
	if strings.TrimSpace(text) != "" {
		p.ops = append(p.ops, Words{x, y, s, text, glyphs})
	}
	return width
}

// Outlines returns the outlines of the line that Text would set, for a halo
// under it.
func (p *Pen) Outlines(x, y float64, s Style, text string) geom.Path {
	_, glyphs, width := p.book.set(s, text)
	x -= s.Align.before(width)
	return p.book.outlines(Words{X: x, Y: y, Style: s, Glyphs: glyphs})
}

func (b *Book) outlines(o Words) geom.Path {
	var line geom.Path
	for _, g := range o.Glyphs {
		outline, upem := b.Outline(o.Style.Weight, g.ID)
		k := o.Style.Size * MMPerPoint / upem
		line = append(line, outline.Transform(geom.Affine{A: k, D: -k, E: o.X + g.X, F: o.Y + g.Y})...)
	}
	return line
}

// Spans sets pieces of text one after the other on the baseline y, aligned as
// a whole, and returns the x where the last one ends.
func (p *Pen) Spans(x, y float64, a Align, spans ...Span) float64 {
	total := 0.0
	for _, s := range spans {
		total += p.Width(s.Style, s.Text)
	}
	x -= a.before(total)
	for _, s := range spans {
		s.Style.Align = Start
		x += p.Text(x, y, s.Style, s.Text)
	}
	return x
}

// Paragraph sets the text in lines of at most width mm, the first on the
// baseline y, each further one leading points lower, and returns the baseline
// of the line that would follow.
func (p *Pen) Paragraph(x, y, width, leading float64, s Style, text string) float64 {
	for _, line := range p.book.Wrap(s, width, text) {
		p.Text(x, y, s, line)
		y += leading * MMPerPoint
	}
	return y
}

// Wrap breaks the text into lines of at most width mm: at spaces and line
// feeds; a word wider than a line after its hyphens, or else anywhere, with no
// hyphen added. No-break spaces hold. At least one line is returned.
func (b *Book) Wrap(s Style, width float64, text string) []string {
	var lines []string
	for paragraph := range strings.SplitSeq(text, "\n") {
		line := ""
		for word := range strings.SplitSeq(paragraph, " ") {
			if joined := line + " " + word; line != "" && b.Width(s, joined) <= width {
				line = joined
				continue
			}
			if line != "" {
				lines = append(lines, line)
			}
			parts := b.breakWord(s, width, word)
			lines = append(lines, parts[:len(parts)-1]...)
			line = parts[len(parts)-1]
		}
		lines = append(lines, line)
	}
	return lines
}

// breakWord cuts a word that is wider than a line.
func (b *Book) breakWord(s Style, width float64, word string) []string {
	var out []string
	for b.Width(s, word) > width {
		cut := b.cutAt(s, width, word)
		if cut >= len(word) {
			break
		}
		out = append(out, word[:cut])
		word = word[cut:]
	}
	return append(out, word)
}

// cutAt returns the length in bytes of the longest start of the word that fits
// and ends with a hyphen, else of the longest that fits, else of its first
// character. Marks stay with the character they sit on.
func (b *Book) cutAt(s Style, width float64, word string) int {
	hyphen, any, first := 0, 0, len(word)
	for i, r := range word {
		if i == 0 || unicode.Is(unicode.M, r) {
			continue
		}
		first = min(first, i)
		if b.Width(s, word[:i]) > width {
			break
		}
		any = i
		if before := word[:i]; strings.HasSuffix(before, "-") || strings.HasSuffix(before, "‐") {
			hyphen = i
		}
	}
	switch {
	case hyphen > 0:
		return hyphen
	case any > 0:
		return any
	}
	return first
}
