package makeable

import (
	"math"
	"sort"

	"yokeline/lettering/geom"
)

// sharp is the least turn, radians, of a corner that counts as the tip of a
// wedge, however its sides bend.
const sharp = 120 * math.Pi / 180

// loop is one ring of walls as a way round.
type loop struct {
	first, count int
	length       float64
	tips         []float64 // where along it the sharp corners are
}

// loopsOf finds the way round every ring and sets each wall's place on it.
// Rings too small to have walls are left empty.
func loopsOf(walls []wall, rings int) []loop {
	out := make([]loop, rings)
	for i := range walls {
		w := &walls[i]
		l := &out[w.ring]
		if l.count == 0 {
			l.first = i
		}
		w.at = l.length
		l.count++
		l.length += w.length
		if w.turn > sharp {
			l.tips = append(l.tips, w.at)
		}
	}
	return out
}

// inTip reports whether a place between p on v and q on w lies in the tip of a
// wedge: the boundary from p to q leads round a sharp corner, about as far on
// either side, and half way to the corner the walls are much nearer together.
func (s *search) inTip(v, w *wall, p, q geom.Point) bool {
	if v.ring != w.ring {
		return false
	}
	l := &s.loops[v.ring]
	width := q.Sub(p).Norm()
	from, to := v.at+p.Sub(v.a).Norm(), w.at+q.Sub(w.a).Norm()
	for _, tip := range l.tips {
		// Forwards from p over the tip to q, or from q to p.
		for _, way := range [2][2]float64{{from, to}, {to, from}} {
			a, b := l.along(way[0], tip), l.along(tip, way[1])
			if math.Abs(a+b-l.along(way[0], way[1])) > 1e-6*l.length || max(a, b) > 1.6*min(a, b)+width {
				continue
			}
			const much = 0.65
			if s.point(l, tip-a/2).Sub(s.point(l, tip+b/2)).Norm() <= much*width {
				return true
			}
		}
	}
	return false
}

// along returns the length of the way forwards from one place to another.
func (l *loop) along(from, to float64) float64 {
	d := math.Mod(to-from, l.length)
	if d < 0 {
		d += l.length
	}
	return d
}

// point returns the point at a place of the way round.
func (s *search) point(l *loop, at float64) geom.Point {
	at = l.along(0, at)
	walls := s.walls[l.first : l.first+l.count]
	i := sort.Search(len(walls), func(i int) bool { return walls[i].at > at }) - 1
	w := &walls[max(0, i)]
	return w.a.Add(w.dir.Mul(min(w.length, at-w.at)))
}
