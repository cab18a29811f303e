package outline

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

// letters is a made-up word of three signs: a slab with a bowl drawn by
// overlapping contours, a wheel, and a spiky zig-zag.
func letters() geom.Region {
	var p geom.Path
	p.MoveTo(geom.Point{X: 0, Y: 0})
	p.LineTo(geom.Point{X: 18, Y: 0})
	p.LineTo(geom.Point{X: 18, Y: 60})
	p.LineTo(geom.Point{X: 0, Y: 60})
	p.Close()
	p.MoveTo(geom.Point{X: 10, Y: 60})
	p.CubeTo(geom.Point{X: 60, Y: 60}, geom.Point{X: 60, Y: 25}, geom.Point{X: 10, Y: 25})
	p.LineTo(geom.Point{X: 10, Y: 35})
	p.CubeTo(geom.Point{X: 40, Y: 35}, geom.Point{X: 40, Y: 50}, geom.Point{X: 10, Y: 50})
	p.Close()
	for _, r := range []float64{30, -18} {
		k, q := 0.5522847498*math.Abs(r), r
		p.MoveTo(geom.Point{X: 85 + math.Abs(r), Y: 30})
		for range 4 {
			p = append(p, quarter(p, 85, 30, k, q)...)
		}
		p.Close()
	}
	r := p.Flatten(Tolerance)
	return append(r, ringOf(118, 0, 140, 0, 146, 30, 152, 0, 170, 0, 150, 60, 142, 60, 120, 8))
}

// quarter continues p by a quarter circle about (x, y), anticlockwise for q
// over 0.
func quarter(p geom.Path, x, y, k, q float64) geom.Path {
	last := p[len(p)-1]
	a := last.P[0]
	if last.Op == geom.Cube {
		a = last.P[2]
	}
	turn := geom.Rotate(math.Copysign(math.Pi/2, q))
	u := a.Sub(geom.Point{X: x, Y: y})
	v := turn.Apply(u)
	share := k / math.Abs(q)
	b := geom.Point{X: x + v.X, Y: y + v.Y}
	return geom.Path{{Op: geom.Cube, P: [3]geom.Point{a.Add(v.Mul(share)), b.Add(u.Mul(share)), b}}}
}

func TestLayersNestAndStandOffTheInk(t *testing.T) {
	ink := letters()
	settled, err := Union(ink)
	require.NoError(t, err)
	for _, join := range []Join{Round, Mitre, Bevel} {
		got, err := Layers(ink, []Layer{{1.5, join}, {3, join}, {0.5, join}})
		require.NoError(t, err)
		require.Len(t, got, 3)
		within := settled
		for i, layer := range got {
			all, err := Union(append(append(geom.Region{}, layer...), within...))
			require.NoError(t, err)
			assert.InDelta(t, layer.Area(), all.Area(), 1e-3*layer.Area()/100, "layer %d of %s covers what it surrounds", i, join)
			assert.Greater(t, layer.Area(), within.Area())
			within = layer
		}
		direct, err := Offset(settled, 5, join)
		require.NoError(t, err)
		assert.Equal(t, direct, got[2], "offset from the ink by the sum, not from the layer before")
	}
	assert.Equal(t, 5.0, Reach([]Layer{{1.5, Round}, {3, Round}, {0.5, Round}}))
}

func TestOffsetsAddUp(t *testing.T) {
	settled, err := Union(letters())
	require.NoError(t, err)
	once, err := Offset(settled, 5, Round)
	require.NoError(t, err)
	half, err := Offset(settled, 2, Round)
	require.NoError(t, err)
	twice, err := Offset(half, 3, Round)
	require.NoError(t, err)
	assert.InEpsilon(t, once.Area(), twice.Area(), 5e-4)
}

