package curve

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

func point(rt *rapid.T, name string) geom.Point {
	c := rapid.Float64Range(-300, 300)
	return geom.Point{X: c.Draw(rt, name+" x"), Y: c.Draw(rt, name+" y")}
}

// gentle draws a curve of the kind garments have: handles near the thirds.
func gentle(rt *rapid.T) Cubic {
	a, d := point(rt, "start"), point(rt, "end")
	n := Right(d.Sub(a))
	k := rapid.Float64Range(-0.3, 0.3)
	return Cubic{a, a.Lerp(d, 0.35).Add(n.Mul(k.Draw(rt, "bow 1"))), a.Lerp(d, 0.65).Add(n.Mul(k.Draw(rt, "bow 2"))), d}
}

func polygonLength(ps []geom.Point) float64 {
	sum := 0.0
	for i := 1; i < len(ps); i++ {
		sum += ps[i].Sub(ps[i-1]).Norm()
	}
	return sum
}

func TestLengthAgreesWithAFinePolygon(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		c := Chain{gentle(rt)}
		assert.InDelta(rt, polygonLength(c.Flatten(1e-5)), c.Length(), 1e-3)
	})
}

func TestLengthOfAQuarterEllipseIsTheElliptic(t *testing.T) {
	// A quarter circle of radius 100 by the usual handle is 157.08 long, off by at most 0.03 %.
	c := Circle(geom.Point{}, 100)
	assert.InDelta(t, 2*math.Pi*100, c.Length(), 0.2)
}

func TestArcHasExactlyItsLengthAndHeadings(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a0 := rapid.Float64Range(-1, 1).Draw(rt, "from")
		turn := rapid.Float64Range(-0.8, 0.8).Draw(rt, "turn")
		l := rapid.Float64Range(10, 400).Draw(rt, "length")
		c := Arc(point(rt, "at"), a0, a0+turn, l)
		assert.InDelta(rt, l, c.Length(), 1e-4*l)
		assert.InDelta(rt, 1, c[0].Dir(0).Dot(Heading(a0)), 1e-9)
		assert.InDelta(rt, 1, c.EndDir().Dot(Heading(a0+turn)), 1e-9)
	})
}

func TestCuttingKeepsPointAndLength(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a := gentle(rt)
		b := Straight(a[3], point(rt, "on"))
		c := Chain{a, b}
		l := rapid.Float64Range(0.01, 0.99).Draw(rt, "share") * c.Length()
		head, tail := c.CutAtLength(l)
		assert.InDelta(rt, l, head.Length(), 1e-3)
		assert.InDelta(rt, c.Length(), head.Length()+tail.Length(), 1e-3)
		assert.InDelta(rt, 0, head.End().Sub(c.At(l)).Norm(), 1e-3)
		assert.InDelta(rt, 0, c.At(-l).Sub(c.At(c.Length()-l)).Norm(), 1e-6)
	})
}

func TestCutWhereFindsTheSign(t *testing.T) {
	c := Bezier(geom.Point{X: -50, Y: 3}, geom.Point{X: -20, Y: 40}, geom.Point{X: 20, Y: -30}, geom.Point{X: 60, Y: 9})
	head, tail, ok := c.CutWhere(func(p geom.Point) float64 { return p.X })
	require.True(t, ok)
	assert.InDelta(t, 0, head.End().X, 1e-9)
	assert.Equal(t, head.End(), tail.Start())
	whole, none, ok := c.CutWhere(func(p geom.Point) float64 { return 1 })
	assert.False(t, ok)
	assert.Equal(t, c, whole)
	assert.Empty(t, none)
}

func TestParallelStaysAtItsDistance(t *testing.T) {
	c := Bezier(geom.Point{X: 0, Y: 100}, geom.Point{X: 54, Y: 100}, geom.Point{X: 77, Y: 50}, geom.Point{X: 90, Y: 0})
	for _, d := range []float64{4, -20} {
		base := c.Flatten(0.001)
		for _, q := range c.Offset(d).Flatten(0.5) {
			near := math.Inf(1)
			for i := 1; i < len(base); i++ {
				ab := base[i].Sub(base[i-1])
				t := math.Max(0, math.Min(1, q.Sub(base[i-1]).Dot(ab)/ab.Dot(ab)))
				near = math.Min(near, q.Sub(base[i-1].Add(ab.Mul(t))).Norm())
			}
			assert.InDelta(t, math.Abs(d), near, 0.01*math.Abs(d)+0.01)
		}
	}
}

func TestCrossCutsBothChainsAtOnePoint(t *testing.T) {
	a := Bezier(geom.Point{X: 0, Y: 0}, geom.Point{X: 30, Y: 60}, geom.Point{X: 70, Y: 60}, geom.Point{X: 100, Y: 0})
	b := Line(geom.Point{X: 20, Y: -10}, geom.Point{X: 40, Y: 90})
	ah, at, bh, bt, ok := Cross(a, b)
	require.True(t, ok)
	assert.InDelta(t, 0, ah.End().Sub(bh.End()).Norm(), 0.02)
	assert.InDelta(t, a.Length(), ah.Length()+at.Length(), 1e-3)
	assert.InDelta(t, b.Length(), bh.Length()+bt.Length(), 1e-3)
	_, _, _, _, ok = Cross(a, Line(geom.Point{X: 0, Y: 200}, geom.Point{X: 100, Y: 200}))
	assert.False(t, ok)
}

func TestWholeIsClosedAndSymmetrical(t *testing.T) {
	half := Join(Line(geom.Point{Y: 10}, geom.Point{X: 40, Y: 10}), Line(geom.Point{X: 40, Y: 10}, geom.Point{X: 30, Y: 80}, geom.Point{Y: 80}))
	w := half.Whole().Closed()
	assert.Equal(t, w.Start(), w.End())
	assert.InDelta(t, 2*half.Length(), w.Length(), 1e-9)
	r := w.Path(true).Flatten(0.1)
	assert.InDelta(t, 0, r.Bounds().Center().X, 1e-12)
	assert.InDelta(t, 70*70.0, math.Abs(r.Area()), 1e-9)
}
