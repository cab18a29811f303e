package records_test

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/signoff"
	"yokeline/proof/records"
)

func file(content string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(content)} }

func print(content string) string {
	sum := sha256.Sum256([]byte(content))
	return hex.EncodeToString(sum[:])
}

// answer is a sound answer for a fingerprint, as a file.
func answer(t *testing.T, fingerprint, by string) *fstest.MapFile {
	t.Helper()
	a := signoff.Answer{Fingerprint: fingerprint}
	if by != "" {
		a.Signed = &signoff.Signed{Name: by, Date: "2027-02-24"}
	}
	data, err := a.Write()
	require.NoError(t, err)
	return &fstest.MapFile{Data: data}
}

func TestRevisionsAreReadInTheirOrderWithTheirAnswers(t *testing.T) {
	all, err := records.List(fstest.MapFS{
		"revision-10/facts.txt":    file("ten"),
		"revision-10/asked.json":   file(`{"job": "job.yaml", "onto": 2}`),
		"revision-2/asked.json":    file(`{"job": "job.yaml", "season": "2027"}`),
		"revision-2/facts.txt":     file("two"),
		"revision-2/notes-1.json":  answer(t, print("two"), ""),
		"revision-2/signed-1.json": answer(t, print("two"), "Robin Vale"),
		"revision-2/signed-2.json": answer(t, print("two"), "Sky Marsh"),
		"revision-3/proof.pdf":     file("its writing was cut off before the facts"),
		"revision-03/facts.txt":    file("not one of ours"),
		"somebody's notes.txt":     file("left alone"),
	})
	require.NoError(t, err)
	require.Len(t, all, 2)
	assert.Equal(t, []int{2, 10}, []int{all[0].Number, all[1].Number})
	assert.Equal(t, print("two"), all[0].Fingerprint)
	require.Len(t, all[0].Answers, 3)
	assert.False(t, all[0].Answers[0].Binds)
	assert.Equal(t, "Sky Marsh", all[0].Signed().Signed.Name, "the last signature holds")
	assert.Nil(t, all[1].Signed())
	assert.Equal(t, records.Asked{Job: "job.yaml", Onto: 2}, all[1].Asked)
	assert.Equal(t, "notes-2.json", all[0].NextFile(false))
	assert.Equal(t, "signed-3.json", all[0].NextFile(true))
	assert.Contains(t, all[0].Line(), "signed by Sky Marsh on 2027-02-24")
	assert.Contains(t, all[1].Line(), "not answered yet")

	last, ok := records.LastSigned(all)
	assert.True(t, ok)
	assert.Equal(t, 2, last.Number)
	found, ok := records.Find(all, print("ten"))
	assert.True(t, ok)
	assert.Equal(t, 10, found.Number)
	_, ok = records.Find(all, print("eleven"))
	assert.False(t, ok)
}

func TestARevisionIsNewUnlessTheLastOneIsTheSame(t *testing.T) {
	a, b := records.Revision{Number: 1, Fingerprint: "a"}, records.Revision{Number: 2, Fingerprint: "b"}
	for _, test := range []struct {
		all    []records.Revision
		print  string
		number int
		kept   bool
	}{
		{nil, "a", 1, false},
		{[]records.Revision{a}, "a", 1, true},
		{[]records.Revision{a, b}, "b", 2, true},
		{[]records.Revision{a, b}, "a", 3, false},
	} {
		number, kept := records.Next(test.all, test.print)
		assert.Equal(t, test.number, number)
		assert.Equal(t, test.kept, kept)
	}
}

func TestAnAnswerThatWasDamagedInTheRecordsIsSaid(t *testing.T) {
	whole := answer(t, print("one"), "Robin Vale")
	_, err := records.List(fstest.MapFS{
		"revision-1/facts.txt":     file("one"),
		"revision-1/asked.json":    file("{}"),
		"revision-1/signed-1.json": file(strings.Replace(string(whole.Data), "Robin", "Rubin", 1)),
	})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "revision-1/signed-1.json")
	assert.Contains(t, err.Error(), "seal is broken")
}

func TestNoRecordsIsNoError(t *testing.T) {
	all, err := records.List(fstest.MapFS{})
	require.NoError(t, err)
	assert.Empty(t, all)
	assert.Equal(t, "issued", records.Folder("job.yaml"))
	assert.Equal(t, "spring-issued", records.Folder("orders/spring.yaml"))
}

func TestAnAnswerToAnotherProofIsNotOneToThisRevision(t *testing.T) {
	_, err := records.List(fstest.MapFS{
		"revision-1/facts.txt":     file("one"),
		"revision-1/asked.json":    file("{}"),
		"revision-1/signed-1.json": answer(t, print("two"), "Robin Vale"),
	})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "revision-1/signed-1.json is an answer to another proof")
}

func TestARevisionAddsToAnEarlierOneOnly(t *testing.T) {
	for _, onto := range []string{"3", "4", "-1"} {
		_, err := records.List(fstest.MapFS{
			"revision-3/facts.txt":  file("three"),
			"revision-3/asked.json": file(`{"job": "job.yaml", "onto": ` + onto + `}`),
		})
		require.Error(t, err)
		assert.Contains(t, err.Error(), "revision 3 cannot add to revision "+onto)
	}
}
