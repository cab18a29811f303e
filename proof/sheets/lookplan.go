package sheets

import (
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// lookPlan is where the two views of page 1 stand, mm on the page.
type lookPlan struct {
	sheet       page.Sheet
	stacked     bool    // the back above the front on an upright sheet
	scale       float64 // mm of paper for a mm of garment
	front, back geom.Point
	tape        float64 // x of its middle
	strip       float64 // y from which the strip under the views is measured
}

// Room that the views need around them, mm on paper.
const (
	sideAcross   = 51.4 // beside and between two views, with tape and chains
	stackAcross  = 35.0 // tape and chain at the left of a view
	stackColumn  = 42.0 // notes at the right of a view, with their gap
	datumDown    = 14.6 // content top to the high point of shoulder
	stackBetween = 21.0 // hem of the back to the shoulder of the front
	stripDown    = 11.4 // hem to the strip
	stripHeight  = 27.0
	stackDown    = datumDown + stackBetween + stripDown + stripHeight

	// A4 on its side is lower: both distances shrink.
	datumDownLow = 13.6
	stripDownLow = 8.4
	lowSheet     = 212.0 // sheets under this height are low
)

// lookSize is the extent of the garment's two sides together: width, height
// above the high point of shoulder, and length below it, in mm of garment.
type lookSize struct{ width, above, length float64 }

func lookSizeOf(g *garment.Garment) lookSize {
	box := g.Bounds(garment.Front).Union(g.Bounds(garment.Back))
	half := max(-box.Min.X, box.Max.X)
	return lookSize{width: 2 * half, above: max(0, -box.Min.Y), length: box.Max.Y}
}

// planLookViews takes the largest scale at which both views fit, of two
// layouts: side by side with the tape between, or one over the other. A tie
// goes to side by side. A garment too large for the smallest scale gets it all
// the same.
func planLookViews(paper Paper, s lookSize) lookPlan {
	side, stack := paper.sheet().Landscape(), paper.sheet().Portrait()
	for _, n := range scales() {
		k := 1 / n
		if fitsBeside(side, s, k) {
			return besidePlan(side, s, k)
		}
		if fitsStacked(stack, s, k) {
			return stackedPlan(stack, s, k)
		}
	}
	return besidePlan(side, s, 1/scales()[len(scales())-1])
}

func datumAndStrip(sheet page.Sheet) (datum, strip float64) {
	if sheet.Wide() && sheet.H < lowSheet {
		return datumDownLow, stripDownLow
	}
	return datumDown, stripDown
}

// rounding is the error that a drawing may be too large by, mm.
const rounding = 1e-6

func fitsBeside(sheet page.Sheet, s lookSize, k float64) bool {
	g := parts.NewGrid(sheet)
	datum, strip := datumAndStrip(sheet)
	return 2*s.width*k+sideAcross <= g.Live()+rounding && (s.above+s.length)*k+datum+strip+stripHeight <= g.Bottom-g.Top+rounding
}

func fitsStacked(sheet page.Sheet, s lookSize, k float64) bool {
	g := parts.NewGrid(sheet)
	return s.width*k+stackAcross+stackColumn <= g.Live()+rounding && 2*(s.above+s.length)*k+stackDown <= g.Bottom-g.Top+rounding
}

// besidePlan shares spare width in four equal parts beside and between.
func besidePlan(sheet page.Sheet, s lookSize, k float64) lookPlan {
	g := parts.NewGrid(sheet)
	datum, strip := datumAndStrip(sheet)
	half := s.width * k / 2
	spare := max(0, g.Live()-2*s.width*k-sideAcross) / 4
	y := g.Top + datum + s.above*k
	return lookPlan{
		sheet: sheet, scale: k, tape: sheet.W / 2,
		front: geom.Point{X: g.Left + spare + half, Y: y}, back: geom.Point{X: g.Right - spare - half, Y: y},
		strip: y + s.length*k + strip,
	}
}

// stackedPlan puts the views at the left, the back above the front, and leaves
// a column for notes at their right.
func stackedPlan(sheet page.Sheet, s lookSize, k float64) lookPlan {
	g := parts.NewGrid(sheet)
	half := s.width * k / 2
	spare := (g.Live() - s.width*k - stackAcross - stackColumn) / 2
	x, back := g.Left+stackAcross+spare+half, g.Top+datumDown+s.above*k
	front := back + s.length*k + stackBetween + s.above*k
	return lookPlan{
		sheet: sheet, stacked: true, scale: k, tape: g.Left + parts.TapeWidth/2,
		front: geom.Point{X: x, Y: front}, back: geom.Point{X: x, Y: back},
		strip: front + s.length*k + stripDown,
	}
}
