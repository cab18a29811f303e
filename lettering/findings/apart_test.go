package findings

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

func polygon(sides int, x, y, radius float64) geom.Region {
	var ring geom.Ring
	for i := range sides {
		turn := 2 * math.Pi * float64(i) / float64(sides)
		ring = append(ring, geom.Point{X: x + radius*math.Cos(turn), Y: y + radius*math.Sin(turn)})
	}
	return geom.Region{ring}
}

// byAll is the distance of two polygons worked out without any short cut.
func byAll(a, b geom.Region) float64 {
	least := math.Inf(1)
	for _, pair := range [2][2]geom.Region{{a, b}, {b, a}} {
		for _, p := range pair[0][0] {
			for i, q := range pair[1][0] {
				r := pair[1][0][(i+1)%len(pair[1][0])]
				d := r.Sub(q)
				share := math.Max(0, math.Min(1, p.Sub(q).Dot(d)/d.Dot(d)))
				least = math.Min(least, p.Sub(q.Lerp(r, share)).Norm())
			}
		}
	}
	return least
}

func TestDistanceOfTwoShapesIsThatOfTheirEdges(t *testing.T) {
	square := geom.Region{geom.Ring{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}, {X: 0, Y: 10}}}
	for _, c := range []struct {
		dx, dy, want float64
	}{{13, 0, 3}, {13, 14, 5}, {10, 0, 0}, {5, 5, 0}, {0, 0, 0}, {0, -10.5, 0.5}} {
		assert.InDelta(t, c.want, apart(square, square.Transform(geom.Translate(c.dx, c.dy))), 1e-9, "%v", c)
	}
	assert.Zero(t, apart(square, polygon(6, 5, 5, 2)), "one in the other")
	cross := geom.Region{geom.Ring{{X: -5, Y: 4}, {X: 15, Y: 4}, {X: 15, Y: 6}, {X: -5, Y: 6}}}
	assert.Zero(t, apart(square, cross), "crossing without a corner inside")
	assert.True(t, math.IsInf(apart(square, nil), 1))
}

func TestDistanceIsTheSameEitherWayAndThatOfEveryPair(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		draw := func(name string, from, to float64) float64 { return rapid.Float64Range(from, to).Draw(rt, name) }
		a := polygon(rapid.IntRange(3, 12).Draw(rt, "a"), 0, 0, draw("radius", 1, 20))
		b := polygon(rapid.IntRange(3, 12).Draw(rt, "b"), draw("x", -60, 60), draw("y", 41, 90), draw("other", 1, 20))
		if got, want := apart(a, b), byAll(a, b); math.Abs(got-want) > 1e-9 || math.Abs(got-apart(b, a)) > 1e-12 {
			rt.Fatalf("%g, want %g", got, want)
		}
	})
}

// dressed returns a back name over a back number with outlines.
func dressed(t testing.TB, join outline.Join, widths ...string) (name, number sizes.Piece) {
	t.Helper()
	face, err := typeface.Embedded("oswald")
	require.NoError(t, err)
	var layers []outline.Layer
	var outlines []order.Outline
	for _, text := range widths {
		l, err := length.Parse(text)
		require.NoError(t, err)
		layers = append(layers, outline.Layer{Width: l.MM(), Join: join})
		outlines = append(outlines, order.Outline{Width: l, Join: join})
	}
	n, err := fit.Fit(fit.Request{
		Text: "QUAVER", Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 50, Ladder: fit.DefaultLadder(50),
		Shape: fit.RadialArch, Radius: 400, NoWaysOut: true, Outlines: layers,
	})
	require.NoError(t, err)
	d, err := numeral.NewSizer().Number(numeral.Request{Text: "74", Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 200, Gap: math.NaN(), Outlines: layers})
	require.NoError(t, err)
	name = sizes.Piece{Name: &n, Asked: order.Piece{Place: garment.BackName, Outlines: outlines}, At: geom.Point{Y: 150}, Top: 100, BelowCollar: 60}
	number = sizes.Piece{Number: &d, Asked: order.Piece{Place: garment.BackNumber, Outlines: outlines}, At: geom.Point{Y: 400}, Top: 200, BelowCollar: 160}
	return name, number
}

// The short way for round outlines, bare distance less the reaches, must be what
// the drawn outlines show.
func TestGapIsBetweenTheFinishedEdgesAsDrawn(t *testing.T) {
	bare := finishedGap(dressed(t, outline.Round))
	for _, join := range []outline.Join{outline.Round, outline.Mitre, outline.Bevel} {
		name, number := dressed(t, join, "2mm", "3mm")
		drawn := func(p sizes.Piece) geom.Region {
			layers, err := p.Outlines()
			require.NoError(t, err)
			return onGarment(p, layers[1])
		}
		got := finishedGap(name, number)
		assert.InDelta(t, apart(drawn(name), drawn(number)), got, 0.1, "%v", join)
		assert.Less(t, got, bare, "%v", join)
		if join == outline.Round {
			assert.InDelta(t, bare-10, got, 1e-9)
		}
	}
	name, number := dressed(t, outline.Round)
	number.At.Y = 330
	assert.Zero(t, finishedGap(name, number), "the number stands in the name")
}

