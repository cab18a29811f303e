package nest_test

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/nest"
)

// python returns an interpreter that has Shapely, the Python door to GEOS
// (Debian package python3-shapely). A test that needs it is skipped where there is
// none, but fails where CI says that all tools must be there.
func python(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import shapely.geometry").Run() == nil {
			return name
		}
	}
	if os.Getenv("YOKELINE_TOOLS") == "required" {
		t.Fatal("python3-shapely is not installed and YOKELINE_TOOLS=required")
	}
	t.Skip("python3-shapely is not installed: it measures the layouts a second time")
	return ""
}

type paper struct {
	Width  float64          `json:"width"`
	Height float64          `json:"height"`
	Pieces [][][][2]float64 `json:"pieces"`
}

type measured struct {
	Distance, Margin, Ink float64
	Nested                int
}

func papers(items []nest.Item, out nest.Layout) []paper {
	sheets := make([]paper, len(out.Sheets))
	for i, s := range out.Sheets {
		sheets[i] = paper{Width: s.Width, Height: s.Height}
		for _, p := range s.Placed {
			var rings [][][2]float64
			for _, ring := range items[p.ID].Shape.Transform(p.Move) {
				var points [][2]float64
				for _, q := range ring {
					points = append(points, [2]float64{q.X, q.Y})
				}
				rings = append(rings, points)
			}
			sheets[i].Pieces = append(sheets[i].Pieces, rings)
		}
	}
	return sheets
}

func TestDistancesMarginsAndAreasAgreeWithGEOS(t *testing.T) {
	interpreter := python(t)
	r := rand.New(rand.NewPCG(8, 8))
	var sheets []paper
	var want []nest.Sheet
	var stocks []nest.Stock
	byOutline := []bool{}
	for k, turns := range []nest.Turns{nest.Upright, nest.HalfTurns, nest.QuarterTurns} {
		items := team(r, 6, 2, turns)
		for range 4 {
			items = append(items, nest.Item{ID: len(items), Shape: star(r, 20+50*r.Float64()), Turns: turns})
		}
		stock := []nest.Stock{roll, sheets700, cuts}[k]
		for _, o := range everyOption {
			o.Effort = 1
			out := arrange(t, items, stock, o)
			sheets, want = append(sheets, papers(items, out)...), append(want, out.Sheets...)
			for range out.Sheets {
				stocks, byOutline = append(stocks, stock), append(byOutline, o.By == nest.Outlines)
			}
		}
	}
	in, err := json.Marshal(sheets)
	require.NoError(t, err)
	cmd := exec.Command(interpreter, "testdata/geos.py")
	cmd.Stdin = bytes.NewReader(in)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	told, err := cmd.Output()
	require.NoError(t, err, errs.String())
	var got []measured
	require.NoError(t, json.Unmarshal(told, &got))
	require.Len(t, got, len(want))
	nested, boxed := 0, 0
	for i, m := range got {
		assert.GreaterOrEqual(t, m.Distance, stocks[i].Gap-1e-6, "sheet %d", i)
		assert.GreaterOrEqual(t, m.Margin, stocks[i].Margin-1e-6, "sheet %d", i)
		assert.InEpsilon(t, want[i].Ink, m.Ink, 1e-6, "sheet %d", i)
		if byOutline[i] {
			nested += m.Nested
		} else {
			boxed += m.Nested
		}
	}
	t.Logf("%d sheets; %d pairs of pieces lie in each other's hull by outlines, %d by boxes", len(got), nested, boxed)
	assert.Greater(t, nested, 8)
	assert.Zero(t, boxed)
}
