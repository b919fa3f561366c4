// Where a spring's hanger may be welded: clear of a jack's plate, 6 in long, and of a cross member's
// flange, 1.58 in of C4x5.4 (AISC Manual table 1-5) ahead of its web, each with an inch to weld in
// (common practice, no published source). The springs are 26 in long.
#include <gtest/gtest.h>

#include "loads/by_hand.h"
#include "loads/loads.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

class Places {
 public:
  Job job = demo_job("base", {"axle.position=137 in"});
  // Whether the axle may stand just there, in inches.
  bool offered(double x) const {
    Tow tow;
    tow.axle_x = 137 * inch;
    tow.axle_from = tow.axle_to = x * inch;
    return !axle_places(job, bed_, tow).empty();
  }
  std::vector<double> crosses() const {
    std::vector<double> all;
    for (const int i : bed_.items_of(Kind::cross_member))
      all.push_back(bed_.items[i].placement.origin.x / inch);
    return all;
  }

 private:
  Bed bed_ = bed_of(job);
};

TEST(ByHandPlaces, AHangerKeepsAnInchFromAJacksPlate) {
  Places p;
  p.job.order.jacks = {17 * inch,
                       154 * inch};  // the rear hanger at 150 in: 4 in off, half a plate and an inch
  EXPECT_TRUE(p.offered(137));
  p.job.order.jacks = {17 * inch, 153.5 * inch};
  EXPECT_FALSE(p.offered(137));
}

TEST(ByHandPlaces, AHangerKeepsAnInchFromACrossMember) {
  Places p;
  p.job.order.jacks = {17 * inch};
  int free = 0;
  for (const double x : p.crosses()) {
    // The rear hanger before the flange: 1.58 + 1 in; the front hanger behind the web: 1 in.
    EXPECT_FALSE(p.offered(x - 2.5 - 13)) << x;
    EXPECT_FALSE(p.offered(x + 0.9375 + 13)) << x;
    free += p.offered(x - 2.625 - 13);
    free += p.offered(x + 1 + 13);
  }
  EXPECT_GE(free, 2) << "so near it may stand, where its other hanger and its wheels may too";
}

}  // namespace
}  // namespace bedwright
