package fit

import (
	"math"

	"yokeline/lettering/geom"
)

// What optical spacing holds to, as shares of the cap height: white deeper
// than a letter's side by whiteDepth counts no more, and no two letters are
// moved more than mostMoved.
const (
	whiteDepth  = 0.12
	mostMoved   = 0.06
	whiteLevels = 24
)

// even moves the letters of a word so that the white between neighbours comes
// nearer to the same area everywhere, a method of our own. The white of a pair
// is its mean distance along x over whiteLevels heights between the baseline
// and the cap height, hollows counted to whiteDepth. Every pair is moved
// towards the mean of the line by what it lacks, at most mostMoved, and never
// so near that a pair comes closer than the closest one was designed; spaces
// are left alone. A line of fewer than two pairs stays as it is.
func (f *Fitter) even(l *line) {
	type pair struct {
		right      int
		white, gap float64
	}
	var found []pair
	mean, closest := 0.0, math.Inf(1)
	left := -1
	for i := range l.glyphs {
		if l.glyphs[i].mark {
			continue
		}
		if left >= 0 && l.spots[i].before == l.spots[left].before+1 {
			p := pair{i, l.white(left, i), f.designed(l, left, i)}
			found = append(found, p)
			mean, closest = mean+p.white, min(closest, p.gap)
		}
		left = i
	}
	if len(found) < 2 {
		return
	}
	mean /= float64(len(found))
	moved, next := 0.0, 0
	for i := range l.glyphs {
		if next < len(found) && found[next].right == i {
			p := found[next]
			move := min(max(mean-p.white, -mostMoved*l.cap), mostMoved*l.cap)
			moved += max(move, closest-p.gap)
			next++
		}
		l.glyphs[i].from, l.glyphs[i].to = l.glyphs[i].from+moved, l.glyphs[i].to+moved
		l.spots[i].x, l.spots[i].mid = l.spots[i].x+moved, l.spots[i].mid+moved
	}
	l.repace()
}

// white returns the mean distance along x of two neighbouring letters.
func (l *line) white(left, right int) float64 {
	sum, depth := 0.0, whiteDepth*l.cap
	for k := range whiteLevels {
		y := (float64(k) + 0.5) / whiteLevels * l.cap
		end := l.glyphs[left].to - depth
		if _, x, ok := l.glyphs[left].ink.Across(y - l.spots[left].y); ok {
			end = max(end, x+l.spots[left].x)
		}
		start := l.glyphs[right].from + depth
		if x, _, ok := l.glyphs[right].ink.Across(y - l.spots[right].y); ok {
			start = min(start, x+l.spots[right].x)
		}
		sum += start - end
	}
	return sum / whiteLevels
}

// designed returns the distance in the plane of two letters of the straight
// line, in font units.
func (f *Fitter) designed(l *line, left, right int) float64 {
	a, b := &l.spots[left], &l.spots[right]
	return f.finder.Gap(l.glyphs[left].ink, geom.Translate(a.x, a.y), l.glyphs[right].ink, geom.Translate(b.x, b.y), l.cap)
}
