package garment

import "math"

// Widths that pieces keep to by convention: a share of a measure, capped. All
// are common practice, no source.
const (
	nameShare      = 0.70 // back name / shoulder width
	nameMost       = 330.0
	nameMostHockey = 380.0
	teamShare      = 0.60 // front name / chest half
	teamMost       = 355.0
)

// offPiece is the line that ends a room whose band is not on the piece at all.
const offPiece = "edge of the garment"

// Room is the width a piece has, in millimetres.
type Room struct {
	Width      float64 // the smaller of the two below
	Panel      float64 // free between the lines to keep clear of, both sides of the placement's centre alike
	Convention float64 // what convention allows; 0 where it says nothing
	Why        string  // what decided, and its clearance or basis
	Line       string  // the line that ends the panel: armhole seam
}

// Room returns the width that a piece has at a place over the whole band of
// levels from yTop to yBottom. It is worked out exactly from the lines to keep
// clear of, not from the traced panel. A band that is not on one panel has no
// room; neither has a place that the cut does not offer.
func (g *Garment) Room(p Place, yTop, yBottom float64) Room {
	place, err := g.Place(p)
	if err != nil {
		return Room{Why: err.Error()}
	}
	return g.RoomAt(place, yTop, yBottom)
}

// panelWidth is the free width of the panel that the middle of the band lies on.
func (g *Garment) panelWidth(place Placement, y0, y1 float64) (float64, string) {
	if place.Place == SleeveNumber {
		return g.sleeveWidth(place, y0, y1)
	}
	best, why := 0.0, ""
	for _, c := range g.clears(place.Side) {
		if c.piece.sleeve {
			continue
		}
		half, line := 0.0, ""
		if place.Split {
			half, line = c.splitHalf(y0, y1)
		} else {
			half, line = c.free(place.CentreX, y0, y1)
		}
		if half > best || why == "" || best == 0 && why == offPiece {
			best, why = half, line
		}
	}
	return 2 * best, why
}

// splitHalf is how far a piece that is parted at the placket may reach from the
// centre: the free stretch of this front, over the band, ends there.
func (c *clear) splitHalf(y0, y1 float64) (float64, string) {
	mid := (y0 + y1) / 2
	row := c.row(mid, &scratch{})
	if len(row) == 0 {
		return 0, offPiece
	}
	widest := row[0]
	for _, s := range row[1:] {
		if s.hi-s.lo > widest.hi-widest.lo {
			widest = s
		}
	}
	x := (widest.lo + widest.hi) / 2
	outer, why := math.Inf(1), ""
	for _, k := range c.capsules {
		s := k.within(y0, y1)
		if s.lo >= s.hi {
			continue
		}
		switch {
		case s.lo <= x && x <= s.hi:
			return 0, c.keeps[k.keep].why
		case x > 0 && s.lo > x && s.lo < outer:
			outer, why = s.lo, c.keeps[k.keep].why
		case x < 0 && s.hi < x && -s.hi < outer:
			outer, why = -s.hi, c.keeps[k.keep].why
		}
	}
	return outer, why
}

// sleeveWidth is the free width of a piece that is centred on the sleeve's fold:
// twice the way from the fold to the nearest line to keep clear of, on the front
// or on the back half, whichever is less. It is measured square to the straight
// part of the fold; where the fold bends, from its innermost point.
func (g *Garment) sleeveWidth(p Placement, y0, y1 float64) (float64, string) {
	f := g.shape.(*frame)
	upright := func(q pt) pt {
		d := q.Sub(p.origin)
		return pt{X: d.Dot(pt{X: p.down.Y, Y: -p.down.X}), Y: d.Dot(p.down)}
	}
	fold, reaches := math.Inf(1), false
	line := f.sleeve.fold.Flatten(keepTolerance)
	for i := 1; i < len(line); i++ {
		s := edgeWithin(noSpan(), upright(line[i-1]), upright(line[i]), y0, y1)
		fold = math.Min(fold, s.lo)
		reaches = reaches || upright(line[i]).Y >= y1
	}
	if math.IsInf(fold, 1) || !reaches {
		return 0, "sleeve hem"
	}
	half, why := math.Inf(1), ""
	for _, s := range []Side{Front, Back} {
		c := g.sleeveOn(s)
		for _, k := range c.capsules {
			w := newCapsule(upright(k.a), upright(k.b), k.r, k.keep).within(y0, y1)
			if c.keeps[k.keep].why == "fold" || w.lo >= w.hi {
				continue
			}
			if d := math.Max(0, fold-w.hi); d < half {
				half, why = d, c.keeps[k.keep].why
			}
		}
	}
	return 2 * half, why
}

// sleeveOn is the half of the wearer's left sleeve that shows on a side, drawn on
// the viewer's right.
func (g *Garment) sleeveOn(s Side) *clear {
	for _, c := range g.clears(s) {
		if c.piece.sleeve {
			return c
		}
	}
	return nil
}

// convention is the width that habit gives a piece, 0 for none.
func (g *Garment) convention(p Placement) float64 {
	switch p.Place {
	case BackName:
		most := nameMost
		if g.cut == Hockey {
			most = nameMostHockey
		}
		return math.Min(nameShare*g.measures.ShoulderWidth, most)
	case FrontName:
		return math.Min(teamShare*g.measures.ChestHalf, teamMost)
	case LeftChest:
		return distancesFor(g.size).chestSize
	}
	return 0
}
