package specsheet

import (
	"regexp"
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
)

// read stores the measures of every row.
func (r *reader) read() {
	r.headings()
	for _, row := range r.rows {
		switch r.head.form {
		case long:
			r.readLong(row)
		case wide:
			r.readWide(row)
		case across:
			r.readAcross(row)
		}
	}
	if len(r.sheet.given) == 0 && len(r.faults) == 0 {
		r.fault(r.head.columns[0].cell, "write at least one measure", "the spec sheet gives no measure")
	}
}

// headings tells which columns are not used, and refuses those that could mean
// two things.
func (r *reader) headings() {
	for _, c := range r.head.columns {
		taken := c.kind != unused && (c.kind != oneMeasure || r.head.form == wide) && (c.kind != oneSize || r.head.form == across)
		if taken || c.cell.text == "" {
			continue
		}
		text, _, _ := unitOf(c.cell.text)
		if _, _, why := measureOf(text); why != "" && r.head.form == wide {
			r.fault(c.cell, why, "column %q could mean two things", c.cell.text)
			continue
		}
		r.note(c.cell, knownMeasures(r.defaults.Cut), "column %q is not used", c.cell.text)
	}
}

// knownMeasures is the remedy for a measure that is not known.
func knownMeasures(cut garment.Cut) string {
	if cut == "" {
		return "rename it if it should be: chest half, body length, shoulder width and so on"
	}
	return "rename it if it is one of " + strings.Join(garment.MeasureNames(cut), ", ")
}

// owner is whose measures a row holds.
type owner struct {
	cut   garment.Cut
	group garment.Group
}

// owner reads the cut and the group of a row; ok is false after a fault.
func (r *reader) owner(row []cell) (o owner, ok bool) {
	o, ok = owner{r.defaults.Cut, r.defaults.Group}, true
	if c, given := r.head.at(row, cutColumn); given {
		if o.cut = garment.Cut(c.text); !known(o.cut) {
			var err error
			if o.cut, err = garment.ParseCut(c.text); err != nil {
				r.fault(c, "", "%v", err)
				ok = false
			}
		}
	} else if o.cut == "" {
		r.fault(row[0], "add a column cut, with "+string(garment.CrewTee)+" for instance", "the row does not say its cut")
		ok = false
	}
	if c, given := r.head.at(row, groupColumn); given {
		size, err := garment.ParseSize(c.text+" M", "")
		if err != nil {
			r.fault(c, "write youth, women or adult", "%q is not a group of sizes", c.text)
			ok = false
		}
		o.group = size.Group
	}
	return o, ok
}

// known spares the search for a cut that is written as the program writes it.
func known(cut garment.Cut) bool {
	_, ok := cut.Info()
	return ok
}

// size reads a size of an owner's group; a size that names its own group must
// name that of the row.
func (r *reader) size(c cell, text string, o owner, grouped bool) (garment.Size, bool) {
	size, err := garment.ParseSize(text, o.group)
	if err != nil {
		r.fault(c, "", "%v", err)
		return garment.Size{}, false
	}
	if grouped && size.Group != o.group {
		r.fault(c, "keep one of them", "size %q is of group %s, and the row is of group %s", text, size.Group, o.group)
		return garment.Size{}, false
	}
	return size, true
}

// rowUnit returns the unit that a row or the sheet gives to bare figures.
func (r *reader) rowUnit(row []cell) (*length.Unit, bool) {
	c, given := r.head.at(row, unitColumn)
	if !given {
		return r.head.unit, true
	}
	if unit, ok := unitWord(c.text); ok {
		return &unit, true
	}
	r.fault(c, "write in, cm or mm", "%q is not a unit", c.text)
	return nil, false
}

// rowMeasure reads the word for a measure in a row, with a unit in it.
func (r *reader) rowMeasure(c cell) (m measure, unit *length.Unit, ok bool) {
	text, u, has := unitOf(c.text)
	if has {
		unit = &u
	}
	m, ok, why := measureOf(text)
	switch {
	case ok:
	case why != "":
		r.fault(c, why, "%q could mean two measures", c.text)
	default:
		r.note(c, knownMeasures(r.defaults.Cut), "measure %q is not used", c.text)
	}
	return m, unit, ok
}

