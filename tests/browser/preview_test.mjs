// What a teacher sees of a lesson while writing it: the whole way from a saved file to the page, and back to its lines.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import test from 'node:test';
import { withBrowser, withFolder } from './support/browser.mjs';
import { openPage, says, until, upToDate, withPreview } from './support/preview.mjs';

const lesson = `title      = "Mooring lines"
key        = "D dorian"
also-in    = ["E dorian", "A dorian"]
instrument = "bass"

[[example]]
title = "Over and under"
tab = '''
count | 1   2 & 3   4   | 1   & (2) 3   4   |
chord | i7              | IV7               |
D     |                 |           2       |
A     | 5   5 5     3   | 5   5             |
E     |         3       |                   |
'''
`;
const quiz = lesson.replace('title = "Over', 'hide = ["frets"]\ntitle = "Over');

// Two pages of it: as many examples more as fill one.
const long = lesson + Array.from({ length: 9 }, (_, i) => lesson.slice(lesson.indexOf('[[')).replace('Over', `${i} over`)).join('\n');

// Runs `work(page, context)` on the page of a lesson; nothing may be said in the console.
async function withLesson(text, work, address = (first) => first) {
  await withFolder(async (folder) => {
    const path = join(folder, 'mooring.lesson.toml');
    await writeFile(path, text);
    await withPreview(path, async (preview) => {
      await withBrowser(async (browser) => {
        const page = await openPage(browser, address(preview.address));
        await work(page, { path, folder, browser, ...preview });
        assert.deepEqual(page.faults, []);
      });
    });
  });
}

const titleOf = (page) => page.locator('.page svg > title').first().textContent();
const event = (page, bar, at) => page.locator(`g.event[role=button][data-bar="${bar}"][data-at="${at}"]`);

test('the first page, redrawn when the file is saved', async () => {
  await withLesson(lesson, async (page, { path, folder }) => {
    await upToDate(page);
    assert.equal(await page.title(), 'Mooring lines · fretsheaf');
    assert.equal(await page.locator('.page').count(), 1);
    assert.equal(await page.locator('#problem-list li').count(), 0);
    await writeFile(path, lesson.replace('Mooring lines', 'Slack water'));
    await until(page, () => document.title.startsWith('Slack water'));
    assert.equal(await titleOf(page), 'Slack water');
    // Many editors write a file beside it and rename that.
    await writeFile(join(folder, 'new'), lesson.replace('Mooring lines', 'Spring tide'));
    await rename(join(folder, 'new'), path);
    await until(page, () => document.title.startsWith('Spring tide'));
    assert.equal(await titleOf(page), 'Spring tide');
  });
});

test('a sheaf.toml, a template and a picture are watched too', async () => {
  await withLesson(lesson, async (page, { folder, path }) => {
    await upToDate(page);
    await writeFile(join(folder, 'sheaf.toml'), '[defaults]\npaper = "letter"\n');
    const is = (ratio) =>
      until(page, (wanted) => document.querySelector('.page').style.aspectRatio === wanted, ratio);
    await is('612 / 792');
    await rm(join(folder, 'sheaf.toml'));
    await is('595.28 / 841.89');
    await writeFile(path, `logo = "lantern.svg"\nlogo-alt = "A lantern"\n${lesson}`);
    await says(page, 'The lesson has errors');
    const logo = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9"/></svg>';
    await writeFile(join(folder, 'lantern.svg'), logo);
    await upToDate(page);
    await writeFile(path, lesson.replace('bass"\n', 'bass"\ntemplate = "own.toml"\n'));
    await says(page, 'The lesson has errors');
    const templates = join(process.env.FRETSHEAF_PROJECT, 'templates');
    const look = await readFile(join(templates, 'music-stand.toml'), 'utf8');
    await writeFile(join(folder, 'own.toml'), look);
    await upToDate(page);
    const before = await page.locator('.page').first().getAttribute('data-name');
    await writeFile(join(folder, 'own.toml'), look.replace('"#095461"', '"#702040"'));
    await until(page, (name) => document.querySelector('.page').dataset.name !== name, before);
    await upToDate(page);
  });
});

