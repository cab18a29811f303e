package order

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"pgregory.net/rapid"

	"yokeline/lettering/garment"
)

func readRoster(t testing.TB, text string) *Roster {
	r, faults := ReadRoster("r.csv", []byte(text), "", RosterOptions{})
	require.Empty(t, faults, "%v", faults)
	return r
}

// lines writes players as name|full name|number|size|role for comparing.
func lines(players []Player) []string {
	var out []string
	for _, p := range players {
		size := "?"
		if p.SizeKnown {
			size = p.Size.String()
		}
		out = append(out, strings.TrimRight(strings.Join([]string{p.Name, p.FullName, p.Number, size, p.Role}, "|"), "|"))
	}
	return out
}

func noteLines(notes []Note) []string {
	var out []string
	for _, n := range notes {
		out = append(out, fmt.Sprintf("%s %s %s [%s] %s", n.Severity, strings.TrimPrefix(n.At.String(), "r.csv:"), n.What, n.Player, n.Message))
	}
	return out
}

func TestEveryHeadingACoachTypesIsKnown(t *testing.T) {
	for want, texts := range map[heading][]string{
		headBack:    {"Name on back", "NAME ON BACK", "Name-on-Back", " name  on back ", "Jersey name", "Back Name", "Name on Jersey (as printed)", "Shirt name", "Uniform Name"},
		headLast:    {"Last name", "LastName", "last_name", "Surname", "Family Name", "Last"},
		headName:    {"Name", "name:", "Names"},
		headPlayer:  {"Player", "Players", "Player Name", "Player's name", "Full name", "Athlete"},
		headFirst:   {"First name", "First", "Given name", "Forename"},
		headNumber:  {"Number", "Jersey\nNumber", "#", " # ", "No.", "No", "Num", "Nr.", "Jersey #", "Jersey number", "Jersey No.", "Uniform number", "Uniform #", "Player #", "Shirt no", "№", "# (0-99)", "Back number"},
		headSize:    {"Size", "Sz", "SZ.", "Jersey size", "Shirt Size", "T-shirt size", "Uniform size", "Size (YS - A3XL)", "Size*", "Size?"},
		headGroup:   {"Group", "Age group", "Youth/Adult", "Adult / Youth", "youth or adult"},
		headGender:  {"Gender", "Sex"},
		headRole:    {"Position", "Role", "Pos."},
		headCaptain: {"Captain", "Captain?", "Capt."},
		headNote:    {"Notes", "Note", "Comment", "Comments", "Remarks"},
		headNone:    {"", "Shoe size", "Jersey", "Shorts size", "E-mail", "Phone number", "Number of shirts", strings.Repeat("Name", 100)},
	} {
		for _, text := range texts {
			assert.Equal(t, want, newVocabulary().heading(text), text)
		}
	}
}

func TestNoWordIsAHeadingOfTwoColumns(t *testing.T) {
	seen := map[string]heading{}
	for h := headBack; h < headings; h++ {
		assert.NotEmpty(t, h.String())
		assert.Equal(t, h, newVocabulary().heading(h.title()), "the title a message proposes is understood")
		for _, s := range synonyms(h) {
			assert.Zero(t, seen[s], "%s", s)
			assert.Equal(t, squeeze(s), s, "synonyms are written squeezed")
			seen[s] = h
		}
	}
}

func TestTheNameOnTheBackIsChosen(t *testing.T) {
	for name, c := range map[string]struct {
		text  string
		want  []string
		notes int
	}{
		"name on back wins": {"Player,Name on back,#,Size\nAna Peña,PEÑA JR,7,M\n", []string{"PEÑA JR|Ana Peña|7|adult M"}, 0},
		"and may be empty":  {"Player,Name on back,#,Size\nAna Peña,,7,M\n", []string{"|Ana Peña|7|adult M"}, 1},
		"last name":         {"Last name,First name,#,Size\nPeña,Ana,7,M\n", []string{"Peña|Ana Peña|7|adult M"}, 0},
		"last name alone":   {"Surname,#,Size\nPeña,7,M\n", []string{"Peña||7|adult M"}, 0},
		"last name and player": {"Player,Surname,#,Size\nAna Maria Peña,Peña,7,M\n",
			[]string{"Peña|Ana Maria Peña|7|adult M"}, 0},
		"back, first and last":   {"First,Last,Jersey name,#,Size\nAna,Peña,ANI,7,M\n", []string{"ANI|Ana Peña|7|adult M"}, 0},
		"plain name as it is":    {"Name,#,Size\nPeña,7,M\nLind,8,M\n", []string{"Peña||7|adult M", "Lind||8|adult M"}, 0},
		"plain name, two words":  {"Name,#,Size\nAna Peña,7,M\nTor Lind,8,M\n", []string{"Ana Peña||7|adult M", "Tor Lind||8|adult M"}, 1},
		"plain name with player": {"Player,Name,#,Size\nAna Peña,Ani,7,M\n", []string{"Ani|Ana Peña|7|adult M"}, 0},
		"only whole names":       {"Player,#,Size\nAna Peña,7,M\n", []string{"Peña|Ana Peña|7|adult M"}, 1},
		"whole name of three":    {"Player,#,Size\nAna van der Molk,7,M\n", []string{"van der Molk|Ana van der Molk|7|adult M"}, 2},
		"one word":               {"Player,#,Size\nPeña,7,M\n", []string{"Peña||7|adult M"}, 1},
	} {
		t.Run(name, func(t *testing.T) {
			r := readRoster(t, c.text)
			assert.Equal(t, c.want, lines(r.Players))
			assert.Len(t, r.Notes, c.notes, "%v", noteLines(r.Notes))
		})
	}
}

