package rulebook

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every figure that a book may give belongs to a topic, so that the table of
// what is known leaves nothing out.
func TestEveryWordHasATopic(t *testing.T) {
	for _, about := range abouts() {
		for _, w := range wordsAbout(about) {
			assert.GreaterOrEqual(t, topicOf(&Figure{About: about, Name: w.name}), 0, "%s: %s", about, w.name)
		}
		assert.Equal(t, -1, topicOf(&Figure{About: about, Name: "note"}))
	}
}

func TestTopicsAddUpToTheCount(t *testing.T) {
	for _, id := range IDs() {
		b, err := Load(id)
		require.NoError(t, err)
		read, memory := 0, 0
		for _, topic := range b.Topics() {
			read, memory = read+topic.Read, memory+topic.Memory
		}
		wantRead, wantMemory := b.Count()
		assert.Equal(t, [2]int{wantRead, wantMemory}, [2]int{read, memory}, id)
	}
}
