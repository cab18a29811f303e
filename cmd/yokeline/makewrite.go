package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"unicode"

	"yokeline/lettering/garment"
	"yokeline/lettering/nest"
	"yokeline/lettering/pressing"
	"yokeline/lettering/sheetplan"
	"yokeline/lettering/sizes"
	"yokeline/lettering/tally"
	art "yokeline/proof/bench"
	"yokeline/proof/outfile"
	"yokeline/proof/page"
	"yokeline/proof/pdf"
	"yokeline/proof/sheets"
	"yokeline/proof/ticket"
)

// bench is what make writes, and how.
type bench struct {
	*issue
	sized    *sizes.Sized
	only     map[int]bool
	stock    *nest.Stock
	unsigned bool
	knockout bool
	plan     *sheetplan.Plan
	by       nest.By
	writer   *art.Bench
	batch    *outfile.Batch
	dir      string
	files    []string // written so far, by their names in dir
	notes    []string // of the pieces, for who makes them
	stops    []pressing.Warning
}

// write puts all production files in place together.
func (m *makeChoice) write(ctx context.Context, s streams, b bench) error {
	settings, err := m.settings()
	if err != nil {
		return err
	}
	o := sheetplan.Options{
		Settings: settings, Stock: b.stock, Nest: m.arrangement(), Workers: runtime.GOMAXPROCS(0), Progress: s.progress("making piece"),
	}
	if b.only != nil {
		o.Only = func(player int) bool { return b.only[player] }
	}
	if b.plan, err = sheetplan.Of(ctx, b.sized, o); err != nil {
		return err
	}
	if b.writer, err = art.New(); err != nil {
		return err
	}
	b.by, b.dir, b.batch = o.Nest.By, m.out, outfile.NewBatch(ctx)
	defer b.batch.Discard()
	count, err := b.counted()
	if err != nil {
		return err
	}
	b.notes = b.plan.Notes(b.sized)
	count.Notes = append(count.Notes, b.notes...)
	book, err := m.ticket(&b, count)
	if err != nil {
		return err
	}
	before, err := madeBefore(b.dir)
	if err != nil {
		return err
	}
	for _, step := range []func() error{b.pieces, b.sheets, func() error { return b.lists(count) }, book, b.manifest} {
		if err := step(); err != nil {
			return err
		}
	}
	if err := b.batch.Commit(); err != nil {
		return err
	}
	b.sweep(before)
	return b.summary(s.out)
}

// add writes one file below the folder of the output.
func (b *bench) add(name string, write func(io.Writer) error) error {
	b.files = append(b.files, filepath.ToSlash(name))
	path := filepath.Join(b.dir, name)
	if err := makeFolder(filepath.Dir(path)); err != nil {
		return err
	}
	return b.batch.Add(path, write)
}

func (b *bench) options(l art.Label) art.Options { return art.Options{Label: l, Unsigned: b.unsigned} }

// label says whose a part is.
func (b *bench) label(player, piece int, note string) art.Label {
	p := b.sized.Players[player]
	who := strings.TrimSpace(p.Number + " " + p.Name)
	if who == "" {
		who = p.Label()
	}
	return art.Label{Player: who, Place: string(p.Pieces[piece].Asked.Place), Size: p.Garment.Size().Label(), Note: note}
}

// fileName names a piece by the row of its player, the number and the place.
func (b *bench) fileName(player, piece int) string {
	p := b.sized.Players[player]
	parts := []string{fmt.Sprintf("%03d", player+1)}
	for _, text := range []string{p.Number, p.Name, string(p.Pieces[piece].Asked.Place)} {
		if text = safeName(text); text != "" {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, "-")
}

// safeName keeps what every file system takes in a name.
func safeName(text string) string {
	return strings.Trim(strings.Map(func(r rune) rune {
		switch {
		case r <= unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)):
			return unicode.ToLower(r)
		case unicode.IsLetter(r):
			return unicode.ToLower(r)
		}
		return '-'
	}, text), "-")
}

// pieces writes every piece at 1:1.
func (b *bench) pieces() error {
	for _, p := range b.plan.Pieces {
		name := filepath.Join("pieces", b.fileName(p.Player, p.Piece))
		o := b.options(b.label(p.Player, p.Piece, ""))
		if err := b.add(name+".svg", func(w io.Writer) error { return b.writer.SVG(w, p.Art, o) }); err != nil {
			return err
		}
		if err := b.add(name+".pdf", func(w io.Writer) error { return b.writer.PDF(w, p.Art, o) }); err != nil {
			return err
		}
		if p.Art.Method.ID != "direct-to-film" {
			continue
		}
		if err := b.add(name+".png", func(w io.Writer) error { return b.writer.PNG(w, p.Art, o) }); err != nil {
			return err
		}
		if err := b.add(name+"-white.png", func(w io.Writer) error { return b.writer.WhitePNG(w, p.Art, o) }); err != nil {
			return err
		}
	}
	return nil
}

