package tail

// swell is the thickness of a tail along its spine, mm: that of the stroke at
// the root, near the script's own in the turn, full along the sweep, and
// thinning to the far end.
type swell struct {
	root, slim, full, end          float64
	slimAt, fullAt, thinAt, length float64 // where, from the root
}

// How the thickness runs, as shares of the part it is in; and the thickness in
// the turn as shares of the stroke at the root and of the script's mean stroke,
// whichever is more. Judged by eye.
const (
	slimAt    = 0.3
	fullAt    = 0.3
	thinAt    = 0.45
	slimRoot  = 0.9
	slimWidth = 0.8
)

func newSwell(root float64, s sized, p *spine) swell {
	turn, sweep := p.long[turning], p.long[sweeping]
	return swell{
		root: root, full: s.thickness, end: s.end(),
		slim:   min(max(slimRoot*root, slimWidth*s.weight), s.thickness),
		slimAt: slimAt * turn, fullAt: turn + fullAt*sweep, thinAt: turn + thinAt*sweep, length: p.length(),
	}
}

// at returns the thickness at s and how fast it grows with s.
func (w *swell) at(s float64) (thickness, growth float64) {
	switch {
	case s < w.slimAt:
		return ease(w.root, w.slim, s, w.slimAt)
	case s < w.fullAt:
		return ease(w.slim, w.full, s-w.slimAt, w.fullAt-w.slimAt)
	case s < w.thinAt:
		return w.full, 0
	default:
		// Starts level and ends at an angle, as a pen leaves the paper.
		long, drop := w.length-w.thinAt, w.end-w.full
		x := min(1, (s-w.thinAt)/long)
		return w.full + drop*x*x*(3-x)/2, drop * (6*x - 3*x*x) / (2 * long)
	}
}

// ease goes from a to b over the length long, level and without bend at both
// ends.
func ease(a, b, s, long float64) (value, growth float64) {
	x := s / long
	return a + (b-a)*x*x*x*(10+x*(6*x-15)), (b - a) * 30 * x * x * (1 - x) * (1 - x) / long
}
