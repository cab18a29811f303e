package seams

import (
	"math"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// stretch is how many straight bits of a line or of a piece share a box. Most
// pairs of boxes are too far apart to matter.
const stretch = 12

// run is a stretch of points with the box around them.
type run struct {
	points []geom.Point
	first  int // index of its first point in the line
	box    geom.Rect
}

func runsOf(points []geom.Point) []run {
	var out []run
	for i := 0; i+1 < len(points); i += stretch {
		ps := points[i:min(i+stretch+1, len(points))]
		out = append(out, run{ps, i, boxOf(ps)})
	}
	return out
}

func boxOf(points []geom.Point) geom.Rect {
	out := geom.Rect{Min: points[0], Max: points[0]}
	for _, p := range points[1:] {
		out.Min.X, out.Max.X = min(out.Min.X, p.X), max(out.Max.X, p.X)
		out.Min.Y, out.Max.Y = min(out.Min.Y, p.Y), max(out.Max.Y, p.Y)
	}
	return out
}

// apart is the square of the distance between two boxes.
func apart(a, b geom.Rect) float64 {
	dx := max(0, a.Min.X-b.Max.X, b.Min.X-a.Max.X)
	dy := max(0, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y)
	return dx*dx + dy*dy
}

// line is a line to keep clear of.
type line struct {
	keep   garment.KeepClear
	points []geom.Point
	runs   []run
	box    geom.Rect
}

func newLine(k garment.KeepClear) line {
	l := line{keep: k, points: k.Points}
	if len(l.points) == 1 {
		l.points = append(l.points, l.points[0]) // the crossing at the underarm
	}
	l.runs, l.box = runsOf(l.points), boxOf(l.points)
	return l
}

// clearance measures a piece against the line; over says that it lies across it.
func (l *line) clearance(s *shape, reach float64) (c Clearance, over bool) {
	d, at, over := l.nearest(s)
	switch {
	case over:
		d, at = l.beyond(s)
		d = -d
	case s.covers(l.points[0]):
		over, d = true, -d
	}
	return Clearance{Line: l.keep, Distance: d - reach, At: at}, over
}

// search is the nearest pair found so far between a piece and a line.
type search struct {
	square float64
	at     geom.Point
	met    bool
}

// nearest returns the least distance between the piece's boundary and the line,
// the boundary's point there, and whether they meet.
func (l *line) nearest(s *shape) (d float64, at geom.Point, met bool) {
	f := search{square: math.Inf(1)}
	f.start(s, l)
	for i, box := range s.boxes {
		if apart(box, l.box) >= f.square {
			continue
		}
		for k := s.starts[i]; k < s.starts[i+1] && !f.met; k++ {
			if r := &s.runs[k]; apart(r.box, l.box) < f.square {
				f.against(r, l)
			}
		}
	}
	return math.Sqrt(f.square), f.at, f.met
}

// start tries the stretches whose boxes are nearest, so that most others are seen
// to be too far at once.
func (f *search) start(s *shape, l *line) {
	ring, bit, least := 0, 0, math.Inf(1)
	for i := range s.boxes {
		for k := range l.runs {
			if d := apart(s.boxes[i], l.runs[k].box); d < least {
				ring, bit, least = i, k, d
			}
		}
	}
	near, least := s.starts[ring], math.Inf(1)
	for k := s.starts[ring]; k < s.starts[ring+1]; k++ {
		if d := apart(s.runs[k].box, l.runs[bit].box); d < least {
			near, least = k, d
		}
	}
	f.pair(&s.runs[near], &l.runs[bit])
}

func (f *search) against(r *run, l *line) {
	for k := range l.runs {
		if m := &l.runs[k]; apart(r.box, m.box) < f.square {
			f.pair(r, m)
		}
	}
}

// pair tries every bit of a stretch of the piece against one of the line.
func (f *search) pair(r, m *run) {
	for i := 1; i < len(r.points); i++ {
		a, b := r.points[i-1], r.points[i]
		box := between(a, b)
		if apart(box, m.box) >= f.square {
			continue
		}
		for j := 1; j < len(m.points); j++ {
			if c, d := m.points[j-1], m.points[j]; apart(box, between(c, d)) < f.square {
				f.bits(a, b, c, d)
			}
		}
	}
}

// between is the box of one bit.
func between(a, b geom.Point) geom.Rect {
	if a.X > b.X {
		a.X, b.X = b.X, a.X
	}
	if a.Y > b.Y {
		a.Y, b.Y = b.Y, a.Y
	}
	return geom.Rect{Min: a, Max: b}
}

// bits tries the bit ab of the piece against the bit cd of the line.
func (f *search) bits(a, b, c, d geom.Point) {
	if meet(a, b, c, d) {
		f.square, f.at, f.met = 0, a, true
		return
	}
	for _, p := range [2]geom.Point{a, b} {
		q := foot(p, c, d)
		if s := square(p, q); s < f.square {
			f.square, f.at = s, p
		}
	}
	for _, p := range [2]geom.Point{c, d} {
		q := foot(p, a, b)
		if s := square(p, q); s < f.square {
			f.square, f.at = s, q
		}
	}
}

// meet reports whether two bits cross; bits that only touch are told by their
// distance, which is then 0.
func meet(a, b, c, d geom.Point) bool {
	u, v := b.Sub(a), d.Sub(c)
	return (u.Cross(c.Sub(a)) > 0) != (u.Cross(d.Sub(a)) > 0) && (v.Cross(a.Sub(c)) > 0) != (v.Cross(b.Sub(c)) > 0)
}

// foot is the point of the bit ab nearest to p.
func foot(p, a, b geom.Point) geom.Point {
	d := b.Sub(a)
	l := d.Dot(d)
	if l == 0 {
		return a
	}
	t := p.Sub(a).Dot(d) / l
	switch {
	case t <= 0:
		return a
	case t >= 1:
		return b
	}
	return a.Add(d.Mul(t))
}

func square(p, q geom.Point) float64 {
	dx, dy := p.X-q.X, p.Y-q.Y
	return dx*dx + dy*dy
}

// beyond returns how far a piece that lies across the line reaches over it, and
// its furthest point there. The part beyond is the one that reaches less far.
func (l *line) beyond(s *shape) (float64, geom.Point) {
	var far [2]float64
	var at [2]geom.Point
	hold := func(p geom.Point) (float64, int) {
		d, k := l.side(p)
		if d > far[k] {
			far[k], at[k] = d, p
		}
		return d, k
	}
	for _, r := range s.runs {
		d, k := hold(r.points[0])
		size := r.box.Max.Sub(r.box.Min).Norm()
		if d > size && d+size <= far[k] {
			continue // all of it on one side, and none further than what is known
		}
		for _, p := range r.points[1:] {
			hold(p)
		}
	}
	if far[0] < far[1] {
		return far[0], at[0]
	}
	return far[1], at[1]
}

// side returns how far a point is from the line, and on which side of it: that of
// the bit it is nearest to, or of both bits where it is nearest to a corner.
// The sides are 0 and 1.
func (l *line) side(p geom.Point) (d float64, side int) {
	best, at := math.Inf(1), 0
	var near geom.Point
	dot := geom.Rect{Min: p, Max: p}
	for _, r := range l.runs {
		if apart(dot, r.box) >= best {
			continue
		}
		for j := 1; j < len(r.points); j++ {
			q := foot(p, r.points[j-1], r.points[j])
			if s := square(p, q); s < best {
				best, at, near = s, r.first+j, q
			}
		}
	}
	along := direction(l.points[at-1], l.points[at])
	switch {
	case near == l.points[at] && at+1 < len(l.points):
		along = along.Add(direction(near, l.points[at+1]))
	case near == l.points[at-1] && at > 1:
		along = along.Add(direction(l.points[at-2], near))
	}
	if along.Cross(p.Sub(near)) > 0 {
		side = 1
	}
	return math.Sqrt(best), side
}

func direction(a, b geom.Point) geom.Point {
	d := b.Sub(a)
	if l := d.Norm(); l > 0 {
		return d.Mul(1 / l)
	}
	return d
}
