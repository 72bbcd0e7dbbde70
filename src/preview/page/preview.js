// The page: asks for the lesson whenever it has changed or another choice is made, and shows what comes.
import { Music, placeLines, placeTitle } from './music.js';
import { Picture } from './picture.js';
import { fillIn, words } from './words.js';

const by = (id) => document.getElementById(id);
const made = (name, text, className) => {
  const element = document.createElement(name);
  if (text !== undefined) element.textContent = text;
  if (className) element.className = className;
  return element;
};

const asked = new URLSearchParams(location.search);
let lesson = asked.get('lesson');
const choice = { key: asked.get('key') ?? '', look: asked.get('look') ?? '', copy: asked.get('copy') ?? '' };

function query() {
  const values = new URLSearchParams({ lesson });
  for (const [name, value] of Object.entries(choice)) {
    if (value) values.set(name, value);
  }
  return values;
}

function say(text, manner = '') {
  by('state').textContent = text;
  by('state').dataset.manner = manner;
}

// ---- What is wrong

function problemItem(problem) {
  const item = made('li', undefined, problem.error ? 'error' : 'warning');
  const head = made('p');
  head.append(made('strong', problem.error ? words.error : words.warning), ` ${problem.message}`);
  item.append(head);
  if (problem.line) item.append(made('p', `${problem.file}, ${words.place(problem.line, problem.column)}`, 'where'));
  if (problem.excerpt) {
    const excerpt = made('pre', problem.excerpt);
    excerpt.tabIndex = 0;
    item.append(excerpt);
  }
  if (problem.help) item.append(made('p', problem.help, 'help'));
  return item;
}

// A long line is moved to where its carets stand.
function bringCaretsIntoView(excerpt) {
  const carets = excerpt.textContent.split('\n')[1] ?? '';
  const letter = excerpt.scrollWidth / Math.max(...excerpt.textContent.split('\n').map((line) => line.length), 1);
  const middle = ((carets.indexOf('^') + carets.length) / 2) * letter;
  excerpt.scrollLeft = middle < excerpt.clientWidth - 2 * letter ? 0 : middle - excerpt.clientWidth / 2;
}

let shownProblems = null;
function showProblems(problems) {
  const now = JSON.stringify(problems);
  if (now === shownProblems) return;
  shownProblems = now;
  const errors = problems.filter((problem) => problem.error).length;
  by('problems').hidden = false;
  by('problems').classList.toggle('none', problems.length === 0);
  by('problems-title').textContent = problems.length ? words.counts(errors, problems.length - errors) : words.allWell;
  by('problem-list').replaceChildren(...problems.map(problemItem));
  by('problem-list').querySelectorAll('pre').forEach(bringCaretsIntoView);
}

// ---- The pages

const music = new Music(showNote);

// Each in a tree of its own: two pages may call different things by one name.
function newPage() {
  const page = made('div', undefined, 'page');
  page.setAttribute('role', 'group');
  const root = page.attachShadow({ mode: 'open' });
  const look = made('link');
  look.rel = 'stylesheet';
  look.href = 'music.css';
  page.picture = new Picture();
  root.append(look, page.picture.svg);
  music.listen(root);
  return page;
}

// One that is there no more has been replaced since it was named: what is there now is asked for.
async function askPage(name) {
  try {
    return await (await ask(`pages/${name}.svg`)).text();
  } catch (fault) {
    again = Boolean(fault.status) && (missed += 1) < 5;
    throw fault;
  }
}

function put(page, name, text) {
  const [width, height] = page.picture.show(text);
  page.style.aspectRatio = `${width} / ${height}`;
  page.dataset.name = name;
}

function isInSight(page) {
  const { top, bottom } = page.getBoundingClientRect();
  return bottom > 0 && top < innerHeight;
}

// A page that is hidden is never painted, and waited for no longer than a picture would take.
const painted = () =>
  new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, 100);
  });

