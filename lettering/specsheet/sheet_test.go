package specsheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/source"
	"yokeline/lettering/specsheet"
)

func read(text string) (*specsheet.Sheet, source.Faults) {
	return specsheet.Read("makers.csv", []byte(text), specsheet.Defaults{Cut: garment.TwoButton})
}

func adult(letter string) garment.Size { return garment.Size{Group: garment.Adult, Letter: letter} }

// figure returns one measure of a garment.
func figure(t *testing.T, g *garment.Garment, name string) garment.Figure {
	t.Helper()
	for _, f := range g.Figures() {
		if f.Measure == name {
			return f
		}
	}
	require.Fail(t, "no "+name)
	return garment.Figure{}
}

// forms are one sheet in the three layouts that makers use.
func forms() map[string]string {
	return map[string]string{
		"a row a measure of a size": "group,size,cut,measure,value\n" +
			"adult,M,two-button,chest half,21 1/2in\nadult,M,two-button,Body Length,76cm\n" +
			"adult,L,two-button,chest half,590mm\nAdult,L,two-button,body length,31in\n",
		"a row a size": "Maker's sheet\n\nSize;Half chest (in);Length, cm\n" +
			"M;21 1/2;76\nL;590 mm;31\"\n",
		"a column a size": "Point of measure,M,L\n" +
			"Pit to pit (in),21.5,590mm\nLength (cm),76,78.74\nWeight,200g,220g\n",
	}
}

func TestASheetIsReadInTheThreeLayouts(t *testing.T) {
	for name, text := range forms() {
		s, faults := read(text)
		require.Empty(t, faults, name)
		assert.Equal(t, []garment.Size{adult("M"), adult("L")}, s.Sizes(garment.TwoButton), name)
		m, err := s.Garment(garment.TwoButton, adult("M"))
		require.NoError(t, err, name)
		assert.InDelta(t, 546.1, m.Measures().ChestHalf, 1e-9, name)
		assert.InDelta(t, 760, m.Measures().BodyLength, 1e-9, name)
		l, err := s.Garment(garment.TwoButton, adult("L"))
		require.NoError(t, err, name)
		assert.InDelta(t, 590, l.Measures().ChestHalf, 1e-9, name)
		assert.InDelta(t, 787.4, l.Measures().BodyLength, 1e-9, name)
	}
}

func TestFiguresTellWhatTheyRestOn(t *testing.T) {
	s, faults := read(forms()["a row a measure of a size"])
	require.Empty(t, faults)
	g, err := s.Garment(garment.TwoButton, adult("M"))
	require.NoError(t, err)
	chest, neck := figure(t, g, "chest half"), figure(t, g, "neck width")
	assert.Equal(t, garment.Figure{Measure: "chest half", MM: 546.1, Formula: "21 1/2 in", Basis: "makers.csv, line 2"}, chest)
	assert.Contains(t, neck.Basis, "generic, not in makers.csv")
	standard, _, err := garment.Standard(garment.TwoButton, adult("M"))
	require.NoError(t, err)
	assert.Equal(t, standard.NeckWidth, neck.MM)

	assert.NotContains(t, s.Filled(garment.TwoButton, adult("M")), "chest half")
	assert.Len(t, s.Filled(garment.TwoButton, adult("M")), len(garment.MeasureNames(garment.TwoButton))-2)
	notes := s.Notes(garment.TwoButton)
	require.Len(t, notes, 1, "both sizes lack the same")
	assert.Contains(t, notes[0].Message, "placket length and sleeve length of adult M and L: not in the sheet")
}

func TestGirthsAreHalved(t *testing.T) {
	s, faults := read("size,chest circumference,length\nM,44in,30in\n")
	require.Empty(t, faults)
	g, err := s.Garment(garment.TwoButton, adult("M"))
	require.NoError(t, err)
	assert.InDelta(t, 22*25.4, g.Measures().ChestHalf, 1e-9)
	assert.Equal(t, "44 in, halved", figure(t, g, "chest half").Formula)
}

