package fit

import (
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/outline"
)

// edged reports whether the letters are drawn between edges or lean.
func (r *Request) edged() bool { return r.Edges != edges.Shape{} }

func (r *Request) checkEdges() error {
	switch {
	case !r.edged():
		return nil
	case r.Shape != Straight:
		return fmt.Errorf("%q is to stand on a %v and between edges; use one of them", r.Text, r.Shape)
	case !(math.Abs(r.Edges.Shear) <= edges.Steepest):
		return fmt.Errorf("the letters of %q lean by %.0f degrees; use at most %.0f", r.Text, r.Edges.Shear*180/math.Pi, edges.Steepest*180/math.Pi)
	case strings.Contains(r.Text, lineBreak):
		return fmt.Errorf("%q has two lines; letters between edges stand on one", r.Text)
	}
	return nil
}

// Form returns the name of what the letters stand on: the shape of their
// baseline, or the form of the edges they are drawn between.
func (n Name) Form() string {
	flat := n.Edges
	flat.Shear = 0
	switch {
	case flat != edges.Shape{}:
		return flat.String()
	case n.Edges.Shear != 0:
		return "oblique"
	}
	return n.Shape.String()
}

// refits is how often a name between edges is fitted again because corners of
// its outlines reach farther on the bent letters than on the straight ones.
const refits = 8

// between fits a name whose letters are drawn between edges. Edges keep every
// x, so the name is fitted straight and bent afterwards; only mitred and
// bevelled outlines change their width by it, and are fitted again.
func (f *Fitter) between(r Request) (Name, error) {
	inner := r
	for range refits {
		o, err := f.fit(&inner)
		if err != nil {
			return Name{}, err
		}
		n := f.assemble(&inner, o)
		if err := f.bend(&r, &o, &n); err != nil {
			return Name{}, err
		}
		n.Limit, n.OverBy = r.Limit, 0
		if n.Verdict == Over {
			n.OverBy = n.InkWidth - n.Limit
			return n, f.stroke(&r, o.line, &n)
		}
		excess := n.InkWidth - r.Limit
		if r.Limit == 0 || excess <= 0 {
			return n, f.stroke(&r, o.line, &n)
		}
		inner.Limit -= excess + slack
	}
	return Name{}, fmt.Errorf("%q does not settle within its limit between these edges; use round outlines", r.Text)
}

// bend draws the fitted letters between the edges and measures them anew.
func (f *Fitter) bend(r *Request, o *outcome, n *Name) error {
	flat := r.Edges
	flat.Shear = 0 // is in the letters' maps already
	chord := r.Limit
	band, err := flat.Band(n.LetterHeight, chord)
	if err != nil {
		return fmt.Errorf("%q: %w", r.Text, err)
	}
	half := n.BareInkWidth / 2
	if err := band.Carry(-half, half); err != nil {
		return fmt.Errorf("%q: %w", r.Text, err)
	}
	n.Edges, n.art.band = r.Edges, &band
	glyphs := f.set(&o.stand, o.line, o.state)
	for i := range glyphs {
		g := &glyphs[i]
		path := g.ink.Draw(nil, g.at, bendTolerance)
		moveAlong(path, n.Apex)
		if path, err = band.Bend(path, bendTolerance); err != nil {
			return fmt.Errorf("%q: %w", r.Text, err)
		}
		g.ink, g.at = ink.New(path, bendTolerance), ink.Warp{Map: geom.Identity()}
		g.box, g.bent = g.ink.Box, true
	}
	margin := o.stand.reach
	if !o.stand.round {
		margin *= outline.MitreLimit
		n.InkWidth = across(glyphs, o.stand.offsets)
	}
	n.InkHeight = height(glyphs, o.stand.offsets, margin)
	n.SmallestGap = f.smallestGap(glyphs)
	return nil
}

// across returns the width of drawn letters with their outlines.
func across(glyphs []set, offsets []ink.Offset) float64 {
	right, left := math.Inf(-1), math.Inf(-1)
	for i := range glyphs {
		g := &glyphs[i]
		right = max(right, g.ink.Outer(g.at, geom.Point{X: 1}, offsets))
		left = max(left, g.ink.Outer(g.at, geom.Point{X: -1}, offsets))
	}
	return right + left
}
