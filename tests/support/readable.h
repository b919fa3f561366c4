// Whether sheets can be read, and beds of all sorts to try them on.
#pragma once

#include <gtest/gtest.h>

#include <random>

#include "draw/overlap.h"
#include "packet/lists.h"
#include "sheets/assembly/assembly_figures.h"
#include "sheets/assembly/assembly_pictures.h"
#include "sheets/sheets.h"
#include "support/demo.h"

namespace bedwright::testing {

// Finished sheets: no text on text or line, nothing beyond the frame, no letter
// under 2.5 mm (ISO 3098-1's smallest nominal size is 1.8; 2.5 is the shop's).
inline void expect_readable(const Paper& paper, const std::vector<Sheet>& sheets, const std::string& what) {
  Box2 frame;
  frame.add({10, 10});
  frame.add({paper.width - 10, paper.height - 10});
  for (const Sheet& sheet : sheets) {
    for (const std::string& fault : overlaps(sheet.list, frame))
      ADD_FAILURE() << what << ", " << sheet.file << ": " << fault;
    for (const Entity& e : sheet.list.entities) {
      if (const Text* t = std::get_if<Text>(&e)) {
        EXPECT_GE(t->height, 2.5) << t->text;
      }
      const Box2 box = bounds(e);
      EXPECT_TRUE(box.low.x >= 10 - 1e-9 && box.high.x <= paper.width - 10 + 1e-9 && box.low.y >= 10 - 1e-9 &&
                  box.high.y <= paper.height - 10 + 1e-9)
          << what << ", " << sheet.file << ": something leaves the frame";
    }
  }
}

// Any; the sheets of one issue share it.
inline const std::string digest(64, 'a');

// Sheets as their makers leave them; the surrounds are added here.
inline void expect_readable(const Job& job, std::vector<Sheet> sheets, bool draft, const std::string& what) {
  const Paper paper = paper_of(job.order.order);
  for (std::size_t i = 0; i < sheets.size(); ++i)
    add_surround(sheets[i], job, paper, {job.order.order.number, job.order.order.revision, digest, draft},
                 i + 1, sheets.size());
  expect_readable(paper, sheets, what);
}

inline std::vector<std::string> texts_of(const std::vector<Sheet>& sheets) {
  std::vector<std::string> all;
  for (const Sheet& sheet : sheets)
    for (const Entity& e : sheet.list.entities)
      if (const Text* t = std::get_if<Text>(&e)) all.push_back(t->text);
  return all;
}

inline std::string shipped_words() { return std::string(BEDWRIGHT_SOURCE) + "/templates/assembly"; }

// The words as shipped, filled for this bed.
inline AssemblyText filled_words(const Examined& examined) {
  std::vector<Problem> problems;
  const AssemblyFiles files = read_assembly_files(shipped_words(), "order.yaml", {}, problems);
  AssemblyText text = fill_assembly(files, assembly_figures({examined}), assembly_pictures(), problems);
  for (const Problem& p : problems) ADD_FAILURE() << to_line(p);
  return text;
}

// The whole set's input, save what the kernel gives.
inline SheetInput input_of(const Examined& examined, bool draft) {
  const Job& job = examined.job;
  const Bed& bed = examined.bed;
  const Heading& h = examined.heading();
  SheetInput in{examined, draft, {}};
  in.lists = {{"PARTS", parts_csv(bed, h), {}},
              {"CUT LIST", cut_list_csv(bed, h), {}},
              {"DRILL LIST", drill_list_csv(bed, h), {}},
              {"HARDWARE", hardware_csv(bed, job.kit.box, h, job.order.spares, shims(job, bed)), {}}};
  in.assembly = filled_words(examined);
  in.digest = digest;
  return in;
}

inline void expect_set_readable(const SheetInput& input, const std::string& what) {
  const std::vector<Sheet> sheets = sheet_set(input);
  EXPECT_GE(sheets.size(), 6U);
  expect_readable(paper_of(input.job.order.order), sheets, what);
}

// A bed a shop might quote, from the demo orders, with clamps and stops anywhere.
inline Job quoted_job(std::mt19937& random) {
  const auto pick = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  static const std::vector<Job> jobs = {demo_job("base"), demo_job("one_extension"), demo_job("metric")};
  Job job = jobs[static_cast<std::size_t>(pick(0, 2))];
  const bool metric = job.order.order.printing == Printing::metric;
  TrackOrder& track = job.order.track;
  track.bunk_pitch = metric ? 10.0 * pick(38, 61) : pick(15 * 16, 25 * 16 - 1) * inch / 16;
  track.rail_length = pick(2, 6) * track.bunk_pitch;
  track.extension_count = pick(0, 4);
  track.datum = static_cast<Datum>(pick(0, 2));
  job.kit.rail.base_sections = pick(1, 3);
  // The head has to fit between its stops.
  while ((job.kit.rail.base_sections + track.extension_count) * track.rail_length < 3600)
    ++job.kit.rail.base_sections;
  track.clamps.clear();
  track.log_stops.clear();
  for (int bunk = 1; bunk <= 4; ++bunk) {
    if (pick(0, 2) == 0) track.clamps.push_back({bunk});
    if (pick(0, 2) == 0) track.log_stops.push_back(bunk);
  }
  const Mm total = (job.kit.rail.base_sections + track.extension_count) * track.rail_length;
  job.order.jacks = {0.1 * total, 0.9 * total};
  job.order.axle.position = 0.58 * total;
  job.order.order.sheet = static_cast<SheetSize>(pick(0, 4));
  job.order.cut.kerf = pick(0, 1) * 1.5;
  for (int k = pick(0, 3); k > 0; --k) {
    TabFound found;
    found.tab.text = (k % 2 ? "L" : "R") + std::to_string(k);
    found.x = pick(-30, 30) / 10.0;
    found.y = pick(-30, 30) / 10.0;
    job.order.tabs_found.push_back(found);
  }
  return job;
}

}  // namespace bedwright::testing
