// What is marked on sheets that changed, and what is not.
#include "sheets/changed.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

#include "draw/table2d.h"
#include "sheets/flow.h"
#include "support/readable.h"

namespace bedwright {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

Box2 space(Mm height = 180) {
  Box2 box;
  box.add({20, 70});
  box.add({400, 70 + height});
  return box;
}

using Rows = std::vector<std::vector<std::string>>;

std::vector<Sheet> listed(const Rows& rows, Mm height = 180) {
  Sheet form;
  form.title = "LIST";
  form.file = "list";
  Flow flow(form, space(height));
  flow.table("PARTS", {{"PART", "SIZE"}, rows}, 3.5);
  return std::move(flow).sheets();
}

List2d plate(Mm width, const std::string& label) {
  List2d list;
  const Pens pens(list);
  list.add(Closed{pens.outline, rectangle({0, 0}, {width, 30})});
  list.add(Text{pens.text, {0, -6}, 3.5, label, Across::left, Up::baseline, 0});
  list.add(Text{pens.text, {0, -12}, 3.5, "24 off", Across::left, Up::baseline, 0});
  return list;
}

std::vector<Sheet> drawn(const std::vector<std::pair<std::string, List2d>>& plates) {
  Sheet form;
  form.title = "PLATES";
  form.file = "plates";
  Flow flow(form, space());
  for (const auto& [subject, list] : plates) flow.picture(list, subject);
  return std::move(flow).sheets();
}

// What the marks of a sheet stand at, from its upper left corner on.
struct Marked {
  std::vector<std::pair<Mm, Mm>> bars;  // from, to, upward
  int triangles = 0;                    // with the letter in them
  std::vector<std::string> framed;
};
Marked marks_of(const Sheet& sheet) {
  Marked found;
  const List2d& list = sheet.list;
  const auto on_layer = [&](int layer) {
    return list.layers.at(static_cast<std::size_t>(layer)).name == "CHANGED";
  };
  for (const Entity& e : list.entities) {
    if (const Line* l = std::get_if<Line>(&e); l && on_layer(l->layer))
      found.bars.emplace_back(std::min(l->from.y, l->to.y), std::max(l->from.y, l->to.y));
    if (const Text* t = std::get_if<Text>(&e); t && on_layer(t->layer)) found.triangles += t->text == "B";
    const Closed* c = std::get_if<Closed>(&e);
    if (!c || !on_layer(c->layer) || c->outline.size() != 4) continue;
    const Box2 frame = bounds(e);
    for (const Entity& other : list.entities)
      if (const Text* t = std::get_if<Text>(&other); t && frame.overlaps(text_box(*t)))
        found.framed.push_back(t->text);
  }
  return found;
}

std::vector<FateOfSheet> mark(std::vector<Sheet>& now, std::vector<Sheet> before) {
  return mark_changes(now, {"A", std::string(64, '1'), true, std::move(before), {"tab pad: thicker"}}, "B");
}

TEST(Changed, SheetsThatSayTheSameBearNoMark) {
  std::vector<Sheet> now = listed({{"main", "240"}, {"pad", "3/8"}});
  const auto fates = mark(now, listed({{"main", "240"}, {"pad", "3/8"}}));
  ASSERT_EQ(fates.size(), 1u);
  EXPECT_EQ(fates[0].fate, SheetFate::as_before);
  const Marked marked = marks_of(now[0]);
  EXPECT_TRUE(marked.bars.empty() && marked.framed.empty() && marked.triangles == 0);
  EXPECT_EQ(now[0].note, "As at A: nothing on this sheet changed at B.");
}

TEST(Changed, ARowThatReadsOtherwiseIsMarkedAndNoOther) {
  std::vector<Sheet> now = listed({{"main", "240"}, {"pad", "1/2"}, {"gusset", "1/4"}});
  const std::vector<Passage> rows = now[0].list.passages;
  const auto fates = mark(now, listed({{"main", "240"}, {"pad", "3/8"}, {"gusset", "1/4"}}));
  EXPECT_EQ(fates[0].fate, SheetFate::changed);
  const Marked marked = marks_of(now[0]);
  ASSERT_EQ(marked.bars.size(), 1u);
  EXPECT_NEAR(marked.bars[0].first, rows.at(1).box.low.y, 1e-9);
  EXPECT_NEAR(marked.bars[0].second, rows.at(1).box.high.y, 1e-9);
  EXPECT_EQ(marked.triangles, 1);
  EXPECT_THAT(now[0].note, HasSubstr("tab pad: thicker"));
}

TEST(Changed, RowsPutInMarkThemselvesAlone) {
  std::vector<Sheet> now =
      listed({{"main", "240"}, {"clip", "2"}, {"clip", "3"}, {"pad", "3/8"}, {"pad", "3/8"}});
  const std::vector<Passage> rows = now[0].list.passages;
  mark(now, listed({{"main", "240"}, {"pad", "3/8"}}));
  const Marked marked = marks_of(now[0]);
  // The two clips under one bar; of two pads alike the second is new.
  ASSERT_EQ(marked.bars.size(), 2u);
  EXPECT_NEAR(marked.bars[0].first, rows.at(2).box.low.y, 1e-9);
  EXPECT_NEAR(marked.bars[0].second, rows.at(1).box.high.y, 1e-9);
  EXPECT_NEAR(marked.bars[1].first, rows.at(4).box.low.y, 1e-9);
}

// Who prints the first page anew and keeps the second must not lose the row between them.
TEST(Changed, ARowThatMovedToAnotherPageChangesBothPages) {
  Rows rows;
  for (int i = 0; i < 14; ++i) rows.push_back({"part " + std::to_string(i), "1"});
  const std::vector<Sheet> before = listed(rows, 90);
  rows.insert(rows.begin(), {"fresh", "1"});
  std::vector<Sheet> now = listed(rows, 90);
  ASSERT_EQ(before.size(), 1u);
  ASSERT_EQ(now.size(), 1u);  // beside each other
  rows.clear();
  for (int i = 0; i < 120; ++i) rows.push_back({"a part with a long name " + std::to_string(i), "1"});
  const std::vector<Sheet> two = listed(rows, 90);
  ASSERT_GE(two.size(), 2u);
  rows.insert(rows.begin(), {"fresh", "1"});
  now = listed(rows, 90);
  const auto fates = mark(now, two);
  ASSERT_EQ(now.size(), two.size());
  for (const FateOfSheet& fate : fates) EXPECT_EQ(fate.fate, SheetFate::changed) << fate.file;
  EXPECT_EQ(marks_of(now[0]).bars.size(), 1u);
  EXPECT_TRUE(marks_of(now[1]).bars.empty());
  EXPECT_THAT(now[1].note, HasSubstr("Print it again"));
}

TEST(Changed, APictureIsHeldToItsOwnEarlierWords) {
  // "3" stood on the other plate before; on this one it is new.
  std::vector<Sheet> now = drawn({{"tab pad", plate(20, "3")}, {"gusset", plate(40, "3")}});
  const auto fates = mark(now, drawn({{"tab pad", plate(20, "2")}, {"gusset", plate(40, "3")}}));
  EXPECT_EQ(fates[0].fate, SheetFate::changed);
  const Marked marked = marks_of(now[0]);
  EXPECT_THAT(marked.framed, ElementsAre("3"));
  EXPECT_EQ(marked.bars.size(), 1u);
}

TEST(Changed, AnOutlineOfAnotherSizeIsMarkedThoughItsWordsStay) {
  std::vector<Sheet> now = drawn({{"tab pad", plate(21, "pad")}, {"gusset", plate(40, "3")}});
  mark(now, drawn({{"tab pad", plate(20, "pad")}, {"gusset", plate(40, "3")}}));
  const Marked marked = marks_of(now[0]);
  EXPECT_EQ(marked.bars.size(), 1u);
  EXPECT_THAT(marked.framed, IsEmpty());
}

TEST(Changed, NewSheetsAndThoseThatAreGoneAreTold) {
  std::vector<Sheet> now = listed({{"main", "240"}});
  const auto fates = mark(now, drawn({{"tab pad", plate(20, "3")}}));
  ASSERT_EQ(fates.size(), 2u);
  EXPECT_EQ(fates[0].fate, SheetFate::fresh);
  EXPECT_EQ(fates[1].fate, SheetFate::gone);
  EXPECT_EQ(fates[1].file, "plates");
}

TEST(Changed, WhatCannotBeReadIsSaidOnEverySheet) {
  std::vector<Sheet> now = listed({{"main", "240"}});
  const auto fates = mark_changes(now, {"A", std::string(64, '1'), false, {}, {}}, "B");
  EXPECT_EQ(fates[0].fate, SheetFate::changed);
  EXPECT_THAT(now[0].note, HasSubstr("What changed since A is not marked"));
}

// A whole set of each demo order with many things changed at once: every mark keeps off
// letters and stays within the frame.
TEST(Changed, MarkedSheetsCanBeRead) {
  const std::vector<std::pair<std::string, std::vector<std::string>>> revised = {
      {"base", {"track.rail_length=84 in", "track.bunk_pitch=21 in"}},
      {"one_extension", {"axle.position=120 in"}},
      {"metric", {"frame.main.spacing=1100 mm"}},
      {"lot_frame", {"track.log_stops=[4, 7]"}}};
  for (const auto& [name, sets] : revised) {
    const Job old = testing::demo_job(name);
    Job job = testing::demo_job(name, sets);
    job.order.revisions = {{"A", "2026-10-05", "E.W.", "First issue"}, {"B", "2026-10-09", "E.W.", "Longer"}};
    job.order.order.revision = "B";
    const Bed old_bed = testing::bed_of(old), bed = testing::bed_of(job);
    const auto was = examine(old, old_bed), is = examine(job, bed);
    SheetInput input = testing::input_of(*is, false);
    const Before before{
        "A", std::string(64, '1'), true, sheet_contents(testing::input_of(*was, false)),
        std::vector<std::string>(40, "tab plate: hole 3 moves from 18-1/16 in to 19-3/32 in")};
    input.before = &before;
    const SheetSet set = issued_sheets(input);
    std::size_t marked = 0;
    for (const Sheet& sheet : set.sheets) marked += !marks_of(sheet).bars.empty();
    EXPECT_GE(marked, 2u) << name;
    testing::expect_readable(paper_of(job.order.order), set.sheets, name + " revised");
  }
}

}  // namespace
}  // namespace bedwright
