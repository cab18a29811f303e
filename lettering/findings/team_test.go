package findings_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
)

// team is one player a height, the last of whom is the libero.
func team(heights ...float64) findings.Subject {
	s := findings.Subject{Units: length.Inch}
	for i, h := range heights {
		m := number("back number", h)
		m.BodyColour = "#ffffff"
		w := findings.Wearer{Player: []string{"Adair", "Quill", "Okafor"}[i], Number: "12", Pieces: []findings.Measured{m}}
		if i == len(heights)-1 {
			w.Role = "libero"
		}
		s.Players = append(s.Players, w)
	}
	return s
}

func TestATeamsNumbersAreOneHeightWithinAHundredthOfAMillimetre(t *testing.T) {
	college, club := rules(t, "ncaa-womens-volleyball", "2026", ""), rules(t, "usav-indoor", "2026", "")
	for _, test := range []struct {
		name           string
		heights        []float64
		college, club  findings.Severity
		measured, lack string
	}{
		{"all alike", []float64{152.4, 152.4, 152.4}, findings.InOrder, findings.InOrder, "one height and colour", ""},
		{"as near as pieces are sized", []float64{152.4, 152.41 - nm, 152.4}, findings.InOrder, findings.InOrder, "one height and colour", ""},
		{"a little farther", []float64{152.4, 152.41 + nm, 152.4}, findings.Violation, findings.Violation, "", ""},
		{"the libero alone", []float64{152.4, 152.4, 203.2}, findings.Violation, findings.InOrder, "6 in to 8 in high", "2 in"},
		{"one not measured", []float64{152.4, math.NaN(), 152.4}, findings.Unknown, findings.Unknown, "not measured", ""},
	} {
		got := about(findings.Check(college, team(test.heights...)), "alike in the team")
		require.Len(t, got, 1, test.name)
		assert.Equal(t, test.college, got[0].Severity, test.name)
		assert.Equal(t, test.lack, map[bool]string{true: got[0].By}[test.lack != ""], test.name)
		if test.measured != "" {
			assert.Equal(t, test.measured, got[0].Measured, test.name)
		}
		got = about(findings.Check(club, team(test.heights...)), "alike in the team")
		require.Len(t, got, 1, test.name)
		assert.Equal(t, test.club, got[0].Severity, test.name)
	}
	other := team(152.4, 152.4)
	other.Players[0].Pieces[0].BodyColour = "#14284b"
	assert.Equal(t, findings.Violation, findings.Worst(about(findings.Check(college, other), "alike in the team")))
}

// The level of the end letters may lie on the edge of the number, and not 1 nm
// past it; the upper half ends on its middle.
func TestALevelOnTheEdgeIsKeptAndOneNanometrePastItIsNot(t *testing.T) {
	hockey := rules(t, "nfhs-field-hockey", "2026", "")
	for clear, want := range map[float64]findings.Severity{
		0: findings.InOrder, nm: findings.InOrder, -nm: findings.Violation, math.Inf(1): findings.InOrder, math.NaN(): findings.Unknown,
	} {
		m := findings.NewMeasured("back name", findings.KindName, "QUILL")
		m.Side, m.EndsClear = "above", clear
		assert.Equal(t, want, findings.Worst(about(findings.Check(hockey, wearing(m)), "end letters beside the number")), "%g", clear)
	}
	volleyball := rules(t, "nfhs-volleyball", "2029", "")
	for _, test := range []struct {
		foot, middle float64
		want         findings.Severity
	}{
		{0, -50, findings.InOrder}, {nm, -50, findings.Unknown}, {nm, 0, findings.Unknown}, {50, nm, findings.Violation}, {math.NaN(), 0, findings.Unknown},
	} {
		m := number("front number", 101.6)
		m.HalfFoot, m.DownOffset = test.foot, test.middle
		got := about(findings.Check(volleyball, wearing(m)), "upper half")
		require.Len(t, got, 1)
		assert.Equal(t, test.want, got[0].Severity, "%g %g", test.foot, test.middle)
	}
}

func TestHeightsOfLongAndShortNamesAreExact(t *testing.T) {
	women := rules(t, "world-paravolley-sitting", "2026", "women")
	for name, high := range map[string]float64{"BRIGHTMOOR": 40, "ÅKERSTRÖMS": 40, "MOOR": 60, "DE LA ROSA": 60} {
		for by, want := range map[float64]findings.Severity{-nm: findings.Violation, 0: findings.InOrder, nm: findings.Violation} {
			m := findings.NewMeasured("back name", findings.KindName, name)
			m.Height = high + by
			all := findings.Check(women, wearing(m))
			got := append(about(all, "letter height"), about(all, "letter height for its length")...)
			assert.Equal(t, want, findings.Worst(got), "%s %g", name, by)
			if by != 0 {
				assert.Len(t, got, 1, "a height that is none of the book's is said once")
			}
		}
		strokes := about(findings.Check(women, wearing(findings.NewMeasured("back name", findings.KindName, name))), "stroke of the letters")
		require.Len(t, strokes, 1, name)
		assert.Equal(t, findings.Unknown, strokes[0].Severity)
		assert.Equal(t, "measure the strokes by hand on 1 piece", strokes[0].Remedy)
	}
}
