#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "No. {n}"},
    {Word::key, "Key"},
    {Word::meter, "Meter"},
    {Word::tuning, "Tuning"},
    {Word::capo, "Capo"},
    {Word::capo_at, "fret {n}"},
    {Word::name, "Name"},
    {Word::date, "Date"},
    {Word::link_hint, "scan or click"},
    {Word::key_major, "{tonic} major"},
    {Word::key_minor, "{tonic} minor"},
    {Word::key_dorian, "{tonic} Dorian"},
    {Word::key_phrygian, "{tonic} Phrygian"},
    {Word::key_lydian, "{tonic} Lydian"},
    {Word::key_mixolydian, "{tonic} Mixolydian"},
    {Word::key_locrian, "{tonic} Locrian"},
    {Word::example, "Example {n}"},
    {Word::example_caps, "EXAMPLE {n}"},
    {Word::straight_eighths, "even eighths"},
    {Word::straight_sixteenths, "even sixteenths"},
    {Word::swing, "swing"},
    {Word::swing_sixteenths, "swing sixteenths"},
    {Word::shuffle, "shuffle"},
    {Word::degree, "degree"},
    {Word::note, "note"},
    {Word::finger, "finger"},
    {Word::count, "count"},
    {Word::chord, "chord"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "let ring"},
    {Word::harmonic, "harm."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Tempo ladder"},
    {Word::ladder_hint, "tick one box for each clean pass, then climb"},
    {Word::practice_notes, "Practice notes"},
    {Word::build_up, "Build-up"},
    {Word::build_up_hint, "tick each step, then go on"},
    {Word::bar, "bar {n}"},
    {Word::bars, "bars {from}–{to}"},
    {Word::whole, "all of it"},
    {Word::tick, "tick"},
    {Word::form, "Form"},
    {Word::form_here, "Example {n} goes here"},
    {Word::neck_of, "{what} on the neck"},
    {Word::neck_of_notes, "These notes on the neck"},
    {Word::neck_frets, "frets {from} to {to}"},
    {Word::root, "root"},
    {Word::chord_shapes, "Chord shapes"},
    {Word::practice_log, "Practice log"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Clean passes"},
    {Word::note_column, "Note"},
    {Word::answer_key, "Answer key"},
    {Word::page_of, "page {n} of {total}"},
    {Word::string_letter, "{letter} string"},
    {Word::string_number, "{nth} string"},
    {Word::place_fretted, "{string}, {nth} fret"},
    {Word::place_open, "{string}, open"},
    {Word::once_through_one, "once through = {n} bar"},
    {Word::once_through_other, "once through = {n} bars"},
    {Word::write_bars_one, "write {n} bar"},
    {Word::write_bars_other, "write {n} bars"},
    {Word::passes_one, "{n} clean pass"},
    {Word::passes_other, "{n} clean passes"},
});

}  // namespace

const Table& table_en() {
  return by_word;
}

}  // namespace fretsheaf::words