test('errors stand beside the last good page, and go when they are mended', async () => {
  await withLesson(lesson, async (page, { path }) => {
    await upToDate(page);
    const before = await page.locator('.page').getAttribute('data-name');
    await writeFile(path, lesson.replace('5 5     3', '5  5    3').replace('"D dorian"', '"H dorian"'));
    await says(page, 'The lesson has errors. These are its pages from before them.');
    assert.equal(await page.locator('.page').getAttribute('data-name'), before);
    assert.equal(await page.locator('#problems-title').textContent(), '2 errors');
    const stray = page.locator('#problem-list li').last();
    assert.match(await stray.textContent(), /mooring\.lesson\.toml, line 12, column 16/);
    const [line, carets] = (await stray.locator('pre').textContent()).split('\n');
    assert.equal(line[carets.indexOf('^')], '5');
    // What cannot be made cannot be taken away either.
    for (const id of ['pdf', 'musicxml']) {
      assert.equal(await page.locator(`#${id}`).getAttribute('href'), null);
      assert.equal(await page.locator(`#${id}`).getAttribute('aria-disabled'), 'true');
    }
    await writeFile(path, lesson);
    await upToDate(page);
    assert.equal(await page.locator('#problem-list li').count(), 0);
    assert.notEqual(await page.locator('#pdf').getAttribute('href'), null);
  });
});

test('a page opened on a lesson with errors says so, and shows it once it is good', async () => {
  await withLesson(lesson.replace('bass', 'bas'), async (page, { path }) => {
    await says(page, 'The lesson has errors, and there is no page yet.');
    assert.match(await page.locator('#problem-list').textContent(), /did you mean/);
    await writeFile(path, lesson);
    await upToDate(page);
    assert.equal(await page.locator('.page').count(), 1);
  });
});

test('another key, the lesson’s own first; downloads are in it; it stays when the page is loaded again', async () => {
  await withLesson(lesson, async (page) => {
    await upToDate(page);
    const groups = await page.locator('#key optgroup').evaluateAll((all) => all.map((one) => [one.label, one.children.length]));
    assert.deepEqual(groups.slice(0, 2), [['The lesson’s own', 1], ['Also in', 2]]);
    assert.equal(groups[2][1], 9); // twelve keys in all
    await page.selectOption('#key', 'E dorian');
    const chord = () => event(page, 1, '0').getAttribute('aria-label');
    await until(page, () => document.querySelector('#pdf').href.includes('E+dorian'));
    assert.match(await chord(), /^Bar 1, count 1, E, /);
    for (const [id, ending, begins] of [['pdf', 'e-dorian.pdf', '%PDF-'], ['musicxml', 'e-dorian.musicxml', '<?xml']]) {
      const waits = page.waitForEvent('download');
      await page.click(`#${id}`);
      const download = await waits;
      assert.equal(download.suggestedFilename(), `mooring.${ending}`);
      assert.ok((await readFile(await download.path(), 'utf8')).startsWith(begins));
    }
    await page.reload();
    await upToDate(page);
    assert.equal(await page.locator('#key').inputValue(), 'E dorian');
    assert.match(await chord(), /^Bar 1, count 1, E, /);
  });
});

test('a key that the lesson cannot have any more gives way to its own', async () => {
  await withLesson(lesson, async (page, { path }) => {
    await upToDate(page);
    await page.selectOption('#key', 'E dorian');
    await until(page, () => document.querySelector('#pdf').href.includes('E+dorian'));
    await writeFile(path, lesson.replaceAll('dorian', 'minor'));
    await until(page, () => document.querySelector('#key').value === 'D minor');
    await upToDate(page);
  });
});

