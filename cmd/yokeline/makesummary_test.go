package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What make leaves out, cannot lay or must not be pressed is said where the
// command was given, not in the files alone.
func TestMakeSaysWhatTheBenchMustKnow(t *testing.T) {
	d := newDesk(t)
	out := filepath.Join(d.dir, "bench")
	d.add("Ode,Lou Ode,71,\n")
	said, _ := d.run(exitDone, "make", d.dir, "-o", out, "--unsigned", "--sheet", "100mm")
	assert.Contains(t, said, "nothing is made for Lou Ode: the size is not known")
	assert.Contains(t, said, "on no sheet: back number of")
	lines := strings.Split(strings.TrimSpace(said), "\n")
	seen := map[string]bool{}
	for _, line := range lines {
		assert.False(t, seen[line], "said once: %s", line)
		seen[line] = true
	}
	d.edit("job.yaml", "method: cut film", "method: sublimation")
	said, _ = d.run(exitDone, "make", d.dir, "-o", out, "--unsigned")
	assert.True(t, strings.HasPrefix(said, "STOP, do not press it as it stands: sublimation"), said)
	d.edit("job.yaml", "method: sublimation", "method: flock film")
	_, errs := d.run(exitInput, "make", d.dir, "-o", out, "--unsigned")
	assert.Equal(t, 1, strings.Count(errs, "press ticket:"), errs)
}
