package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/signoff"
)

// signedWith is an answer to the proof that a rule book of the command line was
// given for.
func (d desk) signedWith(c jobChoice) string {
	d.t.Helper()
	i, err := prepare(context.Background(), streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}, c)
	require.NoError(d.t, err)
	return d.answer(func(a *signoff.Answer) { a.Fingerprint = i.print })
}

func TestAProofWithARuleBookOfTheCommandLineIsSignedAndMade(t *testing.T) {
	book, err := os.ReadFile(filepath.Join("..", "..", "lettering", "rulebook", "books", "nfhs-softball.yaml"))
	require.NoError(t, err)
	own := filepath.Join(t.TempDir(), "own rules.yaml")
	require.NoError(t, os.WriteFile(own, book, 0o644))
	for _, rules := range []string{"nfhs-softball", own} {
		d := newDesk(t)
		out := filepath.Join(d.dir, "out")
		d.run(exitDone, "proof", d.dir, "-o", out, "--rules", rules, "--season", "2027")
		answer := d.signedWith(jobChoice{path: d.dir, rules: rules, season: "2027"})
		said, _ := d.run(exitDone, "sign", d.dir, answer)
		assert.Contains(t, said, "revision 1")
		d.run(exitDone, "make", d.dir, "-o", filepath.Join(d.dir, "bench"))
		d.add("Ode,Lou Ode,71,L\n")
		_, errs := d.run(exitDone, "proof", d.dir, "-o", out, "--rules", rules, "--season", "2027")
		assert.Contains(t, errs, "It adds to revision 1", "wherever the book lies")
	}
}

func TestASheetOfAProofWithARuleBookOfTheCommandLineIsRecorded(t *testing.T) {
	d := newDesk(t)
	d.run(exitDone, "proof", d.dir, "-o", filepath.Join(d.dir, "out"), "--rules", "nfhs-softball")
	scan := filepath.Join(t.TempDir(), "scan.pdf")
	require.NoError(t, os.WriteFile(scan, []byte("%PDF a scan"), 0o644))
	data, err := os.ReadFile(d.signedWith(jobChoice{path: d.dir, rules: "nfhs-softball"}))
	require.NoError(t, err)
	var a signoff.Answer
	require.NoError(t, json.Unmarshal(data, &a))
	out, _ := d.run(exitDone, "sign", d.dir, scan, "--by", "Robin Vale", "--date", "2027-02-24", "--code", signoff.Short(a.Fingerprint))
	assert.Contains(t, out, "revision 1")
}

func TestPlayersAreNotAddedInAnotherFontOfTheSameName(t *testing.T) {
	d := newDesk(t)
	font := func(name string) {
		data, err := os.ReadFile(filepath.Join("..", "..", "fonts", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(d.dir, "own.ttf"), data, 0o644))
	}
	font("anton/Anton_400Regular.ttf")
	d.edit("job.yaml", "face: oswald  ", "face: own.ttf  ")
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	d.add("Ode,Lou Ode,71,L\n")
	font("russo-one/RussoOne_400Regular.ttf")
	assert.NotContains(t, d.proof(), "It adds to")
	font("anton/Anton_400Regular.ttf")
	assert.Contains(t, d.proof(), "It adds to revision 1")
}
