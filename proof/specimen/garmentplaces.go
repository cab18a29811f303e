package specimen

import (
	"fmt"
	"math"
	"slices"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// shownPlace is a usual piece where it sits.
type shownPlace struct {
	garment.Placement
	key         string  // letter of the legend
	top, high   float64 // level of the top edge, and height of the piece shown
	room, width float64 // what it may be wide, and what is shown
	gap         float64 // to the name above; 0 none
	number      bool
}

// sportOf is the sport whose usual heights are shown on a cut.
func sportOf(c garment.Cut) string {
	switch c {
	case garment.VNeck, garment.RacerbackTank:
		return "volleyball"
	case garment.TwoButton:
		return "softball"
	case garment.FullButton, garment.Raglan:
		return "baseball"
	case garment.BasketballTank, garment.Shorts:
		return "basketball"
	case garment.FootballYoke:
		return "football"
	case garment.Hockey:
		return "hockey"
	case garment.Soccer:
		return "soccer"
	}
	return "lacrosse"
}

// places returns the usual pieces of the garment at their usual heights, a
// number under its name.
func (d *drawnGarment) places() []shownPlace {
	var out []shownPlace
	for _, place := range garment.Places(d.g.Cut()) {
		at, err := d.g.Place(place)
		high := d.usualHeight(at)
		if err != nil || high <= 0 {
			continue
		}
		s := shownPlace{Placement: at, key: string(rune('a' + len(out))), high: high, top: at.TopFor(high), number: isNumber(place)}
		if i := slices.IndexFunc(out, func(o shownPlace) bool { return o.Place == nameOver(place) }); i >= 0 && at.CentreX == out[i].CentreX {
			name := out[i]
			s.top = math.Max(name.top+name.high+name.GapAfter, at.Least)
			s.gap = s.top - name.top - name.high
		}
		s.room = d.g.Room(place, s.top, s.top+high).Width
		if s.width = s.room; s.number {
			s.width = math.Min(s.room, 1.2*high)
		}
		if place == garment.LeftChest {
			s.width = math.Min(s.room, at.MaxHeight)
		}
		out = append(out, s)
	}
	return out
}

func isNumber(p garment.Place) bool {
	switch p {
	case garment.BackNumber, garment.FrontNumber, garment.SleeveNumber, garment.ShortsNumber:
		return true
	}
	return false
}

func nameOver(p garment.Place) garment.Place {
	switch p {
	case garment.BackNumber:
		return garment.BackName
	case garment.FrontNumber:
		return garment.FrontName
	}
	return ""
}

// usualHeight is the middle of the heights that are usual at a place.
func (d *drawnGarment) usualHeight(p garment.Placement) float64 {
	sport, group := sportOf(d.g.Cut()), d.g.Size().Group
	heights, err := garment.NumberHeightsFor(sport, group)
	if err != nil {
		return 0
	}
	span := garment.LetterHeightFor(sport, group).Usual
	switch p.Place {
	case garment.BackNumber:
		span = heights.Back
	case garment.FrontNumber:
		span = heights.Front
	case garment.SleeveNumber:
		span = heights.Sleeve
	case garment.ShortsNumber:
		span = heights.Shorts
	case garment.LeftChest:
		return p.MaxHeight
	}
	return (span.From + span.To) / 2
}

// panelled draws both sides with what decoration keeps clear of, and the usual
// pieces.
func (d *drawnGarment) panelled() {
	p, grid := d.sheet("Panels and places", "Panels and places")
	shown := d.places()
	low := 0.0
	for _, v := range d.views(grid, true) {
		v.paint(p.Pen)
		d.viewTitle(p.Pen, v)
		for _, s := range shown {
			if s.Side == v.side {
				s.outline(p.Pen, v)
			}
		}
		low = math.Max(low, v.bounds().Max.Y)
	}
	d.legend(p.Pen, grid, shown, low+7)
}

// outline draws the box of a piece, dashed, with its key letter at the corner.
func (s shownPlace) outline(p *page.Pen, v flat) {
	var box geom.Path
	box.MoveTo(s.Point(-s.width/2, s.top))
	box.LineTo(s.Point(s.width/2, s.top))
	box.LineTo(s.Point(s.width/2, s.top+s.high))
	box.LineTo(s.Point(-s.width/2, s.top+s.high))
	box.Close()
	p.StrokePath(box, v.at(), parts.Ink, page.Line{Weight: parts.Outline * 0.7, Dash: []float64{1.6, 0.9}})
	ring := v.point(s.Point(-s.width/2, s.top))
	p.FillCircle(ring.X, ring.Y, 1.75, page.White)
	parts.KeyRing(p, ring.X, ring.Y, s.key)
}

// legend says of each piece where it sits and how wide it may be, and what the
// hatching means.
func (d *drawnGarment) legend(p *page.Pen, grid parts.Grid, shown []shownPlace, y float64) {
	const rowHigh, perColumn = 7.2, 3
	columns := (len(shown)+perColumn-1)/perColumn + 1
	wide := (grid.Live() - parts.Gutter*float64(columns-1)) / float64(columns)
	x := func(i int) float64 { return grid.Left + float64(i)*(wide+parts.Gutter) }
	for i, s := range shown {
		at, top := x(i/perColumn), y+float64(i%perColumn)*rowHigh
		parts.KeyRing(p, at+1.75, top-1, s.key)
		p.Spans(at+5.5, top, page.Start, parts.Value().Span(string(s.Place)), parts.Label().Span("  "+d.sizeWords(s)))
		p.Text(at+5.5, top+3.0, parts.Label().Style, d.whereWords(s))
	}
	at := x(columns - 1)
	parts.Hatch(p, page.RectPath(at, y-2.4, 3.6, 3.2), parts.Slate.Mix(page.White, 0.75), 0.10, 1.0)
	p.StrokeRect(at, y-2.4, 3.6, 3.2, parts.Slate, page.Line{Weight: parts.DimensionLine})
	m := d.g.Margins()
	p.Paragraph(at+5.5, y, wide-5.5, parts.Label().Leading, parts.Label().Style, fmt.Sprintf(
		"kept clear: %s from a seam, %s from plackets, buttons and waistbands, %s from a hem, %s from the crossing at the underarm, %s from a fold. Margins, places and heights: common practice, no source.",
		d.units.words(m.Seam), d.units.words(m.Hard), d.units.words(m.Hem), d.units.words(m.Underarm), d.units.words(m.Fold)))
}

func (d *drawnGarment) sizeWords(s shownPlace) string {
	return fmt.Sprintf("%s high, room %s", d.units.words(s.high), d.units.words(s.room))
}

// whereWords tells where the top of a piece lies.
func (d *drawnGarment) whereWords(s shownPlace) string {
	switch {
	case s.gap > 0:
		return fmt.Sprintf("top %s below the collar, %s below the name", d.units.words(s.top-d.g.Collar(s.Side)), d.units.words(s.gap))
	case s.Place == garment.SleeveNumber:
		return fmt.Sprintf("middle %s below the shoulder, on the fold", d.units.words(s.top+s.high/2))
	case s.Place == garment.ShortsNumber:
		return fmt.Sprintf("lower edge %s above the hem", d.units.words(d.g.Hem()-s.top-s.high))
	case s.Place == garment.LeftChest:
		return fmt.Sprintf("middle %s below the shoulder, %s from the centre", d.units.words(s.Level), d.units.words(math.Abs(s.CentreX)))
	}
	words := fmt.Sprintf("top %s below the collar", d.units.words(s.top-d.g.Collar(s.Side)))
	if s.Split {
		words += ", parted at the placket"
	}
	return words
}
