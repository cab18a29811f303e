package spelling

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"
	"pgregory.net/rapid"
)

func TestApostrophesOfEveryCodePointAreAlike(t *testing.T) {
	for _, sign := range []string{"'", "\u2018", "\u2019", "\u02BC", "\u00B4", "`", "\u2032", "\uFF07", "\u201B"} {
		for name, want := range map[string]string{
			"O%Neil": "O’Neil", "D%Áquila": "D’Áquila", "%t Hooft": "’t Hooft", "Jones%": "Jones’", "Class of %27": "Class of ’27",
			"Ngugi wa Thiong%o": "Ngugi wa Thiong’o",
		} {
			in := replaceSign(name, sign)
			assert.Equal(t, want, Apostrophes(in, ""), "%U in %q", []rune(sign)[0], in)
		}
	}
}

func replaceSign(name, sign string) string {
	out := ""
	for _, r := range name {
		if r == '%' {
			out += sign
			continue
		}
		out += string(r)
	}
	return out
}

func TestApostrophesLeaveOtherSignsAlone(t *testing.T) {
	for _, c := range []struct{ name, in, lang, want string }{
		{"a prime after a figure", "6′ 2", "", "6′ 2"},
		{"a sign alone", "A ' B", "", "A ' B"},
		{"quotation marks", "‘Ace’ Lind", "", "‘Ace’ Lind"},
		{"a quotation with an apostrophe in it", "‘O'Ace’", "", "‘O’Ace’"},
		{"ʻokina turns the other way", "Kaʻahumanu", "", "Ka‘ahumanu"},
		{"ʻokina typed as an apostrophe in Hawaiian", "Ka'ahumanu", "haw", "Ka‘ahumanu"},
		{"ʻokina typed as ‘ in Samoan", "Fa‘alogo", "sm-WS", "Fa‘alogo"},
		{"a long vowel", "Vaʻā", "to", "Va‘ā"},
		{"an apostrophe before a consonant in Hawaiian", "O'Neil", "haw", "O’Neil"},
		{"hyphen", "Quist-Hall", "", "Quist-Hall"},
		{"empty", "", "", ""},
		{"unreadable language", "O'Neil", "??", "O’Neil"},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, Apostrophes(c.in, c.lang)) })
	}
}

func TestApostrophesAreStable(t *testing.T) {
	signs := rapid.StringOf(rapid.SampledFrom([]rune("aÉ5 -'’‘ʼ´`′＇ʻ\u0301")))
	rapid.Check(t, func(t *rapid.T) {
		in, lang := signs.Draw(t, "text"), rapid.SampledFrom([]string{"", "haw", "de"}).Draw(t, "lang")
		once := Apostrophes(in, lang)
		require.Equal(t, utf8.RuneCountInString(in), utf8.RuneCountInString(once))
		if lang == "" {
			require.NotContains(t, once, "ʻ")
		}
		require.Equal(t, Apply(once, Upper, lang), Apply(norm.NFC.String(once), Upper, lang))
	})
}

func TestSuffixesAndInitialsAreSetAsTyped(t *testing.T) {
	for in, want := range map[string][2]string{
		"Halvorsen Jr.":  {"HALVORSEN JR.", "Halvorsen Jr."},
		"Halvorsen III":  {"HALVORSEN III", "Halvorsen III"},
		"J. Halvorsen":   {"J. HALVORSEN", "J. Halvorsen"},
		"Núñez":          {"NÚÑEZ", "Núñez"},
		"Weiß":           {"WEISS", "Weiß"},
		"Nun\u0303ez":    {"NUÑEZ", "Nuñez"},
		"De la\nCruz":    {"DE LA\nCRUZ", "De la\nCruz"},
		"Quist-\nHalvor": {"QUIST-\nHALVOR", "Quist-\nHalvor"},
	} {
		assert.Equal(t, want[0], Apply(in, Upper, ""))
		assert.Equal(t, want[1], Apply(in, Typed, ""))
	}
	assert.Equal(t, "DİYARBAKIR\nIŞIK", Apply("Diyarbakır\nIşık", Upper, "tr"))
}

