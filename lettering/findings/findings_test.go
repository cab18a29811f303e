package findings_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

func number(place string, height float64) findings.Measured {
	m := findings.NewMeasured(place, findings.KindNumber, "12")
	m.Height, m.TallestDigit = height, height
	return m
}

func TestAFindingSaysWhoWhatByHowMuchAndWhatToDo(t *testing.T) {
	got := about(findings.Check(rules(t, "nfhs-boys-lacrosse", "2026", ""), wearing(number("back number", 7.5*25.4))), "number height")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Finding{
		Severity: findings.Violation, Player: "Quill", Place: "back number", What: "number height",
		Measured: "7 1/2 in", Required: "at least 8 in", Rule: "1-9-1h(3)", Season: "2026", Source: "NFHS, Comments on the rules (2026)", How: "read",
		By: "1/2 in", Remedy: "make it at least 8 in: the back number of Quill is 7 1/2 in high",
	}, got[0].Finding)
}

func TestFindingsPrintAsTheContractSays(t *testing.T) {
	results := findings.Check(rules(t, "nfhs-boys-lacrosse", "2026", ""), wearing(number("back number", 190.5)))
	data, err := json.Marshal(findings.Findings(results))
	require.NoError(t, err)
	for _, key := range []string{"severity", "player", "place", "what", "measured", "required", "rule", "source", "how"} {
		assert.Equal(t, len(findings.Findings(results)), strings.Count(string(data), `"`+key+`":`), key)
	}
	assert.NotContains(t, string(data), "in order")
	empty, err := json.Marshal(findings.Findings(nil))
	require.NoError(t, err)
	assert.Equal(t, "[]", string(empty))
}

func TestAFigureFromMemorySaysSoAndAsksToBeConfirmed(t *testing.T) {
	r := rules(t, "nfhs-baseball", "2026", "")
	got := about(findings.Check(r, wearing(number("back number", 190.5))), "number height")
	require.Len(t, got, 1)
	assert.Equal(t, "memory", got[0].How)
	assert.Contains(t, got[0].Remedy, "confirm it in the current book")
	assert.Contains(t, got[0].Source, "not seen")
	kept := about(findings.Check(r, wearing(number("back number", 203.2))), "number height")
	require.Len(t, kept, 1)
	assert.Equal(t, findings.InOrder, kept[0].Severity)
	assert.Equal(t, "memory", kept[0].How, "a pass by memory must not look like one by the book")
}

func TestWhatIsNotKnownIsSaidOnceAndNeverPasses(t *testing.T) {
	s := findings.Subject{Units: length.Inch}
	for i := range 15 {
		name := findings.NewMeasured("back name", findings.KindName, "QUILL")
		name.Height = 50.8
		s.Players = append(s.Players, findings.Wearer{
			Player: fmt.Sprint("player ", i), Name: "Quill", Number: fmt.Sprint(i + 1), Pieces: []findings.Measured{number("back number", 152.4), number("sleeve number", 76), name},
		})
	}
	results := findings.Check(rules(t, "obr-mlb", "2026", ""), s)
	for what, place := range map[string]string{
		"legal numbers": "", "duplicate numbers": "", "number stroke": "back number, sleeve number", "number border": "back number, sleeve number",
		"letter height of names": "", "colour of the number": "",
	} {
		got := about(results, what)
		require.Len(t, got, 1, what)
		assert.Equal(t, findings.Unknown, got[0].Severity, what)
		assert.Equal(t, place, got[0].Place, what)
		assert.NotEmpty(t, got[0].Source, what)
	}
	heights := about(results, "number height")
	require.Len(t, heights, 2, "in order on the back, not known on the sleeve")
	assert.Equal(t, "sleeve number", heights[0].Place)
	assert.Equal(t, findings.Unknown, heights[0].Severity)
}

func TestABookThatPrintsNoFigureIsToldFromOneWeDoNotKnow(t *testing.T) {
	got := about(findings.Check(rules(t, "little-league", "2026", ""), wearing(number("back number", 10))), "number height")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Unknown, got[0].Severity)
	assert.Equal(t, "the book gives no figure", got[0].Required)
}

// TestWhatWasNotMeasuredNeverPasses gives every book a number and a name of
// which nothing was measured.
func TestWhatWasNotMeasuredNeverPasses(t *testing.T) {
	lengths := map[string]bool{}
	for _, what := range whats {
		lengths[what] = true
	}
	for _, what := range []string{"number border", "widest border"} {
		delete(lengths, what) // a piece without outlines has no border to measure
	}
	for _, id := range rulebook.IDs() {
		s := wearing(
			findings.NewMeasured("back number", findings.KindNumber, "12"), findings.NewMeasured("front number", findings.KindNumber, "12"),
			findings.NewMeasured("back name", findings.KindName, "QUILL"))
		for _, r := range findings.Check(rules(t, id, "2026", ""), s) {
			if lengths[r.What] || r.What == "centring" || r.What == "shape of the name" || r.What == "level of first and last letter" {
				assert.Equal(t, findings.Unknown, r.Severity, "%s %s %s", id, r.What, r.Measured)
			}
		}
	}
}

