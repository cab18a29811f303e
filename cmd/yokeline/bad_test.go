package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEveryBrokenFileIsRefusedAndTheOldProofStays runs the whole program on
// each broken job and roster of testdata/bad: exit code 3, the place in the
// message, nothing on standard output, and the proof of the run before as it
// was.
func TestEveryBrokenFileIsRefusedAndTheOldProofStays(t *testing.T) {
	bad := filepath.Join(root, "testdata", "bad")
	index, err := os.Open(filepath.Join(bad, "index.csv"))
	require.NoError(t, err)
	defer index.Close()
	rows, err := csv.NewReader(index).ReadAll()
	require.NoError(t, err)
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	require.Greater(t, len(rows), 60)

	folder := t.TempDir()
	old := filepath.Join(folder, "proof.pdf")
	require.NoError(t, os.WriteFile(old, []byte("the old proof"), 0o644))
	for _, row := range rows[1:] {
		file, place := row[column["file"]], row[column["place"]]
		var out, messages bytes.Buffer
		s := streams{out: &out, err: &messages, env: func(string) string { return "" }}
		code := run(context.Background(), []string{"proof", brokenJob(t, bad, file), "-o", folder}, s)
		assert.Equal(t, exitInput, code, "%s: %s", file, messages.String())
		assert.Contains(t, messages.String(), place, file)
		assert.Empty(t, out.String(), file)
		kept, err := os.ReadFile(old)
		require.NoError(t, err)
		assert.Equal(t, "the old proof", string(kept), file)
		entries, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Len(t, entries, 1, "%s left a file behind", file)
	}
}

// brokenJob returns the path of a job that has the fault: the file itself, or
// a sound job around a broken roster.
func brokenJob(t *testing.T, bad, file string) string {
	t.Helper()
	if strings.HasPrefix(file, "job-") {
		return filepath.Join(bad, file)
	}
	folder := t.TempDir()
	data, err := os.ReadFile(filepath.Join(bad, file))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, file), data, 0o644))
	job := "yokeline: 1\nteam: Alder Point Herons\nsport: softball\nunits: in\nroster: " + file +
		"\ngarment: {cut: two-button, colour: \"#14284b\"}\npieces:\n  back name: {height: 2in}\n  back number: {height: 8in}\n"
	require.NoError(t, os.WriteFile(filepath.Join(folder, jobFile), []byte(job), 0o644))
	return folder
}
