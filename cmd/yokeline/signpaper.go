package main

import (
	"context"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"yokeline/lettering/choices"
	"yokeline/lettering/findings"
	"yokeline/lettering/signoff"
)

// onPaper is a sign-off page that the coach signed by hand, as somebody in the
// shop reads it off the sheet.
type onPaper struct {
	by, date, code string
	choose         []string // 1=D: the choice as it is numbered on the page
}

func (p onPaper) given() bool { return p.by != "" || p.date != "" || p.code != "" || len(p.choose) > 0 }

// answer is what the signed sheet says, for the proof that its code names. Nobody
// can check the sheet for the shop: what was struck through must not be signed
// here but changed, and proved again.
func (p onPaper) answer(i *issue) (*signoff.Answer, error) {
	switch {
	case p.by == "" || p.date == "" || p.code == "":
		return nil, usagef("a sign-off on paper needs --by, --date and --code, as they stand on the sheet")
	case !sameCode(p.code, i.print):
		return nil, usagef("--code: %q is not this order's, %s: the sheet is of another proof", p.code, signoff.Short(i.print))
	}
	if _, err := time.Parse(time.DateOnly, p.date); err != nil {
		return nil, usagef("--date: %q is not a date such as 2027-02-24", p.date)
	}
	o := i.job.order
	a := &signoff.Answer{
		Yokeline: signoff.Format, Fingerprint: i.print, Team: o.Team, Order: o.Number, Revision: i.revision(),
		Signed: &signoff.Signed{Name: p.by, Date: p.date},
	}
	for k, player := range i.shown.Players {
		a.Players = append(a.Players, signoff.Player{Row: k + 1, Name: player.Name, Number: player.Number, Size: player.Size.String(), Answer: signoff.Right})
	}
	for _, text := range p.choose {
		number, letter, ok := strings.Cut(text, "=")
		n, err := strconv.Atoi(strings.TrimSpace(number))
		if !ok || err != nil || n < 1 || n > len(i.questions) {
			return nil, usagef("--choose: %q is not a choice such as 1=D; the proof has %d", text, len(i.questions))
		}
		q := i.questions[n-1]
		w, ok := q.Way(strings.ToUpper(strings.TrimSpace(letter)))
		if !ok {
			return nil, usagef("--choose: choice %d has no %s", n, letter)
		}
		a.Choices = append(a.Choices, signoff.Choice{Question: q.ID, Letter: w.Letter, Way: w.Kind})
		if k, ok := known(q, w); ok {
			a.Known = append(a.Known, k)
		}
	}
	a.Seal = a.SealOf()
	return a, nil
}

// known is the broken rule that a choice lets stand; false for other choices.
func known(q choices.Question, w choices.Way) (signoff.Known, bool) {
	var f findings.Finding
	switch {
	case w.Kind == choices.LeaveBoth && q.Clash != nil:
		f = q.Clash.Finding
	case w.Kind == choices.LeaveIt && q.Rule != nil:
		f = q.Rule.Finding
	default:
		return signoff.Known{}, false
	}
	return signoff.Known{Rule: f.Rule, What: strings.TrimSpace(f.Place + " " + f.What + ", required " + f.Required)}, true
}

// prepare is prepareAs for the proof whose code stands on the sheet.
func (p onPaper) prepare(ctx context.Context, s streams, c jobChoice) (*issue, error) {
	sh, err := openShelf(c)
	if err != nil {
		return nil, err
	}
	fingerprint := ""
	for _, r := range sh.all {
		if sameCode(p.code, r.Fingerprint) {
			fingerprint = r.Fingerprint
		}
	}
	return prepareAs(ctx, s, c, fingerprint)
}

// sameCode tells whether a code as somebody typed it is a fingerprint's.
func sameCode(typed, fingerprint string) bool {
	return strings.ToLower(strings.ReplaceAll(typed, " ", "")) == strings.ReplaceAll(signoff.Short(fingerprint), " ", "")
}

// sign records a sheet that was signed by hand, with its scan.
func (p onPaper) sign(ctx context.Context, s streams, c jobChoice, file string, f format) error {
	scan, err := os.ReadFile(file)
	if err != nil {
		return usagef("the signed sheet cannot be read: %v", err)
	}
	if strings.EqualFold(filepath.Ext(file), ".json") {
		return usagef("%s is no scan of a sheet: leave --by, --date and --code out for the file of the proof page", file)
	}
	i, err := p.prepare(ctx, s, c)
	if err != nil {
		return err
	}
	a, err := p.answer(i)
	if err != nil {
		return err
	}
	proof := signoff.Proof{Sized: i.shown, Fingerprint: i.print, Questions: i.questions}
	problems, err := a.Check(proof)
	if err != nil {
		return err
	}
	data, err := a.Write()
	if err != nil {
		return err
	}
	return i.settle(ctx, s, c, received{answer: a, file: filepath.Base(file), data: data, scan: scan, problems: problems, corrections: a.Corrections(proof)}, f)
}
