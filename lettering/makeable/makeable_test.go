package makeable_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/geom"
	"yokeline/lettering/makeable"
	"yokeline/lettering/outline"
)

// ring makes a ring of x, y pairs.
func ring(xy ...float64) geom.Ring {
	var out geom.Ring
	for i := 0; i < len(xy); i += 2 {
		out = append(out, geom.Point{X: xy[i], Y: xy[i+1]})
	}
	return out
}

func bar(x0, y0, x1, y1 float64) geom.Ring { return ring(x0, y0, x1, y0, x1, y1, x0, y1) }

// hole turns a ring round.
func hole(r geom.Ring) geom.Ring {
	r = slices.Clone(r)
	slices.Reverse(r)
	return r
}

// circle makes a fine polygon whose corners lie on the circle.
func circle(x, y, r float64) geom.Ring {
	const n = 120
	var out geom.Ring
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		out = append(out, geom.Point{X: x + r*cos, Y: y + r*sin})
	}
	return out
}

var none = math.NaN()

// shapes with measures that follow from their construction.
var shapes = []struct {
	name                 string
	region               geom.Region
	stroke, gap, counter float64
	slack                float64 // of flattening; 0: exact
}{
	{"a stem", geom.Region{bar(0, 0, 3, 40)}, 3, none, none, 0},
	{"two bars", geom.Region{bar(0, 0, 3, 40), bar(4.25, 0, 9, 40)}, 3, 1.25, none, 0},
	{"bars corner to corner", geom.Region{bar(0, 0, 10, 10), bar(13, 14, 30, 30)}, 10, 5, none, 0},
	{"a plus", geom.Region{ring(10, 0, 14, 0, 14, 10, 24, 10, 24, 14, 14, 14, 14, 24, 10, 24, 10, 14, 0, 14, 0, 10, 10, 10)}, 4, none, none, 0},
	{"a square frame", geom.Region{bar(0, 0, 20, 30), hole(bar(4, 5, 15, 24))}, 4, none, 11, 0},
	{"a round ring", geom.Region{circle(0, 0, 20), hole(circle(0, 0, 14))}, 6, none, 28, 0.02},
	{"a ring out of centre", geom.Region{circle(0, 0, 20), hole(circle(3, 0, 14))}, 3, none, 28, 0.02},
	{"a dot in a ring", geom.Region{circle(0, 0, 20), hole(circle(0, 0, 15)), circle(0, 0, 4)}, 5, 11, 30, 0.02},
	{"a square bay", geom.Region{ring(0, 0, 20, 0, 20, 30, 14, 30, 14, 6, 7, 6, 7, 30, 0, 30)}, 6, none, 7, 0},
	{"a bay with a narrow mouth", geom.Region{ring(0, 0, 24, 0, 24, 30, 13, 30, 13, 24, 18, 24, 18, 6, 6, 6, 6, 24, 10, 24, 10, 30, 0, 30)}, 6, none, 3, 0},
	{"two points of ink facing each other in a counter", geom.Region{bar(-10, -10, 40, 40), hole(ring(0, 0, 30, 0, 30, 5, 14, 15, 30, 25, 30, 30, 0, 30, 0, 25, 8, 15, 0, 5))}, 10, none, 6, 0},
	{"a neck between two notches", geom.Region{ring(0, 0, 30, 0, 30, 5, 14, 15, 30, 25, 30, 30, 0, 30, 0, 25, 8, 15, 0, 5)}, 6, none, none, 0},
	{"a neck between two notches that are not level", geom.Region{ring(0, 0, 20, 0, 14, 12, 20, 18, 20, 30, 0, 30, 10, 15, 0, 5)}, 5, none, none, 0},
	{"a V with sharp foot and crotch", geom.Region{ring(10, 0, 22, 40, 17, 40, 10, 15, 3, 40, -2, 40)}, 4.5 * 40 / math.Hypot(12, 40), none, none, 0},
	{"a bump too low to be a stroke", geom.Region{ring(0, 0, 8, 0, 8, 10, 8.3, 10, 8.3, 11, 8, 11, 8, 40, 0, 40)}, 8, none, none, 0},
	{"a serif half as long as it is thick", geom.Region{ring(0, 0, 8, 0, 8, 30, 9, 30, 9, 32, 0, 32)}, 2, none, none, 0},
	{"a triangle has the disc in it", geom.Region{ring(0, 0, 3, 0, 0, 4)}, 2, none, none, 0.003},
	{"a triangular counter", geom.Region{bar(-20, -20, 40, 40), hole(ring(0, 0, 3, 0, 0, 4))}, 20, none, 2, 0.003},
	{"a spike is no stroke", geom.Region{ring(0, 0, 30, 0, 30, 10, 16, 10, 15, 30, 14, 10, 0, 10)}, 10, none, none, 0},
}

func same(t assert.TestingT, want, got, slack float64, text string) {
	if math.IsNaN(want) {
		assert.True(t, math.IsNaN(got), "%s: none expected, %g found", text, got)
		return
	}
	assert.InDelta(t, want, got, slack+1e-9, text)
}