func TestATitleMayGiveTheUnit(t *testing.T) {
	s, faults := read("Two button jersey - all measurements in inches\nSize,Half chest\nYouth M,16.5\n")
	require.Empty(t, faults)
	g, err := s.Garment(garment.TwoButton, garment.Size{Group: garment.Youth, Letter: "M"})
	require.NoError(t, err)
	assert.InDelta(t, 419.1, g.Measures().ChestHalf, 1e-9)
}

func TestTheThirdWidthOfATankIsWorkedOut(t *testing.T) {
	for text, want := range map[string][3]float64{ // shoulder, neck, strap
		"size,shoulder width,neck width\nM,320mm,200mm\n":             {320, 200, 60},
		"size,neck width,strap width\nM,200mm,55mm\n":                 {310, 200, 55},
		"size,shoulder width,strap width\nM,320mm,60mm\n":             {320, 200, 60},
		"size,shoulder width,strap width,neck width\nM,32cm,6cm,20cm": {320, 200, 60},
	} {
		s, faults := specsheet.Read("tank.csv", []byte(text), specsheet.Defaults{Cut: garment.BasketballTank})
		require.Empty(t, faults, text)
		g, err := s.Garment(garment.BasketballTank, adult("M"))
		require.NoError(t, err, text)
		m := g.Measures()
		assert.InDeltaSlice(t, want[:], []float64{m.ShoulderWidth, m.NeckWidth, m.StrapWidth}, 1e-9, text)
	}
}

func TestASizeLeftOutIsGenericOrRefused(t *testing.T) {
	s, faults := read("size,chest half,body length\nM,545mm,750mm\n")
	require.Empty(t, faults)
	g, err := s.Garment(garment.TwoButton, adult("L"))
	require.NoError(t, err)
	assert.Contains(t, figure(t, g, "chest half").Basis, "generic, not in makers.csv")
	assert.False(t, s.Has(garment.TwoButton, adult("L")))

	s, faults = read("size,chest half\nM,600mm\n") // over the generic L of 590 mm
	require.Empty(t, faults)
	_, err = s.Garment(garment.TwoButton, adult("L"))
	require.ErrorContains(t, err, "adult L is not in makers.csv")
	assert.ErrorContains(t, err, "chest half")
	assert.ErrorContains(t, err, "add adult L to the sheet")
	_, err = s.Garment(garment.TwoButton, garment.Size{Group: garment.Women, Letter: "L"})
	assert.NoError(t, err, "another group goes by itself")
}