func TestTopIsThatOfTheDrawnShapeAndItsOutline(t *testing.T) {
	name, number := dressed(t, outline.Mitre, "3mm")
	for _, p := range []sizes.Piece{name, number} {
		m := measure(p, wants{collar: true})
		layers, err := p.Outlines()
		require.NoError(t, err)
		top := onGarment(p, layers[0]).Bounds().Min.Y
		collar := p.Top - p.BelowCollar
		low, _, _ := belowCollar(m, nil)
		assert.InDelta(t, top-collar, low, 0.05, p.Text())
		assert.InDelta(t, onGarment(p, p.Ink().Flatten(0.01)).Bounds().Min.Y-collar, m.BelowCollar, 0.05, p.Text())
	}
	assert.True(t, math.IsNaN(measure(number, wants{}).BelowCollar), "measured only where a book asks")
}

func TestEndsOfAnArchAreLevelUnlessItLeans(t *testing.T) {
	name, _ := dressed(t, outline.Round)
	assert.Less(t, math.Abs(tilt(name.Name)), levelWithin, "an arch in its middle")
	leaning := *name.Name
	leaning.Apex = 40
	// by the circle itself: y at the two ends of the ink
	half, r := leaning.BareInkWidth/2, leaning.Radius
	y := func(x float64) float64 { return math.Sqrt(r*r - (x-40)*(x-40)) }
	assert.InDelta(t, y(half)-y(-half), tilt(&leaning), 1e-9)
	assert.Greater(t, math.Abs(tilt(&leaning)), levelWithin)
}

func TestNarrowestDigitIsThatOfItsInk(t *testing.T) {
	_, number := dressed(t, outline.Round)
	face, err := typeface.Embedded("oswald")
	require.NoError(t, err)
	least := math.Inf(1)
	for _, digit := range []string{"7", "4"} {
		one, err := numeral.NewSizer().Number(numeral.Request{Text: digit, Face: face, Wdth: math.NaN(), Wght: math.NaN(), Height: 200, Gap: math.NaN()})
		require.NoError(t, err)
		least = math.Min(least, one.BareInkWidth)
	}
	assert.InDelta(t, least, narrowestDigit(number), 0.5)
}

func BenchmarkGapOfFinishedEdges(b *testing.B) {
	for _, join := range []outline.Join{outline.Round, outline.Mitre} {
		b.Run(join.String(), func(b *testing.B) {
			name, number := dressed(b, join, "3mm")
			for b.Loop() {
				finishedGap(name, number)
			}
		})
	}
}

// The level is that of the drawn feet: of letters that stand on the line, the
// lowest ink of the first and the last is on it but for the slant of an arch.
func TestTheLevelOfTheEndLettersIsHeldAgainstTheDrawnNumber(t *testing.T) {
	name, number := dressed(t, outline.Round, "2mm")
	layers, err := number.Outlines()
	require.NoError(t, err)
	box := onGarment(number, layers[0]).Bounds()
	var feet []float64
	letters := name.Name.Letters()
	for _, l := range []geom.Path{letters[1], letters[len(letters)-1]} { // Q has a tail
		feet = append(feet, onGarment(name, l.Flatten(0.01)).Bounds().Max.Y)
	}
	foot := slices.Max(feet)
	assert.InDelta(t, box.Min.Y-foot, endsClear(name, number, "above"), 2.5)
	assert.InDelta(t, foot-box.Max.Y, endsClear(name, number, "below"), 2.5)
	name.At.Y += 400
	assert.Negative(t, endsClear(name, number, "above"))
	assert.Positive(t, endsClear(name, number, "below"))
}

func TestTheFootOfANumberIsMeasuredFromTheMiddleOfItsShirt(t *testing.T) {
	_, number := dressed(t, outline.Round, "2mm", "3mm")
	cut, err := garment.ParseCut("crew-tee")
	require.NoError(t, err)
	g, err := garment.New(cut, garment.Size{Group: garment.Women, Letter: "M"})
	require.NoError(t, err)
	m := measure(number, wants{})
	down(&m, number, sizes.Player{Garment: g})
	layers, err := number.Outlines()
	require.NoError(t, err)
	assert.InDelta(t, onGarment(number, layers[1]).Bounds().Max.Y-g.Hem()/2, m.HalfFoot, 0.05)
}