func TestLastNamesKeepTheirParticlesAndSuffixes(t *testing.T) {
	for whole, want := range map[string]string{
		"Ana Peña": "Peña", "Peña": "Peña", "Peña, Ana": "Peña", "De La Cruz, Ana": "De La Cruz", "Ana de la Cruz": "de la Cruz",
		"Jan van der Molk": "van der Molk", "Tom Reed Jr.": "Reed Jr.", "Tom Reed, Jr.": "Reed Jr.", "Tom Reed III": "Reed III",
		"Bea Quist-Dell": "Quist-Dell", "Ana Maria Peña": "Peña", "Al Reed": "Reed", "Van Reed": "Reed", "Joe Mc Ardle": "Mc Ardle", "": "",
	} {
		assert.Equal(t, want, lastName(whole), whole)
	}
}

func TestTablesAreReadHoweverTheyAreParted(t *testing.T) {
	want := []string{"Peña|Ana Peña|07|youth M", "O'Dell, Jr|Bo \"B\" O'Dell|0|adult L"}
	for name, text := range map[string]string{
		"comma":             "Name on back,Player,#,Size\nPeña,Ana Peña,07,YM\n\"O'Dell, Jr\",\"Bo \"\"B\"\" O'Dell\",0,L\n",
		"semicolon":         "Name on back;Player;#;Size\nPeña;Ana Peña;07;YM\nO'Dell, Jr;\"Bo \"\"B\"\" O'Dell\";0;L\n",
		"tab":               "Name on back\tPlayer\t#\tSize\nPeña\tAna Peña\t07\tYM\nO'Dell, Jr\tBo \"B\" O'Dell\t0\tL\n",
		"named by sep=":     "sep=;\nName on back;Player;#;Size\nPeña;Ana Peña;07;YM\nO'Dell, Jr;Bo \"B\" O'Dell;0;L\n",
		"crlf":              "Name on back,Player,#,Size\r\nPeña,Ana Peña,07,YM\r\n\"O'Dell, Jr\",\"Bo \"\"B\"\" O'Dell\",0,L",
		"cr":                "Name on back,Player,#,Size\rPeña,Ana Peña,07,YM\r\"O'Dell, Jr\",\"Bo \"\"B\"\" O'Dell\",0,L\r",
		"spaces and quotes": "Name on back, Player, #, Size\nPeña, Ana Peña, 07, YM\n \"O'Dell, Jr\" , \"Bo \"\"B\"\" O'Dell\" ,0, L\n",
		"titles above":      "Herons,,,\n,,,\nSpring; 2027,,,\nName on back,Player,#,Size\nPeña,Ana Peña,07,YM\n\"O'Dell, Jr\",\"Bo \"\"B\"\" O'Dell\",0,L\n",
		"blank rows":        "\n\nName on back,Player,#,Size\n\n,,,\nPeña,Ana Peña,07,YM\n , , ,\n\"O'Dell, Jr\",\"Bo \"\"B\"\" O'Dell\",0,L\n\n",
		"other order":       "Size,#,Player,Name on back\nYM,07,Ana Peña,Peña\nL,0,\"Bo \"\"B\"\" O'Dell\",\"O'Dell, Jr\"\n",
	} {
		t.Run(name, func(t *testing.T) {
			r := readRoster(t, text)
			assert.Equal(t, want, lines(r.Players))
			assert.Empty(t, noteLines(r.Notes))
		})
	}
}

