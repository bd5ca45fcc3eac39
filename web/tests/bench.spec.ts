/** The bench as a maker meets it: a test run with one hand, beats counted by every means, kept over a reload and without a network. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededStream } from '@fallwright/engine';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { CHROMIUM_FLAGS, findChromium } from '../../scripts/find-chromium.mjs';
import { FirstPage } from './page.ts';

/** Sixteen bits, one channel: a knock every 0.75 s in hiss, the tenth of them missing. */
function recording(seconds: number, { isSilent = false } = {}): Buffer {
  const rate = 16_000;
  const count = seconds * rate;
  const next = seededStream(1, 'hiss');
  const bytes = Buffer.alloc(44 + 2 * count);
  bytes.write('RIFF');
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(2 * rate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * count, 40);
  for (let i = 0; i < count && !isSilent; i++) {
    const t = (i / rate) % 0.75;
    const isMissing = Math.floor(i / rate / 0.75) === 9;
    const knock = isMissing ? 0 : Math.exp(-t / 0.02) * Math.sin(2 * Math.PI * 700 * t);
    bytes.writeInt16LE(Math.round(15_000 * knock + 3000 * (next() - 0.5)), 44 + 2 * i);
  }
  return bytes;
}

/** What the browser takes for its microphone. */
const folder = mkdtempSync(join(tmpdir(), 'fallwright-bench-'));
const microphone = join(folder, 'microphone.wav');
writeFileSync(microphone, recording(20));
test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

