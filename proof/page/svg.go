package page

import (
	"bytes"
	"html"
	"io"
	"math"

	"yokeline/lettering/geom"
)

// SVGOptions say how a page is written as SVG.
type SVGOptions struct {
	Prefix string // before every id, so that several drawings can share one HTML document
	Paper  bool   // paint the sheet white first
	Inline bool   // no XML declaration and no size in mm: for use inside HTML
}

// WriteSVG writes the page as one SVG with its size and viewBox in mm. Text is
// drawn as outlines, so no font is needed, and carries its words in aria-label.
// The same page gives the same bytes.
func (p *Page) WriteSVG(w io.Writer, o SVGOptions) error {
	s := &svgWriter{book: p.book, prefix: o.Prefix, arts: map[*Art]int{}, glyphs: map[glyphKey]bool{}}
	s.steps(p.ops)
	body := s.out
	s.out = nil
	if !o.Inline {
		s.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	}
	s.text(`<svg xmlns="http://www.w3.org/2000/svg"`)
	if !o.Inline {
		s.attr("width", p.Sheet.W).text(`mm"`).attr("height", p.Sheet.H).text(`mm"`)
	}
	s.text(` viewBox="0 0 `).number(p.Sheet.W).text(" ").number(p.Sheet.H).text(`">`)
	if p.Title != "" {
		s.text("<title>" + html.EscapeString(p.Title) + "</title>")
	}
	s.text("\n")
	if len(s.defs) > 0 {
		s.text("<defs>\n").text(string(s.defs)).text("</defs>\n")
	}
	if o.Paper {
		s.text(`<path fill="#FFFFFF" d="`).path(RectPath(0, 0, p.Sheet.W, p.Sheet.H), svgDecimals).text("\"/>\n")
	}
	s.out = append(s.out, body...)
	s.text("</svg>\n")
	_, err := io.Copy(w, bytes.NewReader(s.out))
	return err
}

// svgDecimals keeps coordinates to 1 µm.
const svgDecimals = 3

type glyphKey struct {
	weight Weight
	id     uint32
}

type svgWriter struct {
	book   *Book
	prefix string
	out    []byte
	defs   []byte
	arts   map[*Art]int
	glyphs map[glyphKey]bool
	clips  int

	screen bool    // write no finer than a screen shows, see Drawings
	unit   float64 // mm of page for a mm of what is written, on screen
}

func (s *svgWriter) text(t string) *svgWriter {
	s.out = append(s.out, t...)
	return s
}

func (s *svgWriter) number(v float64) *svgWriter {
	s.out = AppendNumber(s.out, v, svgDecimals)
	return s
}

// attr writes an attribute's name and number and leaves its quote open.
func (s *svgWriter) attr(name string, v float64) *svgWriter {
	return s.text(" " + name + `="`).number(v)
}

func (s *svgWriter) path(p geom.Path, decimals int) *svgWriter {
	if s.screen {
		s.out = screenPath(s.out, p, s.unit)
		return s
	}
	s.out = appendPath(s.out, p, decimals)
	return s
}

// appendPath writes path data with absolute coordinates.
func appendPath(b []byte, p geom.Path, decimals int) []byte {
	letters := [...]byte{geom.Move: 'M', geom.Line: 'L', geom.Quad: 'Q', geom.Cube: 'C', geom.Close: 'Z'}
	points := [...]int{geom.Move: 1, geom.Line: 1, geom.Quad: 2, geom.Cube: 3, geom.Close: 0}
	for _, seg := range p {
		b = append(b, letters[seg.Op])
		for i := range points[seg.Op] {
			if i > 0 {
				b = append(b, ' ')
			}
			b = AppendNumber(b, seg.P[i].X, decimals)
			b = append(b, ' ')
			b = AppendNumber(b, seg.P[i].Y, decimals)
		}
	}
	return b
}

func (s *svgWriter) steps(ops []Op) {
	for _, op := range ops {
		switch o := op.(type) {
		case Fill:
			s.text(`<path fill="`+o.Colour.Hex()+`" d="`).path(o.Path, svgDecimals).text("\"/>\n")
		case Stroke:
			s.stroke(o)
		case Clip:
			s.clip(o)
		case Use:
			s.use(o)
		case Words:
			s.words(o)
		}
	}
}

