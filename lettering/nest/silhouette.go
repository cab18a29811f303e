package nest

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// silhouette returns the rings that keep other pieces away: the outer rings of a
// piece, thinned, and for letters that stand apart the hulls of neighbours, so that
// nothing lies between the letters of a name or the digits of a number: they are
// cut free and pressed as one, on one carrier. Counters are left out for the same
// reason. With their insides the rings are one connected shape.
func silhouette(shape geom.Region, tolerance float64) geom.Region {
	var out geom.Region
	for _, ring := range shape {
		if ring.Area() > 0 {
			out = append(out, thin(ring, tolerance))
		}
	}
	if len(out) == 0 { // nothing but flat or backward rings: keep what there is
		return shape
	}
	for _, pair := range neighbours(out) {
		out = append(out, geom.Hull(slices.Concat(out[pair[0]], out[pair[1]])))
	}
	return out
}

// neighbours joins rings by a tree of the nearest: by the distance of their boxes,
// then of the middles of those.
func neighbours(rings geom.Region) [][2]int {
	boxes := make([]geom.Rect, len(rings))
	for i, r := range rings {
		boxes[i] = geom.Region{r}.Bounds()
	}
	type link struct {
		from        int
		apart, away float64
	}
	nearest := make([]link, len(rings))
	for i := range nearest {
		nearest[i] = link{apart: math.Inf(1)}
	}
	var out [][2]int
	left := identity(len(rings))[1:]
	for last := 0; len(left) > 0; {
		for _, i := range left {
			l := link{last, apart(boxes[last], boxes[i]), boxes[last].Center().Sub(boxes[i].Center()).Norm()}
			if n := nearest[i]; cmp.Or(cmp.Compare(l.apart, n.apart), cmp.Compare(l.away, n.away)) < 0 {
				nearest[i] = l
			}
		}
		last = slices.MinFunc(left, func(a, b int) int {
			return cmp.Or(cmp.Compare(nearest[a].apart, nearest[b].apart), cmp.Compare(nearest[a].away, nearest[b].away), cmp.Compare(a, b))
		})
		left = slices.DeleteFunc(left, func(i int) bool { return i == last })
		out = append(out, [2]int{nearest[last].from, last})
	}
	return out
}

// apart is the distance between two boxes, 0 when they meet.
func apart(a, b geom.Rect) float64 {
	dx := math.Max(0, math.Max(a.Min.X-b.Max.X, b.Min.X-a.Max.X))
	dy := math.Max(0, math.Max(a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
	return math.Hypot(dx, dy)
}

// thin leaves out points of a ring that lie within tolerance of the edge drawn
// in their place; it looks ahead a bounded way.
func thin(ring geom.Ring, tolerance float64) geom.Ring {
	const ahead = 24
	var out geom.Ring
	for i := 0; i < len(ring); {
		out = append(out, ring[i])
		next := i + 1
		for next+1 < len(ring) && next-i < ahead && follows(ring[i:next+2], tolerance) {
			next++
		}
		i = next
	}
	return out
}

// follows reports whether all points lie within tolerance of the segment from the
// first to the last.
func follows(points []geom.Point, tolerance float64) bool {
	a, b := points[0], points[len(points)-1]
	d := b.Sub(a)
	long := d.Dot(d)
	for _, p := range points[1 : len(points)-1] {
		t := 0.0
		if long > 0 {
			t = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/long))
		}
		if p.Sub(a.Lerp(b, t)).Norm() > tolerance {
			return false
		}
	}
	return true
}
