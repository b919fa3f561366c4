// Where to pin the track and which bolt goes where, as the report says it of the demos.
#include "packet/track_report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/demo.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;

struct Case {
  Job job;
  Bed bed;
  CheckInput input{bed, job.order.limits, &job, nullptr, {job.order.order.printing, job.order.order.tape}};
  Scene scene{input};
  explicit Case(const std::string& order, const std::vector<std::string>& sets = {})
      : job(testing::demo_job(order, sets)), bed(testing::bed_of(job)) {}
};

// One line of it, with its blanks run together.
std::string flat(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (c != ' ' && c != '\n')
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  return out;
}

TEST(TrackReport, AllThreePlacesAreSaidAndOneRecommended) {
  const Case base("base", {"track.datum=front"}), middle("one_extension");
  const auto json = datum_json(base.scene, base.job);
  EXPECT_EQ(json["pinned"], "front");
  EXPECT_EQ(json["recommended"], "middle");
  EXPECT_GT(json["middle"]["margin"], json["front"]["margin"]);
  EXPECT_THAT(track_choices_text(base.scene, base.job), HasSubstr("recommended\n"));
  EXPECT_THAT(track_choices_text(middle.scene, middle.job), HasSubstr("as ordered, and recommended\n"));
}

TEST(TrackReport, EveryHoleHasALengthAndTheKitsBoxIsCounted) {
  const Case base("base");
  std::size_t holes = 0;
  for (const auto& size : bolts_json(base.scene)) holes += size["holes"].size();
  EXPECT_EQ(holes, base.bed.bolts.size());
  const std::string text = flat(track_choices_text(base.scene, base.job));
  EXPECT_THAT(text, HasSubstr("gusset bolts 16 of 1-1/4 in (16 of 1-1/4 in needed, 18 in the box)"));
  EXPECT_THAT(text, HasSubstr("none suits the 24 track bolts"));
}

// A length more than is needed, put in by hand: the fewest are said, with who takes which.
TEST(TrackReport, FewerLengthsAreSaidWhereTheyServe) {
  const Case more("base", {"bolts.jack=2 in"});
  const auto half_inch = bolts_json(more.scene)[0];
  ASSERT_EQ(half_inch["size"], "1/2 in");
  EXPECT_EQ(half_inch["now"].size(), 4u);
  EXPECT_EQ(half_inch["fewest"].size(), 3u);
  EXPECT_THAT(flat(track_choices_text(more.scene, more.job)),
              HasSubstr("The fewest lengths that serve every hole, solved exactly: "));
}

}  // namespace
}  // namespace bedwright
