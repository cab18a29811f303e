package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizes"
	"yokeline/lettering/source"
	"yokeline/lettering/typeface"
)

// jobFile is what a job is called in its folder.
const jobFile = "job.yaml"

// job is an order that was read, with what is needed to size it.
type job struct {
	order *order.Order
	rules *rulebook.Rules
	face  func(string) (*typeface.Face, error)
}

// jobChoice says which job to read and what the command line changes in it.
type jobChoice struct {
	path   string // folder or file
	demo   bool
	rules  string // id or file, instead of the job's own
	season string
}

// readJob reads a job, its roster and its rule book.
func readJob(c jobChoice) (*job, error) {
	var j job
	var err error
	known := []order.Option{order.WithFaces(faceIDs()...), order.WithRules(rulebook.IDs()...)}
	if c.demo {
		name, files := order.Demo()
		j.face = openFace
		j.order, err = order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) }, known...)
	} else {
		folder, name, located := locate(c.path)
		if located != nil {
			return nil, located
		}
		j.face = openFaceIn(folder)
		j.order, err = order.Read(name, func(file string) ([]byte, error) {
			return os.ReadFile(filepath.Join(folder, file))
		}, known...)
	}
	if err != nil {
		return nil, err
	}
	return &j, j.openRules(c)
}

// locate splits a job's path into its folder and the file in it.
func locate(path string) (folder, file string, err error) {
	info, err := os.Stat(path)
	if err != nil {
		return "", "", usagef("%s is not there; give a folder with %s in it, or the file", path, jobFile)
	}
	if info.IsDir() {
		return path, jobFile, nil
	}
	return filepath.Dir(path), filepath.Base(path), nil
}

// openRules reads the rule book of the season that the order is for.
func (j *job) openRules(c jobChoice) error {
	if c.rules != "" {
		j.order.Rules = c.rules
	}
	if c.season != "" {
		j.order.Season = c.season
	}
	if j.order.Rules == "" {
		return nil
	}
	book, err := openBook(j.order.Rules)
	if err != nil {
		return err
	}
	if j.order.Season == "" {
		return source.Faults{{Message: fmt.Sprintf("rules %s: the season is not known", j.order.Rules),
			Hint: "write due: or season: in the job, or give --season"}}
	}
	j.rules, err = book.In(j.order.Season)
	return err
}

// openBook opens a rule book by its id, or reads one from the shop's own file.
func openBook(name string) (*rulebook.Book, error) {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".yaml", ".yml":
		data, err := os.ReadFile(name)
		if err != nil {
			return nil, usagef("rule book %s: %v", name, err)
		}
		book, faults := rulebook.Read(name, data)
		if len(faults) > 0 {
			return nil, faults
		}
		return book, nil
	}
	return rulebook.Load(name)
}

// Whether the ways out of names that do not fit are wanted: they cost more than
// all the rest.
const (
	withWaysOut    = true
	withoutWaysOut = false
)

// size sizes the job on all processors.
func (j *job) size(ctx context.Context, s streams, waysOut bool) (*sizes.Sized, error) {
	return sizes.Resolve(ctx, j.order, sizes.Options{
		Face: j.face, Rules: j.rules, Workers: runtime.GOMAXPROCS(0), Progress: s.progress("sizing"), NoWaysOut: !waysOut,
	})
}
