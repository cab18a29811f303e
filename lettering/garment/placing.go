package garment

import "math"

// Hand is where a piece stands sideways.
type Hand uint8

// The hands. AsUsual is what the placement table says.
const (
	AsUsual Hand = iota
	AtCentre
	AtWearersLeft
	AtWearersRight
)

// Moved returns a placement moved sideways: to the centre line, to the middle of
// the wearer's left or right front, or to the other sleeve or leg. The wearer's
// left is on the viewer's right of the front. How far across a piece on the front
// stands is common practice, no source: a quarter of the chest's half.
func (g *Garment) Moved(p Placement, to Hand) Placement {
	onPair := p.Place == SleeveNumber || p.Place == ShortsNumber
	switch {
	case to == AsUsual || onPair && to != AtWearersRight:
		return p
	case onPair:
		return p.mirrored()
	case to == AtCentre:
		p.CentreX = 0
		return p
	}
	p.CentreX, p.Split = buttonAcross*g.measures.ChestHalf, false
	if to == AtWearersRight {
		p.CentreX = -p.CentreX
	}
	return p
}

// mirrored returns the placement on the other side of the centre line.
func (p Placement) mirrored() Placement {
	p.CentreX, p.Turn = -p.CentreX, -p.Turn
	p.origin.X, p.down.X = -p.origin.X, -p.down.X
	return p
}

// RoomAt is Room for a placement that may have been moved sideways.
func (g *Garment) RoomAt(p Placement, yTop, yBottom float64) Room {
	if p.Place == SleeveNumber && p.down.X < 0 {
		p = p.mirrored() // both sleeves have the same room; that of the left is worked out
	}
	if yTop > yBottom {
		yTop, yBottom = yBottom, yTop
	}
	var r Room
	r.Panel, r.Line = g.panelWidth(p, yTop, yBottom)
	r.Width, r.Why = r.Panel, "seam: keeps clear of the "+r.Line
	if r.Convention = g.convention(p); r.Convention > 0 && r.Convention < r.Width {
		r.Width, r.Why = r.Convention, "convention, "+practice
	}
	return r
}

// AtFoot reports whether the room ends at the foot of the panel: at the hem, or
// beyond it.
func (r Room) AtFoot() bool { return r.Line == hemLine || r.Line == offPiece }

// hemLine is what a body's hem is called among the lines to keep clear of.
const hemLine = "hem"

// Opening returns how far from the centre line, in mm, the panels on both sides
// of a placket begin over a band of levels: half of what a piece that is parted
// there leaves free, the placket's clearance included. It is 0 for a placement
// that is not parted.
func (g *Garment) Opening(p Placement, yTop, yBottom float64) float64 {
	if !p.Split {
		return 0
	}
	half := 0.0
	for _, c := range g.clears(p.Side) {
		if c.piece.sleeve {
			continue
		}
		for _, k := range c.capsules {
			if c.keeps[k.keep].why != placketLine {
				continue
			}
			if s := k.within(yTop, yBottom); s.lo < s.hi {
				half = math.Max(half, math.Max(math.Abs(s.lo), math.Abs(s.hi)))
			}
		}
	}
	return half
}

// placketLine is what the edge of a placket is called among the lines to keep
// clear of.
const placketLine = "placket"

// belowRacer is the highest top of a piece on a racer back: above the underarm
// the bindings leave too narrow a strip for a name or a number. 0 on other cuts.
func (f *frame) belowRacer(m Margins) float64 {
	if f.RacerWidth > 0 {
		return f.ArmholeDepth + m.Seam
	}
	return 0
}
