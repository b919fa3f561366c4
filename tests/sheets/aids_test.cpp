// Gauge spacers, string line, check strip and the contact sheet: figures against the
// kit and the Bed, and sheets that can be read.
#include "sheets/aids/aids.h"

#include <algorithm>
#include <cstdlib>

#include "bed/names.h"
#include "sheets/cut/cut.h"
#include "support/readable.h"

namespace bedwright {
namespace {

using testing::demo_bed;
using testing::demo_job;

TEST(Aids, can_be_read_in_the_demo_orders_on_every_paper) {
  for (const std::string& name : testing::good_orders)
    for (const char* size : {"by_units", "B", "D", "A3", "A1"}) {
      const Job job = demo_job(name, {std::string("order.sheet=") + size});
      const Bed bed = testing::bed_of(job);
      for (const bool draft : {false, true}) {
        const auto examined = examine(job, bed);
        SheetInput in{*examined, draft, {}};
        in.assembly = testing::filled_words(*examined);
        testing::expect_readable(job, shop_aid_sheets(in), draft, name + " on " + size);
        testing::expect_readable(job, contact_sheets(in), draft, name + " on " + size);
        testing::expect_readable(job, assembly_sheets(in), draft, name + " on " + size);
      }
    }
}

// BEDWRIGHT_RANDOM_ORDERS asks for more than the 60.
TEST(Aids, can_be_read_in_random_orders) {
  const char* asked = std::getenv("BEDWRIGHT_RANDOM_ORDERS");
  const int count = asked ? std::max(1, std::atoi(asked)) : 60;
  std::mt19937 random(20261125);
  for (int i = 0; i < count; ++i) {
    const Job job = testing::quoted_job(random);
    const Bed bed = testing::bed_of(job);
    const bool draft = i % 2 == 0;
    const auto examined = examine(job, bed);
    SheetInput in{*examined, draft, {}};
    in.assembly = testing::filled_words(*examined);
    const std::string what = "random order " + std::to_string(i);
    testing::expect_readable(job, shop_aid_sheets(in), draft, what);
    testing::expect_readable(job, contact_sheets(in), draft, what);
    testing::expect_readable(job, assembly_sheets(in), draft, what);
  }
}

// From the kit's own sheet: the gauge is heel to heel, both standing legs lie inside it.
TEST(GaugeSpacer, fits_between_the_standing_legs) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    const GaugeSpacer s = gauge_spacer({*examine(job, bed)});
    EXPECT_NEAR(s.length, job.kit.gauge - 2 * job.kit.rail.thickness, 1e-9) << name;
    EXPECT_NEAR(s.left, -s.right, 1e-9);
    EXPECT_NEAR(s.bottom, bed.track.standoff + job.kit.rail.thickness, 1e-9);
    EXPECT_GT(s.corner, job.kit.rail.root_radius);
    EXPECT_LT(s.side, job.kit.rail.standing_leg - job.kit.rail.thickness + 1e-9);
    EXPECT_LE(2 * s.tolerance, job.order.tolerances.gauge + 1e-9);
  }
}

// A tube of that length laid at each place meets nothing that is on the bed, rails aside.
TEST(GaugeSpacer, places_are_free_and_serve_every_section) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    const GaugeSpacer s = gauge_spacer({*examine(job, bed)});
    const std::vector<SpacerPlace> places = spacer_places({*examine(job, bed)});
    std::vector<int> of_section(static_cast<std::size_t>(bed.track.sections) + 1, 0);
    for (const SpacerPlace& p : places) {
      ++of_section.at(static_cast<std::size_t>(p.section));
      Box3 tube;
      tube.add({p.x - s.side / 2, s.left, s.bottom});
      tube.add({p.x + s.side / 2, s.right, s.bottom + s.side});
      for (std::size_t i = 0; i < bed.items.size(); ++i) {
        const Item& item = bed.items[i];
        if (!item.shown || item.moving || item.id.kind == Kind::rail) continue;
        EXPECT_FALSE(tube.overlaps(bounds(bed, static_cast<int>(i)), -1e-6))
            << name << ": spacer at " << p.x << " in " << bedwright::name(item);
      }
      const Box3 rail = bounds(bed, bed.item({Kind::rail, Side::right, p.section}));
      EXPECT_TRUE(p.x - s.side / 2 >= rail.low.x && p.x + s.side / 2 <= rail.high.x);
    }
    for (int k = 1; k <= bed.track.sections; ++k)
      EXPECT_GE(of_section[static_cast<std::size_t>(k)], 2) << name << ", section " << k;
    for (std::size_t i = 1; i < places.size(); ++i)
      EXPECT_LE(places[i].x - places[i - 1].x, 2 * spacers_most_apart);
  }
}

