package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"yokeline/lettering/typeface"
)

// inputs reads the files of a job and remembers what it read, so that a proof
// can be kept with exactly what it was drawn from.
type inputs struct {
	read  func(name string) ([]byte, error)
	files []inputFile // each once, in the order of reading
}

type inputFile struct {
	name string // as the job calls it
	data []byte
}

func (in *inputs) open(name string) ([]byte, error) {
	data, err := in.read(name)
	if err == nil && !slices.ContainsFunc(in.files, func(f inputFile) bool { return f.name == name }) {
		in.files = append(in.files, inputFile{name, data})
	}
	return data, err
}

// face opens an embedded face, or a font file that the job names.
func (in *inputs) face(name string) (*typeface.Face, error) {
	if !isFontFile(name) {
		return typeface.Embedded(name)
	}
	data, err := in.open(name)
	if err != nil {
		return nil, err
	}
	return typeface.Open(name, data)
}

// sameFonts tells whether the font files that another state of the job was drawn
// from are still what they were: their names alone do not say so.
func (in *inputs) sameFonts(before *inputs) bool {
	for _, f := range before.files {
		if !isFontFile(f.name) {
			continue
		}
		if now, err := in.read(f.name); err != nil || !bytes.Equal(now, f.data) {
			return false
		}
	}
	return true
}

// inFolder reads files of a folder; a full path is taken as it is.
func inFolder(folder string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		if !filepath.IsAbs(name) {
			name = filepath.Join(folder, name)
		}
		return os.ReadFile(name)
	}
}

// inFiles reads files that are not on disk, or are kept among the records.
func inFiles(files fs.FS) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) { return fs.ReadFile(files, name) }
}
