package order

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/source"
)

// bad is the folder of broken files, each with one fault; index.csv says where
// it is and what it is called.
const bad = "../../testdata/bad"

type vector struct{ file, place, message string }

func vectors(t testing.TB) []vector {
	f, err := os.Open(filepath.Join(bad, "index.csv"))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"file", "place", "message"}, rows[0])
	var out []vector
	for _, r := range rows[1:] {
		out = append(out, vector{r[0], r[1], r[2]})
	}
	return out
}

func readVector(t testing.TB, name string) source.Faults {
	data, err := os.ReadFile(filepath.Join(bad, name))
	require.NoError(t, err)
	if strings.HasPrefix(name, "job-") {
		job, faults := ReadJob(name, data, WithFaces("oswald", "graduate"), WithRules("nfhs-softball"))
		assert.Nil(t, job)
		return faults
	}
	roster, faults := ReadRoster(name, data, "", RosterOptions{})
	assert.Nil(t, roster)
	return faults
}

func TestEveryBrokenFileIsRefusedAtItsPlaceAndForNothingElse(t *testing.T) {
	all := vectors(t)
	require.GreaterOrEqual(t, len(all), 150, "vectors went missing")
	for _, v := range all {
		t.Run(v.file, func(t *testing.T) {
			faults := readVector(t, v.file)
			require.Len(t, faults, 1, "%v", faults)
			at := strings.TrimPrefix(faults[0].Place.String(), v.file)
			if v.place == "-" {
				v.place = ""
			}
			assert.Equal(t, v.place, strings.TrimLeft(at, ": "))
			assert.Contains(t, faults[0].Message, v.message)
			assert.NotContains(t, faults[0].Message, "\n")
			assert.NotRegexp(t, `\.$`, faults[0].Message)
		})
	}
}

func TestEveryBrokenFileIsInTheIndex(t *testing.T) {
	listed := map[string]bool{"index.csv": true}
	for _, v := range vectors(t) {
		assert.False(t, listed[v.file], "%s is listed twice", v.file)
		listed[v.file] = true
	}
	files, err := os.ReadDir(bad)
	require.NoError(t, err)
	for _, f := range files {
		assert.True(t, listed[f.Name()], "%s is not in index.csv", f.Name())
	}
}
