package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func heights(pages [][]strip) [][]float64 {
	var out [][]float64
	for _, p := range pages {
		var page []float64
		for _, s := range p {
			page = append(page, s.high)
		}
		out = append(out, page)
	}
	return out
}

func TestFlowTurnsThePage(t *testing.T) {
	head := &strip{high: 1}
	for _, row := range []struct {
		name   string
		strips []strip
		want   [][]float64
	}{
		{"all fit", []strip{{high: 4}, {high: 6}}, [][]float64{{4, 6}}},
		{"one too many", []strip{{high: 4}, {high: 6}, {high: 1}}, [][]float64{{4, 6}, {1}}},
		{"a title stays with its row", []strip{{high: 7}, {high: 2, keep: true}, {high: 3}}, [][]float64{{7}, {2, 3}}},
		{"heads are repeated", []strip{{high: 8, head: head}, {high: 3, head: head}}, [][]float64{{1, 8}, {1, 3}}},
		{"higher than a page", []strip{{high: 3}, {high: 30}, {high: 3}}, [][]float64{{3}, {30}, {3}}},
		{"kept together but too high together", []strip{{high: 6, keep: true}, {high: 6, keep: true}, {high: 6}}, [][]float64{{6}, {6}, {6}}},
	} {
		t.Run(row.name, func(t *testing.T) { assert.Equal(t, row.want, heights(flow(row.strips, 10))) })
	}
	assert.Empty(t, flow(nil, 10))
}

// Nothing is lost or moved about, no page is overfull, none ends with a strip
// that should stay with the next.
func TestFlowLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const room = 40
		var in []strip
		for i := range rapid.IntRange(1, 60).Draw(t, "strips") {
			s := strip{high: rapid.Float64Range(0.5, 12).Draw(t, "high")}
			s.keep = i%3 > 0 && rapid.Bool().Draw(t, "keep") // at most 3 in a row
			in = append(in, s)
		}
		var all []strip
		for _, p := range flow(in, room) {
			high := 0.0
			for _, s := range p {
				high += s.high
			}
			require.LessOrEqual(t, high, room+1e-9)
			all = append(all, p...)
			last := p[len(p)-1]
			require.True(t, !last.keep || len(all) == len(in), "a strip is torn from the next")
		}
		require.Equal(t, heights([][]strip{in}), heights([][]strip{all}))
	})
}