// sheets writes every sheet with its parts, each with its number on it.
func (b *bench) sheets() error {
	for n, sheet := range b.plan.Layout.Sheets {
		out := art.Sheet{Name: fmt.Sprintf("sheet %d, %s", n+1, sheet.Group), Width: sheet.Width, Height: sheet.Height}
		for _, p := range b.plan.On(n, b.by) {
			l := b.label(p.Player, p.Piece, "")
			l.Player = fmt.Sprintf("%d: %s", p.Number, l.Player)
			out.Parts = append(out.Parts, art.SheetPart{Art: p.Art, Label: l})
		}
		name := filepath.Join("sheets", fmt.Sprintf("sheet-%02d-%s", n+1, safeName(sheet.Group)))
		if err := b.add(name+".svg", func(w io.Writer) error { return b.writer.SheetSVG(w, out, b.options(art.Label{})) }); err != nil {
			return err
		}
		if err := b.add(name+".pdf", func(w io.Writer) error { return b.writer.SheetPDF(w, out, b.options(art.Label{})) }); err != nil {
			return err
		}
	}
	return nil
}

// counted counts the order as it is made, with where everything lies.
func (b *bench) counted() (*tally.Count, error) {
	return tally.Of(b.made(), tally.Options{
		KnockedOut: b.knockout,
		Roll:       func(tally.Material) float64 { return b.plan.Stock.Width - 2*b.plan.Stock.Margin },
		Laid:       func(m tally.Material) (float64, bool) { return b.plan.Taken(m.Name()) },
		Spots:      func(player int, place garment.Place) []tally.Spot { return b.plan.Spots(b.sized, b.row(player), place) },
	})
}

// made is the order with only those who are made.
func (b *bench) made() *sizes.Sized {
	if b.only == nil {
		return b.sized
	}
	out, o := *b.sized, *b.sized.Order
	out.Order, out.Players, o.Players = &o, nil, nil
	for i, p := range b.sized.Players {
		if b.only[i] {
			out.Players = append(out.Players, p)
			o.Players = append(o.Players, b.sized.Order.Players[i])
		}
	}
	return &out
}

// row is where player i of those who are made stands in the whole order.
func (b *bench) row(i int) int {
	for k := range b.sized.Players {
		if b.only == nil || b.only[k] {
			if i == 0 {
				return k
			}
			i--
		}
	}
	return 0
}

// lists writes the counts as CSV and JSON.
func (b *bench) lists(c *tally.Count) error {
	for _, t := range c.Tables() {
		if err := b.add(filepath.Join("lists", t.Name+".csv"), t.WriteCSV); err != nil {
			return err
		}
	}
	return b.add(filepath.Join("lists", "count.json"), c.WriteJSON)
}

// ticket draws the press ticket, the pick list, the counts and the labels; the
// function that is returned writes them.
func (m *makeChoice) ticket(b *bench, c *tally.Count) (func() error, error) {
	in := ticket.Input{
		Sized: b.made(), Count: c, Variant: m.variant, Fingerprint: b.print, Unsigned: b.unsigned,
		Sheet: page.Letter(),
	}
	if (&pageFiles{paper: m.paper}).paperFor(b.job.order.Units) == sheets.A4 {
		in.Sheet = page.A4()
	}
	b.sized.Order.Revision = b.revision()
	var err error
	if in.Head, err = sheets.Masthead(sheets.Input{Sized: b.sized, Fingerprint: b.print, Face: b.job.face}); err != nil {
		return nil, err
	}
	if m.press != "" {
		data, err := os.ReadFile(m.press)
		if err != nil {
			return nil, usagef("the press settings cannot be read: %v", err)
		}
		shop, faults := pressing.Read(filepath.Base(m.press), data)
		if len(faults) > 0 {
			return nil, faults
		}
		in.Shop = shop
	}
	if m.supply != "" {
		u := &in.Supply
		if _, err := fmt.Sscanf(m.supply, "%g,%g,%g", &u.Watts, &u.Volts, &u.Amperes); err != nil || !(u.Watts > 0 && u.Volts > 0 && u.Amperes > 0) {
			return nil, usagef("--supply: %q is not watts, volts and amperes such as 1800,120,15", m.supply)
		}
	}
	if m.market != "" {
		market := pressing.Market(strings.ToUpper(m.market))
		if market != pressing.US && market != pressing.EU {
			return nil, usagef("--market: %q is not US or EU", m.market)
		}
		in.Market = &market
	}
	book, err := ticket.Book(in) // its errors name the page that cannot be drawn
	if err != nil {
		return nil, err
	}
	if b.stops, err = ticket.Stops(in); err != nil {
		return nil, err
	}
	facts := pdf.Facts{Title: "Press ticket for " + b.sized.Order.Team, Author: b.sized.Order.Shop, Language: "en"}
	return func() error {
		return b.add("ticket.pdf", func(w io.Writer) error { return pdf.Write(w, book, facts) })
	}, nil
}
