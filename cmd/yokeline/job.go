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
	file  string // the job file in its folder
	in    *inputs
}

// jobChoice says which job to read and what the command line changes in it.
type jobChoice struct {
	path   string // folder or file
	demo   bool
	rules  string // id or file, instead of the job's own
	season string
	// category, such as women, instead of the job's own
	category string
	// kept and keptFile are a job that is kept among the records; nil for one at
	// path.
	kept     fs.FS
	keptFile string
}

// readJob reads a job, its roster and its rule book.
func readJob(c jobChoice) (*job, error) {
	file, read, err := c.source()
	if err != nil {
		return nil, err
	}
	j := &job{file: file, in: &inputs{read: read}}
	j.face = j.in.face
	j.order, err = order.Read(file, j.in.open,
		order.WithFaces(faceIDs()...), order.WithRules(rulebook.IDs()...), order.WithCategories(rulebook.CategoriesOf))
	if err != nil {
		return nil, err
	}
	return j, j.openRules(c)
}

// source says which file is the job, and how it and what it names are read.
func (c jobChoice) source() (file string, read func(string) ([]byte, error), err error) {
	switch {
	case c.demo:
		name, files := order.Demo()
		return name, inFiles(files), nil
	case c.kept != nil:
		return c.keptFile, inFiles(c.kept), nil
	}
	folder, name, err := locate(c.path)
	return name, inFolder(folder), err
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
	if isBookFile(c.rules) { // where it lies is nothing that the order asks for
		j.order.Rules = filepath.Base(c.rules)
	}
	if c.season != "" {
		j.order.Season = c.season
	}
	if c.category != "" {
		j.order.Category = c.category
	}
	if j.order.Rules == "" && c.category != "" {
		return usagef("--category: the job names no rule book; give --rules too")
	}
	if j.order.Rules == "" {
		return nil
	}
	book, err := j.openBook(c)
	if err != nil {
		return err
	}
	if j.order.Season == "" {
		return source.Faults{{Message: fmt.Sprintf("rules %s: the season is not known", j.order.Rules),
			Hint: "write due: or season: in the job, or give --season"}}
	}
	j.rules, err = book.InFor(j.order.Season, j.order.Category)
	if err == nil {
		j.order.Category = j.rules.Category
	}
	return err
}

// openBook opens the rule book of the order: from the job's files when it is kept
// with them, else as the command line names it.
func (j *job) openBook(c jobChoice) (*rulebook.Book, error) {
	if !isBookFile(j.order.Rules) {
		return rulebook.Load(j.order.Rules)
	}
	read := os.ReadFile
	if c.kept != nil {
		read = j.in.read
	}
	data, err := read(c.rules)
	if err != nil {
		return nil, usagef("rule book %s: %v", c.rules, err)
	}
	j.in.files = append(j.in.files, inputFile{j.order.Rules, data})
	return readBook(c.rules, data)
}

// openBook opens a rule book by its id, or reads one from the shop's own file.
func openBook(name string) (*rulebook.Book, error) {
	if !isBookFile(name) {
		return rulebook.Load(name)
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, usagef("rule book %s: %v", name, err)
	}
	return readBook(name, data)
}

func isBookFile(name string) bool {
	ext := strings.ToLower(filepath.Ext(name))
	return ext == ".yaml" || ext == ".yml"
}

func readBook(name string, data []byte) (*rulebook.Book, error) {
	book, faults := rulebook.Read(name, data)
	if len(faults) > 0 {
		return nil, faults
	}
	return book, nil
}

// Whether the ways out of names that do not fit are wanted: they cost more than
// all the rest.
const (
	withWaysOut    = true
	withoutWaysOut = false
)

// size sizes the job on all processors.
func (j *job) size(ctx context.Context, s streams, waysOut bool) (*sizes.Sized, error) {
	return j.sizeWith(ctx, s, sizes.Options{NoWaysOut: !waysOut})
}

// sizeWith is size with the ways that were chosen, or onto what was signed.
func (j *job) sizeWith(ctx context.Context, s streams, o sizes.Options) (*sizes.Sized, error) {
	o.Face, o.Rules, o.Workers, o.Progress, o.NumberWays = j.face, j.rules, runtime.GOMAXPROCS(0), s.progress("sizing"), true
	return sizes.Resolve(ctx, j.order, o)
}
