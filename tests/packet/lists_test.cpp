#include "packet/lists.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "bed/names.h"
#include "formats/csv.h"
#include "packet/moving_list.h"
#include "support/demo.h"
#include "support/sample_part.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;

// A reader of RFC 4180, written apart from the writer.
std::vector<std::vector<std::string>> read_csv(const std::string& text) {
  std::vector<std::vector<std::string>> rows(1, {""});
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted) {
      if (c != '"') {
        rows.back().back() += c;
      } else if (i + 1 < text.size() && text[i + 1] == '"') {
        rows.back().back() += text[++i];
      } else {
        quoted = false;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') {
      ++i;
      rows.push_back({""});
    } else {
      rows.back().back() += c;
    }
  }
  rows.pop_back();
  return rows;
}

std::string cell(const std::string& csv, const std::string& part, const std::string& column,
                 std::size_t nth = 0) {
  const auto rows = read_csv(csv);
  const auto at = std::find(rows[0].begin(), rows[0].end(), column);
  if (at == rows[0].end()) return "no column " + column;
  for (const auto& row : rows) {
    if (row[0] == part && nth-- == 0) return row[static_cast<std::size_t>(at - rows[0].begin())];
  }
  return "no row " + part;
}

TEST(Csv, cells_come_back_as_they_went_in) {
  const std::vector<std::string> cells{"plain",  "a,b", "say \"so\"", "two\r\nlines",
                                       " edge ", "",    "1/2 in x 3"};
  Csv csv;
  csv.row(std::vector<CsvCell>(cells.begin(), cells.end()));
  EXPECT_EQ(read_csv(csv.text()), (std::vector<std::vector<std::string>>{cells}));
  EXPECT_TRUE(csv.text().ends_with("\r\n"));
}

TEST(Csv, no_text_is_a_formula) {
  for (const std::string text : {"=1+1", "+1", "-1", "@x", "\tx", "\rx", "=\"a\",b"}) {
    Csv csv;
    csv.row({text});
    EXPECT_EQ(read_csv(csv.text())[0][0], "'" + text);
  }
  EXPECT_EQ(CsvCell(-1.25, 2).written(), "-1.25");
  EXPECT_EQ(CsvCell(-0.001, 2).written(), "0.00");
  EXPECT_THROW(CsvCell(std::nan(""), 2), std::invalid_argument);
}

TEST(Lists, every_row_is_as_wide_as_the_heading) {
  const Bed bed = sample::bed();
  const Heading h = sample::heading();
  for (const std::string& csv :
       {parts_csv(bed, h), cut_list_csv(bed, h), drill_list_csv(bed, h), hardware_csv(bed, {}, h, {})}) {
    const auto rows = read_csv(csv);
    ASSERT_GT(rows.size(), 1U);
    for (const auto& row : rows) EXPECT_EQ(row.size(), rows[0].size());
  }
}

TEST(Lists, parts_count_items_and_weigh_them) {
  const Bed bed = sample::bed();
  const std::string csv = parts_csv(bed, sample::heading());
  EXPECT_EQ(cell(csv, "tab plate", "quantity"), "2");
  EXPECT_EQ(cell(csv, "tab plate", "origin"), "made");
  // 120 x 102 mm, corners of 10 mm radius, one slot 14.3 x 31.75, 9.525 mm at 7850 kg/m3, by hand.
  const double corners = (4 - std::numbers::pi) * 100,
               slot = std::numbers::pi / 4 * 14.3 * 14.3 + 14.3 * 17.45;
  const double kg = (120 * 102 - corners - slot) * 9.525 * 7850e-9;
  EXPECT_NEAR(std::stod(cell(csv, "tab plate", "kg each")), kg, 0.0006);
  EXPECT_NEAR(std::stod(cell(csv, "tab plate", "kg all")), 2 * kg, 0.0006);
  EXPECT_NEAR(std::stod(cell(csv, "tab plate", "lb all")), 2 * kg / 0.45359237, 0.006);
}

