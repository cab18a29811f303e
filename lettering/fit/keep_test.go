package fit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

var arches = []fit.Shape{fit.RadialArch, fit.RadialArchDown, fit.VerticalArch, fit.VerticalArchDown}

func TestAKeptGapRaisesTrackingAsLittleAsNeeded(t *testing.T) {
	f := fit.NewFitter()
	raised := 0
	rapid.Check(t, func(t *rapid.T) {
		r := request(t, rapid.SampledFrom([]string{"oswald", "graduate", "anton", "alfa-slab-one"}).Draw(t, "face"), "")
		r.Text = rapid.SampledFrom([]string{"SCUS", "LTVL", "AVATAR", "JCS"}).Draw(t, "text")
		r.Shape = rapid.SampledFrom(arches).Draw(t, "shape")
		r.Radius = rapid.Float64Range(180, 600).Draw(t, "radius")
		plain, err := f.Name(r)
		if err != nil {
			t.Skip(err)
		}
		r.KeepGap = rapid.Float64Range(0.5, 8).Draw(t, "gap")
		n, err := f.Name(r)
		if err != nil {
			t.Skip(err)
		}
		assert.GreaterOrEqual(t, n.SmallestGap, r.KeepGap-1e-9)
		assert.Equal(t, fit.Full, n.Verdict)
		if plain.SmallestGap >= r.KeepGap {
			assert.Zero(t, n.Tracking, "nothing to raise")
			return
		}
		raised++
		assert.Greater(t, n.Tracking, 0.0)
		assert.InDelta(t, r.KeepGap, n.SmallestGap, 1e-5, "no more than needed")
	})
	// Short runs make a fifth of the checks.
	assert.Greater(t, raised, map[bool]int{false: 10, true: 0}[testing.Short()])
}

func TestAKeptGapHoldsOnEveryRungOfTheLadder(t *testing.T) {
	f := fit.NewFitter()
	seen := map[fit.Verdict]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := request(t, rapid.SampledFrom([]string{"oswald", "graduate", "archivo"}).Draw(t, "face"), "WAVETON")
		r.Shape = rapid.SampledFrom(arches).Draw(t, "shape")
		r.Radius, r.KeepGap = 400, rapid.Float64Range(1, 5).Draw(t, "gap")
		r.Limit = rapid.Float64Range(120, 320).Draw(t, "limit")
		r.Ladder = fit.DefaultLadder(r.Height)
		n, err := f.Name(r)
		require.NoError(t, err)
		seen[n.Verdict]++
		assert.GreaterOrEqual(t, n.SmallestGap, r.KeepGap-1e-9)
		if n.Verdict == fit.Over {
			assert.Greater(t, n.InkWidth, r.Limit)
			return
		}
		assert.LessOrEqual(t, n.InkWidth, r.Limit)
		if n.Verdict != fit.Full {
			assert.Greater(t, n.InkWidth, r.Limit-0.01, "%v", n.Verdict)
		}
	})
	// Which rungs are met is up to chance; one alone would mean that limits were
	// drawn where nothing happens.
	assert.Greater(t, len(seen), 1, "%v", seen)
}

func TestAKeptGapBetweenOutlinesCountsThemTwice(t *testing.T) {
	r := request(t, "oswald", "SCUS")
	r.Shape, r.Radius, r.Outlines = fit.RadialArchDown, 250, []outline.Layer{{Width: 3}}
	r.KeepGap, r.KeepOutlines = 1, true
	n := name(t, r)
	assert.InDelta(t, 7, n.SmallestGap, 1e-5)
	layers, err := outline.Layers(n.Ink().Flatten(0.01), r.Outlines)
	require.NoError(t, err)
	require.Len(t, outers(layers[0]), 4, "finished letters stand apart")
	r.KeepOutlines = false
	assert.Less(t, name(t, r).Tracking, n.Tracking, "the outlines may touch")
}

func outers(r geom.Region) []geom.Ring {
	var out []geom.Ring
	for _, ring := range r {
		if ring.Area() > 0 {
			out = append(out, ring)
		}
	}
	return out
}

func TestAStraightNameIsNotSpread(t *testing.T) {
	r := request(t, "oswald", "AVATAR")
	want := name(t, r)
	r.KeepGap = 20
	assert.Equal(t, want.Tracking, name(t, r).Tracking)
}

// TestOpticalSpacingEvensTheWhite measures the white anew, by its definition,
// on the drawn contours.
func TestOpticalSpacingEvensTheWhite(t *testing.T) {
	for _, c := range []struct{ face, text string }{{"oswald", "HHOOHALVH"}, {"graduate", "MILLTOWN"}, {"anton", "TALLIHO"}} {
		r := request(t, c.face, c.text)
		plain := name(t, r)
		r.Optical = true
		even := name(t, r)
		a, b := spread(whites(plain)), spread(whites(even))
		t.Logf("%s %s: spread of white %.2f to %.2f mm", c.face, c.text, a, b)
		assert.Less(t, b, 0.8*a, c.text)
		assert.GreaterOrEqual(t, even.SmallestGap, plain.SmallestGap-0.01, "never nearer than designed")
		assert.Less(t, math.Abs(even.InkWidth-plain.InkWidth), 0.12*plain.InkWidth)
	}
}

// whites returns the mean distance of neighbours of a name without counters
// left of a letter, one letter an outer ring.
func whites(n fit.Name) []float64 {
	settled, _ := n.Settled()
	letters := outers(settled)
	across := func(ring geom.Ring, y float64) (lo, hi float64) {
		lo, hi = math.Inf(1), math.Inf(-1)
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if (p.Y <= y) != (q.Y <= y) {
				x := p.X + (y-p.Y)/(q.Y-p.Y)*(q.X-p.X)
				lo, hi = min(lo, x), max(hi, x)
			}
		}
		return lo, hi
	}
	middle := func(r geom.Ring) float64 { return geom.Region{r}.Bounds().Center().X }
	for i := range letters {
		for k := i; k > 0 && middle(letters[k]) < middle(letters[k-1]); k-- {
			letters[k], letters[k-1] = letters[k-1], letters[k]
		}
	}
	var out []float64
	for i := 1; i < len(letters); i++ {
		sum, depth := 0.0, 0.12*n.LetterHeight
		left, right := geom.Region{letters[i-1]}.Bounds().Max.X, geom.Region{letters[i]}.Bounds().Min.X
		for k := range 24 {
			y := (float64(k) + 0.5) / 24 * n.LetterHeight
			_, end := across(letters[i-1], y)
			start, _ := across(letters[i], y)
			sum += min(start, right+depth) - max(end, left-depth)
		}
		out = append(out, sum/24)
	}
	return out
}

// spread returns the root of the mean square distance from the mean.
func spread(v []float64) float64 {
	mean, sum := 0.0, 0.0
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		sum += (x - mean) * (x - mean)
	}
	return math.Sqrt(sum / float64(len(v)))
}
