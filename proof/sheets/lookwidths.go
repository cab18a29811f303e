package sheets

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// laneWidth is a width in a lane above the shirt.
type laneWidth struct {
	parts.Width
	from [2]float64 // y at which the extension lines of both ends begin, mm of page
}

func (w laneWidth) long() float64 { return w.X2 - w.X1 }

// mostLanes is how many widths may stand above a shirt.
const mostLanes = 3

// laneUp gives each width above the shirt a lane, the shorter nearer.
func (v *lookView) laneUp() {
	for _, p := range v.pieces() {
		if p.Name == nil || p.Turn != 0 {
			continue
		}
		v.widths = append(v.widths, v.inkWidth(p))
		if p.Asked.Place == garment.BackName && p.Room.Width > 0 {
			v.widths = append(v.widths, v.roomWidth(p))
		}
	}
	slices.SortStableFunc(v.widths, func(a, b laneWidth) int { return cmp.Compare(a.long(), b.long()) })
	v.widths = v.widths[:min(len(v.widths), mostLanes)]
	top := min(v.view.Bounds().Min.Y, v.view.Y)
	for i := range v.widths {
		w := &v.widths[i]
		w.Y = top - parts.FirstLane - float64(i)*parts.LaneStep
		v.extensions = append(v.extensions,
			extension{geom.Point{X: w.X1, Y: w.from[0]}, geom.Point{X: w.X1, Y: w.Y}},
			extension{geom.Point{X: w.X2, Y: w.from[1]}, geom.Point{X: w.X2, Y: w.Y}})
	}
}

// inkWidth is the width of a name with its outlines; its extension lines rise
// from the outermost points.
func (v *lookView) inkWidth(p sizes.Piece) laneWidth {
	half := p.InkWidth() / 2
	a, b := v.at(p.At.X-half, p.At.Y), v.at(p.At.X+half, p.At.Y)
	w := laneWidth{Width: parts.Width{X1: a.X, X2: b.X, Value: v.printed(p), Word: pieceWord(p.Asked.Place)}}
	left, right := endTops(p)
	w.from = [2]float64{v.at(0, p.At.Y-left).Y, v.at(0, p.At.Y-right).Y}
	return w
}

// roomWidth is the room that a name may take; its extension lines begin in the
// middle of the letters, like posts.
func (v *lookView) roomWidth(p sizes.Piece) laneWidth {
	half := p.Room.Width / 2
	a, b := v.at(p.At.X-half, capLine(p)+p.Height()/2), v.at(p.At.X+half, 0)
	return laneWidth{
		Width: parts.Width{X1: a.X, X2: b.X, Value: v.length(p.Room.Width), Word: "room on " + withArticle(v.sizeLabel(v.player.Size))},
		from:  [2]float64{a.Y, a.Y},
	}
}

// endTops returns how high above the baseline the ink stands at its left and
// right ends, outlines included, mm.
func endTops(p sizes.Piece) (left, right float64) {
	const near = 2.0
	box := p.Ink().Bounds()
	left, right = math.Inf(-1), math.Inf(-1)
	for _, ring := range p.Ink().Flatten(0.1) {
		for _, q := range ring {
			if q.X < box.Min.X+near {
				left = math.Max(left, q.Y)
			}
			if q.X > box.Max.X-near {
				right = math.Max(right, q.Y)
			}
		}
	}
	return left + p.Reach(), right + p.Reach()
}

// numberWidth is measured on the shirt, below the number of the back.
func (v *lookView) numberWidth() {
	const below, textRoom, lineRoom = 34.0, 4.6, 9.0
	p, ok := v.player.Piece(garment.BackNumber)
	if !ok || v.view.Side != garment.Back {
		return
	}
	half := p.InkWidth() / 2
	foot := v.at(0, p.At.Y+p.Reach()).Y
	a, b := v.at(p.At.X-half, p.At.Y+below), v.at(p.At.X+half, p.At.Y+below)
	a.Y = max(a.Y, foot+textRoom)
	if v.at(0, v.view.Garment.Hem()).Y-a.Y < lineRoom {
		return
	}
	for _, x := range [2]float64{a.X, b.X} {
		v.extensions = append(v.extensions, extension{geom.Point{X: x, Y: foot}, geom.Point{X: x, Y: a.Y}})
	}
	v.numbers = append(v.numbers, parts.Width{
		X1: a.X, X2: b.X, Y: a.Y, Word: "number", Value: v.rounded(p.InkWidth(), length.Up), On: &v.cloth.On,
	})
}