TEST(StringLine, clears_every_tab_and_reads_to_its_hole) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    const auto examined = examine(job, bed);
    const SheetInput in{*examined};
    const StringLine line = string_line(in);
    EXPECT_NEAR(line.along, job.frame.main.spacing / 2 + line.block, 1e-9);
    std::size_t read = 0;
    for (const TabReading& r : tab_readings(in)) {
      read += r.tabs.size();
      // By the kit: the hole line lies so far inward of the heel.
      EXPECT_NEAR(line.along - r.to_middle, job.kit.gauge / 2 - job.kit.mounting.line, 1e-6) << name;
      EXPECT_NEAR(r.to_middle - r.to_edge, job.frame.tabs.hole_diameter / 2, 1e-9);
    }
    const std::vector<int> tabs = bed.items_of(Kind::tab);
    for (const int tab : tabs) {
      const Box3 box = bounds(bed, tab);
      EXPECT_LT(std::max(box.high.y, -box.low.y) + 9.9, line.along) << bedwright::name(bed.items[tab]);
    }
    EXPECT_EQ(read, tabs.size()) << name;
  }
}

TEST(StringLine, a_tab_found_elsewhere_has_its_own_reading) {
  Job job = demo_job("base");
  TabFound found;
  found.tab.text = "R3";
  found.y = 1.5;
  job.order.tabs_found = {found};
  const Bed bed = testing::bed_of(job);
  const std::vector<TabReading> all = tab_readings({*examine(job, bed)});
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[1].tabs, (std::vector<Identity>{{Kind::tab, Side::right, 3}}));
  EXPECT_NEAR(all[0].to_middle - all[1].to_middle, 1.5, 1e-9);
}

// Laid on any rail it is for, every hole of the strip is over a track bolt; each rail has one.
TEST(CheckStrip, has_a_hole_under_every_track_bolt) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    std::size_t rails = 0;
    for (const CheckStrip& strip : check_strips({*examine(job, bed)}))
      for (const Identity& id : strip.rails) {
        ++rails;
        const Box3 rail = bounds(bed, bed.item(id));
        EXPECT_NEAR(strip.length, rail.high.x - rail.low.x, 1e-6);
        std::size_t bolts = 0;
        for (const Bolt& b : bed.bolts) {
          if (b.id.kind != Kind::track_bolt || b.seat.x < rail.low.x || b.seat.x > rail.high.x ||
              outward(id.side) * b.seat.y < 0)
            continue;
          ++bolts;
          EXPECT_TRUE(std::any_of(strip.holes.begin(), strip.holes.end(), [&](Mm x) {
            return std::abs(rail.low.x + x - b.seat.x) < 1e-6;
          })) << bedwright::name(b);
        }
        EXPECT_EQ(bolts, strip.holes.size());
      }
    EXPECT_EQ(rails, bed.items_of(Kind::rail).size());
  }
}

// The outer lines of a part on the contact sheet, times the scale, are the part.
TEST(ContactSheet, has_every_part_at_one_scale_with_name_and_count) {
  for (const std::string& name : testing::good_orders) {
    const Job job = demo_job(name);
    const Bed bed = testing::bed_of(job);
    const std::vector<Sheet> sheets = contact_sheets({*examine(job, bed)});
    ASSERT_EQ(sheets.empty(), stands(job.frame));  // nothing of a frame that stands is cut
    if (sheets.empty()) continue;
    const int scale = std::stoi(sheets[0].scale.substr(2));
    EXPECT_TRUE(scale == 1 || scale == 2 || scale == 5 || scale == 10 || scale == 20)
        << "not of ISO 5455: " << scale;
    const std::vector<std::string> all = testing::texts_of(sheets);
    std::vector<double> drawn, wanted;
    int scribed = 0;
    for (const Sheet& sheet : sheets)
      for (const Entity& e : sheet.list.entities) {
        if (const Closed* c = std::get_if<Closed>(&e);
            c && sheet.list.layers[static_cast<std::size_t>(c->layer)].name == "OUTLINE")
          drawn.push_back(area_properties(c->outline).area * scale * scale);
        if (const Path* p = std::get_if<Path>(&e))
          scribed += sheet.list.layers[static_cast<std::size_t>(p->layer)].name == "SCRIBE";
      }
    for (std::size_t i = 0; i < bed.parts.size(); ++i) {
      const Part& part = bed.parts[i];
      const Plate* plate = std::get_if<Plate>(&part.form);
      if (!plate || part.origin != Origin::made) continue;
      wanted.push_back(area_properties(plate->outline).area);
      EXPECT_NE(std::find(all.begin(), all.end(), bedwright::name(part)), all.end()) << bedwright::name(part);
      const std::string count = std::to_string(bed.count(static_cast<int>(i))) + " off, ";
      EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const std::string& t) {
        return t.starts_with(count);
      })) << bedwright::name(part);
    }
    std::sort(drawn.begin(), drawn.end());
    std::sort(wanted.begin(), wanted.end());
    ASSERT_EQ(drawn.size(), wanted.size()) << name;
    for (std::size_t i = 0; i < drawn.size(); ++i) EXPECT_NEAR(drawn[i], wanted[i], 1e-6 * wanted[i]);
    EXPECT_GT(scribed, 20);
  }
}

}  // namespace
}  // namespace bedwright
