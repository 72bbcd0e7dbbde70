// The browser opens what the program typeset: without this, no other test here tells anything.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { join } from 'node:path';
import test from 'node:test';
import { promisify } from 'node:util';
import { program, project, withBrowser, withFolder } from './support/browser.mjs';

test('an SVG page opens in a browser and has its examples', async () => {
  await withFolder(async (folder) => {
    const lesson = join(project, 'demo-lessons', 'low-tide-vamp.lesson.toml');
    await promisify(execFile)(program, ['typeset', lesson, '--as', 'svg', '--to', folder]);
    await withBrowser(async (browser) => {
      const page = await browser.newPage();
      const faults = [];
      page.on('console', (message) => faults.push(message.text()));
      page.on('pageerror', (error) => faults.push(String(error)));
      await page.goto(`file://${folder}/low-tide-vamp.d-dorian.p1.svg`);
      assert.ok((await page.locator('g.example').count()) > 0);
      assert.deepEqual(faults, []);
    });
  });
});
