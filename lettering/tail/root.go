package tail

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// root is where a tail grows out of the last letter: it carries on the stroke
// there, flush with the stroke's outer edge.
type root struct {
	edge    geom.Point // on the outer edge
	inward  geom.Point // from the edge into the stroke, length 1
	radius  float64    // half the stroke's thickness
	heading float64    // along the stroke, radians
	bend    float64    // curvature of the edge, 1/mm, over 0 where convex
	score   float64
}

// Where a root may lie, in letter heights.
const (
	footHighest  = 0.34 // over the baseline
	waistHighest = 0.6  // the same, where none at the foot will do
	footWidest   = 0.75 // left of the right end of the ink below that
	descends     = -0.1 // below it a stroke is a descender
	footGrain    = 0.03 // step along the ink's edge
	footApart    = 0.15 // between two roots that are worth trying both
	footThick    = 0.4  // most of a stroke's half thickness
	onEdge       = 1e-9 // depth from which a point counts as inside
)

// ErrFoot: the ink has no stroke to grow out of.
var ErrFoot = errors.New("the last letter has no stroke at its foot that a tail could grow out of; leave the tail out or change the face")

// tries is how many places of the foot are tried, and how many higher up.
const tries = 6

// roots returns the places that a tail may grow out of, those at the foot of
// the last letter first, then those higher up, each the best first.
func roots(ink geom.Region, s sized) ([]root, error) {
	wall := trace(ink, footGrain*s.height)
	var found []root
	for _, zone := range [2]zone{{footHighest * s.height, radians(steepestDown)}, {waistHighest * s.height, radians(steepestLast)}} {
		below := rootsBelow(zone, wall, s)
		slices.SortStableFunc(below, func(a, b root) int { return cmp.Compare(b.score, a.score) })
		below = spread(below, footApart*s.height)
		found = append(found, below[:min(tries, len(below))]...)
	}
	if len(found) == 0 {
		return nil, ErrFoot
	}
	return found, nil
}

// zone is where roots may lie: under a height, mm, and with a heading, radians,
// no farther down.
type zone struct{ top, down float64 }

// rootsBelow returns the roots in a zone, near the right end of the ink there.
func rootsBelow(z zone, wall []wallPoint, s sized) []root {
	right := math.Inf(-1)
	for _, w := range wall {
		if w.at.Y < z.top {
			right = max(right, w.at.X)
		}
	}
	var found []root
	for _, w := range wall {
		if !w.outer || w.at.Y > z.top || w.at.X < right-footWidest*s.height {
			continue
		}
		if r, ok := rootAt(w, wall, right, z.down, s); ok {
			found = append(found, r)
		}
	}
	return found
}

// spread leaves out a root that lies near a better one.
func spread(sorted []root, apart float64) []root {
	var out []root
	for _, r := range sorted {
		near := func(o root) bool { return o.edge.Sub(r.edge).Norm() < apart }
		if !slices.ContainsFunc(out, near) {
			out = append(out, r)
		}
	}
	return out
}

// wallPoint is a point of the ink's edge.
type wallPoint struct {
	at    geom.Point
	along geom.Point // with the ink at the left, length 1
	bend  float64    // curvature, 1/mm, over 0 where the ink is convex
	outer bool       // on the outside of a letter, not in a counter
}

// trace returns points of all edges, at most step apart.
func trace(ink geom.Region, step float64) []wallPoint {
	var out []wallPoint
	for _, ring := range ink {
		from, outer := len(out), ring.Area() > 0
		for i, a := range ring {
			d := ring[(i+1)%len(ring)].Sub(a)
			long := d.Norm()
			if long == 0 {
				continue
			}
			n := math.Ceil(long / step)
			for k := range int(n) {
				out = append(out, wallPoint{at: a.Add(d.Mul((float64(k) + 0.5) / n)), along: d.Mul(1 / long), outer: outer})
			}
		}
		bends(out[from:], 2*step)
	}
	return out
}

// bends measures the curvature of a ring of points, over at least reach to
// either side, so that the corners of a flattened curve even out.
func bends(ring []wallPoint, reach float64) {
	n := len(ring)
	for i := range ring {
		long, turned := 0.0, 0.0
		for _, way := range [2]int{1, n - 1} {
			for at, gone := i, 0.0; gone < reach; {
				next := (at + way) % n
				gap := ring[next].at.Sub(ring[at].at).Norm()
				a, b := ring[at].along, ring[next].along
				if way > 1 {
					a, b = b, a
				}
				turned += math.Atan2(a.Cross(b), a.Dot(b))
				gone, long, at = gone+gap, long+gap, next
				if next == i || n < 3 {
					break
				}
			}
		}
		ring[i].bend = turned / long
	}
}

// The headings, in degrees, that a tail may leave its letter with. It turns
// clockwise to run back under the name, so it cannot start too far round; down
// and back only out of a descender.
const (
	steepestUp   = 65
	steepestDown = -80
	steepestLast = -110 // where nothing else does
	farthestBack = -130
)

// rootAt judges one place.
func rootAt(w wallPoint, wall []wallPoint, right, lowest float64, s sized) (root, bool) {
	heading := math.Atan2(-w.along.Y, -w.along.X)
	descender := w.at.Y < descends*s.height
	if descender {
		lowest = radians(farthestBack)
	}
	if heading > radians(steepestUp) || heading < lowest {
		return root{}, false
	}
	inward := left(w.along)
	radius, ok := strokeAt(w, inward, wall, s)
	if !ok {
		return root{}, false
	}
	r := root{edge: w.at, inward: inward, radius: radius, heading: heading, bend: w.bend}
	r.judge(right, descender, s)
	return r, true
}

// opposite is how far round the ball in a stroke, in radians, its second
// contact has to be from the first.
const opposite = 140 * math.Pi / 180

// strokeAt returns half the thickness of the stroke at a point of its edge: the
// radius of the largest ball inside the ink that touches there. False where the
// ball does not touch the stroke's other side, so this is a cap or a corner.
func strokeAt(w wallPoint, inward geom.Point, wall []wallPoint, s sized) (float64, bool) {
	radius, touch := footThick*s.height, w.at
	for _, q := range wall {
		v := q.at.Sub(w.at)
		if depth := v.Dot(inward); depth > onEdge*s.height {
			if r := v.Dot(v) / (2 * depth); r < radius {
				radius, touch = r, q.at
			}
		}
	}
	across := touch.Sub(w.at.Add(inward.Mul(radius)))
	return radius, across.Dot(inward) > -radius*math.Cos(opposite)
}

// judge scores the root: a descender that runs down and back is best, then the
// stroke that ends farthest right and low, if it does not leave too steeply.
func (r *root) judge(right float64, descender bool, s sized) {
	far := (right - r.edge.X) / s.height
	high := r.edge.Y / s.height
	if descender {
		r.score = 1 - math.Abs(r.heading-radians(-110)) - far/10 - high
		return
	}
	steep := max(0, max(r.heading-radians(20), radians(-45)-r.heading)) / (math.Pi / 2)
	r.score = -2*far - 0.4*math.Abs(high) - 0.3*steep
}
