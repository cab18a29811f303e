package sheets

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/geom"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
)

// byCairo draws steps written by steps with cairo (through its Python binding),
// once they are read and parsed, and prints the seconds it took, those of an empty
// loop, and the bytes.
// Text is drawn as the outlines of its glyphs, since the faces are not installed;
// a path is one call a segment, so the time is that of cairo and of the binding;
// what the loop takes with calls that do nothing is printed too.
const byCairo = `
import cairo, io, sys, time
steps = []
for line in open(sys.argv[1]):
    word, *rest = line.split()
    steps.append((word, [float(v) for v in rest]))
out = io.BytesIO()
start = time.perf_counter()
s = cairo.PDFSurface(out, 100, 100)
c = cairo.Context(s)
k = 72 / 25.4
for op, v in steps:
    if op == 'l': c.line_to(*v)
    elif op == 'c': c.curve_to(*v)
    elif op == 'm': c.move_to(*v)
    elif op == 'z': c.close_path()
    elif op == 'f': c.set_source_rgb(*v); c.fill()
    elif op == 's':
        c.set_source_rgb(*v[:3]); c.set_line_width(v[3])
        c.set_line_cap(int(v[4])); c.set_line_join(int(v[5])); c.set_dash(v[6:]); c.stroke()
    elif op == 'save': c.save()
    elif op == 'restore': c.restore()
    elif op == 'clip': c.clip()
    elif op == 'by': c.transform(cairo.Matrix(*v))
    elif op == 'page': s.set_size(v[0] * k, v[1] * k); c.save(); c.scale(k, k)
    elif op == 'show': c.restore(); c.show_page()
s.finish()
drawn = time.perf_counter()
class Nothing:
    def __getattr__(self, name): return self.call
    def call(self, *v): pass
n = Nothing()
for op, v in steps:
    if op == 'l': n.line_to(*v)
    elif op == 'c': n.curve_to(*v)
    elif op == 'm': n.move_to(*v)
    elif op == 'z': n.close_path()
    elif op == 'f': n.set_source_rgb(*v); n.fill()
empty = time.perf_counter() - drawn
if len(sys.argv) > 2: open(sys.argv[2], 'wb').write(out.getvalue())
print(drawn - start, empty, len(out.getvalue()))
`

// steps writes the pages of a book as steps for byCairo. Shared drawings are
// drawn where they are used: cairo has no name for what repeats.
func steps(out io.Writer, b *page.Book) {
	for _, p := range b.Pages() {
		fmt.Fprintln(out, "page", p.Sheet.W, p.Sheet.H)
		stepsOf(out, b, p.Ops())
		fmt.Fprintln(out, "show")
	}
}

func stepsOf(out io.Writer, b *page.Book, ops []page.Op) {
	for _, op := range ops {
		switch o := op.(type) {
		case page.Fill:
			pathSteps(out, o.Path)
			fmt.Fprintln(out, "f", rgb(o.Colour))
		case page.Stroke:
			pathSteps(out, o.Path)
			// Cairo counts joins from the mitre and caps from the butt, as page does.
			fmt.Fprintln(out, "s", rgb(o.Colour), o.Line.Weight, int(o.Line.Cap), int(o.Line.Join), strings.Trim(fmt.Sprint(o.Line.Dash), "[]"))
		case page.Clip:
			fmt.Fprintln(out, "save")
			pathSteps(out, o.Path)
			fmt.Fprintln(out, "clip")
			stepsOf(out, b, o.Ops)
			fmt.Fprintln(out, "restore")
		case page.Use:
			fmt.Fprintln(out, "save\nby", o.At.A, o.At.B, o.At.C, o.At.D, o.At.E, o.At.F)
			stepsOf(out, b, o.Art.Ops())
			fmt.Fprintln(out, "restore")
		case page.Words:
			for _, g := range o.Glyphs {
				outline, upem := b.Outline(o.Style.Weight, g.ID)
				k := o.Style.Size * page.MMPerPoint / upem
				pathSteps(out, outline.Transform(geom.Affine{A: k, D: -k, E: o.X + g.X, F: o.Y + g.Y}))
			}
			fmt.Fprintln(out, "f", rgb(o.Style.Colour))
		}
	}
}

func rgb(c page.Colour) string {
	r, g, b := c.RGB()
	return fmt.Sprint(float64(r)/255, " ", float64(g)/255, " ", float64(b)/255)
}

func pathSteps(out io.Writer, path geom.Path) {
	var at geom.Point
	for _, s := range path {
		switch s.Op {
		case geom.Move:
			fmt.Fprintln(out, "m", s.P[0].X, s.P[0].Y)
			at = s.P[0]
		case geom.Line:
			fmt.Fprintln(out, "l", s.P[0].X, s.P[0].Y)
			at = s.P[0]
		case geom.Quad: // raised to a cubic, as both outputs do
			q, e := s.P[0], s.P[1]
			fmt.Fprintln(out, "c", at.X+2*(q.X-at.X)/3, at.Y+2*(q.Y-at.Y)/3, e.X+2*(q.X-e.X)/3, e.Y+2*(q.Y-e.Y)/3, e.X, e.Y)
			at = e
		case geom.Cube:
			fmt.Fprintln(out, "c", s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y, s.P[2].X, s.P[2].Y)
			at = s.P[2]
		case geom.Close:
			fmt.Fprintln(out, "z")
		}
	}
}

// BenchmarkWriteBesideCairo writes the demo's drawn proof as PDF and prints, next
// to it, what cairo makes of the same shapes: pages a second and bytes a page.
func BenchmarkWriteBesideCairo(b *testing.B) {
	book, err := Proof(demoInput(b))
	require.NoError(b, err)
	pages, written := float64(len(book.Pages())), 0
	for b.Loop() {
		var out bytes.Buffer
		require.NoError(b, pdf.Write(&out, book, pdf.Facts{}))
		written = out.Len()
	}
	b.ReportMetric(pages*float64(b.N)/b.Elapsed().Seconds(), "pages/s")
	b.ReportMetric(float64(written)/pages, "B/page")
	seconds, empty, size := cairoWrites(b, book)
	if seconds > 0 {
		b.ReportMetric(pages/seconds, "cairo-pages/s")
		b.ReportMetric(empty/seconds, "python-share")
		b.ReportMetric(float64(size)/pages, "cairo-B/page")
	}
}

// cairoWrites returns what cairo needs for a book; nothing where it is missing.
func cairoWrites(b *testing.B, book *page.Book) (seconds, empty float64, size int) {
	b.Helper()
	python := "/usr/bin/python3" // Debian's python3-cairo belongs to Debian's python
	if exec.Command(python, "-c", "import cairo").Run() != nil {
		b.Log("python3-cairo is not installed: no figures of cairo")
		return 0, 0, 0
	}
	path := filepath.Join(b.TempDir(), "steps")
	f, err := os.Create(path)
	require.NoError(b, err)
	w := bufio.NewWriter(f)
	steps(w, book)
	require.NoError(b, w.Flush())
	require.NoError(b, f.Close())
	for range 3 { // the best of three
		out, err := exec.Command(python, "-c", byCairo, path).Output()
		require.NoError(b, err)
		var took, idle float64
		_, err = fmt.Sscan(string(out), &took, &idle, &size)
		require.NoError(b, err)
		if seconds == 0 || took < seconds {
			seconds, empty = took, idle
		}
	}
	return seconds, empty, size
}
