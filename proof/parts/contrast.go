package parts

import (
	"math"

	"yokeline/proof/page"
)

// Luminance returns the relative luminance of a colour, 0 to 1 (W3C, Web
// Content Accessibility Guidelines 2.2, definition of relative luminance).
func Luminance(c page.Colour) float64 {
	r, g, b := c.RGB()
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

func linear(channel uint8) float64 {
	v := float64(channel) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// Contrast returns the contrast ratio of two colours, 1 to 21 (W3C, Web
// Content Accessibility Guidelines 2.2, definition of contrast ratio).
func Contrast(a, b page.Colour) float64 {
	la, lb := Luminance(a), Luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// Grey returns the grey of the same luminance: how a colour comes out in grey
// print.
func Grey(c page.Colour) page.Colour {
	y := Luminance(c)
	v := 12.92 * y
	if y > 0.0031308 {
		v = 1.055*math.Pow(y, 1/2.4) - 0.055
	}
	g := page.Colour(math.Round(v * 255))
	return g<<16 | g<<8 | g
}

// lightness returns CIE L*, 0 to 100 (CIE 15:2018, 8.2.1), with the luminance
// of white as 1.
func lightness(c page.Colour) float64 {
	y := Luminance(c)
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}

// OnShirt is how lines and text stand on a panel.
type OnShirt struct {
	Line  page.Colour // white, the lettering's own light colour, or ink
	Halo  page.Colour // the other one
	Needs bool        // Line alone is too weak: draw it over a halo of HaloWidth
}

// HaloWidth is how far a halo reaches beyond what it surrounds, mm.
const HaloWidth = 0.5

// least is the contrast that text needs (WCAG 2.2, 1.4.3, level AA), and
// nearWhite how close in L* a colour must be to stand for white.
const (
	least     = 4.5
	nearWhite = 5.0
)

// WhiteOrInk chooses the colour for lines and text on a panel: of white and
// ink the one with the larger contrast. The first of the lettering's colours
// that is as good as white is taken in its place.
func WhiteOrInk(panel page.Colour, lettering ...page.Colour) OnShirt {
	white := page.White
	for _, c := range lettering {
		if lightness(page.White)-lightness(c) <= nearWhite {
			white = c
			break
		}
	}
	line, halo := white, Ink
	if Contrast(Ink, panel) > Contrast(white, panel) {
		line, halo = Ink, white
	}
	return OnShirt{Line: line, Halo: halo, Needs: Contrast(line, panel) < least}
}

// keylineBelow is the contrast under which two team colours that touch are
// parted by a line.
const keylineBelow = 1.6

// NeedsKeyline reports whether two colours that touch are too alike to tell
// apart without a line of weight Hair between them.
func NeedsKeyline(a, b page.Colour) bool { return Contrast(a, b) < keylineBelow }
