package typeface_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"yokeline/fonts"
	"yokeline/lettering/typeface"
)

// BenchmarkShapeBesideHarfBuzz shapes one name over and over, ours in process
// and the C library's through hb-shape, whose cost per name is the difference
// of two runs, so that starting the program and opening the font drop out.
func BenchmarkShapeBesideHarfBuzz(b *testing.B) {
	const name = "FERRANDOLO"
	tool, err := exec.LookPath("hb-shape")
	if err != nil {
		b.Skip("hb-shape is not installed")
	}
	for _, id := range []string{"oswald", "anton", "graduate"} {
		b.Run(id, func(b *testing.B) {
			face, err := typeface.Embedded(id)
			require.NoError(b, err)
			shaper := face.NewShaper()
			var line typeface.Line
			for b.Loop() {
				require.NoError(b, shaper.ShapeInto(&line, name, ""))
			}
			ours := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			peer := peerNanoseconds(b, tool, id, name)
			b.ReportMetric(peer, "ns-harfbuzz-c")
			b.ReportMetric(ours/peer, "ratio")
		})
	}
}

func peerNanoseconds(b *testing.B, tool, id, name string) float64 {
	entry, ok := fonts.Lookup(id)
	require.True(b, ok)
	data, err := fonts.Read(entry.File)
	require.NoError(b, err)
	file := filepath.Join(b.TempDir(), "face.ttf")
	require.NoError(b, os.WriteFile(file, data, 0o644))
	const few, many = 1000, 201000
	spent := func(times int) time.Duration {
		start := time.Now()
		out, err := exec.Command(tool, "--shaper=ot", "--features=+kern,-liga,-clig,-dlig", "--num-iterations="+strconv.Itoa(times), file, name).CombinedOutput()
		require.NoError(b, err, string(out))
		return time.Since(start)
	}
	return float64((spent(many) - spent(few)).Nanoseconds()) / (many - few)
}
