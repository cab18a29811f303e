package edges_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/edges"
	"yokeline/lettering/geom"
	"yokeline/lettering/typeface"
)

// inkOf sets a name straight, 60 mm high, its ink centred on x = 0.
func inkOf(t testing.TB, id, text string) geom.Path {
	face, err := typeface.Embedded(id)
	require.NoError(t, err)
	line, err := face.NewShaper().Shape(text, "")
	require.NoError(t, err)
	k := 60 / face.CapHeight()
	var out geom.Path
	for _, g := range line.Glyphs {
		out = append(out, face.Outline(g.ID).Transform(geom.Translate(g.X, g.Y).Then(geom.Scale(k, k)))...)
	}
	return out.Transform(geom.Translate(-out.Bounds().Center().X, 0))
}

var named = []struct{ face, text string }{
	{"graduate", "WOJCIECHOWSKI"}, {"anton", "QUIJANO-ÁVILA"}, {"alfa-slab-one", "BRAYDEN"},
	{"yellowtail", "Herons"}, {"oswald", "Señor Gjoa"}, {"league-gothic", "JØRGENSEN"},
}

// shapeFor gives a form a strong but usable rise over the chord.
func shapeFor(t testing.TB, form edges.Form, height, chord float64) edges.Shape {
	rise := min(0.07*chord, 0.35*height)
	switch form {
	case edges.Flat:
		return edges.Shape{}
	case edges.VerticalArch, edges.VerticalArchDown:
		rise = 0.15 * chord
	case edges.Bulge, edges.Pinch:
		rise *= 0.8
	case edges.Taper, edges.Slanted:
		rise *= 1.5
	case edges.SlantedTop, edges.SlantedFoot:
		rise *= 2
	}
	s, err := form.ByRise(rise)
	require.NoError(t, err)
	return s
}

func TestRealNamesStayWithinTheTolerance(t *testing.T) {
	worst, control, before, after := 0.0, 0.0, 0, 0
	for _, n := range named {
		ink := inkOf(t, n.face, n.text)
		chord := ink.Bounds().Width()
		for _, form := range edges.Forms() {
			s := shapeFor(t, form, 60, chord)
			drawn, err := s.Bend(ink, 60, chord, 0.02)
			require.NoError(t, err, "%s, %v", n.text, form)
			if form.Kind() == edges.Straight || form == edges.Slanted {
				continue // drawn by an affine map, curve by curve
			}
			to := func(p geom.Point) geom.Point { return oracle(s, 60, chord, p) }
			d := deviation(ink, drawn, to, 8, 48)
			assert.LessOrEqual(t, d, 0.02, "%s, %v", n.text, form)
			worst, before, after = max(worst, d), before+len(ink), after+len(drawn)
			if form == edges.Bulge {
				control = max(control, deviation(ink, moved(ink, to), to, 8, 48))
			}
		}
	}
	assert.Greater(t, control, 0.2, "moving the control points alone must show as wrong")
	assert.Less(t, float64(after), 1.5*float64(before), "pieces")
	t.Logf("worst deviation %.4f mm; control points alone %.2f mm; %d pieces from %d", worst, control, after, before)
}

// moved maps ends and control points only.
func moved(p geom.Path, to func(geom.Point) geom.Point) geom.Path {
	out := make(geom.Path, len(p))
	for i, s := range p {
		out[i].Op = s.Op
		for k := range [...]int{1, 1, 2, 3, 0}[s.Op] {
			out[i].P[k] = to(s.P[k])
		}
	}
	return out
}

func TestExtentIsThatOfTheDrawnInk(t *testing.T) {
	for _, n := range named {
		ink := inkOf(t, n.face, n.text)
		for _, shear := range []float64{0, 0.2, -0.35} {
			s := edges.Shape{Top: edges.Edge{Kind: edges.Arch, Radius: 4000}, Bottom: edges.Edge{Kind: edges.Arch, Radius: -4000}, Shear: shear}
			drawn, err := s.Bend(ink, 60, 0, 0.02)
			require.NoError(t, err)
			from, to := s.Extent(ink)
			assert.InDelta(t, drawn.Bounds().Min.X, from, 1e-9)
			assert.InDelta(t, drawn.Bounds().Max.X, to, 1e-9)
			low, high := s.Width(ink.Bounds())
			assert.LessOrEqual(t, low, from+1e-9)
			assert.GreaterOrEqual(t, high, to-1e-9)
		}
	}
}

func BenchmarkBendAName(b *testing.B) {
	for _, n := range []struct{ face, text string }{{"graduate", "WOJCIECHOWSKI"}, {"yellowtail", "Herons"}} {
		ink := inkOf(b, n.face, n.text)
		for _, form := range []edges.Form{edges.VerticalArch, edges.Bulge, edges.Taper, edges.Slanted} {
			b.Run(n.face+"/"+form.String(), func(b *testing.B) {
				s := shapeFor(b, form, 60, ink.Bounds().Width())
				b.ReportAllocs()
				pieces := 0
				for b.Loop() {
					drawn, err := s.Bend(ink, 60, ink.Bounds().Width(), 0.02)
					require.NoError(b, err)
					pieces = len(drawn)
				}
				b.ReportMetric(float64(pieces)/float64(len(ink)), "pieces/segment")
			})
		}
	}
}