func TestWithoutARuleBookOnlyWhatNeedsNoneIsReported(t *testing.T) {
	over := findings.NewMeasured("back name", findings.KindName, "WOJCIECHOWSKI")
	over.Height, over.Asked, over.Width, over.Limit, over.OverBy, over.Verdict = 38.1, 63.5, 300, 279.4, 20.6, "over"
	reduced := findings.NewMeasured("back name", findings.KindName, "LINDQVIST")
	reduced.Height, reduced.Asked, reduced.Verdict = 50, 63.5, "reduced"
	s := findings.Subject{
		Units: length.Inch,
		Players: []findings.Wearer{
			{Player: "Adair", Pieces: []findings.Measured{reduced}}, {Player: "Quill", Pieces: []findings.Measured{over}},
		},
		Notes: []findings.Note{{Severity: findings.Advice, Player: "Pell", What: "size", Message: "no size in row 9", Remedy: "write a size for Pell"}},
	}
	got := findings.Check(nil, s)
	require.Len(t, got, 3)
	assert.Equal(t, findings.Finding{
		Severity: findings.Violation, Player: "Quill", Place: "back name", What: "name width", Measured: "11 13/16 in", Required: "at most 11 in",
		By: "13/16 in", Remedy: "choose a way out for Quill: WOJCIECHOWSKI is wider than the room by 13/16 in",
	}, got[0].Finding)
	assert.Equal(t, "no size in row 9", got[1].Measured)
	assert.Equal(t, "1 15/16 in", got[2].Measured)
	assert.Equal(t, findings.Violation, findings.Worst(got))
	assert.Equal(t, findings.InOrder, findings.Worst(nil))
}

func TestResultsComeHeaviestFirstAndTheSameEveryTime(t *testing.T) {
	s := findings.Subject{Units: length.Inch}
	for i := range 40 {
		s.Players = append(s.Players, findings.Wearer{Player: fmt.Sprint(i), Number: fmt.Sprint(i % 20), Pieces: []findings.Measured{number("back number", 140+float64(i%3)*12)}})
	}
	r := rules(t, "nfhs-softball", "2027", "")
	first := findings.Check(r, s)
	weight := map[findings.Severity]int{findings.Violation: 0, findings.Advice: 1, findings.Unknown: 2, findings.InOrder: 3}
	for i := 1; i < len(first); i++ {
		assert.LessOrEqual(t, weight[first[i-1].Severity], weight[first[i].Severity])
	}
	for range 5 {
		assert.Equal(t, first, findings.Check(r, s))
	}
}

func TestPlayersWithOneCauseAreOneRowForPeople(t *testing.T) {
	s := findings.Subject{Units: length.Inch}
	for i := range 15 {
		s.Players = append(s.Players, findings.Wearer{Player: fmt.Sprint("P", i), Number: fmt.Sprint(i), Pieces: []findings.Measured{number("back number", 127)}})
	}
	results := findings.Check(rules(t, "nfhs-softball", "2027", ""), s)
	require.Len(t, about(results, "number height"), 15, "one finding a player")
	row := groupAbout(t, findings.Grouped(results, 15), "number height")
	assert.Equal(t, "all 15 players", row.Who)
	assert.Len(t, row.Players, 15)
	assert.Equal(t, 15, row.Of)
	assert.Equal(t, "make it at least 6 in: the back number of all 15 players is 5 in high", row.Remedy)

	for i := range 11 {
		s.Players[i].Pieces = []findings.Measured{number("back number", 160)}
	}
	row = groupAbout(t, findings.Grouped(findings.Check(rules(t, "nfhs-softball", "2027", ""), s), 15), "number height")
	assert.Equal(t, "P11, P12 and 2 more", row.Who)
	s.Players[13].Pieces, s.Players[14].Pieces = s.Players[0].Pieces, s.Players[0].Pieces
	row = groupAbout(t, findings.Grouped(findings.Check(rules(t, "nfhs-softball", "2027", ""), s), 15), "number height")
	assert.Equal(t, "P11 and P12", row.Who)
}

func groupAbout(t *testing.T, groups []findings.Group, what string) findings.Group {
	t.Helper()
	var out []findings.Group
	for _, g := range groups {
		if g.What == what {
			out = append(out, g)
		}
	}
	require.Len(t, out, 1)
	return out[0]
}

