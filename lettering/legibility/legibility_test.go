package legibility_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/legibility"
	"yokeline/lettering/length"
)

const (
	feet      = 0.3048 // metres, exact
	inch      = 25.4   // millimetres, exact
	unmeasure = "unmeasured stroke"
)

func read(t require.TestingT, height, stroke float64, unit length.Unit) legibility.Reading {
	r, err := legibility.Read(height, stroke, "number", unit)
	require.NoError(t, err)
	return r
}

func TestDistanceTurnsAnglesWithAnExactTangentBackExactly(t *testing.T) {
	// Plane geometry: tan 45° = 1, tan 60° = √3, tan 30° = 1/√3, tan 15° = 2 − √3.
	for _, c := range []struct{ degrees, tangent float64 }{
		{15, 2 - math.Sqrt(3)}, {30, 1 / math.Sqrt(3)}, {45, 1}, {60, math.Sqrt(3)},
	} {
		assert.InDelta(t, 1/c.tangent, legibility.Distance(1000, c.degrees*60), 1e-12, "%g°", c.degrees)
	}
	// tan 5′ worked out apart from the code, to eight places.
	assert.InDelta(t, 0.00145444, 1/legibility.Distance(1000, 5), 5e-9)
}

// Heights that others print for a distance and an angle. The tolerance is half
// of the last digit printed, except where the note says otherwise.
func TestPrintedLetterHeightsSubtendTheAngleTheirSourceGives(t *testing.T) {
	for _, c := range []struct {
		source                      string
		mm, minutes, metres, within float64
	}{
		{"Snellen chart (reference page): 20/20 line at 20 ft, 8.87 mm", 8.87, 5, 20 * feet, 0.005},
		{"Snellen chart (reference page): topmost E at 20 ft, 88.7 mm, ten times the 20/20 letter", 88.7, 50, 20 * feet, 0.05},
		// 8.8 mm and 9 mm are printed for 6 m; the exact height is 8.73 mm, so the first is rounded up.
		{"Snellen letter at 6 m, 8.8 mm", 8.8, 5, 6, 0.1},
		// The source cuts 26.60 mm to whole millimetres.
		{"American Academy of Ophthalmology, Snellen letters: 20/60 line at 20 ft, 26 mm", 26, 5, 60 * feet, 1},
		{"Fox, Sensation and Perception, chapter abstract: 1.45 mm at 1 m", 1.45, 5, 1, 0.005},
	} {
		t.Run(c.source, func(t *testing.T) {
			// mm ± within at this angle must straddle the distance.
			assert.Less(t, legibility.Distance(c.mm-c.within, c.minutes), c.metres)
			assert.Greater(t, legibility.Distance(c.mm+c.within, c.minutes), c.metres)
		})
	}
}

func TestDistanceAgreesWithPublishedFormulas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.3, 300).Draw(t, "metres")
		minutes := rapid.Float64Range(0.5, 30).Draw(t, "minutes")
		// NUREG-0700: height = 6.283 · D · MA / 21600, the small-angle form with 2π cut to 6.283.
		assert.InEpsilon(t, d, legibility.Distance(1000*6.283*d*minutes/21600, minutes), 6e-5)

		// NBS Technical Note 1180 (Howett 1983), from memory: stroke = 1.45e-5 · S · D, S the Snellen
		// denominator; 1.454e-5 exactly, hence 0.4 %. A tall thin figure, so that the stroke decides.
		for _, eye := range []struct {
			s    float64
			seen func(legibility.Reading) float64
		}{
			{20, func(r legibility.Reading) float64 { return r.Metres20 }},
			{40, func(r legibility.Reading) float64 { return r.Metres40 }},
		} {
			stroke := 1000 * 1.45e-5 * eye.s * d
			assert.InEpsilon(t, d, eye.seen(read(t, 8*stroke, stroke, length.Centimetre)), 0.004)
		}
	})
	// NUREG-0700 prints distance × 0.004 for 15 minutes and × 0.006 for 20, one digit each.
	assert.InDelta(t, 0.004, 1/legibility.Distance(1000, 15), 0.0005)
	assert.InDelta(t, 0.006, 1/legibility.Distance(1000, 20), 0.0005)
}

