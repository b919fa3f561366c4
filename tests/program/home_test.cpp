// Where the program finds its own folders, and where it writes.
#include "commands/home.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <fstream>

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

class HomeFound : public ::testing::Test {
 protected:
  void SetUp() override {
    char name[] = "/tmp/bedwright-test-XXXXXX";
    folder = ::mkdtemp(name);
  }
  void TearDown() override { fs::remove_all(folder); }
  fs::path made(const fs::path& home) const {
    fs::create_directories(folder / home / "params");
    fs::create_directories(folder / home / "templates");
    return folder / home;
  }
  fs::path made_source(const fs::path& home) const {
    fs::create_directories(folder / home / "src");
    std::ofstream(folder / home / "src" / "CMakeLists.txt") << "# a source tree\n";
    return made(home);
  }
  std::string refusal(const std::string& told) const {
    try {
      return "found " + find_home(told, folder / "usr/bin/bedwright", folder / "source").folder.string();
    } catch (const NoHome& missing) {
      return missing.what();
    }
  }
  fs::path folder;
};

TEST_F(HomeFound, WhatIsToldComesBeforeWhatIsInstalledBeforeTheSourceTree) {
  const fs::path source = made_source("source");
  const auto found = [&](const std::string& told) {
    return find_home(told, folder / "usr/bin/bedwright", source).folder;
  };
  EXPECT_EQ(found(""), source);
  const fs::path installed = made("usr/share/bedwright");
  EXPECT_EQ(found(""), installed);
  const fs::path told = made("told");
  EXPECT_EQ(found(told), told);
}

TEST_F(HomeFound, WhereThereIsNoneItSaysWhereItWasLookedFor) {
  EXPECT_THAT(refusal(""), HasSubstr("there is no " + (folder / "usr/share/bedwright").string() + " with "));
  // Half of it is none of it.
  fs::create_directories(folder / "usr/share/bedwright/params");
  EXPECT_THAT(refusal(""), HasSubstr("there is no "));
  made("usr/share/bedwright");
  EXPECT_THAT(refusal(""), HasSubstr("found "));
}

TEST_F(HomeFound, AFolderThatIsToldAndIsNoneIsNotPassedOver) {
  made("usr/share/bedwright");
  EXPECT_THAT(refusal(folder / "nowhere"), HasSubstr("BEDWRIGHT_HOME is " + (folder / "nowhere").string()));
}

TEST_F(HomeFound, OutIsTheSourceTreesOrBelowTheCurrentFolder) {
  const fs::path source = made_source("source");
  EXPECT_EQ(Home{source}.out(), source / "out");
  EXPECT_STREQ(Home{source}.command(), "./bedwright");
  const Home installed{made("usr/share/bedwright")};
  EXPECT_EQ(installed.out(), "out");
  EXPECT_STREQ(installed.command(), "bedwright");
}

}  // namespace
}  // namespace bedwright
