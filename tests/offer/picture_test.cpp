// The picture of a map: everything on the paper, no text on text or on a line.
#include "offer/picture.h"

#include <gtest/gtest.h>

#include <random>

#include "offer/panels.h"

namespace bedwright {
namespace {

std::vector<std::string> run(int count, const std::string& unit) {
  std::vector<std::string> values;
  for (int i = 0; i < count; ++i) values.push_back(std::to_string(10 + i) + unit);
  return values;
}

// A map of made-up rows in every state, with every length of figure.
MapFile made_up(std::vector<Varied> varied, Printing printing) {
  MapFile file{
      "0.1.0",
      "QB-1",
      "A",
      "2026-11-09",
      "digest",
      printing,
      {"Kit: " + std::string(200, 'k') + ". " + std::string(90, 'w'), "Changed from the order file: a=b."},
      {Grid(std::move(varied)), {}, {}, {}, 0, 0, 0, 1}};
  std::mt19937 random(7);
  const std::vector<std::string> codes = {"HOLE-FIT",      "RAIL-REMAINDER", "CLASH-MOVING", "TIP",
                                          "JOINT-SUPPORT", "STAND-SAG",      "EDGE",         "WASHER-FLAT"};
  for (std::uint64_t i = 0; i < *file.map.grid.size(); ++i) {
    MapRow row;
    row.combination = i;
    row.fit = static_cast<Fit>(random() % 3);
    row.code = row.fit == Fit::impossible ? "INPUT" : codes[random() % codes.size()];
    row.stops = row.fit == Fit::stopped;
    row.warnings = static_cast<int>(random() % 2);
    row.unit = row.fit == Fit::impossible ? "" : random() % 4 ? "mm" : "kg";
    row.margin = std::pow(10.0, static_cast<int>(random() % 9) - 2) * (random() % 2 ? 1.234567 : -9.87654321);
    row.by_rule = row.code + " 1" + (random() % 2 ? "" : ", EDGE 12, TIP 3");
    file.map.rows.push_back(row);
    if (i < 12 && row.fit == Fit::stopped)
      file.map.near.push_back({i,
                               {{"frame.tabs.slot_length", "1-1/4 in"}},
                               {row.code + ": " + std::string(300, 'x') + " or move it 3/16 in"}});
  }
  return file;
}

// What a text must keep clear of: its neighbours' boxes and the pieces of lines.
std::vector<std::pair<Vec2, Vec2>> segments(const Entity& entity) {
  std::vector<std::pair<Vec2, Vec2>> all;
  if (const auto* line = std::get_if<Line>(&entity)) all.push_back({line->from, line->to});
  if (const auto* closed = std::get_if<Closed>(&entity))
    for (std::size_t i = 0; i < closed->outline.size(); ++i)
      all.push_back({closed->outline[i].at, closed->outline[(i + 1) % closed->outline.size()].at});
  return all;
}

void expect_clear(const Page& page) {
  Box2 paper;
  paper.add({0, 0});
  paper.add({page.width, page.height});
  std::vector<std::pair<Box2, std::string>> texts;
  for (const Entity& e : page.list.entities)
    if (const auto* t = std::get_if<Text>(&e)) {
      texts.push_back({text_box(*t), t->text});
      EXPECT_GE(t->height, 2.5) << t->text;
    }
  for (const auto& [box, text] : texts) {
    EXPECT_TRUE(box.low.x >= 5 && box.low.y >= 5 && box.high.x <= page.width - 5 &&
                box.high.y <= page.height - 5)
        << text;
    for (const auto& [other, words] : texts)
      if (&box != &other) {
        EXPECT_FALSE(box.overlaps(other, 0.05)) << "'" << text << "' and '" << words << "'";
      }
    for (const Entity& e : page.list.entities)
      for (const auto& [from, to] : segments(e)) EXPECT_FALSE(meets(from, to, box.grown(-0.05))) << text;
  }
}

TEST(MapPages, NothingOverlapsForManyShapesOfMap) {
  const std::vector<std::vector<Varied>> shapes = {
      {{"track.datum", {"front", "middle", "rear"}}},
      {{"track.rail_length", run(25, " in")},
       {"track.bunk_pitch", run(49, "-1/2 in")},
       {"track.extension_count", run(4, "")}},
      {{"a", run(2, "")}, {"b", run(3, "")}, {"c", run(2, "")}, {"d", run(2, "")}},
      {{"axle.fraction", run(20, "-and-a-long-label")},
       {"b", run(12, "")},
       {"c", run(2, "")},
       {"d", run(2, "")},
       {"e", run(2, "")}},
      {{"jacks", {"[17 in, 120 in, 223 in]", "[18 in, 121 in, 222 in]"}},
       {"frame.tabs.plate.pad_thickness", run(9, " mm")}},
  };
  for (const auto& shape : shapes)
    for (const Printing printing : {Printing::inches, Printing::metric}) {
      const MapFile file = made_up(shape, printing);
      const std::vector<Page> pages = map_pages(file);
      ASSERT_FALSE(pages.empty());
      for (const Page& page : pages) expect_clear(page);
    }
}

TEST(Panels, ShowEveryCombinationOnce) {
  for (const auto& varied : {std::vector<Varied>{{"a", run(5, "")}},
                             {{"a", run(3, "")}, {"b", run(30, "")}, {"c", run(2, "")}, {"d", run(4, "")}}}) {
    const Grid grid(varied);
    std::vector<int> seen(*grid.size(), 0);
    for (const Panel& panel : panels(grid, 7, 2)) {
      EXPECT_LE(panel.columns.size(), 7u);
      EXPECT_LE(panel.cells.size(), 2u);
      for (const auto& row : panel.cells) {
        EXPECT_EQ(row.size(), panel.columns.size());
        for (const std::uint64_t n : row) ++seen.at(n);
      }
    }
    for (const int times : seen) EXPECT_EQ(times, 1);
  }
}

// A cell stands under its column's value and beside its row's.
TEST(Panels, LabelsNameTheCombination) {
  const Grid grid({{"a", run(3, "")}, {"b", run(5, "")}, {"c", run(2, "")}});
  for (const Panel& panel : panels(grid, 2, 2))
    for (std::size_t r = 0; r < panel.cells.size(); ++r)
      for (std::size_t c = 0; c < panel.columns.size(); ++c) {
        const auto sets = grid.sets_of(panel.cells[r][c]);
        EXPECT_EQ(sets[1], panel.across + "=" + panel.columns[c]);
        EXPECT_EQ(sets[0], panel.down + "=" + panel.rows[r]);
        EXPECT_EQ(sets[2].substr(2), panel.titles.front().substr(2));
      }
}

}  // namespace
}  // namespace bedwright
