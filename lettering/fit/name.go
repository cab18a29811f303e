package fit

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/typeface"
)

// Name fits one name. Errors: *typeface.MissingError for a character that the
// face lacks, *TooTightError for an arch too tight, others for a request that
// makes no sense.
func (f *Fitter) Name(r Request) (Name, error) {
	out, err := f.fit(&r)
	if err != nil {
		return Name{}, err
	}
	n := f.assemble(&r, out)
	if !r.NoWaysOut && n.Verdict >= Reduced {
		n.WouldFit = f.waysOut(&r, &n)
	}
	return n, nil
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
	l, err := f.line(face, r.Text, r.Lang)
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
		from, to := o.line.bare(o.state)
		return (to-from)/2 >= b.radius
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
	from, to := o.line.bare(o.state)
	if b.shape.vertical() {
		e.Smallest = (to - from) / 2 * (1 + 1e-9)
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
	full := state{r.Height, 1, 0}
	from, to := asked.bare(full)
	high := (to - from) / 2 / steepest * (1 + 1e-9)
	if shift := b.turning(r.Height) - b.radius; b.shape.radial() {
		high -= shift
	}
	if b.limit == 0 {
		return high
	}
	low := math.Min(b.radius, high)
	for range 40 {
		o := outcome{stand: b}
		o.stand.radius = (low + high) / 2
		var err error
		if o.fitted, err = f.ladder(r, &o.stand, asked, axis); err != nil || o.tooTight() {
			low = o.stand.radius
		} else {
			high = o.stand.radius
		}
	}
	return high
}

// assemble draws and measures the fitted line.
func (f *Fitter) assemble(r *Request, o outcome) Name {
	l, s, b := o.line, o.state, &o.stand
	from, to := b.span(l, s)
	n := Name{
		Text: r.Text, FaceID: r.Face.ID(), Shape: r.Shape, Radius: b.radius,
		Asked: r.Height, LetterHeight: s.height, WidthScale: s.scale, Tracking: s.tracking,
		Wdth: o.wdth, Wght: weight(o.face), InkWidth: to - from, Limit: r.Limit,
		Verdict: o.verdict, Apex: -(from + to) / 2,
	}
	if n.Verdict == Over {
		n.OverBy = n.InkWidth - n.Limit
	}
	bare := *b
	bare.offsets, bare.round, bare.reach = nil, true, 0
	lo, hi := bare.span(l, s)
	n.BareInkWidth = hi - lo
	set := f.set(b, l, s)
	n.Ink = draw(set, n.Apex)
	n.InkHeight = height(set, b.offsets)
	n.SmallestGap = f.smallestGap(set)
	return n
}

func weight(face *typeface.Face) float64 {
	for _, a := range face.Axes() {
		if a.Tag == tagWeight {
			return face.Settings()[tagWeight]
		}
	}
	return math.NaN()
}

// bendTolerance is how far a curve drawn on a vertical arch may leave the true
// one, mm.
const bendTolerance = 0.004

// set is a glyph in the plane, x = 0 at the middle of the line.
type set struct {
	ink  *ink.Glyph
	at   ink.Warp // affine; a glyph on a vertical arch is already bent
	mark bool
}

// set puts the glyphs into the plane; the slice is valid until the next call.
func (f *Fitter) set(b *stand, l *line, s state) []set {
	f.placed = f.placed[:0]
	from, to := l.bare(s)
	for i := range l.glyphs {
		g := set{l.glyphs[i].ink, b.warp(l, s, i, (from+to)/2), l.glyphs[i].mark}
		if b.shape.vertical() {
			g.ink = g.ink.Placed(g.at, bendTolerance)
			g.at = ink.Warp{Map: geom.Identity()}
		}
		f.placed = append(f.placed, g)
	}
	return f.placed
}

// draw returns the curves of all glyphs, moved along x.
func draw(glyphs []set, shift float64) geom.Path {
	size := 0
	for i := range glyphs {
		size += len(glyphs[i].ink.Path)
	}
	path := make(geom.Path, 0, size)
	for i := range glyphs {
		at := glyphs[i].at
		at.Map.E += shift
		path = glyphs[i].ink.Draw(path, at, bendTolerance)
	}
	return path
}

// height returns the height of the ink with its outlines.
func height(glyphs []set, offsets []ink.Offset) float64 {
	top, bottom := math.Inf(-1), math.Inf(1)
	for i := range glyphs {
		g := &glyphs[i]
		top = max(top, g.ink.Outer(g.at, geom.Point{Y: 1}, offsets))
		bottom = min(bottom, -g.ink.Outer(g.at, geom.Point{Y: -1}, offsets))
	}
	return top - bottom
}

// smallestGap returns the smallest distance between neighbouring letters; a
// mark belongs to its letter. NaN for fewer than two letters.
func (f *Fitter) smallestGap(glyphs []set) float64 {
	best, previous, start := math.Inf(1), -1, 0
	for i := 1; i <= len(glyphs); i++ {
		if i < len(glyphs) && glyphs[i].mark {
			continue
		}
		for j := max(previous, 0); previous >= 0 && j < start; j++ {
			for k := start; k < i; k++ {
				a, b := &glyphs[j], &glyphs[k]
				best = f.finder.Gap(a.ink, a.at.Map, b.ink, b.at.Map, best)
			}
		}
		previous, start = start, i
	}
	if math.IsInf(best, 1) {
		return math.NaN()
	}
	return best
}
