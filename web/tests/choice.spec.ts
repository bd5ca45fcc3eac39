/** What to build at a place: chosen in workers, looked at, put onto the sheet, taken back; and why not the others. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** A busy machine may need this long for some hundreds of runs. */
const CHOSEN = { timeout: 150_000 };

const complaints: string[] = [];

test.beforeEach(async ({ page }) => {
  test.setTimeout(240_000);
  complaints.length = 0;
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto('/');
  await page.getByRole('button', { name: 'Load the demo workshop' }).click();
});

test.afterEach(() => {
  expect(complaints).toEqual([]);
});

const leaf = (page: Page, name: string): Locator => page.getByRole('link', { name, exact: true });
const told = (page: Page): Locator =>
  page.getByRole('status').filter({ hasText: /combinations in/ });
const front = (page: Page): Locator => page.getByRole('radiogroup', { name: /at the tank/ });

test('a build is chosen, looked at by keyboard, put onto the sheet and taken back', async ({
  page,
}) => {
  await leaf(page, 'Larkrise spring').click();
  await leaf(page, 'Choice').click();
  await page.getByLabel('How sure, at least').selectOption('none');
  await page.getByLabel(/^Drive lengths/).fill('14');
  await page.getByLabel(/^Water needed/).focus();
  await expect(page.getByLabel(/^Drive lengths/)).toHaveAccessibleDescription(/14 what/);
  await page.getByLabel(/^Drive lengths/).fill('14 m');
  await page.getByRole('button', { name: 'Choose', exact: true }).press('Enter');
  await expect(page.getByRole('progressbar')).toBeVisible();
  await expect(told(page)).toBeVisible(CHOSEN);

  const picks = page.getByRole('button', {
    name: /Cheapest that meets the need|Most water|Most forgiving/,
  });
  await expect(picks.first()).toHaveAttribute('aria-pressed', 'true');
  await expect(picks.first()).toContainText(/£[\d,.]+, [\d,]+.L.a.day/);
  // The front goes up: along it no build costs less and gives more.
  const points = front(page).getByRole('radio');
  expect(await points.count()).toBeGreaterThan(1);
  await front(page).getByRole('radio', { checked: true }).focus();
  await page.keyboard.press('End');
  await expect(points.last()).toBeChecked();
  await page.keyboard.press('Home');
  await expect(points.first()).toBeFocused();
  await expect(points.first()).toBeChecked();
  const parts = page.getByRole('region', { name: 'Parts and work' });
  await expect(parts.getByRole('rowheader', { name: 'Total' })).toBeVisible();
  await new FirstPage(page).expectNoAxeViolations();
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);

  // Why not another: only the rows in view are drawn, and words find the others.
  await page.getByText(/^Why not another\?/).click();
  const rows = page.locator('.why-rows tbody tr');
  await expect(rows.first()).toBeVisible();
  expect(await rows.count()).toBeLessThan(60);
  await page.getByRole('searchbox', { name: 'Search' }).fill('osprey stays open');
  await expect(page.getByText(/^\d[\d,]* of \d[\d,]* combinations$/)).toBeVisible();
  await expect(rows.first()).toContainText(/Osprey/);
  await expect(rows.first()).toContainText(/stays open/);

  await picks.first().click();
  await page.getByRole('button', { name: 'Put this into the place' }).click();
  await expect(page.getByText('It is on the sheet now.')).toBeVisible();
  await leaf(page, 'Sheet').click();
  await expect(page.getByLabel('Ram of your range')).not.toHaveValue('');
  await expect(page.getByRole('region', { name: 'Answer', exact: true })).toContainText(
    /litres a day at the tank/,
  );
  // The choice is still there, and undo brings the old sheet back in one step.
  await leaf(page, 'Choice').click();
  await expect(page.getByText('It is on the sheet now.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).last().click();
  await leaf(page, 'Sheet').click();
  await expect(page.getByLabel(/^Typical ram/)).toHaveValue('DN20');
});

test('without prices water alone counts; a search can be stopped; where nothing works it says what would help', {
  tag: '@any-width',
}, async ({ page }) => {
  await leaf(page, 'Tarn Hollow').click();
  await leaf(page, 'Choice').click();
  await page.getByLabel('Prices').selectOption('none');
  await page.getByLabel('How sure, at least').selectOption('none');
  await page.getByRole('button', { name: 'Choose', exact: true }).click();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText(/^Stopped before the end|combinations in/)).toBeVisible(CHOSEN);
  await page.getByLabel(/^Drive lengths/).fill('18 m');
  await page.getByRole('button', { name: 'Choose again' }).click();
  await expect(told(page)).toBeVisible(CHOSEN);
  await expect(page.getByText('Without prices builds are compared by water alone.')).toBeVisible();
  await expect(front(page).getByRole('radio').first()).toHaveAccessibleName(
    /^most water.*\d.L.a.day$/,
  );
  await expect(page.getByRole('button', { name: /^Cheapest/ })).toHaveCount(0);

  // A price that is missing is named, with the way to the list.
  await leaf(page, 'Fallwright places').click();
  await leaf(page, 'Prices').click();
  await page.getByRole('textbox', { name: 'Price for a metre: digging' }).fill('');
  await leaf(page, 'Places').click();
  await leaf(page, 'Tarn Hollow').click();
  await leaf(page, 'Choice').click();
  await page.getByLabel(/^Drive lengths/).fill('18 m');
  await page.getByLabel('Prices').selectOption('list');
  await page.getByRole('button', { name: 'Choose', exact: true }).click();
  await expect(told(page)).toBeVisible(CHOSEN);
  await expect(page.getByText('Every build that works lacks a price')).toBeVisible();
  await expect(page.getByText(/digging/).first()).toBeVisible();

  // No fall to speak of: nothing works, and it says what would have to change.
  await leaf(page, 'Sheet').click();
  await page.getByLabel('Fall', { exact: true }).fill('0.3 m');
  await page.getByLabel('Lift', { exact: true }).fill('80 m');
  await leaf(page, 'Choice').click();
  await page.getByRole('button', { name: 'Choose again' }).click();
  await expect(page.getByRole('heading', { name: 'Nothing on offer works here' })).toBeVisible(
    CHOSEN,
  );
  await expect(page.getByRole('heading', { name: 'What would have to change' })).toBeVisible();
});
