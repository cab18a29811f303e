package page

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
)

// readRelative reads path data with the small letters that screenPath writes
// (SVG 2, section 9.3) back into a path.
func readRelative(t require.TestingT, data string) geom.Path {
	var p geom.Path
	var at, start geom.Point
	var letter byte
	var figures []float64
	take := func() {
		n := map[byte]int{'m': 2, 'l': 2, 'q': 4, 'c': 6}[letter]
		if n == 0 || len(figures) < n {
			return
		}
		points := make([]geom.Point, n/2)
		for i := range points {
			points[i] = at.Add(geom.Point{X: figures[2*i], Y: figures[2*i+1]})
		}
		figures, at = nil, points[len(points)-1]
		switch letter {
		case 'm':
			p.MoveTo(at)
			start = at
		case 'l':
			p.LineTo(at)
		case 'q':
			p.QuadTo(points[0], at)
		case 'c':
			p.CubeTo(points[0], points[1], at)
		}
	}
	for data != "" {
		if c := data[0]; strings.IndexByte("mlqcz", c) >= 0 {
			require.Empty(t, figures)
			if letter, data = c, data[1:]; c == 'z' {
				p.Close()
				at = start
			}
			continue
		}
		data = strings.TrimPrefix(data, " ")
		end := 1 + strings.IndexFunc(data[1:], func(r rune) bool { return r != '.' && (r < '0' || r > '9') })
		if end == 0 {
			end = len(data)
		}
		v, err := strconv.ParseFloat(data[:end], 64)
		require.NoError(t, err)
		figures, data = append(figures, v), data[end:]
		take()
	}
	return p
}

func TestPathsForTheScreenStandWhereTheyShould(t *testing.T) {
	coordinate := rapid.Float64Range(-300, 300)
	rapid.Check(t, func(t *rapid.T) {
		point := func() geom.Point { return geom.Point{X: coordinate.Draw(t, "x"), Y: coordinate.Draw(t, "y")} }
		var p geom.Path
		for range rapid.IntRange(1, 3).Draw(t, "contours") {
			p.MoveTo(point())
			for range rapid.IntRange(1, 8).Draw(t, "steps") {
				switch rapid.IntRange(0, 2).Draw(t, "kind") {
				case 0:
					p.LineTo(point())
				case 1:
					p.QuadTo(point(), point())
				case 2:
					p.CubeTo(point(), point(), point())
				}
			}
			p.Close()
		}
		unit := rapid.SampledFrom([]float64{1, 1.0 / 7, 1.0 / 14, 3}).Draw(t, "unit")
		got := readRelative(t, string(screenPath(nil, p, unit)))
		want := thinned(p, screenFlat/unit)
		require.Len(t, got, len(want))
		for i := range want {
			require.Equal(t, want[i].Op, got[i].Op)
			for k := range want[i].P {
				// Half of the last decimal, which is at most √10 times 0.01 mm of page.
				require.InDelta(t, want[i].P[k].X, got[i].P[k].X, 0.5*0.01*math.Sqrt(10)/unit+1e-9)
				require.InDelta(t, want[i].P[k].Y, got[i].P[k].Y, 0.5*0.01*math.Sqrt(10)/unit+1e-9)
			}
		}
	})
}

// No point that is left out stands further beside what is drawn than allowed.
func TestThinnedOutlinesKeepTheirShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var p geom.Path
		at := geom.Point{}
		p.MoveTo(at)
		for range rapid.IntRange(1, 60).Draw(t, "points") {
			at = at.Add(geom.Point{X: rapid.Float64Range(-1, 3).Draw(t, "x"), Y: rapid.Float64Range(-0.1, 0.1).Draw(t, "y")})
			p.LineTo(at)
		}
		const flat = 0.05
		thin := thinned(p, flat)
		require.Equal(t, p[len(p)-1], thin[len(thin)-1])
		for _, seg := range p {
			nearest := math.Inf(1)
			for i := 1; i < len(thin); i++ {
				nearest = min(nearest, beside(seg.P[0], thin[i-1].P[0], thin[i].P[0]))
			}
			require.LessOrEqual(t, nearest, flat+1e-9)
		}
	})
}

func TestDrawingsShareWhatRepeats(t *testing.T) {
	book, err := NewBook()
	require.NoError(t, err)
	draw := func() (*Drawings, []string) {
		d := book.NewDrawings("d-")
		var out []string
		for range 2 {
			p := book.Add(Sheet{}, "")
			p.Use(book.Art("a square", func(pen *Pen) { pen.FillRect(0, 0, 10, 10, 0x14284B) }), geom.Affine{A: 0.5, D: 0.5, E: 3})
			out = append(out, d.SVG(p, geom.Rect{Max: geom.Point{X: 20, Y: 10}}, `class="x"`))
		}
		return d, out
	}
	d, out := draw()
	assert.Equal(t, `<svg viewBox="0 0 20 10" class="x"><use href="#d-a1" transform="matrix(0.5 0 0 0.5 3 0)"/>`+"\n</svg>", out[0])
	assert.Equal(t, out[0], out[1])
	assert.Equal(t, 1, strings.Count(d.Defs(), `<g id="d-a1">`))
	assert.Contains(t, d.Defs(), `<path fill="#14284B" d="m0 0l10 0 0 10-10 0z"/>`)
	again, _ := draw()
	assert.Equal(t, d.Defs(), again.Defs())
}
