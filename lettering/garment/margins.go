package garment

import (
	"fmt"
	"math"

	"yokeline/lettering/geom"
)

// LineKind is what a line to keep clear of is, which decides its margin.
type LineKind uint8

// The kinds of line to keep clear of.
const (
	SeamLine     LineKind = iota // any sewn seam
	HardLine                     // placket, buttons, cord, the elastic of a waistband
	HemLine                      // hems of body and sleeves
	UnderarmLine                 // where armhole and side seam cross
	FoldLine                     // the fold of a sleeve as it lies flat
	lineKinds
)

// String returns the kind in words.
func (k LineKind) String() string {
	if k >= lineKinds {
		return "none"
	}
	return [...]string{"seam", "hard part", "hem", "underarm", "fold"}[k]
}

// Margins are the distances, in mm, that decoration keeps from the lines of a
// garment. A margin of 0 is the usual one.
type Margins struct {
	Seam     float64 // of any sewn seam
	Hard     float64 // of plackets, buttons, cords and waistbands
	Hem      float64
	Underarm float64 // of the crossing of armhole and side seam
	Fold     float64 // of the fold of a sleeve
}

// What a margin may be, mm: less than the least is no margin, and more than the
// most leaves no panel on most garments.
const (
	LeastMargin = 1.0
	MostMargin  = 150.0
)

// DefaultMargins returns the usual margins: common practice, no source.
func DefaultMargins() Margins {
	return Margins{Seam: ClearSeam, Hard: ClearHard, Hem: ClearHem, Underarm: ClearUnderarm, Fold: ClearFold}
}

// Of returns the margin of a kind of line.
func (m Margins) Of(k LineKind) float64 {
	return [lineKinds]float64{m.Seam, m.Hard, m.Hem, m.Underarm, m.Fold}[k%lineKinds]
}

// settled fills in the usual margins. The error names a margin that is out of
// bounds.
func (m Margins) settled() (Margins, error) {
	usual := DefaultMargins()
	for _, f := range []struct {
		name string
		at   *float64
		kind LineKind
	}{
		{"seam", &m.Seam, SeamLine}, {"hard part", &m.Hard, HardLine}, {"hem", &m.Hem, HemLine},
		{"underarm", &m.Underarm, UnderarmLine}, {"fold", &m.Fold, FoldLine},
	} {
		if *f.at == 0 {
			*f.at = usual.Of(f.kind)
		}
		if math.IsNaN(*f.at) || *f.at < LeastMargin || *f.at > MostMargin {
			return m, fmt.Errorf("margin to keep clear of a %s: %g mm is out of reach, give between %g mm and %g mm", f.name, *f.at, LeastMargin, MostMargin)
		}
	}
	return m, nil
}

// With returns the same garment with other margins: its panels, the room on
// them and the placements that keep clear of a line follow. The error names a
// margin that is out of bounds.
func (g *Garment) With(m Margins) (*Garment, error) {
	m, err := m.settled()
	if err != nil {
		return nil, err
	}
	return &Garment{cut: g.cut, size: g.size, measures: g.measures, figures: g.figures, shape: g.shape, margins: m}, nil
}

// Margins returns what decoration keeps from the lines of the garment, mm.
func (g *Garment) Margins() Margins { return g.margins }

// KeepClear is a line that decoration on one panel stays away from.
type KeepClear struct {
	Name   string // armhole seam
	Hand   string // left or right, as the wearer has it; empty for a line that runs across
	Kind   LineKind
	Margin float64      // mm
	Points []geom.Point // the open line, drawn within 0.02 mm; one point for the underarm
}

// Words returns the line's name with its hand: left armhole seam.
func (k KeepClear) Words() string {
	if k.Hand == "" {
		return k.Name
	}
	return k.Hand + " " + k.Name
}

// lines returns what one piece keeps clear of.
func (c *clear) lines(s Side) []KeepClear {
	var out []KeepClear
	for _, k := range c.keeps {
		out = append(out, KeepClear{Name: k.why, Hand: handOf(s, k.line), Kind: k.kind, Margin: k.margin, Points: pointsOf(k.line)})
	}
	return out
}

// pointsOf flattens a line; one that has shrunk to a point is a single one.
func pointsOf(line chain) []geom.Point {
	var out []geom.Point
	for _, p := range line.Flatten(keepTolerance) {
		if len(out) == 0 || p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	return out
}

// handOf is the wearer's side that a line lies on, empty when it is both.
func handOf(s Side, line chain) string {
	left, right := false, false // of the viewer
	for _, p := range line.Flatten(keepTolerance) {
		left, right = left || p.X < 0, right || p.X > 0
	}
	switch {
	case left == right:
		return ""
	case right == (s == Front):
		return "left"
	}
	return "right"
}
