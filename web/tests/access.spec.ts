import { expect, test } from '@playwright/test';
import { FirstPage } from './page.ts';

test.use({ locale: 'en-GB' });

test('the answered example has no barrier that can be found by machine, nor has an empty place', async ({
  page,
}) => {
  const place = new FirstPage(page);
  await place.open();
  await place.settled();
  await place.expectNoAxeViolations();
  await place.beginEmpty();
  await place.expectNoAxeViolations();
});

test('nor have faults, open folds and an old answer', async ({ page }) => {
  const place = new FirstPage(page);
  await place.open();
  await place.box('Lift').fill('1.2 m');
  await place.box('Fall').fill('12');
  await place.part('Source').getByText('Intake, temperature, altitude').click();
  await place.part('Drive line').getByText('Bends, crests, how it is held').click();
  await place.part('Ram').getByText('Parts of the ram').click();
  await place
    .part('Source')
    .getByRole('button', { name: /Water it gives: measured/ })
    .click();
  await expect(place.box('Fall')).toHaveAttribute('aria-invalid', 'true');
  await expect(place.answer.getByText('Before')).toBeVisible();
  // The old answer fades to its second ink; a contrast taken half way would be neither.
  await page.waitForTimeout(800);
  await place.expectNoAxeViolations();
});

test('with reduced motion nothing takes time to change', { tag: '@any-width' }, async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const place = new FirstPage(page);
  await place.open();
  const settle = await page.evaluate(() =>
    getComputedStyle(document.documentElement).getPropertyValue('--settle').trim(),
  );
  expect(settle).toMatch(/^0m?s$/);
});
