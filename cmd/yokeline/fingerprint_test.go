package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The order whose fingerprint is tested: every kind of setting once.
const printJob = `yokeline: 1
team: Fen Wardens
customer: Fen Recreation
order: F-1
shop: Reed Lane Lettering
date: 2027-02-22
due: 2027-03-14
sport: softball
rules: nfhs-softball
units: in
roster: roster.csv
garment: {cut: v-neck, colour: moss, trim: sand, fibre: polyester}
method: cut film
colours: {moss: "#2f5d3a", sand: "#d9c38a", chalk: "#ffffff"}
pieces:
  back name: {face: oswald, height: 2in, shape: radial arch, radius: 14in, spacing: baseline, colour: chalk, outlines: [{width: 3mm, colour: sand}]}
  back number: {face: quantico, height: 8in, gap: 12mm, colour: chalk, outlines: [{width: 3/16in, colour: sand, join: round}]}
  front name: {text: Wardens, face: yellowtail, case: typed, height: 3in, colour: chalk}
  front number: {face: quantico, height: 4in, colour: chalk}
fit: {tracking: -4%, width: 80%, height: 1 1/2in, same: none}
terms: What is signed is what is made.
`

const printRoster = `Name on back,Player,Number,Size,Captain
Vo,Linh Vo,0,M,
Peña,Alma Peña,7,L,
Brandt,Ida Brandt,12,WM,
Featherwhistleton,Pia Featherwhistleton,33,XL,
`

// printDesk writes the order into a folder, with texts replaced in pairs.
func printDesk(t *testing.T, pairs ...string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{jobFile: printJob, "roster.csv": printRoster} {
		for k := 0; k+1 < len(pairs); k += 2 {
			text = strings.Replace(text, pairs[k], pairs[k+1], 1)
		}
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644))
	}
	return dir
}

// fingerprintOf is what a proof of the job in the folder would be signed for.
func fingerprintOf(t *testing.T, dir string) string {
	t.Helper()
	quiet := streams{out: &bytes.Buffer{}, err: &bytes.Buffer{}}
	i, err := prepare(context.Background(), quiet, jobChoice{path: dir})
	require.NoError(t, err)
	return i.print
}

// printedBy runs the program in a process of its own, in an environment of its
// own, and returns the fingerprint that size prints.
func printedBy(t *testing.T, dir string, env ...string) string {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	c := exec.Command(self, "size", dir, "--format", "json")
	c.Args[0] = "yokeline" // TestMain then is the program
	c.Env = append([]string{"HOME=" + t.TempDir()}, env...)
	out, _ := c.Output() // a name may be over: exit code 1
	var got sizedJSON
	require.NoError(t, json.Unmarshal(out, &struct{ Fingerprint *string }{&got.Fingerprint}), "%v: %s", env, out)
	require.Len(t, got.Fingerprint, 64)
	return got.Fingerprint
}

func TestTheFingerprintIsTheSameWhereverAndWheneverItIsTaken(t *testing.T) {
	runs := 50
	if testing.Short() {
		runs = 8
	}
	dir := printDesk(t)
	want := fingerprintOf(t, dir)
	zones := []string{"UTC", "Asia/Tokyo", "America/St_Johns", "Pacific/Apia", "Asia/Kathmandu"}
	locales := []string{"C", "de_DE.UTF-8", "tr_TR.UTF-8", "ar_EG.UTF-8", "C.UTF-8", "sv_SE.ISO-8859-1", ""}
	for i := range runs {
		env := []string{
			"TZ=" + zones[i%len(zones)], "LANG=" + locales[i%len(locales)], "LC_ALL=" + locales[(i/2)%len(locales)],
			fmt.Sprint("GOMAXPROCS=", 1+i%8), fmt.Sprint("SOURCE_DATE_EPOCH=", 1_000_000_000+i),
		}
		require.Equal(t, want, printedBy(t, dir, env...), "%v", env)
	}
}

// The fingerprint that size prints is the one that the proof bears.
func TestSizePrintsTheFingerprintOfTheProof(t *testing.T) {
	d := newDesk(t)
	d.proof()
	taken := func() string {
		out, _ := d.run(exitDone, "size", d.dir, "--format", "json")
		_, rest, _ := strings.Cut(out, `"fingerprint": "`)
		return rest[:64]
	}
	assert.Equal(t, fingerprintOf(t, d.dir), taken())
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	d.add("Ode,Lou Ode,71,L\n")
	assert.Equal(t, fingerprintOf(t, d.dir), taken(), "also where players were added to what is signed")
}