// widthLine draws a width. Text that has no room over the line stands at its
// right; where it would be in the way there, the value goes over the line and
// the word under it, and a word without room is left out. Of a line too short
// even for that, the text stands where it is free.
func (v *lookView) widthLine(w parts.Width, free func(geom.Rect) bool) {
	bare := w
	bare.Value, bare.Word, bare.On = "", "", withoutHalo(w.On)
	parts.WidthLine(v.Pen, bare)
	v.taken = append(v.taken, boxOf(geom.Point{X: w.X1, Y: w.Y - 1}, geom.Point{X: w.X2, Y: w.Y + 1}))
	value, word := parts.Value(), parts.Label()
	if w.On != nil {
		value, word = value.In(w.On.Line), word.In(w.On.Line)
	}
	const air, over, drop, under = 4.0, 0.9, 1.0, 2.7
	line, mid := w.X2-w.X1, (w.X1+w.X2)/2
	both := []page.Span{word.Span(w.Word + "  "), value.Span(w.Value)}
	wide, narrow := v.Width(both[0].Style, both[0].Text), v.Width(both[1].Style, both[1].Text)
	wide += narrow
	x, right := v.besideLine(w, wide, free)
	switch {
	case line >= wide+air:
		v.spans(mid-wide/2, w.Y-over, w.On, both...)
	case right || line < narrow:
		v.spans(x, w.Y+drop, w.On, both...)
	default:
		v.spans(mid-narrow/2, w.Y-over, w.On, both[1])
		if half := v.Width(word.Style, w.Word) / 2; 2*half <= line {
			v.spans(mid-half, w.Y+under, w.On, word.Span(w.Word))
		}
	}
}

// besideLine finds the x of a text beside a width's line: at its right, else at
// its left, else past the extension lines at the right. right is true when it
// stands at the right, next to the line.
func (v *lookView) besideLine(w parts.Width, wide float64, free func(geom.Rect) bool) (x float64, right bool) {
	const away = 2.0
	tries := []float64{w.X2 + away, w.X1 - away - wide}
	for _, e := range v.extensions {
		if e.ink.X == e.line.X && e.ink.X > w.X2 {
			tries = append(tries, e.ink.X+away)
		}
	}
	for i, x := range tries {
		box := geom.Rect{Min: geom.Point{X: x, Y: w.Y - 1.5}, Max: geom.Point{X: x + wide, Y: w.Y + 1.6}}
		if free(box.Grow(wordClear)) {
			return x, i == 0
		}
	}
	return tries[0], false
}

// withoutHalo keeps the halo from lines: a thin line on cloth needs less
// contrast than text, and a band of 1 mm would read as a stripe of the shirt.
func withoutHalo(on *parts.OnShirt) *parts.OnShirt {
	if on == nil {
		return nil
	}
	plain := *on
	plain.Needs = false
	return &plain
}

// spans sets text from x on, over a halo where the cloth under it needs one.
func (v *lookView) spans(x, y float64, on *parts.OnShirt, spans ...page.Span) {
	from := x
	for _, s := range spans {
		if on != nil && on.Needs {
			halo := page.Line{Weight: 2 * parts.HaloWidth, Join: page.RoundJoin, Cap: page.RoundCap}
			v.StrokePath(v.Outlines(x, y, s.Style, s.Text), geom.Identity(), on.Halo, halo)
		}
		x += v.Width(s.Style, s.Text)
	}
	v.Spans(from, y, page.Start, spans...)
	v.taken = append(v.taken, geom.Rect{Min: geom.Point{X: from, Y: y - 2.4}, Max: geom.Point{X: x, Y: y + 0.7}})
}

// crossesExtension reports whether an upright extension line runs through a box.
func (v *lookView) crossesExtension(box geom.Rect) bool {
	return slices.ContainsFunc(v.extensions, func(e extension) bool {
		return meet(boxOf(e.ink, e.line).Grow(0.1), box)
	})
}

// onPlainCloth reports whether a box lies on the body's own colour.
func (v *lookView) onPlainCloth(box geom.Rect) bool {
	for _, x := range [3]float64{box.Min.X, box.Center().X, box.Max.X} {
		for _, y := range [2]float64{box.Min.Y, box.Max.Y} {
			if !v.bare(geom.Point{X: x, Y: y}) {
				return false
			}
		}
	}
	return true
}

// withoutDoubles drops extension lines that run too near beside a longer one.
func withoutDoubles(all []extension) []extension {
	return slices.DeleteFunc(slices.Clone(all), func(e extension) bool {
		return slices.ContainsFunc(all, func(o extension) bool {
			return o != e && alongside(e, o) && (o.long() > e.long())
		})
	})
}

// alongside reports whether two extension lines run the same way, too near
// each other to be told apart.
func alongside(a, b extension) bool {
	upright := func(e extension) bool { return e.ink.X == e.line.X }
	if upright(a) != upright(b) {
		return false
	}
	if !upright(a) {
		return math.Abs(a.ink.Y-b.ink.Y) < parts.ExtensionsApart
	}
	overlap := min(max(a.ink.Y, a.line.Y), max(b.ink.Y, b.line.Y)) - max(min(a.ink.Y, a.line.Y), min(b.ink.Y, b.line.Y))
	return math.Abs(a.ink.X-b.ink.X) < parts.ExtensionsApart && overlap > 0
}
