package sizes

import (
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
)

// ways returns what would fit a name that came out over or reduced: the ways of
// package fit, of which two lines are held against the room that two lines
// have, and the next size of the garment.
func (w *worker) ways(l *layout, i int, text string, r fit.Request, n *fit.Name) []fit.WayOut {
	if n.Verdict < fit.Reduced {
		return nil
	}
	out := w.fitter.WaysOut(r, *n)
	for k := range out {
		if out[k].Kind == fit.TwoLines && !w.roomForLines(l, i, r, n, &out[k]) {
			out = slices.Delete(out, k, k+1)
			break
		}
	}
	if next, ok := w.nextSize(l, i, text, n); ok {
		out = append(out, next)
	}
	return out
}

// roomForLines runs the way of two lines again where their deeper band has less
// room than one line. It reports whether the way still helps.
func (w *worker) roomForLines(l *layout, i int, r fit.Request, n *fit.Name, way *fit.WayOut) bool {
	limit := w.forLines(l, i, way.Text).limit
	if limit >= way.Limit {
		return true
	}
	r.Text, r.Raised, r.Limit = way.Text, way.Raised, limit
	two, err := w.fitter.Name(r)
	if err != nil || !helps(two, n) {
		return false
	}
	way.Height, way.Limit, way.Radius, way.Name = two.LetterHeight, limit, two.Radius, &two
	return true
}

// helps reports whether one name is a way out for another.
func helps(way fit.Name, n *fit.Name) bool {
	return way.Verdict != fit.Over && (n.Verdict == fit.Over || way.LetterHeight > n.LetterHeight)
}

// nextSize fits the same name to the next larger size of the same group.
func (w *worker) nextSize(l *layout, i int, text string, n *fit.Name) (fit.WayOut, bool) {
	size, ok := larger(l.garment.Size())
	if !ok {
		return fit.WayOut{}, false
	}
	big, err := w.layoutOf(size)
	if err != nil {
		return fit.WayOut{}, false
	}
	at := w.forLines(big, i, text)
	r := w.nameRequest(i, text, at.limit, at.height)
	o, err := w.fitter.Name(r)
	if err != nil || !helps(o, n) {
		return fit.WayOut{}, false
	}
	return fit.WayOut{
		Kind: fit.NextSize, Height: o.LetterHeight, Limit: o.Limit, WidthFloor: r.Ladder.Width, Radius: o.Radius, Rise: r.Rise,
		FaceID: o.FaceID, Text: o.Text, Raised: r.Raised, Size: size.String(), Name: &o,
	}, true
}

// larger returns the next size up of the same group.
func larger(size garment.Size) (garment.Size, bool) {
	letters := garment.Sizes(size.Group)
	k := slices.Index(letters, size.Letter)
	if k < 0 || k+1 == len(letters) {
		return garment.Size{}, false
	}
	return garment.Size{Group: size.Group, Letter: letters[k+1]}, true
}

// layoutOf returns the layout of any size.
func (w *worker) layoutOf(size garment.Size) (*layout, error) {
	if l := w.plan.layouts[size]; l != nil {
		return l, nil
	}
	if l := w.bigger[size]; l != nil {
		return l, nil
	}
	l, err := w.layout(size)
	if err == nil {
		w.bigger[size] = l
	}
	return l, err
}
