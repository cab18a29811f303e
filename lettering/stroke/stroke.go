// Package stroke measures how thick the strokes of a digit or letter are, from
// its outline alone.
//
// At samples along the boundary it finds the largest ball inside the ink that
// touches the boundary there. Where the ball's two points of contact lie
// opposite each other, seen from its centre under at least 140 degrees, the
// ball spans a stroke and its diameter is the stroke's thickness there. At
// corners, chamfers and most joints the contacts lie closer together and the
// sample is dropped.
package stroke

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// opposed is the cosine of the least angle between the two contacts, 140
// degrees.
const opposed = -0.766044443118978

// leastKept is the share of the boundary that must give a thickness for the
// shape to count as made of strokes.
const leastKept = 0.30

// Gauge is the measured stroke of a shape, in the unit of the region.
type Gauge struct {
	Thin       float64 // 10th percentile by boundary length; NaN if not measurable
	Main       float64 // median by boundary length; NaN if not measurable
	Kept       float64 // share of the boundary length that gave a thickness, 0 to 1
	Measurable bool    // Kept is at least 30 %
}

// sample is a stretch of wall that gave a thickness.
type sample struct{ thickness, length float64 }

// Measure gauges the strokes of a settled region (outer rings anticlockwise,
// holes clockwise, no crossings). Samples are at most step apart on straight
// walls; 0 takes 1/200 of the region's height. On a flattened curve each edge
// is one sample at its middle, where its direction is the curve's.
func Measure(settled geom.Region, step float64) Gauge {
	if !(step > 0) {
		step = settled.Bounds().Height() / 200
	}
	walls := wallsOf(settled)
	if len(walls) == 0 || !(step > 0) {
		return Gauge{Thin: math.NaN(), Main: math.NaN()}
	}
	b := ballFinder{walls: walls, cells: newCells(walls, settled.Bounds())}
	var kept []sample
	for i := range walls {
		kept = b.along(i, step, kept)
	}
	return gauge(kept, settled.Perimeter())
}

func gauge(kept []sample, perimeter float64) Gauge {
	total := 0.0
	for _, s := range kept {
		total += s.length
	}
	g := Gauge{Thin: math.NaN(), Main: math.NaN(), Kept: total / perimeter}
	if g.Measurable = g.Kept >= leastKept; g.Measurable {
		slices.SortFunc(kept, func(a, b sample) int { return cmp.Compare(a.thickness, b.thickness) })
		g.Thin, g.Main = percentile(kept, 0.10*total), percentile(kept, 0.50*total)
	}
	return g
}

// percentile returns the thickness below which the samples add up to the given
// length.
func percentile(sorted []sample, length float64) float64 {
	sum := 0.0
	for _, s := range sorted {
		if sum += s.length; sum >= length {
			return s.thickness
		}
	}
	return sorted[len(sorted)-1].thickness
}
