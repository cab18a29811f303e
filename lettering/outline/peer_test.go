package outline_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/outline"
	"yokeline/lettering/typeface"
)

const gridUnits = 8192 // in a mm, as the engine's grid

// BenchmarkLayersBesideClipper times two round outlines of a name, from ink
// that is not settled yet and with nothing kept between runs but scratch
// memory, and the same work on the same points by Clipper 6 in C++
// (libpolyclipping-dev of Debian): on the same grid and to the same tolerance.
func BenchmarkLayersBesideClipper(b *testing.B) {
	peer := buildPeer(b)
	layers := []outline.Layer{{Width: 3}, {Width: 3}}
	for _, id := range []string{"graduate", "anton", "yellowtail"} {
		b.Run(id, func(b *testing.B) {
			face, err := typeface.Embedded(id)
			require.NoError(b, err)
			ink := inkOf(b, face, "Wojtkowag", 400)
			theirs, areas := runPeer(b, peer, ink, layers)
			var e outline.Engine
			var ours []geom.Region
			for b.Loop() {
				ours, err = e.Layers(ink, layers)
				require.NoError(b, err)
			}
			for i, layer := range ours { // both did the same
				require.InEpsilon(b, areas[i], layer.Area(), 1e-3)
			}
			spent := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			b.ReportMetric(theirs, "ns-clipper-cpp")
			b.ReportMetric(spent/theirs, "ratio")
		})
	}
}

func buildPeer(b *testing.B) string {
	compiler, err := exec.LookPath("g++")
	if err != nil {
		b.Skip("no g++ to compile the C++ side with")
	}
	program := filepath.Join(b.TempDir(), "layers")
	build := exec.Command(compiler, "-O2", "-o", program, filepath.Join("testdata", "peer", "layers.cpp"), "-lpolyclipping")
	if said, err := build.CombinedOutput(); err != nil {
		if strings.Contains(string(said), "clipper.hpp") || strings.Contains(string(said), "-lpolyclipping") {
			b.Skip("libpolyclipping-dev is not installed")
		}
		b.Fatalf("cannot compile the C++ side: %v\n%s", err, said)
	}
	return program
}

// runPeer returns the time of a run in ns and the area of every layer in mm².
func runPeer(b *testing.B, program string, ink geom.Region, layers []outline.Layer) (float64, []float64) {
	file := filepath.Join(b.TempDir(), "ink.txt")
	require.NoError(b, os.WriteFile(file, gridText(ink), 0o600))
	args := []string{file, "100", fmt.Sprint(outline.Tolerance * gridUnits)}
	for i := range layers {
		args = append(args, fmt.Sprint(outline.Reach(layers[:i+1])*gridUnits))
	}
	said, err := exec.Command(program, args...).Output()
	require.NoError(b, err)
	in := strings.NewReader(string(said))
	var spent float64
	_, err = fmt.Fscan(in, &spent)
	require.NoError(b, err)
	areas := make([]float64, len(layers))
	for i := range areas {
		_, err = fmt.Fscan(in, &areas[i])
		require.NoError(b, err)
		areas[i] /= gridUnits * gridUnits
	}
	return spent, areas
}

func gridText(ink geom.Region) []byte {
	var out []byte
	for _, ring := range ink {
		out = fmt.Appendf(out, "%d\n", len(ring))
		for _, p := range ring {
			out = fmt.Appendf(out, "%d %d\n", int64(math.Round(p.X*gridUnits)), int64(math.Round(p.Y*gridUnits)))
		}
	}
	return out
}
