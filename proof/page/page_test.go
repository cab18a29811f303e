package page_test

import (
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"errors"
	"image/color"
	"image/png"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
)

const (
	ink  page.Colour = 0x16202A
	gold page.Colour = 0xE2A336
)

func TestSheetsTurn(t *testing.T) {
	l := page.Letter().Landscape()
	assert.Equal(t, page.Sheet{Name: "Letter", W: 279.4, H: 215.9}, l)
	assert.Equal(t, page.Letter(), l.Portrait())
	assert.True(t, l.Wide())
	assert.False(t, page.A4().Wide())
}

func TestColoursAreReadAndWritten(t *testing.T) {
	for text, want := range map[string]page.Colour{"#16202A": ink, "#16202a": ink, "#fff": page.White, "#0aF": 0x00AAFF} {
		got, err := page.ParseColour(text)
		require.NoError(t, err)
		assert.Equal(t, want, got)
	}
	for _, text := range []string{"", "#", "navy", "16202A", "#16202", "#16202A0", "#gggggg", "#+12345", "#ééé"} {
		_, err := page.ParseColour(text)
		assert.ErrorContains(t, err, "#RRGGBB", text)
	}
	assert.Equal(t, "#16202A", ink.Hex())
}

func TestMixedColoursLieBetween(t *testing.T) {
	assert.Equal(t, ink, ink.Mix(page.White, 1))
	assert.Equal(t, page.White, ink.Mix(page.White, 0))
	assert.Equal(t, page.Colour(0x808080), page.White.Mix(0, 0.5))
}

func TestNumbersAreShort(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{0, 3, "0"}, {-0.0001, 3, "0"}, {1.5, 3, "1.5"}, {-1.25, 1, "-1.3"}, {279.4, 3, "279.4"},
		{0.0005, 3, "0.001"}, {-3.1004, 3, "-3.1"}, {12, 0, "12"}, {0.007, 3, "0.007"},
	} {
		assert.Equal(t, c.want, string(page.AppendNumber(nil, c.v, c.decimals)))
	}
}

func TestNumbersReadBackWithinHalfAStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e5, 1e5).Draw(t, "v")
		d := rapid.IntRange(0, 8).Draw(t, "decimals")
		got, err := strconv.ParseFloat(string(page.AppendNumber(nil, v, d)), 64)
		require.NoError(t, err)
		assert.InDelta(t, v, got, 0.5000001*math.Pow(10, -float64(d))+1e-9)
	})
}

// drawn returns a page with every operation and a drawing that is used twice.
func drawn(t testing.TB) *page.Page {
	p := newBook(t).Add(page.Sheet{Name: "card", W: 80, H: 50}, "A card & more")
	disc := p.Book().Art("disc", func(q *page.Pen) {
		q.FillCircle(0, 0, 5, gold)
		q.StrokeCircle(0, 0, 5, ink, page.Line{Weight: 0.35, Dash: []float64{0.7, 0.5}})
	})
	p.Use(disc, geom.Translate(10, 10))
	p.Use(disc, geom.Scale(2, 2).Then(geom.Translate(40, 20)))
	p.Clip(page.RectPath(60, 10, 10, 10), geom.Identity(), func(q *page.Pen) { q.FillCircle(60, 10, 8, ink) })
	p.Line(5, 45, 75, 45, ink, page.Line{Weight: 1, Cap: page.RoundCap, Join: page.BevelJoin})
	p.Text(5, 40, page.Style{Size: 9, Colour: ink}, `O’ROURKE <"11 in">`)
	return p
}

func svg(t testing.TB, p *page.Page, o page.SVGOptions) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, p.WriteSVG(&b, o))
	return b.String()
}

func TestSVGIsInMillimetresAndNeedsNoFont(t *testing.T) {
	got := svg(t, drawn(t), page.SVGOptions{Paper: true})
	assert.Contains(t, got, `width="80mm" height="50mm" viewBox="0 0 80 50"`)
	assert.Contains(t, got, "<title>A card &amp; more</title>")
	assert.Contains(t, got, `aria-label="O’ROURKE &lt;&#34;11 in&#34;&gt;"`)
	assert.NotContains(t, got, "font-family")
	assert.Equal(t, 1, strings.Count(got, "://"), "nothing is fetched: the one address is the name space")
}

func TestSVGIsWellFormedAndItsReferencesLead(t *testing.T) {
	got := svg(t, drawn(t), page.SVGOptions{Prefix: "p2-"})
	d := xml.NewDecoder(strings.NewReader(got))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
	}
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(got, -1) {
		assert.False(t, ids[m[1]], "id %s is given once", m[1])
		assert.True(t, strings.HasPrefix(m[1], "p2-"))
		ids[m[1]] = true
	}
	for _, m := range regexp.MustCompile(`#(p2-[^")]+)`).FindAllStringSubmatch(got, -1) {
		assert.True(t, ids[m[1]], m[1])
	}
}

