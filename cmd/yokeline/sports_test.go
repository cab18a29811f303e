package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
)

// expectedFinding is what testdata/sports/*/expected*.json holds of a finding:
// what was measured against which rule. Sources and remedies are words that
// have tests of their own.
type expectedFinding struct {
	Severity string `json:"severity"`
	Player   string `json:"player"`
	Place    string `json:"place"`
	What     string `json:"what"`
	Measured string `json:"measured"`
	Required string `json:"required"`
	Rule     string `json:"rule"`
	How      string `json:"how"`
}

// TestCheckFindsEveryPlantedFaultOfASportAndNoOther runs check on an order a
// sport (two, where a rule changes between seasons). The findings must be those
// that the comments of the job ask for, which were worked out by hand and which
// -update leaves alone, and in full those of the expected file beside it.
func TestCheckFindsEveryPlantedFaultOfASportAndNoOther(t *testing.T) {
	sports := filepath.Join(root, "testdata", "sports")
	folders, err := os.ReadDir(sports)
	require.NoError(t, err)
	require.Len(t, folders, 12)
	for _, folder := range folders {
		jobs, err := filepath.Glob(filepath.Join(sports, folder.Name(), "job*.yaml"))
		require.NoError(t, err)
		require.NotEmpty(t, jobs, folder.Name())
		for _, job := range jobs {
			name := strings.TrimSuffix(filepath.Base(job), ".yaml")
			t.Run(folder.Name()+"/"+name, func(t *testing.T) {
				got := ruleFindings(t, job)
				assert.ElementsMatch(t, planted(t, job, got), short(got))
				expected := strings.Replace(name, "job", "expected", 1) + ".json"
				compareExpected(t, filepath.Join(filepath.Dir(job), expected), got)
			})
		}
	}
}

// ruleFindings returns what check says about a job that the book or the panel
// has to do with. Advice that cites nothing and remarks on the roster stay out:
// they are about how a thing is made or read.
func ruleFindings(t *testing.T, job string) []expectedFinding {
	t.Helper()
	var out, messages bytes.Buffer
	s := streams{out: &out, err: &messages, env: func(string) string { return "" }}
	path := job
	if filepath.Base(job) == jobFile {
		path = filepath.Dir(job)
	}
	code := run(context.Background(), []string{"check", path, "--format", "json"}, s)
	require.Equal(t, exitFindings, code, messages.String())
	require.Empty(t, messages.String())
	var printed checkedJSON
	require.NoError(t, json.Unmarshal(out.Bytes(), &printed))
	require.NotEmpty(t, printed.Rules.Edition)
	kept := []expectedFinding{}
	for _, f := range printed.Findings {
		cites := f.How != ""
		wide := f.Severity == findings.Violation && f.Required != ""
		lacking := f.Severity == findings.Unknown && strings.HasSuffix(f.Source, printed.Rules.Edition)
		if cites || wide || lacking {
			kept = append(kept, expectedFinding{string(f.Severity), f.Player, f.Place, f.What, f.Measured, f.Required, f.Rule, f.How})
		}
	}
	return kept
}

// plantedMark begins the comment lines of a job that say what must be found.
const plantedMark = "# finds: "

// anyFigure stands for a figure that nobody can work out by hand.
const anyFigure = "*"

// planted reads what a job says must be found. A figure left open is taken
// from the finding it matches.
func planted(t *testing.T, job string, got []expectedFinding) [][5]string {
	t.Helper()
	data, err := os.ReadFile(job)
	require.NoError(t, err)
	var want [][5]string
	for line := range strings.Lines(string(data)) {
		text, ok := strings.CutPrefix(line, plantedMark)
		if !ok {
			continue
		}
		var fields [5]string
		for i, field := range strings.SplitN(text, "|", 5) {
			fields[i] = strings.TrimSpace(field)
		}
		for _, f := range short(got) {
			if fields[4] == anyFigure && [4]string(fields[:4]) == [4]string(f[:4]) {
				fields[4] = f[4]
			}
		}
		want = append(want, fields)
	}
	require.NotEmpty(t, want, "%s does not say what must be found", job)
	return want
}

func short(all []expectedFinding) [][5]string {
	var out [][5]string
	for _, f := range all {
		out = append(out, [5]string{f.Severity, f.Player, f.Place, f.What, f.Measured})
	}
	return out
}

func compareExpected(t *testing.T, file string, got []expectedFinding) {
	t.Helper()
	var lines bytes.Buffer
	write := json.NewEncoder(&lines)
	write.SetEscapeHTML(false)
	write.SetIndent("", "  ")
	require.NoError(t, write.Encode(got))
	if *update && !t.Failed() {
		require.NoError(t, os.WriteFile(file, lines.Bytes(), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), lines.String())
}
