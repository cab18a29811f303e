//go:build unix

package outfile

import (
	"errors"
	"os"
	"syscall"
)

// lock marks the file as in use. A file system without locks is no reason to
// fail: there a file left behind merely stays.
func lock(f *os.File) { _ = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) }

// removeUnlocked removes the file unless a process holds it.
func removeUnlocked(path string) {
	f, err := os.OpenFile(path, os.O_RDONLY|syscall.O_NOFOLLOW, 0)
	if err != nil {
		return
	}
	defer f.Close()
	if syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil {
		_ = os.Remove(path)
	}
}

func isReadOnly(err error) bool { return errors.Is(err, syscall.EROFS) }

func isNotFolder(err error) bool { return errors.Is(err, syscall.ENOTDIR) }

// syncFolder forces the folder's names to disk; some file systems have no such
// thing and say so.
func syncFolder(folder string) error {
	f, err := os.Open(folder)
	if err != nil {
		return nil // a folder may be writable and not readable
	}
	defer f.Close()
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		return nil
	}
	return err
}
