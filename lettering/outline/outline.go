// Package outline merges lettering into settled regions and surrounds it with
// outlines of constant distance: round, mitred or bevelled. Lengths are
// millimetres, y grows upward.
//
// Regions are settled on a grid of 1/8192 mm by exact integer arithmetic, so
// the result of a union is the same whatever the order of its rings, and
// settling a settled region changes nothing.
package outline

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline/internal/arrangement"
)

// Tolerance is how far, in mm, a drawn outline may lie outside the true one
// where it goes round a corner; it never lies inside it.
const Tolerance = 0.02

// MitreLimit is the most that a mitred corner may stick out, as a multiple of
// the outline's distance; a sharper corner is bevelled.
const MitreLimit = 4

// grid is the number of grid units in a millimetre. A power of two, so grid
// points are exact in float64.
const grid = 8192

// Errors that the functions of this package wrap.
var (
	// ErrRange: a coordinate is not a number or over 32 m from the origin.
	ErrRange = arrangement.ErrRange
	// ErrUnsettled: the shape's crossings do not settle on the grid.
	ErrUnsettled = arrangement.ErrUnsettled
)

// Engine does the work and keeps its scratch memory from one call to the next.
// The zero value is ready. It must not be used by two goroutines at once; the
// package functions may.
type Engine struct {
	plane arrangement.Engine
	ring  []arrangement.Point
	raw   rawOffset
}

// Union returns the area that the rings of r go round (winding number not
// zero) as a settled region: outer rings anticlockwise, holes clockwise, no
// crossings, no overlap, in a fixed order. r may be any set of rings. The
// error wraps ErrRange or ErrUnsettled.
func (e *Engine) Union(r geom.Region) (geom.Region, error) {
	e.plane.Reset()
	for _, ring := range r {
		if err := e.add(ring); err != nil {
			return nil, fmt.Errorf("cannot merge the shape: %w", err)
		}
	}
	out, err := e.trace(arrangement.NonZero)
	if err != nil {
		return nil, fmt.Errorf("cannot merge the shape: %w", err)
	}
	return out, nil
}

// Offset returns the settled region grown by d mm, or shrunk by -d mm when d is
// negative; joins are made at the corners that the outline goes round. A round
// join is drawn by edges that touch the true circle from outside, at most
// Tolerance off, with one edge square to each axis the circle crosses: so the
// outline is never thinner than asked, and its box is exact. Corners that turn
// by less than 10 degrees count as parts of a curve, whatever the join. The
// error wraps ErrRange or ErrUnsettled, or says that d is not a number.
func (e *Engine) Offset(settled geom.Region, d float64, j Join) (geom.Region, error) {
	if err := checkOffset(d, j); err != nil {
		return nil, err
	}
	fill := arrangement.Positive
	if d < 0 {
		fill = arrangement.Negative
	}
	e.plane.Reset()
	for _, ring := range settled {
		if err := e.add(e.raw.ring(ring, d, j)); err != nil {
			return nil, fmt.Errorf("cannot outline the shape by %g mm: %w", d, err)
		}
	}
	out, err := e.trace(fill)
	if err != nil {
		return nil, fmt.Errorf("cannot outline the shape by %g mm: %w", d, err)
	}
	return out, nil
}

func checkOffset(d float64, j Join) error {
	if math.IsNaN(d) || math.IsInf(d, 0) {
		return fmt.Errorf("outline distance %g is not a length", d)
	}
	if j > Bevel {
		return fmt.Errorf("join %d is unknown: use %s, %s or %s", j, Round, Mitre, Bevel)
	}
	return nil
}

// add puts a ring on the grid and hands it to the arrangement.
func (e *Engine) add(ring geom.Ring) error {
	e.ring = e.ring[:0]
	for _, p := range ring {
		x, y := math.Floor(p.X*grid+0.5), math.Floor(p.Y*grid+0.5)
		if !(math.Abs(x) <= arrangement.Limit && math.Abs(y) <= arrangement.Limit) {
			return fmt.Errorf("point (%g, %g): %w", p.X, p.Y, ErrRange)
		}
		e.ring = append(e.ring, arrangement.Point{X: int32(x), Y: int32(y)})
	}
	return e.plane.Add(e.ring)
}

func (e *Engine) trace(fill arrangement.Fill) (geom.Region, error) {
	rings, err := e.plane.Trace(fill)
	if err != nil {
		return nil, err
	}
	out := make(geom.Region, len(rings))
	for i, ring := range rings {
		out[i] = make(geom.Ring, len(ring))
		for k, p := range ring {
			out[i][k] = geom.Point{X: float64(p.X) / grid, Y: float64(p.Y) / grid}
		}
	}
	return out, nil
}

// Union settles r with an Engine of its own; see Engine.Union.
func Union(r geom.Region) (geom.Region, error) { return new(Engine).Union(r) }

// Offset grows a settled region with an Engine of its own; see Engine.Offset.
func Offset(settled geom.Region, d float64, j Join) (geom.Region, error) {
	return new(Engine).Offset(settled, d, j)
}