func (s *svgWriter) stroke(o Stroke) {
	s.text(`<path fill="none" stroke="`+o.Colour.Hex()+`"`).attr("stroke-width", o.Line.Weight).text(`"`)
	for i, d := range o.Line.Dash {
		if i == 0 {
			s.text(` stroke-dasharray="`)
		} else {
			s.text(" ")
		}
		s.number(d)
	}
	if len(o.Line.Dash) > 0 {
		s.text(`"`)
	}
	s.text([...]string{ButtCap: "", RoundCap: ` stroke-linecap="round"`, SquareCap: ` stroke-linecap="square"`}[o.Line.Cap])
	// 4 is the default mitre limit of SVG, and ours.
	s.text([...]string{MitreJoin: "", RoundJoin: ` stroke-linejoin="round"`, BevelJoin: ` stroke-linejoin="bevel"`}[o.Line.Join])
	s.text(` d="`).path(o.Path, svgDecimals).text("\"/>\n")
}

func (s *svgWriter) clip(o Clip) {
	s.clips++
	id := s.prefix + "c" + string(AppendNumber(nil, float64(s.clips), 0))
	s.text(`<clipPath id="`+id+`"><path d="`).path(o.Path, svgDecimals).text("\"/></clipPath>\n")
	s.text(`<g clip-path="url(#` + id + ")\">\n")
	s.steps(o.Ops)
	s.text("</g>\n")
}

func (s *svgWriter) use(o Use) {
	n, known := s.arts[o.Art]
	if !known {
		n = len(s.arts) + 1
		s.arts[o.Art] = n
	}
	id := s.prefix + "a" + string(AppendNumber(nil, float64(n), 0))
	if !known {
		outer, unit := s.out, s.unit
		s.out, s.unit = nil, unit*math.Sqrt(math.Abs(o.At.A*o.At.D-o.At.B*o.At.C))
		s.text(`<g id="` + id + "\">\n").steps(o.Art.Ops())
		s.text("</g>\n")
		s.defs = append(s.defs, s.out...)
		s.out, s.unit = outer, unit
	}
	s.text(`<use href="#` + id + `"`).matrix(o.At).text("/>\n")
}

func (s *svgWriter) matrix(m geom.Affine) *svgWriter {
	if m == geom.Identity() {
		return s
	}
	s.text(` transform="matrix(`)
	for i, v := range [...]float64{m.A, m.B, m.C, m.D, m.E, m.F} {
		if i > 0 {
			s.text(" ")
		}
		s.out = AppendNumber(s.out, v, 6)
	}
	return s.text(`)"`)
}

// words draws the line in font units, y up, inside one group; each glyph's
// outline is stored once.
func (s *svgWriter) words(o Words) {
	em := o.Style.Size * MMPerPoint
	_, upem := s.book.Outline(o.Style.Weight, 0)
	k := em / upem
	s.text(`<g role="img" aria-label="` + html.EscapeString(o.Text) + `" fill="` + o.Style.Colour.Hex() + `"`)
	s.matrix(geom.Affine{A: k, D: -k, E: o.X, F: o.Y}).text(">")
	for _, g := range o.Glyphs {
		id, drawn := s.glyph(o.Style.Weight, g.ID)
		if !drawn {
			continue
		}
		s.text(`<use href="#` + id + `"`)
		if g.X != 0 {
			s.text(` x="`)
			s.out = AppendNumber(s.out, g.X/k, 1)
			s.text(`"`)
		}
		if g.Y != 0 {
			s.text(` y="`)
			s.out = AppendNumber(s.out, -g.Y/k, 1)
			s.text(`"`)
		}
		s.text("/>")
	}
	s.text("</g>\n")
}

// glyph stores an outline when it is first used; drawn is false for spaces.
func (s *svgWriter) glyph(w Weight, gid uint32) (id string, drawn bool) {
	outline, _ := s.book.Outline(w, gid)
	if len(outline) == 0 {
		return "", false
	}
	id = s.prefix + [...]string{Regular: "r", SemiBold: "s"}[w] + string(AppendNumber(nil, float64(gid), 0))
	if key := (glyphKey{w, gid}); !s.glyphs[key] {
		s.glyphs[key] = true
		s.defs = append(s.defs, `<path id="`+id+`" d="`...)
		s.defs = appendPath(s.defs, outline, 1)
		s.defs = append(s.defs, "\"/>\n"...)
	}
	return id, true
}
