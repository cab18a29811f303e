package sheets

import "yokeline/proof/parts"

// Masthead returns what the heads of all pages of an order share, so that what
// is printed for the bench looks like the proof: team, sport and garment, order,
// revision and date, and shop. The error is that of the team's name in its face.
func Masthead(in Input) (parts.Head, error) {
	d, err := newDocument(in)
	if err != nil {
		return parts.Head{}, err
	}
	return d.masthead(), nil
}

// masthead is a head without page, title and sentence.
func (d *document) masthead() parts.Head {
	o := d.order
	label := "Revision"
	if o.Revision == "" {
		label = "Date"
	}
	fields := [3]parts.Field{{Label: "Order", Value: o.Number}, {Label: label, Value: joined(o.Revision, date(o.ProofDate))}, {Label: "From", Value: o.Shop}}
	for k := range fields {
		if fields[k].Value == "" {
			fields[k].Label = ""
		}
	}
	return parts.Head{Team: d.team, TeamText: o.Team, Subtitle: joined(d.sport(), d.garmentWords()), Fields: fields}
}
