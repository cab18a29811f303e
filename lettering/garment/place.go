package garment

import (
	"fmt"
	"math"

	"yokeline/lettering/garment/internal/curve"
	"yokeline/lettering/geom"
)

// Place is where a piece sits on a garment.
type Place string

// The places. Left is the wearer's left.
const (
	BackName     Place = "back name"
	BackNumber   Place = "back number"
	FrontName    Place = "front name"
	FrontNumber  Place = "front number"
	LeftChest    Place = "left chest"
	SleeveNumber Place = "sleeve number"
	ShortsNumber Place = "shorts number"
)

// Places returns the places that a cut offers, in a fixed order.
func Places(c Cut) []Place {
	switch c {
	case Shorts:
		return []Place{ShortsNumber}
	case BasketballTank, RacerbackTank:
		return []Place{BackName, BackNumber, FrontName, FrontNumber, LeftChest}
	}
	return []Place{BackName, BackNumber, FrontName, FrontNumber, LeftChest, SleeveNumber}
}

// Anchor says which edge of a piece a placement fixes.
type Anchor uint8

// The anchors.
const (
	ByTop Anchor = iota
	ByCentre
	ByBottom
)

// Placement is where a piece sits by convention. Levels run down the garment:
// they are y, but on a sleeve they run along its middle from the shoulder
// point's level, and across is measured square to it. Point maps both.
type Placement struct {
	Place       Place
	Side        Side
	CentreX     float64 // centre of the piece; on a sleeve, of its middle at the level of the anchor
	Anchor      Anchor
	Level       float64 // of the anchored edge, when the piece stands alone
	Top         float64 // level of the top edge: Level, or for another anchor with a piece of usual height
	Least       float64 // top edge no higher than this, whatever stands above; 0 none
	BelowCollar float64 // Top below the neck seam of that side; NaN on sleeves and shorts
	GapAfter    float64 // from this piece to the one below it; 0 none
	Turn        float64 // radians by which the piece is turned clockwise on the page
	Lowest      float64 // bottom edge no lower than this; 0 none
	Split       bool    // the piece crosses the placket and is parted there
	MaxHeight   float64 // 0 none
	Basis       string  // what the figures rest on

	origin, down geom.Point // of a sleeve's middle; down is zero elsewhere
}

// practice is the basis of every placement.
const practice = "common practice, no source"

// usualHeight stands in for a piece whose height is not known yet, mm.
const usualHeight = 75

// capClear is how far below the shoulder a sleeve is wide enough for a number:
// above it the armhole's seams close in. Common practice, no source.
const capClear = 45

// touching keeps a piece that just fits from meeting a clearance by rounding, mm.
const touching = 0.01

// TopFor returns the level of the top edge of a piece of a height, in mm. A tall
// piece on a sleeve moves down out of the narrow cap as far as the hem lets it.
func (p Placement) TopFor(height float64) float64 {
	switch p.Anchor {
	case ByCentre:
		top := p.Level - height/2
		if p.Lowest > 0 {
			top = math.Max(top, math.Min(capClear, p.Lowest-height))
		}
		return top
	case ByBottom:
		return p.Level - height
	}
	return p.Level
}

// Point returns the point of the garment at a distance across from the piece's
// centre, to the viewer's right, and at a level.
func (p Placement) Point(across, level float64) geom.Point {
	if p.down == (pt{}) {
		return pt{X: p.CentreX + across, Y: level}
	}
	right := pt{X: p.down.Y, Y: -p.down.X}
	return p.origin.Add(p.down.Mul(level)).Add(right.Mul(across))
}

// Across is the inverse of Point: how far a point of the garment lies across from
// the piece's centre, and its level.
func (p Placement) Across(q geom.Point) (across, level float64) {
	if p.down == (pt{}) {
		return q.X - p.CentreX, q.Y
	}
	d := q.Sub(p.origin)
	return d.Dot(pt{X: p.down.Y, Y: -p.down.X}), d.Dot(p.down)
}

