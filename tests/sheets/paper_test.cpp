// Sheets through outside readers: the PDF's words by pdftotext, the DXF by ezdxf.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

#include "bed/names.h"
#include "formats/dxf.h"
#include "formats/pdf.h"
#include "sheets/sheets.h"
#include "support/demo.h"

namespace bedwright {
namespace {

std::string folder() {
  std::filesystem::create_directories(SHEETS_TEMP);
  return SHEETS_TEMP;
}

void write(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary) << bytes;
}

std::string output_of(const std::string& command) {
  FILE* pipe = ::popen(command.c_str(), "r");
  if (!pipe) throw std::runtime_error("cannot run " + command);
  std::string out;
  std::array<char, 4096> buffer;
  for (std::size_t n; (n = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;)
    out.append(buffer.data(), n);
  if (::pclose(pipe) != 0) throw std::runtime_error(command + " failed: " + out);
  return out;
}

// The words of sheets as an outside reader finds them, lines kept as lines.
std::string words(const Job& job, const std::vector<Sheet>& sheets, const std::string& name) {
  std::vector<Page> pages;
  for (const Sheet& s : sheets) pages.push_back(page_of(s, paper_of(job.order.order)));
  const std::string path = folder() + "/" + name + ".pdf";
  write(path, pages_pdf(pages, {name, job.order.order.date}));
  return output_of("pdftotext -layout " + path + " -");
}

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> out;
  static const std::regex cell(R"(\S+(?: \+ \S+)?)");
  for (std::sregex_iterator it(line.begin(), line.end(), cell), end; it != end; ++it)
    out.push_back(it->str());
  return out;
}

// "77-1/2" in millimetres.
Mm inches(const std::string& figure) {
  static const std::regex shape(R"((-?)(?:(\d+)-)?(\d+)(?:/(\d+))?)");
  std::smatch m;
  if (!std::regex_match(figure, m, shape)) throw std::runtime_error("no tape figure: " + figure);
  const double whole = m[2].matched ? std::stod(m[2]) : 0, top = std::stod(m[3]),
               bottom = m[4].matched ? std::stod(m[4]) : 1;
  return (m[1].length() ? -1 : 1) * (whole + top / bottom) * inch;
}

struct PrintedTab {
  Side side = Side::middle;
  int number = 0;
  Mm tape_x = 0, x = 0, tape_y = 0, y = 0;  // from the tape figure, from the finer one beside it
};

// The rows of the tab table, read with nothing but its printed head.
std::vector<PrintedTab> printed_tabs(const std::string& text, bool metric) {
  std::vector<PrintedTab> tabs;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::vector<std::string> c = cells(line);
    if (c.size() > 2 && c[2] == "FOUND") c.erase(c.begin() + 2);  // it stands elsewhere than it was laid out
    if (c.size() != (metric ? 9U : 15U) || !(c[1] == "L + R" || c[1] == "L" || c[1] == "R") ||
        !std::isdigit(static_cast<unsigned char>(c[0][0])))
      continue;
    for (const char side : c[1]) {
      if (side != 'L' && side != 'R') continue;
      PrintedTab t{side == 'L' ? Side::left : Side::right, std::stoi(c[0]), 0, 0, 0, 0};
      if (metric) {
        t.x = t.tape_x = std::stod(c[2]);
        t.y = t.tape_y = std::stod(c[4]);
      } else {
        t.tape_x = inches(c[2]);
        t.x = std::stod(c[3]) * inch;
        t.tape_y = inches(c[8]);
        t.y = std::stod(c[9]) * inch;
        EXPECT_NEAR(std::stod(c[4]), t.x, 0.05 + 0.0005 * inch + 1e-6);
      }
      tabs.push_back(t);
    }
  }
  return tabs;
}

// A person with the printed sheet and a tape: each hole the model has is where the
// sheet says, within what the sheet rounds to.
void expect_rebuilt(const Job& job, const std::string& name) {
  const Bed bed = testing::bed_of(job);
  const bool metric = job.order.order.printing == Printing::metric;
  const std::vector<PrintedTab> tabs =
      printed_tabs(words(job, tab_layout_sheets({*examine(job, bed), false, {}}), name), metric);
  const std::vector<int> items = bed.items_of(Kind::tab);
  const Mm fine = (metric ? 0.05 : 0.0005 * inch) + 1e-6,
           coarse = (metric ? fine : job.order.order.tape / 2 + 1e-6);
  for (const int item : items) {
    const Identity& id = bed.items[item].id;
    const std::string tab = bedwright::name(id);
    const Vec3 at = hole_in_world(bed, ply_through(bed, item, 0)).centre;
    const auto printed = std::find_if(tabs.begin(), tabs.end(), [&](const PrintedTab& t) {
      return t.side == id.side && t.number == id.number;
    });
    ASSERT_NE(printed, tabs.end()) << name << ": " << tab << " is not on the sheet";
    EXPECT_NEAR(printed->x, at.x, fine) << tab;
    EXPECT_NEAR(printed->tape_x, at.x, coarse) << tab;
    EXPECT_NEAR(outward(id.side) * printed->y, at.y, fine) << tab;
    EXPECT_NEAR(outward(id.side) * printed->tape_y, at.y, coarse) << tab;
  }
  EXPECT_EQ(tabs.size(), items.size()) << name;
}

