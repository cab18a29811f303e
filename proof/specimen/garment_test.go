package specimen_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/specimen"
)

// words are the texts of a page with the room that each takes.
type words struct {
	text string
	box  geom.Rect
}

func wordsOf(b *page.Book, p *page.Page) []words {
	var out []words
	for _, op := range p.Ops() {
		if o, ok := op.(page.Words); ok && strings.TrimSpace(o.Text) != "" {
			high := o.Style.Size * 0.24 // figures and lower case letters, mm
			out = append(out, words{o.Text, geom.Rect{
				Min: geom.Point{X: o.X, Y: o.Y - high}, Max: geom.Point{X: o.X + b.Width(o.Style, o.Text), Y: o.Y + 0.3}}})
		}
	}
	return out
}

func TestGarmentSheetsKeepTheirTextsApartOnThePaper(t *testing.T) {
	both := specimen.Units{length.Inch, length.Centimetre}
	for _, info := range garment.Cuts() {
		for _, c := range []struct {
			size  garment.Size
			units specimen.Units
		}{
			{garment.Size{Group: garment.Youth, Letter: "XS"}, both}, {garment.Size{Group: garment.Adult, Letter: "4XL"}, both},
			{garment.Size{Group: garment.Women, Letter: "M"}, both[:1]}, {garment.Size{Group: garment.Adult, Letter: "S"}, both[1:]},
		} {
			g, err := garment.New(info.Cut, c.size)
			require.NoError(t, err)
			book, err := specimen.Garment(g, c.units)
			require.NoError(t, err)
			for i, p := range book.Pages() {
				requireApart(t, book, p, fmt.Sprintf("%s %s %v page %d", info.Cut, c.size, c.units, i+1))
			}
		}
	}
}

func requireApart(t *testing.T, book *page.Book, p *page.Page, where string) {
	t.Helper()
	all := wordsOf(book, p)
	for i, a := range all {
		assert.True(t, a.box.Min.X >= 9.9 && a.box.Max.X <= p.Sheet.W-9.9 && a.box.Max.Y <= p.Sheet.H-9.9, "%s: %q nears the edge", where, a.text)
		for _, b := range all[i+1:] {
			apart := a.box.Min.X >= b.box.Max.X || b.box.Min.X >= a.box.Max.X || a.box.Min.Y >= b.box.Max.Y || b.box.Min.Y >= a.box.Max.Y
			assert.True(t, apart, "%s: %q lies on %q", where, a.text, b.text)
		}
	}
}

// Every measure is printed beside its line and in the list, every place in the
// legend, in both units.
func TestAGarmentSheetSaysEveryMeasureAndPlace(t *testing.T) {
	// Pieces for which the table of heights has no figure are not shown.
	unusual := map[string]bool{"hockey front number": true, "v-neck sleeve number": true, "soccer sleeve number": true}
	for _, info := range garment.Cuts() {
		g, err := garment.New(info.Cut, garment.Size{Group: garment.Adult, Letter: "M"})
		require.NoError(t, err)
		book, err := specimen.Garment(g, specimen.Units{length.Inch, length.Centimetre})
		require.NoError(t, err)
		pages := book.Pages()
		require.Len(t, pages, 2)
		first, second := textOf(book, pages[0]), textOf(book, pages[1])
		for _, f := range g.Figures() {
			if f.MM == 0 {
				continue
			}
			in, cm := length.Page(f.MM, length.Inch, length.Nearest), length.Page(f.MM, length.Centimetre, length.Nearest)
			assert.Contains(t, first, in+" · "+cm+"\n", "%s %s on the drawing", info.Cut, f.Measure)
			assert.Contains(t, first, "\n"+in+"\n"+cm+"\n", "%s %s in the list", info.Cut, f.Measure)
			assert.GreaterOrEqual(t, strings.Count(first, f.Measure), 2, "%s %s", info.Cut, f.Measure)
		}
		assert.Contains(t, first, "Generic: replace with the maker's spec sheet")
		for _, place := range garment.Places(info.Cut) {
			if !unusual[string(info.Cut)+" "+string(place)] {
				assert.Contains(t, second, string(place)+"\n", "%s", info.Cut)
			}
		}
	}
}

func TestAGarmentSheetSaysWhichFiguresAreTheMakers(t *testing.T) {
	size := garment.Size{Group: garment.Adult, Letter: "M"}
	m, _, err := garment.Standard(garment.CrewTee, size)
	require.NoError(t, err)
	g, err := garment.Custom(garment.CrewTee, size, m, "maker's sheet, line 4")
	require.NoError(t, err)
	book, err := specimen.Garment(g, specimen.Units{length.Centimetre})
	require.NoError(t, err)
	text := textOf(book, book.Pages()[0])
	assert.NotContains(t, strings.ToLower(text), "generic")
	assert.Contains(t, text, "maker's sheet, line 4")
}

func textOf(b *page.Book, p *page.Page) string {
	var out strings.Builder
	for _, w := range wordsOf(b, p) {
		out.WriteString(strings.TrimSpace(w.text) + "\n")
	}
	return out.String()
}

func TestTheContactSheetShowsEveryCutAtOneScale(t *testing.T) {
	book, err := specimen.Garments(page.Letter(), specimen.ContactSizes(), length.Inch)
	require.NoError(t, err)
	text, scales, outlines := "", map[string]bool{}, 0
	for _, p := range book.Pages() {
		for _, w := range wordsOf(book, p) {
			text += w.text + "\n"
			if strings.HasPrefix(w.text, "Drawn 1 : ") {
				scales[w.text] = true
			}
		}
		requireApart(t, book, p, p.Title)
		for _, op := range p.Ops() {
			if s, ok := op.(page.Stroke); ok && s.Line.Weight == 0.25 {
				outlines++
				box := s.Path.Bounds()
				assert.True(t, box.Min.X >= 13 && box.Max.X <= p.Sheet.W-13 && box.Max.Y <= p.Sheet.H-21.4, "a garment stays between the margins")
			}
		}
	}
	assert.Len(t, scales, 1)
	for _, info := range garment.Cuts() {
		assert.Equal(t, 1, strings.Count(text, info.About+"\n"), info.Title)
	}
	assert.Equal(t, len(garment.Cuts())*3*2, outlines, "every cut, three sizes, front and back")
}
