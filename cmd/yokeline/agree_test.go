package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/draw"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/proof/page"
	"yokeline/proof/sheets"
)

// The pages of a proof agree as PDF (drawn by mupdf and by poppler), as SVG
// (drawn by librsvg) and as our own PNG: no square of agreeBlock pixels (1.3 mm)
// is darker or lighter by more than 3 % (SVG) or 8 % (PDF) of black: a hairline
// (0.13 mm) that is missing or moved changes one by 10 %. The mean difference of
// all pixels stays under 0.15 % and 0.5 %: renderers weigh the pixels of an edge
// differently.
const (
	agreeDPI   = 200
	agreeBlock = 10
)

type agreement struct{ square, mean float64 }

// pixels is a picture in the one form that is quick to read.
func pixels(img image.Image) *image.RGBA {
	out := image.NewRGBA(image.Rectangle{Max: img.Bounds().Size()})
	draw.Draw(out, out.Bounds(), img, img.Bounds().Min, draw.Src)
	return out
}

// differ compares two pictures, which may differ by a row or column.
func differ(t *testing.T, a, b *image.RGBA) agreement {
	t.Helper()
	const black = 3 * 255
	require.InDelta(t, a.Rect.Dx(), b.Rect.Dx(), 1)
	require.InDelta(t, a.Rect.Dy(), b.Rect.Dy(), 1)
	wide, high := min(a.Rect.Dx(), b.Rect.Dx()), min(a.Rect.Dy(), b.Rect.Dy())
	columns := wide/agreeBlock + 1
	sums, total := make([]int, columns*(high/agreeBlock+1)), 0
	for y := range high {
		for x := range wide {
			p, q := a.Pix[y*a.Stride+4*x:], b.Pix[y*b.Stride+4*x:]
			d := int(p[0]) + int(p[1]) + int(p[2]) - int(q[0]) - int(q[1]) - int(q[2])
			sums[y/agreeBlock*columns+x/agreeBlock] += d
			total += max(d, -d)
		}
	}
	out := agreement{mean: float64(total) / black / float64(wide*high)}
	for _, s := range sums {
		out.square = max(out.square, float64(max(s, -s))/(black*agreeBlock*agreeBlock))
	}
	return out
}

func TestPDFSVGAndPNGOfAProofAgree(t *testing.T) {
	silent := streams{out: io.Discard, err: io.Discard, env: func(string) string { return "" }}
	i, err := prepare(context.Background(), silent, jobChoice{demo: true})
	require.NoError(t, err)
	d, err := i.draw(silent, sheets.Letter, time.Time{})
	require.NoError(t, err)
	folder, res := t.TempDir(), strconv.Itoa(agreeDPI)
	file := filepath.Join(folder, "proof.pdf")
	put := func(path string, write func(io.Writer) error) {
		var b bytes.Buffer
		require.NoError(t, write(&b))
		require.NoError(t, os.WriteFile(path, b.Bytes(), 0o644))
	}
	put(file, d.writePDF)
	pages := []int{1, 2}
	if testing.Short() {
		pages = pages[:1]
	}
	for _, n := range pages {
		name, sheet := filepath.Join(folder, fmt.Sprintf("page-%02d", n)), d.book.Pages()[n-1]
		img, err := sheet.Image(agreeDPI)
		require.NoError(t, err)
		own := pixels(img)
		put(name+".svg", func(w io.Writer) error { return sheet.WriteSVG(w, page.SVGOptions{Paper: true}) })
		foreign(t, "rsvg-convert", "-d", res, "-p", res, "-o", name+"-svg.png", name+".svg")
		foreign(t, "mutool", "draw", "-q", "-r", res, "-o", name+"-mupdf.png", file, strconv.Itoa(n))
		foreign(t, "pdftocairo", "-png", "-singlefile", "-r", res, "-f", strconv.Itoa(n), "-l", strconv.Itoa(n), file, name+"-poppler")
		for _, other := range []struct {
			name string
			most agreement
		}{{"svg", agreement{0.03, 0.0015}}, {"mupdf", agreement{0.08, 0.005}}, {"poppler", agreement{0.08, 0.005}}} {
			got := differ(t, own, pixels(readPNG(t, name+"-"+other.name+".png")))
			t.Logf("page %d, own PNG and %s: worst square %.3f, mean %.5f", n, other.name, got.square, got.mean)
			assert.Less(t, got.square, other.most.square, "page %d, %s", n, other.name)
			assert.Less(t, got.mean, other.most.mean, "page %d, %s", n, other.name)
		}
	}
}

// bigTeam is a job of sixty players in a folder.
func bigTeam(t *testing.T) string {
	t.Helper()
	d := newDesk(t)
	names := []string{"Ng", "Abara", "Íñiguez", "O’Rourke", "Łuczakowa", "De la Cruz", "Ünsal", "Quill"}
	var rows strings.Builder
	for i := range 57 {
		name := names[i%len(names)] + []string{"", "son", "by", "ton", "lund", "ard", "wood", "ine"}[i/len(names)]
		fmt.Fprintf(&rows, "%s,%s %d,%d,%s\n", name, name, i, 30+i, []string{"S", "M", "L", "XL"}[i%4])
	}
	d.add(rows.String())
	return d.dir
}

