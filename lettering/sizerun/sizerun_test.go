package sizerun_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/sizerun"
)

func entry(g garment.Group, letter string, pieces int, fits float64) sizerun.Entry {
	return sizerun.Entry{Size: garment.Size{Group: g, Letter: letter}, Pieces: pieces, Fits: fits}
}

// club is an order of youth and adult sizes whose best heights are easily seen.
func club() []sizerun.Entry {
	return []sizerun.Entry{
		entry(garment.Adult, "L", 6, 200), entry(garment.Youth, "M", 4, 150), // not in order on purpose
		entry(garment.Youth, "L", 5, 155), entry(garment.Adult, "S", 2, 190), entry(garment.Adult, "M", 8, 200),
	}
}

func TestThePlansOfAClub(t *testing.T) {
	plans := sizerun.Plans(club(), 0)
	require.Len(t, plans, 4)
	one, two, three, every := plans[0], plans[1], plans[2], plans[3]

	require.Len(t, one.Steps, 1)
	assert.Equal(t, 150.0, one.Steps[0].Height)
	assert.Equal(t, 25, one.Steps[0].Pieces)
	assert.InDelta(t, 0.25, one.Loss, 1e-12)
	assert.Equal(t, "adult M", one.LossAt.String())
	assert.InDelta(t, (5*(1-150.0/155)+2*(1-150.0/190)+14*0.25)/25, one.Mean, 1e-12)

	require.Len(t, two.Steps, 2)
	assert.Equal(t, []float64{150, 190}, []float64{two.Steps[0].Height, two.Steps[1].Height})
	assert.Equal(t, []int{9, 16}, []int{two.Steps[0].Pieces, two.Steps[1].Pieces})
	assert.InDelta(t, 0.05, two.Loss, 1e-12)

	require.Len(t, three.Steps, 3)
	assert.Equal(t, []float64{150, 190, 200}, []float64{three.Steps[0].Height, three.Steps[1].Height, three.Steps[2].Height})

	require.Len(t, every.Steps, 4, "adult M and L have one height: one sheet serves both")
	assert.Zero(t, every.Loss)
	h, ok := every.Height(garment.Size{Group: garment.Adult, Letter: "L"})
	assert.True(t, ok)
	assert.Equal(t, 200.0, h)
	_, ok = every.Height(garment.Size{Group: garment.Women, Letter: "L"})
	assert.False(t, ok)
}

func TestTheFewestStepsWithinTheToleranceAreTaken(t *testing.T) {
	plans := sizerun.Plans(club(), 0)
	for tolerance, want := range map[float64]sizerun.Kind{
		0.30: sizerun.OneSize, 0.25: sizerun.OneSize, 0.24: sizerun.YouthAdult, 0.05: sizerun.YouthAdult,
		0.04: sizerun.ThreeSteps, 0.03: sizerun.EverySize, 0: sizerun.EverySize,
	} {
		assert.Equal(t, want, plans[sizerun.Best(plans, tolerance)].Kind, "%g", tolerance)
	}
	assert.Equal(t, -1, sizerun.Best(nil, 0.1))
}

func TestAPlanThatBreaksARuleIsNotTaken(t *testing.T) {
	plans := sizerun.Plans(club(), 152.4)
	require.Len(t, plans[0].Short, 4, "all but youth M, which cannot reach it")
	assert.Equal(t, "youth L", plans[0].Short[0].String())
	assert.Len(t, plans[1].Short, 1)
	best := plans[sizerun.Best(plans, 0.30)]
	assert.Equal(t, sizerun.EverySize, best.Kind)
	assert.Empty(t, best.Short)
}

func TestASizeThatNothingFitsPullsNobodyDown(t *testing.T) {
	entries := append(club(), entry(garment.Youth, "XS", 1, 0), entry(garment.Youth, "S", 1, math.NaN()), entry(garment.Youth, "XL", 0, 20))
	assert.Equal(t, sizerun.Plans(club(), 0), sizerun.Plans(entries, 0))
	assert.Empty(t, sizerun.Plans(entries[5:], 0))
}

func TestAnOrderOfAdultsOnlyHasOneStepForYouthAndAdult(t *testing.T) {
	plans := sizerun.Plans([]sizerun.Entry{entry(garment.Adult, "S", 1, 100), entry(garment.Women, "M", 1, 90)}, 0)
	assert.Equal(t, plans[0].Steps, plans[1].Steps)
	assert.Equal(t, sizerun.OneSize, plans[sizerun.Best(plans, 0.2)].Kind)
}

