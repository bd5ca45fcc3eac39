/** The app without a network, and with a newer version: on a server of its own, which the test stops and starts again. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB', serviceWorkers: 'allow' });

/** Tests in which the width of the screen plays no part run at the desk only. */
const ANY_WIDTH = { tag: '@any-width' };

const ROOT = join(import.meta.dirname, '..', '..');
const BUILT = join(ROOT, 'web', 'dist');

class OwnServer {
  #program: ChildProcess | undefined;
  /** 0 until the first start; after that the same again, as the browser keeps things by address. */
  #port = 0;

  async start(folder: string): Promise<string> {
    const main = join(ROOT, 'server', 'main.ts');
    const program = spawn(process.execPath, [main, '--port', `${this.#port}`, '--web', folder], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    this.#program = program;
    const [output] = await once(program.stdout, 'data');
    const address = /http:\/\/127\.0\.0\.1:(\d+)\//.exec(String(output));
    this.#port = Number(address?.[1]);
    return String(address?.[0]);
  }

  async stop(): Promise<void> {
    const program = this.#program;
    this.#program = undefined;
    if (program === undefined) return;
    const ended = once(program, 'exit');
    program.kill('SIGTERM');
    await ended;
  }
}

let server: OwnServer;
let folder: string;
let address: string;

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'fallwright-offline-'));
  server = new OwnServer();
  address = await server.start(BUILT);
});

test.afterEach(async () => {
  await server.stop();
  await rm(folder, { recursive: true });
});

const READY = 'Fallwright now works offline too';
const OFFER = 'A newer Fallwright is here.';

/** Opens the demo's first place, and waits until the browser has all of the app. */
async function visit(page: Page): Promise<FirstPage> {
  const place = new FirstPage(page);
  await page.goto(address);
  await page.getByRole('button', { name: 'Load the demo workshop' }).click();
  await expect(page.getByText(READY)).toBeVisible();
  await page.getByRole('button', { name: 'Good' }).click();
  await expect(page.getByText(READY)).toHaveCount(0);
  await page.getByRole('link', { name: 'Larkrise spring' }).click();
  await expect(place.answer.getByRole('heading')).toBeVisible();
  return place;
}

