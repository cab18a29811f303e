package garment

import (
	"math"
	"slices"
	"sync"

	"yokeline/lettering/geom"
)

const (
	keepTolerance = 0.02 // flattening of the lines to keep clear of, mm
	bucketHeight  = 16.0 // rows are found by strips of this height, mm
)

// capsule is everything nearer than a margin to one straight bit of a line to
// keep clear of. It is convex, so any row and any band of rows cuts it in one
// stretch of x, which is worked out exactly.
type capsule struct {
	a, b        pt
	r           float64
	keep        int     // index of the line it belongs to
	top, bottom float64 // extent in y
	out         pt      // from the bit to one long edge; zero for a point
}

func newCapsule(a, b pt, r float64, keep int) capsule {
	k := capsule{a: a, b: b, r: r, keep: keep, top: min(a.Y, b.Y) - r, bottom: max(a.Y, b.Y) + r}
	if d := b.Sub(a); d != (pt{}) {
		k.out = pt{X: -d.Y, Y: d.X}.Mul(r / d.Norm())
	}
	return k
}

// clear is a piece with everything on it that must stay free. The panel is what
// is left: points of the piece outside all capsules.
type clear struct {
	piece
	ring     geom.Ring
	capsules []capsule
	top      float64
	buckets  [][]int32 // capsules by strip of y
	edges    [][]int32 // edges of the ring by strip of y
	once     sync.Once
	region   geom.Region
}

func newClear(p piece, m Margins) *clear {
	c := &clear{piece: p}
	c.ring = p.outline.Flatten(keepTolerance)
	c.ring = c.ring[:len(c.ring)-1]
	c.keeps = slices.Clone(p.keeps)
	for i := range c.keeps {
		k := &c.keeps[i]
		k.margin = m.Of(k.kind)
		ps := k.line.Flatten(keepTolerance)
		for j := 1; j < len(ps); j++ {
			if j == 1 || ps[j] != ps[j-1] {
				c.capsules = append(c.capsules, newCapsule(ps[j-1], ps[j], k.margin, i))
			}
		}
	}
	c.fillBuckets()
	return c
}

func (c *clear) fillBuckets() {
	box := geom.Region{c.ring}.Bounds()
	c.top = box.Min.Y
	n := int(box.Height()/bucketHeight) + 1
	c.buckets, c.edges = make([][]int32, n), make([][]int32, n)
	for i, a := range c.ring {
		b := c.ring[(i+1)%len(c.ring)]
		for n := c.bucket(min(a.Y, b.Y)); n <= c.bucket(max(a.Y, b.Y)); n++ {
			c.edges[n] = append(c.edges[n], int32(i))
		}
	}
	for i, k := range c.capsules {
		for n := c.bucket(k.top); n <= c.bucket(k.bottom); n++ {
			c.buckets[n] = append(c.buckets[n], int32(i))
		}
	}
}

func (c *clear) bucket(y float64) int {
	return min(max(int((y-c.top)/bucketHeight), 0), len(c.buckets)-1)
}

// span is a stretch of x.
type span struct{ lo, hi float64 }

func noSpan() span { return span{math.Inf(1), math.Inf(-1)} }

func (s span) include(x float64) span { return span{min(s.lo, x), max(s.hi, x)} }

// within returns the x that the capsule takes up in the band y0 to y1; lo > hi
// when it takes up none. The ends of a convex shape within a band lie where one
// of its two discs or of its two long edges is widest there.
func (k capsule) within(y0, y1 float64) span {
	s := noSpan()
	if k.bottom <= y0 || k.top >= y1 {
		return s
	}
	for _, p := range [2]pt{k.a, k.b} {
		dy := min(max(p.Y, y0), y1) - p.Y
		if q := k.r*k.r - dy*dy; q > 0 {
			w := math.Sqrt(q)
			s.lo, s.hi = min(s.lo, p.X-w), max(s.hi, p.X+w)
		}
	}
	if k.out != (pt{}) {
		s = edgeWithin(s, k.a.Add(k.out), k.b.Add(k.out), y0, y1)
		s = edgeWithin(s, k.a.Sub(k.out), k.b.Sub(k.out), y0, y1)
	}
	return s
}

