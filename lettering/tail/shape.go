package tail

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// shape is a tail before it is joined.
type shape struct {
	spine spine
	swell swell
	walk  []station
	edges [2][]vertex // outer and inner edge of the turn, from the root
}

// The edges of a shape.
const (
	outer = 0 // left of the way from the root
	inner = 1
)

// vertex is a point of a curve and its derivative by the length of the spine.
type vertex struct{ at, speed geom.Point }

// downhill is the heading, radians, down to which the early turn brings a tail
// that leaves its letter upward.
const downhill = -30 * math.Pi / 180

// flush is how far, as a share of the stroke's half thickness, a tail starts
// within the stroke, so that no hair stands off its edge.
const flush = 0.01

// newShape draws a tail from the root with the given lengths of its turn,
// sweep and hook.
func newShape(r root, s sized, long [parts]float64) shape {
	half := min(r.radius*(1-2*flush), s.thickness/2)
	early := -max(0, r.heading-downhill)
	back := -math.Pi + s.slope - s.bow/2
	lead := leadOf(r, half, (back-r.heading-early)/long[turning])
	sh := shape{spine: spine{
		root:    r.edge.Add(r.inward.Mul(half + flush*r.radius)),
		heading: r.heading,
		long:    long,
		turn:    [parts]float64{back - r.heading - early - lead*long[turning]/leadTurn, s.bow, s.hook},
		early:   early,
		lead:    lead,
	}}
	sh.swell = newSwell(2*half, s, &sh.spine)
	sh.walk = sh.spine.stations()
	sh.edges = [2][]vertex{sh.side(1), sh.side(-1)}
	return sh
}

// mostLead is the most that the turn takes over from the stroke, as a share of
// its whole.
const mostLead = 0.3

// leadOf returns the curvature with which the centre line leaves the root: that
// of the stroke's outer edge, seen from half a thickness within, if the stroke
// turns the way the tail goes on to. mean is the mean curvature of the turn.
func leadOf(r root, half, mean float64) float64 {
	if r.bend <= 0 {
		return 0
	}
	radius := max(1/r.bend-half, half/tightest)
	return max(-1/radius, min(0, mostLead*leadTurn*mean))
}

// side returns the edge at the left of the way for 1, at the right for -1.
func (sh *shape) side(sign float64) []vertex {
	out := make([]vertex, len(sh.walk))
	for i, st := range sh.walk {
		width, growth := sh.swell.at(st.s)
		ahead := unit(st.heading)
		aside := left(ahead).Mul(sign)
		out[i] = vertex{st.at.Add(aside.Mul(width / 2)), ahead.Mul(1 - sign*st.bend*width/2).Add(aside.Mul(growth / 2))}
	}
	return out
}

// tightest is how near the half thickness may come to the radius of the bend:
// at 1 the inner edge has a corner, beyond it crosses itself.
const tightest = 0.8

// folds reports whether a part bends too tightly for its thickness.
func (sh *shape) folds(part int) bool {
	for _, st := range sh.walk[part*steps : (part+1)*steps+1] {
		width, _ := sh.swell.at(st.s)
		if math.Abs(st.bend)*width/2 > tightest {
			return true
		}
	}
	return false
}

// stride is how many stations a drawn curve spans: few curves, and none that
// turns by much.
const stride = 4

// outline returns the edge of the tail, anticlockwise.
func (sh *shape) outline() geom.Path {
	var p geom.Path
	there, back := sh.edges[inner], sh.edges[outer]
	p.MoveTo(there[0].at)
	sh.follow(&p, there, false)
	sh.round(&p)
	sh.follow(&p, back, true)
	p.Close()
	return p
}

// farEnd returns the x of the tail's left end: of its curves, or, quicker, of
// their points.
func (sh *shape) farEnd(exact bool) float64 {
	if exact {
		return sh.outline().Bounds().Min.X
	}
	end := math.Inf(1)
	for i := range sh.walk {
		end = min(end, sh.edges[outer][i].at.X, sh.edges[inner][i].at.X)
	}
	last := sh.walk[len(sh.walk)-1]
	return min(end, last.at.X-sh.swell.end/2)
}

// axis returns the centre line.
func (sh *shape) axis() geom.Path {
	line := make([]vertex, len(sh.walk))
	for i, st := range sh.walk {
		line[i] = vertex{st.at, unit(st.heading)}
	}
	var p geom.Path
	p.MoveTo(line[0].at)
	sh.follow(&p, line, false)
	return p
}

// follow appends cubics with the place and derivative of the line at every
// stride.
func (sh *shape) follow(p *geom.Path, line []vertex, back bool) {
	var curves geom.Path
	for i := 0; i+stride < len(line); i += stride {
		a, b := line[i], line[i+stride]
		third := (sh.walk[i+stride].s - sh.walk[i].s) / 3
		c, d := a.at.Add(a.speed.Mul(third)), b.at.Sub(b.speed.Mul(third))
		if back {
			a, b, c, d = b, a, d, c
		}
		curves.CubeTo(c, d, b.at)
	}
	if back {
		slices.Reverse(curves)
	}
	*p = append(*p, curves...)
}

// quarter is the handle of a cubic that draws a quarter of a circle, as a
// share of its radius: 4/3 (√2 - 1).
const quarter = 0.5522847498307936

// round appends the half circle of the far end.
func (sh *shape) round(p *geom.Path) {
	last := len(sh.walk) - 1
	middle := sh.walk[last].at
	from, to := sh.edges[inner][last].at, sh.edges[outer][last].at
	aside := from.Sub(middle)
	ahead := left(aside)
	tip := middle.Add(ahead)
	p.CubeTo(from.Add(ahead.Mul(quarter)), tip.Add(aside.Mul(quarter)), tip)
	p.CubeTo(tip.Sub(aside.Mul(quarter)), to.Add(ahead.Mul(quarter)), to)
}
