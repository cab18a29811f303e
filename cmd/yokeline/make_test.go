package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/signoff"
)

// files reads everything below a folder, by the path in it.
func files(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	require.NoError(t, filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		out[filepath.ToSlash(name)] = data
		return err
	}))
	return out
}

func TestOnlyASignedOrderIsMade(t *testing.T) {
	d := newDesk(t)
	out := filepath.Join(d.dir, "bench")
	_, errs := d.run(exitInput, "make", d.dir, "-o", out)
	assert.Contains(t, errs, "this order is not signed: no proof of it was issued")
	d.proof()
	_, errs = d.run(exitInput, "make", d.dir, "-o", out)
	assert.Contains(t, errs, "revision 1")
	assert.NoDirExists(t, out, "nothing was written")
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	said, _ := d.run(exitDone, "make", d.dir, "-o", out)
	assert.Contains(t, said, "pieces for 3 players")
	for name, data := range files(t, out) {
		assert.NotContains(t, string(data), "UNSIGNED", name)
	}
	d.edit("roster.csv", "Ashgrove,Jo", "Ashgrave,Jo")
	_, errs = d.run(exitInput, "make", d.dir, "-o", out)
	assert.Contains(t, errs, "it changed since revision 1 was signed")
}

func TestUnsignedFilesSaySo(t *testing.T) {
	d := newDesk(t)
	out := filepath.Join(d.dir, "bench")
	said, _ := d.run(exitDone, "make", d.dir, "-o", out, "--unsigned")
	assert.Contains(t, said, "UNSIGNED")
	svgs := 0
	for name, data := range files(t, out) {
		if strings.HasSuffix(name, ".svg") {
			svgs++
			assert.Contains(t, string(data), `id="unsigned"`, name)
		}
	}
	assert.Positive(t, svgs)
}

func TestMadeAgainIsTheSameByteForByte(t *testing.T) {
	d := newDesk(t)
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	first, again, one := filepath.Join(d.dir, "a"), filepath.Join(d.dir, "b"), filepath.Join(d.dir, "c")
	d.run(exitDone, "make", d.dir, "-o", first)
	d.run(exitDone, "make", d.dir, "-o", again)
	d.run(exitDone, "make", d.dir, "-o", one, "--only", "07")
	whole, second, some := files(t, first), files(t, again), files(t, one)
	require.Len(t, second, len(whole))
	for name, data := range whole {
		assert.True(t, bytes.Equal(data, second[name]), name)
	}
	remade := 0
	for name, data := range some {
		if strings.HasPrefix(name, "pieces/") {
			remade++
			assert.Contains(t, name, "-07-", "07 is another number than 7")
			assert.True(t, bytes.Equal(data, whole[name]), name)
		}
	}
	assert.Positive(t, remade)
	d.run(exitDone, "make", d.dir, "-o", first, "--only", "07")
	assert.Equal(t, some, files(t, first), "nothing of the larger run is left among what was made last")
	_, errs := d.run(exitUsage, "make", d.dir, "-o", one, "--only", "nobody")
	assert.Contains(t, errs, "--only: nobody is called")
}

func TestPlayersWhoWereAddedAreMadeAlone(t *testing.T) {
	d := newDesk(t)
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	first := filepath.Join(d.dir, "a")
	d.run(exitDone, "make", d.dir, "-o", first)
	_, errs := d.run(exitUsage, "make", d.dir, "-o", first, "--added")
	assert.Contains(t, errs, "nobody was added")
	d.add("Ode,Lou Ode,71,L\n")
	d.proof()
	d.run(exitDone, "sign", d.dir, d.answer(agreed))
	added, all := filepath.Join(d.dir, "b"), filepath.Join(d.dir, "c")
	said, _ := d.run(exitDone, "make", d.dir, "-o", added, "--added")
	assert.Contains(t, said, "pieces for 1 player,")
	d.run(exitDone, "make", d.dir, "-o", all)
	before, now := files(t, first), files(t, all)
	same := 0
	for name, data := range before {
		if strings.HasPrefix(name, "pieces/") {
			same++
			assert.True(t, bytes.Equal(data, now[name]), "%s: who was signed stays exactly as made", name)
		}
	}
	assert.Positive(t, same)
}

