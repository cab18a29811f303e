package spelling

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"
	"pgregory.net/rapid"
)

// Expected values follow SpecialCasing.txt of the Unicode Character Database
// and chapter 3.13 of the Unicode Standard; the Greek ones the examples for
// text-transform in CSS Text Level 3 (from memory).
func TestApplySetsCapitalsAsTheLanguageDoes(t *testing.T) {
	for _, c := range []struct{ name, in, lang, want string }{
		{"plain", "Okafor", "", "OKAFOR"},
		{"sharp s becomes two letters", "Weiß", "", "WEISS"},
		{"sharp s in German", "Strauß", "de", "STRAUSS"},
		{"capital sharp s stays", "STRAUẞ", "de", "STRAUẞ"},
		{"i without a language", "Yiğit", "", "YIĞIT"},
		{"Turkish dotted i", "Yiğit", "tr", "YİĞİT"},
		{"Turkish dotless i", "Işık", "tr-TR", "IŞIK"},
		{"Azerbaijani dotted i", "Əliyev", "az", "ƏLİYEV"},
		{"Dutch ij as two letters", "Dijkstra", "nl", "DIJKSTRA"},
		{"Dutch ij as one character", "Dĳkstra", "nl", "DĲKSTRA"},
		{"Greek final sigma", "Γιώργος", "", "ΓΙΏΡΓΟΣ"},
		{"Greek capitals lose the tonos", "Γιώργος", "el", "ΓΙΩΡΓΟΣ"},
		{"Greek dialytika stays", "Μαΐου", "el", "ΜΑΪΟΥ"},
		{"Greek diphthong kept apart", "άυλος", "el", "ΑΫΛΟΣ"},
		{"Greek diphthong with a late accent", "Αθηναίου", "el", "ΑΘΗΝΑΙΟΥ"},
		{"Greek eta alone keeps its accent", "ή", "el", "Ή"},
		{"Greek breathing and circumflex go", "Ἀθηνᾶ", "el", "ΑΘΗΝΑ"},
		{"Greek leaves Latin accents", "José Ιωάννου", "el-GR", "JOSÉ ΙΩΑΝΝΟΥ"},
		{"Lithuanian dot above goes", "i̇́", "lt", "Í"},
		{"ligature", "Steﬀen", "", "STEFFEN"},
		{"preceded n", "ŉ", "", "ʼN"},
		{"combining sequence is composed", "Nguye\u0302\u0303n", "vi", "NGUYỄN"},
		{"combining order is put right", "e\u0302\u0323", "", "Ệ"},
		{"okina is caseless", "Kaʻahumanu", "haw", "KAʻAHUMANU"},
		{"apostrophes stay as typed", "O'Neil O’Neil", "", "O'NEIL O’NEIL"},
		{"digits stay", "007", "", "007"},
		{"Cyrillic", "Иваненко", "uk", "ИВАНЕНКО"},
		{"unreadable language", "Yiğit", "??", "YIĞIT"},
		{"empty", "", "tr", ""},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, Apply(c.in, Upper, c.lang)) })
	}
}

func TestApplyTypedOnlyComposes(t *testing.T) {
	assert.Equal(t, "McDonough", Apply("McDonough", Typed, "tr"))
	assert.Equal(t, "Nguyễn", Apply("Nguye\u0302\u0303n", Typed, ""))
	assert.Equal(t, "Weiß", Apply("Weiß", Typed, "de"))
}

func TestApplyGivesNFCAndIsStable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		lang := rapid.SampledFrom([]string{"", "tr", "el", "lt", "nl", "de"}).Draw(t, "lang")
		upper := Apply(text, Upper, lang)
		require.True(t, norm.NFC.IsNormalString(upper))
		require.Equal(t, norm.NFC.String(text), Apply(text, Typed, lang))
	})
}

func TestCaseWords(t *testing.T) {
	for word, want := range map[string]Case{"upper": Upper, "typed": Typed, "as typed": Typed} {
		got, err := ParseCase(word)
		require.NoError(t, err)
		assert.Equal(t, want, got)
	}
	_, err := ParseCase("title")
	assert.EqualError(t, err, `there is no case "title"; use upper or typed`)
	assert.Equal(t, "upper", Upper.String())
	assert.Equal(t, "typed", Typed.String())
}

