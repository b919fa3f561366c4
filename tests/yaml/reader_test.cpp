#include "yaml/reader.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "units/units.h"
#include "yaml/override.h"

namespace bedwright {
namespace {

enum class Colour { red, green };

struct Leaf {
  Name bolt;
  Mm size = 7;
};
struct Sample {
  std::string title = "none", file;
  std::vector<std::string> files;
  bool on = false;
  double ratio = 0.5;
  int count = 3;
  std::vector<int> counts;
  Colour colour = Colour::red;
  Mm length = 1;
  std::optional<Mm> maybe;
  std::vector<Mm> lengths;
  Kg mass = 0;
  Mpa stress = 0;
  Radians angle = 0;
  Leaf leaf;
  std::optional<Leaf> maybe_leaf;
  std::vector<Leaf> leaves;
};

template <class V>
void describe(V& v, Leaf& l) {
  v.name("bolt", l.bolt, "Bolt");
  v.length("size", l.size, {1, 300}, "Size", v.optional);
}
template <class V>
void describe(V& v, Sample& s) {
  v.text("title", s.title, "Title", v.optional);
  v.path("file", s.file, "File", v.optional);
  v.paths("files", s.files, 2, "Files", v.optional);
  v.flag("on", s.on, "On", v.optional);
  v.number("ratio", s.ratio, {0, 1}, "Ratio", v.optional);
  v.count("count", s.count, 1, 10, "Count", v.optional);
  v.counts("counts", s.counts, 1, 10, 3, "Counts", v.optional);
  v.choice("colour", s.colour, {{"red", Colour::red}, {"green", Colour::green}}, "Colour", v.optional);
  v.length("length", s.length, {12 * inch, 40 * foot}, "Length of it");
  v.length("maybe", s.maybe, {1, 100}, "Maybe", v.optional);
  v.lengths("lengths", s.lengths, {0, 100}, 3, "Lengths", v.optional);
  v.mass("mass", s.mass, {0, 100}, "Mass", v.optional);
  v.stress("stress", s.stress, {0, 1000}, "Stress", v.optional);
  v.angle("angle", s.angle, {5, 45}, "Angle", v.optional);
  v.object("leaf", s.leaf, "Leaf", v.optional);
  v.object("maybe_leaf", s.maybe_leaf, "Maybe a leaf", v.optional);
  v.list("leaves", s.leaves, 2, "Leaves", v.optional);
}

std::vector<std::string> lines(const Document& document, Sample& sample) {
  std::vector<Problem> problems;
  read_document(document, sample, problems);
  std::vector<std::string> out;
  for (const Problem& problem : problems) out.push_back(to_line(problem));
  return out;
}
std::vector<std::string> lines(const std::string& text) {
  Sample sample;
  return lines(parse_document("f.yaml", text), sample);
}
// The one problem of a document whose required key is given.
std::string fault(const std::string& rest) {
  const auto all = lines("length: 80 in\n" + rest);
  EXPECT_EQ(all.size(), 1u) << rest;
  return all.empty() ? "" : all[0];
}

TEST(Reader, FillsEveryKind) {
  Sample s;
  const auto all = lines(parse_document("f.yaml", R"(
title: 2041
file: a/b.yaml
files: [a, b]
on: true
ratio: 1e-1
count: 4
counts: [1, 2]
colour: green
length: 6 ft 8 in
maybe: 5 mm
lengths: [1 mm, 2 mm]
mass: 10 lb
stress: 36 ksi
angle: 30 deg
leaf: {bolt: M12}
maybe_leaf: {bolt: M10, size: 2 in}
leaves:
  - bolt: M8
)"),
                         s);
  ASSERT_TRUE(all.empty()) << all[0];
  EXPECT_EQ(s.title, "2041");
  EXPECT_EQ(s.files, (std::vector<std::string>{"a", "b"}));
  EXPECT_TRUE(s.on);
  EXPECT_DOUBLE_EQ(s.ratio, 0.1);
  EXPECT_EQ(s.count, 4);
  EXPECT_EQ(s.counts, (std::vector<int>{1, 2}));
  EXPECT_EQ(s.colour, Colour::green);
  EXPECT_DOUBLE_EQ(s.length, 2032);
  EXPECT_EQ(s.maybe, 5.0);
  EXPECT_EQ(s.lengths, (std::vector<Mm>{1, 2}));
  EXPECT_DOUBLE_EQ(s.mass, 4.5359237);
  EXPECT_DOUBLE_EQ(s.angle, std::numbers::pi / 6);
  EXPECT_EQ(s.leaf.bolt.text, "M12");
  EXPECT_EQ(s.leaf.bolt.mark.line, 16);
  EXPECT_EQ(s.leaf.bolt.mark.key, "leaf.bolt");
  EXPECT_DOUBLE_EQ(s.maybe_leaf->size, 50.8);
  EXPECT_DOUBLE_EQ(s.leaves.at(0).size, 7);
}

TEST(Reader, OptionalKeysKeepTheirInitialValue) {
  Sample s;
  EXPECT_TRUE(lines(parse_document("f.yaml", "length: 12 in\n"), s).empty());  // the limit itself is within
  EXPECT_EQ(s.title, "none");
  EXPECT_EQ(s.count, 3);
  EXPECT_FALSE(s.maybe_leaf);
}

TEST(Reader, SaysWhatEachFaultIsAndWhatWouldDo) {
  EXPECT_EQ(fault("titel: x\n"), "f.yaml:2:1: titel: is no known key; did you mean title?");
  EXPECT_EQ(fault("<<: {count: 1}\n"),
            "f.yaml:2:1: <<: is no known key; write the keys out; merging is not supported");
  EXPECT_EQ(fault("count: 99\n"), "f.yaml:2:8: count: is \"99\"; use a whole number from 1 to 10");
  EXPECT_EQ(fault("count: 2.5\n"), "f.yaml:2:8: count: is \"2.5\"; use a whole number from 1 to 10");
  EXPECT_EQ(fault("count: '2'\n"), "f.yaml:2:8: count: is \"2\"; write a whole number from 1 to 10");
  EXPECT_EQ(fault("ratio: .nan\n"), "f.yaml:2:8: ratio: is \".nan\"; write a number from 0 to 1");
  EXPECT_EQ(fault("ratio: 1.5\n"), "f.yaml:2:8: ratio: is \"1.5\"; use a number from 0 to 1");
  EXPECT_EQ(fault("on: yes\n"), "f.yaml:2:5: on: is \"yes\"; write true or false, without quotes");
  EXPECT_EQ(fault("colour: gren\n"),
            "f.yaml:2:9: colour: is \"gren\"; did you mean green? use one of red, green");
  EXPECT_EQ(fault("mass: 200 kg\n"),
            "f.yaml:2:7: mass: \"200 kg\" is out of range; use 0 kg (0 lb) to 100 kg (220.4623 lb)");
  EXPECT_EQ(fault("angle: 1 rad\n"), "f.yaml:2:8: angle: \"1 rad\" is out of range; use 5 deg to 45 deg");
  EXPECT_EQ(fault("maybe: 12\n"),
            "f.yaml:2:8: maybe: \"12\" has no unit; add a unit: write it as 80 in, 6 ft 8 in or 2032 mm");
  EXPECT_EQ(fault("lengths: 5 mm\n"),
            "f.yaml:2:10: lengths: is \"5 mm\" where a list is wanted; write it as a list, such as [first, "
            "second]");
  EXPECT_EQ(fault("lengths: [1 mm, 2 mm, 3 mm, 4 mm]\n"),
            "f.yaml:2:10: lengths: has 4 entries; give at most 3");
  EXPECT_EQ(
      fault("leaves: [{bolt: M8}, {bolt: M8, size: 900 mm}]\n"),
      "f.yaml:2:39: leaves[2].size: \"900 mm\" is out of range; use 1 mm (0.0394 in) to 300 mm (11.811 in)");
  EXPECT_EQ(
      fault("leaves: [x]\n"),
      "f.yaml:2:10: leaves[1]: is \"x\" where keys of its own are wanted; write its keys indented below it");
  EXPECT_EQ(fault("leaf: {}\n"), "f.yaml:2:1: leaf.bolt: is missing; add bolt: a name (Bolt)");
  EXPECT_EQ(
      fault("leaf:\n"),
      "f.yaml:2:1: leaf: has no value; give it keys of its own, indented below it, or leave the key out");
  EXPECT_EQ(fault("title: ''\n"), "f.yaml:2:8: title: is empty; write a line of text");
  EXPECT_EQ(fault("title: true\n"),
            "f.yaml:2:8: title: is true, which reads as true or false; put it in quotes");
  EXPECT_EQ(fault("title: |\n  a\n  b\n").substr(0, 45), "f.yaml:2:8: title: runs over more than one li");
  EXPECT_EQ(lines("count: 1\n").at(0),
            "f.yaml:1:1: length: is missing; add length: a length such as 80 in or 2000 mm (Length of it)");
}

TEST(Reader, ReportsAllFaultsAtOnce) {
  const auto all = lines("count: 0\nratio: x\nleaves: [{}, {bolt: M8, size: 1}]\nwhat: 1\n");
  EXPECT_EQ(all.size(), 6u);  // count, ratio, leaves[1].bolt, leaves[2].size, what, length missing
}

Document with_set(const std::string& text, const std::string& set) {
  Document document = parse_document("f.yaml", text);
  apply_set(document, set, 2);
  return document;
}
std::string set_fault(const std::string& set) {
  const Document document = with_set("length: 80 in\nleaves: [{bolt: M8}]\n", set);
  EXPECT_EQ(document.problems.size(), 1u) << set;
  EXPECT_EQ(document.root.children.size(), 2u) << "a faulty override must leave the tree as it was";
  return document.problems.empty() ? "" : to_line(document.problems[0]);
}

TEST(ApplySet, ReplacesCreatesAndAppends) {
  Sample s;
  Document document = parse_document("f.yaml", "length: 80 in\nleaves: [{bolt: M8}]\n");
  for (const char* set : {"length=84 in", "leaf.bolt=M12", "leaves[2]={bolt: M10}", "leaves[1].size=1/2 in",
                          "lengths=[1 mm, 2 mm]", "counts[1]=5", "maybe_leaf.bolt=\"1/2 in\""}) {
    apply_set(document, set);
  }
  const auto all = lines(document, s);
  ASSERT_TRUE(all.empty()) << all[0];
  EXPECT_DOUBLE_EQ(s.length, 84 * inch);
  EXPECT_EQ(s.leaf.bolt.text, "M12");
  EXPECT_EQ(s.leaf.bolt.mark.file, "--set");
  EXPECT_EQ(s.leaves.at(1).bolt.text, "M10");
  EXPECT_DOUBLE_EQ(s.leaves.at(0).size, 12.7);
  EXPECT_EQ(s.lengths, (std::vector<Mm>{1, 2}));
  EXPECT_EQ(s.counts, (std::vector<int>{5}));
  EXPECT_EQ(s.maybe_leaf->bolt.text, "1/2 in");
}

TEST(ApplySet, FaultsAreClear) {
  EXPECT_EQ(set_fault("length"), "--set:2:1: \"length\" has no =; write it as key=value");
  EXPECT_EQ(set_fault("=4"), "--set:2:1: has nothing before its =; write it as key=value");
  EXPECT_EQ(
      set_fault("a..b=4"),
      "--set:2:1: a..b: is no path to a key; write it as key.key or list[2].key, entries counted from 1");
  EXPECT_NE(set_fault("leaves[0]=4"), "");
  EXPECT_NE(set_fault("leaves[x]=4"), "");
  EXPECT_NE(set_fault("leaves[1=4"), "");
  EXPECT_NE(set_fault("leaves[99999999999999999999999]=4"), "");
  EXPECT_EQ(set_fault("leaves[3]=4"),
            "--set:2:1: leaves[3]: names entry 3 of leaves, which has 1; use an entry from 1 to 1, or 2 to "
            "add one");
  EXPECT_EQ(
      set_fault("new.length[2]=4"),
      "--set:2:1: new.length[2]: names entry 2 of new.length, which has 0; use entry 1 to add the first");
  EXPECT_EQ(set_fault("length.x=4"),
            "--set:2:1: length.x: leads through length, which is \"80 in\"; "
            "name a key that has keys of its own");
  EXPECT_EQ(set_fault("leaves.x=4"),
            "--set:2:1: leaves.x: leads through leaves, which is a list; name an entry, such as leaves[1]");
  EXPECT_EQ(set_fault("length[1]=4"),
            "--set:2:1: length[1]: numbers an entry of length, which is \"80 in\"; "
            "number the entries of a list only");
  EXPECT_EQ(set_fault("leaves=[{").substr(0, 38), "--set:2:8: cannot be read as YAML: end");
  EXPECT_EQ(set_fault("leaf={bolt: M8, bolt: M9}").substr(0, 50),
            "--set:2:17: leaf.bolt: is given a second time; kee");
  EXPECT_NE(set_fault("leaves=" + std::string(100000, '[')).find("nested more than"), std::string::npos);
}

TEST(ApplySet, FaultyValuesAreMarkedWithTheirColumn) {
  Sample s;
  const auto all = lines(with_set("length: 80 in\n", "leaf={bolt: M8, size: 7}"), s);
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].substr(0, 42), "--set:2:23: leaf.size: \"7\" has no unit; ad");
  const auto missing = lines(with_set("length: 80 in\n", "leaf.size=4 mm"), s);
  ASSERT_EQ(missing.size(), 1u);
  EXPECT_EQ(missing[0].substr(0, 32), "--set:2:1: leaf.bolt: is missing");
  const auto empty = lines(with_set("length: 80 in\n", "count="), s);
  ASSERT_EQ(empty.size(), 1u);
  EXPECT_EQ(empty[0].substr(0, 30), "--set:2:1: count: has no value");
}

}  // namespace
}  // namespace bedwright
