package fit

import (
	"math"

	"yokeline/lettering/typeface"
)

// The two axes that a request can set.
const (
	tagWidth  = "wdth"
	tagWeight = "wght"
)

// widthAxis is the width axis of a face as a request uses it; nil for a face
// that has none.
type widthAxis struct {
	asked, floor float64        // from, and down to, in the axis's own units
	face         *typeface.Face // at the asked values
}

// value returns the asked value, NaN without an axis.
func (a *widthAxis) value() float64 {
	if a == nil {
		return math.NaN()
	}
	return a.asked
}

// left returns the geometric scale that may follow when the axis has come to
// its floor: with squash, what is missing to the floor in all.
func (a *widthAxis) left(share float64, squash bool) float64 {
	if !squash {
		return 1
	}
	return math.Min(1, share*a.asked/a.floor)
}

// instance returns the face with the axis values asked, NaN leaving an axis as
// it stands.
func instance(face *typeface.Face, wdth, wght float64) (*typeface.Face, error) {
	if math.IsNaN(wdth) && math.IsNaN(wght) {
		return face, nil
	}
	values := face.Settings()
	if !math.IsNaN(wdth) {
		values[tagWidth] = wdth
	}
	if !math.IsNaN(wght) {
		values[tagWeight] = wght
	}
	return face.Instance(values)
}

// axisOf returns how the request uses the width axis of its face, which stands
// at the asked values; nil when the face has no such axis.
func axisOf(r *Request, face *typeface.Face) *widthAxis {
	for _, a := range face.Axes() {
		if a.Tag != tagWidth {
			continue
		}
		asked := face.Settings()[tagWidth]
		floor := math.Min(asked, math.Max(a.Min, r.floors().Width*asked))
		return &widthAxis{asked: asked, floor: floor, face: face}
	}
	return nil
}

// axisStep is the grid that width axis values are taken from: a value that is
// printed can be given back and draws the same letters.
const axisStep = 0.01

// narrow takes the rung of the width axis with tracking at its floor. It
// reports whether that was enough; if not, out has the axis at its floor.
//
// The shaper's advances are whole font units at every axis value, so the width
// of a line moves in steps of nearly 0.1 mm as the axis moves. What a step
// leaves under the limit is given back as tracking, a few thousandths of a mm
// per letter, so that the name ends just under its limit like any other.
func (f *Fitter) narrow(r *Request, b *stand, axis *widthAxis, floor Ladder, out *fitted) (bool, error) {
	if axis.floor >= axis.asked {
		return false, nil
	}
	tight := state{r.Height, 1, floor.Tracking * r.Height}
	at := func(wdth float64) (*line, float64, error) {
		face, err := instance(axis.face, wdth, math.NaN())
		if err != nil {
			return nil, 0, err
		}
		l, err := f.line(r, face)
		if err != nil {
			return nil, 0, err
		}
		return l, b.excess(l, f.lifted(b, l, tight)), nil
	}
	l, low, err := at(axis.floor)
	if err != nil {
		return false, err
	}
	wide := out.line
	out.line, out.wdth, out.state = l, axis.floor, f.lifted(b, l, tight)
	if low > 0 {
		return false, nil
	}
	if err := searchAxis(axis, low, b.excess(wide, f.lifted(b, wide, tight)), out, at); err != nil {
		return false, err
	}
	out.state = f.lifted(b, out.line, tight)
	out.state.tracking = b.loosen(out.line, out.state)
	return true, nil
}

// searchAxis closes in on the neighbouring grid values of which the lower fits
// and the upper does not. low and high are the excess at the floor and at the
// asked value.
func searchAxis(axis *widthAxis, low, high float64, out *fitted, at func(float64) (*line, float64, error)) error {
	// Grid values strictly between the two ends; the ends may lie off the grid.
	lo, hi := math.Floor(axis.floor/axisStep+1e-6), math.Ceil(axis.asked/axisStep-1e-6)
	for turn := 0; hi-lo > 1; turn++ {
		guess := (lo + hi) / 2
		if turn%6 != 5 && !math.IsInf(high, 1) {
			guess = lo + (hi-lo)*low/(low-high)
		}
		k := math.Min(math.Max(math.Floor(guess), lo+1), hi-1)
		wdth := k / (1 / axisStep)
		l, excess, err := at(wdth)
		if err != nil {
			return err
		}
		if excess > 0 {
			hi, high = k, excess
		} else {
			lo, low = k, excess
			out.line, out.wdth = l, wdth
		}
	}
	return nil
}

// loosen returns the tracking, from that of s upwards, that brings the line up
// to the limit: at most what one step of the axis left over.
func (b *stand) loosen(l *line, s state) float64 {
	left := -b.excess(l, s)
	if l.gaps == 0 || left <= slack || math.IsInf(left, -1) {
		return s.tracking
	}
	at := func(x float64) float64 { return b.excess(l, state{s.height, s.scale, x}) }
	most := s.tracking + 2*left/float64(l.gaps)
	for tries := 0; at(most) <= 0; tries++ {
		if tries == 8 {
			return s.tracking
		}
		most += left
	}
	return largest(s.tracking, most, at)
}
