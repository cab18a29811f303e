package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"yokeline/proof/outfile"
)

// manifestFile lists what make wrote into a folder, so that the next run can take
// away what it does not write again: an old sheet among new ones would be cut.
const manifestFile = "made.json"

type manifest struct {
	Fingerprint string   `json:"fingerprint"`
	Revision    string   `json:"revision"`
	Unsigned    bool     `json:"unsigned"`
	Files       []string `json:"files"`
}

// madeBefore lists what an earlier run wrote into the folder. The error is for a
// list that cannot be read: then nobody knows what in the folder is old.
func madeBefore(dir string) ([]string, error) {
	path := filepath.Join(dir, manifestFile)
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	var m manifest
	if err == nil {
		err = json.Unmarshal(data, &m)
	}
	if err != nil {
		return nil, &outfile.Error{Kind: outfile.Failed, Path: path, Err: fmt.Errorf("%w; choose another folder", err)}
	}
	return m.Files, nil
}

func (b *bench) manifest() error {
	text, err := json.MarshalIndent(manifest{Fingerprint: b.print, Revision: b.revision(), Unsigned: b.unsigned, Files: b.files}, "", "  ")
	if err != nil {
		return err
	}
	return b.add(manifestFile, writeBytes(append(text, '\n')))
}

// sweep takes away what an earlier run wrote and this one did not. A file that
// cannot be taken away stays; the list of this run does not name it.
func (b *bench) sweep(before []string) {
	for _, name := range before {
		if filepath.IsLocal(name) && !slices.Contains(b.files, name) {
			_ = os.Remove(filepath.Join(b.dir, name))
		}
	}
}
