package garment

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

// Every figure of every garment is shown once, along a line of that length.
func TestAMeasureIsTakenAlongALineOfItsLength(t *testing.T) {
	for _, info := range Cuts() {
		for _, size := range AllSizes() {
			g := must(t, info.Cut, size)
			want := map[string]float64{}
			for _, f := range g.Figures() {
				if f.MM > 0 { // a sleeveless cut has a sleeve of no length
					want[f.Measure] = f.MM
				}
			}
			for _, at := range g.Taken() {
				assert.InDelta(t, want[at.Measure], runLength(at.Path), 0.02, "%s %s: %s", info.Cut, size, at.Measure)
				delete(want, at.Measure)
			}
			require.Empty(t, want, "%s %s: not shown", info.Cut, size)
		}
	}
}

// A line of a measure ends on the cloth: on the outline, a seam, or the level of
// the high point of shoulder.
func TestAMeasureAcrossEndsOnBothSidesAlike(t *testing.T) {
	g := must(t, FootballYoke, Size{Adult, "L"})
	for _, at := range g.Taken() {
		if at.Run == Across {
			assert.InDelta(t, 0, at.Path.Bounds().Center().X, 1e-9, at.Measure)
			assert.InDelta(t, 0, at.Path.Bounds().Height(), 1e-9, at.Measure)
		}
	}
}

func runLength(p geom.Path) float64 {
	sum := 0.0
	var last geom.Point
	for i, q := range openPoints(p) {
		if i > 0 {
			sum += q.Sub(last).Norm()
		}
		last = q
	}
	return sum
}

// openPoints flattens one open contour.
func openPoints(p geom.Path) []geom.Point {
	var out []geom.Point
	for _, s := range p {
		switch s.Op {
		case geom.Move, geom.Line:
			out = append(out, s.P[0])
		case geom.Cube:
			a := out[len(out)-1]
			for k := 1; k <= 200; k++ {
				v := float64(k) / 200
				u := 1 - v
				out = append(out, a.Mul(u*u*u).Add(s.P[0].Mul(3*u*u*v)).Add(s.P[1].Mul(3*u*v*v)).Add(s.P[2].Mul(v*v*v)))
			}
		}
	}
	return out
}
