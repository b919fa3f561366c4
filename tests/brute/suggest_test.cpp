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
  EXPECT_EQ(quiet(suggesting("base", {"bolts.track=1 in"}, file)), stopped) << "the order given is still stopped";
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
  std::cout << faulty << " faulty orders, " << written << " with changes that clear them, written and checked\n";
}

}  // namespace
}  // namespace bedwright
