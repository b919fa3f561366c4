// The front door: one examination, the same for every view, and blind to printed words.
#include "examine/examine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::order_path;

TEST(Examine, IsABedOrWhatIsWrongNeverBoth) {
  FileStore store;
  const Examination good = examine(store, order_path("base"));
  ASSERT_TRUE(good);
  EXPECT_THAT(good.problems, IsEmpty());
  EXPECT_FALSE(good.bed->is_stopped());
  const Examination unreadable = examine(store, order_path("base"), {"track.rail_length=long"});
  EXPECT_FALSE(unreadable);
  ASSERT_FALSE(unreadable.problems.empty());
  EXPECT_EQ(unreadable.problems.front().where.key, "track.rail_length");
  const Examination not_laid = examine(store, order_path("base"), {"track.clamps=[{bunk: 14}]"});
  EXPECT_FALSE(not_laid);
  ASSERT_FALSE(not_laid.problems.empty());
  EXPECT_THAT(not_laid.problems.front().what, HasSubstr("no bunk 14"));
  EXPECT_FALSE(examine(store, "no/such/order.yaml"));
}

TEST(Examine, TellsOfBedAndOfLoads) {
  const Examination weak =
      examine(demo_job("base", {"limits.tab_load=9000 lb", "frame.coupler.rating=500 lb"}));
  std::set<std::string> stops;
  for (const Finding& f : weak.bed->findings)
    if (f.severity == Severity::stop) stops.insert(f.code);
  EXPECT_TRUE(stops.contains("WELD-LOAD"));
  EXPECT_TRUE(stops.contains("TOW-COUPLER"));
}

// A judge that says of every pair what it was told to, and counts how often it is asked.
struct ToldJudge : PairJudge {
  ToldJudge(PairResult told, int& asked) : result(told), count(asked) {}
  std::optional<PairResult> judge(int, int, bool) override { return ++count, result; }
  PairResult result;
  int& count;
};

JudgeMaker told(PairResult result, int& asked) {
  return [result, &asked](const Bed&) { return std::make_unique<ToldJudge>(result, asked); };
}

bool has(const std::vector<Finding>& findings, const std::string& code, Severity severity) {
  return std::any_of(findings.begin(), findings.end(),
                     [&](const Finding& f) { return f.code == code && f.severity == severity; });
}

// base has pairs the cheap test leaves open.
TEST(Examine, AnOpenPairIsAWarningUntilAJudgeDecidesIt) {
  const Job job = demo_job("base");
  EXPECT_TRUE(has(examine(job).bed->findings, "CLASH", Severity::warn));
  int asked = 0;
  const auto clear = examine(job, {told({5, 0}, asked)});
  EXPECT_GT(asked, 0);
  EXPECT_FALSE(has(clear.bed->findings, "CLASH", Severity::warn));
  EXPECT_FALSE(clear.bed->is_stopped());
  const auto shared = examine(job, {told({0, 1e4}, asked)});
  EXPECT_TRUE(has(shared.bed->findings, "CLASH", Severity::stop));
}

TEST(Examine, AsksNoJudgeOfABedThatIsStoppedAnywayWhereToldNotTo) {
  int asked = 0;
  const Job job = demo_job("base", {"frame.coupler.rating=500 lb"});  // a stop of loads alone
  examine(job, {told({5, 0}, asked), true});
  EXPECT_EQ(asked, 0);
  examine(job, {told({5, 0}, asked), false});
  EXPECT_GT(asked, 0);
}

// --- blind to printed words ---------------------------------------------------

// Every printed word between two marks: what is compared with a word no longer finds it.
std::string marked(const std::string& word) { return word.empty() ? word : "~" + word + "^"; }

std::string without_marks(std::string text) {
  std::erase_if(text, [](char c) { return c == '~' || c == '^'; });
  return text;
}

template <std::size_t n>
void mark_all(std::array<std::string, n>& all) {
  for (std::string& word : all) word = marked(word);
}

Words marked_words() {
  Words w = shop_words();
  mark_all(w.item), mark_all(w.part), mark_all(w.pose), mark_all(w.part_pose), mark_all(w.piece),
      mark_all(w.hardware);
  mark_all(w.weld_line);
  for (std::string* word : {&w.clip_part, &w.front, &w.rear, &w.left, &w.right, &w.on_bunk})
    *word = marked(*word);
  return w;
}

std::string told(const Finding& f, bool strip) {
  std::string text = f.code + "\n" + f.message + "\n" + f.remedy;
  for (const Subject& s : f.subjects) text += "\n" + s.name;
  for (const Change& c : f.changes) text += "\n" + c.key + "=" + c.value;
  return strip ? without_marks(text) : text;
}

class AnyWords : public ::testing::TestWithParam<std::vector<std::string>> {};
INSTANTIATE_TEST_SUITE_P(
    Orders, AnyWords,
    ::testing::Values(std::vector<std::string>{"base"}, std::vector<std::string>{"one_extension"},
                      std::vector<std::string>{"metric"}, std::vector<std::string>{"lot_frame"},
                      std::vector<std::string>{"wrong"},
                      std::vector<std::string>{"base", "limits.tab_load=9000 lb"},
                      std::vector<std::string>{"base", "frame.welds.leg=1/2 in",
                                               "track.clamps=[{bunk: 1}, {bunk: 3}]", "jacks=[30 in, 100 in]",
                                               "tabs_found=[{tab: R7, x: 3/8 in}]"},
                      std::vector<std::string>{"one_extension", "kit.mounting.hole.slot=16 mm",
                                               "bolts.track=1 in", "work.log.diameter=48 in"}));

TEST_P(AnyWords, FindTheSameFaults) {
  const std::string order = GetParam().front();
  const std::vector<std::string> sets(GetParam().begin() + 1, GetParam().end());
  const Examination usual = examine(demo_job(order, sets));
  const WordsInUse others(marked_words());
  const Examination renamed = examine(demo_job(order, sets));
  const std::vector<Finding>&a = usual.bed->findings, &b = renamed.bed->findings;
  ASSERT_EQ(a.size(), b.size());
  int with_names = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    EXPECT_EQ(a[i].subjects, b[i].subjects) << a[i].message;
    EXPECT_EQ(a[i].severity, b[i].severity) << a[i].message;
    EXPECT_EQ(a[i].measured, b[i].measured) << a[i].message;
    EXPECT_EQ(a[i].limit, b[i].limit) << a[i].message;
    EXPECT_EQ(told(a[i], false), told(b[i], true));
    with_names += told(b[i], false) != told(b[i], true);
  }
  EXPECT_GT(with_names, 0) << "the words in use were not used";
  EXPECT_EQ(usual.bed->loads.stand.bunk_stress, renamed.bed->loads.stand.bunk_stress);
  EXPECT_EQ(usual.bed->loads.weights.frame.mass, renamed.bed->loads.weights.frame.mass);
  EXPECT_EQ(usual.bed->loads.weights.head.mass, renamed.bed->loads.weights.head.mass);
}

}  // namespace
}  // namespace bedwright