test('another template, and the answer key', async () => {
  await withLesson(quiz, async (page) => {
    await upToDate(page);
    const name = () => page.locator('.page').first().getAttribute('data-name');
    const drawnAnew = (before) =>
      until(page, (old) => document.querySelector('.page').dataset.name !== old, before);
    const digits = () => page.locator('g.event[data-staff=tab]').evaluateAll((all) => all.map((one) => one.children.length));
    const first = await name();
    assert.match(await event(page, 1, '0').getAttribute('aria-label'), /Left for the student to write/);
    await page.check('input[value=answers]');
    await drawnAnew(first);
    assert.match(await event(page, 1, '0').getAttribute('aria-label'), /D, A string, fret 5/);
    const answers = await name();
    await page.selectOption('#look', 'large-print');
    await drawnAnew(answers);
    assert.match(await page.locator('#musicxml').getAttribute('href'), /look=large-print&copy=answers/);
    assert.ok((await digits()).length > 0);
  });
});

test('a click on a note tells what it is and where it is written', async () => {
  await withLesson(lesson, async (page) => {
    await upToDate(page);
    await event(page, 1, '3/8').click({ force: true });
    // In D Dorian the count's second half has the A string's fifth fret, a D (worked out by hand).
    assert.equal(await page.locator('#note-title').textContent(), 'Bar 1, count 2 &');
    const told = await page.locator('#note-body').evaluate((body) => [...body.querySelectorAll('strong, span')].map((one) => one.textContent));
    assert.deepEqual(told, ['D, A string, fret 5', 'degree 1 in D Dorian', '1 of the chord Dm7', 'Written in line 12, column 15', 'Example 1']);
    const column = lesson.split('\n')[11].indexOf('5 5') + 3;
    assert.equal(column, 15);
    await event(page, 2, '1/4').click({ force: true });
    assert.match(await page.locator('#note-body').textContent(), /^Rest/);
    await page.click('#note-close');
    assert.ok(await page.locator('#note').isHidden());
  });
});

