package main

import (
	"fmt"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/sizerun"
	"yokeline/lettering/sizes"
)

// runRow is the run of one piece as size --run prints it.
type runRow struct {
	Place   string       `json:"place"`
	Least   number       `json:"least_mm"` // of the rules; null for none
	Sizes   []runSizeRow `json:"sizes"`
	Waiting []string     `json:"waiting"`
	Plans   []planRow    `json:"plans"`
}

type runSizeRow struct {
	Size   string `json:"size"`
	Pieces int    `json:"pieces"`
	Asked  number `json:"asked_mm"`
	Fits   number `json:"fits_mm"`
	SetBy  string `json:"set_by"` // the player whose piece decides; empty where all reach what was asked
}

type planRow struct {
	Plan         string    `json:"plan"`
	Steps        []stepRow `json:"steps"`
	GreatestLoss number    `json:"greatest_loss"` // a share of what would fit
	LossAt       string    `json:"loss_at"`
	MeanLoss     number    `json:"mean_loss"`
	BelowRule    []string  `json:"below_rule"`
	Recommended  bool      `json:"recommended"`
	Taken        bool      `json:"taken"`
}

type stepRow struct {
	Height number   `json:"height_mm"`
	Sizes  []string `json:"sizes"`
	Pieces int      `json:"pieces"`

	labels []string
}

func printRuns(s streams, f format, sized *sizes.Sized, tolerance float64) error {
	rows := []runRow{}
	for _, run := range sized.Runs() {
		rows = append(rows, runJSON(sized, run, tolerance))
	}
	if f == formatJSON {
		return s.printJSON(struct {
			Tolerance number   `json:"tolerance"`
			Runs      []runRow `json:"runs"`
		}{number(tolerance), rows})
	}
	for i, row := range rows {
		if i > 0 {
			fmt.Fprintln(s.out)
		}
		if err := printRun(s, sized, row); err != nil {
			return err
		}
	}
	printUnsized(s, sized)
	_, err := fmt.Fprintf(s.out, "\nEvery height is another sheet or screen. Recommended is the plan with the fewest heights in which\n"+
		"no size gives up more than %s of the height that would fit it (--tolerance).\n", percent(tolerance))
	return err
}

func runJSON(sized *sizes.Sized, run sizes.Run, tolerance float64) runRow {
	row := runRow{Place: string(run.Place), Least: orNull(run.Least), Waiting: []string{}}
	for _, size := range run.Sizes {
		r := runSizeRow{Size: size.Size.String(), Pieces: size.Pieces, Asked: number(size.Asked), Fits: number(size.Fits)}
		if size.Player >= 0 {
			r.SetBy = sized.Players[size.Player].Label()
		}
		row.Sizes = append(row.Sizes, r)
	}
	for _, i := range run.Waiting {
		row.Waiting = append(row.Waiting, sized.Players[i].Label())
	}
	best := sizerun.Best(run.Plans, tolerance)
	for i, plan := range run.Plans {
		p := planRow{Plan: plan.Kind.String(), GreatestLoss: number(plan.Loss), MeanLoss: number(plan.Mean),
			BelowRule: sizeWords(plan.Short), Recommended: i == best, Taken: i == run.Taken}
		if plan.Loss > 0 {
			p.LossAt = plan.LossAt.String()
		}
		for _, step := range plan.Steps {
			row := stepRow{Height: number(step.Height), Sizes: sizeWords(step.Sizes), Pieces: step.Pieces}
			for _, size := range step.Sizes {
				row.labels = append(row.labels, size.Label())
			}
			p.Steps = append(p.Steps, row)
		}
		row.Plans = append(row.Plans, p)
	}
	return row
}

func sizeWords(list []garment.Size) []string {
	out := []string{}
	for _, size := range list {
		out = append(out, size.String())
	}
	return out
}

// printRun prints what fits each size, and then the plans.
func printRun(s streams, sized *sizes.Sized, row runRow) error {
	fmt.Fprintf(s.out, "%s\n", row.Place)
	t := &table{}
	t.add("  size", "pieces", "asked", "fits all", "set by")
	for _, r := range row.Sizes {
		t.add("  "+r.Size, fmt.Sprint(r.Pieces), show(sized, float64(r.Asked), length.Nearest), show(sized, float64(r.Fits), length.Down), r.SetBy)
	}
	if err := t.print(s.out); err != nil {
		return err
	}
	if len(row.Waiting) > 0 {
		fmt.Fprintf(s.out, "  not counted, for they fit at no height: %s\n", strings.Join(row.Waiting, ", "))
	}
	fmt.Fprintln(s.out)
	t = &table{}
	t.add("  plan", "heights", "made", "gives up at most", "on the mean piece", "")
	for _, p := range row.Plans {
		lost := "nothing"
		if p.LossAt != "" {
			lost = percent(float64(p.GreatestLoss)) + " on " + p.LossAt
		}
		t.add("  "+p.Plan, counted(len(p.Steps), "height", "heights"), madeOf(sized, p.Steps), lost, percent(float64(p.MeanLoss)), marks(sized, row, p))
	}
	return t.print(s.out)
}

// madeOf lists the steps of a plan: 13 at 1 3/4 in (S M L). One height for all
// needs no sizes.
func madeOf(sized *sizes.Sized, steps []stepRow) string {
	var out []string
	for _, step := range steps {
		words := fmt.Sprintf("%d at %s", step.Pieces, show(sized, float64(step.Height), length.Down))
		if len(steps) > 1 {
			words += " (" + strings.Join(step.labels, " ") + ")"
		}
		out = append(out, words)
	}
	return strings.Join(out, ", ")
}

// marks says what else there is to a plan.
func marks(sized *sizes.Sized, row runRow, p planRow) string {
	var out []string
	if p.Taken {
		out = append(out, "taken by the job")
	}
	if p.Recommended {
		out = append(out, "recommended")
	}
	if len(p.BelowRule) > 0 {
		out = append(out, "under the rule's "+show(sized, float64(row.Least), length.Up)+" on "+strings.Join(p.BelowRule, ", "))
	}
	return strings.Join(out, "; ")
}