// edits are single edits of the order, each of which makes another one.
func edits() [][2]string {
	return [][2]string{
		{"team: Fen Wardens", "team: Fen Warden"},
		{"customer: Fen Recreation", "customer: Fen Recreations"},
		{"sport: softball", "sport: baseball"},
		{"rules: nfhs-softball\n", ""},
		{"due: 2027-03-14", "due: 2028-03-14"},
		{"cut: v-neck", "cut: two-button"},
		{"#2f5d3a", "#2f5d3b"},
		{"#d9c38a", "#d9c38b"},
		{`chalk: "#ffffff"`, `chalk: "#fffffe"`},
		{"trim: sand", "trim: moss"},
		{"fibre: polyester", "fibre: cotton"},
		{"method: cut film", "method: embroidery"},
		{"{face: oswald", "{face: anton"},
		{"height: 2in", "height: 50.81mm"},
		{"shape: radial arch, radius: 14in, spacing: baseline", "shape: vertical arch, radius: 14in"},
		{"shape: radial arch", "shape: radial arch down"},
		{"radius: 14in", "radius: 355.61mm"},
		{"spacing: baseline", "spacing: middle"},
		{"[{width: 3mm", "[{width: 3.01mm"},
		{"{width: 3mm, colour: sand}", "{width: 3mm, colour: moss}"},
		{"outlines: [{width: 3mm, colour: sand}]", "limit: 11in"},
		{"{face: quantico, height: 8in", "{face: graduate, height: 8in"},
		{"height: 8in", "height: 203.21mm"},
		{"gap: 12mm", "gap: 12.01mm"},
		{"join: round", "join: mitre"},
		{"text: Wardens", "text: Warden"},
		{"case: typed", "case: upper"},
		{"height: 3in", "height: 76.21mm"},
		{"height: 4in", "height: 101.61mm"},
		{"terms: What is signed is what is made.", "terms: What is signed is what is made"},
		{"Vo,Linh", "Vô,Linh"},
		{"Peña,Alma", "Pena,Alma"},
		{"Linh Vo,", "Lin Vo,"},
		{",0,M", ",00,M"},
		{",7,L", ",07,L"},
		{",12,WM", ",12,M"},
		{",33,XL", ",33,L"},
		{",0,M,", ",0,M,yes"},
		{"Vo,Linh Vo,0,M,\nPeña,Alma Peña,7,L,\n", "Peña,Alma Peña,7,L,\nVo,Linh Vo,0,M,\n"},
		{"Brandt,Ida Brandt,12,WM,\n", ""},
		{",33,XL,\n", ",33,XL,\nNg,Bo Ng,5,M,\n"},
		{"colour: chalk, outlines: [{width: 3mm", "below: 5in, colour: chalk, outlines: [{width: 3mm"},
	}
}

// floorEdits change how far names may be made to fit: they make another order
// where some name is not at full height.
func floorEdits() [][2]string {
	return [][2]string{{"tracking: -4%", "tracking: 0%"}, {"width: 80%", "width: 90%"}, {"height: 1 1/2in", "height: 1 5/8in"}}
}

// sameEdits write the same order otherwise, or change what is not made.
func sameEdits() [][2]string {
	return [][2]string{
		{"height: 2in", "height: 50.8mm"},
		{"radius: 14in", "radius: 35.56cm"},
		{"order: F-1", "order: F-2"},
		{"date: 2027-02-22", "date: 2027-02-23"},
		{"colour: chalk}", `colour: chalk} # a remark`},
		{"customer: Fen Recreation\n", "\ncustomer:   Fen Recreation\n"},
		{"#ffffff", "#FFFFFF"},
		{"units: in", "units: cm"},
	}
}

func TestEverySingleEditOfTheOrderChangesTheFingerprint(t *testing.T) {
	short := []string{"Featherwhistleton,", "Farrow,"} // without ways out: they take most of the time
	base := fingerprintOf(t, printDesk(t, short...))
	long := fingerprintOf(t, printDesk(t))
	seen := map[string]string{base: "nothing", long: "a long name"}
	try := func(e [2]string, pairs ...string) {
		require.Contains(t, printJob+printRoster, e[0])
		got := fingerprintOf(t, printDesk(t, append(pairs, e[0], e[1])...))
		other, twice := seen[got]
		assert.False(t, twice, "%q: the same fingerprint as %q", e, other)
		seen[got] = e[1]
	}
	require.GreaterOrEqual(t, len(edits()), 40)
	for _, e := range edits() {
		try(e, short...)
	}
	for _, e := range floorEdits() {
		try(e)
	}
	for _, e := range sameEdits() {
		require.Contains(t, printJob, e[0])
		assert.Equal(t, base, fingerprintOf(t, printDesk(t, append(short, e[0], e[1])...)), "%q", e)
	}
}
