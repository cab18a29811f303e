package garment

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestParseSizeReadsWhatCoachesWrite(t *testing.T) {
	for text, want := range map[string]Size{
		"YM": {Youth, "M"}, "Y-M": {Youth, "M"}, "y m": {Youth, "M"}, "Youth M": {Youth, "M"}, "Yth Med": {Youth, "M"},
		"YL": {Youth, "L"}, "youth large": {Youth, "L"}, "YS": {Youth, "S"}, "Y/S": {Youth, "S"}, "YXL": {Youth, "XL"},
		"Youth X-Large": {Youth, "XL"}, "YXS": {Youth, "XS"}, "M youth": {Youth, "M"}, "L (youth)": {Youth, "L"},
		"Kids S": {Youth, "S"}, "Boys' L": {Youth, "L"}, "Girl’s M": {Youth, "M"}, "Children's XS": {Youth, "XS"}, "youthm": {Youth, "M"},
		"Youth Boys M": {Youth, "M"}, "YT SM": {Youth, "S"},
		"Small": {Adult, "S"}, "Sm": {Adult, "S"}, "sm.": {Adult, "S"}, "S": {Adult, "S"}, "Med": {Adult, "M"}, "m": {Adult, "M"}, " M ": {Adult, "M"},
		"MEDIUM": {Adult, "M"}, "AL": {Adult, "L"}, "Adult L": {Adult, "L"}, "A-XL": {Adult, "XL"}, "AS": {Adult, "S"}, "Adult Small": {Adult, "S"},
		"Lg": {Adult, "L"}, "Lrg": {Adult, "L"}, "large": {Adult, "L"}, "Men's L": {Adult, "L"}, "Mens XL": {Adult, "XL"}, "Unisex M": {Adult, "M"},
		"XS": {Adult, "XS"}, "X-Small": {Adult, "XS"}, "extra small": {Adult, "XS"}, "xsmall": {Adult, "XS"},
		"XL": {Adult, "XL"}, "X-Large": {Adult, "XL"}, "X L": {Adult, "XL"}, "Extra Large": {Adult, "XL"}, "xlarge": {Adult, "XL"},
		"2XL": {Adult, "2XL"}, "XXL": {Adult, "2XL"}, "XX-Large": {Adult, "2XL"}, "2X": {Adult, "2XL"}, "2 XL": {Adult, "2XL"}, "2X-Large": {Adult, "2XL"},
		"xx large": {Adult, "2XL"}, "Double XL": {Adult, "2XL"}, "A2XL": {Adult, "2XL"}, "extra extra large": {Adult, "2XL"},
		"XXXL": {Adult, "3XL"}, "3X": {Adult, "3XL"}, "3XL": {Adult, "3XL"}, "3xlarge": {Adult, "3XL"}, "4XL": {Adult, "4XL"}, "XXXXL": {Adult, "4XL"}, "4x": {Adult, "4XL"},
		"Women's XL": {Women, "XL"}, "Womens XL": {Women, "XL"}, "WXL": {Women, "XL"}, "Ladies M": {Women, "M"}, "W M": {Women, "M"}, "WM": {Women, "M"},
		"WL": {Women, "L"}, "W2XL": {Women, "2XL"}, "women’s 3xl": {Women, "3XL"}, "Lady's S": {Women, "S"}, "Wmn L": {Women, "L"}, "M women": {Women, "M"},
		"Ｍ": {Adult, "M"}, "Ｙ－Ｌ": {Youth, "L"}, "Size M": {Adult, "M"}, "sz: YL": {Youth, "L"}, "XL - adult": {Adult, "XL"},
	} {
		got, err := ParseSize(text, Adult)
		if assert.NoError(t, err, text) {
			assert.Equal(t, want, got, text)
		}
	}
}