// Place returns where a piece sits by convention. It is an error when the cut
// has no such place.
func (g *Garment) Place(p Place) (Placement, error) {
	var out Placement
	f, body := g.shape.(*frame)
	s, legs := g.shape.(*shorts)
	switch {
	case body && p != ShortsNumber && !(p == SleeveNumber && f.style.sleeve.kind == sleeveless):
		out = f.place(p, distancesFor(g.size), g.margins)
	case legs && p == ShortsNumber:
		out = s.place(distancesFor(g.size), g.margins)
	}
	if out.Place == "" {
		return out, fmt.Errorf("a %s has no place for a %s: it has %v", g.cut, p, Places(g.cut))
	}
	out.Basis, out.BelowCollar = practice, math.NaN()
	if out.Anchor == ByTop {
		out.Level = math.Max(out.Level, out.Least)
	}
	if p == LeftChest {
		g.nudge(&out)
	}
	out.Top = out.TopFor(usualHeight)
	if out.down == (pt{}) && !legs {
		out.BelowCollar = out.Top - g.Collar(out.Side)
	}
	return out, nil
}

// Rules for cuts on which the table's distances would cross a seam or a placket.
// Common practice, no source.
const (
	belowPlacket  = 8.0   // front name below what a short placket keeps clear, mm
	buttonNumber  = 90.0  // front number below the team name on a button front, mm, or as much of it
	buttonHeight  = 100.0 // as a number of this height leaves above the hem
	buttonAcross  = 0.25  // and across from the centre / chest half: the middle of the left front
	upperArm      = 0.33  // lower edge of a sleeve number on a long sleeve / its length: above the elbow
	yokeNameShare = 0.5   // a name on a yoke stands in the middle of what is free of it
)

// place returns the placement on a garment with a body; no Place for an unknown one.
func (f *frame) place(p Place, d distances, m Margins) Placement {
	switch p {
	case BackName:
		return f.backName(d, m)
	case BackNumber:
		return Placement{Place: p, Side: Back, Level: f.NeckDropBack + d.numberTop, Least: math.Max(f.belowYoke(m), f.belowRacer(m))}
	case FrontName:
		return f.frontName(d, m)
	case FrontNumber:
		return f.frontNumber(d, m)
	case LeftChest:
		return f.leftChest(d, m)
	case SleeveNumber:
		return f.sleevePlace(d, m)
	}
	return Placement{}
}

// belowYoke is the highest top of a piece that must stay below a yoke seam.
func (f *frame) belowYoke(m Margins) float64 {
	if f.style.yoke {
		return f.YokeDepth + m.Seam + touching
	}
	return 0
}

// backName stands at the table's distance below the collar. On a yoke it stands
// in the middle of the yoke, and on a racer back below the racer, for the narrow
// part holds no name.
func (f *frame) backName(d distances, m Margins) Placement {
	out := Placement{Place: BackName, Side: Back, Level: f.NeckDropBack + d.nameTop, GapAfter: d.nameGap}
	if f.style.yoke {
		free := f.YokeDepth - f.NeckDropBack
		out.Anchor, out.Level = ByCentre, f.NeckDropBack+yokeNameShare*free
	}
	out.Least = f.belowRacer(m)
	return out
}

// frontName stands below the collar, or below the point of a V; on a short
// placket below its foot; on a full one it is parted by the placket.
func (f *frame) frontName(d distances, m Margins) Placement {
	out := Placement{Place: FrontName, Level: f.NeckDropFront + d.frontTop, GapAfter: d.teamGap, Least: f.belowYoke(m)}
	if f.style.neck.tip > 0 {
		out.Level = f.NeckDropFront + d.frontTopVee
	}
	switch f.style.closing {
	case shortPlacket:
		out.Least = f.placketFoot() + m.Hard + belowPlacket
	case fullPlacket:
		out.Split = true
	}
	if f.style.closing != pullover {
		bottom := math.Max(out.Level, out.Least) + usualHeight
		out.GapAfter = math.Min(math.Max(f.BodyLength-m.Hem-buttonHeight-bottom, d.teamGap), buttonNumber)
	}
	return out
}