func TestCleanNamesWhatItTakesOut(t *testing.T) {
	for _, c := range []struct {
		name, in, want string
		problems       []string
	}{
		{"clean", "O’Neil-Baker Jr.", "O’Neil-Baker Jr.", nil},
		{"empty", "", "", nil},
		{"only spaces", "  ", "", []string{"character 1: space U+0020 at the start, removed", "character 2: space U+0020 at the start, removed"}},
		{"ends", " Ito ", "Ito", []string{"character 1: space U+0020 at the start, removed", "character 5: space U+0020 at the end, removed"}},
		{"double", "De  Vries", "De Vries", []string{"character 4: space U+0020 after another, removed"}},
		{"two at the end", "Ito  ", "Ito", []string{"character 4: space U+0020 at the end, removed", "character 5: space U+0020 after another, removed"}},
		{"no-break space", "De\u00A0Vries", "De Vries", []string{"character 3: no-break space U+00A0, made a plain space"}},
		{"no-break space at the end", "Ito\u00A0", "Ito", []string{"character 4: no-break space U+00A0 at the end, removed"}},
		{"narrow no-break space", "De\u202FVries", "De Vries", []string{"character 3: narrow no-break space U+202F, made a plain space"}},
		{"em space", "De\u2003Vries", "De Vries", []string{"character 3: odd space U+2003, made a plain space"}},
		{"tab", "Ito\t7", "Ito 7", []string{"character 4: tab U+0009, made a plain space"}},
		{"line break", "Ito\r\n7", "Ito 7", []string{"character 4: line break U+000D, made a plain space", "character 5: line break U+000A after another, removed"}},
		{"byte order mark", "\uFEFFIto", "Ito", []string{"character 1: byte order mark U+FEFF, removed"}},
		{"zero-width space", "I\u200Bto", "Ito", []string{"character 2: zero-width space U+200B, removed"}},
		{"joiner in Latin", "I\u200Dto", "Ito", []string{"character 2: zero-width joiner U+200D, removed"}},
		{"non-joiner in Persian stays", "علی\u200Cرضا", "علی\u200Cرضا", nil},
		{"soft hyphen", "Wojcie\u00ADchowski", "Wojciechowski", []string{"character 7: soft hyphen U+00AD, removed"}},
		{"direction override", "\u202EotI\u202C", "otI", []string{"character 1: direction mark U+202E, removed", "character 5: direction mark U+202C, removed"}},
		{"isolate", "\u2066Ito\u2069", "Ito", []string{"character 1: direction mark U+2066, removed", "character 5: direction mark U+2069, removed"}},
		{"control", "I\x00to\x7f", "Ito", []string{"character 2: control character U+0000, removed", "character 5: control character U+007F, removed"}},
		{"variation selector", "I\uFE0Fto", "Ito", []string{"character 2: variation selector U+FE0F, removed"}},
		{"word joiner", "I\u2060to", "Ito", []string{"character 2: word joiner U+2060, removed"}},
		{"grapheme joiner", "I\u034Fto", "Ito", []string{"character 2: grapheme joiner U+034F, removed"}},
		{"tag character", "Ito\U000E0067", "Ito", []string{"character 4: invisible character U+E0067, removed"}},
		{"filler", "De\u3164Vries", "De Vries", []string{"character 3: blank filler U+3164, made a plain space"}},
		{"invisible before the end", "Ito \u200B", "Ito", []string{"character 4: space U+0020 at the end, removed", "character 5: zero-width space U+200B, removed"}},
		{"space split by an invisible", "De \u200B Vries", "De Vries", []string{"character 4: zero-width space U+200B, removed", "character 5: space U+0020 after another, removed"}},
		{"damaged character", "I\uFFFDto", "I\uFFFDto", []string{"character 2: damaged character U+FFFD, left as it is"}},
		{"not UTF-8", "I\xE9to", "I\uFFFDto", []string{"character 2: byte that is not UTF-8, read as U+FFFD, left as it is"}},
		{"accents stay", "Nguye\u0302\u0303n", "Nguye\u0302\u0303n", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, problems := Clean(c.in)
			var told []string
			for _, p := range problems {
				told = append(told, p.String())
			}
			assert.Equal(t, c.want, got)
			assert.Equal(t, c.problems, told)
		})
	}
}

func TestCleanIsIdempotentAndTellsEveryChange(t *testing.T) {
	odd := rapid.SampledFrom([]rune(" \t\n\u00A0\u200B\u200C\u200D\u202E\u00AD\uFEFF\u034F\uFE0FaÉßعक'-\u0301\u3164\u2003\x01"))
	text := rapid.Custom(func(t *rapid.T) string { return string(rapid.SliceOf(odd).Draw(t, "runes")) })
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.OneOf(text, rapid.String()).Draw(t, "in")
		out, problems := Clean(in)
		again, more := Clean(out)
		require.Equal(t, out, again)
		for _, p := range more {
			require.Equal(t, '\uFFFD', p.Rune)
		}
		runes := []rune(in)
		last := -1
		for _, p := range problems {
			require.Greater(t, p.At, last)
			require.Equal(t, runes[p.At], p.Rune)
			last = p.At
		}
		if out != in && !strings.ContainsRune(out, '\uFFFD') {
			require.NotEmpty(t, problems)
		}
		require.Equal(t, visible(in), visible(out))
	})
}

// visible keeps what can be seen, by the Unicode categories alone.
func visible(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.In(r, unicode.L, unicode.N, unicode.P, unicode.S, unicode.Mc) && !unicode.Is(unicode.Other_Default_Ignorable_Code_Point, r) && r != '\u2800' {
			return r
		}
		return -1
	}, text)
}
