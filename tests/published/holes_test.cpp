// Clearance holes and edge distances in the catalogue against AISC 360-22 and
// ISO 273, typed here from published copies of the tables.
#include <gtest/gtest.h>

#include "published/catalog_files.h"

namespace bedwright {
namespace {

class HolesTest : public testing::Test {
 protected:
  const Catalog catalog = shipped_catalog({"fasteners_inch.yaml", "fasteners_metric.yaml"});

  const BoltSize& bolt(const char* name) const {
    const BoltSize* found = catalog.bolt(name);
    if (!found) throw std::runtime_error(std::string(name) + " is not in the catalogue");
    return *found;
  }
};

TEST_F(HolesTest, InchHolesAreAiscTableJ3_3) {
  struct Row {
    const char* name;
    double standard, oversize;
  };
  for (const Row& row : {Row{"1/2 in", 9. / 16, 5. / 8}, Row{"5/8 in", 11. / 16, 13. / 16},
                         Row{"3/4 in", 13. / 16, 15. / 16}}) {
    EXPECT_NEAR(bolt(row.name).standard_hole, row.standard * inch, 1e-9) << row.name;
    EXPECT_NEAR(bolt(row.name).oversize_hole, row.oversize * inch, 1e-9) << row.name;
  }
}

TEST_F(HolesTest, SmallInchHolesFollowTheTablesFirstRow) {
  // Table J3.3 begins at 1/2 in; its first row's d + 1/16 and d + 1/8 carried down is common practice, no
  // published source.
  for (const char* name : {"1/4 in", "5/16 in", "3/8 in", "7/16 in"}) {
    const BoltSize& b = bolt(name);
    EXPECT_NEAR(b.standard_hole, b.diameter + inch / 16, 1e-9) << name;
    EXPECT_NEAR(b.oversize_hole, b.diameter + inch / 8, 1e-9) << name;
  }
}

TEST_F(HolesTest, MetricHolesAreIso273MediumAndCoarse) {
  struct Row {
    const char* name;
    double medium, coarse;
  };
  for (const Row& row : {Row{"M6", 6.6, 7}, Row{"M8", 9, 10}, Row{"M10", 11, 12}, Row{"M12", 13.5, 14.5},
                         Row{"M14", 15.5, 16.5}, Row{"M16", 17.5, 18.5}}) {
    EXPECT_EQ(bolt(row.name).standard_hole, row.medium) << row.name;
    EXPECT_EQ(bolt(row.name).oversize_hole, row.coarse) << row.name;
  }
}

TEST_F(HolesTest, EdgeDistancesAreAiscTableJ3_4) {
  EXPECT_NEAR(bolt("1/2 in").edge_minimum, 0.75 * inch, 1e-9);
  EXPECT_NEAR(bolt("5/8 in").edge_minimum, 0.875 * inch, 1e-9);
  EXPECT_NEAR(bolt("3/4 in").edge_minimum, 1.0 * inch, 1e-9);
  EXPECT_EQ(bolt("M16").edge_minimum, 22);  // table J3.4M
}

TEST_F(HolesTest, SmallBoltsKeepOneAndAHalfDiameters) {
  // Below the tables' first rows: common practice, no published source.
  for (const char* name : {"1/4 in", "5/16 in", "3/8 in", "7/16 in", "M6", "M8", "M10", "M12", "M14"})
    EXPECT_NEAR(bolt(name).edge_minimum, 1.5 * bolt(name).diameter, 1e-9) << name;
}

}  // namespace
}  // namespace bedwright