TEST(Lists, the_saw_gets_the_length_over_the_points) {
  const std::string csv = cut_list_csv(sample::bed(), sample::heading());
  EXPECT_EQ(cell(csv, "tongue L", "length mm"), "1800.00");
  // Start mitre +0.35 and end mitre -0.35: both toes are inside the web's length.
  EXPECT_EQ(cell(csv, "tongue L", "overall mm"), "1800.00");
  Bed bed = sample::bed();
  std::get<Member>(bed.parts[5].form).start_mitre = -0.35;
  EXPECT_EQ(cell(cut_list_csv(bed, sample::heading()), "tongue L", "overall mm"),
            CsvCell(1800 + 1.92 * 25.4 * std::tan(0.35), 2).written());
  EXPECT_EQ(cell(csv, "corner gusset", "width mm"), "250.00");
  EXPECT_EQ(cell(csv, "bolt 1/2 in x 1.5 in", "kind"), "no row bolt 1/2 in x 1.5 in");
}

TEST(Lists, layout_says_where_each_thing_goes_on_the_mains) {
  const Job job = testing::demo_job("base");
  const Bed bed = testing::bed_of(job);
  const std::string csv = layout_csv(bed, job.order.order);
  const Mm front = bounds(bed, bed.item({Kind::main, Side::left})).low.x;
  const int tab = bed.item({Kind::tab, Side::right, 7});
  const Mm hole = hole_in_world(bed, ply_through(bed, tab, 0)).centre.x - front;
  EXPECT_EQ(cell(csv, "tab R7", "hole mm"), CsvCell(hole, 2).written());
  EXPECT_EQ(cell(csv, "cross member 1", "hole mm"), "");
  EXPECT_EQ(
      cell(csv, "axle 1", "middle mm"),
      CsvCell(bed.items[bed.item({Kind::axle, Side::middle, 1})].placement.origin.x - front, 2).written());
  std::vector<std::string> listed;
  for (const auto& row : read_csv(csv)) listed.push_back(row[0]);
  // The mains are what it is measured on, the tongue is mitred, wheels go with their
  // axle, and the kit's own is the customer's to place.
  for (const Kind kind : {Kind::main, Kind::tongue, Kind::wheel, Kind::rail, Kind::clamp}) {
    ASSERT_FALSE(bed.items_of(kind).empty());
    for (const int i : bed.items_of(kind))
      EXPECT_THAT(listed, ::testing::Not(::testing::Contains(name(bed.items[i]))));
  }
}

TEST(Lists, layout_without_a_main_to_measure_on_is_refused) {
  EXPECT_THROW(layout_csv(sample::bed(), sample::heading()), NotInBed);  // it has a right one only
}

TEST(Lists, drill_list_has_each_hole) {
  const std::string csv = drill_list_csv(sample::bed(), sample::heading());
  // 23 in the main, 3 in the tongue, 1 in the clip, 4 marked on the flange; one heading.
  EXPECT_EQ(read_csv(csv).size(), 1U + 23 + 3 + 1 + 4);
  EXPECT_EQ(cell(csv, "main R", "along"), "13-3/4 in");
  EXPECT_EQ(cell(csv, "main R", "along mm"), "349.20");
  EXPECT_EQ(cell(csv, "main R", "across mm"), "38.10");
  EXPECT_EQ(cell(csv, "main R", "across from"), "top edge");
  EXPECT_EQ(cell(csv, "clip tab L", "slot length mm"), "31.75");
  EXPECT_EQ(cell(csv, "clip tab L", "process"), "ends drilled, cut between");
  EXPECT_EQ(cell(csv, "tongue L", "process"), "drilled");
  EXPECT_EQ(cell(drill_list_csv(sample::bed(), sample::heading(Printing::metric)), "main R", "along"),
            "349.2 mm");
}

// --- welds and what moves ------------------------------------------------------------

// Of rows whose cells begin with these, the figures in these columns.
std::vector<std::vector<std::string>> picked(const std::string& csv, const std::vector<std::string>& begin,
                                             const std::vector<std::string>& columns) {
  const auto rows = read_csv(csv);
  std::vector<std::vector<std::string>> found;
  for (const auto& row : rows) {
    if (!std::equal(begin.begin(), begin.end(), row.begin())) continue;
    found.emplace_back();
    for (const std::string& column : columns) {
      const auto at = std::find(rows[0].begin(), rows[0].end(), column);
      found.back().push_back(at == rows[0].end() ? "no column" : row[at - rows[0].begin()]);
    }
  }
  return found;
}