// Nothing is taken away before what comes in its place is here, and no page but a changed one is touched: so the place
// where one reads stays. What is in sight comes first.
async function showPages(picture) {
  const there = [...by('pages').querySelectorAll('.page')];
  const focused = there.some((page) => page.shadowRoot.activeElement);
  const changed = picture.pages.map((name, index) => ({ name, index })).filter(({ name, index }) => there[index]?.dataset.name !== name);
  const texts = await Promise.all(changed.map(({ name }) => askPage(name)));
  const pages = picture.pages.map((name, index) => there[index] ?? newPage());
  by('pages').append(...pages.slice(there.length));
  there.slice(pages.length).forEach((page) => page.remove());
  pages.forEach((page, index) => page.setAttribute('aria-label', words.page(index + 1, pages.length)));
  const all = changed.map(({ name, index }, number) => ({ page: pages[index], name, text: texts[number] }));
  const first = all.filter(({ page }) => isInSight(page));
  for (const { page, name, text } of first) put(page, name, text);
  if (first.length > 0 && first.length < all.length) await painted();
  for (const { page, name, text } of all) {
    if (page.dataset.name !== name) put(page, name, text);
  }
  music.read(pages.map((page) => page.shadowRoot), picture.places);
  const lost = focused && !pages.some((page) => page.shadowRoot.activeElement);
  if (lost) music.stops.find((stop) => stop.key === music.focused)?.element.focus({ preventScroll: true });
}

function showNote(place) {
  by('note').hidden = !place;
  document.body.classList.toggle('has-note', Boolean(place));
  if (!place) return;
  by('note-title').textContent = placeTitle(place);
  const notes = placeLines(place).map((lines) => {
    const note = made('p');
    lines.forEach((line, index) => note.append(made(index === 0 ? 'strong' : 'span', line)));
    return note;
  });
  const from = place.notes.length === 1 ? place.notes[0] : place;
  const where = made('p', undefined, 'where');
  where.append(made('span', words.written(from.line, from.column)), made('span', words.inExample(place.example)));
  by('note-body').replaceChildren(...notes, where);
}

// ---- The choices

function option(value, text, chosen) {
  const element = made('option', text);
  element.value = value;
  element.selected = value === chosen;
  return element;
}

function showKeys(keys, chosen) {
  const groups = { own: words.ownKey, 'also-in': words.alsoIn, other: words.otherKeys };
  const parts = Object.entries(groups).flatMap(([group, label]) => {
    const own = keys.filter((key) => key.group === group);
    if (!own.length) return [];
    const part = document.createElement('optgroup');
    part.label = label;
    part.append(...own.map((key) => option(key.key, key.printed, chosen)));
    return [part];
  });
  by('key').replaceChildren(...parts);
}

let shownChoices = '';
function showChoices(picture) {
  const chosen = {
    key: choice.key || picture.keys[0].key,
    look: choice.look || picture.looks[0],
    copy: picture.exercise && choice.copy === 'answers' ? 'answers' : 'handout',
  };
  const now = JSON.stringify([picture.keys, picture.looks, picture.exercise, chosen]);
  if (now === shownChoices) return;
  shownChoices = now;
  showKeys(picture.keys, chosen.key);
  by('look').replaceChildren(
    ...picture.looks.map((name, index) => option(name, index === 0 ? words.ownLook(name) : name, chosen.look)),
  );
  by('copy').hidden = !picture.exercise;
  document.querySelector(`input[value=${chosen.copy}]`).checked = true;
}

function showDownloads(canBeMade) {
  for (const id of ['pdf', 'musicxml']) {
    const link = by(id);
    link.setAttribute('aria-disabled', String(!canBeMade));
    link.title = canBeMade ? '' : words.notNow;
    if (canBeMade) {
      link.href = `handout.${id}?${query()}`;
    } else {
      link.removeAttribute('href');
    }
  }
}

function choose() {
  // The lesson's own stands first in each, and is what goes without saying: it stays its own when the file changes.
  const valueOf = (id) => (by(id).selectedIndex === 0 ? '' : by(id).value);
  const copy = document.querySelector('input[name=copy]:checked').value;
  Object.assign(choice, { key: valueOf('key'), look: valueOf('look'), copy: copy === 'answers' ? copy : '' });
  history.replaceState(null, '', `?${query()}`);
  load();
}

