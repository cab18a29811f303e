package sizes

import (
	"fmt"
	"math"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
)

// stack is a number and the name over it on one size: one arrangement that must
// lie inside the panel down to its bottom.
//
// The number stands the usual gap under the middle of the name's baseline, or
// lower where a name of the size comes nearer to it than Clearance. Where the
// number then crosses the foot of the panel, this is given up, each only as far as
// is needed and all of it before the next: the gap, down to the clearance; the
// name's height, down to its floor; the number's height, down to what the rule
// book demands or, without one, to its floor. Where all that is not enough
// nothing is given up but the gap, and what lacks is reported.
type stack struct {
	*worker
	l            *layout
	above, i     int
	upper, lower *spot
	fixed        bool // the job says how far below the collar the number stands
}

// stack sets piece i under the piece above it.
func (w *worker) stack(l *layout, above, i int) {
	k := stack{worker: w.still(), l: l, above: above, i: i, upper: &l.spots[above], lower: &l.spots[i]}
	k.fixed = w.plan.order.Pieces[i].BelowFor(l.garment.Size()) != nil
	if k.fixed {
		k.lower.tooNear = math.Max(0, k.clear()-k.lower.top)
		if !k.inside() {
			k.lowerNumber()
		}
		return
	}
	usual := k.usualTop()
	if k.at(usual) {
		return
	}
	least := k.least()
	if k.at(least) {
		k.at(largest(least, usual, k.at))
		k.tell(fmt.Sprintf("gap %s under the baseline, usually %s", k.say(k.lower.top-k.baseline()), k.say(usual-k.baseline())))
		return
	}
	if !k.lowerName() && !k.lowerNumber() {
		k.restore()
	}
}

// baseline is the level of the middle of the name's baseline, at the height that
// the name has before the ladder.
func (k *stack) baseline() float64 { return k.upper.top + k.upper.drop + k.upper.height }

// usualTop is where the number stands if nothing has to be given up. Names are only
// looked at where one may come near enough to matter.
func (k *stack) usualTop() float64 {
	usual := math.Max(k.baseline()+k.upper.placement.GapAfter, k.leastTop())
	if k.surely() > usual {
		usual = math.Max(usual, k.least())
	}
	return usual
}

// least is the highest top that the number may have.
func (k *stack) least() float64 {
	if k.fixed {
		return k.lower.top
	}
	return math.Max(k.clear(), k.leastTop())
}

// leastTop keeps the number below the seam that its place must stay below.
func (k *stack) leastTop() float64 { return k.lower.leastTop(k.box(k.l, k.i).over) }

// at sets the number's top and reports whether the stack is inside the panel.
func (k *stack) at(top float64) bool {
	k.lower.top = top
	k.measureRoom(k.l, k.i)
	return k.inside()
}

// inside reports whether the number keeps clear of the foot of the panel: it has
// there at least the width that it needs, or that its upper half has. What ends
// a number sideways is no matter of the stack.
func (k *stack) inside() bool {
	room := k.lower.room
	if !room.AtFoot() {
		return true
	}
	box := k.box(k.l, k.i)
	upper := k.l.garment.RoomAt(k.lower.placement, k.lower.top-box.over, k.lower.top+k.lower.height/2)
	return room.Panel > 0 && room.Panel >= math.Min(2*box.half, upper.Panel)-sameHeight
}

// lowerName makes the name as much lower as is needed, to its floor at most.
func (k *stack) lowerName() bool {
	asked := k.plan.order.Pieces[k.above]
	floor := fit.DefaultLadder(k.upper.asked).Height
	if given := k.plan.order.Fit.Height; given != nil {
		floor = given.MM()
	}
	demanded, _ := k.plan.demanded(asked)
	floor = math.Max(floor, demanded)
	if k.upper.noRoom || floor >= k.upper.asked {
		return false
	}
	try := func(height float64) bool {
		k.upper.height = height
		k.stand(k.l, k.above)
		return k.at(k.least())
	}
	fits := try(floor)
	if fits {
		try(math.Max(floor, k.step(largest(floor, k.upper.asked, try))))
	}
	if fits && asked.HeightFor(k.l.garment.Size()).By == order.Largest {
		k.upper.asked = k.upper.height // the largest that leaves room for the number
		k.tellGap()
		return true
	}
	k.tellGap()
	note := fmt.Sprintf("letters %s, asked %s", k.say(k.upper.height), k.say(k.upper.asked))
	k.upper.eased = append(k.upper.eased, note)
	k.tell(note)
	return fits
}

