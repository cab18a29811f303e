package main

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/layers"
	"yokeline/lettering/length"
	"yokeline/lettering/nest"
	"yokeline/lettering/order"
	"yokeline/lettering/signoff"
	"yokeline/lettering/sizes"
	"yokeline/lettering/source"
	"yokeline/proof/records"
)

// makeChoice holds the flags of make.
type makeChoice struct {
	jobChoice
	out, only          string
	unsigned, added    bool
	sheet, margin, gap string
	tight, nested      bool
	press, variant     string
	market, paper      string
	supply             string // watts,volts,amperes
	knockout           bool
	set                []string // trap=0.3mm
}

func makeCommand(s streams) *cobra.Command {
	var m makeChoice
	c := &cobra.Command{
		Use:   "make JOB -o DIR",
		Short: "Write the production files of a signed proof",
		Long: `make writes what the bench needs for an order that is signed, and for nothing else:
every piece at 1:1 for the decoration method, all pieces arranged on sheets, a count
of what to order and pick, and the press ticket. What the coach chose is what is made.

An order that is not signed is refused; --unsigned makes it all the same and marks
every file. --only makes some players again, exactly as they were; --added makes
who was added since the signature before.

Follow the supplier's data sheet and local rules, and press a test piece first.`,
		Example: `  yokeline make spring-league -o spring-league/bench
  yokeline make spring-league -o remake --only "Halvorsen,00"
  yokeline make spring-league -o bench --sheet 15in --tight --nested`,
		Args: usageArgs(cobra.ExactArgs(1)),
	}
	f := c.Flags()
	f.StringVarP(&m.out, "output", "o", "", "folder for the files; made when it is not there")
	f.BoolVar(&m.unsigned, "unsigned", false, "make an order that is not signed, with UNSIGNED on every file")
	f.StringVar(&m.only, "only", "", "names or numbers of players, parted by commas")
	f.BoolVar(&m.added, "added", false, "only the players that were added to what was signed before")
	f.StringVar(&m.sheet, "sheet", "", "what to arrange on: the width of a roll (15in) or a sheet (320mm x 450mm)")
	f.StringVar(&m.margin, "margin", "", "kept free along every edge of it")
	f.StringVar(&m.gap, "gap", "", "least distance between two pieces")
	f.BoolVar(&m.tight, "tight", false, "pack tight instead of in the order of the roster")
	f.BoolVar(&m.nested, "nested", false, "go by the true outlines, so that arched names lie in each other")
	f.BoolVar(&m.knockout, "knockout", false, "cut away what another film covers, instead of backing every film in full")
	f.StringArrayVar(&m.set, "set", nil, "a length of your own for the art, such as trap=0.3mm; --set help lists them")
	f.StringVar(&m.press, "press", "", "the shop's own press settings, a CSV file")
	f.StringVar(&m.variant, "press-variant", "", "which setting of the method, such as blocker")
	f.StringVar(&m.supply, "supply", "", "the heat press and its circuit in watts, volts and amperes, such as 1800,120,15: the ticket warns of a load too high")
	f.StringVar(&m.market, "market", "", "US or EU: whose law the ticket reminds of, instead of the job's own")
	f.StringVar(&m.paper, "paper", "", "letter or a4 for the ticket and the lists")
	_ = c.MarkFlagDirname("output")
	c.RunE = func(c *cobra.Command, args []string) error {
		m.path = args[0]
		switch {
		case m.out == "":
			return usagef("say where the files go: -o DIR")
		case m.paper != "" && m.paper != "letter" && m.paper != "a4":
			return usagef("--paper: %q is not letter or a4", m.paper)
		case m.added && m.only != "":
			return usagef("--added or --only, not both")
		}
		return m.run(c.Context(), s)
	}
	return c
}

func (m *makeChoice) run(ctx context.Context, s streams) error {
	sh, err := openShelf(m.jobChoice)
	if err != nil {
		return err
	}
	if len(sh.all) > 0 { // make has no flags for rules: those of the proof hold
		m.jobChoice = sh.asked(m.jobChoice, sh.all[len(sh.all)-1])
	}
	i, err := prepare(ctx, s, m.jobChoice)
	if err != nil {
		return err
	}
	final, err := m.final(ctx, s, i)
	if err != nil {
		return err
	}
	only, err := m.players(i, final)
	if err != nil {
		return err
	}
	stock, err := m.stock()
	if err != nil {
		return err
	}
	return m.write(ctx, s, bench{issue: i, sized: final, only: only, stock: stock, unsigned: m.unsigned, knockout: m.knockout})
}

