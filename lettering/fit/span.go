package fit

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/outline"
)

// state is a size of a line: what the ladder changes.
type state struct {
	height   float64 // letter height, mm
	scale    float64 // width scale
	tracking float64 // mm
}

// base is what a line stands on.
type base struct {
	shape   Shape
	radius  float64 // mm, 0 when straight
	spacing Spacing
	lean    float64 // x gained a mm of height, by leaning letters
}

// stand is what a line stands on and is surrounded by: what the ladder leaves
// alone.
type stand struct {
	base
	offsets []ink.Offset
	round   bool    // all joins are
	reach   float64 // farthest offset, mm
	limit   float64 // mm
	keep    float64 // gap that the letters of an arch keep, mm; 0 for none
}

func newStand(r *Request) stand {
	b := stand{base: base{shape: r.Shape, spacing: r.Spacing, lean: math.Tan(r.Edges.Shear)}, offsets: ink.Offsets(r.Outlines), round: true, limit: r.Limit}
	switch {
	case r.Shape == Straight:
	case r.Rise > 0:
		b.radius = geom.RadiusOf(r.Limit, r.Rise)
	default:
		b.radius = r.Radius
	}
	for _, o := range b.offsets {
		b.reach = max(b.reach, o.Distance)
		b.round = b.round && o.Join == outline.Round
	}
	if b.keep = r.KeepGap; r.KeepGap > 0 && r.KeepOutlines {
		b.keep += 2 * b.reach
	}
	return b
}

// steepest is the largest half angle of a radial arch.
const steepest = 75 * math.Pi / 180

// turning returns R_s, the radius at the spacing height.
func (b *base) turning(height float64) float64 {
	if b.spacing == Baseline {
		return b.radius
	}
	if b.shape.down() {
		return b.radius - height/2
	}
	return b.radius + height/2
}

// halfAngle returns half of the angle that the line's bare ink takes up, in
// radians; infinite when the spacing height lies beyond the centre.
func (b *stand) halfAngle(l *line, s state) float64 {
	from, to := l.bare(s)
	turning := b.turning(s.height)
	if turning <= 0 {
		return math.Inf(1)
	}
	half := (to - from) / 2 / turning
	if l.under != nil {
		lower := b.lower(l, s)
		half = max(half, lower.halfAngle(l.under, s))
	}
	return half
}

// excess returns ink width less the limit, mm; infinite when the line would
// turn too far, for beyond that the width means nothing.
func (b *stand) excess(l *line, s state) float64 {
	if b.shape.radial() && b.halfAngle(l, s) > steepest {
		return math.Inf(1)
	}
	from, to := b.span(l, s)
	return to - from - b.limit
}

// span returns the ends of the ink with outlines, from the middle of the bare
// ink of the straight line, in mm.
func (b *stand) span(l *line, s state) (from, to float64) {
	if l.under != nil {
		return b.spanLines(l, s)
	}
	lo, hi := l.bare(s)
	mid := (lo + hi) / 2
	if !b.shape.radial() && b.round && b.lean == 0 {
		return lo - mid - b.reach, hi - mid + b.reach
	}
	if !b.shape.radial() {
		return b.spanCorners(l, s, mid)
	}
	// The letters at the ends decide. From each end inwards, stop where no
	// letter that is left can reach as far as one already seen.
	margin := s.height/l.cap*s.scale*l.reach + outline.MitreLimit*b.reach
	ordered := s.height/l.cap*s.scale*l.pace+s.tracking > 0
	to, from = math.Inf(-1), math.Inf(1)
	near, far := b.rims(l, s)
	for i := len(l.glyphs) - 1; i >= 0; i-- {
		sin, cos := math.Sincos(b.angle(l.cap, s, &l.spots[i], mid))
		if max(near*sin, far*sin)+margin <= to {
			if ordered {
				break
			}
			continue
		}
		to = max(to, b.extreme(l, s, i, sin, cos, 1))
	}
	for i := range l.glyphs {
		sin, cos := math.Sincos(b.angle(l.cap, s, &l.spots[i], mid))
		if min(near*sin, far*sin)-margin >= from {
			if ordered {
				break
			}
			continue
		}
		from = min(from, -b.extreme(l, s, i, sin, cos, -1))
	}
	return from, to
}

