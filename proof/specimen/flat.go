package specimen

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// How plain cloth is drawn: white, with grey trim, so that a cut is told by its
// shape. Shares of ink or slate in white, and weights in mm that the proof's own
// shirts do not need.
const (
	trimShare   = 0.26
	insideShare = 0.36
	collarShare = 0.52
	foldShare   = 0.06
	edgeWeight  = 0.20
	edgeShare   = 0.85
	smallScale  = 1.0 / 12 // the outline gets thinner here, as on a proof
	fineWidth   = 45.0     // a garment narrower on paper has no stitches and folds
)

// flat is one side of a garment where it stands on a page.
type flat struct {
	garment *garment.Garment
	side    garment.Side
	k       float64 // mm of paper for 1 mm of garment
	x, y    float64 // of the centre line and the high point of shoulder
	// panels, when set, hatches what decoration keeps clear of.
	panels bool
	plain  bool // without stitches and folds, whatever the width
}

func (f flat) at() geom.Affine { return geom.Affine{A: f.k, D: f.k, E: f.x, F: f.y} }

func (f flat) point(p geom.Point) geom.Point { return f.at().Apply(p) }

// bounds is the box of the drawing on the page.
func (f flat) bounds() geom.Rect {
	b := f.garment.Bounds(f.side)
	return geom.Rect{Min: f.point(b.Min), Max: f.point(b.Max)}
}

// paint draws the parts in their order. The hatching lies on the cloth and under
// what stands on it.
func (f flat) paint(p *page.Pen) {
	fine := !f.plain && f.garment.Bounds(f.side).Width()*f.k >= fineWidth
	hatched := !f.panels
	for _, part := range f.garment.View(f.side) {
		if !hatched && onTop(part.Role) {
			f.hatch(p)
			hatched = true
		}
		if part.Fine && (!fine || f.panels && part.Role == garment.Fold) {
			continue
		}
		f.part(p, part)
	}
}

// onTop reports whether a part lies on the cloth that carries decoration.
func onTop(r garment.Role) bool {
	return r == garment.Collar || r == garment.Placket || r == garment.Waistband || r.Line() && r != garment.Seam && r != garment.Detail
}

func (f flat) hatch(p *page.Pen) {
	const weight, step = 0.10, 1.3
	for _, panel := range f.garment.Panels(f.side) {
		cloth := geom.Region{panel.Cloth}.Path().Transform(f.at())
		parts.Hatch(p, cloth, parts.Slate.Mix(page.White, 0.75), weight, step)
	}
	for _, panel := range f.garment.Panels(f.side) {
		free := panel.Region.Path()
		p.FillPath(free, f.at(), page.White)
		p.StrokePath(free, f.at(), parts.Slate, page.Line{Weight: parts.DimensionLine, Join: page.RoundJoin})
	}
}

func (f flat) part(p *page.Pen, part garment.Part) {
	line := page.Line{Weight: parts.Seam, Join: page.RoundJoin}
	ground := f.cloth(part.Cloth)
	switch part.Role {
	case garment.Outline:
		line.Weight = parts.Outline
		if f.k < smallScale {
			line.Weight = parts.OutlineSmall
		}
		p.StrokePath(part.Path, f.at(), parts.Ink, line)
	case garment.Edge:
		line.Weight = edgeWeight
		p.StrokePath(part.Path, f.at(), parts.Ink.Mix(ground, edgeShare), line)
	case garment.Seam, garment.Detail:
		p.StrokePath(part.Path, f.at(), parts.Ink.Mix(ground, parts.SeamStrength), line)
	case garment.Stitch:
		line.Dash = parts.StitchDash()
		p.StrokePath(part.Path, f.at(), parts.Ink.Mix(ground, parts.StitchStrength), line)
	case garment.Fold:
		p.FillPath(part.Path, f.at(), parts.Ink.Mix(ground, foldShare))
	case garment.Button:
		p.FillPath(part.Path, f.at(), page.White)
		p.StrokePath(part.Path, f.at(), parts.Ink.Mix(page.White, parts.SeamStrength), line)
	default:
		p.FillPath(part.Path, f.at(), f.cloth(part.Role))
	}
}

// cloth is the colour of an area.
func (f flat) cloth(r garment.Role) page.Colour {
	trim := parts.Slate.Mix(page.White, trimShare)
	switch r {
	case garment.Inside:
		return parts.Slate.Mix(page.White, insideShare)
	case garment.InsideCollar:
		return parts.Slate.Mix(page.White, collarShare)
	case garment.Collar, garment.Cuff, garment.Binding, garment.SidePanel:
		return trim
	case garment.Sleeve:
		if f.garment.Cut() == garment.Raglan {
			return trim
		}
	case garment.Yoke:
		return trim
	}
	return page.White
}
