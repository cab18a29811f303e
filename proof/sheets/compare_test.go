package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/changes"
	"yokeline/lettering/length"
	"yokeline/proof/page"
)

// compared draws what changed from one roster and job to another.
func comparedBook(t *testing.T, was, is Input) (*page.Book, changes.Told) {
	t.Helper()
	told := changes.Summary(changes.Between(was.Sized, is.Sized), func(mm float64) string { return length.Page(mm, length.Inch, length.Nearest) })
	was.Fingerprint, is.Fingerprint = was.Sized.Fingerprint(), is.Sized.Fingerprint()
	b, err := Compare(was, is, told)
	require.NoError(t, err)
	return b, told
}

// rosterOf is the sample roster with texts replaced in pairs.
func rosterOf(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(sampleRoster) }

func TestAComparisonSaysAndDrawsWhatChanged(t *testing.T) {
	was := sampleInput(t)
	for _, test := range []struct {
		name, roster, job string
		sentence          string
		says              []string
		shirts            int // drawn before and after
	}{
		{"nothing", sampleRoster, sampleJob, "Nothing that is made has changed", nil, 0},
		{"a spelling", rosterOf("Macallister", "McAllister"), sampleJob, "1 player changed; 14 stay as before",
			[]string{"MCALLISTER", "spelling", "Macallister", "McAllister"}, 2},
		{"a size", rosterOf("Quill,12,XS", "Quill,12,L"), sampleJob, "1 player changed; 14 stay", []string{"size", "women XS", "women L"}, 2},
		{"added and taken off", rosterOf("Ng,00,S\n", "Lund,55,M\nIves,56,S\n"), sampleJob, "2 players added and 1 taken off; 14 stay",
			[]string{"added", "taken off", "not in the order yet", "no longer in the order", "LUND", "IVES"}, 3},
		{"a colour", sampleRoster, strings.Replace(sampleJob, "#e2a336", "#e2a337", 1), "The order changed for everyone",
			[]string{"Trim", "marsh gold #e2a336", "marsh gold #e2a337", "The whole order, shown on"}, 4},
		{"a role", rosterOf("Number,Size\nNg,00,S", "Number,Size,Role\nNg,00,S,captain"), sampleJob, "1 player changed", []string{"role", "captain", "drawn as before"}, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			is := inputOf(t, test.job, test.roster)
			b, _ := comparedBook(t, was, is)
			require.Len(t, b.Pages(), 1)
			p := b.Pages()[0]
			text := strings.Join(pageText(p), "\n")
			assert.Contains(t, strings.Join(strings.Fields(text), " "), test.sentence)
			for _, want := range append(test.says, "What changed", "Before", "After") {
				assert.Contains(t, text, want)
			}
			assert.Contains(t, text, shortCode(was.Sized.Fingerprint()), "both fingerprints stand over their columns")
			assert.Contains(t, text, shortCode(is.Sized.Fingerprint()))
			assert.Equal(t, test.shirts, clips(p.Ops()))
			show(t, "compare-"+strings.ReplaceAll(test.name, " ", "-"), p)
		})
	}
}

func shortCode(fingerprint string) string {
	return fingerprint[:4] + " " + fingerprint[4:8] + " " + fingerprint[8:12] + " " + fingerprint[12:16]
}

// clips counts the windows in which something is drawn: a shirt each.
func clips(ops []page.Op) (n int) {
	for _, op := range ops {
		if _, ok := op.(page.Clip); ok {
			n++
		}
	}
	return n
}

// Many changes flow over pages: each repeats the columns with both fingerprints,
// nobody is left out, and all are drawn at one scale.
func TestManyChangesFlowOverPages(t *testing.T) {
	was, is := sampleInput(t), inputOf(t, sampleJob, rosterOf("Ng,", "Nguyen,", "Abara,0", "Abara,10", "O’Rourke,3,M", "O’Rourke,3,L", "Trevanion", "Trevannion",
		"Macallister,7", "McAllister,7", "Quill,12,XS", "Quill,12,S", "Halvorsen,17", "Halvorsen,18", "Brightwater", "Brightwaters", "Lindqvist,34,L\n", "Lund,55,M\nIves,56,S\nStone,57,M\n"))
	b, told := comparedBook(t, was, is)
	require.Greater(t, len(b.Pages()), 1)
	require.Len(t, told.Players, 12)
	drawn, scales := 0, map[string]bool{}
	for _, p := range b.Pages() {
		text := strings.Join(pageText(p), "\n")
		assert.Contains(t, text, shortCode(was.Sized.Fingerprint()))
		assert.Contains(t, text, shortCode(is.Sized.Fingerprint()))
		drawn += clips(p.Ops())
		for _, line := range strings.Split(text, "\n") {
			if strings.HasPrefix(line, "Drawn 1 : ") {
				scales[line] = true
			}
		}
	}
	assert.Len(t, scales, 1)
	assert.Equal(t, 2*8+3+1, drawn, "eight changed, three came, one went")
}
