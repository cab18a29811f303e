package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"yokeline/lettering/changes"
	"yokeline/lettering/signoff"
)

func compareCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "compare A B",
		Short: "Say what changed between two states of an order",
		Long: `compare sizes two jobs and says in words what is not the same: what the job asks
for, who plays, and how each player's pieces come out. A job is a folder or a
file; every issued revision is kept as one, in issued/revision-1/job.`,
		Example: `  yokeline compare spring-league/issued/revision-1/job spring-league
  yokeline compare before.yaml after.yaml --format json`,
		Args: usageArgs(cobra.ExactArgs(2)),
	}
	output := formatFlag(c)
	c.RunE = func(c *cobra.Command, args []string) error {
		return compare(c.Context(), s, args[0], args[1], *output)
	}
	return c
}

// changeJSON is one change as compare prints it.
type changeJSON struct {
	Kind   string `json:"kind"`
	Player string `json:"player"`
	About  string `json:"about"`
	What   string `json:"what"`
	Was    string `json:"was"`
	Is     string `json:"is"`
	Text   string `json:"text"`
}

type comparedJSON struct {
	Before  string       `json:"before"` // fingerprints
	After   string       `json:"after"`
	Changes []changeJSON `json:"changes"`
}

func compare(ctx context.Context, s streams, before, after string, f format) error {
	was, err := prepare(ctx, s, jobChoice{path: before})
	if err != nil {
		return err
	}
	is, err := prepare(ctx, s, jobChoice{path: after})
	if err != nil {
		return err
	}
	all := changes.Between(was.sized, is.sized)
	if f == formatJSON {
		out := comparedJSON{Before: was.print, After: is.print, Changes: []changeJSON{}}
		for _, c := range all {
			out.Changes = append(out.Changes, changeJSON{string(c.Kind), c.Player, c.About, c.What, c.Was, c.Is, c.Text()})
		}
		return s.printJSON(out)
	}
	fmt.Fprintf(s.out, "%s is now %s\n", signoff.Short(was.print), signoff.Short(is.print))
	if len(all) == 0 {
		fmt.Fprintln(s.out, "Nothing that is made has changed.")
	}
	for _, c := range all {
		fmt.Fprintln(s.out, c.Text())
	}
	return nil
}
