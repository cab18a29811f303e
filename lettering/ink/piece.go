package ink

import "yokeline/lettering/geom"

// piece is one line or curve of a contour: n control points, 2 for a line.
type piece struct {
	p       [4]geom.Point
	n       int
	contour int
}

func (s piece) start() geom.Point { return s.p[0] }
func (s piece) end() geom.Point   { return s.p[s.n-1] }

// leaving returns the direction at the start, arriving the one at the end;
// neither has unit length. Control points that fall together are passed over.
func (s piece) leaving() geom.Point {
	for i := 1; i < s.n; i++ {
		if d := s.p[i].Sub(s.p[0]); d != (geom.Point{}) {
			return d
		}
	}
	return geom.Point{}
}

func (s piece) arriving() geom.Point {
	for i := s.n - 2; i >= 0; i-- {
		if d := s.end().Sub(s.p[i]); d != (geom.Point{}) {
			return d
		}
	}
	return geom.Point{}
}

// at returns the point at parameter t.
func (s piece) at(t float64) geom.Point {
	work := s.p
	for n := s.n - 1; n > 0; n-- {
		for i := range n {
			work[i] = work[i].Lerp(work[i+1], t)
		}
	}
	return work[0]
}

// split lists the pieces of all contours, each closed, without pieces of no
// length.
func split(path geom.Path) []piece {
	out := make([]piece, 0, len(path))
	var at, first geom.Point
	contour := 0
	add := func(n int, p ...geom.Point) {
		s := piece{n: n, contour: contour}
		s.p[0] = at
		copy(s.p[1:], p)
		at = p[n-2]
		if s.leaving() != (geom.Point{}) {
			out = append(out, s)
		}
	}
	for _, s := range path {
		switch s.Op {
		case geom.Move:
			if at != first {
				add(2, first)
			}
			contour++
			at, first = s.P[0], s.P[0]
		case geom.Line:
			add(2, s.P[0])
		case geom.Quad:
			add(3, s.P[0], s.P[1])
		case geom.Cube:
			add(4, s.P[0], s.P[1], s.P[2])
		case geom.Close:
			if at != first {
				add(2, first)
			}
		}
	}
	if at != first {
		add(2, first)
	}
	return out
}

// withoutStrays leaves out contours of a single point or a single straight
// edge. Some fonts carry them as anchors; they enclose no ink, but would count
// in a box.
func withoutStrays(path geom.Path) geom.Path {
	var out geom.Path // only made when something is left out
	start := 0
	for i := range path {
		if i+1 < len(path) && path[i+1].Op != geom.Move {
			continue
		}
		contour := path[start : i+1]
		if stray(contour) && out == nil {
			out = append(make(geom.Path, 0, len(path)), path[:start]...)
		} else if !stray(contour) && out != nil {
			out = append(out, contour...)
		}
		start = i + 1
	}
	if out == nil {
		return path
	}
	return out
}

func stray(contour geom.Path) bool {
	corners := 0
	for _, s := range contour {
		switch s.Op {
		case geom.Quad, geom.Cube:
			return false
		case geom.Move, geom.Line:
			corners++
		}
	}
	return corners < 3
}
