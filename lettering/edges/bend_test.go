package edges_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
)

func TestPointsAreDrawnBetweenTheEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFlat(t)
		b, err := f.shape.Band(f.height, f.chord)
		require.NoError(t, err)
		for _, s := range f.path {
			if s.Op == geom.Close {
				continue
			}
			want, got := oracle(f.shape, f.height, f.chord, s.P[0]), b.At(s.P[0])
			require.InDelta(t, want.X, got.X, 1e-9)
			require.InDelta(t, want.Y, got.Y, 1e-9*f.chord)
		}
	})
}

func TestDrawnCurvesStayWithinTheTolerance(t *testing.T) {
	tried, drew := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		f := drawFlat(t)
		tolerance := rapid.SampledFrom([]float64{0, 0.02, 0.001, 0.3}).Draw(t, "tolerance")
		drawn, err := f.shape.Bend(f.path, f.height, f.chord, tolerance)
		tried++
		if err != nil {
			return // edges that touch; their errors are tested elsewhere
		}
		drew++
		if tolerance == 0 {
			tolerance = edges.DefaultTolerance
		}
		worst := deviation(f.path, drawn, func(p geom.Point) geom.Point { return oracle(f.shape, f.height, f.chord, p) }, 16, 800)
		// A curve of 600 mm in 800 edges: the polygons themselves miss it by
		// about 0.0005 mm.
		require.LessOrEqual(t, worst, tolerance+0.0005)
	})
	assert.Greater(t, drew, tried/2, "most random shapes can be drawn")
}

func TestSmoothJoinsStaySmooth(t *testing.T) {
	// Two halves of a bowl that meet level at (0, 10).
	var p geom.Path
	p.MoveTo(geom.Point{X: -40, Y: 60})
	p.CubeTo(geom.Point{X: -40, Y: 30}, geom.Point{X: -20, Y: 10}, geom.Point{X: 20, Y: 10})
	p.QuadTo(geom.Point{X: 70, Y: 10}, geom.Point{X: 90, Y: 60})
	p.Close()
	s, err := edges.Bulge.ByRise(20)
	require.NoError(t, err)
	drawn, err := s.Bend(p, 60, 240, 0.0001)
	require.NoError(t, err)
	checked := 0
	for i := 2; i < len(drawn); i++ {
		if drawn[i-1].Op != geom.Cube || drawn[i].Op != geom.Cube || drawn[i-1].P[2].X == -40 || drawn[i-1].P[2].X == 90 {
			continue
		}
		in, out := drawn[i-1].P[2].Sub(drawn[i-1].P[1]), drawn[i].P[0].Sub(drawn[i-1].P[2])
		assert.InDelta(t, 0, in.Cross(out)/in.Norm()/out.Norm(), 1e-9)
		checked++
	}
	assert.Greater(t, checked, 4)
}

func TestStraightEdgesGiveTheInputItself(t *testing.T) {
	p := square(-20, 0, 20, 60)
	for _, s := range []edges.Shape{{}, {Top: edges.Edge{Kind: edges.Arch}, Bottom: edges.Edge{Kind: edges.Slant}}} {
		got, err := s.Bend(p, 60, 280, 0.02)
		require.NoError(t, err)
		assert.Equal(t, p, got)
		assert.Same(t, &p[0], &got[0])
	}
}

func TestTheInputIsNotChanged(t *testing.T) {
	p := square(-20, 0, 20, 60)
	s := edges.Shape{Top: edges.Edge{Kind: edges.Arch, Rise: 20}, Shear: 0.2}
	_, err := s.Bend(p, 60, 280, 0.02)
	require.NoError(t, err)
	assert.Equal(t, square(-20, 0, 20, 60), p)
}

func TestStemsStayUprightLines(t *testing.T) {
	s, err := edges.Bulge.ByRise(20)
	require.NoError(t, err)
	got, err := s.Bend(square(30, 0, 42, 60), 60, 280, 0.02)
	require.NoError(t, err)
	upright := 0
	for i := 1; i < len(got); i++ {
		if got[i].Op == geom.Line {
			assert.Contains(t, []float64{30, 42}, got[i].P[0].X, "a stem's side")
			assert.Equal(t, end(got[i-1]).X, got[i].P[0].X)
			upright++
		}
	}
	assert.Equal(t, 2, upright)
}

// Both edges arched alike are the vertical arch: y gains √(R² - x²) - R, the
// formula of the measured definitions.
func TestEqualArchesAreTheVerticalArch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := rapid.Float64Range(50, 600).Draw(t, "chord")
		rise := chord * rapid.Float64Range(0.001, 0.4).Draw(t, "share")
		r := geom.RadiusOf(chord, rise)
		p := geom.Point{X: chord * rapid.Float64Range(-0.5, 0.5).Draw(t, "x"), Y: rapid.Float64Range(-30, 120).Draw(t, "y")}
		for form, sign := range map[edges.Form]float64{edges.VerticalArch: 1, edges.VerticalArchDown: -1} {
			byRise, err := form.ByRise(rise)
			require.NoError(t, err)
			byRadius, err := form.ByRadius(r)
			require.NoError(t, err)
			for _, s := range []edges.Shape{byRise, byRadius} {
				b, err := s.Band(80, chord)
				require.NoError(t, err)
				got := b.At(p)
				require.Equal(t, p.X, got.X)
				require.InDelta(t, p.Y+sign*(math.Sqrt(r*r-p.X*p.X)-r), got.Y, 1e-9)
			}
		}
	})
}

