package stroke

import (
	"math"

	"yokeline/lettering/geom"
)

// ballFinder finds the largest ball inside the ink that touches a point.
type ballFinder struct {
	walls []wall
	cells cells
	last  int // wall that the last ball ran into: likely near the next one's
}

// contact is where a ball that touches the boundary at p runs into it again.
type contact struct {
	radius float64
	cosine float64 // of the angle between the contacts, seen from the centre
	wall   int
	share  float64 // position along the wall, 0 to 1
}

// along appends the thicknesses at the samples of wall i.
func (b *ballFinder) along(i int, step float64, kept []sample) []sample {
	w := &b.walls[i]
	n := 1
	if !w.curved || w.length > 8*step {
		n = int(math.Ceil(w.length / step))
	}
	for k := range n {
		t := (float64(k) + 0.5) / float64(n)
		c := b.largest(i, w.a.Lerp(w.b, t))
		if c.radius < math.MaxFloat64 && c.cosine <= opposed {
			thickness := 2*c.radius + w.bulgeAt(t) + b.walls[c.wall].bulgeAt(c.share)
			kept = append(kept, sample{thickness, w.length / float64(n)})
		}
	}
	return kept
}

// bulgeAt is the height of the curve over the wall at share t of its length.
func (w *wall) bulgeAt(t float64) float64 { return 4 * t * (1 - t) * w.bulge }

// largest returns the contact that bounds the ball at p on wall i. Any wall
// bounds it, and balls that touch at p lie within each other, so what cuts into
// a first ball is all that needs to be looked at.
func (b *ballFinder) largest(i int, p geom.Point) contact {
	n := b.walls[i].inward
	best := contact{radius: math.MaxFloat64}
	b.meet(&best, b.last, i, p, n)
	if best.radius == math.MaxFloat64 {
		for k := range b.walls {
			b.meet(&best, k, i, p, n)
		}
	}
	box := ballBox(p.Add(n.Mul(best.radius)), best.radius)
	b.cells.visit(box, func(k int) { b.meet(&best, k, i, p, n) })
	b.last = best.wall
	return best
}

func ballBox(centre geom.Point, radius float64) geom.Rect {
	return geom.Rect{Min: centre, Max: centre}.Grow(radius)
}

// meet shrinks the ball to where it touches wall k, if that cuts into it.
func (b *ballFinder) meet(best *contact, k, own int, p, n geom.Point) {
	if k == own {
		return
	}
	w := &b.walls[k]
	v := p.Sub(w.a)
	// The corner at the wall's start; its end is the start of another wall.
	if ahead := -n.Dot(v); ahead > 0 {
		if r := v.Dot(v) / (2 * ahead); r < best.radius {
			toCorner := v.Add(n.Mul(r)).Mul(-1 / r)
			*best = contact{r, -n.Dot(toCorner), k, 0}
		}
	}
	// The wall's line, from inside: inward·(p + r·n - a) = r.
	height, lean := w.inward.Dot(v), 1-w.inward.Dot(n)
	if height <= 0 || lean <= 0 || height >= best.radius*lean {
		return
	}
	r := height / lean
	foot := w.dir.Dot(v.Add(n.Mul(r)))
	if foot >= 0 && foot <= w.length {
		*best = contact{r, w.inward.Dot(n), k, foot / w.length}
	}
}
