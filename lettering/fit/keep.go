package fit

import (
	"math"
)

// lifted returns the state with its tracking raised, as little as needed, to
// where neighbouring letters of an arch keep the gap that is asked for. It
// changes nothing on a straight line or where no gap is asked.
func (f *Fitter) lifted(b *stand, l *line, s state) state {
	if b.keep == 0 || b.shape == Straight || l.gaps == 0 {
		return s
	}
	// How much is missing, measured no farther than twice the gap.
	missing := func(tracking float64) float64 {
		t := s
		t.tracking = tracking
		return b.keep - f.gapUpTo(b, l, t, 2*b.keep)
	}
	if missing(s.tracking) <= 0 {
		return s
	}
	loose := s.tracking
	for step := b.keep; missing(loose) > 0; step *= 2 {
		if step > 64*(b.keep+s.height) {
			return s // letters that no tracking parts
		}
		loose += step
	}
	tight := s.tracking
	s.tracking = -largest(-loose, -tight, func(x float64) float64 { return missing(-x) })
	return s
}

// gapUpTo returns the smallest gap between neighbouring letters, or most if
// they are no nearer.
func (f *Fitter) gapUpTo(b *stand, l *line, s state, most float64) float64 {
	return math.Min(most, f.nearest(f.set(b, l, s), most))
}