func TestRaiseFindsThePrefixAsItWasTyped(t *testing.T) {
	for _, c := range []struct {
		in, upper, typed string
		raised           []int
	}{
		{"McTavish", "MCTAVISH", "MCTavish", []int{1}},
		{"MacLeod", "MACLEOD", "MACLeod", []int{1, 2}},
		{"Mackey", "MACKEY", "Mackey", nil},
		{"MCTAVISH", "MCTAVISH", "MCTAVISH", nil},
		{"DeLuca", "DELUCA", "DELuca", []int{1}},
		{"DiMarco", "DIMARCO", "DIMarco", []int{1}},
		{"De Luca", "DE LUCA", "De Luca", nil},
		{"FitzGerald", "FITZGERALD", "FITZGerald", []int{1, 2, 3}},
		{"O’Neil", "O’NEIL", "O’Neil", nil},
		{"Weiß-McÖstberg", "WEISS-MCÖSTBERG", "Weiß-MCÖstberg", nil},
		{"Ann McA\nMcB", "ANN MCA\nMCB", "Ann MCA\nMCB", []int{5, 9}},
		{"McMc", "MCMC", "MCMc", []int{1}},
		{"", "", "", nil},
	} {
		got, raised := Raise(c.in, Upper, "")
		assert.Equal(t, c.upper, got)
		if c.in == "Weiß-McÖstberg" { // ß grows, so the place depends on the case
			assert.Equal(t, []int{7}, raised)
			_, raised = Raise(c.in, Typed, "")
			assert.Equal(t, []int{6}, raised)
			continue
		}
		assert.Equal(t, c.raised, raised, c.in)
		got, raised = Raise(c.in, Typed, "")
		assert.Equal(t, c.typed, got)
		assert.Equal(t, c.raised, raised, c.in)
	}
}

func TestRaiseOtherwiseSetsTheCaseAsApplyDoes(t *testing.T) {
	words := rapid.StringMatching(`((Mc|Mac|De|Fitz|Q)[A-ZÉa-zßñ]{0,4}[ \-\n]?){0,3}`)
	rapid.Check(t, func(t *rapid.T) {
		in := words.Draw(t, "text")
		upper, raised := Raise(in, Upper, "")
		require.Equal(t, Apply(in, Upper, ""), upper)
		letters := []rune(upper)
		for _, i := range raised {
			require.Contains(t, []rune("CAEITZ"), letters[i])
		}
	})
}

func TestCleanLinesKeepsLinesThatSaySomething(t *testing.T) {
	for _, c := range []struct {
		name, in, want string
		problems       []string
	}{
		{"one line", "Ito", "Ito", nil},
		{"two lines", "De la\nCruz", "De la\nCruz", nil},
		{"of a workbook", "Quist-\r\nHalvor", "Quist-\nHalvor", nil},
		{"separator", "A\u2028B", "A\nB", nil},
		{"spaces round the break", "De la \n Cruz", "De la\nCruz", []string{
			"character 6: space U+0020 at the end, removed", "character 8: space U+0020 at the start, removed"}},
		{"break at the end", "Ito\n", "Ito", []string{"character 4: line break U+000A at the end, removed"}},
		{"break at the start", "\r\nIto", "Ito", []string{"character 1: line break U+000D beside an empty line, removed"}},
		{"empty line", "A\n\nB", "A\nB", []string{"character 3: line break U+000A beside an empty line, removed"}},
		{"empty", "", "", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, problems := CleanLines(c.in)
			var told []string
			for _, p := range problems {
				told = append(told, p.String())
			}
			assert.Equal(t, c.want, got)
			assert.Equal(t, c.problems, told)
		})
	}
}

func TestCleanLinesIsStable(t *testing.T) {
	text := rapid.StringOf(rapid.SampledFrom([]rune(" \t\n\r\u2028\u00A0\u200Ba-É")))
	rapid.Check(t, func(t *rapid.T) {
		once, _ := CleanLines(text.Draw(t, "text"))
		again, problems := CleanLines(once)
		require.Equal(t, once, again)
		require.Empty(t, problems)
	})
}

func TestOneLineJoinsWhatWasParted(t *testing.T) {
	assert.Equal(t, "De la Cruz", OneLine("De la\nCruz"))
	assert.Equal(t, "Quist-Halvor", OneLine("Quist-\nHalvor"))
	assert.Equal(t, "Ito", OneLine("Ito"))
}
