package sheetplan

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/nest"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
)

// Stocks returns the rolls and sheets that a method is made from, the narrowest
// first: generic sizes of the trade, common practice, no source. A roll is cut at
// need, at most 1.5 m at a time.
func Stocks(method string) []nest.Stock {
	roll := func(inches float64) nest.Stock {
		// The rollers of a cutter hold 12 mm at each side.
		return nest.Stock{Name: fmt.Sprintf("%g in roll", inches), Width: inches * 25.4, MaxLength: 1500, Margin: 12, Gap: 3}
	}
	switch method {
	case "screen transfer", "sublimation":
		sheet := func(name string, w, h float64) nest.Stock {
			return nest.Stock{Name: name, Width: w, Height: h, Margin: 8, Gap: 6}
		}
		return []nest.Stock{sheet("A3 sheet", 297, 420), sheet("320 x 450 mm sheet", 320, 450), sheet("13 x 19 in sheet", 330.2, 482.6), sheet("500 x 700 mm sheet", 500, 700)}
	case "direct-to-film":
		return []nest.Stock{
			{Name: "300 mm roll", Width: 300, MaxLength: 1500, Margin: 10, Gap: 6},
			{Name: "600 mm roll", Width: 600, MaxLength: 1500, Margin: 10, Gap: 6},
		}
	}
	return []nest.Stock{roll(12), roll(15), roll(20), roll(24), roll(30)}
}

// arrange lays the parts on the stock. Without one that takes them all, the widest
// is used, and what it does not take is left loose.
func (p *Plan) arrange(o Options) error {
	stocks := Stocks(p.method())
	if o.Stock != nil {
		stocks = []nest.Stock{*o.Stock}
	}
	items, err := p.items(o.Nest.By)
	if err != nil {
		return err
	}
	p.Stock = stocks[len(stocks)-1]
	for _, s := range stocks {
		if fits(items, s) == nil {
			p.Stock = s
			break
		}
	}
	for _, wrong := range fits(items, p.Stock) {
		p.Loose[wrong.ID] = wrong.Why()
	}
	items = slices.DeleteFunc(items, func(i nest.Item) bool { return p.Loose[i.ID] != "" })
	if len(items) == 0 {
		return nil
	}
	layout, err := nest.Arrange(items, p.Stock, o.Nest)
	if err != nil {
		return err
	}
	p.Layout = layout
	for n, sheet := range layout.Sheets {
		for k, placed := range sheet.Placed {
			p.spots[placed.ID] = spot{n + 1, k + 1}
		}
	}
	return nil
}

func (p *Plan) method() string {
	if len(p.Pieces) == 0 {
		return ""
	}
	return p.Pieces[0].Art.Method.ID
}

// items are the parts as the arrangement knows them. Cloth has a grain; film and
// carriers have none.
func (p *Plan) items(by nest.By) ([]nest.Item, error) {
	out := make([]nest.Item, len(p.Parts))
	for i, part := range p.Parts {
		shape, err := shape(part.Art, by)
		if err != nil {
			return nil, fmt.Errorf("part %d, %s: %w", i+1, part.Material, err)
		}
		out[i] = nest.Item{ID: i, Shape: shape, Group: part.Material, Turns: nest.QuarterTurns}
		if id := part.Art.Method.ID; id == "sewn twill" || id == "satin twill" {
			out[i].Turns = nest.HalfTurns
		}
	}
	return out, nil
}

// fits returns what does not go on the stock, by the boxes.
func fits(items []nest.Item, s nest.Stock) []*nest.FitError {
	var out []*nest.FitError
	for _, item := range items {
		// One by one: whether it fits does not depend on the others.
		_, err := nest.Arrange([]nest.Item{item}, s, nest.Options{})
		var wrong *nest.FitError
		if errors.As(err, &wrong) {
			out = append(out, wrong)
		}
	}
	return out
}

// Figures say what the sheets take, mm², and the least that they could.
type Figures struct {
	Sheets int
	Stock  float64 // of the sheets and cuts used, margins included
	Ink    float64 // true area of what is cut or printed, without marks and borders
	// BoxBound is the least stock that any layout by the boxes of the parts takes;
	// 0 where parts were arranged by their outlines. AreaBound is the least that any
	// layout takes: the true area has to lie inside the margins.
	BoxBound, AreaBound float64
}

// Waste is the share of the stock that nothing is made of; of no stock, 0.
func (f Figures) Waste() float64 { return wasted(f.Ink, f.Stock) }

