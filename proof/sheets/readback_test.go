package sheets

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"yokeline/lettering/garment"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
)

// extracted is what poppler reads on each page of the proof's PDF, and the size
// of the file.
func extracted(t *testing.T, b *page.Book) (pages []string, bytesLong int) {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		require.NotEqual(t, "required", os.Getenv("YOKELINE_TOOLS"), "pdftotext is not installed")
		t.Skip("pdftotext is not installed: this check reads the proof back with it")
	}
	var out, again bytes.Buffer
	require.NoError(t, pdf.Write(&out, b, pdf.Facts{}))
	require.NoError(t, pdf.Write(&again, b, pdf.Facts{}))
	require.Equal(t, out.Bytes(), again.Bytes(), "the same book gives the same bytes")
	file := filepath.Join(t.TempDir(), "proof.pdf")
	require.NoError(t, os.WriteFile(file, out.Bytes(), 0o600))
	text, err := exec.Command(tool, "-layout", file, "-").Output()
	require.NoError(t, err)
	return strings.Split(norm.NFC.String(string(text)), "\f"), out.Len()
}

// The text of the PDF is the roster: every player's number, name and size stand
// in one row of the sign-off, letter by letter as they will be cut, in the order
// of the roster; every choice names its player on the page that shows it; and
// the file of a team of fifteen is small.
func TestExtractedTextIsTheRoster(t *testing.T) {
	for _, paper := range []Paper{Letter, A4} {
		t.Run([...]string{"letter", "A4"}[paper], func(t *testing.T) {
			in := inventedInput(t, 15, paper)
			d, err := newDocument(in)
			require.NoError(t, err)
			b, err := Proof(in)
			require.NoError(t, err)
			pages, size := extracted(t, b)
			assert.Less(t, size, 500_000)
			of := func(title string) string {
				var all []string
				for i, p := range b.Pages() {
					if strings.HasPrefix(p.Title, title) {
						all = append(all, pages[i])
					}
				}
				return strings.Join(all, "\n")
			}
			rows := regexp.MustCompile(`(?m)^ *(\d+) {2,}(\S.*?) {2,}(\S+) {2,}(?:full|eased|reduced|over)\b`).FindAllStringSubmatch(of(signOffTitle), -1)
			require.Len(t, rows, len(in.Sized.Players))
			for i, p := range in.Sized.Players {
				name, ok := p.Piece(garment.BackName)
				require.True(t, ok)
				assert.Equal(t, fmt.Sprintf("%s|%s|%s", p.Number, name.Text(), d.sizeLabel(p.Size)), strings.Join(rows[i][1:], "|"))
				assert.Contains(t, of(rosterTitle), name.Text())
			}
			for _, q := range d.questions() {
				for _, word := range strings.Fields(q.who) {
					assert.Contains(t, of(decideTitle), word)
				}
			}
			assert.Contains(t, of(acrossTitle), "20/20")
		})
	}
}