// rims returns the smallest and largest distance of the ink from the centre.
func (b *stand) rims(l *line, s state) (near, far float64) {
	sy := s.height / l.cap
	if b.shape.down() {
		return b.radius - sy*l.top, b.radius - sy*l.bottom
	}
	return b.radius + sy*l.bottom, b.radius + sy*l.top
}

// angle returns how far a glyph turns, radians, positive to the right.
func (b *base) angle(capHeight float64, s state, g *spot, mid float64) float64 {
	u := s.height/capHeight*s.scale*g.mid + s.tracking*float64(g.before) - mid
	return u / b.turning(s.height)
}

// extreme returns how far glyph i with its outlines reaches along x times
// side, side being 1 or -1.
func (b *stand) extreme(l *line, s state, i int, sin, cos, side float64) float64 {
	if !b.round {
		return l.glyphs[i].ink.Outer(ink.Warp{Map: b.turned(l.cap, s, &l.spots[i], sin, cos)}, geom.Point{X: side}, b.offsets)
	}
	g := &l.spots[i]
	sy := s.height / l.cap
	sx := sy * s.scale
	lean, rho := sy*sin, b.radius+sy*g.y
	if b.shape.down() {
		lean, rho = -lean, b.radius-sy*g.y
	}
	return l.glyphs[i].ink.Most(side*sx*cos, side*lean) + side*(sx*(g.x-g.mid)*cos+rho*sin) + b.reach
}

// turned returns the map of a glyph on a radial arch from its font units into
// the plane, x = 0 at the arch's apex.
func (b *base) turned(capHeight float64, s state, g *spot, sin, cos float64) geom.Affine {
	sy := s.height / capHeight
	sx := sy * s.scale
	x, y := sx*(g.x-g.mid), sy*g.y
	if b.shape.down() {
		// Turned anticlockwise about the centre (0, R).
		return geom.Affine{A: sx * cos, B: sx * sin, C: -sy * sin, D: sy * cos,
			E: x*cos + (b.radius-y)*sin, F: x*sin - (b.radius-y)*cos + b.radius}
	}
	return geom.Affine{A: sx * cos, B: -sx * sin, C: sy * sin, D: sy * cos,
		E: x*cos + (b.radius+y)*sin, F: -x*sin + (b.radius+y)*cos - b.radius}
}

// warp returns the map of a glyph into the plane, x = 0 at the middle of the
// straight line's bare ink.
func (b *base) warp(capHeight float64, s state, g *spot, mid float64) ink.Warp {
	if b.shape.radial() {
		sin, cos := math.Sincos(b.angle(capHeight, s, g, mid))
		return ink.Warp{Map: b.turned(capHeight, s, g, sin, cos)}
	}
	sy := s.height / capHeight
	sx := sy * s.scale
	w := ink.Warp{Map: geom.Affine{A: sx, C: sy * b.lean, D: sy, E: sx*g.x + s.tracking*float64(g.before) - mid + sy*g.y*b.lean, F: sy * g.y}}
	if b.shape.vertical() {
		w.Bend = b.radius
		if b.shape.down() {
			w.Bend = -b.radius
		}
	}
	return w
}

// spanCorners is span for letters on a straight line that lean or whose
// outlines have corners.
func (b *stand) spanCorners(l *line, s state, mid float64) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	sx, margin := s.height/l.cap*s.scale, outline.MitreLimit*b.reach
	// A lean moves ink by as much as it stands off the baseline.
	margin += math.Abs(b.lean) * s.height / l.cap * math.Max(math.Abs(l.top), math.Abs(l.bottom))
	for i := range l.glyphs {
		g := &l.glyphs[i]
		w := b.warp(l.cap, s, &l.spots[i], mid)
		if w.Map.E+sx*g.ink.Box.Max.X+margin > to {
			to = max(to, g.ink.Outer(w, geom.Point{X: 1}, b.offsets))
		}
		if w.Map.E+sx*g.ink.Box.Min.X-margin < from {
			from = min(from, -g.ink.Outer(w, geom.Point{X: -1}, b.offsets))
		}
	}
	return from, to
}
