package edges

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// DefaultTolerance is how far a drawn curve may leave the true one when the
// caller names nothing, mm.
const DefaultTolerance = 0.02

// finest is the smallest tolerance that is taken, mm; below it curves would
// only fall into pieces.
const finest = 1e-6

// Bend draws the flat letters between the edges of the shape: see Band for
// height and chord, Band.Bend for the rest.
func (s Shape) Bend(p geom.Path, height, chord, tolerance float64) (geom.Path, error) {
	b, err := s.Band(height, chord)
	if err != nil {
		return nil, err
	}
	return b.Bend(p, tolerance)
}

// Bend draws the flat letters between the edges. Every point of a drawn curve
// is within tolerance (mm; 0 for DefaultTolerance) of the true one, and half of
// that is aimed at. Contours are taken as closed. The input is not changed;
// straight edges without a shear return it as it is.
//
// Curves stay curves. Each line or curve becomes one cubic with the true ends
// and the true directions there, so smooth joins stay smooth; where it would
// leave the true curve, it is halved. Its x is exact, since the edges do not
// move x. Lines that stay straight, such as stems, stay lines.
//
// Errors: those of Carry, a tolerance or a coordinate that is no length.
func (b *Band) Bend(p geom.Path, tolerance float64) (geom.Path, error) {
	switch {
	case tolerance == 0:
		tolerance = DefaultTolerance
	case !(tolerance >= finest && tolerance <= maxLength):
		return nil, fmt.Errorf("tolerance of bent letters is %g mm; use at least %g, or 0 for %g", tolerance, finest, DefaultTolerance)
	}
	if err := finite(p); err != nil {
		return nil, err
	}
	if m, ok := b.affine(); ok {
		if m == geom.Identity() {
			return p, nil
		}
		return p.Transform(m), nil
	}
	if len(p) == 0 {
		return nil, nil
	}
	if err := b.Carry(b.shape.Extent(p)); err != nil {
		return nil, err
	}
	d := bender{band: b, aim: tolerance / 2, out: make(geom.Path, 0, len(p)+len(p)/4)}
	d.path(p)
	return d.out, nil
}

func finite(p geom.Path) error {
	for i := range p {
		for _, q := range p[i].P {
			if !(math.Abs(q.X) <= maxLength && math.Abs(q.Y) <= maxLength) {
				return fmt.Errorf("letters reach (%g, %g) mm; coordinates go up to %g mm", q.X, q.Y, maxLength)
			}
		}
	}
	return nil
}

// bender draws a path between the edges of a band.
type bender struct {
	band *Band
	aim  float64
	out  geom.Path

	open      bool
	at, first geom.Point // flat
	// The curve at hand as a polynomial: c[0] + c[1]·t + …
	c    [4]geom.Point
	line bool
}

func (d *bender) path(p geom.Path) {
	for _, s := range p {
		switch s.Op {
		case geom.Move:
			d.close()
			d.begin(s.P[0])
		case geom.Line:
			d.lineTo(s.P[0])
		case geom.Quad:
			d.quadTo(s.P[0], s.P[1])
		case geom.Cube:
			d.cubeTo(s.P[0], s.P[1], s.P[2])
		case geom.Close:
			d.close()
		}
	}
	d.close()
}

func (d *bender) begin(p geom.Point) {
	d.open, d.at, d.first = true, p, p
	d.out.MoveTo(d.band.At(p))
}

// close draws the edge back to the start, which bends like any other.
func (d *bender) close() {
	if !d.open {
		return
	}
	if d.at != d.first {
		d.lineTo(d.first)
	}
	d.out.Close()
	d.open = false
}

func (d *bender) lineTo(p geom.Point) {
	d.c = [4]geom.Point{d.at, p.Sub(d.at)}
	d.draw(p, true)
}

func (d *bender) quadTo(a, p geom.Point) {
	d.c = [4]geom.Point{d.at, a.Sub(d.at).Mul(2), d.at.Add(p).Sub(a.Mul(2))}
	d.draw(p, false)
}

func (d *bender) cubeTo(a, b, p geom.Point) {
	c1, c2 := a.Sub(d.at).Mul(3), d.at.Add(b).Sub(a.Mul(2)).Mul(3)
	d.c = [4]geom.Point{d.at, c1, c2, p.Sub(d.at).Sub(c1).Sub(c2)}
	d.draw(p, false)
}

// draw draws the curve at hand, which ends at p. A curve before any Move
// starts a contour at its end, as in Path.Flatten.
func (d *bender) draw(p geom.Point, line bool) {
	if !d.open {
		d.begin(p)
		return
	}
	d.line = line
	from, to := d.spot(0), d.spot(1)
	to.q = d.band.At(p) // to the last digit, so that contours close
	d.stretch(from, to, 0)
	d.at = p
}

// spot is a place on the drawn curve: parameter, point, velocity.
type spot struct {
	t    float64
	q, d geom.Point
}

func (d *bender) spot(t float64) spot {
	c := &d.c
	p := geom.Point{
		X: c[0].X + t*(c[1].X+t*(c[2].X+t*c[3].X)),
		Y: c[0].Y + t*(c[1].Y+t*(c[2].Y+t*c[3].Y)),
	}
	v := geom.Point{
		X: c[1].X + t*(2*c[2].X+t*3*c[3].X),
		Y: c[1].Y + t*(2*c[2].Y+t*3*c[3].Y),
	}
	q, e := d.band.move(p, v)
	return spot{t, q, e}
}

// stretch draws the curve between two spots. Beside the side of an arch's
// circle the true curve stands on end, and halving stops at a length that
// nobody can see.
func (d *bender) stretch(from, to spot, depth int) {
	const (
		deepest  = 48
		straight = 1e-7 // mm
	)
	bow, miss := d.misses(from, to)
	if depth == deepest || d.line && bow <= straight {
		d.out.LineTo(to.q)
		return
	}
	if miss <= d.aim {
		third := (to.t - from.t) / 3
		d.out.CubeTo(from.q.Add(from.d.Mul(third)), to.q.Sub(to.d.Mul(third)), to.q)
		return
	}
	mid := d.spot((from.t + to.t) / 2)
	d.stretch(from, mid, depth+1)
	d.stretch(mid, to, depth+1)
}

// misses returns how far, along y, the true curve leaves the straight line and
// the cubic that would be drawn. The cubic's miss is s²(1-s)² times a function
// that hardly changes over a short stretch, so a few places show it.
func (d *bender) misses(from, to spot) (bow, miss float64) {
	third := (to.t - from.t) / 3
	p, q := from.q.Y, to.q.Y
	a, b := p+from.d.Y*third, q-to.d.Y*third
	for _, s := range [5]float64{1. / 6, 1. / 3, 1. / 2, 2. / 3, 5. / 6} {
		y := d.spot(from.t + s*(to.t-from.t)).q.Y
		u := 1 - s
		bow = max(bow, math.Abs(y-(u*p+s*q)))
		miss = max(miss, math.Abs(y-(u*u*u*p+3*u*u*s*a+3*u*s*s*b+s*s*s*q)))
	}
	return bow, miss
}
