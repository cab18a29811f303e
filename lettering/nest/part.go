package nest

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/geom"
)

// slack absorbs the rounding of sums of lengths, in mm.
const slack = 1e-9

// farthest is the largest coordinate or length taken, in mm: a kilometre.
const farthest = 1e6

// FitError says that a piece fits no sheet of the stock, turned as it may be.
type FitError struct {
	ID            int
	Width, Height float64 // of the piece as drawn, mm
	Turned        bool    // a quarter turn was allowed, and does not help
	Stock         Stock
	// NeedWidth and NeedHeight are the smallest sheet or cut that holds the piece
	// with its margins, mm, turned the way that comes nearer to the stock.
	NeedWidth, NeedHeight float64
}

// Error names the piece, its size and the stock it needs.
func (e *FitError) Error() string { return fmt.Sprintf("piece %d is %s", e.ID, e.Why()) }

// Why is the error without the piece's ID, for readers who know the piece by its
// name: its size and the stock it needs.
func (e *FitError) Why() string {
	what, turned := "sheet", ""
	if e.Stock.Roll() {
		what = "roll"
	}
	if e.Turned {
		turned = ", turned or not"
	}
	name := ""
	if e.Stock.Name != "" {
		name = " (" + e.Stock.Name + ")"
	}
	need := fmt.Sprintf("a %s at least %s mm wide and %s mm long", what, round(e.NeedWidth), round(e.NeedHeight))
	if e.Stock.Roll() && e.Stock.MaxLength == 0 {
		need = fmt.Sprintf("a roll at least %s mm wide", round(e.NeedWidth))
	}
	return fmt.Sprintf("%s × %s mm and does not fit the %s%s%s: it needs %s, or narrower margins, or must be made smaller",
		round(e.Width), round(e.Height), what, name, turned, need)
}

// round prints a length with the tenths that a reader can use, never too small.
func round(mm float64) string { return fmt.Sprintf("%.1f", math.Ceil(mm*10-1e-6)/10) }

// part is an item made ready.
type part struct {
	Item
	box  geom.Rect
	area float64
}

func (p part) width() float64  { return p.box.Width() }
func (p part) height() float64 { return p.box.Height() }

// size returns the width and height of the part's box when turned.
func (p part) size(t Turn) (w, h float64) {
	if t == 90 || t == 270 {
		return p.height(), p.width()
	}
	return p.width(), p.height()
}

// move takes the part's shape, turned, to where the lower left corner of its box
// is at. Its entries are exact: no sine of a right angle.
func (p part) move(t Turn, at geom.Point) geom.Affine {
	lo, hi := p.box.Min, p.box.Max
	switch t {
	case 90:
		return geom.Affine{B: 1, C: -1, E: at.X + hi.Y, F: at.Y - lo.X}
	case 180:
		return geom.Affine{A: -1, D: -1, E: at.X + hi.X, F: at.Y + hi.Y}
	case 270:
		return geom.Affine{B: -1, C: 1, E: at.X - lo.Y, F: at.Y + hi.X}
	}
	return geom.Affine{A: 1, D: 1, E: at.X - lo.X, F: at.Y - lo.Y}
}

// turns lists the turns the part may make and still fit the room; boxes need
// only those that change the box.
func (p part) turns(r room, by By) []Turn {
	all := []Turn{0, 180, 90, 270}
	if by == Boxes {
		all = []Turn{0, 90}
	}
	return slices.DeleteFunc(all, func(t Turn) bool {
		w, h := p.size(t)
		allowed := t == 0 || p.Turns == QuarterTurns || p.Turns == HalfTurns && t == 180
		return !allowed || !r.holds(w, h)
	})
}

// room is the part of a sheet inside its margins; its height is infinite on a
// roll that may be cut at any length.
type room struct {
	w, h   float64
	gap    float64
	margin float64
	roll   bool
}

