// check --suggest --write over faulty orders: a file that is written passes check.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>

#include "brute/random_order.h"
#include "commands/commands.h"
#include "support/demo.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

std::string fresh_file(const std::string& name) {
  const fs::path file = fs::path(::testing::TempDir()) / name;
  fs::remove(file);
  return file.string();
}

// What the command prints is kept off the test's own output.
ExitCode quiet(const CheckArguments& arguments) {
  ::testing::internal::CaptureStdout();
  const ExitCode code = check_command(arguments);
  ::testing::internal::GetCapturedStdout();
  return code;
}

CheckArguments suggesting(const std::string& order, std::vector<std::string> sets, const std::string& file) {
  CheckArguments a;
  a.order = testing::order_path(order);
  a.sets = std::move(sets);
  a.suggest = true;
  a.write = file;
  return a;
}

ExitCode checked(const std::string& file) {
  CheckArguments a;
  a.order = file;
  return quiet(a);
}

TEST(SuggestWrites, AnOrderThatPasses) {
  const std::string file = fresh_file("suggested.yaml");
  EXPECT_EQ(quiet(suggesting("base", {"bolts.track=1 in"}, file)), stopped)
      << "the order given is still stopped";
  ASSERT_TRUE(fs::exists(file));
  EXPECT_EQ(checked(file), released);
}

TEST(SuggestWrites, NeverOverAFileThatIsThere) {
  const std::string file = fresh_file("mine.yaml");
  std::ofstream(file) << "mine";
  ::testing::internal::CaptureStderr();
  EXPECT_EQ(check_command(suggesting("base", {"bolts.track=1 in"}, file)), bad_input);
  const std::string told = ::testing::internal::GetCapturedStderr();
  EXPECT_NE(told.find("is there already"), std::string::npos) << told;
  EXPECT_EQ(fs::file_size(file), 4u);
}

// What the command tells on standard output, without a file.
std::string suggested(std::vector<std::string> sets) {
  CheckArguments a = suggesting("base", std::move(sets), "");
  ::testing::internal::CaptureStdout();
  ::testing::internal::CaptureStderr();
  EXPECT_EQ(check_command(a), stopped);
  EXPECT_NE(::testing::internal::GetCapturedStderr().find("looking for the smallest change"),
            std::string::npos)
      << "nobody is to think it hangs";
  return ::testing::internal::GetCapturedStdout();
}

bool tells(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// The jack plate comes into a tab's clip by less than the cheap test can tell.
TEST(Suggests, TheJackPlaceThatOnlyTheKernelFindsClear) {
  const std::string told = suggested(
      {"frame=../frames/six_inch_clip.yaml", "jacks=[17 in, 110 in, 223 in]", "work.log.diameter=10 in"});
  EXPECT_TRUE(tells(told, "1 change clears every stop")) << told;
  EXPECT_TRUE(tells(told, "--set jacks[2]=\"114 in\"")) << told;
}

TEST(Suggests, TheAxlePlaceTheRulePutsFirst) {
  const std::string told = suggested({"axle.position=80 in"});
  EXPECT_TRUE(tells(told, "--set axle.position=\"137 in\"")) << told;
}

// A tab found beside its place wants a slot that its washer still covers.
TEST(Suggests, WhatClearsFiveMistakesInOneOrder) {
  const std::string told = suggested({"bolts.bunk=3/4 in", "bolts.track=1 in", "axle.position=120 in",
                                      "bolts.gusset=3/4 in", "tabs_found=[{tab: R7, x: 1/32 in}]"});
  EXPECT_TRUE(tells(told, "5 changes clear every stop")) << told;
  EXPECT_TRUE(tells(told, "fewer than 5 might")) << told;
  EXPECT_FALSE(tells(told, "--set tabs_found[")) << "what was measured stays\n" << told;
}

ExitCode answer_to(const std::string& file, std::string& told) {
  ::testing::internal::CaptureStderr();
  ::testing::internal::CaptureStdout();
  const ExitCode code = check_command(suggesting("base", {"bolts.track=1 in"}, file));
  told = ::testing::internal::GetCapturedStderr() + ::testing::internal::GetCapturedStdout();
  return code;
}

TEST(SuggestWrites, OnlyWhereAFileCanBeAndSaysSoBeforeTheSearch) {
  const std::string long_name(300, 'n');
  std::string told;
  for (const std::string& file :
       {::testing::TempDir() + "/no_such_folder/a.yaml", ::testing::TempDir() + "/" + long_name}) {
    EXPECT_EQ(answer_to(file, told), bad_input) << file;
    EXPECT_TRUE(tells(told, "cannot write")) << told;
    EXPECT_FALSE(tells(told, "looking for")) << told;
  }
}

TEST(SuggestWrites, TellsThatTheRevisionIsStillTheOldOne) {
  const std::string file = fresh_file("revision.yaml");
  std::string told;
  EXPECT_EQ(answer_to(file, told), stopped);
  EXPECT_TRUE(tells(told, "raise the revision before it is drawn")) << told;
  fs::remove(file);
}

// As many as BEDWRIGHT_SUGGEST_ORDERS says. A search for two or three changes may
// take a minute, so the usual run takes none of them.
TEST(SuggestWrites, OrdersThatPassForRandomFaults) {
  const char* wanted = std::getenv("BEDWRIGHT_SUGGEST_ORDERS");
  if (!wanted) GTEST_SKIP() << "set BEDWRIGHT_SUGGEST_ORDERS to run it";
  const int count = std::atoi(wanted);
  testing::OrderMaker maker(77);
  int faulty = 0, written = 0;
  for (int tried = 0; faulty < count && tried < 20 * count; ++tried) {
    const testing::RandomOrder order = maker.make();
    const std::string file = fresh_file("random_suggested.yaml");
    ::testing::internal::CaptureStderr();
    const ExitCode code = quiet(suggesting(order.name, order.sets, file));
    ::testing::internal::GetCapturedStderr();
    if (code != stopped) continue;
    ++faulty;
    if (!fs::exists(file)) continue;
    ++written;
    std::cout << written << " written of " << faulty << " faulty" << std::endl;
    std::string sets;
    for (const std::string& s : order.sets) sets += " --set '" + s + "'";
    EXPECT_EQ(checked(file), released) << order.name << sets;
  }
  std::cout << faulty << " faulty orders, " << written
            << " with changes that clear them, written and checked\n";
}

}  // namespace
}  // namespace bedwright
