package page

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"yokeline/lettering/geom"
)

// outlineStroke returns the area that a line covers, for the non-zero rule: one
// ring about an open line, two about a closed one. At a bend the inner side
// goes by way of the bend itself, so whatever overlaps turns the same way. The
// drawing library's own stroker is not used: on dense outlines it left squares
// of 1.3 mm wrong by up to 23 %.
func outlineStroke(p geom.Path, l Line, tolerance float64) geom.Path {
	q := toCanvas(p)
	if len(l.Dash) > 0 {
		q = q.Dash(0, l.Dash...)
	}
	s := stroker{half: l.Weight / 2, line: l}
	s.step = 2 * math.Acos(max(0.5, 1-tolerance/s.half))
	for _, part := range q.Flatten(tolerance).Split() {
		s.contour(part.Coords(), part.Closed())
	}
	return s.out.Path()
}

type stroker struct {
	half float64
	line Line
	step float64 // largest angle between two points of a round corner
	ring geom.Ring
	out  geom.Region
}

func (s *stroker) contour(coords []canvas.Point, closed bool) {
	var at []geom.Point
	for _, c := range coords {
		if p := (geom.Point{X: c.X, Y: c.Y}); len(at) == 0 || p != at[len(at)-1] {
			at = append(at, p)
		}
	}
	if closed && len(at) > 1 && at[0] == at[len(at)-1] {
		at = at[:len(at)-1]
	}
	if len(at) < 2 {
		return
	}
	for range 2 { // one side, then the other on the way back
		s.side(at, closed)
		if closed {
			s.finish()
		}
		slices.Reverse(at)
	}
	s.finish()
}

func (s *stroker) finish() {
	if len(s.ring) > 2 {
		s.out = append(s.out, s.ring)
	}
	s.ring = nil
}

// side follows the left of the points, and an open line's end.
func (s *stroker) side(at []geom.Point, closed bool) {
	n := len(at)
	along := func(i int) geom.Point {
		d := at[(i+1)%n].Sub(at[i%n])
		return d.Mul(1 / d.Norm())
	}
	if closed {
		for i := range n {
			s.corner(at[i], along(i+n-1), along(i))
		}
		return
	}
	s.add(at[0], s.left(along(0)))
	for i := 1; i < n-1; i++ {
		s.corner(at[i], along(i-1), along(i))
	}
	s.end(at[n-1], along(n-2))
}

func (s *stroker) add(at, off geom.Point) { s.ring = append(s.ring, at.Add(off)) }

// left returns the half weight to the left of a direction.
func (s *stroker) left(along geom.Point) geom.Point {
	return geom.Point{X: -along.Y * s.half, Y: along.X * s.half}
}

func (s *stroker) corner(at, in, out geom.Point) {
	n0, n1 := s.left(in), s.left(out)
	turn, cos := in.Cross(out), in.Dot(out)
	s.add(at, n0)
	switch {
	case turn == 0 && cos > 0:
		return
	case turn > 0: // the inner side
		s.add(at, geom.Point{})
	case s.line.Join == RoundJoin:
		s.arc(at, n0, -math.Acos(max(-1, min(1, cos))))
	case s.line.Join == MitreJoin && 2 <= MitreLimit*MitreLimit*(1+cos):
		// The mitre is 1/cos(half the turn) line weights long.
		s.add(at, n0.Add(n1).Mul(1/(1+cos)))
	}
	s.add(at, n1)
}

// end goes round the end of an open line to its other side.
func (s *stroker) end(at, out geom.Point) {
	n := s.left(out)
	s.add(at, n)
	switch s.line.Cap {
	case RoundCap:
		s.arc(at, n, -math.Pi)
	case SquareCap:
		s.add(at, n.Add(out.Mul(s.half)))
		s.add(at, out.Mul(s.half).Sub(n))
	}
}

// arc adds the points between off and off turned by the angle.
func (s *stroker) arc(at, off geom.Point, angle float64) {
	n := int(math.Ceil(math.Abs(angle) / s.step))
	for i := 1; i < n; i++ {
		s.add(at, geom.Rotate(angle*float64(i)/float64(n)).Apply(off))
	}
}
