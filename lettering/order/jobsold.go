package order

// The words for where garments are sold and who wears them. The press ticket
// prints what the law may ask for by them; no size depends on them.
const (
	MarketUS    = "US"
	MarketEU    = "EU"
	MarketOther = "other"

	WearerAdult   = "adult"
	WearerChild   = "child"   // meant mainly for ages 12 and under
	WearerToddler = "toddler" // 3 and under
)

// Markets returns the words a job may use for where its garments are sold.
func Markets() []string { return []string{MarketUS, MarketEU, MarketOther} }

// Wearers returns the words a job may use for whom its garments are meant for.
func Wearers() []string { return []string{WearerAdult, WearerChild, WearerToddler} }

// sold are the keys of where garments are sold, and to whom.
func (d *draft) sold() []field {
	return []field{
		{key: "market", read: word(&d.o.Market, "market", Markets())},
		{key: "wearer", read: word(&d.o.Wearer, "wearer", Wearers())},
	}
}
