package sizes

import (
	"math"
	"slices"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
)

// Remedy is a change with which a piece fits that has no room where it was asked
// to lie, whose arch is too tight, or that is too wide once it is parted at a
// placket. Each was
// tried, but for leaving it off, for this player alone; no other piece of the size
// loses its room by it.
type Remedy struct {
	Kind   string
	Size   string  // for NextSize: youth L
	Rise   float64 // for SmallerRise, mm
	Radius float64 // for LargerRadius, mm
	Height float64 // for LowerLetters and LowerDigits, mm
	Below  float64 // for FurtherDown: from the collar, mm
}

// The kinds of Remedy, the smallest change first. LeaveOff is always among them.
const (
	SmallerRise  = "smaller rise"
	LargerRadius = "larger radius"
	StraightSet  = "straight"
	LowerLetters = "lower letters"
	LowerDigits  = "lower digits"
	FurtherDown  = "further down"
	NextSize     = "next size"
	LeaveOff     = "leave it off"
)

// Words tells the remedy. Its lengths lie on steps that the unit of the job shows
// exactly, so say may round them as it likes.
func (r Remedy) Words(say func(mm float64) string) string {
	switch r.Kind {
	case SmallerRise:
		return "rise " + say(r.Rise)
	case LargerRadius:
		return "radius " + say(r.Radius)
	case LowerLetters, LowerDigits:
		return say(r.Height) + " high"
	case FurtherDown:
		return say(r.Below) + " below the collar"
	case NextSize:
		return "size " + r.Size
	}
	return r.Kind
}

// remedies tries what would give piece i room. The search is by the steps that a
// shop writes lengths in. The result is shared and must not be changed.
func (w *worker) remedies(l *layout, i int, text string) []Remedy {
	if !w.plan.waysOut && !w.plan.numberWays {
		return nil
	}
	found, _ := kept(w.mended, key{piece: i, text: text, size: l.garment.Size()}, func() ([]Remedy, error) {
		t := trial{w.still(), l, i, text}
		var out []Remedy
		for _, find := range []func() (Remedy, bool){t.smallerRise, t.largerRadius, t.straight, t.lower, t.furtherDown, t.nextSize} {
			if r, ok := find(); ok {
				out = append(out, r)
			}
		}
		return append(out, Remedy{Kind: LeaveOff}), nil
	})
	return *found
}

// trial tries changes of one piece on one size, for one player's text.
type trial struct {
	*worker
	l    *layout
	i    int
	text string
}

// with reports whether the piece fits once it is changed; without a text, whether
// it has room.
func (t trial) with(size garment.Size, text string, change func(*order.Piece)) bool {
	o, p := *t.plan.order, *t.plan
	o.Pieces, o.Players = slices.Clone(o.Pieces), nil
	if text != "" {
		o.Players = []order.Player{{Name: text, Number: "88", Size: size, SizeKnown: true}}
	}
	change(&o.Pieces[t.i])
	p.order = &o
	w := p.newWorker()
	w.fitter, w.sizer = t.fitter, t.sizer
	l, err := w.layout(size)
	if err != nil {
		return false
	}
	for k, s := range l.spots {
		if s.noRoom && (k == t.i || size != t.l.garment.Size() || !t.l.spots[k].noRoom) {
			return false
		}
	}
	if text == "" {
		return true
	}
	piece, err := w.piece(l, t.i, text, l.spots[t.i].height)
	switch {
	case err != nil || piece.NoRoom:
		return false
	case piece.Number != nil:
		return piece.Number.Verdict != numeral.Over
	}
	return piece.Name.Verdict != fit.Over
}

// step is the step that lengths are tried in, mm.
func (t trial) step() float64 {
	if t.plan.order.Units == length.Inch {
		return 25.4 / 8
	}
	return 5
}

