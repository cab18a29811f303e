// Package parts draws the instruments that the pages of a proof are made of:
// verdict marks, rule results, dimension lines, the tape measure, the scale
// bar, the fingerprint comb, colour chips, and the head and foot of a page.
// Lengths are mm on paper, y down; sizes of type are points. Each part is one
// function that draws at a position; nothing here decides what is said.
package parts

import "yokeline/proof/page"

// The roles of colour. A page has no others but the team's own.
const (
	Ink    page.Colour = 0x16202A // text, drawings, marks
	Slate  page.Colour = 0x55616E // labels, notes
	Rule   page.Colour = 0x8C96A1 // row rules and tile borders, never text
	Mist   page.Colour = 0xDADDDD // row lines on screen only
	Tile   page.Colour = 0xF1F0EC // behind shirts in tiles, inside tinted shapes
	Decide page.Colour = 0xA8361A // over, a broken rule; always with its mark and word
)

// Weights of lines, mm.
const (
	HeadBar       = 0.60 // bar at the head of a page
	OverFrame     = 0.70 // frame of a tile that is over
	OverFrameRow  = 0.50 // the same on the page of choices
	Outline       = 0.35 // outline of a shirt, table heads, signature lines, tick of a dimension
	OutlineSmall  = 0.25 // outline of a shirt drawn smaller than 1 : 12, tick boxes
	DimensionLine = 0.18
	Seam          = 0.15 // seams and stitching
	Hair          = 0.13 // rules, extension lines, tile borders, posts
	OverPost      = 0.30 // posts of a name that is over
)

// SeamStrength and StitchStrength are how much of white-or-ink is mixed into
// the panel's colour for seams and for stitches.
const (
	SeamStrength   = 0.55
	StitchStrength = 0.45
)

// StitchDash is the dash of stitching.
func StitchDash() []float64 { return []float64{0.7, 0.5} }

// DatumDash is the dash of a datum line.
func DatumDash() []float64 { return []float64{3, 0.8, 0.5, 0.8} }

// solid is a plain line.
func solid(weight float64) page.Line { return page.Line{Weight: weight} }
