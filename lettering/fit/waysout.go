package fit

import (
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/typeface"
)

// The kinds of WayOut in the order in which they are listed: the smallest
// change of the look first.
const (
	LowerLetters    = "lower letters"    // below the ladder's floor; for names that are over
	NarrowerLetters = "narrower letters" // a lower floor for the width
	FlatterArch     = "flatter arch"     // a larger radius
	RounderArch     = "rounder arch"     // a smaller radius; helps where heads draw together
	NarrowerFace    = "narrower face"    // another face, for this name only
	MoreRoom        = "more room"        // a wider limit, at the height asked
	TwoLines        = "two lines"
	AnInitial       = "an initial" // for the first parts of the name
	NextSize        = "next size"  // of the garment; found by package sizes, which knows garments
)

// WayOut is a change that would help a name that came out reduced or over.
// Each was tried and Name is what came out: for an over name one that fits, for
// a reduced one taller letters. NarrowerLetters and the arches bring a reduced
// name to the height asked, MoreRoom brings any name there.
type WayOut struct {
	Kind       string
	Height     float64 // letter height that comes out, mm; for LowerLetters the floor to give
	Limit      float64 // limit to give, mm
	WidthFloor float64 // floor of the width to give, as a share
	Radius     float64 // of the arch to give, mm; 0 when straight
	Rise       float64 // instead of Radius where the arch is given by its rise, mm; else 0
	FaceID     string  // face to give
	Text       string  // text to give; two lines are parted by a line break
	Raised     []int   // letters of it to raise, as in Request
	Size       string  // of the garment, for NextSize, such as "youth L"
	Name       *Name   // as it comes out
}

// Suggested lengths are rounded to hundredths of a mm and shares to
// thousandths, to the safe side.
const (
	perMM  = 100
	grid   = 1.0 / perMM
	perOne = 1000
)

// narrowestLetters is the least width that is suggested, as a share: narrower
// ones are no longer the letters of the face. Common practice, no source.
const narrowestLetters = 0.50

// escape is a request that looks for its ways out.
type escape struct {
	*Fitter
	name *Name
	best float64 // letter height to beat, mm
	// back is the request with the floor of its height where a way out must
	// come out: as it is for a name that is over, at the height asked for one
	// that is reduced.
	back Request
}

func (f *Fitter) waysOut(r *Request, n *Name) []WayOut {
	plain := *r
	plain.NoWaysOut, plain.Narrower = true, nil
	e := escape{Fitter: f, name: n, back: plain}
	if n.Verdict == Reduced {
		e.best, e.back.Ladder.Height = n.LetterHeight, r.Height
	}
	var out []WayOut
	for _, find := range []func(Request) (WayOut, bool){
		e.lowerLetters, e.narrowerLetters, e.anotherArch,
		func(q Request) (WayOut, bool) { return e.narrowerFace(q, r.Narrower) },
		e.moreRoom, e.twoLines, e.anInitial,
	} {
		if w, ok := find(plain); ok {
			out = append(out, w)
		}
	}
	return out
}

// fits reports whether the changed request fits.
func (f *Fitter) fits(r Request) bool {
	_, fits, err := f.Reach(r)
	return err == nil && fits
}

// try fits the changed request and returns what it comes to, if it fits.
func (f *Fitter) try(kind string, r Request) (WayOut, bool) {
	n, err := f.Name(r)
	if err != nil || n.Verdict == Over {
		return WayOut{}, false
	}
	return WayOut{
		Kind: kind, Height: n.LetterHeight, Limit: r.Limit, WidthFloor: r.floors().Width, Radius: n.Radius, Rise: r.Rise,
		FaceID: n.FaceID, Text: r.Text, Raised: r.Raised, Name: &n,
	}, true
}

// taller is try for a change that must beat the letters as they are.
func (e *escape) taller(kind string, r Request) (WayOut, bool) {
	w, ok := e.try(kind, r)
	return w, ok && w.Height > e.best+grid
}

// lowerLetters finds the letter height that would fit, below the ladder's
// floor.
func (e *escape) lowerLetters(r Request) (WayOut, bool) {
	if e.name.Verdict != Over {
		return WayOut{}, false
	}
	r.Ladder.Height = math.Min(grid, r.Height)
	w, ok := e.try(LowerLetters, r)
	if !ok {
		return w, false
	}
	low := math.Floor(w.Height*perMM) / perMM
	if low <= 0 {
		return w, false
	}
	// What is suggested must itself fit, with every other rung at its floor.
	r.Ladder.Height = low
	w, ok = e.try(LowerLetters, r)
	w.Height = low
	return w, ok
}

// narrowerLetters finds the highest floor of the width that would do.
func (e *escape) narrowerLetters(Request) (WayOut, bool) {
	r := e.back
	low, high := int(narrowestLetters*perOne), int(math.Ceil(r.floors().Width*perOne))
	r.Ladder.Width = narrowestLetters
	if low >= high || !e.fits(r) {
		return WayOut{}, false
	}
	for high-low > 1 {
		mid := (low + high) / 2
		if r.Ladder.Width = float64(mid) / perOne; e.fits(r) {
			low = mid
		} else {
			high = mid
		}
	}
	r.Ladder.Width = float64(low) / perOne
	return e.taller(NarrowerLetters, r)
}

