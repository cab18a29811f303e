package numeral

import (
	"math"

	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

// The kinds of WayOut in the order in which they are listed: the smallest
// change of the look first.
const (
	ThickerDigits    = "thicker digits"    // by the weight axis, else emboldened; where only the stroke is short
	SmallerGap       = "smaller gap"       // between digits
	NarrowerOutlines = "narrower outlines" // all by one share
	FewerOutlines    = "fewer outlines"    // without the outermost
	NarrowerDigits   = "narrower digits"   // by the face's own width axis
	NarrowerFace     = "narrower face"     // condensed digits of another face
	LowerDigits      = "lower digits"      // where the rule lets them be
	NextSize         = "next size"         // of the garment; found by package sizes, which knows garments
)

// WayOut is a change that mends a number. It was tried: Number is what came
// out, within its limit and keeping the demand.
type WayOut struct {
	Kind    string
	Request Request // that makes Number: what differs from the piece as asked is what to give
	Number  Number
	Size    string // of the garment, for NextSize, such as "youth L"
	// GapAsWell says that a NarrowerFace does only with the gap that the request
	// has now.
	GapAsWell bool
	// AnyLower says that every lower height, of LowerDigits, or every smaller gap,
	// of SmallerGap, does as well: no rule is in its way.
	AnyLower bool
}

// Quest is a number with what it must keep to and the faces that may be tried.
type Quest struct {
	Request
	Keep Demand
	// Faces are other faces to try, the one that changes the look least first.
	Faces []*typeface.Face
}

// Conflict is a number whose face, rule and room do not go together.
type Conflict struct {
	// Number is the number as near to what was asked as the demand lets it: where
	// it was asked lower than a rule allows, at the least height allowed. Its
	// WouldFitHeight is 0 where the demand lets no lower one be.
	Number      Number
	OverBy      float64 // how much wider than its limit, mm; 0 when it is within
	StrokeShort float64 // what the thinnest stroke lacks to the demand, mm; 0 for nothing, NaN when not measurable
	WaysOut     []WayOut
}

// Simple reports a number that only wants thicker digits: face, rule and room
// go together once it has them.
func (c *Conflict) Simple() bool { return len(c.WaysOut) > 0 && c.WaysOut[0].Kind == ThickerDigits }

// Settled returns the request with the number height that the demand allows:
// raised to the least. A height over the most is left as it was asked.
func (q Quest) Settled() Request {
	r := q.Request
	if least := q.Keep.least(r.Outlines); least > 0 && !atLeast(r.Height, least) {
		r.Height = least
	}
	return r
}

// Conflict looks for what would mend a number; nil for one that is in order at
// the height asked, or would be at the least height that the demand allows.
// The errors are those of Number.
func (s *Sizer) Conflict(q Quest) (*Conflict, error) {
	r := q.Settled()
	n, err := s.number(r, !atLeast(q.Keep.least(r.Outlines), r.Height))
	if err != nil {
		return nil, err
	}
	keeps, short := q.Keep.Keeps(n, r.Outlines)
	if n.Verdict == Full && keeps {
		return nil, nil
	}
	c := &Conflict{Number: n, StrokeShort: short}
	if n.Verdict == Over {
		c.OverBy = n.InkWidth - r.Limit
	}
	if n.Verdict == Full && short == 0 {
		return nil, nil // breaks something that no change here mends, such as a border that is too wide
	}
	e := escape{Sizer: s, quest: q, from: r, conflict: c}
	if w, ok := e.thickerDigits(); ok {
		c.WaysOut = []WayOut{w}
		return c, nil
	}
	for _, find := range []func() (WayOut, bool){
		e.smallerGap, e.narrowerOutlines, e.fewerOutlines, e.narrowerDigits, e.narrowerFace, e.lowerDigits,
	} {
		if w, ok := find(); ok {
			c.WaysOut = append(c.WaysOut, w)
		}
	}
	return c, nil
}

// escape looks for the ways out of one conflict.
type escape struct {
	*Sizer
	quest    Quest
	from     Request
	conflict *Conflict
}

// Suggested lengths are rounded to hundredths of a mm, to the safe side.
const (
	perMM = 100
	grid  = 1.0 / perMM
)

func floor(mm float64) float64 { return math.Floor(mm*perMM) / perMM }

// try sizes a changed request. Where only its strokes are too thin it is tried
// once more with strokes as thick as demanded.
func (e *escape) try(kind string, r Request) (WayOut, bool) {
	w, short, ok := e.once(kind, r)
	if ok || short == 0 || math.IsNaN(short) {
		return w, ok
	}
	w, _, ok = e.once(kind, weighed(r, e.quest.Keep.stroke(r.Outlines)))
	return w, ok
}

func (e *escape) once(kind string, r Request) (w WayOut, short float64, ok bool) {
	n, err := e.number(r, false)
	if err != nil || n.Verdict != Full {
		return w, 0, false
	}
	keeps, short := e.quest.Keep.Keeps(n, r.Outlines)
	return WayOut{Kind: kind, Request: r, Number: n}, short, keeps
}

// weighed returns the request with strokes of at least this, or as thick as it
// asks for itself: by the weight axis where the face has one, else emboldened.
func weighed(r Request, stroke float64) Request {
	stroke = max(stroke, r.Stroke, r.EmboldenTo)
	r.Stroke, r.EmboldenTo, r.Embolden = 0, 0, 0
	if _, ok := axisOf(r.Face, "wght"); ok {
		r.Stroke = stroke
	} else {
		r.EmboldenTo = stroke
	}
	return r
}

func axisOf(face *typeface.Face, tag string) (typeface.Axis, bool) {
	for _, a := range face.Axes() {
		if a.Tag == tag {
			return a, true
		}
	}
	return typeface.Axis{}, false
}

// thickerDigits helps a number that is within its limit; nothing else is looked
// for where it does.
func (e *escape) thickerDigits() (WayOut, bool) {
	if e.conflict.OverBy > 0 {
		return WayOut{}, false
	}
	return e.try(ThickerDigits, e.from)
}

// closest is the least gap that is suggested, as a share of the number height,
// where neither outlines nor the method ask for more: nearer digits read as one
// shape. Common practice, no source.
const closest = 0.02

// leastGap returns the floor of the gap between digits.
func (e *escape) leastGap(r Request) float64 {
	return max(2*outline.Reach(r.Outlines)+r.SmallestGap, e.quest.Keep.Gap.Least, closest*r.Height)
}

// smallerGap finds the largest gap that does, down to its floor.
func (e *escape) smallerGap() (WayOut, bool) {
	now, least := e.conflict.Number.Gap, e.leastGap(e.from)
	if !(now > least+grid) { // NaN for one digit
		return WayOut{}, false
	}
	r := e.from
	r.Gap = least
	best, ok := e.try(SmallerGap, r)
	for low, high := least, now; ok && high-low > grid; {
		r.Gap = floor((low + high) / 2)
		if w, fits := e.try(SmallerGap, r); fits && r.Gap > low {
			low, best = r.Gap, w
		} else {
			high = (low + high) / 2
		}
	}
	best.AnyLower = e.quest.Keep.Gap == (Span{})
	return best, ok
}

// narrowestOutline is the least share of its width that an outline is narrowed
// to: narrower is another look. Common practice, no source.
const narrowestOutline = 0.5

// narrowerOutlines finds the largest hundredth of their widths that does.
func (e *escape) narrowerOutlines() (WayOut, bool) {
	if len(e.from.Outlines) == 0 {
		return WayOut{}, false
	}
	try := func(share float64) (WayOut, bool) {
		layers := make([]outline.Layer, len(e.from.Outlines))
		for i, l := range e.from.Outlines {
			layers[i] = outline.Layer{Width: floor(l.Width * share), Join: l.Join}
		}
		return e.outlined(NarrowerOutlines, layers)
	}
	low, high := int(narrowestOutline*100), 100
	best, ok := try(narrowestOutline)
	for ok && high-low > 1 {
		mid := (low + high) / 2
		if w, fits := try(float64(mid) / 100); fits {
			low, best = mid, w
		} else {
			high = mid
		}
	}
	return best, ok
}

// outlined tries other outlines, with the height that the demand then asks of
// the digits.
func (e *escape) outlined(kind string, layers []outline.Layer) (WayOut, bool) {
	q := e.quest
	q.Outlines = layers
	return e.try(kind, q.Settled())
}

// fewerOutlines leaves out the outermost until the number fits.
func (e *escape) fewerOutlines() (WayOut, bool) {
	for left := len(e.from.Outlines) - 1; left >= 0; left-- {
		if w, ok := e.outlined(FewerOutlines, e.from.Outlines[:left]); ok {
			return w, true
		}
	}
	return WayOut{}, false
}

// axisStep is the step of a width axis that is tried. A few round figures keep
// the numbers of a team alike.
const axisStep = 5

// narrowerDigits finds the widest setting of the face's width axis that does.
func (e *escape) narrowerDigits() (WayOut, bool) {
	return e.alongAxis(NarrowerDigits, e.from)
}

// alongAxis tries the multiples of the step below the width asked, and the
// end of the axis.
func (e *escape) alongAxis(kind string, r Request) (WayOut, bool) {
	axis, ok := axisOf(r.Face, "wdth")
	if !ok {
		return WayOut{}, false
	}
	now := r.Wdth
	if math.IsNaN(now) {
		now = r.Face.Settings()["wdth"]
	}
	for v := axisStep * (math.Ceil(now/axisStep) - 1); now > axis.Min; v -= axisStep {
		r.Wdth = max(v, axis.Min)
		if w, ok := e.try(kind, r); ok {
			return w, true
		}
		now = r.Wdth
	}
	return WayOut{}, false
}

// narrowerFace takes the first of the faces that does: as it stands, by its
// width axis, or at last with the gap at its floor as well.
func (e *escape) narrowerFace() (WayOut, bool) {
	own := e.from.Face.ID()
	for k, gap := range [...]float64{e.from.Gap, e.leastGap(e.from)} {
		for _, face := range e.quest.Faces {
			if face.ID() == own {
				continue
			}
			r := e.from
			r.Face, r.Wdth, r.Wght, r.Gap = face, math.NaN(), math.NaN(), gap
			// An emboldening was chosen for the face that was asked; a stroke holds for any.
			r = weighed(r, 0)
			w, ok := e.try(NarrowerFace, r)
			if !ok {
				w, ok = e.alongAxis(NarrowerFace, r)
			}
			if ok {
				w.GapAsWell = k > 0
				return w, true
			}
		}
	}
	return WayOut{}, false
}

// lowerDigits finds the height that fits, where the demand lets it be. A face
// is not made heavier for it: lower digits are thinner already.
func (e *escape) lowerDigits() (WayOut, bool) {
	r := e.from
	if r.Height = e.conflict.Number.WouldFitHeight; e.conflict.OverBy == 0 || r.Height == 0 {
		return WayOut{}, false
	}
	w, _, ok := e.once(LowerDigits, r)
	w.AnyLower = e.quest.Keep.Height.Least == 0 && e.quest.Keep.Stroke.Least == 0
	return w, ok
}
