package fit

import (
	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// drawing is what a name's letters are drawn from when someone asks for them:
// their places, but no curves. Most names of an order are measured far more
// often than they are drawn, and curves take ten times the memory.
type drawing struct {
	base
	state
	cut   *weight.Cut    // nil where the ladder moved the width axis to a value of this name alone
	face  *typeface.Face // at the axis values asked
	wdth  float64        // that the ladder moved the face to
	bold  float64        // share of the cap height
	cap   float64
	spots []spot
	mid   float64 // of the straight line's bare ink
	shift float64 // that centres the ink box
	drop  float64 // of the baseline under y = 0
	under *drawing
	band  *edges.Band // that the drawn letters are bent between; nil for none
}

func drawingOf(r *Request, o *outcome, shift float64) *drawing {
	from, to := o.line.bare(o.state)
	d := &drawing{
		base: o.stand.base, state: o.state, cut: o.line.cut, face: o.face, wdth: o.wdth, bold: r.bold(),
		cap: o.line.cap, spots: o.line.spots, mid: (from + to) / 2, shift: shift,
	}
	if o.line.cut.Face() != o.face {
		d.cut = nil
	}
	if o.line.under != nil {
		lower := *o
		lower.line, lower.stand = o.line.under, o.stand.lower(o.line, o.state)
		d.under = drawingOf(r, &lower, shift)
		d.under.drop = o.stand.leading(o.line, o.state)
	}
	return d
}

// Ink returns the bare letters as curves, drawn anew at each call; the path is
// the caller's own. Contours may overlap. It is safe for concurrent use, and
// empty for a Name that no Fitter made.
func (n Name) Ink() geom.Path {
	d := n.art
	if d == nil {
		return nil
	}
	// The letters were drawn with the same settings when they were measured, so
	// neither step can fail here.
	cut, err := d.cutDrawn()
	if err != nil {
		return nil
	}
	path := d.draw(nil, cut)
	if d.under != nil {
		path = d.under.draw(path, cut)
	}
	if d.band == nil {
		return path
	}
	bent, err := d.band.Bend(path, bendTolerance)
	if err != nil {
		return nil // it was bent when it was measured
	}
	return bent
}

// draw adds the letters of one line to the path; nil when that fails.
func (d *drawing) draw(path geom.Path, cut *weight.Cut) geom.Path {
	for i := range d.spots {
		glyph, err := raisedPath(cut, d.spots[i].id)
		if err != nil {
			return nil
		}
		if path == nil {
			path = make(geom.Path, 0, (len(glyph)+4)*len(d.spots))
		}
		w := d.warp(d.cap, d.state, &d.spots[i], d.mid)
		w.Map.F -= d.drop
		if w.Bend == 0 {
			w.Map.E += d.shift
			path = ink.DrawPath(path, glyph, w, bendTolerance)
			continue
		}
		start := len(path)
		path = ink.DrawPath(path, glyph, w, bendTolerance)
		moveAlong(path[start:], d.shift) // the bend depends on x: first bent, then centred
	}
	return path
}

func moveAlong(path geom.Path, shift float64) {
	for i := range path {
		for k := range path[i].P {
			path[i].P[k].X += shift
		}
	}
}

// Settled returns the bare ink flattened within half of outline.Tolerance and
// merged, so that overlapping contours count once.
func (n Name) Settled() (geom.Region, error) {
	return outline.Union(n.Ink().Flatten(outline.Tolerance / 2))
}
