package sheets

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/rulebook"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

const head = "Name on back,Number,Size\n"

// checkedInput sizes a job and holds it against its rule book, if it names one.
func checkedInput(t testing.TB, job, roster string) Input {
	t.Helper()
	in := inputOf(t, job, roster)
	o := in.Sized.Order
	if o.Rules != "" {
		book, err := rulebook.Load(o.Rules)
		require.NoError(t, err)
		rules, err := book.In(o.Season)
		require.NoError(t, err)
		in.Sized.Rules = rules
	}
	in.Results = findings.Check(in.Sized.Rules, findings.Of(in.Sized))
	return in
}

func drawn(t require.TestingT, in Input, planners ...planner) []*page.Page {
	book, err := draw(in, planners...)
	require.NoError(t, err)
	return book.Pages()
}

// allText is what the pages of the planners say, in the order they say it.
func allText(t require.TestingT, in Input, planners ...planner) []string {
	var out []string
	for _, p := range drawn(t, in, planners...) {
		out = append(out, pageText(p)...)
	}
	return out
}

func said(t require.TestingT, in Input, planners ...planner) string {
	return strings.Join(allText(t, in, planners...), " ")
}

// requireInOrder looks for the texts one after the other.
func requireInOrder(t require.TestingT, texts, want []string) {
	i := 0
	for _, text := range texts {
		if i < len(want) && text == want[i] {
			i++
		}
	}
	require.Equal(t, len(want), i, "missing from %q on", want[min(i, len(want)-1):])
}

func TestRosterShowsEverybodyInTheOrderOfTheRoster(t *testing.T) {
	in := checkedInput(t, sampleJob, sampleRoster)
	var want []string
	for _, line := range strings.Split(strings.TrimSpace(strings.TrimPrefix(sampleRoster, head)), "\n") {
		cells := strings.Split(line, ",")
		want = append(want, cells[1], cells[2], strings.ToUpper(cells[0]))
	}
	texts := allText(t, in, (*document).planRoster)
	requireInOrder(t, texts, want)
	for i := 2; i < len(want); i += 3 {
		n := 0
		for _, text := range texts {
			n += count(text == want[i])
		}
		assert.Equal(t, 1, n, "%q stands once", want[i])
	}
}

func TestRosterPagesHoldEverybodyOnce(t *testing.T) {
	for _, paper := range []Paper{Letter, A4} {
		for _, n := range []int{1, 3, 15, 60, 300} {
			in := blockInput(t, length.Inch, manyRows(n))
			in.Paper = paper
			pages := drawn(t, in, (*document).planRoster)
			seen := map[string]int{}
			for i, p := range pages {
				requireTidy(t, p)
				show(t, fmt.Sprintf("roster-%d-%d-%d", paper, n, i), p)
				for _, w := range textBoxes(p) {
					if w.box.Min.Y > 45 && w.box.Max.Y < parts.NewGrid(p.Sheet).Bottom {
						seen[w.text]++
					}
				}
			}
			for i, p := range in.Sized.Players {
				if p.Number != "" {
					require.Equal(t, 1, seen[p.Number], "number of player %d of %d", i, n)
				}
			}
		}
	}
}

// rowsOf draws rosters of any kind: long names, names without a place to break,
// missing numbers and sizes, every verdict.
func rowsOf(t *rapid.T) []row {
	name := rapid.OneOf(
		rapid.StringMatching(`[A-Z][a-z]{0,12}`), rapid.StringMatching(`[A-Z][a-z]{3,9}[ -][A-Z][a-z]{3,14}`),
		rapid.StringMatching(`[WM]{1,40}`), rapid.Just(""),
	)
	number := rapid.OneOf(rapid.StringMatching(`[0-9]{1,2}`), rapid.StringMatching(`[0-9]{1,8}`), rapid.Just(""))
	size := rapid.SampledFrom([]string{"XS", "S", "M", "L", "2XL", "YM", "AL", ""})
	var rows []row
	for range rapid.IntRange(1, 8).Draw(t, "players") {
		rows = append(rows, row{name.Draw(t, "name"), number.Draw(t, "number"), size.Draw(t, "size"), fit.Verdict(rapid.IntRange(0, 3).Draw(t, "verdict"))})
	}
	return rows
}

// Whatever the roster, no page of the proof but the first has texts that meet,
// lines through them, or anything beyond the margins.
func TestPagesAreTidyWhateverTheRoster(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := blockInput(t, rapid.SampledFrom([]length.Unit{length.Inch, length.Centimetre}).Draw(t, "unit"), rowsOf(t))
		if rapid.Bool().Draw(t, "own terms") {
			in.Sized.Order.Terms = strings.Repeat("What is signed is made. ", rapid.IntRange(1, 6).Draw(t, "sentences"))
		}
		sections := []planner{(*document).planRoster, (*document).planRules, (*document).planSignOff, (*document).planDecide}
		for _, p := range drawn(t, in, sections[rapid.IntRange(0, len(sections)-1).Draw(t, "section")]) {
			requireTidy(t, p)
		}
	})
}

