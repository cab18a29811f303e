package sizes

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"yokeline/lettering/fit"
	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

// Split is how a name lies to the opening of a full placket: parted there, the
// halves on one baseline, each ending where the placket's clearance begins; or
// whole, across it.
type Split struct {
	Left, Right string   // the letters on the viewer's left and right; Right empty for a whole name
	Gap         float64  // between the halves' finished shapes: the placket and twice its clearance, mm
	Straddle    []string // letters that lie on that gap, or would if the name were whole
	// Shift is how far the middle of the name lies to the viewer's right of the
	// opening's, mm: halves of unlike width are parted at the opening all the same.
	Shift float64
}

// Whole reports a name that lies across the opening unparted.
func (s *Split) Whole() bool { return s.Right == "" }

// partRefits is how often a parted name is made smaller until its wider half
// fits: widths change almost in step, so a few are enough.
const partRefits = 12

// parted fits a name and parts it at the opening: after as many letters as the
// job says, or between those that are nearest the middle. The wider half decides
// how large the letters are. The widths of the name are those of both halves with
// what lies between.
func (w *worker) parted(piece *Piece, l *layout, at *spot, i int, text string, height float64) (*fit.Name, error) {
	room := at.limit/2 - at.opening
	inner := 2 * room
	for range partRefits {
		whole, err := w.name(l, i, text, inner, height)
		if err != nil {
			return nil, err
		}
		c := cutAt(piece, whole, at.opening)
		if c.wider() <= room {
			return c.finish(piece, at), nil
		}
		if whole.Verdict == fit.Over {
			piece.Remedies = w.remedies(l, i, text)
			return c.finish(piece, at), nil
		}
		inner *= room / c.wider() * (1 - 1e-6)
	}
	whole, err := w.name(l, i, text, inner, height)
	if err != nil {
		return nil, err
	}
	return cutAt(piece, whole, at.opening).finish(piece, at), nil
}

// across notes which letters of a name that is left whole lie on the opening.
func (w *worker) across(piece *Piece, l *layout, at *spot, n *fit.Name) {
	reach := piece.Reach()
	half := l.garment.Opening(at.placement, at.top-reach, at.top+at.height+at.drop+reach)
	if half == 0 {
		return
	}
	if names := straddling(n, half, reach); len(names) > 0 {
		piece.Split = &Split{Left: n.Text, Gap: 2 * half, Straddle: names}
	}
}

// shift is how far the middle of the piece lies beside that of its place, mm.
func (p Piece) shift() float64 {
	if p.Split == nil {
		return 0
	}
	return p.Split.Shift
}

// RoomCentre returns the x, on the garment, that the piece's room is centred on, mm.
func (p Piece) RoomCentre() float64 { return p.At.X - p.shift() }

// cut is a name parted in two.
type cut struct {
	name    *fit.Name
	halves  [2]geom.Path
	boxes   [2]geom.Rect // with outlines
	words   [2]string
	half    float64 // of the opening, mm
	straddl []string
}

// cutAt parts a name. One letter cannot be parted and goes left.
func cutAt(piece *Piece, n *fit.Name, half float64) cut {
	letters, reach := n.Letters(), piece.Reach()
	c := cut{name: n, half: half, straddl: straddling(n, half, reach)}
	after := piece.Asked.SplitAt
	if after == 0 {
		after = nearestMiddle(letters)
	}
	after = min(after, len(letters))
	for k, some := range [2][]geom.Path{letters[:after], letters[after:]} {
		c.halves[k] = slices.Concat(some...)
		c.boxes[k] = geom.EmptyRect()
		if len(some) > 0 {
			c.boxes[k] = finishedBox(c.halves[k], piece)
		}
	}
	names := letterNames(n.Text, len(letters))
	c.words = [2]string{strings.Join(names[:after], ""), strings.Join(names[after:], "")}
	return c
}

// finishedBox is the box of curves with the piece's outlines.
func finishedBox(p geom.Path, piece *Piece) geom.Rect {
	all := layers(piece.Asked)
	if !mitred(all) {
		return p.Bounds().Grow(outline.Reach(all))
	}
	return outline.ExtentOf(p.Bounds(), p.Flatten(outline.Tolerance/2), all)
}

// nearestMiddle returns how many letters lie left of the gap that is nearest the
// middle of the name.
func nearestMiddle(letters []geom.Path) int {
	best, off := len(letters), math.Inf(1)
	for k := 1; k < len(letters); k++ {
		gap := (letters[k-1].Bounds().Max.X + letters[k].Bounds().Min.X) / 2
		if math.Abs(gap) < off-sameHeight {
			best, off = k, math.Abs(gap)
		}
	}
	return best
}

// straddling names the letters of a whole name that lie on the opening.
func straddling(n *fit.Name, half, reach float64) []string {
	letters := n.Letters()
	names := letterNames(n.Text, len(letters))
	var out []string
	for k, letter := range letters {
		if box := letter.Bounds(); box.Min.X-reach < half && box.Max.X+reach > -half {
			out = append(out, names[k])
		}
	}
	return out
}

// letterNames names n drawn letters of a text; by their place where ligatures
// make fewer of them than the text has.
func letterNames(text string, n int) []string {
	var names []string
	for _, r := range text {
		switch {
		case unicode.IsSpace(r):
		case unicode.Is(unicode.M, r) && len(names) > 0:
			names[len(names)-1] += string(r)
		default:
			names = append(names, string(r))
		}
	}
	if len(names) == n {
		return names
	}
	names = make([]string, n)
	for k := range names {
		names[k] = "(" + strconv.Itoa(k+1) + ")"
	}
	return names
}

func (c cut) wider() float64 { return math.Max(c.boxes[0].Width(), c.boxes[1].Width()) }

// finish moves the halves apart and gives the name the figures of both.
func (c cut) finish(piece *Piece, at *spot) *fit.Name {
	var moves [2]float64
	moves[0] = -c.half - c.boxes[0].Max.X
	from, to := c.boxes[0].Min.X+moves[0], -c.half
	if !c.boxes[1].Empty() {
		moves[1] = c.half - c.boxes[1].Min.X
		to = c.boxes[1].Max.X + moves[1]
	}
	shift := (from + to) / 2
	for k, half := range c.halves {
		piece.Drawn = append(piece.Drawn, half.Transform(geom.Translate(moves[k]-shift, 0))...)
	}
	piece.Split = &Split{Left: c.words[0], Right: c.words[1], Gap: 2 * c.half, Straddle: c.straddl, Shift: shift}
	n := *c.name
	bare := n.BareInkWidth - n.InkWidth
	n.InkWidth, n.Limit, n.WouldFit, n.OverBy = to-from, at.limit, nil, 0
	n.BareInkWidth = n.InkWidth + bare
	if n.Verdict == fit.Over {
		n.OverBy = math.Max(0, 2*(c.half+c.wider())-at.limit)
	}
	return &n
}
