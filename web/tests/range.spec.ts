/** The maker's rams and prices: begun, drawn as typed, kept, revised without touching a place that stands on them. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

const complaints: string[] = [];

test.beforeEach(async ({ page }) => {
  complaints.length = 0;
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto('/');
});

test.afterEach(() => {
  expect(complaints).toEqual([]);
});

const leaf = (page: Page, name: string): Locator => page.getByRole('link', { name, exact: true });
const box = (page: Page, name: string): Locator =>
  page.getByRole('textbox', { name: new RegExp(`^${name}( if known)?$`) });
const drawing = (page: Page): Locator => page.getByRole('img', { name: /in section/ });

async function fits(page: Page): Promise<void> {
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
}

test('a ram is begun, drawn as one types, kept over a reload, copied and retired', async ({
  page,
}) => {
  await leaf(page, 'Range').click();
  await page.getByRole('button', { name: 'Begin your range' }).click();
  await page.getByLabel('Size of the new ram').selectOption('DN32');
  await page.getByRole('button', { name: 'Begin a ram' }).click();

  await page.getByLabel('Name of this ram').fill('Dabchick 32');
  await expect(drawing(page)).toHaveAccessibleName(/stroke 4.8.mm/);
  await box(page, 'Stroke').fill('6 mm');
  await expect(drawing(page)).toHaveAccessibleName(/stroke 6.mm/);
  // What cannot be read stays as typed, and the drawing stays as it was.
  await box(page, 'Seat').fill('34');
  await box(page, 'Price').fill('445 GBP');
  await expect(box(page, 'Seat')).toHaveAccessibleDescription(/34 what/);
  await expect(drawing(page)).toHaveAccessibleName(/seat 33.6.mm/);
  await box(page, 'Seat').fill('34 mm');
  await page.getByLabel('Held open', { exact: true }).selectOption('sprung');
  await expect(page.getByText(/What holds the sprung valve open is missing/)).toBeVisible();
  await box(page, 'Force when open').first().fill('1 N');
  await page.getByRole('button', { name: 'Add a spring' }).click();
  await box(page, 'Spring').fill('soft');
  await page
    .getByRole('group', { name: 'spring 1' })
    .getByLabel(/^Force when open/)
    .fill('0.7 N');
  await expect(page.getByLabel('Drawn as')).toHaveCount(0);
  await expect(drawing(page)).toHaveAccessibleName(/held open by a spring 1.N when open/);
  await new FirstPage(page).expectNoAxeViolations();
  await fits(page);

  await expect(page.getByText('Kept in this browser', { exact: true })).toBeVisible();
  await page.reload();
  await expect(box(page, 'Stroke')).toHaveValue('6 mm');
  await expect(drawing(page)).toHaveAccessibleName(/seat 34.mm/);

  await page.getByRole('button', { name: 'Copy Dabchick 32' }).click();
  await expect(page.getByLabel('Name of this ram')).toHaveValue('Dabchick 32, copy');
  await page.getByRole('button', { name: /^Retire/ }).click();
  await page.getByRole('link', { name: 'All rams of the range' }).click();
  const rams = page.getByRole('region', { name: 'Rams of the range' }).getByRole('listitem');
  await expect(rams).toHaveCount(2);
  await expect(rams.nth(1).getByText('Retired')).toBeVisible();
  await page.getByRole('heading', { name: 'Range of rams' }).click();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(rams.nth(1).getByText('Retired')).toHaveCount(0);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(rams).toHaveCount(1);
});

test('a place keeps the revision that it was answered with, is told of a newer one, and takes it', {
  tag: '@any-width',
}, async ({ page }) => {
  await page.getByRole('button', { name: 'Load the demo workshop' }).click();
  await leaf(page, 'Tarn Hollow').click();
  await page.getByLabel('Ram of your range').selectOption('Swallow 25');
  await page.getByLabel('Set up with').selectOption('stroke 3.2 mm, weight 95 g');
  const answer = page.getByRole('region', { name: 'Answer', exact: true });
  await expect(answer.getByText(/litres a day at the tank/)).toBeVisible();
  await expect(page.getByText('revision 3', { exact: true })).toBeVisible();

  // The ram as it was answered with cannot be changed.
  await leaf(page, 'Look at it').click();
  await expect(page.getByText('Revision 3 stays as it is')).toBeVisible();
  await expect(box(page, 'Seat')).toBeDisabled();
  await expect(box(page, 'Price')).toBeEnabled();
  await page.getByRole('button', { name: 'Make a new revision' }).click();
  await box(page, 'Seat').fill('22 mm');
  await page.getByRole('textbox', { name: /^What revision 4 changes/ }).fill('a narrower seat');
  await expect(page.getByText('Revision 4 of')).toBeVisible();

  await page.goBack();
  const told = page.getByText('Swallow 25, revision 4 is newer.');
  await expect(told).toBeVisible();
  await expect(page.getByText(/A narrower seat\. It would answer differently here:/)).toBeVisible({
    timeout: 20_000,
  });
  await page.getByText('Parts of the ram').click();
  await expect(box(page, 'Seat of the waste valve')).toHaveValue('27 mm');
  await page.getByRole('button', { name: 'Show both' }).click();
  const both = page.getByRole('dialog', { name: 'Both revisions at this place' });
  await expect(both.getByRole('img', { name: /in section/ })).toHaveCount(2);
  await new FirstPage(page).expectNoAxeViolations({ byNight: false });
  await page.keyboard.press('Escape');
  await expect(both).toBeHidden();
  await page.getByRole('button', { name: 'Take the newer' }).click();
  await expect(told).toHaveCount(0);
  await expect(page.getByText('revision 4', { exact: true })).toBeVisible();
  await expect(page.getByLabel('Set up with')).toHaveValue('stroke 3.2 mm, weight 95 g');

  // A part changed by hand is told, and put back.
  await box(page, 'Valve weight').fill('80 g');
  await expect(page.getByText('It differs from Swallow 25, revision 4')).toBeVisible();
  await page.getByRole('button', { name: 'Put it back as in the range' }).click();
  await expect(box(page, 'Valve weight')).toHaveValue('95 g');
  await page.getByLabel(/^Typical ram/).selectOption('DN25');
  await expect(page.getByLabel('Ram of your range')).toHaveValue('');
});

test('prices come in from a file with bad rows, are put right on the page, and go out again', async ({
  page,
}) => {
  await leaf(page, 'Prices').click();
  await page.getByRole('button', { name: 'Begin a price list' }).click();
  const csv = [
    'code;kind;name;size;unit;price (EUR);sold length',
    'S25;pipe;steel 1 in;galvanised steel DN25;length;61,20;6 m',
    'P25;pipe;black 25;PE100 SDR11 25;m;1,45;',
    'P32;pipe;black 32;PE 32 or so;m;2,30;',
    'GV;gate valve;gate valve;DN25;each;eighteen;',
  ].join('\n');
  const file = page.getByLabel('Price list file');
  await file.setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  await expect(page.getByText('list.csv has rows that cannot be read.')).toBeVisible();
  await expect(page.getByText(/^Line 4: .*PE 32 or so/)).toBeVisible();
  await expect(page.getByText(/^Line 5: .*eighteen/)).toBeVisible();
  await page.getByRole('button', { name: 'Take the 2 good rows' }).click();
  await expect(page.getByLabel('Currency')).toHaveValue('EUR');
  await expect(page.getByLabel('Price for a length: steel 1 in')).toHaveValue('61.20');

  await page.getByRole('button', { name: 'Add a part' }).click();
  // The keyboard stands in the new row.
  const added = page.getByRole('region', { name: 'Fittings, valves and spares' });
  await added.getByRole('combobox', { name: /^What/ }).selectOption('gate valve');
  await added.getByRole('textbox', { name: /^Name/ }).fill('full-bore valve');
  await added.getByRole('textbox', { name: /^Price for each/ }).fill('eighteen');
  await page.getByRole('searchbox', { name: 'Search' }).focus();
  await expect(page.getByText('“eighteen” is no price.')).toBeVisible();
  await expect(added.getByRole('textbox', { name: /^Price for each/ })).toHaveAccessibleDescription(
    /is no price/,
  );
  await expect(page.getByText('3 rows; one is left out of every choice')).toBeVisible();
  await new FirstPage(page).expectNoAxeViolations();
  await fits(page);
  await added.getByRole('textbox', { name: /^Price for each/ }).fill('18');
  await page.getByRole('searchbox', { name: 'Search' }).fill('full bore');
  await expect(page.getByRole('region', { name: 'Pipes' })).toHaveCount(0);
  await expect(page.getByText('3 rows', { exact: true })).toBeVisible();

  await page.reload();
  await expect(added.getByRole('textbox', { name: /^Price for each/ })).toHaveValue('18');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  const stream = await (await download).createReadStream();
  let text = '';
  for await (const part of stream) text += String(part);
  expect(text).toContain('price (EUR)');
  expect(text).toMatch(/gate valve,full-bore valve,,,18/);
});
