package parts_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

func newPage(t testing.TB, s page.Sheet) *page.Page {
	t.Helper()
	return newBook(t).Add(s, "")
}

func newBook(t testing.TB) *page.Book {
	t.Helper()
	b, err := page.NewBook()
	require.NoError(t, err)
	return b
}

// texts returns all that is set on a page, in order.
func texts(ops []page.Op) []string {
	var out []string
	for _, op := range ops {
		switch o := op.(type) {
		case page.Words:
			out = append(out, o.Text)
		case page.Clip:
			out = append(out, texts(o.Ops)...)
		}
	}
	return out
}

func TestGridIsThatOfTheStyleGuide(t *testing.T) {
	for _, c := range []struct {
		sheet                     page.Sheet
		live, column, top, bottom float64
	}{
		{page.Letter().Landscape(), 251.4, 17.283, 42, 194.5},
		{page.Letter(), 187.9, 11.992, 42, 258.0},
		{page.A4().Landscape(), 269, 18.750, 42, 188.6},
		{page.A4(), 182, 11.5, 42, 275.6},
	} {
		g := parts.NewGrid(c.sheet)
		assert.InDelta(t, c.live, g.Live(), 1e-9)
		assert.InDelta(t, c.column, g.Column, 0.0005)
		assert.InDelta(t, c.top, g.Top, 1e-9)
		assert.InDelta(t, c.bottom, g.Bottom, 1e-9)
		assert.InDelta(t, g.Right, g.X(12)+g.Span(1), 1e-9)
		assert.InDelta(t, g.Live(), g.Span(12), 1e-9)
	}
}

// WCAG 2.2: black on white is 21 to 1; #767676 on white is the darkest of the
// greys that pass 4.5 (4.54) and #777777 the lightest that fails (4.48), as in
// W3C technique G18's examples of the ratio.
func TestContrastIsThatOfWCAG(t *testing.T) {
	assert.InDelta(t, 21, parts.Contrast(0, page.White), 1e-12)
	assert.InDelta(t, 1, parts.Contrast(0x123456, 0x123456), 1e-12)
	assert.InDelta(t, 4.54, parts.Contrast(0x767676, page.White), 0.005)
	assert.InDelta(t, 4.48, parts.Contrast(page.White, 0x777777), 0.005)
}

func TestPageColoursCanBeRead(t *testing.T) {
	for _, c := range []page.Colour{parts.Ink, parts.Slate, parts.Decide} {
		assert.Greater(t, parts.Contrast(c, page.White), 4.5, c.Hex())
		assert.Greater(t, parts.Contrast(c, parts.Tile), 4.5, c.Hex())
	}
	assert.GreaterOrEqual(t, parts.Contrast(parts.Rule, page.White), 2.95, "a line, never text")
}

func TestGreyKeepsTheLuminance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := page.Colour(rapid.Uint32Range(0, 0xFFFFFF).Draw(t, "colour"))
		g := parts.Grey(c)
		r, gr, b := g.RGB()
		assert.True(t, r == gr && gr == b)
		// One of 255 steps is at most 0.009 of the luminance.
		assert.InDelta(t, parts.Luminance(c), parts.Luminance(g), 0.0046)
	})
}

func TestWhiteOrInkTakesTheLargerContrast(t *testing.T) {
	const egret, gold page.Colour = 0xFBF7EC, 0xE2A336
	for _, c := range []struct {
		name      string
		panel     page.Colour
		lettering []page.Colour
		want      parts.OnShirt
	}{
		{"dark panel", 0x1D3B53, nil, parts.OnShirt{Line: page.White, Halo: parts.Ink}},
		{"the lettering's own near white", 0x1D3B53, []page.Colour{gold, egret}, parts.OnShirt{Line: egret, Halo: parts.Ink}},
		{"gold is no white", 0x1D3B53, []page.Colour{gold}, parts.OnShirt{Line: page.White, Halo: parts.Ink}},
		{"white panel", page.White, []page.Colour{egret}, parts.OnShirt{Line: parts.Ink, Halo: egret}},
		{"between the two", 0x7D7D7D, nil, parts.OnShirt{Line: page.White, Halo: parts.Ink, Needs: true}},
	} {
		assert.Equal(t, c.want, parts.WhiteOrInk(c.panel, c.lettering...), c.name)
	}
	assert.True(t, parts.NeedsKeyline(page.White, egret))
	assert.False(t, parts.NeedsKeyline(0x1D3B53, egret))
}