// final returns the order as it is made: with what the coach chose where it is
// signed.
func (m *makeChoice) final(ctx context.Context, s streams, i *issue) (*sizes.Sized, error) {
	var signed *signoff.Answer
	for _, r := range i.shelf.all {
		if r.Number == i.number && i.kept {
			signed = r.Signed()
		}
	}
	switch {
	case signed != nil && m.unsigned:
		return nil, usagef("the order is signed: make it without --unsigned")
	case signed != nil:
		return i.shelf.settled(ctx, s, i.number)
	case m.unsigned:
		return i.sized, nil
	}
	why := "no proof of it was issued"
	if i.kept {
		why = fmt.Sprintf("revision %d, %s, is not answered", i.number, signoff.Short(i.print))
	} else if last, ok := records.LastSigned(i.shelf.all); ok {
		why = fmt.Sprintf("it changed since revision %d was signed; yokeline compare %s %s says how", last.Number, filepath.Join(i.shelf.path, last.Dir(), records.InputsDir), m.path)
	}
	return nil, source.Faults{{
		Message: "this order is not signed: " + why,
		Hint:    "issue a proof (yokeline proof), record the answer (yokeline sign), or make it with --unsigned",
	}}
}

// players chooses who is made; nil for everybody.
func (m *makeChoice) players(i *issue, s *sizes.Sized) (map[int]bool, error) {
	if m.added {
		if i.rows == nil {
			return nil, usagef("--added: nobody was added since the last signature")
		}
		out := map[int]bool{}
		for _, k := range i.rows {
			out[k] = !i.sized.Players[k].Signed
		}
		return out, nil
	}
	if m.only == "" {
		return nil, nil
	}
	out := map[int]bool{}
	for _, want := range strings.Split(m.only, ",") {
		want = strings.TrimSpace(want)
		found := false
		for k, p := range s.Players {
			if want != "" && (strings.EqualFold(want, p.Name) || strings.EqualFold(want, p.FullName) || want == p.Number) {
				out[k], found = true, true
			}
		}
		if !found {
			return nil, usagef("--only: nobody is called %q or wears it; write names or numbers as on the roster", want)
		}
	}
	return out, nil
}

// stock reads what pieces are arranged on; nil for the program's choice.
func (m *makeChoice) stock() (*nest.Stock, error) {
	if m.sheet == "" {
		if m.margin != "" || m.gap != "" {
			return nil, usagef("--margin and --gap go with --sheet")
		}
		return nil, nil
	}
	out := nest.Stock{Name: m.sheet, MaxLength: 1500, Margin: 12, Gap: 3}
	sides := strings.Split(strings.NewReplacer("×", "x", " x ", "x").Replace(m.sheet), "x")
	if len(sides) > 2 {
		return nil, usagef("--sheet: %q is not a width or a width and a height", m.sheet)
	}
	for _, of := range []struct {
		flag, text string
		to         *float64
	}{{"sheet", sides[0], &out.Width}, {"sheet", sides[len(sides)-1], &out.Height}, {"margin", m.margin, &out.Margin}, {"gap", m.gap, &out.Gap}} {
		if of.text == "" {
			continue
		}
		l, err := length.Parse(of.text)
		if err != nil {
			return nil, usagef("--%s: %v", of.flag, err)
		}
		*of.to = l.MM()
	}
	if len(sides) == 1 {
		out.Height = 0
	} else {
		out.MaxLength = 0
	}
	return &out, nil
}

// settings are those of the art: the usual ones, and what the shop sets.
func (m *makeChoice) settings() (layers.Settings, error) {
	out := layers.Default()
	out.Knockout = m.knockout
	for _, text := range m.set {
		name, value, ok := strings.Cut(text, "=")
		if !ok {
			return out, usagef("--set: write a name and a length, such as trap=0.3mm:\n%s", settingList())
		}
		l, err := length.Parse(value)
		if err == nil {
			err = out.Set(strings.TrimSpace(name), l.MM())
		}
		if err != nil {
			return out, usagef("--set: %v", err)
		}
	}
	return out, nil
}

// settingList says what may be set, a line each.
func settingList() string {
	var text strings.Builder
	for _, v := range layers.Default().Values() {
		fmt.Fprintf(&text, "  %s=%gmm (%g to %g): %s\n", v.Name, v.MM, v.Least, v.Most, v.Meaning)
	}
	return strings.TrimSuffix(text.String(), "\n")
}

// arrangement is how pieces are laid.
func (m *makeChoice) arrangement() nest.Options {
	var o nest.Options
	if m.tight {
		o.Order = nest.Tight
	}
	if m.nested {
		o.By = nest.Outlines
	}
	return o
}

// methodOf is the method of the order, for messages.
func methodOf(o *order.Order) string {
	if m, ok := order.LookupMethod(o.Method); ok {
		return m.Name
	}
	return o.Method
}
