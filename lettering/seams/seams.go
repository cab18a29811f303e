// Package seams answers whether a finished piece, in its real shape and not as
// its box, lies inside the panel of the garment it goes on; how near it comes to
// each line that decoration keeps clear of; and which of them it hits, where and
// by how much.
//
// Coordinates are those of package garment: millimetres, y down from the high
// point of shoulder. Holes in a piece are of no interest: its outer boundary
// decides.
package seams

import (
	"cmp"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
)

// Slack is how far, mm, a piece may seem to come too near because seams and
// letters are drawn as short straight lines.
const Slack = 0.02

// Clearance is how near a piece comes to one line to keep clear of.
type Clearance struct {
	Line garment.KeepClear
	// Distance is the least between piece and line, mm. It is negative when the
	// piece reaches over the line, and then says how far: the furthest point of
	// the part that lies beyond (of the smaller part, where both are cloth).
	Distance float64
	At       geom.Point // the point of the bare piece that decides
}

// Short is how far the margin is missed, mm: 0 or less when it is kept, more
// than the margin when the piece reaches over the line.
func (c Clearance) Short() float64 { return c.Line.Margin - c.Distance }

// Over reports whether the piece reaches over the line itself.
func (c Clearance) Over() bool { return c.Distance < -Slack }

// Lie is how a piece lies on its cloth.
type Lie struct {
	// Inside says that the whole piece lies on one panel, or on the two fronts
	// where it is parted at the placket.
	Inside bool
	// Clearances has one entry for each line of the panel, in a fixed order.
	Clearances []Clearance
	// Parted lists the rings of a piece across a placket that come too near to
	// the opening: letters that have to be moved or cut there.
	Parted []int
}

// Hits returns the lines whose margin is missed, the one missed most first.
func (l Lie) Hits() []Clearance {
	var out []Clearance
	for _, c := range l.Clearances {
		if c.Short() > Slack {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b Clearance) int { return cmp.Compare(b.Short(), a.Short()) })
	return out
}

// Nearest returns the line with the least left beyond its margin. A piece always
// has one.
func (l Lie) Nearest() Clearance {
	return slices.MaxFunc(l.Clearances, func(a, b Clearance) int { return cmp.Compare(a.Short(), b.Short()) })
}

// Cloth is what a piece at one place of a garment lies on: the panels of that
// side with their lines. It is safe for concurrent use; keep it for all pieces
// of a size.
type Cloth struct {
	place  garment.Placement
	parts  []*part
	sleeve *sleeve // in the place of parts for a piece on a sleeve
}

// part is one piece of cloth; a front that is parted at the placket is one with
// two rings.
type part struct {
	cloth, panel geom.Region
	lines        []line
	placket      []line // the opening that a parted piece is cut at
}

// On returns the cloth for a place of a garment, as Garment.Place gives it or
// Garment.Moved moves it: of the place only its side counts, the sleeve it is on
// and whether it is parted at a placket. Which panel of the side a piece is held
// against depends on where its middle lies.
func On(g *garment.Garment, place garment.Placement) *Cloth {
	c := &Cloth{place: place}
	if place.Place == garment.SleeveNumber {
		c.sleeve = newSleeve(g, place)
		return c
	}
	for _, panel := range g.Panels(place.Side) {
		if !panel.Sleeve {
			c.parts = append(c.parts, newPart(panel))
		}
	}
	if place.Split {
		c.parts = []*part{parted(c.parts)}
	}
	return c
}

func newPart(panel garment.PanelInfo) *part {
	p := &part{cloth: geom.Region{panel.Cloth}, panel: panel.Region}
	for _, k := range panel.Lines {
		p.lines = append(p.lines, newLine(k))
	}
	return p
}

// parted joins the two fronts of a button front. They share every line but the
// placket's edges.
func parted(fronts []*part) *part {
	out := &part{}
	for i, f := range fronts {
		out.cloth = append(out.cloth, f.cloth...)
		out.panel = append(out.panel, f.panel...)
		for _, l := range f.lines {
			switch {
			case l.keep.Kind == garment.HardLine:
				out.placket = append(out.placket, l)
			case i == 0:
				out.lines = append(out.lines, l)
			}
		}
	}
	return out
}

// Lay holds a piece against its cloth. The piece is the outer boundary of the
// letters where they lie on the garment, flattened; reach is how far the outlines
// stand out from them, mm, with round joins; pass the finished outline and 0 for
// others. A piece without points lies nowhere.
func (c *Cloth) Lay(piece geom.Region, reach float64) Lie {
	s := newShape(piece)
	switch {
	case len(s.rings) == 0:
		return Lie{}
	case c.sleeve != nil:
		return c.sleeve.lay(s, reach)
	}
	return c.under(s).lay(s, reach)
}

// under returns the part that the middle of a piece lies on; the one nearest to
// it when it lies on none.
func (c *Cloth) under(s *shape) *part {
	middle := s.box.Center()
	best, least := c.parts[0], math.Inf(1)
	for _, p := range c.parts {
		if p.cloth.Contains(middle) {
			return p
		}
		for _, l := range p.lines {
			if d, _ := l.side(middle); d < least {
				best, least = p, d
			}
		}
	}
	return best
}

func (p *part) lay(s *shape, reach float64) Lie {
	out := Lie{Inside: true, Clearances: make([]Clearance, 0, len(p.lines))}
	crossed := false
	for i := range p.lines {
		c, over := p.lines[i].clearance(s, reach)
		crossed = crossed || over
		out.Inside = out.Inside && c.Short() <= Slack
		out.Clearances = append(out.Clearances, c)
	}
	for i, r := range s.rings {
		if p.straddled(s, i, reach) {
			out.Parted = append(out.Parted, s.index[i])
			continue
		}
		out.Inside = out.Inside && touches(r, p.panel)
	}
	if !crossed && !out.Inside {
		p.off(s, reach, &out)
	}
	return out
}

// off finds rings that lie beside the cloth without crossing a line, and charges
// them to the line they are nearest to.
func (p *part) off(s *shape, reach float64, out *Lie) {
	for i, r := range s.rings {
		if p.cloth.Contains(r[0]) {
			continue
		}
		out.Inside = false
		alone := s.only(i)
		near := 0
		for k := range p.lines {
			if d, _, _ := p.lines[k].nearest(alone); k == 0 || d < math.Abs(out.Clearances[near].Distance+reach) {
				near = k
			}
		}
		for _, q := range r {
			if d, _ := p.lines[near].side(q); -d-reach < out.Clearances[near].Distance {
				out.Clearances[near].Distance, out.Clearances[near].At = -d-reach, q
			}
		}
	}
}

// straddled reports a ring that comes too near to the opening of a placket, or
// lies on it.
func (p *part) straddled(s *shape, i int, reach float64) bool {
	if len(p.placket) == 0 {
		return false
	}
	left, right := math.Inf(1), math.Inf(-1)
	alone := s.only(i)
	for k := range p.placket {
		l := &p.placket[k]
		if c, _ := l.clearance(alone, reach); c.Short() > Slack {
			return true
		}
		left, right = math.Min(left, l.box.Min.X), math.Max(right, l.box.Max.X)
	}
	return left < alone.box.Min.X && alone.box.Max.X < right
}

// touches reports whether a ring has a point on the panel. One that keeps all
// margins lies either on it as a whole or on a strip beside it.
func touches(r geom.Ring, panel geom.Region) bool {
	return slices.ContainsFunc(r, panel.Contains)
}
