package order

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/outline"
	"yokeline/lettering/source"
	"yokeline/lettering/spelling"
)

// full uses every key of a job at least once.
const full = `yokeline: 1
team: Alder Point Herons   # a comment
customer: Alder Point Recreation
order: 0042
revision: B
shop: Tern Street Lettering
date: 2027-02-22
due: 2027-03-14
sport: softball
rules: nfhs-softball
units: in
roster: {file: roster.xlsx, sheet: Players}
garment: {cut: two-button, group: youth, colour: navy, trim: gold, fibre: polyester}
method: cut film
colours: {navy: "#14284B", gold: "#e8b33a", white: "#fff"}
pieces:
  back name:   {face: oswald, height: 2 1/2in, shape: radial arch, rise: 1in, colour: white, lang: tr, squash: true}
  back number: {face: graduate, height: by size, colour: gold, gap: 3/8in, outlines: [{width: 1/8in, colour: white}, {width: 2mm, colour: navy, join: mitre}]}
  front name:  {text: Herons, face: yellowtail, case: typed, height: 3in, colour: gold, tail: true}
  front number: {height: 4in, colour: "#ABC", below: 5cm, limit: 20cm, wdth: 75, wght: 700}
  left chest: {text: AP, height: 1in, shape: vertical arch down, radius: 14in}
  sleeve number: {height: by rule}
fit: {tracking: -4%, width: 80%, height: 1 3/4in, same: team}
terms: |
  What is signed
  is made.
`

func readGood(t testing.TB, text string) *Job {
	job, faults := ReadJob("job.yaml", []byte(text), WithFaces("oswald", "graduate", "yellowtail"), WithRules("nfhs-softball"))
	require.Empty(t, faults, "%v", faults)
	return job
}

func mm(t testing.TB, s string) length.Length {
	l, err := length.Parse(s)
	require.NoError(t, err)
	return l
}

func TestEveryKeyOfAJobIsRead(t *testing.T) {
	job := readGood(t, full)
	at := func(s string) *length.Length { l := mm(t, s); return &l }
	figure := func(f float64) *float64 { return &f }
	navy, gold, white := Colour{"navy", "#14284b"}, Colour{"gold", "#e8b33a"}, Colour{"white", "#ffffff"}
	want := Order{
		Team: "Alder Point Herons", Customer: "Alder Point Recreation", Number: "0042", Revision: "B",
		Shop: "Tern Street Lettering", ProofDate: "2027-02-22", Due: "2027-03-14", Sport: "softball",
		Rules: "nfhs-softball", Season: "2027", Units: length.Inch, Method: "cut film",
		Garment: GarmentChoice{Cut: garment.TwoButton, Group: garment.Youth, Colour: navy, Trim: gold, Fibre: "polyester"},
		Colours: []Colour{navy, gold, white},
		Pieces: []Piece{
			{Place: garment.BackName, Face: "oswald", Case: spelling.Upper, Height: Height{ByLength, mm(t, "2 1/2in")}, Shape: "radial arch",
				Rise: at("1in"), Spacing: "baseline", Colour: white, Lang: "tr", Squash: true},
			{Place: garment.BackNumber, Face: "graduate", Height: Height{By: BySize}, Shape: "straight", Spacing: "baseline", Gap: at("3/8in"), Colour: gold,
				Outlines: []Outline{{mm(t, "1/8in"), white, outline.Round}, {mm(t, "2mm"), navy, outline.Mitre}}},
			{Place: garment.FrontName, Text: "Herons", Face: "yellowtail", Case: spelling.Typed, Height: Height{ByLength, mm(t, "3in")},
				Shape: "straight", Spacing: "baseline", Colour: gold, Tail: &Tail{Plain: true}},
			{Place: garment.FrontNumber, Face: "graduate", Height: Height{ByLength, mm(t, "4in")}, Shape: "straight", Spacing: "baseline",
				Colour: Colour{"", "#aabbcc"}, Below: at("5cm"), Limit: at("20cm"), Wdth: figure(75), Wght: figure(700)},
			{Place: garment.LeftChest, Text: "AP", Face: "oswald", Case: spelling.Typed, Height: Height{ByLength, mm(t, "1in")},
				Shape: "vertical arch down", Radius: at("14in"), Spacing: "baseline", Colour: gold},
			{Place: garment.SleeveNumber, Face: "graduate", Height: Height{By: ByRule}, Shape: "straight", Spacing: "baseline", Colour: gold},
		},
		Fit:   Fit{Tracking: -0.04, Width: 0.8, Height: at("1 3/4in"), Same: "team", Arc: "size"},
		Terms: "What is signed\nis made.",
		Notes: job.Order.Notes,
	}
	assert.Equal(t, want, job.Order)
	assert.Equal(t, []string{"roster.xlsx", "Players", "job.yaml:12:16"}, []string{job.Roster.File, job.Roster.Sheet, job.Roster.At.String()})
}

