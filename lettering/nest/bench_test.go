package nest_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/nest"
)

// orders are invented orders, the same at every run.
func orders() map[string][]nest.Item {
	r := rand.New(rand.NewPCG(2027, 3))
	return map[string][]nest.Item{
		"names only, grain":          team(r, 18, 0, nest.HalfTurns),
		"names and numbers":          team(r, 12, 10, nest.QuarterTurns),
		"names and numbers, upright": team(r, 12, 10, nest.Upright),
	}
}

func benchmark(b *testing.B, items []nest.Item, o nest.Options) {
	plain, err := nest.Shelves(items, roll)
	require.NoError(b, err)
	var out nest.Layout
	b.ReportAllocs()
	for b.Loop() {
		out = arrange(b, items, roll, o)
	}
	b.ReportMetric(100*out.Waste(), "%waste")
	b.ReportMetric(100*plain.Waste(), "%waste-shelves")
	b.ReportMetric(out.Stock/plain.Stock, "stock/shelves")
	b.ReportMetric(out.Stock/arrange(b, items, roll, tightBoxes).Stock, "stock/boxes")
	b.ReportMetric(out.Stock/out.BoxBound, "stock/box-bound")
	b.ReportMetric(out.Stock/out.InkBound, "stock/ink-bound")
}

func BenchmarkTeamByBoxes(b *testing.B) { benchmark(b, orders()["names and numbers"], tightBoxes) }
func BenchmarkTeamByOutlines(b *testing.B) {
	benchmark(b, orders()["names and numbers"], tightOutlines)
}
func BenchmarkArchedNamesByOutlines(b *testing.B) {
	benchmark(b, orders()["names only, grain"], tightOutlines)
}

func fiveHundred() []nest.Item {
	return team(rand.New(rand.NewPCG(500, 1)), 250, 250, nest.QuarterTurns)
}

func BenchmarkFiveHundredNamesByOutlines(b *testing.B) {
	benchmark(b, team(rand.New(rand.NewPCG(500, 2)), 500, 0, nest.HalfTurns), tightOutlines)
}
func BenchmarkFiveHundredByBoxes(b *testing.B)    { benchmark(b, fiveHundred(), tightBoxes) }
func BenchmarkFiveHundredByOutlines(b *testing.B) { benchmark(b, fiveHundred(), tightOutlines) }
func BenchmarkFiveHundredInOrderByOutlines(b *testing.B) {
	benchmark(b, fiveHundred(), nest.Options{By: nest.Outlines})
}
