package order

import (
	"slices"
	"strings"
	"unicode"
)

// settleCategory checks that the rule book has figures of its own for the
// category, and spells it as the book does.
func (d *draft) settleCategory(v value) {
	if v.r == nil || d.o.Category == "" {
		return
	}
	if d.o.Rules == "" {
		v.keyFault("name the rule book with rules:, or delete the line", "category: a category needs a rule book")
		return
	}
	if d.known.categories == nil {
		return
	}
	all, ok := d.known.categories(d.o.Rules)
	switch i := slices.IndexFunc(all, func(c string) bool { return sameCategory(c, d.o.Category) }); {
	case !ok: // the rule book has a fault of its own
	case i >= 0:
		d.o.Category = all[i]
	case len(all) == 0:
		v.keyFault("delete the line", "category: rule book %s has the same figures for everyone", d.o.Rules)
	default:
		v.fault("use "+list(all)+", or delete the line for everyone else", "category: rule book %s has no figures of its own for %q", d.o.Rules, d.o.Category)
	}
}

// sameCategory compares two categories as people write them: 12U is U12, U-12
// and under 12.
func sameCategory(a, b string) bool {
	if squeeze(a) == squeeze(b) {
		return true
	}
	older, ok := ageOf(a)
	other, also := ageOf(b)
	return ok && also && older == other
}

// ageOf returns the age of a category such as 12U.
func ageOf(category string) (string, bool) {
	plain := squeeze(category)
	age := strings.TrimFunc(plain, func(r rune) bool { return !unicode.IsDigit(r) })
	if age == "" {
		return "", false
	}
	rest := strings.Replace(plain, age, "", 1)
	return age, rest == "u" || rest == "under"
}
