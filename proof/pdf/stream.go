package pdf

import (
	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

// decimals keeps coordinates to 1 µm.
const decimals = 3

// stream is page content under work (ISO 32000-2, 8 and 9). Numbers come
// before their operator.
type stream struct {
	doc  *document
	out  []byte
	fill colourNow
	line colourNow
	pen  page.Line
}

// colourNow remembers the colour in force, to write it only when it changes.
type colourNow struct {
	set    bool
	colour page.Colour
}

func (s *stream) op(name string) *stream {
	s.out = append(s.out, name...)
	s.out = append(s.out, '\n')
	return s
}

func (s *stream) numbers(v ...float64) *stream { return s.rounded(decimals, v) }

// exact writes map coefficients, whose error grows with the sheet.
func (s *stream) exact(v ...float64) *stream { return s.rounded(8, v) }

func (s *stream) rounded(places int, v []float64) *stream {
	for _, x := range v {
		s.out = page.AppendNumber(s.out, x, places)
		s.out = append(s.out, ' ')
	}
	return s
}

func (s *stream) limit() *stream { return s.numbers(page.MitreLimit).op("M") }

// steps writes a display list. What a saved state hides is forgotten with it.
func (s *stream) steps(ops []page.Op) {
	for _, op := range ops {
		switch o := op.(type) {
		case page.Fill:
			s.fillColour(o.Colour).path(o.Path).op("f")
		case page.Stroke:
			s.stroke(o)
		case page.Clip:
			s.saved(func() {
				s.path(o.Path).op("W n")
				s.steps(o.Ops)
			})
		case page.Use:
			s.use(o)
		case page.Words:
			s.words(o)
		}
	}
}

func (s *stream) saved(draw func()) {
	fill, line, pen := s.fill, s.line, s.pen
	s.op("q")
	draw()
	s.op("Q")
	s.fill, s.line, s.pen = fill, line, pen
}

func (s *stream) fillColour(c page.Colour) *stream {
	if s.fill != (colourNow{true, c}) {
		s.fill = colourNow{true, c}
		s.rgb(c).op("rg")
	}
	return s
}

func (s *stream) lineColour(c page.Colour) *stream {
	if s.line != (colourNow{true, c}) {
		s.line = colourNow{true, c}
		s.rgb(c).op("RG")
	}
	return s
}

func (s *stream) rgb(c page.Colour) *stream {
	r, g, b := c.RGB()
	return s.rounded(4, []float64{float64(r) / 255, float64(g) / 255, float64(b) / 255})
}

func (s *stream) stroke(o page.Stroke) {
	s.lineColour(o.Colour)
	if o.Line.Weight != s.pen.Weight {
		s.numbers(o.Line.Weight).op("w")
	}
	if o.Line.Cap != s.pen.Cap {
		s.numbers(float64(o.Line.Cap)).op("J")
	}
	if o.Line.Join != s.pen.Join {
		s.numbers(float64(o.Line.Join)).op("j")
	}
	if len(o.Line.Dash) > 0 || len(s.pen.Dash) > 0 {
		s.out = append(s.out, '[')
		s.numbers(o.Line.Dash...)
		s.op("] 0 d")
	}
	s.pen = o.Line
	s.path(o.Path).op("S")
}

// path raises quadratic curves to cubic ones, which is exact.
func (s *stream) path(p geom.Path) *stream {
	var at geom.Point
	for _, seg := range p {
		switch seg.Op {
		case geom.Move:
			at = seg.P[0]
			s.points("m", at)
		case geom.Line:
			at = seg.P[0]
			s.points("l", at)
		case geom.Quad:
			a, b := seg.P[0], seg.P[1]
			s.points("c", at.Lerp(a, 2.0/3), b.Lerp(a, 2.0/3), b)
			at = b
		case geom.Cube:
			at = seg.P[2]
			s.points("c", seg.P[0], seg.P[1], at)
		case geom.Close:
			s.op("h")
		}
	}
	return s
}

func (s *stream) points(name string, points ...geom.Point) {
	for _, p := range points {
		s.numbers(p.X, p.Y)
	}
	s.op(name)
}
