package nest_test

import (
	"math"
	"math/rand/v2"

	"yokeline/lettering/geom"
	"yokeline/lettering/nest"
	"yokeline/lettering/outline"
)

func rectangle(w, h float64) geom.Region {
	return geom.Region{{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h}, {X: 0, Y: h}}}
}

// sectorRing is a piece of an annulus with its crown up, between two angles.
func sectorRing(radius, height, from, to float64) geom.Ring {
	n := 2 + int((to-from)*radius/3)
	var ring geom.Ring
	for i := range 2 * n {
		r, share := radius, float64(i)/float64(n-1)
		if i >= n {
			r, share = radius+height, float64(2*n-1-i)/float64(n-1)
		}
		s, c := math.Sincos(to - (to-from)*share)
		ring = append(ring, geom.Point{X: r * s, Y: r * c})
	}
	if ring.Area() < 0 {
		for i, j := 0, len(ring)-1; i < j; i, j = i+1, j-1 {
			ring[i], ring[j] = ring[j], ring[i]
		}
	}
	return ring
}

// arched is an arched name of separate blocks, one a letter, some with a counter.
func arched(letters int, height, radius float64) geom.Region {
	var out geom.Region
	wide, gap := height*0.62/(radius+height/2), 4/(radius+height/2)
	start := -(float64(letters)*(wide+gap) - gap) / 2
	for i := range letters {
		a := start + float64(i)*(wide+gap)
		out = append(out, sectorRing(radius, height, a, a+wide))
		if i%2 == 0 {
			hole := sectorRing(radius+height/4, height/2, a+wide/4, a+wide*3/4)
			for j, k := 0, len(hole)-1; j < k; j, k = j+1, k-1 {
				hole[j], hole[k] = hole[k], hole[j]
			}
			out = append(out, hole)
		}
	}
	return out
}

// star is a ring that never crosses itself, in corners as ragged as it gets.
func star(r *rand.Rand, size float64) geom.Region {
	n := 3 + r.IntN(20)
	ring := make(geom.Ring, n)
	for i := range ring {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		d := size * (0.2 + 0.8*r.Float64())
		ring[i] = geom.Point{X: d * c, Y: d * s}
	}
	return geom.Region{ring}
}

// digits are block figures on a grid of 3 by 5, each one ring, or two.
var digits = [][]string{
	{"###", "#.#", "#.#", "#.#", "###"},
	{".#.", ".#.", ".#.", ".#.", ".#."},
	{"###", "..#", "..#", "..#", "..#"},
	{"#..", "#..", "###", ".#.", ".#."},
}

// number is two block digits, 203.2 mm (8 in) high.
func number(r *rand.Rand) geom.Region {
	var out geom.Region
	w := 25 + 8*r.Float64()
	for k := range 2 {
		for row, line := range digits[r.IntN(len(digits))] {
			for col, c := range line {
				if c == '#' { // cells run into each other and are settled below
					x, y := float64(4*k+col)*w, 203.2-float64(row+1)*40.64
					out = append(out, rectangle(w, 40.64).Transform(geom.Translate(x, y))...)
				}
			}
		}
	}
	settled, err := outline.Union(out)
	if err != nil {
		panic(err)
	}
	return settled
}

// team is an invented order of arched names and of numbers.
func team(r *rand.Rand, names, numbers int, turns nest.Turns) []nest.Item {
	var out []nest.Item
	for range names {
		out = append(out, nest.Item{ID: len(out), Shape: arched(4+r.IntN(6), 40+10*r.Float64(), 350), Turns: turns})
	}
	for range numbers {
		out = append(out, nest.Item{ID: len(out), Shape: number(r), Turns: turns})
	}
	return out
}

// distance is the exact distance between two regions, 0 where one holds the
// other, by every pair of edges that could be nearer than far: told apart from
// what the package does. What is farther is taken for far.
func distance(a, b geom.Region, far float64) float64 {
	if a.Contains(b[0][0]) || b.Contains(a[0][0]) {
		return 0
	}
	best := far
	theirs := edgesNear(b, a.Bounds(), far)
	for _, e := range edgesNear(a, b.Bounds(), far) {
		for _, f := range theirs {
			best = math.Min(best, between(e[0], e[1], f[0], f[1]))
		}
	}
	return best
}

func edgesNear(r geom.Region, box geom.Rect, far float64) [][2]geom.Point {
	var out [][2]geom.Point
	for _, ring := range r {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if apart(geom.EmptyRect().Include(p).Include(q), box) <= far {
				out = append(out, [2]geom.Point{p, q})
			}
		}
	}
	return out
}

func between(p, q, u, v geom.Point) float64 {
	if crosses(p, q, u, v) {
		return 0
	}
	return min(toSegment(p, u, v), toSegment(q, u, v), toSegment(u, p, q), toSegment(v, p, q))
}

func crosses(p, q, u, v geom.Point) bool {
	d, e := q.Sub(p), v.Sub(u)
	return d.Cross(u.Sub(p))*d.Cross(v.Sub(p)) < 0 && e.Cross(p.Sub(u))*e.Cross(q.Sub(u)) < 0
}

func toSegment(p, a, b geom.Point) float64 {
	d := b.Sub(a)
	t := 0.0
	if l := d.Dot(d); l > 0 {
		t = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l))
	}
	return p.Sub(a.Lerp(b, t)).Norm()
}

func apart(a, b geom.Rect) float64 {
	dx := math.Max(0, math.Max(a.Min.X-b.Max.X, b.Min.X-a.Max.X))
	dy := math.Max(0, math.Max(a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
	return math.Hypot(dx, dy)
}
