// bedwright offer: draws the map of a grid of orders, or merges parts of one.
#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>
#include <set>

#include "commands/home.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "commands/write_map.h"
#include "formats/digest.h"
#include "formats/font.h"
#include "kernel/kernel_judge.h"
#include "offer/table.h"
#include "packet/packet_files.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t near_misses = 12;

// What the user has to mend; ends the command.
struct Refusal {
  std::string text;
};

Grid grid_of(const OfferArguments& arguments) {
  if (arguments.vary.empty())
    throw Refusal{"nothing to vary; add --vary track.rail_length=72..96in/1in, once a key"};
  std::vector<Varied> varied;
  std::set<std::string> keys;
  for (const std::string& text : arguments.vary) {
    auto parsed = parse_varied(text);
    if (const VaryFault* bad = std::get_if<VaryFault>(&parsed))
      throw Refusal{fmt::format("--vary {}: {}; {}", bedwright::quoted(text), bad->what, bad->would_do)};
    if (first_bad_byte(text) != std::string::npos) throw Refusal{"a --vary has bytes that are no UTF-8"};
    varied.push_back(std::move(std::get<Varied>(parsed)));
    if (varied.back().key == "order.assembly_template")
      throw Refusal{"order.assembly_template makes no difference to what fits; vary something else"};
    if (!keys.insert(varied.back().key).second)
      throw Refusal{fmt::format("--vary names {} twice; give all its values at once", varied.back().key)};
  }
  for (const std::string& set : arguments.sets)
    if (first_bad_byte(set) != std::string::npos) throw Refusal{"a --set has bytes that are no UTF-8"};
  Grid grid(std::move(varied));
  if (!grid.size())
    throw Refusal{
        fmt::format("these come to more than {} combinations; vary fewer values", Grid::most_combinations)};
  return grid;
}

std::vector<std::string> sets_with(const OfferArguments& arguments, const std::vector<std::string>& more) {
  std::vector<std::string> sets = arguments.sets;
  sets.insert(sets.end(), more.begin(), more.end());
  return sets;
}

// The sets of the first combination with each value of one parameter in turn.
template <class Use>
void for_each_value(const OfferArguments& arguments, const Grid& grid, std::size_t parameter, Use use) {
  const Varied& v = grid.varied()[parameter];
  std::vector<std::string> sets = grid.sets_of(0);
  for (const std::string& value : v.values) {
    sets[parameter] = v.key + "=" + value;
    use(value, sets_with(arguments, sets));
  }
}

// A value that can never be read is a slip of the pen, not a size that cannot be had.
void refuse_unreadable_values(FileStore& store, const OfferArguments& arguments, const Grid& grid) {
  for (std::size_t i = 0; i < grid.varied().size(); ++i) {
    const std::string& key = grid.varied()[i].key;
    for_each_value(arguments, grid, i, [&](const std::string& value, const std::vector<std::string>& sets) {
      const auto read = load_job(store, arguments.order, sets);
      const auto* problems = std::get_if<std::vector<Problem>>(&read);
      if (!problems) return;
      for (const Problem& p : *problems)
        if (p.where.file == "--set" && p.where.key == key)
          throw Refusal{fmt::format("--vary {}: the value {} cannot be used: {}{}", key,
                                    bedwright::quoted(value), p.what,
                                    p.would_do.empty() ? "" : "; " + p.would_do)};
    });
  }
}

// The order as the map's heading needs it, from the first combination that reads:
// the order alone may not, when it leaves what is varied to the map.
Job heading_job(FileStore& store, const OfferArguments& arguments, const Grid& grid) {
  constexpr std::uint64_t most_looked_at = 2000;
  std::vector<Problem> first;
  const std::uint64_t looked_at = std::min(*grid.size(), most_looked_at);
  for (std::uint64_t i = 0; i < looked_at; ++i) {
    auto read = load_job(store, arguments.order, sets_with(arguments, grid.sets_of(i)));
    if (Job* job = std::get_if<Job>(&read)) return std::move(*job);
    if (i == 0) first = std::move(std::get<std::vector<Problem>>(read));
  }
  std::string text =
      looked_at == *grid.size()
          ? "no combination reads; the first:"
          : fmt::format("none of the first {} combinations reads; give values that read first. The first:",
                        looked_at);
  for (const Problem& p : first) text += "\n" + to_line(p);
  throw Refusal{text};
}

