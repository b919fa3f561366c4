#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "catalog/catalog.h"

namespace bedwright {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Pointwise;
using testing::UnorderedElementsAre;

const std::string channel_text = R"(source: a handbook
sections:
  - name: C6x8.2
    shape: channel
    depth: 6 in
    flange: 1.92 in
    web: 0.2 in
    flange_thickness: 0.343 in
    root_radius: 0.3 in
    toe_radius: 0.12 in
    published:
      source: a table
      weight_per_foot: 8.2 lb
      area_in2: 2.39
      ix_in4: 13.1
      iy_in4: 0.687
      x_bar: 0.512 in
)";

const std::string bolt_text = R"(source: a standard
bolts:
  - name: 1/2 in
    source: a table
    diameter: 1/2 in
    threads_per_inch: 13
    head_flats: 3/4 in
    head_height: 5/16 in
    nut_flats: 3/4 in
    nut_height: 7/16 in
    flat: {inside: 0.531 in, outside: 1.062 in, thickness: 0.095 in}
    lock: {inside: 0.502 in, outside: 0.869 in, thickness: 0.125 in}
    wrench: 3/4 in
    standard_hole: 9/16 in
    oversize_hole: 5/8 in
    edge_minimum: 3/4 in
    thread_length: 1-1/4 in
    length_plus: 0 in
    length_minus: 0.06 in
    lengths: [1 in, 1-1/4 in, 1-1/2 in]
    lengths_source: a supplier
)";

std::string with(std::string text, const std::string& was, const std::string& is) {
  const std::size_t at = text.find(was);
  if (at == std::string::npos) throw std::logic_error("not in the text: " + was);
  return text.replace(at, was.size(), is);
}

struct Outcome {
  Catalog catalog;
  std::vector<std::string> lines;
};

Outcome read(const std::string& text) {
  Outcome outcome;
  std::vector<Problem> problems;
  read_catalog("c.yaml", text, outcome.catalog, problems);
  for (const Problem& problem : problems) outcome.lines.push_back(to_line(problem));
  return outcome;
}

TEST(ReadCatalogTest, ReadsAChannel) {
  const Outcome outcome = read(channel_text);
  ASSERT_THAT(outcome.lines, ElementsAre());
  const Section* s = outcome.catalog.section("C6x8.2");
  ASSERT_NE(s, nullptr);
  EXPECT_EQ(s->shape, Shape::channel);
  EXPECT_NEAR(s->depth, 152.4, 1e-9);
  EXPECT_NEAR(s->toe_radius, 0.12 * inch, 1e-9);
  ASSERT_TRUE(s->published);
  EXPECT_NEAR(s->published->area, 2.39 * 645.16, 1e-9);
  EXPECT_NEAR(s->published->ix, 13.1 * 416231.4256, 1e-3);
  EXPECT_NEAR(s->published->kg_per_m, 8.2 * 1.4881639, 1e-5);  // 1 lb/ft is 1.4881639 kg/m
  EXPECT_EQ(s->published->source, "a table");
}

TEST(ReadCatalogTest, ReadsABolt) {
  const Outcome outcome = read(bolt_text);
  ASSERT_THAT(outcome.lines, ElementsAre());
  const BoltSize* b = outcome.catalog.bolt("1/2 in");
  ASSERT_NE(b, nullptr);
  EXPECT_NEAR(b->diameter, 12.7, 1e-12);
  EXPECT_NEAR(b->pitch, 25.4 / 13, 1e-12);
  EXPECT_NEAR(b->flat.outside, 1.062 * inch, 1e-9);
  EXPECT_NEAR(b->lock.thickness, 0.125 * inch, 1e-9);
  EXPECT_THAT(b->lengths, Pointwise(testing::DoubleEq(), {25.4, 31.75, 38.1}));
}

TEST(ReadCatalogTest, LookupsAreExact) {
  Outcome outcome = read(channel_text);
  EXPECT_EQ(outcome.catalog.section("C6x8"), nullptr);
  EXPECT_EQ(outcome.catalog.section("c6x8.2"), nullptr);
  EXPECT_EQ(outcome.catalog.section("C6x8.2 "), nullptr);
  EXPECT_EQ(outcome.catalog.section(""), nullptr);
  EXPECT_EQ(outcome.catalog.bolt("C6x8.2"), nullptr);
}

TEST(ReadCatalogTest, AddsToWhatIsThere) {
  Catalog catalog;
  std::vector<Problem> problems;
  read_catalog("a.yaml", channel_text, catalog, problems);
  read_catalog("b.yaml", bolt_text, catalog, problems);
  EXPECT_TRUE(problems.empty());
  EXPECT_EQ(catalog.sections.size(), 1u);
  EXPECT_EQ(catalog.bolts.size(), 1u);
}

TEST(ReadCatalogTest, NameInAnotherFileAlreadyIsAProblem) {
  Catalog catalog;
  std::vector<Problem> problems;
  read_catalog("a.yaml", channel_text, catalog, problems);
  read_catalog("b.yaml", channel_text, catalog, problems);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_THAT(to_line(problems[0]), AllOf(HasSubstr("b.yaml:3:"), HasSubstr("sections[1].name"),
                                          HasSubstr("C6x8.2 is in the catalogue already")));
  EXPECT_EQ(catalog.sections.size(), 1u);
}

