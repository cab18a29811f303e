package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/fit"
	"yokeline/lettering/length"
	"yokeline/proof/page"
	"yokeline/proof/parts"
)

func softball(t testing.TB) Input {
	return checkedInput(t, edited(t, sampleJob, []string{"units: in", "rules: nfhs-softball\nunits: in"}), sampleRoster)
}

// Paper, phone and the shop's records must mean the same by a letter.
func TestChoicesHaveTheLettersThatTheShopRecords(t *testing.T) {
	in := softball(t)
	in.Results = append(in.Results, findings.Result{Finding: finding(findings.Violation, "back number", "number height", "5 in", "at least 6 in", "4-2a", "read")})
	d, err := newDocument(in)
	require.NoError(t, err)
	got, want := d.questions(), choices.Of(in.Sized, in.Results)
	require.Len(t, got, len(want))
	require.NotNil(t, want[len(want)-1].Rule)
	for i, q := range want {
		assert.Equal(t, q.Player, got[i].player, "%s", q.ID)
		require.Len(t, got[i].ways, len(q.Ways), q.ID)
		for k, w := range q.Ways {
			assert.Equal(t, w.Letter, got[i].ways[k].letter)
			assert.Equal(t, w.Name, got[i].ways[k].out)
		}
	}
}

// What is drawn for a way out is what sizing made of it.
func TestDecideDrawsTheVerifiedResults(t *testing.T) {
	in := softball(t)
	d, err := newDocument(in)
	require.NoError(t, err)
	drawn := 0
	for _, q := range d.questions() {
		if q.piece == nil {
			continue
		}
		byLetter := map[string]decideTile{}
		for _, tile := range d.decideTiles(&q) {
			byLetter[tile.letter] = tile
		}
		for _, w := range q.ways {
			if w.out == nil {
				continue
			}
			tile := byLetter[w.letter]
			require.True(t, tile.drawn(), "%s %s", q.who, w.title)
			name := tile.piece().Name
			assert.InDelta(t, w.out.Name.LetterHeight, name.LetterHeight, 1e-9, w.title)
			assert.InDelta(t, w.out.Name.InkWidth, name.InkWidth, 1e-9, w.title)
			assert.Equal(t, w.out.Name.Text, name.Text)
			drawn++
		}
	}
	assert.Greater(t, drawn, 10)
}

func TestDecideNamesEveryChoiceAndWhatFollows(t *testing.T) {
	in := softball(t)
	text := said(t, in, (*document).planLook, (*document).planDecide)
	for _, want := range []string{
		"Three names and one number that is worn twice ask for your choice.",
		"choice 1", "FEATHERSTONEHAUGH", "17 letters. The room on an S is", "It cannot be made until you", "As it stands",
		"A  Lower letters", "below our floor of 1\u00a0⅜\u00a0in", "C  A narrower face", "League Gothic, this name only",
		"It fits as drawn: choose only if", "the posts show the room", "00 becomes", "breaks a rule", "Leave both; I know",
	} {
		assert.Contains(t, text, want)
	}
	assert.Empty(t, drawn(t, blockInput(t, length.Inch, []row{{"Quill", "7", "M", fit.Full}}), (*document).planDecide), "nothing to decide")
}

// Only what cannot be made is framed, and it has no box to tick.
func TestDecideFramesWhatCannotBeMade(t *testing.T) {
	d, err := newDocument(softball(t))
	require.NoError(t, err)
	over := 0
	for _, q := range d.questions() {
		for _, tile := range d.decideTiles(&q) {
			if tile.forbidden {
				over++
				assert.Empty(t, tile.letter)
				assert.Positive(t, tile.over)
			} else {
				assert.NotEmpty(t, tile.letter)
			}
		}
	}
	frames := 0
	for _, p := range drawn(t, softball(t), (*document).planDecide) {
		for _, op := range p.Ops() {
			s, ok := op.(page.Stroke)
			frames += count(ok && s.Line.Weight == parts.OverFrameRow && s.Colour == parts.Decide)
		}
	}
	assert.Equal(t, 2, over)
	assert.Equal(t, over, frames)
}

// Roster and sign-off lead to the choice and its page.
func TestChoicesAreReferredToByNumberAndPage(t *testing.T) {
	b, err := Proof(softball(t))
	require.NoError(t, err)
	at := 0
	for i, p := range b.Pages() {
		if strings.HasPrefix(p.Title, decideTitle) && at == 0 {
			at = i + 1
		}
	}
	require.Positive(t, at)
	var all []string
	for _, p := range b.Pages() {
		all = append(all, pageText(p)...)
	}
	text := strings.Join(all, " ")
	assert.Contains(t, text, "choice 1, page "+string(rune('0'+at)))
	assert.Contains(t, text, "show them drawn")
}

func TestDecideAsksAboutBrokenRulesInWords(t *testing.T) {
	in := ruledInput(t, finding(findings.Violation, "back number", "number height", "5 in", "at least 6 in", "4-2a", "read"))
	text := said(t, in, (*document).planDecide)
	for _, want := range []string{"Back number height", "breaks rule 4-2a", "It is 5\u00a0in.", "The book asks for at least 6\u00a0in.", "Put it right, with a new", "Leave it; I know rule"} {
		assert.Contains(t, text, want)
	}
}
