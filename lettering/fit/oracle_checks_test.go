package fit_test

import (
	"fmt"
	"math"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/outline"
)

// What the oracle holds against every fit.

// check holds a name against the definitions and returns how far its width is
// from the brute one.
func (o *oracle) check(n fit.Name) float64 {
	t, q := o.t, o.r
	at := size{n.LetterHeight, n.WidthScale, n.Tracking, n.Wdth}
	lo, hi, half := o.bare(at)
	width := hi - lo + 2*outline.Reach(q.Outlines)
	assert.LessOrEqual(t, half, 75*math.Pi/180+1e-9)
	assert.InDelta(t, width, n.InkWidth, 0.001)
	assert.InDelta(t, hi-lo, n.BareInkWidth, 0.001)
	box := n.Ink().Bounds()
	assert.InDelta(t, n.BareInkWidth, box.Width(), 1e-6, "the drawn ink")
	assert.InDelta(t, 0, box.Center().X, 1e-6, "centred")
	o.checkRungs(n, at)
	return math.Abs(width - n.InkWidth)
}

func (o *oracle) checkRungs(n fit.Name, at size) {
	t, q := o.t, o.r
	asked := size{q.Height, 1, 0, n.Wdth}
	lad := q.Ladder
	lad.Height = math.Min(lad.Height, q.Height)
	stepped, lowest, squashed := o.widthFloor(n)
	if stepped {
		asked.wdth = o.askedWdth()
	}
	if n.Verdict == fit.Full {
		assert.Equal(t, []float64{asked.height, 1, 0}, []float64{at.height, at.scale, at.tracking})
		assert.True(t, at.wdth == asked.wdth || !stepped)
		if q.Limit > 0 {
			assert.LessOrEqual(t, n.InkWidth, q.Limit)
		}
		return
	}
	assert.Greater(t, o.width(asked), q.Limit, "nothing had to change")
	if n.Verdict == fit.Over {
		assert.Greater(t, n.InkWidth, q.Limit)
		assert.InDelta(t, n.InkWidth-q.Limit, n.OverBy, 1e-9)
		assert.InDelta(t, lad.Height, n.LetterHeight, 1e-9)
	} else {
		assert.LessOrEqual(t, n.InkWidth, q.Limit, "never above")
		assert.LessOrEqual(t, o.width(at), q.Limit, "never above")
		gap, unit := 0.01, n.LetterHeight/o.r.Face.CapHeight()
		if n.Verdict == fit.Eased && stepped && len([]rune(q.Text)) == 1 && n.WidthScale == 1 {
			gap = 2 * unit // one letter: there is no tracking to take up a step of the axis
		}
		assert.Greater(t, n.InkWidth, q.Limit-gap, "ends just under the limit")
	}
	tight := lad.Tracking * n.LetterHeight
	narrower := n.WidthScale < 1 || stepped && n.Wdth < asked.wdth
	switch {
	case n.LetterHeight < q.Height || n.Verdict == fit.Over:
		assert.InDelta(t, tight, n.Tracking, 1e-9)
		assert.InDelta(t, squashed, n.WidthScale, 1e-9)
		assert.Greater(t, o.width(size{q.Height, squashed, lad.Tracking * q.Height, lowest}), q.Limit, "the rungs before were not enough")
		if n.Verdict == fit.Reduced {
			assert.GreaterOrEqual(t, n.LetterHeight, lad.Height-1e-9)
		}
	case n.WidthScale < 1:
		assert.InDelta(t, tight, n.Tracking, 1e-9)
		assert.GreaterOrEqual(t, n.WidthScale, squashed-1e-9)
		assert.Greater(t, o.width(size{q.Height, 1, tight, lowest}), q.Limit)
	case narrower:
		assert.GreaterOrEqual(t, n.Wdth, lowest-1e-9)
		// At worst every letter's advance takes its step of one font unit at once.
		unit := n.LetterHeight / o.face(n.Wdth).CapHeight()
		assert.InDelta(t, tight, n.Tracking, 2*unit, "tracking takes up a step of the axis and no more")
		assert.GreaterOrEqual(t, n.Tracking, tight-1e-9)
		assert.Greater(t, o.width(size{q.Height, 1, tight, math.Min(asked.wdth, n.Wdth+0.01)}), q.Limit, "the next step is too wide")
	default:
		assert.GreaterOrEqual(t, n.Tracking, tight-1e-9)
		assert.LessOrEqual(t, n.Tracking, 0.0)
	}
}

func (o *oracle) askedWdth() float64 {
	if !math.IsNaN(o.r.Wdth) {
		return o.r.Wdth
	}
	for _, a := range o.r.Face.Axes() {
		if a.Tag == "wdth" {
			return a.Default
		}
	}
	return math.NaN()
}

// widthFloor returns whether the face has a width axis, its lowest value and
// the lowest geometric scale.
func (o *oracle) widthFloor(n fit.Name) (stepped bool, lowest, scale float64) {
	share := o.r.Ladder.Width
	asked := o.askedWdth()
	if math.IsNaN(asked) {
		return false, math.NaN(), share
	}
	for _, a := range o.r.Face.Axes() {
		if a.Tag == "wdth" {
			lowest = math.Min(asked, math.Max(a.Min, share*asked))
		}
	}
	scale = 1
	if o.r.Squash {
		scale = share * asked / lowest
	}
	return true, lowest, scale
}

// bisect repeats the ladder of a static face by plain bisection.
func (o *oracle) bisect(n fit.Name) {
	q := o.r
	nan := math.NaN()
	rungs := []func(x float64) size{ // x from 0, the floor, to 1, as asked
		func(x float64) size { return size{q.Height, 1, (1 - x) * q.Ladder.Tracking * q.Height, nan} },
		func(x float64) size {
			return size{q.Height, q.Ladder.Width + x*(1-q.Ladder.Width), q.Ladder.Tracking * q.Height, nan}
		},
		func(x float64) size {
			h := q.Ladder.Height + x*(q.Height-q.Ladder.Height)
			return size{h, q.Ladder.Width, q.Ladder.Tracking * h, nan}
		},
	}
	want := rungs[2](0)
	for _, rung := range rungs {
		if o.width(rung(0)) > q.Limit {
			continue
		}
		lo, hi := 0.0, 1.0
		for range 30 {
			if mid := (lo + hi) / 2; o.width(rung(mid)) <= q.Limit {
				lo = mid
			} else {
				hi = mid
			}
		}
		want = rung(lo)
		break
	}
	note := fmt.Sprintf("%+v", n.Text)
	assert.InDelta(o.t, want.height, n.LetterHeight, 0.002, note)
	assert.InDelta(o.t, want.scale, n.WidthScale, 0.0001, note)
	assert.InDelta(o.t, want.tracking, n.Tracking, 0.002, note)
}

// checkTooTight gives the radius back: it must do, and a smaller one must not.
func (o *oracle) checkTooTight(f *fit.Fitter, e *fit.TooTightError) {
	q := o.r
	q.Rise = 0
	q.Radius = e.Smallest * 1.0001
	n, err := f.Name(q)
	require.NoError(o.t, err, "%v", e)
	box := n.Ink().Bounds()
	assert.False(o.t, math.IsNaN(box.Width()))
	q.Radius = e.Smallest * 0.999
	_, err = f.Name(q)
	assert.Error(o.t, err, "%v", e)
	assert.Less(o.t, e.Radius, e.Smallest)
}
