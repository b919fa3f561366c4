// Reads pairs of code and value; measures rings.
#include "drawing.h"

#include <cmath>
#include <limits>
#include <numbers>
#include <sstream>
#include <stdexcept>

#include "table.h"

namespace inspector {
namespace {

struct Pair {
  int code = 0;
  std::string value;
};

std::string trimmed(const std::string& s) {
  const std::size_t from = s.find_first_not_of(" \t\r"), to = s.find_last_not_of(" \t\r");
  return from == std::string::npos ? "" : s.substr(from, to - from + 1);
}

std::vector<Pair> pairs_of(const std::filesystem::path& file) {
  std::istringstream in(read_file(file));
  std::vector<Pair> all;
  std::string code, value;
  while (std::getline(in, code) && std::getline(in, value))
    all.push_back({std::stoi(trimmed(code)), trimmed(value)});
  if (all.empty() || all.back().value != "EOF") throw std::runtime_error(file.string() + ": ends too soon");
  return all;
}

double unit_of(const std::vector<Pair>& pairs, const std::filesystem::path& file) {
  for (const Pair& p : pairs)
    if (p.code == 999 && p.value.starts_with("UNITS: ")) {
      if (p.value.starts_with("UNITS: inch")) return 25.4;
      if (p.value.starts_with("UNITS: millimet")) return 1;
    }
  throw std::runtime_error(file.string() + ": does not say its units");
}

void add_arc(Ring& ring, Flat a, Flat b, double bulge) {
  const double sweep = 4 * std::atan(bulge);
  const int steps = static_cast<int>(std::ceil(std::abs(sweep) / (3 * std::numbers::pi / 180)));
  const double dx = b[0] - a[0], dy = b[1] - a[1];
  // The centre lies square to the chord's middle.
  const double k = (1 - bulge * bulge) / (4 * bulge);
  const Flat c{(a[0] + b[0]) / 2 - k * dy, (a[1] + b[1]) / 2 + k * dx};
  for (int i = 1; i < steps; ++i) {
    const double t = sweep * i / steps, x = a[0] - c[0], y = a[1] - c[1];
    ring.push_back({c[0] + x * std::cos(t) - y * std::sin(t), c[1] + x * std::sin(t) + y * std::cos(t)});
  }
}

struct Vertex {
  Flat at{};
  double bulge = 0;
};

Ring ring_of(const std::vector<Vertex>& vertices, bool closed) {
  Ring ring;
  for (std::size_t i = 0; i < vertices.size(); ++i) {
    ring.push_back(vertices[i].at);
    if (vertices[i].bulge != 0 && (closed || i + 1 < vertices.size()))
      add_arc(ring, vertices[i].at, vertices[(i + 1) % vertices.size()].at, vertices[i].bulge);
  }
  return ring;
}

double to_segment(Flat p, Flat a, Flat b) {
  const double dx = b[0] - a[0], dy = b[1] - a[1], full = dx * dx + dy * dy;
  const double t =
      full > 0 ? std::min(1.0, std::max(0.0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / full)) : 0;
  return std::hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}

bool cross_each_other(Flat a, Flat b, Flat c, Flat d) {
  const auto side = [](Flat p, Flat q, Flat r) {
    return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

}  // namespace

std::vector<Drawn> read_drawing(const std::filesystem::path& file) {
  const std::vector<Pair> pairs = pairs_of(file);
  const double unit = unit_of(pairs, file);
  std::vector<Drawn> all;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    if (pairs[i].code != 0) continue;
    const std::string kind = pairs[i].value;
    const auto entity = [&](auto take) {
      for (++i; i < pairs.size() && pairs[i].code != 0; ++i) take(pairs[i].code, pairs[i].value);
      --i;
    };
    if (kind == "CIRCLE") {
      Drawn d;
      d.closed = true;
      Flat c{};
      entity([&](int code, const std::string& v) {
        if (code == 8) d.layer = v;
        if (code == 10) c[0] = unit * std::stod(v);
        if (code == 20) c[1] = unit * std::stod(v);
        if (code == 40) d.radius = unit * std::stod(v);
      });
      for (int k = 0; k < 120; ++k) {
        const double t = 2 * std::numbers::pi * k / 120;
        d.ring.push_back({c[0] + d.radius * std::cos(t), c[1] + d.radius * std::sin(t)});
      }
      all.push_back(std::move(d));
    } else if (kind == "LINE") {
      Drawn d;
      d.ring.resize(2);
      entity([&](int code, const std::string& v) {
        if (code == 8) d.layer = v;
        for (const int end : {0, 1}) {
          if (code == 10 + end) d.ring[static_cast<std::size_t>(end)][0] = unit * std::stod(v);
          if (code == 20 + end) d.ring[static_cast<std::size_t>(end)][1] = unit * std::stod(v);
        }
      });
      all.push_back(std::move(d));
    } else if (kind == "POLYLINE") {
      Drawn d;
      entity([&](int code, const std::string& v) {
        if (code == 8) d.layer = v;
        if (code == 70) d.closed = std::stoi(v) % 2 == 1;
      });
      std::vector<Vertex> vertices;
      while (i + 1 < pairs.size() && pairs[i + 1].code == 0 && pairs[i + 1].value == "VERTEX") {
        ++i;
        Vertex vertex;
        entity([&](int code, const std::string& v) {
          if (code == 10) vertex.at[0] = unit * std::stod(v);
          if (code == 20) vertex.at[1] = unit * std::stod(v);
          if (code == 42) vertex.bulge = std::stod(v);
        });
        vertices.push_back(vertex);
      }
      d.ring = ring_of(vertices, d.closed);
      all.push_back(std::move(d));
    }
  }
  return all;
}

bool holds(const Ring& ring, Flat p) {
  bool in = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Flat a = ring[i], b = ring[j];
    if ((a[1] > p[1]) != (b[1] > p[1]) && p[0] < (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) + a[0])
      in = !in;
  }
  return in;
}

double area(const Ring& ring) {
  double twice = 0;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    twice += ring[j][0] * ring[i][1] - ring[i][0] * ring[j][1];
  return std::abs(twice) / 2;
}

double apart(const Ring& ring, Flat p) {
  double best = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
    best = std::min(best, to_segment(p, ring[j], ring[i]));
  return best;
}

double apart(const Ring& a, const Ring& b) {
  double best = std::numeric_limits<double>::infinity();
  for (const Flat p : a) best = std::min(best, apart(b, p));
  for (const Flat p : b) best = std::min(best, apart(a, p));
  for (std::size_t i = 0, j = a.size() - 1; i < a.size(); j = i++)
    for (std::size_t k = 0, l = b.size() - 1; k < b.size(); l = k++)
      if (cross_each_other(a[j], a[i], b[l], b[k])) return 0;
  return best;
}

}  // namespace inspector
