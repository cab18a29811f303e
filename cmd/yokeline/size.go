package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"yokeline/lettering/fit"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
	"yokeline/lettering/spelling"
	"yokeline/lettering/typeface"
)

// loose holds the flags of a single name or number, as typed.
type loose struct {
	text, number, face, height, limit, shape string
	ones                                     string
	radius, rise, spacing, join, gap         string
	trackingFloor, widthFloor, heightFloor   string
	letterCase, prefix, lang, method, art    string
	outlines                                 []string
	wdth, wght                               float64
	down, squash                             bool
	looks
}

func sizeCommand(s streams) *cobra.Command {
	var l loose
	var choice jobChoice
	var shop shopView
	c := &cobra.Command{
		Use:   "size JOB | size --text NAME … | size --number 27 …",
		Short: "Show every name and number as it comes out",
		Long: `size fits every name and number of a job to its player's garment, or one name
or number given by flags. It exits with 1 when something does not fit.

Lengths carry their unit: 2.5in, 2 1/2in, 2-1/2", 64mm, 6.4cm, 18pt.`,
		Example: `  yokeline size spring-league
  yokeline size --text WOJCIECHOWSKI --face oswald --height 2in --limit 11in --shape radial --radius 14in
  yokeline size --text O’NEILL --face saira --height 50mm --limit 24cm --outline 3mm --format json
  yokeline size --number 27 --face quantico --height 8in --outline 1/4in --art 27.svg`,
		Args: usageArgs(cobra.MaximumNArgs(1)),
	}
	output := formatFlag(c)
	c.Flags().BoolVar(&choice.demo, "demo", false, "size the built-in order")
	l.flags(c)
	l.looks.flags(c)
	shop.flags(c)
	c.RunE = func(c *cobra.Command, args []string) error {
		if shop.asked(c) {
			return shop.job(c, s, choice, args, *output)
		}
		switch {
		case (len(args) == 1 || choice.demo) && (l.text != "" || l.number != ""), len(args) == 1 && choice.demo:
			return usagef("give one of a job, --demo, --text and --number")
		case len(args) == 1:
			choice.path = args[0]
			return sizeJob(c, s, choice, *output)
		case choice.demo:
			return sizeJob(c, s, choice, *output)
		case l.text != "" && l.number != "":
			return usagef("give --text or --number, not both")
		case c.Flags().Changed("text"):
			return sizeName(c, s, l, *output)
		case c.Flags().Changed("number"):
			return sizeNumber(c, s, l, *output)
		}
		return usagef("give a job, --text or --number; see yokeline size --help")
	}
	return c
}

func (l *loose) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&l.text, "text", "", "one name to fit")
	f.StringVar(&l.number, "number", "", "one number to set")
	f.StringVar(&l.face, "face", "", "face id (see yokeline faces) or a .ttf or .otf file")
	f.StringVar(&l.height, "height", "", "letter height, or number height, asked for")
	f.StringVar(&l.limit, "limit", "", "width that the outermost outline must stay within")
	f.StringVar(&l.shape, "shape", "straight", shapeWords())
	f.BoolVar(&l.down, "down", false, "arch down instead of up")
	f.StringVar(&l.radius, "radius", "", "radius of the baseline's circle")
	f.StringVar(&l.rise, "rise", "", "rise of the arch over the limit, instead of a radius")
	f.StringVar(&l.spacing, "spacing", "baseline", "height at which an arch keeps the letter spacing: baseline or middle")
	f.StringArrayVar(&l.outlines, "outline", nil, "width of an outline, from the inside outwards; may be repeated")
	f.StringVar(&l.join, "join", "round", "corners of the outlines: round, mitre or bevel")
	f.StringVar(&l.gap, "gap", "", "ink gap between digits (default 6 % of the number height)")
	f.StringVar(&l.ones, "ones", "own width", "room of a 1 among other digits: \"own width\" or \"full width\", that of the widest of the others")
	f.StringVar(&l.trackingFloor, "tracking-floor", "-4%", "how far letters may be set closer, of the letter height; 0% for never")
	f.StringVar(&l.widthFloor, "width-floor", "80%", "how narrow letters may become; 100% for never")
	f.StringVar(&l.heightFloor, "height-floor", "", "how low letters may become (default 60 % of the height asked)")
	f.Float64Var(&l.wdth, "wdth", math.NaN(), "width axis of a variable face")
	f.Float64Var(&l.wght, "wght", math.NaN(), "weight axis of a variable face")
	f.BoolVar(&l.squash, "squash", false, "let letters be squashed once the width axis is at its floor")
	f.StringVar(&l.method, "method", "", "decoration method, for the smallest gap it can make")
	f.StringVar(&l.letterCase, "case", "upper", "upper or typed")
	f.StringVar(&l.prefix, "prefix", "plain", "small letters of Mc, Mac, De, Di, Fitz: plain, or raised as small capitals")
	f.StringVar(&l.lang, "lang", "", "language tag, such as tr or de")
	f.StringVar(&l.art, "art", "", "also draw it at 1:1 into this SVG file")
}