func roomOf(s Stock) room {
	r := room{w: s.Width - 2*s.Margin, h: s.Height - 2*s.Margin, gap: s.Gap, margin: s.Margin, roll: s.Roll()}
	if r.roll {
		r.h = s.MaxLength - 2*s.Margin
		if s.MaxLength == 0 {
			r.h = math.Inf(1)
		}
	}
	return r
}

func (r room) holds(w, h float64) bool { return w <= r.w+slack && h <= r.h+slack }

// prepare checks the stock and every item and measures the items.
func prepare(items []Item, stock Stock) ([]part, error) {
	if err := stock.check(); err != nil {
		return nil, err
	}
	r := roomOf(stock)
	var faults []error
	seen := make(map[int]bool, len(items))
	parts := make([]part, len(items))
	for i, item := range items {
		parts[i] = part{Item: item, box: item.Shape.Bounds(), area: item.Shape.Area()}
		if seen[item.ID] {
			faults = append(faults, fmt.Errorf("two pieces have the number %d: each needs its own", item.ID))
		}
		seen[item.ID] = true
		if err := parts[i].check(r, stock); err != nil {
			faults = append(faults, err)
		}
	}
	return parts, errors.Join(faults...)
}

func (s Stock) check() error {
	name := "the stock"
	if s.Name != "" {
		name = "stock " + s.Name
	}
	for _, l := range []struct {
		what string
		mm   float64
	}{{"width", s.Width}, {"height", s.Height}, {"longest cut", s.MaxLength}, {"margin", s.Margin}, {"gap", s.Gap}} {
		if !(l.mm >= 0 && l.mm <= farthest) {
			return fmt.Errorf("%s of %s is %g mm: give a length from 0 to %g mm", l.what, name, l.mm, farthest)
		}
	}
	if !s.Roll() && s.MaxLength > 0 {
		return fmt.Errorf("%s has both a height and a longest cut: leave out the height for a roll, the cut for sheets", name)
	}
	if r := roomOf(s); !(r.w > 0 && r.h > 0) {
		return fmt.Errorf("margins of %g mm leave nothing of %s: narrow them", s.Margin, name)
	}
	return nil
}

func (p part) check(r room, s Stock) error {
	for _, ring := range p.Shape {
		for _, q := range ring {
			if !(math.Abs(q.X) <= farthest && math.Abs(q.Y) <= farthest) {
				return fmt.Errorf("piece %d has a point at (%g, %g) mm: its shape is broken", p.ID, q.X, q.Y)
			}
		}
	}
	if !(p.width() > 0 && p.height() > 0) || !(p.area >= 0) {
		return fmt.Errorf("piece %d has no shape to cut: leave it out", p.ID)
	}
	if p.Turns.String() == "" {
		return fmt.Errorf("piece %d has the unknown turns %d: use upright, half turns or quarter turns", p.ID, p.Turns)
	}
	if len(p.turns(r, Boxes)) > 0 {
		return nil
	}
	e := &FitError{ID: p.ID, Width: p.width(), Height: p.height(), Turned: p.Turns == QuarterTurns, Stock: s}
	w, h := p.size(0)
	tw, th := p.size(90)
	if e.Turned && r.short(tw, th) < r.short(w, h) {
		w, h = tw, th
	}
	e.NeedWidth, e.NeedHeight = w+2*s.Margin, h+2*s.Margin
	return e
}

// short says by how much a box sticks out of the room, both ways added.
func (r room) short(w, h float64) float64 { return math.Max(0, w-r.w) + math.Max(0, h-r.h) }

// String names the turns; empty for a value that is none of them.
func (t Turns) String() string {
	switch t {
	case Upright:
		return "upright"
	case HalfTurns:
		return "half turns"
	case QuarterTurns:
		return "quarter turns"
	}
	return ""
}

func identity(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// sorted returns the order of the parts by a falling key; ties by ID.
func sorted(parts []part, key func(part) float64) []int {
	out := identity(len(parts))
	slices.SortFunc(out, func(a, b int) int {
		return cmp.Or(cmp.Compare(key(parts[b]), key(parts[a])), cmp.Compare(parts[a].ID, parts[b].ID))
	})
	return out
}
