package weight

import (
	"errors"
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/stroke"
	"yokeline/lettering/typeface"
)

// gaugeHeight is the height, mm, that glyphs are brought to for measuring
// their strokes. Strokes scale with the glyph, so one measurement serves all
// sizes.
const gaugeHeight = 200

// Gauge measures the strokes of an outline, in the outline's own unit, as
// package stroke does. The error wraps outline.ErrRange or
// outline.ErrUnsettled.
func Gauge(path geom.Path) (stroke.Gauge, error) {
	k := gaugeHeight / path.Bounds().Height()
	settled, err := outline.Union(path.Transform(geom.Scale(k, k)).Flatten(outline.Tolerance))
	if err != nil {
		return stroke.Gauge{}, err
	}
	m := stroke.Measure(settled, 0)
	m.Thin, m.Main = m.Thin/k, m.Main/k
	return m, nil
}

// Set is a set of characters whose strokes must all be thick enough.
type Set uint8

// Digits are the ten digits, each held against its own height. Capitals are A
// to Z and Letters A to Z and a to z, those that the face has, held against the
// cap height. They are whole alphabets, not the letters of one name, so that
// all names of a team come out in one weight.
const (
	Digits Set = iota
	Capitals
	Letters
)

func (s Set) runes() string {
	const capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	switch s {
	case Digits:
		return "0123456789"
	case Capitals:
		return capitals
	}
	return capitals + "abcdefghijklmnopqrstuvwxyz"
}