// lengthFlag reads a length flag; an empty one is 0.
func lengthFlag(name, text string) (float64, error) {
	if text == "" {
		return 0, nil
	}
	l, err := length.Parse(text)
	if err != nil {
		return 0, usagef("--%s: %v", name, err)
	}
	return l.MM(), nil
}

// shareFlag reads a percentage such as -4% as a fraction between low and high.
func shareFlag(name, text string, low, high float64) (float64, error) {
	var percent float64
	number, ok := strings.CutSuffix(strings.TrimSpace(text), "%")
	if _, err := fmt.Sscanf(number+"|", "%f|", &percent); err != nil || !ok {
		return 0, usagef("--%s: %q is not a percentage such as %g%%", name, text, low*100)
	}
	if percent < low*100 || percent > high*100 {
		return 0, usagef("--%s: %s is outside %g%% to %g%%", name, text, low*100, high*100)
	}
	return percent / 100, nil
}

func (l loose) layers() ([]outline.Layer, error) {
	join, err := outline.ParseJoin(l.join)
	if err != nil {
		return nil, usagef("--join: %v", err)
	}
	var out []outline.Layer
	for _, text := range l.outlines {
		width, err := lengthFlag("outline", text)
		if err != nil {
			return nil, err
		}
		if width <= 0 {
			return nil, usagef("--outline: %s is not a width", text)
		}
		out = append(out, outline.Layer{Width: width, Join: join})
	}
	return out, nil
}

// required reads a length flag that must be given and be over 0.
func required(name, text string) (float64, error) {
	mm, err := lengthFlag(name, text)
	if err == nil && mm <= 0 {
		err = usagef("--%s is needed, such as --%s 2in", name, name)
	}
	return mm, err
}

// smallestGap returns the smallest gap of a decoration method, 0 for none.
func smallestGap(method string) (float64, error) {
	if method == "" {
		return 0, nil
	}
	var known []string
	for _, m := range order.Methods() {
		if m.ID == method {
			return m.MinGap, nil
		}
		known = append(known, m.ID)
	}
	return 0, usagef("--method: %q is not known; use %s", method, strings.Join(known, ", "))
}

func (l loose) openFace() (*typeface.Face, error) {
	if l.face == "" {
		return nil, usagef("--face is needed, such as --face oswald; see yokeline faces")
	}
	return openFace(l.face)
}

// nameRequest gathers the flags of one name. Every wrong flag is a usage error.
func (l loose) nameRequest() (r fit.Request, err error) {
	for _, step := range []func(*fit.Request) error{l.measures, l.stand, l.looks.name, l.letters} {
		if err := step(&r); err != nil {
			return r, err
		}
	}
	return r, nil
}

