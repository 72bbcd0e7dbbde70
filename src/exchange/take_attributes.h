#pragma once

#include <map>
#include <optional>

#include "exchange/losses.h"
#include "exchange/taken.h"
#include "theory/interval.h"

namespace fretsheaf::exchange {

// What <attributes> say, and go on saying until others do.
class AttributesTaker {
 public:
  AttributesTaker(Losses& losses, TakenPart& part) : losses_(losses), part_(part) {}

  void read(const Xml& attributes, Rational at, int index);

  std::int64_t divisions() const { return divisions_; }
  // From what is written on the staff to what sounds.
  theory::Interval transposed(int staff) const;
  const std::optional<theory::Meter>& meter() const { return meter_; }
  // Whether a bar-repeat sign holds, of how many measures.
  int measure_repeat() const { return repeat_; }
  // Whether heads are slashes.
  bool slashes() const { return slashes_; }

 private:
  void read_divisions(const Xml& element, int index);
  void read_key(const Xml& element, Rational at, int index);
  void read_time(const Xml& element, Rational at, int index);
  void read_clef(const Xml& element);
  void read_staff_details(const Xml& element, int index);
  void read_transpose(const Xml& element);
  void read_measure_style(const Xml& element, int index);

  Losses& losses_;
  TakenPart& part_;
  std::int64_t divisions_ = 0;
  std::optional<theory::Meter> meter_;
  std::map<int, theory::Interval> transpositions_;  // by staff; 0 all
  int repeat_ = 0;
  bool slashes_ = false;
};

}  // namespace fretsheaf::exchange
