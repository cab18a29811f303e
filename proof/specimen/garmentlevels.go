package specimen

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// Lengths beside the views, mm.
const (
	levelAway  = 6.0  // from the view to the line of levels
	levelText  = 2.2  // from that line to the text
	levelApart = 6.6  // between two texts, which have two lines each
	seamAway   = 2.6  // a length along a seam stands so far off it
	onCloth    = 3.0  // a height on the cloth stands so far beside its line
	onShare    = 0.72 // its text, where the cloth is wide / its length
	levelLine  = 4.4  // the text of a nearly level line stands so far under it
)

// levels draws what runs down. What starts at the datum is a level on one
// upright line beside the view; the rest is drawn on the cloth.
func (d *drawnGarment) levels(p *page.Pen, v flat, taken []garment.Taken) {
	var column []garment.Taken
	for _, t := range taken {
		if t.Run != garment.Down {
			continue
		}
		if b := t.Path.Bounds(); math.Abs(b.Min.Y) > 1e-6 {
			d.onTheCloth(p, v, t)
		} else {
			column = append(column, t)
		}
	}
	if len(column) == 0 {
		return
	}
	slices.SortStableFunc(column, func(a, b garment.Taken) int { return cmp.Compare(a.Path.Bounds().Max.Y, b.Path.Bounds().Max.Y) })
	x, out := v.bounds().Min.X-levelAway, -1.0
	if v.side == garment.Back {
		x, out = v.bounds().Max.X+levelAway, 1.0
	}
	foot := v.point(column[len(column)-1].Path.Bounds().Max).Y
	p.Line(x, v.y, x, foot, parts.Ink, page.Line{Weight: parts.DimensionLine})
	d.datum(p, v, x, out)
	at := d.spread(v, column)
	for i, t := range column {
		d.level(p, v, t, x, out, at[i])
	}
}

// level draws one level: from where it is measured out to the line at x, and its
// text at y on the far side of it.
func (d *drawnGarment) level(p *page.Pen, v flat, t garment.Taken, x, out, y float64) {
	align := page.End
	if out > 0 {
		align = page.Start
	}
	b := t.Path.Bounds()
	q := v.point(geom.Point{X: b.Center().X, Y: b.Max.Y})
	parts.Extension(p, q, geom.Point{X: x, Y: q.Y}, nil)
	parts.DimensionTick(p, x, q.Y, parts.Ink)
	text := x + out*levelText
	if math.Abs(y-q.Y) > 0.3 { // its own place is taken
		p.Line(x, q.Y, text, y, parts.Ink, page.Line{Weight: parts.Hair})
		text += out * 0.6
	}
	p.Text(text, y+0.3, parts.Value().To(align).Style, d.units.words(b.Height()))
	p.Text(text, y+3.1, parts.Label().To(align).Style, t.Measure)
}

// datum draws the level that heights are counted from.
func (d *drawnGarment) datum(p *page.Pen, v flat, x, out float64) {
	p.Line(x-out*1.6, v.y, v.x, v.y, parts.Ink, page.Line{Weight: parts.Hair, Dash: parts.DatumDash()})
	parts.DimensionTick(p, x, v.y, parts.Ink)
}

// spread gives each text a place of its own, as near to its level as the texts
// above allow.
func (d *drawnGarment) spread(v flat, column []garment.Taken) []float64 {
	out := make([]float64, len(column))
	free := v.y - 2
	for i, t := range column {
		out[i] = math.Max(free, v.point(t.Path.Bounds().Max).Y)
		free = out[i] + levelApart
	}
	return out
}

