// Package tint says how far two colours stand apart: for an eye near by, for
// an eye far off, and for an eye that does not part red from green.
//
// Colours are screen colours (sRGB, IEC 61966-2-1). Film, thread and cloth
// differ from the screen and from lamp to lamp, so every figure here is an
// estimate and never proves that a rule measured on cloth is met.
//
// Which figure answers which question: the contrast ratio and the difference
// in L* tell whether lettering can be read, because far off the eye goes by
// light and dark; CIEDE2000 tells whether two colours look alike side by side.
// Red on green differs much by the second and hardly by the first.
package tint

import (
	"fmt"
	"math"
	"strconv"
)

// Colour is a screen colour, sRGB with 8 bits a channel.
type Colour struct{ R, G, B uint8 }

// Parse reads a colour written #rrggbb, in capitals or not. Anything else is
// an error that says how to write it.
func Parse(text string) (Colour, error) {
	if len(text) == 7 && text[0] == '#' {
		// ParseUint takes no sign, and no underscore when the base is given.
		if v, err := strconv.ParseUint(text[1:], 16, 32); err == nil {
			return Colour{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, nil
		}
	}
	return Colour{}, fmt.Errorf("%q is not a colour: write # and six digits 0 to 9 or a to f, such as #14284b", text)
}

// String returns the colour as #rrggbb, in small letters.
func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// Luminance returns the relative luminance, 0 for black to 1 for white (W3C,
// Web Content Accessibility Guidelines 2.2, definition of relative luminance).
func (c Colour) Luminance() float64 { return c.light().luminance() }

// Lab returns the colour in CIE L*a*b* against D65, 2 degree observer
// (CIE 15:2004, 8.2.1).
func (c Colour) Lab() Lab { return c.light().lab() }

// Contrast returns the contrast ratio of two colours, 1 for equal luminance
// to 21 for black and white, in either order (W3C, Web Content Accessibility
// Guidelines 2.2, definition of contrast ratio).
func Contrast(a, b Colour) float64 { return contrast(a.light(), b.light()) }

// DeltaL returns the difference of two colours in CIE L*, 0 to 100, in either
// order.
func DeltaL(a, b Colour) float64 { return math.Abs(a.Lab().L - b.Lab().L) }

// DeltaE returns the CIEDE2000 difference of two colours, in either order.
func DeltaE(a, b Colour) float64 { return CIEDE2000(a.Lab(), b.Lab()) }

// light is a colour in linear light by the sRGB primaries: red, green, blue, 0
// to 1 each.
type light [3]float64

func (c Colour) light() light {
	return light{linear(c.R), linear(c.G), linear(c.B)}
}

// linear undoes the transfer curve of sRGB. WCAG 2.2 took over the standard's
// 0.04045; the 0.03928 of its first edition gives the same for every 8 bit
// value.
func linear(channel uint8) float64 {
	v := float64(channel) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// colour rounds to the nearest screen colour.
func (l light) colour() Colour {
	return Colour{R: channel(l[0]), G: channel(l[1]), B: channel(l[2])}
}

func channel(v float64) uint8 {
	s := 12.92 * v
	if v > 0.0031308 {
		s = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * min(max(s, 0), 1)))
}

func (l light) luminance() float64 {
	return 0.2126*l[0] + 0.7152*l[1] + 0.0722*l[2]
}

func contrast(a, b light) float64 {
	x, y := a.luminance(), b.luminance()
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}
