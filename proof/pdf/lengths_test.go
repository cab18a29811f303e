package pdf_test

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
)

// byMupdf returns page n of a PDF as mutool (mupdf) draws it.
func byMupdf(t testing.TB, path string, n, dpi int) image.Image {
	t.Helper()
	out := filepath.Join(t.TempDir(), "page.png")
	run(t, "mutool", "draw", "-q", "-r", strconv.Itoa(dpi), "-o", out, path, strconv.Itoa(n))
	return picture(t, out)
}

// bySVG returns a page as rsvg-convert (librsvg) draws its SVG.
func bySVG(t testing.TB, p *page.Page, dpi int) image.Image {
	t.Helper()
	folder := t.TempDir()
	svg, png, res := filepath.Join(folder, "p.svg"), filepath.Join(folder, "p.png"), strconv.Itoa(dpi)
	f, err := os.Create(svg)
	require.NoError(t, err)
	require.NoError(t, p.WriteSVG(f, page.SVGOptions{Paper: true}))
	require.NoError(t, f.Close())
	run(t, "rsvg-convert", "-d", res, "-p", res, "-o", png, svg)
	return picture(t, png)
}

// drawnLength is a bar on a page: where its middle lies across the other way,
// and how long it is.
type drawnLength struct {
	upright bool
	at, mm  float64
}

// measured returns how long a bar is on a picture: the darkness along its middle,
// summed, so that an edge counts as far as its pixel is covered.
func (l drawnLength) measured(img image.Image, dpi float64) float64 {
	px, size, sum := dpi/25.4, img.Bounds().Size(), 0.0
	middle := int(l.at * px)
	if l.upright {
		for y := range size.Y {
			sum += dark(img, middle, y)
		}
		return sum / px
	}
	for x := range size.X {
		sum += dark(img, x, middle)
	}
	return sum / px
}

// lengthsPage draws ten random lengths in the four ways in which pages draw: a
// fill, a line, the same at a scale in a shared drawing, and clipped.
func lengthsPage(b *page.Book, sheet page.Sheet, upright bool, random *rand.Rand) (*page.Page, []drawnLength) {
	p, across := b.Add(sheet, "Lengths"), sheet.W
	if upright {
		across = sheet.H
	}
	var out []drawnLength
	for i := range 10 {
		mm := 3 + random.Float64()*(across-23)
		from, at := 10+random.Float64()*(across-20-mm), 12+15*float64(i)
		rect := func(from, at, mm, wide float64) geom.Path {
			if upright {
				return page.RectPath(at-wide/2, from, wide, mm)
			}
			return page.RectPath(from, at-wide/2, mm, wide)
		}
		switch i % 4 {
		case 0:
			p.FillPath(rect(from, at, mm, 4), geom.Identity(), 0)
		case 1:
			x1, y1, x2, y2 := from, at, from+mm, at
			if upright {
				x1, y1, x2, y2 = at, from, at, from+mm
			}
			p.Line(x1, y1, x2, y2, 0, page.Line{Weight: 4})
		case 2: // a garment's millimetres at 1 : 7
			art := b.Art(fmt.Sprint(sheet.Name, upright, i), func(q *page.Pen) { q.FillPath(rect(0, 0, 7*mm, 28), geom.Identity(), 0) })
			x, y := from, at
			if upright {
				x, y = at, from
			}
			p.Use(art, geom.Affine{A: 1.0 / 7, D: 1.0 / 7, E: x, F: y})
		case 3:
			// Mupdf clips by plain rectangles in whole pixels: a waist makes this none.
			p.Clip(append(rect(from, at, mm, 4), rect(from+mm/2-1, at, 2, 5)...), geom.Identity(), func(q *page.Pen) { q.FillRect(0, 0, sheet.W, sheet.H, 0) })
		}
		out = append(out, drawnLength{upright, at, mm})
	}
	return p, out
}

// Thirty random lengths, measured on what three foreign renderers and our own
// make of the pages, are right within a tenth of a millimetre on paper.
func TestThirtyRandomLengthsMeasureWhatTheyAre(t *testing.T) {
	const dpi, tolerance = 200, 0.1
	random := rand.New(rand.NewPCG(30, 6))
	b := newBook(t)
	var pages []*page.Page
	var lengths [][]drawnLength
	for i, sheet := range []page.Sheet{page.Letter(), page.A4().Landscape(), page.A4()} {
		p, l := lengthsPage(b, sheet, i == 1, random)
		pages, lengths = append(pages, p), append(lengths, l)
	}
	file := write(t, b, pdf.Facts{})
	worst := map[string]float64{}
	for i, p := range pages {
		own, err := p.Image(dpi)
		require.NoError(t, err)
		for name, img := range map[string]image.Image{
			"poppler, PDF": rendered(t, file, i+1, dpi), "mupdf, PDF": byMupdf(t, file, i+1, dpi), "librsvg, SVG": bySVG(t, p, dpi), "own PNG": own,
		} {
			for _, l := range lengths[i] {
				got := l.measured(img, dpi)
				assert.InDelta(t, l.mm, got, tolerance, "%s, page %d", name, i+1)
				worst[name] = math.Max(worst[name], math.Abs(got-l.mm))
			}
		}
	}
	t.Logf("worst error, mm: %.3v", worst)
}
