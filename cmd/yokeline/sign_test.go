package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/signoff"
)

// desk is a shop's folder in a test.
type desk struct {
	t   *testing.T
	dir string
}

func newDesk(t *testing.T) desk {
	t.Helper()
	d := desk{t, filepath.Join(t.TempDir(), "job")}
	d.run(exitDone, "start", d.dir)
	return d
}

// run runs a command line and returns what it printed.
func (d desk) run(code int, args ...string) (out, errs string) {
	d.t.Helper()
	var o, e bytes.Buffer
	got := run(context.Background(), args, streams{out: &o, err: &e, env: func(string) string { return "" }})
	require.Equal(d.t, code, got, "%v\n%s\n%s", args, &o, &e)
	return o.String(), e.String()
}

func (d desk) proof() string {
	d.t.Helper()
	_, errs := d.run(exitDone, "proof", d.dir, "-o", filepath.Join(d.dir, "out"))
	return errs
}

// answer is what a coach to whom everything is right sends back, after an edit.
func (d desk) answer(edit func(*signoff.Answer)) string {
	d.t.Helper()
	i, err := prepare(context.Background(), streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}, jobChoice{path: d.dir})
	require.NoError(d.t, err)
	a := signoff.Answer{Fingerprint: i.print, Signed: &signoff.Signed{Name: "Robin Vale", Date: "2027-02-24"}}
	for k, p := range i.shown.Players {
		a.Players = append(a.Players, signoff.Player{Row: k + 1, Name: p.Name, Number: p.Number, Answer: signoff.Right})
	}
	for _, q := range i.questions {
		if w := q.Ways[len(q.Ways)-1]; q.Open() {
			a.Choices = append(a.Choices, signoff.Choice{Question: q.ID, Letter: w.Letter, Way: w.Kind})
		}
	}
	edit(&a)
	data, err := a.Write()
	require.NoError(d.t, err)
	path := filepath.Join(d.t.TempDir(), "answer.json")
	require.NoError(d.t, os.WriteFile(path, data, 0o644))
	return path
}

func agreed(*signoff.Answer) {}

// edit replaces text in a file of the job.
func (d desk) edit(file, old, with string) {
	d.t.Helper()
	path := filepath.Join(d.dir, file)
	data, err := os.ReadFile(path)
	require.NoError(d.t, err)
	require.Contains(d.t, string(data), old)
	require.NoError(d.t, os.WriteFile(path, []byte(strings.Replace(string(data), old, with, 1)), 0o644))
}

// add writes players at the end of the roster.
func (d desk) add(rows string) {
	d.t.Helper()
	f, err := os.OpenFile(filepath.Join(d.dir, "roster.csv"), os.O_APPEND|os.O_WRONLY, 0o644)
	require.NoError(d.t, err)
	_, err = f.WriteString(rows)
	require.NoError(d.t, err)
	require.NoError(d.t, f.Close())
}

func (d desk) kept(parts ...string) string {
	return filepath.Join(append([]string{d.dir, "issued"}, parts...)...)
}

func TestAProofIsIssuedOnceForEachStateOfTheOrder(t *testing.T) {
	d := newDesk(t)
	assert.Contains(t, d.proof(), "revision 1")
	before, err := os.ReadFile(filepath.Join(d.dir, "out", "proof.pdf"))
	require.NoError(t, err)
	assert.Contains(t, d.proof(), "revision 1")
	after, err := os.ReadFile(filepath.Join(d.dir, "out", "proof.pdf"))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(before, after), "the same order gives the same bytes")
	kept, err := os.ReadFile(d.kept("revision-1", "proof.pdf"))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(before, kept), "what is kept is what was sent")
	d.edit("job.yaml", "#e8b33a", "#e8b33b")
	d.run(exitDone, "proof", d.dir, "-o", filepath.Join(d.dir, "out"), "--draft")
	assert.NoFileExists(t, d.kept("revision-2", "facts.txt"), "of a draft nothing is kept")
	assert.Contains(t, d.proof(), "revision 2")
	assert.FileExists(t, d.kept("revision-2", "facts.txt"))
}

func TestASignOffBindsOneExactProof(t *testing.T) {
	d := newDesk(t)
	d.proof()
	answer := d.answer(agreed)
	out, _ := d.run(exitDone, "sign", d.dir, answer)
	assert.Contains(t, out, "Signed by Robin Vale on 2027-02-24: revision 1")
	assert.FileExists(t, d.kept("revision-1", "signed-1.json"))
	out, _ = d.run(exitDone, "sign", d.dir, answer)
	assert.Contains(t, out, "signed-1.json", "the same file twice is kept once")
	assert.NoFileExists(t, d.kept("revision-1", "signed-2.json"))
}

func TestAForeignSignOffIsRefusedAndSaysWhatChanged(t *testing.T) {
	d := newDesk(t)
	d.proof()
	answer := d.answer(agreed)
	roster, err := os.ReadFile(filepath.Join(d.dir, "roster.csv"))
	require.NoError(t, err)
	last := strings.Split(strings.TrimSpace(string(roster)), "\n")
	d.edit("roster.csv", last[len(last)-1], "Ellwood,Pat Ellwood,77,L")
	_, errs := d.run(exitInput, "sign", d.dir, answer)
	assert.Contains(t, errs, "It signs revision 1")
	assert.Contains(t, errs, "Pat Ellwood was added")
	assert.NoFileExists(t, d.kept("revision-1", "signed-1.json"))
	other := newDesk(t)
	other.edit("job.yaml", "Your Customer", "Somebody Else")
	other.proof()
	_, errs = other.run(exitInput, "sign", other.dir, answer)
	assert.Contains(t, errs, "no proof with that fingerprint was issued from this job")
}

