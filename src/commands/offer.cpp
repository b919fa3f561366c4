#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <set>
#include <sstream>

#include "commands/kernel_judge.h"
#include "commands/packet_files.h"
#include "commands/session.h"
#include "export/page_svg.h"
#include "export/pdf.h"
#include "offer/picture.h"
#include "offer/table.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t near_misses = 12;
// A map of more pages is read by a program, from the table.
constexpr std::size_t most_pages = 120;

// What the user has to mend; ends the command.
struct Refusal {
  std::string text;
};

Grid grid_of(const OfferArguments& arguments) {
  if (arguments.vary.empty()) throw Refusal{"nothing to vary; add --vary track.rail_length=72..96in/1in, once a key"};
  std::vector<Varied> varied;
  std::set<std::string> keys;
  for (const std::string& text : arguments.vary) {
    auto parsed = parse_varied(text);
    if (const VaryFault* bad = std::get_if<VaryFault>(&parsed)) throw Refusal{fmt::format("--vary {}: {}; {}", bedwright::quoted(text), bad->what, bad->would_do)};
    varied.push_back(std::move(std::get<Varied>(parsed)));
    if (!keys.insert(varied.back().key).second) throw Refusal{fmt::format("--vary names {} twice; give all its values at once", varied.back().key)};
  }
  Grid grid(std::move(varied));
  if (!grid.size()) throw Refusal{fmt::format("these come to more than {} combinations; vary fewer values", Grid::most_combinations)};
  return grid;
}

bool is_unknown_key(const std::vector<Problem>& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& p) { return p.where.file == "--set" && p.what == "is no known key"; });
}

// The order as the map's heading needs it, from the first combination that reads:
// the order alone may not, when it leaves what is varied to the map.
Job heading_job(const OfferArguments& arguments, const Grid& grid) {
  constexpr std::uint64_t most_looked_at = 2000;
  FileStore store;
  std::vector<Problem> first;
  for (std::uint64_t i = 0; i < std::min(*grid.size(), most_looked_at); ++i) {
    std::vector<std::string> sets = arguments.sets;
    for (std::string& set : grid.sets_of(i)) sets.push_back(std::move(set));
    auto read = load_job(store, arguments.order, sets);
    if (Job* job = std::get_if<Job>(&read)) return std::move(*job);
    if (i == 0) first = std::move(std::get<std::vector<Problem>>(read));
    if (is_unknown_key(first)) break;
  }
  std::string text = "no combination reads; the first:";
  for (const Problem& p : first) text += "\n" + to_line(p);
  throw Refusal{text};
}

void write_whole(const fs::path& path, const std::string& bytes) {
  const fs::path part = path.string() + fmt::format(".part-{}", ::getpid());
  std::ofstream file(part, std::ios::binary);
  file << bytes;
  file.close();
  std::error_code error;
  if (file) fs::rename(part, path, error);
  if (!file || error) {
    const std::string why = error ? error.message() : std::strerror(errno);
    std::error_code ignored;  // the part may never have been made
    fs::remove(part, ignored);
    throw Refusal{fmt::format("cannot write {}: {}", path.string(), why)};
  }
}

std::string read_whole(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  if (!in) throw Refusal{fmt::format("cannot read {}: {}", path, std::strerror(errno))};
  return text.str();
}

MapFile drawn(const OfferArguments& arguments, Progress& progress) {
  Grid grid = grid_of(arguments);
  PartOf part;
  if (!arguments.part.empty()) {
    const auto parsed = parse_part(arguments.part);
    if (!parsed) throw Refusal{fmt::format("--part {} is no part; write 3/16 for the third of sixteen", bedwright::quoted(arguments.part))};
    part = *parsed;
  }
  Job job = heading_job(arguments, grid);
  job.sets = arguments.sets;
  const Heading& h = job.order.order;
  MapSettings settings;
  settings.near_misses = static_cast<int>(near_misses);
  settings.progress = [&](const char* what, std::uint64_t done, std::uint64_t all) {
    constexpr int cells = 30;
    const int filled = static_cast<int>(done * cells / all);
    progress.step(fmt::format("[{}{}] {} of {} {}", std::string(filled, '#'), std::string(cells - filled, '.'), done, all, what));
  };
  PairMemory memory;
  const CheckBed check = [&memory](const Job& j, const Bed& bed, bool exact) {
    KernelJudge judge(bed, &memory);
    return check_once(j, bed, exact ? &judge : nullptr, false);
  };
  return {version(), h.number, h.revision, h.date, input_digest(job), h.printing,
          draw_map(arguments.order, arguments.sets, std::move(grid), part, check, settings)};
}

