package order_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
)

const clearJob = `yokeline: 1
team: Herons
garment:
  cut: two-button
  colour: "#14284b"
  clear: %s
pieces:
  back number: {height: 8in}
players:
- {number: 7, size: M}
`

func TestTheJobGivesTheMarginsToKeepClear(t *testing.T) {
	for text, want := range map[string]garment.Margins{
		"{seam: 1/2in, placket: 3cm, hem: 40mm}": {Seam: 12.7, Hard: 30, Hem: 40},
		"{underarm: 60mm, fold: 1mm}":            {Underarm: 60, Fold: 1},
		"{seam: 15cm}":                           {Seam: 150},
		"":                                       {},
	} {
		job, faults := order.ReadJob("job.yaml", fmt.Appendf(nil, clearJob, text))
		require.Empty(t, faults, text)
		assert.Equal(t, want, job.Order.Garment.Clear, text)
		size := garment.Size{Group: garment.Adult, Letter: "M"}
		g, err := job.Order.Garment.In(size)
		require.NoError(t, err)
		usual, err := garment.New(garment.TwoButton, size)
		require.NoError(t, err)
		with, err := usual.With(want)
		require.NoError(t, err)
		assert.Equal(t, with.Margins(), g.Margins(), text)
	}
}

func TestAMarginThatCannotBeIsAFaultWithItsPlace(t *testing.T) {
	for text, want := range map[string]string{
		"{seam: 12}":      "job.yaml:6:17: garment: clear: seam: \"12\" has no unit",
		"{hem: 0mm}":      "job.yaml:6:16: garment: clear: hem: 0 mm is out of reach",
		"{placket: 20cm}": "job.yaml:6:20: garment: clear: placket: 20 cm is out of reach",
		"{seams: 12mm}":   "job.yaml:6:11: unknown key \"seams\" in garment: clear",
		"12mm":            "job.yaml:6:10: garment: clear must be a list of keys and values",
	} {
		_, faults := order.ReadJob("job.yaml", fmt.Appendf(nil, clearJob, text))
		require.Len(t, faults, 1, text)
		assert.Contains(t, faults[0].Error(), want, text)
	}
}
