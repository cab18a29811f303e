package parts

import (
	"strconv"

	"yokeline/lettering/length"
	"yokeline/proof/page"
)

// The tape measure, mm.
const (
	// TapeWidth is the width of the tape.
	TapeWidth   = 7.6
	tapeMargin  = 2.2 // above zero and past the end
	tapeMark    = 0.2 // weight of ticks with a figure
	figureDrop  = 0.85
	unitAbove   = 3.3
	lengthNoise = 1e-6
)

// paperUnit is what a tape or a scale bar counts in.
type paperUnit struct {
	name string
	mm   float64
}

// counts returns inches, or centimetres for every other unit: a job prints in
// one of the two.
func counts(u length.Unit) paperUnit {
	if u == length.Inch {
		return paperUnit{"in", 25.4}
	}
	return paperUnit{"cm", 10}
}

// Tape draws a tape measure upright about x, its zero at y0, to the length
// that y1 stands for; k is mm of paper for 1 mm of garment.
func Tape(p *page.Pen, x, y0, y1, k float64, unit length.Unit) {
	u := counts(unit)
	p.FillRect(x-TapeWidth/2, y0-tapeMargin, TapeWidth, y1-y0+2*tapeMargin, page.White)
	step, big := u.mm*k, 10
	if unit == length.Inch {
		big = 5
	}
	last := int((y1-y0)/step + lengthNoise)
	for i := 0; i <= last; i++ {
		y := y0 + float64(i)*step
		tapeTicks(p, x, y, tapeTick(unit, i), i%big == 0)
		if i%big == 0 {
			p.Text(x, y+figureDrop, Label().Bold().In(Ink).To(page.Middle).Style, strconv.Itoa(i))
		}
		if unit == length.Inch && i < last {
			tapeTicks(p, x, y+step/2, 0.8, false)
		}
	}
	p.StrokeRect(x-TapeWidth/2, y0-tapeMargin, TapeWidth, y1-y0+2*tapeMargin, Ink, solid(DimensionLine))
	p.Text(x, y0-unitAbove, Label().To(page.Middle).Style, u.name)
}

// tapeTick returns the length of the tick of a whole unit.
func tapeTick(unit length.Unit, i int) float64 {
	switch {
	case unit == length.Inch && i%5 == 0, i%10 == 0:
		return 2.0
	case unit == length.Inch, i%5 == 0:
		return 1.5
	}
	return 0.9
}

func tapeTicks(p *page.Pen, x, y, long float64, figure bool) {
	l := solid(Hair)
	if figure {
		l = solid(tapeMark)
	}
	p.Line(x-TapeWidth/2, y, x-TapeWidth/2+long, y, Ink, l)
	p.Line(x+TapeWidth/2-long, y, x+TapeWidth/2, y, Ink, l)
}
