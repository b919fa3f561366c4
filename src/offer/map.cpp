// Tries combinations on several threads, each with files and memory of its own.
#include "offer/map.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cctype>
#include <chrono>
#include <cmath>
#include <ctime>
#include <exception>
#include <map>
#include <mutex>
#include <thread>

#include "examine/findings_json.h"
#include "offer/margins.h"
#include "offer/near_miss.h"
#include "rules/loads/rules.h"

namespace bedwright {
namespace {

bool is_stop(const Finding& f) { return f.severity == Severity::stop; }

// Loads first, by the share of the limit; then lengths, the shortest before others;
// then what has neither.
bool binds_more(const Finding& a, const Finding& b) {
  const auto rank = [](const Finding& f) { return is_about_loads(f.code) ? 0 : f.unit == "mm" ? 1 : 2; };
  if (rank(a) != rank(b)) return rank(a) < rank(b);
  const auto share = [](const Finding& f) { return f.margin / std::max(std::abs(f.limit), 1e-9); };
  return rank(a) == 1 ? a.margin < b.margin : share(a) < share(b);
}

// "HOLE-FIT, CLASH": which rules, however often.
std::string rules_of(const MapRow& row) {
  std::string rules;
  for (const char c : row.by_rule)
    if (!std::isdigit(static_cast<unsigned char>(c))) rules += c;
  return rules;
}

void tell(const Spare& spare, MapRow& row) {
  row.code = spare.code;
  row.margin = to_a_millionth(spare.margin);
  row.unit = spare.unit;
  row.subject = spare.subject;
}

std::string counted_by_rule(const std::vector<Finding>& findings, Severity severity) {
  std::vector<std::pair<std::string, int>> counts;  // findings come in the table's order
  for (const Finding& f : findings) {
    if (f.severity != severity) continue;
    if (counts.empty() || counts.back().first != f.code) counts.push_back({f.code, 0});
    ++counts.back().second;
  }
  std::string text;
  for (const auto& [code, count] : counts)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", code, count);
  return text;
}

void tell_stops(const Examined& e, const std::vector<Finding>& findings, MapRow& row) {
  row.fit = Fit::stopped;
  row.by_rule = counted_by_rule(findings, Severity::stop);
  const Finding* worst = nullptr;
  for (const Finding& f : findings)
    if (is_stop(f) && (!worst || binds_more(f, *worst))) worst = &f;
  row.code = worst->code;
  row.margin = to_a_millionth(worst->margin);
  row.unit = worst->unit;
  row.subject = worst->subjects.empty() ? "" : worst->subjects.front().name;
  row.change = worst->remedy;
  // Loads are measured as they are for combinations that fit. What must be tried to be
  // known (jacks, a lighter log) is worked out for the near misses only.
  if (!is_about_loads(row.code)) return;
  if (worst->measured > worst->limit && worst->limit > 0) {
    row.margin = to_a_millionth(100 * worst->margin / worst->limit);
    row.unit = "%";
  } else if (const auto load = load_spare(row.code, load_margins(e.job, e.loads)))
    tell(*load, row);
}

void tell_room(const Examined& e, MapRow& row) {
  const auto spare = smallest_spare(e.scene, e.job, load_margins(e.job, e.loads));
  if (!spare) return;
  tell(*spare, row);
  row.used = to_a_millionth(spare->used);
}

MapRow impossible(const std::vector<Problem>& problems) {
  MapRow row;
  row.fit = Fit::impossible;
  row.code = "INPUT";
  row.subject = problems.front().where.key;
  row.change =
      problems.front().what + (problems.front().would_do.empty() ? "" : "; " + problems.front().would_do);
  return row;
}

// Takes combinations from a common counter until there are none left, or another
// thread has failed.
template <class Do>
void on_all_cores(unsigned threads, std::uint64_t chunk, std::uint64_t from, std::uint64_t to,
                  const std::function<void(std::uint64_t, std::uint64_t)>& progress, Do work) {
  std::atomic<std::uint64_t> next = from, done = 0;
  std::mutex lock;
  std::exception_ptr failed;
  const auto run = [&] {
    try {
      FileStore store;  // one for each thread
      for (std::uint64_t at; (at = next.fetch_add(chunk)) < to;) {
        const std::uint64_t end = std::min(at + chunk, to);
        for (std::uint64_t i = at; i < end; ++i) work(store, i);
        done += end - at;
        const std::scoped_lock one_at_a_time(lock);
        progress(done, to - from);
      }
    } catch (...) {
      const std::scoped_lock one_at_a_time(lock);
      if (!failed) failed = std::current_exception();
      next = to;
    }
  };
  {
    std::vector<std::jthread> pool;
    for (unsigned i = 1; i < threads; ++i) pool.emplace_back(run);
    run();
  }
  if (failed) std::rethrow_exception(failed);
}

}  // namespace

MapRow row_of(const Examined& e) {
  std::vector<Finding> findings = e.findings;
  if (e.is_stopped())
    std::erase_if(findings,
                  [](const Finding& f) { return !is_stop(f) && is_about_clashes(f.code); });  // left open
  MapRow row;
  row.stops = static_cast<int>(std::count_if(findings.begin(), findings.end(), is_stop));
  row.warnings = static_cast<int>(std::count_if(
      findings.begin(), findings.end(), [](const Finding& f) { return f.severity == Severity::warn; }));
  row.warned_by = counted_by_rule(findings, Severity::warn);
  if (row.stops > 0)
    tell_stops(e, findings, row);
  else
    tell_room(e, row);
  return row;
}

// A row that the whole map keeps is kept by its part too: among fewer rows, its rank in
// its kind and among all can only be better.
std::vector<std::size_t> nearest_rows(const std::vector<MapRow>& rows, std::size_t most) {
  std::vector<std::size_t> stopped;
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (rows[i].fit == Fit::stopped) stopped.push_back(i);
  const auto key = [&](std::size_t i) {
    const MapRow& r = rows[i];
    return std::tuple(std::count(r.by_rule.begin(), r.by_rule.end(), ','), r.stops, r.unit, -r.margin,
                      r.combination);
  };
  std::sort(stopped.begin(), stopped.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  std::map<std::string, int> alike;
  std::vector<std::size_t> nearest;
  for (const std::size_t i : stopped) {
    if (nearest.size() == most) break;
    if (++alike[rules_of(rows[i])] <= most_alike) nearest.push_back(i);
  }
  return nearest;
}

OfferMap draw_map(const std::string& order_path, const std::vector<std::string>& sets, Grid grid, PartOf part,
                  const JudgeMaker& judge, const MapSettings& settings) {
  const std::uint64_t all = grid.size().value(), from = part.from(all), to = part.to(all);
  const unsigned threads =
      settings.threads ? settings.threads : std::max(1u, std::thread::hardware_concurrency());
  OfferMap map{std::move(grid), part, std::vector<MapRow>(to - from), {}, 0, 0, 0, threads};
  const auto seconds_since = [](std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  };
  const auto told = [&](const char* what) {
    return [&settings, what](std::uint64_t done, std::uint64_t of) {
      if (settings.progress) settings.progress(what, done, of);
    };
  };
  const auto start = std::chrono::steady_clock::now();
  const std::clock_t cpu_start = std::clock();
  const auto sets_of = [&](std::uint64_t combination) {
    std::vector<std::string> these = sets;
    for (std::string& set : map.grid.sets_of(combination)) these.push_back(std::move(set));
    return these;
  };
  constexpr std::uint64_t chunk = 8;
  on_all_cores(threads, chunk, from, to, told("combinations"), [&](FileStore& store, std::uint64_t i) {
    const Examination tried = examine(store, order_path, sets_of(i), {judge, true, false});
    MapRow row = tried ? row_of(*tried.bed) : impossible(tried.problems);
    row.combination = i;
    map.rows[i - from] = std::move(row);
  });
  map.seconds = seconds_since(start);
  map.cpu_seconds = static_cast<double>(std::clock() - cpu_start) / CLOCKS_PER_SEC;
  const auto near_start = std::chrono::steady_clock::now();
  const std::vector<std::size_t> nearest =
      nearest_rows(map.rows, static_cast<std::size_t>(settings.near_misses));
  map.near.resize(nearest.size());
  on_all_cores(threads, 1, 0, nearest.size(), told("near misses"), [&](FileStore& store, std::uint64_t k) {
    const std::uint64_t combination = map.rows[nearest[k]].combination;
    map.near[k] = near_miss(store, order_path, sets_of(combination), map.grid.varied(), judge);
    map.near[k].combination = combination;
  });
  map.near_seconds = seconds_since(near_start);
  return map;
}

}  // namespace bedwright