// inked returns the box of what the steps paint, without the slack of Bounds.
func inked(ops []page.Op) geom.Rect {
	box := geom.EmptyRect()
	for _, op := range ops {
		switch o := op.(type) {
		case page.Fill:
			box = box.Union(o.Path.Bounds())
		case page.Stroke:
			box = box.Union(o.Path.Bounds())
		}
	}
	return box
}

func TestVerdictMarksHaveOneSizeAndTheirLetters(t *testing.T) {
	for v, bars := range map[parts.Verdict]int{parts.Full: 3, parts.Eased: 5, parts.Reduced: 5, parts.Over: 5} {
		p := newPage(t, page.A4())
		assert.InDelta(t, 5.4, parts.VerdictMark(p.Pen, 10, 20, 3, v, parts.Ink), 1e-9)
		fills := 0
		for _, op := range p.Ops() {
			if _, ok := op.(page.Fill); ok {
				fills++
			}
		}
		assert.Equal(t, bars+2, fills, "%s: letters and two posts", v)
		box := inked(p.Ops())
		assert.InDelta(t, 20, box.Min.Y, 1e-9)
		assert.InDelta(t, 23, box.Max.Y, 1e-9)
		assert.GreaterOrEqual(t, box.Min.X, 10.0)
		assert.LessOrEqual(t, box.Max.X, 15.4)
	}
}

func TestEveryMarkHasItsWord(t *testing.T) {
	assert.Equal(t, "full eased reduced over unknown", fmt.Sprint(parts.Full, " ", parts.Eased, " ", parts.Reduced, " ", parts.Over, " ", parts.Verdict(9)))
	assert.Equal(t, "breaks a rule", parts.Broken.String())
	assert.Equal(t, "in order", parts.InOrder.String())
	p := newPage(t, page.A4())
	parts.VerdictLine(p.Pen, 10, 20, parts.Over, "by 1 ¼ in")
	parts.VerdictLine(p.Pen, 10, 30, parts.Eased, "1 ¾ in high")
	assert.Equal(t, []string{"over", " by 1 ¼ in", "eased", "  1 ¾ in high"}, texts(p.Ops()))
	for _, op := range p.Ops() {
		if w, ok := op.(page.Words); ok && w.Text == "over" {
			assert.Equal(t, parts.Decide, w.Style.Colour)
			assert.Equal(t, page.SemiBold, w.Style.Weight)
		}
	}
}

func TestRuleResultsDifferInShapeNotOnlyInColour(t *testing.T) {
	seen := map[string]parts.Result{}
	for r := parts.Broken; r <= parts.InOrder; r++ {
		p := newPage(t, page.A4())
		parts.ResultMark(p.Pen, 50, 50, parts.ResultRadius, r, parts.Ink)
		shape := fmt.Sprint(p.Ops())
		_, again := seen[shape]
		assert.False(t, again, r.String())
		seen[shape] = r
		box := inked(p.Ops())
		assert.True(t, box.Min.X >= 50-1.5501 && box.Max.X <= 50+1.5501, r.String())
	}
}

func TestCombTeethAreTheDigits(t *testing.T) {
	p := newPage(t, page.A4())
	parts.Comb(p.Pen, 10, 20, "0f 7c41e09b-52d6a38fffff")
	ops := p.Ops()
	require.Len(t, ops, 17, "a rule and sixteen teeth")
	for i, want := range []float64{0.8, 5.0, 0.8 + 4.2*7/15, 0.8 + 4.2*12/15} {
		tooth := ops[1+i].(page.Stroke).Path.Bounds()
		assert.InDelta(t, 10+1.15*float64(i), tooth.Min.X, 1e-9)
		assert.InDelta(t, want, tooth.Height(), 1e-9)
	}
	assert.Equal(t, "0f7c 41e0 9b52 d6a3", parts.Code("0f 7c41e09b-52d6a38fffff"))
	assert.Equal(t, "–", parts.Code(""))
}

