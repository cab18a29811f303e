package order

import (
	"io/fs"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
)

const specJob = `yokeline: 1
team: Herons
garment: {cut: crew-tee, colour: "#14284b", spec: makers.csv}
platens: [15in x 15in, 40cm x 50cm]
pieces: {back number: {height: 8in, run: youth and adult}}
players:
  - {name: Lind, number: 7, size: M}
  - {name: Rook, number: 8, size: L}
`

func files(more map[string]string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		if text, ok := more[name]; ok {
			return []byte(text), nil
		}
		return nil, fs.ErrNotExist
	}
}

func TestASpecSheetIsReadBesideTheJob(t *testing.T) {
	o, err := Read("job.yaml", files(map[string]string{"job.yaml": specJob, "makers.csv": "size,half chest\nM,21 1/2in\n"}))
	require.NoError(t, err)
	g, err := o.Garment.In(garment.Size{Group: garment.Adult, Letter: "M"})
	require.NoError(t, err)
	assert.InDelta(t, 546.1, g.Measures().ChestHalf, 1e-9)
	require.Len(t, o.Platens, 2)
	assert.Equal(t, "40cm x 50cm", o.Platens[1].String())
	assert.Equal(t, "youth and adult", o.Pieces[0].Run)

	var said []string
	for _, n := range o.Notes {
		if n.What == "spec sheet" {
			said = append(said, n.Message)
		}
	}
	require.Len(t, said, 2)
	assert.Contains(t, said[0], "of adult M: not in the sheet, taken from the generic table")
	assert.Equal(t, "adult L is not in makers.csv: its measures are all taken from the generic table", said[1])

	generic, err := GarmentChoice{Cut: garment.CrewTee}.In(garment.Size{Group: garment.Adult, Letter: "M"})
	require.NoError(t, err)
	assert.Equal(t, 530.0, generic.Measures().ChestHalf, "no sheet, the generic table")
}

func TestFaultsOfASpecSheetAreToldBesideThoseOfTheJob(t *testing.T) {
	job := "speed: 3\n" + specJob
	_, err := Read("job.yaml", files(map[string]string{"job.yaml": job, "makers.csv": "size,half chest\nM,21\n"}))
	require.Error(t, err)
	assert.Contains(t, err.Error(), `unknown key "speed"`)
	assert.Contains(t, err.Error(), "makers.csv:2:3: chest half of adult M")

	for sheet, want := range map[string]string{
		"":                                   "makers.csv: the spec sheet is empty",
		"size,cut,half chest\nM,hockey,24in": "has no measures of a crew-tee",
		"size,half chest\nM,24in":            "adult L is not in makers.csv, and the generic chest half does not go with adult M",
	} {
		_, err := Read("job.yaml", files(map[string]string{"job.yaml": specJob, "makers.csv": sheet}))
		require.Error(t, err, sheet)
		assert.Contains(t, err.Error(), want)
	}
	_, err = Read("job.yaml", files(map[string]string{"job.yaml": specJob}))
	require.Error(t, err)
	assert.Contains(t, err.Error(), "job.yaml:3:51: garment: spec: makers.csv is not there")
}

func TestTheWordsOfAShopAreChecked(t *testing.T) {
	for line, want := range map[string]string{
		"platens: [15in x 15]\n":  "unit",
		"platens: []\n":           "there are none",
		"platens: 15in x 15in\n":  "must be a list",
		"platens: [{a: 1}]\n":     "single value",
		"platens: [1in x 15in]\n": "out of reach",
	} {
		_, faults := ReadJob("j", []byte(plainJob+line))
		require.Len(t, faults, 1, line)
		assert.Contains(t, faults[0].Message, want)
		assert.Equal(t, 7, faults[0].Place.Line)
	}
	_, faults := ReadJob("j", []byte("yokeline: 1\nteam: H\ngarment: {cut: crew-tee, colour: \"#fff\", spec: makers.xlsx}\npieces: {back number: {height: 8in, run: two sizes}}\nplayers: [{name: L, number: 7, size: M}]\n"))
	require.Len(t, faults, 2)
	assert.Contains(t, faults[0].Hint, "CSV UTF-8")
	assert.Contains(t, faults[1].Hint, "youth and adult")
}
