/** Measuring on the sheet: as at the stream, from the first reading to the answer. */
import { expect, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

/** Tests in which the width of the screen plays no part run at the desk only. */
const ANY_WIDTH = { tag: '@any-width' };

let place: FirstPage;

test.beforeEach(async ({ page }) => {
  place = new FirstPage(page);
  await place.open();
});

test.afterEach(() => {
  expect(place.complaints).toEqual([]);
});

test('a bucket timed by the watch becomes the flow, and is kept when the page closes', async ({
  page,
}) => {
  const source = place.part('Source');
  const flow = place.box('Water it gives');
  await source.getByText('Measure the flow').click();
  await source.getByRole('button', { name: /^Timed container/ }).click();
  await place.box('What it holds to the mark').fill('2 L');
  // The watch of the page is moved on by hand; seconds need not pass.
  await page.clock.install();
  await page.clock.pauseAt(new Date(Date.now() + 60_000));
  const watch = source.locator('.watch');
  for (const seconds of [8, 8.4, 8.2]) {
    await watch.focus();
    await page.keyboard.press('Space');
    await expect(watch).toContainText('Stop: it is at the mark');
    await page.clock.runFor(seconds * 1000);
    await watch.click();
  }
  await page.clock.resume();
  await expect(place.box('Time 1')).toHaveValue('8.0 s');
  await expect(place.box('Time 3')).toHaveValue('8.2 s');
  await expect(place.box('Time 4')).toHaveValue('');
  // One that was typed: the unit is that of the times before.
  await place.box('Time 4').fill('8.3');
  await page.keyboard.press('Enter');
  await expect(place.box('Time 4')).toHaveValue('8.3 s');
  await expect(place.box('Time 5')).toBeFocused();
  await expect(source.getByText(/the mean of four fillings, 8\.2/)).toBeVisible();
  await expect(source.getByText(/the written one above is used/)).toBeVisible();
  await source.getByRole('button', { name: 'Use the measured one' }).click();
  await expect(flow).toHaveValue('');
  await expect(flow).toHaveAccessibleDescription(
    /14\.\d\d\s±\s0\.\d\d\sL\/min \(measured\).*container/,
  );
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
  // Written again, it is used, and the readings stay.
  await flow.fill('25 L/min');
  await expect(source.getByText(/The written one is used/)).toBeVisible();
  await flow.fill('');
  await expect(place.box('Time 2')).toHaveValue(/s$/);
  // Taken out, and brought back by undo.
  await source.getByRole('button', { name: /^Take out time 1/ }).click();
  await expect(place.box('Time 4')).toHaveValue('');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(place.box('Time 4')).toHaveValue('8.3 s');
  await page.reload();
  await source.getByText('Measured: 1 measurement').click();
  await expect(place.box('Time 4')).toHaveValue('8.3 s');
  // The watch goes on while the page is away, and the page that comes back shows it.
  await watch.click();
  await expect(watch).toContainText('Stop: it is at the mark');
  await page.reload();
  await expect(watch).toContainText('Stop: it is at the mark');
  await expect(source.getByText('Measured: 1 measurement; the watch runs')).toBeVisible();
  await source.getByRole('button', { name: 'Stop without a reading' }).click();
  await expect(watch).toContainText('Start');
  await expect(place.box('Time 5')).toHaveValue('');
  await place.expectNoAxeViolations();
});

test(
  'a weir outside its range is named, and gaugings that contradict are told',
  ANY_WIDTH,
  async ({ page }) => {
    const source = place.part('Source');
    await place.box('Water it gives').fill('20 L/min');
    await source.getByText('Measure the flow').click();
    await source.getByRole('button', { name: /^V-notch/ }).click();
    await place.box('Angle of the notch').fill('90°');
    await expect(source.getByText('Still needed: heads, h.')).toBeVisible();
    await place.box('Head 1').fill('20 mm');
    await expect(source.getByText(/under 50\smm water clings to the plate/)).toBeVisible();
    await expect(source.getByText(/one reading says nothing/)).toBeVisible();
    await place.box('Head 2').fill('21');
    await page.keyboard.press('Tab');
    await place.box('Point of the notch above the bed').fill('6 cm');
    await expect(source.getByText(/the crest stands 0\.06\sm over the bed/)).toBeVisible();
    await source.getByRole('button', { name: 'Measure again, or another way' }).click();
    await source.getByRole('button', { name: /^Timed container/ }).click();
    // Not finished: the answer stands, and the page says what waits.
    await expect(page.getByText(/Not used yet: A measurement by bucket/)).toBeVisible();
    await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();
    await place.box('What it holds to the mark').fill('10 L');
    for (const [index, time] of ['12 s', '12.2 s', '11.9 s'].entries()) {
      await place.box(`Time ${index + 1}`).fill(time);
    }
    await expect(source.getByText(/further apart than the two spreads together/)).toBeVisible();
    await source.getByText('Dry season, share allowed').click();
    await place.box('Share that may be taken').fill('50 %');
    await expect(place.answer.getByText(/of 10\sL\/min/)).toBeVisible();
    await place.box('Time 3').fill('quick');
    await page.keyboard.press('Tab');
    await expect(place.box('Time 3')).toHaveAttribute('aria-invalid', 'true');
    await place.expectNoAxeViolations();
  },
);

test('a level book that comes back shares its error out, and a coarse height is marked', async ({
  page,
}) => {
  const drive = place.part('Drive line');
  const fall = place.box('Fall');
  await drive.getByText('Measure the fall').click();
  await drive.getByRole('button', { name: /^Level and staff/ }).click();
  const book = [
    { name: 'water', back: '0.412 m' },
    { name: 'ram', fore: '2.300', back: '2.310' },
    { name: 'water', fore: '0.416' },
  ];
  for (const [index, { name, fore, back }] of book.entries()) {
    await place.box(`Point ${index + 1}`).fill(name);
    if (fore !== undefined) await place.box(`Point ${index + 1}, fore`).fill(fore);
    if (back !== undefined) await place.box(`Point ${index + 1}, back`).fill(back);
    await page.keyboard.press('Tab');
  }
  await expect(place.box('Point 3, fore')).toHaveValue('0.416 m');
  await expect(drive.getByText(/The book comes back to water/)).toBeVisible();
  await drive.getByLabel('Upper point').selectOption('water');
  await drive.getByLabel('Lower point').selectOption('ram');
  await expect(drive.getByText(/closes 6\smm out \(7\.1\smm are allowed\)/)).toBeVisible();
  await expect(drive.getByText('−1.891')).toBeVisible();
  await place.expectNoAxeViolations();
  await fall.fill('');
  await page.keyboard.press('Tab');
  await expect(fall).toHaveAccessibleDescription(/1\.891\s±\s0\.003\sm \(measured\).*level book/);
  await expect(place.answer.getByRole('heading', { name: /^Runs/ })).toBeVisible();

  // The points of a line hang between its ends, one of which is known by its readings only.
  await drive.getByText('Profile', { exact: true }).click();
  await drive.getByRole('button', { name: 'Add a point' }).click();
  await expect(drive.getByText('Profile, 1 point')).toBeVisible();

  const delivery = place.part('Delivery line');
  await delivery.getByText('Measure the lift').click();
  await delivery.getByRole('button', { name: /^Satellite receiver/ }).click();
  await place.box('At the tank').fill('312 m');
  await place.box('At the ram').fill('300');
  await page.keyboard.press('Tab');
  await expect(delivery.getByText('Too coarse to choose a ram by', { exact: true })).toBeVisible();
  await expect(place.box('Lift')).toHaveValue('12 m ± 0.2 m');
});
