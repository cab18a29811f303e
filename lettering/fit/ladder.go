package fit

import "math"

// slack is how near under the limit a fit ends, mm: far inside the promised
// 0.01 mm, far outside float64's noise.
const slack = 1e-6

// within is the promise: an eased or reduced name ends this near under its
// limit, mm.
const within = 0.01

// fitted is a line with the state that the ladder left it in.
type fitted struct {
	line    *line
	state   state
	wdth    float64 // NaN without the axis
	verdict Verdict
}

// floors are a ladder's floors with the rungs that are switched off put at
// what was asked.
func (r *Request) floors() Ladder {
	l := r.Ladder
	if l.Width == 0 {
		l.Width = 1
	}
	if l.Height == 0 || l.Height > r.Height {
		l.Height = r.Height
	}
	return l
}

// largest returns the largest x in [lo, hi] with f(x) <= 0, given f(lo) <= 0 <
// f(hi) and f rising; f of the answer lies within slack of 0 where f is smooth.
// It is false position with halved weights (the Illinois method), aimed half
// the slack under 0 so that the safe side is hit, and bisection where f is
// infinite or progress is slow.
func largest(lo, hi float64, f func(float64) float64) float64 {
	const aim = slack / 2
	flo := f(lo)
	below, above := flo+aim, f(hi)+aim // weights of the two ends
	side := 0
	for i := 0; i < 200 && flo < -slack && hi-lo > 1e-13*math.Max(math.Abs(lo), math.Abs(hi)); i++ {
		x := (lo + hi) / 2
		if i%8 != 7 && !math.IsInf(above, 1) {
			x = math.Min(math.Max(lo-(hi-lo)*below/(above-below), lo), hi)
		}
		fx := f(x)
		if fx > 0 {
			hi, above = x, fx+aim
			if side > 0 {
				below /= 2
			}
			side = 1
			continue
		}
		lo, flo, below = x, fx, fx+aim
		if side < 0 {
			above /= 2
		}
		side = -1
	}
	return lo
}

// ladder walks down the rungs for the line at the axis value asked.
func (f *Fitter) ladder(r *Request, b *stand, l *line, axis *widthAxis) (fitted, error) {
	floor := r.floors()
	out := fitted{line: l, state: f.lifted(b, l, state{r.Height, 1, 0}), wdth: axis.value()}
	if b.limit == 0 || b.excess(l, out.state) <= 0 {
		return out, nil
	}
	out.verdict = Eased
	tight := floor.Tracking * r.Height
	if f.rung(b, &out, tight, 0, func(x float64) state { return state{r.Height, 1, x} }) {
		return out, nil
	}
	narrowest := floor.Width
	if axis != nil {
		done, err := f.narrow(r, b, axis, floor, &out)
		if done || err != nil {
			return out, err
		}
		narrowest = axis.left(floor.Width, r.Squash)
	}
	if f.rung(b, &out, narrowest, 1, func(x float64) state { return state{r.Height, x, tight} }) {
		return out, nil
	}
	out.verdict = Reduced
	if !f.rung(b, &out, floor.Height, r.Height, func(x float64) state { return state{x, narrowest, floor.Tracking * x} }) {
		out.verdict = Over
	}
	return out, nil
}

// rung lets one figure go from what was asked down to its floor, as far as
// needed, and leaves the state in out. It reports whether that was enough; if
// not, the figure is at its floor.
func (f *Fitter) rung(b *stand, out *fitted, floor, asked float64, at func(float64) state) bool {
	out.state = f.lifted(b, out.line, at(floor))
	if b.excess(out.line, out.state) > 0 {
		return false
	}
	x := largest(floor, asked, func(x float64) float64 { return b.excess(out.line, f.lifted(b, out.line, at(x))) })
	out.state = f.lifted(b, out.line, at(x))
	return true
}
