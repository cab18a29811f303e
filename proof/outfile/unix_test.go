//go:build linux

package outfile_test

import (
	"bytes"
	"context"
	"flag"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/proof/outfile"
)

// asNobody runs do on a thread that has lost root's right to write anywhere.
// The thread is never unlocked, so the system ends it with the goroutine.
func asNobody(t *testing.T, do func()) {
	t.Helper()
	if os.Geteuid() != 0 {
		do()
		return
	}
	done := make(chan struct{})
	go func() {
		defer close(done)
		runtime.LockOSThread()
		// The raw call concerns this thread alone; the package's own would
		// reach for all of them.
		const nobody = 65534
		_, _, _ = syscall.RawSyscall(syscall.SYS_SETFSUID, nobody, 0, 0)
		do()
	}()
	<-done
}

func TestWriteRefusesAProtectedFolderAndLeavesTheOldFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "proof.pdf")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o666))
	require.NoError(t, os.Chmod(path, 0o666))
	require.NoError(t, os.Chmod(filepath.Dir(folder), 0o755))
	require.NoError(t, os.Chmod(folder, 0o555))
	t.Cleanup(func() { _ = os.Chmod(folder, 0o755) })
	var err error
	asNobody(t, func() { err = outfile.Write(t.Context(), path, say("new")) })
	assert.Equal(t, outfile.NotAllowed, kindOf(t, err))
	assert.ErrorContains(t, err, "write-protected")
	assert.Equal(t, "old", content(t, path))
}

var long = flag.Bool("long", false, "kill the writing process 300 times, in place of 8")

// childTarget names, in the environment of a child process, the file that it
// writes again and again until it is killed.
const childTarget = "OUTFILE_TEST_TARGET"

func TestMain(m *testing.M) {
	if path := os.Getenv(childTarget); path != "" {
		writeForEver(path)
	}
	flag.Parse()
	os.Exit(m.Run())
}

// pageOf is a file whose every byte is the same, so that half of one and half
// of another is seen.
func pageOf(letter byte) []byte { return bytes.Repeat([]byte{letter}, 300_000) }

func writeForEver(path string) {
	for i := 0; ; i++ {
		data := pageOf('a' + byte(i%26))
		err := outfile.Write(context.Background(), path, func(w io.Writer) error {
			_, err := io.Copy(w, bytes.NewReader(data))
			return err
		})
		if err != nil {
			_, _ = os.Stderr.WriteString(err.Error())
			os.Exit(3)
		}
		if i == 0 {
			_, _ = os.Stdout.WriteString("begun\n")
		}
	}
}

func TestAProcessKilledWhileWritingLeavesAWholeFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "proof.pdf")
	self, err := os.Executable()
	require.NoError(t, err)
	kills := 8
	if *long {
		kills = 300
	}
	leftovers := 0
	for i := range kills {
		child := exec.Command(self)
		child.Env = append(os.Environ(), childTarget+"="+path)
		out, err := child.StdoutPipe()
		require.NoError(t, err)
		require.NoError(t, child.Start())
		_, err = io.ReadFull(out, make([]byte, len("begun\n")))
		require.NoError(t, err)
		time.Sleep(time.Duration(i%16*3) * time.Millisecond)
		require.NoError(t, child.Process.Signal(syscall.SIGKILL))
		_ = child.Wait()

		data := content(t, path)
		require.NotEmpty(t, data)
		require.Equal(t, string(pageOf(data[0])), data, "one whole version")
		for _, name := range names(t, folder) {
			if strings.HasSuffix(name, ".part") {
				leftovers++
			}
		}
	}
	t.Logf("%d temporary files were left behind and swept by the next run", leftovers)
	require.NoError(t, outfile.Write(t.Context(), path, say("at last")))
	assert.Equal(t, []string{"proof.pdf"}, names(t, folder))
}