// The customer's words are read by check and draw too: a map must not offer what they refuse.
void refuse_bad_templates(const OfferArguments& arguments, const Job& job, std::vector<InputFile>& inputs) {
  const Examination examination = examine(job, {{}, false, false});
  if (!examination) return;  // each combination reports its own problems
  const std::vector<Problem> problems = assembly_problems(*examination.bed, arguments.order, inputs);
  if (problems.empty()) return;
  std::string text = "the assembly sheets cannot be filled in:";
  for (const Problem& p : problems) text += "\n" + to_line(p);
  throw Refusal{text};
}

// Over all that the run reads: where another kit, frame or catalogue is tried, theirs too.
std::string digest_of_run(FileStore& store, const OfferArguments& arguments, const Grid& grid,
                          const std::vector<InputFile>& inputs) {
  const std::string first = input_digest(inputs, arguments.sets);
  std::string others;
  for (std::size_t i = 0; i < grid.varied().size(); ++i) {
    const std::string& key = grid.varied()[i].key;
    if (key != "kit" && key != "frame" && !key.starts_with("catalog")) continue;
    for_each_value(arguments, grid, i, [&](const std::string&, const std::vector<std::string>& sets) {
      const auto read = load_job(store, arguments.order, sets);
      others += "\n" + (std::holds_alternative<Job>(read)
                            ? input_digest(std::get<Job>(read).inputs, std::get<Job>(read).sets)
                            : "cannot be read");
    });
  }
  return others.empty() ? first : sha256(first + others);
}

// What all combinations share, for whoever holds the paper without the order.
std::vector<std::string> what_it_holds_for(const Job& job, const std::vector<std::string>& sets,
                                           const Grid& grid) {
  const auto is_varied = [&](const std::string& key) {
    return std::any_of(grid.varied().begin(), grid.varied().end(),
                       [&](const Varied& v) { return v.key == key || v.key.starts_with(key + "."); });
  };
  const Figures say = job.order.order.figures();
  std::string text = fmt::format("Kit: {}. Frame: {}.", is_varied("kit") ? "as varied" : job.kit.name,
                                 is_varied("frame") ? "as varied" : job.frame.name);
  const auto& log = job.order.work.log;
  if (is_varied("work"))
    text += " Log: as varied.";
  else if (log)
    text += fmt::format(" Worked with a log of {} by {}, {}.", say.say(log->diameter), say.say(log->length),
                        log->species.text);
  else
    text += " No log is named: no load of one is counted.";
  std::vector<std::string> lines{std::move(text)};
  if (!sets.empty()) lines.push_back(fmt::format("Changed from the order file: {}.", fmt::join(sets, "; ")));
  return lines;
}

std::string read_whole(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  if (!in.is_open() || in.bad()) throw Refusal{fmt::format("cannot read {}: {}", path, std::strerror(errno))};
  return text;
}

// Before minutes of work, not behind them.
void refuse_without_font() {
  if (const std::string fault = font_fault(); !fault.empty()) throw Refusal{fault};
}

fs::path folder_for(const OfferArguments& arguments, const std::string& number) {
  return arguments.out.empty() ? home().out() / (number + "-offer") : fs::path(arguments.out);
}

// What cannot be written is the user's to mend.
template <class Use>
auto on_disk(Use use) {
  try {
    return use();
  } catch (const std::runtime_error& refused) {
    throw Refusal{refused.what()};
  }
}

MapFile drawn(const OfferArguments& arguments, Progress& progress) {
  Grid grid = grid_of(arguments);
  PartOf part;
  if (!arguments.part.empty()) {
    const auto parsed = parse_part(arguments.part);
    if (!parsed)
      throw Refusal{fmt::format("--part {} is no part; write 3/16 for the third of sixteen",
                                bedwright::quoted(arguments.part))};
    part = *parsed;
  }
  if (part.of == 1) refuse_without_font();  // a part is a table, with no letters to set
  const std::uint64_t rows = part.to(*grid.size()) - part.from(*grid.size());
  if (rows == 0)
    throw Refusal{fmt::format("part {} of {} would be empty: there are {} combinations", part.number, part.of,
                              *grid.size())};
  if (rows > Grid::most_at_once)
    throw Refusal{
        fmt::format("{} combinations are more than one run takes ({}); give --part 1/{} and so on, and "
                    "--merge a thinner choice",
                    rows, Grid::most_at_once, (rows + Grid::most_at_once - 1) / Grid::most_at_once)};
  FileStore store;
  refuse_unreadable_values(store, arguments, grid);
  const Job job = heading_job(store, arguments, grid);
  std::vector<InputFile> inputs = job.inputs;
  refuse_bad_templates(arguments, job, inputs);
  const Heading& h = job.order.order;
  if (part.of == 1) on_disk([&] { check_map_folder(folder_for(arguments, h.number)); });
  MapSettings settings;
  settings.near_misses = static_cast<int>(near_misses);
  settings.progress = [&](const char* what, std::uint64_t done, std::uint64_t all) {
    constexpr int cells = 30;
    const int filled = static_cast<int>(done * cells / all);
    progress.step(fmt::format("[{}{}] {} of {} {}", std::string(filled, '#'),
                              std::string(cells - filled, '.'), done, all, what));
  };
  PairMemory memory;
  const std::string digest = digest_of_run(store, arguments, grid, inputs);
  std::vector<std::string> holds_for = what_it_holds_for(job, arguments.sets, grid);
  return {version(),
          h.number,
          h.revision,
          h.date,
          digest,
          h.printing,
          std::move(holds_for),
          draw_map(arguments.order, arguments.sets, std::move(grid), part, kernel_judge(&memory), settings)};
}

