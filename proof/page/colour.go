package page

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
	"strings"
)

// Colour is an opaque sRGB colour, 0xRRGGBB.
type Colour uint32

// White is the colour of the paper.
const White Colour = 0xFFFFFF

// RGB returns the three 8-bit channels.
func (c Colour) RGB() (r, g, b uint8) { return uint8(c >> 16), uint8(c >> 8), uint8(c) }

// Hex returns the colour as people write it: #16202A.
func (c Colour) Hex() string { return fmt.Sprintf("#%06X", uint32(c)&0xFFFFFF) }

// NRGBA returns the colour for the image packages.
func (c Colour) NRGBA() color.NRGBA {
	r, g, b := c.RGB()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}

// ParseColour reads #RRGGBB or #RGB, in either case. Anything else is an error.
func ParseColour(text string) (Colour, error) {
	digits, found := strings.CutPrefix(text, "#")
	if len(digits) == 3 {
		d := digits
		digits = string([]byte{d[0], d[0], d[1], d[1], d[2], d[2]})
	}
	v, err := strconv.ParseUint(digits, 16, 32)
	if !found || err != nil || len(digits) != 6 {
		return 0, fmt.Errorf("colour %q is not written as #RRGGBB", text)
	}
	return Colour(v), nil
}

// Mix returns the colour seen when share (0 to 1) of c covers under. It takes
// the place of transparency, which printers' software flattens each its own way.
func (c Colour) Mix(under Colour, share float64) Colour {
	blend := func(shift uint) Colour {
		a, b := float64(c>>shift&0xFF), float64(under>>shift&0xFF)
		return Colour(math.Round(b+(a-b)*share)) << shift
	}
	return blend(16) | blend(8) | blend(0)
}
