// Checks of what an order says about road and work.
#include <fmt/format.h>

#include "params/cross_check.h"
#include "yaml/key_path.h"
#include "yaml/nearest.h"
#include "yaml/text.h"

namespace bedwright {

void CrossCheck::check_road_and_work() {
  const RoadOrder& road = job_.order.road;
  if (sound(order_, {"road.share_low", "road.share_high"}) && road.share_low >= road.share_high)
    problem(order_, "road.share_low",
            fmt::format("{:g} is not less than road.share_high, {:g}", road.share_low, road.share_high),
            "give the least share first: 0.10 and 0.15 are usual");
  for (std::size_t i = 0; i < road.travels.size(); ++i) {
    if (road.travels[i].bare && road.travels[i].laden())
      problem(order_, path_to("road.travels", i + 1) + ".bare",
              "a frame without its track carries neither head nor cargo",
              "write head: off and no cargo, or leave bare out");
    if (road.travels[i].cargo && !road.cargo && sound(order_, {"road.cargo"}))
      problem(order_, path_to("road.travels", i + 1) + ".cargo", "asks for a cargo the order does not give",
              "add road.cargo with its mass and position");
  }
  if (!job_.order.work.log || !sound(order_, {"work.log"})) return;
  const Name& species = job_.order.work.log->species;
  if (!catalog_is_whole_ || job_.catalog.species_named(species.text)) return;
  std::vector<std::string> names;
  for (const Species& s : job_.catalog.species) names.push_back(s.name);
  problems_.push_back({species.mark, fmt::format("{} is no species of the catalogue", quoted(species.text)),
                       names.empty() ? "add a catalogue file with species, such as species.yaml"
                                     : suggestion(species.text, names)});
}

}  // namespace bedwright
