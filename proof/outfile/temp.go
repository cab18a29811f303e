package outfile

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Names of temporary files: hidden, and ours beyond doubt.
const (
	tempStart = ".yokeline-"
	tempEnd   = ".part"
	backupEnd = ".old" + tempEnd
)

// tries bounds how often a new name is drawn.
const tries = 100

// createTemp makes a temporary file beside path and locks it for as long as it
// is open. The system drops the lock of a process that dies, which is how a
// later run tells a file left behind from one in use.
func createTemp(path string, mode fs.FileMode) (*os.File, error) {
	for range tries {
		name := filepath.Join(filepath.Dir(path), tempStart+rand.Text()+tempEnd)
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode|0o200)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		lock(f)
		if stillThere(f) {
			return f, nil
		}
		// Another run swept the file away before it was locked.
		_ = f.Close()
	}
	return nil, errors.New("no free name for a temporary file")
}

// stillThere reports whether the file's name still leads to it.
func stillThere(f *os.File) bool {
	open, err := f.Stat()
	if err != nil {
		return false
	}
	named, err := os.Lstat(f.Name())
	return err == nil && os.SameFile(open, named)
}

// removeStale removes temporary files of ours that no process holds. What
// cannot be read or removed stays: it is in nobody's way.
func removeStale(folder string) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return
	}
	for _, e := range entries {
		name := e.Name()
		if !strings.HasPrefix(name, tempStart) || !strings.HasSuffix(name, tempEnd) || !e.Type().IsRegular() {
			continue
		}
		removeUnlocked(filepath.Join(folder, name))
	}
}
