package fit

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// Name fits one name. Errors: *typeface.MissingError for a character that the
// face lacks, *TooTightError for an arch too tight, others for a request that
// makes no sense.
func (f *Fitter) Name(r Request) (Name, error) {
	n, err := f.name(r)
	if err != nil {
		return Name{}, err
	}
	if !r.NoWaysOut {
		n.WouldFit = f.WaysOut(r, n)
	}
	return n, nil
}

// name fits one name without its ways out.
func (f *Fitter) name(r Request) (Name, error) {
	if r.edged() {
		return f.between(r)
	}
	out, err := f.fit(&r)
	if err != nil {
		return Name{}, err
	}
	n := f.assemble(&r, out)
	return n, f.stroke(&r, out.line, &n)
}

// WaysOut returns what would help the name n that the request r came out as;
// none for a name that came out full or eased. It costs tens of fits, so
// callers with many names set NoWaysOut and ask for the few they show.
func (f *Fitter) WaysOut(r Request, n Name) []WayOut {
	if n.Verdict < Reduced {
		return nil
	}
	return f.waysOut(&r, &n)
}

// Fit fits one name with a Fitter of its own. Keep a Fitter to fit many.
func Fit(r Request) (Name, error) { return NewFitter().Name(r) }

// outcome is a fit before it is drawn.
type outcome struct {
	fitted
	stand stand
	face  *typeface.Face // at the axis values asked
}

func (f *Fitter) fit(r *Request) (outcome, error) {
	if err := r.check(); err != nil {
		return outcome{}, err
	}
	face, err := instance(r.Face, r.Wdth, r.Wght)
	if err != nil {
		return outcome{}, err
	}
	if face, err = f.lightest(r, face); err != nil {
		return outcome{}, err
	}
	l, err := f.line(r, face)
	if err != nil {
		return outcome{}, err
	}
	out := outcome{stand: newStand(r), face: face}
	axis := axisOf(r, face)
	if out.fitted, err = f.ladder(r, &out.stand, l, axis); err != nil {
		return outcome{}, err
	}
	if out.tooTight() {
		return outcome{}, f.tooTight(r, &out, l, axis)
	}
	return out, nil
}

// tooTight reports whether the arch cannot carry the line. That includes a
// line that fits its limit only because it was made smaller until it turned
// little enough.
func (o *outcome) tooTight() bool {
	switch b := &o.stand; {
	case b.shape.vertical():
		return o.line.widest(o.state)/2 >= b.radius
	case !b.shape.radial():
		return false
	case b.halfAngle(o.line, o.state) > steepest:
		return true
	default:
		changed := o.verdict == Eased || o.verdict == Reduced
		return changed && o.stoppedByTurn()
	}
}

// stoppedByTurn reports whether the next larger size would fit the limit but
// for its turn.
func (o *outcome) stoppedByTurn() bool {
	return o.stand.excess(o.line, o.state) < -within && o.stand.halfAngle(o.line, o.state) > 0.98*steepest
}

// tooTight makes the error, with the smallest radius that would do.
func (f *Fitter) tooTight(r *Request, o *outcome, asked *line, axis *widthAxis) error {
	b := o.stand
	e := &TooTightError{Text: r.Text, Shape: r.Shape, Radius: b.radius}
	if b.shape.vertical() {
		e.Smallest = o.line.widest(o.state) / 2 * (1 + 1e-9)
	} else {
		e.Smallest = f.smallestRadius(r, b, asked, axis)
	}
	if r.Rise > 0 {
		e.Rise = geom.Sagitta(e.Smallest, r.Limit)
	}
	return e
}

// smallestRadius closes in on the smallest radius that carries the line. At
// the upper end the line as asked turns by 75 degrees, so every smaller one
// does too and the ladder is free.
func (f *Fitter) smallestRadius(r *Request, b stand, asked *line, axis *widthAxis) float64 {
	high := b.carrying(asked, state{r.Height, 1, 0})
	if b.limit == 0 && b.keep == 0 {
		return high
	}
	carries := func(radius float64) bool {
		o := outcome{stand: b}
		o.stand.radius = radius
		var err error
		o.fitted, err = f.ladder(r, &o.stand, asked, axis)
		return err == nil && !o.tooTight()
	}
	// A gap that the letters keep makes the line longer than was reckoned with.
	for tries := 0; b.keep > 0 && tries < 30 && !carries(high); tries++ {
		high *= 1.25
	}
	low := math.Min(b.radius, high)
	for range 40 {
		if mid := (low + high) / 2; carries(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// assemble measures the fitted line.
func (f *Fitter) assemble(r *Request, o outcome) Name {
	l, s, b := o.line, o.state, &o.stand
	from, to := b.span(l, s)
	n := Name{
		Text: r.Text, FaceID: r.Face.ID(), Shape: r.Shape, Radius: b.radius,
		Asked: r.Height, LetterHeight: s.height, WidthScale: s.scale, Tracking: s.tracking,
		Wdth: o.wdth, Wght: weightOf(o.face), InkWidth: to - from, Limit: r.Limit,
		Verdict: o.verdict, Apex: -(from + to) / 2,
	}
	if n.Verdict == Over {
		n.OverBy = n.InkWidth - n.Limit
	}
	if l.under != nil {
		n.Leading = b.leading(l, s)
	}
	bare := *b
	bare.offsets, bare.round, bare.reach = nil, true, 0
	lo, hi := bare.span(l, s)
	n.BareInkWidth = hi - lo
	n.art = drawingOf(r, &o, n.Apex)
	set := f.set(b, l, s)
	margin := b.reach
	if !b.round {
		margin *= outline.MitreLimit
	}
	n.InkHeight = height(set, b.offsets, margin)
	n.SmallestGap = f.smallestGap(set)
	return n
}

func weightOf(face *typeface.Face) float64 {
	for _, a := range face.Axes() {
		if a.Tag == tagWeight {
			return face.Settings()[tagWeight]
		}
	}
	return math.NaN()
}
