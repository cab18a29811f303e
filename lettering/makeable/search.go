package makeable

import (
	"math"

	"yokeline/lettering/geom"
)

// Bounds of what counts as opposite walls.
const (
	cosTaper = 0.939692620785908 // 20 degrees: most that the walls of a stroke may close in on each other
	parallel = 1 * math.Pi / 180 // less is no taper
	wedge    = 1.98              // what narrows by as much is a corner: to half, less rounding
	intrude  = 0.01              // share of its diameter by which a disc may be cut into
)

// found is the smallest place so far.
type found struct {
	width    float64
	from, to geom.Point
	ring     int // that from is on
}

func (f found) spot() Spot {
	s := Spot{Width: f.width, From: f.from, To: f.to, Index: -1, OtherIndex: -1}
	if math.IsInf(f.width, 1) {
		s.Width = math.NaN()
	}
	return s
}

func (f *found) try(width float64, from, to geom.Point, ring int) {
	if width < f.width {
		*f = found{width, from, to, ring}
	}
}

// search looks for the smallest places on one side of the boundary.
type search struct {
	walls   []wall
	rings   []ring
	loops   []loop
	cells   *cells
	outside bool
	first   float64 // distance to begin with
	upTo    float64
	stamps  []int32 // last wall whose neighbourhood a wall was seen in
	several bool    // more than one shape
	opposed found   // narrowest between opposite walls
	apart   found   // nearest of two shapes
}

func newSearch(r geom.Region, rings []ring, outside bool, upTo float64) *search {
	box := r.Bounds()
	span := max(box.Width(), box.Height())
	const crumb = 2e-5 // of the layer's size: below the tolerance of flattening
	s := &search{walls: wallsOf(r, outside, crumb*span), rings: rings, outside: outside, first: span / 64, upTo: upTo}
	s.cells = newCells(s.walls, box)
	s.loops = loopsOf(s.walls, len(r))
	s.stamps = make([]int32, len(s.walls))
	s.opposed.width, s.apart.width = math.Inf(1), math.Inf(1)
	shape := -1
	for _, k := range rings {
		if !k.hole {
			s.several = s.several || shape >= 0
			shape = k.shape
		}
	}
	if upTo <= 0 {
		s.upTo = 2 * span
	}
	return s
}

// run looks for near walls first and doubles the distance until what is found
// cannot be beaten.
func (s *search) run() {
	for reach := s.first; ; reach *= 2 {
		reach = min(reach, s.upTo)
		for i := range s.stamps {
			s.stamps[i] = -1
		}
		for i := range s.walls {
			s.around(i, reach)
		}
		done := s.opposed.width <= reach && (!s.outside || !s.several || s.apart.width <= reach)
		if done || reach >= s.upTo {
			return
		}
	}
}

// around pairs wall i with the later walls within reach.
func (s *search) around(i int, reach float64) {
	v := &s.walls[i]
	box := v.box.Grow(reach)
	bottom, top, left, right := s.cells.span(&box)
	for row := bottom; row <= top; row++ {
		for _, k := range s.cells.stretch(row, left, right) {
			if int(k) <= i || s.stamps[k] == int32(i) {
				continue
			}
			s.stamps[k] = int32(i)
			w := &s.walls[k]
			if s.rings[v.ring].shape != s.rings[w.ring].shape {
				s.between(v, w)
				continue
			}
			// Walls that do not look at each other, without a corner that
			// looks to more than one side, have nothing between them.
			const away = 0.85
			if !v.corner && !w.corner && v.inward.Dot(w.inward) > -away {
				continue
			}
			if separation(&v.box, &w.box) < s.opposed.width*s.opposed.width {
				s.pair(v, w)
			}
		}
	}
}

// between measures the distance of two shapes at two of their walls.
func (s *search) between(v, w *wall) {
	if s.outside && separation(&v.box, &w.box) < s.apart.width*s.apart.width {
		p, q := closest(v, w)
		s.apart.try(q.Sub(p).Norm(), p, q, v.ring)
	}
}

func (s *search) pair(v, w *wall) {
	if v.inward.Dot(w.inward) <= -cosTaper && v.sees(w) && w.sees(v) {
		s.facing(v, w)
	}
	s.square(v, w)
	s.square(w, v)
	s.corners(v, w)
}

// sees reports whether part of w lies on the side of v that is measured.
func (w *wall) sees(o *wall) bool {
	return w.inward.Dot(o.a.Sub(w.a)) > 0 || w.inward.Dot(o.b.Sub(w.a)) > 0
}

