package signoff_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/order"
	"yokeline/lettering/signoff"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
)

// demo is the proof of the demo order, sized without a rule book.
func demo(t testing.TB) signoff.Proof {
	t.Helper()
	name, files := order.Demo()
	o, err := order.Read(name, func(file string) ([]byte, error) { return fs.ReadFile(files, file) },
		order.WithFaces("oswald", "quantico", "yellowtail"), order.WithRules("nfhs-softball"))
	require.NoError(t, err)
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, Workers: 2})
	require.NoError(t, err)
	return signoff.Proof{Sized: s, Fingerprint: s.Fingerprint(), Questions: choices.Of(s, findings.Check(nil, findings.Of(s)))}
}

// agreed is the answer of a coach to whom everything is right.
func agreed(p signoff.Proof) signoff.Answer {
	a := signoff.Answer{Fingerprint: p.Fingerprint, Team: p.Sized.Order.Team, Signed: &signoff.Signed{Name: "Robin Vale", Date: "2027-02-24"}}
	for i, player := range p.Sized.Players {
		a.Players = append(a.Players, signoff.Player{Row: i + 1, Name: player.Name, Number: player.Number, Size: player.Size.String(), Answer: signoff.Right})
	}
	for _, q := range p.Questions {
		if q.Open() && len(q.Ways) > 0 {
			a.Choices = append(a.Choices, signoff.Choice{Question: q.ID, Letter: q.Ways[0].Letter, Way: q.Ways[0].Kind})
		}
	}
	return a
}

// saved is the answer as it comes back from the coach.
func saved(t testing.TB, a signoff.Answer) *signoff.Answer {
	t.Helper()
	data, err := a.Write()
	require.NoError(t, err)
	back, faults := signoff.Read("answer.json", data)
	require.Empty(t, faults)
	return back
}

func TestAnAnswerToThisProofBinds(t *testing.T) {
	p := demo(t)
	a := agreed(p)
	require.NotEmpty(t, a.Choices, "the demo has something to choose")
	problems, err := saved(t, a).Check(p)
	require.NoError(t, err)
	assert.Empty(t, problems)
}

func TestWhatKeepsAnAnswerFromBinding(t *testing.T) {
	p := demo(t)
	for _, test := range []struct {
		name string
		edit func(*signoff.Answer)
		says string
	}{
		{"a note", func(a *signoff.Answer) {
			a.Players[3].Answer, a.Players[3].About, a.Players[3].Note = signoff.Note, "spelling", "O'Shaughnessy"
		}, "Nora O'Shaughnell: a change is asked for"},
		{"someone not looked at", func(a *signoff.Answer) { a.Players[0].Answer = signoff.Open }, "Linh Vo was not looked at"},
		{"a choice not made", func(a *signoff.Answer) { a.Choices = nil }, "no choice is made for the back name"},
		{"a choice made twice", func(a *signoff.Answer) { a.Choices = append(a.Choices, a.Choices[0]) }, "is answered 2 times"},
		{"a way that is not there", func(a *signoff.Answer) { a.Choices[0].Letter = "Q" }, "has no way Q"},
		{"a way under another letter", func(a *signoff.Answer) { a.Choices[0].Way = "magic" }, "has no way A, magic"},
		{"a question that is not there", func(a *signoff.Answer) { a.Choices[0].Question = "99 back name" }, `no question "99 back name"`},
		{"another spelling than was shown", func(a *signoff.Answer) { a.Players[4].Name = "MacTavernish" }, "row 5 of it is 21 MacTavernish, and of the proof 21 McTavernish"},
		{"another number as text", func(a *signoff.Answer) { a.Players[1].Number = "07" }, "row 2 of it is 07 Peña, and of the proof 7 Peña"},
		{"a player too few", func(a *signoff.Answer) { a.Players = a.Players[:15] }, "it answers for 15 players, and the proof shows 16"},
		{"no signature", func(a *signoff.Answer) { a.Signed = nil }, "it is not signed"},
		{"no name", func(a *signoff.Answer) { a.Signed.Name = " " }, "without a name"},
		{"no date", func(a *signoff.Answer) { a.Signed.Date = "yesterday" }, `"yesterday", which is no date`},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := agreed(p)
			test.edit(&a)
			problems, err := saved(t, a).Check(p)
			require.NoError(t, err)
			assert.Contains(t, strings.Join(problems, "\n"), test.says)
		})
	}
}

func TestAnAnswerToAnotherProofIsForeign(t *testing.T) {
	p := demo(t)
	a := agreed(p)
	a.Fingerprint = strings.Repeat("ab", 32)
	_, err := saved(t, a).Check(p)
	var foreign *signoff.ForeignError
	require.ErrorAs(t, err, &foreign)
	assert.Contains(t, err.Error(), "abab abab abab abab")
}

func TestCorrectionsAreAListForTheShop(t *testing.T) {
	p := demo(t)
	a := agreed(p)
	a.Signed = nil
	a.Players[3].Answer, a.Players[3].About, a.Players[3].Note = signoff.Note, "spelling", "O’Shaughnessy"
	assert.Equal(t, []signoff.Correction{{Player: "Nora O'Shaughnell", Row: 4, Number: "3", About: "spelling", Note: "O’Shaughnessy"}},
		saved(t, a).Corrections(p))
}

