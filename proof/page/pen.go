package page

import "yokeline/lettering/geom"

// Pen draws on a page or on a shared drawing.
type Pen struct {
	book *Book
	ops  []Op
}

// Ops returns the steps drawn so far; callers must not change them.
func (p *Pen) Ops() []Op { return p.ops }

// Book returns the book that the pen draws in.
func (p *Pen) Book() *Book { return p.book }

// FillPath paints the inside of the mapped path (non-zero rule).
func (p *Pen) FillPath(path geom.Path, m geom.Affine, c Colour) {
	if len(path) > 0 {
		p.ops = append(p.ops, Fill{path.Transform(m), c})
	}
}

// StrokePath draws along the mapped path; the line keeps its weight.
func (p *Pen) StrokePath(path geom.Path, m geom.Affine, c Colour, l Line) {
	if len(path) > 0 && l.Weight > 0 {
		p.ops = append(p.ops, Stroke{path.Transform(m), c, l})
	}
}

// Line draws a straight line.
func (p *Pen) Line(x1, y1, x2, y2 float64, c Colour, l Line) {
	var path geom.Path
	path.MoveTo(geom.Point{X: x1, Y: y1})
	path.LineTo(geom.Point{X: x2, Y: y2})
	p.StrokePath(path, geom.Identity(), c, l)
}

// FillRect paints a rectangle with its top left corner at x, y.
func (p *Pen) FillRect(x, y, w, h float64, c Colour) {
	p.FillPath(RectPath(x, y, w, h), geom.Identity(), c)
}

// StrokeRect draws the frame of a rectangle; the line is centred on its edge.
func (p *Pen) StrokeRect(x, y, w, h float64, c Colour, l Line) {
	p.StrokePath(RectPath(x, y, w, h), geom.Identity(), c, l)
}

// FillCircle paints a disc.
func (p *Pen) FillCircle(x, y, r float64, c Colour) {
	p.FillPath(CirclePath(x, y, r), geom.Identity(), c)
}

// StrokeCircle draws a ring; the line is centred on the circle.
func (p *Pen) StrokeCircle(x, y, r float64, c Colour, l Line) {
	p.StrokePath(CirclePath(x, y, r), geom.Identity(), c, l)
}

// Clip shows of what draw draws only what lies inside the mapped path.
func (p *Pen) Clip(path geom.Path, m geom.Affine, draw func(*Pen)) {
	inner := &Pen{book: p.book}
	draw(inner)
	if len(inner.ops) > 0 {
		p.ops = append(p.ops, Clip{path.Transform(m), inner.ops})
	}
}

// Use places a shared drawing.
func (p *Pen) Use(a *Art, at geom.Affine) {
	if len(a.pen.ops) > 0 {
		p.ops = append(p.ops, Use{a, at})
	}
}

// RectPath returns a rectangle with its top left corner at x, y.
func RectPath(x, y, w, h float64) geom.Path {
	return rectPath(geom.Rect{Min: geom.Point{X: x, Y: y}, Max: geom.Point{X: x + w, Y: y + h}})
}

func rectPath(r geom.Rect) geom.Path {
	return geom.Region{{r.Min, {X: r.Max.X, Y: r.Min.Y}, r.Max, {X: r.Min.X, Y: r.Max.Y}}}.Path()
}

// quarter is the length of the control arms of a quarter circle of radius 1
// that passes through the arc's middle: 4/3·(√2 − 1), off by 0.03 % at most.
const quarter = 0.5522847498307936

// CirclePath returns a circle of four cubic curves.
func CirclePath(x, y, r float64) geom.Path {
	at := func(dx, dy float64) geom.Point { return geom.Point{X: x + r*dx, Y: y + r*dy} }
	var p geom.Path
	p.MoveTo(at(1, 0))
	p.CubeTo(at(1, quarter), at(quarter, 1), at(0, 1))
	p.CubeTo(at(-quarter, 1), at(-1, quarter), at(-1, 0))
	p.CubeTo(at(-1, -quarter), at(-quarter, -1), at(0, -1))
	p.CubeTo(at(quarter, -1), at(1, -quarter), at(1, 0))
	p.Close()
	return p
}
