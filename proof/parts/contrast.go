package parts

import (
	"math"

	"yokeline/lettering/tint"
	"yokeline/proof/page"
)

// Luminance returns the relative luminance of a colour, 0 to 1, as package tint
// has it.
func Luminance(c page.Colour) float64 { return screen(c).Luminance() }

// Contrast returns the contrast ratio of two colours, 1 to 21, as package tint
// has it.
func Contrast(a, b page.Colour) float64 { return tint.Contrast(screen(a), screen(b)) }

func screen(c page.Colour) tint.Colour {
	r, g, b := c.RGB()
	return tint.Colour{R: r, G: g, B: b}
}

// Grey returns the grey of the same luminance: how a colour comes out in grey
// print (the transfer curve of IEC 61966-2-1).
func Grey(c page.Colour) page.Colour {
	y := Luminance(c)
	v := 12.92 * y
	if y > 0.0031308 {
		v = 1.055*math.Pow(y, 1/2.4) - 0.055
	}
	g := page.Colour(math.Round(v * 255))
	return g<<16 | g<<8 | g
}

// lightness returns CIE L*, 0 to 100.
func lightness(c page.Colour) float64 { return screen(c).Lab().L }

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