func TestATailIsReadWithItsText(t *testing.T) {
	tail := func(words string) *Tail {
		o := readGood(t, strings.Replace(full, "tail: true", "tail: "+words, 1)).Order
		assert.Empty(t, o.Notes)
		for _, p := range o.Pieces {
			if p.Place == garment.FrontName {
				return p.Tail
			}
		}
		return nil
	}
	assert.Equal(t, &Tail{Plain: true}, tail("true"))
	assert.Nil(t, tail("no"))
	assert.Equal(t, &Tail{Length: 0.8, Plain: true, Text: "ALDER POINT", Face: "oswald"}, tail("{length: 80%, text: ALDER POINT}"))
	assert.Equal(t, &Tail{Curl: -0.5, Taper: 0.9, Slope: 4, Text: "EST 2027", Face: "graduate", Laid: true, Colour: Colour{"gold", "#e8b33a"}},
		tail("{curl: -50%, slope: 4deg, text: EST 2027, face: graduate, set: laid on, colour: gold}"))
	for words, message := range map[string]string{
		"{set: laid on, text: A}": "needs a colour",
		"{curl: 150%}":            "between -100% and 100%",
		"{slope: 4}":              "is not an angle",
		"{slope: 40deg}":          "between -20 and 20 degrees",
		"{wiggle: 3}":             "wiggle",
		"long":                    "neither true nor false",
	} {
		_, faults := ReadJob("job.yaml", []byte(strings.Replace(full, "tail: true", "tail: "+words, 1)))
		require.NotEmpty(t, faults, words)
		assert.Contains(t, faults[0].Message, message)
	}
	_, faults := ReadJob("job.yaml", []byte(strings.Replace(full, "tail: true", "tail: true, shape: vertical arch, rise: 1in", 1)))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Message, "a tail goes under a straight name")
}

func TestANameMayStandBetweenEdges(t *testing.T) {
	piece := func(words string) (Piece, source.Faults) {
		job, faults := ReadJob("job.yaml", []byte(strings.Replace(full, "tail: true", words, 1)))
		if len(faults) > 0 {
			return Piece{}, faults
		}
		for _, p := range job.Order.Pieces {
			if p.Place == garment.FrontName {
				return p, nil
			}
		}
		return Piece{}, nil
	}
	p, faults := piece("shape: bulge, rise: 1/2in, lean: 12deg, optical: yes, embolden: 1/32in")
	require.Empty(t, faults)
	assert.Equal(t, "bulge", p.Shape)
	assert.Equal(t, 12.0, p.Lean)
	assert.True(t, p.Optical)
	assert.InDelta(t, 25.4/32, p.Embolden.MM(), 1e-9)
	for words, message := range map[string]string{
		"shape: bulge":               "a bulge needs a rise",
		"shape: pinch, radius: 14in": "a pinch is given by its rise",
		"shape: bulg, rise: 1in":     "bulg",
		"lean: 12":                   "is not an angle",
		"lean: 80deg":                "between -60 and 60 degrees",
	} {
		_, faults := piece(words)
		require.NotEmpty(t, faults, words)
		assert.Contains(t, faults[0].Error(), message, words)
	}
}

// short is the least a job can say.
const short = `yokeline: 1
team: Herons
sport: soccer
roster: roster.csv
garment: {cut: soccer, colour: "#eeeeee"}
pieces:
  back name:
  back number:
`

func TestAShortJobGetsTheDefaults(t *testing.T) {
	o := readGood(t, short).Order
	assert.Equal(t, []any{DefaultMethod, length.Inch, "", "", garment.Adult}, []any{o.Method, o.Units, o.Season, o.Rules, o.Garment.Group})
	assert.Equal(t, Fit{Tracking: -0.04, Width: 0.80, Same: "team", Arc: "size"}, o.Fit)
	black := Colour{"black", "#000000"}
	assert.Equal(t, []Piece{
		{Place: garment.BackName, Face: "oswald", Height: Height{By: BySize}, Shape: "straight", Spacing: "baseline", Colour: black},
		{Place: garment.BackNumber, Face: "graduate", Height: Height{By: BySize}, Shape: "straight", Spacing: "baseline", Colour: black},
	}, o.Pieces)
	assert.Empty(t, o.Notes)
}

