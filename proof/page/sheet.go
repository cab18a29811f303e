// Package page is the surface that every sheet of a proof is drawn on, once,
// whatever it is printed as: a display list of filled and stroked paths, clips,
// shared drawings and lines of text. Millimetres, x to the right, y DOWN from
// the top left corner of the sheet; type sizes in points.
//
// The list is the narrow waist between what draws (proof/parts and the pages
// of a proof) and what writes: SVG and PNG here, PDF in proof/pdf. It has
// exactly the operations that all three can do alike, so no colour is
// transparent (mix instead) and every fill is non-zero. Text is set here, glyph
// by glyph, and the writers only place what was set.
package page

// Sheet is a size of paper in mm, in the turn it is printed.
type Sheet struct {
	Name string
	W, H float64
}

// Letter is 8 1/2 × 11 in, upright (ANSI/ASME Y14.1, size A).
func Letter() Sheet { return Sheet{"Letter", 215.9, 279.4} }

// A4 is 210 × 297 mm, upright (ISO 216).
func A4() Sheet { return Sheet{"A4", 210, 297} }

// Landscape returns the sheet with its long side across.
func (s Sheet) Landscape() Sheet { return Sheet{s.Name, max(s.W, s.H), min(s.W, s.H)} }

// Portrait returns the sheet with its long side upright.
func (s Sheet) Portrait() Sheet { return Sheet{s.Name, min(s.W, s.H), max(s.W, s.H)} }

// Wide reports whether the long side is across.
func (s Sheet) Wide() bool { return s.W > s.H }