// Heights in mm with both limits and the strain-free distance in metres, worked
// out apart from this code from height = distance · tan(angle) with the AAO's 5
// minutes and ISO 9241-3's 16, printed to 0.1 m.
func TestNumberHeightsGiveTheDistancesWorkedOutForThem(t *testing.T) {
	for _, c := range []struct{ mm, m20, m40, strainFree, minutesAt50, minutesAt30 float64 }{
		{80, 55.0, 27.5, 17.2, 5.50, 9.17},
		{100, 68.8, 34.4, 21.5, 6.88, 11.46},
		{150, 103.1, 51.6, 32.2, 10.31, 17.19},
		{160, 110.0, 55.0, 34.4, 11.00, 18.33},
		{200, 137.5, 68.8, 43.0, 13.75, 22.92},
		{250, 171.9, 85.9, 53.7, 17.19, 28.65},
		{300, 206.3, 103.1, 64.5, 20.63, 34.38},
		{350, 240.6, 120.3, 75.2, 24.06, 40.11},
	} {
		r := read(t, c.mm, c.mm/4, length.Centimetre)
		assert.Equal(t, legibility.ByHeight, r.By)
		assert.InDelta(t, c.m20, r.Metres20, 0.051, "%g mm", c.mm)
		assert.InDelta(t, c.m40, r.Metres40, 0.051, "%g mm", c.mm)
		assert.InDelta(t, c.strainFree, legibility.Distance(c.mm, legibility.StrainFreeMinutes), 0.051, "%g mm", c.mm)
		assert.InEpsilon(t, 50, legibility.Distance(c.mm, c.minutesAt50), 0.001)
		assert.InEpsilon(t, 30, legibility.Distance(c.mm, c.minutesAt30), 0.001)
	}
}

func TestSignRulesOfThumbLieNearTheTwentyFortyEye(t *testing.T) {
	// Sign rules give a height for a distance at which most drivers read, so
	// they lie between a 20/20 and a strain-free reading, near 20/40.
	for _, c := range []struct {
		source string
		feet   float64 // for each inch of letter
		within float64 // of the 20/40 distance, which is 28.6 ft for each inch
	}{
		{"MUTCD 2000/2003 section 2A.14: 1 in of letter for 40 ft", 40, 0.29},
		{"California Building Code 11B-703.8.4 exception: 1 in for 30 ft", 30, 0.05},
	} {
		r := read(t, inch, inch/4, length.Inch)
		assert.Less(t, c.feet*feet, r.Metres20, c.source)
		assert.InEpsilon(t, c.feet*feet, r.Metres40, c.within, c.source)
		assert.Greater(t, c.feet*feet, legibility.Distance(inch, legibility.StrainFreeMinutes), c.source)
	}
}

func TestTheSmallerOfHeightAndStrokeDecides(t *testing.T) {
	for _, c := range []struct {
		name           string
		height, stroke float64
		by             string
		metres20       float64
	}{
		{"a stroke of a fifth is Snellen's letter", 200, 40, legibility.ByHeight, 137.510},
		{"a thicker stroke does not carry further", 200, 60, legibility.ByHeight, 137.510},
		{"a stroke of an eighth is lost first", 200, 25, legibility.ByStroke, 85.944},
		{"just under a fifth", 200, 39.99, legibility.ByStroke, 137.476},
		{unmeasure, 200, math.NaN(), legibility.ByHeight, 137.510},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := read(t, c.height, c.stroke, length.Centimetre)
			assert.Equal(t, c.by, r.By)
			assert.InDelta(t, c.metres20, r.Metres20, 0.001)
			assert.Equal(t, c.name == unmeasure, strings.Contains(r.Text, "could not be measured"))
		})
	}
}

func TestReadingKeepsItsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(1, 500).Draw(t, "height")
		s := rapid.Float64Range(0.2, 120).Draw(t, "stroke")
		k := rapid.Float64Range(1.01, 5).Draw(t, "factor")
		r := read(t, h, s, length.Inch)
		assert.Equal(t, r.Metres20, 2*r.Metres40, "20/40 is half by definition")
		assert.InEpsilon(t, k*r.Metres20, read(t, k*h, k*s, length.Inch).Metres20, 1e-9, "distance grows with size")
		assert.GreaterOrEqual(t, read(t, k*h, s, length.Inch).Metres20, r.Metres20)
		assert.GreaterOrEqual(t, read(t, h, k*s, length.Inch).Metres20, r.Metres20)
		assert.LessOrEqual(t, r.Metres20, read(t, h, math.NaN(), length.Inch).Metres20, "a known stroke never helps")
		assert.Equal(t, r, read(t, h, s, length.Inch), "same input, same result")
		other := read(t, h, s, length.Millimetre)
		other.Text = r.Text
		assert.Equal(t, r, other, "the unit changes the sentence alone")
	})
}

func TestWhatIsNotALengthIsAnError(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, h := range []float64{0, -1, inf, -inf, nan} {
		_, err := legibility.Read(h, 20, "front number", length.Inch)
		assert.ErrorContains(t, err, "reading distance of the front number: its height is")
	}
	for _, s := range []float64{0, -1, inf, -inf} {
		_, err := legibility.Read(200, s, "name", length.Inch)
		assert.ErrorContains(t, err, "reading distance of the name: its stroke is")
	}
}

func TestContrastIsSaidInWords(t *testing.T) {
	assert.Contains(t, legibility.Contrast, "close in lightness")
	assert.NotRegexp(t, `\d`, legibility.Contrast, "no figure without a source")
}
