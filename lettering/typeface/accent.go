package typeface

import (
	"cmp"
	"math"
	"slices"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"yokeline/lettering/geom"
)

// Measures of composed letters, as shares of the em.
const (
	near   = 0.03  // tops this near the cap or x height count as level with it: round letters overshoot
	sink   = 0.006 // how far a cedilla or ogonek runs into the letter, so that the two are one shape
	astray = 0.1   // how far from the middle of a letter, such as t, its foot may be for a cedilla
	upset  = 0.02  // a face whose accents stand farther off centre is slanted
)

// habit is how a face sets the accents of its own letters of one height.
type habit struct {
	clear   map[rune]float64 // clearance over the letter, by combining mark
	usual   float64          // median of all
	lean    float64          // how far to the right of the letter's middle, 0 if upright
	highest float64          // top of the tallest accented letter
}

// habits are measured once for each instance, when first needed.
type habits struct {
	once         sync.Once
	upper, lower habit
	placed       sync.Map // placing -> placement
}

type placing struct {
	base  uint32
	glyph uint32
	seat  seat
}

// placement is where an accent's origin lies from its letter's, and how much
// room it needs beside the letter; font units.
type placement struct{ x, y, advance float64 }

// place puts an accent on the letter that glyph base draws; not ok when it
// finds nothing to join to.
func (f *Face) place(base uint32, c composition) (placement, bool) {
	key := placing{base, c.glyph, c.accent.seat}
	if kept, ok := f.habits.placed.Load(key); ok {
		return kept.(placement), true
	}
	f.habits.once.Do(f.learn)
	letter, mark := f.Bounds(base), f.Bounds(c.glyph)
	if letter.Empty() || mark.Empty() {
		return placement{}, false
	}
	var p placement
	ok := true
	switch c.accent.seat {
	case above:
		p = f.placeAbove(letter, mark, c)
	case beside:
		p = f.placeBeside(base, letter, mark)
	case below:
		p.x = letter.Center().X - mark.Center().X
		p.y = letter.Min.Y - f.habits.upper.usual/2 - mark.Max.Y
	default:
		p, ok = f.placeJoined(base, letter, mark, c)
	}
	if ok {
		f.habits.placed.Store(key, p)
	}
	return p, ok
}

// placeAbove keeps the face's own clearance. An accent that would rise over
// all of the face's accented letters is moved down towards them, to no nearer
// than half the clearance.
func (f *Face) placeAbove(letter, mark geom.Rect, c composition) placement {
	h, level := &f.habits.lower, f.xTop
	if top := letter.Max.Y; unicode.IsUpper(c.letter) || top > f.xTop+ascends*f.source.upem {
		h, level = &f.habits.upper, f.capTop
	}
	if math.Abs(letter.Max.Y-level) > near*f.source.upem {
		level = letter.Max.Y
	}
	clear, ok := h.clear[c.accent.mark]
	if !ok {
		clear = h.usual
	}
	if over := level + clear + mark.Height() - h.highest; h.highest > 0 && over > 0 {
		clear = math.Max(clear-over, math.Min(clear, h.usual/2))
	}
	return placement{
		x: letter.Center().X + h.lean - mark.Center().X,
		y: level + clear - mark.Min.Y,
	}
}

// placeBeside puts an apostrophe level with the letter's top, right of the ink
// that it faces, and makes room where it would run over the letter's advance.
func (f *Face) placeBeside(base uint32, letter, mark geom.Rect) placement {
	p := placement{y: letter.Max.Y - mark.Max.Y}
	edge := rightmost(f.Outline(base), mark.Min.Y+p.y, mark.Max.Y+p.y, f.source.upem)
	p.x = edge + f.habits.upper.usual/2 - mark.Min.X
	advance := f.Advance(base)
	bearing := math.Max(advance-letter.Max.X, f.habits.upper.usual/2)
	p.advance = math.Max(0, math.Round(p.x+mark.Max.X+bearing-advance))
	return p
}

// placeJoined runs a cedilla or ogonek a little into the letter's foot. Its
// top must land on ink along the whole of its width.
func (f *Face) placeJoined(base uint32, letter, mark geom.Rect, c composition) (placement, bool) {
	depth := sink * f.source.upem
	p := placement{x: letter.Center().X - mark.Center().X, y: letter.Min.Y + depth - mark.Max.Y}
	feet := runs(f.Outline(base), letter.Min.Y+depth, f.source.upem)
	tops := runs(f.Outline(c.glyph), mark.Max.Y-depth, f.source.upem)
	if len(feet) == 0 || len(tops) == 0 {
		return p, false
	}
	contact := stretch{tops[0].from, tops[len(tops)-1].to}
	if c.accent.seat == hung {
		shift, ok := contact.onto(feet, p.x)
		p.x += shift
		return p, ok && math.Abs(shift) <= astray*f.source.upem
	}
	foot := feet[len(feet)-1]
	p.x = foot.to - mark.Max.X
	if contact.from+p.x < foot.from {
		p.x = foot.from - contact.from
	}
	if contact.to+p.x > foot.to { // a foot narrower than the contact
		p.x = (foot.from+foot.to)/2 - (contact.from+contact.to)/2
	}
	return p, true
}

// onto returns the smallest move that brings the contact, standing at x,
// wholly onto one of the feet.
func (s stretch) onto(feet []stretch, x float64) (shift float64, ok bool) {
	shift = math.Inf(1)
	for _, foot := range feet {
		if foot.to-foot.from < s.to-s.from {
			continue
		}
		move := math.Max(0, foot.from-s.from-x) - math.Max(0, s.to+x-foot.to)
		if math.Abs(move) < math.Abs(shift) {
			shift = move
		}
	}
	return shift, !math.IsInf(shift, 1)
}

