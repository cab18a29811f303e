package page_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/proof/page"
)

func newBook(t testing.TB) *page.Book {
	t.Helper()
	b, err := page.NewBook()
	require.NoError(t, err)
	return b
}

func words(t testing.TB, p *page.Page) page.Words {
	t.Helper()
	ops := p.Ops()
	require.NotEmpty(t, ops)
	w, ok := ops[len(ops)-1].(page.Words)
	require.True(t, ok)
	return w
}

// Glyphs and advances as hb-shape 6.0.0 gives them for the two files, with kern
// on and liga, clig, calt, ccmp and locl off.
func TestCaptionsAreKernedAsHarfBuzzKernsThem(t *testing.T) {
	for _, c := range []struct {
		weight   page.Weight
		text     string
		ids      []uint32
		advances []float64
	}{
		{page.Regular, "AVATAR To", []uint32{30, 51, 30, 49, 30, 47, 994, 49, 18}, []float64{600, 568, 576, 507, 641, 640, 236, 507, 560}},
		{page.SemiBold, "AVATAR To", []uint32{30, 51, 30, 49, 30, 47, 994, 49, 18}, []float64{622, 588, 607, 515, 672, 664, 236, 515, 563}},
		{page.Regular, "11 ¹⁵⁄₁₆ in", []uint32{59, 59, 994, 844, 848, 120, 854, 859, 994, 12, 17}, []float64{600, 600, 236, 359, 353, 152, 354, 359, 236, 250, 568}},
		{page.SemiBold, "Łódź, L’Y.", []uint32{462, 308, 5, 383, 93, 994, 41, 99, 54, 90}, []float64{521, 563, 600, 513, 299, 236, 444, 301, 565, 299}},
	} {
		t.Run(c.text, func(t *testing.T) {
			p := newBook(t).Add(page.A4(), "")
			s := page.Style{Size: 1000 / page.MMPerPoint, Weight: c.weight} // 1000 units a mm: units are mm
			width := p.Text(0, 0, s, c.text)
			got := words(t, p)
			require.Len(t, got.Glyphs, len(c.ids))
			pen := 0.0
			for i, g := range got.Glyphs {
				assert.Equal(t, c.ids[i], g.ID, "glyph %d", i)
				assert.InDelta(t, pen, g.X, 1e-6, "glyph %d", i)
				pen += c.advances[i]
			}
			assert.InDelta(t, pen, width, 1e-6)
		})
	}
}

func TestTextStandsAsAligned(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	for _, c := range []struct {
		align  page.Align
		before float64
	}{{page.Start, 0}, {page.Middle, 0.5}, {page.End, 1}} {
		width := p.Text(100, 50, page.Style{Size: 9, Align: c.align, Tracking: 0.22}, "HALVORSEN")
		got := words(t, p)
		assert.InDelta(t, 100-c.before*width, got.X, 1e-9)
		assert.Equal(t, 50.0, got.Y)
	}
}

func TestTrackingStandsBetweenLettersOnly(t *testing.T) {
	b := newBook(t)
	plain := b.Width(page.Style{Size: 9.5}, "NG")
	assert.InDelta(t, plain+0.22, b.Width(page.Style{Size: 9.5, Tracking: 0.22}, "NG"), 1e-9)
	assert.InDelta(t, b.Width(page.Style{Size: 9.5}, "N"), b.Width(page.Style{Size: 9.5, Tracking: 0.22}, "N"), 1e-9)
}

func TestACharacterThatTheFaceLacksIsSpelledOut(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	p.Text(0, 0, page.Style{Size: 9}, "N\u0303IN\u0303A 🏆 名")
	assert.Equal(t, "ÑIÑA [U+1F3C6] [U+540D]", words(t, p).Text)
}

func TestSpacesAloneDrawNothing(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	assert.Positive(t, p.Text(0, 0, page.Style{Size: 9}, "  "))
	assert.Zero(t, p.Text(0, 0, page.Style{Size: 9}, ""))
	assert.Empty(t, p.Ops())
}

