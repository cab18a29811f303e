package sheets

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

func colour(name, hex string) order.Colour { return order.Colour{Name: name, Hex: hex} }

// block is a name or a number made of one rectangle, so that a property test
// can have any size of it without fitting.
func block(place garment.Place, x, top, wide, high, room float64) sizes.Piece {
	ink := page.RectPath(-wide/2, 0, wide, high)
	p := sizes.Piece{
		Asked: order.Piece{Place: place, Face: "oswald", Colour: colour("white", "#ffffff"), Shape: "straight"},
		Drawn: ink, At: geom.Point{X: x, Y: top + high}, Top: top, Room: garment.Room{Width: room},
	}
	if place == garment.BackName || place == garment.BackNumber {
		p.Side = garment.Back
	}
	if order.IsNumber(place) {
		p.Number = &numeral.Number{Text: "17", Height: high, InkWidth: wide, BareInkWidth: wide}
		return p
	}
	p.Name = &fit.Name{Text: "HALVORSEN", LetterHeight: high, Asked: high, InkWidth: wide, BareInkWidth: wide}
	return p
}

// drawBlocks draws the views of page 1 for a player who wears the pieces.
func drawBlocks(t require.TestingT, g *garment.Garment, unit length.Unit, pieces []sizes.Piece) (*page.Page, *look) {
	o := &order.Order{Team: "Herons", Sport: "softball", Units: unit, Method: "cut film", Garment: order.GarmentChoice{
		Cut: g.Cut(), Group: g.Size().Group, Colour: colour("navy", "#14284b"), Trim: colour("gold", "#e8b33a"),
	}}
	for _, p := range pieces {
		o.Pieces = append(o.Pieces, p.Asked)
	}
	player := sizes.Player{Player: order.Player{Name: "Halvorsen", Number: "17", Size: g.Size(), SizeKnown: true}, Garment: g, Pieces: pieces}
	sized := &sizes.Sized{Order: o, Players: []sizes.Player{player}}
	d, err := newDocument(Input{Sized: sized, Paper: PaperFor(unit), Face: typeface.Embedded})
	require.NoError(t, err)
	plan := planLookViews(d.in.Paper, lookSizeOf(g))
	d.pages = []leaf{{title: lookTitle, sheet: plan.sheet}}
	l := &look{frame: d.newFrame(0), plan: plan, player: player}
	l.views = []*lookView{l.newView(garment.Front), l.newView(garment.Back)}
	l.chips = d.teamColours()
	for _, v := range l.views {
		require.NoError(t, v.paint())
	}
	l.tapes()
	for _, v := range l.views {
		v.measures()
	}
	l.leads()
	return d.book.Pages()[0], l
}

// wearing is a garment with blocks of any size in the usual order on both sides.
func wearing(t *rapid.T) (*garment.Garment, []sizes.Piece) {
	cut := rapid.SampledFrom(garment.Cuts()[:10]).Draw(t, "cut").Cut
	g, err := garment.New(cut, rapid.SampledFrom(garment.AllSizes()).Draw(t, "size"))
	require.NoError(t, err)
	chest := g.Measures().ChestHalf
	share := func(name string, low, high float64) float64 {
		return rapid.Float64Range(low, high).Draw(t, name) * chest
	}
	var pieces []sizes.Piece
	y := g.Collar(garment.Back) + rapid.Float64Range(5, 130).Draw(t, "collar to name")
	if rapid.Bool().Draw(t, "has a name") {
		high, room := rapid.Float64Range(12, 90).Draw(t, "letters"), share("room", 0.3, 0.75)
		pieces = append(pieces, block(garment.BackName, 0, y, room*rapid.Float64Range(0.05, 1.2).Draw(t, "of the room"), high, room))
		y += high + rapid.Float64Range(4, 70).Draw(t, "gap")
	}
	pieces = append(pieces, block(garment.BackNumber, 0, y, share("number", 0.05, 0.6), rapid.Float64Range(60, 260).Draw(t, "high"), 0))
	y = g.Collar(garment.Front) + rapid.Float64Range(5, 90).Draw(t, "collar to team name")
	if rapid.Bool().Draw(t, "has a team name") {
		high := rapid.Float64Range(15, 110).Draw(t, "team letters")
		pieces = append(pieces, block(garment.FrontName, 0, y, share("team name", 0.1, 0.7), high, 0))
		y += high + rapid.Float64Range(4, 60).Draw(t, "team gap")
	}
	if rapid.Bool().Draw(t, "has a front number") {
		pieces = append(pieces, block(garment.FrontNumber, share("aside", -0.2, 0.2), y, share("front number", 0.05, 0.3), rapid.Float64Range(30, 120).Draw(t, "front high"), 0))
	}
	return g, pieces
}

