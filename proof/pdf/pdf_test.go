package pdf_test

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/pdf"
)

// fourSheets is a book of all four sheets, each with the test drawing.
func fourSheets(t testing.TB) *page.Book {
	b := newBook(t)
	for _, s := range []page.Sheet{page.Letter().Landscape(), page.Letter(), page.A4().Landscape(), page.A4()} {
		drawing(b.Add(s, "The roster’s "+s.Name).Pen)
	}
	return b
}

func TestEveryPageHasItsExactSize(t *testing.T) {
	path := write(t, fourSheets(t), pdf.Facts{})
	info := run(t, "pdfinfo", "-l", "9", path)
	// 1 mm = 72/25.4 pt; a PDF's page size is written to 0.01 pt.
	for i, want := range []string{"792 x 612", "612 x 792", "841.89 x 595.28", "595.28 x 841.89"} {
		assert.Regexp(t, fmt.Sprintf(`Page +%d size: +%s pts`, i+1, want), info)
	}
}

func TestQPDFFindsNothingWrong(t *testing.T) {
	out := run(t, "qpdf", "--check", write(t, fourSheets(t), pdf.Facts{Title: "Proof", Language: "en"}))
	assert.Contains(t, out, "No syntax or stream encoding errors found")
	assert.NotContains(t, strings.ToLower(out), "warning")
}

func TestThePDFSaysWhatItIs(t *testing.T) {
	made := time.Date(2026, time.November, 25, 9, 30, 0, 0, time.FixedZone("", 3600))
	path := write(t, fourSheets(t), pdf.Facts{
		Title: "Alder Point Herons – ½ order Ñ", Author: "Kettle Lane Lettering", Subject: "Proof", Language: "en-GB", Made: made,
	})
	info := run(t, "pdfinfo", "-isodates", path)
	for _, want := range []string{"Title: +Alder Point Herons – ½ order Ñ", "Author: +Kettle Lane Lettering", "Subject: +Proof", "CreationDate: +2026-11-25T08:30:00", "ModDate: +2026-11-25T08:30:00"} {
		assert.Regexp(t, want, info)
	}
	plain := run(t, "qpdf", "--qdf", "--object-streams=disable", path, "-")
	assert.Contains(t, plain, "/Lang (en-GB)")
}

func TestADateIsNeverTheClocks(t *testing.T) {
	info := run(t, "pdfinfo", "-isodates", write(t, fourSheets(t), pdf.Facts{}))
	assert.Regexp(t, "CreationDate: +2000-01-01T00:00:00", info)
}

func TestTheTextIsReadBackAsItWasSet(t *testing.T) {
	b := newBook(t)
	p := b.Add(page.A4(), "Text")
	for i, text := range captions {
		for k, style := range []page.Style{parts.Sentence().Style, parts.RowName().Style, parts.PageTitle().Sized(14).Style} {
			p.Text(20, 30+float64(20*i+6*k), style, text)
		}
	}
	lines := strings.Split(strings.TrimSpace(run(t, "pdftotext", "-layout", write(t, b, pdf.Facts{}), "-")), "\n")
	var got []string
	for _, line := range lines {
		if line = strings.TrimSpace(line); line != "" {
			got = append(got, strings.Join(strings.Fields(line), " "))
		}
	}
	var want []string
	for _, text := range captions {
		plain := strings.Join(strings.Fields(text), " ")
		want = append(want, plain, plain, plain)
	}
	assert.Equal(t, want, got)
}

func TestBothFacesAreEmbeddedAndOnlyAsFarAsUsed(t *testing.T) {
	b := newBook(t)
	b.Add(page.A4(), "").Text(20, 20, parts.Sentence().Style, "NG")
	var out bytes.Buffer
	require.NoError(t, pdf.Write(&out, b, pdf.Facts{}))
	assert.Less(t, out.Len(), len(b.FontData(page.Regular))/4, "a subset")
	fonts := run(t, "pdffonts", write(t, fourSheets(t), pdf.Facts{}))
	assert.Equal(t, 2, strings.Count(fonts, "CID TrueType      Identity-H       yes"), fonts)
	assert.Equal(t, 1, strings.Count(run(t, "pdffonts", write(t, b, pdf.Facts{})), "CID TrueType"), "the other face is left out")
}

func TestTheSameBookGivesTheSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	require.NoError(t, pdf.Write(&a, fourSheets(t), pdf.Facts{Title: "Proof"}))
	require.NoError(t, pdf.Write(&b, fourSheets(t), pdf.Facts{Title: "Proof"}))
	assert.True(t, bytes.Equal(a.Bytes(), b.Bytes()))
}