// TestFaultsNameWhereWhatAndHow holds each slip against its message, its line and
// its column.
func TestFaultsNameWhereWhatAndHow(t *testing.T) {
	for name, c := range map[string]struct {
		text         string
		line, column int
		says         []string
	}{
		"no unit":          {"size,chest half\nM,21\n", 2, 3, []string{"chest half of adult M", "no unit", "21in"}},
		"not a length":     {"size,chest half\nM,abc\n", 2, 3, []string{"chest half of adult M", "not a length"}},
		"out of reach":     {"size,chest half (mm)\nM,54600\n", 2, 3, []string{"out of reach"}},
		"two meanings":     {"size,length,chest\nM,30in,42in\n", 1, 13, []string{"two things", "chest half", "chest girth"}},
		"number size":      {"size,chest half\n10-12,42cm\n", 2, 1, []string{"10-12"}},
		"unknown cut":      {"size,cut,chest half\nM,cape,42cm\n", 2, 3, []string{"cape", "two-button"}},
		"unknown group":    {"size,group,chest half\nM,giants,42cm\n", 2, 3, []string{"giants", "youth"}},
		"groups at odds":   {"size,group,chest half\nYM,adult,42cm\n", 2, 1, []string{"group youth", "group adult"}},
		"given twice":      {"size,chest half\nM,54cm\nM,55cm\n", 3, 3, []string{"twice", "line 2"}},
		"no heading":       {"M,54cm\nL,58cm\n", 1, 1, []string{"headings"}},
		"falls":            {"size,chest half\nS,54cm\nM,53cm\n", 3, 3, []string{"chest half falls from 54 cm in adult S to 53 cm in adult M"}},
		"over the generic": {"size,shoulder width\nM,60cm\n", 2, 3, []string{"adult M", "shoulder width 60 cm is over chest half 550 mm (generic)", "give chest half"}},
		"short body":       {"size,armhole depth,body length\nM,300mm,350mm\n", 2, 3, []string{"adult M", "armhole depth 300 mm", "body length 350 mm"}},
		"quote open":       {"size,chest half\nM,\"54cm\nL,58cm\n", 2, 3, []string{"quote"}},
		"wrong unit word":  {"size,measure,value,unit\nM,chest half,54,ells\n", 2, 17, []string{"ells"}},
		"not text":         {"size,chest half\nM,\xff\n", 2, 3, []string{"0xFF", "CSV UTF-8"}},
		"nothing given":    {"size,chest half\nM,\n", 1, 1, []string{"gives no measure"}},
		"accents before":   {"Größe é,size,chest half\né,M,12\n", 2, 5, []string{"no unit"}},
	} {
		s, faults := read(c.text)
		require.NotEmpty(t, faults, name)
		assert.Nil(t, s, name)
		all := faults[0].Text()
		for _, say := range c.says {
			assert.Contains(t, all, say, name)
		}
		assert.Equal(t, [2]int{c.line, c.column}, [2]int{faults[0].Place.Line, faults[0].Place.Column}, name)
	}
	_, faults := read("")
	assert.ErrorContains(t, faults.Err(), "empty")
	_, faults = specsheet.Read("m.csv", []byte("size,chest half\nM,54cm"), specsheet.Defaults{})
	assert.ErrorContains(t, faults.Err(), "does not say its cut")
}

func TestEverySlipIsToldAtOnce(t *testing.T) {
	_, faults := read("size,chest half,body length\nM,21,30\nXXQ,1in,2in\nL,4km,30in\n")
	assert.Len(t, faults, 4)
	_, faults = read("size,shoulder width,neck width,armhole depth,body length\nM,800mm,790mm,400mm,420mm\n")
	assert.Len(t, faults, 3, "shoulder over chest, neck over shoulder, no side left: %v", faults)
}

func TestWhatIsOddButUsableIsNoted(t *testing.T) {
	s, faults := read("size,body length,weight,placket\nM,1300mm,200g,165mm\n")
	require.Empty(t, faults)
	notes := s.Notes(garment.TwoButton)
	require.Len(t, notes, 3)
	assert.Contains(t, notes[0].Message, `"weight" is not used`)
	assert.Contains(t, notes[1].Message, "body length of adult M is 1300 mm, and about 760 mm is usual")
	assert.Contains(t, notes[2].Message, "generic table")

	s, faults = specsheet.Read("tee.csv", []byte("size,chest half,placket\nM,54cm,165mm\n"), specsheet.Defaults{Cut: garment.CrewTee})
	require.Empty(t, faults)
	assert.Contains(t, s.Notes(garment.CrewTee)[0].Message, "a crew-tee has no such measure")
	assert.Empty(t, s.Notes(garment.Hockey), "another cut is not concerned")
}

func TestEveryWordIsOneMeasure(t *testing.T) {
	for _, word := range []string{"Chest 1/2", "½ chest", "CHEST_HALF", "Half Chest", "pit-to-pit", "Chest Width (cm)", "chest width, cm", "Chest half [centimetres]", "chest half centimeters"} {
		s, faults := read("size," + `"` + word + `"` + "\nM,54cm\n")
		require.Empty(t, faults, word)
		assert.NotContains(t, s.Filled(garment.TwoButton, adult("M")), "chest half", word)
	}
}
