// Reads the catalogue's lists, checks each entry, and looks entries up by name.
#include "catalog/catalog.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "catalog/bolt_entry.h"
#include "catalog/catalog_file.h"
#include "yaml/key_path.h"
#include "yaml/reader.h"

namespace bedwright {
namespace {

constexpr double square_inch = inch * inch, square_cm = 100;

// A section's own dimensions must give its published area to within this. Rolled
// angles' radii differ from mill to mill by over 1 %; a mistyped dimension shows
// as more than 2 %.
constexpr double area_agreement = 0.02;

template <class T>
const T* find_named(const std::vector<T>& entries, const std::string& name) {
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const T& e) { return e.name == name; });
  return found == entries.end() ? nullptr : &*found;
}

Section to_section(const SectionEntry& entry) {
  Section section{entry.name.text,        entry.shape,       entry.depth,      entry.flange, entry.web,
                  entry.flange_thickness, entry.root_radius, entry.toe_radius, std::nullopt};
  if (entry.published) {
    // In inches or in centimetres: what is not given counts nothing.
    const PublishedEntry& p = *entry.published;
    section.published = {p.area_in2 * square_inch + p.area_cm2 * square_cm,
                         p.weight_per_foot / (foot / 1000) + p.mass_per_metre,
                         p.ix_in4 * square_inch * square_inch + p.ix_cm4 * square_cm * square_cm,
                         p.iy_in4 * square_inch * square_inch + p.iy_cm4 * square_cm * square_cm,
                         p.x_bar,
                         p.y_bar,
                         p.source,
                         p.wall};
  }
  section.flange_slope = entry.flange_slope;
  section.thickness_at = entry.thickness_at;
  return section;
}

Species to_species(const SpeciesEntry& entry) {
  return {entry.name.text, entry.green_lb_per_ft3 * pound / (foot * foot * foot * 1e-9), entry.spread,
          entry.source};
}

Tyre to_tyre(const TyreEntry& entry) { return {entry.name.text, entry.load, entry.source}; }

// Single figures, held to their range when read.
std::vector<Fault> faults(const SpeciesEntry&, const Species&) { return {}; }
std::vector<Fault> faults(const TyreEntry&, const Tyre&) { return {}; }

// Keys that say nothing about a section of its shape.
std::vector<Fault> faults_of_shape(const SectionEntry& e) {
  if (e.shape == Shape::angle && e.flange_thickness > 0)
    return {{"flange_thickness", "an angle has one thickness",
             "leave flange_thickness out and give the thickness as web"}};
  if (e.shape == Shape::tube && (e.flange_thickness > 0 || e.toe_radius > 0))
    return {{e.toe_radius > 0 ? "toe_radius" : "flange_thickness",
             "a tube has walls of one thickness and no toes",
             "leave it out, give the wall as web and the inside corner as root_radius"}};
  if (e.shape != Shape::channel && (e.thickness_at > 0 || e.flange_slope != channel_flange_slope))
    return {
        {e.thickness_at > 0 ? "thickness_at" : "flange_slope", "is of a channel's flanges", "leave it out"}};
  return {};
}

std::vector<Fault> faults_of_published(const SectionEntry& e) {
  const PublishedEntry& p = *e.published;
  const bool inches = p.weight_per_foot > 0 && p.area_in2 > 0 && p.ix_in4 > 0 && p.iy_in4 > 0,
             metric = p.mass_per_metre > 0 && p.area_cm2 > 0 && p.ix_cm4 > 0 && p.iy_cm4 > 0,
             some_inches = p.weight_per_foot + p.area_in2 + p.ix_in4 + p.iy_in4 > 0,
             some_metric = p.mass_per_metre + p.area_cm2 + p.ix_cm4 + p.iy_cm4 > 0;
  if ((some_inches && some_metric) || !(inches || metric))
    return {{"published", "needs its four figures once, in inches or in centimetres",
             "give weight_per_foot, area_in2, ix_in4 and iy_in4, or mass_per_metre, area_cm2, ix_cm4 and "
             "iy_cm4"}};
  if (p.wall > 0 && (e.shape != Shape::tube || p.wall > e.web))
    return {{"published.wall", "is the wall of a tube that its figures are for, at most the one ordered",
             "leave it out, or look it up again"}};
  return {};
}