/** The next version: the same app with other words in its title, and with a leaf under a new name, as after a real build. */
async function buildNext(): Promise<void> {
  await cp(BUILT, folder, { recursive: true });
  const names = await readdir(join(folder, 'assets'));
  const leaf = names.find((name) => /^alternatives-screen-.*\.js$/.test(name));
  if (leaf === undefined) throw new Error('the leaf that the test renames is not in the build');
  const renamed = leaf.replace(/-[^-]*\.js$/, '-nextnext.js');
  for (const name of ['index.html', 'sw.js', ...names.map((asset) => `assets/${asset}`)]) {
    if (!/\.(html|js)$/.test(name)) continue;
    const path = join(folder, name);
    const text = (await readFile(path, 'utf8')).replaceAll(leaf, renamed);
    if (name === 'index.html') {
      await writeFile(path, text.replace('<title>Fallwright', '<title>Fallwright, next'));
    } else if (name === 'sw.js') {
      const next = text.replace(/(url:"index\.html",revision:")[0-9a-f]{32}"/, '$1next"');
      expect(next, 'the revision of the page in sw.js').not.toBe(text);
      await writeFile(path, next);
    } else await writeFile(join(folder, name.replace(leaf, renamed)), text);
  }
  await rm(join(folder, 'assets', leaf));
}

test('after one visit all of it works with the server off', async ({ page }) => {
  const place = await visit(page);
  await server.stop();

  // The page of the first visit itself, with a leaf that it never opened.
  await page.getByRole('link', { name: 'Pipes' }).click();
  await expect(page.getByRole('heading', { name: /pipe/i }).first()).toBeVisible();

  const response = await page.reload();
  expect(response?.fromServiceWorker()).toBe(true);
  expect(response?.headers()['content-security-policy']).toContain("script-src 'self'");
  await expect(page.getByText('Offline. Work goes on')).toBeVisible();
  await expect(page.getByRole('heading', { name: /pipe/i }).first()).toBeVisible();
  await page.getByRole('link', { name: 'Beat', exact: true }).click();
  await expect(page.getByRole('button', { name: /^(Play|Pause)/ })).toBeVisible();

  // An address of a place, opened directly, and an answer after an edit.
  const leaf = page.url();
  await page.goto('about:blank');
  await page.goto(leaf.replace(/\/beat$/, ''));
  const great = place.answer.getByText('litres a day at the tank').locator('xpath=..');
  const before = await great.textContent();
  await place.box('Lift').fill('14 m');
  await expect(great).not.toHaveText(before ?? '');
  await place.settled();
  // Measuring at the stream, with what was never opened before.
  await page.getByText('Measure the flow').click();
  await page.getByRole('button', { name: /^Timed container/ }).click();
  await place.box('What it holds to the mark').fill('10 L');
  await place.box('Time 1').fill('42 s');
  await expect(page.getByText(/one filling of 42\ss/).first()).toBeVisible();
  await page.goto(address);
  await expect(page.getByRole('link', { name: 'Larkrise spring' })).toBeVisible();
  expect(await page.evaluate(() => document.fonts.check('16px "National Park Variable"'))).toBe(
    true,
  );
  expect(place.complaints).toEqual([]);
  await place.expectNoAxeViolations();

  // Back again: the words go by themselves when the page comes to the front with a network.
  await server.start(BUILT);
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(page.getByText('Offline. Work goes on')).toHaveCount(0);
});

test(
  'a newer version is offered, waits, and is taken by all tabs when one asks',
  ANY_WIDTH,
  async ({ page, context }) => {
    const place = await visit(page);
    const other = await context.newPage();
    await other.goto(address);
    await expect(other.getByRole('link', { name: 'High Fold' })).toBeVisible();
    await buildNext();
    await server.stop();
    await server.start(folder);

    // Typed, and of two kinds: read, and not to be read yet.
    await place.box('Lift').fill('14 m');
    await place.box('Fall').fill('2');
    const loads: string[] = [];
    for (const tab of [page, other]) tab.on('load', () => loads.push(tab.url()));
    await page.evaluate(() => window.dispatchEvent(new Event('online')));
    await expect(page.getByText(OFFER)).toBeVisible();
    await expect(other.getByText(OFFER)).toBeVisible();
    // By day only: of two open tabs the one behind does not finish changing its colours.
    await place.expectNoAxeViolations({ byNight: false });

    // The old version goes on, with leaves that the server no longer has; putting it off is heeded.
    await other.getByRole('button', { name: 'Later' }).click();
    await expect(other.getByText(OFFER)).toHaveCount(0);
    await other.getByRole('link', { name: 'High Fold' }).click();
    await other.getByRole('link', { name: 'Pipes' }).click();
    await expect(other.getByRole('heading', { name: /pipe/i }).first()).toBeVisible();
    await expect(page).toHaveTitle(/^(?!.*next)/);
    await expect(place.box('Fall')).toHaveValue('2');
    expect(loads).toEqual([]);

    await page.getByRole('button', { name: 'Use it now' }).click();
    await expect(page).toHaveTitle(/next/);
    await expect(other).toHaveTitle(/next/);
    await expect(page.getByText(OFFER)).toHaveCount(0);
    await expect(place.box('Lift')).toHaveValue('14 m');
    await expect(place.box('Fall')).toHaveValue('2');
    expect(loads).toHaveLength(2);

    // The new version is whole without the server too.
    await server.stop();
    await page.getByRole('link', { name: 'Pipes' }).click();
    await expect(page.getByRole('heading', { name: /pipe/i }).first()).toBeVisible();
    await page.reload();
    await expect(page).toHaveTitle(/next/);
    expect(place.complaints).toEqual([]);
  },
);

test(
  'a tab whose places were taken over says so, and what is typed there is not lost',
  ANY_WIDTH,
  async ({ page, context }) => {
    const place = await visit(page);
    const other = await context.newPage();
    await other.goto(`${address}icon.svg`);
    // A later layout of the database, as a newer version would open it.
    await other.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('fallwright', 2);
          opening.onsuccess = () => {
            opening.result.close();
            resolve();
          };
          opening.onerror = () => reject(opening.error);
          opening.onblocked = () => reject(new Error('the old tab did not let go'));
        }),
    );
    await place.box('Lift').fill('14 m');
    await expect(page.getByText('took the places over; load this page again')).toBeVisible();
    const journal = await page.evaluate(() => JSON.stringify({ ...window.localStorage }));
    expect(journal).toContain('14 m');
    await page.reload();
    await expect(page.getByText('were kept by a newer Fallwright')).toBeVisible();
    expect(await page.evaluate(() => JSON.stringify({ ...window.localStorage }))).toContain('14 m');
  },
);