// onTheCloth draws a height beside the line that it is taken along.
func (d *drawnGarment) onTheCloth(p *page.Pen, v flat, t garment.Taken) {
	b := t.Path.Bounds()
	from, to := v.point(b.Min), v.point(b.Max)
	x := from.X + onCloth
	p.Line(x, from.Y, x, to.Y, parts.Ink, page.Line{Weight: parts.DimensionLine})
	parts.DimensionTick(p, x, from.Y, parts.Ink)
	parts.DimensionTick(p, x, to.Y, parts.Ink)
	share := onShare
	if t.Measure == "placket length" { // the chest is measured across its lower part
		share = 1 - onShare
	}
	mid := from.Y + share*(to.Y-from.Y)
	p.Text(x+levelText, mid-0.1, parts.Value().Style, d.units.words(b.Height()))
	p.Text(x+levelText, mid+2.7, parts.Label().Style, t.Measure)
}

// seams draws what runs along a seam or a fold, as a line beside it.
func (d *drawnGarment) seams(p *page.Pen, v flat, taken []garment.Taken) {
	for _, t := range taken {
		if t.Run != garment.Along {
			continue
		}
		line := beside(polyline(t.Path.Transform(v.at())), v.x)
		var path geom.Path
		path.MoveTo(line[0])
		for _, q := range line[1:] {
			path.LineTo(q)
		}
		p.StrokePath(path, geom.Identity(), parts.Ink, page.Line{Weight: parts.DimensionLine, Join: page.RoundJoin})
		first, last := line[0], line[len(line)-1]
		parts.DimensionTick(p, first.X, first.Y, parts.Ink)
		parts.DimensionTick(p, last.X, last.Y, parts.Ink)
		mid := halfway(line)
		if math.Abs(last.Y-first.Y) < math.Abs(last.X-first.X)/3 {
			p.Spans(mid.X, mid.Y+levelLine, page.Middle, parts.Label().Span(t.Measure+"  "), parts.Value().Span(d.units.words(pathLength(t.Path))))
			continue
		}
		p.Text(mid.X+levelText, mid.Y-1.6, parts.Value().Style, d.units.words(pathLength(t.Path)))
		p.Text(mid.X+levelText, mid.Y+1.2, parts.Label().Style, t.Measure)
	}
}

// polyline flattens one open contour.
func polyline(path geom.Path) []geom.Point {
	const steps = 24
	var out []geom.Point
	for _, s := range path {
		switch s.Op {
		case geom.Move, geom.Line:
			out = append(out, s.P[0])
		case geom.Cube:
			a := out[len(out)-1]
			for i := 1; i <= steps; i++ {
				t := float64(i) / steps
				u := 1 - t
				out = append(out, a.Mul(u*u*u).Add(s.P[0].Mul(3*u*u*t)).Add(s.P[1].Mul(3*u*t*t)).Add(s.P[2].Mul(t*t*t)))
			}
		}
	}
	return out
}

func pathLength(path geom.Path) float64 {
	line, sum := polyline(path), 0.0
	for i := 1; i < len(line); i++ {
		sum += line[i].Sub(line[i-1]).Norm()
	}
	return sum
}

// halfway is the point in the middle of a line's length.
func halfway(line []geom.Point) geom.Point {
	total := 0.0
	for i := 1; i < len(line); i++ {
		total += line[i].Sub(line[i-1]).Norm()
	}
	left := total / 2
	for i := 1; i < len(line); i++ {
		l := line[i].Sub(line[i-1]).Norm()
		if l >= left && l > 0 {
			return line[i-1].Lerp(line[i], left/l)
		}
		left -= l
	}
	return line[len(line)-1]
}

// beside moves a line off its seam, away from the centre line at x.
func beside(line []geom.Point, x float64) []geom.Point {
	out := make([]geom.Point, len(line))
	for i := range line {
		a, b := line[max(i-1, 0)], line[min(i+1, len(line)-1)]
		d := b.Sub(a)
		n := geom.Point{X: d.Y, Y: -d.X}
		if n.X < 0 {
			n = n.Mul(-1)
		}
		if l := n.Norm(); l > 0 {
			n = n.Mul(seamAway / l)
		}
		out[i] = line[i].Add(n)
	}
	return out
}
