package outline

import "yokeline/lettering/geom"

// inset makes the raw offset of a ring that is cut into at every corner, such
// as the counter of an O: a convex hole, which shrinks to the points that lie
// at least the distance within all its edges, or to nothing. As strips along
// the edges it would be as many crossings as the square of its edges, all the
// more as it closes. The edges come in order of direction, so the common part
// of their half planes is found in one pass.
func (r *rawOffset) inset() {
	front := 0
	line := make([]side, 0, len(r.edges)) // edges still in play, from front on
	for _, s := range r.edges {
		s.start = s.start.Add(s.normal.Mul(r.d))
		for len(line)-front >= 2 && beyond(line[len(line)-2], line[len(line)-1], s) {
			line = line[:len(line)-1]
		}
		for len(line)-front >= 2 && beyond(line[front], line[front+1], s) {
			front++
		}
		if len(line) > front && !cutsIn(line[len(line)-1], s) {
			return
		}
		line = append(line, s)
	}
	for len(line)-front > 2 && beyond(line[len(line)-2], line[len(line)-1], line[front]) {
		line = line[:len(line)-1]
	}
	if len(line)-front < 3 || !cutsIn(line[len(line)-1], line[front]) {
		return
	}
	prev := line[len(line)-1]
	for _, s := range line[front:] {
		r.add(crossing(prev, s))
		prev = s
	}
}

// cutsIn reports whether the line of t goes on from that of s by a turn
// towards the empty side, of less than half a circle.
func cutsIn(s, t side) bool { return s.normal.Cross(t.normal) < 0 }

// beyond reports whether the crossing of s and t lies outside the half plane of
// u, into which its normal points.
func beyond(s, t, u side) bool {
	return crossing(s, t).Sub(u.start).Dot(u.normal) <= 0
}

// crossing returns where the lines through the starts of s and t, square to
// their normals, meet.
func crossing(s, t side) geom.Point {
	across := geom.Point{X: -s.normal.Y, Y: s.normal.X} // along s
	gap := t.start.Sub(s.start).Dot(t.normal)
	return s.start.Add(across.Mul(gap / across.Dot(t.normal)))
}