// learn measures the accented letters that the face has.
func (f *Face) learn() {
	f.habits.upper = f.habitOf("AEOUNSZYC", f.capTop)
	f.habits.lower = f.habitOf("aeounszyc", f.xTop)
	upper, lower := &f.habits.upper, &f.habits.lower
	switch {
	case len(upper.clear) == 0 && len(lower.clear) == 0:
		upper.usual, lower.usual = f.drawnClearance(), f.drawnClearance()
	case len(upper.clear) == 0:
		upper.usual, upper.lean = lower.usual, lower.lean
	case len(lower.clear) == 0:
		lower.usual, lower.lean = upper.usual, upper.lean
	}
}

// drawnClearance stands in for a face without accented letters: spacing
// accents are drawn at the height they have over small letters.
func (f *Face) drawnClearance() float64 {
	const least = 0.06
	if id, ok := f.source.nominal('´'); ok {
		if gap := f.Bounds(id).Min.Y - f.xTop; gap >= least*f.source.upem && gap < f.xTop {
			return gap
		}
	}
	return least * f.source.upem
}

func (f *Face) habitOf(letters string, level float64) habit {
	h := habit{clear: map[rune]float64{}}
	var all, leans []float64
	for _, a := range accents() {
		glyph, ok := f.source.nominal(a.spacing)
		if !ok || a.seat != above {
			continue
		}
		var gaps []float64
		for _, letter := range letters {
			own, base, ok := f.ownAccent(letter, a.mark, f.Bounds(glyph).Height())
			if !ok {
				continue
			}
			top := base.Max.Y
			if math.Abs(top-level) <= near*f.source.upem {
				top = level
			}
			gaps = append(gaps, own.Min.Y-top)
			h.highest = math.Max(h.highest, own.Max.Y)
			if a.mark != '\u0300' && a.mark != '\u0301' { // these are not symmetrical
				leans = append(leans, own.Center().X-base.Center().X)
			}
		}
		if len(gaps) > 0 {
			h.clear[a.mark] = median(gaps)
			all = append(all, gaps...)
		}
	}
	h.usual = median(all)
	if lean := median(leans); math.Abs(lean) > upset*f.source.upem {
		h.lean = lean
	}
	return h
}

// ownAccent returns the box of the accent in a letter of the face's own, and
// that of the letter without it. An accent that joins its letter, such as the
// ring of some Å, is no pattern for others.
func (f *Face) ownAccent(letter, mark rune, height float64) (own, base geom.Rect, ok bool) {
	const whole = 0.6 // of the spacing accent's height: the inside of a joined ring is no accent
	composed := []rune(norm.NFC.String(string(letter) + string(mark)))
	id, ok := f.source.nominal(composed[0])
	plain, ok2 := f.source.nominal(letter)
	if len(composed) != 1 || !ok || !ok2 {
		return own, base, false
	}
	base, own = f.Bounds(plain), geom.EmptyRect()
	path := f.Outline(id)
	start := 0
	for i := range path {
		if i+1 < len(path) && path[i+1].Op != geom.Move {
			continue
		}
		if box := path[start : i+1].Bounds(); box.Min.Y > base.Max.Y {
			own = own.Union(box)
		}
		start = i + 1
	}
	return own, base, own.Height() >= whole*height
}

// median returns the middle value, the lower of two; 0 of none.
func median(values []float64) float64 {
	if len(values) == 0 {
		return 0
	}
	slices.Sort(values)
	return values[(len(values)-1)/2]
}

// stretch is a piece of ink along x.
type stretch struct{ from, to float64 }

// flatness is how closely outlines are followed for placing, in ems.
const flatness = 1e-3

// runs returns the stretches of ink at height y, from left to right.
func runs(path geom.Path, y, upem float64) []stretch {
	type hit struct {
		x    float64
		turn int
	}
	var hits []hit
	for _, ring := range path.Flatten(flatness * upem) {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if (a.Y <= y) == (b.Y <= y) {
				continue
			}
			turn := 1
			if a.Y > b.Y {
				turn = -1
			}
			hits = append(hits, hit{a.Lerp(b, (y-a.Y)/(b.Y-a.Y)).X, turn})
		}
	}
	slices.SortFunc(hits, func(a, b hit) int { return cmp.Compare(a.x, b.x) })
	var out []stretch
	winding := 0
	for _, h := range hits {
		if winding == 0 {
			out = append(out, stretch{h.x, h.x})
		}
		if winding += h.turn; winding == 0 {
			out[len(out)-1].to = h.x
		}
	}
	return out
}

// rightmost returns the right edge of the ink between two heights; the left
// end of everything if there is none.
func rightmost(path geom.Path, low, high, upem float64) float64 {
	edge := path.Bounds().Min.X
	for _, ring := range path.Flatten(flatness * upem) {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.Y > b.Y {
				a, b = b, a
			}
			if b.Y < low || a.Y > high {
				continue
			}
			from, to := 0.0, 1.0
			if b.Y > a.Y {
				from = math.Max(0, (low-a.Y)/(b.Y-a.Y))
				to = math.Min(1, (high-a.Y)/(b.Y-a.Y))
			}
			edge = math.Max(edge, math.Max(a.Lerp(b, from).X, a.Lerp(b, to).X))
		}
	}
	return edge
}