// glyphs returns the glyphs of the set in an instance of a face; characters
// that the face lacks are left out.
func (s Set) glyphs(face *typeface.Face) ([]uint32, error) {
	var out []uint32
	var missing *typeface.MissingError
	shaper := face.NewShaper()
	for _, r := range s.runes() {
		if s == Digits {
			id, err := face.Digit(r)
			if err != nil {
				return nil, err
			}
			out = append(out, id)
			continue
		}
		line, err := shaper.Shape(string(r), "")
		if errors.As(err, &missing) {
			continue
		}
		if err != nil {
			return nil, err
		}
		for _, g := range line.Glyphs {
			out = append(out, g.ID)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%s has none of the characters %s", face.ID(), s.runes())
	}
	return out, nil
}

// thin returns the stroke of a glyph (the 10th percentile, see package stroke)
// as a share of the height it is held against; NaN when it is not measurable.
func (s Set) thin(c *Cut, id uint32) (float64, error) {
	path, err := c.Path(id)
	if err != nil {
		return 0, err
	}
	g, err := Gauge(path)
	if err != nil {
		return 0, fmt.Errorf("%s, glyph %d: %w", c.face.ID(), id, err)
	}
	if s == Digits {
		return g.Thin / path.Bounds().Height(), nil
	}
	return g.Thin / c.cap, nil
}

// Thinnest returns the thinnest stroke of the set in a cut, as a share of the
// height; NaN when a character's is not measurable.
func Thinnest(c *Cut, s Set) (float64, error) {
	ids, err := s.glyphs(c.face)
	if err != nil {
		return 0, err
	}
	least := math.Inf(1)
	for _, id := range ids {
		thin, err := s.thin(c, id)
		if err != nil {
			return 0, err
		}
		least = min(least, thin) // passes NaN on
	}
	return least, nil
}

// axis is the weight axis.
const axis = "wght"

// Lightest returns the smallest whole value of the face's weight axis at which
// every character of the set has a stroke of at least share times its height;
// the other axes stay as they stand. Each answer is verified: all characters
// were measured there, and one was measured too thin a step below (or the axis
// begins there). ok is false when the heaviest value, which is then returned,
// is still too light; for a face without a weight axis wght is NaN and ok false.
func Lightest(face *typeface.Face, s Set, share float64) (wght float64, ok bool, err error) {
	low, high := math.NaN(), math.NaN()
	for _, a := range face.Axes() {
		if a.Tag == axis {
			low, high = a.Min, a.Max
		}
	}
	if math.IsNaN(low) {
		return math.NaN(), false, nil
	}
	at := func(step int) (*Cut, error) {
		values := face.Settings()
		values[axis] = math.Min(low+float64(step), high)
		made, err := face.Instance(values)
		if err != nil {
			return nil, err
		}
		return Plain(made), nil
	}
	step, ok, err := s.least(int(math.Ceil(high-low)), share, at)
	return math.Min(low+float64(step), high), ok, err
}

// perHeight is the number of steps of emboldening in a height: 0.02 mm on a
// digit of 200 mm.
const perHeight = 10000

// EmboldenTo returns the smallest emboldening, in steps of a ten thousandth of
// the height, at which every character of the set has a stroke of at least
// share times its height. The answer is in font units and a multiple of unit /
// 10000, unit being the height in font units that steps are taken of. It is
// verified as Lightest is. ok is false, and the answer 0, when an eighth of the
// em is not enough.
func EmboldenTo(face *typeface.Face, s Set, share, unit float64) (amount float64, ok bool, err error) {
	most := int(face.UnitsPerEm() / 8 / unit * perHeight)
	at := func(step int) (*Cut, error) { return Embolden(face, float64(step)*unit/perHeight) }
	step, ok, err := s.least(most, share, at)
	if !ok {
		return 0, false, err
	}
	return float64(step) * unit / perHeight, true, err
}

// trials are the cuts that a solve has looked at, with the glyphs of its set.
type trials struct {
	set   Set
	share float64
	at    func(step int) (*Cut, error)
	seen  map[int]trial
}

type trial struct {
	cut *Cut
	ids []uint32
}

func (t *trials) look(step int) (trial, error) {
	if seen, ok := t.seen[step]; ok {
		return seen, nil
	}
	c, err := t.at(step)
	if err != nil {
		return trial{}, err
	}
	ids, err := t.set.glyphs(c.face)
	if err != nil {
		return trial{}, err
	}
	t.seen[step] = trial{c, ids}
	return t.seen[step], nil
}

// meets reports whether glyph i is thick enough at a step. A face whose
// alternates of heavy weights draw a character with fewer glyphs has nothing
// more to meet.
func (t *trials) meets(step, i int) (bool, error) {
	at, err := t.look(step)
	if err != nil || i >= len(at.ids) {
		return err == nil, err
	}
	thin, err := t.set.thin(at.cut, at.ids[i])
	return thin >= t.share, err
}

// least returns the smallest step from 0 to most at which all characters are
// thick enough. It climbs: the first character found too thin sets the next
// step, the smallest at which that one is thick enough.
func (s Set) least(most int, share float64, at func(step int) (*Cut, error)) (step int, ok bool, err error) {
	t := trials{set: s, share: share, at: at, seen: map[int]trial{}}
	first, err := t.look(0)
	if err != nil {
		return 0, false, err
	}
	count := len(first.ids)
	for i, met := 0, 0; met < count; i = (i + 1) % count {
		good, err := t.meets(step, i)
		if err != nil {
			return step, false, err
		}
		if good {
			met++
			continue
		}
		if step, ok, err = t.climb(step, most, i); err != nil || !ok {
			return step, false, err
		}
		met = 1
	}
	return step, true, nil
}

// climb returns the smallest step over low at which glyph i is thick enough,
// or most and false. It goes up by strides that double and does not look
// farther than it must: digits grown so much that their counters close have no
// stroke to measure.
func (t *trials) climb(low, most, i int) (step int, ok bool, err error) {
	high := low
	for stride := 1; !ok; stride *= 2 {
		if low = high; low == most {
			return most, false, nil
		}
		high = min(low+stride, most)
		if ok, err = t.meets(high, i); err != nil {
			return high, false, err
		}
	}
	for high-low > 1 {
		mid := (low + high) / 2
		if ok, err = t.meets(mid, i); err != nil {
			return mid, false, err
		}
		if ok {
			high = mid
		} else {
			low = mid
		}
	}
	return high, true, nil
}