// ---- A lesson, or the list of them

async function ask(what) {
  const reply = await fetch(what);
  if (!reply.ok) throw Object.assign(new Error(what), { status: reply.status });
  return reply;
}

async function showLesson() {
  const now = await (await ask(`lesson.json?${query()}`)).json();
  const { picture } = now;
  document.body.classList.add('lesson');
  by('choices').hidden = !picture;
  if (picture) {
    // A choice that the lesson cannot have any more has given way to its own.
    if (now.fresh) Object.keys(choice).forEach((name) => (choice[name] &&= picture.choice[name] ?? choice[name]));
    await showPages(picture);
    showChoices(picture);
    showDownloads(now.fresh);
  }
  const title = picture?.title || now.name;
  document.title = `${title} · fretsheaf`;
  by('title').textContent = title;
  by('file').textContent = now.file;
  by('back').hidden = !now.inFolder;
  document.body.classList.toggle('stale', !now.fresh);
  showProblems(now.problems);
  say(now.fresh ? words.drawn(picture.pages.length) : picture ? words.stale : words.none, now.fresh ? 'good' : 'bad');
}

function lessonItem(entry) {
  const item = made('li');
  const link = made('a', entry.title || entry.name);
  link.href = `?${new URLSearchParams({ lesson: entry.name })}`;
  const mark = made('span', words.counts(entry.errors, entry.warnings), 'mark');
  mark.dataset.manner = entry.errors ? 'bad' : entry.warnings ? 'warned' : 'good';
  item.append(link, made('span', `${entry.name}.lesson.toml`, 'path'), mark);
  return item;
}

function showList(list) {
  document.title = `${list.folder} · fretsheaf`;
  by('title').textContent = list.folder;
  by('lessons').hidden = false;
  const focused = document.activeElement?.href;
  by('lesson-list').replaceChildren(...list.lessons.map(lessonItem));
  if (focused) [...by('lesson-list').querySelectorAll('a')].find((link) => link.href === focused)?.focus();
  say(list.lessons.length ? words.list(list.lessons.length) : words.noLessons);
}

async function show() {
  if (lesson === null) {
    const list = await (await ask('lessons.json')).json();
    if (list.folder) return showList(list);
    lesson = list.lessons[0].name;
  }
  await showLesson();
}

let loading = null;
let again = false;
let missed = 0;
// One at a time; what has changed meanwhile is asked for afterwards.
async function load() {
  if (loading) {
    again = true;
    return;
  }
  do {
    again = false;
    loading = show();
    try {
      await loading;
      missed = 0;
      document.documentElement.dataset.drawn = Number(document.documentElement.dataset.drawn ?? 0) + 1;
    } catch (fault) {
      // Without an answer at all the stream of news has ended as well, and says so.
      if (fault.status && !again) say(words.gone, 'bad');
      else if (!(fault instanceof TypeError || again)) throw fault;
    } finally {
      loading = null;
    }
  } while (again);
}

// ---- News

let news = null;
function listen() {
  news?.close();
  news = new EventSource('news');
  let ended = false;
  news.addEventListener('version', () => {
    ended = false;
    load();
  });
  news.addEventListener('replaced', () => {
    news.close();
    news = null;
    say(words.replaced, 'bad');
  });
  news.addEventListener('error', () => {
    if (!ended) say(words.ended, 'bad');
    ended = true;
  });
}

function comeBack() {
  if (!news && document.visibilityState === 'visible') listen();
}

fillIn(document);
by('key').addEventListener('change', choose);
by('look').addEventListener('change', choose);
by('copy').addEventListener('change', choose);
by('note-close').addEventListener('click', () => music.leave()?.element.focus({ preventScroll: true }));
document.addEventListener('keydown', (event) => {
  if (event.key === 'Escape' && music.chosen) music.leave()?.element.focus({ preventScroll: true });
});
document.addEventListener('visibilitychange', comeBack);
window.addEventListener('focus', comeBack);
window.addEventListener('resize', () => document.querySelectorAll('pre').forEach(bringCaretsIntoView));
say(words.drawing);
load();
listen();
