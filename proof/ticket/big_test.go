package ticket

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"yokeline/proof/page"
)

// bigJob has names and numbers without outlines, so that 500 players are sized
// in a moment.
func bigJob() string {
	head, _, _ := strings.Cut(sampleJob, "pieces:")
	return head + `pieces:
  back name: {face: oswald, height: 1 3/4in, shape: straight, colour: egret}
  back number: {face: graduate, height: 8in, colour: egret}
fit: {tracking: -4%, width: 80%, height: 1 1/4in, same: none}
`
}

// A club of five hundred: every player has a row and a label, and the pages are
// as tidy as those of a team.
func TestFiveHundredPlayers(t *testing.T) {
	s := sized(t, bigJob(), roster(500))
	b := bookOf(t, inputOf(t, s, page.Letter()))
	rows, labels := textOf(b, "Pick list"), textOf(b, "Bag labels")
	for i, p := range s.Players {
		if p.Number != "" {
			assert.Contains(t, rows, p.Number+" "+p.Name+" "+p.Label())
		}
		assert.Equal(t, 1, strings.Count(labels, fmt.Sprintf(" %d of 500 ", i+1)))
	}
	for i, p := range b.Pages() {
		if i%7 == 0 || i == len(b.Pages())-1 {
			requireTidy(t, b, p)
		}
	}
}
