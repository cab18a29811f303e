package shirt

import (
	"bytes"
	"flag"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

var update = flag.Bool("update", false, "write the golden file anew")

const (
	navy, gold, white = 0x14284B, 0xE8B33A, 0xFFFFFF
)

func named(hex string) order.Colour { return order.Colour{Hex: hex} }

// number returns a real number piece 200 mm high with one outline.
func number(t *testing.T, hex, edge string) sizes.Piece {
	t.Helper()
	face, err := typeface.Embedded("graduate")
	require.NoError(t, err)
	asked := order.Piece{Place: garment.BackNumber, Face: "graduate", Colour: named(hex),
		Outlines: []order.Outline{{Width: length.FromMM(5, length.Millimetre), Colour: named(edge)}}}
	n, err := numeral.NewSizer().Number(numeral.Request{Text: "7", Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 200, Gap: math.NaN(),
		Outlines: []outline.Layer{{Width: 5}}})
	require.NoError(t, err)
	return sizes.Piece{Asked: asked, Number: &n, Side: garment.Back, At: geom.Point{Y: 400}, Top: 200}
}

func view(t *testing.T, scale float64, pieces ...sizes.Piece) View {
	t.Helper()
	g, err := garment.New(garment.CrewTee, garment.Size{Group: garment.Youth, Letter: "M"})
	require.NoError(t, err)
	choice := order.GarmentChoice{Cut: garment.CrewTee, Colour: named("#14284b"), Trim: named("#e8b33a")}
	return View{Garment: g, Side: garment.Back, Pieces: pieces, Cloth: NewCloth(choice, nil), Scale: scale, X: 30, Y: 5}
}

func newPage(t *testing.T) *page.Page {
	t.Helper()
	book, err := page.NewBook()
	require.NoError(t, err)
	return book.Add(page.Sheet{Name: "test", W: 60, H: 40}, "")
}

// uses lists the shared drawings that a page places.
func uses(ops []page.Op) []page.Use {
	var out []page.Use
	for _, op := range ops {
		switch o := op.(type) {
		case page.Use:
			out = append(out, o)
		case page.Clip:
			out = append(out, uses(o.Ops)...)
		}
	}
	return out
}

func TestPaintLooksAsItDid(t *testing.T) {
	p := newPage(t)
	require.NoError(t, view(t, 1.0/20, number(t, "#ffffff", "#e8b33a")).Paint(p.Pen))
	var b bytes.Buffer
	require.NoError(t, p.WriteSVG(&b, page.SVGOptions{}))
	const file = "testdata/back.svg"
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "run the test with -update once, and look at the file")
	assert.Equal(t, string(want), b.String())
}

// A number 200 mm high with its foot 400 mm below the shoulder stands at
// 200 / 20 to 400 / 20 mm on paper, its outline 5 / 20 mm beyond.
func TestPiecesStandAtTheirMeasures(t *testing.T) {
	p, v := newPage(t), view(t, 1.0/20, number(t, "#ffffff", "#e8b33a"))
	require.NoError(t, v.Paint(p.Pen))
	placed := uses(p.Ops())
	require.Len(t, placed, 2, "the cloth and the number")
	box := geom.EmptyRect()
	for _, op := range placed[1].Art.Ops() {
		box = box.Union(op.(page.Fill).Path.Transform(placed[1].At).Bounds())
	}
	assert.InDelta(t, 5+10-0.25, box.Min.Y, 0.01)
	assert.InDelta(t, 5+20+0.25, box.Max.Y, 0.01)
	assert.InDelta(t, 30, box.Center().X, 0.01)
	assert.InDelta(t, v.Garment.Measures().BodyLength/20+5, v.Bounds().Max.Y, 0.01)
}

func TestColoursGoFromTheOutsideIn(t *testing.T) {
	p := newPage(t)
	require.NoError(t, view(t, 1.0/20, number(t, "#ffffff", "#e8b33a")).Paint(p.Pen))
	ops := uses(p.Ops())[1].Art.Ops()
	require.Len(t, ops, 2)
	assert.Equal(t, page.Colour(gold), ops[0].(page.Fill).Colour)
	assert.Equal(t, page.Colour(white), ops[1].(page.Fill).Colour)
}