// facing measures between two walls that lie opposite each other, at the
// narrowest place of their overlap that the disc fits into.
func (s *search) facing(v, w *wall) {
	// A disc that touches v at distance u along it and the line of w: its
	// radius and its foot on w are linear in u.
	lean := 1 - v.inward.Dot(w.inward)
	radius, slope := w.inward.Dot(v.a.Sub(w.a))/lean, w.inward.Dot(v.dir)/lean
	foot := w.dir.Dot(v.a.Sub(w.a)) + w.dir.Dot(v.inward)*radius
	pace := w.dir.Dot(v.dir) + w.dir.Dot(v.inward)*slope
	from, to := -foot/pace, (w.length-foot)/pace
	from, to = max(0, min(from, to)), min(v.length, max(from, to))
	if !(from <= to) {
		return
	}
	if slope < 0 {
		from, to = to, from
	}
	if far := 8 * radius; 2*math.Abs(slope) > parallel && (v.chord(far) || w.chord(far) || radius+to*slope >= wedge*(radius+from*slope)) {
		return
	}
	for _, u := range places(v, w, from, to, radius+from*slope, (w.length/2-foot)/pace) {
		r := radius + u*slope
		if !(r > 0) || 2*r >= s.opposed.width {
			continue
		}
		p := v.a.Add(v.dir.Mul(u))
		centre := p.Add(v.inward.Mul(r))
		if q := centre.Sub(w.inward.Mul(r)); s.free(centre, r) && !s.inTip(v, w, p, q) {
			s.opposed.try(2*r, p, q, v.ring)
			return
		}
	}
}

// places lists where along v to try the disc, the narrowest place first; half
// a diameter in, the ends of the walls are out of the way. Chords of a curve
// have the curve's direction in their middle only. middle is the place opposite
// the middle of w.
func places(v, w *wall, from, to, radius, middle float64) [6]float64 {
	var out [6]float64
	for n := range out {
		out[n] = from + math.Copysign(min(math.Abs(to-from), float64(n)*radius/2), to-from)
	}
	out[5] = (from + to) / 2
	low, high := min(from, to), max(from, to)
	clamp := func(u float64) float64 { return max(low, min(high, u)) }
	switch {
	case v.chord(radius):
		u := clamp(v.length / 2)
		return [6]float64{u, u, u, u, u, u}
	case w.chord(radius):
		u := clamp(middle)
		return [6]float64{u, u, u, u, u, u}
	}
	return out
}

// square measures from the corner at the start of w, where it bulges into the
// side measured, square across to v.
func (s *search) square(v, w *wall) {
	if w.turn >= 0 || !s.cone(w, v.inward.Mul(-1)) {
		return
	}
	height, along := v.inward.Dot(w.a.Sub(v.a)), v.dir.Dot(w.a.Sub(v.a))
	if height <= 0 || height >= s.opposed.width || along < 0 || along > v.length {
		return
	}
	foot := v.a.Add(v.dir.Mul(along))
	if s.free(foot.Lerp(w.a, 0.5), height/2) && !s.inTip(v, w, foot, w.a) {
		s.opposed.try(height, foot, w.a, v.ring)
	}
}

// corners measures between two corners that both bulge into the side measured.
func (s *search) corners(v, w *wall) {
	if v.turn >= 0 || w.turn >= 0 {
		return
	}
	across := w.a.Sub(v.a)
	width := across.Norm()
	if width == 0 || width >= s.opposed.width {
		return
	}
	across = across.Mul(1 / width)
	if s.cone(v, across) && s.cone(w, across.Mul(-1)) && s.free(v.a.Lerp(w.a, 0.5), width/2) && !s.inTip(v, w, v.a, w.a) {
		s.opposed.try(width, v.a, w.a, v.ring)
	}
}

// cone reports whether a disc may touch the corner at the start of w with its
// centre in the given direction.
func (s *search) cone(w *wall, towards geom.Point) bool {
	const round = 1e-9
	return towards.Dot(s.walls[w.prev].dir) >= -round && towards.Dot(w.dir) <= round
}

// free reports whether no wall cuts into a disc.
func (s *search) free(centre geom.Point, r float64) bool {
	inner := r * (1 - 2*intrude)
	box := geom.Rect{Min: centre, Max: centre}.Grow(inner)
	bottom, top, left, right := s.cells.span(&box)
	for row := bottom; row <= top; row++ {
		for _, k := range s.cells.stretch(row, left, right) {
			if d := s.walls[k].nearest(centre).Sub(centre); d.Dot(d) < inner*inner {
				return false
			}
		}
	}
	return true
}