TEST(ReadCatalogTest, RepeatedNameInOneFileIsAProblem) {
  const std::string entry = bolt_text.substr(bolt_text.find("  - name"));
  const Outcome outcome = read(bolt_text + entry);
  EXPECT_THAT(outcome.lines, ElementsAre(AllOf(HasSubstr("bolts[2].name"),
                                               HasSubstr("1/2 in is in the catalogue already"))));
  EXPECT_EQ(outcome.catalog.bolts.size(), 1u);
}

TEST(ReadCatalogTest, UnknownShape) {
  const Outcome outcome = read(with(channel_text, "shape: channel", "shape: tee"));
  EXPECT_THAT(outcome.lines,
              ElementsAre(AllOf(HasSubstr("c.yaml:4:"), HasSubstr("sections[1].shape"), HasSubstr("tee"))));
  EXPECT_TRUE(outcome.catalog.sections.empty());
}

TEST(ReadCatalogTest, NegativeDimension) {
  const Outcome outcome = read(with(channel_text, "web: 0.2 in", "web: -0.2 in"));
  EXPECT_THAT(outcome.lines, ElementsAre(AllOf(HasSubstr("c.yaml:7:"), HasSubstr("sections[1].web"))));
  EXPECT_TRUE(outcome.catalog.sections.empty());
}

TEST(ReadCatalogTest, EveryFaultOfAnEntryIsReported) {
  const Outcome outcome =
      read(with(with(channel_text, "depth: 6 in", "depth: 6"), "web: 0.2 in", "webb: 0.2 in"));
  EXPECT_THAT(outcome.lines, UnorderedElementsAre(HasSubstr("sections[1].depth: \"6\" has no unit"),
                                                  HasSubstr("sections[1].web: is written \"webb\"")));
}

TEST(ReadCatalogTest, OneBadEntryDoesNotHideTheNext) {
  const std::string text = with(bolt_text, "wrench: 3/4 in", "wrench: 3/4") +
                           with(bolt_text.substr(bolt_text.find("  - name")), "name: 1/2 in", "name: again");
  const Outcome outcome = read(text);
  EXPECT_THAT(outcome.lines, ElementsAre(HasSubstr("bolts[1].wrench")));
  EXPECT_NE(outcome.catalog.bolt("again"), nullptr);
}

TEST(ReadCatalogTest, ImpossibleProfile) {
  const Outcome outcome = read(with(channel_text, "root_radius: 0.3 in", "root_radius: 3 in"));
  EXPECT_THAT(outcome.lines,
              ElementsAre(AllOf(HasSubstr("c.yaml:3:"), HasSubstr("sections[1]"), HasSubstr("C6x8.2"),
                                HasSubstr("root radius of 76.20 mm does not fit"))));
  EXPECT_TRUE(outcome.catalog.sections.empty());
}

TEST(ReadCatalogTest, ChannelWithoutFlangeThickness) {
  const Outcome outcome = read(with(channel_text, "    flange_thickness: 0.343 in\n", ""));
  EXPECT_THAT(outcome.lines, ElementsAre(HasSubstr("flange thickness must be over 0")));
}

TEST(ReadCatalogTest, AngleWithFlangeThickness) {
  const Outcome outcome = read(with(channel_text, "shape: channel", "shape: angle"));
  EXPECT_THAT(outcome.lines,
              ElementsAre(AllOf(HasSubstr("sections[1].flange_thickness"), HasSubstr("one thickness"))));
}

TEST(ReadCatalogTest, PublishedAreaTwoPercentOffIsAProblem) {
  // The profile's own area is 2.402 in2.
  EXPECT_THAT(read(with(channel_text, "area_in2: 2.39", "area_in2: 2.36")).lines, ElementsAre());
  const Outcome outcome = read(with(channel_text, "area_in2: 2.39", "area_in2: 2.35"));
  EXPECT_THAT(outcome.lines,
              ElementsAre(AllOf(HasSubstr("c.yaml:14:"), HasSubstr("2.402 in2"), HasSubstr("+2.2 %"))));
  EXPECT_TRUE(outcome.catalog.sections.empty());
}

TEST(ReadCatalogTest, SectionNeedsNoPublishedFigures) {
  const Outcome outcome = read(channel_text.substr(0, channel_text.find("    published:")));
  ASSERT_THAT(outcome.lines, ElementsAre());
  EXPECT_FALSE(outcome.catalog.section("C6x8.2")->published);
}

TEST(ReadCatalogTest, ThreadStatedOnce) {
  const char* once = "needs its thread stated once";
  EXPECT_THAT(read(with(bolt_text, "    threads_per_inch: 13\n", "")).lines, ElementsAre(HasSubstr(once)));
  EXPECT_THAT(
      read(with(bolt_text, "threads_per_inch: 13\n", "threads_per_inch: 13\n    pitch: 2 mm\n")).lines,
      ElementsAre(HasSubstr(once)));
  const Outcome metric = read(with(bolt_text, "threads_per_inch: 13", "pitch: 1.75 mm"));
  ASSERT_THAT(metric.lines, ElementsAre());
  EXPECT_EQ(metric.catalog.bolt("1/2 in")->pitch, 1.75);
}

