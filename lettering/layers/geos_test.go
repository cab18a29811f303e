package layers_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/layers"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
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
	t.Skip("python3-shapely is not installed: it holds the layers a second time")
	return ""
}

type (
	pair struct {
		Inner [][][2]float64 `json:"inner"`
		Outer [][][2]float64 `json:"outer"`
		Step  float64        `json:"step"`
		what  string
		areas [2]float64
	}
	held struct {
		Inside       bool
		Apart, Stray float64
		Inner, Outer float64
	}
)

func rings(r geom.Region) [][][2]float64 {
	var out [][][2]float64
	for _, ring := range r {
		var points [][2]float64
		for _, p := range ring {
			points = append(points, [2]float64{p.X, p.Y})
		}
		out = append(out, points)
	}
	return out
}

func paired(what string, inner, outer geom.Region, step float64) pair {
	return pair{rings(inner), rings(outer), step, what, [2]float64{inner.Area(), outer.Area()}}
}

// randomPiece is a number or an arched name with one or two outlines.
func randomPiece(t *testing.T, r *rand.Rand) sizes.Piece {
	var text string
	asked := number(ring(int64(2+r.IntN(4)), white, outline.Join(max(0, r.IntN(6)-3))), ring(int64(2+r.IntN(4)), navy, outline.Join(max(0, r.IntN(6)-3))))
	asked.Outlines = asked.Outlines[:1+r.IntN(2)]
	if r.IntN(2) == 0 {
		asked.Face = []string{"graduate", "quantico", "oswald"}[r.IntN(3)]
		text = strconv.Itoa(r.IntN(100))
	} else {
		face := []string{"oswald", "saira", "alfa-slab-one", "oleo-script", "league-gothic"}[r.IntN(5)]
		asked = name(face, asked.Outlines...)
		for range 2 + r.IntN(6) {
			text += string(rune('A' + r.IntN(26)))
		}
	}
	return sized(t, garment.TwoButton, text, asked)
}

// nested lists the pairs of a piece's layers that must lie inside each other.
func nested(t *testing.T, piece sizes.Piece, what string) []pair {
	var out []pair
	s := layers.Default()
	stack := func(method string) {
		art := of(t, piece, method, s)
		if art.Mirrored {
			art = art.Mirror()
		}
		var shapes []layers.Layer
		for _, l := range art.Layers {
			if l.Kind == layers.CutContour || l.Kind == layers.Print {
				shapes = append(shapes, l)
			}
		}
		for i := len(piece.Asked.Outlines) - 1; i >= 0; i-- { // the undermost first
			step := piece.Asked.Outlines[i].Width.MM()
			if piece.Asked.Outlines[i].Join != outline.Round || piece.Asked.Outlines[0].Join != outline.Round {
				step = 0 // other corners are nearer, or further
			}
			k := len(piece.Asked.Outlines) - 1 - i
			out = append(out, paired(what+" "+method+" "+shapes[k].Name, shapes[k+1].Region, shapes[k].Region, step))
		}
		if method == "direct-to-film" {
			out = append(out, paired(what+" white", layer(t, art, "white").Region, shapes[0].Region, s.Choke))
		}
		if method == "printed film" {
			out = append(out, paired(what+" contour", shapes[0].Region, layer(t, art, "cut contour").Region, s.Contour))
		}
	}
	for _, method := range []string{"cut film", "printed film", "direct-to-film", "sewn twill"} {
		stack(method)
	}
	return out
}

// Every layer lies inside the next, held by GEOS, and by its step where the joins
// are round: nothing of it comes nearer to the next one's edge.
func TestLayersNestByTheirStepsAgreesWithGEOS(t *testing.T) {
	interpreter := python(t)
	r := rand.New(rand.NewPCG(7, 1))
	n := 5
	if testing.Short() {
		n = 3
	}
	var pairs []pair
	for range n {
		piece := randomPiece(t, r)
		pairs = append(pairs, nested(t, piece, string(piece.Asked.Place)+" "+piece.Text()+" "+piece.Asked.Face)...)
	}
	in, err := json.Marshal(pairs)
	require.NoError(t, err)
	cmd := exec.Command(interpreter, "testdata/nest.py")
	cmd.Stdin = bytes.NewReader(in)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	told, err := cmd.Output()
	require.NoError(t, err, errs.String())
	var got []held
	require.NoError(t, json.Unmarshal(told, &got))
	require.Len(t, got, len(pairs))
	worst := 0.0
	for i, want := range got {
		p := pairs[i]
		assert.Less(t, want.Stray, 0.01, "%s: mm² nearer than the step", p.what)
		if p.Step > 0 {
			assert.True(t, want.Inside, p.what)
			assert.InDelta(t, p.Step, want.Apart, 0.01, p.what)
			worst = math.Max(worst, math.Abs(want.Apart-p.Step))
		}
		assert.InDelta(t, want.Inner, p.areas[0], 1e-6*want.Inner, p.what)
		assert.InDelta(t, want.Outer, p.areas[1], 1e-6*want.Outer, p.what)
	}
	t.Logf("%d pairs of layers of %d pieces: steps off by %.4f mm at most", len(pairs), n, worst)
}