// lowerNumber makes the number as much lower as is needed, to its floor at most.
func (k *stack) lowerNumber() bool {
	floor, _ := k.plan.demanded(k.plan.order.Pieces[k.i])
	if floor == 0 {
		floor = fit.DefaultLadder(k.lower.asked).Height
	}
	if floor >= k.lower.asked {
		return false
	}
	try := func(height float64) bool {
		k.lower.height = height
		return k.at(k.least())
	}
	if !try(floor) {
		return false
	}
	try(math.Max(floor, k.step(largest(floor, k.lower.asked, try))))
	if len(k.lower.eased) == 0 && !k.fixed {
		k.tellGap()
	}
	k.tell(fmt.Sprintf("digits %s, asked %s", k.say(k.lower.height), k.say(k.lower.asked)))
	return true
}

// restore takes back what did not help, and notes what lacks with everything at
// its floor.
func (k *stack) restore() {
	k.lower.short = k.lacks()
	k.upper.height, k.lower.height = k.upper.asked, k.lower.asked
	k.upper.eased, k.lower.eased = nil, nil
	k.stand(k.l, k.above)
	k.at(k.least())
}

// lacks is how much higher the number would have to stand, mm.
func (k *stack) lacks() float64 {
	const most = 2000.0
	from := k.lower.top
	defer k.at(from)
	if !k.at(from - most) {
		// Far above the garment nothing is at its foot; this cannot happen.
		return most
	}
	return most - largest(0, most, func(d float64) bool { return k.at(from - most + d) })
}

func (k *stack) tell(note string) { k.lower.eased = append(k.lower.eased, note) }

func (k *stack) tellGap() {
	k.tell(fmt.Sprintf("gap %s under the baseline, usually %s", k.say(k.lower.top-k.baseline()), k.say(k.upper.placement.GapAfter)))
}

func (k *stack) say(mm float64) string { return k.plan.say(mm) }

// say prints a length in the unit of the job.
func (p *plan) say(mm float64) string { return length.Plain(mm, p.order.Units, length.Nearest) }

// step rounds a height down to one that a shop would set: a sixteenth of an inch
// or a millimetre.
func (k *stack) step(mm float64) float64 {
	step := 1.0
	if k.plan.order.Units == length.Inch {
		step = 25.4 / 16
	}
	return math.Floor(mm/step+sameHeight) * step
}

// largest closes in on the largest value between lo, which is known to do, and
// hi, which is not.
func largest(lo, hi float64, does func(float64) bool) float64 {
	for range 30 {
		if mid := (lo + hi) / 2; does(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// still returns a worker for trying things out: it looks for no ways out, which
// would try things out in turn.
func (w *worker) still() *worker {
	if !w.plan.waysOut && !w.plan.numberWays {
		return w
	}
	if w.quiet == nil {
		quiet := *w.plan
		quiet.waysOut, quiet.numberWays = false, false
		w.quiet = quiet.newWorker()
	}
	return w.quiet
}

// askAgain gives a name that a stack made lower the height that was asked for, so
// that it does not pass for one that came out as asked.
func (p *Piece) askAgain() {
	if p.Name == nil || p.AskedHeight <= p.Name.Asked {
		return
	}
	n := *p.Name
	if n.Asked = p.AskedHeight; n.Verdict < fit.Reduced {
		n.Verdict = fit.Reduced
	}
	p.Name = &n
}

// texts lists what piece i says for the players of a size, each once.
func (p *plan) texts(i int, size garment.Size) []string {
	var out []string
	seen := map[string]bool{"": true}
	for _, player := range p.order.Players {
		if !player.SizeKnown || player.Size != size {
			continue
		}
		if text := textOf(p.order.Pieces[i], player); !seen[text] {
			seen[text] = true
			out = append(out, text)
		}
	}
	return out
}