TEST(ReadCatalogTest, BoltFiguresThatCannotStandTogether) {
  struct Case {
    const char *was, *is, *key, *says;
  };
  for (const Case& c : {
           Case{"standard_hole: 9/16 in", "standard_hole: 1/2 in", "bolts[1].standard_hole", "no clearance"},
           Case{"oversize_hole: 5/8 in", "oversize_hole: 17/32 in", "bolts[1].oversize_hole",
                "under the standard"},
           Case{"inside: 0.531 in", "inside: 0.47 in", "bolts[1].flat.inside", "does not go over"},
           Case{"outside: 0.869 in", "outside: 0.5 in", "bolts[1].lock.outside", "no larger than its hole"},
           Case{"wrench: 3/4 in", "wrench: 11/16 in", "bolts[1].wrench", "does not go on flats"},
           Case{"[1 in, 1-1/4 in, 1-1/2 in]", "[1 in, 1-1/2 in, 1-1/4 in]", "bolts[1].lengths",
                "38.10 mm stands before"},
           Case{"[1 in, 1-1/4 in, 1-1/2 in]", "[1 in, 1 in]", "bolts[1].lengths", "shortest first"},
       }) {
    const Outcome outcome = read(with(bolt_text, c.was, c.is));
    EXPECT_THAT(outcome.lines, ElementsAre(AllOf(HasSubstr(c.key), HasSubstr(c.says)))) << c.is;
    EXPECT_TRUE(outcome.catalog.bolts.empty()) << c.is;
  }
}

// A nut, washer or hole of another size, or half its standard's height. The standards' own
// rows, every size the shop's catalogues hold, are in tests/published/fasteners_test.cpp.
TEST(ReadCatalogTest, SizesOutOfTheirStandard) {
  struct Case {
    const char *was, *is, *key;
  };
  for (const Case& c : {
           Case{"nut_height: 7/16 in", "nut_height: 5/16 in", "nut_height"},  // a jam nut, ASME B18.2.2
           Case{"nut_height: 7/16 in", "nut_height: 7/8 in", "nut_height"},
           Case{"nut_flats: 3/4 in", "nut_flats: 9/16 in", "nut_flats"},
           Case{"head_height: 5/16 in", "head_height: 1/2 in", "head_height"},
           Case{"threads_per_inch: 13", "threads_per_inch: 5", "threads_per_inch"},
           Case{"outside: 1.062 in", "outside: 0.812 in", "flat.outside"},  // a 3/8 in washer's
           Case{"outside: 1.062 in", "outside: 3 in", "flat.outside"},
           Case{"inside: 0.531 in", "inside: 0.812 in", "flat.inside"},
           Case{"thickness: 0.095 in", "thickness: 0.02 in", "flat.thickness"},
           Case{"outside: 0.869 in", "outside: 1.265 in", "lock.outside"},  // a 3/4 in one's
           Case{"wrench: 3/4 in", "wrench: 1-1/8 in", "wrench"},
           Case{"edge_minimum: 3/4 in", "edge_minimum: 3/8 in", "edge_minimum"},
           Case{"thread_length: 1-1/4 in", "thread_length: 1/2 in", "thread_length"},
           Case{"name: 1/2 in", "name: 9/16 in", "diameter"},
       }) {
    const Outcome outcome = read(with(bolt_text, c.was, c.is));
    EXPECT_THAT(outcome.lines, ElementsAre(HasSubstr(std::string("bolts[1].") + c.key))) << c.is;
    EXPECT_TRUE(outcome.catalog.bolts.empty()) << c.is;
  }
  // ASME B18.21.1 type A, series W: the wide washer is of the standard too.
  EXPECT_THAT(read(with(bolt_text, "outside: 1.062 in", "outside: 1.375 in")).lines, ElementsAre());
}

TEST(ReadCatalogTest, NoStockLengths) {
  const Outcome outcome = read(with(bolt_text, "[1 in, 1-1/4 in, 1-1/2 in]", "[]"));
  EXPECT_THAT(outcome.lines, ElementsAre(HasSubstr("bolts[1].lengths")));
  EXPECT_TRUE(outcome.catalog.bolts.empty());
}

TEST(ReadCatalogTest, SourceIsRequired) {
  EXPECT_THAT(read(with(channel_text, "source: a handbook\n", "")).lines, ElementsAre(HasSubstr("source")));
}

TEST(ReadCatalogTest, FileWithNeitherListIsAProblem) {
  EXPECT_THAT(read("source: nothing much\n").lines, ElementsAre(HasSubstr("neither sections nor bolts")));
}

TEST(ReadCatalogTest, NotYamlAtAll) {
  const Outcome outcome = read("sections: [\n");
  EXPECT_EQ(outcome.lines.size(), 1u);
  EXPECT_TRUE(outcome.catalog.sections.empty());
}

}  // namespace
}  // namespace bedwright
