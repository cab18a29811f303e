package sizes_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/rulebook"
	"yokeline/lettering/sizerun"
	"yokeline/lettering/sizes"
)

func squad() []order.Player {
	return []order.Player{
		player("Ng", "7", garment.Adult, "M"), player("Wojciechowskieva", "8", garment.Adult, "M"), player("Quill", "9", garment.Adult, "S"),
		player("Featherstonehaugh-Lindqvist", "0", garment.Youth, "S"), player("Brandtmeister", "1", garment.Youth, "L"),
		player("Schwarzenbergers", "2", garment.Adult, "L"), player("Pim", "3", garment.Youth, "M"),
	}
}

func runOf(t *testing.T, s *sizes.Sized, place order.Place) sizes.Run {
	t.Helper()
	for _, r := range s.Runs() {
		if r.Place == place {
			return r
		}
	}
	require.Fail(t, "no run of "+string(place))
	return sizes.Run{}
}

func TestARunTellsWhatFitsEachSize(t *testing.T) {
	s := resolve(t, herons(squad()...), nil)
	names := runOf(t, s, garment.BackName)
	want := map[garment.Size]float64{}
	for _, p := range s.Players {
		if n := backName(t, p).Name; n.Verdict != fit.Over {
			if old, ok := want[p.Size]; !ok || n.LetterHeight < old {
				want[p.Size] = n.LetterHeight
			}
		}
	}
	require.Len(t, names.Sizes, len(want))
	for i, size := range names.Sizes {
		assert.InDelta(t, want[size.Size], size.Fits, 1e-9, size.Size.String())
		assert.InDelta(t, 63.5, size.Asked, 1e-9)
		if size.Fits < 63.5 {
			require.GreaterOrEqual(t, size.Player, 0)
			assert.Equal(t, size.Fits, backName(t, s.Players[size.Player]).Name.LetterHeight)
		} else {
			assert.Equal(t, -1, size.Player)
		}
		if i > 0 {
			assert.Negative(t, names.Sizes[i-1].Size.Compare(size.Size), "in the order of sizes")
		}
	}
	assert.Equal(t, []int{3}, names.Waiting, "a name that fits at no height pulls nobody down")
	assert.Equal(t, -1, names.Taken)

	numbers := runOf(t, s, garment.BackNumber)
	require.Len(t, numbers.Plans, 4)
	assert.Len(t, numbers.Plans[1].Steps, 2, "youth 6 in, adult 8 in")
	assert.Zero(t, numbers.Plans[1].Loss)
	assert.InDelta(t, 0.25, numbers.Plans[0].Loss, 1e-9)
}

func TestNamesThatShareAHeightAreReckonedByThemselves(t *testing.T) {
	alone := resolve(t, herons(squad()...), nil)
	o := herons(squad()...)
	o.Fit.Same = "team"
	assert.Equal(t, runOf(t, alone, garment.BackName).Plans, runOf(t, resolve(t, o, nil), garment.BackName).Plans)
}

func TestAJobThatTakesAPlanIsMadeInItsHeights(t *testing.T) {
	free := resolve(t, herons(squad()...), nil)
	for _, kind := range sizerun.Kinds() {
		o := herons(squad()...)
		o.Pieces[0].Run, o.Pieces[1].Run = kind.String(), kind.String()
		o.Fit.Same = "team"
		s := resolve(t, o, nil)
		run := runOf(t, s, garment.BackName)
		require.Equal(t, int(kind), run.Taken)
		plan := run.Plans[run.Taken]
		assert.Equal(t, runOf(t, free, garment.BackName).Plans, run.Plans, "the plans are those of the heights asked")
		heights := map[float64]bool{}
		for i, p := range s.Players {
			n := backName(t, p).Name
			if n.Verdict == fit.Over {
				assert.Equal(t, []int{i}, run.Waiting)
				continue
			}
			want, ok := plan.Height(p.Size)
			require.True(t, ok)
			assert.InDelta(t, want, n.LetterHeight, 0.00101, "%s %s", kind, p.Name)
			assert.LessOrEqual(t, n.LetterHeight, want+1e-9)
			heights[math.Round(n.LetterHeight*100)] = true
			number, _ := p.Piece(garment.BackNumber)
			numbers := runOf(t, s, garment.BackNumber)
			tall, _ := numbers.Plans[numbers.Taken].Height(p.Size)
			assert.InDelta(t, tall, number.Number.Height, 0.00101)
		}
		assert.LessOrEqual(t, len(heights), len(plan.Steps), "%s", kind)
		assert.NotEqual(t, free.Fingerprint(), s.Fingerprint())
		assert.Equal(t, s.Fingerprint(), resolve(t, o, nil).Fingerprint())
		assert.Empty(t, o.Pieces[0].Heights, "the order that was read stays as it is")
		assert.Equal(t, "team", o.Fit.Same)
	}
}