func TestWrapBreaksWhereAReaderWould(t *testing.T) {
	b := newBook(t)
	s := page.Style{Size: 9, Weight: page.SemiBold}
	narrow := b.Width(s, "FEATHERSTONE")
	for _, c := range []struct {
		name, text string
		width      float64
		want       []string
	}{
		{"all on one line", "NG ABARA", 100, []string{"NG ABARA"}},
		{"at a space", "DE LA CRUZ-PRENTISS", b.Width(s, "CRUZ-PRENTISS"), []string{"DE LA", "CRUZ-PRENTISS"}},
		{"after a hyphen when the word is too long", "DE LA CRUZ-PRENTISS", b.Width(s, "PRENTISS"), []string{"DE LA", "CRUZ-", "PRENTISS"}},
		{"anywhere, no hyphen added", "FEATHERSTONEHAUGH", narrow, []string{"FEATHERSTONE", "HAUGH"}},
		{"not at a no-break space", "1 ¾ in high", b.Width(s, "1 ¾ in"), []string{"1 ¾ in", "high"}},
		{"at a line feed", "NG\nABARA", 100, []string{"NG", "ABARA"}},
		{"nothing", "", 100, []string{""}},
		{"one letter a line at worst", "NG", 0.1, []string{"N", "G"}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, b.Wrap(s, c.width, c.text)) })
	}
}

func TestWrapLosesNothingAndFits(t *testing.T) {
	b := newBook(t)
	s := page.Style{Size: 9}
	widest := b.Width(s, "W") * 2
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[A-Za-zÀ-ž’-]{1,24}( [A-Za-z-]{1,20}){0,5}`).Draw(t, "text")
		width := rapid.Float64Range(widest, 60).Draw(t, "width")
		lines := b.Wrap(s, width, text)
		for _, line := range lines {
			assert.LessOrEqual(t, b.Width(s, line), width+1e-9)
			assert.True(t, utf8.ValidString(line))
		}
		assert.Equal(t, strings.ReplaceAll(text, " ", ""), strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
	})
}

func TestParagraphReturnsTheNextBaseline(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	next := p.Paragraph(10, 20, 30, 12.4, page.Style{Size: 9}, "one\ntwo\nthree")
	assert.InDelta(t, 20+3*12.4*page.MMPerPoint, next, 1e-9)
	assert.Len(t, p.Ops(), 3)
}

func TestSpansStandOneAfterTheOther(t *testing.T) {
	p := newBook(t).Add(page.A4(), "")
	a, b := page.Style{Size: 8, Weight: page.SemiBold}, page.Style{Size: 6.5}
	end := p.Spans(100, 20, page.End, page.Span{Style: b, Text: "name  "}, page.Span{Style: a, Text: "11 in"})
	assert.InDelta(t, 100, end, 1e-9)
	assert.InDelta(t, 100-p.Width(a, "11 in"), words(t, p).X, 1e-9)
}

func FuzzTextIsAlwaysSetWhole(f *testing.F) {
	for _, seed := range []string{"O’ROURKE", "q\u0323\u0301", "ŻÓŁĆ 🏆", "\x00\xff", "ﬁ ﬂ", "\u202e abc", "Ⅷ\u00ad"} {
		f.Add(seed)
	}
	b := newBook(f)
	f.Fuzz(func(t *testing.T, text string) {
		p := b.Add(page.A4(), "")
		width := p.Text(0, 0, page.Style{Size: 9}, text)
		assert.GreaterOrEqual(t, width, 0.0)
		for _, op := range p.Ops() {
			w := op.(page.Words)
			assert.Len(t, w.Glyphs, utf8.RuneCountInString(w.Text))
			for _, g := range w.Glyphs {
				assert.NotZero(t, g.ID, "no empty box for %U", g.Rune)
			}
		}
	})
}
