package edges_test

import (
	"math"

	"pgregory.net/rapid"

	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
)

// flat is a flat line of random contours with what it is to be drawn between.
type flat struct {
	shape         edges.Shape
	height, chord float64
	path          geom.Path
}

func drawFlat(t *rapid.T) flat {
	f := flat{
		height: rapid.Float64Range(10, 150).Draw(t, "height"),
		chord:  rapid.Float64Range(100, 600).Draw(t, "chord"),
	}
	f.shape.Top = drawEdge(t, "top", f.chord, f.height)
	f.shape.Bottom = drawEdge(t, "bottom", f.chord, f.height)
	if rapid.Bool().Draw(t, "leaning") {
		f.shape.Shear = rapid.Float64Range(-0.5, 0.5).Draw(t, "shear")
	}
	f.path = drawPath(t, f.chord/2-f.height, f.height)
	return f
}

// drawEdge returns an edge of any kind that leaves room for the other.
func drawEdge(t *rapid.T, name string, chord, height float64) edges.Edge {
	rise := rapid.Float64Range(-0.45, 0.45).Draw(t, name+".rise") * min(chord, height)
	if math.Abs(rise) < 1e-3 {
		rise = 0 // the oracle's circle would lose its digits
	}
	switch rapid.SampledFrom([]string{"straight", "arch", "circle", "slant", "angle"}).Draw(t, name+".kind") {
	case "arch":
		return edges.Edge{Kind: edges.Arch, Rise: rise}
	case "circle":
		if rise != 0 {
			return edges.Edge{Kind: edges.Arch, Radius: math.Copysign(geom.RadiusOf(chord, math.Abs(rise)), rise)}
		}
	case "slant":
		return edges.Edge{Kind: edges.Slant, Rise: rise}
	case "angle":
		return edges.Edge{Kind: edges.Slant, Angle: math.Atan(rise / chord)}
	}
	return edges.Edge{}
}

// drawPath returns contours of lines and curves within half to both sides and
// from under the baseline to over the cap line.
func drawPath(t *rapid.T, half, height float64) geom.Path {
	half = max(half, 5)
	point := func(name string) geom.Point {
		return geom.Point{
			X: rapid.Float64Range(-half, half).Draw(t, name+".x"),
			Y: rapid.Float64Range(-0.4*height, 1.4*height).Draw(t, name+".y"),
		}
	}
	var p geom.Path
	for range rapid.IntRange(1, 3).Draw(t, "contours") {
		p.MoveTo(point("start"))
		for range rapid.IntRange(1, 5).Draw(t, "segments") {
			switch rapid.IntRange(1, 3).Draw(t, "op") {
			case 1:
				p.LineTo(point("l"))
			case 2:
				p.QuadTo(point("q1"), point("q2"))
			case 3:
				p.CubeTo(point("c1"), point("c2"), point("c3"))
			}
		}
		p.Close()
	}
	return p
}
