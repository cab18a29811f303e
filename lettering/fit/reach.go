package fit

import "math"

// Reach returns the letter height that the request comes out at, and whether
// it fits, without measuring or drawing the name: the same figures that Name
// gives, for a fraction of its cost where a width axis would be searched.
// Errors are those of Name.
func (f *Fitter) Reach(r Request) (height float64, fits bool, err error) {
	if err := r.check(); err != nil {
		return 0, false, err
	}
	if r.edged() {
		r.NoWaysOut = true
		n, err := f.Name(r)
		return n.LetterHeight, err == nil && n.Verdict != Over, err
	}
	face, err := instance(r.Face, r.Wdth, r.Wght)
	if err != nil {
		return 0, false, err
	}
	asked, err := f.line(&r, face)
	if err != nil {
		return 0, false, err
	}
	b, floor, axis := newStand(&r), r.floors(), axisOf(&r, face)
	if b.limit == 0 || b.turnsFar(asked, r.Height) {
		return f.reachByFit(&r)
	}
	out, narrowest := fitted{line: asked}, floor.Width
	if axis != nil {
		narrowest = axis.left(floor.Width, r.Squash)
		if out.line, err = f.lineAt(&r, axis); err != nil {
			return 0, false, err
		}
	}
	at := func(x float64) state { return state{x, narrowest, floor.Tracking * x} }
	if b.excess(out.line, f.lifted(&b, out.line, at(r.Height))) <= 0 {
		return r.Height, true, nil
	}
	fits = f.rung(&b, &out, floor.Height, r.Height, at)
	return out.state.height, fits, nil
}

// lineAt returns the request's line at the floor of the width axis.
func (f *Fitter) lineAt(r *Request, axis *widthAxis) (*line, error) {
	if axis.floor >= axis.asked {
		return f.line(r, axis.face)
	}
	face, err := instance(axis.face, axis.floor, math.NaN())
	if err != nil {
		return nil, err
	}
	return f.line(r, face)
}

// turnsFar reports an arch on which the line as asked comes near to turning too
// far, so that only the whole fit tells whether that is an error.
func (b *stand) turnsFar(l *line, height float64) bool {
	full := state{height, 1, 0}
	switch {
	case b.shape.radial():
		return b.halfAngle(l, full) > 0.9*steepest
	case b.shape.vertical():
		return l.widest(full) > 1.8*b.radius
	}
	return false
}

func (f *Fitter) reachByFit(r *Request) (float64, bool, error) {
	o, err := f.fit(r)
	return o.state.height, err == nil && o.verdict != Over, err
}
