// The drawing set as printed: nothing over anything, and figures that build the frame.
#include "sheets/sheets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <random>

#include "bed/names.h"
#include "draw/overlap.h"
#include "sheets/frame/weld_marks.h"
#include "sheets/marks.h"
#include "sheets/tabs/tab_rows.h"
#include "support/demo.h"
#include "support/readable.h"

namespace bedwright {
namespace {

TEST(Sheets, nothing_lies_on_anything_in_the_demo_orders) {
  for (const std::string& name : testing::good_orders)
    for (const char* size : {"by_units", "B", "D", "A3", "A1"}) {
      const Job job = testing::demo_job(name, {std::string("order.sheet=") + size});
      const Bed bed = testing::bed_of(job);
      for (const bool draft : {false, true})
        testing::expect_set_readable(testing::input_of(*examine(job, bed), draft), name + " on " + size);
    }
}

// BEDWRIGHT_RANDOM_ORDERS asks for more than the 200, or fewer.
TEST(Sheets, nothing_lies_on_anything_in_random_orders) {
  const char* asked = std::getenv("BEDWRIGHT_RANDOM_ORDERS");
  const int count = asked ? std::max(1, std::atoi(asked)) : 200;
  std::mt19937 random(20261005);
  for (int i = 0; i < count; ++i) {
    const Job job = testing::quoted_job(random);
    const Bed bed = testing::bed_of(job);
    testing::expect_set_readable(testing::input_of(*examine(job, bed), i % 2 == 0),
                                 "random order " + std::to_string(i));
  }
}

TEST(Overlap, sees_text_on_text_on_a_line_and_beyond_the_frame) {
  List2d list;
  const Pens pens(list);
  Box2 frame;
  frame.add({0, 0});
  frame.add({100, 50});
  const Text word{pens.text, {10, 10}, 3, "WORD", Across::left, Up::baseline, 0};
  list.add(word);
  EXPECT_TRUE(overlaps(list, frame).empty());
  Text beside = word;
  beside.at.x += 4 * 3 * 0.8;
  list.add(beside);
  EXPECT_TRUE(overlaps(list, frame).empty());  // touching is no overlap
  Text on = word;
  on.at.y += 2;
  list.add(on);
  EXPECT_EQ(overlaps(list, frame).size(), 1U);
  list.entities.pop_back();
  list.add(Circle{pens.outline, {8, 11}, 4});
  EXPECT_EQ(overlaps(list, frame).size(), 1U);
  list.entities.pop_back();
  Text out = word;
  out.at.x = 98;
  list.add(out);
  EXPECT_EQ(overlaps(list, frame).size(), 1U);
}

// AWS A2.4: the size stands left of the symbol, the length right of it; the arrow
// side is below the reference line; a fillet's upright leg is at the left. (The
// order of elements is from memory.)
TEST(WeldSymbol, has_its_elements_in_order) {
  for (const bool both : {false, true}) {
    List2d list;
    weld_symbol(list, {"1/4", "3", "tail", both}, {0, 0}, {10, 20}, 2.5);
    const Pens pens(list);
    std::vector<Text> size, length;
    std::vector<Line> upright;
    Mm tail = 0;
    for (const Entity& e : list.entities) {
      if (const Text* t = std::get_if<Text>(&e)) {
        if (t->text == "1/4") size.push_back(*t);
        if (t->text == "3") length.push_back(*t);
        if (t->text == "tail") tail = t->at.x;
      }
      const Line* l = std::get_if<Line>(&e);
      if (l && l->from.x == l->to.x) upright.push_back(*l);
    }
    const std::size_t sides = both ? 2 : 1;
    ASSERT_EQ(size.size(), sides);
    ASSERT_EQ(length.size(), sides);
    ASSERT_EQ(upright.size(), sides);
    for (std::size_t i = 0; i < sides; ++i) {
      EXPECT_LE(text_box(size[i]).high.x, upright[i].from.x);
      EXPECT_GE(text_box(length[i]).low.x, upright[i].from.x + 2.5);
    }
    EXPECT_LT(text_box(size[0]).high.y, 20);
    EXPECT_LT(std::min(upright[0].from.y, upright[0].to.y), 20);
    if (both) {
      EXPECT_GT(text_box(size[1]).low.y, 20);
    }
    EXPECT_GT(tail, text_box(length[0]).high.x);
  }
}

// The length is one run's, and the tail's words say where there are two of them; only
// those on both sides of a web stand on both sides of the line.
TEST(WeldMark, length_and_sides_agree_with_its_words) {
  const Heading heading = testing::demo_job("base").order.order;
  for (int i = 1; i < weld_line_count; ++i) {
    Weld weld;
    weld.leg = inch / 4;
    weld.length = 6 * inch;
    weld.line = static_cast<WeldLine>(i);
    const WeldMark m = weld_mark(weld, 1, heading.figures());
    EXPECT_EQ(m.tail, words_of(weld.line));
    EXPECT_EQ(m.length, m.tail.starts_with("both ") ? "3" : "6") << m.tail;
    EXPECT_EQ(m.both_sides, m.tail.starts_with("both sides")) << m.tail;
  }
}

std::vector<std::string> texts(const Sheet& sheet) {
  std::vector<std::string> all;
  for (const Entity& e : sheet.list.entities)
    if (const Text* t = std::get_if<Text>(&e)) all.push_back(t->text);
  return all;
}

TEST(Surround, says_what_the_order_says) {
  Job job = testing::demo_job("base");
  job.order.revisions = {{"A", "2026-10-05", "E.W.", "First issue"},
                         {"B", "2026-10-09", "E.W.", "Tabs moved to suit the longer rail"}};
  job.order.order.customer = std::string(120, 'W');
  const Bed bed = testing::bed_of(job);
  const std::vector<Sheet> sheets = sheet_set(testing::input_of(*examine(job, bed), true));
  testing::expect_set_readable(testing::input_of(*examine(job, bed), true), "long names");
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const std::vector<std::string> all = texts(sheets[i]);
    const auto has = [&](const std::string& s) { return std::find(all.begin(), all.end(), s) != all.end(); };
    EXPECT_TRUE(has("QB-1041") && has("2026-10-05") && has("THIRD ANGLE") && has("DRAWN BY") &&
                has("CHECKED BY"));
    EXPECT_TRUE(has(std::to_string(i + 1) + " of " + std::to_string(sheets.size())));
    EXPECT_TRUE(has("NOT FOR FABRICATION"));
    EXPECT_TRUE(has("E.W.") && has("2026-10-09"));
  }
  for (const Sheet& sheet : sheet_set(testing::input_of(*examine(job, bed), false))) {
    for (const std::string& s : texts(sheet)) EXPECT_NE(s, "NOT FOR FABRICATION");
  }
  const Job metric = testing::demo_job("metric");
  const std::vector<std::string> first =
      texts(sheet_set(testing::input_of(*examine(metric).bed, false)).front());
  EXPECT_NE(std::find(first.begin(), first.end(), "FIRST ANGLE"), first.end());
}

TEST(TabRows, sides_part_where_a_tab_was_found_out_of_place) {
  Job job = testing::demo_job("base");
  const std::size_t before = tab_rows(testing::bed_of(job)).size();
  TabFound found;
  found.tab.text = "R3";
  found.x = 2;
  job.order.tabs_found = {found};
  const std::vector<TabRow> rows = tab_rows(testing::bed_of(job));
  EXPECT_EQ(rows.size(), before + 1);
  EXPECT_TRUE(rows[1].on_both());
  EXPECT_TRUE(rows[2].on(Side::left) && !rows[2].on(Side::right));
  EXPECT_TRUE(rows[3].on(Side::right) && !rows[3].on(Side::left));
  EXPECT_EQ(rows[2].number, 3);
  EXPECT_EQ(rows[3].number, 3);
  EXPECT_NEAR(rows[3].hole - rows[2].hole, 2, 1e-9);
}

// Two tabs across from each other, found out of place by the same: one row, and it says so.
TEST(TabSheet, says_found_of_one_side_and_of_both) {
  Job job = testing::demo_job("base");
  const auto marked = [&] {
    std::vector<std::string> all;
    for (const std::string& s : testing::texts_of(tab_layout_sheets({*examine(job).bed})))
      if (s.ends_with(" FOUND")) all.push_back(s);
    return all;
  };
  EXPECT_EQ(marked(), std::vector<std::string>{});
  TabFound found;
  found.tab.text = "R3";
  found.x = 2;
  job.order.tabs_found = {found};
  EXPECT_EQ(marked(), std::vector<std::string>{"R FOUND"});
  found.tab.text = "L3";
  job.order.tabs_found.push_back(found);
  EXPECT_EQ(marked(), std::vector<std::string>{"L + R FOUND"});
}

// Pinned at the front, the last hole: it is held from its own section's rear end, so
// every section's length counts, and the joints between them.
TEST(TabRows, errors_add_up_away_from_the_datum) {
  Job job = testing::demo_job("base");
  job.order.track.datum = Datum::front;
  const Bed bed = testing::bed_of(job);
  const std::vector<TabRow> rows = tab_rows(bed);
  const Order& o = job.order;
  const Mm own = o.order.tape / 2 + o.tolerances.weld_placement + o.tolerances.cut_position +
                 job.kit.rail.hole_tolerance;
  EXPECT_NEAR(rows.back().worst - own,
              bed.track.sections * job.kit.rail.length_tolerance +
                  (bed.track.sections - 1) * job.kit.rail.joint_gap_plus,
              1e-9);
  EXPECT_LT(rows.back().rss, rows.back().worst);
}

}  // namespace
}  // namespace bedwright
