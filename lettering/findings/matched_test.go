package findings_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
)

func TestANameThatDoesNotMatchTheSignedOnesIsSaid(t *testing.T) {
	m := findings.NewMeasured("back name", findings.KindName, "WOJCIECHOWSKIMANN")
	m.Height, m.Asked, m.Unmatched, m.Verdict = 50.8, 63.5, 63.5, "reduced"
	s := findings.Subject{Units: length.Inch, Players: []findings.Wearer{{Player: "Jo W", Name: "W", Pieces: []findings.Measured{m}}}}
	var got []findings.Finding
	for _, r := range findings.Check(nil, s) {
		if r.What == "letters beside the signed ones" {
			got = append(got, r.Finding)
		}
	}
	require.Len(t, got, 1)
	assert.Equal(t, findings.Advice, got[0].Severity)
	assert.Equal(t, [3]string{"2 in", "2 1/2 in as signed", "1/2 in"}, [3]string{got[0].Measured, got[0].Required, got[0].By})
	assert.Contains(t, got[0].Remedy, "Jo W")

	m.Unmatched = 0
	s.Players[0].Pieces[0] = m
	for _, r := range findings.Check(nil, s) {
		assert.NotEqual(t, "letters beside the signed ones", r.What)
	}
}
