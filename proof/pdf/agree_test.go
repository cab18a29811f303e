package pdf_test

import (
	"bytes"
	"image"
	"image/draw"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/pdf"
)

// block is the side, in pixels, of the squares that two pictures are compared
// by: 1.3 mm at 200 dpi.
const (
	agreeDPI = 200
	block    = 10
)

// Renderers weigh the pixels of an edge differently, and some put each glyph
// on a whole pixel, but no square may be darker or lighter by more than 8 %:
// a hairline (0.13 mm) that is missing or moved changes one by 10 %. Over the
// whole page the difference stays under 0.35 %.
const (
	blockTolerance = 0.08
	meanTolerance  = 0.0035
)

// shades is how black each pixel of a picture is, 0 to 765, row by row.
type shades struct {
	image.Point
	dark []int
}

func darkness(img image.Image) shades {
	plain := image.NewRGBA(image.Rectangle{Max: img.Bounds().Size()})
	draw.Draw(plain, plain.Bounds(), img, img.Bounds().Min, draw.Src)
	out := shades{plain.Rect.Max, make([]int, len(plain.Pix)/4)}
	for i := range out.dark {
		p := plain.Pix[4*i : 4*i+3]
		out.dark[i] = 3*255 - int(p[0]) - int(p[1]) - int(p[2])
	}
	return out
}

// difference compares two pictures of the same size, but for a row or column
// by which renderers round it: the largest difference of
// the mean darkness of any square, and the mean difference of all pixels.
func difference(t testing.TB, a, b shades) (worst, mean float64) {
	t.Helper()
	require.InDelta(t, a.X, b.X, 1)
	require.InDelta(t, a.Y, b.Y, 1)
	wide, high := min(a.X, b.X), min(a.Y, b.Y)
	total, largest := 0, 0
	for top := 0; top < high; top += block {
		for left := 0; left < wide; left += block {
			sum := 0
			for y := top; y < min(top+block, high); y++ {
				for x := left; x < min(left+block, wide); x++ {
					d := a.dark[y*a.X+x] - b.dark[y*b.X+x]
					sum += d
					total += max(d, -d)
				}
			}
			largest = max(largest, sum, -sum)
		}
	}
	const white = 3 * 255
	return float64(largest) / (white * block * block), float64(total) / white / float64(wide*high)
}

// card is the test drawing at half its size, and captions at their own.
// A line under a pixel is left out: poppler draws it a pixel wide.
func card(t testing.TB) (*page.Book, *page.Page) {
	b := newBook(t)
	p := b.Add(page.Sheet{Name: "card", W: 127, H: 114.3}, "Card")
	p.Use(b.Art("all", drawing), geom.Scale(0.5, 0.5))
	p.Text(10, 104, parts.PageTitle().Style, captions[0])
	p.Text(10, 111, parts.Sentence().Style, captions[1])
	return b, p
}

func TestPDFSVGAndPNGShowTheSame(t *testing.T) {
	b, p := card(t)
	own, err := p.Image(agreeDPI)
	require.NoError(t, err)
	png, fromPDF, fromSVG := darkness(own), darkness(rendered(t, write(t, b, pdf.Facts{}), 1, agreeDPI)), darkness(renderedSVG(t, p))
	for _, c := range []struct {
		name string
		a, b shades
	}{{"png and pdf", png, fromPDF}, {"png and svg", png, fromSVG}, {"pdf and svg", fromPDF, fromSVG}} {
		worst, mean := difference(t, c.a, c.b)
		t.Logf("%s: worst square %.3f, mean %.5f", c.name, worst, mean)
		assert.Less(t, worst, blockTolerance, c.name)
		assert.Less(t, mean, meanTolerance, c.name)
	}

	p.Line(5, 5, 5, 10, ink, page.Line{Weight: parts.Hair})
	more, err := p.Image(agreeDPI)
	require.NoError(t, err)
	worst, _ := difference(t, png, darkness(more))
	assert.Greater(t, worst, blockTolerance, "one short hairline more is noticed")
}

func renderedSVG(t testing.TB, p *page.Page) image.Image {
	t.Helper()
	folder := t.TempDir()
	svg, png := filepath.Join(folder, "p.svg"), filepath.Join(folder, "p.png")
	var b bytes.Buffer
	require.NoError(t, p.WriteSVG(&b, page.SVGOptions{Paper: true}))
	require.NoError(t, os.WriteFile(svg, b.Bytes(), 0o644))
	res := strconv.Itoa(agreeDPI)
	run(t, "rsvg-convert", "-d", res, "-p", res, "-o", png, svg)
	return picture(t, png)
}