// Alike slants are drawn by one affine map, which must be the same map.
func TestSlantsAreDrawnCurveByCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFlat(t)
		edge := edges.Edge{Kind: edges.Slant, Angle: rapid.Float64Range(-1, 1).Draw(t, "angle")}
		s := edges.Shape{Top: edge, Bottom: edge, Shear: f.shape.Shear}
		drawn, err := s.Bend(f.path, f.height, 0, 0.02)
		require.NoError(t, err)
		requireAlike(t, moved(f.path, func(p geom.Point) geom.Point { return oracle(s, f.height, 0, p) }), drawn, 1e-9)
	})
}

func TestMirroredEdgesMirrorTheResult(t *testing.T) {
	flip := geom.Scale(-1, 1)
	rapid.Check(t, func(t *rapid.T) {
		f := drawFlat(t)
		other := f.shape
		other.Shear = -other.Shear
		for _, e := range []*edges.Edge{&other.Top, &other.Bottom} {
			e.Angle = -e.Angle
			if e.Kind == edges.Slant {
				e.Rise = -e.Rise
			}
		}
		a, errA := f.shape.Bend(f.path, f.height, f.chord, 0.02)
		b, errB := other.Bend(f.path.Transform(flip), f.height, f.chord, 0.02)
		require.Equal(t, errA == nil, errB == nil)
		requireAlike(t, a.Transform(flip), b, 1e-9)
	})
}

func TestEdgesUpsideDownTurnTheResultUpsideDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFlat(t)
		f.shape.Shear = 0
		minus := func(e edges.Edge) edges.Edge {
			return edges.Edge{Kind: e.Kind, Rise: -e.Rise, Radius: -e.Radius, Angle: -e.Angle}
		}
		other := edges.Shape{Top: minus(f.shape.Bottom), Bottom: minus(f.shape.Top)}
		a, err := f.shape.Band(f.height, f.chord)
		require.NoError(t, err)
		b, err := other.Band(f.height, f.chord)
		require.NoError(t, err)
		for _, s := range f.path {
			p := a.At(s.P[0])
			q := b.At(geom.Point{X: s.P[0].X, Y: f.height - s.P[0].Y})
			require.InDelta(t, f.height-p.Y, q.Y, 1e-9)
		}
	})
}

// A large radius meets the straight line.
func TestFlatArchesMeetStraightLetters(t *testing.T) {
	s, err := edges.Pinch.ByRadius(1e12)
	require.NoError(t, err)
	p := square(-120, -10, 120, 70)
	got, err := s.Bend(p, 60, 280, 0.02)
	require.NoError(t, err)
	requireAlike(t, p, lines(got), 1e-7)
}

func TestWhatPassesTheLinesFollowsInProportion(t *testing.T) {
	s, err := edges.Pinch.ByRise(20)
	require.NoError(t, err)
	b, err := s.Band(60, 280)
	require.NoError(t, err)
	for _, x := range []float64{-140, -60, 0, 140} {
		foot, top := b.At(geom.Point{X: x}), b.At(geom.Point{X: x, Y: 60})
		assert.InDelta(t, b.Bottom(x), foot.Y, 1e-12)
		assert.InDelta(t, b.Top(x), top.Y, 1e-12)
		tail, accent := b.At(geom.Point{X: x, Y: -15}), b.At(geom.Point{X: x, Y: 75})
		assert.InDelta(t, b.Height(x)/4, foot.Y-tail.Y, 1e-12)
		assert.InDelta(t, b.Height(x)/4, accent.Y-top.Y, 1e-12)
	}
}

func TestContoursAreClosedAsFlattenClosesThem(t *testing.T) {
	s, err := edges.Bulge.ByRise(20)
	require.NoError(t, err)
	shut := square(-100, 0, 100, 60)
	open := shut[:len(shut)-1]
	a, err := s.Bend(shut, 60, 280, 0.02)
	require.NoError(t, err)
	b, err := s.Bend(open, 60, 280, 0.02)
	require.NoError(t, err)
	assert.Equal(t, a, b)
	assert.Equal(t, geom.Cube, a[len(a)-2].Op, "the closing edge is bent too")

	unbegun, err := s.Bend(append(geom.Path{}, shut[1:]...), 60, 280, 0.02)
	require.NoError(t, err)
	assert.Equal(t, geom.Move, unbegun[0].Op)
	none, err := s.Bend(nil, 60, 280, 0.02)
	require.NoError(t, err)
	assert.Empty(t, none)
}

// square is a rectangle whose last edge is drawn by Close.
func square(x0, y0, x1, y1 float64) geom.Path {
	var p geom.Path
	p.MoveTo(geom.Point{X: x0, Y: y0})
	p.LineTo(geom.Point{X: x0, Y: y1})
	p.LineTo(geom.Point{X: x1, Y: y1})
	p.LineTo(geom.Point{X: x1, Y: y0})
	p.Close()
	return p
}

// end returns the end of a segment.
func end(s geom.Segment) geom.Point {
	if s.Op == geom.Cube {
		return s.P[2]
	}
	return s.P[0]
}

// lines puts straight lines in place of curves and drops the one back to the
// start.
func lines(p geom.Path) geom.Path {
	var out geom.Path
	for i, s := range p {
		switch {
		case i+1 < len(p) && p[i+1].Op == geom.Close:
		case s.Op == geom.Cube:
			out.LineTo(s.P[2])
		default:
			out = append(out, s)
		}
	}
	return out
}

func requireAlike(t require.TestingT, a, b geom.Path, within float64) {
	require.Equal(t, len(a), len(b))
	for i := range a {
		require.Equal(t, a[i].Op, b[i].Op)
		for k := range a[i].P {
			require.InDelta(t, a[i].P[k].X, b[i].P[k].X, within)
			require.InDelta(t, a[i].P[k].Y, b[i].P[k].Y, within)
		}
	}
}
