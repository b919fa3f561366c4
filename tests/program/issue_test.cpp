// What paper says of the release it is of, read off rendered pages by ZBar, a reader that
// shares nothing with the library that made the codes; and what became of an order's weight.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

class Issue : public OwnParams {
 protected:
  // Pads of 1/2 in under letter B, as the owner writes it.
  void raise_to_b() const {
    change(folder / "params/frames/six_inch_plate.yaml", "pad_thickness: 3/8 in", "pad_thickness: 1/2 in");
    change(order, "revision: A", "revision: B");
    std::ofstream(order, std::ios::app)
        << "\nrevisions:\n  - {revision: A, date: 2026-10-05, what: First issue}\n"
           "  - {revision: B, date: 2026-11-02, by: E.W., what: Pads 1/2 in were 3/8 in}\n";
  }
  Outcome draw(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words = {"draw", order, "--out", out};
    words.insert(words.end(), more.begin(), more.end());
    return run(words);
  }
  static std::string digest_of(const fs::path& packet) {
    return nlohmann::json::parse(content(packet / "manifest.json")).at("input_sha256").get<std::string>();
  }
  // What the reader finds on a picture of 200 dots to the inch of an 11 x 17 in sheet.
  std::string read_off(const fs::path& svg) const {
    const std::string png = (folder / "page.png").string();
    return outcome_of(fmt::format("rsvg-convert -w 3400 {} -o {} && zbarimg --nodbus -q --raw {}",
                                  quoted(svg.string()), quoted(png), quoted(png)))
        .out;
  }
};

TEST_F(Issue, EveryPageTellsItsRelease) {
  ASSERT_EQ(draw().code, 0);
  const fs::path a = out / "QB-1041/A";
  const std::string digest = digest_of(a);
  const std::string code = "order QB-1041\nrevision A\ndigest " + digest + "\n";
  const std::string digits = digest.substr(0, 4) + "-" + digest.substr(4, 4);
  int pages = 0;
  for (const auto& [path, bytes] : tree(a)) {
    if (!path.ends_with(".svg")) continue;
    ++pages;
    EXPECT_THAT(bytes, HasSubstr(">" + digits + "<")) << path;
  }
  EXPECT_GE(pages, 25);
  for (const char* page : {"bed.svg", "sheets/tab_layout.svg"}) EXPECT_EQ(read_off(a / page), code) << page;
  // The document that is printed as a whole: as many codes as pages, all this one.
  const std::string all = quoted((a / "sheets/all.pdf").string()), to = quoted((folder / "p").string());
  const Outcome read = outcome_of(
      fmt::format("pdftoppm -r 150 -gray -png {} {} && zbarimg --nodbus -q --raw {}-*.png | sort | uniq -c",
                  all, to, to));
  const int printed = pages - 1;  // bed.svg is no page of it
  EXPECT_THAT(read.out, HasSubstr(fmt::format("{} digest {}", printed, digest)));
  EXPECT_THAT(outcome_of("pdftotext " + all + " - | grep -c '^" + digits + "$'").out,
              HasSubstr(std::to_string(printed)));
  for (const char* file : {"cut/tab_plate.dxf", "drill/main.dxf"})
    EXPECT_THAT(content(a / file), HasSubstr("release " + digits)) << file;
  EXPECT_THAT(run({"verify", a}).out, HasSubstr("its paper says " + digits));
}

TEST_F(Issue, ATrialsPaperSaysSo) {
  ASSERT_EQ(draw({"--set", "track.rail_length=80 in"}).code, 0);
  const fs::path trial = out / "QB-1041/trial";
  const std::string digest = digest_of(trial);
  for (const char* page : {"sheets/plate_parts.svg", "sheets/loads.svg", "bed.svg"}) {
    EXPECT_EQ(read_off(trial / page),
              "TRIAL, NOT FOR FABRICATION\norder QB-1041\nrevision A\ndigest " + digest + "\n")
        << page;
    EXPECT_THAT(content(trial / page), HasSubstr(">TRIAL<")) << page;
    EXPECT_THAT(content(trial / page), Not(HasSubstr(">RELEASE<"))) << page;
  }
}

