package outfile

import (
	"bufio"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
)

// Batch is a set of files that appear together. It is not safe for concurrent
// use. Always call Discard at the end: after Commit it does nothing.
type Batch struct {
	ctx     context.Context
	waiting []*draft
	swept   []string
}

// draft is one file that is written but not yet in its place.
type draft struct {
	target
	temp   *os.File
	backup string   // a second name of the old file while the batch is put in place
	held   *os.File // the old file, locked so that no other run sweeps the backup
}

// NewBatch returns an empty batch. When ctx ends, Add and Commit stop and
// return its cause.
func NewBatch(ctx context.Context) *Batch { return &Batch{ctx: ctx} }

// Add writes one file to a temporary one beside its place and forces it to
// disk. On an error the temporary file is gone, and the batch can be discarded.
func (b *Batch) Add(path string, write func(io.Writer) error) error {
	if err := context.Cause(b.ctx); err != nil {
		return err
	}
	t, err := aim(path)
	if err != nil {
		return err
	}
	if slices.ContainsFunc(b.waiting, func(d *draft) bool { return filepath.Clean(d.path) == filepath.Clean(t.path) }) {
		return &Error{Kind: Twice, Path: path}
	}
	b.sweep(filepath.Dir(t.path))
	temp, err := createTemp(t.path, t.mode)
	if err != nil {
		return classify(path, err)
	}
	d, kept := &draft{target: t, temp: temp}, false
	defer func() { // also when write panics
		if !kept {
			d.discard()
		}
	}()
	if err := d.fill(b.ctx, write); err != nil {
		return err
	}
	b.waiting, kept = append(b.waiting, d), true
	return nil
}

// bufferSize spares the system many small writes.
const bufferSize = 64 << 10

// sweep removes, once a folder, what earlier runs that were killed left there.
func (b *Batch) sweep(folder string) {
	if !slices.Contains(b.swept, folder) {
		b.swept = append(b.swept, folder)
		removeStale(folder)
	}
}

// fill writes the content and forces it to disk. The file stays open: its lock
// tells other runs that it is in use.
func (d *draft) fill(ctx context.Context, write func(io.Writer) error) error {
	out := bufio.NewWriterSize(&stoppable{ctx, d.temp}, bufferSize)
	err := write(out)
	if err == nil {
		err = out.Flush()
	}
	if cause := context.Cause(ctx); cause != nil {
		return cause
	}
	if err != nil {
		return &Error{Kind: Failed, Path: d.asked, Err: err}
	}
	if d.old {
		err = d.temp.Chmod(d.mode)
	}
	if err = errors.Join(err, d.temp.Sync()); err != nil {
		return classify(d.asked, err)
	}
	return nil
}

// stoppable fails as soon as the context has ended, so that a long write stops.
type stoppable struct {
	ctx context.Context
	w   io.Writer
}

func (s *stoppable) Write(p []byte) (int, error) {
	if err := context.Cause(s.ctx); err != nil {
		return 0, err
	}
	return s.w.Write(p)
}

// Commit puts all files in their places. If one cannot be, those already put
// there are taken back and the old files restored, where the file system has
// hard links. No file system replaces several files in one step: a power cut
// in the middle leaves some old and some new, each of them whole.
func (b *Batch) Commit() error {
	if err := context.Cause(b.ctx); err != nil {
		return err
	}
	for i, d := range b.waiting {
		if err := d.place(len(b.waiting) > 1); err != nil {
			for _, done := range slices.Backward(b.waiting[:i]) {
				done.restore()
			}
			b.waiting = b.waiting[i:]
			b.Discard()
			return classify(d.asked, err)
		}
	}
	var folders []string
	for _, d := range b.waiting {
		d.settle()
		if folder := filepath.Dir(d.path); !slices.Contains(folders, folder) {
			folders = append(folders, folder)
		}
	}
	b.waiting = nil
	for _, folder := range folders {
		if err := syncFolder(folder); err != nil {
			return classify(folder, err)
		}
	}
	return nil
}

// Discard removes whatever has not been put in place.
func (b *Batch) Discard() {
	for _, d := range b.waiting {
		d.discard()
	}
	b.waiting = nil
}

func (d *draft) discard() {
	// Removed before it is closed: while it is locked no other run takes it.
	_ = os.Remove(d.temp.Name())
	d.settle()
}

// place renames the file to its name. keep holds on to the old file by a
// second name, so that it can be restored.
func (d *draft) place(keep bool) error {
	if keep && d.old {
		d.backUp()
	}
	return os.Rename(d.temp.Name(), d.path)
}

func (d *draft) backUp() {
	old, err := os.Open(d.path)
	if err != nil {
		return
	}
	lock(old)
	d.held = old
	if backup := d.temp.Name() + backupEnd; os.Link(d.path, backup) == nil {
		d.backup = backup
	}
}

// restore undoes place.
func (d *draft) restore() {
	switch {
	case d.backup != "":
		_ = os.Rename(d.backup, d.path)
		d.backup = ""
	case !d.old:
		_ = os.Remove(d.path)
	}
	d.settle()
}

// settle lets go of the old file and of the locks.
func (d *draft) settle() {
	if d.backup != "" {
		_ = os.Remove(d.backup)
		d.backup = ""
	}
	if d.held != nil {
		_ = d.held.Close()
		d.held = nil
	}
	_ = d.temp.Close()
}
