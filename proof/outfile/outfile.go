// Package outfile puts output files in place whole or not at all. Each is
// written to a temporary file in the folder it goes to, forced to disk and only
// then renamed over the old one, so that a full disk, an interrupt or a power
// cut leaves the old file as it was. A Batch does so for the files of one proof
// together.
package outfile

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Kind says why an output file could not be written.
type Kind uint8

// The reasons.
const (
	Failed     Kind = iota // the system refused while writing, such as a full disk
	NoFolder               // the folder is not there or is no folder
	IsFolder               // the name is that of a folder
	NotAFile               // the name is that of a device, a pipe or a socket
	NotAllowed             // the folder or the file is write-protected
	Twice                  // two files of one batch have the same name
)

// Error is the failure to write one output file; the old file is intact.
type Error struct {
	Kind Kind
	Path string
	Err  error // what the system said; may be nil
}

// Error names the file and the remedy.
func (e *Error) Error() string {
	said := map[Kind]string{
		Failed:     "cannot write %s: %v",
		NoFolder:   "cannot write %s: its folder does not exist; make it first or choose another",
		IsFolder:   "cannot write %s: a folder of that name is in the way; choose another name",
		NotAFile:   "cannot write %s: it is a device or a pipe; choose a file",
		NotAllowed: "cannot write %s: it or its folder is write-protected; allow writing or choose another",
		Twice:      "cannot write %s twice; give each output its own name",
	}[e.Kind]
	if e.Kind == Failed {
		return fmt.Sprintf(said, e.Path, e.Err)
	}
	return fmt.Sprintf(said, e.Path)
}

// Unwrap returns what the system said.
func (e *Error) Unwrap() error { return e.Err }

// Write writes one file. The file appears under its name only when write has
// returned nil and all its bytes are on disk. When the context ends first, its
// cause is returned. Any other failure is an *Error, or write's own error
// wrapped in one.
func Write(ctx context.Context, path string, write func(io.Writer) error) error {
	b := NewBatch(ctx)
	defer b.Discard()
	if err := b.Add(path, write); err != nil {
		return err
	}
	return b.Commit()
}

// classify turns what the system said into an *Error.
func classify(path string, err error) error {
	kind := Failed
	switch {
	case errors.Is(err, fs.ErrPermission), isReadOnly(err):
		kind = NotAllowed
	case errors.Is(err, fs.ErrNotExist), isNotFolder(err):
		kind = NoFolder
	}
	return &Error{Kind: kind, Path: path, Err: err}
}

// target is where a file will go and what is there now.
type target struct {
	asked string // as the caller named it
	path  string // what to replace: links are followed
	mode  fs.FileMode
	old   bool
}

// newFileMode is what new files get, less the process's umask.
const newFileMode fs.FileMode = 0o666

// aim checks that a file may go to path.
func aim(path string) (target, error) {
	t := target{asked: path, path: path, mode: newFileMode}
	if path == "" {
		return t, &Error{Kind: Failed, Path: "the output", Err: errors.New("it has no name")}
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		t.path = real
	}
	folder, err := os.Stat(filepath.Dir(t.path))
	if err != nil || !folder.IsDir() {
		return t, &Error{Kind: NoFolder, Path: path, Err: err}
	}
	info, err := os.Stat(t.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return t, nil
	case err != nil:
		return t, classify(path, err)
	case info.IsDir():
		return t, &Error{Kind: IsFolder, Path: path}
	case !info.Mode().IsRegular():
		return t, &Error{Kind: NotAFile, Path: path}
	case info.Mode().Perm()&0o222 == 0:
		// A rename would get round a protection that someone has set.
		return t, &Error{Kind: NotAllowed, Path: path}
	}
	t.mode, t.old = info.Mode().Perm(), true
	return t, nil
}
