package findings_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/rulebook"
)

// worstOf returns what the check makes of one number as such.
func worstOf(t *testing.T, r *rulebook.Rules, number string) findings.Severity {
	t.Helper()
	results := findings.Check(r, published{Numbers: []string{number}}.subject(t))
	got := append(about(results, "legal number"), about(results, "legal numbers")...)
	return findings.Worst(append(got, about(results, "zero")...))
}

// TestTheRangeOfEveryBookIsHeldAtItsEnds takes the number at each end of each
// book's range, and the ones beyond.
func TestTheRangeOfEveryBookIsHeldAtItsEnds(t *testing.T) {
	ends := 0
	for _, id := range rulebook.IDs() {
		r := rules(t, id, "2026", "")
		n := r.Numbers
		bad := func(f *rulebook.Figure) findings.Severity {
			if f.Advice {
				return findings.Advice
			}
			return findings.Violation
		}
		if n.Max != nil {
			ends++
			assert.Equal(t, findings.InOrder, worstOf(t, r, strconv.Itoa(n.Max.Count)), id)
			assert.Equal(t, bad(n.Max), worstOf(t, r, strconv.Itoa(n.Max.Count+1)), id)
		}
		if n.Min != nil && n.Min.Count > 0 {
			ends++
			assert.Equal(t, findings.InOrder, worstOf(t, r, strconv.Itoa(n.Min.Count)), id)
			if !n.Zero.Says("legal") {
				assert.Equal(t, bad(n.Min), worstOf(t, r, strconv.Itoa(n.Min.Count-1)), id)
			}
		}
		if n.Zero.Says("legal") && n.Max != nil {
			assert.Equal(t, findings.InOrder, worstOf(t, r, "0"), "%s: named as legal, whatever the range starts with", id)
		}
	}
	assert.Greater(t, ends, 40)
}

func TestAMaximumIsHeldAgainstTheTallestDigit(t *testing.T) {
	m := number("back number", 254) // 10 in, the maximum
	m.TallestDigit = 256
	got := about(findings.Check(rules(t, "tyfa-football", "2026", ""), wearing(m)), "number height")
	require.NotEmpty(t, got)
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Equal(t, "at most 10 in", got[0].Required)
	assert.Equal(t, "10 1/8 in", got[0].Measured)
}

func TestTheWidestBorderIsHeldWhereverItStands(t *testing.T) {
	m := number("front number", 101.6)
	m.Borders = []findings.Border{{Width: 7}, {Width: 2}}
	got := about(findings.Check(rules(t, "nfhs-basketball", "2026-27", ""), wearing(m)), "widest border")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Equal(t, "5/16 in", got[0].Measured)
}

func TestABorderThatIsTheGarmentsColourDoesNotMakeANumberStandOut(t *testing.T) {
	m := number("back number", 254)
	m.BodyColour, m.GarmentHex, m.Borders = "#14284b", "#14284b", []findings.Border{{Width: 6.35, Colour: "#14284b"}}
	assert.Equal(t, findings.Violation, findings.Worst(about(findings.Check(rules(t, "nfhs-football", "2023", ""), wearing(m)), "colour of the number")))
	m.Borders[0].Colour = "#ffffff"
	assert.Equal(t, findings.InOrder, findings.Worst(about(findings.Check(rules(t, "nfhs-football", "2023", ""), wearing(m)), "colour of the number")))
}

func TestALeadingZeroIsNoQuestionWhereTheBookSaysWhatIsTheSame(t *testing.T) {
	for _, id := range []string{"wftda", "ncaa-softball", "wfdf"} {
		results := findings.Check(rules(t, id, "2026", ""), published{Numbers: []string{"7", "07"}}.subject(t))
		assert.Empty(t, about(results, "leading zero"), id)
	}
}
