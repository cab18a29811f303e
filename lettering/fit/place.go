package fit

import (
	"math"
	"slices"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
)

// bendTolerance is how far a curve drawn on a vertical arch may leave the true
// one, mm.
const bendTolerance = 0.004

// set is a glyph in the plane, x = 0 at the middle of the line.
type set struct {
	ink  *ink.Glyph
	at   ink.Warp
	box  geom.Rect // around it
	mark bool
	bent bool // ink is in the plane already
	low  bool // on the second of two lines
}

// set puts the glyphs into the plane; the slice is valid until the next call.
func (f *Fitter) set(b *stand, l *line, s state) []set {
	f.placed = f.placed[:0]
	f.setLine(b, l, s, 0)
	if l.under != nil {
		lower := b.lower(l, s)
		f.setLine(&lower, l.under, s, b.leading(l, s))
	}
	return f.placed
}

// setLine puts the glyphs of one line into the plane, its baseline drop mm
// under y = 0.
func (f *Fitter) setLine(b *stand, l *line, s state, drop float64) {
	from, to := l.bare(s)
	for i := range l.glyphs {
		g := set{ink: l.glyphs[i].ink, at: b.warp(l.cap, s, &l.spots[i], (from+to)/2), mark: l.glyphs[i].mark, low: drop > 0}
		g.at.Map.F -= drop
		g.box = g.ink.Around(g.at)
		f.placed = append(f.placed, g)
	}
}

// bend draws a glyph of a vertical arch, which is dear, when its shape is
// needed.
func (g *set) bend() {
	if g.at.Bend != 0 && !g.bent {
		g.ink = g.ink.Placed(g.at, bendTolerance)
		g.at, g.bent = ink.Warp{Map: geom.Identity()}, true
	}
}

// height returns the height of the ink with its outlines, which reach at most
// margin beyond it.
func height(glyphs []set, offsets []ink.Offset, margin float64) float64 {
	up := extent(glyphs, margin, func(g *set) float64 { return g.box.Max.Y },
		func(g *set) float64 { return g.ink.Outer(g.at, geom.Point{Y: 1}, offsets) })
	down := extent(glyphs, margin, func(g *set) float64 { return -g.box.Min.Y },
		func(g *set) float64 { return g.ink.Outer(g.at, geom.Point{Y: -1}, offsets) })
	return up + down
}

// extent returns the largest value of exact, looking only at glyphs whose
// bound lets them beat what is known.
func extent(glyphs []set, margin float64, bound, exact func(*set) float64) float64 {
	first := 0
	for i := range glyphs {
		if bound(&glyphs[i]) > bound(&glyphs[first]) {
			first = i
		}
	}
	glyphs[first].bend()
	best := exact(&glyphs[first])
	for i := range glyphs {
		if g := &glyphs[i]; i != first && bound(g)+margin > best {
			g.bend()
			best = max(best, exact(g))
		}
	}
	return best
}

// neighbours are two glyphs of neighbouring letters and what they are at least
// apart.
type neighbours struct {
	left, right int
	least       float64
}

// pairs lists the neighbours, the likely nearest first; a mark belongs to its
// letter. The slice is valid until the next call.
func (f *Fitter) pairs(glyphs []set) []neighbours {
	f.near = f.near[:0]
	previous, start := -1, 0
	for i := 1; i <= len(glyphs); i++ {
		if i < len(glyphs) && glyphs[i].mark {
			continue
		}
		for j := max(previous, 0); previous >= 0 && j < start; j++ {
			for k := start; k < i; k++ {
				f.near = append(f.near, neighbours{j, k, apart(&glyphs[j], &glyphs[k])})
			}
		}
		previous, start = start, i
	}
	if under := slices.IndexFunc(glyphs, func(g set) bool { return g.low }); under > 0 {
		f.near = linePairs(f.near, glyphs, under)
	}
	slices.SortFunc(f.near, func(a, b neighbours) int {
		switch {
		case a.least < b.least:
			return -1
		case a.least > b.least:
			return 1
		}
		return a.left - b.left
	})
	return f.near
}

func apart(a, b *set) float64 {
	if a.at.Bend == 0 && b.at.Bend == 0 {
		return ink.Apart(a.ink, a.at.Map, b.ink, b.at.Map)
	}
	dx := max(0, a.box.Min.X-b.box.Max.X, b.box.Min.X-a.box.Max.X)
	dy := max(0, a.box.Min.Y-b.box.Max.Y, b.box.Min.Y-a.box.Max.Y)
	return math.Hypot(dx, dy)
}

// smallestGap returns the smallest distance between neighbouring letters; NaN
// for fewer than two letters.
func (f *Fitter) smallestGap(glyphs []set) float64 {
	if best := f.nearest(glyphs, math.Inf(1)); !math.IsInf(best, 1) {
		return best
	}
	return math.NaN()
}

// nearest returns the smallest distance between neighbouring letters, or best
// if they are no nearer.
func (f *Fitter) nearest(glyphs []set, best float64) float64 {
	for _, p := range f.pairs(glyphs) {
		if p.least >= best {
			break
		}
		a, b := &glyphs[p.left], &glyphs[p.right]
		a.bend()
		b.bend()
		best = f.finder.Gap(a.ink, a.at.Map, b.ink, b.at.Map, best)
	}
	return best
}
