package outfile_test

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/proof/outfile"
)

func say(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}

func content(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	out := []string{}
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

func kindOf(t *testing.T, err error) outfile.Kind {
	t.Helper()
	var e *outfile.Error
	require.ErrorAs(t, err, &e)
	return e.Kind
}

func TestWriteReplacesAFileAndKeepsItsMode(t *testing.T) {
	path := filepath.Join(t.TempDir(), "proof.pdf")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o640))
	require.NoError(t, outfile.Write(t.Context(), path, say("new")))
	assert.Equal(t, "new", content(t, path))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
	assert.Equal(t, []string{"proof.pdf"}, names(t, filepath.Dir(path)))
}

func TestWriteFollowsALink(t *testing.T) {
	folder := t.TempDir()
	real, link := filepath.Join(folder, "real.pdf"), filepath.Join(folder, "link.pdf")
	require.NoError(t, os.WriteFile(real, []byte("old"), 0o644))
	require.NoError(t, os.Symlink(real, link))
	require.NoError(t, outfile.Write(t.Context(), link, say("new")))
	assert.Equal(t, "new", content(t, real))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink, "the link is still a link")
}

func TestAFailingWriterLeavesTheOldFile(t *testing.T) {
	broken := errors.New("no ink left")
	for name, write := range map[string]func(io.Writer) error{
		"at once":       func(io.Writer) error { return broken },
		"half way":      func(w io.Writer) error { _, _ = w.Write(make([]byte, 200_000)); return broken },
		"after writing": func(w io.Writer) error { _ = say("new")(w); return broken },
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "proof.pdf")
			require.NoError(t, os.WriteFile(path, []byte("old"), 0o644))
			err := outfile.Write(t.Context(), path, write)
			assert.ErrorIs(t, err, broken)
			assert.Equal(t, outfile.Failed, kindOf(t, err))
			assert.ErrorContains(t, err, path)
			assert.Equal(t, "old", content(t, path))
			assert.Equal(t, []string{"proof.pdf"}, names(t, filepath.Dir(path)))
		})
	}
}

func TestAPanickingWriterLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	assert.Panics(t, func() {
		_ = outfile.Write(t.Context(), filepath.Join(folder, "proof.pdf"), func(io.Writer) error { panic("broken drawing") })
	})
	assert.Empty(t, names(t, folder))
}

func TestWriteRefusesWhatIsNoPlaceForAFile(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "file")
	locked := filepath.Join(folder, "locked.pdf")
	require.NoError(t, os.WriteFile(file, nil, 0o644))
	require.NoError(t, os.WriteFile(locked, []byte("old"), 0o444))
	for _, c := range []struct {
		name, path string
		kind       outfile.Kind
		says       string
	}{
		{"a folder", folder, outfile.IsFolder, "a folder of that name"},
		{"in no folder", filepath.Join(folder, "none", "p.pdf"), outfile.NoFolder, "folder does not exist"},
		{"in a file", filepath.Join(file, "p.pdf"), outfile.NoFolder, "folder does not exist"},
		{"a device", os.DevNull, outfile.NotAFile, "a device"},
		{"a protected file", locked, outfile.NotAllowed, "write-protected"},
		{"without a name", "", outfile.Failed, "no name"},
	} {
		t.Run(c.name, func(t *testing.T) {
			before := names(t, folder)
			err := outfile.Write(t.Context(), c.path, say("new"))
			assert.Equal(t, c.kind, kindOf(t, err))
			assert.ErrorContains(t, err, c.says)
			assert.Equal(t, before, names(t, folder))
		})
	}
	assert.Equal(t, "old", content(t, locked))
}

func TestAnEndedContextLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "proof.pdf")
	ctx, cancel := context.WithCancelCause(t.Context())
	interrupted := errors.New("interrupted")
	err := outfile.Write(ctx, path, func(w io.Writer) error {
		cancel(interrupted)
		for range 100 {
			if _, err := w.Write(make([]byte, 100_000)); err != nil {
				return err
			}
		}
		return nil
	})
	assert.Equal(t, interrupted, err)
	assert.Empty(t, names(t, folder))

	b := outfile.NewBatch(ctx)
	assert.Equal(t, interrupted, b.Add(path, say("new")))
	assert.Equal(t, interrupted, b.Commit())
}

func TestABatchEndedBeforeItsCommitLeavesNothing(t *testing.T) {
	folder := t.TempDir()
	ctx, cancel := context.WithCancel(t.Context())
	b := outfile.NewBatch(ctx)
	require.NoError(t, b.Add(filepath.Join(folder, "a.svg"), say("a")))
	cancel()
	assert.ErrorIs(t, b.Commit(), context.Canceled)
	b.Discard()
	assert.Empty(t, names(t, folder))
}

func TestABatchShowsNoFileBeforeAllAreWritten(t *testing.T) {
	folder := t.TempDir()
	a, c := filepath.Join(folder, "a.svg"), filepath.Join(folder, "b.svg")
	b := outfile.NewBatch(t.Context())
	defer b.Discard()
	require.NoError(t, b.Add(a, say("a")))
	require.NoError(t, b.Add(c, say("b")))
	assert.NoFileExists(t, a)
	require.NoError(t, b.Commit())
	assert.Equal(t, []string{"a.svg", "b.svg"}, names(t, folder))
	assert.Equal(t, "b", content(t, c))
}

func TestABatchRefusesTheSameNameTwice(t *testing.T) {
	folder := t.TempDir()
	b := outfile.NewBatch(t.Context())
	defer b.Discard()
	require.NoError(t, b.Add(filepath.Join(folder, "a.svg"), say("a")))
	err := b.Add(folder+"/./a.svg", say("b"))
	assert.Equal(t, outfile.Twice, kindOf(t, err))
}

func TestABatchThatCannotBePlacedRestoresTheOldFiles(t *testing.T) {
	folder := t.TempDir()
	old, fresh, blocked := filepath.Join(folder, "a.svg"), filepath.Join(folder, "b.svg"), filepath.Join(folder, "c.svg")
	require.NoError(t, os.WriteFile(old, []byte("old"), 0o644))
	b := outfile.NewBatch(t.Context())
	for _, path := range []string{old, fresh, blocked} {
		require.NoError(t, b.Add(path, say("new")))
	}
	require.NoError(t, os.Mkdir(blocked, 0o755))
	err := b.Commit()
	require.Error(t, err)
	assert.ErrorContains(t, err, blocked)
	assert.Equal(t, "old", content(t, old))
	assert.Equal(t, []string{"a.svg", "c.svg"}, names(t, folder))
}

func TestALeftoverOfAKilledRunIsSweptAndOneInUseIsNot(t *testing.T) {
	folder := t.TempDir()
	stale := filepath.Join(folder, ".yokeline-LEFTOVER.part")
	foreign := filepath.Join(folder, ".other-LEFTOVER.part")
	for _, path := range []string{stale, foreign} {
		require.NoError(t, os.WriteFile(path, []byte("half"), 0o644))
	}
	running := outfile.NewBatch(t.Context())
	defer running.Discard()
	require.NoError(t, running.Add(filepath.Join(folder, "slow.pdf"), say("slow")))
	require.NoError(t, outfile.Write(t.Context(), filepath.Join(folder, "quick.pdf"), say("quick")))
	assert.NoFileExists(t, stale)
	assert.FileExists(t, foreign)
	require.NoError(t, running.Commit(), "the file in use was left alone")
	assert.Equal(t, []string{".other-LEFTOVER.part", "quick.pdf", "slow.pdf"}, names(t, folder))
}
