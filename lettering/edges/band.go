package edges

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// Band is the strip between the edges of a shape at one letter height and
// chord.
type Band struct {
	shape       Shape
	height      float64
	chord       float64
	tan         float64 // of the shear
	middle      float64 // x of the middle of the edges
	top, bottom curve   // above the cap line and the baseline
}

// Band sets the shape up for letters of the given height, mm. Chord is the
// width over which rises are measured, mm: the limit; 0 when no edge has a
// rise. Errors name the figure that makes no sense and what to use.
func (s Shape) Band(height, chord float64) (Band, error) {
	if err := s.check(height, chord); err != nil {
		return Band{}, err
	}
	return s.band(height, chord), nil
}

func (s Shape) band(height, chord float64) Band {
	b := Band{shape: s, height: height, chord: chord, tan: math.Tan(s.Shear)}
	b.middle = b.tan * height / 2
	b.top, b.bottom = s.Top.curve(chord), s.Bottom.curve(chord)
	return b
}

// curve is an edge as a function of x from its middle: an arch when radius is
// not 0, else a line with that slope.
type curve struct {
	radius float64 // under 0 with the crest down
	slope  float64
}

func (e Edge) curve(chord float64) curve {
	switch {
	case e.level() || e.Kind == Straight:
		return curve{}
	case e.Kind == Arch && e.Radius != 0:
		return curve{radius: e.Radius}
	case e.Kind == Arch:
		return curve{radius: math.Copysign(geom.RadiusOf(chord, math.Abs(e.Rise)), e.Rise)}
	case e.Angle != 0:
		return curve{slope: math.Tan(e.Angle)}
	}
	return curve{slope: e.Rise / chord}
}

// at returns the edge's height over its flat place and its slope. The arch is
// √(R² - x²) - R, written so that a flat one loses no digits.
func (c curve) at(x float64) (y, slope float64) {
	if c.radius == 0 {
		return c.slope * x, c.slope
	}
	r := math.Abs(c.radius)
	root := math.Sqrt((r - x) * (r + x))
	return math.Copysign(x*x/(r+root), -c.radius), -x / math.Copysign(root, c.radius)
}

// like returns where an arch has the slope of a line; NaN for two of a kind,
// which never run alike but at the middle.
func like(c, d curve) float64 {
	if c.radius == 0 {
		c, d = d, c
	}
	if c.radius == 0 || d.radius != 0 {
		return math.NaN()
	}
	return -d.slope * c.radius / math.Sqrt(1+d.slope*d.slope)
}

// Top returns the y of the top edge at x, mm. NaN beyond the circle of an
// arch, as for the other figures of a band.
func (b *Band) Top(x float64) float64 {
	y, _ := b.top.at(x - b.middle)
	return b.height + y
}

// Bottom returns the y of the bottom edge at x, mm.
func (b *Band) Bottom(x float64) float64 {
	y, _ := b.bottom.at(x - b.middle)
	return y
}

// Height returns the height between the edges at x, mm: that of a capital
// there.
func (b *Band) Height(x float64) float64 { return b.Top(x) - b.Bottom(x) }

// Heights returns the smallest and the largest height between the edges from
// one x to another, mm.
func (b *Band) Heights(from, to float64) (least, most float64) {
	_, least, most = b.extremes(from, to)
	return least, most
}

// MinHeight returns the smallest height between the edges from one x to
// another, mm; 0 or under where they touch or cross.
func (b *Band) MinHeight(from, to float64) float64 {
	_, least, _ := b.extremes(from, to)
	return least
}

// extremes looks at the only places where the height can be smallest or
// largest.
func (b *Band) extremes(from, to float64) (where, least, most float64) {
	where, least = from, b.Height(from)
	most = least
	for _, x := range [3]float64{to, b.middle, b.middle + like(b.top, b.bottom)} {
		if !(x >= from && x <= to) {
			continue
		}
		h := b.Height(x)
		if h < least {
			where, least = x, h
		}
		most = max(most, h)
	}
	return where, least, most
}

// At returns where a point of the flat line is drawn.
func (b *Band) At(p geom.Point) geom.Point {
	q, _ := b.move(p, geom.Point{})
	return q
}

// move maps a point of the flat line and a velocity at it.
func (b *Band) move(p, d geom.Point) (q, e geom.Point) {
	p.X += p.Y * b.tan
	d.X += d.Y * b.tan
	foot, footSlope := b.bottom.at(p.X - b.middle)
	if b.top == b.bottom {
		p.Y += foot
		d.Y += footSlope * d.X
		return p, d
	}
	top, topSlope := b.top.at(p.X - b.middle)
	share, gain := p.Y/b.height, top-foot
	d.Y += footSlope*d.X + d.Y/b.height*gain + share*(topSlope-footSlope)*d.X
	p.Y += foot + share*gain
	return p, d
}

// affine returns the band's map as an affine one, and whether it is.
func (b *Band) affine() (geom.Affine, bool) {
	if b.top != b.bottom || b.top.radius != 0 {
		return geom.Affine{}, false
	}
	m := b.top.slope
	return geom.Affine{A: 1, B: m, C: b.tan, D: 1 + m*b.tan, F: -m * b.middle}, true
}

// rim is how near an edge's circle letters may come to its side, as a share of
// the radius: beside it they would stand on end.
const rim = 1e-9

// Carry returns nil when letters from one x to another, as drawn, can stand
// between the edges. Errors: *WideError when they are as wide as an arch's
// circle, *VanishError when the edges touch or cross under them.
func (b *Band) Carry(from, to float64) error {
	if !(from <= to) {
		return fmt.Errorf("letters from %g mm to %g mm have no width; give the smaller end first", from, to)
	}
	reach := max(math.Abs(from-b.middle), math.Abs(to-b.middle))
	for i, c := range [2]curve{b.top, b.bottom} {
		if c.radius == 0 || reach <= math.Abs(c.radius)*(1-rim) {
			continue
		}
		e := &WideError{Shape: b.shape, Edge: [2]string{"top", "foot"}[i], Radius: math.Abs(c.radius), Smallest: reach * (1 + 1e-6)}
		if [2]Edge{b.shape.Top, b.shape.Bottom}[i].Rise != 0 {
			e.Rise = geom.Sagitta(e.Smallest, b.chord)
		}
		return e
	}
	where, least, _ := b.extremes(from, to)
	if least <= 0 {
		return b.vanish(where, least, from, to)
	}
	return nil
}

// vanish closes in on the strongest edges, in the same proportion, that leave
// Kept of the letter height.
func (b *Band) vanish(where, least, from, to float64) *VanishError {
	low, high := 0.0, 1.0
	for range 60 {
		k := (low + high) / 2
		weaker := b.shape.scaled(k).band(b.height, b.chord)
		if weaker.MinHeight(from, to) >= Kept*b.height {
			low = k
		} else {
			high = k
		}
	}
	return &VanishError{Shape: b.shape, Height: b.height, X: where, Left: least, Use: b.shape.scaled(low)}
}
