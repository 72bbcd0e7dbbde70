#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "N° {n}"},
    {Word::key, "Tonalité"},
    {Word::meter, "Mesure"},
    {Word::tuning, "Accordage"},
    {Word::capo, "Capodastre"},
    {Word::capo_at, "case {n}"},
    {Word::name, "Nom"},
    {Word::date, "Date"},
    {Word::link_hint, "à scanner ou à cliquer"},
    {Word::key_major, "{tonic} majeur"},
    {Word::key_minor, "{tonic} mineur"},
    {Word::key_dorian, "{tonic} dorien"},
    {Word::key_phrygian, "{tonic} phrygien"},
    {Word::key_lydian, "{tonic} lydien"},
    {Word::key_mixolydian, "{tonic} mixolydien"},
    {Word::key_locrian, "{tonic} locrien"},
    {Word::example, "Exemple {n}"},
    {Word::example_caps, "EXEMPLE {n}"},
    {Word::straight_eighths, "croches égales"},
    {Word::straight_sixteenths, "doubles croches égales"},
    {Word::swing, "swing"},
    {Word::swing_sixteenths, "doubles croches swing"},
    {Word::shuffle, "shuffle"},
    {Word::degree, "degré"},
    {Word::note, "note"},
    {Word::finger, "doigt"},
    {Word::count, "compter"},
    {Word::chord, "accord"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "laisser vibrer"},
    {Word::harmonic, "harm."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Échelle de tempo"},
    {Word::ladder_hint, "cochez une case à chaque passage propre, puis montez"},
    {Word::practice_notes, "Conseils de travail"},
    {Word::build_up, "Pas à pas"},
    {Word::build_up_hint, "cochez chaque étape, puis continuez"},
    {Word::bar, "mesure {n}"},
    {Word::bars, "mesures {from}–{to}"},
    {Word::whole, "le tout"},
    {Word::tick, "cocher"},
    {Word::form, "Forme"},
    {Word::form_here, "l’exemple {n} se place ici"},
    {Word::neck_of, "{what} sur le manche"},
    {Word::neck_of_notes, "Ces notes sur le manche"},
    {Word::neck_frets, "cases {from} à {to}"},
    {Word::root, "fondamentale"},
    {Word::chord_shapes, "Positions d’accords"},
    {Word::practice_log, "Carnet de travail"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Sans faute"},
    {Word::note_column, "Remarque"},
    {Word::answer_key, "Corrigé"},
    {Word::page_of, "page {n} sur {total}"},
    {Word::string_letter, "corde {letter}"},
    {Word::string_number, "{nth} corde"},
    {Word::place_fretted, "{string}, case {n}"},
    {Word::place_open, "{string}, à vide"},
    {Word::once_through_one, "une fois = {n} mesure"},
    {Word::once_through_other, "une fois = {n} mesures"},
    {Word::write_bars_one, "écrivez {n} mesure"},
    {Word::write_bars_other, "écrivez {n} mesures"},
    {Word::passes_one, "{n} passage propre"},
    {Word::passes_other, "{n} passages propres"},
});

}  // namespace

const Table& table_fr() {
  return by_word;
}

}  // namespace fretsheaf::words
