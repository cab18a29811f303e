package order

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"yokeline/lettering/length"
)

func TestListsReadAsSentences(t *testing.T) {
	assert.Equal(t, []string{"", "a", "a or b", "a, b or c"}, []string{list(nil), list([]string{"a"}), list([]string{"a", "b"}), list([]string{"a", "b", "c"})})
}

func TestHeightsAreCalledAsJobsCallThem(t *testing.T) {
	assert.Equal(t, []string{"length", "by size", "by rule", "largest"}, []string{ByLength.String(), BySize.String(), ByRule.String(), Largest.String()})
}

func TestUnitsHaveTheirWords(t *testing.T) {
	for word, want := range map[string]length.Unit{"in": length.Inch, "inches": length.Inch, "cm": length.Centimetre, "centimeters": length.Centimetre} {
		assert.Equal(t, want, readGood(t, short+"units: "+word+"\n").Order.Units)
	}
}

func TestColumnsHaveTheLettersOfSpreadsheets(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		assert.Equal(t, want, columnName(i))
		assert.Equal(t, i, columnOf(want+"1"))
	}
	assert.Equal(t, -1, columnOf("1"))
}