func TestDifferentCodesGiveDifferentCombs(t *testing.T) {
	b := newBook(t)
	comb := func(code string) string {
		p := b.Add(page.A4(), "")
		parts.Comb(p.Pen, 0, 0, code)
		return fmt.Sprint(p.Ops())
	}
	code := "7c41e09b52d6a38f"
	for i := range code {
		other := code[:i] + string("0123456789abcdef"[(strings.IndexByte("0123456789abcdef", code[i])+1)%16]) + code[i+1:]
		assert.NotEqual(t, comb(code), comb(other))
	}
}

func TestTapeIsTrueToScale(t *testing.T) {
	for _, c := range []struct {
		unit    length.Unit
		mm      float64 // of one unit
		figures []string
	}{
		{length.Inch, 25.4, []string{"0", "5", "10", "15", "20", "25", "in"}},
		{length.Centimetre, 10, []string{"0", "10", "20", "30", "40", "50", "60", "cm"}},
	} {
		p := newPage(t, page.Letter().Landscape())
		parts.Tape(p.Pen, 100, 50, 50+660.0/7, 1.0/7, c.unit)
		require.Equal(t, c.figures, texts(p.Ops()))
		last := 0.0
		for _, op := range p.Ops() {
			if s, ok := op.(page.Stroke); ok && s.Path.Bounds().Height() == 0 {
				last = max(last, s.Path.Bounds().Min.Y-50)
			}
		}
		whole := float64(int(660/c.mm)) * c.mm / 7
		assert.InDelta(t, whole, last, 1e-6, "the last tick is a whole unit")
	}
}

func TestScaleBarReadsBothWays(t *testing.T) {
	for _, c := range []struct {
		k    float64
		unit length.Unit
		long float64
		want string
	}{
		{1.0 / 7, length.Inch, 15 * 25.4 / 7, "0 5 10 15 0 1 2 in on the shirt in on this paper"},
		{1.0 / 14, length.Inch, 35 * 25.4 / 14, "0 5 10 15 20 25 30 35 0 1 2 in on the shirt in on this paper"},
		{1.0 / 7, length.Centimetre, 400.0 / 7, "0 10 20 30 40 0 2 4 cm on the shirt cm on this paper"},
	} {
		p := newPage(t, page.Letter().Landscape())
		end := parts.ScaleBar(p.Pen, 14, 200, c.k, parts.ScaleBarLength, c.unit, "shirt")
		assert.InDelta(t, 14+c.long, end, 1e-9)
		assert.Equal(t, c.want, strings.Join(texts(p.Ops()), " "))
	}
}

func TestScaleBarBlocksAreNineMillimetresAtLeast(t *testing.T) {
	b := newBook(t)
	for _, over := range []float64{2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24} {
		for _, unit := range []length.Unit{length.Inch, length.Centimetre} {
			p := b.Add(page.Letter().Landscape(), "")
			end := parts.ScaleBar(p.Pen, 0, 100, 1/over, parts.ScaleBarLength, unit, "shirt")
			assert.LessOrEqual(t, end, parts.ScaleBarLength+1e-9, "1 : %g", over)
			assert.GreaterOrEqual(t, p.Ops()[0].(page.Fill).Path.Bounds().Width(), 9.0, "1 : %g", over)
		}
	}
}

func TestRatiosAreShort(t *testing.T) {
	assert.Equal(t, "1 : 7", parts.Ratio(1.0/7))
	assert.Equal(t, "1 : 2.5", parts.Ratio(0.4))
}

func TestAWidthTooShortForItsTextHasItBeside(t *testing.T) {
	p := newPage(t, page.A4())
	w := parts.Width{X1: 50, X2: 110, Y: 30, Value: "10 ¹⁵⁄₁₆ in", Word: "name"}
	box := parts.WidthLine(p.Pen, w)
	assert.InDelta(t, 80, box.Center().X, 1e-9)
	assert.Less(t, box.Max.Y, 30.0)
	w.X2 = 60
	box = parts.WidthLine(p.Pen, w)
	assert.Greater(t, box.Min.X, 60.0)
	assert.InDelta(t, 30, box.Center().Y, 0.5)
}