// edgeWithin adds the x that the segment pq takes up in a band.
func edgeWithin(s span, p, q pt, y0, y1 float64) span {
	if p.Y > q.Y {
		p, q = q, p
	}
	if q.Y < y0 || p.Y > y1 {
		return s
	}
	if q.Y == p.Y {
		return s.include(p.X).include(q.X)
	}
	slope := (q.X - p.X) / (q.Y - p.Y)
	return s.include(p.X + slope*(max(p.Y, y0)-p.Y)).include(p.X + slope*(min(q.Y, y1)-p.Y))
}

// scratch is the working space of rows, one for each trace.
type scratch struct {
	crossings []float64
	taken     []span
}

// row returns the stretches of the panel at height y, left to right.
func (c *clear) row(y float64, w *scratch) []span {
	crossings := w.crossings[:0]
	for _, i := range c.edges[c.bucket(y)] {
		a, b := c.ring[i], c.ring[(int(i)+1)%len(c.ring)]
		if (a.Y > y) != (b.Y > y) {
			crossings = append(crossings, a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y))
		}
	}
	if len(crossings) == 0 {
		return nil
	}
	w.crossings = crossings
	slices.Sort(crossings)
	taken := c.taken(y, w)
	var out []span
	for i := 0; i+1 < len(crossings); i += 2 {
		out = appendFree(out, span{crossings[i], crossings[i+1]}, taken)
	}
	return out
}

// taken returns what the capsules take up at height y, sorted.
func (c *clear) taken(y float64, w *scratch) []span {
	taken := w.taken[:0]
	for _, i := range c.buckets[c.bucket(y)] {
		if s := c.capsules[i].within(y, y); s.lo < s.hi {
			taken = append(taken, s)
		}
	}
	slices.SortFunc(taken, func(a, b span) int {
		if a.lo < b.lo {
			return -1
		}
		return 1
	})
	w.taken = taken
	return taken
}

// appendFree adds what of s is not taken.
func appendFree(out []span, s span, taken []span) []span {
	at := s.lo
	for _, t := range taken {
		if t.hi <= at {
			continue
		}
		if t.lo >= s.hi {
			break
		}
		if t.lo > at {
			out = append(out, span{at, t.lo})
		}
		at = t.hi
	}
	if at < s.hi {
		out = append(out, span{at, s.hi})
	}
	return out
}

// stretch returns the free stretch of x around a point over the whole band y0 to
// y1; ok is false when the middle of the band is not on the panel.
func (c *clear) stretch(x, y0, y1 float64) (free span, ok bool) {
	free = span{math.Inf(-1), math.Inf(1)}
	if !(geom.Region{c.ring}).Contains(pt{X: x, Y: (y0 + y1) / 2}) {
		return free, false
	}
	for _, k := range c.capsules {
		switch s := k.within(y0, y1); {
		case s.lo >= s.hi:
		case s.hi <= x:
			free.lo = max(free.lo, s.hi)
		case s.lo >= x:
			free.hi = min(free.hi, s.lo)
		default:
			return free, false
		}
	}
	return free, true
}

// free returns half the width that lies free on both sides of x over the whole
// band y0 to y1, and the line that ends it. Where the middle of the band is not
// on the panel the width is 0.
func (c *clear) free(x, y0, y1 float64) (half float64, why string) {
	if !(geom.Region{c.ring}).Contains(pt{X: x, Y: (y0 + y1) / 2}) {
		return 0, offPiece
	}
	half = math.Inf(1)
	for _, k := range c.capsules {
		s := k.within(y0, y1)
		if s.lo >= s.hi {
			continue
		}
		d := max(0, s.lo-x, x-s.hi)
		if d < half {
			half, why = d, c.keeps[k.keep].why
		}
	}
	return half, why
}