func TestARepeatedDrawingIsStoredOnce(t *testing.T) {
	plain := run(t, "qpdf", "--qdf", "--object-streams=disable", write(t, fourSheets(t), pdf.Facts{}), "-")
	// One book has one art "jersey" and one "pair", whatever the page.
	assert.Equal(t, 2, strings.Count(plain, "/Subtype /Form"))
	assert.Greater(t, strings.Count(plain, " Do Q"), 4*4)
}

func TestNothingInAPDFIsTransparent(t *testing.T) {
	plain := run(t, "qpdf", "--qdf", "--object-streams=disable", write(t, fourSheets(t), pdf.Facts{}), "-")
	assert.NotContains(t, plain, "/Transparency")
	assert.NotContains(t, plain, "/ExtGState")
}

func TestAnEmptyBookIsRefused(t *testing.T) {
	assert.ErrorContains(t, pdf.Write(io.Discard, newBook(t), pdf.Facts{}), "at least one page")
}

// A bar of 100 × 5 mm is measured on a 300 dpi rendering: its darkness along a
// row and a column, summed, is its length in pixels, whole edges or not.
func TestABarOfAHundredMillimetresIsThatLong(t *testing.T) {
	for _, sheet := range []page.Sheet{{Name: "across", W: 145, H: 132}, {Name: "upright", W: 132, H: 145}} {
		b := newBook(t)
		p := b.Add(sheet, "")
		bar := b.Art("bar", func(q *page.Pen) { q.FillRect(0, 0, 100, 5, 0) })
		p.FillRect(20.3, 40.1, 100, 5, 0)
		p.Use(bar, geom.Translate(20.3, 80.1))
		p.Line(20.3, 122.6, 120.3, 122.6, 0, page.Line{Weight: 5})
		img := rendered(t, write(t, b, pdf.Facts{}), 1, 300)
		const px = 300 / 25.4
		for _, top := range []float64{40.1, 80.1, 120.1} {
			wide, high := 0.0, 0.0
			for x := range img.Bounds().Dx() {
				wide += dark(img, x, int((top+2.5)*px))
			}
			for y := int((top - 2) * px); y < int((top+7)*px); y++ {
				high += dark(img, int(math.Round(80*px)), y)
			}
			assert.InDelta(t, 100, wide/px, 0.1, sheet.Name)
			assert.InDelta(t, 5, high/px, 0.1, sheet.Name)
			t.Logf("%s: %.3f × %.3f mm", sheet.Name, wide/px, high/px)
		}
	}
}

// rosterBook stands for a proof's largest page: 15 windows of one shared
// shirt, each with a name of some 1000 points.
func rosterBook(t testing.TB, pages int) *page.Book {
	b := newBook(t)
	for n := range pages {
		p := b.Add(page.Letter().Landscape(), "The roster")
		g := parts.NewGrid(p.Sheet)
		parts.PageHead(p.Pen, g, parts.Head{TeamText: "HERONS", Page: n + 1, Pages: pages, Title: "The roster", Sentence: captions[1]})
		jersey := b.Art("jersey", func(q *page.Pen) { q.FillPath(shirt(), geom.Identity(), 0x1D3B53) })
		for i := range 15 {
			x, y := 14+51.3*float64(i%5), 43+49.2*float64(i/5)
			p.Clip(page.RectPath(x, y, 46.3, 33), geom.Identity(), func(q *page.Pen) {
				q.Use(jersey, geom.Translate(x+23, y+1))
				name := q.Outlines(x+5, y+20, parts.PageTitle().Style, "WOJCIECHOWSKA").Flatten(0.005).Path()
				q.FillPath(name, geom.Identity(), page.White)
			})
			parts.VerdictLine(p.Pen, x, y+42, parts.Eased, "1 ¾ in high")
		}
		parts.PageFoot(p.Pen, g, parts.Foot{Fingerprint: "7c41e09b52d6a38f", Note: captions[0], Scale: 1.0 / 14, Thing: "shirt"})
	}
	return b
}

func BenchmarkWrite(b *testing.B) {
	const pages = 20
	book := rosterBook(b, pages)
	for b.Loop() {
		require.NoError(b, pdf.Write(io.Discard, book, pdf.Facts{}))
	}
	b.ReportMetric(pages*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
}

func BenchmarkSVG(b *testing.B) {
	p := rosterBook(b, 1).Pages()[0]
	for b.Loop() {
		require.NoError(b, p.WriteSVG(io.Discard, page.SVGOptions{}))
	}
}

func BenchmarkPNG150(b *testing.B) {
	p := rosterBook(b, 1).Pages()[0]
	for b.Loop() {
		require.NoError(b, p.WritePNG(io.Discard, 150))
	}
}
