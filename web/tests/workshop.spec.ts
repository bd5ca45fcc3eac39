/** The list of places and what must never be lost, as a person meets them, in the browser's own database. */
import { readFile } from 'node:fs/promises';
import { expect, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Tests in which the width of the screen plays no part run at the desk only. */
const ANY_WIDTH = { tag: '@any-width' };

let place: FirstPage;

test.beforeEach(({ page }) => {
  place = new FirstPage(page);
});

test.afterEach(() => {
  expect(place.complaints).toEqual([]);
});

const KEPT = 'Kept in this browser';

async function loadDemo(page: Page): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Load the demo workshop' }).click();
  await expect(page.getByRole('link', { name: 'High Fold' })).toBeVisible();
}

const names = (page: Page) =>
  page.getByRole('region', { name: 'List of places' }).getByRole('heading').getByRole('link');

test(
  'the demo workshop is loaded on request, marked, sought in and removed at once',
  ANY_WIDTH,
  async ({ page }) => {
    await loadDemo(page);
    await expect(names(page)).toHaveCount(6);
    await page.getByRole('searchbox', { name: 'Search' }).fill('hob');
    await expect(names(page)).toHaveText(['Combe Farm']);
    await page.getByRole('searchbox', { name: 'Search' }).fill('nowhere');
    await expect(page.getByText('No place has “nowhere”')).toBeVisible();
    await page.getByRole('searchbox', { name: 'Search' }).fill('');
    await page.getByRole('button', { name: 'Remove the demo workshop' }).click();
    await expect(page.getByText('No places yet.')).toBeVisible();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(names(page)).toHaveCount(6);
  },
);

test(
  'each place in the list says whether it runs and how much it gives',
  ANY_WIDTH,
  async ({ page }) => {
    await loadDemo(page);
    const row = (name: string) => page.getByRole('listitem').filter({ hasText: name });
    await expect(row('Larkrise spring')).toContainText(
      /Runs by itself: \d+\s+L\s+a\s+day\d+\s%\sof what is needed/,
    );
    await expect(row('Nettle Bank')).toContainText('Stays open');
    await expect(row('High Fold')).toContainText('Not enough yet');
    await page.getByRole('radio', { name: 'US' }).check();
    await expect(row('Larkrise spring')).toContainText(/\d+\s+gal\s+a\s+day/);
  },
);

test('a place is renamed, copied, deleted and brought back', async ({ page }) => {
  await loadDemo(page);
  await page.getByRole('button', { name: 'Rename Nettle Bank' }).click();
  await page.getByRole('textbox', { name: 'New name of Nettle Bank' }).fill('Nettle Beck');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('link', { name: 'Nettle Beck' })).toBeVisible();
  await page.getByRole('button', { name: 'Copy Nettle Beck' }).click();
  await expect(page.getByRole('link', { name: 'Nettle Beck, copy' })).toBeVisible();
  await page.getByRole('button', { name: 'Delete Nettle Beck', exact: true }).click();
  await expect(page.getByText('Nettle Beck was deleted.')).toBeVisible();
  await expect(names(page)).toHaveCount(6);
  await page.reload();
  await page.getByText('Deleted places (1)').click();
  await page.getByRole('button', { name: 'Bring back Nettle Beck' }).click();
  await expect(names(page)).toHaveCount(7);
});

test(
  'a tab closed in mid-word loses nothing, and undo goes on after it',
  ANY_WIDTH,
  async ({ page, context }) => {
    await place.open();
    const address = page.url();
    await place.box('Lift').fill('15 m');
    await place.box('Fall').focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('2.');
    await page.close();

    const later = new FirstPage(await context.newPage());
    await later.page.goto(address);
    await expect(later.box('Lift')).toHaveValue('15 m');
    await expect(later.box('Fall')).toHaveValue('2.');
    await later.box('Fall').fill('2.1 m');
    await expect(later.page.getByText(KEPT)).toBeVisible();
    await later.page.waitForTimeout(600);
    await later.page.reload();
    await later.page.getByRole('button', { name: 'Undo' }).click();
    await expect(later.box('Fall')).toHaveValue('2.');
    await later.page.getByRole('button', { name: 'Undo' }).click();
    await expect(later.box('Lift')).toHaveValue('12 m ± 0.2 m');
    await later.page.getByRole('button', { name: 'Redo' }).click();
    await expect(later.box('Lift')).toHaveValue('15 m');
    expect(later.complaints).toEqual([]);
  },
);