// Least are the wastes of the two bounds, that of the boxes 0 where there is none.
func (f Figures) Least() (boxes, area float64) {
	return wasted(f.Ink, f.BoxBound), wasted(f.Ink, f.AreaBound)
}

func wasted(ink, stock float64) float64 {
	if stock <= 0 {
		return 0
	}
	return 1 - ink/stock
}

// Figures adds up what the sheets take.
func (p *Plan) Figures(by nest.By) Figures {
	f := Figures{Sheets: len(p.Layout.Sheets), Stock: p.Layout.Stock}
	if by == nest.Boxes {
		f.BoxBound = p.Layout.BoxBound
	}
	for i, part := range p.Parts {
		if p.Loose[i] == "" {
			f.Ink += inkOf(part.Art)
		}
	}
	inner := p.Stock.Width - 2*p.Stock.Margin
	f.AreaBound = f.Ink * p.Stock.Width / inner
	if h := p.Stock.Height; h > 0 {
		f.AreaBound *= h / (h - 2*p.Stock.Margin)
	}
	return f
}

// inkOf is the true area of the largest layer of a part: the others lie on it.
func inkOf(a layers.Art) float64 {
	most := 0.0
	for _, l := range a.Layers {
		if l.Kind != layers.Registration {
			most = max(most, math.Abs(l.Region.Area()))
		}
	}
	return most
}

// Placed is a part on its sheet.
type Placed struct {
	Part
	Number int // on the sheet, counted from 1, as its label and the pick list say
	Turn   nest.Turn
	Art    layers.Art // moved to its place; the sheet's origin is its lower left corner
}

// On returns the parts of sheet n (counted from 0) at their places. Where parts
// lie in each other their weed borders would cross, and are left out, as are rooms
// for a label that another part lies in.
func (p *Plan) On(n int, by nest.By) []Placed {
	var out []Placed
	for k, placed := range p.Layout.Sheets[n].Placed {
		part := p.Parts[placed.ID]
		art := moved(part.Art, placed.Move)
		if by == nest.Outlines {
			art.Layers = slices.DeleteFunc(art.Layers, func(l layers.Layer) bool { return l.Kind == layers.WeedBorder })
		}
		out = append(out, Placed{Part: part, Number: k + 1, Turn: placed.Turn, Art: art})
	}
	if by == nest.Outlines {
		freeRooms(out)
		sheet := geom.Rect{Max: geom.Point{X: p.Layout.Sheets[n].Width, Y: p.Layout.Sheets[n].Height}}
		keepRooms(out, sheet.Grow(-p.Stock.Margin), sheet)
	}
	return out
}

// moved returns the art at another place.
func moved(a layers.Art, m geom.Affine) layers.Art {
	out := a
	out.Layers = make([]layers.Layer, len(a.Layers))
	for i, l := range a.Layers {
		if l.Region != nil {
			l.Region = l.Region.Transform(m)
		}
		if l.Line != nil {
			l.Line = l.Line.Transform(m)
		}
		out.Layers[i] = l
	}
	out.Ink, out.Box = movedRect(a.Ink, m), movedRect(a.Box, m)
	for i, r := range a.Waste {
		out.Waste[i] = movedRect(r, m)
	}
	return out
}

func movedRect(r geom.Rect, m geom.Affine) geom.Rect {
	if r.Empty() {
		return r
	}
	out := geom.EmptyRect()
	for _, c := range [4]geom.Point{r.Min, r.Max, {X: r.Min.X, Y: r.Max.Y}, {X: r.Max.X, Y: r.Min.Y}} {
		out = out.Include(m.Apply(c))
	}
	return out
}

// Spots returns where the parts of a player's piece lie.
func (p *Plan) Spots(s *sizes.Sized, player int, place garment.Place) []tally.Spot {
	var out []tally.Spot
	for i, part := range p.Parts {
		at, ok := p.spots[i]
		if part.Player != player || s.Players[player].Pieces[part.Piece].Asked.Place != place {
			continue
		}
		t := tally.Spot{Sheet: tally.Loose}
		if ok {
			t = tally.Spot{Sheet: strconv.Itoa(at.sheet), Position: "#" + strconv.Itoa(at.place)}
		}
		if part.Parts > 1 {
			t.Part = tally.ColourName(colourOf(part.Art))
		}
		out = append(out, t)
	}
	return out
}

// Taken returns the length, mm, that the sheets of a material take of its roll;
// false for one that lies on none.
func (p *Plan) Taken(material string) (mm float64, ok bool) {
	for _, sheet := range p.Layout.Sheets {
		if sheet.Group == material {
			mm, ok = mm+sheet.Height, true
		}
	}
	return mm, ok
}
