package sheets

import (
	"cmp"
	"slices"
	"strings"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// lookView is one view of page 1 with the lengths that are measured on it.
type lookView struct {
	*look
	view       shirt.View
	outline    geom.Region // of the garment on the page
	body, trim geom.Region // of its body, and of what has the trim's colour
	left       bool        // the chain's words stand on its left
	chain      parts.Chain
	widths     []laneWidth
	numbers    []parts.Width // on the shirt
	extensions []extension
	also       []string    // lengths that have no place beside the thing
	taken      []geom.Rect // where texts stand
}

// extension is an extension line from the ink to the dimension line.
type extension struct{ ink, line geom.Point }

func (e extension) long() float64 { return e.line.Sub(e.ink).Norm() }

// chainAway is the distance of a chain from the middle of the tape, mm.
const chainAway = 8.6

// prepare decides what is measured and where, before anything is drawn,
// because extension lines lie under the lettering.
func (v *lookView) prepare() {
	v.outline = v.view.Silhouette().Flatten(0.05)
	v.body = v.clothOf(func(r garment.Role) bool { return r == garment.Body })
	v.trim = v.clothOf(shirt.IsTrim)
	chained := v.chainUp()
	v.laneUp()
	v.numberWidth()
	for _, p := range v.pieces() {
		if !slices.Contains(chained, p.Asked.Place) {
			v.also = append(v.also, pieceWord(p.Asked.Place)+" "+v.length(p.Height())+" high")
		}
	}
	v.extensions = withoutDoubles(v.extensions)
	v.view.Under = func(pen *page.Pen) {
		ground := &parts.Ground{Shape: v.view.Silhouette(), Panel: v.cloth.Body, On: *withoutHalo(&v.cloth.On)}
		for _, e := range v.extensions {
			parts.Extension(pen, e.ink, e.line, ground)
		}
	}
}

// clothOf returns the parts of the garment that are wanted, on the page.
func (v *lookView) clothOf(wanted func(garment.Role) bool) geom.Region {
	var out geom.Region
	for _, part := range v.view.Garment.View(v.view.Side) {
		if wanted(part.Role) {
			out = append(out, part.Path.Transform(v.view.Map()).Flatten(0.05)...)
		}
	}
	return out
}

// pieces returns the pieces on this side from the top down.
func (v *lookView) pieces() []sizes.Piece {
	var out []sizes.Piece
	for _, p := range v.player.Pieces {
		if p.Side == v.view.Side {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b sizes.Piece) int { return cmp.Compare(capLine(a), capLine(b)) })
	return out
}

// capLine returns the y of the top of the flat capitals or of the digits at the
// middle of the piece, mm of garment.
func capLine(p sizes.Piece) float64 { return p.At.Y - p.Height() }

// inward is 1 when the tape lies to the right of the view, else -1.
func (v *lookView) inward() float64 {
	if v.plan.tape > v.view.X {
		return 1
	}
	return -1
}

// at maps a point of the garment to the page.
func (v *lookView) at(x, y float64) geom.Point { return v.view.Map().Apply(geom.Point{X: x, Y: y}) }

// chainUp builds the chain of heights beside the tape and returns the places
// that it measures: pieces that stand clear below one another.
func (v *lookView) chainUp() []garment.Place {
	v.chain = parts.Chain{X: v.plan.tape + chainAway, Left: v.left}
	if v.left {
		v.chain.X = v.plan.tape - chainAway
	}
	var done []garment.Place
	bottom := v.view.Garment.Collar(v.view.Side)
	v.level(0, bottom)
	for _, p := range v.upright() {
		top := capLine(p)
		if top < bottom {
			continue
		}
		word := "gap"
		if len(done) == 0 {
			word = v.fromCollar(p)
		}
		v.step(word, top-bottom)
		v.level(v.levelEdge(p, true), top)
		v.step(chainWord(p.Asked.Place), p.Height())
		v.level(v.levelEdge(p, false), p.At.Y)
		bottom = p.At.Y
		done = append(done, p.Asked.Place)
	}
	if len(done) == 0 {
		v.chain, v.extensions = parts.Chain{}, nil
	}
	return done
}

// upright returns the pieces that a chain may measure, from the top down: none
// that is turned, and no mark on the chest that stands beside another piece.
func (v *lookView) upright() []sizes.Piece {
	all := slices.DeleteFunc(v.pieces(), func(p sizes.Piece) bool { return p.Turn != 0 })
	return slices.DeleteFunc(slices.Clone(all), func(p sizes.Piece) bool {
		return p.Asked.Place == garment.LeftChest && slices.ContainsFunc(all, func(o sizes.Piece) bool {
			return o.Asked.Place != p.Asked.Place && capLine(o) < p.At.Y && capLine(p) < o.At.Y
		})
	})
}

// level adds a level to the chain with its extension line from x; both are in
// mm of garment.
func (v *lookView) level(x, y float64) {
	from := v.at(x, y)
	v.chain.Levels = append(v.chain.Levels, from.Y)
	v.extensions = append(v.extensions, extension{from, geom.Point{X: v.chain.X, Y: from.Y}})
}

func (v *lookView) step(word string, mm float64) {
	v.chain.Steps = append(v.chain.Steps, parts.Step{Value: v.length(mm), Word: word})
}

// levelEdge is where the extension line of a piece's upper or lower level
// begins: at its edge towards the tape, but at its middle where the edge is
// not on that level, as with arches and the top of small letters.
func (v *lookView) levelEdge(p sizes.Piece, top bool) float64 {
	if p.Name != nil && (p.Name.Shape != fit.Straight || top && p.Name.Text != strings.ToUpper(p.Name.Text)) {
		return p.At.X
	}
	return p.At.X + v.inward()*p.InkWidth()/2
}

// fromCollar names the first step of a chain.
func (v *lookView) fromCollar(p sizes.Piece) string {
	from := "collar to "
	if v.view.Garment.Cut() == garment.Shorts {
		from = "waistband to "
	}
	switch p.Asked.Place {
	case garment.BackName, garment.FrontName:
		return from + "name"
	case garment.LeftChest:
		return from + "letters"
	}
	return from + "number"
}

// chainWord names the height of a piece in a chain.
func chainWord(p garment.Place) string {
	switch p {
	case garment.BackName:
		return "letters"
	case garment.FrontName:
		return "team name"
	case garment.LeftChest:
		return "left chest"
	}
	return "number"
}

// pieceWord names a piece.
func pieceWord(p garment.Place) string {
	switch p {
	case garment.BackName:
		return "name"
	case garment.FrontName:
		return "team name"
	case garment.BackNumber, garment.FrontNumber:
		return "number"
	}
	return string(p)
}

// printed prints a width that is held against a room. One that fits is rounded
// like the room, so that it never looks too wide; one that is too wide is
// rounded up, and where that hides the fault three decimals are printed.
func (v *lookView) printed(p sizes.Piece) string {
	if p.Name == nil || p.Name.Verdict != fit.Over {
		return v.length(p.InkWidth())
	}
	text := v.rounded(p.InkWidth(), length.Up)
	if text == v.length(p.Room.Width) {
		return length.Exact(p.InkWidth(), v.order.Units)
	}
	return text
}

// paint paints the view with its extension lines.
func (v *lookView) paint() error { return v.view.Paint(v.Pen) }

// measures draws the view's title and its lengths.
func (v *lookView) measures() {
	v.chainLine()
	for _, w := range v.widths {
		v.widthLine(w.Width, func(box geom.Rect) bool { return !v.crossesExtension(box) })
	}
	for _, w := range v.numbers {
		v.widthLine(w, func(box geom.Rect) bool { return v.onPlainCloth(box) })
	}
	v.title()
}

// title prints the name of the view at its left end, and below it what has no
// place beside the drawing.
func (v *lookView) title() {
	words := sentenceCase(v.view.Side.String())
	t := parts.Heading()
	box := v.view.Bounds()
	x, y := box.Min.X, v.titleLine()
	for _, r := range v.taken {
		if r.Max.Y > y-5 && r.Min.Y < y+2 {
			x = min(x, r.Min.X-v.Width(t.Style, words)-3)
		}
	}
	x = max(x, v.Left)
	wide := v.say(x, y, t, words)
	v.taken = append(v.taken, geom.Rect{Min: geom.Point{X: x, Y: y - 3.5}, Max: geom.Point{X: x + wide, Y: y + 1}})
	if len(v.pieces()) == 0 {
		v.say(x+wide+3, y, parts.Sentence().In(parts.Slate), "The "+v.view.Side.String()+" stays plain.")
	}
	for i, words := range v.also {
		at := y + 3.6*float64(i+1)
		wide := v.say(x, at, parts.Label(), words)
		v.taken = append(v.taken, geom.Rect{Min: geom.Point{X: x, Y: at - 2}, Max: geom.Point{X: x + wide, Y: at + 0.6}})
	}
}

// titleLine is the baseline of the view's title.
func (v *lookView) titleLine() float64 {
	const down = 5.2
	if v.plan.stacked {
		return v.view.Bounds().Min.Y - datumDown + down
	}
	return v.Top + down
}