test(
  'a second tab follows the first, and a true conflict is a choice',
  ANY_WIDTH,
  async ({ page, context }) => {
    await page.clock.install();
    await place.open();
    const other = new FirstPage(await context.newPage());
    await other.page.goto(page.url());
    await other.box('Lift').fill('16 m');
    await expect(place.box('Lift')).toHaveValue('16 m');

    // Both type at once, before either has saved: the clock stands still. Then the other one is put aside, which saves it.
    await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 60_000);
    await place.box('Fall').fill('2.2 m');
    await other.box('Fall').fill('2.3 m');
    await other.page.evaluate(() => window.dispatchEvent(new Event('pagehide')));
    await expect(
      page.getByRole('heading', { name: 'Another tab changed this place too' }),
    ).toBeVisible();
    await page.clock.resume();
    await expect(place.box('Fall')).toHaveValue('2.2 m');
    await expect(other.box('Fall')).toHaveValue('2.3 m');
    // Of two open tabs the one behind does not finish changing its colours.
    await other.page.close();
    const choice = page.getByRole('group', { name: /^Fall/ });
    await expect(page.getByRole('button', { name: 'Keep what is chosen' })).toBeDisabled();
    await expect(page.getByText('One choice is left to make.')).toBeVisible();
    await place.expectNoAxeViolations();
    await choice.getByRole('radio', { name: /the other tab: 2\.3 m/ }).check();
    await page.getByRole('button', { name: 'Keep what is chosen' }).click();
    await expect(place.box('Fall')).toHaveValue('2.3 m');
    await expect(page.getByText(KEPT)).toBeVisible();
    await page.getByRole('link', { name: 'History' }).click();
    await expect(page.getByText('this tab, before the choice')).toBeVisible();
    expect(other.complaints).toEqual([]);
  },
);

test('a saved state can be looked at and brought back', ANY_WIDTH, async ({ page }) => {
  await place.open();
  await place.box('Lift').fill('15 m');
  await expect(page.getByText(KEPT)).toBeVisible();
  await page.getByRole('link', { name: 'History' }).click();
  const entries = page
    .getByRole('region', { name: 'Every state that was saved' })
    .locator('ol > li');
  await expect(entries).toHaveCount(2);
  await entries
    .last()
    .getByRole('button', { name: /Look at it/ })
    .click();
  await expect(page.getByRole('row', { name: /Lift 12 m ± 0.2 m, measured 15 m/ })).toBeVisible();
  await place.expectNoAxeViolations();
  await page.getByRole('button', { name: 'Bring this back' }).click();
  await expect(page.getByText('This is what stands on the sheet now.')).toBeVisible();
  await page.getByRole('link', { name: 'Sheet' }).click();
  await expect(place.box('Lift')).toHaveValue('12 m ± 0.2 m');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(place.box('Lift')).toHaveValue('15 m');
});

test(
  'the workshop goes into one file and comes back; a broken one changes nothing',
  ANY_WIDTH,
  async ({ page }) => {
    await loadDemo(page);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the whole workshop' }).click();
    const text = await readFile(await (await download).path(), 'utf8');
    await page.getByRole('button', { name: 'Delete Combe Farm' }).click();
    await expect(names(page)).toHaveCount(5);

    const chooser = page.locator('input[type=file]');
    const put = (name: string, content: string) =>
      chooser.setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
    for (const [name, content, reason] of [
      ['cut.json', text.slice(0, -60), /not whole/],
      ['newer.json', text.replace('workshop@1', 'workshop@2'), /newer Fallwright/],
      [
        'keys.json',
        text.replace('"fall": "1.2 m"', '"__proto__": { "fall": "1.2 m" }'),
        /__proto__/,
      ],
    ] as const) {
      await put(name, content);
      await expect(page.getByText(`${name} was not opened.`)).toBeVisible();
      await expect(page.getByRole('listitem').filter({ hasText: reason }).first()).toBeVisible();
      await expect(names(page)).toHaveCount(5);
    }
    await put('whole.json', text);
    await expect(page.getByText(/8 were here already, word for word/)).toBeVisible();
    await expect(names(page)).toHaveCount(6);
  },
);

test('the one place of an earlier version is in the list', ANY_WIDTH, async ({ page }) => {
  await page.addInitScript(() => {
    if (localStorage.getItem('told') !== null) return;
    localStorage.setItem('told', 'once');
    const document = { fallwright: 'site@1', name: 'Old Weir', fall: '2 m', lift: '9 m' };
    const kept = { document, unread: { demand: { text: '90' } }, isExample: false };
    localStorage.setItem('fallwright.place@1', JSON.stringify(kept));
  });
  await page.goto('/');
  await page.getByRole('link', { name: 'Old Weir' }).click();
  await expect(place.box('Lift')).toHaveValue('9 m');
  await expect(place.box('Water needed')).toHaveValue('90');
  await page.reload();
  await expect(place.box('Lift')).toHaveValue('9 m');
});

test('an address without a place says so', ANY_WIDTH, async ({ page }) => {
  await page.goto('/places/nowhere');
  await expect(page.getByRole('heading', { name: 'No such place here' })).toBeVisible();
  await page.getByRole('link', { name: 'To all places' }).click();
  await expect(page.getByRole('heading', { name: 'Places', exact: true })).toBeVisible();
});

test('the list has no barrier that can be found by machine', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByText('No places yet.')).toBeVisible();
  await loadDemo(page);
  await page.getByRole('button', { name: 'Delete Combe Farm' }).click();
  await page.getByText('Deleted places (1)').click();
  await page.getByRole('button', { name: 'Rename Nettle Bank' }).click();
  await place.expectNoAxeViolations();
  const [wide, screen] = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    window.innerWidth,
  ]);
  expect(wide).toBeLessThanOrEqual(screen ?? 0);
});
