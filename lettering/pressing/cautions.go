package pressing

import "fmt"

// Cautions are the plain words that stand on every press ticket.
func Cautions() []string {
	return []string{
		Standing,
		"The platen burns at a touch, and so do buttons and snaps that were pressed. Wear gloves for a hot peel.",
		"Keep hands clear while it closes. One person works the press.",
		"Its own circuit, no extension lead, cord clear of the platen. Switch off and pull the plug before service.",
		"Never leave the press closed or alone while it is hot.",
		"Let air through: films and dyes give off fumes. Throw away cover sheets that are brown or frayed. Never cut PVC film with a laser.",
		"Pad round seams, zips and buttons; nothing hard under the platen.",
		"Let it cool before folding, and before a child or a customer touches it.",
	}
}

// Care is what goes with the garment when it leaves: common practice, no source.
const Care = "Do not wash it for 24 hours; then inside out at 30 to 40 °C, tumble low."

// Market is where the garment is sold: the law that its prompts are for.
type Market string

// The markets with prompts. Elsewhere the ticket asks for local rules alone.
const (
	US    Market = "US"
	EU    Market = "EU"
	Other Market = ""
)

// Wearer says whom a garment is for.
type Wearer struct {
	Child     bool // meant mainly for ages 12 and under (16 CFR 1200.2)
	UnderFour bool // made for sleep, feeding, sucking or teething at age 3 or under
	Sleepwear bool
}

// memory marks what must be looked up before it is relied on.
const memory = "from memory: confirm before you rely on it"

// Prompts are what the law may ask for: reminders to look up, no advice.
func Prompts(m Market, w Wearer) []Warning {
	var out []Warning
	if m == US && w.Child {
		out = append(out,
			Warning{Think, "children's product: total lead at most 100 ppm in any part that can be touched; keep the certificate of ink and film with the order", "ask the supplier for it", "US CPSIA section 101, since 14 Aug 2011"},
			Warning{Think, "children's product: a permanent tracking label, and you may need one of your own for what you change", "look up 15 USC 2063(a)(5)", "agency FAQ; the decorator's own label " + memory})
	}
	if m == US && w.UnderFour {
		out = append(out, Warning{Think, "child care article: eight phthalates at most 0.1 % each", "ask the supplier for a certificate", "16 CFR 1307.1, 1308.1"})
	}
	if w.Child && w.Sleepwear {
		out = append(out, Warning{Stop, "children's sleepwear has flammability rules of its own", "do not decorate it from this ticket", "16 CFR 1615 and 1616"})
	}
	if m == EU {
		out = append(out, Warning{Think, "printed garments of any size: DEHP, DBP, BBP and DIBP together below 0.1 % of the plasticised print", "ask the supplier for a certificate", "REACH Annex XVII entry 51, Regulation (EU) 2018/2005"})
		if w.Child {
			out = append(out, Warning{Think, "lead below 0.05 % in parts that a child may put in the mouth", "ask the supplier for a certificate", "REACH Annex XVII entry 63; the figure " + memory})
		}
	}
	return out
}

// continuous is the share of a circuit that a load of hours may take (US
// practice, from memory).
const continuous = 0.8

// Circuit warns when a press draws more than a circuit carries for hours: watts
// over volts against 80 % of its amperes.
func Circuit(watts, volts, amperes float64) (Warning, bool) {
	draws := watts / volts
	if draws <= continuous*amperes {
		return Warning{}, false
	}
	return Warning{Warn, fmt.Sprintf("the press draws %.1f A, over 80 %% of a %g A circuit (%.1f A)", draws, amperes, continuous*amperes),
		"give it a larger circuit of its own; ask an electrician", memory}, true
}
