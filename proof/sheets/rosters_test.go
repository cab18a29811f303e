package sheets

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/findings"
	"yokeline/proof/page"
)

// inventedRoster is a roster of n players: short, long, double, accented and
// apostrophised names, youth and adult sizes, some names too long, one number
// worn twice where the roster is long enough.
func inventedRoster(n int) string {
	names := []string{
		"Ng", "Abara", "Íñiguez", "O’Rourke", "Trevanion", "Macallister", "De la Cruz-Prentiss", "Wojciechowska", "Quill",
		"Featherstonehaugh", "Halvorsen", "Brightwater", "Okonjo-Bell", "Samarasinghe", "Lindqvist", "Ünsal", "D’Alembrek", "Łuczakowa",
		"Vo", "Pemberline", "St. Aubrey", "Van der Meulenbroek", "Çelikoğlu", "Ashdown", "Ferrandolo", "Nakagiri", "Ødegrav", "Hallow", "Rook", "McTavernish",
	}
	sizes := []string{"YM", "YL", "S", "M", "M", "L", "XL", "2XL"}
	given := strings.Fields("Ada Bea Cyd Dot Eve Flo Gus Hal Ida Jon Kit")
	var b strings.Builder
	b.WriteString("Name on back,Player,Number,Size\n")
	for i := range n {
		number := fmt.Sprint(i)
		if i == 12 {
			number = "7"
		}
		name := names[i%len(names)]
		if round := i / len(names); round > 0 {
			name = names[(i*7)%len(names)] + [...]string{"son", "ard", "eva", "ine", "wood", "by", "ton", "lund", "ley"}[round-1]
		}
		fmt.Fprintf(&b, "%s,%s %s,%s,%s\n", name, given[i%len(given)], name, number, sizes[(i+i/8)%len(sizes)])
	}
	return b.String()
}

func inventedInput(t *testing.T, n int, paper Paper) Input {
	pairs := []string{"garment: {cut: v-neck, group: women,", "garment: {cut: two-button, group: adult,", "height: 8in", "height: by size"}
	if paper == A4 {
		pairs = append(pairs, "units: in", "units: cm")
	}
	in := inputOf(t, edited(t, sampleJob, pairs), inventedRoster(n))
	in.Results = findings.Check(nil, findings.Of(in.Sized))
	return in
}

// Pages of teams of every length keep to the margins, with no text over
// another, and say every player's name.
func TestTeamsOfEveryLengthMakeTidyPages(t *testing.T) {
	lengths := []int{3, 15, 60}
	if os.Getenv("SHEETS_OUT") != "" {
		lengths = append(lengths, 300)
	}
	for _, n := range lengths {
		for _, paper := range []Paper{Letter, A4} {
			if n > 15 && paper == A4 && os.Getenv("SHEETS_OUT") == "" {
				continue // long teams are slow; A4 has shown itself with short ones
			}
			t.Run(fmt.Sprintf("%d on %s", n, [...]string{"letter", "A4"}[paper]), func(t *testing.T) {
				in := inventedInput(t, n, paper)
				b, err := Proof(in)
				require.NoError(t, err)
				var said []string
				for i, p := range b.Pages() {
					showPage(t, fmt.Sprintf("team-%03d-%d-%02d", n, paper, i+1), p)
					said = append(said, pageText(p)...)
					if p.Title != lookTitle { // its key letters stand on their leads
						requireTidy(t, p)
					}
				}
				text := strings.Join(said, "\n")
				for _, p := range in.Sized.Players {
					assert.Contains(t, text, p.Number)
				}
			})
		}
	}
}

func showPage(t *testing.T, name string, p *page.Page) {
	dir := os.Getenv("SHEETS_OUT")
	if dir == "" {
		return
	}
	dpi := 80.0
	f, err := os.Create(filepath.Join(dir, name+".png"))
	require.NoError(t, err)
	require.NoError(t, p.WritePNG(f, dpi))
	require.NoError(t, f.Close())
}
