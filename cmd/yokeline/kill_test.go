//go:build linux

package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/proof/records"
)

var long = flag.Bool("long", false, "kill the program 300 times while it writes, in place of 20")

// temporary reports whether some file under a folder is still being written.
func temporary(folder string) bool {
	found := false
	_ = filepath.WalkDir(folder, func(path string, _ fs.DirEntry, err error) error {
		found = found || err == nil && strings.HasSuffix(path, ".part")
		return nil
	})
	return found
}

// killedWhileWriting starts a proof in a process of its own and kills it some
// time after begun first reports true; it reports whether it was still running.
func killedWhileWriting(t *testing.T, dir string, begun func() bool, after time.Duration) bool {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	c := exec.Command(self, "proof", dir, "-o", filepath.Join(dir, "out"), "--html")
	c.Args[0] = "yokeline"
	require.NoError(t, c.Start())
	done := make(chan error, 1)
	go func() { done <- c.Wait() }()
	for !begun() {
		select {
		case err := <-done:
			require.NoError(t, err)
			return false
		case <-time.After(20 * time.Microsecond):
		}
	}
	time.Sleep(after)
	_ = c.Process.Signal(syscall.SIGKILL)
	return <-done != nil
}

// wholePDF fails unless a file is a whole PDF: its head, its end, and where the
// end says that the table of objects begins.
func wholePDF(t *testing.T, path string) {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.HasPrefix(data, []byte("%PDF-")), path)
	end := bytes.LastIndex(data, []byte("startxref"))
	require.Positive(t, end, path)
	var at int
	_, err = fmt.Sscanf(string(data[end:]), "startxref\n%d\n%%%%EOF", &at)
	require.NoError(t, err, path)
	require.True(t, bytes.HasPrefix(data[at:], []byte("xref")), path)
}

// Killed at any instant while it writes, the program leaves a whole proof, the
// old one or the new one, and records in which a revision counts only when all
// of it is there.
func TestAProofKilledWhileItIsWrittenLeavesWholeFilesAndRecords(t *testing.T) {
	kills := 20
	switch {
	case *long:
		kills = 300
	case testing.Short():
		kills = 4
	}
	d := newDesk(t)
	d.proof()
	random := rand.New(rand.NewPCG(6, 1))
	hit, colour, pdf := 0, "e8b33a", filepath.Join(d.dir, "out", "proof.pdf")
	for i := range kills {
		next := fmt.Sprintf("%06x", 0xe00000+i)
		d.edit("job.yaml", colour, next)
		colour = next
		// Every other time while files are written, else while they are put in place.
		begun, within := func() bool { return temporary(d.dir) }, 200_000
		if i%2 == 1 {
			old, err := os.Stat(pdf)
			require.NoError(t, err)
			begun, within = func() bool { now, err := os.Stat(pdf); return err == nil && !os.SameFile(old, now) }, 100
		}
		if killedWhileWriting(t, d.dir, begun, time.Duration(random.IntN(within))*time.Microsecond) {
			hit++
		}
		wholePDF(t, pdf)
		all, err := records.List(os.DirFS(d.kept()))
		require.NoError(t, err)
		require.NotEmpty(t, all)
		for _, r := range all {
			wholePDF(t, d.kept(r.Dir(), "proof.pdf"))
			for _, name := range [...]string{"proof.html", records.AskedFile, records.InputsDir + "/job.yaml", records.InputsDir + "/roster.csv"} {
				require.FileExists(t, d.kept(r.Dir(), name), "revision %d is counted", r.Number)
			}
		}
	}
	assert.Positive(t, hit, "some of them were killed before they had ended")
	d.proof()
	sh, err := openShelf(jobChoice{path: d.dir})
	require.NoError(t, err)
	t.Logf("killed %d of %d while writing; %d revisions are counted", hit, kills, len(sh.all))
	for k, r := range sh.all {
		if k%10 != 0 && k != len(sh.all)-1 {
			continue
		}
		_, err := sh.replay(context.Background(), streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}, r)
		require.NoError(t, err, "revision %d can be drawn again", r.Number)
	}
	assert.False(t, temporary(filepath.Join(d.dir, "out")), "what killed runs left behind is swept")
}
