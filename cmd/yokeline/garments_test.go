package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// garmentSheets draws in process and returns the path of the PDF.
func garmentSheets(t *testing.T, name string, args ...string) string {
	t.Helper()
	folder := t.TempDir()
	var out, messages bytes.Buffer
	s := streams{out: &out, err: &messages, env: func(string) string { return "" }}
	require.Equal(t, exitDone, run(context.Background(), append([]string{"garments", "-o", folder}, args...), s), messages.String())
	path := filepath.Join(folder, name)
	require.Equal(t, path+"\n", out.String())
	return path
}

// TestGarmentSheetsAreDrawnAtTheScaleTheyState measures, in the page as poppler
// draws it, the blocks of the scale bar against the scale in words.
func TestGarmentSheetsAreDrawnAtTheScaleTheyState(t *testing.T) {
	const dpi = 300
	for _, c := range []struct {
		name, args string
		unit       float64
		pages      int
	}{
		{"garments.pdf", "", 25.4, 3}, {"hockey-3XL.pdf", "hockey", 10, 2},
	} {
		var args []string
		if c.args != "" {
			args = []string{c.args, "--size", "3XL", "--units", "cm"}
		}
		file := garmentSheets(t, c.name, args...)
		assert.Contains(t, foreign(t, "qpdf", "--check", file), "No syntax or stream encoding errors")
		assert.Regexp(t, `Pages: +`+strconv.Itoa(c.pages), foreign(t, "pdfinfo", file))
		stated := regexp.MustCompile(`Drawn 1 : ([0-9.]+)`).FindStringSubmatch(foreign(t, "pdftotext", "-f", "1", "-l", "1", file, "-"))
		require.Len(t, stated, 2, c.name)
		ratio, err := strconv.ParseFloat(stated[1], 64)
		require.NoError(t, err)
		prefix := filepath.Join(t.TempDir(), "page")
		foreign(t, "pdftocairo", "-png", "-gray", "-singlefile", "-f", "1", "-l", "1", "-r", strconv.Itoa(dpi), file, prefix)
		img := readPNG(t, prefix+".png")
		block := blockOf(c.unit, ratio)
		found := transitions(img, img.Bounds().Dy()-at(15.9-0.75, dpi), at(10, dpi), at(14+2.5*block, dpi))
		require.GreaterOrEqual(t, len(found), 3, c.name)
		for i, x := range found[:3] {
			assert.InDelta(t, 14+float64(i)*block, x*25.4/dpi, 0.1, "%s: edge %d of blocks of %.3f mm at 1 : %g", c.name, i, block, ratio)
		}
	}
}

func TestGarmentSheetsAreTheSameBytesEveryTime(t *testing.T) {
	draw := func() []byte {
		data, err := os.ReadFile(garmentSheets(t, "raglan-YM.pdf", "raglan", "--size", "YM"))
		require.NoError(t, err)
		return data
	}
	assert.True(t, bytes.Equal(draw(), draw()))
}
