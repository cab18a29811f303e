package findings_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/findings"
	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
)

// nm is the smallest step a length has.
const nm = 1e-6

// setters put a length where a figure of that name looks for it. They are
// written by name, apart from the engine's own table.
var setters = map[string]func(*findings.Measured, float64){
	"height":             func(m *findings.Measured, v float64) { m.Height, m.TallestDigit = v, v },
	"stroke":             func(m *findings.Measured, v float64) { m.StrokeThin, m.StrokeMain = v, v },
	"digit width":        func(m *findings.Measured, v float64) { m.NarrowestDigit = v },
	"width of 1 digit":   func(m *findings.Measured, v float64) { m.Text, m.Width = "1", v },
	"width of 2 digits":  func(m *findings.Measured, v float64) { m.Text, m.Width = "12", v },
	"width of 3 digits":  func(m *findings.Measured, v float64) { m.Text, m.Width = "123", v },
	"gap between digits": func(m *findings.Measured, v float64) { m.Text, m.DigitGap = "12", v },
	"border":             func(m *findings.Measured, v float64) { m.Borders = []findings.Border{{Width: v}} },
	"each border":        func(m *findings.Measured, v float64) { m.Borders = []findings.Border{{Width: 0.1}, {Width: v}} },
	"below collar":       func(m *findings.Measured, v float64) { m.BelowCollar = v },
	"gap to number":      func(m *findings.Measured, v float64) { m.NumberGap = v },
	"width":              func(m *findings.Measured, v float64) { m.Width = v },
}

var whats = map[string]string{
	"height": "number height", "stroke": "number stroke", "digit width": "digit width", "border": "number border",
	"width of 1 digit": "number width", "width of 2 digits": "number width", "width of 3 digits": "number width",
	"gap between digits": "gap between digits", "each border": "widest border", "below collar": "distance below the collar",
	"gap to number": "gap between name and number", "width": "name width", "names height": "letter height",
}

// one returns what the check says about a piece with one length set.
func one(t *testing.T, r *rulebook.Rules, about, stem string, v float64) findings.Severity {
	t.Helper()
	m := findings.NewMeasured(about, findings.KindNumber, "12")
	what := whats[stem]
	if about == "names" {
		m = findings.NewMeasured("back name", findings.KindName, "QUILL")
		if stem == "height" {
			what = whats["names height"]
		}
	}
	setters[stem](&m, v)
	s := findings.Subject{Units: length.Inch, Players: []findings.Wearer{{Player: "Quill", Number: "12", Pieces: []findings.Measured{m}}}}
	var got []findings.Result
	for _, result := range findings.Check(r, s) {
		if result.What == what {
			got = append(got, result)
		}
	}
	require.NotEmpty(t, got, "%s %s", about, stem)
	return findings.Worst(got)
}

// TestEveryPrintedLimitIsExact holds a piece 1 nm under, at, and 1 nm over
// every length of every book, in every season in which it changes.
func TestEveryPrintedLimitIsExact(t *testing.T) {
	tested := 0
	for _, id := range rulebook.IDs() {
		book, err := rulebook.Load(id)
		require.NoError(t, err)
		for _, season := range seasonsOf(book) {
			for _, category := range append(book.Categories(), "") {
				r, err := book.InFor(season, category)
				require.NoError(t, err)
				for _, f := range r.Figures {
					tested += atTheLimit(t, r, f)
				}
			}
		}
	}
	assert.Greater(t, tested, 300)
	t.Logf("%d limits held at three lengths each", tested)
}

func seasonsOf(b *rulebook.Book) []string {
	out := []string{"2026"}
	for _, f := range b.Figures {
		if f.From != "" {
			out = append(out, f.From)
		}
		if f.Until != "" {
			out = append(out, f.Until)
		}
	}
	return out
}

func atTheLimit(t *testing.T, r *rulebook.Rules, f *rulebook.Figure) int {
	t.Helper()
	stem, isMin := strings.CutSuffix(f.Name, " at least")
	if !isMin {
		stem, _ = strings.CutSuffix(f.Name, " at most")
	}
	isMax := !isMin && stem != f.Name
	exactly, isExact := strings.CutSuffix(f.Name, " exactly")
	if isExact {
		stem = exactly
	}
	if setters[stem] == nil || len(f.Lengths) == 0 || !isMin && !isMax && !isExact || f.About == "contrast" {
		return 0
	}
	bad := findings.Violation
	if f.Advice {
		bad = findings.Advice
	}
	for _, l := range f.Lengths {
		v, name := l.MM(), fmt.Sprintf("%s %s %s %s %s", r.ID, r.Season, f.About, f.Name, l)
		under, over := findings.InOrder, findings.InOrder
		if isMin || isExact {
			under = bad
		}
		if isMax || isExact {
			over = bad
		}
		assert.Equal(t, under, one(t, r, f.About, stem, v-nm), "%s, 1 nm under", name)
		assert.Equal(t, findings.InOrder, one(t, r, f.About, stem, v), "%s, at it", name)
		assert.Equal(t, over, one(t, r, f.About, stem, v+nm), "%s, 1 nm over", name)
	}
	return len(f.Lengths)
}

