package page

import (
	"math"

	"yokeline/lettering/geom"
)

// Drawings writes pages of one book as drawings inside one HTML document. What
// they share is stored once, in Defs, and coordinates are as fine as a screen
// can show, so that the document stays small. Text is drawn as outlines with its
// words in aria-label. The same drawings in the same order give the same bytes.
type Drawings struct{ w *svgWriter }

// NewDrawings returns an empty set. The prefix stands before every id.
func (b *Book) NewDrawings(prefix string) *Drawings {
	return &Drawings{&svgWriter{
		book: b, prefix: prefix, arts: map[*Art]int{}, glyphs: map[glyphKey]bool{}, screen: true,
	}}
}

// SVG writes the part of a page that lies in view, mm on the page, as an svg
// element with the given further attributes, which are taken as they are.
func (d *Drawings) SVG(p *Page, view geom.Rect, attributes string) string {
	return d.element("svg", p, view, attributes)
}

// Symbol writes the same as a symbol element, to be used by its id.
func (d *Drawings) Symbol(p *Page, view geom.Rect, id string) string {
	return d.element("symbol", p, view, `id="`+d.w.prefix+id+`"`)
}

func (d *Drawings) element(name string, p *Page, view geom.Rect, attributes string) string {
	s := d.w
	s.out = nil
	s.unit = 1
	s.text("<" + name + ` viewBox="`).coordinate(view.Min.X).text(" ").coordinate(view.Min.Y)
	s.text(" ").coordinate(view.Width()).text(" ").coordinate(view.Height()).text(`"`)
	if attributes != "" {
		s.text(" " + attributes)
	}
	s.text(">").steps(p.ops)
	s.text("</" + name + ">")
	return string(s.out)
}

// Defs returns what the drawings written so far share, as the content of a defs
// element.
func (d *Drawings) Defs() string { return string(d.w.defs) }

// Screen is what a screen can show: coordinates to a hundredth of a millimetre
// of the page, and points left out that stand less than 4 µm beside the line
// between their neighbours. At five pixels a millimetre, enlarged four times,
// that is under a tenth of a pixel.
const (
	screenDecimals = 2
	screenFlat     = 0.004
)

// coordinate appends a length of the page.
func (s *svgWriter) coordinate(v float64) *svgWriter {
	s.out = AppendNumber(s.out, v, screenDecimals)
	return s
}

// screenPath writes path data with relative coordinates, each rounded so that
// errors do not add up. unit is mm of page for a mm of the path.
func screenPath(b []byte, p geom.Path, unit float64) []byte {
	decimals := max(0, screenDecimals+int(math.Round(math.Log10(unit))))
	grid := math.Pow10(decimals)
	letters := [...]byte{geom.Move: 'm', geom.Line: 'l', geom.Quad: 'q', geom.Cube: 'c', geom.Close: 'z'}
	points := [...]int{geom.Move: 1, geom.Line: 1, geom.Quad: 2, geom.Cube: 3, geom.Close: 0}
	var at, start [2]int64
	last := byte(0)
	for _, seg := range thinned(p, screenFlat/unit) {
		if letter := letters[seg.Op]; letter != last || seg.Op == geom.Move {
			b, last = append(b, letter), letter
		}
		end := at
		for i := range points[seg.Op] {
			end = [2]int64{int64(math.Round(seg.P[i].X * grid)), int64(math.Round(seg.P[i].Y * grid))}
			for k := range 2 {
				b = appendStep(b, end[k]-at[k], decimals)
			}
		}
		switch seg.Op {
		case geom.Move:
			start = end
		case geom.Close:
			end = start
		}
		at = end
	}
	return b
}

// appendStep appends n units of the last decimal, without a leading zero, and
// parted from a figure before it.
func appendStep(b []byte, n int64, decimals int) []byte {
	if c := b[len(b)-1]; n >= 0 && c >= '0' && c <= '9' {
		b = append(b, ' ')
	}
	from := len(b)
	b = AppendNumber(b, float64(n)/math.Pow10(decimals), decimals)
	if b[from] == '-' {
		from++
	}
	if len(b) > from+1 && b[from] == '0' && b[from+1] == '.' {
		return append(b[:from], b[from+1:]...)
	}
	return b
}

// thinned leaves out points of straight lines that stand less than flat beside
// the line between those that stay.
func thinned(p geom.Path, flat float64) geom.Path {
	out := make(geom.Path, 0, len(p))
	for i := 0; i < len(p); i++ {
		if p[i].Op != geom.Line || len(out) == 0 || out[len(out)-1].Op == geom.Close {
			out = append(out, p[i])
			continue
		}
		run := i
		for run < len(p) && p[run].Op == geom.Line {
			run++
		}
		line := make([]geom.Point, 0, run-i+1)
		line = append(line, endOf(out))
		for _, seg := range p[i:run] {
			line = append(line, seg.P[0])
		}
		for _, q := range farthest(nil, line, flat) {
			out.LineTo(q)
		}
		i = run - 1
	}
	return out
}

// endOf returns where a path that ends in no Close stands.
func endOf(p geom.Path) geom.Point {
	last := p[len(p)-1]
	return last.P[map[geom.Op]int{geom.Quad: 1, geom.Cube: 2}[last.Op]]
}

// farthest appends the points after the first that must stay (Douglas and
// Peucker, 1973).
func farthest(out, line []geom.Point, flat float64) []geom.Point {
	a, z := line[0], line[len(line)-1]
	most, at := flat, 0
	for i := 1; i < len(line)-1; i++ {
		if off := beside(line[i], a, z); off > most {
			most, at = off, i
		}
	}
	if at == 0 {
		return append(out, z)
	}
	return farthest(farthest(out, line[:at+1], flat), line[at:], flat)
}

// beside returns the distance of p from the line between a and z.
func beside(p, a, z geom.Point) float64 {
	along := z.Sub(a)
	square := along.X*along.X + along.Y*along.Y
	if square == 0 {
		return p.Sub(a).Norm()
	}
	t := math.Max(0, math.Min(1, ((p.X-a.X)*along.X+(p.Y-a.Y)*along.Y)/square))
	return p.Sub(geom.Point{X: a.X + t*along.X, Y: a.Y + t*along.Y}).Norm()
}
