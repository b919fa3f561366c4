// An order with everything it refers to, read and checked against each other.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "catalog/catalog.h"
#include "params/file_store.h"
#include "params/frame.h"
#include "params/kit.h"
#include "params/order.h"
#include "yaml/problem.h"

namespace bedwright {

struct InputFile {
  std::string path;     // as opened
  std::string content;  // bytes, for the input digest
};

struct Job {
  Order order;
  Kit kit;
  FrameFile frame;
  Catalog catalog;
  std::vector<InputFile> inputs;  // order, kit, frame, catalogue files, in that order
  std::vector<std::string> sets;  // overrides as given
};

// Each kind of bolt whose length an order may name: the key, the length named, the hole
// it goes through.
struct NamedLength {
  const char* key;
  std::optional<Mm> length;
  const BoltHole* hole;
};
std::array<NamedLength, 6> named_lengths(const Job& job);

// Reads the order and the files it names. `sets` are overrides "key.path=value";
// a key that starts with "kit." or "frame." reaches into that file, any other is
// the order's own; list entries are reached as "track.clamps[2].bunk", counted
// from 1. Problems come all at once, in file order; the Job is only there when
// there are none.
//
// The order's own `overrides` come before `sets`. An axle placed by fraction and
// jacks placed from the rear are worked out: Job::order has all as distances from
// the front.
std::variant<Job, std::vector<Problem>> load_job(const std::string& order_path,
                                                 const std::vector<std::string>& sets);

// The same from the files of a store: for many variants of one order, or where there
// is no disk.
std::variant<Job, std::vector<Problem>> load_job(FileStore& store, const std::string& order_path,
                                                 const std::vector<std::string>& sets);

}  // namespace bedwright
