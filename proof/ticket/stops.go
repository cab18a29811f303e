package ticket

import "yokeline/lettering/pressing"

// Stops are the reasons for which an order must not be pressed as it stands; none
// where it may. They stand on the press ticket too. Errors are those of Book.
func Stops(in Input) ([]pressing.Warning, error) {
	d, err := newDocument(in)
	if err != nil {
		return nil, err
	}
	p, err := d.newPlan()
	if err != nil {
		return nil, err
	}
	var out []pressing.Warning
	for _, w := range p.warnings {
		if w.Level == pressing.Stop {
			out = append(out, w)
		}
	}
	return out, nil
}
