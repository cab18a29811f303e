package choices_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
)

// squad is a sized order of players without pieces.
func squad(n int) *sizes.Sized {
	s := &sizes.Sized{Order: &order.Order{}}
	for i := range n {
		s.Players = append(s.Players, sizes.Player{Player: order.Player{Name: fmt.Sprintf("Quill %d", i), Number: fmt.Sprint(i + 1)}})
	}
	return s
}

// broken is a rule that a player breaks; by nobody, the order as a whole.
func broken(player, what, measured, rule string) findings.Result {
	return findings.Result{Finding: findings.Finding{
		Severity: findings.Violation, Player: player, Place: string(garment.BackNumber), What: what, Measured: measured,
		Required: "at least 6 in", Rule: rule, Source: "Tidewater Conference, rule book (2026)", How: "read", Remedy: "make it higher",
	}}
}

func TestARuleThatAllBreakIsOneQuestion(t *testing.T) {
	s := squad(300)
	var results []findings.Result
	for i, p := range s.Players {
		results = append(results, broken(p.Label(), "number height", fmt.Sprintf("%d in", 3+i%2), "4-2a"))
	}
	results = append(results, broken("", "alike in the team", "3 in to 4 in", "4-2a"), broken(s.Players[2].Label(), "number border", "1 in", "4-2a"))
	all := choices.Of(s, results)
	require.Len(t, all, 3)
	ids := []string{all[0].ID, all[1].ID, all[2].ID}
	assert.Equal(t, []string{"1 rule 4-2a", "order rule 4-2a", "3 rule 4-2a"}, ids)
	assert.Len(t, all[0].Rule.Players, 300)
	assert.Equal(t, []string{"3 in", "4 in"}, all[0].Rule.Measures)
	assert.Empty(t, all[0].Rule.Finding.Remedy, "players differ")
	assert.Equal(t, -1, all[1].Player)
	assert.Equal(t, "make it higher", all[2].Rule.Finding.Remedy)
	for _, q := range all {
		assert.True(t, q.Open())
		require.Len(t, q.Ways, 2)
		assert.Equal(t, choices.PutRight, q.Ways[0].Kind)
		assert.Equal(t, choices.LeaveIt, q.Ways[1].Kind)
		assert.Equal(t, [2]bool{true, false}, [2]bool{q.Ways[0].NewProof(), q.Ways[1].NewProof()})
		assert.Equal(t, "AB", q.Ways[0].Letter+q.Ways[1].Letter)
		assert.Empty(t, choices.Chosen(s, q, "A"))
	}
}

func TestQuestionsAboutRulesHaveIDsOfTheirOwn(t *testing.T) {
	s := squad(1)
	label := s.Players[0].Label()
	all := choices.Of(s, []findings.Result{broken(label, "number height", "5 in", "4-2a"), broken(label, "number border", "1 in", "4-2a"), broken(label, "number stroke", "1 in", "")})
	require.Len(t, all, 3)
	assert.Equal(t, []string{"1 rule 4-2a", "1 rule 4-2a, 2", "1 rule"}, []string{all[0].ID, all[1].ID, all[2].ID})
	assert.Equal(t, "a rule", all[2].Rule.Words())
}

// Only what a book asks for and the coach can decide is asked: no advice, nothing
// for the bench, nothing that cites no book, no clash twice.
func TestOnlyBrokenRulesOfABookAreAsked(t *testing.T) {
	s := squad(2)
	label := s.Players[0].Label()
	advice, bench, own := broken(label, "a", "", "1"), broken(label, "b", "", "1"), broken(label, "c", "", "1")
	advice.Severity, bench.Bench, own.How = findings.Advice, true, ""
	assert.Empty(t, choices.Of(s, []findings.Result{advice, bench, own}))

	s.Players[1].Number = "1"
	twice := broken(label, choices.SameNumbers, "1, as Quill 1", "1-4")
	all := choices.Of(s, []findings.Result{twice})
	require.Len(t, all, 1)
	assert.NotNil(t, all[0].Clash)
}

func TestSignedPlayersAreAskedNothing(t *testing.T) {
	s := squad(3)
	var results []findings.Result
	for _, p := range s.Players {
		results = append(results, broken(p.Label(), "number height", "5 in", "4-2a"))
	}
	results = append(results, broken("somebody who is not shown", "number border", "1 in", "4-2b"))
	s.Players[0].Signed, s.Players[1].Signed = true, true
	all := choices.Of(s, results)
	require.Len(t, all, 1)
	assert.Equal(t, []int{2}, all[0].Rule.Players)
	assert.Equal(t, "3 rule 4-2a", all[0].ID)

	s.Players[2].Number = "2" // that of a signed player
	all = choices.Of(s, nil)
	require.Len(t, all, 1)
	assert.Equal(t, "2 number", all[0].ID)
	require.Len(t, all[0].Ways, 2, "who is signed keeps the number")
	assert.Equal(t, 2, all[0].Ways[0].Player)

	s.Players[2].Signed = true
	assert.Empty(t, choices.Of(s, results))
}

// A piece without room is asked about with what would give it room, and any of
// that needs a new proof.
func TestARemedyNeedsANewProof(t *testing.T) {
	w := choices.Way{Kind: sizes.StraightSet, Remedy: &sizes.Remedy{Kind: sizes.StraightSet}}
	assert.True(t, w.NewProof())
	assert.False(t, choices.Way{Kind: choices.AsItStands}.NewProof())
	assert.True(t, choices.Way{Kind: choices.AnotherNumber}.NewProof())
}
