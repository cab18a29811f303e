package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/findings"
	"yokeline/lettering/rulebook"
	"yokeline/proof/records"
)

func checkCommand(s streams) *cobra.Command {
	var choice jobChoice
	failOn := "violation"
	c := &cobra.Command{
		Use:   "check JOB",
		Short: "Hold the roster and every piece against the rule book",
		Long: `check measures the pieces as they will be made and says which rule of which
edition is broken, by how much, and what would mend it. It exits with 1 when a
rule is broken or something does not fit; advice alone is 0, unless --fail-on
asks otherwise.`,
		Example: `  yokeline check spring-league
  yokeline check spring-league --rules nfhs-softball --season 2027
  yokeline check --demo --format json`,
		Args: usageArgs(cobra.MaximumNArgs(1)),
	}
	output := formatFlag(c)
	c.Flags().BoolVar(&choice.demo, "demo", false, "check the built-in order")
	c.Flags().StringVar(&choice.rules, "rules", "", "rule book id or file, instead of the job's own")
	c.Flags().StringVar(&choice.season, "season", "", "season, such as 2027 or 2026-27")
	c.Flags().StringVar(&choice.category, "category", "", "whose figures hold, such as women or 12U, instead of the job's own")
	c.Flags().StringVar(&failOn, "fail-on", failOn, "what makes the exit code 1: violation, or advice too")
	_ = c.RegisterFlagCompletionFunc("rules", cobra.FixedCompletions(rulebook.IDs(), cobra.ShellCompDirectiveNoFileComp))
	_ = c.RegisterFlagCompletionFunc("fail-on", cobra.FixedCompletions([]string{"violation", "advice"}, cobra.ShellCompDirectiveNoFileComp))
	c.RunE = func(c *cobra.Command, args []string) error {
		if (len(args) == 1) == choice.demo {
			return usagef("give a job, or --demo; see yokeline check --help")
		}
		if failOn != "violation" && failOn != "advice" {
			return usagef("--fail-on: %q is not violation or advice", failOn)
		}
		if len(args) == 1 {
			choice.path = args[0]
		}
		worst, err := checkJob(c, s, choice, *output)
		if err != nil {
			return err
		}
		return overIsAFinding(worst == findings.Violation || worst == findings.Advice && failOn == "advice")
	}
	return c
}

// found checks a job: as it would be proved, onto what was signed, where
// something was; else without the ways out of names, which a check does not print.
func found(ctx context.Context, s streams, choice jobChoice) (*job, []findings.Result, error) {
	sh, err := openShelf(choice)
	if err != nil {
		return nil, nil, err
	}
	if _, signed := records.LastSigned(sh.all); signed {
		i, err := prepare(ctx, s, choice)
		if err != nil {
			return nil, nil, err
		}
		return i.job, i.results, nil
	}
	j, err := readJob(choice)
	if err != nil {
		return nil, nil, err
	}
	sized, err := j.size(ctx, s, withoutWaysOut)
	if err != nil {
		return nil, nil, err
	}
	return j, findings.Check(j.rules, findings.Of(sized)), nil
}

// checkJob prints the findings of a job and returns the worst.
func checkJob(c *cobra.Command, s streams, choice jobChoice, output format) (findings.Severity, error) {
	j, results, err := found(c.Context(), s, choice)
	if err != nil {
		return "", err
	}
	if output == formatJSON {
		err = s.printJSON(checked(j.rules, results))
	} else {
		printRulesHead(s.out, j.rules)
		printFindings(s.out, results, len(j.order.Players))
	}
	return findings.Worst(results), err
}

// checkedJSON is what check prints as JSON.
type checkedJSON struct {
	Rules struct {
		ID      string `json:"id"`
		Edition string `json:"edition"`
		Season  string `json:"season"`
		// Category is women, 12U and the like; left out for everyone.
		Category string `json:"category,omitempty"`
	} `json:"rules"`
	Findings []findings.Finding `json:"findings"`
}

func checked(r *rulebook.Rules, results []findings.Result) checkedJSON {
	out := checkedJSON{Findings: append([]findings.Finding{}, findings.Findings(results)...)}
	if r != nil {
		out.Rules.ID, out.Rules.Edition, out.Rules.Season, out.Rules.Category = r.ID, r.Edition, r.Season, r.Category
	}
	return out
}

func printRulesHead(w io.Writer, r *rulebook.Rules) {
	if r == nil {
		fmt.Fprintln(w, "No rule book is named, so nothing was checked against one.")
		return
	}
	season := r.Season
	if r.Category != "" {
		season += ", figures for " + r.Category
	}
	fmt.Fprintf(w, "Checked against %s, %s, season %s (%s)\n", r.Body, r.Sport, season, r.ID)
}

// printFindings prints one finding a line, with the remedy under it, and a
// count of what is in order. What many of the players share is one line that
// names them.
func printFindings(w io.Writer, results []findings.Result, players int) {
	inOrder := 0
	for _, g := range findings.Grouped(results, players) {
		if g.Severity == findings.InOrder {
			inOrder += max(1, len(g.Players))
			continue
		}
		f := g.Finding
		f.Player = shared(g, players)
		fmt.Fprintln(w, findingLine(f))
		if g.Remedy != "" {
			fmt.Fprintf(w, "           %s\n", g.Remedy)
		}
	}
	switch {
	case inOrder == 1:
		fmt.Fprintln(w, "1 check is in order")
	case inOrder > 1:
		fmt.Fprintf(w, "%d checks are in order\n", inOrder)
	}
}

// shared names everyone whom a group concerns: who is meant must not be lost.
func shared(g findings.Group, players int) string {
	if n := len(g.Players); n < 2 || n == players {
		return g.Who
	}
	return strings.Join(g.Players, ", ")
}

func findingLine(f findings.Finding) string {
	who := strings.Trim(strings.Join([]string{f.Player, f.Place}, ", "), ", ")
	line := fmt.Sprintf("%-9s  %s", f.Severity, f.What)
	if who != "" {
		line = fmt.Sprintf("%-9s  %s: %s", f.Severity, who, f.What)
	}
	if f.Required == "" && f.Measured != "" { // a remark on the roster or the job: it says all by itself
		line = strings.TrimSuffix(line, f.What)
		return line + f.Measured
	}
	if f.Measured != "" {
		line += " " + f.Measured
	}
	if f.Required != "" {
		line += ", required " + f.Required
	}
	if f.By != "" {
		line += " (off by " + f.By + ")"
	}
	if f.Rule != "" || f.Source != "" {
		line += "  [" + strings.Trim(strings.Join([]string{f.Rule, f.Source}, ", "), ", ")
		if f.Season != "" {
			line += ", season " + f.Season
		}
		if f.How == "memory" {
			line += ", from memory: check your book"
		}
		line += "]"
	}
	return line
}
