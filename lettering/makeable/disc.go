package makeable

import (
	"container/heap"
	"math"

	"yokeline/lettering/geom"
)

// precise is the share of its radius to which the largest disc is found.
const precise = 1e-3

// discs lets every chosen ring count with the largest disc in it: the largest
// in the shape for an outer ring, that in the hole for a hole. Where opposite
// walls were found the disc is larger and changes nothing.
func (s *search) discs(chosen func(ring) bool) {
	var walls []*wall
	for i, k := range s.rings {
		if !chosen(k) || s.holdsFound(i) {
			continue
		}
		walls = walls[:0]
		for j := range s.walls {
			if w := &s.walls[j]; w.ring == i || !s.outside && s.rings[w.ring].shape == k.shape {
				walls = append(walls, w)
			}
		}
		// Less by more than the precision of the disc, or a round hole would
		// measure worse by it than by its walls.
		enough := min(s.opposed.width, s.upTo) * (1 - 3*precise)
		if centre, r := largestDisc(walls, k.box, enough/2); 2*r < enough {
			p := nearestOf(walls, centre)
			s.opposed.try(2*r, p, centre.Lerp(p, -1), i)
		}
	}
}

// holdsFound reports whether the narrowest place lies in the ring's shape or
// hole, so that its largest disc is no smaller.
func (s *search) holdsFound(i int) bool {
	if math.IsInf(s.opposed.width, 1) {
		return false
	}
	if s.outside {
		return s.opposed.ring == i
	}
	return s.rings[s.opposed.ring].shape == s.rings[i].shape
}

func nearestOf(walls []*wall, c geom.Point) geom.Point {
	best, at := math.Inf(1), c
	for _, w := range walls {
		p := w.nearest(c)
		if d := p.Sub(c).Norm(); d < best {
			best, at = d, p
		}
	}
	return at
}

// block is a square that may hold the centre of the largest disc.
type block struct {
	centre geom.Point
	half   float64
	most   float64 // no disc with its centre in the block is larger
}

type blocks []block

func (b blocks) Len() int           { return len(b) }
func (b blocks) Less(i, k int) bool { return b[i].most > b[k].most }
func (b blocks) Swap(i, k int)      { b[i], b[k] = b[k], b[i] }
func (b *blocks) Push(x any)        { *b = append(*b, x.(block)) }
func (b *blocks) Pop() any {
	n := len(*b) - 1
	last := (*b)[n]
	*b = (*b)[:n]
	return last
}

// largestDisc returns the centre and radius of the largest disc between the
// walls, within a thousandth of its radius, or some disc of at least the
// radius that is enough. It divides the box into blocks, the most promising
// first.
func largestDisc(walls []*wall, box geom.Rect, enough float64) (geom.Point, float64) {
	var queue blocks
	best, at := 0.0, box.Center()
	try := func(c geom.Point, half float64) {
		d := depth(walls, c)
		if d > best {
			best, at = d, c
		}
		if most := d + half*math.Sqrt2; most > best*(1+precise) && most > 0 {
			heap.Push(&queue, block{c, half, most})
		}
	}
	side := min(box.Width(), box.Height())
	if !(side > 0) {
		return at, 0
	}
	for x := box.Min.X; x < box.Max.X; x += side {
		for y := box.Min.Y; y < box.Max.Y; y += side {
			try(geom.Point{X: x + side/2, Y: y + side/2}, side/2)
		}
	}
	tiny := 1e-6 * side
	for len(queue) > 0 && best < enough {
		b := heap.Pop(&queue).(block)
		if b.most <= best*(1+precise) || b.half < tiny {
			break
		}
		h := b.half / 2
		for _, d := range [4]geom.Point{{X: -h, Y: -h}, {X: h, Y: -h}, {X: -h, Y: h}, {X: h, Y: h}} {
			try(b.centre.Add(d), h)
		}
	}
	return at, best
}

// depth returns the distance from p to the walls, below 0 on their other side.
func depth(walls []*wall, p geom.Point) float64 {
	best, inside := math.Inf(1), false
	for _, w := range walls {
		d := w.nearest(p).Sub(p)
		best = min(best, d.Dot(d))
		if (w.a.Y > p.Y) != (w.b.Y > p.Y) && p.X < w.a.X+(p.Y-w.a.Y)/(w.b.Y-w.a.Y)*(w.b.X-w.a.X) {
			inside = !inside
		}
	}
	if !inside {
		return -math.Sqrt(best)
	}
	return math.Sqrt(best)
}

// closed lists the holes of the bare ink in which the layer has none left.
func closed(bare, layer geom.Region) []Spot {
	var out []Spot
	for i := range bare {
		if bare[i].Area() >= 0 || open(bare[i:i+1], layer) {
			continue
		}
		hole := wallsOf(bare[i:i+1], true, 0)
		walls := make([]*wall, len(hole))
		for k := range hole {
			walls[k] = &hole[k]
		}
		centre, _ := largestDisc(walls, bare[i:i+1].Bounds(), math.Inf(1))
		out = append(out, Spot{From: centre, To: centre, Index: -1, OtherIndex: -1})
	}
	return out
}

// open reports whether part of a hole is still a hole of the layer: an outline
// only ever grows into it.
func open(hole, layer geom.Region) bool {
	for _, r := range layer {
		if r.Area() < 0 && hole.Contains(r[0].Lerp(r[1], 0.5)) {
			return true
		}
	}
	return false
}

// name finds the letters at every place of the report.
func name(r *Report, letters []Letter) {
	spots := []*Spot{&r.Stroke, &r.Gap, &r.Counter}
	for i := range r.Closed {
		spots = append(spots, &r.Closed[i])
	}
	for _, s := range spots {
		if !s.Found() {
			continue
		}
		if l := letterAt(letters, s.From); l != nil {
			s.Letter, s.Index = l.Text, l.Index
		}
		if l := letterAt(letters, s.To); l != nil {
			s.Other, s.OtherIndex = l.Text, l.Index
		}
	}
}

// beside is how much nearer, mm, a place must be to the rest of the ink than to
// any letter to be no part of the letter: flattening twice, and some.
const beside = 0.1

// letterAt returns the letter whose ink is nearest, the first of equals.
func letterAt(letters []Letter, p geom.Point) *Letter {
	var at *Letter
	best := math.Inf(1)
	for i := range letters {
		d := toInk(letters[i].Ink, p)
		if letters[i].Rest {
			d += beside
		}
		if d < best {
			best, at = d, &letters[i]
		}
	}
	return at
}

func toInk(ink geom.Region, p geom.Point) float64 {
	if ink.Contains(p) {
		return 0
	}
	best := math.Inf(1)
	for _, r := range ink {
		for i, a := range r {
			v := r[(i+1)%len(r)].Sub(a)
			t := 0.0
			if n := v.Dot(v); n > 0 {
				t = min(1, max(0, p.Sub(a).Dot(v)/n))
			}
			best = min(best, p.Sub(a.Add(v.Mul(t))).Norm())
		}
	}
	return best
}
