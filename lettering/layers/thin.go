package layers

import "yokeline/lettering/geom"

// thinness is how far, in mm, a point may lie off the line past it and be left out:
// far less than shows, and it takes away edges so short that a cutter would stutter.
const thinness = 0.0005

// thinned leaves out the points that are off by no more than near.
func thinned(r geom.Region, near float64) geom.Region {
	if r == nil {
		return nil
	}
	out := make(geom.Region, 0, len(r))
	for _, ring := range r {
		kept := geom.Ring{}
		for i := 0; i < len(ring); {
			kept = append(kept, ring[i])
			i = reach(ring, i, near)
		}
		if len(kept) < 3 {
			kept = ring
		}
		out = append(out, kept)
	}
	return out
}

// reach returns the farthest point up to which all after point i lie near a line.
// The point after the last is the first.
func reach(ring geom.Ring, i int, near float64) int {
	const most = 64 // points in one go: long straight lines have few
	for j := i + 2; j <= len(ring) && j <= i+most; j++ {
		end := ring[j%len(ring)]
		for k := i + 1; k < j; k++ {
			if off(ring[k], ring[i], end) > near {
				return j - 1
			}
		}
	}
	return min(i+most, len(ring))
}

// off is the distance from p to the line from a to b.
func off(p, a, b geom.Point) float64 {
	v, w := b.Sub(a), p.Sub(a)
	t := 0.0
	if long := v.Dot(v); long > 0 {
		t = min(1, max(0, w.Dot(v)/long))
	}
	return w.Sub(v.Mul(t)).Norm()
}