TEST(Lists, every_weld_has_its_ends) {
  const Job job = testing::demo_job("base");
  const Bed bed = testing::bed_of(job);
  const std::string csv = welds_csv(bed, job.order.order);
  for (const auto& row : read_csv(csv)) EXPECT_EQ(row.size(), 17U);
  // Tab R1: 3 in along the bed, its hole at 5-1/2 in; 1-3/4 in over the flange, inward
  // from the web's back at half of 44 in; on top of the main.
  std::vector<std::vector<std::string>> ends;
  for (const auto& row : read_csv(csv))
    if (row[1] == "tab R1") ends.emplace_back(row.begin() + 7, row.end());
  const std::vector<std::vector<std::string>> wanted{
      {"4 in", "4 in", "1-3/4 in", "44.450", "101.600", "558.800", "0.000", "101.600", "514.350", "0.000"},
      {"7 in", "7 in", "1-3/4 in", "44.450", "177.800", "558.800", "0.000", "177.800", "514.350", "0.000"}};
  EXPECT_EQ(ends, wanted);
  // A line's ends are as far apart as it says.
  int lines = 0;
  for (const auto& row : read_csv(csv)) {
    if (row[3] != "fillet") continue;
    ++lines;
    const auto figure = [&](int column) { return std::stod(row[column]); };
    EXPECT_NEAR(std::hypot(figure(14) - figure(11), figure(15) - figure(12), figure(16) - figure(13)),
                figure(10), 0.002)
        << row[1] << " to " << row[2];
  }
  EXPECT_GT(lines, 100);
  int bought = 0;
  for (const auto& row : read_csv(csv)) bought += row[1] == "axle 1" && row[3] == "as its maker says";
  EXPECT_EQ(bought, 2);
}

TEST(Lists, a_stack_is_in_order_from_the_head) {
  const Job job = testing::demo_job("base");
  const std::string csv = stacks_csv(testing::bed_of(job), job.order.order);
  for (const auto& row : read_csv(csv)) EXPECT_EQ(row.size(), 16U);
  using Cells = std::vector<std::vector<std::string>>;
  // Rail of 1/4 in, pad of 3/8 in, plate of 1/2 in, holes 9/16 in wide: the kit's slot 7/8 in
  // across the bed, the tab's 1 in along it; 24-1/2 in less 1-1/4 in from the centre line.
  const std::string wide = CsvCell(9 * inch / 16, 3).written(), along = CsvCell(inch, 3).written();
  EXPECT_EQ(picked(csv, {"track bolt R1"},
                   {"from the head", "item", "hole mm", "slot mm", "thickness mm", "x mm", "y mm"}),
            (Cells{{"1", "rail R1", wide, "22.225", "6.350", "139.700", "590.550"},
                   {"2", "pad R1", wide, along, "9.525", "139.700", "590.550"},
                   {"3", "tab R1", wide, along, "12.700", "139.700", "590.550"}}));
}

TEST(Lists, what_moves_says_how_far_and_how_high) {
  const Job job = testing::demo_job("base");
  const std::string csv = moving_csv(job, testing::bed_of(job));
  for (const auto& row : read_csv(csv)) EXPECT_EQ(row.size(), 20U);
  using Cells = std::vector<std::vector<std::string>>;
  // Mains 6 in deep, axle 5-1/2 in below, tyres of 27-1/2 in: by hand from the frame's file.
  const Mm ground = -(6 + 5.5) * inch - 27.5 / 2 * inch;
  EXPECT_EQ(picked(csv, {"ground"}, {"z from mm", "lowest over ground mm"}),
            (Cells{{CsvCell(ground, 3).written(), "0.000"}}));
  // The jack's foot, 20 in below the mains' tops, runs down by 12 in.
  EXPECT_EQ(picked(csv, {"jack R1", "foot drawn up"}, {"moves", "by from mm", "by to mm"}),
            (Cells{{"z", "-304.800", "0.000"}}));
  EXPECT_EQ(picked(csv, {"wheel L1"}, {"on", "by to", "z from mm"}),
            (Cells{{"axle 1", "3 in", CsvCell(ground, 3).written()}}));
  // Its four wheels run from stop to stop.
  EXPECT_EQ(picked(csv, {"head", "wheel on the rail", "running"}, {"x from mm"}).size(), 4U);
}

