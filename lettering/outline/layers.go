package outline

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// Layer is one outline: it surrounds the letters and the layers before it.
type Layer struct {
	Width float64 // of this layer alone, mm, 0 or more
	Join  Join
}

// Reach returns how far, in mm, the layers together stand off the ink.
func Reach(layers []Layer) float64 {
	sum := 0.0
	for _, l := range layers {
		sum += l.Width
	}
	return sum
}

// Layers returns the settled area of every layer, the innermost first, each
// with what it surrounds filled in. Each is offset from the ink, not from the
// layer before it, by the summed width, so that errors do not add up. The ink
// need not be settled. A width below 0 or not a number is an error; others
// wrap ErrRange or ErrUnsettled.
func (e *Engine) Layers(ink geom.Region, layers []Layer) ([]geom.Region, error) {
	for i, l := range layers {
		if !(l.Width >= 0) {
			return nil, fmt.Errorf("outline %d: width %g mm is not a length of 0 or more", i+1, l.Width)
		}
	}
	settled, err := e.Union(ink)
	if err != nil {
		return nil, err
	}
	out := make([]geom.Region, len(layers))
	d := 0.0
	for i, l := range layers {
		d += l.Width
		if out[i], err = e.Offset(settled, d, l.Join); err != nil {
			return nil, fmt.Errorf("outline %d: %w", i+1, err)
		}
	}
	return out, nil
}

// Layers outlines the ink with an Engine of its own; see Engine.Layers.
func Layers(ink geom.Region, layers []Layer) ([]geom.Region, error) {
	return new(Engine).Layers(ink, layers)
}

// Extent returns the box, in mm, of the ink and all its layers. It is that of
// the true outline, computed without drawing it: for round joins the box of
// the ink grown by the reach, for the others that of the outline's corners.
// The region must be settled; without layers the result is its bounds.
func Extent(settled geom.Region, layers []Layer) geom.Rect {
	return ExtentOf(settled.Bounds(), settled, layers)
}

// ExtentOf is Extent for ink with curves: bounds is the exact box of the ink
// (geom.Path.Bounds), settled its flattened and merged form. By as much as the
// flattened form falls short of the exact box, mitred and bevelled boxes are
// moved outward.
func ExtentOf(bounds geom.Rect, settled geom.Region, layers []Layer) geom.Rect {
	box := bounds
	flat := settled.Bounds()
	if flat.Empty() {
		return box
	}
	var raw rawOffset
	d := 0.0
	for _, l := range layers {
		d += l.Width
		if l.Join == Round {
			box = box.Union(bounds.Grow(d))
			continue
		}
		box = box.Union(widen(raw.bounds(settled, d, l.Join), flat, bounds))
	}
	return box
}

// widen moves each side of box outward by as much as exact lies outside flat.
func widen(box, flat, exact geom.Rect) geom.Rect {
	return geom.Rect{
		Min: geom.Point{
			X: box.Min.X - math.Max(0, flat.Min.X-exact.Min.X),
			Y: box.Min.Y - math.Max(0, flat.Min.Y-exact.Min.Y),
		},
		Max: geom.Point{
			X: box.Max.X + math.Max(0, exact.Max.X-flat.Max.X),
			Y: box.Max.Y + math.Max(0, exact.Max.Y-flat.Max.Y),
		},
	}
}
