package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/rulebook"
)

func rulesCommand(s streams) *cobra.Command {
	var season, category, between string
	var known bool
	c := &cobra.Command{
		Use:   "rules [ID]",
		Short: "List the rule books that are known, or every figure of one with its source",
		Long: `rules lists what is known of each body's rules, and how: read in a source that is
named, or from memory. A figure from memory must be looked up in the current book
before anyone relies on it.`,
		Example: `  yokeline rules
  yokeline rules nfhs-softball
  yokeline rules nfhs-football --season 2023
  yokeline rules uefa-equipment --season 2026-27 --category women
  yokeline rules nfhs-football --between 2023,2026
  yokeline rules --known
  yokeline rules --format json`,
		Args: usageArgs(cobra.MaximumNArgs(1)),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return rulebook.IDs(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	output := formatFlag(c)
	c.Flags().StringVar(&season, "season", "", "only the figures that hold in a season")
	c.Flags().StringVar(&category, "category", "", "with --season: the figures that hold for women, 12U and the like")
	c.Flags().StringVar(&between, "between", "", "what changed between two seasons, such as 2023,2026")
	c.Flags().BoolVar(&known, "known", false, "a Markdown table: what is known of each book, read or from memory")
	c.RunE = func(_ *cobra.Command, args []string) error {
		switch {
		case known && (len(args) > 0 || season != "" || between != "" || *output == formatJSON):
			return usagef("--known goes alone: it prints one table of every book")
		case known:
			return printKnown(s)
		case category != "" && (len(args) == 0 || season == ""):
			return usagef("--category goes with the id of a rule book and --season")
		case between != "" && (len(args) == 0 || season != ""):
			return usagef("--between goes with the id of a rule book, and without --season")
		case between != "":
			return printChanges(s, args[0], between, *output)
		}
		if len(args) == 1 {
			return printBook(s, args[0], season, category, *output)
		}
		return printBooks(s, *output)
	}
	return c
}

// bookRow is a rule book as the list prints it.
type bookRow struct {
	ID      string `json:"id"`
	Body    string `json:"body"`
	Sport   string `json:"sport"`
	Level   string `json:"level"`
	Edition string `json:"edition"`
	Read    int    `json:"read"`
	Memory  int    `json:"memory"`
}

func printBooks(s streams, f format) error {
	var list []bookRow
	for _, id := range rulebook.IDs() {
		b, err := rulebook.Load(id)
		if err != nil {
			return err
		}
		row := bookRow{ID: b.ID, Body: b.Body, Sport: b.Sport, Level: b.Level, Edition: b.Edition}
		row.Read, row.Memory = b.Count()
		list = append(list, row)
	}
	if f == formatJSON {
		return s.printJSON(list)
	}
	t := &table{}
	t.add("id", "sport", "level", "figures read", "from memory", "edition")
	for _, b := range list {
		t.add(b.ID, b.Sport, b.Level, fmt.Sprint(b.Read), fmt.Sprint(b.Memory), b.Edition)
	}
	return t.print(s.out)
}

// figureRow is one figure of a rule book as it is printed.
type figureRow struct {
	About   string `json:"about"`
	Figure  string `json:"figure"`
	Is      string `json:"is"`
	For     string `json:"for"`
	Seasons string `json:"seasons"`
	Advice  bool   `json:"advice"`
	Rule    string `json:"rule"`
	Source  string `json:"source"`
	How     string `json:"how"`
	Note    string `json:"note"`
}

func printBook(s streams, id, season, category string, f format) error {
	book, err := openBook(id)
	if err != nil {
		return err
	}
	lines := book.Lines()
	if season != "" {
		rules, err := book.InFor(season, category)
		if err != nil {
			return usagef("--season or --category: %v", err)
		}
		lines = rules.Lines()
	}
	rows := []figureRow{}
	for _, l := range lines {
		rows = append(rows, figureRow{l.About, l.Figure, l.Is, l.For, l.Seasons, l.Advice, l.Rule, l.Source, string(l.How), l.Note})
	}
	if f == formatJSON {
		return s.printJSON(struct {
			ID      string      `json:"id"`
			Body    string      `json:"body"`
			Sport   string      `json:"sport"`
			Level   string      `json:"level"`
			Edition string      `json:"edition"`
			Figures []figureRow `json:"figures"`
		}{book.ID, book.Body, book.Sport, book.Level, book.Edition, rows})
	}
	fmt.Fprintf(s.out, "%s, %s, %s\nEdition: %s\n\n", book.Body, book.Sport, book.Level, book.Edition)
	return figureTable(rows).print(s.out)
}

func figureTable(rows []figureRow) *table {
	t := &table{}
	t.add("about", "figure", "is", "when", "rule", "how", "source")
	for _, r := range rows {
		when := r.Seasons
		if r.For != "" {
			when = r.For + " " + when
		}
		how := r.How
		if r.Advice {
			how += ", advice"
		}
		t.add(r.About, r.Figure, r.Is, when, r.Rule, how, r.Source)
	}
	return t
}

// changeRow is a figure that is not the same in two seasons.
type changeRow struct {
	About  string `json:"about"`
	Figure string `json:"figure"`
	Was    string `json:"was"`
	Now    string `json:"now"`
	Rule   string `json:"rule"`
	Source string `json:"source"`
	How    string `json:"how"`
}

// printChanges prints what changed in a book between two seasons.
func printChanges(s streams, id, between string, f format) error {
	earlier, later, ok := strings.Cut(between, ",")
	if !ok {
		return usagef("--between: %q is not two seasons parted by a comma, such as 2023,2026", between)
	}
	book, err := openBook(id)
	if err != nil {
		return err
	}
	changes, err := book.Changes(strings.TrimSpace(earlier), strings.TrimSpace(later))
	if err != nil {
		return usagef("--between: %v", err)
	}
	rows := []changeRow{}
	for _, c := range changes {
		row := changeRow{About: c.About, Figure: c.Figure, Was: "not known", Now: "not known"}
		for _, side := range []struct {
			figure *rulebook.Figure
			text   *string
		}{{c.Was, &row.Was}, {c.Now, &row.Now}} {
			if side.figure != nil {
				*side.text = side.figure.Text()
				row.Rule, row.Source, row.How = side.figure.Rule, side.figure.Source.String(), string(side.figure.How)
			}
		}
		rows = append(rows, row)
	}
	if f == formatJSON {
		return s.printJSON(rows)
	}
	if len(rows) == 0 {
		_, err := fmt.Fprintf(s.out, "Nothing that is known of %s changed between %s and %s.\n", id, earlier, later)
		return err
	}
	t := &table{}
	t.add("about", "figure", earlier, later, "rule", "how", "source")
	for _, r := range rows {
		t.add(r.About, r.Figure, r.Was, r.Now, r.Rule, r.How, r.Source)
	}
	return t.print(s.out)
}
