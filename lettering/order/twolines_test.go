package order

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestANameTypedInTwoLinesKeepsThem(t *testing.T) {
	for name, c := range map[string]struct{ cell, name, lines string }{
		"one line":         {"Ito", "Ito", ""},
		"two lines":        {"\"De la\nCruz\"", "De la Cruz", "De la\nCruz"},
		"after a hyphen":   {"\"Quist-\r\nHalvor\"", "Quist-Halvor", "Quist-\nHalvor"},
		"break at the end": {"\"Ito\n\"", "Ito", ""},
	} {
		roster, faults := ReadRoster("roster.csv", []byte("Name on back,Number,Size\n"+c.cell+",7,M\n"), "", RosterOptions{})
		require.Empty(t, faults, name)
		require.Len(t, roster.Players, 1, name)
		assert.Equal(t, c.name, roster.Players[0].Name, name)
		assert.Equal(t, c.lines, roster.Players[0].Lines, name)
		if c.lines != "" {
			require.Len(t, roster.Notes, 1, name)
			assert.Contains(t, roster.Notes[0].Message, "two lines, as it was typed: ")
		}
	}
}

func TestThreeLinesAreAFault(t *testing.T) {
	_, faults := ReadRoster("roster.csv", []byte("Name,Number,Size\n\"De\nla\nCruz\",7,M\n"), "", RosterOptions{})
	require.Len(t, faults, 1)
	assert.Equal(t, "a name in 3 lines: at most two are set", faults[0].Message)
}

func TestTheBreakOfAWholeNameIsNotThatOfTheBack(t *testing.T) {
	roster, faults := ReadRoster("roster.csv", []byte("Player,Number,Size\n\"Ana\nCruz\",7,M\n"), "", RosterOptions{})
	require.Empty(t, faults)
	assert.Equal(t, "Cruz", roster.Players[0].Name)
	assert.Empty(t, roster.Players[0].Lines)
}

const linesJob = `yokeline: 1
team: Herons
garment: {cut: crew-tee, colour: "#ffffff"}
pieces:
  back name: {height: 2in, prefix: raised}
  front name: {text: "Alder\nPoint", height: 2in}
fit: {arc: team}
players:
  - {name: "De la\nCruz", number: 7, size: M}
`

func TestAJobMayTypeLinesToo(t *testing.T) {
	job, faults := ReadJob("job.yaml", []byte(linesJob))
	require.Empty(t, faults)
	assert.Equal(t, "De la\nCruz", job.Order.Players[0].Lines)
	assert.Equal(t, "De la Cruz", job.Order.Players[0].Label())
	assert.Equal(t, "Alder\nPoint", job.Order.Pieces[1].Text)
	assert.True(t, job.Order.Pieces[0].RaisePrefix)
	assert.False(t, job.Order.Pieces[1].RaisePrefix)
	assert.Equal(t, "team", job.Order.Fit.Arc)
	assert.Equal(t, "team", job.Order.Fit.Same, "the default")
}
