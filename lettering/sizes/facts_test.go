package sizes_test

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"yokeline/lettering/garment"
	"yokeline/lettering/length"
	"yokeline/lettering/order"
	"yokeline/lettering/outline"
	"yokeline/lettering/sizes"
)

func TestNoTwoFactsOfAnOrderAreAbout(t *testing.T) {
	s := resolve(t, herons(team()...), nil)
	type key struct {
		player      int
		about, what string
	}
	seen := map[key]bool{}
	for _, f := range s.Facts() {
		k := key{f.Player, f.About, f.What}
		assert.False(t, seen[k], "%v stands twice", k)
		seen[k] = true
	}
	assert.Greater(t, len(seen), 200)
}

// What a field of order.Piece does to the facts is seen by changing it alone:
// a field that someone adds and forgets in the fingerprint fails here. How far a
// piece is eased is left to what comes out.
func TestEveryFieldOfAPieceIsAFact(t *testing.T) {
	quarter := length.Inches(1, 4)
	plain := sizes.FactText((&sizes.Sized{Order: herons(team()...)}).Facts())
	fields := reflect.TypeFor[order.Piece]()
	for i := range fields.NumField() {
		field := fields.Field(i)
		if field.Name == "Place" {
			continue // is what the facts are about
		}
		o := herons(team()...)
		v := reflect.ValueOf(&o.Pieces[0]).Elem().Field(i)
		changeField(t, v, &quarter)
		assert.False(t, plain == sizes.FactText((&sizes.Sized{Order: o}).Facts()), field.Name)
	}
}

// changeField gives a field a value that it has not.
func changeField(t *testing.T, v reflect.Value, l *length.Length) {
	t.Helper()
	switch at := v.Addr().Interface().(type) {
	case **length.Length:
		*at = l
		return
	case **order.Tail:
		*at = &order.Tail{Length: 0.9}
		return
	case *[]order.Outline:
		*at = append(*at, order.Outline{Width: *l, Join: outline.Mitre})
		return
	case *[]order.SizedLength:
		*at = append(*at, order.SizedLength{Group: garment.Youth, Letter: "S", Length: *l})
		return
	case *order.Height:
		at.Length = at.Length.Add(*l)
		return
	case *order.Colour:
		at.Hex = "#010203"
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(v.String() + "x")
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.Float64:
		v.SetFloat(v.Float() + 1)
	case reflect.Int, reflect.Uint8:
		if v.CanInt() {
			v.SetInt(v.Int() + 1)
		} else {
			v.SetUint(v.Uint() + 1)
		}
	case reflect.Pointer:
		require.Equal(t, reflect.Float64, v.Type().Elem().Kind())
		f := 123.0
		v.Set(reflect.ValueOf(&f))
	default:
		t.Fatalf("no way to change a %s", v.Type())
	}
}

func TestTheMeasuresOfEverySizeAreFacts(t *testing.T) {
	s := resolve(t, herons(player("Ng", "7", garment.Adult, "M"), player("Quill", "9", garment.Youth, "S")), nil)
	var about []string
	for _, f := range s.Facts() {
		if f.What == "body length" {
			about = append(about, f.About+" "+f.Value)
		}
	}
	youth, _, err := garment.Standard(garment.TwoButton, garment.Size{Group: garment.Youth, Letter: "S"})
	require.NoError(t, err)
	adult, _, err := garment.Standard(garment.TwoButton, garment.Size{Group: garment.Adult, Letter: "M"})
	require.NoError(t, err)
	assert.Equal(t, []string{
		fmt.Sprintf("size youth S %.0f", 1000*youth.BodyLength), fmt.Sprintf("size adult M %.0f", 1000*adult.BodyLength),
	}, about)
}
