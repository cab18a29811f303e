package signpage

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/signoff"
)

var shots = flag.String("shots", "", "folder for pictures of the page in its states")

// saved waits for the file that the page saves.
func (v *visit) saved(in Input) *signoff.Answer {
	v.t.Helper()
	var data []byte
	require.Eventually(v.t, func() bool {
		names, _ := filepath.Glob(filepath.Join(v.folder, "*.json"))
		if len(names) != 1 {
			return false
		}
		data, _ = os.ReadFile(names[0])
		return json.Valid(data)
	}, 20*time.Second, 20*time.Millisecond, "the page saves a file")
	names, _ := filepath.Glob(filepath.Join(v.folder, "*.json"))
	assert.Equal(v.t, fileName(in.Sized.Order.Team), filepath.Base(names[0]))
	require.NoError(v.t, os.Remove(names[0]))
	answer, faults := signoff.Read(names[0], data)
	require.Empty(v.t, faults)
	return answer
}

// calm requires that the page asked for nothing and complained of nothing.
func (v *visit) calm() {
	v.t.Helper()
	v.mu.Lock()
	defer v.mu.Unlock()
	assert.Empty(v.t, v.trouble)
}

func asFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "proof.html")
	require.NoError(t, os.WriteFile(path, written(t), 0o644))
	return "file://" + path
}

// proofOf is what an answer is held against.
func proofOf(in Input) signoff.Proof {
	return signoff.Proof{Sized: in.Sized, Fingerprint: in.Fingerprint, Questions: in.Questions}
}

// A browser takes long to start, so all that is tried in one shares it.
func TestThePageInABrowser(t *testing.T) {
	in := demoInput(t)
	url := asFile(t)
	ctx := browse(t)
	t.Run("a coach signs on a phone", func(t *testing.T) { signOff(t, open(t, ctx, "phone", url, 390, 844, false), in) })
	t.Run("a coach signs at a desk", func(t *testing.T) { signOff(t, open(t, ctx, "desk", url, 1280, 900, false), in) })
	t.Run("another number is a note", func(t *testing.T) { anotherNumber(t, open(t, ctx, "number", url, 1024, 768, false), in) })
	t.Run("a size that is missing is a note", func(t *testing.T) { withoutSize(t, ctx) })
	t.Run("a broken rule is put right or left", func(t *testing.T) { brokenRule(t, ctx) })
	t.Run("everything shows without script", func(t *testing.T) { withoutScript(t, ctx, in) })
}

// signOff goes through the whole page by its buttons.
func signOff(t *testing.T, v *visit, in Input) {
	n := len(in.Sized.Players)
	v.forget()
	require.Contains(t, v.text("#count"), fmt.Sprintf("0 of %d looked at", n))
	v.shot("1-untouched", true)
	assert.False(t, v.is("document.documentElement.scrollWidth > window.innerWidth"), "nothing is wider than the window")
	v.enlarge()
	v.noteAndChoose(in)
	v.saveNotes(in)
	v.comeBack(n)
	v.sign(in)
	v.calm()
}

// forget empties the store that all pages opened as files share.
func (v *visit) forget() {
	v.t.Helper()
	require.True(v.t, v.is("localStorage.clear(), true"))
	v.do(chromedp.Reload())
}

// enlarge looks at the first card; Escape brings the page back.
func (v *visit) enlarge() {
	v.click("#player-0 button.picture")
	require.True(v.t, v.is("document.getElementById('zoom').open"))
	v.shot("2-zoom", false)
	v.do(chromedp.KeyEvent("\x1b"))
	require.Eventually(v.t, func() bool { return v.is("!document.getElementById('zoom').open") }, 5*time.Second, 20*time.Millisecond)
	assert.True(v.t, v.is("document.activeElement === document.querySelector('#player-0 button.picture')"), "the focus comes back")
}

// noteAndChoose leaves a note on the first player, ticks the others, and makes
// every choice.
func (v *visit) noteAndChoose(in Input) {
	v.click("#player-0 .off")
	v.click("#player-0 .quick [value=spelling]")
	v.write("#player-0 textarea", "one L only, “Müller” & <b>")
	v.shot("3-writing", false)
	v.click("#player-0 .keep")
	assert.Equal(v.t, "“spelling: one L only, “Müller” & <b>”", v.text("#player-0 .said .words"))
	v.click("#player-1 .right")
	assert.Equal(v.t, "Right", v.text("#player-1 .said .words"))
	v.tickRest()
	assert.Contains(v.t, v.text("#state"), "Still open: ")
	assert.Equal(v.t, "Next one", v.text("#next"))
	v.click("#next")
	v.shot("4-choosing", false)
	before := v.drawingOf(in.Questions[0].Player)
	choose(v, in, false)
	assert.NotEqual(v.t, before, v.drawingOf(in.Questions[0].Player), "the card shows what was chosen")
	assert.Contains(v.t, v.text("#state"), "You left 1 note.")
	assert.Equal(v.t, "To your notes", v.text("#next"))
	v.shot("5-notes", true)
}

// drawingOf is what the card of a player shows.
func (v *visit) drawingOf(player int) string {
	out, err := chromedp.Run(v.ctx, chromedp.Evaluate[string](fmt.Sprintf("document.querySelector('#player-%d .shirt').innerHTML", player)))
	require.NoError(v.t, err)
	return out
}

