package tail_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/lettering/tail"
)

var update = flag.Bool("update", false, "write the specimen anew")

// lettersIn sets small capitals for the text in a tail.
func lettersIn(t testing.TB, text string, height float64) geom.Region {
	t.Helper()
	return script(t, "oswald", text, height)
}

// variant is a row of the specimen.
type variant struct {
	what  string
	text  string // in the tail
	cut   bool
	apply func(*tail.Params)
}

func variants() []variant {
	return []variant{
		{what: "as it comes", apply: func(*tail.Params) {}},
		{what: "long, with a full curl", apply: func(p *tail.Params) { p.Curl, p.Length = 0.85, tail.Share(1.05) }},
		{what: "curled up past the first letter", apply: func(p *tail.Params) {
			p.Curl, p.Length, p.Taper, p.Bow = -0.35, tail.Share(1.1), 0.95, 18
		}},
		{what: "thick, text cut out", text: "ALDER POINT", cut: true, apply: func(p *tail.Params) { p.Thickness, p.Bow = tail.Share(0.34), 10 }},
		{what: "thick and blunt, text laid on", text: "SOFTBALL", apply: func(p *tail.Params) {
			p.Thickness, p.Curl, p.Taper, p.Bow = tail.Share(0.34), 0, 0.6, 12
		}},
		{what: "thin and sloping, to a point", apply: func(p *tail.Params) {
			p.Thickness, p.Slope, p.Curl, p.Taper = tail.Share(0.16), 5, 0.15, 1
		}},
	}
}

// specimen draws every variant on the three scripts, letters 40 mm high.
func specimen(t *testing.T) string {
	const height, across, down = 40.0, 225.0, 100.0
	names := []string{"Herons", "Otters", "Larks"}
	var out strings.Builder
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %[1]g %[2]g">`+"\n", 3*across, 6*down)
	for i, v := range variants() {
		for j, face := range scripts {
			ink := script(t, face, names[(i+j)%len(names)], height)
			p := tail.Default()
			v.apply(&p)
			drawn, err := tail.Draw(ink, height, p)
			require.NoError(t, err, "%s, %s", v.what, face)
			place := geom.Scale(1, -1).Then(geom.Translate((float64(j)+0.5)*across-8, float64(i)*down+50))
			whole, over := drawn.Joined, geom.Region(nil)
			if v.text != "" {
				whole, over = lettered(t, drawn, v)
			}
			fmt.Fprintf(&out, "<path fill=\"#14284b\" d=\"%s\"/>\n", outlines(whole.Transform(place)))
			if len(over) > 0 {
				fmt.Fprintf(&out, "<path fill=\"#e8b33a\" d=\"%s\"/>\n", outlines(over.Transform(place)))
			}
		}
	}
	return out.String() + "</svg>\n"
}

func lettered(t *testing.T, drawn tail.Tail, v variant) (whole, over geom.Region) {
	text, _, err := drawn.Spot.Set(lettersIn(t, v.text, 10))
	require.NoError(t, err)
	if v.cut {
		whole, err = tail.Cut(drawn.Joined, text)
		require.NoError(t, err)
		return whole, nil
	}
	over, err = tail.Lay(drawn.Joined, text)
	require.NoError(t, err)
	return drawn.Joined, over
}

// outlines writes rings as SVG path data in steps of a hundredth of a mm.
func outlines(r geom.Region) string {
	var out strings.Builder
	for _, ring := range r {
		var last [2]int
		for i, p := range ring {
			at := [2]int{int(p.X*100 + 0.5), int(p.Y*100 + 0.5)}
			if i == 0 {
				fmt.Fprintf(&out, "M%g %gl", float64(at[0])/100, float64(at[1])/100)
			} else {
				fmt.Fprintf(&out, "%g %g ", float64(at[0]-last[0])/100, float64(at[1]-last[1])/100)
			}
			last = at
		}
		out.WriteString("z")
	}
	return out.String()
}

func TestSpecimenIsAsItWasLookedAt(t *testing.T) {
	file := filepath.Join("testdata", "tails.svg")
	got := specimen(t)
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, len(want), len(got))
	assert.True(t, string(want) == got, "the tails are drawn otherwise than in %s: look at them, then run with -update", file)
}
