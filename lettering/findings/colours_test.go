package findings_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
)

// lettered returns an order with one back name in the colours.
func lettered(body, ground string, borders ...string) findings.Subject {
	m := findings.NewMeasured("back name", findings.KindName, "QUILL")
	m.BodyColour, m.GarmentHex = body, ground
	for _, b := range borders {
		m.Borders = append(m.Borders, findings.Border{Width: 3, Colour: b})
	}
	s := wearing(m)
	s.Asked = []string{"back name"}
	return s
}

// The greys are those that published contrast tables put on both sides of 3 to
// 1 on white: #949494 has 3.03, #959595 has 2.99 (worked out by the formula of
// WCAG 2.2).
func TestWithoutABookColoursUnderThreeToOneAreAdvice(t *testing.T) {
	assert.Empty(t, about(findings.Check(nil, lettered("#949494", "#ffffff")), "colour of the name"))
	got := about(findings.Check(nil, lettered("#959595", "#ffffff")), "colour of the name")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Advice, got[0].Severity)
	assert.Contains(t, got[0].Measured, "2.9 to 1 on the screen (L* 38, CIEDE2000 ")
	assert.Equal(t, "0.1", got[0].By)
	assert.Equal(t, "at least 3 to 1", got[0].Required)
	assert.Empty(t, got[0].How, "no book is meant")
	assert.Empty(t, about(findings.Check(nil, lettered("#959595", "#ffffff", "#000000")), "colour of the name"), "read by its edge")
	assert.Len(t, about(findings.Check(nil, lettered("#959595", "#ffffff", "#a0a0a0")), "colour of the name"), 1, "an outline as pale does not help")
}

func TestColoursOfAllPiecesOfAPlaceAreOneRow(t *testing.T) {
	s := lettered("#ffff00", "#ffffff")
	s.Players = append(s.Players, s.Players[0], s.Players[0])
	assert.Len(t, about(findings.Check(nil, s), "colour of the name"), 1)
}

func TestARowOnContrastGivesBodyGarmentAndBorder(t *testing.T) {
	m := number("back number", 254)
	m.BodyColour, m.GarmentHex, m.Borders = "#ffffff", "#000000", []findings.Border{{Width: 6.35, Colour: "#808080"}}
	got := about(findings.Check(rules(t, "nfhs-football", "2026", ""), wearing(m)), "colour of the number")
	require.Len(t, got, 1)
	assert.Equal(t, findings.InOrder, got[0].Severity)
	// black and white: 21 to 1, L* 100 and CIEDE2000 100 apart; #808080: L* 53.6
	assert.Contains(t, got[0].Measured, "21.0 to 1 on the screen (L* 100, CIEDE2000 100)")
	assert.Contains(t, got[0].Measured, "; border to garment 5.3 to 1 (L* 53, ")
	assert.Contains(t, got[0].Measured, ", to body 3.9 to 1 (L* 46, ")
}

func TestADigitStyleIsNeverPassedByTheProgram(t *testing.T) {
	m := number("back number", 254)
	m.Face = "graduate"
	got := about(findings.Check(rules(t, "nfhs-ice-hockey", "2016-17", ""), wearing(m)), "digit style")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Unknown, got[0].Severity)
	assert.Equal(t, "graduate", got[0].Measured)
	assert.Equal(t, "gothic digits", got[0].Required)
	assert.Contains(t, got[0].Remedy, "look at the digits on the proof")
}

func TestHowHighANumberSitsIsMeasuredAndLeftToPeople(t *testing.T) {
	m := number("front number", 254)
	m.CentreOffset, m.DownOffset = 0, -50.8
	got := about(findings.Check(rules(t, "nfhs-boys-lacrosse", "2026", ""), wearing(m)), "centring up and down")
	require.NotEmpty(t, got)
	assert.Equal(t, findings.Unknown, got[0].Severity)
	assert.Equal(t, "up to 2 in over the middle between neck seam and hem", got[0].Measured)
}

func TestWhereABookIsSilentOnTheBorderTheTopIsHeldBothWays(t *testing.T) {
	m := number("front number", 101.6)
	m.BelowCollar, m.Borders = 5.1*25.4, []findings.Border{{Width: 6.35}}
	got := about(findings.Check(rules(t, "nfhs-volleyball", "2026", ""), wearing(m)), "distance below the collar")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Unknown, got[0].Severity)
	assert.Equal(t, "5 1/8 in without the border, 4 7/8 in with it", got[0].Measured)
}