func TestADamagedOrForeignFileIsRefusedWithItsPlace(t *testing.T) {
	p := demo(t)
	data, err := agreed(p).Write()
	require.NoError(t, err)
	whole := string(data)
	for _, test := range []struct{ name, file, says string }{
		{"empty", "", "the file is empty"},
		{"cut short", whole[:len(whole)/2], "cut short"},
		{"no JSON", "Dear shop, all is well", "no sign-off file"},
		{"another file", `{"a": 1}`, "a field that is not known"},
		{"not text", "\xff\xfe\x00", "no sign-off file"},
		{"another version", strings.Replace(whole, signoff.Format, "sign-off 9", 1), "does not begin with"},
		{"an edited name", strings.Replace(whole, "McTavernish", "MacTavernish", 1), "seal is broken"},
		{"an edited answer", strings.Replace(whole, `"right"`, `"open"`, 1), "seal is broken"},
		{"an edited signature", strings.Replace(whole, "Robin Vale", "Robin Hale", 1), "seal is broken"},
		{"twice", whole + whole, "more after the end"},
		{"a number for a text", strings.Replace(whole, `"Vo"`, "7", 1), "players.name"},
		{"a row left out", strings.Replace(whole, `"row": 2`, `"row": 3`, 1), "is of row 3"},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, faults := signoff.Read("answer.json", []byte(test.file))
			require.NotEmpty(t, faults)
			assert.Contains(t, faults.Error(), test.says)
			assert.Contains(t, faults.Error(), "answer.json")
		})
	}
}

// A broken rule is open until the coach says what becomes of it; one to be put
// right needs a new proof, and is on the shop's list.
func TestABrokenRuleWaitsForItsAnswer(t *testing.T) {
	p := demo(t)
	rule := findings.Result{Finding: findings.Finding{
		Severity: findings.Violation, Player: p.Sized.Players[3].Label(), Place: "back number", What: "number height", Measured: "5 in",
		Required: "at least 6 in", Rule: "3-2-2", Source: "Tidewater Conference, rule book (2026)", How: "read",
	}}
	p.Questions = choices.Of(p.Sized, []findings.Result{rule})
	at := len(p.Questions) - 1
	require.Equal(t, "4 rule 3-2-2", p.Questions[at].ID)
	answered := func(letter, way string) []string {
		a := agreed(p)
		a.Choices = a.Choices[:len(a.Choices)-1] // the rule's
		if letter != "" {
			a.Choices = append(a.Choices, signoff.Choice{Question: "4 rule 3-2-2", Letter: letter, Way: way})
		}
		problems, err := saved(t, a).Check(p)
		require.NoError(t, err)
		var said []string
		for _, c := range a.Corrections(p) {
			said = append(said, c.Player+", "+c.About+": "+c.Note)
		}
		return append(problems, said...)
	}
	assert.Empty(t, answered("B", choices.LeaveIt))
	assert.Equal(t, []string{"no choice is made about rule 3-2-2, back number height"}, answered("", ""))
	assert.Equal(t, []string{
		"rule 3-2-2, back number height, is to be put right: that needs a new proof",
		"Nora O'Shaughnell, rule 3-2-2: put it right: back number height, at least 6 in",
	}, answered("A", choices.PutRight))
	assert.Equal(t, []string{"question 4 rule 3-2-2 has no way A, leave it"}, answered("A", choices.LeaveIt))
}

// No single byte of a sign-off can be changed without being noticed, but for
// spaces between fields and the case of hexadecimal digits in escapes.
func TestOneChangedByteIsNoticed(t *testing.T) {
	p := demo(t)
	data, err := agreed(p).Write()
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, len(data)-1).Draw(t, "at")
		b := rapid.Byte().Draw(t, "byte")
		changed := append([]byte{}, data...)
		changed[i] = b
		got, faults := signoff.Read("answer.json", changed)
		if len(faults) > 0 {
			return
		}
		was, _ := signoff.Read("answer.json", data)
		a, _ := json.Marshal(was)
		z, _ := json.Marshal(got)
		if string(a) != string(z) {
			t.Fatalf("byte %d from %q to %q went unnoticed", i, data[i], b)
		}
	})
}

// No two answers have one seal by shifting text from one field to the next.
func TestTheSealPartsItsFields(t *testing.T) {
	a := signoff.Answer{Team: "ab", Order: "c"}
	b := signoff.Answer{Team: "a", Order: "bc"}
	assert.NotEqual(t, a.SealOf(), b.SealOf())
	assert.Equal(t, a.SealOf(), (&signoff.Answer{Team: "ab", Order: "c", Signed: &signoff.Signed{}}).SealOf())
}

func FuzzRead(f *testing.F) {
	data, err := signoff.Answer{Players: []signoff.Player{{Row: 1, Name: "Vo", Answer: signoff.Right}}, Fingerprint: strings.Repeat("0", 64)}.Write()
	if err != nil {
		f.Fatal(err)
	}
	for _, seed := range []string{string(data), "", "{", `{"yokeline":"sign-off 1"}`, "[1,2", `{"players":[{"row":1e99}]}`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		a, faults := signoff.Read("answer.json", data)
		if (a == nil) == (len(faults) == 0) {
			t.Fatal("neither an answer nor a fault")
		}
		if a != nil {
			if _, err := a.Write(); err != nil || a.Seal != a.SealOf() {
				t.Fatal("an answer that does not keep its seal")
			}
		}
	})
}

func ExampleShort() {
	fmt.Println(signoff.Short(strings.Repeat("0123456789abcdef", 4)))
	// Output: 0123 4567 89ab cdef
}
