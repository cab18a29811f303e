package numeral

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
	"yokeline/lettering/stroke"
	"yokeline/lettering/typeface"
	"yokeline/lettering/weight"
)

// Sizer sets numbers. It keeps the digits and digit pairs of the faces it has
// seen, so it is NOT safe for concurrent use: take one per goroutine.
type Sizer struct {
	cuts   map[cutKey]*digits
	solved map[solveKey]solution
}

// NewSizer returns an empty sizer.
func NewSizer() *Sizer {
	return &Sizer{cuts: map[cutKey]*digits{}, solved: map[solveKey]solution{}}
}

// cutKey is an instance of a face and what it is emboldened by, in font units.
type cutKey struct {
	face   *typeface.Face
	amount float64
}

// digits is what is known of one cut of a face, in font units.
type digits struct {
	cut   *weight.Cut
	ink   [10]*ink.Glyph
	gauge [10]*stroke.Gauge
	one   *ink.Glyph // the room of a 1 of full width, nil until asked for
	pairs map[pair]float64
}

// pair is two neighbouring digits and the gap between them in font units.
type pair struct {
	left, right byte
	gap         float64
	ones        Ones
}

// Bounds of the caches, which are emptied when full.
const (
	maxFaces = 64
	maxPairs = 4096
)

// flatness is how closely digits are flattened to find their distances, in
// ems: about 0.0015 mm on a digit of 200 mm.
const flatness = 5e-6

func (s *Sizer) cut(face *typeface.Face, amount float64) (*digits, error) {
	key := cutKey{face, amount}
	d := s.cuts[key]
	if d == nil {
		cut, err := weight.Embolden(face, amount)
		if err != nil {
			return nil, err
		}
		if len(s.cuts) >= maxFaces {
			clear(s.cuts)
		}
		d = &digits{cut: cut, pairs: map[pair]float64{}}
		s.cuts[key] = d
	}
	return d, nil
}

// load prepares the digits that the text uses.
func (d *digits) load(text string) error {
	for _, c := range text {
		if d.ink[c-'0'] != nil {
			continue
		}
		face := d.cut.Face()
		id, err := face.Digit(c)
		if err != nil {
			return err
		}
		path, err := d.cut.Path(id)
		if err != nil {
			return err
		}
		g := ink.New(path, flatness*face.UnitsPerEm())
		if g.Empty() || g.Box.Height() <= 0 {
			return fmt.Errorf("digit %q of face %s has no ink; use another face", c, face.ID())
		}
		d.ink[c-'0'] = g
	}
	return nil
}

// heights returns the ink heights of the shortest and the tallest digit.
func (d *digits) heights(text string) (shortest, tallest float64) {
	shortest = math.Inf(1)
	for _, c := range []byte(text) {
		h := d.ink[c-'0'].Box.Height()
		shortest, tallest = min(shortest, h), max(tallest, h)
	}
	return shortest, tallest
}

// abut returns how far the right digit's origin lies from the left's.
func (d *digits) abut(left, right byte, gap float64, ones Ones) float64 {
	key := pair{left, right, gap, ones}
	x, ok := d.pairs[key]
	if !ok {
		a, b := d.room(left, ones), d.room(right, ones)
		x = ink.Abut(a, b, gap)
		if math.IsInf(x, -1) { // one passes under the other: old-style digits far apart in height
			x = a.Box.Max.X - b.Box.Min.X + gap
		}
		if len(d.pairs) >= maxPairs {
			clear(d.pairs)
		}
		d.pairs[key] = x
	}
	return x
}

// laid is a number at a size.
type laid struct {
	scale  float64 // mm per font unit
	gap    float64
	raised bool
	at     [MaxDigits]float64 // origins, mm
	box    geom.Rect          // bare ink
	from   float64            // ends with outlines
	to     float64
}

func (d *digits) lay(r *Request, height float64, offsets []ink.Offset) laid {
	shortest, _ := d.heights(r.Text)
	l := laid{scale: height / shortest, box: geom.EmptyRect(), from: math.Inf(1), to: math.Inf(-1)}
	l.gap, l.raised = r.gap(height)
	units := DefaultGap * shortest // the same at every height, so pairs are found again
	if l.raised || !math.IsNaN(r.Gap) {
		units = l.gap / l.scale
	}
	for i := range len(r.Text) {
		if i > 0 {
			l.at[i] = l.at[i-1] + l.scale*d.abut(r.Text[i-1], r.Text[i], units, r.Ones)
		}
		g := d.ink[r.Text[i]-'0']
		m := l.place(i)
		l.box = l.box.Include(m.Apply(g.Box.Min)).Include(m.Apply(g.Box.Max))
		w := ink.Warp{Map: m}
		l.to = max(l.to, g.Outer(w, geom.Point{X: 1}, offsets))
		l.from = min(l.from, -g.Outer(w, geom.Point{X: -1}, offsets))
	}
	return l
}