func TestKnownShapesMeasureAsBuilt(t *testing.T) {
	for _, s := range shapes {
		r, err := makeable.Measure(s.region, makeable.Options{})
		require.NoError(t, err)
		t.Log(s.name, r.Stroke.Width, r.Gap.Width, r.Counter.Width)
		same(t, s.stroke, r.Stroke.Width, s.slack, s.name+": stroke")
		same(t, s.gap, r.Gap.Width, s.slack, s.name+": gap")
		same(t, s.counter, r.Counter.Width, s.slack, s.name+": counter")
		for _, spot := range []makeable.Spot{r.Stroke, r.Gap, r.Counter} {
			if spot.Found() {
				assert.InDelta(t, spot.Width, spot.To.Sub(spot.From).Norm(), 0.2*spot.Width, "%s: the walls are the width apart", s.name)
			}
		}
	}
}

func TestMeasuresTurnMoveAndScaleWithTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(shapes).Draw(t, "shape")
		k := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		angle := rapid.Float64Range(0, 6.2).Draw(t, "angle")
		m := geom.Rotate(angle).Then(geom.Scale(k, k)).Then(geom.Translate(rapid.Float64Range(-500, 500).Draw(t, "x"), 7))
		r, err := makeable.Measure(s.region.Transform(m), makeable.Options{})
		require.NoError(t, err)
		slack := k * (math.Max(s.slack, 1e-6) + 0.002)
		same(t, s.stroke*k, r.Stroke.Width, slack, s.name+": stroke")
		same(t, s.gap*k, r.Gap.Width, slack, s.name+": gap")
		same(t, s.counter*k, r.Counter.Width, slack, s.name+": counter")
	})
}

// A stem that tapers by 5 degrees to a blunt end is as thick as the disc that
// fits against the end; one that tapers to a point is not measured there.
func TestTapers(t *testing.T) {
	lean := math.Tan(2.5 * math.Pi / 180)
	blunt := geom.Region{ring(-1, 0, 1, 0, 1+20*lean, 20, -1-20*lean, 20)}
	r, err := makeable.Measure(blunt, makeable.Options{})
	require.NoError(t, err)
	assert.GreaterOrEqual(t, r.Stroke.Width, 2.0)
	assert.LessOrEqual(t, r.Stroke.Width, 2.2)
	assert.Less(t, r.Stroke.From.Y, 2.0)
	pointed := geom.Region{ring(0, 0, 40*lean, 40, 40*lean, 60, -40*lean, 60, -40*lean, 40)}
	r, err = makeable.Measure(pointed, makeable.Options{})
	require.NoError(t, err)
	assert.InDelta(t, 80*lean, r.Stroke.Width, 0.002)
	var horn geom.Ring // two arcs that meet at almost no angle
	for i := range 41 {
		x := float64(i) - 20
		horn = append(horn, geom.Point{X: x, Y: 0.01 * x * x})
	}
	for i := range 39 {
		x := 19 - float64(i)
		horn = append(horn, geom.Point{X: x, Y: 0.012*x*x - 0.8 + 1e-9})
	}
	slices.Reverse(horn)
	r, err = makeable.Measure(geom.Region{horn}, makeable.Options{})
	require.NoError(t, err)
	assert.Greater(t, r.Stroke.Width, 0.5, "a crescent is measured in its belly, not in its horns")
	slot := geom.Region{ring(-20, 0, 20, 0, 20, 50, 0.9, 50, 0.5, 10, -0.5, 10, -0.9, 50, -20, 50)}
	r, err = makeable.Measure(slot, makeable.Options{})
	require.NoError(t, err)
	assert.InDelta(t, 1, r.Counter.Width, 0.05, "a slot is as narrow as its end")
	crotch := geom.Region{ring(-20, 0, 20, 0, 20, 50, 4, 50, 0.5, 10, -0.5, 10, -4, 50, -20, 50)}
	r, err = makeable.Measure(crotch, makeable.Options{})
	require.NoError(t, err)
	assert.False(t, r.Counter.Found(), "the crotch of a V is a corner, cut off or not")
}

func TestAnOutlineTakesTwiceItsReachFromGapsAndCounters(t *testing.T) {
	ink := geom.Region{bar(0, 0, 20, 30), hole(bar(4, 4, 13, 26)), bar(31, 0, 51, 30), hole(bar(36, 5, 46, 25))}
	for _, join := range []outline.Join{outline.Round, outline.Mitre} {
		for _, d := range []float64{0.5, 2, 4, 4.4} {
			layer, err := outline.Offset(ink, d, join)
			require.NoError(t, err)
			r, err := makeable.Measure(layer, makeable.Options{Bare: ink})
			require.NoError(t, err)
			assert.InDelta(t, 9-2*d, r.Counter.Width, 0.001, "%v %g", join, d)
			assert.InDelta(t, 11-2*d, r.Gap.Width, 0.001, "%v %g", join, d)
			assert.InDelta(t, 4+2*d, r.Stroke.Width, 0.001, "%v %g", join, d)
			assert.Empty(t, r.Closed)
		}
	}
}

