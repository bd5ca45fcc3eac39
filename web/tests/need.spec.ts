/** Who and what needs the water, the tank, and the year: told on the sheet, drawn, and kept. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

const form = (page: Page): Locator =>
  page.getByRole('region', { name: 'Who and what needs water' });

async function openFile(place: FirstPage, text: string): Promise<void> {
  await place.open();
  await place.page.locator('input[type=file]').setInputFiles({
    name: 'place.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(text),
  });
  const name = /^name: (.*)$/m.exec(text)?.[1] ?? '';
  await expect(place.page.getByRole('textbox', { name: 'Name of this place' })).toHaveValue(name);
}

/** Folded on a phone, open at a desk. */
async function openGroup(page: Page, title: string): Promise<void> {
  const summary = form(page).locator('summary', { hasText: title });
  const isOpen = await summary.evaluate((one) => one.closest('details')?.open === true);
  if (!isOpen) await summary.click();
}

test('needs are told apart by keyboard, kept as they were typed, undone, and there again after loading', async ({
  page,
}) => {
  const place = new FirstPage(page);
  await place.open();
  await expect(page.getByRole('heading', { name: 'Need and tank' })).toBeVisible();

  // The form opens by a key, and the keyboard goes along.
  const opener = page.getByRole('button', { name: 'Who and what needs it' });
  await opener.press('Enter');
  await expect(form(page).getByRole('heading', { name: 'Who and what needs water' })).toBeFocused();
  const people = form(page).getByRole('textbox', { name: 'How many people' });
  await people.fill('four');
  await people.press('Tab');
  await expect(people).toHaveAccessibleDescription(/cannot be read\. Write a plain number/);
  await expect(people).toHaveValue('four');
  await people.fill('4');
  // The one amount from before is not lost: it counts as other uses until it is taken out.
  const needed = place.box('Water needed');
  await expect(needed).toHaveValue('');
  await expect(needed).toHaveAccessibleDescription(/1,100\sL\sa\sday.*from the needs/);
  await openGroup(page, 'Other uses');
  const other = form(page).getByRole('textbox', { name: 'Other uses', exact: true });
  await expect(other).toHaveValue('900 L/day');
  await other.fill('');
  await expect(needed).toHaveAccessibleDescription(/200\sL\sa\sday/);

  // The published figure stands beside the box with its source; a local one takes its place.
  const perPerson = form(page).getByRole('textbox', { name: 'One person takes' });
  await expect(perPerson).toHaveAccessibleDescription(/50\sL\sa\sday.*40 to 60.*training course/);
  await perPerson.fill('60 L/day');
  await expect(needed).toHaveAccessibleDescription(/240\sL\sa\sday/);

  await openGroup(page, 'Animals');
  await form(page).getByRole('combobox', { name: 'Add animals' }).selectOption('cow');
  const cows = form(page).getByRole('textbox', { name: 'Cows', exact: true });
  await expect(cows).toBeFocused();
  await page.keyboard.type('3');
  await expect(needed).toHaveAccessibleDescription(/354\sL\sa\sday/);

  // A garden without its size waits, and the answer stands on the rest.
  await openGroup(page, 'Garden');
  const season = form(page).getByRole('textbox', { name: 'In which months' }).first();
  await season.fill('may to sep');
  await expect(season).toHaveAccessibleDescription('from May to September');
  const area = form(page).getByRole('textbox', { name: 'Area that is watered' });
  await expect(area).toHaveAccessibleDescription(/Still needed: how large it is/);
  await expect(place.answer.getByText('litres a day at the tank')).toBeVisible();
  await expect(needed).toHaveAccessibleDescription(/354\sL\sa\sday/);
  await area.fill('60 m2');
  await expect(needed).toHaveAccessibleDescription(/654\sL\sa\sday/);

  // Month by month: keys go from row to row, and a bare number takes the unit of the others.
  await openGroup(page, 'Month by month');
  const july = form(page).getByRole('textbox', { name: 'July, source gives' });
  await july.fill('3 L/min');
  await july.press('ArrowDown');
  await page.keyboard.type('2.5');
  await page.keyboard.press('ArrowDown');
  await expect(form(page).getByRole('textbox', { name: 'August, source gives' })).toHaveValue(
    '2.5 L/min',
  );
  await form(page).getByRole('textbox', { name: 'July, need, times the usual' }).fill('1.5');
  await expect(needed).toHaveAccessibleDescription(/981\sL\sa\sday/);

  // Undo takes back step by step.
  await place.box('The tank holds').fill('2000 L');
  await place.box('Days it must last').fill('2');
  const undo = page.getByRole('button', { name: 'Undo' });
  await undo.click();
  await expect(place.box('Days it must last')).toHaveValue('');
  await undo.click();
  await expect(place.box('The tank holds')).toHaveValue('');

  // What cannot be read yet is there again after loading, and the form lies open over it.
  await area.fill('60');
  await area.press('Tab');
  await expect(area).toHaveAccessibleDescription(/unit/);
  await expect(page.getByText('Kept in this browser')).toBeVisible();
  await page.waitForTimeout(600);
  await page.reload();
  await expect(area).toHaveValue('60');
  await expect(cows).toHaveValue('3');
  await expect(season).toHaveValue('may to sep');
  await form(page).getByRole('button', { name: 'Take out the cows' }).click();
  await expect(cows).toHaveCount(0);
  await form(page).getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('button', { name: /^For 4 people, garden/ })).toBeFocused();
  expect(place.complaints).toEqual([]);
});

