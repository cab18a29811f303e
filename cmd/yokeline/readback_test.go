package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Foreign programs read the proof back: poppler (pdfinfo, pdftotext,
// pdftocairo) and qpdf.

// foreign runs a foreign tool and returns what it prints. Without the tool the
// test is skipped, or fails where YOKELINE_TOOLS says that tools are required.
func foreign(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		if os.Getenv("YOKELINE_TOOLS") == "required" {
			t.Fatalf("%s is needed: %v", name, err)
		}
		t.Skipf("%s is not installed", name)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	require.NoError(t, err, "%s %v: %s", name, args, out)
	return string(out)
}

// proofOf draws a proof in process and returns the path of the PDF.
func proofOf(t *testing.T, args ...string) string {
	t.Helper()
	folder := t.TempDir()
	var out, messages bytes.Buffer
	s := streams{out: &out, err: &messages, env: func(string) string { return "" }}
	require.Equal(t, exitDone, run(context.Background(), append([]string{"proof", "-o", folder}, args...), s), messages.String())
	return filepath.Join(folder, "proof.pdf")
}

// orders are copies: what is issued is kept beside a job.
func orders(t *testing.T) map[string][]string {
	t.Helper()
	orders := t.TempDir()
	require.NoError(t, os.CopyFS(orders, os.DirFS(filepath.Join(root, "testdata", "orders"))))
	return map[string][]string{
		"demo": {"--demo"}, "basketball": {filepath.Join(orders, "basketball")}, "soccer": {filepath.Join(orders, "soccer")},
	}
}

func TestTheProofIsAValidPDFOfExactPages(t *testing.T) {
	sheets := map[string][2]float64{"demo": {612, 792}, "basketball": {612, 792}, "soccer": {595.276, 841.89}}
	for name, args := range orders(t) {
		file := proofOf(t, args...)
		assert.Contains(t, foreign(t, "qpdf", "--check", file), "No syntax or stream encoding errors", name)
		info := foreign(t, "pdfinfo", "-l", "99", file)
		pages := regexp.MustCompile(`Page +\d+ size: +([0-9.]+) x ([0-9.]+) pts`).FindAllStringSubmatch(info, -1)
		require.NotEmpty(t, pages, name)
		for _, p := range pages {
			w, _ := strconv.ParseFloat(p[1], 64)
			h, _ := strconv.ParseFloat(p[2], 64)
			assert.InDelta(t, sheets[name][0], math.Min(w, h), 0.01, name)
			assert.InDelta(t, sheets[name][1], math.Max(w, h), 0.01, name)
		}
		assert.Contains(t, info, "Title:           Proof for", name)
	}
}

func TestTheTextOfTheProofIsTheRoster(t *testing.T) {
	j, err := readJob(jobChoice{demo: true})
	require.NoError(t, err)
	text := curly(foreign(t, "pdftotext", "-layout", proofOf(t, "--demo"), "-"))
	for _, p := range j.order.Players {
		if p.Name == "" {
			continue
		}
		cut := curly(strings.ToUpper(p.Name))
		assert.GreaterOrEqual(t, strings.Count(text, cut), 2, "%q is on the roster page and on the sign-off", cut)
		assert.Regexp(t, `(?m)^.*\b`+regexp.QuoteMeta(p.Number)+`\b.*`, text)
	}
	assert.NotContains(t, text, "\ufffd")
}

// curly gives every apostrophe one form.
func curly(s string) string { return strings.ReplaceAll(s, "'", "’") }

// TestTheScaleBarMeasuresWhatItSays finds the bar's blocks on the page as
// poppler draws it at 300 dpi and measures them against the scale that the
// page states in words.
func TestTheScaleBarMeasuresWhatItSays(t *testing.T) {
	const dpi = 300
	for name, args := range orders(t) {
		file := proofOf(t, args...)
		stated := regexp.MustCompile(`Drawn 1 : ([0-9.]+)`).FindStringSubmatch(foreign(t, "pdftotext", "-f", "1", "-l", "1", file, "-"))
		require.Len(t, stated, 2, name)
		ratio, err := strconv.ParseFloat(stated[1], 64)
		require.NoError(t, err)
		prefix := filepath.Join(t.TempDir(), "page")
		foreign(t, "pdftocairo", "-png", "-gray", "-singlefile", "-f", "1", "-l", "1", "-r", strconv.Itoa(dpi), file, prefix)
		img := readPNG(t, prefix+".png")

		unit := 25.4
		if name == "soccer" {
			unit = 10
		}
		block := blockOf(unit, ratio)
		row := img.Bounds().Dy() - at(15.9-0.75, dpi)
		edges := transitions(img, row, at(10, dpi), at(14+70, dpi))
		require.GreaterOrEqual(t, len(edges), 3, name)
		for i, x := range edges {
			want := 14 + float64(i)*block
			if i > 0 && i == len(edges)-1 && math.Abs(x*25.4/dpi-want) > block/4 {
				break // the closing frame of a white block
			}
			assert.InDelta(t, want, x*25.4/dpi, 0.1, "%s: edge %d of blocks of %.3f mm at 1 : %g", name, i, block, ratio)
		}
	}
}

// blockOf is the length on paper of a block of the bar: the first of 1, 2, 5,
// 10, 20 or 50 units that is at least 9 mm long.
func blockOf(unit, ratio float64) float64 {
	for _, n := range []float64{1, 2, 5, 10, 20, 50} {
		if n*unit/ratio >= 9 {
			return n * unit / ratio
		}
	}
	return math.NaN()
}

func readPNG(t *testing.T, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	img, err := png.Decode(f)
	require.NoError(t, err)
	return img
}

// transitions returns where a row of pixels turns from light to dark or back,
// to a fraction of a pixel.
func transitions(img image.Image, y, x0, x1 int) (out []float64) {
	light := func(x int) float64 {
		r, g, b, _ := img.At(x, y).RGBA()
		return float64(r+g+b) / (3 * 0xffff)
	}
	for x := x0; x < x1; x++ {
		a, b := light(x), light(x+1)
		if (a > 0.5) != (b > 0.5) {
			out = append(out, float64(x)+0.5+(0.5-a)/(b-a))
		}
	}
	return out
}

func TestTheSameOrderGivesTheSameBytes(t *testing.T) {
	first, err := os.ReadFile(proofOf(t, "--demo"))
	require.NoError(t, err)
	for i := range 3 {
		t.Setenv("TZ", []string{"UTC", "Asia/Tokyo", "America/St_Johns"}[i])
		again, err := os.ReadFile(proofOf(t, "--demo"))
		require.NoError(t, err)
		require.True(t, bytes.Equal(first, again), fmt.Sprint("run ", i))
	}
	assert.NotContains(t, string(first), os.TempDir())
}

// at returns the pixel at a distance in mm.
func at(mm, dpi float64) int { return int(math.Round(mm * dpi / 25.4)) }