func TestNumbersAreText(t *testing.T) {
	for _, c := range []struct {
		book, season string
		numbers      []string
		what         string
		want         findings.Severity
	}{
		{"wftda", "2026", []string{"7", "07", "007"}, "duplicate numbers", findings.InOrder},
		{"ncaa-softball", "2026", []string{"1", "01"}, "duplicate number", findings.Violation},
		{"nfhs-softball", "2026", []string{"0", "00"}, "0 and 00 together", findings.Violation},
		{"nfhs-softball", "2026", []string{"0", "00"}, "legal numbers", findings.Unknown},
		{"uefa-equipment", "2026", []string{"0"}, "zero", findings.Unknown},
		{"uefa-equipment", "2026", []string{"07"}, "leading zero", findings.Unknown},
		{"uefa-equipment", "2026", []string{"A1"}, "legal number", findings.Violation},
		{"uefa-equipment", "2026", []string{"1"}, "reserved number", findings.Advice},
		{"fivb-volleyball", "2026", []string{"0"}, "legal number", findings.Violation},
		{"fivb-volleyball", "2026", []string{"00"}, "legal number", findings.Violation},
		{"fivb-volleyball", "2026", []string{"x"}, "legal number", findings.Violation},
		{"nfhs-basketball", "2026-27", []string{"000"}, "legal number", findings.Violation},
		{"nfhs-basketball", "2026-27", []string{"6"}, "legal number", findings.Violation},
		{"nfhs-field-hockey", "2026", []string{"00"}, "legal numbers", findings.InOrder},
		{"nfhs-field-hockey", "2026", []string{"01"}, "leading zero", findings.Unknown},
		{"obr-mlb", "2026", []string{"7", "07"}, "leading zero", findings.Unknown},
		{"bcci-ipl-cricket", "2026", []string{"7", "07"}, "leading zero", findings.Unknown},
		{"edjba-juniors-au", "2026", []string{"0", "00"}, "0 and 00 together", findings.Unknown},
		{"obr-mlb", "2026", []string{"12345678901234567890"}, "legal numbers", findings.Unknown},
		{"usav-indoor", "2026", []string{"12345678901234567890"}, "legal number", findings.Violation},
	} {
		p := published{Numbers: c.numbers}
		got := about(findings.Check(rules(t, c.book, c.season, ""), p.subject(t)), c.what)
		require.NotEmpty(t, got, "%v", c)
		assert.Equal(t, c.want, got[0].Severity, "%v", c)
	}
}

func TestAPlayerWithoutANumberIsReportedOnceAndAKeeperMayBeExempt(t *testing.T) {
	s := findings.Subject{Units: length.Inch, Players: []findings.Wearer{{Player: "Quill"}, {Player: "Adair", Role: "goalkeeper"}}}
	got := about(findings.Check(rules(t, "nfhs-soccer", "2026", ""), s), "number")
	require.Len(t, got, 1)
	assert.Equal(t, "Quill", got[0].Player)
	assert.Len(t, about(findings.Check(rules(t, "nfhs-football", "2026", ""), s), "number"), 2)
}

func TestAPlaceThatIsNotMadeHereIsLeftToTheShop(t *testing.T) {
	got := about(findings.Check(rules(t, "nfhs-ice-hockey", "2026", ""), wearing(number("back number", 254), number("sleeve number", 101.6))), "required place")
	require.Len(t, got, 3)
	assert.Equal(t, findings.Unknown, got[0].Severity)
	assert.Equal(t, "captain mark", got[0].Place)
}

func TestARecommendedPlaceIsAdvice(t *testing.T) {
	got := about(findings.Check(rules(t, "ncaa-softball", "2026", ""), wearing(number("back number", 152.4))), "required place")
	require.Len(t, got, 2)
	assert.Equal(t, "front number", got[0].Place)
	assert.Equal(t, findings.Advice, got[0].Severity)
}

func TestCentringIsHeldAgainstTheMiddle(t *testing.T) {
	for off, want := range map[float64]findings.Severity{0: findings.InOrder, 1: findings.InOrder, -1: findings.InOrder, 1.1: findings.Violation, -4: findings.Violation, math.NaN(): findings.Unknown} {
		m := number("back number", 254)
		m.CentreOffset = off
		got := about(findings.Check(rules(t, "nfhs-football", "2026", ""), wearing(m)), "centring")
		require.Len(t, got, 1)
		assert.Equal(t, want, got[0].Severity, "%f", off)
	}
}

