package bench_test

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/layers"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/proof/bench"
)

var artDir = flag.String("art", "", "write art of every method to this folder, to look at")

// samples are one piece of each sort, with what the label says of it.
func samples(t *testing.T) map[string]sizes.Piece {
	return map[string]sizes.Piece{
		"name":   sized(t, garment.TwoButton, "Wojciechowski", name("oswald", ring(2, white, outline.Round), ring(2, navy, outline.Round))),
		"number": sized(t, garment.TwoButton, "27", number(ring(3, white, outline.Mitre), ring(3, navy, outline.Mitre))),
		"small":  sized(t, garment.TwoButton, "1", small()),
		"front":  sized(t, garment.TwoButton, "", frontName(true)),
	}
}

// small is a number that is hardly larger than its label.
func small() order.Piece {
	p := number(ring(2, white, outline.Round))
	p.Place, p.Height = garment.FrontNumber, order.Height{Length: length.Inches(2, 1)}
	return p
}

func label(p sizes.Piece) bench.Label {
	return bench.Label{Player: "Zoë Wojciechowski", Place: string(p.Asked.Place), Size: "adult L"}
}

// made returns the art of a piece with the settings that nobody changed.
func made(t *testing.T, p sizes.Piece, method string) layers.Art {
	t.Helper()
	art, err := layers.Of(p, method, layers.Default())
	require.NoError(t, err)
	return art
}

func newBench(t *testing.T) *bench.Bench {
	t.Helper()
	b, err := bench.New()
	require.NoError(t, err)
	return b
}

func written(t *testing.T, write func(io.Writer) error) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, write(&out))
	return out.Bytes()
}

func TestArtToLookAt(t *testing.T) {
	if *artDir == "" {
		t.Skip("run with -art DIR")
	}
	b, err := bench.New()
	require.NoError(t, err)
	for what, piece := range samples(t) {
		for _, m := range order.Methods() {
			for _, knockout := range []bool{false, true} {
				s := layers.Default()
				s.Knockout = knockout
				art, err := layers.Of(piece, m.ID, s)
				require.NoError(t, err)
				o := bench.Options{Label: label(piece), Unsigned: knockout}
				base := filepath.Join(*artDir, what+"-"+strings.ReplaceAll(m.ID, " ", "-"))
				if knockout {
					base += "-unsigned"
				}
				require.NoError(t, os.WriteFile(base+".svg", written(t, func(w io.Writer) error { return b.SVG(w, art, o) }), 0o644))
				require.NoError(t, os.WriteFile(base+".pdf", written(t, func(w io.Writer) error { return b.PDF(w, art, o) }), 0o644))
				if m.ID == "cut film" {
					for i, plate := range art.Plates() {
						o.Label.Note = fmt.Sprintf("film %d of %d", i+1, len(art.Plates()))
						require.NoError(t, os.WriteFile(fmt.Sprintf("%s-%d.pdf", base, i+1), written(t, func(w io.Writer) error { return b.PDF(w, plate, o) }), 0o644))
					}
				}
				if m.ID == "direct-to-film" {
					require.NoError(t, os.WriteFile(base+".png", written(t, func(w io.Writer) error { return b.PNG(w, art, o) }), 0o644))
				}
			}
		}
	}
}
