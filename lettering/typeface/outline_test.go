package typeface_test

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/geom"
)

// TestOutlinesMeasureAsWithFontTools compares area and box of outlines, those
// of variable instances included, with what fontTools measured; the recording
// names its version. The area is exact for both: fontTools integrates the
// curves, and here Green's theorem does.
func TestOutlinesMeasureAsWithFontTools(t *testing.T) {
	data, err := os.ReadFile("testdata/outlines.tsv")
	require.NoError(t, err)
	measured := 0
	for line := range strings.Lines(string(data)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		require.Len(t, cells, 9)
		face := faceOf(t, setting{cells[0], cells[1], "und"})
		gid, err := strconv.ParseUint(cells[2], 10, 32)
		require.NoError(t, err)
		path := face.Outline(uint32(gid))
		var want [5]float64
		for i := range want {
			want[i], err = strconv.ParseFloat(cells[4+i], 64)
			require.NoError(t, err)
		}
		box := path.Bounds()
		got := [5]float64{area(path), box.Min.X, box.Min.Y, box.Max.X, box.Max.Y}
		// an area may be off by the box's edge times the tolerance of a point
		slack := [5]float64{0.02 * 2 * (box.Width() + box.Height()), 0.01, 0.01, 0.01, 0.01}
		for i := range want {
			assert.InDelta(t, want[i], got[i], slack[i], "%s %s %s, figure %d", cells[0], cells[1], cells[3], i)
		}
		assert.Equal(t, box, face.Bounds(uint32(gid)))
		measured++
	}
	assert.GreaterOrEqual(t, measured, 300)
	t.Logf("%d outlines", measured)
}

// area integrates the curves exactly, by Green's theorem: for a Bézier curve
// the integral of x dy - y dx is a polynomial of its points.
func area(p geom.Path) float64 {
	sum := 0.0
	var start, at geom.Point
	for _, s := range p {
		switch s.Op {
		case geom.Move:
			start, at = s.P[0], s.P[0]
		case geom.Line:
			sum += at.Cross(s.P[0]) / 2
			at = s.P[0]
		case geom.Quad:
			b, c := s.P[0], s.P[1]
			sum += (2*at.Cross(b) + at.Cross(c) + 2*b.Cross(c)) / 6
			at = c
		case geom.Cube:
			b, c, d := s.P[0], s.P[1], s.P[2]
			sum += (6*at.Cross(b) + 3*at.Cross(c) + at.Cross(d) + 3*b.Cross(c) + 3*b.Cross(d) + 6*c.Cross(d)) / 20
			at = d
		case geom.Close:
			sum += at.Cross(start) / 2
			at = start
		}
	}
	return sum
}

// TestEveryContourIsClosedWithoutAnEmptyEdge walks all glyphs: each contour is
// one Move, drawing, one Close, and its last straight edge has a length.
func TestEveryContourIsClosedWithoutAnEmptyEdge(t *testing.T) {
	for _, e := range fonts.Catalogue() {
		face, drawn := embedded(t, e.ID), 0
		for gid := range uint32(2000) {
			path := face.Outline(gid)
			drawn += len(path)
			if fault := faultOf(path); fault != "" {
				t.Errorf("%s glyph %d: %s", e.ID, gid, fault)
			}
		}
		require.Greater(t, drawn, 1000, e.ID)
	}
}

func faultOf(path geom.Path) string {
	open := false
	var start geom.Point
	for i, s := range path {
		switch {
		case s.Op == geom.Move && open:
			return "a contour starts inside another"
		case s.Op != geom.Move && !open:
			return "a contour starts without a move"
		case s.Op == geom.Move:
			open, start = true, s.P[0]
		case s.Op == geom.Close:
			open = false
		case s.Op == geom.Line && path[i+1].Op == geom.Close && s.P[0] == start:
			return "the closing edge is drawn twice"
		}
	}
	if open {
		return "the last contour is open"
	}
	return ""
}
