package order

import (
	"strings"

	"yokeline/lettering/garment"
	"yokeline/lettering/platen"
	"yokeline/lettering/sizerun"
	"yokeline/lettering/source"
	"yokeline/lettering/specsheet"
)

// SpecFile is the maker's spec sheet that a job names.
type SpecFile struct {
	File    string // as the job writes it, relative to the job; empty when it names none
	At      source.Place
	excerpt string
}

// In returns the garment of the order in a size: with the measures of the maker's
// spec sheet where the job names one, else with the generic ones; and with the
// margins that the job gives.
func (g GarmentChoice) In(size garment.Size) (*garment.Garment, error) {
	cut := garment.New
	if g.Spec != nil {
		cut = g.Spec.Garment
	}
	made, err := cut(g.Cut, size)
	if err != nil || g.Clear == (garment.Margins{}) {
		return made, err
	}
	return made.With(g.Clear)
}

// spec reads the name of the spec sheet.
func (d *draft) spec(v value) {
	ref := &d.job.Spec
	ref.At = v.place()
	s, ok := v.raw(cellLetters)
	if ok && !strings.HasSuffix(strings.ToLower(s), ".csv") {
		v.fault("save the sheet as CSV UTF-8 and name that file", "%s: %q is not a CSV file", v.name, s)
		return
	}
	set(&ref.File)(s, ok)
	ref.excerpt = v.r.file.Line(ref.At.Line)
}

// readSpec reads the spec sheet that the job names, once the job is known. Its
// faults are told beside those of the job.
func (j *Job) readSpec(read func(name string) ([]byte, error)) source.Faults {
	g := &j.Order.Garment
	if j.Spec.File == "" || g.Cut == "" {
		return nil
	}
	data, err := read(j.Spec.File)
	if err != nil {
		return source.Faults{j.Spec.refused("garment: spec: "+notRead(j.Spec.File, err), "write its name as it is found beside the job")}
	}
	sheet, faults := specsheet.Read(j.Spec.File, data, specsheet.Defaults{Cut: g.Cut, Group: g.Group})
	if len(faults) > 0 {
		return faults
	}
	if len(sheet.Sizes(g.Cut)) == 0 {
		return source.Faults{j.Spec.refused("garment: spec: "+j.Spec.File+" has no measures of a "+string(g.Cut), "look at its column of cuts")}
	}
	g.Spec = sheet
	for _, n := range sheet.Notes(g.Cut) {
		j.Order.Notes = append(j.Order.Notes, Note{Severity: Advice, At: n.At, What: "spec sheet", Message: n.Message, Remedy: n.Remedy})
	}
	return nil
}

// wornSpec notes the sizes of players that the sheet leaves out, and refuses
// those whose generic measures do not go with the sheet's.
func (j *Job) wornSpec() source.Faults {
	g := j.Order.Garment
	if g.Spec == nil {
		return nil
	}
	var faults source.Faults
	seen := map[garment.Size]bool{}
	for _, p := range j.Order.Players {
		if !p.SizeKnown || seen[p.Size] || g.Spec.Has(g.Cut, p.Size) {
			continue
		}
		seen[p.Size] = true
		if _, err := g.In(p.Size); err != nil {
			faults = append(faults, j.Spec.refused("garment: spec: "+err.Error(), "ask the maker for its measures"))
			continue
		}
		j.Order.Notes = append(j.Order.Notes, Note{Severity: Advice, At: j.Spec.At, What: "spec sheet",
			Message: p.Size.String() + " is not in " + j.Spec.File + ": its measures are all taken from the generic table",
			Remedy:  "add the maker's measures of " + p.Size.String()})
	}
	return faults
}

// refused is a fault of the spec sheet at the place where the job names it.
func (ref SpecFile) refused(message, hint string) source.Fault {
	return source.Fault{Place: ref.At, Message: message, Hint: hint, Excerpt: ref.excerpt, Width: len([]rune(ref.File))}
}

// mostPlatens is how many platens a job may list; a shop has a handful.
const mostPlatens = 30

// platens reads the shop's own platens.
func (d *draft) platens(v value) {
	items, ok := v.items()
	switch {
	case !ok:
		return
	case len(items) == 0:
		v.keyFault("write platens: [15in x 15in, 16in x 20in], or delete the line", "platens: there are none")
		return
	case len(items) > mostPlatens:
		items[mostPlatens].fault("", "platens: at most %d are read", mostPlatens)
		return
	}
	for _, item := range items {
		s, ok := item.scalar()
		if !ok {
			continue
		}
		p, err := platen.Parse(s)
		if err != nil {
			item.fault("", "platens: %v", err)
			continue
		}
		d.o.Platens = append(d.o.Platens, p)
	}
}

// runWords are the words for the plans of a size run.
func runWords() []string {
	var out []string
	for _, k := range sizerun.Kinds() {
		out = append(out, k.String())
	}
	return out
}