func BenchmarkCheckTenThousandPlayers(b *testing.B) {
	book, err := rulebook.Load("nfhs-basketball")
	require.NoError(b, err)
	r, err := book.In("2026-27")
	require.NoError(b, err)
	s := findings.Subject{Units: length.Inch}
	for i := range 10_000 {
		m := number("back number", 150+float64(i%7))
		m.StrokeThin, m.StrokeMain, m.CentreOffset, m.BodyColour, m.GarmentHex = 19, 20, 0, "#ffffff", "#14284b"
		s.Players = append(s.Players, findings.Wearer{Player: fmt.Sprint("P", i), Number: fmt.Sprint(i % 60), Pieces: []findings.Measured{m, number("front number", 102)}})
	}
	for b.Loop() {
		findings.Check(r, s)
	}
}

// TestAFigureThatTheBookDoesNotPrintLimitsNothingAndPassesNothing gives a book
// that was read and prints nothing at all.
func TestAFigureThatTheBookDoesNotPrintLimitsNothingAndPassesNothing(t *testing.T) {
	text := "yokeline rules: 1\nid: bare\nbody: Bare League\nsport: softball\nlevel: club\nedition: \"2027\"\nplayed: spring\n" +
		"sources:\n  page: {title: Page, publisher: Bare League, kind: primary}\nfigures:\n"
	for _, about := range []struct{ about, figure string }{
		{"numbers", "at most"}, {"numbers", "digits allowed"}, {"numbers", "only"}, {"numbers", "zero"}, {"numbers", "duplicates"},
		{"back number", "required"}, {"back number", "height at least"}, {"back number", "stroke at least"}, {"back number", "borders at most"},
		{"back number", "centred"}, {"names", "height at least"}, {"names", "required"}, {"names", "side of number"}, {"names", "straight"}, {"contrast", "ratio at least"},
	} {
		text += fmt.Sprintf("  - {about: %s, figure: %s, is: none printed, source: page, how: read}\n", about.about, about.figure)
	}
	book, faults := rulebook.Read("bare.yaml", []byte(text))
	require.Empty(t, faults)
	r, err := book.In("2027")
	require.NoError(t, err)
	name := findings.NewMeasured("back name", findings.KindName, "QUILL")
	name.Height = 50.8
	s := wearing(number("back number", 254), name)
	s.Players = append(s.Players, findings.Wearer{Player: "Adair", Number: "12"})
	for _, result := range findings.Check(r, s) {
		assert.Equal(t, findings.Unknown, result.Severity, "%+v", result)
	}
}

func TestANameThatMayStandOnEitherSideOrHasNoNumberBesideItIsInOrder(t *testing.T) {
	name := findings.NewMeasured("back name", findings.KindName, "QUILL")
	name.NumberGap = math.Inf(1)
	got := findings.Check(rules(t, "uefa-equipment", "2026", ""), wearing(name))
	assert.Equal(t, findings.InOrder, findings.Worst(about(got, "side of the number")))
	name.Side = "below"
	assert.Equal(t, findings.InOrder, findings.Worst(about(findings.Check(rules(t, "nfhs-field-hockey", "2026", ""), wearing(name)), "side of the number")))
	assert.Empty(t, about(findings.Check(rules(t, "nfhs-field-hockey", "2026", ""), wearing(name)), "gap between name and number"), "there is no number to keep away from")
}

func TestAMissingNameIsReportedWhereNamesAreRequired(t *testing.T) {
	got := about(findings.Check(rules(t, "bcci-ipl-cricket", "2026", ""), wearing(number("back number", 250))), "name")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Equal(t, "add the name of Quill", got[0].Remedy)
}

func TestTheRulesUnitStandsBesideTheJobsWhereTheyDiffer(t *testing.T) {
	got := about(findings.Check(rules(t, "wfdf", "2026", ""), wearing(number("back number", 159.99))), "number height")
	require.Len(t, got, 1)
	assert.Equal(t, "6 1/4 in (15.9 cm)", got[0].Measured)
	assert.Equal(t, "at least 16 cm", got[0].Required)
}

func TestANameThatIsLowOnlyForTheLookIsNoFinding(t *testing.T) {
	alike := findings.NewMeasured("back name", findings.KindName, "NG")
	alike.Height, alike.Asked, alike.Alone, alike.Verdict = 50, 63.5, 63.5, "reduced"
	both := alike
	both.Alone = 55
	s := findings.Subject{Units: length.Inch, Players: []findings.Wearer{
		{Player: "Adair", Pieces: []findings.Measured{alike}}, {Player: "Quill", Pieces: []findings.Measured{both}},
	}}
	got := findings.Check(nil, s)
	require.Len(t, got, 1)
	assert.Equal(t, "Quill", got[0].Player)
	assert.Equal(t, "2 1/8 in", got[0].Measured, "the height it reaches by itself")
}
