package sheets

import (
	"fmt"
	"math"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

func (f *frame) drawAcross(a *across, side garment.Side) error {
	long, above, wide := 0.0, 0.0, 0.0
	for _, i := range a.shown {
		s := lookSizeOf(a.wearers[i].Garment)
		long, above, wide = max(long, s.length), max(above, s.above), wide+s.width
	}
	y := f.Top + acrossDatum + above*a.scale
	tape := f.Left + parts.TapeWidth/2
	gap := (f.Right - tape - parts.TapeWidth - wide*a.scale) / float64(len(a.shown))
	x := tape + parts.TapeWidth + 0.8*gap
	f.Line(tape+parts.TapeWidth/2, y, f.Right, y, parts.Ink, page.Line{Weight: parts.Hair, Dash: parts.DatumDash()})
	parts.Tape(f.Pen, tape, y, y+long*a.scale, a.scale, f.order.Units)
	foot, beside := y+long*a.scale, f.besideNumbers(a, side)
	for k, i := range a.shown {
		p := a.wearers[i]
		w := lookSizeOf(p.Garment).width * a.scale
		v := f.acrossView(a, i, side)
		v.view.X, v.view.Y, v.beside = x+w/2, y, beside
		if err := v.draw(); err != nil {
			return fmt.Errorf("size %s: %w", p.Size, err)
		}
		f.acrossCaption(a, k, p, side, x+w/2, foot)
		x += w + gap
	}
	f.rule(foot + acrossRule)
	f.drawTable(a, a.tables[side], foot+acrossRule)
	if side == a.sides[0] {
		f.drawNest(a, side, foot+acrossRule)
	} else {
		f.drawReading(a, foot+acrossRule)
	}
	f.foot(f.acrossNote(a), a.scale)
	return nil
}

// acrossCaption names the size under a shirt and says how its name came out.
func (f *frame) acrossCaption(a *across, k int, p sizes.Player, side garment.Side, x, foot float64) {
	f.Spans(x, foot+acrossSize, page.Middle, parts.Heading().Span(f.sizeLabel(p.Size)), wayType().In(parts.Slate).Span("  "+a.roleOf(k)))
	if v, ok := f.acrossVerdictOf(p, side); ok {
		parts.VerdictLine(f.Pen, x-f.verdictWidth(v)/2, foot+acrossVerdict, v.mark, v.rest)
	}
}

// acrossView is one shirt of the page of sizes with what is measured on it.
type acrossView struct {
	*frame
	player sizes.Player
	view   shirt.View
	beside float64 // side of the number that its height stands on: 1 right, -1 left
}

func (f *frame) acrossView(a *across, i int, side garment.Side) *acrossView {
	p := a.wearers[i]
	return &acrossView{frame: f, player: p, view: shirt.View{Garment: p.Garment, Side: side, Pieces: p.Pieces, Cloth: f.cloth, Scale: a.scale}}
}

// besideNumbers is the side of the numbers on which their height can be measured
// on the most shirts, the right one of equals.
func (f *frame) besideNumbers(a *across, side garment.Side) float64 {
	var fits [2]int
	for _, i := range a.shown {
		v := f.acrossView(a, i, side)
		fits[0] += count(v.hasRoomBeside(1))
		fits[1] += count(v.hasRoomBeside(-1))
	}
	if fits[1] > fits[0] {
		return -1
	}
	return 1
}

// hasRoomBeside reports whether the height of the number can be measured on one
// side of it: the value stays on the body.
func (v *acrossView) hasRoomBeside(beside float64) bool {
	p, ok := v.number()
	_, end := v.heightLine(p, beside)
	return ok && beside*end < v.player.Garment.Measures().ChestHalf/2*v.view.Scale
}

func (v *acrossView) draw() error {
	name, named := v.top()
	lane := min(v.view.Bounds().Min.Y, v.view.Y) - parts.FirstLane
	half := 0.0
	if named {
		half = name.Name.Limit / 2
		v.view.Under = func(pen *page.Pen) {
			ground := &parts.Ground{Shape: v.view.Silhouette(), Panel: v.cloth.Body, On: *withoutHalo(&v.cloth.On)}
			for _, side := range [2]float64{-1, 1} {
				from := v.view.Map().Apply(geom.Point{X: name.RoomCentre() + side*half, Y: capLine(name) + name.Height() + 20})
				parts.Extension(pen, from, geom.Point{X: from.X, Y: lane}, ground)
			}
		}
	}
	if err := v.view.Paint(v.Pen); err != nil {
		return err
	}
	if named {
		x := v.view.Map().Apply(geom.Point{X: name.RoomCentre()}).X
		parts.WidthLine(v.Pen, parts.Width{X1: x - half*v.view.Scale, X2: x + half*v.view.Scale, Y: lane, Value: v.length(2 * half), Word: "room"})
	}
	v.numberHeight()
	v.chest()
	return nil
}

// top returns the highest level name on the side that has a room.
func (v *acrossView) top() (sizes.Piece, bool) {
	for _, p := range v.player.Pieces {
		if p.Side == v.view.Side && p.Name != nil && p.Turn == 0 && p.Name.Limit > 0 {
			return p, true
		}
	}
	return sizes.Piece{}, false
}

// number returns the number on the side whose height is measured.
func (v *acrossView) number() (sizes.Piece, bool) {
	for _, p := range v.player.Pieces {
		if p.Side == v.view.Side && p.Number != nil && p.Turn == 0 {
			return p, true
		}
	}
	return sizes.Piece{}, false
}

// heightLine is where the line beside a number stands and how far its value
// reaches, mm on the page from the view's own x.
func (v *acrossView) heightLine(p sizes.Piece, beside float64) (x, end float64) {
	const away, after, air = 14.0, 1.6, 1.0
	if p.Number == nil {
		return 0, 0
	}
	x = (p.At.X + beside*(p.InkWidth()/2+away)) * v.view.Scale
	return x, x + beside*(after+v.Width(parts.Value().Style, v.length(p.Height()))+air)
}

// numberHeight is measured on the shirt, beside the number.
func (v *acrossView) numberHeight() {
	const start, past, air = 3.0, 1.4, 1.0
	p, ok := v.number()
	if !ok || !v.hasRoomBeside(v.beside) {
		return
	}
	at, end := v.heightLine(p, v.beside)
	m, on := v.view.Map(), v.cloth.On
	x, foot := v.view.X+at, m.Apply(p.At).Y
	head := foot - p.Height()*v.view.Scale
	v.Line(x, head, x, foot, on.Line, page.Line{Weight: parts.DimensionLine})
	from := m.Apply(geom.Point{X: p.At.X + v.beside*(p.InkWidth()/2+start)}).X
	for _, y := range [2]float64{head, foot} {
		v.Line(from, y, x+v.beside*past, y, on.Line, page.Line{Weight: parts.Hair})
		parts.DimensionTick(v.Pen, x, y, on.Line)
	}
	text := v.length(p.Height())
	left := v.view.X + end - air
	if v.beside > 0 {
		left -= v.Width(parts.Value().Style, text)
	} else {
		left += 2 * air
	}
	v.onCloth(left, (head+foot)/2+1, text)
}

// onCloth sets a value on the shirt, over a halo where the cloth needs one.
func (v *acrossView) onCloth(x, y float64, text string) {
	t, on := parts.Value(), v.cloth.On
	if on.Needs {
		v.StrokePath(v.Outlines(x, y, t.Style, text), geom.Identity(), on.Halo, page.Line{Weight: 2 * parts.HaloWidth, Join: page.RoundJoin, Cap: page.RoundCap})
	}
	v.say(x, y, t.In(on.Line), text)
}

// chest is measured across the body, under everything that stands on it.
func (v *acrossView) chest() {
	const overHem, inset = 70.0, 0.985
	chest := v.view.Garment.Measures().ChestHalf
	if chest == 0 || v.view.Side != garment.Back {
		return
	}
	level, low := v.view.Garment.Hem()-overHem, 0.0
	for _, p := range v.player.Pieces {
		if p.Side == v.view.Side && p.Turn == 0 {
			low = math.Max(low, p.At.Y+p.Reach()+underBaseline(p))
		}
	}
	y := v.view.Y + level*v.view.Scale
	if (level-low)*v.view.Scale < 4.5 {
		return
	}
	half := chest / 2 * inset * v.view.Scale
	parts.WidthLine(v.Pen, parts.Width{X1: v.view.X - half, X2: v.view.X + half, Y: y, Value: v.length(chest), Word: "chest, flat", On: &v.cloth.On})
}

// The block at the right of the table, mm.
const (
	nestHigh   = 45.0
	nestTop    = 5.0 // head to the drawing
	nestPitch  = 5.0
	nestLeast  = 4.4 // narrowest pitch at which every size has its letters
	nestColumn = 10  // of the grid
)

// drawNest draws all sizes one inside the other.
func (f *frame) drawNest(a *across, side garment.Side, y float64) {
	y += acrossHead
	left := f.X(nestColumn) - 3
	f.say(left, y, parts.Value(), nestTitle(len(a.counts)))
	order := a.bySize()
	largest := a.wearers[order[len(order)-1]].Garment
	k := f.nestScale(largest, left, f.Bottom-y-nestTop-1)
	x, top := (left+f.Right)/2, y+nestTop-min(0, largest.Bounds(side).Min.Y*k)
	for n := len(order) - 1; n >= 0; n-- {
		i := order[n]
		at := geom.Affine{A: k, D: k, E: x, F: top}
		path := a.wearers[i].Garment.Silhouette(side)
		fill, line := page.White, page.Line{Weight: parts.DimensionLine, Join: page.RoundJoin}
		if n == 0 {
			fill = parts.Tile
		}
		if n%2 == 1 {
			line.Dash = []float64{0.9, 0.5}
		}
		if a.counts[i].size == a.common {
			line.Weight, line.Dash = parts.Outline, nil
		}
		f.FillPath(path, at, fill)
		f.StrokePath(path, at, parts.Ink, line)
	}
	f.nestLetters(a, order, side, k, x, top)
}

func nestTitle(sizes int) string {
	if sizes == 2 {
		return "Both, one inside the other"
	}
	return "All " + strings.TrimSpace(inWords(sizes, "", "")) + ", one inside the other"
}

// bySize returns the sizes by the area they take, the smallest first.
func (a *across) bySize() []int {
	all := make([]int, len(a.counts))
	for i := range all {
		all[i] = i
	}
	area := func(i int) float64 {
		s := lookSizeOf(a.wearers[i].Garment)
		return s.width * s.length
	}
	for i := 1; i < len(all); i++ {
		for k := i; k > 0 && area(all[k]) < area(all[k-1]); k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
	return all
}

// nestScale is 1 : 16, or the next at which the largest fits.
func (f *frame) nestScale(largest *garment.Garment, left, high float64) float64 {
	s := lookSizeOf(largest)
	for _, n := range [...]float64{16, 18, 20, 24} {
		if (s.above+s.length)/n <= min(nestHigh, high) && s.width/n <= f.Right-left {
			return 1 / n
		}
	}
	return min(min(nestHigh, high)/(s.above+s.length), (f.Right-left)/s.width)
}

// nestLetters sets each size's letters in a gap of its hem line, side by side;
// of many sizes only those that are drawn above.
func (f *frame) nestLetters(a *across, order []int, side garment.Side, k, x, top float64) {
	hem := a.wearers[order[0]].Garment.Measures().ChestHalf * k * 0.8
	pitch := math.Min(nestPitch, hem/float64(len(order)))
	var rows []int
	for n, i := range order {
		drawn := false
		for _, s := range a.shown {
			drawn = drawn || s == i
		}
		if pitch >= nestLeast || drawn {
			rows = append(rows, n)
		}
	}
	if pitch < nestLeast {
		pitch = math.Min(nestPitch*1.5, hem/float64(len(rows)))
	}
	for c, n := range rows {
		i := order[n]
		label := f.sizeLabel(a.counts[i].size)
		t := parts.Label().In(parts.Ink)
		if a.counts[i].size == a.common {
			t = t.Bold()
		}
		at := (float64(c) - float64(len(rows)-1)/2) * pitch
		y := top + hemAt(a.wearers[i].Garment, side, at/k)*k
		wide, ground := f.Width(t.Style, label)+1, page.White
		if n == 0 {
			ground = parts.Tile
		}
		f.FillRect(x+at-wide/2, y-1.15, wide, 2.3, ground)
		f.say(x+at, y+0.8, t.To(page.Middle), label)
	}
}

// hemAt returns the lowest level of the garment at a distance from its centre
// line, mm.
func hemAt(g *garment.Garment, side garment.Side, x float64) float64 {
	low := 0.0
	for _, ring := range g.Silhouette(side).Flatten(0.5) {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if p.X > q.X {
				p, q = q, p
			}
			if x < p.X || x > q.X || p.X == q.X {
				continue
			}
			low = math.Max(low, p.Y+(q.Y-p.Y)*(x-p.X)/(q.X-p.X))
		}
	}
	return low
}

// drawReading says from how far the commonest size is read.
func (f *frame) drawReading(a *across, y float64) {
	p := a.wearers[a.shown[len(a.shown)/2]]
	text := f.readingSentence(p)
	if text == "" {
		return
	}
	left := f.X(nestColumn) - 3
	y += acrossHead
	f.say(left, y, parts.Value(), "From how far it is read, size "+f.sizeLabel(p.Size))
	y = f.paragraph(left, y+5.2, f.Right-left, parts.Caption(), text)
	f.paragraph(left, y+1.2, f.Right-left, parts.Label(), "Standing still in good light. "+readingSource)
}