// Two players of one size share the cloth; two scales share the lettering.
func TestDrawingsAreShared(t *testing.T) {
	p, n := newPage(t), number(t, "#ffffff", "#e8b33a")
	require.NoError(t, view(t, 1.0/20, n).Paint(p.Pen))
	require.NoError(t, view(t, 1.0/20, n).Paint(p.Pen))
	require.NoError(t, view(t, 1.0/10, n).Paint(p.Pen))
	u := uses(p.Ops())
	require.Len(t, u, 6)
	assert.Same(t, u[0].Art, u[2].Art, "cloth")
	assert.NotSame(t, u[0].Art, u[4].Art, "cloth at another scale has other lines")
	assert.Same(t, u[1].Art, u[3].Art, "number")
	assert.Same(t, u[1].Art, u[5].Art, "number at another scale")
	other := number(t, "#ffffff", "#14284b")
	require.NoError(t, view(t, 1.0/20, other).Paint(p.Pen))
	assert.NotSame(t, u[1].Art, uses(p.Ops())[7].Art, "other colours")
}

func TestPiecesOfTheOtherSideAreLeftOut(t *testing.T) {
	p, v := newPage(t), view(t, 1.0/20, number(t, "#ffffff", "#e8b33a"))
	v.Side = garment.Front
	require.NoError(t, v.Paint(p.Pen))
	assert.Len(t, uses(p.Ops()), 1)
}

func TestWindowCutsTheDrawing(t *testing.T) {
	p, v := newPage(t), view(t, 1.0/20)
	v.Window = geom.Rect{Min: geom.Point{X: 20, Y: 4}, Max: geom.Point{X: 40, Y: 20}}
	require.NoError(t, v.Paint(p.Pen))
	require.Len(t, p.Ops(), 1)
	assert.Equal(t, v.Window, p.Ops()[0].(page.Clip).Path.Bounds())
}

func TestUnderLiesBetweenClothAndLettering(t *testing.T) {
	p, v := newPage(t), view(t, 1.0/20, number(t, "#ffffff", "#e8b33a"))
	v.Under = func(pen *page.Pen) { pen.FillRect(1, 1, 1, 1, white) }
	require.NoError(t, v.Paint(p.Pen))
	require.Len(t, p.Ops(), 3)
	assert.IsType(t, page.Use{}, p.Ops()[0])
	assert.IsType(t, page.Fill{}, p.Ops()[1])
	assert.IsType(t, page.Use{}, p.Ops()[2])
}

// The room is 280 mm, so the posts stand 14 mm left and right of the middle at
// 1 : 10; they reach from 14 mm over the cap line to 34 mm under the letters.
func TestPostsShowTheRoom(t *testing.T) {
	for _, row := range []struct {
		posts           Posts
		lines           int
		top, foot, wide float64
	}{{NoPosts, 0, 0, 0, 0}, {ThinPosts, 2, 100 - 14, 150 + 34, 0.13}, {OverPosts, 2, 100 - 26, 150 + 46, 0.30}} {
		name := fit.Name{Text: "A", LetterHeight: 40, Asked: 50, InkWidth: 100}
		p, v := newPage(t), view(t, 0.1, sizes.Piece{Name: &name, Drawn: page.RectPath(-50, 0, 100, 40), Side: garment.Back, At: geom.Point{Y: 140}, Top: 100,
			Room: garment.Room{Width: 280}, Asked: order.Piece{Place: garment.BackName, Colour: named("#ffffff")}})
		v.Posts = row.posts
		require.NoError(t, v.Paint(p.Pen))
		var posts []page.Stroke
		for _, op := range p.Ops() {
			if s, ok := op.(page.Stroke); ok {
				posts = append(posts, s)
			}
		}
		require.Len(t, posts, row.lines)
		for i, s := range posts {
			box := s.Path.Bounds()
			assert.InDelta(t, 30+14*float64(2*i-1), box.Min.X, 1e-9)
			assert.InDelta(t, 5+row.top/10, box.Min.Y, 1e-9)
			assert.InDelta(t, 5+row.foot/10, box.Max.Y, 1e-9)
			assert.Equal(t, row.wide, s.Line.Weight)
		}
	}
}

func TestATurnedPieceTurnsClockwiseOnThePage(t *testing.T) {
	n := number(t, "#ffffff", "#e8b33a")
	n.At, n.Turn = geom.Point{X: 100, Y: 100}, math.Pi/2
	m := view(t, 0.1).PieceMap(n)
	at := m.Apply(geom.Point{})
	assert.InDelta(t, 40, at.X, 1e-9)
	assert.InDelta(t, 15, at.Y, 1e-9)
	top := m.Apply(geom.Point{Y: 200})
	assert.InDelta(t, 40+20, top.X, 1e-9, "what was up points right")
	assert.InDelta(t, 15, top.Y, 1e-9)
}

