package page

import "yokeline/lettering/geom"

// Cap is the shape of a line's ends.
type Cap uint8

// The three ends of a line.
const (
	ButtCap Cap = iota
	RoundCap
	SquareCap
)

// Join is the shape of a line's corners.
type Join uint8

// The three corners of a line. A mitre longer than MitreLimit line weights is
// cut to a bevel.
const (
	MitreJoin Join = iota
	RoundJoin
	BevelJoin
)

// MitreLimit is the longest mitre, in line weights, in every output.
const MitreLimit = 4.0

// Line is how a path is stroked: weight and dash lengths in mm (dashes run on,
// gap, on, gap …; nil is solid).
type Line struct {
	Weight float64
	Dash   []float64
	Cap    Cap
	Join   Join
}

// Op is one step of the display list: Fill, Stroke, Clip, Use or Words.
type Op interface{ isOp() }

// Fill paints the inside of a path by the non-zero rule.
type Fill struct {
	Path   geom.Path
	Colour Colour
}

// Stroke draws along a path.
type Stroke struct {
	Path   geom.Path
	Colour Colour
	Line   Line
}

// Clip shows of Ops only what lies inside Path by the non-zero rule.
type Clip struct {
	Path geom.Path
	Ops  []Op
}

// Use places a shared drawing. A map that scales, scales its line weights too.
type Use struct {
	Art *Art
	At  geom.Affine
}

// Words is one set line of text. X and Y are where its first glyph's origin
// stands; Style.Align is already accounted for.
type Words struct {
	X, Y   float64
	Style  Style
	Text   string
	Glyphs []Glyph
}

// Glyph is one placed glyph: the face's own for Rune, its origin X, Y mm from
// that of the line (y down). Advance is the face's own, without kerning and
// tracking, as a share of the em.
type Glyph struct {
	ID      uint32
	Rune    rune
	X, Y    float64
	Advance float64
}

func (Fill) isOp()   {}
func (Stroke) isOp() {}
func (Clip) isOp()   {}
func (Use) isOp()    {}
func (Words) isOp()  {}

// Bounds returns a box that holds all that the steps paint; it may be a little
// larger (mitres, descenders).
func Bounds(ops []Op) geom.Rect {
	box := geom.EmptyRect()
	for _, op := range ops {
		switch o := op.(type) {
		case Fill:
			box = box.Union(o.Path.Bounds())
		case Stroke:
			box = box.Union(o.Path.Bounds().Grow(o.Line.Weight / 2 * MitreLimit))
		case Clip:
			box = box.Union(intersect(o.Path.Bounds(), Bounds(o.Ops)))
		case Use:
			box = box.Union(rectPath(o.Art.Bounds()).Transform(o.At).Bounds())
		case Words:
			box = box.Union(o.bounds())
		}
	}
	return box
}

// bounds takes a whole em around each glyph: enough for any accent.
func (w Words) bounds() geom.Rect {
	box := geom.EmptyRect()
	em := w.Style.Size * MMPerPoint
	for _, g := range w.Glyphs {
		x, y := w.X+g.X, w.Y+g.Y
		box = box.Union(geom.Rect{Min: geom.Point{X: x - em, Y: y - 1.5*em}, Max: geom.Point{X: x + 2*em, Y: y + em}})
	}
	return box
}

func intersect(a, b geom.Rect) geom.Rect {
	return geom.Rect{
		Min: geom.Point{X: max(a.Min.X, b.Min.X), Y: max(a.Min.Y, b.Min.Y)},
		Max: geom.Point{X: min(a.Max.X, b.Max.X), Y: min(a.Max.Y, b.Max.Y)},
	}
}
