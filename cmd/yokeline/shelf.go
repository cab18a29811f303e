package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/sizes"
	"yokeline/proof/records"
)

// shelf is where the proofs of one job are kept.
type shelf struct {
	path string // of the folder, empty for the demo, of which nothing is kept
	all  []records.Revision
}

func openShelf(c jobChoice) (*shelf, error) {
	if c.demo {
		return &shelf{}, nil
	}
	folder, file, err := locate(c.path)
	if err != nil {
		return nil, err
	}
	if _, _, kept := keptJob(folder); kept {
		return &shelf{}, nil // a record keeps no records of its own
	}
	s := &shelf{path: filepath.Join(folder, records.Folder(file))}
	if s.all, err = records.List(s.files()); err != nil {
		return s, fmt.Errorf("the proofs that are kept in %s cannot be read: %w", s.path, err)
	}
	return s, nil
}

// keptJob reports whether a folder is that of a job among the records, such as
// issued/revision-2/job, and where the records and which revision it is.
func keptJob(folder string) (shelf string, number int, ok bool) {
	folder = filepath.Clean(folder)
	revision := filepath.Dir(folder)
	number, ok = records.NumberOf(filepath.Base(revision))
	shelf = filepath.Dir(revision)
	ok = ok && filepath.Base(folder) == records.InputsDir && strings.HasSuffix(filepath.Base(shelf), "issued")
	return shelf, number, ok
}

// asItWas is prepare for a job of which something may be kept: one among the
// records is sized exactly as it was issued.
func asItWas(ctx context.Context, out streams, path string) (*issue, error) {
	shelfPath, number, kept := keptJob(path)
	if !kept {
		return prepare(ctx, out, jobChoice{path: path})
	}
	s := &shelf{path: shelfPath}
	var err error
	if s.all, err = records.List(s.files()); err != nil {
		return nil, fmt.Errorf("the proofs that are kept in %s cannot be read: %w", s.path, err)
	}
	for _, r := range s.all {
		if r.Number == number {
			return s.replay(ctx, out, r)
		}
	}
	return prepare(ctx, out, jobChoice{path: path})
}

func (s *shelf) files() fs.FS { return os.DirFS(s.path) }

// replay sizes a revision again, as it was issued. The error says so when this
// version of the program comes to something else.
func (s *shelf) replay(ctx context.Context, out streams, r records.Revision) (*issue, error) {
	files, err := fs.Sub(s.files(), r.Dir()+"/"+records.InputsDir)
	if err != nil {
		return nil, err
	}
	c := jobChoice{kept: files, keptFile: r.Asked.Job, rules: r.Asked.Rules, season: r.Asked.Season, category: r.Asked.Category}
	j, err := readJob(c)
	if err != nil {
		return nil, fmt.Errorf("revision %d as it was kept: %w", r.Number, err)
	}
	i := &issue{job: j, shelf: s, onto: r.Asked.Onto, whole: r.Asked.Whole, number: r.Number, kept: true}
	if err := i.size(ctx, out); err != nil {
		return nil, err
	}
	if i.print != r.Fingerprint {
		return nil, fmt.Errorf("revision %d cannot be drawn again as it was: its records were changed, or this version of yokeline sizes it otherwise; restore them from a copy, use the version it was issued with, or issue a new proof of the whole order", r.Number)
	}
	return i, nil
}

// asked is a job with the rule book, season and category that the command line
// gave for a revision; a rule book in a file is the one that is kept with it.
func (s *shelf) asked(c jobChoice, r records.Revision) jobChoice {
	c.rules, c.season, c.category = r.Asked.Rules, r.Asked.Season, r.Asked.Category
	if isBookFile(c.rules) {
		c.rules = filepath.Join(s.path, r.Dir(), records.InputsDir, c.rules)
	}
	return c
}

// settled sizes a signed revision with everything the coach chose.
func (s *shelf) settled(ctx context.Context, out streams, number int) (*sizes.Sized, error) {
	for _, r := range s.all {
		if r.Number != number || r.Signed() == nil {
			continue
		}
		i, err := s.replay(ctx, out, r)
		if err != nil {
			return nil, err
		}
		var chosen []sizes.Choice
		for _, c := range r.Signed().Choices {
			for _, q := range i.questions {
				if q.ID == c.Question {
					chosen = append(chosen, i.wholeRows(choices.Chosen(i.shown, q, c.Letter))...)
				}
			}
		}
		return i.job.sizeWith(ctx, out, sizes.Options{Chosen: chosen, Signed: i.base})
	}
	return nil, fmt.Errorf("revision %d is not signed", number)
}

// issue is an order on its way to the coach.
type issue struct {
	job    *job
	shelf  *shelf
	number int  // of the revision
	kept   bool // it is among the records already
	onto   int  // the signed revision that players were added to; 0 for none
	whole  bool // show everybody even so: players only left

	base      *sizes.Sized // what was signed then
	sized     *sizes.Sized // the whole order
	shown     *sizes.Sized // what the proof shows of it: the whole, or who was added
	rows      []int        // of shown in the whole; nil for the whole
	print     string       // the fingerprint
	results   []findings.Result
	questions []choices.Question
}

// prepare reads a job and sizes it for a proof: onto what was signed where only
// players were added since.
func prepare(ctx context.Context, out streams, c jobChoice) (*issue, error) {
	j, err := readJob(c)
	if err != nil {
		return nil, err
	}
	sh, err := openShelf(c)
	if err != nil {
		return nil, err
	}
	i := &issue{job: j, shelf: sh}
	if last, ok := records.LastSigned(sh.all); ok {
		if err := i.onTo(ctx, out, last); err != nil {
			return nil, err
		}
	}
	if err := i.size(ctx, out); err != nil {
		return nil, err
	}
	i.number, i.kept = records.Next(sh.all, i.print)
	return i, nil
}

// onTo decides what the order is sized onto. Where the job still asks for what
// was signed, whoever was signed stays as they are; where nobody came and nobody
// left, it is what was signed, made in the same way.
func (i *issue) onTo(ctx context.Context, out streams, last records.Revision) error {
	signed, err := i.shelf.replay(ctx, out, last)
	if err != nil {
		return err
	}
	if !sizes.SameJob(i.job.order, signed.job.order) || !i.job.in.sameFonts(signed.job.in) {
		return nil
	}
	if came, left := sizes.Joined(i.job.order, signed.job.order); came+left > 0 {
		i.onto, i.whole = last.Number, came == 0
	} else {
		i.onto = last.Asked.Onto
	}
	return nil
}

// size sizes the order, and finds what to say and to ask about it.
func (i *issue) size(ctx context.Context, out streams) error {
	var err error
	if i.onto > 0 {
		if i.base, err = i.shelf.settled(ctx, out, i.onto); err != nil {
			return err
		}
	}
	if i.sized, err = i.job.sizeWith(ctx, out, sizes.Options{Signed: i.base}); err != nil {
		return err
	}
	i.shown, i.print = i.sized, i.sized.Fingerprint()
	if i.base != nil && !i.whole {
		i.shown, i.rows = i.sized.Added()
	}
	i.results = findings.Check(i.job.rules, findings.Of(i.sized))
	i.questions = choices.Of(i.shown, i.results)
	return nil
}

// wholeRows turns players of what is shown into those of the whole order.
func (i *issue) wholeRows(chosen []sizes.Choice) []sizes.Choice {
	if i.rows != nil {
		for k := range chosen {
			chosen[k].Player = i.rows[chosen[k].Player]
		}
	}
	return chosen
}