// measures reads the lengths and floors of a name.
func (l loose) measures(r *fit.Request) (err error) {
	if r.Height, err = required("height", l.height); err != nil {
		return err
	}
	r.Ladder = fit.DefaultLadder(r.Height)
	for _, f := range []struct {
		to         *float64
		name, text string
	}{{&r.Limit, "limit", l.limit}, {&r.Radius, "radius", l.radius}, {&r.Rise, "rise", l.rise}, {&r.Ladder.Height, "height-floor", l.heightFloor}} {
		if f.text == "" {
			continue
		}
		if *f.to, err = lengthFlag(f.name, f.text); err != nil {
			return err
		}
	}
	if r.Ladder.Tracking, err = shareFlag("tracking-floor", l.trackingFloor, -0.5, 0); err != nil {
		return err
	}
	if r.Ladder.Width, err = shareFlag("width-floor", l.widthFloor, 0.1, 1); err != nil {
		return err
	}
	if r.SmallestGap, err = smallestGap(l.method); err != nil {
		return err
	}
	r.Outlines, err = l.layers()
	return err
}

// stand reads what the letters stand on: a line, an arch or two edges.
func (l loose) stand(r *fit.Request) (err error) {
	var edged bool
	if r.Edges, edged, err = l.form(); err != nil {
		return err
	}
	if edged {
		r.Rise = 0 // is in the edges
		return nil
	}
	if r.Shape, err = l.shapeOf(); err != nil {
		return err
	}
	if r.Spacing, err = l.spacingOf(); err != nil {
		return err
	}
	return l.checkArch(*r)
}

// letters reads the face and the text.
func (l loose) letters(r *fit.Request) (err error) {
	r.Lang, r.Wdth, r.Wght, r.Squash = l.lang, l.wdth, l.wght, l.squash
	letterCase, err := spelling.ParseCase(l.letterCase)
	if err != nil {
		return usagef("--case: %v", err)
	}
	if l.prefix != "plain" && l.prefix != "raised" {
		return usagef("--prefix: %q is not plain or raised", l.prefix)
	}
	if r.Face, err = l.openFace(); err != nil {
		return err
	}
	r.Text, r.Raised = sizes.Wording(l.text, r.Face, letterCase, l.lang, l.prefix == "raised")
	return nil
}

func (l loose) shapeOf() (fit.Shape, error) {
	switch {
	case l.shape == "straight" && !l.down:
		return fit.Straight, nil
	case l.shape == "radial" && l.down:
		return fit.RadialArchDown, nil
	case l.shape == "radial":
		return fit.RadialArch, nil
	case l.shape == "vertical" && l.down:
		return fit.VerticalArchDown, nil
	case l.shape == "vertical":
		return fit.VerticalArch, nil
	case l.shape == "straight":
		return 0, usagef("--down goes with --shape radial or vertical")
	}
	return 0, usagef("--shape: %q is not %s", l.shape, shapeWords())
}

func (l loose) spacingOf() (fit.Spacing, error) {
	for _, spacing := range []fit.Spacing{fit.Baseline, fit.Middle} {
		if spacing.String() == l.spacing {
			return spacing, nil
		}
	}
	return 0, usagef("--spacing: %q is not baseline or middle", l.spacing)
}

func (l loose) checkArch(r fit.Request) error {
	arched := r.Shape != fit.Straight
	switch {
	case !arched && (l.radius != "" || l.rise != ""):
		return usagef("--radius and --rise go with --shape radial or vertical")
	case arched && l.radius == "" && l.rise == "":
		return usagef("--shape %s needs --radius or --rise", l.shape)
	case l.radius != "" && l.rise != "":
		return usagef("give --radius or --rise, not both")
	case l.rise != "" && r.Limit == 0:
		return usagef("--rise is measured over the limit: give --limit too")
	}
	return nil
}

func sizeName(c *cobra.Command, s streams, l loose, output format) error {
	request, err := l.nameRequest()
	if err != nil {
		return err
	}
	if request.Narrower, err = sizes.NarrowerFaces(); err != nil {
		return err
	}
	name, err := fit.NewFitter().Name(request)
	if err != nil {
		return err
	}
	if err := l.drawArt(c, name.Text, name.Ink(), request.Outlines); err != nil {
		return err
	}
	if err := printSizes(s, output, length.Inch, []nameRow{nameJSON("", "", "", name)}, nil); err != nil {
		return err
	}
	return overIsAFinding(name.Verdict == fit.Over)
}

func overIsAFinding(over bool) error {
	if over {
		return errFindings
	}
	return nil
}