func TestClosedCountersAreListedWithTheirLetters(t *testing.T) {
	first := geom.Region{bar(0, 0, 20, 30), hole(bar(4, 4, 13, 26))}
	second := geom.Region{bar(31, 0, 51, 30), hole(bar(36, 5, 46, 25))}
	ink := append(slices.Clone(first), second...)
	letters := []makeable.Letter{{Text: "O", Index: 3, Ink: first}, {Text: "D", Index: 4, Ink: second}}
	layer, err := outline.Offset(ink, 4.6, outline.Round)
	require.NoError(t, err)
	r, err := makeable.Measure(layer, makeable.Options{Bare: ink, Letters: letters, LetterHeight: 30})
	require.NoError(t, err)
	require.Len(t, r.Closed, 1)
	assert.Equal(t, "O", r.Closed[0].Letter)
	assert.Equal(t, 3, r.Closed[0].Index)
	assert.InDelta(t, 8.5, r.Closed[0].From.X, 0.1)
	assert.InDelta(t, 10-9.2, r.Counter.Width, 0.001)
	assert.Equal(t, "D", r.Counter.Letter)
	assert.Equal(t, "O3 D4", fmt.Sprint(r.Gap.Letter, r.Gap.Index, " ", r.Gap.Other, r.Gap.OtherIndex))

	got := makeable.Check(r, makeable.Limits{Stroke: 20, Gap: 2, Counter: 1.5, Letter: 38})
	var text []string
	for _, s := range got {
		text = append(text, fmt.Sprintf("%v %.1f of %.1f %s", s.What, s.Measured, s.Required, s.Spot.Letter))
	}
	assert.Equal(t, []string{
		"stroke 14.2 of 20.0 D", "gap 1.8 of 2.0 O", "counter 0.8 of 1.5 D", "closed counter 0.0 of 1.5 O", "letter height 30.0 of 38.0 ",
	}, text)
	assert.Empty(t, makeable.Check(r, makeable.Limits{}), "no limits, no shortfall")
	assert.Empty(t, makeable.Check(r, makeable.Limits{Stroke: 14.2, Gap: 1.8, Letter: 30}), "just enough is enough")
}

func TestWhatThereIsNoneOfFallsShortOfNothing(t *testing.T) {
	r, err := makeable.Measure(geom.Region{bar(0, 0, 3, 40)}, makeable.Options{})
	require.NoError(t, err)
	assert.False(t, r.Gap.Found())
	assert.Equal(t, -1, r.Stroke.Index)
	assert.Empty(t, makeable.Check(r, makeable.Limits{Gap: 5, Counter: 5, Letter: 5}))
}

func TestTheSearchMayEndAtAWidth(t *testing.T) {
	frame := geom.Region{bar(0, 0, 20, 30), hole(bar(4, 5, 15, 24))}
	r, err := makeable.Measure(frame, makeable.Options{UpTo: 5})
	require.NoError(t, err)
	assert.InDelta(t, 4, r.Stroke.Width, 1e-9)
	assert.True(t, !r.Counter.Found() || r.Counter.Width == 11)
}

func TestNothingToMeasureIsAnError(t *testing.T) {
	for _, r := range []geom.Region{nil, {}, {ring(0, 0, math.NaN(), 0, 1, 1)}, {ring(0, 0, math.Inf(1), 0, 1, 1)}} {
		_, err := makeable.Measure(r, makeable.Options{})
		assert.ErrorContains(t, err, "settled region")
	}
}

func TestPlainWords(t *testing.T) {
	assert.Equal(t, "closed counter", makeable.ClosedCounter.String())
	assert.Equal(t, "detail 9", makeable.What(9).String())
}

// TestTheRestIsNamedOnlyWhereNoLetterIsAsNear takes a letter that stands on a
// long bar: the letter's own stroke is thin in one case, the bar in the other.
func TestTheRestIsNamedOnlyWhereNoLetterIsAsNear(t *testing.T) {
	for _, c := range []struct {
		stem, tail float64
		want       string
	}{{3, 5, "I"}, {5, 3, "tail"}} {
		letter := geom.Region{bar(0, -1, c.stem, 30)}
		ink, err := outline.Union(append(slices.Clone(letter), bar(-60, -c.tail, 20, 0)))
		require.NoError(t, err)
		letters := []makeable.Letter{{Text: "I", Ink: letter}, {Text: "tail", Index: 1, Ink: ink, Rest: true}}
		r, err := makeable.Measure(ink, makeable.Options{Letters: letters})
		require.NoError(t, err)
		assert.InDelta(t, 3, r.Stroke.Width, 1e-6)
		assert.Equal(t, c.want, r.Stroke.Letter)
	}
}
