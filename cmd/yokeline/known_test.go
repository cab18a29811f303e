package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const knownIntro = `# What is known of each rule book

How many figures the program has of each body's rules, by topic, and how they were come by: read in a source that is
named, or from memory, which has to be looked up in the current book first. **An empty cell means not known, never
allowed.** ` + "`yokeline rules ID`" + ` lists the figures; this table is what ` + "`yokeline rules --known`" + ` prints.

`

// The page beside the books is what the program prints, so that nobody takes
// memory for the book.
func TestTableOfWhatIsKnownIsTheProgramsOwn(t *testing.T) {
	var out, errs bytes.Buffer
	code := run(context.Background(), []string{"rules", "--known"}, streams{out: &out, err: &errs, env: func(string) string { return "" }})
	require.Equal(t, exitDone, code, errs.String())
	path := filepath.Join(root, "lettering", "rulebook", "books", "KNOWN.md")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(knownIntro+out.String()), 0o644))
	}
	page, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, knownIntro+out.String(), string(page))
	assert.Contains(t, string(page), "memory*", "some figures are from memory, and say so")
	assert.Greater(t, strings.Count(string(page), "\n| `"), 60)
}
