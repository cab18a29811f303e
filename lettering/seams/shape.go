package seams

import "yokeline/lettering/geom"

// shape is a piece made ready for measuring: its rings, in stretches.
type shape struct {
	rings  []geom.Ring
	index  []int // of each ring in the piece
	boxes  []geom.Rect
	runs   []run
	starts []int // first run of each ring, and one past the last
	box    geom.Rect
}

func newShape(piece geom.Region) *shape {
	bits := 0
	for _, r := range piece {
		bits += len(r)/stretch + 2
	}
	n := len(piece)
	s := &shape{
		rings: make([]geom.Ring, 0, n), index: make([]int, 0, n), boxes: make([]geom.Rect, 0, n),
		runs: make([]run, 0, bits), starts: make([]int, 1, n+1), box: geom.EmptyRect(),
	}
	for i, r := range piece {
		if len(r) > 0 {
			s.add(i, r)
		}
	}
	return s
}

func (s *shape) add(index int, r geom.Ring) {
	box := geom.EmptyRect()
	push := func(points []geom.Point) {
		s.runs = append(s.runs, run{points: points, box: boxOf(points)})
		box = box.Union(s.runs[len(s.runs)-1].box)
	}
	for i := 0; i+1 < len(r); i += stretch {
		push(r[i:min(i+stretch+1, len(r))])
	}
	push([]geom.Point{r[len(r)-1], r[0]})
	s.rings, s.index, s.boxes = append(s.rings, r), append(s.index, index), append(s.boxes, box)
	s.starts = append(s.starts, len(s.runs))
	s.box = s.box.Union(box)
}

// only returns the shape of one ring.
func (s *shape) only(i int) *shape {
	runs := s.runs[s.starts[i]:s.starts[i+1]]
	return &shape{rings: s.rings[i : i+1], index: s.index[i : i+1], boxes: s.boxes[i : i+1], runs: runs, starts: []int{0, len(runs)}, box: s.boxes[i]}
}

// covers reports whether a point lies within the outer boundary of the piece.
func (s *shape) covers(p geom.Point) bool {
	for i, box := range s.boxes {
		if p.X >= box.Min.X && p.X <= box.Max.X && p.Y >= box.Min.Y && p.Y <= box.Max.Y && (geom.Region{s.rings[i]}).Contains(p) {
			return true
		}
	}
	return false
}

// moved returns the shape with every point mapped; the boxes follow.
func (s *shape) moved(to func(geom.Point) geom.Point) *shape {
	region := make(geom.Region, len(s.rings))
	for i, r := range s.rings {
		region[i] = make(geom.Ring, len(r))
		for k, p := range r {
			region[i][k] = to(p)
		}
	}
	out := newShape(region)
	out.index = s.index
	return out
}
