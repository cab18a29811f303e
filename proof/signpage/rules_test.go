package signpage

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
)

// ruled is the demo with a rule that all its players break.
func ruled(t testing.TB) Input {
	t.Helper()
	in := demoInput(t)
	for _, p := range in.Sized.Players {
		in.Results = append(in.Results[:len(in.Results):len(in.Results)], findings.Result{Finding: findings.Finding{
			Severity: findings.Violation, Player: p.Label(), Place: "back number", What: "number height", Measured: "5 in", Required: "at least 6 in",
			Rule: "4-2a", Source: "Tidewater Conference, rule book (2026)", How: "read",
		}})
	}
	in.Questions = choices.Of(in.Sized, in.Results)
	return in
}

func ruledPage(t testing.TB) []byte {
	t.Helper()
	var page bytes.Buffer
	require.NoError(t, Write(&page, ruled(t)))
	return page.Bytes()
}

func TestABrokenRuleIsAskedAboutOnceAndKnownOnlyWhenItIsLeft(t *testing.T) {
	in, root := ruled(t), parsed(t, ruledPage(t))
	r := recordOf(t, root)
	last := len(in.Questions) - 1
	require.Equal(t, "1 rule 4-2a", in.Questions[last].ID)
	q := r.Questions[last]
	assert.True(t, q.Open)
	assert.Empty(t, q.Players, "no card leads to it")
	require.Len(t, q.Ways, 2)
	assert.Equal(t, [2]bool{true, false}, [2]bool{q.Ways[0].Renews, q.Ways[1].Renews})
	known := r.Known[len(r.Known)-1]
	assert.Equal(t, recordKnown{
		Rule: "4-2a", What: "Rule\u00a04-2a stays broken: back number height, all 16 players: 5\u00a0in, required at least 6\u00a0in.",
		Question: "1 rule 4-2a", Letter: "B",
	}, known)
	for _, k := range r.Known {
		assert.NotEmpty(t, k.Question, "nothing is known before it is chosen")
	}
	asked := byClass(root, "question")[last]
	for _, want := range []string{"Back number height", "breaks rule\u00a04-2a", "All 16 players. It is 5\u00a0in. The book asks for at least 6\u00a0in.", "Put it right, with a new proof", "I know that rule\u00a04-2a is broken."} {
		assert.Contains(t, textOf(asked), want)
	}
	assert.Contains(t, textOf(root), "one broken rule ask for your choice")
}

// brokenRule answers both ways: put right is a note, left is signed for.
func brokenRule(t *testing.T, ctx context.Context) {
	in := ruled(t)
	path := filepath.Join(t.TempDir(), "proof.html")
	require.NoError(t, os.WriteFile(path, ruledPage(t), 0o644))
	v := open(t, ctx, "rule", "file://"+path, 390, 844, false)
	v.forget()
	v.tickRest()
	choose(v, in, false)
	assert.Contains(t, v.text("#known"), "Rule 4-2a stays broken")
	last := len(in.Questions) - 1
	v.click(fmt.Sprintf("#question-%d input[value='A'] ~ .words", last))
	v.shot("1-put-right", true)
	assert.Contains(t, v.text("#state"), "You left 1 note.")
	v.click("#save")
	answer := v.saved(in)
	assert.Nil(t, answer.Signed)
	corrections := answer.Corrections(proofOf(in))
	require.Len(t, corrections, 1)
	assert.Equal(t, "put it right: back number height, at least 6 in", corrections[0].Note)
	v.calm()
}
