package sizerun

import "math"

// Group parts entries that are sorted by size into at most steps groups of
// neighbours so that the greatest share of height that any size gives up is as
// small as it can be, and among all such partings the one in which the pieces
// together give up least. Each group gets the height of its lowest size. steps
// below 1 count as 1.
//
// Both passes are dynamic programmes over the first n entries. The sum is
// minimised in a pass of its own under the bound that the first pass found,
// because a parting that is best in both for its first entries need not be the
// start of one that is best for all.
func Group(sorted []Entry, steps int) [][]Entry {
	n := len(sorted)
	if n == 0 {
		return nil
	}
	steps = max(1, min(steps, n))
	costs := costsOf(sorted)
	bound := costs.part(steps, func(c cost) float64 { return c.worst }, math.Max, math.Inf(1))
	return costs.cut(sorted, costs.part(steps, func(c cost) float64 { return c.sum }, add, bound.total+1e-12))
}

func add(a, b float64) float64 { return a + b }

// cost is what entries i to j-1 give up as one group.
type cost struct{ worst, sum float64 }

// costs holds cost by [i][j-i-1].
type costs [][]cost

func costsOf(sorted []Entry) costs {
	out := make(costs, len(sorted))
	for i := range sorted {
		for j := i + 1; j <= len(sorted); j++ {
			h, c := lowest(sorted[i:j]), cost{}
			for _, e := range sorted[i:j] {
				loss := 1 - h/e.Fits
				c.worst = math.Max(c.worst, loss)
				c.sum += loss * float64(e.Pieces)
			}
			out[i] = append(out[i], c)
		}
	}
	return out
}

// parting is the best parting of all entries: its cost, and where the last
// group of the first j entries begins when k groups are used.
type parting struct {
	total float64
	from  [][]int // by groups used, then by entries
	used  int
}

// part finds the cheapest parting into at most steps groups, none of whose worst
// losses is over the bound; join puts the costs of two groups together.
func (c costs) part(steps int, of func(cost) float64, join func(a, b float64) float64, bound float64) parting {
	n := len(c)
	best := make([]float64, n+1)
	for j := 1; j <= n; j++ {
		best[j] = math.Inf(1)
	}
	out := parting{total: math.Inf(1), from: make([][]int, steps+1)}
	for k := 1; k <= steps; k++ {
		next, from := make([]float64, n+1), make([]int, n+1)
		next[0] = math.Inf(1)
		for j := 1; j <= n; j++ {
			next[j] = math.Inf(1)
			for i := range j {
				group := c[i][j-i-1]
				if group.worst > bound {
					continue
				}
				if total := join(best[i], of(group)); total < next[j] {
					next[j], from[j] = total, i
				}
			}
		}
		best, out.from[k] = next, from
		if next[n] < out.total { // only a real gain is worth another step
			out.total, out.used = next[n], k
		}
	}
	return out
}

// cut returns the groups of a parting.
func (c costs) cut(sorted []Entry, p parting) [][]Entry {
	groups := make([][]Entry, p.used)
	end := len(sorted)
	for k := p.used; k > 0; k-- {
		start := p.from[k][end]
		groups[k-1] = sorted[start:end]
		end = start
	}
	return groups
}
