package store

import "walkline/store/album"

// Album returns where the files of photographs are kept: a folder beside the store, named after it.
func (s *Store) Album() album.Folder { return photosOf(s.path) }

// KeepFile keeps a file by its hash. Errors: as [album.Folder.Keep].
func (s *Store) KeepFile(hash, kind string, data []byte) error {
	return wrapped("keeping a file", s.Album().Keep(hash, kind, data))
}

// KeptFile returns a file by its hash. Errors: as [album.Folder.File].
func (s *Store) KeptFile(hash, kind string) ([]byte, error) {
	data, err := s.Album().File(hash, kind)
	return data, wrapped("reading a kept file", err)
}