const executablePath = findChromium();
test.use({
  locale: 'en-GB',
  launchOptions: {
    ...(executablePath === undefined ? {} : { executablePath }),
    args: [
      ...CHROMIUM_FLAGS,
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-audio-capture=${microphone}`,
    ],
  },
});

const complaints: string[] = [];
test.beforeEach(async ({ page }) => {
  complaints.length = 0;
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto('/bench');
});
test.afterEach(() => expect(complaints).toEqual([]));

const box = (part: Page | Locator, name: string): Locator =>
  part.getByRole('textbox', { name: new RegExp(`^${name}( if known)?$`) });
const button = (part: Page | Locator, name: string | RegExp): Locator =>
  part.getByRole('button', { name });

async function fits(page: Page): Promise<void> {
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
}

test('a test is run: rig, a setting, doubts at once, the prediction beside it, kept over a reload', async ({
  page,
}) => {
  await page.getByLabel('Ram of the new test').selectOption('DN25');
  await button(page, 'Begin a test').click();
  const rig = page.getByRole('region', { name: 'Rig', exact: true });
  await box(rig, 'Fall').fill('2.06 m');
  await rig.getByRole('combobox', { name: /^Pipe/ }).fill('galvanised steel DN25');
  await box(rig, 'Length').fill('9.2 m');

  const reading = page.locator('details.reading').first();
  // A bare number is asked for its unit and kept as typed.
  await box(reading, 'Lift').fill('12');
  const delivered = reading.getByRole('region', { name: 'Delivered of reading 1' });
  await box(delivered, 'Delivered flow 1').fill('1.5 L/min');
  await expect(box(reading, 'Lift')).toHaveAccessibleDescription(/12 what/);
  await box(reading, 'Lift').fill('6.12 m');
  const wasted = reading.getByRole('region', { name: 'Wasted of reading 1' });
  await box(wasted, 'Wasted flow 1').fill('0.5 L/min');
  await box(wasted, 'Wasted flow 2').fill('0.52');
  await box(delivered, 'Delivered flow 2').fill('1.52 L/min');
  await expect(box(wasted, 'Wasted flow 2')).toHaveValue('0.52 L/min');
  await expect(reading.getByText(/no ram can do that/)).toBeVisible();
  await box(wasted, 'Wasted flow 1').fill('5.3 L/min');
  await box(wasted, 'Wasted flow 2').fill('5.26 L/min');
  await expect(reading.getByText(/no ram can do that/)).toHaveCount(0);
  await expect(reading.getByText(/^0\.5\d ± 0\.0\d$/)).toBeVisible();

  // Tapping by keyboard, at an even hand.
  await button(reading, /^Count beats/).click();
  const pad = button(reading, /^Tap at every beat/);
  for (let beat = 0; beat < 8; beat++) {
    await pad.press(beat % 2 === 0 ? 'Space' : 'Enter');
    await page.waitForTimeout(250);
  }
  await expect(reading.locator('.tap-count dd').first()).toHaveText('8');
  await button(reading, 'Put into the reading').click();
  await expect(box(reading, 'Rate 1')).toHaveValue(/\/min ± .*\/min$/);

  const table = page.getByRole('table', { name: /measured against predicted/ });
  await expect(table.getByRole('row').nth(1)).toContainText('%');
  await expect(page.getByRole('img', { name: /^Delivered flow, measured/ })).toBeVisible();
  await expect(page.getByRole('region', { name: 'What it shows' })).toContainText(/predict/);
  await new FirstPage(page).expectNoAxeViolations();
  await fits(page);

  await page.reload();
  await expect(table.getByRole('row').nth(1)).toContainText('%');
  await button(page, 'Add a reading at another setting').click();
  await expect(page.getByRole('heading', { name: 'Reading 2' })).toBeVisible();
  await page.getByRole('heading', { name: 'Readings', exact: true }).click();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByRole('heading', { name: 'Reading 2' })).toHaveCount(0);

  await page.getByRole('link', { name: 'All tests' }).click();
  const tests = page.getByRole('region', { name: 'Tests' }).getByRole('listitem');
  await expect(tests).toHaveCount(1);
  await expect(tests).toContainText('9.2 m of galvanised steel DN25');
  await expect(tests).toContainText('%');
  await expect(page.getByRole('img', { name: /^Delivered flow, measured/ })).toBeVisible();
  await fits(page);
  // The next test stands on the same rig, and places stay places.
  await button(page, 'Begin a test').click();
  await expect(page.getByText(/fall 2\.06 m, 9\.2 m of galvanised/)).toBeVisible();
  await page.getByRole('link', { name: 'Places', exact: true }).click();
  await expect(page.getByText('No places yet.')).toBeVisible();
});

test('beats are counted in a recording, a log and through the microphone, and corrected by hand', async ({
  page,
}) => {
  await page.getByLabel('Ram of the new test').selectOption('DN25');
  await button(page, 'Begin a test').click();
  await button(page, /^Count beats/).click();
  const panel = page.getByRole('region', { name: 'Count beats' });
  await panel.getByRole('radio', { name: 'Recording' }).check();
  const file = panel.getByLabel('Recording or pressure log');
  const open = (name: string, buffer: Buffer) =>
    file.setInputFiles({ name, mimeType: 'application/octet-stream', buffer });

  await open('silent.wav', recording(5, { isSilent: true }));
  await expect(panel.getByText(/There is no sound in this recording/)).toBeVisible();
  await open('noise.mp3', Buffer.from('ID3 is no song'));
  await expect(panel.getByText(/cannot read the sound in noise.mp3/)).toBeVisible();
  await open('log.csv', Buffer.from('time,pressure\n0,1\n1,2\n'));
  await expect(panel.getByText(/“pressure” has no unit/)).toBeVisible();

  await open('ram.wav', recording(30));
  const rate = panel.locator('.heard-rate b');
  await expect(rate).toHaveText(/^(80\.0|79\.9)/);
  await expect(panel.getByText(/One beat is missing where one was due/)).toBeVisible();
  await button(panel, /^Next to look at/).click();
  const gap = button(panel, /^No beat at 6\.7\d s/);
  // Put in by the keyboard; the keyboard stays in the strip.
  await gap.press('Enter');
  await expect(panel.getByText(/One beat is missing/)).toHaveCount(0);
  const beat = button(panel, /^Beat at 6\.0\d s/);
  await beat.click();
  await expect(button(panel, /^No beat at 6\.0\d s/)).toBeVisible();
  await button(panel, 'Undo the last mark').click();
  await expect(beat).toBeVisible();
  await new FirstPage(page).expectNoAxeViolations();
  await fits(page);
  await button(panel, 'Put into the reading').click();
  await expect(box(page, 'Rate 1')).toHaveValue(/^(80\.0|79\.9)\d*\/min ± 0\.\d+\/min$/);

  const log = ['time (s),pressure (bar),vessel pressure (bar)'];
  for (let i = 0; i < 2000; i++) {
    const t = i * 0.01;
    log.push(`${t.toFixed(3)},${(1 + 2 * Math.exp(-(t % 0.5) / 0.03)).toFixed(3)},1.0`);
  }
  await open('pump.csv', Buffer.from(log.join('\n')));
  await expect(rate).toHaveText(/^120/);
  await expect(panel.getByText(/readings of “pressure/)).toBeVisible();
  await panel.getByLabel('Column').selectOption({ label: 'vessel pressure (bar)' });
  await expect(panel.getByText(/pressure in this log does not move/)).toBeVisible();

  await panel.getByRole('radio', { name: 'Listen' }).check();
  await button(panel, 'Listen').click();
  await expect(rate).toHaveText(/^(79|80|81)/, { timeout: 40_000 });
  await button(panel, 'Stop listening').click();
  await expect(button(panel, /^Beat at/).first()).toBeVisible();
  await button(panel, 'Put into the reading').click();
  await expect(box(page, 'Rate 2')).toHaveValue(/\/min/);
});