// How far from its own radius another one is looked for: as many steps of the
// fourth root of 2 (steps that are passed over would be hardly seen).
const (
	flatterSteps = 16
	rounderSteps = 4
)

// anotherArch finds the nearest radius that would do. On an arch up heads draw
// apart, so a flatter one is narrower; on an arch down it is the other way
// round. The width of a vertical arch does not depend on its radius.
func (e *escape) anotherArch(Request) (WayOut, bool) {
	if !e.name.Shape.radial() {
		return WayOut{}, false
	}
	flatter, ok := e.archAt(FlatterArch, flatterSteps, math.Sqrt2)
	rounder, also := e.archAt(RounderArch, rounderSteps, 1/math.Sqrt2)
	if also && (!ok || e.name.Radius/rounder.Radius < flatter.Radius/e.name.Radius) {
		return rounder, true
	}
	return flatter, ok
}

// archAt looks for a radius that does, by steps whose square is the factor
// squared, and closes in on the one that is nearest to the name's own.
func (e *escape) archAt(kind string, steps int, factor float64) (WayOut, bool) {
	r := e.back
	r.Rise = 0
	fits := func(radius float64) bool {
		r.Radius = radius
		return e.fits(r)
	}
	far := e.name.Radius * math.Pow(factor, float64(steps)/2)
	if factor > 1 && !fits(far) { // then no flatter one does
		return WayOut{}, false
	}
	misses, does := e.name.Radius, 0.0
	for k := 1; k <= steps && does == 0; k++ {
		if radius := e.name.Radius * math.Pow(factor, float64(k)/2); fits(radius) {
			does = radius
		} else {
			misses = radius
		}
	}
	if does == 0 {
		return WayOut{}, false
	}
	for math.Abs(does-misses) > grid/2 {
		if mid := (does + misses) / 2; fits(mid) {
			does = mid
		} else {
			misses = mid
		}
	}
	return e.taller(kind, e.arched(does, factor > 1))
}

// arched returns the request with the radius, rounded to the safe side, or with
// the rise that makes it, where the arch is given by its rise.
func (e *escape) arched(radius float64, flatter bool) Request {
	r, round, other := e.back, math.Floor, math.Ceil
	if flatter {
		round, other = other, round
	}
	if r.Rise == 0 {
		r.Radius = round(radius*perMM) / perMM
		return r
	}
	r.Rise = other(geom.Sagitta(radius, r.Limit)*perMM) / perMM
	return r
}

// narrowerFace takes the face that gives the tallest letters.
func (e *escape) narrowerFace(r Request, faces []*typeface.Face) (WayOut, bool) {
	id, best := r.Face.ID(), e.best
	var tallest *typeface.Face
	r.Wdth, r.Wght = math.NaN(), math.NaN()
	for _, face := range faces {
		if r.Face = face; face.ID() == id {
			continue
		}
		if height, fits, err := e.Reach(r); err == nil && fits && height > best+grid {
			best, tallest = height, face
		}
	}
	if tallest == nil {
		return WayOut{}, false
	}
	r.Face = tallest
	return e.try(NarrowerFace, r)
}

// moreRoom finds the limit at which the name comes out at the height asked.
func (e *escape) moreRoom(r Request) (WayOut, bool) {
	r.Ladder.Height = r.Height
	floor, err := e.fit(&r) // over: the other rungs at their floors
	if err != nil {
		return WayOut{}, false
	}
	fits := func(limit float64) bool {
		q := r
		q.Limit = limit
		b := newStand(&q) // a rise makes another circle of another limit
		return b.excess(floor.line, floor.state) <= 0
	}
	low, high := r.Limit, r.Limit
	for tries := 0; !fits(high); tries++ {
		if tries == 16 {
			return WayOut{}, false
		}
		low, high = high, 1.5*high
	}
	for high-low > grid/100 {
		if mid := (low + high) / 2; fits(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	r.Limit = math.Ceil(high*perMM) / perMM
	return e.try(MoreRoom, r)
}

// twoLines breaks the name at the space or hyphen nearest its middle.
func (e *escape) twoLines(r Request) (WayOut, bool) {
	first, second, ok := breakInTwo(r.Text)
	if !ok {
		return WayOut{}, false
	}
	return e.taller(TwoLines, r.retold(first+lineBreak+second))
}

// anInitial shortens the parts of the name to initials from the left, never
// the last, until it fits.
func (e *escape) anInitial(r Request) (WayOut, bool) {
	for text, ok := shorten(r.Text); ok; text, ok = shorten(text) {
		if w, ok := e.taller(AnInitial, r.retold(text)); ok {
			return w, true
		}
	}
	return WayOut{}, false
}
