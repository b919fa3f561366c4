// The program as its users run it, for tests.
#pragma once

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace bedwright::testing {

namespace fs = std::filesystem;

struct Outcome {
  int code = -1;
  std::string out;  // standard output and error together
};

// A shell word that is `text` and nothing else.
inline std::string quoted(const std::string& text) {
  std::string word = "'";
  for (char c : text) word += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return word + "'";
}

// Exit code and standard output of a shell's command line.
inline Outcome outcome_of(const std::string& command) {
  FILE* pipe = ::popen(command.c_str(), "r");
  if (!pipe) throw std::runtime_error("no shell");
  Outcome result;
  char buffer[4096];
  for (std::size_t n; (n = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) result.out.append(buffer, n);
  const int status = ::pclose(pipe);
  result.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return result;
}

inline Outcome run(const std::vector<std::string>& arguments) {
  std::string command = "timeout 60 " + quoted(BEDWRIGHT_PROGRAM);
  for (const std::string& a : arguments) command += " " + quoted(a);
  return outcome_of(command + " 2>&1 </dev/null");
}

inline std::string content(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

// Relative path to bytes of everything below a folder.
inline std::map<std::string, std::string> tree(const fs::path& folder) {
  std::map<std::string, std::string> all;
  if (fs::exists(folder))
    for (const auto& entry : fs::recursive_directory_iterator(folder))
      if (entry.is_regular_file())
        all[entry.path().lexically_relative(folder).generic_string()] = content(entry.path());
  return all;
}

class Program : public ::testing::Test {
 protected:
  void SetUp() override {
    char name[] = "/tmp/bedwright-test-XXXXXX";
    folder = ::mkdtemp(name);
  }
  void TearDown() override { fs::remove_all(folder); }
  fs::path folder;
};

// With params of its own in that folder, which a test may change, and base among its orders.
class OwnParams : public Program {
 protected:
  void SetUp() override {
    Program::SetUp();
    out = folder / "out";
    fs::create_directories(folder / "params");
    for (const char* part : {"orders", "kits", "frames", "catalog"})
      fs::copy(fs::path(BEDWRIGHT_SOURCE) / "params" / part, folder / "params" / part);
    order = folder / "params/orders/base.yaml";
    frame = folder / "params/frames/six_inch_plate.yaml";
  }
  static void change(const fs::path& file, const std::string& what, const std::string& with) {
    std::string text = content(file);
    const std::size_t at = text.find(what);
    ASSERT_NE(at, std::string::npos) << what;
    std::ofstream(file, std::ios::binary) << text.replace(at, what.size(), with);
  }
  fs::path out, order, frame;
};

}  // namespace bedwright::testing