func TestChangesThatTheCoachAsksForAreAList(t *testing.T) {
	d := newDesk(t)
	d.proof()
	out, _ := d.run(exitFindings, "sign", d.dir, d.answer(func(a *signoff.Answer) {
		a.Signed = nil
		a.Players[0].Answer, a.Players[0].About, a.Players[0].Note = signoff.Note, "spelling", "with an e at the end"
	}))
	assert.Contains(t, out, "with an e at the end")
	assert.FileExists(t, d.kept("revision-1", "notes-1.json"))
	_, errs := d.run(exitInput, "sign", d.dir, d.answer(func(a *signoff.Answer) { a.Players = a.Players[1:] }))
	assert.Contains(t, errs, "is of row 2")
}

func TestPlayersAreAddedToWhatIsSigned(t *testing.T) {
	d := newDesk(t)
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	d.add("Ode,Lou Ode,71,L\nEllingsworth-Marchbanks,Sam Ellingsworth-Marchbanks,72,M\n")
	said, _ := d.run(exitFindings, "check", d.dir)
	assert.Contains(t, said, "Sam Ellingsworth-Marchbanks")
	errs := d.proof()
	assert.Contains(t, errs, "This is revision 2")
	assert.Contains(t, errs, "It adds to revision 1, which is signed")
	out, _ := d.run(exitDone, "sign", d.dir, d.answer(agreed))
	assert.Contains(t, out, "revision 2")
	assert.Contains(t, out, "3 players", "the two and one signed player beside them")
	assert.Contains(t, d.proof(), "revision 2", "signed, it stays what it is")
	d.add("Ives,Kim Ives,73,S\n")
	assert.Contains(t, d.proof(), "It adds to revision 2")
}

func TestCompareSaysWhatChanged(t *testing.T) {
	d := newDesk(t)
	d.proof()
	d.add("Ode,Lou Ode,71,L\n")
	out, _ := d.run(exitDone, "compare", d.kept("revision-1", "job"), d.dir)
	assert.Contains(t, out, "Lou Ode was added: number 71, adult L")
	out, _ = d.run(exitDone, "compare", d.dir, d.dir)
	assert.Contains(t, out, "Nothing that is made has changed.")
}

func TestARecordThatCannotBeDrawnAgainIsSaid(t *testing.T) {
	d := newDesk(t)
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	facts := d.kept("revision-1", "facts.txt")
	data, err := os.ReadFile(facts)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(facts, append(data, ' '), 0o644))
	_, errs := d.run(exitInput, "proof", d.dir, "-o", filepath.Join(d.dir, "out"))
	assert.Contains(t, errs, "revision 1 cannot be drawn again as it was")
}

func TestASheetSignedByHandIsRecordedWithItsScan(t *testing.T) {
	d := newDesk(t)
	d.add("Quillfeatherstonehamberly,Tam Q,8,YS\n")
	d.proof()
	i, err := prepare(context.Background(), streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}, jobChoice{path: d.dir})
	require.NoError(t, err)
	require.NotEmpty(t, i.questions)
	scan := filepath.Join(t.TempDir(), "Scan.PDF")
	require.NoError(t, os.WriteFile(scan, []byte("%PDF a scan"), 0o644))
	code := signoff.Short(i.print)
	sheet := func(args ...string) []string {
		return append([]string{"sign", d.dir, scan, "--by", "Robin Vale", "--date", "2027-02-24"}, args...)
	}
	_, errs := d.run(exitUsage, sheet()...)
	assert.Contains(t, errs, "--code")
	_, errs = d.run(exitUsage, sheet("--code", "0000 0000 0000 0000")...)
	assert.Contains(t, errs, "of another proof")
	_, errs = d.run(exitInput, sheet("--code", code)...)
	assert.Contains(t, errs, "no choice is made", "what has to be chosen is on the sheet")
	_, errs = d.run(exitUsage, sheet("--code", code, "--choose", "1=Z")...)
	assert.Contains(t, errs, "choice 1 has no Z")
	assert.NoFileExists(t, d.kept("revision-1", "signed-1.json"))
	out, _ := d.run(exitDone, sheet("--code", code, "--choose", "1=a")...)
	assert.Contains(t, out, "Signed by Robin Vale on 2027-02-24")
	assert.FileExists(t, d.kept("revision-1", "signed-1.json"))
	assert.FileExists(t, d.kept("revision-1", "signed-1.pdf"))
	d.run(exitDone, "make", d.dir, "-o", filepath.Join(d.dir, "bench"))
}

// A revision that added to another is compared as it was issued, with the
// fingerprint that its pages bear; a proof of it keeps nothing among the records.
func TestARecordIsComparedAsItWasIssued(t *testing.T) {
	d := newDesk(t)
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	d.add("Ode,Lou Ode,71,L\n")
	d.proof()
	i, err := prepare(context.Background(), streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}, jobChoice{path: d.dir})
	require.NoError(t, err)
	out, _ := d.run(exitDone, "compare", d.kept("revision-1", "job"), d.kept("revision-2", "job"))
	assert.Contains(t, out, signoff.Short(i.print))
	assert.Contains(t, out, "Lou Ode was added")
	d.run(exitDone, "proof", d.kept("revision-1", "job"), "-o", filepath.Join(d.dir, "again"))
	assert.NoDirExists(t, d.kept("revision-1", "job", "issued"))
}
