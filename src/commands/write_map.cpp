// Writes a map of sizes, all of its files or none.
#include "commands/write_map.h"

#include <fmt/format.h>

#include <cstdio>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "formats/page_svg.h"
#include "formats/pdf.h"
#include "offer/picture.h"
#include "packet/record.h"
#include "packet/whole_folder.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

// A map of more pages is read by a program, from the table.
constexpr std::size_t most_pages = 120;
constexpr const char* list_name = "offer.sha256";

std::vector<PacketFile> files_of(const MapFile& file) {
  std::vector<PacketFile> files{{"offer.csv", map_csv(file)}, {"offer.json", map_json(file)}};
  const std::vector<Page> pages = map_pages(file);
  if (pages.size() > most_pages) return files;
  files.push_back({"offer.pdf",
                   pages_pdf(pages, {fmt::format("Order {}: what can be offered", file.number), file.date})});
  for (std::size_t i = 0; i < pages.size(); ++i)
    files.push_back({i == 0 ? "offer.svg" : fmt::format("offer-{}.svg", i + 1), page_svg(pages[i])});
  return files;
}

bool is_part_of_a_map(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  return in.is_open() && !in.bad() && std::holds_alternative<MapFile>(read_map_json(text));
}

// Parts of one map come from many machines into one folder, each a file by itself.
std::string write_part(const MapFile& file, const fs::path& folder) {
  std::string name = fmt::format("offer-{}-of-{}.json", file.map.part.number, file.map.part.of);
  const fs::path to = folder / name;
  const Workplace place(folder);
  const auto status = fs::symlink_status(to);
  const bool ours = fs::is_regular_file(status) && is_part_of_a_map(to);
  if (fs::exists(status) && !ours)
    throw std::runtime_error(fmt::format(
        "{} is there and is no part of a map; nothing was touched: give another folder with --out, or move "
        "it away",
        to.string()));
  const fs::path fresh = place.path() / name;
  write_file(fresh, map_json(file));
  if (const int error = renamed(fresh, to, ours ? 0 : RENAME_NOREPLACE)) fail_to_rename(to, error);
  sync_folder(folder);
  return name;
}

// Where releases stand, a map would take a letter's or an order's place.
void refuse_among_releases(const fs::path& folder) {
  const fs::path above = fs::weakly_canonical(fs::absolute(folder)).parent_path();
  if (recorded(above) || !recorded_of_order(above).empty())
    throw std::runtime_error(fmt::format(
        "{} holds what was drawn of an order; nothing was touched: give a folder elsewhere with --out",
        above.string()));
}

}  // namespace

void check_map_folder(const fs::path& folder) {
  refuse_among_releases(folder);
  check_listed_folder(folder, list_name);
}

std::vector<std::string> write_map(const MapFile& file, const fs::path& folder) {
  if (file.map.part.of > 1) {
    refuse_among_releases(folder);
    return {write_part(file, folder)};
  }
  check_map_folder(folder);
  const std::vector<PacketFile> files = files_of(file);
  write_listed_folder(folder, files, list_name);
  std::vector<std::string> names;
  for (const PacketFile& f : files) names.push_back(f.path);
  names.push_back(list_name);
  return names;
}

}  // namespace bedwright