func TestAPieceWithoutAColourTakesOneThatStandsOut(t *testing.T) {
	for name, c := range map[string]struct{ garment, colours, want string }{
		"first that is not the garment's": {"navy", `{navy: "#14284b", gold: "#e8b33a", white: "#fff"}`, "#e8b33a"},
		"same colour under another name":  {"sea", `{navy: "#14284b", sea: "#14284B", gold: "#e8b33a"}`, "#e8b33a"},
		"white on dark":                   {"navy", `{navy: "#14284b"}`, "#ffffff"},
		"black on light":                  {"sky", `{sky: "#aaddff"}`, "#000000"},
	} {
		t.Run(name, func(t *testing.T) {
			text := strings.Replace(short, `colour: "#eeeeee"}`, "colour: "+c.garment+"}\ncolours: "+c.colours, 1)
			for _, p := range readGood(t, text).Order.Pieces {
				assert.Equal(t, c.want, p.Colour.Hex)
			}
		})
	}
}

func TestBothSpellingsAreOne(t *testing.T) {
	american := strings.NewReplacer("colours:", "colors:", "colour:", "color:", "fibre:", "fiber:").Replace(full)
	require.NotEqual(t, full, american)
	a, b := readGood(t, full).Order, readGood(t, american).Order
	a.Notes, b.Notes = nil, nil
	assert.Equal(t, a, b)
}

func TestTheOrderOfKeysDoesNotMatter(t *testing.T) {
	a := readGood(t, "garment: {colour: navy, cut: soccer}\nplayers: [{size: YM, number: 00, name: Lind}]\npieces: {back number: {colour: navy}, back name: }\n"+
		"sport: soccer\ncolours: {navy: \"#14284b\"}\nteam: Herons\nyokeline: 1\n")
	assert.Equal(t, garment.BackName, a.Order.Pieces[0].Place)
	assert.Equal(t, "#14284b", a.Order.Pieces[1].Colour.Hex)
	assert.Equal(t, "00", a.Order.Players[0].Number)
}

func TestWordsAreTakenAsTyped(t *testing.T) {
	text := strings.Replace(short, "roster: roster.csv", `players:
  - {name: "No", number: 7, size: M}
  - {name: No, number: 07, size: M}
  - {name: Null, number: 00, size: M}
  - {name: True, number: 0, size: M, player: ~}
  - {name: 1e3, number: "12", size: m}
  - name: Ågren-Ó'Dell
    number: 012
    size: Youth M
    role: goalkeeper
    note: "left-handed"`, 1)
	var got []string
	for _, p := range readGood(t, text).Order.Players {
		got = append(got, p.Name+" "+p.Number+" "+p.Size.String())
	}
	assert.Equal(t, []string{"No 7 adult M", "No 07 adult M", "Null 00 adult M", "True 0 adult M", "1e3 12 adult M", "Ågren-Ó'Dell 012 youth M"}, got)
}

func TestSeasonsAreReadInTheFormsOfRuleBooks(t *testing.T) {
	for given, want := range map[string]string{
		"2027": "2027", "2026-27": "2026-27", "2026-2027": "2026-27", "2026/27": "2026-27", "1999-00": "1999-00", "2027-03-14": "2027-03-14",
	} {
		assert.Equal(t, want, readGood(t, short+"season: "+given+"\n").Order.Season)
	}
	assert.Equal(t, "2027", readGood(t, short+"due: 2027-03-14\n").Order.Season, "from the due date")
	assert.Equal(t, "2026", readGood(t, short+"date: 2026-12-14\n").Order.Season, "from the date of the proof")
	assert.Equal(t, "2025", readGood(t, short+"due: 2027-03-14\nseason: 2025\n").Order.Season)
	for _, wrong := range []string{"27", "2026-28", "2026-2028", "spring", "2026-", "-2026", "20260", "1800"} {
		_, faults := ReadJob("j", []byte(short+"season: "+wrong+"\n"))
		assert.Len(t, faults, 1, wrong)
	}
}

func TestFacesOfTheShopsOwnKeepTheirPath(t *testing.T) {
	for _, face := range []string{"club/Herons Block.TTF", "../fonts/x.otf", `C:\fonts\x.ttf`} {
		text := strings.Replace(short, "  back name:\n", fmt.Sprintf("  back name: {face: '%s'}\n", face), 1)
		assert.Equal(t, face, readGood(t, text).Order.Pieces[0].Face)
	}
}

func TestWithoutListsAnyIdPasses(t *testing.T) {
	job, faults := ReadJob("j", []byte(strings.Replace(short, "  back name:\n", "  back name: {face: some-face}\n", 1)+"rules: some-book\n"))
	require.Empty(t, faults)
	assert.Equal(t, "some-face", job.Order.Pieces[0].Face)
	assert.Equal(t, "some-book", job.Order.Rules)
}

