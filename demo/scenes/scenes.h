// The scenes of the album. Each paints a whole canvas of any size and shape; the seed makes its variations.
#pragma once

#include "demo/paint/canvas.h"
#include "demo/paint/noise.h"

#include <functional>

namespace stoneproof::demo {

// land.cpp, water.cpp, winter.cpp
void paint_valley(Canvas &canvas, Random &random);
void paint_wheat(Canvas &canvas, Random &random);
void paint_garden(Canvas &canvas, Random &random);
void paint_forest(Canvas &canvas, Random &random);
void paint_lake(Canvas &canvas, Random &random);
void paint_harbour(Canvas &canvas, Random &random);
void paint_bridge(Canvas &canvas, Random &random);
void paint_sail(Canvas &canvas, Random &random);
void paint_snow(Canvas &canvas, Random &random);
void paint_night(Canvas &canvas, Random &random);
// buildings.cpp, street.cpp
void paint_house(Canvas &canvas, Random &random);
void paint_windmill(Canvas &canvas, Random &random);
void paint_street(Canvas &canvas, Random &random);
// people.cpp
void paint_profile(Canvas &canvas, Random &random);
void paint_window(Canvas &canvas, Random &random);
void paint_group(Canvas &canvas, Random &random);
// machines.cpp
void paint_locomotive(Canvas &canvas, Random &random);
void paint_bicycle(Canvas &canvas, Random &random);
// cloth.cpp, things.cpp
void paint_lace(Canvas &canvas, Random &random);
void paint_quilt(Canvas &canvas, Random &random);
void paint_medal(Canvas &canvas, Random &random);
void paint_stamp(Canvas &canvas, Random &random);
void paint_watch(Canvas &canvas, Random &random);
// screen.cpp
void paint_message(Canvas &canvas, Random &random);
// papers.cpp, clipping.cpp, drawings.cpp

void paint_letter(Canvas &canvas, Random &random);
void paint_typed_page(Canvas &canvas, Random &random);
void paint_postcard(Canvas &canvas, Random &random);
void paint_clipping(Canvas &canvas, Random &random);
void paint_map(Canvas &canvas, Random &random);
void paint_family_tree(Canvas &canvas, Random &random);
void paint_floor_plan(Canvas &canvas, Random &random);
void paint_boat_drawing(Canvas &canvas, Random &random);

} // namespace stoneproof::demo
