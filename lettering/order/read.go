package order

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"yokeline/lettering/source"
)

// Read reads an order: the job file and the roster and the spec sheet it names,
// each through read, which finds a name relative to the job. The error is
// source.Faults with everything that is wrong with the files; the order is
// then nil.
func Read(jobFile string, read func(name string) ([]byte, error), options ...Option) (*Order, error) {
	data, err := read(jobFile)
	if err != nil {
		return nil, refuse(jobFile, notRead("the job", err), "").Err()
	}
	job, r := readJob(jobFile, data, options)
	faults := append(slices.Clone(r.faults), job.readSpec(read)...)
	if job.Roster.File != "" {
		roster, more := job.readRoster(read)
		faults = append(faults, more...)
		if roster != nil {
			job.Order.Players = roster.Players
			job.Order.Notes = append(job.Order.Notes, roster.Notes...)
		}
	}
	faults = append(faults, job.wornSpec()...)
	if len(faults) > 0 {
		faults.Sort()
		return nil, faults
	}
	return &job.Order, nil
}

func (j *Job) readRoster(read func(name string) ([]byte, error)) (*Roster, source.Faults) {
	data, err := read(j.Roster.File)
	if err != nil {
		return nil, source.Faults{j.Roster.missing("roster: "+notRead(j.Roster.File, err), "write its name as it is found beside the job")}
	}
	return ReadRoster(j.Roster.File, data, j.Roster.Sheet, j.Order.rosterOptions())
}

// notRead leaves out the path that errors of the file system repeat.
func notRead(what string, err error) string {
	var path *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return what + " is not there"
	case errors.As(err, &path):
		return fmt.Sprintf("%s cannot be read: %v", what, path.Err)
	}
	return fmt.Sprintf("%s cannot be read: %v", what, err)
}
