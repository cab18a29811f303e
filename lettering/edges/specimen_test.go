package edges_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
)

var update = flag.Bool("update", false, "write the specimen anew")

// TestSpecimen draws every form, each with its edges as thin lines, and holds
// the picture against the one that was looked at.
func TestSpecimen(t *testing.T) {
	const wide, tall, columns = 330.0, 150.0, 3
	samples := specimens(t)
	rows := (len(samples) + columns - 1) / columns
	var out bytes.Buffer
	fmt.Fprintf(&out, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%gmm\" height=\"%gmm\" viewBox=\"0 0 %[1]g %[2]g\">\n<rect width=\"100%%\" height=\"100%%\" fill=\"#fff\"/>\n",
		wide*columns, tall*float64(rows))
	for i, s := range samples {
		x, y := wide*(float64(i%columns)+0.5), tall*float64(i/columns)+92
		fmt.Fprintf(&out, "<g transform=\"translate(%g %g)\">\n", x, y)
		fmt.Fprintf(&out, "<path d=\"%s\" fill=\"none\" stroke=\"#c33\" stroke-width=\"0.5\"/>\n", s.guides)
		fmt.Fprintf(&out, "<path d=\"%s\" fill=\"#14284b\"/>\n", data(s.ink, s.shift))
		fmt.Fprintf(&out, "<text y=\"53\" font-size=\"9\" text-anchor=\"middle\" font-family=\"sans-serif\" fill=\"#555\">%s</text>\n</g>\n", s.label)
	}
	out.WriteString("</svg>\n")
	file := filepath.Join("testdata", "specimen.svg")
	if *update {
		require.NoError(t, os.WriteFile(file, out.Bytes(), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "run with -update")
	assert.Equal(t, string(want), out.String(), "look at the new picture, then run with -update")
}

type sample struct {
	label, guides string
	ink           geom.Path
	shift         float64
}

func specimens(t *testing.T) []sample {
	names := []setting{{"alfa-slab-one", "HERONS"}, {"graduate", "LAKEWOOD"}, {"anton", "QUIJANO-ÁVILA"}}
	var out []sample
	for i, form := range edges.Forms() {
		name := names[i%len(names)]
		out = append(out, specimen(t, shapeFor(t, form, name.height(t), chord), form.String(), name))
	}
	const lean = 12 * math.Pi / 180
	for _, form := range []edges.Form{edges.Flat, edges.Bulge, edges.VerticalArch, edges.Slanted} {
		s := shapeFor(t, form, names[1].height(t), chord)
		s.Shear = lean
		out = append(out, specimen(t, s, form.String()+", oblique by 12 degrees", names[1]))
	}
	tower := edges.Shape{Top: edges.Edge{Kind: edges.Arch, Rise: 20}, Bottom: edges.Edge{Kind: edges.Slant, Rise: 15}}
	return append(out, specimen(t, tower, tower.String(), names[0]))
}

// chord is the width of the names in the specimen, mm.
const chord = 270.0

// setting is a name with its face.
type setting struct{ face, text string }

// height returns the letter height at which the name fills the chord.
func (n setting) height(t *testing.T) float64 {
	return 60 * chord / inkOf(t, n.face, n.text).Bounds().Width()
}

func specimen(t *testing.T, s edges.Shape, label string, name setting) sample {
	height := name.height(t)
	flat := inkOf(t, name.face, name.text).Transform(geom.Scale(height/60, height/60))
	b, err := s.Band(height, chord)
	require.NoError(t, err, label)
	ink, err := b.Bend(flat, 0.02)
	require.NoError(t, err, label)
	box := ink.Bounds()
	shift := -box.Center().X
	var guides bytes.Buffer
	for _, edge := range []func(float64) float64{b.Top, b.Bottom} {
		for i := range 61 {
			x := box.Min.X + box.Width()*float64(i)/60
			fmt.Fprintf(&guides, "%c%.2f %.2f", "ML"[min(i, 1)], x+shift, -edge(x))
		}
	}
	return sample{label, guides.String(), ink, shift}
}

// data writes the path with y down.
func data(p geom.Path, shift float64) string {
	var out bytes.Buffer
	for _, s := range p {
		out.WriteByte("MLQCZ"[s.Op])
		for k := range [...]int{1, 1, 2, 3, 0}[s.Op] {
			fmt.Fprintf(&out, " %.2f %.2f", s.P[k].X+shift, -s.P[k].Y)
		}
	}
	return out.String()
}