func (r *reader) readLong(row []cell) {
	word, hasMeasure := r.head.at(row, measureColumn)
	size, hasSize := r.head.at(row, sizeColumn)
	figure, hasFigure := r.head.at(row, valueColumn)
	switch {
	case !hasFigure || nothing(figure.text):
		return // not given: the generic table fills it
	case !hasMeasure:
		r.fault(row[0], "name it, such as chest half", "the row names no measure")
		return
	case !hasSize:
		r.fault(row[0], "name it, such as youth M", "the row names no size")
		return
	}
	m, unit, ok := r.rowMeasure(word)
	o, okOwner := r.owner(row)
	own, okUnit := r.rowUnit(row)
	if !ok || !okOwner || !okUnit {
		return
	}
	_, grouped := r.head.at(row, groupColumn)
	if s, ok := r.size(size, size.text, o, grouped); ok {
		r.store(figure, o.cut, s, m, pick(own, unit, r.unitOver(valueColumn)))
	}
}

func (r *reader) readWide(row []cell) {
	c, given := r.head.at(row, sizeColumn)
	if !given {
		r.fault(row[0], "name it, such as youth M", "the row names no size")
		return
	}
	o, okOwner := r.owner(row)
	unit, okUnit := r.rowUnit(row)
	if !okOwner || !okUnit {
		return
	}
	_, grouped := r.head.at(row, groupColumn)
	size, ok := r.size(c, c.text, o, grouped)
	for i, col := range r.head.columns {
		if ok && col.kind == oneMeasure && i < len(row) && !nothing(row[i].text) {
			r.store(row[i], o.cut, size, col.measure, pick(col.unit, unit))
		}
	}
}

func (r *reader) readAcross(row []cell) {
	word, given := r.head.at(row, measureColumn)
	if !given {
		return // a row of remarks
	}
	m, unit, ok := r.rowMeasure(word)
	if !ok {
		return
	}
	o, okOwner := r.owner(row)
	own, okUnit := r.rowUnit(row)
	if !okOwner || !okUnit {
		return
	}
	_, grouped := r.head.at(row, groupColumn)
	for i, col := range r.head.columns {
		if col.kind != oneSize || i >= len(row) || nothing(row[i].text) {
			continue
		}
		if size, ok := r.size(col.cell, col.size, o, grouped); ok {
			r.store(row[i], o.cut, size, m, pick(own, unit, col.unit))
		}
	}
}

// unitOver returns the unit in the heading of a column of a kind.
func (r *reader) unitOver(k kind) *length.Unit {
	for _, c := range r.head.columns {
		if c.kind == k {
			return c.unit
		}
	}
	return nil
}

// pick returns the first unit that is given.
func pick(units ...*length.Unit) *length.Unit {
	for _, u := range units {
		if u != nil {
			return u
		}
	}
	return nil
}

// nothing reports a cell that says that there is no figure.
func nothing(text string) bool {
	switch strings.ToLower(text) {
	case "", "-", "–", "—", "n/a", "na", "tbd":
		return true
	}
	return false
}

var (
	bare     = regexp.MustCompile(`[0-9½¼¾⅛⅜⅝⅞.,]$`)
	decimals = regexp.MustCompile(`^(\d+),(\d{1,3})(\D.*)?$`)
)

// What a measure may be, mm: outside, it was written in another unit.
const (
	leastMM = 1.0
	mostMM  = 3000.0
)

// store reads a figure and keeps it.
func (r *reader) store(c cell, cut garment.Cut, size garment.Size, m measure, unit *length.Unit) {
	l, ok := r.length(c, size, m, unit)
	if !ok {
		return
	}
	mm := l.MM() * m.share
	if mm < leastMM || mm > mostMM {
		r.fault(c, "look at its unit", "%s of %s: %v is out of reach", m.name, size, l)
		return
	}
	k, as := key{cut, size, m.name}, l.String()
	if m.share != 1 {
		as += ", halved"
	}
	if old, twice := r.sheet.given[k]; twice {
		if old.mm != mm {
			r.fault(c, "keep one of them", "%s of %s is given twice, here %v and in line %d %s", m.name, size, l, old.cell.at.Line, old.as)
		}
		return
	}
	r.sheet.keep(k, value{mm: mm, as: as, unit: l.Unit(), cell: c})
}

// length reads a figure with its unit; a bare one takes the unit given.
func (r *reader) length(c cell, size garment.Size, m measure, unit *length.Unit) (length.Length, bool) {
	text := decimals.ReplaceAllString(c.text, "$1.$2$3")
	if figure, u, has := unitOf(text); has { // 53.5 centimetres
		text = figure + u.String()
	} else if bare.MatchString(text) {
		if unit == nil {
			r.fault(c, "write "+text+"in, "+text+"cm or "+text+"mm, or put the unit in the heading, such as "+m.name+" (in)",
				"%s of %s: %q has no unit", m.name, size, c.text)
			return length.Length{}, false
		}
		text += unit.String()
	}
	l, err := length.Parse(text)
	if err != nil {
		r.fault(c, "", "%s of %s: %v", m.name, size, err)
		return l, false
	}
	return l, true
}
