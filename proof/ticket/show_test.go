package ticket

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/order"
	"yokeline/lettering/pressing"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/sheets"
)

// An invented club.
const sampleJob = `yokeline: 1
team: Alder Point Herons
customer: Alder Point Recreation
order: 2611-04
revision: B
shop: Kettle Lane Lettering
date: 2026-11-25
sport: softball
units: in
market: US
roster: roster.csv
garment: {cut: v-neck, colour: tidewater, trim: marsh gold, fibre: polyester}
method: cut film
colours: {tidewater: "#1d3b53", egret: "#fbf7ec", marsh gold: "#e2a336"}
pieces:
  back name: {face: oswald, height: 1 3/4in, shape: radial arch, radius: 14in, colour: egret}
  back number: {face: graduate, height: by size, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}
  front name: {text: Herons, face: yellowtail, case: typed, height: 3in, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}
  front number: {face: graduate, height: 3in, colour: egret}
fit: {tracking: -4%, width: 80%, height: 1 1/4in, same: none}
`

// roster is n invented players of every kind: 0 beside 00, 7 beside 07, long
// names, one without a name, one without a number and one without a size.
func roster(n int) string {
	names := []string{"Ng", "Abara", "Íñiguez", "O’Rourke", "Trevanion", "De la Cruz-Prentiss", "Wojciechowska", "Quill", "Featherstonehaugh", "Halvorsen", "Okonjo-Bell", "Samarasinghe", "Lindqvist", "Vo"}
	given := []string{"Ada", "Bo", "Cleo", "Dag", "Eira"}
	letters := []string{"M", "youth L", "women M", "L", "M", "XL", "women L"}
	numbers := []string{"00", "0", "7", "07"}
	var b strings.Builder
	b.WriteString("Name on back,Player,Number,Size\n")
	for i := range n {
		name, number, size := names[i%len(names)], fmt.Sprint(i+4), letters[i%len(letters)]
		if i < len(numbers) {
			number = numbers[i]
		}
		switch i % 47 {
		case 11:
			size = ""
		case 12:
			number = ""
		}
		fmt.Fprintf(&b, "%s,%s %s,%s,%s\n", name, given[i%len(given)], name, number, size)
	}
	return b.String()
}

// made keeps what tests share, so that an order is sized and counted once.
var made sync.Map

func sized(t testing.TB, job, roster string) *sizes.Sized {
	t.Helper()
	key := job + "\x00" + roster
	if s, ok := made.Load(key); ok {
		return s.(*sizes.Sized)
	}
	o, err := order.Read("job.yaml", func(name string) ([]byte, error) {
		if name == "job.yaml" {
			return []byte(job), nil
		}
		return []byte(roster), nil
	})
	require.NoError(t, err)
	s, err := sizes.Resolve(context.Background(), o, sizes.Options{Face: typeface.Embedded, NoWaysOut: true, Workers: 2})
	require.NoError(t, err)
	made.Store(key, s)
	return s
}

func inputOf(t testing.TB, s *sizes.Sized, sheet page.Sheet) Input {
	t.Helper()
	if in, ok := made.Load(s); ok {
		kept := in.(Input)
		kept.Sheet = sheet
		return kept
	}
	head, err := sheets.Masthead(sheets.Input{Sized: s, Face: typeface.Embedded})
	require.NoError(t, err)
	count, err := tally.Of(s, tally.Options{Roll: func(tally.Material) float64 { return 480 }, Spots: spots})
	require.NoError(t, err)
	in := Input{Sized: s, Count: count, Head: head, Fingerprint: s.Fingerprint(), Sheet: sheet}
	made.Store(s, in)
	return in
}

// spots lays nine players on a sheet; back numbers have two colours.
func spots(player int, place garment.Place) []tally.Spot {
	spot := tally.Spot{Sheet: fmt.Sprint(1 + player/9), Position: string(rune('A'+player%9)) + "4"}
	if place != garment.BackNumber {
		return []tally.Spot{spot}
	}
	gold := spot
	spot.Part, gold.Part = "egret", "gold"
	return []tally.Spot{spot, gold}
}

// Look at the pages with TICKET_OUT=folder go test -run Show.
func TestShow(t *testing.T) {
	dir := os.Getenv("TICKET_OUT")
	if dir == "" {
		t.Skip("set TICKET_OUT to a folder to draw pictures")
	}
	for _, n := range []int{3, 15, 60} {
		in := inputOf(t, sized(t, sampleJob, roster(n)), page.Letter())
		in.Unsigned = n == 3
		in.Supply = Supply{Watts: 1800, Volts: 120, Amperes: 15}
		show(t, dir, fmt.Sprintf("%02d", n), in)
	}
	for i, job := range otherJobs() {
		in := inputOf(t, sized(t, job, roster(12)), page.A4())
		in.Also = []pressing.Step{emblem(t)}
		show(t, dir, fmt.Sprintf("other-%d", i), in)
	}
}

func show(t *testing.T, dir, name string, in Input) {
	t.Helper()
	b, err := Book(in)
	require.NoError(t, err)
	for i, p := range b.Pages() {
		f, err := os.Create(filepath.Join(dir, fmt.Sprintf("%s-%02d.png", name, i+1)))
		require.NoError(t, err)
		require.NoError(t, p.WritePNG(f, 110))
		require.NoError(t, f.Close())
	}
}

// emblem is a badge that a shop of its own presses hotter than the film.
func emblem(t testing.TB) pressing.Step {
	t.Helper()
	shop, faults := pressing.Read("press.csv", []byte("method,variant,fibres,from_c,to_c,from_s,to_s,pressure,pre_press,peel,second_press,cover\n"+
		"emblem,club badge,polyester|cotton,140,148,12,14,firm,2-5 s,none,10 s from inside,yes\n"))
	require.Empty(t, faults)
	return pressing.NewStep("badge on the left chest", shop.Settings[0])
}

// otherJobs are orders of other cuts, cloths, methods and units.
func otherJobs() []string {
	edit := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(sampleJob) }
	return []string{
		edit("units: in", "units: cm", "market: US", "market: EU", "fibre: polyester", "fibre: 92 % polyester 8 % spandex", "front number: {", "front number: {at: wearer's left, "),
		edit("units: in", "units: cm", "market: US\n", "", "fibre: polyester", "fibre: cotton", "method: cut film", "method: screen transfer", "v-neck", "full-button",
			"fit:", "  sleeve number: {face: graduate, height: 3in, colour: egret}\nfit:"),
		edit("method: cut film", "method: embroidery", "market: US", "market: US\nwearer: adult"),
		edit("market: US", "market: other", "v-neck", "basketball-tank", "  front name: {text: Herons, face: yellowtail, case: typed, height: 3in, colour: egret, outlines: [{width: 3/16in, colour: marsh gold}]}\n", ""),
	}
}
