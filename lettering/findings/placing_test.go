package findings_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
)

func placed(m findings.Measured, p findings.Placing) findings.Subject {
	p.Size = "youth S"
	m.Placing = &p
	return findings.Subject{Units: length.Inch, Players: []findings.Wearer{{Player: "Ng", Pieces: []findings.Measured{m}}}}
}

func TestAPieceWithoutRoomNamesPlayerSizeWhyAndRemedy(t *testing.T) {
	m := findings.NewMeasured("back name", findings.KindName, "NG")
	m.Verdict, m.Height, m.Width, m.OverBy = "over", 44.45, 60, 60
	got := findings.Check(nil, placed(m, findings.Placing{NoRoom: "keeps clear of the yoke seam", Mends: []string{"straight", "size youth XL", "leave it off"}}))
	require.Len(t, got, 1, "it is not reported as too wide as well")
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Equal(t, "Ng", got[0].Player)
	assert.Equal(t, "none on size youth S: keeps clear of the yoke seam", got[0].Measured)
	assert.Equal(t, "room for 1 3/4 in high", got[0].Required)
	assert.Equal(t, "choose for the back name of Ng: straight; size youth XL; leave it off", got[0].Remedy)
}

func TestStacksAndPlacketsAreReported(t *testing.T) {
	number := findings.NewMeasured("back number", findings.KindNumber, "88")
	number.Verdict = "full"
	team := findings.NewMeasured("front name", findings.KindText, "HERONS")
	team.Verdict = "full"
	for _, c := range []struct {
		piece    findings.Measured
		placing  findings.Placing
		severity findings.Severity
		measured string
	}{
		{number, findings.Placing{Stack: []string{"gap 1/4 in", "letters 2 in"}}, findings.Advice, "gap 1/4 in, then letters 2 in"},
		{number, findings.Placing{Short: 25.4}, findings.Violation, "lacks 1 in on size youth S with gap, letters and digits at their smallest"},
		{number, findings.Placing{TooNear: 6.35}, findings.Advice, "number 1/4 in too near the name"},
		{team, findings.Placing{Straddle: []string{"R", "O"}}, findings.Violation, "R, O of HERONS on the opening or its clearance"},
		{team, findings.Placing{Straddle: []string{"R", "O"}, Parted: [2]string{"HER", "ONS"}}, findings.Advice, "parted as HER and ONS; whole, R, O would lie on the opening or its clearance"},
	} {
		got := findings.Check(nil, placed(c.piece, c.placing))
		require.Len(t, got, 1, c.measured)
		assert.Equal(t, c.severity, got[0].Severity)
		assert.Equal(t, c.measured, got[0].Measured)
		assert.Contains(t, got[0].Remedy, "Ng")
	}
	assert.True(t, math.IsNaN(number.Limit))
}

func TestANameIsNeverSaidToBePartedElsewhereWhereItIsPartedNow(t *testing.T) {
	for _, c := range []struct {
		halves [2]string
		mend   string
	}{
		{[2]string{"Ott", "ers"}, "look at the halves on the front name of Ng; split: at 4 parts it elsewhere"},
		{[2]string{"Ot", "t"}, "look at the halves on the front name of Ng; split: at 1 parts it elsewhere"},
		{[2]string{"Red", "T ide"}, "look at the halves on the front name of Ng; split: at 4 parts it elsewhere"},
		{[2]string{"O", "t"}, "look at the halves on the front name of Ng"},
	} {
		m := findings.NewMeasured("front name", findings.KindText, c.halves[0]+c.halves[1])
		got := findings.Check(nil, placed(m, findings.Placing{Straddle: []string{"t"}, Parted: c.halves}))
		require.Len(t, got, 1)
		assert.Equal(t, c.mend, got[0].Remedy)
	}
}
