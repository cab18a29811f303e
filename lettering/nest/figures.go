package nest

import "math"

// Figures say what a layout takes and what it could take at the least, in mm².
type Figures struct {
	Stock float64 // area of the sheets and cuts used, margins included
	Ink   float64 // true area of the pieces
	Boxes float64 // area of the pieces' boxes as drawn
	// InkBound is the least stock that any layout takes: the true area must lie
	// inside the margins, sheets are whole, and a cut is at least as long as the
	// longest piece on it.
	InkBound float64
	// BoxBound is the least stock that a layout by boxes takes, gaps included. One
	// by outlines may take less.
	BoxBound float64
}

// Share is the share of the stock that pieces are made of, 0 for no stock.
func (f Figures) Share() float64 {
	if f.Stock == 0 {
		return 0
	}
	return f.Ink / f.Stock
}

// Waste is the share of the stock that no piece is made of: 1 − ink / stock.
func (f Figures) Waste() float64 {
	if f.Stock == 0 {
		return 0
	}
	return 1 - f.Share()
}

func (f Figures) plus(g Figures) Figures {
	return Figures{f.Stock + g.Stock, f.Ink + g.Ink, f.Boxes + g.Boxes, f.InkBound + g.InkBound, f.BoxBound + g.BoxBound}
}

// GroupFigures are the figures of one group.
type GroupFigures struct {
	Group  string
	Sheets int
	Figures
}

func measure(parts []part, sheets []Sheet, stock Stock) Figures {
	r, f := roomOf(stock), Figures{}
	longest, grown := 0.0, 0.0
	for _, p := range parts {
		f.Ink += p.area
		f.Boxes += p.width() * p.height()
		grown += (p.width() + r.gap) * (p.height() + r.gap)
		least := math.Inf(1)
		for _, t := range p.turns(r, Boxes) {
			_, h := p.size(t)
			least = math.Min(least, h)
		}
		longest = math.Max(longest, least)
	}
	for _, s := range sheets {
		f.Stock += s.Width * s.Height
	}
	f.InkBound = r.bound(f.Ink, longest, stock)
	f.BoxBound = math.Max(r.bound(f.Boxes, longest, stock), r.gapBound(grown, stock))
	return f
}

// bound is the least stock for an area that must lie inside the margins.
func (r room) bound(area, longest float64, stock Stock) float64 {
	n := math.Max(1, math.Ceil(area/(r.w*r.h)-slack))
	if !r.roll {
		return n * stock.Width * stock.Height
	}
	return stock.Width * (math.Max(area/r.w, longest) + n*2*r.margin)
}

// gapBound is the least stock for boxes that each carry a gap along two sides,
// so that the room is a gap wider and longer. More cuts from a roll cost two
// margins each and save a gap; where that could pay there is no such bound.
func (r room) gapBound(area float64, stock Stock) float64 {
	n := math.Max(1, math.Ceil(area/((r.w+r.gap)*(r.h+r.gap))-slack))
	if !r.roll {
		return n * stock.Width * stock.Height
	}
	if !math.IsInf(r.h, 1) && 2*r.margin < r.gap {
		return 0
	}
	return stock.Width * (area/(r.w+r.gap) + n*(2*r.margin-r.gap))
}
