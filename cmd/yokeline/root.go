package main

import (
	"runtime/debug"

	"github.com/spf13/cobra"
)

// format is how a command prints its result.
type format string

const (
	formatTable format = "table"
	formatJSON  format = "json"
)

// newRoot builds the command line afresh for each run, so that no flag value
// outlives its run.
func newRoot(s streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "yokeline",
		Short: "Size lettering for team uniforms and draw the proof that a coach signs",
		Long: `yokeline reads an order (a job file and a coach's roster), sizes every name and
number for that player's garment, checks the numbers against the league's rule
book, draws a to-scale proof, records the coach's sign-off of exactly that proof,
and makes the production files of what was signed.

A job is a folder with job.yaml in it, or the file itself.

Exit codes: 0 done; 1 done, with findings (size, check, sign); 3 input that cannot be
used; 4 wrong flags or arguments; 5 output could not be written, the old output
is intact; 70 internal error; 130 and 143 interrupted.`,
		Example: `  yokeline proof --demo -o demo       draw the proof of the built-in order
  yokeline start spring-league        write a starter job to edit
  yokeline size spring-league         see every name and number as it comes out
  yokeline check spring-league        hold it against the rule book
  yokeline proof spring-league -o out --html
  yokeline sign spring-league herons-signoff.json
  yokeline make spring-league -o bench`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Version:       version(),
		Args:          usageArgs(cobra.NoArgs),
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		return usagef("%v; see %s --help", err, c.CommandPath())
	})
	root.AddCommand(proofCommand(s), sizeCommand(s), checkCommand(s), facesCommand(s), rulesCommand(s), garmentsCommand(s), shapesCommand(s), startCommand(s), signCommand(s), compareCommand(s), makeCommand(s))
	return root
}

// usageArgs turns cobra's complaint about arguments into a usage error.
func usageArgs(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if err := check(c, args); err != nil {
			if c.HasSubCommands() && len(args) > 0 {
				return usagef("there is no command %q%s; see yokeline --help", args[0], nearest(c, args[0]))
			}
			return usagef("%v; see %s --help", err, c.CommandPath())
		}
		return nil
	}
}

func nearest(c *cobra.Command, typed string) string {
	c.SuggestionsMinimumDistance = 2
	if near := c.SuggestionsFor(typed); len(near) > 0 {
		return ", did you mean " + near[0] + "?"
	}
	return ""
}

// formatFlag adds --format and returns where its value will be.
func formatFlag(c *cobra.Command) *format {
	f := formatTable
	c.Flags().VarP((*formatValue)(&f), "format", "", "how to print: table or json")
	_ = c.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"table", "json"}, cobra.ShellCompDirectiveNoFileComp))
	return &f
}

type formatValue format

func (f *formatValue) String() string { return string(*f) }
func (f *formatValue) Type() string   { return "table|json" }
func (f *formatValue) Set(text string) error {
	if text != string(formatTable) && text != string(formatJSON) {
		return usagef("%q is not table or json", text)
	}
	*f = formatValue(text)
	return nil
}

// version tells which build this is, as the Go tool recorded it.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "development build"
	}
	return info.Main.Version
}
