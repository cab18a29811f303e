package fit_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

var staticFaces = []string{"graduate", "oswald", "anton", "alfa-slab-one", "yellowtail", "barlow-condensed"}

func drawn(t *rapid.T) fit.Request {
	r := request(t, rapid.SampledFrom(staticFaces).Draw(t, "face"), "")
	r.Text = rapid.SampledFrom([]string{"RUIZ", "HERNANDEZ", "De Wit", "QUILLFEATHER", "JO"}).Draw(t, "text")
	r.Height = rapid.Float64Range(20, 90).Draw(t, "height")
	r.Ladder = fit.DefaultLadder(r.Height)
	r.Limit = rapid.Float64Range(60, 350).Draw(t, "limit")
	r.Shape = fit.Shape(rapid.IntRange(0, 4).Draw(t, "shape"))
	r.Spacing = fit.Spacing(rapid.IntRange(0, 1).Draw(t, "spacing"))
	r.Radius = rapid.Float64Range(350, 1500).Draw(t, "radius")
	for range rapid.IntRange(0, 2).Draw(t, "layers") {
		r.Outlines = append(r.Outlines, outline.Layer{
			Width: rapid.Float64Range(0.5, 5).Draw(t, "width"), Join: outline.Join(rapid.IntRange(0, 2).Draw(t, "join")),
		})
	}
	return r
}

func TestALargerLimitNeverGivesSmallerLetters(t *testing.T) {
	f := fit.NewFitter()
	rapid.Check(t, func(t *rapid.T) {
		r := drawn(t)
		small, err := f.Name(r)
		if err != nil {
			t.Skip(err)
		}
		r.Limit *= rapid.Float64Range(1, 1.5).Draw(t, "more")
		large, err := f.Name(r)
		require.NoError(t, err)
		const hair = 1e-6
		assert.GreaterOrEqual(t, large.LetterHeight, small.LetterHeight-hair)
		assert.GreaterOrEqual(t, large.WidthScale, small.WidthScale-hair)
		assert.GreaterOrEqual(t, large.Tracking/large.LetterHeight, small.Tracking/small.LetterHeight-hair)
		assert.LessOrEqual(t, large.Verdict, small.Verdict)
	})
}

func TestScalingEveryLengthScalesTheResult(t *testing.T) {
	f := fit.NewFitter()
	rapid.Check(t, func(t *rapid.T) {
		r := drawn(t)
		a, err := f.Name(r)
		if err != nil {
			t.Skip(err)
		}
		k := rapid.Float64Range(0.3, 3).Draw(t, "k")
		r.Height, r.Limit, r.Radius, r.Ladder.Height = k*r.Height, k*r.Limit, k*r.Radius, k*r.Ladder.Height
		for i := range r.Outlines {
			r.Outlines[i].Width *= k
		}
		b, err := f.Name(r)
		require.NoError(t, err)
		near := 1e-4 * k
		assert.Equal(t, a.Verdict, b.Verdict)
		assert.InDelta(t, k*a.LetterHeight, b.LetterHeight, near)
		assert.InDelta(t, a.WidthScale, b.WidthScale, 1e-5)
		assert.InDelta(t, k*a.Tracking, b.Tracking, near)
		assert.InDelta(t, k*a.InkWidth, b.InkWidth, near)
		assert.InDelta(t, k*a.InkHeight, b.InkHeight, 0.02*k)
		if !math.IsNaN(a.SmallestGap) {
			assert.InDelta(t, k*a.SmallestGap, b.SmallestGap, 0.02*k)
		}
	})
}

func TestAHugeCircleIsAStraightLine(t *testing.T) {
	f := fit.NewFitter()
	rapid.Check(t, func(t *rapid.T) {
		r := drawn(t)
		shape := r.Shape
		r.Shape = fit.Straight
		want, err := f.Name(r)
		require.NoError(t, err)
		r.Shape, r.Radius = shape, 1e8
		got, err := f.Name(r)
		require.NoError(t, err)
		assert.InDelta(t, want.InkWidth, got.InkWidth, 1e-3)
		assert.InDelta(t, want.LetterHeight, got.LetterHeight, 1e-3)
		assert.InDelta(t, want.Tracking, got.Tracking, 1e-3)
		a, b := want.Ink().Bounds(), got.Ink().Bounds()
		assert.InDelta(t, a.Min.Y, b.Min.Y, 0.005)
		assert.InDelta(t, a.Max.Y, b.Max.Y, 0.005)
	})
}

