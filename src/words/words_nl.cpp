#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "Nr. {n}"},
    {Word::key, "Toonsoort"},
    {Word::meter, "Maatsoort"},
    {Word::tuning, "Stemming"},
    {Word::capo, "Capo"},
    {Word::capo_at, "fret {n}"},
    {Word::name, "Naam"},
    {Word::date, "Datum"},
    {Word::link_hint, "scan of klik"},
    {Word::key_major, "{tonic}-groot"},
    {Word::key_minor, "{lower}-klein"},
    {Word::key_dorian, "{tonic} dorisch"},
    {Word::key_phrygian, "{tonic} frygisch"},
    {Word::key_lydian, "{tonic} lydisch"},
    {Word::key_mixolydian, "{tonic} mixolydisch"},
    {Word::key_locrian, "{tonic} locrisch"},
    {Word::example, "Voorbeeld {n}"},
    {Word::example_caps, "VOORBEELD {n}"},
    {Word::straight_eighths, "gelijke achtsten"},
    {Word::straight_sixteenths, "gelijke zestienden"},
    {Word::swing, "swing"},
    {Word::swing_sixteenths, "swing-zestienden"},
    {Word::shuffle, "shuffle"},
    {Word::degree, "trap"},
    {Word::note, "noot"},
    {Word::finger, "vinger"},
    {Word::count, "tel"},
    {Word::chord, "akkoord"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "laten klinken"},
    {Word::harmonic, "flag."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Tempoladder"},
    {Word::ladder_hint, "vink een vakje af na elke foutloze keer en klim"},
    {Word::practice_notes, "Oefentips"},
    {Word::build_up, "Stap voor stap"},
    {Word::build_up_hint, "vink elke stap af en ga verder"},
    {Word::bar, "maat {n}"},
    {Word::bars, "maten {from}–{to}"},
    {Word::whole, "alles"},
    {Word::tick, "afvinken"},
    {Word::form, "Vorm"},
    {Word::form_here, "hier komt voorbeeld {n}"},
    {Word::neck_of, "{what} op de hals"},
    {Word::neck_of_notes, "Deze noten op de hals"},
    {Word::neck_frets, "frets {from} tot {to}"},
    {Word::root, "grondtoon"},
    {Word::chord_shapes, "Akkoordgrepen"},
    {Word::practice_log, "Oefenlogboek"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Foutloos"},
    {Word::note_column, "Notitie"},
    {Word::answer_key, "Antwoorden"},
    {Word::page_of, "pagina {n} van {total}"},
    {Word::string_letter, "{letter}-snaar"},
    {Word::string_number, "{n}e snaar"},
    {Word::place_fretted, "{string}, fret {n}"},
    {Word::place_open, "{string}, los"},
    {Word::once_through_one, "één keer = {n} maat"},
    {Word::once_through_other, "één keer = {n} maten"},
    {Word::write_bars_one, "schrijf {n} maat"},
    {Word::write_bars_other, "schrijf {n} maten"},
    {Word::passes_one, "{n} foutloze keer"},
    {Word::passes_other, "{n} foutloze keren"},
});

}  // namespace

const Table& table_nl() {
  return by_word;
}

}  // namespace fretsheaf::words