// frontNumber alone stands where a front name would; on a button front it stands
// low on the wearer's left.
func (f *frame) frontNumber(d distances, m Margins) Placement {
	name := f.frontName(d, m)
	out := Placement{Place: FrontNumber, Level: math.Max(name.Level, name.Least), Least: name.Least}
	if f.style.closing != pullover {
		out.CentreX = buttonAcross * f.ChestHalf
		out.Level += usualHeight + name.GapAfter
	}
	return out
}

// leftChest stands at the table's distance below HPS, but below a yoke seam, and
// on a tank no higher than a front name, where the chest is wide enough.
func (f *frame) leftChest(d distances, m Margins) Placement {
	level := d.chestDown
	if f.style.yoke {
		level = math.Max(level, f.belowYoke(m)+d.chestSize/2)
	}
	if f.style.sleeve.kind == sleeveless {
		level = math.Max(level, f.NeckDropFront+d.frontTop+d.chestSize/2)
	}
	return Placement{Place: LeftChest, CentreX: d.chestAcross, Anchor: ByCentre, Level: level, MaxHeight: d.chestSize}
}

// nudge moves a left chest sideways, just far enough to keep clear of the lines
// beside it; where its size does not fit it stands in the middle.
func (g *Garment) nudge(p *Placement) {
	size := p.MaxHeight
	for _, c := range g.clears(Front) {
		free, ok := c.stretch(p.CentreX, p.Level-size/2, p.Level+size/2)
		if c.piece.sleeve || !ok {
			continue
		}
		if free.hi-free.lo < size {
			p.CentreX = (free.lo + free.hi) / 2
			return
		}
		p.CentreX = math.Min(math.Max(p.CentreX, free.lo+size/2), free.hi-size/2)
		return
	}
}

// sleevePlace lies on the sleeve on the viewer's right of the front, the
// wearer's left; the other sleeve is its mirror image. A sleeve number is centred
// on the fold; a drawing shows it on the middle of the half that is seen. On a
// long sleeve it lies on the upper arm; on a short one it moves up until a piece
// of usual height clears the hem.
func (f *frame) sleevePlace(d distances, m Margins) Placement {
	from, to := f.sleeveMiddle()
	down := curve.Unit(to.Sub(from))
	length := f.sleeve.fold.End().Sub(from).Dot(down) - touching
	clear := math.Max(d.sleeveHem, m.Hem)
	if f.style.sleeve.ribbed {
		clear = math.Max(clear, f.style.sleeve.cuff+m.Seam)
	}
	level := math.Min(math.Max(d.sleeveDown, upperArm*length-usualHeight/2), length-clear-usualHeight/2)
	at := from.Add(down.Mul(level))
	return Placement{Place: SleeveNumber, CentreX: at.X, Anchor: ByCentre, Level: level, Lowest: length - clear,
		Turn: math.Atan2(down.Y, down.X) - math.Pi/2, origin: from, down: down}
}

// place stands a number on the wearer's left leg, in the middle of what is free
// between centre and side at the height of a usual piece.
func (s *shorts) place(d distances, m Margins) Placement {
	bottom := s.outer.Y - d.shortsHem
	out := Placement{Place: ShortsNumber, Anchor: ByBottom, Level: bottom, MaxHeight: s.Outseam / 3}
	mid := bottom - usualHeight/2
	inner, outer := m.Seam+math.Max(0, s.legAt(mid)), s.sideX(mid)-d.shortsSide
	out.CentreX = (inner + outer) / 2
	return out
}

// sideX is the x of the side seam at a height.
func (s *shorts) sideX(y float64) float64 {
	head, _, _ := s.legSide.CutWhere(func(q pt) float64 { return q.Y - y })
	return head.End().X
}

// legAt is the x of the inner leg at a height; the centre above the crotch.
func (s *shorts) legAt(y float64) float64 {
	if y <= s.crotch.Y {
		return 0
	}
	return s.crotch.Lerp(s.inner, (y-s.crotch.Y)/(s.inner.Y-s.crotch.Y)).X
}