// TestArchDownMirrorsArchUp uses letters whose outer shape is the same upside
// down: with the spacing kept at half their height, an arch down whose middle
// lies on the same circle is the arch up turned over.
func TestArchDownMirrorsArchUp(t *testing.T) {
	for _, id := range []string{"oswald", "barlow-condensed"} {
		r := request(t, id, "HIHHI")
		r.Outlines = []outline.Layer{{Width: 3}}
		r.Spacing, r.Shape, r.Radius = fit.Middle, fit.RadialArch, 200
		up := name(t, r)
		r.Shape, r.Radius = fit.RadialArchDown, 250
		down := name(t, r)
		assert.InDelta(t, up.InkWidth, down.InkWidth, 1e-6)
		assert.InDelta(t, up.InkHeight, down.InkHeight, 1e-6)
		a, b := up.Ink().Bounds(), down.Ink().Bounds()
		assert.InDelta(t, a.Min.Y, 50-b.Max.Y, 1e-6)
		assert.InDelta(t, up.SmallestGap, down.SmallestGap, 1e-6)
	}
	r := request(t, "oswald", "HIHHI")
	r.Shape, r.Radius = fit.VerticalArch, 200
	up := name(t, r)
	r.Shape = fit.VerticalArchDown
	down := name(t, r)
	assert.InDelta(t, up.InkWidth, down.InkWidth, 1e-9)
	assert.InDelta(t, up.Ink().Bounds().Min.Y, 50-down.Ink().Bounds().Max.Y, 1e-6)
}

// TestSmallestGapIsTheDistanceOfNeighbours takes letters of one contour each,
// so that contours are letters, and measures every corner against every edge.
func TestSmallestGapIsTheDistanceOfNeighbours(t *testing.T) {
	worst := 0.0
	for _, id := range []string{"oswald", "graduate", "alfa-slab-one"} {
		for shape := fit.Straight; shape <= fit.VerticalArchDown; shape++ {
			for _, text := range []string{"SCUS", "LTVL", "JC S"} {
				r := request(t, id, text)
				r.Shape, r.Radius = shape, 300
				n := name(t, r)
				rings := n.Ink().Flatten(2e-3)
				require.Len(t, rings, len(strings.ReplaceAll(text, " ", "")))
				best := math.Inf(1)
				for i := 1; i < len(rings); i++ {
					best = math.Min(best, math.Min(ringDistance(rings[i-1], rings[i]), ringDistance(rings[i], rings[i-1])))
				}
				if n.SmallestGap == 0 {
					assert.True(t, overlap(rings), "%s %v %s", id, shape, text)
					continue
				}
				worst = math.Max(worst, math.Abs(best-n.SmallestGap))
			}
		}
	}
	t.Logf("worst difference %.4f mm", worst)
	assert.Less(t, worst, 0.005)
}

// overlap reports whether a corner of a ring lies inside its neighbour.
func overlap(rings geom.Region) bool {
	for i, ring := range rings {
		for k := max(0, i-1); k < min(i+2, len(rings)); k++ {
			if k != i && slices.ContainsFunc(ring, geom.Region{rings[k]}.Contains) {
				return true
			}
		}
	}
	return false
}

func ringDistance(a, b geom.Ring) float64 {
	best := math.Inf(1)
	for _, p := range a {
		for i, q := range b {
			best = math.Min(best, pointToEdge(p, q, b[(i+1)%len(b)]))
		}
	}
	return best
}

func TestSmallestGapNeedsTwoLettersAndIsZeroWhereTheyTouch(t *testing.T) {
	assert.True(t, math.IsNaN(name(t, request(t, "oswald", "Å")).SmallestGap), "a mark is part of its letter")
	assert.Zero(t, name(t, request(t, "yellowtail", "minim")).SmallestGap, "a connected script")
	assert.Greater(t, name(t, request(t, "oswald", "II")).SmallestGap, 1.0)
}

// TestMarksRideOnTheirLetters sets a letter that has no composed form, so that
// the face must place a mark, and looks for the mark on the letter's radius.
func TestMarksRideOnTheirLetters(t *testing.T) {
	r := request(t, "roboto-slab", "HHM\u0303HH")
	line, err := r.Face.NewShaper().Shape(r.Text, "")
	require.NoError(t, err)
	require.Len(t, line.Glyphs, 6)
	require.True(t, line.Glyphs[3].Mark)
	straight := name(t, r)
	r.Shape, r.Radius = fit.RadialArch, 120
	arched := name(t, r)
	// The letter and its mark are one rigid body: distances between their
	// points stay. The tilde is the fourth contour of six.
	a, b := straight.Ink().Flatten(0.01), arched.Ink().Flatten(0.01)
	require.Len(t, a, 6)
	for _, pair := range [][2]geom.Point{{a[2][0], a[3][0]}, {b[2][0], b[3][0]}} {
		assert.InDelta(t, a[2][0].Sub(a[3][0]).Norm(), pair[0].Sub(pair[1]).Norm(), 1e-6)
	}
	assert.Greater(t, math.Abs(a[1][0].Sub(a[3][0]).Norm()-b[1][0].Sub(b[3][0]).Norm()), 0.5, "other letters turn otherwise")
}

