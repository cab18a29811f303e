package legibility_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/legibility"
	"yokeline/lettering/length"
)

// plain replaces the no-break spaces between figure and unit.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

func TestTheSentenceIsPlainAndComplete(t *testing.T) {
	r, err := legibility.Read(203.2, 25.4, "number", length.Centimetre)
	require.NoError(t, err)
	assert.Equal(t, "A 20/20 eye reads the number from 87 m, a 20/40 eye from 43 m: worked out from the measured height and stroke, "+
		"by Snellen's 5 and 1 minutes of arc; glare, motion and colour make it less.", plain(r.Text))
	r, err = legibility.Read(203.2, math.NaN(), "back number", length.Inch)
	require.NoError(t, err)
	assert.Equal(t, "A 20/20 eye reads the back number from 152 yd, a 20/40 eye from 76 yd: worked out from the measured height alone, "+
		"by Snellen's 5 minutes of arc, as the stroke could not be measured; glare, motion and colour make it less.", plain(r.Text))
}

func TestDistancesArePrintedInTheUnitOfTheJob(t *testing.T) {
	for _, c := range []struct {
		name           string
		height, stroke float64
		unit           length.Unit
		want           string
	}{
		{"metres for millimetres", 203.2, 25.4, length.Millimetre, "from 87 m, a 20/40 eye from 43 m"},
		{"yards for inches", 203.2, 25.4, length.Inch, "from 95 yd, a 20/40 eye from 47 yd"},
		{"feet for both where yards are coarse", 50.8, 8, length.Inch, "from 90 ft, a 20/40 eye from 45 ft"},
		{"one decimal below ten", 25.4, 4, length.Centimetre, "from 13 m, a 20/40 eye from 6.8 m"},
		{"next to nothing", 0.1, 0.02, length.Centimetre, "from under 0.1 m, a 20/40 eye from under 0.1 m"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := legibility.Read(c.height, c.stroke, "number", c.unit)
			require.NoError(t, err)
			assert.Contains(t, plain(r.Text), "reads the number "+c.want+":")
		})
	}
}

var printed = regexp.MustCompile(`from ([0-9.]+)\x{00a0}(m|ft|yd), a 20/40 eye from ([0-9.]+)\x{00a0}(m|ft|yd):`)

func TestAPrintedDistanceNeverPromisesMoreThanTheMeasuredOne(t *testing.T) {
	metres := map[string]float64{"m": 1, "ft": 0.3048, "yd": 0.9144}
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(1, 500).Draw(t, "height")
		s := rapid.Float64Range(0.3, 120).Draw(t, "stroke")
		unit := rapid.SampledFrom([]length.Unit{length.Millimetre, length.Centimetre, length.Inch, length.Point}).Draw(t, "unit")
		r := read(t, h, s, unit)
		found := printed.FindStringSubmatch(r.Text)
		require.NotNil(t, found, r.Text)
		assert.Equal(t, found[2], found[4], "one sentence, one unit")
		assert.Equal(t, unit == length.Inch, found[2] != "m")
		for i, want := range []float64{r.Metres20, r.Metres40} {
			figure, err := strconv.ParseFloat(found[1+2*i], 64)
			require.NoError(t, err)
			step := 1.0
			if figure < 10 {
				step = 0.1
			}
			got := figure * metres[found[2]]
			assert.LessOrEqual(t, got, want+1e-6)
			assert.Greater(t, got+step*metres[found[2]], want-1e-6)
		}
	})
}