func TestTextIsReadInTheEncodingsOfSpreadsheets(t *testing.T) {
	text := "Name on back,#,Size\r\nPeña-Žižek,7,M\r\nO’Neal,8,M\r\n"
	western, err := charmap.Windows1252.NewEncoder().String(text)
	require.NoError(t, err)
	little, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewEncoder().String(text)
	require.NoError(t, err)
	big, err := unicode.UTF16(unicode.BigEndian, unicode.UseBOM).NewEncoder().String(text)
	require.NoError(t, err)
	for name, data := range map[string]string{"utf-8": text, "with mark": bom + text, "utf-16le": little, "utf-16be": big, "windows-1252": western} {
		r := readRoster(t, data)
		assert.Equal(t, []string{"Peña-Žižek||7|adult M", "O’Neal||8|adult M"}, lines(r.Players), name)
		if name == "windows-1252" {
			require.Len(t, r.Notes, 1)
			assert.Equal(t, `advice 2:3 encoding [] the file is not UTF-8: it is read as Windows-1252, where byte 0xF1 is “ñ”`, noteLines(r.Notes)[0])
		} else {
			assert.Empty(t, r.Notes, name)
		}
	}
}

func TestWhatIsOddIsNotedWithItsPlaceAndPlayer(t *testing.T) {
	r := readRoster(t, `Name on back,Player,Number,Size,Group,Captain,Shoe,
Peña,Ana Peña,7,YM,,,,
,Bo Lind,8,M,,,,
Rook,,,M,,,,
Dell,,9,,,,,
Vo,,10,Tall,,,,
Hale,,7,M,,,,x
Rook,,11,M,,,,
Hale,,12,YM,adult,,,
Gray,,13,M,varsity,,,
Peña,Ana Peña,7,YM,,,,
  Moss  ,,#14,M,youth,,,
Fe`+"\u200b"+`rn,,15,M,,perhaps,8,
0,,00,M,,,,
,,0,M,,,,
`)
	assert.Equal(t, []string{
		"advice 1:47 column [] column G “Shoe” is not used",
		"advice 1:52 column [] column H has no heading: its one cell is not used",
		"violation 3:1 name [Bo Lind] no name",
		"violation 4:7 number [Rook] no number",
		"violation 5:9 size [Dell] no size",
		`violation 6:8 size [Vo] size "Tall" is not understood`,
		"violation 7:7 number [Hale] number 7 is taken by Ana Peña (row 2)",
		"advice 8:1 name [Rook] Rook is also the name of Rook (row 4)",
		"advice 9:1 name [Hale] Hale is also the name of Hale (row 7)",
		"advice 9:13 size [Hale] size YM is youth, but the column of groups says adult: youth M is taken",
		"violation 10:12 size [Gray] group “varsity” is not understood",
		"violation 11:1 row [Ana Peña] the whole row is given twice, first in row 2",
		"advice 12:1 name [Moss] stray spaces removed",
		"advice 12:11 number [Moss] #14 is read as 14",
		"advice 13:1 name [Fern] zero-width space U+200B, removed",
		"advice 13:14 role [Fern] captain “perhaps” is not understood",
		"violation 15:1 name [row 15] no name",
	}, trimmed(noteLines(r.Notes)))
	assert.Equal(t, []string{"Moss||14|youth M", "Fern||15|adult M", "0||00|adult M", "||0|adult M"}, lines(r.Players)[10:])
	for _, n := range r.Notes {
		assert.NotEmpty(t, n.Remedy)
		if n.Player != "" && n.What != "number" {
			assert.Contains(t, n.Remedy+n.Message, n.Player, "the remedy names the player")
		}
	}
}

func trimmed(lines []string) []string {
	for i, l := range lines {
		lines[i] = strings.TrimSpace(l)
	}
	return lines
}

func TestGroupsComeFromTheSizeThenTheColumnThenTheJob(t *testing.T) {
	text := "Name,#,Size,Age group,Gender\nA,1,M,,\nB,2,M,Youth,F\nC,3,WM,,M\nD,4,M,12U,M\nE,5,M,U-10,\nF,6,M,,F\nG,7,M,,male\nH,8,M,,girl\nI,9,M,Ladies,\nJ,10,M,under 14,\nK,11,M,12 and under,\n"
	r, faults := ReadRoster("r.csv", []byte(text), "", RosterOptions{Group: garment.Youth})
	require.Empty(t, faults)
	var got []string
	for _, p := range r.Players {
		got = append(got, p.Name+" "+p.Size.String())
	}
	assert.Equal(t, []string{"A youth M", "B youth M", "C women M", "D youth M", "E youth M", "F women M", "G adult M", "H youth M", "I women M", "J youth M", "K youth M"}, got)
	r = readRoster(t, "Name,#,Size,Group\nA,1,M,U17\n")
	assert.False(t, r.Players[0].SizeKnown, "at seventeen players wear either")
}

