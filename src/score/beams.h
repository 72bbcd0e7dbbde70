#pragma once

#include "score/metric_tree.h"
#include "score/score.h"

namespace fretsheaf::score {

// Joins the notes of a bar by beams and takes the brackets off tuplets that one beam spans exactly (common practice).
//  - Beams stay inside a beat; a half-note beat is taken by its quarters.
//  - Where two quarters make a half bar (4/4, 2/4, 2/2), its eighths go together, unless shorter values or a tuplet
//    occur in it; the six eighths of three quarters go together where nothing else is there.
//  - Written groups keep apart. A tuplet's notes go together, without their neighbours. Rests break beams.
//  - Thirty-seconds and shorter are joined by one beam only from eighth to eighth.
//  - A partial beam points to the neighbour that its note makes up the next longer value with (common practice): an
//    eighth, a sixteenth and a dotted eighth have it on the right of the sixteenth.
// `tree` is the bar's metric tree.
void beam(const MetricSpan& tree, Bar& bar);

}  // namespace fretsheaf::score