MapFile joined(const OfferArguments& arguments) {
  std::vector<MapFile> parts;
  for (const std::string& path : arguments.merge) {
    auto read = read_map_json(read_whole(path));
    if (const std::string* bad = std::get_if<std::string>(&read)) throw Refusal{fmt::format("{} {}", path, *bad)};
    parts.push_back(std::move(std::get<MapFile>(read)));
  }
  auto all = merged(std::move(parts), near_misses);
  if (const std::string* bad = std::get_if<std::string>(&all)) throw Refusal{*bad};
  return std::move(std::get<MapFile>(all));
}

// Names of the files written.
std::vector<std::string> write(const MapFile& file, const fs::path& folder, Progress& progress) {
  progress.step("writing");
  std::vector<std::string> names;
  const auto put = [&](const std::string& name, const std::string& bytes) {
    write_whole(folder / name, bytes);
    names.push_back(name);
  };
  if (file.map.part.of > 1) {
    put(fmt::format("offer-{}-of-{}.json", file.map.part.number, file.map.part.of), map_json(file));
    return names;
  }
  put("offer.csv", map_csv(file));
  put("offer.json", map_json(file));
  const std::vector<Page> pages = map_pages(file);
  if (pages.size() > most_pages) return names;
  put("offer.pdf", pages_pdf(pages, {fmt::format("Order {}: what can be offered", file.number), file.date}));
  for (std::size_t i = 0; i < pages.size(); ++i) put(i == 0 ? "offer.svg" : fmt::format("offer-{}.svg", i + 1), page_svg(pages[i]));
  return names;
}

// Pictures of a map drawn before, which this one may have fewer of.
void remove_pictures(const fs::path& folder) {
  for (const auto& entry : fs::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    if (name == "offer.svg" || name == "offer.pdf" || (name.starts_with("offer-") && name.ends_with(".svg"))) fs::remove(entry.path());
  }
}

// The combinations by themselves: without the start of the process, the near misses
// and the files.
void print_times(const OfferMap& map) {
  const double count = static_cast<double>(std::max<std::size_t>(1, map.rows.size()));
  fmt::print("{:.2f} s on {} core{}, {:.0f} a second, {:.2f} ms of processor time each; near misses {:.2f} s more.\n", map.seconds, map.threads,
             map.threads == 1 ? "" : "s", count / map.seconds, 1e3 * map.cpu_seconds / count, map.near_seconds);
}

void summarise(const MapFile& file, const fs::path& folder, const std::vector<std::string>& names) {
  int of[3] = {0, 0, 0};
  for (const MapRow& r : file.map.rows) ++of[static_cast<int>(r.fit)];
  fmt::print("{} combinations: {} fit, {} stopped, {} cannot be laid out.\n", file.map.rows.size(), of[0], of[1], of[2]);
  if (file.map.seconds > 0) print_times(file.map);
  int number = 0;
  for (const NearMiss& n : file.map.near) {
    if (n.changes.empty() || ++number > 3) continue;
    std::string with;
    for (const Change& c : n.changes) with += fmt::format(" --set {}=\"{}\"", c.key, c.value);
    fmt::print("Near: {} would fit with{}\n", fmt::join(file.map.grid.sets_of(n.combination), ", "), with);
  }
  fmt::print("Wrote {} in {}{}\n", names.size() <= 6 ? fmt::format("{}", fmt::join(names, ", ")) : fmt::format("{} files", names.size()), folder.string(),
             file.map.part.of == 1 && names.size() == 2 ? "; a picture would be too many pages" : "");
}

}  // namespace

ExitCode offer_command(const OfferArguments& arguments) {
  Progress progress;
  try {
    if (arguments.order.empty() && arguments.merge.empty()) throw Refusal{"give an order file, or --merge and the parts to join"};
    const MapFile file = arguments.merge.empty() ? drawn(arguments, progress) : joined(arguments);
    const fs::path folder = arguments.out.empty() ? home() / "out" / (file.number + "-offer") : fs::path(arguments.out);
    fs::create_directories(folder);
    if (file.map.part.of == 1) remove_pictures(folder);
    const std::vector<std::string> names = write(file, folder, progress);
    progress.step("");
    summarise(file, folder, names);
    return released;
  } catch (const Refusal& refusal) {
    progress.step("");
    fmt::print(stderr, "bedwright: {}\n", refusal.text);
  } catch (const fs::filesystem_error& e) {  // a place that cannot be written is the user's to mend
    progress.step("");
    fmt::print(stderr, "bedwright: {}\n", e.what());
  }
  return bad_input;
}

}  // namespace bedwright