test('with the keyboard alone: choices, problems, notes', async () => {
  await withLesson(lesson, async (page, { path }) => {
    await upToDate(page);
    const focused = () =>
      page.evaluate(() => {
        let element = document.activeElement;
        while (element.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
        return element.id || element.getAttribute('aria-label') || element.className;
      });
    await page.keyboard.press('Tab');
    assert.equal(await focused(), 'skip');
    const order = [];
    for (let i = 0; i < 4; ++i) {
      await page.keyboard.press('Tab');
      order.push(await focused());
    }
    assert.deepEqual(order, ['key', 'look', 'pdf', 'musicxml']);
    await page.keyboard.press('Tab');
    assert.match(await focused(), /^Bar 1, count 1, D/);
    await page.keyboard.press('ArrowRight');
    assert.match(await focused(), /^Bar 1, count 2, D/);
    await page.keyboard.press('End');
    assert.match(await focused(), /^Bar 2, count 3, E/);
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    assert.equal(await page.locator('#note-title').textContent(), 'Bar 1, count 2');
    // It is still chosen, and still has the focus, when the page is drawn anew under it.
    await writeFile(path, lesson.replace('Over and under', 'Under and over'));
    await until(page, () => Number(document.documentElement.dataset.drawn) >= 2);
    await page.locator('.page svg g.example > title', { hasText: 'Under and over' }).waitFor({ state: 'attached' });
    assert.match(await focused(), /^Bar 1, count 2, D/);
    assert.equal(await page.locator('#note-title').textContent(), 'Bar 1, count 2');
    await page.keyboard.press('Escape');
    assert.ok(await page.locator('#note').isHidden());
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Shift+Tab');
    assert.equal(await focused(), 'key');
    await page.keyboard.press('e');
    await until(page, () => document.querySelector('#pdf').href.includes('key=E'));
  });
});

test('the place where one reads stays when the page is drawn anew', async () => {
  await withLesson(long, async (page, { path }) => {
    await upToDate(page);
    assert.ok((await page.locator('.page').count()) > 1);
    await page.evaluate(() => scrollTo(0, 900));
    const untouched = await page.locator('.page').last().evaluateHandle((element) => element.shadowRoot.lastChild);
    await writeFile(path, long.replace('Mooring lines', 'Mooring ropes'));
    await until(page, () => document.title.startsWith('Mooring ropes'));
    assert.equal(await page.evaluate(() => scrollY), 900);
    assert.ok(await untouched.evaluate((svg) => svg !== null));
  });
});

test('narrow and at double size, nothing is cut off sideways; a dark surrounding has light words', async () => {
  await withLesson(lesson.replace('"D dorian"', '"H dorian"'), async (page, { path }) => {
    await says(page, 'The lesson has errors');
    await writeFile(path, quiz);
    await upToDate(page);
    for (const width of [300, 600, 1500]) {
      await page.setViewportSize({ width, height: 800 });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.equal(wide, 0, `${width} wide`);
    }
    const brightness = (what) =>
      page.evaluate((property) => {
        const [red, green, blue] = getComputedStyle(document.body)[property].match(/\d+/g).map(Number);
        return (red + green + blue) / 3;
      }, what);
    await page.emulateMedia({ colorScheme: 'dark' });
    assert.ok((await brightness('color')) > 200 && (await brightness('backgroundColor')) < 60);
    await page.emulateMedia({ colorScheme: 'light' });
    assert.ok((await brightness('color')) < 60 && (await brightness('backgroundColor')) > 200);
  });
});

test('a folder lists its lessons with their errors, and what comes and goes', async () => {
  await withFolder(async (folder) => {
    await writeFile(join(folder, 'mooring.lesson.toml'), lesson);
    await writeFile(join(folder, 'slip.lesson.toml'), lesson.replace('bass', 'bas').replace('Mooring', 'Slip'));
    await withPreview(folder, async ({ address }) => {
      await withBrowser(async (browser) => {
        const page = await openPage(browser, address);
        await says(page, '2 lessons');
        const listed = () =>
          page.locator('#lesson-list li').evaluateAll((all) => all.map((one) => [...one.children].map((part) => part.textContent)));
        assert.deepEqual(await listed(), [
          ['Mooring lines', 'mooring.lesson.toml', 'no errors'],
          ['slip', 'slip.lesson.toml', '1 error'],
        ]);
        await writeFile(join(folder, 'slip.lesson.toml'), lesson.replace('Mooring', 'Slip'));
        await page.locator('li', { hasText: 'Slip lines' }).waitFor();
        await writeFile(join(folder, 'anchor.lesson.toml'), lesson.replace('Mooring', 'Anchor'));
        await says(page, '3 lessons');
        await rm(join(folder, 'slip.lesson.toml'));
        await says(page, '2 lessons');
        await page.click('text=Mooring lines');
        await upToDate(page);
        assert.equal(await page.locator('.page').count(), 1);
        await page.click('text=All lessons');
        await says(page, '2 lessons');
        assert.deepEqual(page.faults, []);
      });
    });
  });
});

test('Ctrl-C ends it within a second, with status 0, while pages are open', async () => {
  await withFolder(async (folder) => {
    const path = join(folder, 'mooring.lesson.toml');
    await writeFile(path, lesson);
    await withBrowser(async (browser) => {
      let page;
      const { status, milliseconds } = await withPreview(path, async ({ address }) => {
        page = await browser.newPage();
        await page.goto(address);
        await upToDate(page);
      });
      assert.equal(status, 0);
      assert.ok(milliseconds < 1000, `${milliseconds} ms`);
      await says(page, 'The preview has ended');
    });
  });
});

test('--open hands the address to what the desktop opens addresses with, and --port chooses it', async () => {
  await withFolder(async (folder) => {
    const path = join(folder, 'mooring.lesson.toml');
    await writeFile(path, lesson);
    const opener = join(folder, 'xdg-open');
    const told = join(folder, 'told');
    await writeFile(opener, `#!/bin/sh\necho "$@" > ${told}.part && mv ${told}.part ${told}\n`, { mode: 0o755 });
    const environment = { PATH: `${folder}:${process.env.PATH}` };
    const free = await new Promise((done) => {
      const server = createServer().listen(0, '127.0.0.1', () => {
        const { port } = server.address();
        server.close(() => done(port));
      });
    });
    await withPreview(path, async ({ address }) => {
      assert.equal(new URL(address).port, String(free));
      const patience = Date.now() + 10_000;
      while (!existsSync(told) && Date.now() < patience) await new Promise((done) => setTimeout(done, 10));
      assert.equal(await readFile(told, 'utf8'), `${address}\n`);
    }, ['--open', '--port', String(free)], environment);
  });
});

test('five windows: the oldest makes way, and goes on when one comes back to it', async () => {
  await withLesson(lesson, async (page, { address, browser, path }) => {
    await upToDate(page);
    const others = [];
    for (let i = 0; i < 4; ++i) others.push(await openPage(browser, address));
    await says(page, 'Four newer windows');
    await writeFile(path, lesson.replace('Mooring', 'Heaving'));
    for (const other of others) await until(other, () => document.title.startsWith('Heaving'));
    await page.evaluate(() => window.dispatchEvent(new Event('focus')));
    await until(page, () => document.title.startsWith('Heaving'));
  });
});

test('only what differs is drawn anew: the rest of a page is left as it is, and is right all the same', async () => {
  await withLesson(long, async (page, { path, browser, address }) => {
    await upToDate(page);
    const changed = long.replace('Mooring lines', 'Slack water').replace('5 5     3', '5 7     3').replace('4 over', 'Four over');
    const kept = await page.evaluateHandle(() => [...document.querySelector('.page').shadowRoot.querySelectorAll('g.example')]);
    await writeFile(path, changed);
    await until(page, () => document.title.startsWith('Slack water'));
    const there = await kept.evaluate((all) => all.map((one) => one.isConnected));
    assert.ok(there.includes(false) && there.includes(true), there.join());
    // As a page that was opened on it now.
    const drawn = (one) =>
      one.evaluate(() => [...document.querySelectorAll('.page')].map(({ shadowRoot }) => shadowRoot.querySelector('svg').outerHTML));
    const anew = await openPage(browser, address);
    await upToDate(anew);
    assert.deepEqual(await drawn(page), await drawn(anew));
  });
});

test('from the save to the new picture', async (context) => {
  const two = await readFile(join(process.env.FRETSHEAF_PROJECT, 'demo-lessons', 'low-tide-vamp.lesson.toml'), 'utf8');
  // A title on both pages; a note of the first, whose example is drawn anew.
  const edits = {
    title: (i) => two.replace('Low tide vamp', `Tide ${i}`),
    note: (i) => two.replace('| 5>  ', `| ${i % 2 ? 7 : 5}>  `),
  };
  await withLesson(two, async (page, { path }) => {
    await upToDate(page);
    assert.equal(await page.locator('.page').count(), 2);
    for (const [what, edited] of Object.entries(edits)) {
      const times = [];
      for (let i = 1; i <= 11; ++i) {
        // Until the frame in which it is painted is done, by the clock of the one who saves.
        const drawn = page.evaluate(
          (count) =>
            new Promise((done) => {
              const page = document.querySelector('.page');
              const before = page.dataset.name;
              new MutationObserver((_, observer) => {
                if (page.dataset.name === before) return;
                observer.disconnect();
                requestAnimationFrame(() => setTimeout(done, 0, count));
              }).observe(page, { attributes: true });
            }),
          i,
        );
        await page.evaluate(() => 0); // the one before has begun to look
        const from = performance.now();
        await writeFile(path, edited(i));
        await drawn;
        times.push(performance.now() - from);
      }
      times.sort((a, b) => a - b);
      context.diagnostic(`a ${what}, two pages: median ${times[5].toFixed(0)} ms, longest ${times.at(-1).toFixed(0)} ms`);
    }
  });
});