// steps returns the first of n lengths, a step apart from one, with which the
// piece fits. Where there is room at all is found once for all players of the
// size.
func (t trial) steps(kind string, from, step float64, n int, change func(*order.Piece, length.Length)) (float64, bool) {
	size := t.l.garment.Size()
	at := func(k int) length.Length { return length.FromMM(from+float64(k+1)*step, t.plan.order.Units) }
	first, err := kept(t.rooms, key{piece: t.i, text: kind, size: size}, func() (int, error) {
		k := 0
		for k < n && !(at(k).MM() > 0 && t.with(size, "", func(p *order.Piece) { change(p, at(k)) })) {
			k++
		}
		return k, nil
	})
	if err != nil {
		return 0, false
	}
	for k := *first; k < n; k++ {
		if t.with(size, t.text, func(p *order.Piece) { change(p, at(k)) }) {
			return at(k).MM(), true
		}
	}
	return 0, false
}

func (t trial) asked() order.Piece { return t.plan.order.Pieces[t.i] }

func (t trial) smallerRise() (Remedy, bool) {
	if t.asked().Rise == nil || formed(t.asked()) {
		return Remedy{}, false
	}
	from := math.Ceil(t.asked().Rise.MM()/t.step()) * t.step()
	rise, ok := t.steps(SmallerRise, from, -t.step(), 40, func(p *order.Piece, l length.Length) { p.Rise = &l })
	return Remedy{Kind: SmallerRise, Rise: rise}, ok
}

// largerRadius tries radii up to several times the one asked for.
func (t trial) largerRadius() (Remedy, bool) {
	if t.asked().Radius == nil {
		return Remedy{}, false
	}
	step := 4 * t.step()
	from := math.Floor(t.asked().Radius.MM()/step) * step
	radius, ok := t.steps(LargerRadius, from, step, 60, func(p *order.Piece, l length.Length) { p.Radius = &l })
	return Remedy{Kind: LargerRadius, Radius: radius}, ok
}

func (t trial) straight() (Remedy, bool) {
	if t.asked().Shape == fit.Straight.String() {
		return Remedy{}, false
	}
	return Remedy{Kind: StraightSet}, t.with(t.l.garment.Size(), t.text, func(p *order.Piece) {
		p.Shape, p.Rise, p.Radius = fit.Straight.String(), nil, nil
	})
}

// lower tries heights down to half of what was asked, and to what the rule book
// demands.
func (t trial) lower() (Remedy, bool) {
	asked := t.l.spots[t.i].asked
	demanded, _ := t.plan.demanded(t.asked())
	least := math.Max(asked/2, demanded)
	from := math.Ceil(asked/t.step()) * t.step()
	kind := LowerLetters
	if isNumber(t.asked().Place) {
		kind = LowerDigits
	}
	height, ok := t.steps(kind, from, -t.step(), int((from-least)/t.step()), func(p *order.Piece, l length.Length) {
		p.Height, p.Heights = order.Height{By: order.ByLength, Length: l}, nil
	})
	return Remedy{Kind: kind, Height: height}, ok
}

// farthestDown is how far a piece is moved down to find room, mm.
const farthestDown = 250.0

func (t trial) furtherDown() (Remedy, bool) {
	switch t.asked().Place {
	case garment.SleeveNumber, garment.ShortsNumber:
		return Remedy{}, false
	}
	step := 2 * t.step()
	from := math.Floor(t.l.spots[t.i].below/step) * step
	below, ok := t.steps(FurtherDown, from, step, int(farthestDown/step), func(p *order.Piece, l length.Length) { p.Below, p.Belows = &l, nil })
	return Remedy{Kind: FurtherDown, Below: below}, ok
}

func (t trial) nextSize() (Remedy, bool) {
	for size, ok := larger(t.l.garment.Size()); ok; size, ok = larger(size) {
		if t.with(size, t.text, func(*order.Piece) {}) {
			return Remedy{Kind: NextSize, Size: size.String()}, true
		}
	}
	return Remedy{}, false
}
