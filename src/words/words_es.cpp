#include "words/table.h"

namespace fretsheaf::words {
namespace {

constexpr Table by_word = table({
    {Word::number, "N.º {n}"},
    {Word::key, "Tonalidad"},
    {Word::meter, "Compás"},
    {Word::tuning, "Afinación"},
    {Word::capo, "Cejilla"},
    {Word::capo_at, "traste {n}"},
    {Word::name, "Nombre"},
    {Word::date, "Fecha"},
    {Word::link_hint, "escanea o haz clic"},
    {Word::key_major, "{tonic} mayor"},
    {Word::key_minor, "{tonic} menor"},
    {Word::key_dorian, "{tonic} dórico"},
    {Word::key_phrygian, "{tonic} frigio"},
    {Word::key_lydian, "{tonic} lidio"},
    {Word::key_mixolydian, "{tonic} mixolidio"},
    {Word::key_locrian, "{tonic} locrio"},
    {Word::example, "Ejemplo {n}"},
    {Word::example_caps, "EJEMPLO {n}"},
    {Word::straight_eighths, "corcheas iguales"},
    {Word::straight_sixteenths, "semicorcheas iguales"},
    {Word::swing, "swing"},
    {Word::swing_sixteenths, "semicorcheas con swing"},
    {Word::shuffle, "shuffle"},
    {Word::degree, "grado"},
    {Word::note, "nota"},
    {Word::finger, "dedo"},
    {Word::count, "cuenta"},
    {Word::chord, "acorde"},
    {Word::palm_mute, "P.M."},
    {Word::let_ring, "dejar sonar"},
    {Word::harmonic, "arm."},
    {Word::times, "{n}×"},
    {Word::tempo_ladder, "Escalera de tempo"},
    {Word::ladder_hint, "marca una casilla por cada pasada limpia y sube"},
    {Word::practice_notes, "Notas de estudio"},
    {Word::build_up, "Paso a paso"},
    {Word::build_up_hint, "marca cada paso y sigue"},
    {Word::bar, "compás {n}"},
    {Word::bars, "compases {from}–{to}"},
    {Word::whole, "todo"},
    {Word::tick, "marcar"},
    {Word::form, "Forma"},
    {Word::form_here, "aquí va el ejemplo {n}"},
    {Word::neck_of, "{what} en el mástil"},
    {Word::neck_of_notes, "Estas notas en el mástil"},
    {Word::neck_frets, "trastes {from} a {to}"},
    {Word::root, "fundamental"},
    {Word::chord_shapes, "Posiciones de acordes"},
    {Word::practice_log, "Diario de estudio"},
    {Word::tempo, "Tempo"},
    {Word::clean_passes, "Sin fallos"},
    {Word::note_column, "Nota"},
    {Word::answer_key, "Soluciones"},
    {Word::page_of, "página {n} de {total}"},
    {Word::string_letter, "cuerda {letter}"},
    {Word::string_number, "{n}.ª cuerda"},
    {Word::place_fretted, "{string}, traste {n}"},
    {Word::place_open, "{string}, al aire"},
    {Word::once_through_one, "una vuelta = {n} compás"},
    {Word::once_through_other, "una vuelta = {n} compases"},
    {Word::write_bars_one, "escribe {n} compás"},
    {Word::write_bars_other, "escribe {n} compases"},
    {Word::passes_one, "{n} pasada limpia"},
    {Word::passes_other, "{n} pasadas limpias"},
});

}  // namespace

const Table& table_es() {
  return by_word;
}

}  // namespace fretsheaf::words
