// Debian's Chromium without a window, and what every test here needs beside it.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

export const program = process.env.FRETSHEAF_PROGRAM;
export const project = process.env.FRETSHEAF_PROJECT;
export const sanitized = process.env.FRETSHEAF_SANITIZED === '1'; // whether the program was built with sanitizers

// Runs `work(browser)`; the browser is closed whatever comes of it.
export async function withBrowser(work) {
  // Chromium's own sandbox cannot be had by root, which a build machine often is.
  const args = process.getuid() === 0 ? ['--no-sandbox'] : [];
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args });
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}

// Runs `work(folder)` with the path of a new, empty folder, which is removed afterwards.
export async function withFolder(work) {
  const folder = await mkdtemp(join(tmpdir(), 'fretsheaf-browser-'));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
