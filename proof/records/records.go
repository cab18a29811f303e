// Package records keeps what was issued and signed beside the job: one folder a
// revision with the job as it was, the proof that was sent, the facts that its
// fingerprint is taken of, and every answer that came back. Nothing in it is
// ever overwritten. A revision counts only once its facts are there: they are
// put in place last.
package records

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"

	"yokeline/lettering/signoff"
	"yokeline/lettering/source"
)

// Names in the folder of a revision.
const (
	FactsFile = "facts.txt"
	AskedFile = "asked.json"
	InputsDir = "job" // the job file and what it names, as they were
	revision  = "revision-"
	signed    = "signed-"
	notes     = "notes-"
	answerEnd = ".json"
)

// Folder is the name of the folder of records for a job file: issued for
// job.yaml, and spring-issued for spring.yaml, since several jobs may share a
// folder.
func Folder(jobFile string) string {
	stem := strings.TrimSuffix(path.Base(jobFile), path.Ext(jobFile))
	if stem == "job" {
		return "issued"
	}
	return stem + "-issued"
}

// Revision is one proof that was issued.
type Revision struct {
	Number      int // counted from 1
	Fingerprint string
	Asked       Asked
	Answers     []Answer // in the order in which they came
}

// Asked is how a revision was made, beside its job: what else it takes to draw
// the very same again.
type Asked struct {
	Job      string `json:"job"`      // the job file in InputsDir
	Rules    string `json:"rules"`    // rule book of the command line, an id or a file in InputsDir; empty for the job's own
	Season   string `json:"season"`   // of the command line
	Category string `json:"category"` // of the command line
	// Onto is the number of the signed revision that players were added to; 0 for
	// an order of its own.
	Onto int `json:"onto"`
	// Whole is set where such a proof shows everybody all the same.
	Whole bool `json:"whole"`
}

// Answer is a sign-off file that was recorded.
type Answer struct {
	File   string // its name in the folder of the revision
	Binds  bool   // it signed the proof; else it asks for changes
	Answer *signoff.Answer
}

// Dir is the name of the revision's folder among the records.
func (r Revision) Dir() string { return DirOf(r.Number) }

// NumberOf is the number of the revision that a folder is of; false for others.
func NumberOf(dir string) (int, bool) { return numbered(dir, revision, "") }

// DirOf is the folder of the revision with a number.
func DirOf(number int) string { return revision + strconv.Itoa(number) }

// Signed returns the answer that signed the revision, nil when none has.
func (r Revision) Signed() *signoff.Answer {
	for _, a := range slices.Backward(r.Answers) {
		if a.Binds {
			return a.Answer
		}
	}
	return nil
}

// NextFile names the file that a further answer to the revision is kept in.
func (r Revision) NextFile(binds bool) string {
	n, prefix := 1, notes
	if binds {
		prefix = signed
	}
	for _, a := range r.Answers {
		if a.Binds == binds {
			n++
		}
	}
	return prefix + strconv.Itoa(n) + answerEnd
}

// List reads the revisions that are kept, from the first to the last; none when
// there is no such folder. An answer that cannot be read is an error: it was
// whole when it was recorded.
func List(records fs.FS) ([]Revision, error) {
	entries, err := fs.ReadDir(records, ".")
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var out []Revision
	for _, e := range entries {
		number, ok := numbered(e.Name(), revision, "")
		if !ok || !e.IsDir() {
			continue
		}
		r, known, err := read(records, number)
		if err != nil {
			return nil, err
		}
		if known {
			out = append(out, r)
		}
	}
	slices.SortFunc(out, func(a, b Revision) int { return a.Number - b.Number })
	return out, nil
}

// read reads one revision; known is false for one whose writing was cut off.
func read(records fs.FS, number int) (r Revision, known bool, err error) {
	r.Number = number
	facts, err := fs.ReadFile(records, path.Join(r.Dir(), FactsFile))
	if errors.Is(err, fs.ErrNotExist) {
		return r, false, nil
	}
	if err != nil {
		return r, false, err
	}
	sum := sha256.Sum256(facts)
	r.Fingerprint = hex.EncodeToString(sum[:])
	asked, err := fs.ReadFile(records, path.Join(r.Dir(), AskedFile))
	if err == nil {
		err = json.Unmarshal(asked, &r.Asked)
	}
	if err != nil {
		return r, false, fmt.Errorf("%s: %w; restore the file from a copy", path.Join(r.Dir(), AskedFile), err)
	}
	if r.Asked.Onto < 0 || r.Asked.Onto >= number { // else sizing it again would never end
		return r, false, fmt.Errorf("%s: revision %d cannot add to revision %d; restore the file from a copy", path.Join(r.Dir(), AskedFile), number, r.Asked.Onto)
	}
	for _, binds := range [2]bool{false, true} {
		for {
			name := r.NextFile(binds)
			data, err := fs.ReadFile(records, path.Join(r.Dir(), name))
			if errors.Is(err, fs.ErrNotExist) {
				break
			}
			if err != nil {
				return r, false, err
			}
			a, faults := signoff.Read(path.Join(r.Dir(), name), data)
			if len(faults) > 0 {
				return r, false, damaged(faults)
			}
			if a.Fingerprint != r.Fingerprint {
				return r, false, fmt.Errorf("revision %d cannot be drawn again as it was: %s is an answer to another proof than its %s tells of; restore both from a copy", number, path.Join(r.Dir(), name), FactsFile)
			}
			r.Answers = append(r.Answers, Answer{File: name, Binds: binds, Answer: a})
		}
	}
	return r, true, nil
}

func damaged(faults source.Faults) error {
	for i := range faults {
		faults[i].Hint = "restore the file from a copy, or take it out of the records"
	}
	return faults
}

// numbered reads the number in a name such as revision-3.
func numbered(name, before, after string) (int, bool) {
	text, ok := strings.CutPrefix(name, before)
	if !ok {
		return 0, false
	}
	if text, ok = strings.CutSuffix(text, after); !ok {
		return 0, false
	}
	n, err := strconv.Atoi(text)
	return n, err == nil && n > 0 && strconv.Itoa(n) == text
}

// Next returns the revision that an order with a fingerprint is: the last one
// when that has the same, else a new one after it. An order that goes back to an
// earlier state is a new revision all the same, since the coach saw others in
// between.
func Next(all []Revision, fingerprint string) (number int, kept bool) {
	if len(all) == 0 {
		return 1, false
	}
	last := all[len(all)-1]
	if last.Fingerprint == fingerprint {
		return last.Number, true
	}
	return last.Number + 1, false
}

// Find returns the last revision with a fingerprint.
func Find(all []Revision, fingerprint string) (Revision, bool) {
	for _, r := range slices.Backward(all) {
		if r.Fingerprint == fingerprint {
			return r, true
		}
	}
	return Revision{}, false
}

// LastSigned returns the last revision that was signed.
func LastSigned(all []Revision) (Revision, bool) {
	for _, r := range slices.Backward(all) {
		if r.Signed() != nil {
			return r, true
		}
	}
	return Revision{}, false
}

// Line says in one line what is kept of a revision.
func (r Revision) Line() string {
	state := "not answered yet"
	switch a := r.Signed(); {
	case a != nil:
		state = fmt.Sprintf("signed by %s on %s", a.Signed.Name, a.Signed.Date)
	case len(r.Answers) > 0:
		state = "changes asked for"
	}
	return fmt.Sprintf("revision %d, %s: %s", r.Number, signoff.Short(r.Fingerprint), state)
}