TEST(Lists, hardware_says_what_to_buy) {
  const std::vector<KitBox> box{{{"1/2 in", {}}, 38.1, 1}, {{"3/8 in", {}}, 25.4, 6}};
  const auto rows = read_csv(hardware_csv(sample::bed(), box, sample::heading(), {0, 0}));
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_THAT(rows[0],
              ::testing::ElementsAre("item", "size", "grade", "coating", "length", "length mm", "needed",
                                     "for track", "for bunks", "for gussets", "for stops", "for jacks",
                                     "for tongue jack", "spares", "in the kit's box", "to buy", "left over"));
  EXPECT_THAT(rows[1], ::testing::ElementsAre("bolt", "1/2 in", "", "", "1-1/2 in", "38.10", "2", "1", "0",
                                              "0", "0", "1", "0", "0", "1", "1", "0"));
  EXPECT_THAT(rows[2], ::testing::ElementsAre("bolt", "3/8 in", "", "", "1 in", "25.40", "0", "0", "0", "0",
                                              "0", "0", "0", "0", "6", "0", "6"));
  EXPECT_EQ(rows[3][0], "nut");
  EXPECT_EQ(rows[3][6], "2");
}

// Bolts of one size and length in two grades are two things to buy; a washer has a coating and no
// grade; what the kit packs of one grade serves that grade alone.
TEST(Lists, hardware_is_told_apart_by_grade_and_coating) {
  Job job = testing::demo_job("base");
  job.kit.mounting.hole.grade = "Grade 5";
  job.kit.mounting.hole.coating = "zinc";
  job.order.bolts.track = job.order.bolts.bunk = 2 * inch;
  const std::vector<KitBox> box{{{"1/2 in", {}}, 2 * inch, 10, "Grade 5", "zinc"}};
  const std::string csv = hardware_csv(testing::bed_of(job), box, sample::heading(), {0, 0});
  using Cells = std::vector<std::vector<std::string>>;
  EXPECT_EQ(picked(csv, {"bolt", "1/2 in", "Grade 5", "zinc", "2 in"},
                   {"for track", "for bunks", "in the kit's box"}),
            (Cells{{"24", "0", "10"}}));
  EXPECT_EQ(picked(csv, {"bolt", "1/2 in", "", "", "2 in"}, {"for track", "for bunks", "in the kit's box"}),
            (Cells{{"0", "26", "0"}}));
  EXPECT_EQ(picked(csv, {"nut", "1/2 in", "Grade 5", "zinc"}, {"for track"}), (Cells{{"24"}}));
  EXPECT_EQ(picked(csv, {"flat washer", "1/2 in", "", "zinc"}, {"for bunks"}), (Cells{{"0"}}));
}

TEST(Lists, spares_are_packed_out_of_the_box_first) {
  // Two needed and three spare (least 3): the box's four leave one to buy.
  const std::vector<KitBox> box{{{"1/2 in", {}}, 38.1, 4}};
  const std::string csv = hardware_csv(sample::bed(), box, sample::heading(), {5, 3});
  const auto rows = read_csv(csv);
  EXPECT_EQ(rows[1][13], "3");
  EXPECT_EQ(rows[1][15], "1");
  EXPECT_EQ(rows[1][16], "0");
}

TEST(Lists, spares_are_a_share_rounded_up_and_the_least_at_least) {
  EXPECT_EQ(spares_for(0, {50, 4}), 0);
  EXPECT_EQ(spares_for(20, {5, 0}), 1);
  EXPECT_EQ(spares_for(21, {5, 0}), 2);
  EXPECT_EQ(spares_for(21, {5, 3}), 3);
  EXPECT_EQ(spares_for(7, {0, 0}), 0);
}

}  // namespace
}  // namespace bedwright
