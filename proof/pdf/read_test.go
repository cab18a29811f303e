package pdf_test

import (
	"bytes"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/pdf"
)

const ink = parts.Ink

func newBook(t testing.TB) *page.Book {
	t.Helper()
	b, err := page.NewBook()
	require.NoError(t, err)
	return b
}

// tool returns the path of an outside program. A test that needs it is skipped
// where it is missing, but fails where CI says that all tools must be there.
func tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("YOKELINE_TOOLS") == "required" {
		t.Fatalf("%s is not installed and YOKELINE_TOOLS=required", name)
	}
	t.Skipf("%s is not installed: this check reads the output back with it", name)
	return ""
}

// run runs an outside program and returns what it prints.
func run(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(tool(t, name), args...).CombinedOutput()
	require.NoError(t, err, "%s %v: %s", name, args, out)
	return string(out)
}

func write(t testing.TB, b *page.Book, facts pdf.Facts) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, pdf.Write(&out, b, facts))
	path := filepath.Join(t.TempDir(), "proof.pdf")
	require.NoError(t, os.WriteFile(path, out.Bytes(), 0o644))
	return path
}

func picture(t testing.TB, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	img, _, err := image.Decode(f)
	require.NoError(t, err)
	return img
}

// rendered returns page n of a PDF as pdftocairo (poppler) draws it.
func rendered(t testing.TB, path string, n, dpi int) image.Image {
	t.Helper()
	out := filepath.Join(t.TempDir(), "page")
	page, res := strconv.Itoa(n), strconv.Itoa(dpi)
	run(t, "pdftocairo", "-png", "-singlefile", "-r", res, "-f", page, "-l", page, path, out)
	return picture(t, out+".png")
}

// dark returns how black a pixel is, 0 to 1.
func dark(img image.Image, x, y int) float64 {
	r, g, b, _ := img.At(x, y).RGBA()
	return 1 - float64(r+g+b)/(3*0xFFFF)
}

// shirt is a closed shape with straight lines and both kinds of curve.
func shirt() geom.Path {
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	var p geom.Path
	p.MoveTo(at(-9, 0))
	p.QuadTo(at(0, 4), at(9, 0))
	p.LineTo(at(28, 12))
	p.LineTo(at(23, 22))
	p.LineTo(at(18, 18))
	p.CubeTo(at(16, 28), at(18, 38), at(19, 52))
	p.LineTo(at(-19, 52))
	p.CubeTo(at(-18, 38), at(-16, 28), at(-18, 18))
	p.LineTo(at(-23, 22))
	p.LineTo(at(-28, 12))
	p.Close()
	return p
}

// drawing is a page with every operation: fills with holes, strokes of every
// cap and join, dashes, clips in clips, shared drawings turned, scaled and
// nested, and text of every style.
func drawing(p *page.Pen) {
	jersey := p.Book().Art("jersey", func(q *page.Pen) {
		q.FillPath(shirt(), geom.Identity(), 0x1D3B53)
		q.Clip(shirt(), geom.Identity(), func(c *page.Pen) { c.FillRect(-30, 40, 60, 6, 0xE2A336) })
		q.StrokePath(shirt(), geom.Identity(), ink, page.Line{Weight: 0.35, Join: page.RoundJoin})
		q.Text(0, 30, parts.BigNumber().In(0xFBF7EC).To(page.Middle).Style, "17")
	})
	pair := p.Book().Art("pair", func(q *page.Pen) {
		q.Use(jersey, geom.Identity())
		q.Use(jersey, geom.Translate(62, 0))
	})
	p.Use(jersey, geom.Translate(45, 50))
	p.Use(jersey, geom.Rotate(0.4).Then(geom.Translate(110, 50)))
	p.Use(pair, geom.Scale(0.5, 0.5).Then(geom.Translate(150, 50)))
	p.Clip(page.CirclePath(50, 140, 22), geom.Identity(), func(q *page.Pen) {
		q.FillRect(20, 110, 60, 60, parts.Tile)
		q.Clip(page.RectPath(30, 120, 40, 30), geom.Identity(), func(r *page.Pen) { r.Use(jersey, geom.Translate(50, 110)) })
		parts.Hatch(q, page.RectPath(20, 150, 60, 20), ink, 0.3, 1.2)
	})
	ring := append(page.CirclePath(100, 140, 15), page.CirclePath(100, 140, 8).Transform(geom.Affine{A: -1, D: 1, E: 200})...)
	p.FillPath(ring, geom.Identity(), parts.Decide)
	strokes(p)
	y := 175.0
	for _, t := range []parts.Type{parts.PageTitle(), parts.RowName(), parts.Sentence(), parts.Label()} {
		p.Text(20, y, t.Style, captions[0])
		y += 7
	}
}

func strokes(p *page.Pen) {
	var zig geom.Path
	for i, x := range [...]float64{0, 8, 12, 20, 22, 30} {
		pt := geom.Point{X: x, Y: float64(i%2) * 10}
		if i == 0 {
			zig.MoveTo(pt)
		} else {
			zig.LineTo(pt)
		}
	}
	for i := range 3 {
		p.StrokePath(zig, geom.Translate(130, 100+15*float64(i)), ink, page.Line{Weight: 2, Cap: page.Cap(i), Join: page.Join(i)})
	}
	p.StrokeCircle(190, 120, 12, ink, page.Line{Weight: 0.5, Dash: []float64{3, 0.8, 0.5, 0.8}})
	p.StrokeRect(175, 140, 30, 12, parts.Decide, page.Line{Weight: 0.7})
	// Dense outlines, such as a keyline about flattened letters.
	letters := p.Outlines(180, 90, parts.PageTitle().Style, "ŁODZ gß§").Flatten(0.01).Path()
	for i, w := range [...]float64{0.3, 0.5, 1.2} {
		p.StrokePath(letters, geom.Translate(0, -10*float64(i)), ink, page.Line{Weight: w, Join: page.Join(i)})
	}
	p.StrokePath(shirt(), geom.Scale(0.4, 0.4).Then(geom.Translate(225, 110)), ink, page.Line{Weight: 1.5, Dash: []float64{2, 1.5}, Cap: page.RoundCap})
}

// captions are what the paper must not spoil.
var captions = [...]string{
	"AVATAR To WAVE 11 ¹⁵⁄₁₆ in · 2 ½ in · ⅛",
	"ÍÑIGUEZ O’ROURKE Łódź NGUYỄN Çelik Åström",
	"Sie heißt Größe – „Straße“ 6,4 cm",
}