func TestANameThatWaitsIsNotMadeLowerByAPlan(t *testing.T) {
	o := herons(squad()...)
	o.Pieces[0].Run = sizerun.OneSize.String()
	n := backName(t, resolve(t, o, nil).Players[3]).Name
	assert.Equal(t, fit.Over, n.Verdict)
	assert.GreaterOrEqual(t, n.LetterHeight, 0.6*63.5-1e-9, "the floor is that of the height asked")
}

func TestASheetOfTheMakerDecidesTheRoom(t *testing.T) {
	job := `yokeline: 1
team: Herons
units: in
garment: {cut: two-button, colour: "#14284b", spec: makers.csv}
pieces: {back name: {face: oswald, height: 2 1/2in}}
players:
  - {name: Wojciechowskieva, number: 7, size: M}
`
	sized := func(sheet string) *sizes.Sized {
		o, err := order.Read("job.yaml", func(name string) ([]byte, error) {
			return []byte(map[string]string{"job.yaml": job, "makers.csv": sheet}[name]), nil
		})
		require.NoError(t, err)
		return resolve(t, o, nil)
	}
	wide := sized("size,chest half,shoulder width,sleeve length\nM,24in,20in,14in\n")
	slim := sized("size,chest half,shoulder width\nM,20in,17in\n")
	g := wide.Players[0].Garment
	assert.Equal(t, 609.6, g.Measures().ChestHalf)
	assert.Contains(t, g.Figures()[0].Basis, "makers.csv, line 2")
	a, b := backName(t, wide.Players[0]), backName(t, slim.Players[0])
	assert.Greater(t, a.Room.Width, b.Room.Width)
	assert.NotEqual(t, wide.Fingerprint(), slim.Fingerprint(), "the measures are part of what is signed")
	assert.Equal(t, wide.Fingerprint(), sized("size,measure,value\nM,sleeve,14in\nM,half chest,609.6mm\nM,shoulder width,20in\n").Fingerprint(),
		"and not how the sheet is laid out")
	for _, way := range b.Name.WouldFit {
		if way.Kind == fit.NextSize {
			assert.Equal(t, "adult L", way.Size)
		}
	}
}

func TestPlansAreInHeightsThatAShopCuts(t *testing.T) {
	for unit, step := range map[length.Unit]float64{length.Inch: 25.4 / 8, length.Centimetre: 5, length.Millimetre: 5} {
		o := herons(squad()...)
		o.Units = unit
		run, rounded := runOf(t, resolve(t, o, nil), garment.BackName), 0
		for _, plan := range run.Plans {
			for _, size := range run.Sizes {
				mm, ok := plan.Height(size.Size)
				require.True(t, ok)
				assert.LessOrEqual(t, mm, size.Fits+1e-9, "never over what fits")
				if mm == size.Asked {
					continue // as the job wrote it
				}
				rounded++
				assert.InDelta(t, math.Round(mm/step)*step, mm, 1e-6, "%s of %s", plan.Kind, size.Size)
			}
			if plan.Kind == sizerun.EverySize {
				for _, size := range run.Sizes {
					mm, _ := plan.Height(size.Size)
					assert.Less(t, size.Fits-mm, step, "no more than a step is given up")
				}
			}
		}
		assert.Positive(t, rounded)
	}
}

func TestRoundingToAStepDoesNotBreakARule(t *testing.T) {
	book, err := rulebook.Load("nfhs-softball")
	require.NoError(t, err)
	rules, err := book.In("2027")
	require.NoError(t, err)
	o := herons(player("Ng", "88", garment.Adult, "M"))
	o.Units = length.Millimetre
	limit := length.Inches(69, 8) // an 88 fits a little over the least height, which is on no step of 5 mm
	o.Pieces = o.Pieces[1:]
	o.Pieces[0].Limit, o.Pieces[0].Height, o.Pieces[0].Outlines = &limit, order.Height{Length: length.Inches(10, 1)}, nil
	run := runOf(t, resolve(t, o, rules), garment.BackNumber)
	require.Len(t, run.Sizes, 1)
	require.Greater(t, run.Sizes[0].Fits, run.Least)
	require.Less(t, math.Floor(run.Sizes[0].Fits/5)*5, run.Least, "the step would break the rule")
	mm, ok := run.Plans[0].Height(run.Sizes[0].Size)
	require.True(t, ok)
	assert.Equal(t, run.Least, mm)
}
