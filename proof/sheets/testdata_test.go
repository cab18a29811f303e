package sheets

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/order"
	"yokeline/lettering/sizes"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
)

// An invented club in the shape of the style guide's pictures.
const sampleJob = `yokeline: 1
team: Alder Point Herons
customer: Alder Point Recreation
order: 2611-04
revision: B
shop: Kettle Lane Lettering
date: 2026-11-25
due: 2027-03-14
sport: softball
units: in
roster: roster.csv
garment: {cut: v-neck, group: women, colour: tidewater, trim: marsh gold}
method: cut film
colours:
  tidewater: "#1d3b53"
  egret: "#fbf7ec"
  marsh gold: "#e2a336"
pieces:
  back name: {face: oswald, height: 1 3/4in, shape: radial arch, radius: 14in, colour: egret}
  back number: {face: graduate, height: 8in, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}
  front name: {text: Herons, face: yellowtail, case: typed, height: 3 1/4in, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}
  front number: {face: graduate, height: 3in, colour: egret, outlines: [{width: 3/32in, colour: marsh gold}]}
fit: {tracking: -4%, width: 80%, height: 1 3/8in, same: none}
`

const sampleRoster = `Name on back,Number,Size
Ng,00,S
Abara,0,M
Íñiguez,2,S
O’Rourke,3,M
Trevanion,5,XL
Macallister,7,M
De la Cruz-Prentiss,8,M
Wojciechowska,11,L
Quill,12,XS
Featherstonehaugh,14,S
Halvorsen,17,M
Brightwater,21,M
Okonjo-Bell,22,XL
Samarasinghe,27,L
Lindqvist,34,L
`

// sampleInput returns the sample order, its job edited by replacing each pair
// of texts; a pair whose first text is not found fails the test.
func sampleInput(t testing.TB, pairs ...string) Input {
	t.Helper()
	return inputOf(t, edited(t, sampleJob, pairs), sampleRoster)
}

func edited(t testing.TB, text string, pairs []string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		require.Contains(t, text, pairs[i])
		text = strings.ReplaceAll(text, pairs[i], pairs[i+1])
	}
	return text
}

// inputOf sizes a job with its roster.
func inputOf(t testing.TB, job, roster string) Input {
	t.Helper()
	o, err := order.Read("job.yaml", func(name string) ([]byte, error) {
		if name == "job.yaml" {
			return []byte(job), nil
		}
		return []byte(roster), nil
	})
	require.NoError(t, err)
	sized, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded})
	require.NoError(t, err)
	return Input{Sized: sized, Fingerprint: sized.Fingerprint(), Paper: PaperFor(o.Units), Face: typeface.Embedded}
}

// pageText lists the texts of a page in the order they were drawn.
func pageText(p *page.Page) []string {
	var out []string
	var walk func([]page.Op)
	walk = func(ops []page.Op) {
		for _, op := range ops {
			switch o := op.(type) {
			case page.Words:
				out = append(out, o.Text)
			case page.Clip:
				walk(o.Ops)
			case page.Use:
				walk(o.Art.Ops())
			}
		}
	}
	walk(p.Ops())
	return out
}

// look at the pages with SHEETS_OUT=folder go test -run Show.
func show(t *testing.T, name string, p *page.Page) {
	t.Helper()
	dir := os.Getenv("SHEETS_OUT")
	if dir == "" {
		return
	}
	f, err := os.Create(filepath.Join(dir, name+".png"))
	require.NoError(t, err)
	require.NoError(t, p.WritePNG(f, 150))
	require.NoError(t, f.Close())
}