// Whatever is worn, on whatever cut and size: no two texts meet, no line runs
// through a text, and lanes stand one step apart.
func TestDimensionsNeverCollide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, pieces := wearing(t)
		p, l := drawBlocks(t, g, rapid.SampledFrom([]length.Unit{length.Inch, length.Centimetre}).Draw(t, "unit"), pieces)
		requireClearTexts(t, p)
		requireNoLineThroughText(t, p)
		for _, v := range l.views {
			require.True(t, slices.IsSortedFunc(v.widths, func(a, b laneWidth) int { return int(math.Copysign(1, a.long()-b.long())) }), "the shorter is nearer")
			for i, w := range v.widths {
				require.InDelta(t, parts.FirstLane+float64(i)*parts.LaneStep, min(v.view.Bounds().Min.Y, v.view.Y)-w.Y, 1e-9)
			}
			require.LessOrEqual(t, len(v.chain.Steps)+len(v.widths)+len(v.numbers), 9, "at most nine lengths a view")
		}
	})
}

// A chain's lengths add up to where its ends lie.
func TestChainMeasuresWhatIsDrawn(t *testing.T) {
	g, err := garment.New(garment.VNeck, garment.Size{Group: garment.Women, Letter: "M"})
	require.NoError(t, err)
	collar := g.Collar(garment.Back)
	_, l := drawBlocks(t, g, length.Inch, []sizes.Piece{
		block(garment.BackName, 0, collar+76.2, 200, 50.8, 280), block(garment.BackNumber, 0, collar+76.2+50.8+38.1, 220, 203.2, 0),
	})
	back := l.views[1]
	assert.Equal(t, []parts.Step{
		{Value: "3\u00a0in", Word: "collar to name"}, {Value: "2\u00a0in", Word: "letters"},
		{Value: "1\u00a0½\u00a0in", Word: "gap"}, {Value: "8\u00a0in", Word: "number"},
	}, back.chain.Steps)
	for i, mm := range []float64{0, 76.2, 127, 165.1, 368.3} {
		assert.InDelta(t, back.view.Y+(collar+mm)*l.plan.scale, back.chain.Levels[i], 1e-9)
	}
	assert.Empty(t, l.views[0].chain.Levels, "nothing on the front, nothing to measure")
}

func TestWithoutDoublesKeepsTheLonger(t *testing.T) {
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	long, short, apart := extension{at(10, 50), at(10, 0)}, extension{at(10.5, 40), at(10.5, 10)}, extension{at(11, 40), at(11, 10)}
	assert.Equal(t, []extension{long}, withoutDoubles([]extension{short, long}))
	assert.Equal(t, []extension{long, apart}, withoutDoubles([]extension{long, apart}), "0.8 mm and more apart")
	level := extension{at(0, 20), at(30, 20)}
	assert.Equal(t, []extension{long, level}, withoutDoubles([]extension{long, level}), "they cross")
}

func TestCrosses(t *testing.T) {
	box := geom.Rect{Min: geom.Point{X: 1, Y: 1}, Max: geom.Point{X: 3, Y: 2}}
	for _, row := range []struct {
		name string
		a, b geom.Point
		want bool
	}{
		{"through", geom.Point{X: 0, Y: 0}, geom.Point{X: 4, Y: 3}, true},
		{"from inside", geom.Point{X: 2, Y: 1.5}, geom.Point{X: 9, Y: 9}, true},
		{"level, over it", geom.Point{X: 0, Y: 0.5}, geom.Point{X: 4, Y: 0.5}, false},
		{"level, through it", geom.Point{X: 0, Y: 1.5}, geom.Point{X: 4, Y: 1.5}, true},
		{"ends before it", geom.Point{X: 0, Y: 1.5}, geom.Point{X: 0.9, Y: 1.5}, false},
		{"past its corner", geom.Point{X: 0, Y: 1.2}, geom.Point{X: 2, Y: 3.2}, false},
	} {
		assert.Equal(t, row.want, crosses(row.a, row.b, box), row.name)
	}
}
