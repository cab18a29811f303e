package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"yokeline/lettering/order"
	"yokeline/lettering/typeface"
	"yokeline/proof/page"
	"yokeline/proof/specimen"
)

func shapesCommand(s streams) *cobra.Command {
	c := &cobra.Command{
		Use:   "shapes",
		Short: "List the shapes that a name may have, or draw them and the tails",
		Example: `  yokeline shapes
  yokeline shapes -o shapes.pdf`,
		Args: usageArgs(cobra.NoArgs),
	}
	picture := c.Flags().StringP("output", "o", "", "draw the shapes into this .pdf, .svg or .png file")
	c.RunE = func(c *cobra.Command, _ []string) error {
		if *picture != "" {
			return drawShapes(c, *picture)
		}
		for _, shape := range order.Shapes() {
			if _, err := fmt.Fprintln(s.out, shape); err != nil {
				return err
			}
		}
		return nil
	}
	return c
}

// drawShapes draws every shape in a block face and tails under the scripts.
func drawShapes(c *cobra.Command, path string) error {
	block, err := typeface.Embedded("oswald")
	if err != nil {
		return err
	}
	var scripts []*typeface.Face
	for _, id := range []string{"yellowtail", "damion", "oleo-script"} {
		face, err := typeface.Embedded(id)
		if err != nil {
			return err
		}
		scripts = append(scripts, face)
	}
	book, err := specimen.Shapes(page.Letter(), block, scripts)
	if err != nil {
		return err
	}
	return writePicture(c, book, path, "Shapes")
}
