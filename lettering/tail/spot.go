package tail

import (
	"errors"
	"fmt"
	"math"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
)

// TextSpot is the room for a small text in a tail: a band along the tail's
// centre line. The zero value has no room.
type TextSpot struct {
	Origin geom.Point // middle of the band
	Angle  float64    // of the text at Origin, degrees, anticlockwise from level
	Height float64    // of the band, mm
	Length float64    // of the band along its middle, mm
	Margin float64    // that the tail has at least over and under the band, mm
	line   []station  // the band's middle and a little more, right to left
	middle float64    // s of Origin
}

// The band lies where the tail has this share of its full thickness, and
// leaves a margin of this share of it.
const (
	spotThickness = 0.80
	spotMargin    = 0.12
)

// spot finds the band.
func (sh *shape) spot() TextSpot {
	first, last := -1, 0
	for i := steps; i <= 2*steps; i++ {
		if width, _ := sh.swell.at(sh.walk[i].s); width >= spotThickness*sh.swell.full {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 || last == first {
		return TextSpot{}
	}
	t := TextSpot{
		Margin: spotMargin * sh.swell.full,
		Length: sh.walk[last].s - sh.walk[first].s,
		line:   sh.walk[first : last+1],
		middle: (sh.walk[first].s + sh.walk[last].s) / 2,
	}
	t.Height = spotThickness*sh.swell.full - 2*t.Margin
	at, up := t.at(0)
	t.Origin = at
	t.Angle = math.Atan2(-up.X, up.Y) * 180 / math.Pi
	return t
}

// at returns the point of the band's middle at x from Origin, over 0 to the
// right, and the direction up from there.
func (t *TextSpot) at(x float64) (at, up geom.Point) {
	s := t.middle - x
	i := 0
	for i < len(t.line)-2 && t.line[i+1].s < s {
		i++
	}
	a, b := t.line[i], t.line[i+1]
	long := b.s - a.s
	k := (s - a.s) / long
	// The cubic with the place and direction of both stations.
	from, to := unit(a.heading), unit(b.heading)
	c, d := a.at.Add(from.Mul(long/3)), b.at.Sub(to.Mul(long/3))
	ab, bc, cd := a.at.Lerp(c, k), c.Lerp(d, k), d.Lerp(b.at, k)
	ahead := from.Lerp(to, k)
	return ab.Lerp(bc, k).Lerp(bc.Lerp(cd, k), k), left(ahead).Mul(-1 / ahead.Norm())
}

// Set scales the text so that its ink fills the band's height or length,
// whichever is less room, and bends it along the band, in the middle of it. It
// returns the settled text and its ink height, mm.
func (t *TextSpot) Set(text geom.Region) (geom.Region, float64, error) {
	box := text.Bounds()
	switch {
	case !(t.Height > 0 && t.Length > 0):
		return nil, 0, errors.New("the tail has no room for a text; make it thicker or longer")
	case !(box.Width() > 0 && box.Height() > 0):
		return nil, 0, errors.New("the text for the tail has no ink")
	}
	k := min(t.Height/box.Height(), t.Length/box.Width())
	set, err := t.Bend(text.Transform(geom.Scale(k, k)))
	return set, k * box.Height(), err
}

// Bend bends a text of its own size along the band, its ink box in the middle
// of it, and returns it settled. A text too large is an error with the size
// that the band has room for.
func (t *TextSpot) Bend(text geom.Region) (geom.Region, error) {
	const rounding = 1e-6
	box := text.Bounds()
	if !(box.Height() <= t.Height*(1+rounding) && box.Width() <= t.Length*(1+rounding)) {
		return nil, fmt.Errorf("the text of %.2f by %.2f mm is too large for the tail; %.2f by %.2f mm would do", box.Width(), box.Height(), t.Length, t.Height)
	}
	centre := box.Center()
	bent := make(geom.Region, 0, len(text))
	for _, ring := range text {
		var out geom.Ring
		for i, a := range ring {
			d := ring[(i+1)%len(ring)].Sub(a)
			n := max(1, math.Ceil(math.Abs(d.X)/(t.Length/64)))
			for k := range int(n) {
				p := a.Add(d.Mul(float64(k) / n)).Sub(centre)
				at, up := t.at(p.X)
				out = append(out, at.Add(up.Mul(p.Y)))
			}
		}
		bent = append(bent, out)
	}
	return outline.Union(bent)
}
