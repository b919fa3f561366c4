// Sets what is drawn now beside what was released, in values, parts and files.
#include "commands/changes.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "commands/paste.h"
#include "compare/compare.h"
#include "kernel/kernel_judge.h"
#include "packet/inputs.h"
#include "rules/table.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

std::string joined(const std::set<std::string>& all) {
  std::string text;
  for (const std::string& one : all) text += (text.empty() ? "" : ", ") + one;
  return text;
}

std::string unreadable_text(const Recorded& earlier, const std::vector<Problem>& problems) {
  return wrapped(
      fmt::format("What revision {} was made from cannot be read by this program, so its parts are "
                  "not compared: {}",
                  earlier.order.revision,
                  problems.empty() ? "its inputs are not there" : to_line(problems.front())),
      0, columns());
}

std::string table_text(const Loaded& was, const Loaded& now, const Comparison& comparison,
                       const std::string& called) {
  return change_text(comparison, {was.examined->heading(), "", 0, called},
                     {now.examined->heading(), "", 0, "now"}, columns());
}

// Heading lines that no comparison of two orders tells, because every order has its own.
void add_heading(const Job& was, const Job& now, std::vector<HeadLine>& lines) {
  const Heading &a = was.order.order, &b = now.order.order;
  const auto line = [&](const char* key, const std::string& in_a, const std::string& in_b) {
    if (in_a != in_b) lines.push_back({key, in_a, in_b});
  };
  line("order.customer", a.customer, b.customer);
  line("order.date", a.date, b.date);
  const auto table = [](const Job& job) {
    std::string text;
    for (const Revision& r : job.order.revisions)
      text += fmt::format("{}{} {} {} {}", text.empty() ? "" : "; ", r.revision, r.date, r.by, r.what);
    return text.empty() ? std::string("none") : text;
  };
  line("revisions", table(was), table(now));
}

// B after A, AA after Z, 10 after 9.
std::string next_revision(std::string revision) {
  for (std::size_t i = revision.size(); i-- > 0;) {
    char& c = revision[i];
    if (c == 'Z' || c == 'z' || c == '9') {
      c = c == 'Z' ? 'A' : c == 'z' ? 'a' : '0';
      if (i == 0) return revision.insert(0, 1, c == '0' ? '1' : c);
      continue;
    }
    const bool counts = (c >= 'A' && c < 'Z') || (c >= 'a' && c < 'z') || (c >= '0' && c < '9');
    if (!counts) return revision + "2";
    ++c;
    return revision;
  }
  return revision;
}

std::string how_to_raise(const Recorded& earlier, const Job& now, const std::vector<HeadLine>& ordered) {
  const std::string letter = next_revision(now.order.order.revision), date = today();
  // What became of a key says more than that its file differs.
  std::string what;
  for (const HeadLine& line : ordered)
    if (line.what != "kit" && line.what != "frame" && line.what != "catalog" &&
        what.size() + line.what.size() + line.a.size() + line.b.size() < 80)
      what += fmt::format("{}{} {}, was {}", what.empty() ? "" : "; ", line.what, line.b, line.a);
  if (what.empty()) what = "say what was changed";
  std::string text =
      fmt::format("\nTo issue it, raise the letter: in the order's heading\n\n  revision: {}\n\nand {}\n\n",
                  letter, now.order.revisions.empty() ? "at its end" : "as a further entry of revisions");
  if (now.order.revisions.empty())
    text += fmt::format("revisions:\n  - {{revision: {}, date: {}, by: YOUR NAME, what: First issue}}\n",
                        earlier.order.revision.empty() ? now.order.order.revision : earlier.order.revision,
                        earlier.order.date.empty() ? now.order.order.date : earlier.order.date);
  return text +
         fmt::format("  - {{revision: {}, date: {}, by: YOUR NAME, what: {}}}\n", letter, date,
                     yaml_word(what)) +
         "\nTo take back what is out under this letter, and say why: draw with --replace \"WHY\"; the old "
         "files are\nkept beside, marked withdrawn.\n";
}

}  // namespace

namespace {

struct Group {
  const char *prefix, *again, *gone, *otherwise;
  bool stem = false;  // one sheet is three files
};
constexpr Group groups[] = {
    {"cut/", "Cut files to send again", "Cut files no longer used", "Cut files"},
    {"drill/", "Drill drawings to send and print again", "Drill drawings no longer used", "Drill drawings"},
    {"sheets/", "Sheets to print again", "Sheets no longer used", "Sheets", true},
    {"lists/", "Lists to print again", "Lists no longer used", "Lists"},
    {"bed.", "Model and picture that change", "Model and picture no longer there", "Model and picture"},
    {"inputs/", "What it is made from that reads otherwise", "What it is no longer made from", "Inputs"}};

std::set<std::string> named(const Group& group, const std::vector<std::string>& paths) {
  std::set<std::string> names;
  for (const std::string& path : paths) {
    if (!path.starts_with(group.prefix) || path == "sheets/all.pdf") continue;
    names.insert(group.stem ? path.substr(7, path.rfind('.') - 7) : path);
  }
  return names;
}

std::string line_of(const std::string& what, const std::set<std::string>& names) {
  return names.empty() ? "" : wrapped(fmt::format("{}: {}", what, joined(names)), 0, columns());
}

}  // namespace

