package stroke

import (
	"math"

	"yokeline/lettering/geom"
)

// smooth is the turn, in radians, below which two edges are taken for parts of
// one flattened curve.
const smooth = 15 * math.Pi / 180

// wall is an edge of the boundary; the ink lies on its left.
type wall struct {
	a, b   geom.Point
	dir    geom.Point // from a to b, length 1
	inward geom.Point // into the ink, length 1
	length float64
	curved bool    // a smooth joint at either end
	bulge  float64 // how far the curve lies outside the edge at its middle
}

func wallsOf(r geom.Region) []wall {
	var out []wall
	for _, ring := range r {
		first := len(out)
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			v := b.Sub(a)
			if n := v.Norm(); n > 0 {
				d := v.Mul(1 / n)
				out = append(out, wall{a: a, b: b, dir: d, inward: geom.Point{X: -d.Y, Y: d.X}, length: n})
			}
		}
		bend(out[first:])
	}
	return out
}

// bend finds the curved walls of a ring. An edge of length l that turns by t
// into the next one at both ends, the same way, is a chord of an arc whose
// height is l·t/8; the lesser turn counts. So a straight stem does not bulge
// where a curve joins one end of it, nor where a curve of much shorter edges
// joins both.
func bend(ring []wall) {
	n := len(ring)
	turns := make([]float64, n) // from edge i to the next; 0 if not smooth
	for i := range ring {
		p, q := &ring[i], &ring[(i+1)%n]
		turn := math.Atan2(p.dir.Cross(q.dir), p.dir.Dot(q.dir))
		if math.Abs(turn) >= smooth || turn == 0 {
			continue
		}
		p.curved, q.curved = true, true
		if p.length < 3*q.length && q.length < 3*p.length {
			turns[i] = turn
		}
	}
	for i := range ring {
		s, t := turns[(i+n-1)%n], turns[i]
		if s*t > 0 {
			ring[i].bulge = ring[i].length * math.Copysign(math.Min(math.Abs(s), math.Abs(t)), s) / 8
		}
	}
}
