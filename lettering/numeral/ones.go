package numeral

import (
	"math"
	"strings"

	"yokeline/lettering/geom"
	"yokeline/lettering/ink"
)

// Ones says how much room a 1 takes among other digits.
type Ones uint8

const (
	// OwnWidth gives a 1 the room of its own ink, as every other digit has: the
	// gap is measured from ink to ink.
	OwnWidth Ones = iota
	// FullWidth stands the ink of a 1 in the middle of a rectangle as high as that
	// ink and as wide as the ink of the widest of the face's other nine digits, in
	// the same weight and size (or as its own ink, should that be wider). Gaps at
	// its sides are measured to the rectangle, so 17 and 47 have one rhythm. The
	// rectangle is room between digits only: the width and the middle of the
	// number are those of its ink.
	FullWidth
)

// String returns the words that a job and the command line use.
func (o Ones) String() string {
	if o == FullWidth {
		return "full width"
	}
	return "own width"
}

// room returns what the gap at a digit is measured to.
func (d *digits) room(c byte, ones Ones) *ink.Glyph {
	if ones == FullWidth && c == '1' {
		return d.one
	}
	return d.ink[c-'0']
}

// makeRoom prepares the room of a 1 of full width where the request needs it.
func (d *digits) makeRoom(r *Request) error {
	if r.Ones != FullWidth || d.one != nil || !strings.Contains(r.Text, "1") {
		return nil
	}
	if err := d.load("0123456789"); err != nil {
		return err
	}
	box, half := d.ink[1].Box, d.ink[1].Box.Width()/2
	for c, g := range d.ink {
		if c != 1 {
			half = math.Max(half, g.Box.Width()/2)
		}
	}
	x := box.Center().X
	ring := geom.Ring{{X: x - half, Y: box.Min.Y}, {X: x + half, Y: box.Min.Y}, {X: x + half, Y: box.Max.Y}, {X: x - half, Y: box.Max.Y}}
	d.one = ink.New(geom.Region{ring}.Path(), flatness*d.cut.Face().UnitsPerEm())
	return nil
}

// narrowest returns the width of the narrowest digit's ink in font units.
func (d *digits) narrowest(text string) float64 {
	least := math.Inf(1)
	for _, c := range []byte(text) {
		least = min(least, d.ink[c-'0'].Box.Width())
	}
	return least
}