// Gold on yellow have a contrast under 1.6, navy and gold over it.
func TestKeylinesPartColoursThatAreTooAlike(t *testing.T) {
	const yellow, offWhite = 0xF2C94C, 0xFBF7EC
	require.Less(t, parts.Contrast(gold, yellow), 1.6)
	assert.Empty(t, keylines([]page.Colour{white, gold}, navy))
	assert.Equal(t, map[int]page.Colour{0: parts.Ink}, keylines([]page.Colour{gold, yellow}, navy))
	assert.Equal(t, map[int]page.Colour{1: parts.Ink}, keylines([]page.Colour{navy, white}, offWhite), "against the cloth")
	assert.Equal(t, map[int]page.Colour{0: page.White}, keylines([]page.Colour{0x102040}, navy), "dark on dark")
}

func TestAKeylineKeepsItsWeightAtEveryScale(t *testing.T) {
	for _, scale := range []float64{1.0 / 7, 1.0 / 20} {
		p := newPage(t)
		require.NoError(t, view(t, scale, number(t, "#e8b33a", "#f2c94c")).Paint(p.Pen))
		u := uses(p.Ops())[1]
		var line page.Line
		for _, op := range u.Art.Ops() {
			if s, ok := op.(page.Stroke); ok {
				line = s.Line
			}
		}
		assert.InDelta(t, 0.13, line.Weight*scale, 1e-9)
	}
}

func TestClothColours(t *testing.T) {
	plain := NewCloth(order.GarmentChoice{Colour: named("#ffffff")}, nil)
	assert.Equal(t, plain.Body, plain.Trim, "no trim named")
	assert.Equal(t, parts.Ink, plain.On.Line)
	dark := NewCloth(order.GarmentChoice{Colour: named("#14284b")}, []order.Piece{{Colour: named("#fbf7ec")}})
	assert.Equal(t, page.Colour(0xFBF7EC), dark.On.Line, "the lettering's own white")
	assert.False(t, dark.On.Needs)
	assert.True(t, NewCloth(order.GarmentChoice{Colour: named("#777777")}, nil).On.Needs)
	assert.Less(t, parts.Luminance(dark.fill(garment.Inside)), parts.Luminance(dark.Body), "in shade")
	black := NewCloth(order.GarmentChoice{Colour: named("#000000")}, nil)
	assert.Greater(t, parts.Luminance(black.fill(garment.Inside)), parts.Luminance(black.Body), "black has no darker")
	assert.Equal(t, page.White, Paint(order.Colour{Hex: "teal"}))
}

func TestOutlineGetsThinnerBelowOneToTwelve(t *testing.T) {
	assert.Equal(t, parts.Outline, view(t, 1.0/12).outline())
	assert.Equal(t, parts.OutlineSmall, view(t, 1.0/14).outline())
}

func TestSmallDrawingsLeaveOutStitches(t *testing.T) {
	dashed := func(scale float64) int {
		p, n := newPage(t), 0
		require.NoError(t, view(t, scale).Paint(p.Pen))
		for _, op := range uses(p.Ops())[0].Art.Ops() {
			if s, ok := op.(page.Stroke); ok && len(s.Line.Dash) > 0 {
				n++
			}
		}
		return n
	}
	assert.Positive(t, dashed(1.0/7))
	assert.Zero(t, dashed(1.0/20), "36 mm wide on paper")
}

func BenchmarkPaint(b *testing.B) {
	face, err := typeface.Embedded("graduate")
	require.NoError(b, err)
	n, err := numeral.NewSizer().Number(numeral.Request{Text: "88", Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 200, Gap: math.NaN()})
	require.NoError(b, err)
	g, err := garment.New(garment.CrewTee, garment.Size{Group: garment.Adult, Letter: "M"})
	require.NoError(b, err)
	piece := sizes.Piece{Asked: order.Piece{Place: garment.BackNumber, Colour: named("#ffffff"),
		Outlines: []order.Outline{{Width: length.FromMM(5, length.Millimetre), Colour: named("#e8b33a")}}}, Number: &n, Side: garment.Back, At: geom.Point{Y: 400}}
	v := View{Garment: g, Side: garment.Back, Pieces: []sizes.Piece{piece}, Cloth: NewCloth(order.GarmentChoice{Colour: named("#14284b")}, nil), Scale: 0.1, X: 50, Y: 10}
	for b.Loop() {
		book, err := page.NewBook()
		require.NoError(b, err)
		require.NoError(b, v.Paint(book.Add(page.Letter(), "").Pen))
	}
}
