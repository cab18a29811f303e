package sheets

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

// inventedRules is a book with no figures; the results of a test name it.
func inventedRules() *rulebook.Rules {
	return &rulebook.Rules{Body: "Tidewater Conference", Sport: "softball", Edition: "rule book 2026", Season: "2027"}
}

func finding(s findings.Severity, place, what, measured, required, rule, how string) findings.Finding {
	return findings.Finding{Severity: s, Place: place, What: what, Measured: measured, Required: required, Rule: rule, Source: "Tidewater Conference, rule book (2026)", How: how}
}

func ruledInput(t require.TestingT, results ...findings.Finding) Input {
	in := blockInput(t, length.Inch, manyRows(15))
	in.Sized.Rules, in.Results = inventedRules(), nil
	for _, f := range results {
		in.Results = append(in.Results, findings.Result{Finding: f})
	}
	return in
}

func TestRulesSayWhatWasMeasuredAndRequired(t *testing.T) {
	in := ruledInput(t,
		finding(findings.Violation, "back number", "number height", "5 15/16 in", "at least 6 in", "4-2a", "read"),
		finding(findings.Advice, "front number", "number height", "3 in", "3 1/2 in or more", "4-2d", "read"),
		finding(findings.Unknown, "", "legal numbers", "", "not known to us", "", ""),
		finding(findings.InOrder, "back number", "number stroke", "3/4 in", "at least 0.75 in", "4-2c", "memory"),
	)
	texts := allText(t, in, (*document).planRules)
	requireInOrder(t, texts, []string{
		"Tidewater Conference softball, rule book 2026, season 2027",
		"To put right", "1", "breaks a rule", "back number height", "5\u00a0¹⁵⁄₁₆\u00a0in", "at least 6\u00a0in", "4-2a",
		"Worth knowing", "1", "advice", "front number height", "3\u00a0in", "4-2d",
		"Could not be checked", "1", "not checked", "legal numbers", "not known to us",
		"In order", "1", "in order", "back number stroke", "¾\u00a0in", "4-2c", parts.MemoryWords,
	})
	assert.Contains(t, strings.Join(texts, " "), "One rule is broken, one piece of advice, one check waits. All else is in order, measured on the finished shapes.")
}

// Only figures from memory are hatched.
func TestRulesHatchOnlyWhatIsFromMemory(t *testing.T) {
	hatched := func(how string) int {
		n := 0
		for _, p := range drawn(t, ruledInput(t, finding(findings.InOrder, "", "zero", "0", "legal", "4-3", how)), (*document).planRules) {
			for _, op := range p.Ops() {
				_, clip := op.(page.Clip)
				n += count(clip)
			}
		}
		return n
	}
	assert.Equal(t, 1, hatched("memory"))
	assert.Zero(t, hatched("read"))
}

func TestRulesAreLeftOutOnlyWhenThereIsNothingToSay(t *testing.T) {
	in := blockInput(t, length.Inch, []row{{"Quill", "7", "M", 0}})
	require.Empty(t, slices.DeleteFunc(slices.Clone(in.Results), func(r findings.Result) bool { return r.Bench }))
	assert.Empty(t, drawn(t, in, (*document).planRules))
	in.Sized.Rules = inventedRules()
	assert.Len(t, drawn(t, in, (*document).planRules), 1, "a book that found nothing")
	in = blockInput(t, length.Inch, []row{{"Quill", "7", "M", 3}})
	text := said(t, in, (*document).planRules)
	assert.Contains(t, text, "No rule book was named, so nothing was checked against one.")
	assert.Contains(t, text, "One piece does not fit yet.")
	assert.NotContains(t, text, "rule is broken")
	assert.NotContains(t, text, "hatched")
}