MapFile joined(const OfferArguments& arguments) {
  refuse_without_font();
  std::vector<MapFile> parts;
  for (const std::string& path : arguments.merge) {
    auto read = read_map_json(read_whole(path));
    if (const std::string* bad = std::get_if<std::string>(&read))
      throw Refusal{fmt::format("{} {}", path, *bad)};
    parts.push_back(std::move(std::get<MapFile>(read)));
  }
  auto all = merged(std::move(parts), near_misses);
  if (const std::string* bad = std::get_if<std::string>(&all)) throw Refusal{*bad};
  MapFile& map = std::get<MapFile>(all);
  if (map.number.empty() || map.number.find_first_of("/\\") != std::string::npos || map.number.front() == '.')
    throw Refusal{"the parts' order number cannot be a folder's name; give --out"};
  return std::move(map);
}

// The combinations by themselves: without the start of the process, the near misses
// and the files.
void print_times(const OfferMap& map) {
  const double count = static_cast<double>(std::max<std::size_t>(1, map.rows.size()));
  fmt::print(
      "{:.2f} s on {} core{}, {:.0f} a second, {:.2f} ms of processor time each; near misses {:.2f} s "
      "more.\n",
      map.seconds, map.threads, map.threads == 1 ? "" : "s", count / map.seconds,
      1e3 * map.cpu_seconds / count, map.near_seconds);
}

void summarise(const MapFile& file, const fs::path& folder, const std::vector<std::string>& names) {
  int of[3] = {0, 0, 0};
  for (const MapRow& r : file.map.rows) ++of[static_cast<int>(r.fit)];
  fmt::print("{} combinations: {} fit, {} stopped, {} cannot be laid out.\n", file.map.rows.size(), of[0],
             of[1], of[2]);
  if (file.map.seconds > 0) print_times(file.map);
  int number = 0;
  for (const NearMiss& n : file.map.near) {
    if (n.changes.empty() || ++number > 3) continue;
    std::string with;
    for (const Change& c : n.changes) with += fmt::format(" --set {}=\"{}\"", c.key, c.value);
    fmt::print("Near: {} would fit with{}\n", fmt::join(file.map.grid.sets_of(n.combination), ", "), with);
  }
  fmt::print(
      "Wrote {} in {}{}\n",
      names.size() <= 6 ? fmt::format("{}", fmt::join(names, ", ")) : fmt::format("{} files", names.size()),
      folder.string(),
      file.map.part.of == 1 && names.size() == 3 ? "; a picture would be too many pages" : "");
}

}  // namespace

ExitCode offer_command(const OfferArguments& arguments) {
  Progress progress;
  try {
    if (arguments.order.empty() && arguments.merge.empty())
      throw Refusal{"give an order file, or --merge and the parts to join"};
    const MapFile file = arguments.merge.empty() ? drawn(arguments, progress) : joined(arguments);
    const fs::path folder = folder_for(arguments, file.number);
    progress.step("writing");
    const std::vector<std::string> names = on_disk([&] { return write_map(file, folder); });
    progress.step("");
    summarise(file, folder, names);
    return released;
  } catch (const Refusal& refusal) {
    progress.step("");
    tell("bedwright: {}\n", refusal.text);
  } catch (const fs::filesystem_error& e) {  // a place that cannot be written is the user's to mend
    progress.step("");
    tell("bedwright: {}\n", e.what());
  }
  return bad_input;
}

}  // namespace bedwright