std::string files_text(const Differences& differences) {
  std::string text;
  for (const Group& group : groups) {
    std::vector<std::string> again = differences.changed;
    again.insert(again.end(), differences.extra.begin(), differences.extra.end());
    text +=
        line_of(group.again, named(group, again)) + line_of(group.gone, named(group, differences.missing));
  }
  return text;
}

std::string otherwise_text(const Differences& differences) {
  std::string text;
  for (const Group& group : groups) {
    const std::string what = group.otherwise;
    text += line_of(what + " that would be written otherwise", named(group, differences.changed)) +
            line_of(what + " that would be written beside", named(group, differences.extra)) +
            line_of(what + " that would not be written", named(group, differences.missing));
  }
  return text;
}

std::string same_letter_text(const Recorded& earlier, const Loaded& now, const MadeRelease& made,
                             Progress& progress) {
  const Job& job = now.examined->job;
  std::vector<HeadLine> ordered;
  std::string text;
  std::vector<Problem> problems;
  const auto was =
      load({(earlier.folder / inputs_order).string(), {}}, {kernel_judge(), false, false}, problems);
  Differences files;
  if (was) {
    Comparison comparison = compared(*was, now);
    add_heading(was->examined->job, job, comparison.ordered);
    ordered = comparison.ordered;
    text += table_text(*was, now, comparison, "as released");
    // Neither with the marks of what it revises, and both with one digest: what then differs is
    // what is cut, drilled or drawn.
    const auto plain = [&](const Loaded& one) {
      return packet_files(packet_input(one, PacketState::released, made.packet.input_digest, progress)).files;
    };
    files = differences(plain(*was), plain(now));
  } else {
    text += "\n" + unreadable_text(earlier, problems);
    files = differences(earlier, made.packet.files);
  }
  if (earlier.version != made.packet.version)
    text += fmt::format("\nReleased by bedwright {}; this is {}.\n", earlier.version, made.packet.version);
  const std::string listed = files_text(files);
  if (!listed.empty()) text += "\n" + listed;
  if (files.none())
    return text +
           "\nAll that is cut, drilled and printed comes out as released: there is nothing to issue.\n";
  return text + how_to_raise(earlier, job, ordered);
}

std::optional<Recorded> last_release(const std::vector<Recorded>& of_order, const Order& order) {
  const auto rank = [&](const std::string& revision) {
    const auto found = std::find_if(order.revisions.begin(), order.revisions.end(),
                                    [&](const Revision& r) { return r.revision == revision; });
    return found == order.revisions.end() ? -1 : static_cast<int>(found - order.revisions.begin());
  };
  const int own = rank(order.order.revision);
  const Recorded* last = nullptr;
  for (const Recorded& record : of_order) {
    if (record.standing != Standing::released || record.order.revision == order.order.revision) continue;
    const int place = rank(record.order.revision);
    if (own >= 0 && place > own) continue;
    const auto later = [&] {
      const int known = rank(last->order.revision);
      return place != known ? place > known : record.order.date >= last->order.date;
    };
    if (!last || later()) last = &record;
  }
  return last ? std::optional(*last) : std::nullopt;
}

std::string since_text(const MadeRelease& made, const Loaded& now, const Recorded& earlier) {
  const std::string& letter = made.revised->revision;
  std::string text = fmt::format("\nAgainst revision {}\n", letter);
  if (!made.bed)
    return text + unreadable_text(earlier, made.unreadable) +
           "Take everything as changed: send every file and print every sheet again.\n";
  text += table_text(made.bed->was, now, compared(made.bed->was, now), "revision " + letter);
  std::vector<PacketFile> beside_sheets;
  for (const PacketFile& file : made.packet.files)
    if (!file.path.starts_with(inputs_folder) && !file.path.starts_with("sheets/") &&
        !file.path.starts_with("report."))
      beside_sheets.push_back(file);
  Differences files = differences(made.beside_sheets, beside_sheets);
  for (const FateOfSheet& sheet : made.sheets) {
    if (sheet.fate == SheetFate::as_before) continue;
    (sheet.fate == SheetFate::gone ? files.missing : files.changed)
        .push_back("sheets/" + sheet.file + ".svg");
  }
  const std::string listed = files_text(files);
  text += listed.empty() ? "\nNothing to send, print or cut again: it differs by its letter alone.\n"
                         : "\n" + listed +
                               "Print sheet_index with them: it tells which sheets changed and which stay "
                               "good. All others differ\nby letter, date and digits alone.\n";
  text +=
      fmt::format("Pieces already cut are scribed or marked REV {}: re-mark those that are used.\n", letter);
  if (earlier.version != made.packet.version)
    text += fmt::format(
        "Revision {} was released by bedwright {}, this is {}: what the program itself draws otherwise\n"
        "bedwright verify {} --redraw tells.\n",
        letter, earlier.version, made.packet.version, shell_word(earlier.folder.string()));
  return text;
}

}  // namespace bedwright
