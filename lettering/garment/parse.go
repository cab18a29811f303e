package garment

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// understood ends every refusal of ParseSize.
const understood = "write a letter with its group, such as YM, youth M, S, adult L, 2XL, women's XL or WM"

// ParseSize reads a size as people write it in a roster: YM, Y-M, Yth Med,
// Youth large, AL, Adult L, Women's XL, Ladies M, WXL, XXL, 3X, X-Large, M. The
// group may stand before or after the letter; fallback is taken when there is
// none, and an empty fallback then makes it an error. Number sizes (10-12),
// double sizes (S/M) and tall sizes are refused: makers differ over them by a
// whole size. Errors name what was read and list what is understood.
func ParseSize(text string, fallback Group) (Size, error) {
	words := sizeWords(text)
	if len(words) == 0 {
		return Size{}, fmt.Errorf("no size is given: %s", understood)
	}
	group, rest, err := takeGroup(words)
	if err != nil {
		return Size{}, fmt.Errorf("size %q %w: %s", text, err, understood)
	}
	letter, ok := letterOf(rest)
	if !ok {
		return Size{}, fmt.Errorf("size %q %s: %s", text, whyNot(rest), understood)
	}
	if group == "" {
		group = fallback
	}
	if group == "" {
		return Size{}, fmt.Errorf("size %q does not say for whom: put youth, adult or women before it", text)
	}
	s := Size{group, letter}
	if err := s.check(); err != nil {
		return Size{}, fmt.Errorf("size %q: %w", text, err)
	}
	return s, nil
}

// fullWidth is how far the full-width forms of ASCII lie above it.
const fullWidth = 'Ａ' - 'A'

// sizeWords splits at everything that is neither letter nor number. Apostrophes
// vanish, so women's is one word; full-width letters count as plain ones. The
// words size and sz say nothing.
func sizeWords(text string) []string {
	text = strings.Map(func(r rune) rune {
		if strings.ContainsRune("'’‘ʼ`´", r) {
			return -1
		}
		if r >= '！' && r <= '～' {
			r -= fullWidth
		}
		return unicode.ToLower(r)
	}, text)
	words := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) })
	return slices.DeleteFunc(words, func(w string) bool { return w == "size" || w == "sz" })
}

// groupOf returns the group that a word names, or "". Junior is not among them:
// it means children to one maker and young women to the next.
func groupOf(word string) Group {
	switch word {
	case "y", "yt", "yth", "yout", "youth", "youths", "kid", "kids", "child", "childs", "children", "childrens", "boy", "boys", "girl", "girls":
		return Youth
	case "a", "ad", "adlt", "adult", "adults", "men", "mens", "man", "mans", "unisex":
		return Adult
	case "w", "wmn", "wmns", "wom", "woman", "womans", "women", "womens", "lady", "ladys", "ladies":
		return Women
	}
	return ""
}

// sizeError is the reason why a size was refused, without the text itself.
type sizeError string

func (e sizeError) Error() string { return string(e) }

// takeGroup splits the group off: words before or after the letter, or a group
// written together with it (ym, womensxl).
func takeGroup(words []string) (Group, []string, error) {
	var group Group
	for len(words) > 0 {
		g, rest := groupOf(words[0]), words[1:]
		if g == "" {
			g, rest = groupOf(words[len(words)-1]), words[:len(words)-1]
		}
		if g == "" {
			break
		}
		if group != "" && g != group {
			return "", nil, sizeError("names two groups")
		}
		group, words = g, rest
	}
	if group == "" {
		group, words = joined(words)
	}
	return group, words, nil
}

// joined reads a group that has no space before its letter.
func joined(words []string) (Group, []string) {
	for cut := len(words[0]) - 1; cut > 0; cut-- {
		g := groupOf(words[0][:cut])
		if g == "" {
			continue
		}
		rest := append([]string{words[0][cut:]}, words[1:]...)
		if _, ok := letterOf(rest); ok {
			return g, rest
		}
	}
	return "", words
}

// letterOf reads a letter, in one word or as parts (x large, 2 xl, extra small).
func letterOf(words []string) (string, bool) {
	switch len(words) {
	case 0:
		return "", false
	case 1:
		return oneWord(words[0])
	}
	times := 0
	for _, w := range words[:len(words)-1] {
		n, ok := extra(w)
		if !ok {
			return "", false
		}
		times += n
	}
	last := words[len(words)-1]
	if times > 1 && strings.HasPrefix(last, "x") { // 2 xl: the x is counted already
		last = last[1:]
	}
	end, ok := oneWord(last)
	if !ok {
		return "", false
	}
	return extended(times, end)
}

// extra counts the X that a word stands for.
func extra(word string) (int, bool) {
	switch word {
	case "x", "ex", "extra", "xtra":
		return 1, true
	case "xx", "2x", "2", "double", "dbl":
		return 2, true
	case "xxx", "3x", "3", "triple":
		return 3, true
	case "xxxx", "4x", "4":
		return 4, true
	}
	return 0, false
}

// extended puts times X before an S or an L.
func extended(times int, end string) (string, bool) {
	switch {
	case end == "S" && times == 1:
		return "XS", true
	case end == "L" && times >= 1 && times <= 4:
		return [...]string{"XL", "2XL", "3XL", "4XL"}[times-1], true
	}
	return "", false
}

// oneWord reads a letter in one word: m, med, xl, xxl, 2x, 3xlarge.
func oneWord(w string) (string, bool) {
	switch w {
	case "s", "sm", "sml", "small":
		return "S", true
	case "m", "md", "med", "medium":
		return "M", true
	case "l", "lg", "lge", "lrg", "large":
		return "L", true
	case "2x", "xx", "3x", "xxx", "4x", "xxxx": // without its L, as on a tally
		n, _ := extra(w)
		return extended(n, "L")
	}
	for _, head := range []string{"xxxx", "4x", "xxx", "3x", "xx", "2x", "extra", "xtra", "x"} {
		tail, found := strings.CutPrefix(w, head)
		if !found || tail == "" {
			continue
		}
		n, _ := extra(head)
		if end, ok := oneWord(tail); ok && len(end) == 1 {
			return extended(n, end)
		}
	}
	return "", false
}

// whyNot says what kind of size was refused.
func whyNot(words []string) string {
	letters, digits := 0, 0
	for _, w := range words {
		if _, ok := oneWord(w); ok {
			letters++
		}
		if strings.Trim(w, "0123456789") == "" {
			digits++
		}
	}
	switch {
	case len(words) == 0:
		return "names a group but no letter"
	case letters > 1:
		return "names more than one letter"
	case digits == len(words):
		return "is a number, over which makers differ by a whole size"
	case letters == 1:
		return "is only understood in part"
	}
	return "is not understood"
}
