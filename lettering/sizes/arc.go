package sizes

import (
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// Who shares the circle that a rise makes, by the job's words.
const (
	arcOfTeam = "team"
	arcOfName = "name"
)

// shareArc gives the whole team the circles of the size that most players wear
// (of sizes worn alike, the larger), where the job asks for that.
func (w *worker) shareArc(worn []garment.Size) error {
	if w.plan.order.Fit.Arc != arcOfTeam || len(worn) == 0 {
		return nil
	}
	l, err := w.layout(w.plan.commonest(worn))
	if err != nil {
		return err
	}
	for i, asked := range w.plan.order.Pieces {
		if asked.Rise != nil {
			w.plan.arcs[i] = geom.RadiusOf(l.spots[i].limit, asked.Rise.MM())
		}
	}
	return nil
}

func (p *plan) commonest(worn []garment.Size) garment.Size {
	count := map[garment.Size]int{}
	for _, player := range p.order.Players {
		if player.SizeKnown {
			count[player.Size]++
		}
	}
	best := worn[0]
	for _, size := range worn[1:] {
		if n := count[size] - count[best]; n > 0 || n == 0 && size.Compare(best) > 0 {
			best = size
		}
	}
	return best
}

// radius returns the radius of the baseline of piece i, mm: as written, that of
// the team, or from the rise over the limit. Infinite for a straight one. Names
// with an arch of their own fall as far as this one at most.
func (p *plan) radius(i int, limit float64) float64 {
	switch asked := p.order.Pieces[i]; {
	case asked.Radius != nil:
		return asked.Radius.MM()
	case p.arcs[i] > 0:
		return p.arcs[i]
	case asked.Rise != nil:
		return geom.RadiusOf(limit, asked.Rise.MM())
	}
	return math.Inf(1)
}

// arch gives the request of piece i its circle.
func (w *worker) arch(r *fit.Request, i int) {
	switch asked := w.plan.order.Pieces[i]; {
	case asked.Radius != nil:
		r.Radius = asked.Radius.MM()
	case asked.Rise == nil:
	case w.plan.arcs[i] > 0:
		r.Radius = w.plan.arcs[i]
	case w.plan.order.Fit.Arc == arcOfName:
		r.Radius = w.ownRadius(*r, asked.Rise.MM())
	default:
		r.Rise = asked.Rise.MM()
	}
}

// roundest is the most that a name may rise over its own width, as a share of
// it: an arc of 45 degrees to a side. A short name would else become a ring.
// Common practice, no source.
const roundest = 0.2071

// ownRadius returns the radius that has the rise over the width that the name
// comes out at, mm. The width depends a little on the radius in turn, so it is
// come near in a few steps.
func (w *worker) ownRadius(r fit.Request, rise float64) float64 {
	const near = 0.01 // mm of width
	shape := r.Shape
	r.Shape, r.Radius, r.Rise = fit.Straight, 0, 0
	radius, width := 0.0, 0.0
	for range 8 {
		n, err := w.fitter.Name(r)
		if err != nil || math.Abs(n.InkWidth-width) < near {
			break
		}
		width = n.InkWidth
		radius = geom.RadiusOf(width, math.Min(rise, roundest*width))
		r.Shape, r.Radius = shape, radius
	}
	return radius
}
