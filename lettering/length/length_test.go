package length_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/length"
)

func TestParseReadsLengthsAsShopsWriteThem(t *testing.T) {
	for text, nm := range map[string]int64{
		"2.5in": 63_500_000, "2 1/2in": 63_500_000, `2-1/2"`: 63_500_000, "2½ in": 63_500_000, "2½″": 63_500_000,
		" 2 1/2 Inches ": 63_500_000, "½in": 12_700_000, "1/64in": 396_875, "8in": 203_200_000, "203.2mm": 203_200_000,
		"64mm": 64_000_000, "6.4cm": 64_000_000, "72pt": 25_400_000, "1pt": 352_778, "0mm": 0, "2\u00a01/2\u00a0in": 63_500_000,
	} {
		l, err := length.Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, nm, l.Nanometres(), text)
	}
}

func TestParseRefusesWhatIsNotALength(t *testing.T) {
	for text, words := range map[string]string{
		"":         "missing",
		"2.5":      "no unit",
		"12":       "write 12in, 12mm or 12cm",
		"in":       "missing or too long",
		"two in":   "unexpected",
		"-3mm":     "unexpected",
		"3ft":      "use in, mm, cm or pt",
		"1/0in":    "not a fraction",
		"/2in":     "not a fraction",
		"1 2in":    "without a fraction",
		"1.5 1/2":  "no unit",
		"1 3/2in":  "less than one",
		"1e9mm":    "unexpected",
		"200000cm": "more than 100 m",
		"٣mm":      "unexpected",
		"1..2mm":   "not a figure",
	} {
		_, err := length.Parse(text)
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), words, text)
	}
}

func TestEightInchesEqualTheirMillimetresExactly(t *testing.T) {
	inches, _ := length.Parse("8in")
	mm, _ := length.Parse("203.2mm")
	assert.Zero(t, inches.Compare(mm))
	longer, _ := length.Parse("203.200001mm")
	assert.Equal(t, -1, inches.Compare(longer))
	assert.Equal(t, 1, longer.Compare(inches))
	assert.Equal(t, length.Inches(8, 1), inches)
	assert.Equal(t, "16 in", inches.Add(mm).String())
}

func TestStringKeepsTheUnitAsWritten(t *testing.T) {
	for text, want := range map[string]string{
		"2.5in": "2 1/2 in", "3/16in": "3/16 in", "8in": "8 in", "0.3in": "0.3 in", "6.40cm": "6.4 cm", "64mm": "64 mm", "18pt": "18 pt",
	} {
		l, err := length.Parse(text)
		require.NoError(t, err)
		assert.Equal(t, want, l.String())
	}
}

func TestPagePrintsFractionsAndOneDecimal(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		unit length.Unit
		r    length.Rounding
		want string
	}{
		{63.5, length.Inch, length.Nearest, "2 ½ in"},
		{11.9375 * 25.4, length.Inch, length.Nearest, "11 ¹⁵⁄₁₆ in"},
		{19.05, length.Inch, length.Nearest, "¾ in"},
		{203.2, length.Inch, length.Nearest, "8 in"},
		{203.1, length.Inch, length.Down, "7 ¹⁵⁄₁₆ in"},
		{203.3, length.Inch, length.Up, "8 ¹⁄₁₆ in"},
		{203.2, length.Inch, length.Up, "8 in"},
		{203.2, length.Inch, length.Down, "8 in"},
		{64, length.Centimetre, length.Nearest, "6.4 cm"},
		{200, length.Centimetre, length.Nearest, "20.0 cm"},
		{64.9, length.Centimetre, length.Down, "6.4 cm"},
		{-6.35, length.Inch, length.Nearest, "-¼ in"},
	} {
		assert.Equal(t, strings.ReplaceAll(c.want, " ", "\u00a0"), length.Page(c.mm, c.unit, c.r))
	}
	assert.Equal(t, "11 15/16 in", length.Plain(11.9375*25.4, length.Inch, length.Nearest))
	assert.Equal(t, "5.997 in", length.Exact(5.997*25.4, length.Inch))
	assert.Equal(t, "20.001 cm", length.Exact(200.01, length.Centimetre))
}

func TestWhatIsPrintedReadsBackAsTheSameLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 64*400).Draw(t, "sixty-fourths")
		l := length.Inches(n, 64)
		back, err := length.Parse(l.String())
		require.NoError(t, err)
		assert.Equal(t, l, back)
		page, err := length.Parse(length.Page(l.MM(), length.Inch, length.Down))
		if err == nil { // built fractions (¹⁵⁄₁₆) are for paper and are not read back
			assert.LessOrEqual(t, page.Compare(l), 0)
		}
	})
}

func TestRoundingNeverHidesAFault(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(0.1, 900).Draw(t, "mm")
		down, err := length.Parse(length.Plain(mm, length.Inch, length.Down))
		require.NoError(t, err)
		up, err := length.Parse(length.Plain(mm, length.Inch, length.Up))
		require.NoError(t, err)
		assert.LessOrEqual(t, down.MM(), mm+1e-7)
		assert.GreaterOrEqual(t, up.MM(), mm-1e-7)
		assert.LessOrEqual(t, math.Abs(up.MM()-down.MM()), 25.4/16+1e-9)
	})
}

func FuzzParseNeverPanicsAndReadsItsOwnOutput(f *testing.F) {
	for _, seed := range []string{"2 1/2in", `2-1/2"`, "2½ in", "64mm", "6.4cm", "18pt", "1/0in", "2.5", ""} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := length.Parse(text)
		if err != nil {
			require.Zero(t, l.Nanometres())
			return
		}
		require.GreaterOrEqual(t, l.Nanometres(), int64(0))
		back, err := length.Parse(l.String())
		require.NoError(t, err, "%q printed as %q", text, l)
		require.InDelta(t, l.MM(), back.MM(), 0.0001)
	})
}