func TestASharedDrawingIsStoredOnceAndDrawnOnce(t *testing.T) {
	p := drawn(t)
	got := svg(t, p, page.SVGOptions{})
	assert.Equal(t, 1, strings.Count(got, `fill="#E2A336"`))
	assert.Equal(t, 2, strings.Count(got, `href="#a1"`))
	again := p.Book().Art("disc", func(*page.Pen) { t.Error("drawn a second time") })
	assert.Len(t, again.Ops(), 2)
}

func TestTheSamePageGivesTheSameBytes(t *testing.T) {
	assert.Equal(t, svg(t, drawn(t), page.SVGOptions{}), svg(t, drawn(t), page.SVGOptions{}))
	var a, b bytes.Buffer
	require.NoError(t, drawn(t).WritePNG(&a, 72))
	require.NoError(t, drawn(t).WritePNG(&b, 72))
	assert.Equal(t, a.Bytes(), b.Bytes())
}

func TestAnInlineSVGLeavesItsSizeToTheDocument(t *testing.T) {
	got := svg(t, drawn(t), page.SVGOptions{Inline: true})
	assert.True(t, strings.HasPrefix(got, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 80 50">`), got[:90])
}

func TestPNGHasItsSizeAndResolution(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, drawn(t).WritePNG(&b, 254))
	img, err := png.Decode(bytes.NewReader(b.Bytes()))
	require.NoError(t, err)
	assert.Equal(t, 800, img.Bounds().Dx())
	assert.Equal(t, 500, img.Bounds().Dy())
	i := bytes.Index(b.Bytes(), []byte("pHYs"))
	require.Equal(t, 37, i, "after the header")
	assert.Equal(t, uint32(10000), binary.BigEndian.Uint32(b.Bytes()[i+4:]), "dots a metre")
}

func TestPNGShowsFillClipAndSharedArtWhereTheyBelong(t *testing.T) {
	img, err := drawn(t).Image(254) // 10 pixels a mm
	require.NoError(t, err)
	rgba := func(c page.Colour) color.RGBA {
		r, g, b := c.RGB()
		return color.RGBA{R: r, G: g, B: b, A: 255}
	}
	for _, c := range []struct {
		what string
		x, y int
		want page.Colour
	}{
		{"paper", 300, 470, page.White}, {"disc", 100, 100, gold}, {"disc twice as large", 470, 200, gold},
		{"inside the clip", 620, 120, ink}, {"above the clip", 620, 80, page.White}, {"left of the clip", 580, 120, page.White},
		{"line", 400, 450, ink}, {"its round end", 47, 450, ink}, {"beyond its end", 43, 450, page.White},
	} {
		assert.Equal(t, rgba(c.want), img.RGBAAt(c.x, c.y), c.what)
	}
}

func TestAResolutionWithoutReasonIsRefused(t *testing.T) {
	for _, dpi := range []float64{0, -1, 1e6, math.NaN(), math.Inf(1)} {
		_, err := drawn(t).Image(dpi)
		assert.ErrorContains(t, err, "another resolution")
	}
}

func TestAWriterThatFailsIsReported(t *testing.T) {
	full := errors.New("disk full")
	for n := range 3 {
		w := &limited{n * 40, full}
		assert.ErrorIs(t, drawn(t).WritePNG(w, 72), full)
	}
	assert.ErrorIs(t, drawn(t).WriteSVG(&limited{10, full}, page.SVGOptions{}), full)
}

// limited fails after n bytes.
type limited struct {
	n   int
	err error
}

func (l *limited) Write(p []byte) (int, error) {
	if len(p) > l.n {
		n := l.n
		l.n = 0
		return n, l.err
	}
	l.n -= len(p)
	return len(p), nil
}

func TestBoundsHoldWhatIsDrawn(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	art := p.Book().Art("bar", func(q *page.Pen) { q.FillRect(-1, -2, 10, 20, ink) })
	assert.Equal(t, geom.Rect{Min: geom.Point{X: -1, Y: -2}, Max: geom.Point{X: 9, Y: 18}}, art.Bounds())
	p.Use(art, geom.Translate(100, 100))
	p.Clip(page.RectPath(0, 0, 50, 60), geom.Identity(), func(q *page.Pen) { q.FillRect(40, 40, 100, 100, ink) })
	box := page.Bounds(p.Ops())
	assert.Equal(t, geom.Rect{Min: geom.Point{X: 40, Y: 40}, Max: geom.Point{X: 109, Y: 118}}, box)
}

func TestNothingIsDrawnForNothing(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	p.FillPath(nil, geom.Identity(), ink)
	p.StrokePath(page.RectPath(0, 0, 1, 1), geom.Identity(), ink, page.Line{})
	p.Clip(page.RectPath(0, 0, 1, 1), geom.Identity(), func(*page.Pen) {})
	p.Use(p.Book().Art("empty", func(*page.Pen) {}), geom.Identity())
	assert.Empty(t, p.Ops())
}

func BenchmarkNewBook(b *testing.B) {
	for b.Loop() {
		newBook(b)
	}
}

func BenchmarkText(b *testing.B) {
	p := newBook(b).Add(page.A4(), "")
	for b.Loop() {
		p.Width(page.Style{Size: 9}, "Please read every name out loud, letter by letter.")
	}
}