func TestTheLineIsCentredAndStandsOnTheBaseline(t *testing.T) {
	r := request(t, "graduate", "LEFT")
	n := name(t, r)
	box := n.Ink().Bounds()
	assert.InDelta(t, 0, box.Center().X, 1e-9)
	assert.InDelta(t, 0, box.Min.Y, 1e-9)
	assert.InDelta(t, 50, box.Max.Y, 1e-9)
	r.Shape, r.Radius = fit.RadialArch, 200
	n = name(t, r)
	assert.InDelta(t, 0, n.Ink().Bounds().Center().X, 1e-9)
	assert.NotZero(t, n.Apex, "the ink is not symmetric about the apex")
	assert.Less(t, math.Abs(n.Apex), 5.0)
}

func TestSettledInkCountsOverlapsOnce(t *testing.T) {
	n := name(t, request(t, "saira", "AXE"))
	settled, err := n.Settled()
	require.NoError(t, err)
	assert.Greater(t, settled.Area(), 100.0)
	assert.InDelta(t, n.BareInkWidth, settled.Bounds().Width(), 0.02)
}

func TestAFitterGivesTheSameAsAFreshOne(t *testing.T) {
	f := fit.NewFitter()
	for range 2 {
		for _, id := range append([]string{"archivo", "league-gothic"}, staticFaces...) {
			for _, text := range []string{"VALENTI", "ODA"} {
				r := request(t, id, text)
				r.Limit, r.Shape, r.Rise = 140, fit.RadialArch, 12
				got, err := f.Name(r)
				require.NoError(t, err)
				want := name(t, r)
				assert.Equal(t, want.Ink(), got.Ink())
				// As text, for NaN is not equal to itself; and what letters are drawn
				// from is held against above.
				require.Equal(t, exported(want), exported(got))
			}
		}
	}
}

// exported writes the fields that callers see, all but a name's address.
func exported(n fit.Name) string {
	v := reflect.ValueOf(n)
	var out strings.Builder
	for i := range v.NumField() {
		if field := v.Type().Field(i); field.IsExported() {
			fmt.Fprintln(&out, field.Name, v.Field(i))
		}
	}
	return out.String()
}

func TestAWidthAxisComesBeforeAGeometricScale(t *testing.T) {
	r := request(t, "archivo", "HERNANDEZ") // wdth 62 to 125, default 100
	asked := name(t, r)
	assert.Equal(t, 100.0, asked.Wdth)
	r.Ladder = fit.Ladder{Width: 0.5, Height: 40}
	r.Limit = asked.InkWidth * 0.9
	n := name(t, r)
	assert.Equal(t, fit.Eased, n.Verdict)
	assert.Equal(t, 1.0, n.WidthScale)
	assert.Less(t, n.Wdth, 100.0)
	assert.Greater(t, n.Wdth, 62.0)

	r.Limit = asked.InkWidth * 0.6
	n = name(t, r)
	assert.Equal(t, 62.0, n.Wdth, "the axis ends before the floor of 50 %")
	assert.Equal(t, 1.0, n.WidthScale, "no squash asked")
	assert.NotEqual(t, fit.Eased, n.Verdict)

	r.Squash = true
	n = name(t, r)
	assert.Equal(t, 62.0, n.Wdth)
	assert.Less(t, n.WidthScale, 1.0)
	assert.GreaterOrEqual(t, n.WidthScale*62, 50.0-1e-9, "the floor holds in all")

	r.Wdth = 200
	_, err := fit.Fit(r)
	assert.ErrorContains(t, err, "wdth cannot be 200")
}

func TestAnInstanceKeepsItsWeight(t *testing.T) {
	r := request(t, "archivo", "ABEL")
	face, err := r.Face.Instance(map[string]float64{"wght": 800})
	require.NoError(t, err)
	r.Wght = 800
	want := name(t, r)
	r.Face, r.Wght = face, math.NaN()
	got := name(t, r)
	assert.Equal(t, 800.0, got.Wght)
	assert.Equal(t, want.InkWidth, got.InkWidth)
}

func TestFittersOfSeveralGoroutinesShareFaces(t *testing.T) {
	const workers = 4
	results := make([][]float64, workers)
	var group sync.WaitGroup
	for w := range workers {
		group.Go(func() {
			f := fit.NewFitter()
			for _, id := range []string{"oswald", "archivo", "saira"} {
				for _, text := range []string{"VALENTI", "ODA", "BRUNO"} {
					r := request(t, id, text)
					r.Limit, r.Shape, r.Radius = 150, fit.RadialArch, 300
					n, err := f.Name(r)
					assert.NoError(t, err)
					results[w] = append(results[w], n.InkWidth, n.LetterHeight, n.Tracking, n.SmallestGap)
				}
			}
		})
	}
	group.Wait()
	for _, r := range results[1:] {
		assert.Equal(t, results[0], r)
	}
}