func TestExtentIsTheBoxOfTheDrawnOutline(t *testing.T) {
	settled, err := Union(letters())
	require.NoError(t, err)
	cases := map[string][]Layer{
		"none":              nil,
		"round":             {{3, Round}},
		"round twice":       {{1.5, Round}, {4, Round}},
		"mitre":             {{3, Mitre}},
		"bevel":             {{3, Bevel}},
		"bevel over mitre":  {{6, Mitre}, {0.25, Bevel}},
		"round over bevel":  {{2, Bevel}, {1, Round}},
		"nothing wide":      {{0, Mitre}},
		"three of each":     {{1, Round}, {1, Bevel}, {1, Mitre}},
		"thin, fine, round": {{0.01, Round}},
	}
	for name, layers := range cases {
		t.Run(name, func(t *testing.T) {
			drawn, err := Layers(settled, layers)
			require.NoError(t, err)
			box := settled.Bounds()
			for _, layer := range drawn {
				box = box.Union(layer.Bounds())
			}
			got := Extent(settled, layers)
			const hair = 1.0 / grid
			assert.InDelta(t, box.Min.X, got.Min.X, hair)
			assert.InDelta(t, box.Min.Y, got.Min.Y, hair)
			assert.InDelta(t, box.Max.X, got.Max.X, hair)
			assert.InDelta(t, box.Max.Y, got.Max.Y, hair)
		})
	}
}

func TestExtentOfCurvesIsExact(t *testing.T) {
	// A circle of radius 20 whose flattened form touches the circle's box at no
	// side: the exact box counts.
	flat, err := Union(geom.Region{regular(40, 20, math.Pi/40)})
	require.NoError(t, err)
	exact := geom.Rect{Min: geom.Point{X: -20, Y: -20}, Max: geom.Point{X: 20, Y: 20}}
	require.Less(t, flat.Bounds().Width(), 39.99)
	for _, join := range []Join{Round, Mitre, Bevel} {
		got := ExtentOf(exact, flat, []Layer{{3, join}})
		assert.InDelta(t, 46, got.Width(), 1e-9, join)
		assert.InDelta(t, 46, got.Height(), 1e-9, join)
	}
	assert.True(t, Extent(nil, []Layer{{3, Mitre}}).Empty())
}

func TestWhatCannotBeOutlinedIsAnError(t *testing.T) {
	far := geom.Region{rectangle(0, 0, 40000, 10)}
	_, err := Union(far)
	require.ErrorIs(t, err, ErrRange)
	_, err = Union(geom.Region{ringOf(0, 0, math.NaN(), 1, 2, 2)})
	require.ErrorIs(t, err, ErrRange)
	_, err = Union(geom.Region{ringOf(0, 0, math.Inf(1), 1, 2, 2)})
	require.ErrorIs(t, err, ErrRange)
	_, err = Offset(geom.Region{rectangle(0, 0, 1, 1)}, 1e9, Round)
	require.ErrorIs(t, err, ErrRange)
	_, err = Offset(nil, math.NaN(), Round)
	require.ErrorContains(t, err, "not a length")
	_, err = Offset(nil, 1, Join(9))
	require.ErrorContains(t, err, "join 9 is unknown")
	_, err = Layers(nil, []Layer{{1, Round}, {-1, Round}})
	require.ErrorContains(t, err, "outline 2")
	_, err = Layers(nil, []Layer{{math.NaN(), Round}})
	require.ErrorContains(t, err, "outline 1")
	_, err = Layers(far, []Layer{{1, Round}})
	require.ErrorIs(t, err, ErrRange)
}

func TestEmptyStaysEmpty(t *testing.T) {
	for _, r := range []geom.Region{nil, {}, {{}}, {ringOf(1, 1)}, {ringOf(0, 0, 5, 5)}, {ringOf(0, 0, 5, 5, 2, 2)}} {
		got, err := Union(r)
		require.NoError(t, err)
		assert.Empty(t, got)
	}
	got, err := Offset(nil, 3, Round)
	require.NoError(t, err)
	assert.Empty(t, got)
}

func TestJoinNamesReadBack(t *testing.T) {
	for _, j := range []Join{Round, Mitre, Bevel} {
		got, err := ParseJoin(j.String())
		require.NoError(t, err)
		assert.Equal(t, j, got)
	}
	_, err := ParseJoin("Round")
	require.EqualError(t, err, `join "Round" is unknown: use round, mitre or bevel`)
	assert.Equal(t, "join 7", Join(7).String())
}
