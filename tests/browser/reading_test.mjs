// What a screen reader finds in every demo page, by Chromium's accessibility tree: the same words in the same order as
// the page's PDF tells them, headings, figures with words, links that the Tab key comes to in reading order.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import test from 'node:test';
import { promisify } from 'node:util';
import { program, project, withBrowser, withFolder } from './support/browser.mjs';

const run = promisify(execFile);

// The nodes that are told, in order, as { role, name, level }; texts only where no node above them has said them.
async function tree(page) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const told = [];
  const walk = (node) => {
    const role = node.role?.value;
    const level = node.properties?.find((one) => one.name === 'level')?.value.value;
    if (!node.ignored) told.push({ role, name: node.name?.value ?? '', level });
    for (const id of node.childIds ?? []) if (byId.has(id)) walk(byId.get(id));
  };
  walk(nodes[0]);
  return told;
}

const plain = (text) => text.replaceAll(/\s+/g, ' ').trim();
const bare = (text) => text.replaceAll(/\s+/g, '');

// What the PDF tells: elements with their own texts, artifacts left out. Texts of figures are no words to be read.
function toldByPdf(said) {
  const texts = [];
  const headings = [];
  let figure = Infinity;
  let heading = null;
  for (const line of said.split('\n')) {
    const depth = line.search(/\S/);
    if (depth < 0) continue;
    const word = line.trim();
    if (depth <= figure) figure = Infinity;
    if (word.startsWith('"')) {
      if (depth <= figure) texts.push(word.slice(1, -1));
      if (heading) headings.push(heading + plain(word.slice(1, -1)));
      heading = null;
    } else if (!word.startsWith('/')) {
      heading = /^H[1-3] /.test(word) ? `${word[1]} ` : null;
      if (word.startsWith('Figure')) figure = depth;
    }
  }
  return { text: bare(texts.join('')), headings };
}

async function typeset(folder) {
  const lessons = join(project, 'demo-lessons');
  const names = (await readdir(lessons)).filter((name) => name.endsWith('.lesson.toml')).sort();
  assert.ok(names.length > 10);
  for (const name of names) await run(program, ['typeset', join(lessons, name), '--as', 'pdf,svg', '--to', folder]);
  const files = await readdir(folder);
  const pagesOf = (pdf) =>
    files
      .filter((file) => file.startsWith(pdf.replace(/pdf$/, 'p')) && file.endsWith('.svg'))
      .sort((a, b) => Number(a.match(/\.p(\d+)\.svg$/)[1]) - Number(b.match(/\.p(\d+)\.svg$/)[1]));
  return files.filter((file) => file.endsWith('.pdf')).map((pdf) => ({ pdf, pages: pagesOf(pdf) }));
}

test('every demo page tells what its PDF tells, in the same order', async () => {
  await withFolder(async (folder) => {
    const handouts = await typeset(folder);
    await withBrowser(async (browser) => {
      const page = await browser.newPage();
      for (const { pdf, pages } of handouts) {
        const { stdout } = await run('pdfinfo', ['-struct-text', join(folder, pdf)]);
        const expected = toldByPdf(stdout);
        let text = '';
        const headings = [];
        let pictures = 0;
        for (const [at, svg] of pages.entries()) {
          await page.goto(`file://${folder}/${svg}`);
          const told = await tree(page);
          text += told.filter(({ role }) => role === 'StaticText').map(({ name }) => name).join('');
          for (const { role, name, level } of told) if (role === 'heading') headings.push(`${level} ${plain(name)}`);
          const figures = told.filter(({ role }) => role === 'image' || role === 'img');
          pictures += figures.length;
          for (const figure of figures) assert.ok(figure.name.length > 2, `${svg}: a figure without words`);
          const root = await page.evaluate(() => ({
            lang: document.documentElement.getAttribute('lang'),
            role: document.documentElement.getAttribute('role'),
            title: document.title,
            description: document.querySelector('svg > desc').textContent,
          }));
          assert.ok(root.lang.length === 2 && root.role === 'document' && root.title.length > 0);
          assert.ok(root.description.includes(String(at + 1)), svg);
        }
        assert.ok(pictures > 0, pdf);
        assert.equal(bare(text), expected.text, pdf);
        // A heading's level counts from the same title on every page.
        assert.deepEqual(headings, expected.headings, pdf);
      }
    });
  });
});

test('the Tab key comes to every link of a page, in the order of reading', async () => {
  await withFolder(async (folder) => {
    await run(program, ['typeset', join(project, 'demo-lessons', 'reading-the-tide.lesson.toml'), '--as', 'svg', '--to', folder]);
    await withBrowser(async (browser) => {
      const page = await browser.newPage();
      await page.goto(`file://${folder}/reading-the-tide.g-major.p1.svg`);
      const links = (await tree(page)).filter(({ role }) => role === 'link').map(({ name }) => plain(name));
      assert.ok(links.length >= 2);
      const reached = [];
      for (let i = 0; i < links.length; ++i) {
        await page.keyboard.press('Tab');
        reached.push(await page.evaluate(() => document.activeElement.getAttribute('href')));
      }
      const hrefs = await page.evaluate(() => [...document.querySelectorAll('a')].map((link) => link.getAttribute('href')));
      assert.deepEqual(reached, hrefs);
      assert.ok(reached.every(Boolean));
    });
  });
});
