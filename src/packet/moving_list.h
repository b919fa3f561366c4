// The list of what moves, for whoever sets the bed up and for whoever checks it.
#pragma once

#include <string>

#include "bed/bed.h"
#include "params/job.h"

namespace bedwright {

// lists/moving.csv, a row for each piece: the head running and locked, its wheels'
// points on the rails, stops, log stops, clamps, axles, wheels, jacks, coupler, ground.
// The box a piece takes in millimetres, in the coordinates of bed.step; which way it
// moves from there and how far; how high its lowest place stands over the ground, the
// bed level on its tyres. Throws NotInBed where a bed lacks one of these.
std::string moving_csv(const Job& job, const Bed& bed);

}  // namespace bedwright