func TestAnExtensionLineIsClearOfTheInkAndTurnsLightOnTheShirt(t *testing.T) {
	p := newPage(t, page.A4())
	ground := parts.Ground{Shape: page.RectPath(0, 50, 100, 50), Panel: 0x1D3B53, On: parts.WhiteOrInk(0x1D3B53)}
	parts.Extension(p.Pen, geom.Point{X: 20, Y: 60}, geom.Point{X: 20, Y: 30}, &ground)
	line := p.Ops()[0].(page.Stroke)
	assert.Equal(t, parts.Ink, line.Colour)
	assert.InDelta(t, 59, line.Path.Bounds().Max.Y, 1e-9)
	assert.InDelta(t, 28.4, line.Path.Bounds().Min.Y, 1e-9)
	inside := p.Ops()[1].(page.Clip)
	assert.Equal(t, page.White.Mix(0x1D3B53, 0.8), inside.Ops[len(inside.Ops)-1].(page.Stroke).Colour)
	before := len(p.Ops())
	parts.Extension(p.Pen, geom.Point{X: 20, Y: 60}, geom.Point{X: 20, Y: 59.5}, nil)
	assert.Len(t, p.Ops(), before, "no room, no line")
}

// boxes returns the room that each line of text takes up.
func boxes(p *page.Page) []geom.Rect {
	var out []geom.Rect
	for _, op := range p.Ops() {
		if w, ok := op.(page.Words); ok {
			high := w.Style.Size * page.MMPerPoint
			out = append(out, geom.Rect{Min: geom.Point{X: w.X, Y: w.Y - 0.72*high}, Max: geom.Point{X: w.X + p.Width(w.Style, w.Text), Y: w.Y + 0.2*high}})
		}
	}
	return out
}

func TestWordsOfAChainNeverOverlap(t *testing.T) {
	b := newBook(t)
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "steps")
		c := parts.Chain{X: 100, Levels: []float64{40}, Left: rapid.Bool().Draw(t, "left")}
		for i := range n {
			c.Levels = append(c.Levels, c.Levels[i]+rapid.Float64Range(0.4, 30).Draw(t, "step"))
			c.Steps = append(c.Steps, parts.Step{Value: "11 ¹⁵⁄₁₆ in", Word: "collar to name"})
		}
		p := b.Add(page.Letter().Landscape(), "")
		parts.ChainLine(p.Pen, c)
		all := boxes(p)
		require.Len(t, all, 2*n, "no value is dropped")
		for i, a := range all {
			for _, other := range all[:i] {
				apart := a.Min.X >= other.Max.X-1e-6 || other.Min.X >= a.Max.X-1e-6 || a.Min.Y >= other.Max.Y-1e-6 || other.Min.Y >= a.Max.Y-1e-6
				assert.True(t, apart, "%v and %v", a, other)
			}
		}
	})
}

func TestHatchingFillsItsArea(t *testing.T) {
	p := newPage(t, page.Sheet{Name: "card", W: 20, H: 20})
	parts.Hatch(p.Pen, page.RectPath(5, 5, 10, 10), 0, 0.2, 0.9)
	img, err := p.Image(254)
	require.NoError(t, err)
	sum := 0.0
	for y := range 200 {
		for x := range 200 {
			dark := 1 - float64(img.RGBAAt(x, y).R)/255
			if x < 49 || x > 150 || y < 49 || y > 150 {
				assert.Zero(t, dark, "nothing outside, %d %d", x, y)
			}
			sum += dark
		}
	}
	// Lines of 0.2 at 45° every 0.9 along x cover 0.2·√2/0.9 of the area.
	assert.InDelta(t, 0.2*1.41421/0.9, sum/100/100, 0.01)
	parts.Hatch(p.Pen, nil, 0, 0.2, 0.9)
	parts.Hatch(p.Pen, page.RectPath(0, 0, 1, 1), 0, 0.2, 0)
	assert.Len(t, p.Ops(), 1)
}