// Players who share a number are one row, whether a book or only the roster
// says so; the note on the roster and the book's finding are not said twice.
func TestRulesPutClashesInOneRow(t *testing.T) {
	const roster = head + "Aa,0,M\nBb,00,M\nCc,7,M\nDd,7,L\n"
	in := checkedInput(t, edited(t, sampleJob, []string{"units: in", "rules: nfhs-softball\nunits: in"}), roster)
	text := allText(t, in, (*document).planRules)
	requireInOrder(t, text, []string{"To put right", "2", "numbers 0 and 00", "Aa and Bb", "both on the roster", "number 7", "Cc and Dd", "worn by 2 players", "no number twice"})
	plain := allText(t, checkedInput(t, sampleJob, roster), (*document).planRules)
	requireInOrder(t, plain, []string{"To put right", "1", "to put right", "number 7", "Cc and Dd"})
	assert.NotContains(t, strings.Join(plain, " "), "is taken by")
	assert.NotContains(t, strings.Join(plain, " "), "0 and 00")
}

func TestRulesGiveReducedNamesOneRow(t *testing.T) {
	text := allText(t, checkedInput(t, sampleJob, head+"Wojciechowska,1,M\nSamarasinghely,2,M\nBrightwatersby,3,M\n"), (*document).planRules)
	requireInOrder(t, text, []string{"Worth knowing", "1", "letters of the back name", "1\u00a0¾\u00a0in, as asked"})
}

// Long tables turn the page, repeat their heads and lose no row.
func TestRulesFlowOverPages(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var all []findings.Finding
		words := rapid.StringMatching(`[a-z]{2,14}( [a-z]{1,12}){0,9}`)
		severities := []findings.Severity{findings.Violation, findings.Advice, findings.Unknown, findings.InOrder}
		n := rapid.IntRange(0, 20).Draw(t, "rows")
		for i := range n {
			f := finding(rapid.SampledFrom(severities).Draw(t, "severity"), "", fmt.Sprintf("thing %d", i), words.Draw(t, "measured"), words.Draw(t, "required"),
				rapid.SampledFrom([]string{"", "4-2a", "Article 53.05", "Rule 3 section VI", "1-22.7.b.2"}).Draw(t, "rule"), rapid.SampledFrom([]string{"read", "memory"}).Draw(t, "how"))
			f.Remedy = rapid.SampledFrom([]string{"", words.Draw(t, "remedy")}).Draw(t, "has a remedy")
			all = append(all, f)
		}
		in := ruledInput(t, all...)
		pages := drawn(t, in, (*document).planRules)
		seen := map[string]int{}
		for i, p := range pages {
			requireTidy(t, p)
			text := pageText(p)
			require.Contains(t, text, "Rule and source")
			if len(pages) > 1 {
				require.Contains(t, text, fmt.Sprintf("The rules, %d of %d", i+1, len(pages)))
			}
			for _, w := range text {
				seen[w]++
			}
		}
		for i := range n {
			require.Equal(t, 1, seen[fmt.Sprintf("thing %d", i)])
		}
	})
}

func TestLengthsOfMessagesAreSetForThePage(t *testing.T) {
	for text, want := range map[string]string{
		"at least 7 1/2 in":                      "at least 7\u00a0½\u00a0in",
		"11 15/16 in":                            "11\u00a0¹⁵⁄₁₆\u00a0in",
		"3/16 in and 8 in":                       "³⁄₁₆\u00a0in and 8\u00a0in",
		"5.997 in":                               "5.997\u00a0in",
		"20.0 cm, 64 mm":                         "20.0\u00a0cm, 64\u00a0mm",
		"17/64 in":                               "¹⁷⁄₆₄\u00a0in",
		"rule 1/2 inside, 0 to 99, 2 in a shirt": "rule 1/2 inside, 0 to 99, 2\u00a0in a shirt",
	} {
		assert.Equal(t, want, onPage(text))
	}
}

func TestRulesSaysWhatTheGoldenFileSays(t *testing.T) {
	in := checkedInput(t, edited(t, sampleJob, []string{"units: in", "rules: nfhs-softball\nunits: in"}), sampleRoster)
	golden(t, "rules", drawn(t, in, (*document).planRules))
}
