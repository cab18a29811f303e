package tail

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"yokeline/lettering/geom"
)

func sample() spine {
	return spine{
		root: geom.Point{X: 3, Y: 5}, heading: 0.3,
		long: [parts]float64{50, 120, 40}, turn: [parts]float64{-2.6, 0.3, 1.2}, early: -0.8, lead: -0.03,
	}
}

func TestSpineBendsWithoutAJump(t *testing.T) {
	p := sample()
	walk := p.stations()
	most := 0.0
	for _, st := range walk {
		most = max(most, math.Abs(st.bend))
	}
	for i, b := range walk[1:] {
		a := walk[i]
		assert.InDelta(t, a.bend, b.bend, 0.12*most, "curvature jumps at %g", b.s)
		// The heading is the integral of the curvature: trapezium rule.
		assert.InDelta(t, b.heading-a.heading, (a.bend+b.bend)/2*(b.s-a.s), 1e-3)
	}
	last := walk[len(walk)-1]
	assert.InDelta(t, p.length(), last.s, 1e-9)
	lead := p.lead * p.long[turning] / leadTurn
	assert.InDelta(t, p.heading+p.turn[0]+p.turn[1]+p.turn[2]+p.early+lead, last.heading, 1e-9)
	assert.InDelta(t, p.lead, walk[0].bend, 1e-12)
}

func TestSpineIsWhereItsHeadingLeads(t *testing.T) {
	p := sample()
	walk := p.stations()
	// The end point again, by the midpoint rule with ten thousand steps a part.
	at, heading := p.root, p.heading
	for part, long := range p.long {
		const n = 10000
		for i := range n {
			turned, _ := p.within(part, (float64(i)+0.5)/n)
			at = at.Add(unit(heading + turned).Mul(long / n))
		}
		turned, _ := p.within(part, 1)
		heading += turned
	}
	assert.InDelta(t, 0, at.Sub(walk[len(walk)-1].at).Norm(), 1e-4)
}

func TestDrawnCurvesFollowTheSpine(t *testing.T) {
	p := sample()
	sh := shape{spine: p, walk: p.stations()}
	drawn := sh.axis().Flatten(1e-4)[0]
	for _, st := range sh.walk {
		best := math.Inf(1)
		for i, a := range drawn[1:] {
			best = min(best, toEdge(st.at, drawn[i], a))
		}
		assert.Less(t, best, 0.005)
	}
}

func TestGrowthIsTheDerivativeOfTheThickness(t *testing.T) {
	p := sample()
	w := newSwell(5, sized{thickness: 16, taper: 0.9, weight: 6}, &p)
	for s := 0.5; s < p.length()-0.5; s += 1.7 {
		const d = 1e-4
		a, _ := w.at(s - d)
		b, _ := w.at(s + d)
		_, growth := w.at(s)
		assert.InDelta(t, (b-a)/(2*d), growth, 1e-3)
		here, _ := w.at(s)
		assert.LessOrEqual(t, here, 16.0)
	}
}
