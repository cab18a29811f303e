package bench_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
)

// tool returns the path of an outside program. A test that needs it is skipped
// where it is missing, but fails where CI says that all tools must be there.
func tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("YOKELINE_TOOLS") == "required" {
		t.Fatalf("%s is not installed and YOKELINE_TOOLS=required", name)
	}
	t.Skipf("%s is not installed: this check reads the output back with it", name)
	return ""
}

// run runs an outside program and returns what it prints.
func run(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(tool(t, name), args...).CombinedOutput()
	require.NoError(t, err, "%s %v: %s", name, args, out)
	return string(out)
}

func file(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, data, 0o644))
	return path
}

// drawn is one path as mutool (MuPDF) draws it: points in mm from the upper left
// corner of the page, y down, in the layer and the colour it finds.
type drawn struct {
	fill, over           bool // over: it overprints
	layer, space, colour string
	rings                geom.Region // ends of segments only; what is measured has no curves
}

func (d drawn) bounds() geom.Rect { return d.rings.Bounds() }

// sheet is what mutool says of a PDF.
type sheet struct {
	wide, high float64 // mm
	paths      []drawn
}

var (
	attribute = regexp.MustCompile(`([a-z0-9]+)="([^"]*)"`)
	element   = regexp.MustCompile(`^\s*<(/?[a-z_]+)`)
)

const perMM = 72 / 25.4

// traced reads a PDF back with mutool.
func traced(t testing.TB, path string) sheet {
	t.Helper()
	var out sheet
	layer := ""
	var m geom.Affine
	for _, line := range strings.Split(run(t, "mutool", "trace", path), "\n") {
		head := element.FindStringSubmatch(line)
		if head == nil {
			continue
		}
		of := map[string]string{}
		for _, a := range attribute.FindAllStringSubmatch(line, -1) {
			of[a[1]] = a[2]
		}
		point := func(x, y string) geom.Point { return m.Apply(geom.Point{X: figure(t, of[x]), Y: figure(t, of[y])}) }
		last := len(out.paths) - 1
		switch head[1] {
		case "page":
			box := strings.Fields(of["mediabox"])
			out.wide, out.high = figure(t, box[2])/perMM, figure(t, box[3])/perMM
		case "layer":
			layer = of["name"]
		case "end_layer":
			layer = ""
		case "fill_path", "stroke_path":
			v := strings.Fields(of["transform"])
			m = geom.Affine{A: figure(t, v[0]), B: figure(t, v[1]), C: figure(t, v[2]), D: figure(t, v[3]), E: figure(t, v[4]), F: figure(t, v[5])}.
				Then(geom.Scale(1/perMM, 1/perMM))
			out.paths = append(out.paths, drawn{fill: head[1] == "fill_path", over: of["op"] == "1", layer: layer, space: of["colorspace"], colour: of["color"]})
		case "moveto":
			out.paths[last].rings = append(out.paths[last].rings, geom.Ring{point("x", "y")})
		case "lineto":
			r := out.paths[last].rings
			r[len(r)-1] = append(r[len(r)-1], point("x", "y"))
		case "curveto":
			r := out.paths[last].rings
			r[len(r)-1] = append(r[len(r)-1], point("x3", "y3"))
		}
	}
	return out
}

func figure(t testing.TB, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// converted draws an SVG with rsvg-convert (librsvg) and reads that back.
func converted(t testing.TB, svg []byte) sheet {
	t.Helper()
	pdf := filepath.Join(t.TempDir(), "converted.pdf")
	run(t, "rsvg-convert", "-f", "pdf", "-o", pdf, file(t, "art.svg", svg))
	return traced(t, pdf)
}

// filled returns the filled paths of a colour, #rrggbb, that is mixed of red, green
// and blue, or is the alternate of a spot of that name.
func (s sheet) filled(hex, spot string) []drawn {
	var want [3]float64
	for i := range want {
		v, _ := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
		want[i] = float64(v) / 255
	}
	var out []drawn
	for _, p := range s.paths {
		var got [3]float64
		n, _ := fmt.Sscan(p.colour, &got[0], &got[1], &got[2])
		mixed := n == 3 && math.Abs(got[0]-want[0])+math.Abs(got[1]-want[1])+math.Abs(got[2]-want[2]) < 0.01
		if p.fill && (mixed || p.space == "Separation(DeviceRGB,"+spot+")") {
			out = append(out, p)
		}
	}
	return out
}

// inLayer returns the paths of a layer.
func (s sheet) inLayer(name string) []drawn {
	var out []drawn
	for _, p := range s.paths {
		if p.layer == name {
			out = append(out, p)
		}
	}
	return out
}
