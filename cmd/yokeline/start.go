package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"yokeline/lettering/order"
	"yokeline/proof/outfile"
)

func startCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "start DIR",
		Short: "Write a starter job to edit",
		Long: `start writes job.yaml and roster.csv into a folder, ready to be edited. It never
replaces a file that is there.`,
		Example: `  yokeline start spring-league
  yokeline proof spring-league -o spring-league/proof`,
		Args: usageArgs(cobra.ExactArgs(1)),
		RunE: func(c *cobra.Command, args []string) error {
			if err := makeFolder(args[0]); err != nil {
				return err
			}
			batch := outfile.NewBatch(c.Context())
			defer batch.Discard()
			for _, file := range order.Starter() {
				path := filepath.Join(args[0], file.Name)
				if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
					return usagef("%s is there already; give a folder without a job", path)
				}
				if err := batch.Add(path, writeBytes(file.Data)); err != nil {
					return err
				}
			}
			if err := batch.Commit(); err != nil {
				return err
			}
			_, err := fmt.Fprintf(s.out, "A starter job is in %s. Edit job.yaml and roster.csv, then run: yokeline proof %s -o %s\n",
				args[0], args[0], filepath.Join(args[0], "proof"))
			return err
		},
	}
}
