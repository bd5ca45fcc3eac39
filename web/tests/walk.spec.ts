/** Lines from survey files: tracks to choose between, files that cannot be read, a long walk, and crests that are vented. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Walked north from the ram: `height` says how high each of so many steps lies. */
function track(name: string, count: number, length: number, height?: (share: number) => number) {
  const points = Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    const ele = height === undefined ? '' : `<ele>${height(share).toFixed(1)}</ele>`;
    return `<trkpt lat="${(54 + (share * length) / 111_320).toFixed(8)}" lon="-2.3">${ele}</trkpt>`;
  });
  return `<trk><name>${name}</name><trkseg>\n${points.join('\n')}\n</trkseg></trk>`;
}

const gpx = (...tracks: readonly string[]): string =>
  `<?xml version="1.0"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">\n${tracks.join('\n')}\n</gpx>\n`;

/** 12 m up over a hump of some 5 m. */
const overTheHump = (share: number): number =>
  200 + 12 * share + 5 * Math.exp(-(((share - 0.5) / 0.1) ** 2));

const LEVELLED =
  'distance (m); height (m)\n0; 101,90\n4; 101,60\n7; 101,10\n9; 101,45\n14; 100,00\n';

async function opener(place: FirstPage, line: string): Promise<Locator> {
  const part = place.part(line);
  await part.getByText(/^Profile/).click();
  return part.locator('input[type=file]');
}

async function give(chooser: Locator, name: string, text: string): Promise<void> {
  await chooser.setInputFiles({
    name,
    mimeType: 'application/octet-stream',
    buffer: Buffer.from(text),
  });
}

test('a levelled drive line is put in, its crest is vented, and both are taken back', async ({
  page,
}) => {
  const place = new FirstPage(page);
  await place.open();
  const drive = place.part('Drive line');
  const dialog = page.getByRole('dialog', { name: 'Drive line from drive.csv' });
  const chooser = await opener(place, 'Drive line');

  await give(chooser, 'drive.csv', LEVELLED.replace('101,60', 'high'));
  await expect(dialog.getByRole('alert')).toContainText(
    'Line 3: “high” does not begin with a number',
  );
  await expect(dialog.getByRole('alert')).toContainText('Nothing here was changed.');
  await give(chooser, 'drive.csv', '');
  await expect(dialog.getByRole('alert')).toContainText('This file is empty.');

  await give(chooser, 'drive.csv', LEVELLED);
  await expect(
    dialog.getByRole('img', { name: /^Profile from the source to the ram, 14\sm long, 5 points/ }),
  ).toBeVisible();
  await expect(dialog.getByText(/^A crest 9\sm along \(may hold .* of air\)/)).toBeVisible();
  await expect(dialog.getByRole('radio', { name: 'at the source' })).toBeChecked();
  await place.expectNoAxeViolations();
  await dialog.getByRole('button', { name: 'Put it in' }).click();
  await expect(dialog).toHaveCount(0);
  await expect(drive.getByText('Profile, 3 points')).toBeVisible();
  await expect(drive.getByRole('textbox', { name: 'Point 3, height' })).toHaveValue('1.45 m');

  // The answer reckons with the air; a vent lets it out.
  const along = page.getByRole('region', { name: 'Along the lines' });
  await expect(along.getByText(/a crest 9\sm along.* It may hold .* of air/)).toBeVisible();
  await expect(along.getByText(/Drive line at rest: the head is lowest/)).toBeVisible();
  await drive.getByRole('button', { name: 'put a vent on it, point 3' }).click();
  await expect(along.getByText(/The vent at 9\sm lets its air out/)).toBeVisible();
  await expect(drive.getByRole('row', { name: /crest with a vent/ })).toBeVisible();
  await expect(page.getByText(/^vent at 9\sm$/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await along.getByRole('button', { name: 'Put a vent at 9 m' }).click();
  await expect(place.box('Vents', 'Drive line')).toHaveValue('9 m');
  for (let i = 0; i < 2; i++) await page.getByRole('button', { name: 'Undo' }).click();
  await expect(drive.getByText(/^Profile, by hand/)).toBeVisible();
  expect(place.complaints).toEqual([]);
});

test('of two tracks one is chosen; without heights its length is left; one cut short can be gone on with', {
  tag: '@any-width',
}, async ({ page }) => {
  const place = new FirstPage(page);
  await place.open();
  const delivery = place.part('Delivery line');
  const dialog = page.getByRole('dialog');
  const chooser = await opener(place, 'Delivery line');

  const two = gpx(
    track('No heights', 30, 158),
    track('Down from the tank', 120, 163, (s) => overTheHump(1 - s)),
  );
  await give(chooser, 'two.gpx', two);
  await expect(dialog.getByRole('alert')).toContainText('The line “No heights” has no heights.');
  await dialog.getByLabel('Which of its 2 lines').selectOption({ index: 1 });
  await expect(dialog.getByRole('radio', { name: 'at the tank' })).toBeChecked();
  await expect(dialog.getByText(/Heights of a satellite recorder are good to/)).toBeVisible();
  await expect(dialog.getByText(/^80 points are left out and 40 kept/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Leave it' }).click();
  await expect(delivery.getByText(/^Profile, by hand/)).toBeVisible();

  await give(chooser, 'two.gpx', two);
  await dialog.getByRole('button', { name: /^Take its length alone, 158/ }).click();
  await expect(place.box('Length', 'Delivery line')).toHaveValue(/^158/);

  const whole = gpx(track('Cut short', 120, 160, overTheHump));
  await give(chooser, 'cut.gpx', whole.slice(0, whole.length / 2));
  await expect(dialog.getByRole('alert')).toContainText(/Line \d+: The file breaks off/);
  await dialog.getByRole('button', { name: 'Go on with them' }).click();
  await expect(dialog.getByText(/Line \d+: The file breaks off/)).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
  expect(place.complaints).toEqual([]);
});

test('a dropped walk of 20,000 points is read while the page goes on', {
  tag: '@any-width',
}, async ({ page }) => {
  const place = new FirstPage(page);
  await place.open();
  const text = gpx(track('Long Rigg', 20_000, 170, overTheHump));
  await drop(page, text);
  const dialog = page.getByRole('dialog', { name: 'Delivery line from rigg.gpx' });
  await expect(dialog.getByText(/^Track “Long Rigg”: 20,000 points/)).toBeVisible();
  await expect(dialog.getByText(/^19,960 points are left out and 40 kept/)).toBeVisible();
  await dialog.getByRole('button', { name: 'Put it in' }).click();
  await expect(place.part('Delivery line').getByText('Profile, 38 points')).toBeVisible();
  expect(place.complaints).toEqual([]);
});

/** Dropped on the fold of the delivery line while it is shut. */
async function drop(page: Page, text: string): Promise<void> {
  const data = await page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([content], 'rigg.gpx'));
    return transfer;
  }, text);
  const fold = page
    .getByRole('region', { name: 'Delivery line', exact: true })
    .locator('details.profile');
  await fold.dispatchEvent('drop', { dataTransfer: data });
}
