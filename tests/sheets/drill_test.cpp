#include "sheets/drill/drill.h"

#include <gtest/gtest.h>

#include <map>

#include "bed/names.h"
#include "sheets/drill/drill_rows.h"
#include "sheets/drill/drill_strip.h"
#include "support/demo.h"
#include "support/sample_part.h"

namespace bedwright {
namespace {

std::string layer_of(const List2d& list, const Entity& e) {
  const int layer = std::visit([](const auto& x) { return x.layer; }, e);
  return list.layers.at(static_cast<std::size_t>(layer)).name;
}

// Boxes of texts shrunk by a thousandth of their height, so that touching is no overlap.
struct Shown {
  std::vector<std::pair<std::string, Box2>> texts;
  std::vector<Box2> holes;
  std::vector<std::pair<std::string, Line>> lines;
  Box2 frame;
};

Shown shown(const List2d& page) {
  Shown out;
  for (const Entity& e : page.entities) {
    const std::string layer = layer_of(page, e);
    if (const Text* t = std::get_if<Text>(&e))
      out.texts.emplace_back(t->text, text_box(*t).grown(-t->height / 1000));
    if (layer == "HOLES") out.holes.push_back(bounds(e));
    if (const Line* l = std::get_if<Line>(&e)) out.lines.emplace_back(layer, *l);
    if (layer == "FRAME") out.frame = bounds(e);
  }
  return out;
}

void expect_readable(const DrillDrawing& drawing, const std::string& what) {
  for (const List2d& page : drawing.pages) {
    const Shown s = shown(page);
    ASSERT_FALSE(s.frame.empty());
    for (std::size_t i = 0; i < s.texts.size(); ++i) {
      const auto& [text, box] = s.texts[i];
      EXPECT_TRUE(box.low.x > s.frame.low.x && box.high.x < s.frame.high.x && box.low.y > s.frame.low.y &&
                  box.high.y < s.frame.high.y)
          << what << ": '" << text << "' leaves the frame";
      for (std::size_t j = 0; j < i; ++j) {
        EXPECT_FALSE(box.overlaps(s.texts[j].second))
            << what << ": '" << text << "' on '" << s.texts[j].first << "'";
      }
      for (const Box2& hole : s.holes)
        EXPECT_FALSE(box.overlaps(hole)) << what << ": '" << text << "' on a hole";
      for (const auto& [layer, line] : s.lines) {
        EXPECT_FALSE(meets(line.from, line.to, box)) << what << ": '" << text << "' on a line of " << layer;
      }
    }
    // Plotted so that the frame fills the sheet less its margins.
    const double to_paper = (drill_paper_width - 2 * drill_paper_margin) / s.frame.width();
    EXPECT_NEAR(s.frame.height() * to_paper, drill_paper_height - 2 * drill_paper_margin, 1e-6);
    for (const Entity& e : page.entities) {
      if (const Text* t = std::get_if<Text>(&e)) {
        EXPECT_GE(t->height * to_paper, 2.5) << t->text;
      }
    }
  }
}

Bed bed_of(Part part) {
  Bed bed;
  bed.parts.push_back(std::move(part));
  Item item;
  item.id = bed.parts[0].id;
  bed.items.push_back(item);
  return bed;
}

TEST(Drill, no_text_lies_on_text_holes_or_lines_of_the_sample) {
  const Bed bed = sample::bed();
  for (int i = 4; i <= 6; ++i) {
    for (const Printing units : {Printing::inches, Printing::metric}) {
      const DrillDrawing drawing = drill_drawing(bed, i, sample::heading(units));
      expect_readable(drawing, name(bed.parts[i]));
      EXPECT_TRUE(drawing.unlabelled.empty());
    }
  }
}

TEST(Drill, no_text_lies_on_text_holes_or_lines_of_the_demo_orders) {
  for (const std::string& order : testing::good_orders) {
    const Job job = testing::demo_job(order);
    const Bed bed = testing::bed_of(job);
    int drawn = 0;
    for (std::size_t i = 0; i < bed.parts.size(); ++i) {
      const Member* m = std::get_if<Member>(&bed.parts[i].form);
      if (m == nullptr || bed.parts[i].origin != Origin::made || m->holes.empty()) continue;
      const DrillDrawing drawing = drill_drawing(bed, static_cast<int>(i), job.order.order);
      expect_readable(drawing, order + ": " + name(bed.parts[i]));
      EXPECT_TRUE(drawing.unlabelled.empty()) << order << ": " << name(bed.parts[i]);
      ++drawn;
    }
    EXPECT_EQ(drawn > 0, !stands(job.frame)) << order;
  }
}

TEST(Drill, no_text_lies_on_text_holes_or_lines_of_random_members) {
  std::mt19937 random(20240501);
  for (int i = 0; i < 60; ++i) {
    const Member m = sample::random_member(random);
    const DrillDrawing drawing =
        drill_drawing(bed_of({{Kind::tongue, Side::left}, "A36", Origin::made, m}), 0,
                      sample::heading(i % 2 == 0 ? Printing::inches : Printing::metric));
    const std::string what = "member " + std::to_string(i);
    expect_readable(drawing, what);
    EXPECT_TRUE(drawing.unlabelled.empty())
        << what << ": " << drawing.unlabelled.size() << " of " << m.holes.size();
    std::size_t holes = 0;
    for (const List2d& page : drawing.pages) holes += shown(page).holes.size();
    EXPECT_EQ(holes, m.holes.size()) << what;
  }
}

// The overlap check sees an overlap when there is one.
TEST(Drill, the_overlap_check_can_fail) {
  DrillDrawing drawing = drill_drawing(sample::bed(), 6, sample::heading());
  Text copy;
  for (const Entity& e : drawing.pages[0].entities) {
    if (const Text* t = std::get_if<Text>(&e)) copy = *t;
  }
  copy.at.x += copy.height / 2;
  drawing.pages[0].add(copy);
  const Shown s = shown(drawing.pages[0]);
  int overlaps = 0;
  for (std::size_t i = 0; i < s.texts.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) overlaps += s.texts[i].second.overlaps(s.texts[j].second);
  }
  EXPECT_EQ(overlaps, 1);
}

// Each hole of the part is drawn where it is, at its size, and is in the table by number.
TEST(Drill, holes_are_drawn_one_to_one) {
  const Bed bed = sample::bed();
  const Member& m = std::get<Member>(bed.parts[5].form);
  const DrillRows rows = drill_rows(m);
  const Heading h = sample::heading();
  for (const Face face : rows.faces) {
    const std::vector<Mm> cuts = strip_cuts(m, rows, face, 1, 0);
    const Strip strip = drill_strip(m, rows, face, cuts, 0, {10, FirstEnd::front, true, h});
    std::vector<Box2> drawn = shown(strip.list).holes;
    std::size_t i = 0;
    for (const DrillRow& row : rows.rows) {
      if (row.hole.face != face) continue;
      const Box2 box = drawn.at(i++);
      const Vec2 middle = 0.5 * (box.low + box.high);
      EXPECT_NEAR(middle.x + cuts[0], row.hole.hole.at.x, 1e-9);
      const Mm width = face == Face::web ? m.section.depth : m.section.flange;
      const bool edge_up = face == Face::web || face == Face::bottom_flange;
      EXPECT_NEAR(edge_up ? width - middle.y : middle.y, row.across, 1e-9);
      if (!row.hole.hole.slotted()) {
        EXPECT_NEAR(box.width(), row.hole.hole.diameter, 1e-9);
      }
    }
    EXPECT_EQ(i, drawn.size());
  }
}

TEST(DrillRows, across_is_from_the_named_edge) {
  const Section c = sample::channel();
  EXPECT_NEAR(across(c, {Face::web, sample::hole({0, 50}, 10)}), 76.2 - 50, 1e-9);
  EXPECT_EQ(face_view(c, Face::web, true).edge, "top edge");
  EXPECT_NEAR(across(c, {Face::bottom_flange, sample::hole({0, 20}, 10)}), 20, 1e-9);
}

TEST(DrillRows, numbers_run_from_the_end_and_letters_part_by_size) {
  const DrillRows rows = drill_rows(std::get<Member>(sample::main_member().form));
  std::map<char, Hole> by_letter;
  for (std::size_t i = 0; i < rows.rows.size(); ++i) {
    const DrillRow& r = rows.rows[i];
    EXPECT_EQ(r.number, static_cast<int>(i) + 1);
    if (i > 0 && rows.rows[i - 1].hole.face == r.hole.face) {
      EXPECT_LE(rows.rows[i - 1].along, r.along);
    }
    const auto [known, fresh] = by_letter.emplace(r.letter, r.hole.hole);
    EXPECT_EQ(known->second.diameter, r.hole.hole.diameter);
    EXPECT_EQ(known->second.length, r.hole.hole.length);
  }
  EXPECT_EQ(rows.sizes.size(), by_letter.size());
  int count = 0;
  for (const DrillSize& s : rows.sizes) count += s.count;
  EXPECT_EQ(count, 23);
}

TEST(DrillRows, ends_and_hands_are_named) {
  const Bed bed = sample::bed();
  EXPECT_EQ(setting(bed, 4).hand, Side::right);
  EXPECT_EQ(setting(bed, 5).hand, Side::left);
  EXPECT_EQ(setting(testing::demo_bed("metric"), testing::demo_bed("metric").part({Kind::tab})).hand,
            Side::middle);
  EXPECT_EQ(setting(bed, 4).first_end, FirstEnd::front);
  EXPECT_EQ(setting(bed, 6).first_end, FirstEnd::left);
  Bed two = bed;
  two.items.push_back(two.items[5]);
  two.items.back().placement = {{0, 0, 0}, {-1, 0, 0}, {0, -1, 0}};
  EXPECT_EQ(setting(two, 4).first_end, FirstEnd::unnamed);
  EXPECT_STREQ(words_of(FirstEnd::rear), "REAR END");
  EXPECT_STREQ(words_opposite(FirstEnd::left), "RIGHT END");
  EXPECT_STREQ(words_of(FirstEnd::unnamed), "END MARKED 0");
  EXPECT_STREQ(words_opposite(FirstEnd::unnamed), "OTHER END");
}

// A channel that serves both sides is upside down on one of them: its sheet must
// not call an edge the top.
TEST(DrillRows, a_part_turned_over_on_one_side_has_no_top) {
  Bed bed = sample::bed();
  EXPECT_TRUE(setting(bed, 4).upright);
  EXPECT_EQ(setting(bed, 4).note, "");
  EXPECT_EQ(setting(bed, 4).hand, Side::right);
  bed.items.push_back(bed.items[5]);
  bed.items.back().id.side = Side::left;
  bed.items.back().placement = {{0, 0, 0}, {1, 0, 0}, {0, -1, 0}};
  const Setting both = setting(bed, 4);
  EXPECT_FALSE(both.upright);
  EXPECT_EQ(both.first_end, FirstEnd::front);
  EXPECT_EQ(both.hand, Side::middle);
  EXPECT_EQ(both.note,
            "Turned over in the bed, the upper edge as drawn at the bottom: main L. As drawn: main R.");
  EXPECT_EQ(face_view(sample::channel(), Face::web, both.upright).edge, "upper edge");
  EXPECT_EQ(face_view(sample::channel(), Face::top_flange, both.upright).name, "UPPER FLANGE");
  EXPECT_EQ(setting(bed, 6).note, "");  // an angle's edges are its heel and toes
}

// A mirrored slot on a face seen from below leans the other way.
TEST(DrillRows, slots_lean_as_seen) {
  const Hole slot = sample::hole({0, 20}, 10, 30, Process::drilled, 0.3);
  EXPECT_NEAR(turned_in_view({Face::top_flange, slot}), 0.3, 1e-12);
  EXPECT_NEAR(turned_in_view({Face::bottom_flange, slot}), -0.3, 1e-12);
}

TEST(Spread, keeps_order_and_pitch_and_moves_no_more_than_needed) {
  EXPECT_EQ(spread({0, 10, 20}, 5), (std::vector<Mm>{0, 10, 20}));
  EXPECT_EQ(spread({10, 10}, 4), (std::vector<Mm>{8, 12}));
  std::mt19937 random(7);
  for (int round = 0; round < 200; ++round) {
    std::vector<Mm> places(12);
    for (Mm& p : places) p = std::uniform_real_distribution<double>(0, 60)(random);
    std::sort(places.begin(), places.end());
    const std::vector<Mm> out = spread(places, 4);
    Mm drift = 0;
    for (std::size_t i = 0; i < out.size(); ++i) {
      if (i > 0) {
        EXPECT_GE(out[i] - out[i - 1], 4 - 1e-9);
      }
      drift += out[i] - places[i];
    }
    EXPECT_NEAR(drift, 0, 1e-6);  // least squares leaves the mean where it was
  }
}

TEST(Drill, refuses_what_has_nothing_to_drill) {
  Bed bed = sample::bed();
  EXPECT_THROW(drill_drawing(bed, 0, sample::heading()), std::invalid_argument);
  std::get<Member>(bed.parts[4].form).holes.clear();
  EXPECT_THROW(drill_drawing(bed, 4, sample::heading()), std::invalid_argument);
}

}  // namespace
}  // namespace bedwright
