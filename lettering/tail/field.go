package tail

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// field is the script that a tail from one root has to find its way under.
type field struct {
	s     sized
	root  root
	ink   geom.Region
	box   geom.Rect
	runs  []run
	drawn shape   // by the last try
	sweep float64 // the last one found, mm: where to start looking for the next
	unit  float64 // letter height, or less where there is little length; scales the hook
}

// run is a few edges of the ink in a row, from point to point. Most runs are
// too far off to look at their edges.
type run struct {
	points geom.Ring
	box    geom.Rect
}

const runLength = 12

// cramped is the share of the way from the root to the far end that the hook
// is scaled by where that is less than the letter height.
const cramped = 0.45

func newField(ink geom.Region, r root, s sized) field {
	f := field{s: s, root: r, ink: ink, box: ink.Bounds()}
	way := r.edge.X - (s.right - s.reach)
	f.unit = max(0.1*s.height, min(s.height, cramped*way))
	f.sweep = s.reach
	for _, ring := range ink {
		closed := append(slices.Clone(ring), ring[0])
		for i := 0; i < len(ring); i += runLength {
			points := closed[i : min(i+runLength, len(ring))+1]
			f.runs = append(f.runs, run{points, geom.Region{points}.Bounds()})
		}
	}
	return f
}

// The turn is looked for between these lengths, the longest counted in letter
// heights and gaps, in steps of this factor.
const (
	shortestTurn = 0.3
	longestTurn  = 6
	turnStep     = 1.08
)

// solve draws the highest tail that keeps the gap and ends where asked.
func (f *field) solve() (shape, bool) {
	low := 0.0
	for turn := shortestTurn * f.s.height; turn < longestTurn*(f.s.height+f.s.gap); turn *= turnStep {
		switch f.try(turn, roughly) {
		case noRoom:
			return shape{}, false
		case kept:
			return f.raise(low, turn)
		}
		low = turn
	}
	return shape{}, false
}

// raise shortens the turn, between one that does not do and one that does, so
// that the tail is no lower than it has to be, and draws it exactly.
func (f *field) raise(low, high float64) (shape, bool) {
	for range 10 {
		if low == 0 {
			break
		}
		if middle := (low + high) / 2; f.try(middle, roughly) == kept {
			high = middle
		} else {
			low = middle
		}
	}
	// Found with tails that end roughly where asked, so it may take a hair more.
	for range 8 {
		if f.try(high, exactly) == kept {
			return f.drawn, true
		}
		high *= 1.001
	}
	return shape{}, false
}

// How near to where asked a tail ends, in letter heights.
const (
	roughly = 2e-3
	exactly = 1e-6
)

// result is how a try went.
type result uint8

const (
	kept   result = iota
	tight         // too near to the letters, or folded
	noRoom        // the turn and the hook leave no room for a sweep
)

// try draws the tail with the given turn, its sweep as long as it takes to end
// where asked, and reports how it went.
func (f *field) try(turn, within float64) result {
	long := [parts]float64{turn, f.sweep, (0.3 + 0.45*math.Abs(f.s.hook)) * f.unit}
	for range 32 {
		f.drawn = newShape(f.root, f.s, long)
		if f.drawn.folds(hooking) {
			long[hooking] *= 1.1
			continue
		}
		short := f.drawn.farEnd(within == exactly) - (f.s.right - f.s.reach)
		if math.Abs(short) < within*f.s.height {
			f.sweep = long[sweeping]
			return f.judge()
		}
		long[sweeping] += short
		if long[sweeping] < shortestSweep*f.unit {
			return noRoom
		}
	}
	return tight
}

// shortestSweep is the least sweep, in letter heights (or the unit of a short
// tail): less would be no sweep.
const shortestSweep = 0.3

// judge reports whether the drawn tail keeps the gap and its shape.
func (f *field) judge() result {
	if f.drawn.folds(turning) || f.drawn.folds(sweeping) {
		return tight
	}
	if least, left := f.clearance(&f.drawn, f.s.gap); !left || least < f.s.gap {
		return tight
	}
	return kept
}

// away is how near to straight back, in radians, a tail is on its way back,
// where it has to have left its letter by the gap.
const away = 45 * math.Pi / 180

// clearance follows the tail out of its letter and back under the name. Once
// its inner edge has come off by the gap, it counts: the result is the least
// distance from there on. False: it had not when it was on its way back. Above
// enough, the distance need not be right.
func (f *field) clearance(sh *shape, enough float64) (least float64, left bool) {
	least = math.Inf(1)
	back := -math.Pi + f.s.slope + away
	for i := range len(sh.walk) - 1 {
		onWay := i >= steps || sh.walk[i].heading < back
		d := 0.0
		if p := sh.edges[inner][i].at; left || !f.within(p) {
			d = f.distance(p, sh.edges[inner][i+1].at, min(enough, max(least, f.s.gap)))
		}
		left = left || d >= f.s.gap
		if onWay {
			if !left {
				return d, false
			}
			d = min(d, f.distance(sh.edges[outer][i].at, sh.edges[outer][i+1].at, d))
		}
		if left {
			if least = min(least, d); least < f.s.gap {
				break
			}
		}
	}
	return least, left
}

// within reports whether p lies in the ink.
func (f *field) within(p geom.Point) bool { return p.Y > f.box.Min.Y && f.ink.Contains(p) }

// distance returns how far the piece of the tail's edge from p to q is from the
// ink's edge, enough where it is more.
func (f *field) distance(p, q geom.Point, enough float64) float64 {
	piece := geom.EmptyRect().Include(p).Include(q)
	best := enough
	for i := range f.runs {
		r := &f.runs[i]
		if apartBy(piece, r.box) >= best {
			continue
		}
		for k, a := range r.points[1:] {
			b := r.points[k]
			best = min(best, min(toEdge(p, a, b), toEdge(a, p, q)))
		}
	}
	return best
}

// apartBy returns how far two boxes are apart along x or y, whichever is more;
// below 0 where they overlap.
func apartBy(a, b geom.Rect) float64 {
	return max(max(a.Min.X-b.Max.X, b.Min.X-a.Max.X), max(a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
}

// toEdge returns the distance of p from the straight line from a to b.
func toEdge(p, a, b geom.Point) float64 {
	d := b.Sub(a)
	t := 0.0
	if square := d.Dot(d); square > 0 {
		t = min(1, max(0, p.Sub(a).Dot(d)/square))
	}
	return p.Sub(a.Lerp(b, t)).Norm()
}
