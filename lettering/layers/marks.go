package layers

import (
	"math"

	"yokeline/lettering/geom"
)

// Sizes of registration marks, mm: common practice, no source.
const (
	markLeg   = 8.0 // of a corner mark that is cut
	crossSpan = 4.0 // of a cross that is printed
	crossBar  = 0.5 // its thickness, which the finest screen holds
	markEdge  = 1.0 // from a mark to the weed border
)

// finish adds what goes with every layer: marks where layers must meet, the weed
// border, the margin and the rooms in it.
func (b *builder) finish() {
	a := &b.art
	a.Ink = geom.EmptyRect()
	last := 0
	for _, l := range a.Layers {
		a.Ink = a.Ink.Union(l.Region.Bounds())
		last = max(last, l.Order)
	}
	marks := last > 1 && b.meet()
	margin, bar, span := b.settings.WeedBorder, 0.0, 0.0
	if marks {
		bar, span = b.markSizes()
		deep := span
		if b.cuts() {
			deep = bar
		}
		margin = math.Max(margin, b.settings.MarkGap+deep+markEdge)
	}
	a.Box = a.Ink.Grow(margin)
	if marks {
		b.addMarks(bar, span)
	}
	if b.films() {
		a.Layers = append(a.Layers, Layer{Name: string(WeedBorder), Kind: WeedBorder, Line: rectangle(a.Box), Spot: b.settings.CutName})
	}
	b.waste(marks, span)
}

// films reports the methods whose waste is weeded.
func (b *builder) films() bool {
	id := b.art.Method.ID
	return id == "cut film" || id == "flock film" || id == "printed film"
}

// cuts reports the methods whose marks are cut as the layers are.
func (b *builder) cuts() bool {
	id := b.art.Method.ID
	return id == "cut film" || id == "flock film" || id == "sewn twill" || id == "satin twill"
}

// meet reports the methods whose layers are made apart and must meet. White is
// printed on its colours in one run, and an embroidery is sewn in one hoop.
func (b *builder) meet() bool {
	return b.cuts() || b.art.Method.ID == "screen transfer" || b.art.Method.ID == "printed film"
}

// markSizes returns the thickness and the length of a mark: one that is cut must
// hold, twill as film does.
func (b *builder) markSizes() (bar, span float64) {
	if b.cuts() {
		return math.Min(math.Max(2, b.art.Method.MinStroke), 3), markLeg
	}
	return crossBar, crossSpan
}

// addMarks puts a mark at three corners of the ink. The fourth is left out, so
// that a sheet that lies the wrong way round is seen.
func (b *builder) addMarks(bar, span float64) {
	ink := b.art.Ink.Grow(b.settings.MarkGap)
	name := AllPlates
	if b.cuts() {
		name = b.settings.CutName
	}
	mark := Layer{Name: string(Registration), Kind: Registration, Spot: name}
	corners := [3]struct {
		at   geom.Point
		x, y float64 // towards the outside
	}{{ink.Min, -1, -1}, {geom.Point{X: ink.Max.X, Y: ink.Min.Y}, 1, -1}, {geom.Point{X: ink.Min.X, Y: ink.Max.Y}, -1, 1}}
	for _, c := range corners {
		var ring geom.Ring
		if b.cuts() {
			ring = bracket(bar, span)
		} else {
			ring = cross(bar, span)
		}
		m := geom.Scale(c.x, c.y).Then(geom.Translate(c.at.X, c.at.Y))
		placed := geom.Region{ring}.Transform(m)
		if c.x*c.y < 0 {
			placed = geom.Region{backwards(placed[0])}
		}
		mark.Region = append(mark.Region, placed...)
	}
	b.add(mark)
}

// bracket is a corner mark whose legs run back along the sides of the ink; the
// inner corner lies at the origin, the outside is towards +x, +y.
func bracket(bar, leg float64) geom.Ring {
	back := bar - leg
	return geom.Ring{{X: bar, Y: bar}, {X: back, Y: bar}, {X: back, Y: 0}, {X: 0, Y: 0}, {X: 0, Y: back}, {X: bar, Y: back}}
}

// cross is a cross whose box has its lower left corner at the origin.
func cross(bar, span float64) geom.Ring {
	a, z := (span-bar)/2, (span+bar)/2
	return geom.Ring{
		{X: a, Y: 0}, {X: z, Y: 0}, {X: z, Y: a}, {X: span, Y: a}, {X: span, Y: z}, {X: z, Y: z},
		{X: z, Y: span}, {X: a, Y: span}, {X: a, Y: z}, {X: 0, Y: z}, {X: 0, Y: a}, {X: a, Y: a},
	}
}

func backwards(ring geom.Ring) geom.Ring {
	out := make(geom.Ring, len(ring))
	for i, p := range ring {
		out[len(ring)-1-i] = p
	}
	return out
}

func rectangle(r geom.Rect) geom.Path {
	var p geom.Path
	p.MoveTo(r.Min)
	p.LineTo(geom.Point{X: r.Max.X, Y: r.Min.Y})
	p.LineTo(r.Max)
	p.LineTo(geom.Point{X: r.Min.X, Y: r.Max.Y})
	p.Close()
	return p
}

// waste finds the rooms beside the ink, a hair from it, from the border and from
// the marks.
func (b *builder) waste(marks bool, span float64) {
	const hair = 1.0
	a := &b.art
	corner := 0.0 // how far a mark reaches along a side
	if marks && b.cuts() {
		bar, _ := b.markSizes()
		corner = span - bar - b.settings.MarkGap + hair
	}
	corner = math.Max(0, corner)
	x0, x1, y0, y1 := a.Ink.Min.X+corner, a.Ink.Max.X-corner, a.Ink.Min.Y+corner, a.Ink.Max.Y-corner
	a.Waste = [4]geom.Rect{
		{Min: geom.Point{X: x0, Y: a.Box.Min.Y + hair}, Max: geom.Point{X: x1, Y: a.Ink.Min.Y - hair}},
		{Min: geom.Point{X: x0, Y: a.Ink.Max.Y + hair}, Max: geom.Point{X: x1, Y: a.Box.Max.Y - hair}},
		{Min: geom.Point{X: a.Box.Min.X + hair, Y: y0}, Max: geom.Point{X: a.Ink.Min.X - hair, Y: y1}},
		{Min: geom.Point{X: a.Ink.Max.X + hair, Y: y0}, Max: geom.Point{X: a.Box.Max.X - hair, Y: y1}},
	}
	for i, r := range a.Waste {
		if r.Empty() || r.Min.Y > r.Max.Y {
			a.Waste[i] = geom.EmptyRect()
		}
	}
}