func TestMethodsAreKnownByTheirOtherWords(t *testing.T) {
	for word, want := range map[string]string{
		"cut film": "cut film", "Cut Film": "cut film", "heat-transfer film": "cut film", "dtf": "direct-to-film", "tackle twill": "sewn twill",
		"dye sublimation": "sublimation", "embroidery": "embroidery", "glitter film": "flock film", "screen-printed transfer": "screen transfer",
	} {
		assert.Equal(t, want, readGood(t, short+"method: "+word+"\n").Order.Method)
	}
	seen := map[string]bool{}
	for _, m := range Methods() {
		for _, word := range append([]string{m.ID}, m.Also...) {
			assert.False(t, seen[squeeze(word)], "%s names two methods", word)
			seen[squeeze(word)] = true
		}
		assert.Positive(t, m.MinStroke*m.MinGap*m.MinLetter, m.ID)
		assert.Contains(t, m.Basis, "common practice")
	}
}

func TestNarrowingBelowSeventyPercentIsAdvisedAgainst(t *testing.T) {
	assert.Empty(t, readGood(t, short+"fit: {width: 70%}\n").Order.Notes)
	notes := readGood(t, short+"fit: {width: 69.9%}\n").Order.Notes
	require.Len(t, notes, 1)
	assert.Equal(t, Advice, notes[0].Severity)
}

func TestAGarmentWithoutAColourIsWhiteAndSaid(t *testing.T) {
	job := readGood(t, strings.Replace(short, `, colour: "#eeeeee"`, "", 1))
	assert.Equal(t, "#ffffff", job.Order.Garment.Colour.Hex)
	require.Len(t, job.Order.Notes, 1)
	assert.Contains(t, job.Order.Notes[0].Message, "colour is not given")
}

func TestRungsCanBeSwitchedOff(t *testing.T) {
	fit := readGood(t, short+"fit: {tracking: 0%, width: 100 %}\n").Order.Fit
	assert.Equal(t, []float64{0, 1}, []float64{fit.Tracking, fit.Width})
	fit = readGood(t, short+"fit: {tracking: \u22125.5%}\n").Order.Fit
	assert.InDelta(t, -0.055, fit.Tracking, 1e-12, "a real minus sign is a minus")
}

// slip is a line of a job with one fault in it, independent of other lines.
func TestAllFaultsOfAFileAreReportedInFileOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(1, 50).Draw(t, "k")
		var b strings.Builder
		b.WriteString(strings.Replace(short, "roster: roster.csv\n", "", 1) + "players:\n")
		line := strings.Count(b.String(), "\n")
		var want []string
		for i := 0; len(want) < k; i++ {
			line++
			if rapid.Bool().Draw(t, "sound") {
				fmt.Fprintf(&b, "  - {name: P%d, number: %d, size: M}\n", i, i)
				continue
			}
			fmt.Fprintf(&b, "  - {name: P%d, number: x%d, size: M}\n", i, i)
			want = append(want, fmt.Sprintf("j:%d:%d", line, len(fmt.Sprintf("  - {name: P%d, number: x", i))))
		}
		_, faults := ReadJob("j", []byte(b.String()))
		var got []string
		for _, f := range faults {
			got = append(got, f.Place.String())
		}
		require.Equal(t, want, got)
	})
}

func TestFaultsOfDifferentKindsComeInFileOrder(t *testing.T) {
	text := `yokeline: 2
tema: Herons
sport: sofball
garment: {cut: tow-button, colour: nvay}
colours: {navy: "#14284g"}
pieces:
  back name: {face: oswlad, height: 2, rise: 1in}
  back number: {height: 8, shape: straight}
fit: {tracking: 4%, same: all}
due: 2027-02-30
`
	_, faults := ReadJob("j", []byte(text), WithFaces("oswald"))
	var got []string
	for _, f := range faults {
		got = append(got, strings.TrimPrefix(f.Place.String(), "j:"))
	}
	assert.Equal(t, []string{"1:1", "1:1", "1:11", "2:1", "3:8", "4:16", "4:36", "5:17", "7:21", "7:37", "7:40", "8:25", "8:28", "9:17", "9:27", "10:6"}, got)
}

func TestNearestWordIsSuggested(t *testing.T) {
	for _, c := range []struct {
		text  string
		known []string
		want  string
	}{
		{"crew", cuts(), "crew-tee"},
		{"Two Button", cuts(), "two-button"},
		{"arch", Shapes(), "radial arch"},
		{"radail arch", Shapes(), "radial arch"},
		{"colr", []string{"cut", "group", "colour"}, "colour"},
		{"color", []string{"cut", "colour"}, "colour"},
		{"xyzzy", Shapes(), ""},
		{"", Shapes(), ""},
		{strings.Repeat("x", 10_000), Shapes(), ""},
	} {
		assert.Equal(t, c.want, near(c.text, c.known), c.text)
	}
}
