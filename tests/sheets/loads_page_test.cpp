#include "sheets/loads/loads_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/demo.h"

namespace bedwright {
namespace {

std::vector<List2d> pages(const std::string& order, const std::vector<std::string>& sets, bool draft) {
  const Job job = testing::demo_job(order, sets);
  const Bed bed = testing::bed_of(job);
  return loads_pages(job, bed, run_loads(job, bed),
                     {job.order.order.number, job.order.order.revision, std::string(64, 'a'), draft});
}

std::string all_text(const List2d& page) {
  std::string all;
  for (const Entity& e : page.entities)
    if (const Text* t = std::get_if<Text>(&e)) all += t->text + "\n";
  return all;
}

struct Order {
  const char* name;
  std::vector<std::string> sets;
};

// Good orders and ones whose pictures are crowded: many jacks, a heavy log, none, a
// cargo, a bed that does not stand.
const Order orders[] = {
    {"base", {}},
    {"one_extension", {}},
    {"metric", {}},
    {"lot_frame", {}},
    {"wrong", {}},
    {"base", {"jacks=[10 in, 40 in, 65 in, 97 in, 120 in, 145 in, 175 in, 200 in, 230 in]"}},
    {"base", {"work.log.diameter=40 in", "track.head_lock=rear"}},
    {"base", {"axle.position=139 in", "road.cargo={mass: 900 lb, position: 60 in}"}},
    {"base", {"jacks=[120 in]"}},
    {"base", {"jacks=[100 in, 120 in]", "work.log.length=10 ft"}}};

TEST(LoadsPage, NoTextMeetsAnotherOrLeavesThePage) {
  for (const Order& o : orders)
    for (bool draft : {false, true})
      for (const List2d& page : pages(o.name, o.sets, draft)) {
        std::vector<Box2> boxes;
        for (const Entity& e : page.entities) {
          const Text* t = std::get_if<Text>(&e);
          if (!t) continue;
          const Box2 box = text_box(*t);
          EXPECT_GE(box.low.x, 10) << o.name << ": " << t->text;
          EXPECT_LE(box.high.x, loads_page_width - 10) << o.name << ": " << t->text;
          EXPECT_GE(box.low.y, 10) << o.name << ": " << t->text;
          EXPECT_LE(box.high.y, loads_page_height - 10) << o.name << ": " << t->text;
          EXPECT_GE(t->height, 2.5 - 1e-9) << o.name << ": " << t->text;
          for (const Box2& other : boxes) EXPECT_FALSE(box.overlaps(other)) << o.name << ": " << t->text;
          boxes.push_back(box);
        }
        EXPECT_GT(boxes.size(), 8u);
      }
}

TEST(LoadsPage, FewTextsCrossALine) {
  // A label is only put on a line when no clear place is near; on the demo orders
  // every one finds its place.
  for (const std::string& order : testing::good_orders) {
    const List2d page = pages(order, {}, false).front();
    for (const Entity& e : page.entities) {
      const Text* t = std::get_if<Text>(&e);
      if (!t) continue;
      const Box2 box = text_box(*t);
      for (const Entity& other : page.entities)
        if (const Line* l = std::get_if<Line>(&other)) {
          EXPECT_FALSE(meets(l->from, l->to, box)) << order << ": " << t->text;
        }
    }
  }
}

TEST(LoadsPage, LinesStayOnThePage) {
  for (const Order& o : orders)
    for (const List2d& page : pages(o.name, o.sets, false)) {
      const Box2 all = bounds(page);
      EXPECT_GE(all.low.x, 10 - 1e-9) << o.name;
      EXPECT_GE(all.low.y, 10 - 1e-9) << o.name;
      EXPECT_LE(all.high.x, loads_page_width - 10 + 1e-9) << o.name;
      EXPECT_LE(all.high.y, loads_page_height - 10 + 1e-9) << o.name;
    }
}

TEST(LoadsPage, IsBlackAndWhite) {
  for (const List2d& page : pages("base", {}, false))
    for (const Layer& layer : page.layers) EXPECT_EQ(layer.colour, 7) << layer.name;
}

TEST(LoadsPage, ADraftIsStamped) {
  for (const List2d& page : pages("base", {}, true))
    EXPECT_THAT(all_text(page), ::testing::HasSubstr("NOT FOR FABRICATION"));
  for (const List2d& page : pages("base", {}, false))
    EXPECT_THAT(all_text(page), ::testing::Not(::testing::HasSubstr("NOT FOR FABRICATION")));
}

TEST(LoadsPage, SaysTheFiguresOfTheResult) {
  const std::string text = all_text(pages("base", {}, false).front());
  for (const char* piece :
       {"head 610 lb", "log 594 lb", "limit", "coupler", "licensed engineer", "along the bed 1:"})
    EXPECT_THAT(text, ::testing::HasSubstr(piece));
}

}  // namespace
}  // namespace bedwright
