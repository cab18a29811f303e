package order_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/order"
)

const lettersJob = `yokeline: 1
team: Herons
garment: {cut: two-button, colour: "#14284b"%s}
pieces:
  back number: {height: 8in}
players:
- {number: 7, size: M}
`

func TestLettersOfAnotherSystemNeedTheMakersSheet(t *testing.T) {
	for text, advised := range map[string]bool{
		"": false, ", letters: EN": false, ", letters: US": true, ", letters: US, spec: makers.csv": false,
	} {
		job, faults := order.ReadJob("job.yaml", fmt.Appendf(nil, lettersJob, text))
		require.Empty(t, faults, text)
		said := false
		for _, n := range job.Order.Notes {
			said = said || n.What == "garment" && n.Severity == order.Advice
		}
		assert.Equal(t, advised, said, text)
	}
	_, faults := order.ReadJob("job.yaml", fmt.Appendf(nil, lettersJob, ", letters: UK"))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Error(), "job.yaml:3:")
	assert.Contains(t, faults[0].Error(), "EN")
}
