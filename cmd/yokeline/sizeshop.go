package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/length"
	"yokeline/lettering/platen"
	"yokeline/lettering/sizes"
)

// shopView holds the flags of size that show a job as the shop makes it instead
// of piece by piece.
type shopView struct {
	run, press bool
	tolerance  string
	platens    []string
}

func (v *shopView) flags(c *cobra.Command) {
	f := c.Flags()
	f.BoolVar(&v.run, "run", false, "show in how few heights the pieces of a job can be made over its sizes")
	f.StringVar(&v.tolerance, "tolerance", "10%", "with --run: height that a size may give up so that fewer heights are made")
	f.BoolVar(&v.press, "press", false, "show which platen takes the pieces of a job, and what lies under it")
	f.StringArrayVar(&v.platens, "platen", nil, "with --press: a platen of the shop, such as \"15in x 15in\", instead of the job's; may be repeated")
}

// asked reports whether one of the flags was given.
func (v *shopView) asked(c *cobra.Command) bool {
	return v.run || v.press || c.Flags().Changed("tolerance") || c.Flags().Changed("platen")
}

// job reads and sizes the job and shows it as the flags say.
func (v *shopView) job(c *cobra.Command, s streams, choice jobChoice, args []string, f format) error {
	switch {
	case v.run && v.press:
		return usagef("give --run or --press, not both")
	case !v.run && c.Flags().Changed("tolerance"):
		return usagef("--tolerance goes with --run")
	case !v.press && len(v.platens) > 0:
		return usagef("--platen goes with --press")
	case len(args) == 1 && choice.demo, len(args) == 0 && !choice.demo:
		return usagef("--run and --press are for a job: give its folder or file, or --demo")
	case len(args) == 1:
		choice.path = args[0]
	}
	tolerance, err := shareFlag("tolerance", v.tolerance, 0, 0.9)
	if err != nil {
		return err
	}
	var platens []platen.Platen
	for _, text := range v.platens {
		p, err := platen.Parse(text)
		if err != nil {
			return usagef("--platen: %v", err)
		}
		platens = append(platens, p)
	}
	j, err := readJob(choice)
	if err != nil {
		return err
	}
	if len(platens) > 0 {
		j.order.Platens = platens
	}
	sized, err := j.size(c.Context(), s, withoutWaysOut)
	if err != nil {
		return err
	}
	if v.run {
		return printRuns(s, f, sized, tolerance)
	}
	return printPress(s, f, sized)
}

// printUnsized names the players who are left out because nobody knows what they
// wear.
func printUnsized(s streams, sized *sizes.Sized) {
	var names []string
	for _, p := range sized.Players {
		if !p.SizeKnown {
			names = append(names, p.Label())
		}
	}
	if len(names) > 0 {
		fmt.Fprintf(s.out, "\nleft out, for their size is not known: %s\n", strings.Join(names, ", "))
	}
}

// percent prints a share.
func percent(share float64) string { return fmt.Sprintf("%.0f %%", share*100) }

// counted prints a number of things.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// show prints a computed length in the unit of the job.
func show(sized *sizes.Sized, mm float64, r length.Rounding) string {
	return length.Plain(mm, sized.Order.Units, r)
}
