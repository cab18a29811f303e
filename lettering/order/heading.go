package order

import (
	"regexp"
	"strings"
)

// heading is what a column of a roster holds.
type heading uint8

const (
	headNone   heading = iota
	headBack           // the name on the back
	headLast           // last name
	headName           // a bare Name
	headPlayer         // the player's whole name
	headFirst
	headNumber
	headSize
	headGroup
	headGender
	headRole
	headCaptain
	headNote
	headings // how many there are
)

// String names the column in messages.
func (h heading) String() string {
	return [headings]string{
		"nothing", "the name on the back", "the last name", "the name", "the player's name", "the first name",
		"the number", "the size", "the group of sizes", "the gender", "the role", "the captain", "a note",
	}[h]
}

// synonyms are the words coaches put over each column, without case, spaces
// and punctuation; # counts as the word number.
func synonyms(h heading) []string {
	switch h {
	case headBack:
		return []string{
			"nameonback", "backname", "nameonjersey", "jerseyname", "nameonshirt", "shirtname", "uniformname", "nameback",
			"nameonuniform", "printname", "nametoprint", "printedname", "nameforback", "nameonbackofjersey", "nameonbackofshirt", "lettering", "kitname",
		}
	case headLast:
		return []string{"lastname", "surname", "familyname", "last", "playerlastname", "playerslastname", "lname"}
	case headName:
		return []string{"name", "names"}
	case headPlayer:
		return []string{"player", "players", "playername", "playersname", "fullname", "playerfullname", "athlete", "athletename", "firstandlastname", "firstlastname", "firstlast"}
	case headFirst:
		return []string{"firstname", "first", "givenname", "forename", "fname", "playerfirstname", "playersfirstname"}
	case headNumber:
		return []string{
			"number", "no", "num", "nr", "nbr", "numbers", "jerseynumber", "jerseyno", "jerseynum", "playernumber", "playerno", "playersnumber",
			"uniformnumber", "uniformno", "uniformnum", "shirtnumber", "shirtno", "shirtnum", "backnumber", "numberonback", "squadnumber", "kitnumber",
		}
	case headSize:
		return []string{
			"size", "sizes", "sz", "jerseysize", "jerseysz", "shirtsize", "shirtsz", "uniformsize", "topsize", "teesize", "tshirtsize",
			"garmentsize", "kitsize", "playersize", "jerseytopsize",
		}
	case headGroup:
		return []string{"group", "agegroup", "sizegroup", "youthadult", "adultyouth", "youthoradult", "adultoryouth", "youthadultwomen", "sizetype", "sizecategory"}
	case headGender:
		return []string{"gender", "sex"}
	case headRole:
		return []string{"role", "position", "pos", "positions"}
	case headCaptain:
		return []string{"captain", "capt", "captains"}
	case headNote:
		return []string{"note", "notes", "comment", "comments", "remark", "remarks"}
	}
	return nil
}

// vocabulary finds headings by their words.
type vocabulary map[string]heading

func newVocabulary() vocabulary {
	v := vocabulary{}
	for h := headBack; h < headings; h++ {
		for _, s := range synonyms(h) {
			v[s] = h
		}
	}
	return v
}

var bracketed = regexp.MustCompile(`[(\[].*?[)\]]`)

// heading reads the text over a column; what stands in brackets is tried
// without, as in Size (YS to A3XL).
func (v vocabulary) heading(text string) heading {
	if len(text) > cellLetters {
		return headNone
	}
	text = strings.NewReplacer("#", " number ", "№", " number ").Replace(text)
	for _, t := range []string{text, bracketed.ReplaceAllString(text, " ")} {
		plain := squeeze(strings.Join(strings.Fields(t), ""))
		plain = strings.Replace(plain, "numbernumber", "number", 1)
		if h := v[plain]; h != headNone {
			return h
		}
	}
	return headNone
}