func TestAnApproximateFigureTakesTenPerCentAndIsAdvice(t *testing.T) {
	r := rules(t, "nfhs-football", "2026", "")
	const about = 38.1 // 1.5 in
	for v, want := range map[float64]findings.Severity{
		about: findings.InOrder, about * 0.9: findings.InOrder, about * 1.1: findings.InOrder,
		about*0.9 - 2*nm: findings.Advice, about*1.1 + 2*nm: findings.Advice,
	} {
		assert.Equal(t, want, one(t, r, "back number", "stroke", v), "%f", v)
	}
}

func TestALengthIsComparedAsANumberOfNanometresWhateverItsUnit(t *testing.T) {
	r := rules(t, "nfhs-boys-lacrosse", "2026", "") // 8 in
	assert.Equal(t, findings.InOrder, one(t, r, "back number", "height", 203.2))
	assert.Equal(t, findings.InOrder, one(t, r, "back number", "height", 203.2-1e-9), "noise of floating point is no fault")
	assert.Equal(t, findings.Violation, one(t, r, "back number", "height", 203.199999))
}

func TestTheThinnestPartOfAStrokeCountsToo(t *testing.T) {
	r := rules(t, "wfdf", "2026", "") // 3 cm
	m := findings.NewMeasured("back number", findings.KindNumber, "12")
	m.StrokeThin, m.StrokeMain = 29, 31
	got := about(findings.Check(r, wearing(m)), "number stroke at its thinnest")
	require.Len(t, got, 1)
	assert.Equal(t, findings.Violation, got[0].Severity)
	assert.Equal(t, "1 1/8 in (2.9 cm)", got[0].Measured)
	m.StrokeMain = 29.5
	results := findings.Check(r, wearing(m))
	assert.Empty(t, about(results, "number stroke at its thinnest"), "said once, of the main strokes")
	require.Len(t, about(results, "number stroke"), 1)
}

func TestABorderCountsWhereTheBookSaysSoAndLeavesItOpenWhereItDoesNot(t *testing.T) {
	withBorder := func(id string, height, border float64) findings.Severity {
		m := findings.NewMeasured("back number", findings.KindNumber, "12")
		m.Height, m.TallestDigit, m.Borders = height, height, []findings.Border{{Width: border}}
		return findings.Worst(about(findings.Check(rules(t, id, "2026", ""), wearing(m)), "number height"))
	}
	assert.Equal(t, findings.InOrder, withBorder("nfhs-football", 254-2*6.35, 6.35), "10 in with it, and it counts")
	assert.Equal(t, findings.Violation, withBorder("uefa-equipment", 250-10, 5), "25 cm with it, and it does not count")
	assert.Equal(t, findings.Unknown, withBorder("nfhs-softball", 152.4-2*3.175, 3.175), "6 in with it, and the book does not say")
	assert.Equal(t, findings.InOrder, withBorder("nfhs-softball", 152.4, 3.175), "6 in without it")
	assert.Equal(t, findings.Violation, withBorder("nfhs-softball", 152.4-2*3.175-nm, 3.175), "under 6 in either way")
}

func wearing(pieces ...findings.Measured) findings.Subject {
	return findings.Subject{Units: length.Inch, Players: []findings.Wearer{{Player: "Quill", Number: "12", Pieces: pieces}}}
}

func about(results []findings.Result, what string) []findings.Result {
	var out []findings.Result
	for _, r := range results {
		if r.What == what {
			out = append(out, r)
		}
	}
	return out
}

// TestAPrintedFigureNeverHidesItsFault makes numbers that miss a limit by any
// amount and looks whether the two printed figures can be taken for equal.
func TestAPrintedFigureNeverHidesItsFault(t *testing.T) {
	books := map[string]*rulebook.Rules{}
	for _, id := range []string{"nfhs-boys-lacrosse", "wfdf", "tyfa-football", "lfp-ligue1", "obr-mlb"} {
		books[id] = rules(t, id, "2026", "")
	}
	rapid.Check(t, func(rt *rapid.T) {
		id := rapid.SampledFrom([]string{"nfhs-boys-lacrosse", "wfdf", "tyfa-football", "lfp-ligue1", "obr-mlb"}).Draw(rt, "book")
		unit := rapid.SampledFrom([]length.Unit{length.Inch, length.Centimetre}).Draw(rt, "unit")
		p := books[id].Position("back number")
		limits := []*rulebook.Figure{p.HeightMin, p.HeightMax, p.HeightExact}
		var f *rulebook.Figure
		for f == nil {
			f = rapid.SampledFrom(limits).Draw(rt, "figure")
		}
		miss := float64(rapid.Int64Range(1, 30_000_000).Draw(rt, "by")) * nm
		if f == p.HeightMax {
			miss = -miss
		}
		m := findings.NewMeasured("back number", findings.KindNumber, "12")
		m.Height, m.TallestDigit = f.Length.MM()-miss, f.Length.MM()-miss
		s := wearing(m)
		s.Units = unit
		got := about(findings.Check(books[id], s), "number height")
		if len(got) == 0 || got[0].Severity != findings.Violation {
			rt.Fatalf("%v", got)
		}
		first, _, _ := strings.Cut(got[0].Measured, " (")
		for _, equal := range []string{length.Plain(f.Length.MM(), unit, length.Nearest), f.Length.String()} {
			if first == equal || strings.Contains(got[0].Measured, "("+equal+")") {
				rt.Fatalf("%s looks equal to %s", got[0].Measured, got[0].Required)
			}
		}
		if got[0].By == "0 in" || got[0].By == "0.0 cm" {
			rt.Fatalf("by %s", got[0].By)
		}
	})
}
