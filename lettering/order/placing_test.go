package order

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
)

// withNumber returns the full job with its front number replaced.
func withNumber(words string) string {
	return strings.Replace(full, "below: 5cm, limit: 20cm", words, 1)
}

func frontNumber(t *testing.T, words string) Piece {
	for _, p := range readGood(t, withNumber(words)).Order.Pieces {
		if p.Place == garment.FrontNumber {
			return p
		}
	}
	t.Fatal("no front number")
	return Piece{}
}

func TestDistancesAndHeightsMayDifferByGroupAndSize(t *testing.T) {
	p := frontNumber(t, "below: {default: 3 1/2in, youth: 2 1/2in, YXS: 2in, women's S: 3in}")
	for size, want := range map[garment.Size]string{
		{Group: garment.Adult, Letter: "M"}: "3 1/2in", {Group: garment.Youth, Letter: "M"}: "2 1/2in",
		{Group: garment.Youth, Letter: "XS"}: "2in", {Group: garment.Women, Letter: "S"}: "3in", {Group: garment.Women, Letter: "M"}: "3 1/2in",
	} {
		require.NotNil(t, p.BelowFor(size), size)
		assert.Equal(t, mm(t, want), *p.BelowFor(size), size)
	}
	plain := frontNumber(t, "below: {XS: 2in}")
	assert.Nil(t, plain.BelowFor(garment.Size{Group: garment.Adult, Letter: "M"}), "the table decides where nothing is said")
	assert.Equal(t, mm(t, "2in"), *plain.BelowFor(garment.Size{Group: garment.Youth, Letter: "XS"}), "a bare letter is of the job's own group, here youth")
	assert.Nil(t, plain.BelowFor(garment.Size{Group: garment.Adult, Letter: "XS"}))

	text := strings.Replace(full, "{height: 4in, ", "{height: {default: by size, youth: 3in}, ", 1)
	for _, p := range readGood(t, text).Order.Pieces {
		if p.Place == garment.FrontNumber {
			assert.Equal(t, BySize, p.HeightFor(garment.Size{Group: garment.Adult, Letter: "M"}).By)
			assert.Equal(t, Height{ByLength, mm(t, "3in")}, p.HeightFor(garment.Size{Group: garment.Youth, Letter: "M"}))
		}
	}
}

func TestSlipsInDistancesBySizeAreNamedAtTheirPlace(t *testing.T) {
	for words, want := range map[string]string{
		"below: {yuoth: 2in}":              "did you mean youth?",
		"below: {youth: 2}":                "youth",
		"below: {YXS: 2in, youth XS: 3in}": "same size as another key",
		"below: {youth: 2000mm}":           "out of reach",
		"below: [2in]":                     "single value",
		"at: left":                         "is not a side",
		"split: at 3":                      "front number takes no split",
	} {
		_, faults := ReadJob("job.yaml", []byte(withNumber(words)), WithFaces("oswald", "graduate", "yellowtail"), WithRules("nfhs-softball"))
		require.NotEmpty(t, faults, words)
		assert.Contains(t, faults[0].Message+" "+faults[0].Hint, want, words)
		assert.Equal(t, 20, faults[0].Place.Line, words)
		assert.Greater(t, faults[0].Place.Column, 20, words)
	}
	_, faults := ReadJob("job.yaml", []byte(strings.Replace(full, "height: 2 1/2in,", "height: {default: 2 1/2in, youth: 1in},", 1)),
		WithFaces("oswald", "graduate", "yellowtail"), WithRules("nfhs-softball"))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Message, "1 in is below the lowest letter height of fit")
}

func TestASideAndASplitAreReadInTheTradesWords(t *testing.T) {
	buttoned := strings.Replace(full, "cut: two-button", "cut: full-button", 1)
	assert.Equal(t, AtLeft, frontNumber(t, "at: wearer's left").At)
	for words, want := range map[string]Piece{"split: at 3": {SplitAt: 3}, "split: no": {Unsplit: true}} {
		job := readGood(t, strings.Replace(buttoned, "tail: true", words, 1))
		for _, p := range job.Order.Pieces {
			if p.Place == garment.FrontName {
				assert.Equal(t, want.SplitAt, p.SplitAt, words)
				assert.Equal(t, want.Unsplit, p.Unsplit, words)
			}
		}
	}
	for _, words := range []string{"split: at 0", "split: 3", "split: at last", "split: at 6"} {
		_, faults := ReadJob("job.yaml", []byte(strings.Replace(buttoned, "tail: true", words, 1)), WithRules("nfhs-softball"))
		assert.NotEmpty(t, faults, words)
	}
	_, faults := ReadJob("job.yaml", []byte(strings.Replace(full, "tail: true", "split: at 3", 1)), WithRules("nfhs-softball"))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Message, "a two-button has no opening")
}
