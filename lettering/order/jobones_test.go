package order

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const onesJob = `yokeline: 1
team: Herons
sport: softball
garment: {cut: crew-tee, colour: "#ffffff"}
pieces:
  back name: {height: 2in}
  back number: {height: 8in, ones: full width}
  front number: {height: 4in, ones: own width}
players:
  - {name: Quist, number: 17, size: M}
`

func TestOnesOfANumber(t *testing.T) {
	job, faults := ReadJob("job.yaml", []byte(onesJob))
	require.Empty(t, faults)
	assert.True(t, job.Order.Pieces[1].FullOnes)
	assert.False(t, job.Order.Pieces[2].FullOnes)

	for _, c := range []struct{ from, to, at, message string }{
		{"full width", "full", "job.yaml:7:36", `back number: ones: "full" is not a room for a 1`},
		{"full width", "[a]", "job.yaml:7:36", "back number: ones must be a single value, not a list"},
		{"name: {height: 2in", "name: {height: 2in, ones: own width", "job.yaml:6:28", "ones"},
	} {
		_, faults := ReadJob("job.yaml", []byte(strings.Replace(onesJob, c.from, c.to, 1)))
		require.Len(t, faults, 1, c.to)
		assert.Equal(t, c.at, faults[0].Place.String(), faults[0].Error())
		assert.Contains(t, faults[0].Message, c.message)
	}
}