TEST(Paper, the_frame_can_be_built_from_the_tab_sheets_words) {
  for (const std::string& name : testing::good_orders) expect_rebuilt(testing::demo_job(name), name);
  Job job = testing::demo_job("base");
  TabFound found;
  found.tab.text = "R3";
  found.x = 1.3;
  found.y = -0.7;
  job.order.tabs_found = {found};
  expect_rebuilt(job, "tab_found");
  expect_rebuilt(testing::demo_job("base", {"track.extension_count=4"}), "long");
}

// The drill sheets' words: each web hole of the mains is where along and across
// say, measured as the sheet tells: from the front end, and from the edge that is
// up in the bed or, where the sheet says the part is turned over, down.
TEST(Paper, mains_can_be_drilled_from_the_drill_sheets_words) {
  for (const std::string& name : testing::good_orders) {
    const Job job = testing::demo_job(name);
    const Bed bed = testing::bed_of(job);
    const bool metric = job.order.order.printing == Printing::metric;
    std::vector<Sheet> mains;
    for (Sheet& s : drill_sheets({*examine(job, bed), false, {}}))
      if (s.title.starts_with("DRILL: main")) mains.push_back(std::move(s));
    if (mains.empty()) continue;
    const std::string text = words(job, mains, name + "_drill");
    // No, Size, Face, then along and across with the millimetres last of each.
    const std::regex row(
        metric ? R"((?:^|\s)(\d+)\s+[A-Z]\s+WEB\s+([\d.]+)\s+([\d.]+)\s+(\S+ \S+))"
               : R"((?:^|\s)(\d+)\s+[A-Z]\s+WEB\s+\S+\s+\S+\s+([\d.]+)\s+\S+\s+\S+\s+([\d.]+)\s+(\S+ \S+))");
    std::vector<Vec2> printed;
    std::istringstream lines(text);
    std::string edge;
    for (std::string line; std::getline(lines, line);) {
      std::smatch m;
      // Other tables stand beside it on the page.
      for (std::string rest = line; std::regex_search(rest, m, row); rest = m.suffix()) {
        printed.push_back({std::stod(m[2]), std::stod(m[3])});
        edge = m[4];
      }
    }
    for (const Side side : both_sides) {
      const int item = bed.item({Kind::main, side});
      const std::string called = bedwright::name(bed.items[item]);
      const Member& main = std::get<Member>(bed.part_of(item).form);
      const Box3 box = bounds(bed, item);
      const bool turned =
          text.find("turned over") != std::string::npos || text.find("Turned over") != std::string::npos;
      const bool over = turned && text.find("at the bottom: " + called) != std::string::npos;
      std::size_t holes = 0;
      for (std::size_t k = 0; k < main.holes.size(); ++k) {
        if (main.holes[k].face != Face::web) continue;
        ++holes;
        const Vec3 at = hole_in_world(bed, ply_through(bed, item, static_cast<int>(k))).centre;
        const bool found = std::any_of(printed.begin(), printed.end(), [&](Vec2 p) {
          const Mm z = over ? box.low.z + p.y : box.high.z - p.y;
          return std::abs(p.x + box.low.x - at.x) < 0.051 && std::abs(z - at.z) < 0.051;
        });
        EXPECT_TRUE(found) << name << ": " << called << " hole at " << at.x << ", " << at.z << " (" << edge
                           << ")";
      }
      EXPECT_EQ(printed.size(), holes) << name;
    }
  }
}