TEST_F(Issue, ThickerPadsAreMarkedWhereTheyShowAndNowhereElse) {
  ASSERT_EQ(draw().code, 0);
  const std::string was = digest_of(out / "QB-1041/A");
  raise_to_b();
  const Outcome drawn = draw();
  ASSERT_EQ(drawn.code, 0) << drawn.out;
  const fs::path sheets = out / "QB-1041/B/sheets";
  const auto text = [&](const char* sheet) { return content(sheets / (std::string(sheet) + ".svg")); };
  // A pad's thickness is no matter of the plan of holes, the drill or the bolts' letters.
  for (const char* sheet : {"drill_main", "frame_weldment", "tab_layout", "track_bolting", "plate_parts"})
    EXPECT_THAT(text(sheet), HasSubstr("As at A: nothing on this sheet changed at B.")) << sheet;
  for (const char* sheet : {"plate_parts_2", "lists", "tab_layout_2", "general_arrangement"}) {
    EXPECT_THAT(text(sheet), HasSubstr("CHANGED at B, marked on this sheet: tab pad: thickness 3/8 in"))
        << sheet;
    EXPECT_THAT(text(sheet), HasSubstr(">B</text>")) << sheet;
    EXPECT_THAT(drawn.out, HasSubstr(sheet)) << sheet;
  }
  const std::string index = text("sheet_index");
  EXPECT_THAT(index, HasSubstr("SINCE A"));
  EXPECT_THAT(index, HasSubstr(was.substr(0, 4) + "-" + was.substr(4, 4)));
  EXPECT_THAT(drawn.out, HasSubstr("Cut files to send again: cut/tab_pad.dxf\n"));
  // Drawn again from what the release keeps, in another place, it is the same.
  const fs::path moved = folder / "elsewhere/B";
  fs::create_directories(folder / "elsewhere");
  fs::copy(out / "QB-1041/B", moved, fs::copy_options::recursive);
  fs::remove_all(out / "QB-1041/A");
  EXPECT_EQ(run({"verify", moved, "--redraw"}).code, 0);
  EXPECT_THAT(draw().out, HasSubstr("Already released, the same"));
}

TEST_F(Issue, WhatARevisionBuildsOnMustBeAsItWasReleased) {
  ASSERT_EQ(draw().code, 0);
  std::ofstream(out / "QB-1041/A/inputs/order.yaml", std::ios::app) << "# a note\n";
  raise_to_b();
  const Outcome refused = draw();
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.out, HasSubstr("A/inputs/order.yaml is not as it was released"));
  EXPECT_FALSE(fs::exists(out / "QB-1041/B"));
}

TEST_F(Issue, OrdersTellTheWeightTheReportTells) {
  ASSERT_EQ(draw().code, 0);
  const auto report = nlohmann::json::parse(content(out / "QB-1041/A/report.json"));
  double mass = 0;
  for (const auto& c : report["loads"]["conditions"])
    if (c["judged"] == true) mass = std::max(mass, c["mass"].get<double>());  // as heavy as it is towed
  ASSERT_GT(mass, 100);
  const auto list = nlohmann::json::parse(run({"orders", "--out", out, "--json"}).out);
  EXPECT_DOUBLE_EQ(list["orders"][0]["mass_kg"].get<double>(), mass);
  // 0.45359237 kg to the pound: NIST SP 811, table of exact factors.
  EXPECT_THAT(run({"orders", "--out", out}).out, HasSubstr(fmt::format("{:.0f}", mass / 0.45359237)));
  // A report that was touched is no witness.
  change(out / "QB-1041/A/report.json", "\"judged\": true", "\"judged\":  true");
  EXPECT_TRUE(
      nlohmann::json::parse(run({"orders", "--out", out, "--json"}).out)["orders"][0]["mass_kg"].is_null());
}

TEST_F(Issue, ARevisedKitSheetNamesWhatItTouches) {
  ASSERT_EQ(draw().code, 0);
  const fs::path lot = folder / "params/orders/lot_frame.yaml";
  ASSERT_EQ(run({"draw", lot, "--out", out}).code, 0);
  const fs::path kit = folder / "params/kits/tansy_t49.yaml",
                 long_kit = folder / "params/kits/tansy_t49_long.yaml";
  const auto touched = [&](const fs::path& by) {
    return run({"orders", "--out", out, "--touched-by", by}).out;
  };
  EXPECT_THAT(touched(kit), HasSubstr("1 released with it, 0 touched"));
  EXPECT_THAT(touched(kit), HasSubstr("QB-1041 revision A, Pinchbeck Farm, released: not touched"));
  // A thinner rail moves no hole; another gauge moves every tab.
  change(kit, "thickness: 1/4 in", "thickness: 5/16 in");
  EXPECT_THAT(touched(kit), HasSubstr("kit.rail.thickness"));
  EXPECT_THAT(touched(kit), HasSubstr("its tabs stay where they are"));
  change(kit, "gauge: 49 in", "gauge: 49-1/4 in");
  EXPECT_THAT(touched(kit), HasSubstr("its tabs move"));
  EXPECT_THAT(touched(kit), Not(HasSubstr("QB-1044")));
  change(long_kit, "gauge: 49 in", "gauge: 49-1/4 in");
  EXPECT_THAT(touched(long_kit), HasSubstr("its frame stands (Lot frame 7"));
  const fs::path other = folder / "params/kits/tansy_m1250.yaml";
  EXPECT_THAT(touched(other), HasSubstr("0 released with it, 0 touched"));
  EXPECT_EQ(run({"orders", "--out", out, "--touched-by", folder / "no.yaml"}).code, 2);
}

}  // namespace
}  // namespace bedwright