// saveNotes saves an answer that cannot be signed.
func (v *visit) saveNotes(in Input) {
	v.click("#next")
	v.click("#save")
	answer := v.saved(in)
	problems, err := answer.Check(proofOf(in))
	require.NoError(v.t, err)
	assert.Equal(v.t, []string{in.Sized.Players[0].Label() + ": a change is asked for", "it is not signed"}, problems)
	corrections := answer.Corrections(proofOf(in))
	require.Len(v.t, corrections, 1)
	assert.Equal(v.t, "one L only, “Müller” & <b>", corrections[0].Note)
	assert.Equal(v.t, "spelling", corrections[0].About)
}

// comeBack takes the note back after visits that were broken off.
func (v *visit) comeBack(players int) {
	v.do(chromedp.Reload())
	assert.True(v.t, v.is("!document.getElementById('done').hidden"), "saved notes are remembered")
	v.click("#reopen")
	v.click("#player-0 .change")
	v.click("#player-0 .leave")
	v.do(chromedp.Reload())
	assert.Contains(v.t, v.text("#began-text"), "You began on ")
	assert.Contains(v.t, v.text("#count"), fmt.Sprintf("%d of %d looked at", players-1, players))
	v.shot("6-began", false)
	v.click("#go-on")
	v.click("#player-0 .right")
}

// sign signs, and holds the file against the proof.
func (v *visit) sign(in Input) {
	assert.True(v.t, v.is("document.getElementById('save').disabled"), "nobody has signed yet")
	v.click("#next")
	v.write("#who", "Robin Åldersey")
	assert.True(v.t, v.is("document.getElementById('save').disabled"), "the box is not ticked yet")
	v.click("#all")
	v.shot("7-ready", true)
	v.click("#save")
	answer := v.saved(in)
	problems, err := answer.Check(proofOf(in))
	require.NoError(v.t, err)
	assert.Empty(v.t, problems)
	assert.Equal(v.t, "Robin Åldersey", answer.Signed.Name)
	assert.Len(v.t, answer.Choices, len(in.Questions))
	assert.Equal(v.t, in.Sized.Order.Team, answer.Team)
	if assert.NotEmpty(v.t, answer.Known, "0 and 00 stay together") {
		assert.Equal(v.t, "3-2-2", answer.Known[len(answer.Known)-1].Rule)
	}
	assert.Contains(v.t, v.text("#signed"), "Signed by Robin Åldersey on ")
	v.shot("8-signed", true)
	v.printed("8-signed")
}

// withoutSize tells the shop a size that is missing.
func withoutSize(t *testing.T, ctx context.Context) {
	in, err := markup()
	require.NoError(t, err)
	var page bytes.Buffer
	require.NoError(t, Write(&page, in))
	path := filepath.Join(t.TempDir(), "proof.html")
	require.NoError(t, os.WriteFile(path, page.Bytes(), 0o644))
	v := open(t, ctx, "size", "file://"+path, 390, 844, false)
	v.forget()
	v.tickRest()
	v.shot("1-ticked", true)
	last := len(in.Sized.Players) - 1
	v.click(fmt.Sprintf("#player-%d .off", last))
	v.write(fmt.Sprintf("#player-%d textarea", last), "she takes an L")
	v.click(fmt.Sprintf("#player-%d .keep", last))
	choose(v, in, false)
	v.click("#save")
	answer := v.saved(in)
	assert.Equal(t, signoff.Note, answer.Players[last].Answer)
	assert.Equal(t, "size", answer.Players[last].About)
	for i, p := range in.Sized.Players {
		assert.Equal(t, p.Name, answer.Players[i].Name)
	}
	v.calm()
}

// tickRest ticks every player who is still open.
func (v *visit) tickRest() {
	v.t.Helper()
	require.True(v.t, v.is(`document.querySelectorAll(".card .ask:not([hidden]) .right").forEach(b => b.click()), true`))
}

// choose takes the last way of every question, or another number where that
// is asked for.
func choose(v *visit, in Input, another bool) {
	v.t.Helper()
	for i, q := range in.Questions {
		way := q.Ways[len(q.Ways)-1]
		if another {
			way = q.Ways[0]
		}
		v.click(fmt.Sprintf("#question-%d input[value='%s'] ~ .words", i, way.Letter))
		if way.Player >= 0 {
			v.write(fmt.Sprintf("#question-%d .new-number[data-letter='%s']", i, way.Letter), "12")
		}
	}
}

// Another number is a correction: it cannot be signed.
func anotherNumber(t *testing.T, v *visit, in Input) {
	v.forget()
	choose(v, in, true)
	v.tickRest()
	v.click("#save")
	answer := v.saved(in)
	var notes []string
	for _, c := range answer.Corrections(proofOf(in)) {
		notes = append(notes, c.Number+" "+c.Note)
	}
	assert.Equal(t, []string{in.Sized.Players[in.Questions[len(in.Questions)-1].Ways[0].Player].Number + " takes number 12"}, notes)
	v.calm()
}

// Without script the page shows everything and says what to do. The page also
// works from a server, with nothing fetched but itself.
func withoutScript(t *testing.T, ctx context.Context, in Input) {
	data := written(t)
	requests := 0
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path != "/favicon.ico" { // every browser asks for it by itself
			requests++
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = w.Write(data)
	}))
	defer server.Close()
	v := open(t, ctx, "bare", server.URL, 390, 844, true)
	text, err := chromedp.Run(v.ctx, chromedp.Text(chromedp.CSS("body")))
	require.NoError(t, err)
	assert.Contains(t, text, "Please print the sign-off page")
	assert.NotContains(t, text, "Next one")
	for _, p := range in.Sized.Players {
		assert.Contains(t, text, p.Number)
	}
	v.shot("1-untouched", true)
	assert.Equal(t, 1, requests)
}
