package tail

import (
	"math"

	"yokeline/lettering/geom"
)

// The parts of a spine.
const (
	turning = iota
	sweeping
	hooking
	parts
)

// spine is the centre line of a tail, drawn by its curvature: that of the turn
// out of the last letter, of the sweep, and of the hook at the far end. The
// first starts with the curvature of the stroke it carries on, the others from
// 0, and the first two end with 0, so that the curvature nowhere jumps.
type spine struct {
	root    geom.Point
	heading float64        // at the root, radians
	long    [parts]float64 // length of each part, mm
	turn    [parts]float64 // how far each turns, radians, over 0 anticlockwise
	early   float64        // what the first part turns on top, near the root
	lead    float64        // curvature at the root, which the turn takes over from the stroke
}

// station is a point of a spine.
type station struct {
	s       float64 // from the root, mm
	at      geom.Point
	heading float64
	bend    float64 // curvature, 1/mm, over 0 where it turns anticlockwise
}

func (p *spine) length() float64 { return p.long[turning] + p.long[sweeping] + p.long[hooking] }

// earlyPart is the share of the turn in which the early turn is over.
const earlyPart = 0.5

// leadTurn is the ratio of the curvature at the root, held over the whole turn,
// to what it turns as it fades out.
const leadTurn = 10

// within returns, for a part, how far it has turned at share x of its length,
// and the curvature there. The turn is quick at first and slow at its end, the
// sweep even, and the hook winds up like a spiral.
func (p *spine) within(part int, x float64) (turned, bend float64) {
	long, turn := p.long[part], p.turn[part]
	switch part {
	case turning:
		density, sum := beta(x)
		density2, sum2 := beta(min(1, x/earlyPart))
		u := 1 - x
		fade := math.Pow(u, leadTurn-1)
		return turn*sum + p.early*sum2 + p.lead*long*(1-fade*u)/leadTurn,
			(turn*density+p.early*density2/earlyPart)/long + p.lead*fade
	case sweeping:
		sin, cos := math.Sincos(math.Pi * x)
		return turn * (1 - cos) / 2, turn * math.Pi / 2 * sin / long
	default:
		return turn * x * x * x, turn * 3 * x * x / long
	}
}

// beta returns density and sum of the beta law with parameters 2 and 3: 0 at
// both ends, largest at a third.
func beta(x float64) (density, sum float64) {
	u := 1 - x
	return 12 * x * u * u, x * x * (6 - 8*x + 3*x*x)
}

// steps is the number of stations of each part.
const steps = 64

// stations walks along the spine. The position is integrated by Gauss's rule
// with two points a step, whose error is of the fifth order of the step.
func (p *spine) stations() []station {
	out := make([]station, 0, parts*steps+1)
	at, s, heading := p.root, 0.0, p.heading
	add := func(part int, x float64) {
		turned, bend := p.within(part, x)
		out = append(out, station{s + x*p.long[part], at, heading + turned, bend})
	}
	for part, long := range p.long {
		for i := range steps {
			add(part, float64(i)/steps)
			for _, gauss := range [2]float64{0.5 - math.Sqrt(3)/6, 0.5 + math.Sqrt(3)/6} {
				turned, _ := p.within(part, (float64(i)+gauss)/steps)
				at = at.Add(unit(heading + turned).Mul(long / (2 * steps)))
			}
		}
		if part == hooking {
			add(part, 1)
			break
		}
		turned, _ := p.within(part, 1)
		s, heading = s+long, heading+turned
	}
	return out
}

// unit returns the direction of an angle.
func unit(angle float64) geom.Point {
	sin, cos := math.Sincos(angle)
	return geom.Point{X: cos, Y: sin}
}

// left returns the direction a quarter turn anticlockwise of v.
func left(v geom.Point) geom.Point { return geom.Point{X: -v.Y, Y: v.X} }
