package order

import (
	"regexp"
	"strconv"
	"strings"

	"yokeline/lettering/garment"
)

// setSize reads the size and, where the size does not say it, the group.
func (t *team) setSize(p *Player, e *entry) {
	c := e.cells[headSize]
	text := t.plain(c)
	if text == "" {
		t.note(Violation, p, e.at(headSize), "size", "no size", "ask the coach for the size of "+p.Label())
		return
	}
	group, heading, understood := t.group(e)
	own, err := garment.ParseSize(text, "")
	if err == nil {
		p.Size, p.SizeKnown = own, true
		if group != "" && group != own.Group && heading == headGroup {
			t.note(Advice, p, e.at(heading), "size", "size "+text+" is "+string(own.Group)+", but the column of groups says "+string(group)+": "+own.String()+" is taken",
				"check the size of "+p.Label())
		}
		return
	}
	if !understood {
		t.note(Violation, p, e.at(heading), "size", "group "+quote(t.plain(e.cells[heading]))+" is not understood", "write youth, adult or women for "+p.Label())
		return
	}
	if group == "" {
		group = t.Group
	}
	size, err := garment.ParseSize(text, group)
	if err != nil {
		message, remedy := cutLast(err.Error())
		t.note(Violation, p, c.at, "size", message, "ask the coach for the size of "+p.Label()+"; "+remedy)
		return
	}
	p.Size, p.SizeKnown = size, true
}

// cutLast splits an error into what is wrong and the remedy after its last colon.
func cutLast(s string) (message, remedy string) {
	if i := strings.LastIndex(s, ": "); i > 0 {
		return s[:i], s[i+2:]
	}
	return s, "write a letter such as M"
}

// group reads the column of groups, or of genders where there is no other. An
// empty cell is no group and understood; heading is the column that was read.
func (t *team) group(e *entry) (g garment.Group, from heading, understood bool) {
	if text := t.plain(e.cells[headGroup]); text != "" {
		g, ok := groupWord(text)
		return g, headGroup, ok
	}
	text := t.plain(e.cells[headGender])
	if text == "" {
		return "", headGender, true
	}
	switch strings.ToLower(text) {
	case "m", "male":
		return garment.Adult, headGender, true
	case "f", "female":
		return garment.Women, headGender, true
	}
	g, ok := groupWord(text)
	return g, headGender, ok
}

// underAge matches the age groups of youth leagues: U12, 12U, under 14.
var underAge = regexp.MustCompile(`^(?:u|under)[ -]*(\d{1,2})$|^(\d{1,2})[ -]*(?:u|and under|& under)$`)

// oldestYouth is the age up to which an age group is taken for youth sizes:
// common practice, no source. Above it players wear either.
const oldestYouth = 14

func groupWord(text string) (garment.Group, bool) {
	lower := strings.ToLower(text)
	if m := underAge.FindStringSubmatch(lower); m != nil {
		age, _ := strconv.Atoi(m[1] + m[2])
		return garment.Youth, age <= oldestYouth
	}
	// A group is whatever makes a size of M.
	s, err := garment.ParseSize(text+" M", "")
	if err != nil || s.Letter != "M" {
		return "", false
	}
	return s.Group, true
}

// setRole reads the role and the column of captains.
func (t *team) setRole(p *Player, e *entry) {
	p.Role = t.plain(e.cells[headRole])
	mark := t.plain(e.cells[headCaptain])
	title := ""
	switch strings.ToLower(mark) {
	case "", "no", "n", "false", "0", "-", "–":
		return
	case "yes", "y", "x", "true", "1", "c", "captain", "✓", "✔", "☑":
		title = "captain"
	case "a", "alternate", "assistant", "assistant captain", "vice", "vice captain", "vc":
		title = "assistant captain"
	default:
		t.note(Advice, p, e.at(headCaptain), "role", "captain "+quote(mark)+" is not understood", "write yes or no for "+p.Label())
		return
	}
	switch {
	case p.Role == "":
		p.Role = title
	case !strings.Contains(strings.ToLower(p.Role), "captain"):
		p.Role += ", " + title
	}
}

// quote sets a text from a file off in a message, on one line whatever it holds.
func quote(s string) string { return "“" + strings.Join(strings.Fields(s), " ") + "”" }