func (l *laid) place(i int) geom.Affine {
	return geom.Affine{A: l.scale, D: l.scale, E: l.at[i]}
}

// Number sets one number. Errors: a text that is not 1 to MaxDigits digits, a
// *typeface.MissingError, an axis value out of range, lengths that make no
// sense.
func (s *Sizer) Number(r Request) (Number, error) { return s.number(r, true) }

// number leaves the height that would fit out where nobody wants it: it costs
// many times the rest.
func (s *Sizer) number(r Request, wouldFit bool) (Number, error) {
	if err := r.check(); err != nil {
		return Number{}, err
	}
	d, err := s.digits(&r)
	if err != nil {
		return Number{}, err
	}
	offsets := ink.Offsets(r.Outlines)
	l := d.lay(&r, r.Height, offsets)
	_, tallest := d.heights(r.Text)
	n := Number{
		Text: r.Text, FaceID: r.Face.ID(), Height: r.Height, TallestDigit: tallest * l.scale,
		NarrowestDigit: d.narrowest(r.Text) * l.scale,
		InkWidth:       l.to - l.from, BareInkWidth: l.box.Width(), Gap: math.NaN(),
		Limit: r.Limit, Verdict: Full,
	}
	if len(r.Text) > 1 {
		n.Gap, n.GapRaised = l.gap, l.raised
	}
	d.stand(&n, &l, offsets)
	if err := d.strokes(&n, l.scale); err != nil {
		return Number{}, err
	}
	n.judgeStroke(&r, d)
	if r.Limit > 0 && n.InkWidth > r.Limit {
		n.Verdict = Over
		if wouldFit {
			n.WouldFitHeight = d.fits(&r, offsets)
		}
	}
	return n, nil
}

// stand keeps what the digits are drawn from and measures the height of the
// ink.
func (d *digits) stand(n *Number, l *laid, offsets []ink.Offset) {
	n.art = drawing{cut: d.cut, scale: l.scale, at: l.at}
	shift := (l.from + l.to) / 2
	top, bottom := math.Inf(-1), math.Inf(1)
	for i, c := range []byte(n.Text) {
		n.art.at[i] -= shift
		g, w := d.ink[c-'0'], ink.Warp{Map: n.art.place(i)}
		top = max(top, g.Outer(w, geom.Point{Y: 1}, offsets))
		bottom = min(bottom, -g.Outer(w, geom.Point{Y: -1}, offsets))
	}
	n.InkHeight = top - bottom
}

// strokes measures every digit once and takes the smallest.
func (d *digits) strokes(n *Number, scale float64) error {
	n.StrokeThin, n.StrokeMain = math.Inf(1), math.Inf(1)
	for _, c := range []byte(n.Text) {
		g := d.ink[c-'0']
		if d.gauge[c-'0'] == nil {
			m, err := weight.Gauge(g.Path)
			if err != nil {
				return fmt.Errorf("digit %q of face %s: %w", c, d.cut.Face().ID(), err)
			}
			d.gauge[c-'0'] = &m
		}
		// min passes NaN on: a digit that cannot be measured leaves no figure.
		n.StrokeThin = min(n.StrokeThin, scale*d.gauge[c-'0'].Thin)
		n.StrokeMain = min(n.StrokeMain, scale*d.gauge[c-'0'].Main)
	}
	return nil
}

// fits returns the largest number height, in hundredths of a mm, at which the
// number is within its limit; 0 when outlines and gap alone are too wide.
func (d *digits) fits(r *Request, offsets []ink.Offset) float64 {
	const perMM = 100
	within := func(step float64) bool {
		l := d.lay(r, step/perMM, offsets)
		return l.to-l.from <= r.Limit
	}
	low, high := 0.0, math.Ceil(r.Height*perMM)
	for high-low > 1 {
		if mid := math.Floor((low + high) / 2); within(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low / perMM
}
