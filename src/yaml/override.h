// Overrides: "track.rail_length=84 in" changes a document before it is read.
#pragma once

#include <string>

#include "yaml/document.h"

namespace bedwright {

// Sets the value at a path. Missing keys and the maps above them are made; an
// entry of a list is replaced, or appended when its number is one past the last.
// The value is any YAML flow value. `number` says which override it is (counted
// from 1) and `skipped` how many characters of its text were taken off in front
// (a prefix such as "kit."), so that marks fit the text as it was given. Faults
// are added to the document's problems and leave the tree as it was.
void apply_set(Document& document, const std::string& text, int number = 1, int skipped = 0);

// The same for an override that is written in another file, at `written`, with its
// key (without the document's prefix) and value apart. Faults are reported there.
void apply_written(Document& document, const std::string& key, const std::string& value, const Mark& written);

}  // namespace bedwright