func TestCaptainsJoinTheirRole(t *testing.T) {
	r := readRoster(t, "Name,#,Size,Role,Captain\nA,1,M,,x\nB,2,M,goalkeeper,YES\nC,3,M,captain,1\nD,4,M,guard,no\nE,5,M,,A\nF,6,M,libero,\n")
	assert.Equal(t, []string{"A||1|adult M|captain", "B||2|adult M|goalkeeper, captain", "C||3|adult M|captain", "D||4|adult M|guard", "E||5|adult M|assistant captain", "F||6|adult M|libero"}, lines(r.Players))
}

func TestNamesOrNumbersMayBeMissingWhereNothingShowsThem(t *testing.T) {
	for _, c := range []struct {
		text string
		opts RosterOptions
	}{
		{"Number,Size\n7,M\n,L\n", RosterOptions{NoNames: true, NoNumbers: true}},
		{"Name,Size\nLind,M\n", RosterOptions{NoNumbers: true}},
		{"Number,Size\n7,M\n", RosterOptions{NoNames: true}},
	} {
		r, faults := ReadRoster("r", []byte(c.text), "", c.opts)
		require.Empty(t, faults)
		assert.Empty(t, noteLines(r.Notes))
	}
}

func TestPlayersAreCalledByFullNameNameOrRow(t *testing.T) {
	r := readRoster(t, "Name on back,Player,#,Size\nPeña,Ana Peña,7,M\nLind,,8,M\n,,9,M\n")
	assert.Equal(t, []string{"Ana Peña", "Lind", "row 4"}, []string{r.Players[0].Label(), r.Players[1].Label(), r.Players[2].Label()})
	assert.Equal(t, "r.csv:3:1", r.Players[1].Row.String())
	assert.Equal(t, "row 12", rowLabel(bookPlace("AB12")))
}

func TestAllFaultsOfARosterAreReportedInFileOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(1, 50).Draw(t, "k")
		var b strings.Builder
		b.WriteString("Name on back,Number,Size\n")
		var want []string
		for line := 2; len(want) < k; line++ {
			name := rapid.SampledFrom([]string{"Lind", "Peña", "山田", "e\u0301", "\"Li\"\"nd\""}).Draw(t, "name")
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				fmt.Fprintf(&b, "%s,%d,M\n", name, line)
			case 1:
				fmt.Fprintf(&b, "%s,x,M\n", name)
				want = append(want, fmt.Sprintf("%d:%d", line, len([]rune(name))+2))
			case 2:
				fmt.Fprintf(&b, "%s,7,M,odd\n", name)
				want = append(want, fmt.Sprintf("%d:%d", line, len([]rune(name))+6))
			case 3:
				fmt.Fprintf(&b, "%s,12345,M\n", strings.Repeat("L", 41))
				want = append(want, fmt.Sprintf("%d:1", line), fmt.Sprintf("%d:43", line))
			}
		}
		_, faults := ReadRoster("r", []byte(b.String()), "", RosterOptions{})
		var got []string
		for _, f := range faults {
			got = append(got, strings.TrimPrefix(f.Place.String(), "r:"))
		}
		require.Equal(t, want, got)
	})
}

func TestRosterLimitsAreNamed(t *testing.T) {
	rows := func(n int) string {
		return "Name,Number,Size\n" + strings.Repeat("Lind,7,M\n", n)
	}
	for name, c := range map[string]struct{ text, message string }{
		"bytes": {strings.Repeat("x", rosterBytes+1), "at most 5242880 (5 MiB)"},
		"rows":  {rows(rosterRows + 1), "more than 20000 players"},
	} {
		_, faults := ReadRoster("r", []byte(c.text), "", RosterOptions{})
		require.Len(t, faults, 1, name)
		assert.Contains(t, faults[0].Message, c.message)
	}
	r := readRoster(t, rows(rosterRows))
	assert.Len(t, r.Players, rosterRows)
	atLimit := strings.Repeat("N", nameLetters) + ",9999," + strings.Repeat("M", cellLetters)
	r = readRoster(t, "Name,Number,Size\n"+atLimit+"\n")
	assert.Len(t, r.Players, 1)
	wide := "Name,Number,Size" + strings.Repeat(",", rosterCols-3)
	assert.Len(t, readRoster(t, wide+"\nLind,7,M\n").Players, 1)
}

func TestAJobIsRefusedAboveItsSize(t *testing.T) {
	_, faults := ReadJob("j", []byte(short+"#"+strings.Repeat("x", jobBytes)))
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Message, "at most 1048576 (1 MiB)")
	_, faults = ReadJob("j", []byte(short+"#"+strings.Repeat("x", jobBytes-len(short)-1)))
	assert.Empty(t, faults)
}