func TestRosterSentence(t *testing.T) {
	some := func(verdicts ...fit.Verdict) []row {
		var out []row
		for i, v := range verdicts {
			out = append(out, row{"Quill", fmt.Sprint(i), "M", v})
		}
		return out
	}
	const aloud = " Please read every name out loud, letter by letter."
	for _, c := range []struct {
		rows []row
		want string
	}{
		{some(fit.Full, fit.Full, fit.Eased, fit.Reduced, fit.Over, fit.Over), "6 players, every back at one scale. 2 names at full height, 1 eased, 1 reduced, 2 over." + aloud},
		{some(fit.Full, fit.Full), "2 players, every back at one scale. All names at full height." + aloud},
		{some(fit.Full, fit.Eased), "2 players, every back at one scale. 1 name at full height, 1 eased." + aloud},
		{some(fit.Over), "1 player, the back. 1 name over." + aloud},
		{append(some(fit.Eased), row{"Quill", "9", "", 0}), "2 players, every back at one scale. 1 name eased, 1 player without a size." + aloud},
	} {
		d, err := newDocument(blockInput(t, length.Inch, c.rows))
		require.NoError(t, err)
		assert.Equal(t, c.want, d.rosterSentence())
	}
}

func TestRosterSaysWhatIsMissing(t *testing.T) {
	rows := []row{{"", "7", "M", 0}, {"Quill", "", "M", 0}, {"Adair", "9", "", 0}}
	texts := allText(t, blockInput(t, length.Inch, rows), (*document).planRoster)
	for _, want := range []string{"no name", "no number", "size not known"} {
		assert.Contains(t, texts, want)
	}
	assert.Empty(t, drawn(t, blockInput(t, length.Inch, nil), (*document).planRoster), "without players there is no page")
}

func TestRosterRemarks(t *testing.T) {
	softball := edited(t, sampleJob, []string{"units: in", "rules: nfhs-softball\nunits: in"})
	in := checkedInput(t, softball, head+"Aa,0,M\nBb,00,M\nCc,7,M\nDd,7,L\nFeatherstonehaugh,14,S\nFf,,M\n")
	d, err := newDocument(in)
	require.NoError(t, err)
	var got []string
	for _, r := range d.remarks() {
		got = append(got, r.text)
	}
	assert.Equal(t, []string{"same as 00", "same as 0", "number twice", "number twice", seeChoice, seePage}, got)
	assert.Contains(t, said(t, in, (*document).planRoster, (*document).planRules, (*document).planSignOff), "see page 3")

	in.Sized.Rules = nil
	in.Results = findings.Check(nil, findings.Of(in.Sized))
	d.in = in
	remarks := d.remarks()
	assert.Empty(t, remarks[0].text, "without a book 0 and 00 are two numbers")
	assert.Equal(t, "number twice", remarks[2].text, "the same number twice is asked about all the same")
}

func TestRosterFramesWhatIsOver(t *testing.T) {
	frames := func(v fit.Verdict) int {
		n := 0
		for _, p := range drawn(t, blockInput(t, length.Inch, []row{{"Quill", "7", "M", v}}), (*document).planRoster) {
			for _, op := range p.Ops() {
				s, ok := op.(page.Stroke)
				n += count(ok && s.Line.Weight == parts.OverFrame && s.Colour == parts.Decide)
			}
		}
		return n
	}
	assert.Equal(t, 1, frames(fit.Over))
	assert.Zero(t, frames(fit.Reduced))
}

// A height that was lowered never reads as the height asked.
func TestLoweredHeightsAreNeverRoundedAway(t *testing.T) {
	d, err := newDocument(blockInput(t, length.Inch, []row{{"Quill", "7", "M", fit.Reduced}}))
	require.NoError(t, err)
	assert.Equal(t, "1\u00a0¹¹⁄₁₆\u00a0in", d.lowered(44.4, 44.45))
	assert.Equal(t, "1.770 in", d.lowered(44.96, 45), "45 mm prints as 1 3/4 in")
	assert.Equal(t, "1\u00a0⁹⁄₁₆\u00a0in", d.lowered(40, 44.45))
}

func TestRosterShowsTheFrontWhereOnlyTheFrontHasSomething(t *testing.T) {
	in := lookInputs()["shorts"](t)
	d, err := newDocument(in)
	require.NoError(t, err)
	if assert.Equal(t, garment.Front, d.rosterSide()) {
		assert.Contains(t, d.rosterSentence(), "every front")
	}
	assert.Contains(t, d.rosterSentence(), "every number out loud, digit by digit")
	for _, p := range drawn(t, in, (*document).planRoster, (*document).planSignOff) {
		requireTidy(t, p)
	}
}

// golden compares the words of pages with a file that was looked at.
func golden(t *testing.T, name string, pages []*page.Page) {
	t.Helper()
	var b strings.Builder
	for _, p := range pages {
		fmt.Fprintf(&b, "-- %s, %s %g × %g\n", p.Title, p.Sheet.Name, p.Sheet.W, p.Sheet.H)
		for _, w := range textBoxes(p) {
			fmt.Fprintf(&b, "%6.1f %6.1f  %s\n", w.box.Min.X, w.box.Max.Y, w.text)
		}
	}
	file := "testdata/" + name + "-words.txt"
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "run the test with -update once")
	assert.Equal(t, string(want), b.String())
}

func TestRosterSaysWhatTheGoldenFileSays(t *testing.T) {
	golden(t, "roster", drawn(t, checkedInput(t, sampleJob, head+"Ng,00,S\nAbara,0,M\nFeatherstonehaugh,14,S\n"), (*document).planRoster))
}

func BenchmarkRosterOf300(b *testing.B) {
	in := blockInput(b, length.Inch, manyRows(300))
	for b.Loop() {
		drawn(b, in, (*document).planRoster)
	}
}
