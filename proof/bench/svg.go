package bench

import (
	"io"
	"strconv"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/proof/page"
)

// decimals keeps coordinates to 0.1 µm: finer than any machine and coarser than
// the last bits of arithmetic.
const decimals = 4

// SVG writes the art with its size and its viewBox in mm and one group for each
// layer, whose id is its name, with its kind, colour and order as data. It wraps
// errors of the writer and of colours that cannot be read.
func (b *Bench) SVG(w io.Writer, art layers.Art, o Options) error {
	groups, err := b.groups(art, o)
	if err != nil {
		return err
	}
	return writeSVG(w, groups, art, o)
}

func writeSVG(w io.Writer, groups []group, art layers.Art, o Options) error {
	box := Extent(art, o)
	out := svg{}
	out.text(`<svg xmlns="http://www.w3.org/2000/svg" width="`).number(box.Width()).text(`mm" height="`).number(box.Height()).
		text(`mm" viewBox="`).numbers(box.Min.X, -box.Max.Y, box.Width(), box.Height()).text("\">\n<title>").
		escaped(title(art, o)).text("</title>\n")
	for _, g := range groups {
		out.group(g)
	}
	out.text("</svg>\n")
	_, err := w.Write(out.bytes)
	return err
}

// title says what the file is.
func title(art layers.Art, o Options) string {
	parts := []string{joined(o.Label.Player, o.Label.Place, o.Label.Size, o.Label.Note), art.Method.Name}
	if art.Mirrored {
		parts = append(parts, "mirrored")
	}
	if o.Unsigned {
		parts = append(parts, "UNSIGNED")
	}
	return joined(parts...)
}

type svg struct{ bytes []byte }

func (s *svg) text(t string) *svg {
	s.bytes = append(s.bytes, t...)
	return s
}

func (s *svg) escaped(t string) *svg {
	return s.text(strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;").Replace(t))
}

func (s *svg) number(v float64) *svg {
	s.bytes = page.AppendNumber(s.bytes, v, decimals)
	return s
}

func (s *svg) numbers(v ...float64) *svg {
	for i, x := range v {
		if i > 0 {
			s.text(" ")
		}
		s.number(x)
	}
	return s
}

func (s *svg) group(g group) {
	s.text(`<g id="`).escaped(strings.ReplaceAll(g.name, " ", "-")).text(`" data-kind="`).escaped(g.kind)
	if g.colour != "" {
		s.text(`" data-colour="`).escaped(g.colour)
	}
	if g.order > 0 {
		s.text(`" data-order="`).text(strconv.Itoa(g.order))
	}
	s.text(`" fill="`).paint(g.fill).text(`"`)
	if g.line != nil {
		s.text(` stroke="`).paint(g.line).text(`" stroke-linejoin="round" stroke-width="`).number(g.weight)
		if len(g.dash) > 0 {
			s.text(`" stroke-dasharray="`).numbers(g.dash...)
		}
		s.text(`"`)
	}
	s.text("><title>").escaped(g.name).text(`</title><path d="`)
	s.path(g.path)
	s.text("\"/></g>\n")
}

func (s *svg) paint(p *paint) *svg {
	if p == nil {
		return s.text("none")
	}
	return s.text(strings.ToLower(p.colour.Hex()))
}

// path turns y down.
func (s *svg) path(p geom.Path) {
	letters := [...]string{geom.Move: "M", geom.Line: "L", geom.Quad: "Q", geom.Cube: "C", geom.Close: "Z"}
	points := [...]int{geom.Move: 1, geom.Line: 1, geom.Quad: 2, geom.Cube: 3, geom.Close: 0}
	for _, seg := range p {
		s.text(letters[seg.Op])
		for i, q := range seg.P[:points[seg.Op]] {
			if i > 0 {
				s.text(" ")
			}
			s.numbers(q.X, -q.Y)
		}
	}
}