func TestParseSizeTakesTheFallbackGroupOnlyWhenNoneIsWritten(t *testing.T) {
	for _, g := range Groups() {
		got, err := ParseSize("medium", g)
		require.NoError(t, err)
		assert.Equal(t, Size{g, "M"}, got)
		got, err = ParseSize("YM", g)
		require.NoError(t, err)
		assert.Equal(t, Size{Youth, "M"}, got)
	}
	_, err := ParseSize("M", "")
	assert.ErrorContains(t, err, "does not say for whom")
}

func TestParseSizeRefusesWhatIsUnclearAndSaysWhatIsUnderstood(t *testing.T) {
	for text, why := range map[string]string{
		"": "no size is given", "  ": "no size is given", "size": "no size is given", "-": "no size is given",
		"10-12": "is a number", "14": "is a number", "Youth 10/12": "is a number",
		"S/M": "more than one letter", "M/L": "more than one letter", "M or L": "more than one letter",
		"youth": "names a group but no letter", "Women's": "names a group but no letter", "mens": "names a group but no letter",
		"adult youth M": "names two groups", "Youth M adult": "names two groups",
		"LT": "is not understood", "XLT": "is not understood", "tall L": "only understood in part", "one size": "is not understood", "OSFA": "is not understood",
		"X": "is not understood", "XXS": "is not understood", "5XL": "is not understood", "1X": "is not understood", "ML": "is not understood",
		"junior M": "only understood in part", "tbd": "is not understood", "?": "no size is given", "Ⅿ": "is not understood",
	} {
		_, err := ParseSize(text, Adult)
		if assert.Error(t, err, text) {
			assert.ErrorContains(t, err, why, text)
			assert.ErrorContains(t, err, "adult L", "%q: the error lists what is understood", text)
		}
	}
}

func TestParseSizeRefusesSizesThatAGroupIsNotMadeIn(t *testing.T) {
	for text, made := range map[string]string{"Y2XL": "XS S M L XL", "youth 3X": "XS S M L XL", "W4XL": "XS S M L XL 2XL 3XL"} {
		_, err := ParseSize(text, Adult)
		if assert.Error(t, err, text) {
			assert.ErrorContains(t, err, "there is no", text)
			assert.ErrorContains(t, err, made, text)
		}
	}
}

func TestWrittenSizesReadBackAsThemselves(t *testing.T) {
	require.Len(t, AllSizes(), 20)
	for _, s := range AllSizes() {
		for _, text := range []string{s.String(), s.Label(), strings.ToLower(s.String()), s.Letter + " " + string(s.Group)} {
			got, err := ParseSize(text, s.Group)
			require.NoError(t, err, text)
			assert.Equal(t, s, got, text)
		}
	}
}

func TestSizesAreOrderedByGroupAndThenFromSmallToLarge(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		shuffled := rapid.Permutation(AllSizes()).Draw(rt, "sizes")
		slices.SortFunc(shuffled, Size.Compare)
		assert.Equal(rt, AllSizes(), shuffled)
	})
	assert.Negative(t, Size{Adult, "4XL"}.Compare(Size{"", "M"}), "an unknown size comes last")
}

func TestLabelsOfAllSizesDiffer(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range AllSizes() {
		assert.False(t, seen[s.Label()], s.Label())
		seen[s.Label()] = true
	}
}

func FuzzParseSize(f *testing.F) {
	for _, s := range []string{"YM", "Youth M", "Women's XL", "2 XL", "X-Large", "10-12", "S/M", "", "Yth Med", "wxxl", "Ｍ", "\xff", "men's", "a a a", "x x x l", "xxxxxxxl"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseSize(text, Women)
		if err != nil {
			assert.NotEmpty(t, err.Error())
			assert.Equal(t, Size{}, got)
			return
		}
		assert.NoError(t, got.check(), text)
		again, err := ParseSize(got.String(), "")
		assert.NoError(t, err)
		assert.Equal(t, got, again)
		if utf8.ValidString(text) {
			upper, err := ParseSize(strings.ToUpper(text), Women)
			if strings.EqualFold(strings.ToUpper(text), text) {
				assert.NoError(t, err, text)
				assert.Equal(t, got, upper, text)
			}
		}
	})
}