// anyEntries draws entries of distinct sizes in the order of sizes.
func anyEntries(t *rapid.T, most int) []sizerun.Entry {
	var out []sizerun.Entry
	for _, size := range garment.AllSizes() {
		if len(out) < most && rapid.Bool().Draw(t, "worn") {
			out = append(out, sizerun.Entry{
				Size: size, Pieces: rapid.IntRange(1, 30).Draw(t, "pieces"),
				Fits: float64(rapid.IntRange(40, 120).Draw(t, "fits")) / 2,
			})
		}
	}
	return out
}

// price reckons what a parting gives up, straight from the definition.
func price(groups [][]sizerun.Entry) (worst, sum float64) {
	for _, group := range groups {
		h := math.Inf(1)
		for _, e := range group {
			h = math.Min(h, e.Fits)
		}
		for _, e := range group {
			worst = math.Max(worst, (e.Fits-h)/e.Fits)
			sum += (e.Fits - h) / e.Fits * float64(e.Pieces)
		}
	}
	return worst, sum
}

// TestGroupIsTheBestOfAllPartings tries every set of cuts between neighbours.
func TestGroupIsTheBestOfAllPartings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := anyEntries(t, 9)
		if len(entries) == 0 {
			assert.Empty(t, sizerun.Group(entries, 3))
			return
		}
		steps := rapid.IntRange(1, 5).Draw(t, "steps")
		bestWorst, bestSum := math.Inf(1), math.Inf(1)
		for cuts := range 1 << (len(entries) - 1) {
			var groups [][]sizerun.Entry
			from := 0
			for i := 1; i <= len(entries); i++ {
				if i == len(entries) || cuts>>(i-1)&1 == 1 {
					groups, from = append(groups, entries[from:i]), i
				}
			}
			if len(groups) > steps {
				continue
			}
			if worst, sum := price(groups); worst < bestWorst-1e-12 || worst < bestWorst+1e-12 && sum < bestSum {
				bestWorst, bestSum = math.Min(worst, bestWorst), sum
			}
		}
		got := sizerun.Group(entries, steps)
		assert.LessOrEqual(t, len(got), steps)
		var flat []sizerun.Entry
		for _, g := range got {
			assert.NotEmpty(t, g)
			flat = append(flat, g...)
		}
		assert.Equal(t, entries, flat, "neighbours, each once")
		worst, sum := price(got)
		assert.InDelta(t, bestWorst, worst, 1e-9)
		assert.InDelta(t, bestSum, sum, 1e-9)
	})
}

func TestNoSizeGetsMoreThanFitsAndMoreStepsNeverLoseMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := anyEntries(t, 20)
		plans := sizerun.Plans(entries, 0)
		if len(entries) == 0 {
			assert.Empty(t, plans)
			return
		}
		pieces := 0
		for _, e := range entries {
			pieces += e.Pieces
		}
		for _, p := range plans {
			made, heights := 0, map[float64]bool{}
			for _, s := range p.Steps {
				made += s.Pieces
				assert.False(t, heights[s.Height], "a height is a step once")
				heights[s.Height] = true
			}
			assert.Equal(t, pieces, made)
			for _, e := range entries {
				h, ok := p.Height(e.Size)
				assert.True(t, ok)
				assert.LessOrEqual(t, h, e.Fits)
				assert.LessOrEqual(t, 1-h/e.Fits, p.Loss+1e-12)
			}
			assert.LessOrEqual(t, p.Mean, p.Loss+1e-12)
		}
		assert.LessOrEqual(t, plans[2].Loss, plans[0].Loss+1e-12)
		assert.LessOrEqual(t, plans[2].Loss, plans[1].Loss+1e-12, "youth and adult are two of the three steps' partings")
		assert.Zero(t, plans[3].Loss)

		tolerance := rapid.Float64Range(0, 0.6).Draw(t, "tolerance")
		best := plans[sizerun.Best(plans, tolerance)]
		assert.LessOrEqual(t, best.Loss, tolerance+1e-9)
		for _, p := range plans {
			if len(p.Steps) < len(best.Steps) {
				assert.Greater(t, p.Loss, tolerance)
			}
		}
	})
}

func TestKindsAreReadAsTheyAreWritten(t *testing.T) {
	for _, k := range sizerun.Kinds() {
		got, err := sizerun.ParseKind(k.String())
		require.NoError(t, err)
		assert.Equal(t, k, got)
	}
	_, err := sizerun.ParseKind("two sizes")
	assert.ErrorContains(t, err, "youth and adult")
}

func BenchmarkPlansOfEverySize(b *testing.B) {
	var entries []sizerun.Entry
	for i, size := range garment.AllSizes() {
		entries = append(entries, sizerun.Entry{Size: size, Pieces: 1 + i, Fits: 40 + float64(i*7%31)})
	}
	for b.Loop() {
		sizerun.Plans(entries, 0)
	}
}