// Every corner and hole of every plate stands at figures that its sheet prints.
TEST(Paper, plates_holes_stand_at_printed_figures) {
  for (const std::string& name : testing::good_orders) {
    const Job job = testing::demo_job(name);
    const Bed bed = testing::bed_of(job);
    const bool metric = job.order.order.printing == Printing::metric;
    const std::string text = words(job, plate_sheets({*examine(job, bed), false, {}}), name + "_plates");
    std::vector<double> figures;
    const std::regex figure(metric ? R"(([\d.]+))" : R"(\(([\d.]+) mm)");
    for (std::sregex_iterator it(text.begin(), text.end(), figure), end; it != end; ++it) {
      const std::string f = (*it)[1];
      if (f.find_first_of("0123456789") != std::string::npos) figures.push_back(std::stod(f));
    }
    const auto said = [&](Mm value) {
      return std::any_of(figures.begin(), figures.end(),
                         [&](double f) { return std::abs(f - value) < 0.0501; });
    };
    std::size_t holes = 0;
    for (std::size_t i = 0; i < bed.parts.size(); ++i) {
      const Part& part = bed.parts[i];
      const Plate* plate = std::get_if<Plate>(&part.form);
      if (!plate || part.origin != Origin::made || bed.count(static_cast<int>(i)) == 0) continue;
      Vec2 low{1e9, 1e9};
      for (const Vertex& v : plate->outline) low = {std::min(low.x, v.at.x), std::min(low.y, v.at.y)};
      for (const Hole& h : plate->holes) {
        ++holes;
        EXPECT_TRUE(said(h.at.x - low.x) && said(h.at.y - low.y))
            << name << ": " << bedwright::name(part) << " hole at " << h.at.x - low.x << ", "
            << h.at.y - low.y;
        EXPECT_TRUE(said(h.diameter) && said(h.length)) << bedwright::name(part);
      }
    }
    EXPECT_EQ(holes > 2, !stands(job.frame));
  }
}

// Pythagoras over the printed figures themselves: web back to web back, and the
// mains' length, against the diagonal printed in the notes.
TEST(Paper, the_printed_diagonal_is_pythagoras) {
  for (const std::string& name : testing::good_orders) {
    const Job job = testing::demo_job(name);
    if (stands(job.frame)) continue;  // it is welded: its sheet asks for what to measure
    const Bed bed = testing::bed_of(job);
    const std::string text = words(job, frame_sheets({*examine(job, bed), false, {}}), name + "_frame");
    std::smatch m;
    const bool metric = job.order.order.printing == Printing::metric;
    const std::regex printed(metric ? R"(Both are\s+([\d.]+)\s+mm)"
                                    : R"(Both\s+are\s+\S+\s+\(([\d.]+)\s+in)");
    ASSERT_TRUE(std::regex_search(text, m, printed)) << text;
    const int left = bed.item({Kind::main, Side::left}), right = bed.item({Kind::main, Side::right});
    const Member& main = std::get<Member>(bed.part_of(left).form);
    const Mm across = bed.items[right].placement.origin.y - bed.items[left].placement.origin.y;
    EXPECT_NEAR(std::stod(m[1]) * (metric ? 1 : inch), std::sqrt(main.length * main.length + across * across),
                metric ? 0.0501 : 0.000501 * inch)
        << name;
  }
}

TEST(Paper, equal_sheets_are_equal_bytes) {
  const Job job = testing::demo_job("metric");
  const Bed bed = testing::bed_of(job);
  const auto file = [&] {
    std::vector<Page> pages;
    for (const Sheet& s : sheet_set({*examine(job, bed), false, {}, nullptr, {}, std::string(64, 'a')}))
      pages.push_back(page_of(s, paper_of(job.order.order)));
    return pages_pdf(pages, {"QB", job.order.order.date});
  };
  EXPECT_EQ(file(), file());
}

TEST(Paper, dxf_sheets_pass_the_audit_without_fixes) {
  int number = 0;
  const std::string own = folder() + "/dxf";
  std::filesystem::remove_all(own);
  std::filesystem::create_directories(own);
  for (const std::string& name : testing::good_orders) {
    const Job job = testing::demo_job(name);
    const Bed bed = testing::bed_of(job);
    for (const Sheet& s : sheet_set({*examine(job, bed), true, {}, nullptr, {}, std::string(64, 'a')}))
      write(own + "/" + name + "_" + std::to_string(++number) + ".dxf", dxf(s.list));
  }
  const std::string script = R"(
import glob, sys, ezdxf
count = 0
for path in sorted(glob.glob(sys.argv[1] + '/*.dxf')):
    doc = ezdxf.readfile(path)
    audit = doc.audit()
    assert not audit.errors and not audit.fixes, (path, audit.errors, audit.fixes)
    assert len(doc.modelspace().query('TEXT')) > 20, path
    count += 1
print(count)
)";
  write(folder() + "/audit.py", script);
  EXPECT_EQ(std::stoi(output_of("/usr/bin/python3 " + folder() + "/audit.py " + own + " 2>&1")), number);
}

}  // namespace
}  // namespace bedwright
