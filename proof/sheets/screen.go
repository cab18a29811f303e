package sheets

import (
	"strings"

	"yokeline/lettering/choices"
	"yokeline/lettering/fit"
	"yokeline/lettering/garment"
	"yokeline/lettering/geom"
	"yokeline/lettering/length"
	"yokeline/lettering/numeral"
	"yokeline/lettering/sizes"
	"yokeline/proof/page"
	"yokeline/proof/parts"
	"yokeline/proof/shirt"
)

// Screen is what the pages of a proof say, in the same words, for a proof that
// is read on a screen.
type Screen struct {
	Book     *page.Book // to draw in; the look is its first page
	Cloth    shirt.Cloth
	Side     garment.Side // that players are told apart by
	Window   geom.Rect    // of the garment, mm: what must be seen of every player on that side
	Team     geom.Path    // the team's name as Head has it; empty where it is set in the text face
	Subtitle string       // sport · garment
	Fields   []parts.Field
	Noun     string      // shirt
	Look     *ScreenLook // nil when no player has a size
	Read     string      // asks for the reading that finds most mistakes
	BookName string      // the rule book that was used; empty for none
	Players  []ScreenPlayer
	Rules    []ScreenRule // the heaviest first
	Terms    []ScreenTerm

	d *document
}

// ScreenPlayer is what is said of one player.
type ScreenPlayer struct {
	Name    string // as it is cut; empty for none
	Size    string // empty when it is not known
	Fitted  bool   // there is a verdict
	Verdict parts.Verdict
	Rest    string // of the verdict: 1 ¾ in high
	Remark  string // same as 00; empty for none
	Broken  bool   // the remark is about a broken rule
}

// ScreenRule is one row of the table of rules.
type ScreenRule struct {
	Result             parts.Result
	Label, About, Who  string
	Measured, Required string
	Rule, Source       string
	Remedy             string
	Memory             bool
	Checks             int // how many checks the row stands for
}

// ScreenTerm is one paragraph of what is signed for.
type ScreenTerm struct{ Title, Text string }

// NewScreen reads a proof for a screen. The look is drawn; players are for the
// caller to draw.
func NewScreen(in Input) (*Screen, error) {
	d, err := newDocument(in)
	if err != nil {
		return nil, err
	}
	head := d.masthead()
	need, _ := d.rosterNeeds()
	half := need.wide * chestMargin / 2
	s := &Screen{
		Book: d.book, Cloth: d.cloth, Side: d.rosterSide(), Team: d.team, Noun: d.noun(), Read: d.readAloud(), d: d,
		Window:   geom.Rect{Min: geom.Point{X: -half, Y: -windowAbove}, Max: geom.Point{X: half, Y: need.deep - windowAbove}},
		Subtitle: head.Subtitle,
	}
	for _, f := range head.Fields {
		if f.Value != "" {
			s.Fields = append(s.Fields, f)
		}
	}
	if s.Look, err = d.screenLook(); err != nil {
		return nil, err
	}
	s.players()
	s.rules()
	s.terms()
	return s, nil
}

func (s *Screen) players() {
	remarks := s.d.remarks()
	for i, p := range s.d.in.Sized.Players {
		v := s.d.verdictOf(p)
		said := ScreenPlayer{Name: s.d.asCut(p), Fitted: v.has, Verdict: v.mark, Rest: v.rest}
		if p.Garment != nil {
			said.Size = s.d.sizeLabel(p.Size)
		}
		if r := remarks[i]; r.marked && r.text != seePage { // the others name pages
			said.Remark, said.Broken = r.text, r.mark == parts.Broken
		}
		s.Players = append(s.Players, said)
	}
}

func (s *Screen) rules() {
	for _, g := range s.d.ruleGroups() {
		for _, r := range g.rows {
			s.Rules = append(s.Rules, screenRule(r))
		}
	}
	if s.d.in.Sized.Rules != nil {
		for _, span := range s.d.checkedAgainst()[1:] {
			s.BookName += span.Text
		}
	}
}

// Rule puts a broken rule into the words of the paper: what is broken, by whom,
// and the sentences that say by how much.
func (s *Screen) Rule(r *choices.Rule) (said ScreenRule, sentences []string) {
	row := s.d.ruleWords(r)
	return screenRule(row), row.says()
}

func screenRule(r ruleRow) ScreenRule {
	return ScreenRule{
		Result: r.result, Label: r.label, About: strings.ReplaceAll(subjectOf(r.where, r.what), "\n", "; "), Who: r.who,
		Measured: r.measured, Required: r.required, Rule: r.rule, Source: r.source, Remedy: r.remedy, Memory: r.memory, Checks: r.checks,
	}
}

func (s *Screen) terms() {
	sign := &signOff{document: s.d}
	terms := sign.defaultTerms()
	if sign.ownTerms() != "" {
		terms = sign.ownIntroduction()
	}
	for _, t := range terms {
		s.Terms = append(s.Terms, ScreenTerm{t.title, strings.Replace(t.text, "the look on page 1", "the look above", 1)})
	}
}

// Length prints a length in the job's unit, rounded the given way.
func (s *Screen) Length(mm float64, r length.Rounding) string { return s.d.rounded(mm, r) }

// Near prints a length in the job's unit, rounded to the nearest step.
func (s *Screen) Near(mm float64) string { return s.d.length(mm) }

// Height prints the height of a piece; one that came out lower than asked is
// never printed as the height asked.
func (s *Screen) Height(p sizes.Piece) string { return s.d.heightOf(p) }

// Chosen returns a player with a way out in place of a piece, exactly as it
// would be made; false when the player cannot be sized so.
func (s *Screen) Chosen(player int, place garment.Place, name *fit.WayOut, number *numeral.WayOut) (sizes.Player, bool) {
	return s.d.changed(&s.d.in.Sized.Players[player], sizes.Choice{Place: place, Name: name, Number: number})
}

// Way says what a way out is called, what it comes to, and what follows from it.
func (s *Screen) Way(player int, piece *sizes.Piece, name *fit.WayOut, number *numeral.WayOut) (title, figure, more string) {
	if name != nil {
		figure, more = s.d.wayWords(&question{player: player, piece: piece}, name)
		return titleOf(name.Kind), figure, more
	}
	figure, more = s.d.numberWords(*piece, number)
	return titleOf(number.Kind), figure, more
}
