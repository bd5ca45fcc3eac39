/** Which pipe, which ram: compared, chosen in the table or in the picture, adopted, taken back. */
import { expect, type Locator, type Page, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Tests in which the width of the screen plays no part run at the desk only. */
const ANY_WIDTH = { tag: '@any-width' };

/** A busy machine may need this long for some thirty simulated pairs. */
const ALL_RUN = { timeout: 60_000 };

const complaints: string[] = [];

test.beforeEach(async ({ page }) => {
  test.setTimeout(120_000);
  complaints.length = 0;
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto('/');
  await page.getByRole('button', { name: 'Load the demo workshop' }).click();
  await page.getByRole('link', { name: 'Larkrise spring' }).click();
  await leaf(page, 'Pipes').click();
  await expect(page.getByRole('heading', { name: 'Which pipe, which ram' })).toBeVisible();
});

test.afterEach(() => {
  expect(complaints).toEqual([]);
});

/** A leaf of the place, whichever control the page makes of it. */
function leaf(page: Page, name: string): Locator {
  const named = { name, exact: true };
  return page
    .getByRole('link', named)
    .or(page.getByRole('tab', named))
    .or(page.getByRole('button', named));
}

async function allRun(page: Page): Promise<void> {
  await expect(
    page.getByRole('status').filter({ hasText: /\d+ pairs, each simulated/ }),
  ).toBeVisible(ALL_RUN);
}

/** The pair's cell at the desk, its line in a card on the phone. */
function cell(page: Page, line: string, ram: string): Locator {
  const inTable = page.getByRole('button', { name: `${line} with ${ram}:` });
  const inCard = page
    .getByRole('region', { name: line, exact: true })
    .getByRole('button', { name: new RegExp(`^${ram}\\b`) });
  return inTable.or(inCard);
}

const details = (page: Page): Locator => page.getByRole('region', { name: 'The chosen pair' });
const picture = (page: Page): Locator => page.getByRole('radiogroup', { name: /at the tank/ });

test(
  'lines and rams are compared without being asked, the pair on the sheet looked at first',
  ANY_WIDTH,
  async ({ page }) => {
    await allRun(page);
    await expect(cell(page, 'PE100 SDR11 25', 'DN20')).toHaveAttribute('aria-pressed', 'true');
    await expect(details(page).getByText('This pair is on the sheet.')).toBeVisible();
    for (const line of [
      'garden hose 3/4 in',
      'PVC-U PN16 25',
      'steel EN 10255 DN20',
      'copper L 3/4 in',
    ]) {
      await expect(cell(page, line, 'DN25')).toBeVisible();
    }
    await expect(page.getByText(/^On the sheet, PE100 SDR11 25 with DN20: /)).toBeVisible();
    await expect(page.getByText(/^Most water: /)).toBeVisible();
  },
);

test('what would change it becomes an alternative with one press', ANY_WIDTH, async ({ page }) => {
  await leaf(page, 'Sheet').click();
  await page.getByRole('button', { name: 'Compare: Stroke' }).click();
  await expect(
    details(page)
      .getByText(/DN20 \(stroke [\d.]+ mm\)/)
      .first(),
  ).toBeVisible(ALL_RUN);
  await leaf(page, 'Sheet').click();
  await page.getByRole('button', { name: 'Compare: copper L 3/4 in' }).click();
  await expect(
    details(page)
      .getByText(/copper L 3\/4 in/)
      .first(),
  ).toBeVisible(ALL_RUN);
  await expect(page.getByText(/stroke [\d.]+ mm/).first()).toBeVisible();
});

test('a cell and its point are one choice, and the details are of that pair', async ({ page }) => {
  await allRun(page);
  await cell(page, 'steel EN 10255 DN20', 'DN25').click();
  await expect(details(page).getByRole('heading')).toHaveText('steel EN 10255 DN20 with DN25');
  await expect(details(page).getByText('beats', { exact: true })).toBeVisible();
  await expect(details(page).getByText('Joukowsky bound')).toBeVisible();
  const point = picture(page).getByRole('radio', { name: /^steel EN 10255 DN20 with DN25: / });
  await expect(point).toBeChecked();

  const other = picture(page).getByRole('radio', { name: /^PE100 SDR11 20 with DN20: / });
  await other.click({ force: true });
  await expect(other).toBeChecked();
  await expect(cell(page, 'PE100 SDR11 20', 'DN20')).toHaveAttribute('aria-pressed', 'true');
});

test(
  'adopting puts the pair on the sheet with one action, and undo brings the old one back',
  ANY_WIDTH,
  async ({ page }) => {
    await allRun(page);
    await cell(page, 'steel EN 10255 DN20', 'DN25').click();
    const amount = await details(page).locator('b').textContent();
    await details(page).getByRole('button', { name: 'Adopt this' }).click();
    await expect(details(page).getByText('This pair is on the sheet.')).toBeVisible();

    await leaf(page, 'Sheet').click();
    await expect(
      page.getByRole('region', { name: 'Drive line', exact: true }).getByRole('combobox').first(),
    ).toHaveValue('steel EN 10255 DN20');
    await expect(page.getByLabel(/^Typical ram/)).toHaveValue('DN25');
    await expect(
      page
        .getByRole('region', { name: 'Answer', exact: true })
        .getByText(amount ?? '', { exact: true }),
    ).toBeVisible();

    await leaf(page, 'Pipes').click();
    await allRun(page);
    await cell(page, 'PE100 SDR11 25', 'DN20').click();
    await details(page).getByRole('button', { name: 'Adopt this' }).click();
    await expect(details(page).getByText('This pair is on the sheet.')).toBeVisible();
    await details(page).getByRole('button', { name: 'Undo' }).click();
    await expect(details(page).getByRole('button', { name: 'Adopt this' })).toBeVisible();
  },
);

test(
  'longer lines, a crest with air, a tuned valve and a pipe by name join the table',
  ANY_WIDTH,
  async ({ page }) => {
    await page.getByText('Choose others').click();
    await page.getByRole('textbox', { name: 'how long when longer' }).fill('20 m');
    await expect(page.getByRole('checkbox', { name: 'longer', exact: true })).toBeChecked();
    await page.getByRole('textbox', { name: 'how much air the crest holds' }).fill('60 mL');
    await page.getByRole('checkbox', { name: /^heavier valve/ }).check();
    const name = page.getByRole('combobox', { name: 'Another pipe' });
    await name.fill('PE 100 SDR 11, 40 milimeter');
    await name.press('Enter');
    await expect(name).toHaveAccessibleDescription(/Near it: PE100 SDR11 40/);
    await expect(name).toHaveValue('PE 100 SDR 11, 40 milimeter');
    await name.fill('pe100 sdr11 40');
    await name.press('Enter');
    await expect(page.getByRole('checkbox', { name: 'PE100 SDR11 40' })).toBeChecked();
    await allRun(page);
    await expect(
      cell(page, 'PE100 SDR11 40, 20\u00a0m long, over a crest, 60\u00a0mL of air', 'DN20').first(),
    ).toBeVisible();
    await page.getByRole('checkbox', { name: 'longer', exact: true }).uncheck();
    await expect(page.getByText('20 m long').first()).toBeHidden();
  },
);

test(
  'an amount that cannot be read is told and keeps what was typed',
  ANY_WIDTH,
  async ({ page }) => {
    await page.getByText('Choose others').click();
    const longer = page.getByRole('textbox', { name: 'how long when longer' });
    await longer.fill('20');
    await expect(longer).toHaveAttribute('aria-invalid', 'false');
    await longer.press('Tab');
    await expect(longer).toHaveAttribute('aria-invalid', 'true');
    await expect(longer).toHaveAccessibleDescription(/20 what/);
    await expect(longer).toHaveValue('20');
  },
);

test(
  'a long run shows its count, can be stopped, keeps what is done and goes on',
  ANY_WIDTH,
  async ({ page }) => {
    await allRun(page);
    await page.getByText('Choose others').click();
    // Every size on every line three times: some hundreds of pairs.
    for (const size of ['DN32', 'DN40', 'DN50', 'DN65', 'DN80', 'DN100']) {
      await page.getByRole('checkbox', { name: size, exact: true }).check();
    }
    await page.getByRole('checkbox', { name: 'shorter', exact: true }).check();
    await page.getByRole('checkbox', { name: 'longer', exact: true }).check();
    await expect(page.getByRole('progressbar', { name: 'Pairs that are done' })).toBeVisible();
    await page.getByRole('button', { name: 'Stop' }).click();
    const stopped = page.getByText(/^Stopped\. \d+ of \d+ pairs are done and kept\.$/);
    await expect(stopped).toBeVisible();
    const before = Number(/\d+/.exec((await stopped.textContent()) ?? '')?.[0]);
    expect(before).toBeGreaterThanOrEqual(24);
    const notRun = page.getByText('not run yet');
    await expect(notRun.first()).toBeVisible();
    const left = await notRun.count();
    await page.getByRole('button', { name: 'Run the others' }).click();
    await expect(page.getByRole('progressbar')).toBeVisible();
    // More than what was under way at the stop can bring.
    await expect.poll(() => notRun.count(), ALL_RUN).toBeLessThan(left - 10);
  },
);

test('the lines can be put in the order of what they give', ANY_WIDTH, async ({ page }) => {
  await allRun(page);
  const lines = page.getByRole('rowheader');
  await expect(lines.first()).toContainText('PE100 SDR11 25');
  await page.getByRole('radio', { name: 'most water' }).check();
  const most = (await page.getByText(/^Most water: /).textContent()) ?? '';
  const [, best = ''] = /^Most water: (.+?) with /.exec(most) ?? [];
  await expect(lines.first()).toContainText(best);
});

test(
  'the keyboard alone chooses in the table, in the picture, and adopts',
  ANY_WIDTH,
  async ({ page }) => {
    await allRun(page);
    const own = cell(page, 'PE100 SDR11 25', 'DN20');
    await own.focus();
    await page.keyboard.press('ArrowRight');
    await expect(cell(page, 'PE100 SDR11 25', 'DN25')).toBeFocused();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect(cell(page, 'garden hose 3/4 in', 'DN25')).toHaveAttribute('aria-pressed', 'true');

    await picture(page).getByRole('radio').first().focus();
    await page.keyboard.press('End');
    await expect(picture(page).getByRole('radio').last()).toBeChecked();
    await page.keyboard.press('ArrowLeft');
    await expect(picture(page).getByRole('radio', { checked: true })).toBeFocused();
    await page.keyboard.press('Tab');
    const adopt = details(page).getByRole('button', { name: 'Adopt this' });
    await expect(adopt).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(details(page).getByText('This pair is on the sheet.')).toBeVisible();
  },
);

test('gallons and feet at a touch', ANY_WIDTH, async ({ page }) => {
  await allRun(page);
  await page.getByRole('radio', { name: 'US' }).check();
  await expect(page.getByText('gal a day at the tank').first()).toBeVisible();
  await expect(cell(page, 'PE100 SDR11 25', 'DN20')).toHaveAccessibleName(/gal.a.day.*gpm/);
});

test('on a phone nothing sticks out sideways', async ({ page }) => {
  await allRun(page);
  await page.getByText('Choose others').click();
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});

test('no barrier that can be found by machine', async ({ page }) => {
  await allRun(page);
  await page.getByText('Choose others').click();
  await page.getByRole('textbox', { name: 'how long when longer' }).fill('20');
  await cell(page, 'steel EN 10255 DN20', 'DN25').click();
  await expect(details(page).getByText('beats', { exact: true })).toBeVisible();
  await new FirstPage(page).expectNoAxeViolations();
});
