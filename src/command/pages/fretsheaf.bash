# Completion of fretsheaf for bash.
# Written from the texts of fretsheaf help; tests/run --update-golden writes it anew.
_fretsheaf() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} verb=${COMP_WORDS[1]} options=
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    mapfile -t COMPREPLY < <(compgen -W 'typeset sheaf transpose adopt check say tidy preview schema new help' -- "$word")
    return
  fi
  case "$verb $before" in
    'typeset --key') mapfile -t COMPREPLY < <(compgen -W 'C Db D Eb E F Gb G Ab A Bb B all' -- "$word"); return ;;
    'typeset --instrument') mapfile -t COMPREPLY < <(compgen -W 'bass bass-5 bass-6 guitar guitar-7 ukulele baritone-ukulele mandolin banjo tenor-banjo' -- "$word"); return ;;
    'typeset --capo') :; return ;;
    'typeset --to') compopt -o filenames; mapfile -t COMPREPLY < <(compgen -d -- "$word"); return ;;
    'typeset --as') mapfile -t COMPREPLY < <(compgen -W 'pdf svg musicxml mxl' -- "$word"); return ;;
    'typeset --template') mapfile -t COMPREPLY < <(compgen -W 'compact large-print music-stand' -- "$word"); compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.toml' -- "$word"); return ;;
    'typeset --depfile') compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$word"); return ;;
    'sheaf --to') compopt -o filenames; mapfile -t COMPREPLY < <(compgen -d -- "$word"); return ;;
    'sheaf --key') mapfile -t COMPREPLY < <(compgen -W 'C Db D Eb E F Gb G Ab A Bb B all' -- "$word"); return ;;
    'sheaf --as') mapfile -t COMPREPLY < <(compgen -W 'pdf svg musicxml mxl' -- "$word"); return ;;
    'sheaf --jobs') :; return ;;
    'sheaf --only') :; return ;;
    'sheaf --share') :; return ;;
    'transpose --key') mapfile -t COMPREPLY < <(compgen -W 'C Db D Eb E F Gb G Ab A Bb B all' -- "$word"); return ;;
    'transpose -o') compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$word"); return ;;
    'adopt --part') :; return ;;
    'adopt --instrument') mapfile -t COMPREPLY < <(compgen -W 'bass bass-5 bass-6 guitar guitar-7 ukulele baritone-ukulele mandolin banjo tenor-banjo' -- "$word"); return ;;
    'adopt -o') compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$word"); return ;;
    'say --key') mapfile -t COMPREPLY < <(compgen -W 'C Db D Eb E F Gb G Ab A Bb B all' -- "$word"); return ;;
    'say --as') mapfile -t COMPREPLY < <(compgen -W 'text html' -- "$word"); return ;;
    'preview --port') :; return ;;
    'new --instrument') mapfile -t COMPREPLY < <(compgen -W 'bass bass-5 bass-6 guitar guitar-7 ukulele baritone-ukulele mandolin banjo tenor-banjo' -- "$word"); return ;;
  esac
  case $verb in
    typeset) options='--key --instrument --capo --to --as --template --answers --split --depfile' ;;
    sheaf) options='--to --key --as --jobs --prune --verify --list --only --share --quiet --json' ;;
    transpose) options='--key -o --json' ;;
    adopt) options='--part --instrument -o' ;;
    check) options='--json' ;;
    say) options='--key --as --answers' ;;
    tidy) options='--check' ;;
    preview) options='--port --open' ;;
    schema) options='' ;;
    new) options='--instrument' ;;
    help) options='' ;;
  esac
  if [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$options" -- "$word")
    return
  fi
  case $verb in
    typeset) compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.lesson.toml' -- "$word") ;;
    sheaf) compopt -o filenames; mapfile -t COMPREPLY < <(compgen -d -- "$word") ;;
    transpose) compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.lesson.toml' -- "$word") ;;
    adopt) compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$word") ;;
    check) compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.lesson.toml' -- "$word") ;;
    say) compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.lesson.toml' -- "$word") ;;
    tidy) compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.lesson.toml' -- "$word") ;;
    preview) compopt -o filenames; mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$word"; compgen -f -X '!*.lesson.toml' -- "$word") ;;
    schema) mapfile -t COMPREPLY < <(compgen -W 'lesson sheaf' -- "$word") ;;
    new) compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$word") ;;
    help) mapfile -t COMPREPLY < <(compgen -W '0 1 10 2 3 4 4h5 4x 5 Am7 IV7 P PM--- T TP--- a accent adopt also-in as bVII bar-number bars bars-per-line beat blank-bars block-gap block-gap-least block-gap-most body body-emphasis body-leading body-strong body-strong-emphasis box-finger box-finger-drop box-fret box-gap box-head box-mark box-row-gap box-string build-up capo caption cautions check chord chord-raised chord-to-slash chord-to-slash-tuplet clearance coda code column-gutter copyright count count-rest d defaults degree digit e ending example example-label expression f fact-gap fact-label fact-label-to-value fact-labels fact-value facts facts-to-name-line facts-to-rule feel fermata ff fff fine finger folder fonts footer footer-clearance footer-leading footer-rule form form-cell-height form-cell-width form-label frets from h hand handed head header heading heading-to-box heading-to-chord heading-to-form heading-to-ladder heading-to-neck heading-to-text help here hide i i7 instrument intro key la label-to-label labels ladder ladder-box ladder-box-pitch ladder-first-box ladder-height ladder-number ladder-number-right ladder-row-gap ladder-rung language later-pages least-type let--- level li line-gap line-gap-least line-gap-most link list-indent list-item-gap list-leading list-number logo logo-alt lyric m margin-bottom margin-left margin-right margin-top mark meta meta-to-title meter mf mp music name-line name-line-to-rule natural-quarter neck neck-fret neck-mark neck-number neck-nut neck-open neck-row-gap neck-string new note note-names notes-to-tab number of one-thing-a-line output p page paper paragraph-gap passes place play pp ppp practice practice-log preview prose-measure road row-name rule rule-to-text rungs running-class running-head running-head-to-text running-title say schema section segno series sfz shapes sheaf size slash-to-notes slash-to-tab space spacing spacing-ratio spell staff staves step string string-letter stroke subtitle subtitle-leading swing-ratio tab tab-gap tab-sign tab-to-label tabular teacher technique template tempo tempo-number text tidy time-signature title title-leading title-to-facts title-to-subtitle title-to-top-line to top-line tracking transpose tuning tuplet two-sided type typeset u vary write-out x' -- "$word") ;;
  esac
}
complete -F _fretsheaf fretsheaf
