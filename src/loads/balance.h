// What puts the right part of the weight on the coupler in every way a bed travels, where
// no place of the axle does it alone: worked out from moments, each tried by them again.
#pragma once

#include <optional>

#include "loads/loads.h"

namespace bedwright {

// The head locked elsewhere (from its end of the track, clear of what stands on the bunks),
// the axle with it.
struct LockPlace {
  Mm offset = 0, axle = 0;
};
// A longer tongue, its channels turned so that they end under the mains where they did.
struct TongueReach {
  Mm length = 0;
  Radians angle = 0;
  Mm axle = 0;
};
// Hangers at two places of the axle: with head or cargo on, and without.
struct HangerPlaces {
  Mm laden = 0, unladen = 0;
};
// A load lashed on when it travels without its head.
struct Ballast {
  Kg mass = 0;
  Mm at = 0;  // behind the front end of the track
};

struct BalanceWays {
  std::optional<LockPlace> lock;
  std::optional<TongueReach> tongue;  // none for a frame that stands
  std::optional<HangerPlaces> hangers;
};

BalanceWays balance_ways(const Job& job, const Bed& bed, const LoadsResult& loads);

// The least load, on the second bunk, with which this way of travelling without the head has
// the share it should, the axle where it is; nothing where the ways with the head do not.
std::optional<Ballast> ballast(const Job& job, const Bed& bed, const LoadsResult& loads,
                               const TowCondition& condition);

}  // namespace bedwright
