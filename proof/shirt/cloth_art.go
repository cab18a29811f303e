package shirt

import (
	"fmt"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// smallScale is where the outline gets thinner.
const smallScale = 1.0 / 12

// FineWidth is the width of a garment on paper, mm, under which stitches and
// folds would run into a grey and are left out.
const FineWidth = 45

// foldShare is how much of the line colour a fold mixes into the cloth.
const foldShare = 0.05

// clothArt returns the garment alone, in mm of paper about the centre line at
// the high point of shoulder. Line weights belong to the paper, so the scale is
// part of the drawing.
func (v View) clothArt(b *page.Book) *page.Art {
	g := v.Garment
	key := fmt.Sprintf("cloth %s %v %v %g %v %+v %+v", g.Cut(), g.Size(), v.Side, v.Scale, v.Plain, v.Cloth, g.Measures())
	return b.Art(key, func(pen *page.Pen) {
		fine := !v.Plain && g.Bounds(v.Side).Width()*v.Scale >= FineWidth
		for _, part := range g.View(v.Side) {
			if fine || !part.Fine {
				v.paintPart(pen, part)
			}
		}
	})
}

func (v View) paintPart(pen *page.Pen, part garment.Part) {
	m := geom.Scale(v.Scale, v.Scale)
	thin := page.Line{Weight: parts.Seam, Join: page.RoundJoin}
	switch part.Role {
	case garment.Outline:
		pen.StrokePath(part.Path, m, parts.Ink, page.Line{Weight: v.outline(), Join: page.RoundJoin})
	case garment.Stitch:
		thin.Dash = parts.StitchDash()
		pen.StrokePath(part.Path, m, v.Cloth.line(part.Cloth, parts.StitchStrength), thin)
	case garment.Edge, garment.Seam, garment.Detail:
		pen.StrokePath(part.Path, m, v.Cloth.line(part.Cloth, parts.SeamStrength), thin)
	case garment.Fold:
		pen.FillPath(part.Path, m, v.Cloth.line(part.Cloth, foldShare))
	case garment.Button:
		pen.FillPath(part.Path, m, v.Cloth.fill(part.Role))
		pen.StrokePath(part.Path, m, v.Cloth.line(garment.Body, parts.SeamStrength), thin)
	default:
		role := part.Role
		if role == garment.InsideCollar && v.Garment.Cut() == garment.Shorts {
			role = garment.Inside // of the waistband, which has the body's colour
		}
		pen.FillPath(part.Path, m, v.Cloth.fill(role))
	}
}

// outline returns the weight of the outline on paper.
func (v View) outline() float64 {
	if v.Scale < smallScale {
		return parts.OutlineSmall
	}
	return parts.Outline
}