// quiet are what a program says of itself on any file.
func quiet(line string) bool { return strings.Contains(line, "ICC support is not available") }

// Programs that read PDF say nothing against the demo, a team of sixty and a
// comparison: no warning, no repair.
func TestForeignProgramsReadTheProofsWithoutComplaint(t *testing.T) {
	files := map[string]string{"demo": proofOf(t, "--demo"), "comparison": comparisonOf(t)}
	if os.Getenv("YOKELINE_TOOLS") == "required" { // slow
		files["sixty"] = proofOf(t, bigTeam(t), "--draft")
	}
	for name, file := range files {
		out := t.TempDir()
		check := foreign(t, "qpdf", "--check", file)
		assert.Contains(t, check, "No syntax or stream encoding errors", name)
		assert.NotContains(t, strings.ToLower(check), "warning", name)
		for _, args := range [][]string{
			{"pdfinfo", file}, {"pdffonts", file}, {"pdftotext", file, filepath.Join(out, "text")},
			{"pdftocairo", "-png", "-r", "36", file, filepath.Join(out, "poppler")},
			{"mutool", "draw", "-q", "-r", "36", "-o", filepath.Join(out, "mupdf%d.png"), file},
			{"mutool", "clean", "-gggg", file, filepath.Join(out, "clean.pdf")},
		} {
			assert.Empty(t, complaints(t, args...), "%s: %s", name, args[0])
		}
		if _, err := exec.LookPath("pdfcpu"); err == nil { // a strict validator, where somebody has it
			assert.Contains(t, foreign(t, "pdfcpu", "validate", "-conf", "disable", "-m", "strict", file), "validation ok", name)
		}
		info := foreign(t, "pdfinfo", file)
		assert.Regexp(t, `(?m)^Title: +(Proof|What changed) for \S`, info, name)
		assert.Regexp(t, `(?m)^Author: +\S`, info, name)
		assert.Regexp(t, regexp.QuoteMeta("/Lang (en)"), foreign(t, "qpdf", "--qdf", "--object-streams=disable", file, "-"), name)
	}
}

// complaints runs a program and returns what it says on standard error.
func complaints(t *testing.T, args ...string) string {
	t.Helper()
	foreign(t, args[0], "-v") // skips where it is missing
	c := exec.Command(args[0], args[1:]...)
	var errs bytes.Buffer
	c.Stderr = &errs
	require.NoError(t, c.Run(), args)
	var out []string
	for _, line := range strings.Split(strings.TrimSpace(errs.String()), "\n") {
		if line != "" && !quiet(line) {
			out = append(out, line)
		}
	}
	return strings.Join(out, "\n")
}

// comparisonOf draws what changed between two orders.
func comparisonOf(t *testing.T) string {
	t.Helper()
	was, is, out := printDesk(t), printDesk(t, "Vo,Linh Vo,0,M", "Vu,Linh Vu,00,L", "#d9c38a", "#c8102e"), t.TempDir()
	var said, messages bytes.Buffer
	s := streams{out: &said, err: &messages, env: func(string) string { return "" }}
	require.Equal(t, exitDone, run(context.Background(), []string{"compare", was, is, "-o", out}, s), messages.String())
	return filepath.Join(out, "compare.pdf")
}

// compare says what changed in a coach's words, and lists every fact on request.
func TestCompareSpeaksPlainlyUnlessAllIsAsked(t *testing.T) {
	was, is := printDesk(t), printDesk(t, "Vo,Linh Vo,0,M", "Vu,Linh Vo,00,L")
	d := desk{t: t}
	out, _ := d.run(exitDone, "compare", was, is)
	_, lines, _ := strings.Cut(out, "\n")
	assert.Equal(t, "Linh Vo: spelling: Vo, now Vu\nLinh Vo: number: 0, now 00\nLinh Vo: size: adult M, now adult L\nLinh Vo: front name, fit: eased, now full\n", lines)
	all, _ := d.run(exitDone, "compare", was, is, "--all")
	assert.Contains(t, all, `Linh Vo: back name, letters was "VO" and is "VU"`)
	assert.Greater(t, strings.Count(all, "\n"), 20)
	_, errs := d.run(exitUsage, "compare", was, is, "--png")
	assert.Contains(t, errs, "-o DIR")
	dir := t.TempDir()
	d.run(exitDone, "compare", was, is, "-o", dir, "--svg", "--png", "--dpi", "40")
	for _, name := range []string{"compare.pdf", "compare-01.svg", "compare-01.png"} {
		first, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		d.run(exitDone, "compare", was, is, "-o", dir, "--svg", "--png", "--dpi", "40")
		again, err := os.ReadFile(filepath.Join(dir, name))
		require.NoError(t, err)
		assert.True(t, bytes.Equal(first, again), "%s: same orders, same bytes", name)
	}
}