// What is wrong with the section as a whole; nothing when it makes a profile of its published area.
std::vector<Fault> faults(const SectionEntry& entry, const Section& section) {
  if (std::vector<Fault> found = faults_of_shape(entry); !found.empty()) return found;
  if (section.published)
    if (std::vector<Fault> found = faults_of_published(entry); !found.empty()) return found;
  Mm2 area = 0;
  try {
    profile(section);
    Section of_figures = section;
    if (section.published && section.published->wall > 0) of_figures.web = section.published->wall;
    area = steel_properties(of_figures).area;
  } catch (const std::invalid_argument& error) {
    return {{"", error.what(), "check its dimensions"}};
  }
  if (!section.published) return {};
  const double off = area / section.published->area - 1;
  if (std::abs(off) <= area_agreement) return {};
  const bool metric = entry.published->area_cm2 > 0;
  const double one = metric ? square_cm : square_inch;
  return {
      {metric ? "published.area_cm2" : "published.area_in2",
       fmt::format("{} is {:.3f} {} by its own dimensions, {:+.1f} % from the published {:.3f}", section.name,
                   area / one, metric ? "cm2" : "in2", 100 * off, section.published->area / one),
       fmt::format("check its dimensions; they must come within {:.0f} %", 100 * area_agreement)}};
}

// Whether an entry was read without a fault, by its file and path ("sections[3]").
bool clean(const std::vector<Problem>& problems, const std::string& file, const std::string& path) {
  return std::none_of(problems.begin(), problems.end(), [&](const Problem& problem) {
    return problem.where.file == file && is_within(problem.where.key, path);
  });
}

// Adds one list's entries that hold up; what does not becomes a problem.
template <class Entry, class T, class Convert>
void add_all(const Document& document, const char* list, const std::vector<Entry>& entries, Convert convert,
             std::vector<T>& into, std::vector<Problem>& problems) {
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::string path = fmt::format("{}[{}]", list, i + 1);
    if (!clean(problems, document.file, path)) continue;
    const Name& name = entries[i].name;
    if (find_named(into, name.text)) {
      problems.push_back({name.mark, fmt::format("{} is in the catalogue already", name.text),
                          "remove one of the two, or give this one another name"});
      continue;
    }
    T value = convert(entries[i]);
    const std::vector<Fault> found = faults(entries[i], value);
    for (const Fault& fault : found)
      problems.push_back(
          {mark_of(document, fault.key.empty() ? path : path + "." + fault.key), fault.what, fault.would_do});
    if (found.empty()) into.push_back(std::move(value));
  }
}

}  // namespace

const Section* Catalog::section(const std::string& name) const { return find_named(sections, name); }
const BoltSize* Catalog::bolt(const std::string& name) const { return find_named(bolts, name); }
const Species* Catalog::species_named(const std::string& name) const { return find_named(species, name); }

void read_catalog(const Document& document, Catalog& catalog, std::vector<Problem>& problems) {
  CatalogFile content;
  std::vector<Problem> found;
  read_document(document, content, found);
  if (found.empty() && content.sections.empty() && content.bolts.empty() && content.species.empty() &&
      content.tyres.empty())
    found.push_back({mark_of(document, ""), "the file lists neither sections nor bolts, species nor tyres",
                     "add one of the four lists"});
  add_all(document, "sections", content.sections, to_section, catalog.sections, found);
  add_all(document, "bolts", content.bolts, to_bolt, catalog.bolts, found);
  add_all(document, "species", content.species, to_species, catalog.species, found);
  add_all(document, "tyres", content.tyres, to_tyre, catalog.tyres, found);
  problems.insert(problems.end(), found.begin(), found.end());
}

}  // namespace bedwright
