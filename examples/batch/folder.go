package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// A folder is where plans are written; a nil one takes nothing. It is opened as a root, so
// that no link in it leads a file out of it.
type folder struct {
	root    *os.Root
	force   bool
	names   filenames
	file    *os.File
	summary *csv.Writer
}

// openOut opens the folder of -out with its summary, nil where none is asked for.
func (b *batch) openOut() (*folder, error) {
	if b.out == "" {
		return nil, nil
	}
	if err := os.MkdirAll(b.out, 0o777); err != nil {
		return nil, fmt.Errorf("%s: %w", b.out, cause(err))
	}
	root, err := os.OpenRoot(b.out)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", b.out, cause(err))
	}
	f := &folder{root: root, force: b.force, names: filenames{}}
	if f.file, err = f.create("summary.csv"); err != nil {
		root.Close()
		return nil, err
	}
	f.summary = csv.NewWriter(f.file)
	return f, f.summary.Write(summaryColumns)
}

// create creates a file; one that is there is overwritten only where that is asked for.
func (f *folder) create(name string) (*os.File, error) {
	how := os.O_WRONLY | os.O_CREATE | os.O_EXCL
	if f.force {
		how = os.O_WRONLY | os.O_CREATE | os.O_TRUNC
	}
	file, err := f.root.OpenFile(name, how, 0o666)
	where := f.root.Name() + string(os.PathSeparator) + name
	switch {
	case errors.Is(err, fs.ErrExist):
		return nil, fmt.Errorf("%s: it is there already: -force overwrites it", where)
	case err != nil:
		return nil, fmt.Errorf("%s: %w", where, cause(err))
	}
	return file, nil
}

// write writes a whole file.
func (f *folder) write(name string, text []byte) error {
	file, err := f.create(name)
	if err != nil {
		return err
	}
	_, err = file.Write(text)
	return errors.Join(err, file.Close())
}

// plan writes a runner's plan and returns its file's name.
func (f *folder) plan(runner string, text []byte) (string, error) {
	name := f.names.next(runner)
	return name, f.write(name, text)
}

// row adds a row to the summary.
func (f *folder) row(r row) error {
	if f == nil {
		return nil
	}
	return f.summary.Write(r.fields())
}

// flush writes what is left of the summary.
func (f *folder) flush() error {
	if f == nil {
		return nil
	}
	f.summary.Flush()
	return f.summary.Error()
}

func (f *folder) close() error {
	if f == nil {
		return nil
	}
	return errors.Join(f.flush(), f.file.Close(), f.root.Close())
}
