// The model of a packet as the inspector reads it from bed.step.
#pragma once

#include <array>
#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "solid.h"

namespace inspector {

// A hole's rim in a flat face, with the face's outward direction.
struct Rim {
  Point centre, outward;
  std::vector<Point> line;
  double steel = 0;  // from it to the face's edge or the next rim; negative: it lies over either
};

struct Part {
  std::string name;
  Body body;
  std::vector<Rim> rims;
  bool sound = true;  // the kernel finds nothing wrong with its solids
};

struct Item {
  std::string name;
  const Part* part = nullptr;
  std::array<Point, 3> axes;  // the part's own x, y and z in the world
  Point origin;
  Body body;
  Box box;
  Point world(Point local) const;
  Point turned(Point local) const;
  // The part's rims in the world, those that look along `axis` either way.
  std::vector<Rim> rims_along(Point axis) const;
};

struct Model {
  std::vector<std::unique_ptr<Part>> parts;
  std::vector<Item> items;
  std::map<std::string, int> by_name;
  // Throws std::runtime_error when there is none.
  const Item& item(const std::string& name) const;
};

// Throws std::runtime_error when it is no assembly, two items have one name, or a solid
// cannot be cut into triangles.
Model read_model(const std::filesystem::path& file);

}  // namespace inspector
