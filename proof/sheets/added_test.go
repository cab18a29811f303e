package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"yokeline/proof/parts"
)

// addendum is the sample order as an addition: the last two are new, one who is
// signed stands beside them.
func addendum(t *testing.T) Input {
	in := sampleInput(t)
	in.Onto = 1
	shown := *in.Sized
	shown.Players = append(shown.Players[5:6:6], shown.Players[13:]...)
	shown.Players[0].Signed = true
	in.Sized = &shown
	return in
}

func TestAnAdditionIsSaidInTwoLinesAndSignedForTheNewPlayers(t *testing.T) {
	in := addendum(t)
	text := said(t, in, (*document).planRoster, (*document).planSignOff)
	assert.Contains(t, text, "2 players join revision 1, which you signed; MACALLISTER is here to compare. Please read every name out loud, letter by letter.")
	assert.Contains(t, text, "I have looked at the 2 added players and at page 1 of this proof.")
	d, err := newDocument(in)
	assert.NoError(t, err)
	for _, paper := range []Paper{Letter, A4} {
		g := parts.NewGrid(paper.sheet().Portrait())
		assert.LessOrEqual(t, len(d.book.Wrap(parts.Sentence().Style, g.Right-g.X(6), d.addedSentence())), 2)
	}
	in.Sized.Players = in.Sized.Players[:2]
	text = said(t, in, (*document).planRoster, (*document).planSignOff)
	assert.Contains(t, text, "1 player joins revision 1")
	assert.Contains(t, text, "I have looked at the added player and at page 1")
}
