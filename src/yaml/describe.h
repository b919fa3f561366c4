// The one description of a parameter struct.
//
// A struct S of parameters has a free function
//     template <class V> void describe(V& v, S& s);
// that calls one member of the visitor v per key, in the order a person would
// write them. Two visitors exist: Reader (yaml/reader.h) fills s from a document
// node and reports every problem it meets; SchemaWriter (yaml/schema.h) walks a
// default-constructed S and writes a JSON Schema. A third can be added without
// touching the structs.
//
// A visitor V offers, besides the tag V::optional (a key may be left out, the
// struct's own initial value standing; without the tag the key is required):
//
//   v.text   (key, std::string&, doc [, v.optional])       non-empty, one line
//   v.name   (key, Name&, doc, ...)                        as text, keeps its mark
//   v.path   (key, std::string&, doc, ...)
//   v.paths  (key, std::vector<std::string>&, most, doc, ...)
//   v.flag   (key, bool& or std::optional<bool>&, doc, ...)
//   v.number (key, double&, Range, doc, ...)               no unit
//   v.count  (key, int&, low, high, doc, ...)
//   v.counts (key, std::vector<int>&, low, high, most, doc, ...)
//   v.choice (key, Enum&, {{"word", Enum::value}, ...}, doc, ...)
//   v.length (key, Mm& or std::optional<Mm>&, Range, doc, ...)   Range in mm
//   v.lengths(key, std::vector<Mm>&, Range, most, doc, ...)
//   v.mass   (key, Kg&, Range, doc, ...)                         Range in kg
//   v.stress (key, Mpa&, Range, doc, ...)                        Range in MPa
//   v.angle  (key, Radians&, Range, doc, ...)                    Range in degrees
//   v.object (key, S& or std::optional<S>&, doc, ...)
//   v.list   (key, std::vector<S>&, most, doc, ...)
#pragma once

namespace bedwright {

// Inclusive.
struct Range {
  double low, high;
};

struct OptionalKey {};

}  // namespace bedwright