// What the coach chose is what is made: the way's own drawing, and no question
// left over.
func TestWhatTheCoachChoseIsMade(t *testing.T) {
	d := newDesk(t)
	d.add("Quillfeatherstonehamberly,Tam Q,8,YS\n")
	d.proof()
	chosen := ""
	d.run(exitDone, "sign", d.dir, d.answer(func(a *signoff.Answer) {
		require.NotEmpty(t, a.Choices)
		chosen = a.Choices[0].Way
	}))
	out := filepath.Join(d.dir, "bench")
	said, _ := d.run(exitDone, "make", d.dir, "-o", out)
	assert.NotContains(t, said, "does not fit", chosen)
}

func TestCountsAddUpWithThePieces(t *testing.T) {
	d := newDesk(t)
	out := filepath.Join(d.dir, "bench")
	d.run(exitDone, "make", d.dir, "-o", out, "--unsigned")
	made := files(t, out)
	pieces := 0
	for name := range made {
		if strings.HasPrefix(name, "pieces/") && strings.HasSuffix(name, ".svg") {
			pieces++
		}
	}
	var count struct {
		Pieces    int `json:"pieces"`
		Players   int `json:"players"`
		PickLists []struct {
			Pieces []json.RawMessage `json:"pieces"`
		} `json:"pick_list"`
	}
	require.NoError(t, json.Unmarshal(made["lists/count.json"], &count))
	assert.Equal(t, pieces, count.Pieces)
	picked := 0
	for _, p := range count.PickLists {
		picked += len(p.Pieces)
	}
	assert.Equal(t, pieces, picked)
	assert.Contains(t, string(made["lists/pick-list.csv"]), "No. 07")
}

func TestMakeRefusesWhatItCannotUse(t *testing.T) {
	d := newDesk(t)
	for _, test := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"make", d.dir}, exitUsage, "-o DIR"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--sheet", "15"}, exitUsage, "--sheet"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--sheet", "1in x 2in x 3in"}, exitUsage, "--sheet"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--set", "help"}, exitUsage, "trap="},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--set", "trap=9in"}, exitUsage, "--set"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--set", "magic=1mm"}, exitUsage, "--set"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--gap", "3mm"}, exitUsage, "go with --sheet"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--supply", "1800,120"}, exitUsage, "--supply"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--supply", "1800,0,15"}, exitUsage, "--supply"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--market", "Mars"}, exitUsage, "not US or EU"},
		{[]string{"make", d.dir, "-o", "x", "--unsigned", "--press", "nowhere.csv"}, exitUsage, "cannot be read"},
	} {
		_, errs := d.run(test.code, test.args...)
		assert.Contains(t, errs, test.says)
	}
	assert.NoDirExists(t, "x")
	d.edit("job.yaml", "fibre: polyester", "fibre: unobtainium")
	_, errs := d.run(exitInput, "make", d.dir, "-o", filepath.Join(d.dir, "x"), "--unsigned")
	assert.Contains(t, errs, "unobtainium", "no ticket for cloth that nobody knows")
}

// Knocked out, the film under the digits is less than the whole.
func TestKnockedOutFilmIsLess(t *testing.T) {
	d := newDesk(t)
	area := func(dir string, args ...string) float64 {
		d.run(exitDone, append([]string{"make", d.dir, "-o", dir, "--unsigned"}, args...)...)
		var count struct {
			Materials []struct {
				Name string  `json:"name"`
				Area float64 `json:"true_area_mm2"`
			} `json:"materials"`
		}
		require.NoError(t, json.Unmarshal(files(t, dir)["lists/count.json"], &count))
		sum := 0.0
		for _, m := range count.Materials {
			sum += m.Area
		}
		return sum
	}
	backed, knocked := area(filepath.Join(d.dir, "a")), area(filepath.Join(d.dir, "b"), "--knockout")
	assert.Less(t, knocked, backed)
	assert.NotEqual(t, files(t, filepath.Join(d.dir, "a", "pieces")), files(t, filepath.Join(d.dir, "b", "pieces")))
}
