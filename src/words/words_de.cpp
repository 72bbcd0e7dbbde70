#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "Nr. {n}"},
    {Word::key, "Tonart"},
    {Word::meter, "Taktart"},
    {Word::tuning, "Stimmung"},
    {Word::capo, "Kapodaster"},
    {Word::capo_at, "{n}. Bund"},
    {Word::name, "Name"},
    {Word::date, "Datum"},
    {Word::link_hint, "scannen oder anklicken"},
    {Word::key_major, "{tonic}-Dur"},
    {Word::key_minor, "{lower}-Moll"},
    {Word::key_dorian, "{tonic} dorisch"},
    {Word::key_phrygian, "{tonic} phrygisch"},
    {Word::key_lydian, "{tonic} lydisch"},
    {Word::key_mixolydian, "{tonic} mixolydisch"},
    {Word::key_locrian, "{tonic} lokrisch"},
    {Word::example, "Beispiel {n}"},
    {Word::example_caps, "BEISPIEL {n}"},
    {Word::straight_eighths, "gerade Achtel"},
    {Word::straight_sixteenths, "gerade Sechzehntel"},
    {Word::swing, "Swing"},
    {Word::swing_sixteenths, "Swing-Sechzehntel"},
    {Word::shuffle, "Shuffle"},
    {Word::degree, "Stufe"},
    {Word::note, "Ton"},
    {Word::finger, "Finger"},
    {Word::count, "zählen"},
    {Word::chord, "Akkord"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "klingen lassen"},
    {Word::harmonic, "Flag."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Tempoleiter"},
    {Word::ladder_hint, "ein Kästchen für jeden sauberen Durchgang, dann höher"},
    {Word::practice_notes, "Übetipps"},
    {Word::build_up, "Schritt für Schritt"},
    {Word::build_up_hint, "jeden Schritt abhaken, dann weiter"},
    {Word::bar, "Takt {n}"},
    {Word::bars, "Takte {from}–{to}"},
    {Word::whole, "alles"},
    {Word::tick, "abhaken"},
    {Word::form, "Form"},
    {Word::form_here, "hier steht Beispiel {n}"},
    {Word::neck_of, "{what} auf dem Griffbrett"},
    {Word::neck_of_notes, "Diese Töne auf dem Griffbrett"},
    {Word::neck_frets, "Bünde {from} bis {to}"},
    {Word::root, "Grundton"},
    {Word::chord_shapes, "Akkordgriffe"},
    {Word::practice_log, "Übeprotokoll"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Fehlerfrei"},
    {Word::note_column, "Notiz"},
    {Word::answer_key, "Lösungen"},
    {Word::page_of, "Seite {n} von {total}"},
    {Word::string_letter, "{letter}-Saite"},
    {Word::string_number, "{n}. Saite"},
    {Word::place_fretted, "{string}, {n}. Bund"},
    {Word::place_open, "{string}, leer"},
    {Word::once_through_one, "ein Durchgang = {n} Takt"},
    {Word::once_through_other, "ein Durchgang = {n} Takte"},
    {Word::write_bars_one, "schreibe {n} Takt"},
    {Word::write_bars_other, "schreibe {n} Takte"},
    {Word::passes_one, "{n} sauberer Durchgang"},
    {Word::passes_other, "{n} saubere Durchgänge"},
});

}  // namespace

const Table& table_de() {
  return by_word;
}

}  // namespace fretsheaf::words
