// Failures counted by kind, the first few of each with what it takes to see them again.
#pragma once

#include <fmt/format.h>
#include <signal.h>
#include <sys/time.h>
#include <unistd.h>

#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <map>
#include <string>
#include <vector>

namespace bedwright::sweep {

inline std::uint64_t number_from(const char* name, std::uint64_t otherwise) {
  const char* text = std::getenv(name);
  return text && *text ? std::strtoull(text, nullptr, 10) : otherwise;
}

class Tally {
 public:
  // Whether this one is among those told.
  bool count(const std::string& kind) { return ++kinds_[kind].count <= most_told; }
  void tell(const std::string& kind, const std::string& what, const std::string& again) {
    kinds_[kind].told.push_back(what + "\n    " + again);
  }
  int all() const {
    int all = 0;
    for (const auto& [kind, k] : kinds_) all += k.count;
    return all;
  }
  std::string told() const {
    std::string text;
    for (const auto& [kind, k] : kinds_) {
      text += fmt::format("{}: {}\n", kind, k.count);
      for (const std::string& one : k.told) text += "  " + one + "\n";
    }
    return text;
  }

 private:
  static constexpr int most_told = 6;
  struct Kind {
    int count = 0;
    std::vector<std::string> told;
  };
  std::map<std::string, Kind> kinds_;
};

// Ends a run that hangs, and says on what. One of a process. Its clock is the processor's:
// on a laden machine a process may stand still for minutes and be well.
class Watch {
 public:
  Watch() { signal(SIGPROF, tell_and_leave); }
  ~Watch() { set(0); }
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

  // What may take this long from now.
  void on(const std::string& what, long seconds = 60) {
    std::strncpy(under_way, what.c_str(), sizeof under_way - 1);
    set(seconds);
  }

 private:
  inline static char under_way[8000];
  static void set(long seconds) {
    const itimerval once{{0, 0}, {seconds, 0}};
    setitimer(ITIMER_PROF, &once, nullptr);
  }
  static void say(const char* text) {
    [[maybe_unused]] const auto written = write(2, text, std::strlen(text));
  }
  static void tell_and_leave(int) {
    say("no answer in time: ");
    say(under_way);
    say("\n");
    _exit(99);
  }
};

}  // namespace bedwright::sweep