const FARM = `fallwright: site@1
name: Tarn farm
source: { flow: 14 L/min, months: { aug: 2.5 L/min } }
fall: 1.9 m
drive: { pipe: PE100 SDR11 25, length: 14 m }
ram: DN20
lift: 12 m
delivery: { pipe: PE100 SDR11 20, length: 160 m }
demand:
  people: 4
  perPerson: 60 L/day
  animals: { cow: 3, hen: { count: 40, each: 0.3 L/day } }
  garden: { area: 60 m2, by: sprinkler, season: may to sep }
  drip: { plants: 20, perPlant: 1 L/day, season: may to sep }
  other: 10 L/day
  losses: 10 %
  growth: 1 %
  years: 10
  months: { jul: 1.2 }
tank: { volume: 2000 L, days: 2, draw: stock }
`;

test('a file with all of it fills the form; the year, the hardest day and the tank are drawn, with their numbers', async ({
  page,
}) => {
  const place = new FirstPage(page);
  await openFile(place, FARM);
  await page.getByRole('button', { name: /^For 4 people, 43 animals, garden, drip line/ }).click();
  const boxes = form(page).locator('input[type=text]');
  await expect(boxes.first()).toBeVisible();
  const written = await boxes.evaluateAll((all) =>
    all.map((one) => (one as HTMLInputElement).value).filter((value) => value !== ''),
  );
  // Every box of the form that the file fills, in the order of the form.
  expect(written).toEqual(
    '4|60 L/day|3|40|0.3 L/day|60 m2|may to sep|20|1 L/day|may to sep|10 L/day|10 %|1 %|10|1.2|2.5 L/min'.split(
      '|',
    ),
  );
  await expect(place.box('Days it must last')).toHaveValue('2');

  const water = place.part('Need and tank');
  await expect(water.getByText(/In July, when most is needed, .* in 10 years/)).toBeVisible();
  await expect(water.getByText(/2 days’ reserve is/)).toBeVisible();
  await expect(water.getByRole('img', { name: /met on \d+ of 365 days/ })).toBeVisible();
  await expect(water.getByRole('img', { name: /^A day in August, hour by hour/ })).toBeVisible();
  await water.getByText('The year in numbers').click();
  await expect(water.getByRole('row')).toHaveCount(13);
  await expect(water.getByRole('row', { name: /^Aug/ })).toContainText('0 of 31');
  await place.settled();
  await place.expectNoAxeViolations();
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
  expect(place.complaints).toEqual([]);
});

const DRAINED = `fallwright: site@1
name: Tarn box
source: { store: spring box, volume: 400 L, depth: 0.6 m, inflow: 2 L/min }
fall: 2.4 m
drive: { pipe: steel EN 10255 DN25, length: 12 m }
lift: 15 m
delivery: { pipe: PE100 SDR11 20, length: 40 m }
demand: 100 L/day
`;

test('a store that empties tells how long it lasts and what a day of it gives, in words and drawn', {
  tag: '@any-width',
}, async ({ page }) => {
  const place = new FirstPage(page);
  await place.open();
  await page.locator('input[type=file]').setInputFiles({
    name: 'place.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(DRAINED),
  });
  await expect(place.answer.getByRole('heading', { name: 'Starves' })).toBeVisible();
  await expect(place.answer.getByText('litres a day when it is started once a day')).toBeVisible();
  await expect(place.answer.getByText('a full store lasts')).toBeVisible();
  // As sure as its numbers are: a band, and no word that nothing comes.
  await expect(place.answer.getByText(/^Likely .* when it is started once a day/)).toBeVisible({
    timeout: 20_000,
  });
  const water = place.part('Need and tank');
  const store = water.getByRole('img', { name: /the intake draws air; then the store fills/ });
  await expect(store).toBeVisible();
  await expect(store.getByText(/^draws air after/)).toBeVisible();
  await place.expectNoAxeViolations();
  expect(place.complaints).toEqual([]);
});
